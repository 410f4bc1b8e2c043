//! A run that is broken off from outside leaves nothing behind.
#![cfg(unix)]

use std::fs;
use std::io::Write;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

const DESCRIPTION: &str = "network drive can 500 kbit/s\nframe f on drive id 0x100 { signal a in byte 0 }\n";

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("the folder is there");
    let mut names: Vec<String> =
        entries.map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

/// A run that waits for the rest of its log.
fn waiting(folder: &Path, output: &[&str]) -> Child {
    let mut run = Command::new(env!("CARGO_BIN_EXE_wirelore"))
        .current_dir(folder)
        .args(["decode", "van.lore", "-", "--quiet"])
        .args(output)
        .stdin(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("it starts");
    let log = run.stdin.as_mut().expect("a pipe");
    log.write_all(b"time_s,id_hex,data_hex\n0.1,100,07\n").expect("it listens");
    let begun = Instant::now();
    while !names(folder).iter().any(|name| name.starts_with(".wirelore-")) {
        assert!(begun.elapsed() < Duration::from_secs(60), "it writes beside its output");
        sleep(Duration::from_millis(20));
    }
    // The watch begins with the hidden file; a moment for what is between the two.
    sleep(Duration::from_millis(300));
    run
}

#[test]
fn the_hidden_files_go_with_the_run() {
    let outputs: [&[&str]; 2] = [&["-o", "out.csv"], &["-o", "out", "--to", "parquet"]];
    for output in outputs {
        let folder = tempfile::tempdir().expect("a folder");
        fs::write(folder.path().join("van.lore"), DESCRIPTION).expect("a description");
        let mut run = waiting(folder.path(), output);
        // Waiting closes the run's input, and a run whose log has ended may be done before it is broken off: the input is held open.
        let input = run.stdin.take();
        // SIGTERM has number 15 (POSIX.1-2017, kill).
        let asked = Command::new("kill").args(["-TERM", &run.id().to_string()]).status().expect("kill is there");
        assert!(asked.success());
        assert_eq!(run.wait().expect("it ends").code(), Some(128 + 15), "{output:?}");
        drop(input);
        assert_eq!(names(folder.path()), ["van.lore"], "{output:?}");
    }
}
