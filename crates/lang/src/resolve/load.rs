//! Reads all files: those that are asked for, and those that they use.

use std::collections::VecDeque;

use rustc_hash::FxHashSet;

use crate::syntax::Script;
use crate::syntax::tree::{ItemKind, Name};
use crate::{Contents, Diagnostic, FileId, LoadError, Loaded, Loader, MemoryLoader, Rule, Site, Span};

use super::messages::{Messages, at, suggest};
use super::shelf::Shelf;
use super::standard_place::{Placed, put_on_networks};
use super::{ParsedFile, standard};

/// The most files of one description.
const MOST_FILES: usize = 10_000;

/// The most text of one description, in bytes; a file that is loaded by two paths counts twice.
const MOST_BYTES: usize = 64 << 20;

struct Reader<'a, 't> {
    loader: &'a dyn Loader,
    files: Vec<ParsedFile<'t>>,
    /// Where the next file goes, and its number.
    end: &'t Shelf,
    next: FileId,
    /// The keys of the files that were read.
    known: FxHashSet<String>,
    /// The files whose `use` statements are still to be followed: position in the list, and key.
    open: VecDeque<(usize, String)>,
    /// The standards that were read: name, and position in the list.
    standards: Vec<(String, usize)>,
    placed: Vec<Placed<'t>>,
    loads: usize,
    bytes: usize,
}

/// Reads some files and all that they use, each once, and puts them on the shelf.
pub(crate) fn read_all<'t>(
    entries: &[&str],
    loader: &dyn Loader,
    shelf: &'t Shelf,
    messages: &mut Messages,
) -> Vec<ParsedFile<'t>> {
    let mut reader = Reader::new(loader, shelf);
    for path in entries {
        match loader.load(path, None) {
            Ok(loaded) => reader.take(loaded, messages),
            Err(error) => {
                // A source without text: that tells that nothing of this file was read.
                let file = reader.put((*path).to_owned(), String::new()).0;
                messages.push(not_loaded(&error, at(file, Span::default()), NamedBy::Caller));
            }
        }
    }
    reader.finish(messages)
}

/// Reads a text that is no file; it can use what comes with the program, and nothing else.
pub(crate) fn read_text<'t>(name: &str, text: &str, shelf: &'t Shelf, messages: &mut Messages) -> Vec<ParsedFile<'t>> {
    let nothing = MemoryLoader::default();
    let mut reader = Reader::new(&nothing, shelf);
    reader.take(Loaded { key: name.to_owned(), name: name.to_owned(), text: text.to_owned() }, messages);
    reader.finish(messages)
}

impl<'a, 't> Reader<'a, 't> {
    fn new(loader: &'a dyn Loader, shelf: &'t Shelf) -> Self {
        Self {
            loader,
            files: Vec::new(),
            end: shelf,
            next: FileId(0),
            known: FxHashSet::default(),
            open: VecDeque::new(),
            standards: Vec::new(),
            placed: Vec::new(),
            loads: 0,
            bytes: 0,
        }
    }

