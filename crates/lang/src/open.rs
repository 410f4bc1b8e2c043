//! From a file to a database, for programs that embed the language: one call, one error.

use std::path::Path;

use wirelore_model::{Database, store};

use crate::{Checked, FileLoader, Level, check, render};

/// Why a description could not be opened.
#[derive(Debug, thiserror::Error)]
pub enum OpenError {
    /// The text has mistakes, or a file that it uses cannot be read.
    #[error("{text}")]
    Mistakes {
        /// The messages as the command shows them, errors and warnings, without colours.
        text: String,
    },
    /// A stored database cannot be read.
    #[error("cannot read {name}: {reason}")]
    Read {
        /// The file.
        name: String,
        /// What the system says.
        #[source]
        reason: std::io::Error,
    },
    /// It can be read, and is no stored database, or a damaged one.
    #[error("{name}: {reason}")]
    Store {
        /// The file.
        name: String,
        /// What is wrong with it.
        #[source]
        reason: store::LoadError,
    },
}

/// Opens a description: text in the language, with all files that it uses, or a stored database (`.json`, `.lorebin`), told apart by the
/// ending of the file's name.
///
/// Warnings do not keep a description from being opened, and are not told; [`check()`] gives them.
///
/// ```no_run
/// let database = wirelore_lang::open("van.lore")?;
/// println!("{} frames on {} networks", database.frames.len(), database.networks.len());
/// # Ok::<(), wirelore_lang::OpenError>(())
/// ```
///
/// # Errors
/// [`OpenError::Mistakes`] for a text, with each place, its reason and a way out; else the file or its contents.
pub fn open(path: impl AsRef<Path>) -> Result<Database, OpenError> {
    let path = path.as_ref();
    let name = path.to_string_lossy();
    if holds_stored(path) {
        let bytes = std::fs::read(path).map_err(|reason| OpenError::Read { name: name.to_string(), reason })?;
        return store::load(&bytes).map_err(|reason| OpenError::Store { name: name.into_owned(), reason });
    }
    let Checked { sources, diagnostics, database } = check(&[&name], &FileLoader);
    database.ok_or_else(|| {
        let told: Vec<_> = diagnostics.into_iter().filter(|message| message.level() > Level::Hint).collect();
        OpenError::Mistakes { text: render::text(&sources, &told, false).trim_end().to_owned() }
    })
}

/// Whether a file holds a stored database and no text, by the ending of its name.
#[must_use]
pub fn holds_stored(path: &Path) -> bool {
    path.extension().is_some_and(|ending| ending == "json" || ending == "lorebin")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(name: &str, contents: &[u8]) -> (tempfile::TempDir, std::path::PathBuf) {
        let folder = tempfile::tempdir().expect("there is room for a folder");
        let path = folder.path().join(name);
        std::fs::write(&path, contents).expect("there is room for a file");
        (folder, path)
    }

    #[test]
    fn text_and_stored_forms_give_the_same_database() {
        let text = "network drive can 500 kbit/s\nframe doors on drive id 0x210 { signal open in bit 0.0 }\n";
        let (_folder, path) = file("van.lore", text.as_bytes());
        let database = open(&path).expect("no mistakes");
        for (name, bytes) in
            [("van.json", store::to_json(&database).into_bytes()), ("van.lorebin", store::to_lorebin(&database))]
        {
            let (_folder, path) = file(name, &bytes);
            assert_eq!(open(&path).expect("as it was written"), database, "{name}");
        }
    }

    #[test]
    fn errors_say_where() {
        let (_folder, path) =
            file("van.lore", b"network drive can 500 kbit/s\nframe doors on drive id 0x210 { length 99 }\n");
        let told = open(&path).expect_err("no CAN frame has 99 bytes").to_string();
        assert!(told.contains("van.lore:2:") && told.contains("99"), "{told}");
        let (_folder, path) = file("van.lorebin", b"not one");
        let told = open(&path).expect_err("no stored database").to_string();
        assert!(told.contains("van.lorebin: this is no stored database"), "{told}");
        let told = open("nowhere.json").expect_err("there is none").to_string();
        assert!(told.starts_with("cannot read nowhere.json"), "{told}");
        let told = open("nowhere.lore").expect_err("there is none").to_string();
        assert!(told.contains("nowhere.lore"), "{told}");
    }
}
