//! What a reading says, in words: its value and its state.

use std::fmt;

use wirelore_decode::{Reading, Value, Verdict};

use crate::number::{push_double, push_integer};

/// Appends the value as plain text, unquoted; nothing where there is none.
pub(crate) fn push_value(value: &Value<'_>, to: &mut Vec<u8>) {
    match value {
        Value::Integer(number) => push_integer(*number, to),
        Value::Number(number) => push_double(*number, to),
        Value::TroubleCode(code) => to.extend_from_slice(code.as_str().as_bytes()),
        Value::Text(text) => to.extend_from_slice(text.as_bytes()),
        Value::Bytes(bytes) => push_hex(bytes, to),
        Value::NoReading | Value::SensorFault | Value::NotDigits | Value::BeyondCurve | Value::TooShort => {}
    }
}

/// Appends bytes as pairs of hexadecimal digits with blanks between.
pub(crate) fn push_hex(bytes: &[u8], to: &mut Vec<u8>) {
    const DIGITS: &[u8; 16] = b"0123456789ABCDEF";
    for (number, byte) in bytes.iter().enumerate() {
        if number > 0 {
            to.push(b' ');
        }
        to.push(DIGITS[usize::from(byte >> 4)]);
        to.push(DIGITS[usize::from(byte & 15)]);
    }
}

/// Appends the state: the word for the value, or why there is none, and what a check has to say. Parts are parted by `; `.
pub(crate) fn push_state(reading: &Reading<'_>, verdict: Option<Verdict>, to: &mut Vec<u8>) {
    // Writing to memory cannot fail.
    let _ = reading.write_state(verdict, &mut InMemory(to));
}

/// Bytes as a text that is written to.
struct InMemory<'a>(&'a mut Vec<u8>);

impl fmt::Write for InMemory<'_> {
    #[inline]
    fn write_str(&mut self, text: &str) -> fmt::Result {
        self.0.extend_from_slice(text.as_bytes());
        Ok(())
    }
}
