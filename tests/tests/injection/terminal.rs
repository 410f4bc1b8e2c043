//! The same on a terminal: a pair of pseudo-terminals stands for it.

use std::fs::File;
use std::io::Read;
use std::process::Command;

use rustix::pty::{OpenptFlags, grantpt, openpt, ptsname, unlockpt};

use crate::{Bench, TEXTS};

/// What a command shows on a terminal, on both of its outputs.
fn shown(bench: &Bench, line: &str, colours: bool) -> String {
    let ours = openpt(OpenptFlags::RDWR | OpenptFlags::NOCTTY).expect("a terminal");
    grantpt(&ours).and_then(|()| unlockpt(&ours)).expect("it can be used");
    let name = ptsname(&ours, Vec::new()).expect("it has a name");
    let open = || File::options().read(true).write(true).open(name.to_str().expect("ASCII")).expect("it opens");
    let mut command = Command::new(env!("CARGO_BIN_EXE_wirelore-under-test"));
    command.current_dir(bench.path()).args(line.split(' ')).stdin(open()).stdout(open()).stderr(open());
    if !colours {
        command.env("NO_COLOR", "1");
    }
    let mut run = command.spawn().expect("the command starts");
    // Our own hands on the other side go with the command.
    drop(command);
    let mut bytes = Vec::new();
    // Linux ends it with an error once nobody has the other side.
    let _ = File::from(ours).read_to_end(&mut bytes);
    assert!(matches!(run.wait().expect("it ends").code(), Some(0..=2)), "{line}");
    String::from_utf8(bytes).expect("UTF-8")
}

fn acts(letter: char) -> bool {
    (letter.is_control() && !matches!(letter, '\n' | '\r'))
        || matches!(letter, '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}

#[test]
fn nothing_acts_on_a_terminal() {
    for text in TEXTS {
        let bench = Bench::of(text);
        for line in [
            "check van.lore",
            "check van.lore --to jsonl",
            "check van.lore --to sarif",
            "explain van.lore",
            "explain van.lore words",
            "explain van.lore words.speed",
            "explain van.lore drive",
            "map van.lore",
            "map van.lore --to svg",
            "map van.lore --to html",
            "budget van.lore --frames --units",
            "budget van.lore --to csv",
            "budget van.lore --to json",
            "budget van.lore drive.csv --frames --quiet",
            "decode van.lore drive.csv",
            "decode van.lore drive.csv --to csv",
            "decode van.lore drive.csv --to jsonl",
            "decode van.lore drive.csv --to csv --shape frames --signals words.*",
            "decode van.lore drive.csv --shape grid --every 1s",
            "decode van.lore drive.csv --shape grid --every 1s --to csv",
            "decode van.lore drive.csv --strict --bind x=drive",
            "encode van.lore words text=a",
        ] {
            let shown = shown(&bench, line, false);
            let whole = shown.replace("\r\n", "\n");
            assert!(
                !whole.is_empty() && !whole.contains(|letter| acts(letter) || letter == '\r'),
                "{line}, {text:?}: {whole:?}"
            );
        }
    }
}

/// Where there are colours the only sequences are those that set them (ECMA-48, SGR): ours are never the one that blinks.
#[test]
fn colours_are_the_only_sequences() {
    let bench = Bench::of("\u{1B}[5mblink\u{1B}]0;title\u{7}\u{9B}5m");
    let path = bench.path().join("van.lore");
    let text = std::fs::read_to_string(&path).expect("it is there");
    // A mistake whose line has such texts, raw in a comment and in a note.
    std::fs::write(&path, format!("{text}## \u{1B}[5m \u{9B}5m\nframe words on drive id 0x200 # \u{1B}]0;x\u{7}\n"))
        .expect("written");
    let shown = shown(&bench, "check van.lore", true);
    assert!(shown.contains("\u{1B}["), "there are colours: {shown:?}");
    for sequence in shown.split('\u{1B}').skip(1) {
        let end = sequence.find(|letter: char| !matches!(letter, '[' | ';' | '0'..='9')).expect("it ends");
        assert!(
            sequence.starts_with('[') && sequence[end..].starts_with('m') && sequence[..end] != *"[5",
            "{sequence:?}"
        );
    }
    assert!(!shown.contains(|letter| acts(letter) && letter != '\u{1B}'), "{shown:?}");
}
