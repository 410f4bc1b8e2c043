//! A form given by parameters.

use wirelore_bits::sums::ByteSum;

use super::UartFault;
use super::form::{Check, Declared, Parts};

/// Where the parts of a message stand. Bytes count from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct TelegramForm {
    /// The byte that says who sends.
    pub source_byte: Option<u8>,
    /// The byte that says who is meant.
    pub target_byte: Option<u8>,
    /// The byte that says how long the message is; without one, the pause behind a message ends it.
    pub size: Option<Size>,
    /// The last byte.
    pub check: CheckByte,
}

/// How a message says its size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Size {
    /// The byte that says it.
    pub byte: u8,
    /// The first byte that it counts; it counts all from there on, the check byte included.
    pub counts_from: u8,
}

/// What the last byte of a message is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum CheckByte {
    /// Data like the others.
    #[default]
    Absent,
    /// The exclusive or of all bytes before it.
    Xor,
    /// The sum of all bytes before it, modulo 256.
    Sum,
}

impl CheckByte {
    fn bytes(self) -> usize {
        usize::from(self != Self::Absent)
    }

    fn of(self, before: &[u8]) -> u64 {
        match self {
            Self::Absent => 0,
            Self::Xor => ByteSum::XOR.checksum(before),
            Self::Sum => ByteSum::WRAPPING.checksum(before),
        }
    }
}

impl TelegramForm {
    /// Bytes up to the last one that has a place of its own: the data begins behind them.
    fn header_bytes(&self) -> usize {
        let places = [self.source_byte, self.target_byte, self.size.map(|size| size.byte)];
        places.into_iter().flatten().map(|byte| usize::from(byte) + 1).max().unwrap_or(0)
    }

    fn least_bytes(&self) -> usize {
        (self.header_bytes() + self.check.bytes()).max(1)
    }

    pub(super) fn declared(&self, bytes: &[u8]) -> Result<Declared, UartFault> {
        let least = self.least_bytes();
        let Some(size) = self.size else { return Ok(Declared::ByPause(least)) };
        let Some(told) = bytes.get(usize::from(size.byte)).copied() else {
            return Ok(Declared::Needs(usize::from(size.byte) + 1));
        };
        let counts_from = usize::from(size.counts_from);
        let length = counts_from + usize::from(told);
        if length < least {
            return Err(UartFault::LengthTooSmall { told, least: least - counts_from });
        }
        Ok(Declared::Length(length))
    }

    /// Parts of a message whose length fits its size byte.
    pub(super) fn parts(&self, bytes: &[u8]) -> Parts {
        let at = |place: Option<u8>| place.and_then(|byte| bytes.get(usize::from(byte)).copied());
        let end = bytes.len().saturating_sub(self.check.bytes());
        let (before, check) = bytes.split_at(end);
        let check = check.first().map_or(Check::Absent, |found| Check::of(*found, self.check.of(before)));
        let (source, target) = (at(self.source_byte), at(self.target_byte));
        Parts { addressing: None, source, target, data: self.header_bytes().min(end)..end, check }
    }

    /// Writes a message behind what is in `out`. Bytes of the header that have no meaning are 0. `false`, and nothing written, where the
    /// size byte cannot say the length.
    #[must_use]
    pub fn write(&self, source: u8, target: u8, data: &[u8], out: &mut Vec<u8>) -> bool {
        let at = out.len();
        let length = self.header_bytes() + data.len() + self.check.bytes();
        let size = self.size.map(|size| {
            let counted = length.checked_sub(usize::from(size.counts_from));
            (usize::from(size.byte), counted.and_then(|counted| u8::try_from(counted).ok()))
        });
        if matches!(size, Some((_, None))) || length == 0 {
            return false;
        }
        out.resize(at + self.header_bytes(), 0);
        let places = [(self.source_byte, source), (self.target_byte, target)];
        let places = places.into_iter().filter_map(|(place, byte)| Some((usize::from(place?), byte)));
        let size = size.and_then(|(place, byte)| Some((place, byte?)));
        for (place, byte) in places.chain(size) {
            out[at + place] = byte;
        }
        out.extend(data);
        if self.check != CheckByte::Absent {
            out.push(self.check.of(&out[at..]) as u8);
        }
        true
    }
}
