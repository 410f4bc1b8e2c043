//! Disks that are full, folders that may not be written to, readers that leave, logs that change while they are read, runs that are killed:
//! each ends with a message, and what was there before stays as it was.
#![cfg(target_os = "linux")]

use std::fs::{self, File, OpenOptions};
use std::io::{Read, Write};
use std::os::unix::fs::PermissionsExt;
use std::path::Path;
use std::process::{Child, Command, Output, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

use wirelore_tests::drive::demo_folder;
use wirelore_tests::folder::names;

const PROGRAM: &str = env!("CARGO_BIN_EXE_wirelore-under-test");
const DESCRIPTION: &str =
    "network drive can 500 kbit/s\necu engine on drive\nframe f on drive id 0x100 { signal a in byte 0 }\n";
const LINE: &str = "0.1,0x100,07\n";
const PRECIOUS: &str = "precious";

fn folder(lines: usize) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("van.lore"), DESCRIPTION).expect("written");
    fs::write(folder.path().join("drive.csv"), format!("time,id,data\n{}", LINE.repeat(lines))).expect("written");
    folder
}

fn command(folder: &Path, words: &[&str]) -> Command {
    let mut command = Command::new(PROGRAM);
    command.current_dir(folder).args(words).stdin(Stdio::null());
    command
}

/// What was told by a run that could not do its work.
#[track_caller]
fn failed(output: &Output, words: &[&str]) -> String {
    let told = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(2), "{words:?}: {:?} {told}", output.status);
    assert!(!told.contains("panicked"), "{words:?}: {told}");
    told
}

/// Every command, with all forms of its result.
const COMMANDS: [&[&str]; 22] = [
    &["check", "van.lore"],
    &["check", "van.lore", "--to", "sarif"],
    &["explain", "van.lore"],
    &["explain", "van.lore", "f"],
    &["explain", "signal-overlap"],
    &["encode", "van.lore", "f", "a=1"],
    &["map", "van.lore"],
    &["map", "van.lore", "--to", "svg"],
    &["map", "van.lore", "--to", "html"],
    &["--version"],
    &["--help"],
    &["help", "decode"],
    &["budget", "van.lore"],
    &["budget", "van.lore", "--to", "json"],
    &["budget", "van.lore", "drive.csv", "--to", "csv", "--quiet"],
    &["decode", "van.lore", "drive.csv", "--to", "csv", "--quiet"],
    &["decode", "van.lore", "drive.csv", "--to", "jsonl", "--quiet"],
    &["decode", "van.lore", "drive.csv", "--to", "table", "--quiet"],
    &["decode", "van.lore", "drive.csv", "--to", "csv", "--shape", "frames", "--quiet"],
    &["decode", "van.lore", "drive.csv", "--to", "csv", "--shape", "grid", "--every", "1ms", "--quiet"],
    &["decode", "van.lore", "drive.csv", "--to", "parquet", "--quiet"],
    &["decode", "van.lore", "drive.csv", "--to", "arrow", "--quiet"],
];

#[test]
fn a_full_disk_is_told() {
    // Few values, which are written at the end, and many.
    for lines in [1, 30_000] {
        let folder = folder(lines);
        for words in COMMANDS {
            let full = File::options().write(true).open("/dev/full").expect("Linux has it");
            let told = failed(&command(folder.path(), words).stdout(full).output().expect("it starts"), words);
            assert!(told.contains("cannot write standard output: No space left on device"), "{words:?}: {told}");
            if words[0] != "check" && words.contains(&"--to") {
                let words = [words, &["-o", "/dev/full"]].concat();
                let told = failed(&command(folder.path(), &words).output().expect("it starts"), &words);
                assert!(told.contains("cannot write /dev/full: No space left on device"), "{words:?}: {told}");
            }
        }
        for form in ["json", "lorebin", "lorec", "rust"] {
            let words = ["compile", "van.lore", "-o", "/dev/full", "--to", form];
            let told = failed(&command(folder.path(), &words).output().expect("it starts"), &words);
            assert!(told.contains("No space left on device"), "{words:?}: {told}");
        }
        assert_eq!(names(folder.path()), ["drive.csv", "van.lore"]);
    }
}

