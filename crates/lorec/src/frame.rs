//! Frames of a table.

use crate::layout::Section;
use crate::reading::Reading;
use crate::signal::Signal;
use crate::table::Lorec;
use crate::walk::Walk;

/// A frame of a table.
#[derive(Debug, Clone, Copy)]
pub struct Frame<'a> {
    table: Lorec<'a>,
    index: u32,
    words: [u32; 8],
}

/// How the decoding of one frame went.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Outcome {
    /// How many readings were handed out.
    pub readings: u32,
    /// The payload is shorter than the description allows, or, where it states no length, than some signal that is there needs. Signals that
    /// fit are decoded.
    pub too_short: bool,
    /// The first selector without a page for its value.
    pub unmatched: Option<Unmatched>,
}

/// A selector whose value none of its pages takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Unmatched {
    /// The position of the selector among the signals of the description.
    pub selector: u32,
    /// Its bits, right-aligned.
    pub bits: u64,
}

impl<'a> Frame<'a> {
    pub(crate) fn at(table: Lorec<'a>, index: u32) -> Option<Self> {
        Some(Self { table, index, words: table.record(Section::Frames, index)? })
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &'a str {
        let [start, length, ..] = self.words;
        self.table.text(start, length)
    }

    /// Its position among the frames of the description, from 0.
    #[must_use]
    pub fn position(&self) -> u32 {
        self.index
    }

    /// Its signals: those that are always there first, then page by page.
    pub fn signals(&self) -> impl Iterator<Item = Signal<'a>> + use<'a> {
        let [.., first, count] = self.words;
        let table = self.table;
        (0..count).map_while(move |at| Signal::at(table, first.checked_add(at)?))
    }

    /// Hands the readings of one payload to `each`: signals that are always there first, then those of the pages that hold.
    pub fn decode<'p>(&self, payload: &'p [u8], mut each: impl FnMut(Signal<'a>, Reading<'p>)) -> Outcome
    where
        'a: 'p,
    {
        let [_, _, first_page, pages, _, switches, ..] = self.words;
        if pages == 0 {
            return Outcome::default();
        }
        Walk::new(self.table, payload, switches).run(first_page, &mut each)
    }
}
