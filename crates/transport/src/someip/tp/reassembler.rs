//! Segments into a payload.

use super::{UNIT, WORD_BYTES, Word};
use crate::conversations::Conversations;
use crate::fields::Fields;
use crate::someip::{Header, Message, MessageKind};

/// Puts segmented payloads together. `K` says who sends to whom.
#[derive(Debug)]
pub struct Reassembler<K> {
    most_bytes: usize,
    series: Conversations<(K, Series), State>,
}

/// Messages of one series come one after another; the session tells them apart.
type Series = (u16, u16, u16, u8, MessageKind);

#[derive(Debug)]
struct State {
    header: Header,
    payload: Vec<u8>,
    /// Offset of the last segment; `None` when the message was given up or has ended.
    last: Option<usize>,
    /// Offset and length of the segment that ended the message, which may be recorded again.
    ended: Option<(usize, usize)>,
    is_given_up: bool,
    segments: u32,
    first_ns: Option<i64>,
}

/// What a segment led to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tp<'a> {
    /// A part of a message that is not whole yet.
    Part,
    /// The last segment came before, too, with the same bytes.
    Repeated,
    /// A segment of a message that was given up.
    OfGivenUp,
    /// A whole message.
    Message {
        /// The header of its segments, with `segmented` off.
        header: Header,
        /// The whole payload.
        payload: &'a [u8],
        /// How many segments it had.
        segments: u32,
        /// Time of the first.
        first_ns: Option<i64>,
    },
    /// A message is given up.
    Fault {
        /// The header of its segments.
        header: Header,
        /// Why.
        fault: TpFault,
    },
}

/// Why a segmented message is given up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum TpFault {
    /// The segment is too short for its own word.
    #[error("a segment has {held} bytes, and the word with its offset has 4")]
    WordCut {
        /// Bytes that are there.
        held: usize,
    },
    /// Another segment was due.
    #[error("a segment for byte {found} came when byte {expected} was due; one was lost or came out of order")]
    OutOfOrder {
        /// Offset of the segment that was due.
        expected: usize,
        /// Offset of the segment that came.
        found: usize,
    },
    /// A segment in the middle has a length that only the last may have.
    #[error("a segment that is not the last has {held} bytes, which is no multiple of 16 or none at all")]
    Length {
        /// Bytes of its payload.
        held: usize,
    },
    /// The message is longer than the caller takes.
    #[error("the message has at least {held} bytes, and at most {most_bytes} are taken")]
    TooLong {
        /// Bytes that came.
        held: usize,
        /// Bytes that are taken.
        most_bytes: usize,
    },
    /// Another message of the series began before it was whole.
    #[error("{held} bytes had come when the next message began")]
    Restarted {
        /// Bytes that had come.
        held: usize,
    },
    /// The recording ended, or there were too many other messages open.
    #[error("{held} bytes had come, and the last segment did not")]
    Unfinished {
        /// Bytes that had come.
        held: usize,
    },
}

impl<K: Copy + Ord> Reassembler<K> {
    /// For payloads of at most `most_bytes`.
    #[must_use]
    pub fn new(most_bytes: usize) -> Self {
        Self { most_bytes, series: Conversations::new() }
    }

