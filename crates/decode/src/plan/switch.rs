//! Which page of a frame holds.

use wirelore_bits::{Encoding, Extractor, Number};
use wirelore_model::{Frame, Page, SignalId, Test};

use super::floats::FloatSpan;
use super::frame::NO_SWITCH;
use crate::reading::Unmatched;
use crate::spans::{Run, Spans};

/// Pages that exclude each other, and the selectors that decide between them.
#[derive(Debug, Clone)]
pub(crate) struct Switch {
    selectors: Box<[Selector]>,
    pages: Pages,
    otherwise: Option<u32>,
    /// The switch that comes after this one and everything inside its pages.
    pub(crate) next: u32,
}

#[derive(Debug, Clone)]
struct Selector {
    signal: SignalId,
    extractor: Extractor,
    encoding: Encoding,
}

#[derive(Debug, Clone)]
enum Pages {
    /// One selector of whole numbers: its number leads straight to the page's group.
    Direct(Spans<u32>),
    /// Anything else: the first page whose tests all pass.
    InTurn(Box<[Row]>),
    /// An element of a repeated group: there where the payload has so many bytes and the count, if there is one, has such a number.
    Element { reaches: u32, counts: Option<Spans<()>>, group: u32 },
}

#[derive(Debug, Clone)]
struct Row {
    tests: Box<[RowTest]>,
    group: u32,
}

/// A look at one selector.
#[derive(Debug, Clone)]
struct RowTest {
    selector: usize,
    numbers: Spans<()>,
    floats: Box<[FloatSpan]>,
}

/// What a switch says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Selected {
    /// This group holds.
    Group(u32),
    /// No page takes the selectors' values, and there is no page for the others.
    Nothing(Unmatched),
    /// The payload ends before a selector does.
    TooShort,
    /// An element of a repeated group that is not there, and need not be.
    NotThere,
}

/// A selector's value.
#[derive(Debug, Clone, Copy)]
struct Seen {
    bits: u64,
    number: Option<Number>,
}

impl Seen {
    fn whole(&self) -> Option<i128> {
        match self.number {
            Some(Number::Integer(number)) => Some(number),
            Some(Number::Float(_)) | None => None,
        }
    }
}

impl Switch {
    /// The switch made of `pages`, each with the number of its group. Selectors that are no numbers never pass.
    pub(crate) fn new(frame: &Frame, pages: &[(&Page, u32)]) -> Self {
        let mut selectors: Vec<Selector> = Vec::new();
        for test in pages.iter().flat_map(|(page, _)| &page.tests) {
            if selectors.iter().all(|known| known.signal != test.selector) {
                selectors.extend(Selector::new(frame, test.selector));
            }
        }
        if let Some(element) = Self::element(pages, &selectors) {
            return Self { selectors: selectors.into(), pages: element, otherwise: None, next: NO_SWITCH };
        }
        let otherwise = pages.iter().find(|(page, _)| page.tests.is_empty()).map(|&(_, group)| group);
        let with_tests: Vec<_> = pages.iter().filter(|(page, _)| !page.tests.is_empty()).collect();
        let direct = match selectors.as_slice() {
            [only] if with_tests.iter().all(|(page, _)| page.tests.len() == 1) => {
                only.encoding.integer_range().map(|_| only.encoding)
            }
            _ => None,
        };
        let pages = match direct {
            Some(encoding) => Pages::Direct(Spans::first_wins(with_tests.iter().flat_map(|(page, group)| {
                let spans =
                    page.tests.iter().flat_map(|test| &test.values).filter_map(move |span| span.numbers(encoding));
                spans.map(|(first, last)| Run { first, last, what: *group })
            }))),
            None => Pages::InTurn(with_tests.iter().map(|(page, group)| Row::new(page, *group, &selectors)).collect()),
        };
        Self { selectors: selectors.into(), pages, otherwise, next: NO_SWITCH }
    }

    /// The look at an element of a repeated group, which has a switch of its own.
    fn element(pages: &[(&Page, u32)], selectors: &[Selector]) -> Option<Pages> {
        let (page, group) = pages.first()?;
        let reaches = page.element?.reaches;
        let counts = selectors.first().map(|counter| {
            let values = page.tests.iter().flat_map(|test| &test.values);
            let runs = values.filter_map(|span| span.numbers(counter.encoding));
            Spans::first_wins(runs.map(|(first, last)| Run { first, last, what: () }))
        });
        Some(Pages::Element { reaches, counts, group: *group })
    }