    fn finish(mut self, messages: &mut Messages) -> Vec<ParsedFile<'t>> {
        while let Some((index, key)) = self.open.pop_front() {
            self.follow(index, &key, messages);
        }
        put_on_networks(&mut self.files, &self.placed, messages);
        self.files
    }

    /// Puts a file on the shelf.
    fn put(&mut self, name: String, text: String) -> (FileId, &'t Script) {
        let file = self.next;
        let (script, end) = self.end.put(name, Script::new(text, file));
        self.end = end;
        self.next = FileId(file.0 + 1);
        (file, script)
    }

    fn take(&mut self, loaded: Loaded, messages: &mut Messages) {
        if !self.known.insert(loaded.key.clone()) {
            return;
        }
        self.bytes += loaded.text.len();
        let (file, script) = self.put(loaded.name, loaded.text);
        let (tree, wrong) = script.read();
        messages.extend(wrong);
        self.open.push_back((self.files.len(), loaded.key));
        self.files.push(ParsedFile { file, tree });
    }

    fn follow(&mut self, index: usize, key: &str, messages: &mut Messages) {
        let ParsedFile { file, tree } = &self.files[index];
        let file = *file;
        let mut paths = FxHashSet::default();
        let (mut uses, mut placed) = (Vec::new(), Vec::new());
        for item in &tree.items {
            match &item.kind {
                ItemKind::UseFile(path) if paths.insert(&path.value) => {
                    uses.push((Some(path.value.to_string()), String::new(), path.span))
                }
                ItemKind::UseStandard { standard, on } => {
                    uses.push((None, standard.value.to_string(), standard.span));
                    placed.extend(on.clone().map(|on| (standard.clone(), on)));
                }
                _ => {}
            }
        }
        for (path, name, span) in uses {
            let site = at(file, span);
            let found = match path {
                Some(path) => self.load(&path, key, site, messages),
                None => {
                    let found = standard(&name, site, messages);
                    if found.is_some() && !self.standards.iter().any(|(known, _)| *known == name) {
                        self.standards.push((name, self.files.len()));
                    }
                    found
                }
            };
            if let Some(loaded) = found {
                self.take(loaded, messages);
            }
        }
        // A standard that does not come with the program has been told.
        let place = |(standard, on): (Name<'t>, Name<'t>)| {
            let (_, index) = self.standards.iter().find(|(known, _)| *known == *standard.value)?;
            Some(Placed { file, standard, on, index: *index })
        };
        self.placed.extend(placed.into_iter().filter_map(place));
    }

    fn load(&mut self, path: &str, from: &str, site: Site, messages: &mut Messages) -> Option<Loaded> {
        self.loads += 1;
        if self.loads >= MOST_FILES {
            let message = format!("this description takes more than {MOST_FILES} files");
            messages.push(Diagnostic::new(Rule::FileTooLarge, site, message).here("not read any more"));
            return None;
        }
        let loaded = self
            .loader
            .load(path, Some(from))
            .map_err(|error| messages.push(not_loaded(&error, site, NamedBy::Use)))
            .ok()?;
        if self.known.contains(&loaded.key) {
            // Read again for nothing: its text counts, so that endless detours to one file come to an end.
            self.bytes += loaded.text.len();
        }
        if self.bytes.saturating_add(loaded.text.len()) > MOST_BYTES {
            let message = "the files of this description have more than 64 MiB together";
            messages.push(Diagnostic::new(Rule::FileTooLarge, site, message).here("not read any more"));
            return None;
        }
        Some(loaded)
    }
}

fn standard(name: &str, site: Site, messages: &mut Messages) -> Option<Loaded> {
    if let Some((known, text)) = standard::ALL.iter().find(|(known, _)| *known == name) {
        return Some(Loaded {
            key: format!("standard {known}"),
            name: format!("standard/{known}.lore"),
            text: (*text).to_owned(),
        });
    }
    let known = standard::ALL.map(|(known, _)| known);
    let meant = messages.nearest(name, known);
    let message =
        Diagnostic::new(Rule::UnknownStandard, site, format!("no description called `{name}` comes with this program"))
            .here("not there");
    messages.push(suggest(message, &meant).help(format!("these come with it: {}", known.join(", "))));
    None
}

/// Who named a file that could not be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum NamedBy {
    /// Whoever asks for the check, as on a command line.
    Caller,
    /// A `use` line.
    Use,
}

fn not_loaded(error: &LoadError, site: Site, named_by: NamedBy) -> Diagnostic {
    let rule = match error {
        LoadError::TooLarge { .. } => Rule::FileTooLarge,
        LoadError::NotText { .. } | LoadError::NoDescription { .. } => Rule::FileNotText,
        _ => Rule::FileNotFound,
    };
    let message = match error {
        LoadError::Unreadable { cause, .. } => format!("{error}: {cause}"),
        _ => error.to_string(),
    };
    let message = Diagnostic::new(rule, site, message).here("could not be read");
    let help = match (error, named_by) {
        (LoadError::NotFound { .. }, NamedBy::Use) => "a path is taken relative to the file that it stands in",
        (LoadError::NotFound { .. }, NamedBy::Caller) => "look at the name and the folder",
        (LoadError::NoDescription { .. }, NamedBy::Use) => "`use` takes the text of descriptions, and nothing else",
        (LoadError::NoDescription { contents: Contents::Recording, .. }, _) => {
            "this looks like a recording; the description comes first: `wirelore decode van.lore drive.pcapng`"
        }
        (LoadError::NoDescription { contents: Contents::Compiled, .. }, _) => {
            "this is a compiled description; `decode` and `explain` take it as it is"
        }
        (LoadError::NoDescription { contents: Contents::FlatTable, .. }, _) => {
            "this is a table for controllers, of which no description can be made again; give the text that it was compiled from"
        }
        _ => return message,
    };
    message.help(help)
}

/// The first place of the first file, for messages about the description as a whole.
pub(crate) fn beginning() -> Site {
    at(FileId(0), Span::default())
}
