//! The command as a person uses it: every `.case` file under `cases/` is a command line with what it must print.
//!
//! A case looks like this; paths are seen from the folder of the case:
//!
//! ```text
//! # What this shows, in a line or two.
//! $ wirelore check door.lore
//! status 1
//! --- standard output
//! ...
//! --- standard error
//! ...
//! ```
//!
//! A line `< FILE` after the command gives its standard input. `BLESS=1` writes what the command does now into the file.
//! Wall times are the one thing that differs from run to run; they are shown as `TIME`.

use std::fmt::Write as _;
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

struct Case {
    comment: String,
    command: String,
    input: Option<String>,
}

#[test]
fn commands_print_what_their_cases_say() {
    let mut cases = Vec::new();
    collect(&Path::new(env!("CARGO_MANIFEST_DIR")).join("cases"), &mut cases);
    assert!(cases.len() >= 10, "only {} cases were found", cases.len());
    cases.sort();
    let bless = std::env::var_os("BLESS").is_some();
    let mut different = String::new();
    for path in &cases {
        let expected = fs::read_to_string(path).expect("a case can be read");
        let case = parse(&expected);
        let actual = run(path.parent().expect("a case lies in a folder"), &case);
        if actual == expected {
            continue;
        }
        if bless {
            fs::write(path, actual).expect("a case can be written");
        } else {
            let _ = write!(different, "\n==== {}\n{}", path.display(), difference(&expected, &actual));
        }
    }
    assert!(different.is_empty(), "{different}\n(BLESS=1 accepts what is printed now)");
}

fn collect(folder: &Path, cases: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("the folder of cases is there") {
        let path = entry.expect("a folder can be listed").path();
        if path.is_dir() {
            collect(&path, cases);
        } else if path.extension().is_some_and(|ending| ending == "case") {
            cases.push(path);
        }
    }
}

fn parse(text: &str) -> Case {
    let comment: String =
        text.lines().take_while(|line| line.starts_with('#')).map(|line| format!("{line}\n")).collect();
    let rest = &text[comment.len()..];
    let mut lines = rest.lines();
    let command =
        lines.next().and_then(|line| line.strip_prefix("$ wirelore ")).expect("a case begins with `$ wirelore`");
    let input = lines.next().and_then(|line| line.strip_prefix("< ")).map(str::to_owned);
    Case { comment, command: command.to_owned(), input }
}

fn run(folder: &Path, case: &Case) -> String {
    let mut command = Command::new(env!("CARGO_BIN_EXE_wirelore-under-test"));
    command.current_dir(folder).args(words(&case.command)).env("NO_COLOR", "1");
    command.stdin(match &case.input {
        Some(name) => Stdio::from(File::open(folder.join(name)).expect("the input of a case is there")),
        None => Stdio::null(),
    });
    let output = command.output().expect("the command starts");
    let mut text = format!("{}$ wirelore {}\n", case.comment, case.command);
    if let Some(name) = &case.input {
        let _ = writeln!(text, "< {name}");
    }
    let status = output.status.code().expect("the command ends by itself");
    let _ = writeln!(text, "status {status}");
    for (title, bytes) in [("standard output", &output.stdout), ("standard error", &output.stderr)] {
        let printed = String::from_utf8_lossy(bytes);
        if !printed.is_empty() {
            let _ = write!(text, "--- {title}\n{}", without_times(&printed));
        }
    }
    if !text.ends_with('\n') {
        text.push('\n');
    }
    text
}

/// Splits a command line at blanks, with single quotes around words that hold some.
fn words(line: &str) -> Vec<String> {
    let (mut words, mut word, mut quoted, mut begun) = (Vec::new(), String::new(), false, false);
    for c in line.chars() {
        match c {
            '\'' => (quoted, begun) = (!quoted, true),
            ' ' if !quoted => {
                if begun {
                    words.push(std::mem::take(&mut word));
                }
                begun = false;
            }
            _ => {
                word.push(c);
                begun = true;
            }
        }
    }
    if begun {
        words.push(word);
    }
    words
}

/// Replaces `in 0.123 s (456 frames/s)` by `in TIME`.
fn without_times(text: &str) -> String {
    let mut result = String::new();
    for line in text.lines() {
        match (line.find(" in "), line.ends_with("frames/s)")) {
            (Some(at), true) => {
                let _ = writeln!(result, "{} in TIME", &line[..at]);
            }
            _ => {
                let _ = writeln!(result, "{line}");
            }
        }
    }
    result
}

/// The first lines where two texts part.
fn difference(expected: &str, actual: &str) -> String {
    let (old, new): (Vec<_>, Vec<_>) = (expected.lines().collect(), actual.lines().collect());
    let first = old.iter().zip(&new).take_while(|(a, b)| a == b).count();
    let mut text = format!("line {}:\n", first + 1);
    for line in old.iter().skip(first).take(12) {
        let _ = writeln!(text, "  expected  {line}");
    }
    for line in new.iter().skip(first).take(12) {
        let _ = writeln!(text, "  printed   {line}");
    }
    text
}