    /// Which group holds in a payload that is taken to have so many bytes, as far as elements of repeated groups ask for that.
    #[inline(always)]
    pub(crate) fn select_in(&self, payload: &[u8], length_bytes: usize) -> Selected {
        let found = match &self.pages {
            Pages::Direct(groups) => {
                let Some(seen) = self.selectors.first().and_then(|selector| selector.read(payload)) else {
                    return Selected::TooShort;
                };
                seen.whole().and_then(|number| groups.get(number))
            }
            Pages::InTurn(rows) => {
                if self.selectors.iter().any(|selector| selector.read(payload).is_none()) {
                    return Selected::TooShort;
                }
                rows.iter().find(|row| row.holds(&self.selectors, payload)).map(|row| row.group)
            }
            Pages::Element { reaches, counts, group } => {
                let seen = || self.selectors.first()?.read(payload)?.whole();
                let is_counted =
                    counts.as_ref().is_none_or(|counts| seen().is_some_and(|count| counts.get(count).is_some()));
                let is_there = is_counted && length_bytes >= *reaches as usize;
                return if is_there { Selected::Group(*group) } else { Selected::NotThere };
            }
        };
        match found.or(self.otherwise) {
            Some(group) => Selected::Group(group),
            None => self.unmatched(payload).map_or(Selected::TooShort, Selected::Nothing),
        }
    }

    /// The selector to name: the first one whose value no page takes; where each value is taken somewhere, the last one.
    #[cold]
    fn unmatched(&self, payload: &[u8]) -> Option<Unmatched> {
        let taken_somewhere = |index: usize| match &self.pages {
            Pages::Direct(_) | Pages::Element { .. } => false,
            Pages::InTurn(rows) => {
                let mut tests = rows.iter().flat_map(|row| &row.tests).filter(|test| test.selector == index);
                tests.any(|test| test.passes(&self.selectors, payload))
            }
        };
        let named = (0..self.selectors.len()).find(|&index| !taken_somewhere(index));
        let selector = named.map_or(self.selectors.last(), |index| self.selectors.get(index))?;
        let seen = selector.read(payload)?;
        Some(Unmatched { selector: selector.signal, number: seen.whole(), bits: seen.bits })
    }
}

impl Selector {
    fn new(frame: &Frame, signal: SignalId) -> Option<Self> {
        let described = frame.signals.get(signal.index())?;
        let wirelore_model::Content::Number { field, .. } = &described.content else {
            return None;
        };
        Some(Self { signal, extractor: Extractor::new(field), encoding: described.encoding()? })
    }

    fn read(&self, payload: &[u8]) -> Option<Seen> {
        let bits = self.extractor.extract(payload)?;
        Some(Seen { bits, number: self.encoding.number(bits).ok() })
    }
}

impl Row {
    fn new(page: &Page, group: u32, selectors: &[Selector]) -> Self {
        let tests = page.tests.iter().filter_map(|test| RowTest::new(test, selectors)).collect();
        Self { tests, group }
    }

    fn holds(&self, selectors: &[Selector], payload: &[u8]) -> bool {
        self.tests.iter().all(|test| test.passes(selectors, payload))
    }
}

impl RowTest {
    fn new(test: &Test, selectors: &[Selector]) -> Option<Self> {
        let selector = selectors.iter().position(|selector| selector.signal == test.selector)?;
        let encoding = selectors.get(selector)?.encoding;
        let numbers = test.values.iter().filter_map(|span| span.numbers(encoding));
        Some(Self {
            selector,
            numbers: Spans::first_wins(numbers.map(|(first, last)| Run { first, last, what: () })),
            floats: test.values.iter().filter_map(FloatSpan::new).collect(),
        })
    }

    fn passes(&self, selectors: &[Selector], payload: &[u8]) -> bool {
        let Some(seen) = selectors.get(self.selector).and_then(|selector| selector.read(payload)) else {
            return false;
        };
        match seen.number {
            Some(Number::Integer(number)) => self.numbers.get(number).is_some(),
            Some(Number::Float(number)) => self.floats.iter().any(|span| span.contains(seen.bits, number)),
            None => false,
        }
    }
}
