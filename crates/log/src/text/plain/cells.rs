//! The cells of a plain line, each read as the same cell of the line before was.

use crate::channels::Channels;
use crate::frame::{Channel, FD_BYTES_MAX};
use crate::machine::{hex_digits, places_of};

use super::super::time::{TimeUnit, time_ns};
use super::super::values;
use super::words::{
    Line, behind, byte_at, decimal_number, eight_digits, low_bytes, sixteen, sixteen_at, up_to_end, word, word_at,
};

/// The most bytes of a time that are looked at.
const TIME_BYTES_MAX: usize = 32;
/// The most bytes of the name of a channel.
const NAME_BYTES_MAX: usize = 64;

/// A time whose last digits change from line to line, while those before stay.
#[derive(Debug, Clone, Copy)]
pub(super) struct Time {
    prefix: [u64; 2],
    prefix_masks: [u64; 2],
    prefix_bytes: u8,
    /// The place of the ninth digit behind it.
    ninth: u8,
    prefix_ns: i64,
    /// Digits behind the prefix: 1 to 9.
    digits: u8,
    /// How the first eight of them are moved to the end of their word, and the zeros before.
    shift_bits: u32,
    zeros: u64,
    digit_ns: i64,
}

impl Default for Time {
    /// Before anything was learnt: a prefix that no text has.
    fn default() -> Self {
        let (prefix, prefix_masks) = ([1, 0], [0, 0]);
        let (prefix_bytes, ninth, prefix_ns, digits, shift_bits, zeros, digit_ns) = (0, 8, 0, 1, 0, 0, 0);
        Self { prefix, prefix_masks, prefix_bytes, ninth, prefix_ns, digits, shift_bits, zeros, digit_ns }
    }
}

impl Time {
    /// The time in the cell at `at`, and where the next cell begins.
    #[inline(always)]
    pub(super) fn read(&mut self, line: &Line, at: usize, end: u8, form: (TimeUnit, bool)) -> Option<(i64, usize)> {
        match self.read_as_before(line, at, end) {
            Some(read) => Some(read),
            None => {
                *self = Self::learn(up_to_end(line, at, end, TIME_BYTES_MAX)?, form)?;
                self.read_as_before(line, at, end)
            }
        }
    }

    #[inline(always)]
    fn read_as_before(&self, line: &Line, at: usize, end: u8) -> Option<(i64, usize)> {
        if !self.has_prefix([word(line, at)?, word(line, at + 8)?]) {
            return None;
        }
        let at = at + usize::from(self.prefix_bytes);
        let mut number = decimal_number(word(line, at)?.wrapping_shl(self.shift_bits) | self.zeros)?;
        if self.digits > 8 {
            let digit = line.get(at + 8)?.wrapping_sub(b'0');
            if digit > 9 {
                return None;
            }
            number = number * 10 + u64::from(digit);
        }
        Some((self.prefix_ns + number as i64 * self.digit_ns, behind(line, at + usize::from(self.digits), end)?))
    }

    /// How many bytes the learnt time has.
    pub(super) fn length(&self) -> usize {
        usize::from(self.prefix_bytes + self.digits)
    }

    /// The time that a line begins with, and whether it is one as long as that before. (If not, the number means nothing.)
    #[inline(always)]
    pub(super) fn at_start(&self, line: &Line) -> (i64, bool) {
        let has_prefix = self.has_prefix([word_at(line, 0), word_at(line, 8)]);
        let digits = word_at(line, self.prefix_bytes).wrapping_shl(self.shift_bits) | self.zeros;
        let (mut number, mut is_number) = eight_digits(digits);
        if self.digits > 8 {
            let digit = byte_at(line, self.ninth).wrapping_sub(b'0');
            number = number * 10 + u64::from(digit);
            is_number &= digit <= 9;
        }
        let time_ns = self.prefix_ns.wrapping_add((number as i64).wrapping_mul(self.digit_ns));
        (time_ns, is_number & has_prefix)
    }

    #[inline(always)]
    fn has_prefix(&self, [first, second]: [u64; 2]) -> bool {
        (first & self.prefix_masks[0] ^ self.prefix[0]) | (second & self.prefix_masks[1] ^ self.prefix[1]) == 0
    }

