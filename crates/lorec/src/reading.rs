//! What one signal of one frame says.

use wirelore_bits::TroubleCode;
use wirelore_bits::typed::Text;

/// What a signal says in one frame.
#[derive(Debug, Clone, Copy, PartialEq)]
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

impl<'a> Reading<'a> {
    /// A reading that has nothing but a value.
    pub(crate) fn only(value: Value<'a>) -> Self {
        Self { value, word: None, outside_range: false, bits: None }
    }
}

/// The value of a reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Value<'a> {
    /// The raw number, of a signal without a formula.
    Integer(i128),
    /// The double nearest to the exact engineering value (ties to even).
    Number(f64),
    /// A diagnostic trouble code.
    TroubleCode(TroubleCode),
    /// Characters.
    Text(Text<'a>),
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
