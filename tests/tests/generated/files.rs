//! The files that are checked in.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::{env, fs};

use wirelore_codegen::rust_source;
use wirelore_lang::{FileLoader, check, check_text};
use wirelore_model::Database;

fn folder(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// The demo van.
pub(crate) fn demo() -> Database {
    let path = folder("../schema/demo/kestrel.lore");
    let checked = check(&[path.to_str().expect("a plain path")], &FileLoader);
    checked.database.expect("the demo has no mistakes")
}

/// A description that comes with the program.
pub(crate) fn standard(name: &str) -> Database {
    check_text("standard.lore", &format!("use standard {name}\n")).database.expect("standards have no mistakes")
}

fn beside(name: &str) -> Database {
    let text = fs::read_to_string(folder(&format!("generated/{name}"))).expect("it is there");
    check_text(name, &text).database.expect("it has no mistakes")
}

/// Names, titles and notes that mean something to Rust.
pub(crate) fn hostile() -> Database {
    beside("hostile.lore")
}

/// One of everything that a frame can hold.
pub(crate) fn kinds() -> Database {
    beside("kinds.lore")
}

/// The standards that describe frames.
pub(crate) const STANDARDS: [&str; 5] = ["doip", "heavy_duty", "obd", "someip", "uds"];

#[test]
fn the_files_are_what_is_written_now() {
    for (name, database) in
        [("kestrel", demo()), ("heavy_duty", standard("heavy_duty")), ("hostile", hostile()), ("kinds", kinds())]
    {
        let path = folder(&format!("generated/{name}.rs"));
        let source = rust_source(&database);
        assert_eq!(source, rust_source(&database), "the same description gives the same text");
        if env::var_os("BLESS").is_some() {
            fs::write(&path, &source).expect("the file can be written");
        }
        let file = fs::read_to_string(&path).expect("the file is there; BLESS=1 writes it");
        let same = file.lines().zip(source.lines()).take_while(|(one, other)| one == other).count();
        assert!(file == source, "{name}.rs is another from line {}; BLESS=1 writes it anew", same + 1);
    }
}

/// rustfmt with its own settings, not with those of this workspace. Skipped aloud where there is no rustfmt.
#[test]
fn rustfmt_leaves_the_source_as_it_is() {
    let scratch = tempfile::tempdir().expect("a folder for some files");
    fs::write(scratch.path().join("rustfmt.toml"), "").expect("it can be written");
    // The largest one takes rustfmt too long for every run.
    let names = STANDARDS.into_iter().filter(|name| *name != "obd").chain(["kestrel", "hostile", "kinds"]);
    for name in names {
        let database = match name {
            "kestrel" => demo(),
            "hostile" => hostile(),
            "kinds" => kinds(),
            _ => standard(name),
        };
        let path = scratch.path().join(format!("{name}.rs"));
        fs::write(&path, rust_source(&database)).expect("it can be written");
        let ran = Command::new("rustfmt").args(["--edition", "2024", "--check", "--quiet"]).arg(&path).output();
        let Ok(ran) = ran else {
            eprintln!("skipped: there is no rustfmt");
            return;
        };
        let told: String = String::from_utf8_lossy(&ran.stdout).chars().take(2000).collect();
        assert!(ran.status.success(), "rustfmt lays {name} out in another way:\n{told}");
    }
}

#[test]
fn nothing_hidden_comes_through() {
    for database in [demo(), hostile(), kinds()] {
        let source = rust_source(&database);
        let is_hidden =
            |letter: char| letter.is_control() && letter != '\n' || ('\u{202A}'..='\u{202E}').contains(&letter);
        assert_eq!(source.chars().find(|letter| is_hidden(*letter)), None);
    }
}
