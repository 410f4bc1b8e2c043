//! What the command does to files and pipes: outputs appear whole or not at all, inputs stay what they are, a reader may leave early.

use std::fs;
use std::io::Read;
use std::path::Path;
use std::process::{Command, Output, Stdio};

use wirelore_tests::folder::names;

const DESCRIPTION: &str =
    "network drive can 500 kbit/s\nframe speed on drive id 0x1B4 {\n    signal wheel in byte 0\n}\n";
const LOG: &str = "time,id,data\n0.0,0x1B4,01\n0.1,0x1B4,02\n";

fn wirelore(folder: &Path, words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_wirelore-under-test"))
        .current_dir(folder)
        .args(words)
        .output()
        .expect("the command starts")
}

fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("van.lore"), DESCRIPTION).expect("written");
    fs::write(folder.path().join("drive.csv"), LOG).expect("written");
    folder
}

#[test]
fn an_output_appears_whole_and_leaves_nothing_beside_it() {
    let folder = folder();
    let done = wirelore(folder.path(), &["decode", "van.lore", "drive.csv", "-o", "out.csv"]);
    assert_eq!(done.status.code(), Some(0), "{done:?}");
    assert_eq!(names(folder.path()), ["drive.csv", "out.csv", "van.lore"]);
    let text = fs::read_to_string(folder.path().join("out.csv")).expect("it is there");
    assert_eq!(text.lines().count(), 3);
}

#[test]
fn a_run_that_fails_leaves_the_earlier_output_as_it_was() {
    let folder = folder();
    fs::write(folder.path().join("out.csv"), "precious").expect("written");
    for words in [
        ["decode", "van.lore", "drive.csv", "--bind", "x=drive", "-o", "out.csv"],
        ["decode", "van.lore", "van.lore", "--columns", "id=nothing", "-o", "out.csv"],
    ] {
        let done = wirelore(folder.path(), &words);
        assert_eq!(done.status.code(), Some(2), "{done:?}");
        assert_eq!(fs::read_to_string(folder.path().join("out.csv")).expect("it is there"), "precious");
        assert_eq!(names(folder.path()), ["drive.csv", "out.csv", "van.lore"]);
    }
}

#[test]
fn what_is_read_is_never_written_over() {
    let folder = folder();
    for words in [
        ["decode", "van.lore", "drive.csv", "-o", "drive.csv", "--quiet"],
        ["decode", "van.lore", "drive.csv", "-o", "./van.lore", "--to=csv"],
        ["compile", "van.lore", "-o", "van.lore", "--to", "json"],
    ] {
        let done = wirelore(folder.path(), &words);
        assert_eq!(done.status.code(), Some(2), "{done:?}");
        assert!(String::from_utf8_lossy(&done.stderr).contains("is what is read here"), "{done:?}");
    }
    assert_eq!(fs::read_to_string(folder.path().join("drive.csv")).expect("it is there"), LOG);
    assert_eq!(fs::read_to_string(folder.path().join("van.lore")).expect("it is there"), DESCRIPTION);
}

#[cfg(unix)]
#[test]
fn a_link_stays_a_link_and_a_file_keeps_its_permissions() {
    use std::os::unix::fs::{PermissionsExt, symlink};
    let folder = folder();
    let real = folder.path().join("real.lore");
    fs::write(&real, "network   drive   can 500 kbit/s\n").expect("written");
    fs::set_permissions(&real, fs::Permissions::from_mode(0o640)).expect("set");
    symlink("real.lore", folder.path().join("link.lore")).expect("linked");
    let done = wirelore(folder.path(), &["format", "link.lore"]);
    assert_eq!(done.status.code(), Some(0), "{done:?}");
    assert!(folder.path().join("link.lore").is_symlink());
    assert_eq!(fs::read_to_string(&real).expect("it is there"), "network drive can 500 kbit/s\n");
    assert_eq!(fs::metadata(&real).expect("it is there").permissions().mode() & 0o777, 0o640);
}

#[test]
fn a_reader_that_leaves_early_is_no_failure() {
    let folder = folder();
    let line = "0.0,0x1B4,01\n";
    fs::write(folder.path().join("long.csv"), format!("time,id,data\n{}", line.repeat(200_000))).expect("written");
    let mut child = Command::new(env!("CARGO_BIN_EXE_wirelore-under-test"))
        .current_dir(folder.path())
        .args(["decode", "van.lore", "long.csv"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command starts");
    let mut first = [0; 16];
    child.stdout.take().expect("a pipe").read_exact(&mut first).expect("it begins");
    // Both pipes are closed now; the command ends by itself and does not complain.
    let mut told = String::new();
    child.stderr.take().expect("a pipe").read_to_string(&mut told).expect("text");
    assert_eq!(child.wait().expect("it ends").code(), Some(0), "{told}");
    assert!(!told.contains("panicked"), "{told}");
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    let folder = folder();
    let output = |name| {
        wirelore(folder.path(), &["decode", "van.lore", "drive.csv", "-o", name, "--quiet"]);
        fs::read(folder.path().join(name)).expect("it is there")
    };
    assert_eq!(output("one.csv"), output("two.csv"));
}

#[cfg(unix)]
#[test]
fn a_pipe_with_a_name_is_written_to_and_stays_a_pipe() {
    use std::os::unix::fs::FileTypeExt;
    let folder = folder();
    let pipe = folder.path().join("values.csv");
    assert!(Command::new("mkfifo").arg(&pipe).status().expect("mkfifo starts").success());
    let reading = std::thread::spawn({
        let pipe = pipe.clone();
        move || fs::read_to_string(pipe).expect("text")
    });
    let done = wirelore(folder.path(), &["decode", "van.lore", "drive.csv", "-o", "values.csv", "--quiet"]);
    assert_eq!(done.status.code(), Some(0), "{done:?}");
    assert_eq!(reading.join().expect("read").lines().count(), 3);
    assert!(fs::metadata(&pipe).expect("it is there").file_type().is_fifo());
}

/// Titles, units and channel names come from other people's files: none of them may act on the terminal.
#[test]
fn nothing_in_a_file_acts_on_the_terminal() {
    let folder = folder();
    let text = "network drive \"t\\u{1B}[31m\\u{202E}\" can 500 kbit/s\n## note \u{1B}[2J\nframe speed \"t\\u{1B}[31m\" on drive \
                id 0x1B4 {\n    signal wheel \"w\\u{9B}\" in byte 0 = raw \"u\\u{1B}[5m\"\n}\n";
    fs::write(folder.path().join("bad.lore"), text).expect("written");
    fs::write(folder.path().join("bad.csv"), "time,channel,id,data\n0,a\u{1B}[31m,0x1B4,01\n0,b\u{202E},0x1B4,01\n")
        .expect("written");
    for words in [
        &["check", "bad.lore"][..],
        &["explain", "bad.lore"],
        &["explain", "bad.lore", "speed"],
        &["explain", "bad.lore", "speed.wheel"],
        &["decode", "bad.lore", "drive.csv", "--to", "table"],
        &["decode", "bad.lore", "drive.csv", "--to", "table", "--shape", "grid", "--every", "1s"],
        &["decode", "bad.lore", "bad.csv", "--to", "table"],
    ] {
        let done = wirelore(folder.path(), words);
        for bytes in [&done.stdout, &done.stderr] {
            let printed = String::from_utf8_lossy(bytes);
            let acts = |c: char| (c.is_control() && c != '\n') || matches!(c, '\u{202A}'..='\u{202E}');
            assert!(!printed.contains(acts), "{words:?}: {printed:?}");
        }
    }
}