    /// Takes a message whose header says `segmented`. `tell` is called for what it leads to: once, or twice when a fault of the message
    /// before comes first.
    pub fn feed(&mut self, key: K, time_ns: Option<i64>, message: &Message<'_>, tell: &mut impl FnMut(Tp<'_>)) {
        let header = Header { segmented: false, ..message.header };
        let key = (key, (header.service, header.method, header.client, header.interface_version, header.kind));
        let mut fields = Fields(message.payload);
        let Some(word) = fields.u32().map(Word::of_bits) else {
            let fault = TpFault::WordCut { held: message.payload.len().min(WORD_BYTES) };
            return tell(Tp::Fault { header, fault });
        };
        if self.series.get(&key).is_none()
            && let Some((_, silent)) = self.series.put(key, State::new(header))
        {
            silent.tell_unfinished(tell);
        }
        let Some(state) = self.series.get(&key) else { return };
        if header.session != state.header.session || (word.byte_index == 0 && !state.is_repeated(word, fields.0)) {
            state.restart(header, time_ns, tell);
        }
        state.first_ns = if state.segments == 0 { time_ns } else { state.first_ns };
        state.take(word, fields.0, self.most_bytes, tell);
    }

    /// The recording has ended: messages that are not whole are told, those that were silent for longest first.
    pub fn finish(&mut self, tell: &mut impl FnMut(Tp<'_>)) {
        self.series.take_all().for_each(|(_, state)| state.tell_unfinished(tell));
    }
}

impl State {
    fn new(header: Header) -> Self {
        let payload = Vec::new();
        Self { header, payload, last: None, ended: None, is_given_up: false, segments: 0, first_ns: None }
    }

    fn restart(&mut self, header: Header, time_ns: Option<i64>, tell: &mut impl FnMut(Tp<'_>)) {
        if self.last.is_some() {
            tell(Tp::Fault { header: self.header, fault: TpFault::Restarted { held: self.payload.len() } });
        }
        self.payload.clear();
        (self.header, self.last, self.ended) = (header, None, None);
        (self.is_given_up, self.segments, self.first_ns) = (false, 0, time_ns);
    }

    fn take(&mut self, word: Word, bytes: &[u8], most_bytes: usize, tell: &mut impl FnMut(Tp<'_>)) {
        if self.is_given_up {
            return tell(Tp::OfGivenUp);
        }
        let (expected, found) = (self.payload.len(), word.byte_index as usize);
        if self.is_repeated(word, bytes) || self.is_end_again(word, bytes) {
            return tell(Tp::Repeated);
        }
        let length = expected + bytes.len();
        if found != expected {
            self.give_up(TpFault::OutOfOrder { expected, found }, tell);
        } else if word.more && (bytes.is_empty() || !bytes.len().is_multiple_of(UNIT)) {
            self.give_up(TpFault::Length { held: bytes.len() }, tell);
        } else if length > most_bytes {
            self.give_up(TpFault::TooLong { held: length, most_bytes }, tell);
        } else {
            self.payload.extend_from_slice(bytes);
            self.segments += 1;
            self.last = Some(found);
            if word.more {
                tell(Tp::Part);
            } else {
                self.ended = Some((found, bytes.len()));
                self.end(tell);
            }
        }
    }

    /// Whether the segment before this one was the same, byte for byte.
    fn is_repeated(&self, word: Word, bytes: &[u8]) -> bool {
        let at = word.byte_index as usize;
        word.more && self.last == Some(at) && self.payload.get(at..) == Some(bytes)
    }

    /// Whether the segment ends the message again that has ended. One that begins its message, too, begins the next.
    fn is_end_again(&self, word: Word, bytes: &[u8]) -> bool {
        !word.more && word.byte_index > 0 && self.ended == Some((word.byte_index as usize, bytes.len()))
    }

    fn end(&mut self, tell: &mut impl FnMut(Tp<'_>)) {
        let (header, segments, first_ns) = (self.header, self.segments, self.first_ns);
        tell(Tp::Message { header, payload: &self.payload, segments, first_ns });
        self.payload.clear();
        (self.last, self.segments) = (None, 0);
    }

    fn give_up(&mut self, fault: TpFault, tell: &mut impl FnMut(Tp<'_>)) {
        tell(Tp::Fault { header: self.header, fault });
        self.payload = Vec::new();
        (self.last, self.ended, self.is_given_up) = (None, None, true);
    }

    fn tell_unfinished(&self, tell: &mut impl FnMut(Tp<'_>)) {
        if self.last.is_some() {
            tell(Tp::Fault { header: self.header, fault: TpFault::Unfinished { held: self.payload.len() } });
        }
    }
}
