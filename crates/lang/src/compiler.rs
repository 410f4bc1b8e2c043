//! The whole way: files to trees, trees to a description, a description to a database.

use wirelore_model::Database;

use crate::resolve::catalogue::Catalogue;
use crate::resolve::messages::Messages;
use crate::resolve::shelf::Shelf;
use crate::resolve::{ParsedFile, load, resolve};
use crate::{Diagnostic, Level, Loader, Rule, Sources};

/// What came out of a description.
#[derive(Debug, Clone)]
pub struct Checked {
    /// All files that were read.
    pub sources: Sources,
    /// The messages, by file and place.
    pub diagnostics: Vec<Diagnostic>,
    /// The database; `None` where a message is an error.
    pub database: Option<Database>,
}

impl Checked {
    /// Whether a message is an error, so that there is no database.
    #[must_use]
    pub fn has_errors(&self) -> bool {
        self.diagnostics.iter().any(|message| message.level() == Level::Error)
    }

    /// Whether a file that was asked for (not one that another file uses) could not be read at all.
    #[must_use]
    pub fn unreadable(&self) -> bool {
        // Such a file is a source without text, and a message of these rules about a text has some of it to point at.
        self.diagnostics.iter().any(|message| {
            matches!(message.rule, Rule::FileNotFound | Rule::FileNotText | Rule::FileTooLarge)
                && self.sources.text(message.site.file).is_empty()
        })
    }
}

/// Reads and checks descriptions, and all files that they use.
///
/// Time and memory are bounded, whatever the files say. The same files give the same result.
#[must_use]
pub fn check(entries: &[&str], loader: &dyn Loader) -> Checked {
    let (shelf, mut messages) = (Shelf::default(), Messages::new());
    let files = load::read_all(entries, loader, &shelf, &mut messages);
    let (diagnostics, database) = finish(&files, messages);
    drop(files);
    Checked { sources: shelf.into_sources(), diagnostics, database }
}

/// Reads and checks one text. It can use the descriptions that come with the program (`use standard ...`), and no files.
#[must_use]
pub fn check_text(name: &str, text: &str) -> Checked {
    let (shelf, mut messages) = (Shelf::default(), Messages::new());
    let files = load::read_text(name, text, &shelf, &mut messages);
    let (diagnostics, database) = finish(&files, messages);
    drop(files);
    Checked { sources: shelf.into_sources(), diagnostics, database }
}

fn finish(files: &[ParsedFile<'_>], mut messages: Messages) -> (Vec<Diagnostic>, Option<Database>) {
    let catalogue = Catalogue::of(files, &mut messages);
    let resolved = resolve(&catalogue, &mut messages);
    crate::check::whole(&resolved, &catalogue, &mut messages);
    let mut diagnostics = crate::check::settle(files, messages);
    let mut database = None;
    if diagnostics.iter().all(|message| message.level() < Level::Error) {
        match Database::new(resolved.description) {
            Ok(checked) => database = Some(checked),
            // The rules leave nothing for this to find; should it find something all the same, that is said and not hidden.
            Err(invalid) => {
                diagnostics.insert(0, Diagnostic::new(Rule::MissingPart, load::beginning(), invalid.to_string()))
            }
        }
    }
    (diagnostics, database)
}
