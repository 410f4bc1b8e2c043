//! Counters: from the first count up in steps, then on from the first, modulo their range.

use wirelore_model::{Counter, Meaning, Signal, StateWord};

use super::CounterVerdict;
use crate::spans::{Run, Spans};

/// A counter's rule.
#[derive(Debug, Clone)]
pub(crate) struct CounterPlan {
    low: u64,
    high: u64,
    step: u64,
    /// Raw values that stand for no count.
    special: Spans<()>,
}

impl CounterPlan {
    pub(crate) fn new(counter: &Counter, signal: &Signal, words: &[StateWord]) -> Option<Self> {
        let encoding = signal.encoding()?;
        let worded = words.iter().filter(|word| word.meaning != Meaning::Reading).map(|word| &word.values);
        let special = signal.absent.iter().chain(&signal.fault).chain(worded).filter_map(|span| span.numbers(encoding));
        let special = Spans::first_wins(special.map(|(first, last)| Run { first, last, what: () }));
        Some(Self { low: counter.low, high: counter.high, step: counter.step, special })
    }

    /// How `found` stands to the count before it.
    pub(crate) fn verdict(&self, before: Option<u64>, found: u64) -> CounterVerdict {
        if self.special.get(found.into()).is_some() {
            return CounterVerdict::Suspended;
        }
        if !(self.low..=self.high).contains(&found) {
            return CounterVerdict::OutsideRange;
        }
        let Some(before) = before else {
            return CounterVerdict::First;
        };
        // The range may hold 2^64 counts.
        let range = u128::from(self.high - self.low) + 1;
        let rise = (u128::from(found) + range - u128::from(before)) % range;
        match rise {
            _ if rise == u128::from(self.step) % range => CounterVerdict::Right,
            0 => CounterVerdict::Repeated,
            _ => CounterVerdict::Jumped { by: rise as u64 },
        }
    }
}
