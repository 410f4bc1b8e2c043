//! A payload into segments.

use super::{UNIT, WORD_BYTES, Word};
use crate::someip::{Header, Message};

/// The segments of a payload, each a payload of a message of its own; made by [`segments`].
#[derive(Debug, Clone)]
pub struct Segments<'a> {
    header: Header,
    payload: &'a [u8],
    segment_bytes: usize,
    at: usize,
    is_done: bool,
}

/// Cuts a payload into segments of at most `segment_bytes`, of which the next lower multiple of 16 is used, and at least 16. The
/// standard's own size is 1392 bytes. `None` where the payload is longer than an offset can say.
#[must_use]
pub fn segments(header: Header, payload: &[u8], segment_bytes: usize) -> Option<Segments<'_>> {
    u32::try_from(payload.len()).ok()?;
    let segment_bytes = (segment_bytes / UNIT * UNIT).max(UNIT);
    let header = Header { segmented: true, ..header };
    Some(Segments { header, payload, segment_bytes, at: 0, is_done: false })
}

impl Segments<'_> {
    /// Writes the next segment behind what is in `out`, as a whole message; `false` when there is none left.
    pub fn write_next(&mut self, out: &mut Vec<u8>) -> bool {
        if self.is_done {
            return false;
        }
        let end = (self.at + self.segment_bytes).min(self.payload.len());
        let word = Word { byte_index: self.at as u32, more: end < self.payload.len() };
        let mut segment = Vec::with_capacity(WORD_BYTES + end - self.at);
        segment.extend(word.bits().to_be_bytes());
        segment.extend(&self.payload[self.at..end]);
        self.at = end;
        self.is_done = !word.more;
        Message { header: self.header, payload: &segment }.write(out)
    }
}
