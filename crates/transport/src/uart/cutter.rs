//! Bytes with times into messages.

use super::form::{Declared, MOST_BYTES};
use super::{Check, Form, Parts, UartFault};

/// The longest pause between two bytes of a message: P1 max (from memory of ISO 14230-2, default timing).
pub const P1_MAX_NS: i64 = 20_000_000;
/// How long a byte takes at 10400 bit/s: start bit, 8 bits, stop bit.
pub const BYTE_NS: i64 = 961_538;
/// The longest time from one byte to the next of the same message: a recording stamps each byte at the same place of it, so that the
/// byte itself is part of the distance.
pub const GAP_NS: i64 = P1_MAX_NS + BYTE_NS;

/// Finds messages among the bytes of one network.
///
/// Where a message does not come out right, the bytes up to the next pause are searched for one that does, byte by byte. A check byte is
/// right by chance once in 256 times, so what is found that way says so ([`Event::Message::after_damage`]). Each byte is told in exactly
/// one event. What is kept is less than two of the longest messages.
#[derive(Debug, Clone)]
pub struct Cutter {
    form: Form,
    gap_ns: i64,
    held: Vec<u8>,
    /// Times of the bytes in `held`.
    times: Vec<Option<i64>>,
    last_ns: Option<i64>,
    /// Where in `held` a message may begin; what is before has been given up.
    start: usize,
    /// Why the first byte of `held` begins no message.
    fault: Option<UartFault>,
    /// Whether a message was found since the last pause.
    is_behind_message: bool,
}

/// What came of some bytes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Event<'a> {
    /// A message, check byte right where there is one.
    Message {
        /// All of its bytes.
        bytes: &'a [u8],
        /// What they are.
        parts: Parts,
        /// Time of its first byte.
        first_ns: Option<i64>,
        /// Time of its last byte.
        last_ns: Option<i64>,
        /// Whether it stands behind bytes that make no message, with no pause between.
        after_damage: bool,
    },
    /// Bytes that make no message.
    Damaged {
        /// The bytes.
        bytes: &'a [u8],
        /// Time of the first.
        first_ns: Option<i64>,
        /// What is wrong with a message that begins with the first.
        fault: UartFault,
    },
}

/// What stands at the place where a message may begin.
enum Found {
    Message(usize, Parts),
    /// More bytes, or a pause, will tell.
    Open,
    No(UartFault),
    /// One message from pause to pause, and it is wrong: there is nothing to search for.
    AllWrong(UartFault),
}

impl Cutter {
    /// For messages of a form, with bytes of one message at most `gap_ns` apart; see [`GAP_NS`].
    #[must_use]
    pub fn new(form: Form, gap_ns: i64) -> Self {
        let (held, times) = (Vec::new(), Vec::new());
        Self { form, gap_ns, held, times, last_ns: None, start: 0, fault: None, is_behind_message: false }
    }

    /// Takes the next byte. Without times there are no pauses, and declared lengths alone tell messages apart.
    pub fn byte(&mut self, time_ns: Option<i64>, byte: u8, tell: &mut impl FnMut(Event<'_>)) {
        if let (Some(last), Some(now)) = (self.last_ns, time_ns)
            && now.saturating_sub(last) > self.gap_ns
        {
            self.finish(tell);
        }
        self.last_ns = time_ns.or(self.last_ns);
        self.held.push(byte);
        self.times.push(time_ns);
        self.settle(false, tell);
    }

    /// A pause, or the end of the recording.
    pub fn finish(&mut self, tell: &mut impl FnMut(Event<'_>)) {
        self.settle(true, tell);
        self.give_up(self.held.len(), tell);
        self.is_behind_message = false;
        self.fault = None;
    }

    fn settle(&mut self, is_end: bool, tell: &mut impl FnMut(Event<'_>)) {
        while self.start < self.held.len() {
            match self.found(is_end) {
                Found::Open => break,
                Found::Message(length, parts) => {
                    let after_damage = self.start > 0 || self.fault.is_some();
                    self.give_up(self.start, tell);
                    let (bytes, first_ns, last_ns) = (&self.held[..length], self.times[0], self.times[length - 1]);
                    tell(Event::Message { bytes, parts, first_ns, last_ns, after_damage });
                    self.drop_front(length);
                    (self.fault, self.is_behind_message) = (None, true);
                }
                Found::No(fault) => {
                    self.fault.get_or_insert(fault);
                    self.start += 1;
                }
                Found::AllWrong(fault) => {
                    self.fault.get_or_insert(fault);
                    self.start = self.held.len();
                }
            }
            if self.start >= MOST_BYTES {
                self.give_up(self.start, tell);
            }
        }
    }

    fn found(&self, is_end: bool) -> Found {
        let bytes = &self.held[self.start..];
        let held = bytes.len();
        // What was given up in front of it is still held, or was told as damaged.
        let is_search = self.start > 0 || self.fault.is_some();
        if is_search && !self.form.is_likely(bytes) {
            return Found::No(UartFault::NoStart);
        }
        let (length, is_whole) = match self.form.declared(bytes) {
            Err(fault) => return Found::No(fault),
            Ok(Declared::Needs(wanted) | Declared::Length(wanted) | Declared::ByPause(wanted)) if held < wanted => {
                return if is_end { Found::No(UartFault::TooShort { held, wanted }) } else { Found::Open };
            }
            Ok(Declared::ByPause(_)) if held > MOST_BYTES => {
                return Found::No(UartFault::TooLong { most: MOST_BYTES });
            }
            Ok(Declared::ByPause(_)) if !is_end => return Found::Open,
            Ok(Declared::Needs(_) | Declared::ByPause(_)) => (held, true),
            Ok(Declared::Length(length)) => (length, held == length),
        };
        match self.form.read(&bytes[..length]) {
            Err(fault) => Found::No(fault),
            Ok(Parts { check: Check::Wrong { found, computed }, .. }) => {
                let fault = UartFault::CheckWrong { found, computed };
                match (is_whole && !is_search, is_end) {
                    (true, true) => Found::AllWrong(fault),
                    // If a pause follows, the message ended where it says, and only its bytes are wrong.
                    (true, false) => Found::Open,
                    (false, _) => Found::No(fault),
                }
            }
            Ok(parts) => Found::Message(length, parts),
        }
    }

    /// Tells the first bytes as damaged.
    fn give_up(&mut self, count: usize, tell: &mut impl FnMut(Event<'_>)) {
        if count == 0 {
            return;
        }
        let (bytes, first_ns) = (&self.held[..count], self.times[0]);
        let fault = match self.fault {
            Some(UartFault::TooShort { .. }) | None if self.is_behind_message => UartFault::Trailing { bytes: count },
            Some(fault) => fault,
            None => UartFault::NoStart,
        };
        tell(Event::Damaged { bytes, first_ns, fault });
        self.drop_front(count);
    }

    fn drop_front(&mut self, count: usize) {
        self.held.drain(..count);
        self.times.drain(..count);
        self.start = 0;
    }
}
