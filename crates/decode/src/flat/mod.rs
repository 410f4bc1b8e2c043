//! A description as a flat table for `wirelore-lorec`: the plans, written down.

mod identifiers;
mod sections;
mod signals;

use wirelore_lorec::layout::{NONE, Section, span, switch};
use wirelore_model::{Content, Database, Frame, FrameId, Page, RawSpan, SignalId, Test};

use crate::error::SessionError;
use crate::plan::{Conversion, FloatSpan, FramePlan, Planner};
use sections::{Sections, two_words};

/// The description as a `.lorec` table, as [`wirelore_lorec::layout`] describes it. Its reader gives the same readings as a
/// [`Decoder`](crate::Decoder) in the described units.
///
/// What the reader does not know is left out: checks, transports, the elements behind the first one of a group that gives rows, and identifiers
/// of other networks than CAN and LIN.
///
/// # Errors
/// [`SessionError::CurveTooFine`] where a sensor curve cannot be held exactly, [`SessionError::TableTooLong`] beyond 4 GiB.
pub fn lorec(database: &Database) -> Result<Vec<u8>, SessionError> {
    let mut sections = Sections::default();
    let mut planner = Planner::new(database);
    for (frame, id) in database.frames.iter().zip((0..).map(FrameId)) {
        let too_fine = |signal: SignalId| SessionError::CurveTooFine {
            frame: frame.label.name.clone(),
            signal: frame[signal].label.name.clone(),
        };
        let plan = planner.frame(frame, |_| false, |_| Conversion::None).map_err(|fault| too_fine(fault.signal))?;
        FrameWriter { database, frame, id, sections: &mut sections }.write(&plan).map_err(too_fine)?;
    }
    identifiers::write(database, &mut sections);
    sections.into_file().ok_or(SessionError::TableTooLong)
}

/// Writes one frame.
struct FrameWriter<'a> {
    database: &'a Database,
    frame: &'a Frame,
    id: FrameId,
    sections: &'a mut Sections,
}

impl FrameWriter<'_> {
    fn write(&mut self, plan: &FramePlan) -> Result<(), SignalId> {
        let first_page = self.sections.count(Section::Pages);
        let first_switch = self.sections.count(Section::Switches);
        let first_signal = self.sections.count(Section::Signals);
        let order = self.signals_by_page();
        // Where each signal of the description stands in the table.
        let mut places = vec![0; self.frame.signals.len()];
        for (place, signal) in (first_signal..).zip(order.iter().flatten()) {
            places[signal.index()] = place;
        }
        let switch = |number: u32| if number == NONE { NONE } else { first_switch + number };
        let mut next_signal = first_signal;
        for (group, signals) in plan.groups.iter().zip(&order) {
            for &signal in signals {
                self.signal(signal, &places).map_err(|()| signal)?;
            }
            let count = signals.len() as u32;
            let least = group.least_bytes.unwrap_or(NONE);
            self.sections
                .push(Section::Pages, [next_signal, count, group.needed_bytes, least, switch(group.next_switch)]);
            next_signal += count;
        }
        for (number, planned) in (0..).zip(&plan.switches) {
            self.switch(number, (first_page, switch(planned.next)), &places);
        }
        let [start, length] = self.sections.text(&self.frame.label.name);
        let (pages, switches) = (plan.groups.len() as u32, plan.switches.len() as u32);
        debug_assert_eq!(self.sections.count(Section::Frames), self.id.0);
        self.sections.push(
            Section::Frames,
            [start, length, first_page, pages, first_switch, switches, first_signal, next_signal - first_signal],
        );
        Ok(())
    }

    /// Those that are always there first, then page by page.
    fn signals_by_page(&self) -> Vec<Vec<SignalId>> {
        let mut order = vec![Vec::new(); self.frame.pages.len() + 1];
        for (signal, id) in self.frame.signals.iter().zip((0..).map(SignalId)) {
            order[signal.page.map_or(0, |page| page.index() + 1)].push(id);
        }
        order
    }

    fn switch(&mut self, number: u32, (first_page, next): (u32, u32), places: &[u32]) {
        let pages = self.frame.pages.iter().zip(first_page + 1..).filter(|(page, _)| page.switch == number);
        let pages: Vec<(&Page, u32)> = pages.collect();
        let element = pages.first().and_then(|(page, _)| page.element);
        let rows: Vec<_> = pages.iter().filter(|(page, _)| element.is_some() || !page.tests.is_empty()).collect();
        let first_row = self.sections.count(Section::Rows);
        for (page, place) in &rows {
            let first_test = self.sections.count(Section::Tests);
            for test in &page.tests {
                self.test(test, places);
            }
            self.sections.push(Section::Rows, [first_test, page.tests.len() as u32, *place]);
        }
        let kind = if element.is_some() { switch::ELEMENT } else { switch::PAGES };
        let otherwise = pages.iter().find(|(page, _)| element.is_none() && page.tests.is_empty());
        let otherwise = otherwise.map_or(NONE, |(_, place)| *place);
        let reaches = element.map_or(0, |element| element.reaches);
        self.sections.push(Section::Switches, [kind, first_row, rows.len() as u32, otherwise, next, reaches]);
    }

    fn test(&mut self, test: &Test, places: &[u32]) {
        let first = self.sections.count(Section::Spans);
        for values in &test.values {
            if let Some(record) = span_record(&self.frame[test.selector], values) {
                self.sections.push(Section::Spans, record);
            }
        }
        let count = self.sections.count(Section::Spans) - first;
        self.sections.push(Section::Tests, [places[test.selector.index()], first, count]);
    }
}

/// A span of a selector's raw values; `None` where it is no unbroken run of them.
fn span_record(selector: &wirelore_model::Signal, values: &RawSpan) -> Option<[u32; 5]> {
    let Content::Number { .. } = selector.content else { return None };
    let encoding = selector.encoding()?;
    let (kind, first, last) = match encoding.integer_range() {
        Some((least, greatest)) => {
            let (first, last) = values.numbers(encoding)?;
            // What lies beyond the numbers that the bits can make never passes.
            let (first, last) = (first.max(least), last.min(greatest));
            if first > last {
                return None;
            }
            (span::NUMBERS, (first - least) as u64, (last - least) as u64)
        }
        None => match FloatSpan::new(values)? {
            FloatSpan::Bits(first, last) => (span::BITS, first, last),
            FloatSpan::Numbers(first, last) => (span::FLOATS, first.to_bits(), last.to_bits()),
        },
    };
    let ([a, b], [c, d]) = (two_words(first), two_words(last));
    Some([kind, a, b, c, d])
}