/// The limit of a file's size stands for a disk that fills up amid a file; its signal is ignored, so that writing fails.
#[test]
fn a_disk_that_fills_up_leaves_the_earlier_output_as_it_was() {
    let folder = folder(100_000);
    let tables = folder.path().join("tables");
    fs::create_dir(&tables).expect("made");
    for name in ["out.csv", "out.jsonl", "out.parquet", "out.arrow", "tables/f.csv", "tables/f.parquet"] {
        fs::write(folder.path().join(name), PRECIOUS).expect("written");
    }
    let before = names(folder.path());
    for words in [
        &["-o", "out.csv"][..],
        &["-o", "out.jsonl"],
        &["-o", "out.parquet", "--memory", "1MiB", "--store", "raw"],
        &["-o", "out.arrow"],
        &["-o", "out.csv", "--shape", "frames"],
        &["-o", "new", "--to", "csv", "--shape", "frames"],
    ] {
        let all = [&["decode", "van.lore", "drive.csv", "--quiet"], words].concat();
        let limited = "trap '' XFSZ; ulimit -f 1; exec \"$0\" \"$@\"";
        let output = Command::new("sh").current_dir(folder.path()).args(["-c", limited, PROGRAM]).args(&all).output();
        let told = failed(&output.expect("it starts"), &all);
        assert!(told.contains("cannot write") && told.contains("File too large"), "{words:?}: {told}");
        assert_eq!(names(folder.path()), before, "{words:?}");
        for name in before.iter().filter(|name| name.starts_with("out.")) {
            assert_eq!(fs::read_to_string(folder.path().join(name)).expect("it is there"), PRECIOUS, "{words:?}");
        }
    }
    fs::remove_file(tables.join("f.parquet")).expect("removed");
    let words = ["decode", "van.lore", "drive.csv", "--quiet", "--to", "csv", "--shape", "frames", "-o", "tables"];
    let limited = "trap '' XFSZ; ulimit -f 1; exec \"$0\" \"$@\"";
    let output = Command::new("sh").current_dir(folder.path()).args(["-c", limited, PROGRAM]).args(words).output();
    failed(&output.expect("it starts"), &words);
    assert_eq!(names(&tables), ["f.csv"]);
    assert_eq!(fs::read_to_string(tables.join("f.csv")).expect("it is there"), PRECIOUS);
}

#[test]
fn a_folder_that_may_not_be_written_to() {
    let folder = folder(3);
    let decode = |output: &str| {
        let words = ["decode", "van.lore", "drive.csv", "--to", "csv", "-o", output];
        failed(&command(folder.path(), &words).output().expect("it starts"), &words)
    };
    // Nobody makes files there, whatever his rights.
    let told = decode("/proc/out.csv");
    assert!(told.contains("cannot write /proc/out.csv: the folder /proc cannot be written to"), "{told}");
    let told = decode("nowhere/out.csv");
    assert!(told.contains("there is no folder nowhere"), "{told}");
    let locked = folder.path().join("locked");
    fs::create_dir(&locked).expect("made");
    fs::write(locked.join("out.csv"), PRECIOUS).expect("written");
    fs::set_permissions(&locked, fs::Permissions::from_mode(0o555)).expect("set");
    if File::create(locked.join("trial")).is_ok() {
        eprintln!("skipped: this user may write into every folder");
        return;
    }
    let told = decode("locked/out.csv");
    assert!(told.contains("the folder") && told.contains("cannot be written to"), "{told}");
    assert_eq!(fs::read_to_string(locked.join("out.csv")).expect("it is there"), PRECIOUS);
    fs::set_permissions(&locked, fs::Permissions::from_mode(0o755)).expect("set");
}