    /// The parts of a time that is a number without a sign; `None` for any other, and where the last digits could make it too
    /// large.
    #[cold]
    fn learn(cell: &[u8], (unit, decimal_comma): (TimeUnit, bool)) -> Option<Self> {
        let whole_ns = time_ns(cell, unit, decimal_comma)?;
        let whole = cell.iter().take_while(|byte| byte.is_ascii_digit()).count();
        let (prefix_bytes, digits, decimals) = match cell.get(whole) {
            None => (whole.saturating_sub(8), whole.min(8), 0),
            Some(b'.' | b',') => (whole + 1, cell.len() - whole - 1, cell.len() - whole - 1),
            Some(_) => return None,
        };
        let number = values::decimal(&cell[prefix_bytes..])?;
        let finer = unit.decimals().checked_sub(decimals)?;
        let digit_ns = 10_i64.checked_pow(finer as u32)?;
        let prefix_ns = whole_ns - i64::try_from(number).ok()?.checked_mul(digit_ns)?;
        let most_ns = 10_i64.checked_pow(digits as u32)?.checked_mul(digit_ns)?;
        if prefix_bytes > 16 || digits > 9 || prefix_ns.checked_add(most_ns).is_none() {
            return None;
        }
        let mut padded = [0; 16];
        padded[..prefix_bytes].copy_from_slice(&cell[..prefix_bytes]);
        let (first, second) = padded.split_at(8);
        let prefix = [first, second].map(|half| half.iter().rev().fold(0, |word, &byte| word << 8 | u64::from(byte)));
        let prefix_masks = [low_bytes(prefix_bytes.min(8)), low_bytes(prefix_bytes.saturating_sub(8))];
        let missing = 8 - digits.min(8);
        let zeros = low_bytes(missing) & u64::from_le_bytes([b'0'; 8]);
        let shift_bits = 8 * missing as u32;
        let (prefix_bytes, digits) = (prefix_bytes as u8, digits as u8);
        let ninth = prefix_bytes + 8;
        Some(Self { prefix, prefix_masks, prefix_bytes, ninth, prefix_ns, digits, shift_bits, zeros, digit_ns })
    }
}

/// Identifiers in hex digits, of which there are as many as in the line before: to look for the end of each would make
/// the processor wait for it.
#[derive(Debug, Clone, Copy)]
pub(super) struct HexId {
    /// 1 to 8.
    digits: usize,
    all_valid: u16,
    unused_bits: u32,
}

/// The lowest `count` bits, 0..=16.
#[inline(always)]
fn low_bits(count: usize) -> u16 {
    u16::MAX.checked_shr(16 - count as u32).unwrap_or(0)
}

impl Default for HexId {
    fn default() -> Self {
        Self { digits: 1, all_valid: 1, unused_bits: 60 }
    }
}

impl HexId {
    /// Identifiers of so many digits; `None` for more than eight, and for none.
    #[inline(always)]
    pub(super) fn of(digits: usize) -> Option<Self> {
        let is_possible = digits.wrapping_sub(1) < 8;
        is_possible.then(|| Self { digits, all_valid: low_bits(digits), unused_bits: 64 - 4 * digits as u32 })
    }

    /// The identifier in the cell at `at`, whether it has eight hex digits, and where the next cell begins.
    #[inline(always)]
    pub(super) fn read(&mut self, line: &Line, at: usize, end: u8) -> Option<(u32, bool, usize)> {
        let next = match behind(line, at + self.digits, end) {
            Some(next) => next,
            None => {
                let digits = up_to_end(line, at, end, 8)?.len();
                *self = Self::of(digits)?;
                behind(line, at + digits, end)?
            }
        };
        let (id, is_id) = self.value(sixteen(line, at)?);
        is_id.then_some((id, self.digits == 8, next))
    }

    /// The identifier at a place, and whether it is one with as many digits as that before.
    #[inline(always)]
    pub(super) fn at(&self, line: &Line, place: u8) -> (u32, bool) {
        self.value(sixteen_at(line, place))
    }

    /// What characters say, and whether the learnt number of them are digits.
    #[inline(always)]
    fn value(&self, characters: [u8; 16]) -> (u32, bool) {
        let (bytes, valid) = hex_digits(characters);
        let id = (bytes.swap_bytes() >> (self.unused_bits & 63)) as u32;
        (id, valid & self.all_valid == self.all_valid)
    }

