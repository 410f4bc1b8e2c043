//! The map of the demo van as the README shows it, and the files that an exercise makes.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

fn demo() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../schema/demo")
}

fn map(folder: &Path, words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_wirelore-under-test"))
        .current_dir(folder)
        .arg("map")
        .arg(demo().join("kestrel.lore"))
        .args(words)
        .output()
        .expect("the command starts")
}

#[test]
fn the_picture_of_the_demo_is_what_the_program_draws() {
    let drawn = map(&demo(), &["--to", "svg"]);
    assert_eq!(drawn.status.code(), Some(0), "{drawn:?}");
    let path = demo().join("kestrel.svg");
    if std::env::var_os("BLESS").is_some() {
        fs::write(&path, &drawn.stdout).expect("the picture can be written");
    }
    let kept = fs::read(&path).expect("the picture is there");
    assert!(kept == drawn.stdout, "schema/demo/kestrel.svg is another picture; BLESS=1 draws it anew");
}

#[test]
fn an_exercise_has_its_solution_beside_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let done = map(folder.path(), &["--blank", "-o", "van.svg"]);
    assert_eq!(done.status.code(), Some(0), "{done:?}");
    let read = |name: &str| fs::read_to_string(folder.path().join(name)).expect("it is written");
    assert!(read("van.solution.svg").contains("Tyre pressure"));
    assert!(!read("van.svg").contains("Tyre pressure"));
    assert_eq!(fs::read_dir(folder.path()).expect("listed").count(), 2);
}

#[test]
fn a_page_needs_nothing_from_elsewhere() {
    let folder = tempfile::tempdir().expect("a folder");
    let done = map(folder.path(), &["--blank", "-o", "van.html"]);
    assert_eq!(done.status.code(), Some(0), "{done:?}");
    let page = fs::read_to_string(folder.path().join("van.html")).expect("it is written");
    assert_eq!(fs::read_dir(folder.path()).expect("listed").count(), 1, "the solution is in the page");
    let (exercise, solution) = page.split_once("<details>").expect("the solution is folded in");
    assert!(!exercise.contains("Tyre pressure") && solution.contains("Tyre pressure"));
    let outside = page.replace("http://www.w3.org/2000/svg", "");
    assert!(!outside.contains("http") && !outside.contains("src=") && !outside.contains("@import"));
}
