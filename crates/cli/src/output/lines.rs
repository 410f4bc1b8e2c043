//! Lines that are gathered before they are written.

use std::io::{self, Write};

use wirelore_bits::text;
use wirelore_decode::Value;

use super::CHUNK_BYTES;
use super::snippet::{LONGEST_BYTES, Snippet};

/// The room for a line of three snippets and a number.
const LINE_BYTES: usize = 3 * LONGEST_BYTES + text::ROOM_BYTES;

/// Gathered lines. Behind their end the bytes are there already, so that a line is put together where it stays.
pub(crate) struct Lines {
    bytes: Vec<u8>,
    end: usize,
}

impl Lines {
    pub(crate) fn new() -> Self {
        Self { bytes: vec![0; 2 * CHUNK_BYTES], end: 0 }
    }

    /// Appends any text.
    pub(crate) fn push(&mut self, text: &[u8]) {
        self.room(text.len())[..text.len()].copy_from_slice(text);
        self.end += text.len();
    }

    /// Appends a line of two texts, a number and a text; false, and nothing appended, where the value is no number with a short text.
    #[inline(always)]
    pub(crate) fn push_number(&mut self, [first, second, last]: [&Snippet; 3], value: &Value<'_>) -> bool {
        let room = self.room(LINE_BYTES);
        let at = first.copy_to(0, room);
        let at = second.copy_to(at, room);
        let Some(length) = room[at..].first_chunk_mut().and_then(|room| short_number(value, room)) else {
            return false;
        };
        let end = last.copy_to(at + length, room);
        self.end += end;
        true
    }

    /// Writes what was gathered once it is enough.
    ///
    /// # Errors
    /// What the receiver says.
    pub(crate) fn pass_on(&mut self, to: &mut impl Write, least_bytes: usize) -> io::Result<()> {
        if self.end >= least_bytes {
            to.write_all(&self.bytes[..self.end])?;
            self.end = 0;
        }
        Ok(())
    }

    /// At least so many bytes behind the end.
    #[inline(always)]
    fn room(&mut self, bytes: usize) -> &mut [u8] {
        if self.bytes.len() - self.end < bytes {
            self.grow(bytes);
        }
        &mut self.bytes[self.end..]
    }

    #[cold]
    fn grow(&mut self, bytes: usize) {
        self.bytes.resize(self.end + bytes.max(CHUNK_BYTES), 0);
    }
}

#[inline(always)]
fn short_number(value: &Value<'_>, room: &mut [u8; text::ROOM_BYTES]) -> Option<usize> {
    match value {
        Value::Number(number) => text::decimal(*number, room),
        Value::Integer(number) => u64::try_from(*number).ok().map(|number| text::whole(number, room)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_stand_one_after_the_other_however_many_they_are() {
        let [first, second, last] = ["0.5,drive".to_owned(), format!(",{},", "n".repeat(90)), ",km/h,\n".to_owned()];
        let snippets = [&first, &second, &last].map(|text| Snippet::new(text.as_bytes()).expect("short enough"));
        let mut lines = Lines::new();
        lines.push(b"a heading\n");
        let mut expected = b"a heading\n".to_vec();
        // More than there is room for at first, in both ways of appending.
        for number in 0..4 * CHUNK_BYTES / 100 {
            let value = Value::Number(number as f64 / 8.0);
            assert!(lines.push_number([&snippets[0], &snippets[1], &snippets[2]], &value));
            expected.extend(format!("{first}{second}{}{last}", number as f64 / 8.0).bytes());
        }
        lines.push(&[b'x'; 4 * CHUNK_BYTES]);
        expected.extend([b'x'; 4 * CHUNK_BYTES]);
        let mut written = Vec::new();
        lines.pass_on(&mut written, usize::MAX).expect("memory takes everything");
        assert!(written.is_empty());
        lines.pass_on(&mut written, 0).expect("memory takes everything");
        assert!(written == expected);
    }

    #[test]
    fn other_values_leave_no_trace() {
        let snippet = Snippet::new(b"text").expect("short enough");
        let mut lines = Lines::new();
        let values = [Value::Number(1.0 / 3.0), Value::Number(f64::NAN), Value::Integer(-1), Value::NoReading];
        for value in &values {
            assert!(!lines.push_number([&snippet, &snippet, &snippet], value), "{value:?}");
        }
        assert!(lines.push_number([&snippet, &snippet, &snippet], &Value::Integer(u64::MAX.into())));
        let mut written = Vec::new();
        lines.pass_on(&mut written, 0).expect("memory takes everything");
        assert_eq!(String::from_utf8_lossy(&written), format!("texttext{}text", u64::MAX));
    }
}
