//! Raw values with a meaning: spans of them, and the words that stand for them.

use std::fmt;

use serde::{Deserialize, Serialize};
use wirelore_bits::{Encoding, Number, NumberKind};

use crate::Label;

/// A table of state words that signals can share.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StateTable {
    /// Name, title and notes.
    pub label: Label,
    /// The words; their spans do not overlap.
    pub words: Vec<StateWord>,
}

/// A word for a raw value or an unbroken run of them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StateWord {
    /// The values.
    pub values: RawSpan,
    /// The word.
    pub word: String,
    /// A title for people.
    pub title: Option<String>,
    /// Whether it is a reading at all.
    pub meaning: Meaning,
}

/// What a state word says about the reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Meaning {
    /// An ordinary reading.
    Reading,
    /// No reading (`as absent`).
    Absent,
    /// Sensor fault (`as fault`).
    Fault,
}

/// A run of raw values, both ends inside.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RawSpan {
    /// The first value.
    pub first: RawValue,
    /// The last value, not below `first`.
    pub last: RawValue,
}

/// A raw value as it was written: a number, or (hexadecimal and binary) a pattern of bits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RawValue {
    /// The number that the bits make (negative where the signal is signed).
    Number(i64),
    /// The bits themselves, right-aligned.
    Bits(u64),
}

impl RawValue {
    /// The number that this value is in a signal of the given encoding; `None` where a pattern of bits makes no number there or has more
    /// bits than the signal.
    #[must_use]
    pub fn number(self, encoding: Encoding) -> Option<i128> {
        match self {
            Self::Number(n) => Some(n.into()),
            Self::Bits(bits) if bits.checked_shr(encoding.width().into()).unwrap_or(0) != 0 => None,
            Self::Bits(bits) => match encoding.number(bits) {
                Ok(Number::Integer(n)) => Some(n),
                Ok(Number::Float(_)) | Err(_) => None,
            },
        }
    }
}

impl RawSpan {
    /// A span of one value.
    #[must_use]
    pub fn single(value: RawValue) -> Self {
        Self { first: value, last: value }
    }

    /// The numbers at its ends in a signal of the given encoding, the smaller one first; `None` where it is no unbroken run of numbers
    /// there: an end that is no number, or patterns that run from the positive numbers into the negative ones (`0x7F..0x80` in 8 signed bits).
    #[must_use]
    pub fn numbers(self, encoding: Encoding) -> Option<(i128, i128)> {
        let (first, last) = (self.first.number(encoding)?, self.last.number(encoding)?);
        let in_order = match (self.first, self.last) {
            (RawValue::Bits(one), RawValue::Bits(other)) => one <= other && !crosses_sign(one, other, encoding),
            _ => first <= last,
        };
        // Negative sign-magnitude patterns rise while their numbers fall.
        in_order.then(|| (first.min(last), first.max(last)))
    }
}

/// Whether two patterns differ in a sign bit.
fn crosses_sign(one: u64, other: u64, encoding: Encoding) -> bool {
    let has_sign = matches!(encoding.kind(), NumberKind::Signed | NumberKind::SignMagnitude);
    has_sign && (one ^ other).checked_shr(u32::from(encoding.width()).saturating_sub(1)).unwrap_or(0) & 1 == 1
}

/// As the language writes it: a number in decimal, a pattern in hexadecimal.
impl fmt::Display for RawValue {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Number(number) => write!(f, "{number}"),
            Self::Bits(bits) => write!(f, "0x{bits:X}"),
        }
    }
}

/// As the language writes it: one value, or the two ends of a run.
impl fmt::Display for RawSpan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.first == self.last { write!(f, "{}", self.first) } else { write!(f, "{}..{}", self.first, self.last) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn encoding(kind: NumberKind, width: u8) -> Encoding {
        Encoding::new(kind, width).expect("a width that the kind can have")
    }

    fn patterns(first: u64, last: u64) -> RawSpan {
        RawSpan { first: RawValue::Bits(first), last: RawValue::Bits(last) }
    }

    #[test]
    fn patterns_become_numbers_of_the_signals_format() {
        assert_eq!(patterns(0xFE, 0xFF).numbers(encoding(NumberKind::Unsigned, 8)), Some((254, 255)));
        assert_eq!(patterns(0xFE, 0xFF).numbers(encoding(NumberKind::Signed, 8)), Some((-2, -1)));
        assert_eq!(patterns(0x81, 0x83).numbers(encoding(NumberKind::SignMagnitude, 8)), Some((-3, -1)));
        assert_eq!(patterns(0x09, 0x10).numbers(encoding(NumberKind::Bcd, 8)), Some((9, 10)));
        assert_eq!(patterns(0, u64::MAX).numbers(encoding(NumberKind::Unsigned, 64)), Some((0, u64::MAX.into())));
    }

    #[test]
    fn what_is_no_run_of_numbers_is_none() {
        assert_eq!(
            patterns(0x7F, 0x80).numbers(encoding(NumberKind::Signed, 8)),
            None,
            "127 and -128 are not neighbours"
        );
        assert_eq!(patterns(0x7F, 0x80).numbers(encoding(NumberKind::SignMagnitude, 8)), None);
        assert_eq!(patterns(0x1FF, 0x1FF).numbers(encoding(NumberKind::Unsigned, 8)), None, "nine bits");
        assert_eq!(patterns(0x0A, 0x0A).numbers(encoding(NumberKind::Bcd, 8)), None, "no decimal digit");
        assert_eq!(patterns(2, 1).numbers(encoding(NumberKind::Unsigned, 8)), None, "upside down");
        assert_eq!(patterns(0x7E00, 0x7E00).numbers(encoding(NumberKind::Float, 16)), None, "not an integer");
        let mixed = RawSpan { first: RawValue::Number(3), last: RawValue::Bits(2) };
        assert_eq!(mixed.numbers(encoding(NumberKind::Unsigned, 8)), None, "upside down");
    }

    #[test]
    fn values_are_shown_as_the_language_writes_them() {
        assert_eq!(RawSpan { first: RawValue::Number(-3), last: RawValue::Bits(0x1F) }.to_string(), "-3..0x1F");
        assert_eq!(RawSpan::single(RawValue::Bits(255)).to_string(), "0xFF");
    }
}
