//! What a run leaves in a folder.

use std::fs;
use std::path::Path;

/// The names in a folder, in order, hidden ones among them.
///
/// # Panics
/// Where it cannot be listed.
#[must_use]
pub fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("a folder can be listed");
    let mut names: Vec<String> =
        entries.map(|entry| entry.expect("listed").file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}
