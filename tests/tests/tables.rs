//! Typed tables as the command writes them: a folder that appears whole or not at all, one file where one table is left.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

use wirelore_tests::folder::names;

const DESCRIPTION: &str = "network drive can 500 kbit/s\n\
    frame speed on drive id 0x1B4 { signal wheel in byte 0 = raw * 0.5 km/h }\n\
    frame door on drive id 0x300 { signal open in bit 0.0, states { 0 shut, 1 open } }\n\
    frame horn on drive id 0x301 { signal on in bit 0.0 }\n";
const LOG: &str = "time,id,data\n0.0,0x1B4,01\n0.1,0x1B4,02\n0.2,0x300,01\n";

fn wirelore(folder: &Path, line: &str) -> Output {
    Command::new(env!("CARGO_BIN_EXE_wirelore-under-test"))
        .current_dir(folder)
        .args(line.split(' '))
        .output()
        .expect("the command starts")
}

/// Runs a command that has to be done; what it said on standard error.
fn done(folder: &Path, line: &str) -> String {
    let output = wirelore(folder, line);
    let told = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(0), "{line}: {told}");
    told
}

/// Runs a command that has to be refused; why it was.
fn refused(folder: &Path, line: &str) -> String {
    let output = wirelore(folder, line);
    let told = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(2), "{line}: {told}");
    told
}

fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("van.lore"), DESCRIPTION).expect("written");
    fs::write(folder.path().join("drive.csv"), LOG).expect("written");
    folder
}

/// The first bytes of each format (Parquet and Arrow columnar format, as published; an Arrow stream begins with a continuation marker).
const BEGINNINGS: [(&str, &[u8]); 3] = [("parquet", b"PAR1"), ("arrow", b"ARROW1"), ("arrows", &[0xFF; 4])];

#[test]
fn a_folder_holds_a_table_for_each_frame_that_was_seen() {
    let folder = folder();
    let told = done(folder.path(), "decode van.lore drive.csv --to parquet -o tables");
    assert!(told.contains("tables: 2 tables, 3 rows") && told.contains("never seen: horn"), "{told}");
    assert_eq!(names(folder.path()), ["drive.csv", "tables", "van.lore"]);
    assert_eq!(names(&folder.path().join("tables")), ["door.parquet", "speed.parquet"]);
    done(folder.path(), "decode van.lore drive.csv --to arrow -o arrows");
    assert_eq!(names(&folder.path().join("arrows")), ["door.arrow", "speed.arrow"]);
    done(folder.path(), "decode van.lore drive.csv --to csv --shape frames -o lines");
    assert_eq!(names(&folder.path().join("lines")), ["door.csv", "speed.csv"]);
    let read = |name| fs::read_to_string(folder.path().join("lines").join(name)).expect("it is there");
    assert_eq!(read("speed.csv"), "time,wheel [km/h]\n0.000000,0.5\n0.100000,1\n");
    assert_eq!(read("door.csv"), "time,open\n0.200000,open\n");
}

#[test]
fn a_second_run_replaces_the_tables_of_the_first() {
    let folder = folder();
    done(folder.path(), "decode van.lore drive.csv --to parquet -o tables");
    done(folder.path(), "decode van.lore drive.csv --to parquet -o tables --signals speed");
    assert_eq!(names(&folder.path().join("tables")), ["speed.parquet"]);
}

#[test]
fn a_folder_with_something_else_in_it_is_left_alone() {
    let folder = folder();
    fs::create_dir(folder.path().join("tables")).expect("made");
    fs::write(folder.path().join("tables/notes.txt"), "precious").expect("written");
    let told = refused(folder.path(), "decode van.lore drive.csv --to parquet -o tables");
    assert!(told.contains("holds notes.txt, which is no table of this description"), "{told}");
    assert_eq!(names(&folder.path().join("tables")), ["notes.txt"]);
    // Here the log itself would pass for a table.
    fs::create_dir(folder.path().join("logs")).expect("made");
    fs::write(folder.path().join("logs/speed.csv"), LOG).expect("written");
    let told = refused(folder.path(), "decode van.lore logs/speed.csv --to csv --shape frames -o logs");
    assert!(told.contains("is read here"), "{told}");
    assert_eq!(fs::read_to_string(folder.path().join("logs/speed.csv")).expect("it is there"), LOG);
    let told = refused(folder.path(), "decode van.lore drive.csv --to parquet -o van.lore");
    assert!(told.contains("is what is read here"), "{told}");
    fs::write(folder.path().join("file"), "precious").expect("written");
    assert!(refused(folder.path(), "decode van.lore drive.csv --to parquet -o file").contains("is a file"));
}

#[test]
fn a_run_that_fails_leaves_everything_as_it_was() {
    let folder = folder();
    done(folder.path(), "decode van.lore drive.csv --to parquet -o tables");
    let before = fs::read(folder.path().join("tables/speed.parquet")).expect("it is there");
    refused(folder.path(), "decode van.lore drive.csv --to parquet -o tables --bind x=drive");
    refused(folder.path(), "decode van.lore drive.csv --to parquet -o fresh --bind x=drive");
    refused(folder.path(), "decode van.lore drive.csv --to parquet -o no/such/place");
    assert_eq!(names(folder.path()), ["drive.csv", "tables", "van.lore"]);
    assert_eq!(names(&folder.path().join("tables")), ["door.parquet", "speed.parquet"]);
    assert_eq!(fs::read(folder.path().join("tables/speed.parquet")).expect("it is there"), before);
}

#[test]
fn one_table_goes_into_one_file_or_into_a_pipe() {
    let folder = folder();
    for (ending, begins) in BEGINNINGS {
        let name = format!("speed.{ending}");
        done(folder.path(), &format!("decode van.lore drive.csv --signals speed -o {name}"));
        let bytes = fs::read(folder.path().join(&name)).expect("it is there");
        assert!(bytes.starts_with(begins), "{name}");
        let several = refused(folder.path(), &format!("decode van.lore drive.csv -o {name}"));
        assert!(several.contains("takes one table, and these are 3: speed, door, horn"), "{several}");
        // A grid is one table.
        done(folder.path(), &format!("decode van.lore drive.csv --shape grid --every 100ms -o grid.{ending}"));
        assert!(fs::read(folder.path().join(format!("grid.{ending}"))).expect("it is there").starts_with(begins));
    }
    for (form, begins) in [("parquet", &b"PAR1"[..]), ("arrow", &[0xFF; 4])] {
        for to in ["", " -o -"] {
            let output = wirelore(folder.path(), &format!("decode van.lore drive.csv --signals door --to {form}{to}"));
            assert!(output.stdout.starts_with(begins), "{output:?}");
        }
    }
    // A frame that was never seen still makes the file that was asked for.
    done(folder.path(), "decode van.lore drive.csv --signals horn -o horn.parquet");
    assert!(folder.path().join("horn.parquet").exists());
}

#[test]
fn the_same_input_gives_the_same_folder() {
    let folder = folder();
    for form in ["parquet", "arrow", "csv"] {
        for name in ["one", "two"] {
            done(
                folder.path(),
                &format!("decode van.lore drive.csv --to {form} --shape frames --states -o {form}-{name}"),
            );
        }
        let read = |name: &str, file: &str| {
            fs::read(folder.path().join(format!("{form}-{name}/{file}.{form}"))).expect("it is there")
        };
        for file in ["speed", "door"] {
            assert_eq!(read("one", file), read("two", file));
        }
    }
}
