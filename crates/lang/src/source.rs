//! Source texts: how they come in, and how places in them are named.

mod contents;
mod file_loader;
mod memory_loader;

#[cfg(test)]
mod tests;

pub use contents::Contents;
pub use file_loader::{FileLoader, read_source};
pub use memory_loader::MemoryLoader;

use std::sync::OnceLock;

use crate::syntax::LONGEST_TEXT;
use crate::{FileId, Site};

/// All source files that were read, in the order in which they came.
#[derive(Debug, Clone, Default)]
pub struct Sources {
    files: Vec<Source>,
}

#[derive(Debug, Clone)]
struct Source {
    name: String,
    text: String,
    /// Found when a place is asked for: most descriptions have nothing to say, and no place to show.
    lines: OnceLock<Lines>,
}

#[derive(Debug, Clone)]
struct Lines {
    /// Where each line begins; the first one at 0.
    starts: Vec<u32>,
    /// All characters have one byte: columns need no counting.
    is_ascii: bool,
}

impl Source {
    fn lines(&self) -> &Lines {
        self.lines.get_or_init(|| {
            let ends = memchr::memchr_iter(b'\n', self.text.as_bytes()).map(|at| at as u32 + 1);
            // Texts beyond the limit are refused by the parser, with a message at their first character: no lines needed.
            let is_refused = self.text.len() > LONGEST_TEXT;
            let starts = if is_refused { vec![0] } else { std::iter::once(0).chain(ends).collect() };
            Lines { starts, is_ascii: self.text.is_ascii() }
        })
    }

    /// The line of a place, counted from 0, and where it begins.
    fn line_of(&self, at: u32) -> (usize, usize) {
        let starts = &self.lines().starts;
        let line = starts.partition_point(|&start| start <= at).max(1) - 1;
        (line, starts[line] as usize)
    }
}

impl Sources {
    /// Takes a file in. `name` is what messages call it.
    pub fn add(&mut self, name: impl Into<String>, text: impl Into<String>) -> FileId {
        self.files.push(Source { name: name.into(), text: text.into(), lines: OnceLock::new() });
        FileId(self.files.len() as u32 - 1)
    }

    /// The files, in order.
    pub fn ids(&self) -> impl Iterator<Item = FileId> + use<> {
        (0..self.files.len() as u32).map(FileId)
    }

    fn file(&self, file: FileId) -> Option<&Source> {
        self.files.get(file.0 as usize)
    }

    /// What messages call a file; empty for one that is not here.
    #[must_use]
    pub fn name(&self, file: FileId) -> &str {
        self.file(file).map_or("", |source| &source.name)
    }

    /// The text of a file; empty for one that is not here.
    #[must_use]
    pub fn text(&self, file: FileId) -> &str {
        self.file(file).map_or("", |source| &source.text)
    }

    /// Line and column of the first character of a site, both from 1, the column in characters.
    #[must_use]
    pub fn line_column(&self, site: Site) -> (u32, u32) {
        self.line_column_at(site.file, site.span.start)
    }

    /// Line and column behind the last character of a site.
    #[must_use]
    pub fn end_line_column(&self, site: Site) -> (u32, u32) {
        self.line_column_at(site.file, site.span.end)
    }

    fn line_column_at(&self, file: FileId, at: u32) -> (u32, u32) {
        let Some(source) = self.file(file) else { return (1, 1) };
        let (line, start) = source.line_of(at);
        let before = source.text.as_bytes().get(start..at as usize).unwrap_or_default();
        // Every byte that does not go on a character begins one.
        let begins = |byte: &&u8| **byte & 0xC0 != 0x80;
        let characters = if source.lines().is_ascii { before.len() } else { before.iter().filter(begins).count() };
        (line as u32 + 1, characters as u32 + 1)
    }

    /// The bytes of the lines that a site touches: from the start of the first to the end of the last, without its line end.
    pub(crate) fn lines_of(&self, site: Site) -> std::ops::Range<usize> {
        let Some(source) = self.file(site.file) else { return 0..0 };
        let (_, start) = source.line_of(site.span.start);
        let (last, _) = source.line_of(site.span.end.max(site.span.start));
        let end = source.lines().starts.get(last + 1).map_or(source.text.len(), |&next| next as usize);
        start..start + source.text[start..end].trim_end_matches(['\r', '\n']).len()
    }
}

/// Gives the texts that `use` and the command line name. The compiler opens nothing by itself.
pub trait Loader {
    /// Reads a file. `from` is the key of the file that uses it; a relative path counts from there.
    ///
    /// # Errors
    /// If there is no such file, or it is no text that can be read.
    fn load(&self, path: &str, from: Option<&str>) -> Result<Loaded, LoadError>;
}

/// A file that was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Loaded {
    /// Tells files apart: the same for every path that leads to the same file.
    pub key: String,
    /// What messages call it.
    pub name: String,
    /// Its text.
    pub text: String,
}

/// Why a file could not be read.
#[derive(Debug, thiserror::Error)]
pub enum LoadError {
    /// It does not exist.
    #[error("there is no file `{path}`")]
    NotFound {
        /// Where it was looked for.
        path: String,
    },
    /// It exists, and cannot be read.
    #[error("the file `{path}` cannot be read")]
    Unreadable {
        /// The file.
        path: String,
        /// What the system says.
        #[source]
        cause: std::io::Error,
    },
    /// It is longer than any description.
    #[error("the file `{path}` is larger than 16 MiB; split it into several and bring them together with `use`")]
    TooLarge {
        /// The file.
        path: String,
    },
    /// Its bytes are no UTF-8.
    #[error("the file `{path}` is not UTF-8 text: byte {byte_offset} begins no character; save it as UTF-8")]
    NotText {
        /// The file.
        path: String,
        /// The first byte that is wrong, counted from 0.
        byte_offset: usize,
    },
    /// It is something else than a description.
    #[error("the file `{path}` is not the text of a description")]
    NoDescription {
        /// The file.
        path: String,
        /// What it is.
        contents: Contents,
    },
}