#[test]
fn a_reader_that_has_left_is_no_failure() {
    let folder = folder(30_000);
    for words in COMMANDS {
        let (reader, writer) = std::io::pipe().expect("a pipe");
        drop(reader);
        let output = command(folder.path(), words).stdout(writer).output().expect("it starts");
        let told = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(0), "{words:?}: {told}");
        assert!(!told.contains("panicked") && !told.contains("cannot"), "{words:?}: {told}");
    }
}

/// A run whose output nobody takes: it stands still amid the log once the pipe is full.
fn standing_still(folder: &Path, words: &[&str]) -> Child {
    let mut run = command(folder, words).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("it starts");
    run.stdout.as_mut().expect("a pipe").read_exact(&mut [0; 10]).expect("it has begun");
    // It fills the pipe meanwhile.
    sleep(Duration::from_millis(300));
    run
}

#[test]
fn a_log_that_grows_is_read_to_its_end() {
    let folder = folder(200_000);
    let mut run = standing_still(folder.path(), &["decode", "van.lore", "drive.csv", "--quiet", "--to", "csv"]);
    let mut log = OpenOptions::new().append(true).open(folder.path().join("drive.csv")).expect("it is there");
    log.write_all(LINE.repeat(5_000).as_bytes()).expect("it is written");
    let mut text = String::new();
    run.stdout.take().expect("a pipe").read_to_string(&mut text).expect("text");
    assert_eq!(run.wait().expect("it ends").code(), Some(0));
    // The heading had ten bytes less.
    assert_eq!(text.lines().count(), 205_001);
}

/// What a run says after its log was cut, and how it ended.
fn after_cut(mut run: Child, log: &Path, bytes: u64) -> (Option<i32>, String, String) {
    OpenOptions::new().write(true).open(log).expect("it is there").set_len(bytes).expect("it is cut");
    let mut printed = Vec::new();
    run.stdout.take().expect("a pipe").read_to_end(&mut printed).expect("bytes");
    let output = run.wait_with_output().expect("it ends");
    let told = String::from_utf8_lossy(&output.stderr).into_owned();
    (output.status.code(), String::from_utf8_lossy(&printed).into_owned(), told)
}

#[test]
fn a_log_that_shrinks_ends_the_run_with_a_message() {
    for bytes in [0, 1_000, 100_000] {
        let folder = folder(200_000);
        let run = standing_still(folder.path(), &["decode", "van.lore", "drive.csv", "--quiet", "--to", "csv"]);
        let (code, printed, told) = after_cut(run, &folder.path().join("drive.csv"), bytes);
        assert_eq!(code, Some(2), "cut to {bytes}: {told}");
        assert!(told.contains("cannot read the log drive.csv on: another program has made it shorter"), "{told}");
        // What was printed before is right.
        let whole = printed.rsplit_once('\n').map_or("", |(whole, _)| whole);
        assert!(whole.lines().skip(1).all(|line| line == "0.000000,drive,f,a,7,,"), "{printed:.200}");
    }
}

#[test]
fn so_does_a_packet_file_that_shrinks() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("drive.pcapng");
    // Sections may follow each other.
    fs::write(&log, fs::read(demo_folder().join("town-drive.pcapng")).expect("it is there").repeat(20))
        .expect("written");
    let description = demo_folder().join("kestrel.lore");
    let words = ["decode", description.to_str().expect("UTF-8"), "drive.pcapng", "--quiet", "--to", "jsonl"];
    let (code, _, told) = after_cut(standing_still(folder.path(), &words), &log, 0);
    assert_eq!(code, Some(2), "{told}");
    assert!(told.contains("another program has made it shorter"), "{told}");
}

