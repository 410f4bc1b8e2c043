//! What one signal of one frame says.

use std::borrow::Cow;

use wirelore_model::{SignalId, TroubleCode};

/// What a signal says in one frame.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading<'a> {
    /// The value, or why there is none.
    pub value: Value<'a>,
    /// The state word for the raw value, where the description has one.
    pub word: Option<&'a str>,
    /// The value lies outside the range that the description states. The value is given all the same.
    pub outside_range: bool,
    /// The bits as they stood in the payload, right-aligned; `None` for text, bytes and payloads that are too short.
    pub bits: Option<u64>,
}

/// The value of a reading.
#[derive(Debug, Clone, PartialEq)]
pub enum Value<'a> {
    /// The raw number, of a signal without a formula.
    Integer(i128),
    /// The double nearest to the exact engineering value (ties to even), in the unit that [`Decoder::unit`](crate::Decoder::unit) tells.
    Number(f64),
    /// A diagnostic trouble code.
    TroubleCode(TroubleCode),
    /// Characters, without the NUL bytes at their end.
    Text(Cow<'a, str>),
    /// Bytes as they are.
    Bytes(&'a [u8]),
    /// A raw value that says "no reading".
    NoReading,
    /// A raw value that says "sensor fault".
    SensorFault,
    /// Bits of a decimal signal that are no decimal digits.
    NotDigits,
    /// A raw value beyond the ends of the sensor curve.
    BeyondCurve,
    /// The payload ends before the signal does.
    TooShort,
}

impl Value<'_> {
    /// The value as a number, where it is one (a raw number beyond 2^53 is rounded to the nearest double).
    #[must_use]
    pub fn number(&self) -> Option<f64> {
        match *self {
            Self::Integer(number) => Some(number as f64),
            Self::Number(number) => Some(number),
            _ => None,
        }
    }
}

impl<'a> Reading<'a> {
    /// A reading that has nothing but a value.
    pub(crate) fn only(value: Value<'a>) -> Self {
        Self { value, word: None, outside_range: false, bits: None }
    }
}

/// A selector whose value none of its pages takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Unmatched {
    /// The selector.
    pub selector: SignalId,
    /// Its raw number; `None` where its bits make no whole number.
    pub number: Option<i128>,
    /// Its bits, right-aligned.
    pub bits: u64,
}

/// How the decoding of one frame went.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct FrameOutcome {
    /// How many readings were handed out.
    pub readings: u32,
    /// The payload is shorter than the description allows (the length of the innermost page that states one, else the frame's), or, where
    /// it states no length, than some signal that is there needs. Signals that fit are decoded.
    pub too_short: bool,
    /// The first selector without a page for its value.
    pub unmatched: Option<Unmatched>,
}

/// Takes the readings of a frame. Any `FnMut(SignalId, Reading)` does.
pub trait Readings {
    /// One signal's reading. Signals that are always there come first, then those of the pages that hold; each of these in the order
    /// of the description.
    fn reading(&mut self, signal: SignalId, reading: Reading<'_>);

    /// A selector's value for which there is no page.
    fn unmatched(&mut self, unmatched: Unmatched) {
        let _ = unmatched;
    }
}

impl<F: FnMut(SignalId, Reading<'_>)> Readings for F {
    #[inline]
    fn reading(&mut self, signal: SignalId, reading: Reading<'_>) {
        self(signal, reading);
    }
}
