//! The house's floors: a crate uses crates of lower floors only.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// Floors as drawn in DEVELOPERS.md. The facade stands beside the command, on top of what it re-exports.
const FLOORS: [(&str, u32); 14] = [
    ("bits", 0),
    ("model", 1),
    ("transport", 1),
    ("lorec", 1),
    ("lang", 2),
    ("log", 2),
    ("decode", 3),
    ("tables", 4),
    ("survey", 4),
    ("draw", 5),
    ("codegen", 5),
    ("wirelore", 6),
    ("cli", 6),
    ("python", 6),
];

#[test]
fn every_crate_stands_on_lower_floors() {
    let floors: BTreeMap<&str, u32> = FLOORS.into_iter().collect();
    let crates = Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates");
    let mut seen = 0;
    for entry in fs::read_dir(crates).expect("the crates are there") {
        let folder = entry.expect("a folder can be listed").path();
        let name =
            folder.file_name().and_then(|name| name.to_str()).expect("a crate's folder has a plain name").to_owned();
        let floor =
            *floors.get(name.as_str()).unwrap_or_else(|| panic!("crate {name} has no floor in this test's table"));
        let manifest = fs::read_to_string(folder.join("Cargo.toml")).expect("a crate has a manifest");
        for used in dependencies(&manifest) {
            let below = floors[used.as_str()];
            assert!(below < floor, "{name} (floor {floor}) uses {used} (floor {below})");
        }
        seen += 1;
    }
    assert_eq!(seen, FLOORS.len());
}

/// The crates of this workspace that a manifest names under `[dependencies]`.
fn dependencies(manifest: &str) -> Vec<String> {
    manifest
        .lines()
        .skip_while(|line| *line != "[dependencies]")
        .skip(1)
        .take_while(|line| !line.starts_with('['))
        .filter_map(|line| line.strip_prefix("wirelore-"))
        .filter_map(|line| line.split([' ', '=', '.']).next())
        .map(str::to_owned)
        .collect()
}
