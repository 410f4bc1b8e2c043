//! The files that were read: a list that grows at its end while trees point into what is on it.

use std::cell::OnceCell;

use crate::Sources;
use crate::syntax::Script;

/// A place for a file, and behind it the place for the next one. What is put there stays where it is.
#[derive(Debug, Default)]
pub(crate) struct Shelf(OnceCell<Box<Volume>>);

#[derive(Debug)]
struct Volume {
    name: String,
    script: Script,
    next: Shelf,
}

impl Shelf {
    /// Puts a file here, at a place that is free. Gives the file back, and the next free place.
    pub(crate) fn put(&self, name: String, script: Script) -> (&Script, &Self) {
        let volume = self.0.get_or_init(|| Box::new(Volume { name, script, next: Self::default() }));
        (&volume.script, &volume.next)
    }

    /// The texts, in the order in which they came.
    pub(crate) fn into_sources(self) -> Sources {
        let mut sources = Sources::default();
        let mut rest = self;
        while let Some(volume) = rest.0.into_inner() {
            sources.add(volume.name, volume.script.into_text());
            rest = volume.next;
        }
        sources
    }
}