    /// The same with `0x` in front.
    #[inline(always)]
    pub(super) fn read_prefixed(&mut self, line: &Line, at: usize, end: u8) -> Option<(u32, bool, usize)> {
        let prefix = line.get(at..)?.first_chunk::<2>()?;
        if matches!(prefix, b"0x" | b"0X") { self.read(line, at + 2, end) } else { None }
    }
}

/// A decimal identifier, as [`HexId`] gives it.
#[inline(always)]
pub(super) fn decimal_id(line: &Line, at: usize, end: u8) -> Option<(u32, bool, usize)> {
    let cell = up_to_end(line, at, end, 10)?;
    let id = values::decimal(cell).and_then(|id| u32::try_from(id).ok())?;
    Some((id, false, behind(line, at + cell.len(), end)?))
}

/// Data in hex digits, of which there are as many as in the line before.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Data {
    /// Two for each byte.
    digits: usize,
    /// Those of the first sixteen.
    all_valid: u16,
}

impl Data {
    /// Data of so many digits.
    #[inline(always)]
    pub(super) fn of(digits: usize) -> Self {
        Self { digits, all_valid: low_bits(digits.min(16)) }
    }

    /// Reads the cell at `at` into `payload`; tells how many bytes it holds, and where the next cell begins.
    #[inline(always)]
    pub(super) fn read(
        &mut self,
        line: &Line,
        at: usize,
        end: u8,
        payload: &mut [u8; FD_BYTES_MAX],
    ) -> Option<(usize, usize)> {
        let next = match behind(line, at + self.digits, end) {
            Some(next) => next,
            None => {
                let digits = up_to_end(line, at, end, 2 * FD_BYTES_MAX)?.len();
                let next = behind(line, at + digits, end).filter(|_| digits.is_multiple_of(2))?;
                *self = Self::of(digits);
                next
            }
        };
        let (bytes, is_data) = self.value(sixteen(line, at)?);
        if !is_data {
            return None;
        }
        *payload.first_chunk_mut()? = bytes.to_le_bytes();
        if self.digits > 16 {
            self.read_more(line, at, payload)?;
        }
        Some((self.digits / 2, next))
    }

    /// How many digits the learnt data has.
    pub(super) fn digits(&self) -> usize {
        self.digits
    }

    /// The data at a place, at most eight bytes, as a number that begins with the lowest byte, and whether it has as many digits as that before.
    #[inline(always)]
    pub(super) fn at(&self, line: &Line, place: u8) -> (u64, bool) {
        self.value(sixteen_at(line, place))
    }

    /// What the first sixteen characters say, and whether as many of them as were learnt are digits.
    #[inline(always)]
    fn value(&self, characters: [u8; 16]) -> (u64, bool) {
        let (bytes, valid) = hex_digits(characters);
        (bytes, valid & self.all_valid == self.all_valid)
    }

    /// The bytes of a CAN FD frame behind the first eight.
    #[inline(never)]
    fn read_more(&self, line: &Line, at: usize, payload: &mut [u8; FD_BYTES_MAX]) -> Option<()> {
        let (eights, _) = payload.as_chunks_mut::<8>();
        for (eight, done) in eights.iter_mut().zip((0..self.digits).step_by(16)) {
            let (bytes, valid) = hex_digits(sixteen(line, at + done)?);
            let all_valid = low_bits((self.digits - done).min(16));
            if valid & all_valid != all_valid {
                return None;
            }
            *eight = bytes.to_le_bytes();
        }
        Some(())
    }
}

/// The channels of names that were met before.
#[derive(Debug, Clone)]
pub(super) struct Names {
    end: [u8; 16],
    slots: Box<[Slot; SLOTS]>,
}

const SLOTS: usize = 256;

/// A name of up to seven bytes with the end of its cell behind it, and zeros behind that; zero where there is none.
#[derive(Debug, Clone, Copy)]
struct Slot {
    key: u64,
    channel: Channel,
}

/// All bits of the bytes up to and with the one of this index.
const UP_TO: [u64; 8] = {
    let mut masks = [u64::MAX; 8];
    let mut index = 0;
    while index < 7 {
        masks[index] = (1 << (8 * (index + 1))) - 1;
        index += 1;
    }
    masks
};

