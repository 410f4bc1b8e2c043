//! Characters in a payload.

use core::fmt;

/// The character sets of texts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Charset {
    /// ASCII (ISO 646); other bytes are shown as U+FFFD.
    Ascii,
    /// ISO 8859-1.
    Latin1,
    /// UTF-8; bytes that are not are shown as U+FFFD.
    Utf8,
}

/// The characters that some bytes make. NUL bytes at the end only fill the place up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Text<'a> {
    bytes: &'a [u8],
    charset: Charset,
}

impl<'a> Text<'a> {
    /// The text of some bytes.
    #[must_use]
    pub fn new(bytes: &'a [u8], charset: Charset) -> Self {
        let end = bytes.iter().rposition(|byte| *byte != 0).map_or(0, |last| last + 1);
        Self { bytes: bytes.get(..end).unwrap_or(bytes), charset }
    }

    /// The text as it lies in the payload, where its bytes are UTF-8 too.
    #[must_use]
    pub fn as_str(&self) -> Option<&'a str> {
        match self.charset {
            Charset::Utf8 => core::str::from_utf8(self.bytes).ok(),
            Charset::Ascii | Charset::Latin1 if self.bytes.is_ascii() => core::str::from_utf8(self.bytes).ok(),
            Charset::Ascii | Charset::Latin1 => None,
        }
    }
}

impl fmt::Display for Text<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use fmt::Write;
        let shown = |byte: u8| {
            let is_shown = byte.is_ascii() || self.charset == Charset::Latin1;
            if is_shown { char::from(byte) } else { char::REPLACEMENT_CHARACTER }
        };
        if self.charset != Charset::Utf8 {
            return self.bytes.iter().try_for_each(|&byte| f.write_char(shown(byte)));
        }
        self.bytes.utf8_chunks().try_for_each(|chunk| {
            f.write_str(chunk.valid())?;
            if chunk.invalid().is_empty() { Ok(()) } else { f.write_char(char::REPLACEMENT_CHARACTER) }
        })
    }
}