/// Behind the part that is being read the end is only earlier than it was: the frames before it count, and the loss is told.
#[test]
fn a_log_that_shrinks_further_on_is_told_with_its_place() {
    let folder = folder(400_000);
    let whole = fs::metadata(folder.path().join("drive.csv")).expect("it is there").len();
    let run = standing_still(folder.path(), &["decode", "van.lore", "drive.csv", "--quiet", "--to", "csv"]);
    let kept_lines = 350_000;
    let kept = ("time,id,data\n".len() + kept_lines * LINE.len()) as u64;
    let (code, printed, told) = after_cut(run, &folder.path().join("drive.csv"), kept);
    assert_eq!((code, printed.lines().count()), (Some(0), kept_lines + 1), "{told}");
    let sizes = format!("it had {whole} bytes when it was opened, and ends after {kept}");
    assert!(told.contains("made the file shorter meanwhile") && told.contains(&sizes), "{told}");
}

/// Waits until a run has written so much beside its output.
fn wait_for_hidden(folder: &Path, bytes: u64) {
    let size = || {
        let entries = fs::read_dir(folder).expect("it can be listed").flatten();
        let hidden = entries.filter(|entry| entry.file_name().to_string_lossy().starts_with(".wirelore-"));
        hidden.filter_map(|entry| entry.metadata().ok()).map(|data| data.len()).max()
    };
    let begun = Instant::now();
    while size().is_none_or(|size| size < bytes) {
        assert!(begun.elapsed() < Duration::from_secs(60), "it writes beside its output");
        sleep(Duration::from_millis(1));
    }
}

#[test]
fn a_log_that_shrinks_leaves_the_earlier_output_as_it_was() {
    let folder = folder(3_000_000);
    fs::write(folder.path().join("out.csv"), PRECIOUS).expect("written");
    let words = ["decode", "van.lore", "drive.csv", "-o", "out.csv", "--quiet"];
    let run = command(folder.path(), &words).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("it starts");
    wait_for_hidden(folder.path(), 1 << 20);
    let (code, _, told) = after_cut(run, &folder.path().join("drive.csv"), 0);
    assert!(told.contains("another program has made"), "{told}");
    // Between two parts of the log nothing is touched: then it is told as above.
    if code != Some(0) {
        assert_eq!(code, Some(2), "{told}");
        assert_eq!(fs::read_to_string(folder.path().join("out.csv")).expect("it is there"), PRECIOUS);
    }
    assert_eq!(names(folder.path()), ["drive.csv", "out.csv", "van.lore"]);
}

#[test]
fn a_run_that_is_killed_leaves_nothing_under_the_final_name() {
    let folder = folder(3);
    fs::write(folder.path().join("out.csv"), PRECIOUS).expect("written");
    for (output, form) in [("out.csv", "csv"), ("new.csv", "csv"), ("tables", "parquet"), ("one.parquet", "parquet")] {
        let before = names(folder.path());
        let words = ["decode", "van.lore", "-", "--quiet", "--to", form, "-o", output];
        let mut run = command(folder.path(), &words).stdin(Stdio::piped()).spawn().expect("it starts");
        let mut log = run.stdin.take().expect("a pipe");
        log.write_all(format!("time,id,data\n{}", LINE.repeat(100)).as_bytes()).expect("it listens");
        wait_for_hidden(folder.path(), 0);
        run.kill().expect("it is there");
        run.wait().expect("it ends");
        let left: Vec<String> =
            names(folder.path()).into_iter().filter(|name| !name.starts_with(".wirelore-")).collect();
        assert_eq!(left, before, "{output}");
        assert_eq!(fs::read_to_string(folder.path().join("out.csv")).expect("it is there"), PRECIOUS, "{output}");
        // What is left of the killed run is in nobody's way, and is removed by hand.
        for name in names(folder.path()).iter().filter(|name| name.starts_with(".wirelore-")) {
            let path = folder.path().join(name);
            if path.is_dir() { fs::remove_dir_all(path) } else { fs::remove_file(path) }.expect("removed");
        }
    }
    let words = ["decode", "van.lore", "drive.csv", "--quiet", "-o", "out.csv"];
    assert_eq!(command(folder.path(), &words).status().expect("it starts").code(), Some(0));
    assert_eq!(fs::read_to_string(folder.path().join("out.csv")).expect("it is there").lines().count(), 4);
}