/// Fibonacci hashing: Knuth, TAOCP volume 3, section 6.4.
#[inline(always)]
fn slot_of(key: u64) -> usize {
    (key.wrapping_mul(0x9E37_79B9_7F4A_7C15) >> 56) as usize % SLOTS
}

impl Names {
    /// For cells that end with this byte.
    pub(super) fn new(end: u8) -> Self {
        Self { end: [end; 16], slots: Box::new([Slot { key: 0, channel: Channel(0) }; SLOTS]) }
    }

    /// The channel in the cell at `at`, and where the next cell begins; for names that are known.
    #[inline(always)]
    pub(super) fn read(&mut self, line: &Line, at: usize, channels: &Channels) -> Option<(Channel, usize)> {
        let length = places_of(&self.end, &sixteen(line, at)?).trailing_zeros() as usize;
        let Some(mask) = UP_TO.get(length) else {
            return self.read_long(line, at, channels);
        };
        let key = word(line, at)? & mask;
        let slot = &mut self.slots[slot_of(key)];
        if slot.key != key {
            *slot = Slot { key, channel: known(line.get(at..at + length)?, channels)? };
        }
        Some((slot.channel, at + length + 1))
    }

    /// All bits of a name of so many bytes, and of the byte behind it; `None` for one that no slot holds.
    pub(super) fn mask(name_bytes: usize) -> Option<u64> {
        UP_TO.get(name_bytes).copied()
    }

    /// The channel of a name at a place, under its mask, and whether it is one that was met before.
    #[inline(always)]
    pub(super) fn met(&self, line: &Line, place: u8, mask: u64) -> (Channel, bool) {
        let key = word_at(line, place) & mask;
        let slot = &self.slots[slot_of(key)];
        (slot.channel, slot.key == key)
    }

    #[inline(never)]
    fn read_long(&self, line: &Line, at: usize, channels: &Channels) -> Option<(Channel, usize)> {
        let name = up_to_end(line, at, self.end[0], NAME_BYTES_MAX)?;
        Some((known(name, channels)?, behind(line, at + name.len(), self.end[0])?))
    }
}

/// The channel of a cell that stands for itself: no quotes, no blanks, no comment.
#[cold]
fn known(cell: &[u8], channels: &Channels) -> Option<Channel> {
    let is_bare = !cell.iter().any(|byte| matches!(byte, b' ' | b'\t' | b'\r' | b'\n' | b'"'));
    channels.known(cell).filter(|_| is_bare)
}

/// Yes or no as a digit, or nothing, and where the next cell begins.
#[inline(always)]
pub(super) fn flag(line: &Line, at: usize, end: u8) -> Option<(Option<bool>, usize)> {
    match line.get(at)? {
        b'1' => Some((Some(true), behind(line, at + 1, end)?)),
        b'0' => Some((Some(false), behind(line, at + 1, end)?)),
        _ => Some((None, behind(line, at, end)?)),
    }
}

/// A number of one or two digits, or nothing, and where the next cell begins.
#[inline(always)]
pub(super) fn small_number(line: &Line, at: usize, end: u8) -> Option<(Option<u64>, usize)> {
    let digit = |at: usize| line.get(at).map(|byte| byte.wrapping_sub(b'0')).filter(|digit| *digit <= 9).map(u64::from);
    match (digit(at), digit(at + 1)) {
        (Some(tens), Some(ones)) => Some((Some(10 * tens + ones), behind(line, at + 2, end)?)),
        (Some(ones), None) => Some((Some(ones), behind(line, at + 1, end)?)),
        (None, _) => Some((None, behind(line, at, end)?)),
    }
}

/// Where the cell behind one without a meaning begins; `None` where it is long, or has quotes.
#[inline(always)]
pub(super) fn skipped(line: &Line, at: usize, end: u8, delimiter: u8) -> Option<usize> {
    const SKIPPED_BYTES_MAX: usize = 64;
    let is_stop = |byte: &u8| *byte == end || *byte == delimiter || matches!(byte, b'"' | b'\n');
    let length = line.get(at..)?.iter().take(SKIPPED_BYTES_MAX).position(is_stop)?;
    (line[at + length] == end).then_some(at + length + 1)
}
