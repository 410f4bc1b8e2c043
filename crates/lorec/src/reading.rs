//! What one signal of one frame says.

use core::fmt::{self, Write};

use wirelore_bits::TroubleCode;

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

/// Characters as they stand in a payload: [`Display`](fmt::Display) gives them one after the other.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct Text<'a> {
    bytes: &'a [u8],
    charset: Charset,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Charset {
    Ascii,
    Latin1,
    Utf8,
}

impl<'a> Text<'a> {
    /// The characters of these bytes, of a character set by its number in the layout. NUL bytes at the end only fill the place up.
    pub(crate) fn new(bytes: &'a [u8], charset: u32) -> Self {
        let end = bytes.iter().rposition(|byte| *byte != 0).map_or(0, |last| last + 1);
        let charset = match charset {
            0 => Charset::Ascii,
            1 => Charset::Latin1,
            _ => Charset::Utf8,
        };
        Self { bytes: bytes.get(..end).unwrap_or(bytes), charset }
    }

    /// Its bytes, without the NUL bytes at their end.
    #[must_use]
    pub fn bytes(&self) -> &'a [u8] {
        self.bytes
    }
}

/// Bytes that make no character are shown as U+FFFD.
impl fmt::Display for Text<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.charset {
            Charset::Utf8 => self.bytes.utf8_chunks().try_for_each(|chunk| {
                f.write_str(chunk.valid())?;
                if chunk.invalid().is_empty() { Ok(()) } else { f.write_char(char::REPLACEMENT_CHARACTER) }
            }),
            Charset::Latin1 => self.bytes.iter().try_for_each(|&byte| f.write_char(char::from(byte))),
            Charset::Ascii => self.bytes.iter().try_for_each(|&byte| {
                f.write_char(if byte.is_ascii() { char::from(byte) } else { char::REPLACEMENT_CHARACTER })
            }),
        }
    }
}

impl fmt::Debug for Text<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "\"{self}\"")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::string::{String, ToString};

    #[test]
    fn texts_of_every_character_set() {
        let shown = |bytes, charset| Text::new(bytes, charset).to_string();
        assert_eq!(shown(b"ABC\0\0", 0), "ABC");
        assert_eq!(shown(b"A\xFCC", 0), "A\u{FFFD}C");
        assert_eq!(shown(b"A\xFCC", 1), "AüC");
        for bytes in [&b"A\xC3\xBCC"[..], b"A\xFCC", b"\xE2\x82", b"\0\0"] {
            let text = Text::new(bytes, 2);
            assert_eq!(text.to_string(), String::from_utf8_lossy(text.bytes()));
        }
    }
}
