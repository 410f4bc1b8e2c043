//! Getting a checked description, from text or from a stored database.

use std::path::Path;

use wirelore_lang::{Checked, FileLoader, Level, check, holds_stored, render};
use wirelore_model::{Database, store};

use crate::failure::Failure;
use crate::tell::{colour_wanted, tell};

/// Reads a description: `.lore` text, or a stored database (told apart by the ending).
///
/// Messages about the text go to standard error, errors and warnings only.
///
/// # Errors
/// [`Failure::Told`] where the text has mistakes, [`Failure::Read`] and [`Failure::Store`] where there is none to be had.
pub(crate) fn load(name: &str) -> Result<Database, Failure> {
    if let Some(bytes) = stored_bytes(name)? {
        return store::load(&bytes).map_err(|reason| Failure::Store { name: name.to_owned(), reason });
    }
    let Checked { sources, diagnostics, database } = check(&[name], &FileLoader);
    let worth_telling: Vec<_> = diagnostics.into_iter().filter(|it| it.level() > Level::Hint).collect();
    if !worth_telling.is_empty() {
        tell(&render::text(&sources, &worth_telling, colour_wanted(&std::io::stderr())));
    }
    database.ok_or(Failure::Told)
}

/// Whether a file is a description, by the ending of its name; else it is a log.
pub(crate) fn stores_description(name: &str) -> bool {
    holds_stored(Path::new(name)) || is_text(name)
}

/// Whether it is a text in the language.
pub(crate) fn is_text(name: &str) -> bool {
    Path::new(name).extension().is_some_and(|ending| ending == "lore")
}

/// The bytes of a stored database, or nothing where the file is a text in the language.
fn stored_bytes(name: &str) -> Result<Option<Vec<u8>>, Failure> {
    let path = Path::new(name);
    if !holds_stored(path) {
        return Ok(None);
    }
    std::fs::read(path).map(Some).map_err(|reason| Failure::Read { path: path.to_owned(), reason })
}
