//! The companion of a signal's column: its state word, or why there is no value, and what a check says.
//!
//! The words are those of the long outputs, without figures ("checksum wrong", not which one would be right): so they stay few, and one
//! can ask for all rows of one state.

use arrow_array::ArrayRef;
use wirelore_decode::{ChecksumVerdict, Column, CounterVerdict, ProtectionVerdict, Reading, Verdict};

use super::Words;

/// The states of one signal; null where there is nothing to say.
#[derive(Debug)]
pub(crate) struct States {
    words: Words,
    text: String,
}

impl States {
    pub(crate) fn new() -> Self {
        Self { words: Words::new(), text: String::new() }
    }

    /// Appends the state of a reading; null where the signal is not there.
    pub(crate) fn push(&mut self, reading: Option<&Reading<'_>>, verdict: Option<Verdict>) {
        self.text.clear();
        if let Some(reading) = reading {
            let parts = [
                reading.value.instead(),
                reading.word,
                reading.outside_range.then_some("outside range"),
                verdict.and_then(verdict_state),
            ];
            for part in parts.into_iter().flatten() {
                if !self.text.is_empty() {
                    self.text.push_str("; ");
                }
                self.text.push_str(part);
            }
        }
        let key = (!self.text.is_empty()).then(|| self.words.key(&self.text));
        self.words.append(key);
    }

    /// Appends the states of a block.
    pub(crate) fn extend(&mut self, column: &Column<'_>, rows: usize) {
        (0..rows).for_each(|row| self.push(column.reading(row).as_ref(), column.verdict(row)));
    }

    pub(crate) fn take(&mut self, rows: usize) -> ArrayRef {
        self.words.take(rows)
    }

    pub(crate) fn restock(&mut self) {
        self.words.restock();
    }
}

fn verdict_state(verdict: Verdict) -> Option<&'static str> {
    match verdict {
        Verdict::Counter(CounterVerdict::Repeated) => Some("count repeated"),
        Verdict::Counter(CounterVerdict::Jumped { .. }) => Some("count jumped"),
        Verdict::Counter(CounterVerdict::OutsideRange) => Some("not a count"),
        Verdict::Checksum(ChecksumVerdict::Right) => Some("checksum right"),
        Verdict::Checksum(ChecksumVerdict::Wrong { .. }) => Some("checksum wrong"),
        Verdict::Protection(verdict) => Some(protection_state(verdict)),
        _ => None,
    }
}

fn protection_state(verdict: ProtectionVerdict) -> &'static str {
    use ProtectionVerdict::*;
    match verdict {
        First | Right => "protection right",
        Repeated => "protection right, repeated",
        Lost { .. } => "protection right, some lost before",
        WrongSequence { .. } => "protection wrong in sequence",
        NotACount => "protection not a count",
        WrongSum { .. } => "protection wrong",
        WrongDataId { .. } => "protection of another data id",
        WrongLength { .. } => "protection of another length",
        TooShort => "protection cut off",
    }
}
