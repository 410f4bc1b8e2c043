//! Which selectors must say what, so that the given signals are there.

use wirelore_bits::Number;
use wirelore_model::{Database, Frame, Page, PageId, RawValue, SignalId};

use super::assemble::Assembly;
use super::error::EncodeError;
use crate::plan::Selected;

/// At most this many combinations of selector values are tried for one page.
const COMBINATIONS_MAX: usize = 4096;

/// A selector that is to be set.
pub(super) struct Choice {
    pub(super) selector: SignalId,
    pub(super) bits: u64,
    /// The value for people.
    pub(super) shown: String,
    pub(super) needed_by: SignalId,
}

/// The selectors to set, in their order from the outside in.
pub(super) fn selectors_for(
    assembly: &Assembly<'_>,
    database: &Database,
    given: &[SignalId],
) -> Result<Vec<Choice>, EncodeError> {
    let frame = assembly.frame;
    let mut trial =
        Trial { assembly, payload: assembly.payload.clone(), is_set: assembly.is_set.clone(), choices: Vec::new() };
    let is_counted = |(page, _): &(PageId, SignalId)| {
        let page = &frame.pages[page.index()];
        page.element.is_some() && !page.tests.is_empty()
    };
    let (counted, others): (Vec<_>, Vec<_>) = required_pages(database, frame, given)?.into_iter().partition(is_counted);
    // A count that reaches the last element of a group reaches all of them.
    for (page, needed_by) in counted.into_iter().rev().chain(others) {
        if !trial.choose(page, needed_by) {
            let signal = frame.signals[needed_by.index()].label.name.clone();
            return Err(EncodeError::NotThere { signal, condition: condition(database, frame, needed_by) });
        }
    }
    Ok(trial.choices)
}

/// The pages that must hold, parents first, each with a signal that needs it.
fn required_pages(
    database: &Database,
    frame: &Frame,
    given: &[SignalId],
) -> Result<Vec<(PageId, SignalId)>, EncodeError> {
    let mut required: Vec<(PageId, SignalId)> = Vec::new();
    for &signal in given {
        let mut page = frame.signals[signal.index()].page;
        while let Some(id) = page {
            let described = &frame.pages[id.index()];
            let rival = required
                .iter()
                .find(|(other, _)| *other != id && frame.pages[other.index()].switch == described.switch);
            if let Some(&(_, other)) = rival {
                let name = |id: SignalId| frame.signals[id.index()].label.name.clone();
                return Err(EncodeError::NeverTogether {
                    one: name(other),
                    one_condition: condition(database, frame, other),
                    other: name(signal),
                    other_condition: condition(database, frame, signal),
                });
            }
            if required.iter().all(|(known, _)| *known != id) {
                required.push((id, signal));
            }
            page = described.parent;
        }
    }
    // A parent stands before its children.
    required.sort_unstable_by_key(|(page, _)| *page);
    Ok(required)
}

/// A payload on which selector values are tried.
struct Trial<'a> {
    assembly: &'a Assembly<'a>,
    payload: Vec<u8>,
    is_set: Vec<bool>,
    choices: Vec<Choice>,
}

