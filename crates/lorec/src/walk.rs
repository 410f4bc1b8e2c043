//! The way through the pages of a frame: each page names the switch that comes next, each switch the one behind it.

use wirelore_bits::Number;

use crate::frame::{Outcome, Unmatched};
use crate::layout::{NONE, Section, span, switch};
use crate::reading::Reading;
use crate::signal::{Raw, Signal};
use crate::table::Lorec;

pub(crate) struct Walk<'a, 'p> {
    table: Lorec<'a>,
    payload: &'p [u8],
    /// No more switches than the frame has, nor than there are: a damaged table must not lead in circles.
    steps_left: u32,
    least_bytes: u32,
    is_cut_off: bool,
    outcome: Outcome,
}

/// What a switch says.
enum Selected {
    Page(u32),
    Nothing(Unmatched),
    /// The payload ends before a selector does, or an element is not there.
    NotThere,
}

impl<'a: 'p, 'p> Walk<'a, 'p> {
    pub(crate) fn new(table: Lorec<'a>, payload: &'p [u8], switches: u32) -> Self {
        let outcome = Outcome::default();
        let steps_left = switches.min(table.count(Section::Switches));
        Self { table, payload, steps_left, least_bytes: NONE, is_cut_off: false, outcome }
    }

    pub(crate) fn run(mut self, first_page: u32, each: &mut impl FnMut(Signal<'a>, Reading<'p>)) -> Outcome {
        let mut next = self.page(first_page, each).unwrap_or(NONE);
        while next != NONE && self.steps_left > 0 {
            self.steps_left -= 1;
            let Some(record) = self.table.record::<6>(Section::Switches, next) else { break };
            let [.., behind, _] = record;
            next = behind;
            match self.select(record) {
                Selected::Page(page) => next = self.page(page, each).unwrap_or(behind),
                Selected::Nothing(told) => {
                    self.outcome.unmatched.get_or_insert(told);
                }
                Selected::NotThere => {}
            }
        }
        // A stated length has the last word: what a frame may leave out is not missing.
        if self.least_bytes != NONE {
            self.outcome.too_short = self.payload.len() < self.least_bytes as usize;
        }
        self.outcome.too_short |= self.is_cut_off;
        self.outcome
    }

    /// Hands over the readings of a page; gives the switch that comes next.
    fn page(&mut self, page: u32, each: &mut impl FnMut(Signal<'a>, Reading<'p>)) -> Option<u32> {
        let [first, count, needed_bytes, least_bytes, next] = self.table.record(Section::Pages, page)?;
        if least_bytes != NONE {
            self.least_bytes = least_bytes;
        }
        self.outcome.too_short |= self.payload.len() < needed_bytes as usize;
        for at in 0..count {
            let Some(signal) = first.checked_add(at).and_then(|at| Signal::at(self.table, at)) else { break };
            let (reading, is_cut_off) = signal.read(self.payload);
            self.is_cut_off |= is_cut_off;
            self.outcome.readings += 1;
            each(signal, reading);
        }
        Some(next)
    }

    fn select(&self, [kind, first_row, rows, otherwise, _, reaches]: [u32; 6]) -> Selected {
        let row = |at: u32| self.table.record::<3>(Section::Rows, first_row.checked_add(at)?);
        let rows = || (0..rows).map_while(row);
        if kind == switch::ELEMENT {
            let is_long_enough = self.payload.len() >= reaches as usize;
            let holds = |&[first, count, _]: &[u32; 3]| self.tests(first, count).all(|test| self.passes(test));
            let element = rows().find(|row| is_long_enough && holds(row));
            return element.map_or(Selected::NotThere, |[_, _, page]| Selected::Page(page));
        }
        let mut tests = rows().flat_map(|[first, count, _]| self.tests(first, count));
        if tests.any(|[selector, ..]| self.raw(selector).is_none()) {
            return Selected::NotThere;
        }
        let found = rows().find(|&[first, count, _]| self.tests(first, count).all(|test| self.passes(test)));
        match (found, otherwise) {
            (Some([_, _, page]), _) => Selected::Page(page),
            (None, NONE) => {
                let selectors = || rows().flat_map(|[first, count, _]| self.tests(first, count));
                self.unmatched(selectors).map_or(Selected::NotThere, Selected::Nothing)
            }
            (None, otherwise) => Selected::Page(otherwise),
        }
    }

    fn tests(&self, first: u32, count: u32) -> impl Iterator<Item = [u32; 3]> + use<'a> {
        let table = self.table;
        (0..count).map_while(move |at| table.record(Section::Tests, first.checked_add(at)?))
    }

    fn raw(&self, signal: u32) -> Option<Raw> {
        Signal::at(self.table, signal)?.raw(self.payload)
    }

    fn passes(&self, [selector, first, count]: [u32; 3]) -> bool {
        let Some(raw) = self.raw(selector) else { return false };
        let spans = (0..count).map_while(|at| self.table.record::<5>(Section::Spans, first.checked_add(at)?));
        spans.into_iter().any(|[kind, first_low, first_high, last_low, last_high]| {
            let [first, last] = [(first_low, first_high), (last_low, last_high)]
                .map(|(low, high)| u64::from(low) | u64::from(high) << 32);
            match (kind, raw.number) {
                (span::NUMBERS, _) => raw.counted().is_some_and(|number| (first..=last).contains(&number)),
                (span::BITS, Some(Number::Float(_))) => (first..=last).contains(&raw.bits),
                (span::FLOATS, Some(Number::Float(number))) => {
                    (f64::from_bits(first)..=f64::from_bits(last)).contains(&number)
                }
                _ => false,
            }
        })
    }

    /// The selector to name: the first one whose value no page takes; where each value is taken somewhere, the last one.
    fn unmatched<T: Iterator<Item = [u32; 3]>>(&self, tests: impl Fn() -> T) -> Option<Unmatched> {
        let taken_somewhere = |selector| tests().any(|test| test[0] == selector && self.passes(test));
        let mut last = None;
        let mut named = None;
        for (at, [selector, ..]) in tests().enumerate() {
            if tests().take(at).any(|[earlier, ..]| earlier == selector) {
                continue;
            }
            last = Some(selector);
            if !taken_somewhere(selector) {
                named = Some(selector);
                break;
            }
        }
        let signal = Signal::at(self.table, named.or(last)?)?;
        let raw = signal.raw(self.payload)?;
        Some(Unmatched { selector: signal.position(), bits: raw.bits })
    }
}
