//! What a raw value is beside its number.

use wirelore_bits::Number;

use crate::find::partition;
use crate::layout::{Section, class};
use crate::table::Lorec;

/// What a raw value is.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Class<'a> {
    /// One of the first kinds of [`class`].
    pub(crate) standing: u32,
    pub(crate) outside_range: bool,
    pub(crate) word: Option<&'a str>,
}

/// The classes of one signal.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Classes {
    pub(crate) first: u32,
    pub(crate) count: u32,
}

const PLAIN: Class<'static> = Class { standing: class::READING, outside_range: false, word: None };

impl Classes {
    /// The class of a whole number, counted from the least one of its signal.
    pub(crate) fn of_whole<'a>(&self, table: &Lorec<'a>, number: u64) -> Class<'a> {
        let record = |at: u32| table.record::<7>(Section::Classes, self.first.checked_add(at)?);
        let begun = |[low, high, ..]: [u32; 7]| (u64::from(low) | u64::from(high) << 32) <= number;
        let behind = partition(self.count, |at| record(at).is_some_and(begun));
        let Some([_, _, kind, start, length, ..]) = behind.checked_sub(1).and_then(record) else {
            return PLAIN;
        };
        Class {
            standing: kind & 0xFF,
            outside_range: kind & class::OUTSIDE != 0,
            word: (length > 0).then(|| table.text(start, length)),
        }
    }

    /// The class of a floating-point number, given both ways. Its value is asked for where there is a range.
    pub(crate) fn of_float<'a>(
        &self,
        table: &Lorec<'a>,
        (bits, number): (u64, f64),
        value: impl Fn(Number) -> Option<f64>,
    ) -> Class<'a> {
        let mut found = PLAIN;
        let mut outside = false;
        for at in 0..self.count {
            let record = self.first.checked_add(at).and_then(|at| table.record::<7>(Section::Classes, at));
            let Some([low, high, kind, start, length, last_low, last_high]) = record else { break };
            let ends = [u64::from(low) | u64::from(high) << 32, u64::from(last_low) | u64::from(last_high) << 32];
            let [first, last] = ends.map(f64::from_bits);
            if kind & class::RANGE != 0 {
                // Beyond a curve there is no value that could be out of range.
                outside = value(Number::Float(number)).is_some_and(|value| !(first <= value && value <= last));
                continue;
            }
            let is_here = match kind & class::BITS {
                0 => (first..=last).contains(&number),
                _ => (ends[0]..=ends[1]).contains(&bits),
            };
            if !is_here {
                continue;
            }
            if found.standing == class::READING {
                found.standing = kind & 0xFF;
            }
            if found.word.is_none() && length > 0 {
                found.word = Some(table.text(start, length));
            }
        }
        found.outside_range = found.standing == class::READING && outside;
        found
    }
}