impl Trial<'_> {
    /// Sets the selectors of a page that are still open so that the page holds; false where that cannot be.
    fn choose(&mut self, page: PageId, needed_by: SignalId) -> bool {
        let frame = self.assembly.frame;
        let described = &frame.pages[page.index()];
        let mut open: Vec<(SignalId, Vec<RawValue>)> = Vec::new();
        for selector in selectors(frame, described) {
            if !self.is_set[selector.index()] {
                open.push((selector, self.candidates(described, selector)));
            }
        }
        let combinations =
            open.iter().map(|(_, values)| values.len()).try_fold(1_usize, usize::checked_mul).unwrap_or(usize::MAX);
        for combination in 0..combinations.min(COMBINATIONS_MAX) {
            let mut rest = combination;
            let values: Vec<(SignalId, RawValue)> = open
                .iter()
                .map(|(selector, values)| {
                    let value = values[rest % values.len()];
                    rest /= values.len();
                    (*selector, value)
                })
                .collect();
            if let Some(bits) = self.tried(described, page, &values) {
                for ((selector, value), bits) in values.into_iter().zip(bits) {
                    self.is_set[selector.index()] = true;
                    self.choices.push(Choice { selector, bits, shown: value.to_string(), needed_by });
                }
                return true;
            }
        }
        false
    }

    /// Puts selector values in; their bits where the page then holds.
    fn tried(&mut self, described: &Page, page: PageId, values: &[(SignalId, RawValue)]) -> Option<Vec<u64>> {
        let mut all_bits = Vec::with_capacity(values.len());
        for &(selector, value) in values {
            let number = self.assembly.number(selector)?;
            let bits = number.special(value)?;
            let wirelore_model::Content::Number { field, .. } = &number.signal.content else {
                return None;
            };
            wirelore_bits::Extractor::new(field).insert(&mut self.payload, bits).ok()?;
            all_bits.push(bits);
        }
        let switch = self.assembly.plan.switches.get(described.switch as usize)?;
        // The frame becomes as long as it has to.
        (switch.select_in(&self.payload, usize::MAX) == Selected::Group(page.0 + 1)).then_some(all_bits)
    }

    /// The values of a selector that may make a page hold: those its tests name; for `otherwise`, those beside the other pages' values.
    fn candidates(&self, page: &Page, selector: SignalId) -> Vec<RawValue> {
        let frame = self.assembly.frame;
        let values = |page: &Page| -> Vec<RawValue> {
            let tests = page.tests.iter().filter(|test| test.selector == selector);
            tests.flat_map(|test| &test.values).flat_map(|span| [span.first, span.last]).collect()
        };
        if !page.tests.is_empty() {
            let mut named = values(page);
            named.dedup();
            return named;
        }
        let Some(encoding) = frame.signals[selector.index()].encoding() else {
            return Vec::new();
        };
        let (least, greatest) = encoding.integer_range().unwrap_or((-1, 1));
        let others = frame.pages.iter().filter(|other| other.switch == page.switch).flat_map(values);
        let ends = others.filter_map(|value| value.number(encoding)).flat_map(|number| [number - 1, number + 1]);
        let mut numbers: Vec<i128> = [0, 1, least, greatest].into_iter().chain(ends).collect();
        numbers.retain(|number| (least..=greatest).contains(number));
        let raw = |number: i128| match i64::try_from(number) {
            Ok(number) => RawValue::Number(number),
            // Only unsigned numbers of 64 bits come here.
            Err(_) => RawValue::Bits(encoding.bits(Number::Integer(number)).unwrap_or_default()),
        };
        numbers.into_iter().map(raw).collect()
    }
}

/// The selectors of a page's switch.
fn selectors(frame: &Frame, page: &Page) -> Vec<SignalId> {
    let beside = frame.pages.iter().filter(|other| other.switch == page.switch);
    let mut selectors = Vec::new();
    for test in beside.flat_map(|page| &page.tests) {
        if !selectors.contains(&test.selector) {
            selectors.push(test.selector);
        }
    }
    selectors
}

/// When a signal is there, as the language writes it: `page is 2, 4..6`.
pub(super) fn condition(database: &Database, frame: &Frame, signal: SignalId) -> String {
    let mut parts = Vec::new();
    let mut page = frame.signals[signal.index()].page;
    while let Some(id) = page {
        let described = &frame.pages[id.index()];
        // A group that gives rows has no condition.
        if described.rows_from.is_none() {
            parts.push(page_condition(database, frame, described));
        }
        page = described.parent;
    }
    parts.reverse();
    if parts.is_empty() { "always".to_owned() } else { parts.join(" and ") }
}

fn page_condition(database: &Database, frame: &Frame, page: &Page) -> String {
    let name = |id: SignalId| frame.signals[id.index()].label.name.as_str();
    if let (Some(element), true) = (page.element, page.tests.is_empty()) {
        return format!("the frame has {} bytes", element.reaches);
    }
    if page.tests.is_empty() {
        let names: Vec<&str> = selectors(frame, page).into_iter().map(name).collect();
        return format!("{} is none of the other pages' values", names.join(" and "));
    }
    let tests = page.tests.iter().map(|test| {
        let words = database.words(&frame.signals[test.selector.index()]);
        let values = test.values.iter().map(|span| match words.iter().find(|word| word.values == *span) {
            Some(word) => word.word.clone(),
            None => span.to_string(),
        });
        format!("{} is {}", name(test.selector), values.collect::<Vec<_>>().join(", "))
    });
    tests.collect::<Vec<_>>().join(" and ")
}
