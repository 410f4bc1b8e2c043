//! The names of a frame's signals, with the pages they are on.

use std::borrow::Cow;

use rustc_hash::FxHashMap;
use wirelore_model::{PageId, SignalId};

use crate::Site;

use super::flat::FlatPage;

/// A declared signal.
#[derive(Debug)]
pub(crate) struct Entry<'t> {
    name: Cow<'t, str>,
    pub(crate) page: Option<PageId>,
    /// Its place in the frame; `None` where it is broken: the name counts all the same.
    pub(crate) id: Option<SignalId>,
    pub(crate) site: Site,
    /// The entry before this one that has the same name.
    before: Option<usize>,
}

/// All of them.
#[derive(Debug, Default)]
pub(crate) struct SignalTable<'t> {
    entries: Vec<Entry<'t>>,
    last: FxHashMap<Cow<'t, str>, usize>,
}

impl<'t> SignalTable<'t> {
    /// Makes room for the next frame: the table is used again and again.
    pub(crate) fn clear(&mut self) {
        self.entries.clear();
        self.last.clear();
    }

    /// Enters a name. Returns the place of a signal that has the same name on the same page or on one around it or inside it.
    pub(crate) fn enter(
        &mut self,
        name: Cow<'t, str>,
        page: Option<PageId>,
        id: Option<SignalId>,
        site: Site,
        pages: &[FlatPage<'_>],
    ) -> Option<Site> {
        let index = self.entries.len();
        let before = self.last.insert(name.clone(), index);
        self.entries.push(Entry { name, page, id, site, before });
        let mut others = self.chain(before);
        others
            .find(|other| is_around(other.page, page, pages) || is_around(page, other.page, pages))
            .map(|other| other.site)
    }

    /// The signals of a name, the last one first.
    pub(crate) fn named(&self, name: &str) -> impl Iterator<Item = &Entry<'t>> {
        self.chain(self.last.get(name).copied())
    }

    fn chain(&self, from: Option<usize>) -> impl Iterator<Item = &Entry<'t>> {
        std::iter::successors(from.and_then(|index| self.entries.get(index)), |entry| {
            entry.before.and_then(|index| self.entries.get(index))
        })
    }

    /// The signals that can be seen from a page, by name.
    pub(crate) fn seen_from(&self, page: Option<PageId>, pages: &[FlatPage<'_>]) -> impl Iterator<Item = &str> {
        self.entries.iter().filter(move |entry| is_around(entry.page, page, pages)).map(|entry| &*entry.name)
    }
}

/// Whether what is on `outer` is there whenever something on `inner` is.
pub(crate) fn is_around(outer: Option<PageId>, inner: Option<PageId>, pages: &[FlatPage<'_>]) -> bool {
    let Some(outer) = outer else { return true };
    let mut page = inner;
    while let Some(current) = page {
        if current == outer {
            return true;
        }
        page = pages.get(current.index()).and_then(|page| page.parent);
    }
    false
}
