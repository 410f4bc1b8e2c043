//! An unbroken run of bits in a payload, written from its most significant bit to its least significant one.

use core::fmt;

use crate::BitPosition;

/// Which way a number that spans several bytes is laid out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "lowercase"))]
pub enum ByteOrder {
    /// The more significant part comes in later bytes (little-endian).
    Intel,
    /// The more significant part comes in earlier bytes (big-endian).
    Motorola,
}

/// A run of 1 to 64 bits. Its two ends say how wide it is and which byte order it has.
///
/// A place inside one byte has no byte order of its own: [`Place::order`] calls it Intel by convention, however it was made,
/// so that equal places compare equal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(try_from = "crate::serial::PlaceParts", into = "crate::serial::PlaceParts")
)]
pub struct Place {
    // The two ends, most significant first, in the order that places sort by. As positions they would take up half as much again.
    msb_byte: u32,
    msb_bit: u8,
    lsb_byte: u32,
    lsb_bit: u8,
    width: u8,
    order: ByteOrder,
}

/// Why two ends, or an end and a width, make no [`Place`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlaceError {
    /// Both ends lie in one byte and the most significant one is the lower bit.
    EndsUpsideDown,
    /// More than 64 bits.
    TooWide {
        /// The width that was asked for, in bits.
        width: u64,
    },
    /// A width of no bits at all.
    ZeroWidth,
    /// A bit index above 7.
    BitOutOfRange {
        /// The bit index that was found.
        bit: u8,
    },
    /// The run would begin before byte 0 or end after byte 4,294,967,294.
    OutsidePayload,
}

impl fmt::Display for PlaceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::EndsUpsideDown => {
                f.write_str("a place is written from its most significant bit to its least significant one, and these two ends of one byte are the other way round; swap them")
            }
            Self::TooWide { width } => write!(f, "a place holds at most 64 bits and this one would have {width}; split it or correct an end"),
            Self::ZeroWidth => f.write_str("a place holds at least one bit and this one would have none; give it a width"),
            Self::BitOutOfRange { bit } => write!(f, "the bits of a byte are numbered 0 to 7 and this place names bit {bit}; use BYTE.BIT"),
            Self::OutsidePayload => f.write_str("the place would begin before byte 0 or end after the last byte a payload can have; check its start and width"),
        }
    }
}

impl core::error::Error for PlaceError {}

impl Place {
    /// The place from its most significant bit `msb` to its least significant bit `lsb`, both included.
    ///
    /// With `msb` in the later byte it is Intel, with `msb` in the earlier byte Motorola.
    ///
    /// # Errors
    /// A bit index above 7, more than 64 bits, `msb` below `lsb` within one byte, or byte 4,294,967,295.
    pub const fn between(msb: BitPosition, lsb: BitPosition) -> Result<Self, PlaceError> {
        if msb.bit > 7 {
            return Err(PlaceError::BitOutOfRange { bit: msb.bit });
        }
        if lsb.bit > 7 {
            return Err(PlaceError::BitOutOfRange { bit: lsb.bit });
        }
        if msb.byte == u32::MAX || lsb.byte == u32::MAX {
            return Err(PlaceError::OutsidePayload);
        }
        if msb.byte == lsb.byte && msb.bit < lsb.bit {
            return Err(PlaceError::EndsUpsideDown);
        }
        // Ends in different bytes are at least two bits apart in the order they imply, so the width is never below 1.
        let (order, width) = if msb.byte < lsb.byte {
            (ByteOrder::Motorola, lsb.motorola_index() - msb.motorola_index() + 1)
        } else {
            (ByteOrder::Intel, msb.intel_index() - lsb.intel_index() + 1)
        };
        if width > 64 {
            return Err(PlaceError::TooWide { width });
        }
        Ok(Self {
            msb_byte: msb.byte,
            msb_bit: msb.bit,
            lsb_byte: lsb.byte,
            lsb_bit: lsb.bit,
            width: width as u8,
            order,
        })
    }

    /// The place of `width` bits whose least significant bit is `lsb`.
    ///
    /// # Errors
    /// A width outside 1..=64, a bit index above 7, or a run that leaves the payload (Motorola runs grow towards byte 0).
    pub const fn from_lsb(lsb: BitPosition, width: u32, order: ByteOrder) -> Result<Self, PlaceError> {
        let more = match checked_steps(lsb, width) {
            Ok(more) => more,
            Err(error) => return Err(error),
        };
        let msb = match order {
            ByteOrder::Intel => BitPosition::from_intel_index(lsb.intel_index() + more),
            ByteOrder::Motorola => match lsb.motorola_index().checked_sub(more) {
                Some(index) => BitPosition::from_motorola_index(index),
                None => None,
            },
        };
        match msb {
            Some(msb) => Self::between(msb, lsb),
            None => Err(PlaceError::OutsidePayload),
        }
    }

    /// The place of `width` bits whose most significant bit is `msb`.
    ///
    /// # Errors
    /// A width outside 1..=64, a bit index above 7, or a run that leaves the payload (Intel runs grow towards byte 0).
    pub const fn from_msb(msb: BitPosition, width: u32, order: ByteOrder) -> Result<Self, PlaceError> {
        let more = match checked_steps(msb, width) {
            Ok(more) => more,
            Err(error) => return Err(error),
        };
        let lsb = match order {
            ByteOrder::Motorola => BitPosition::from_motorola_index(msb.motorola_index() + more),
            ByteOrder::Intel => match msb.intel_index().checked_sub(more) {
                Some(index) => BitPosition::from_intel_index(index),
                None => None,
            },
        };
        match lsb {
            Some(lsb) => Self::between(msb, lsb),
            None => Err(PlaceError::OutsidePayload),
        }
    }

    /// The most significant bit.
    pub const fn msb(&self) -> BitPosition {
        BitPosition::new(self.msb_byte, self.msb_bit)
    }

    /// The least significant bit.
    pub const fn lsb(&self) -> BitPosition {
        BitPosition::new(self.lsb_byte, self.lsb_bit)
    }

    /// The number of bits, 1 to 64.
    pub const fn width(&self) -> u8 {
        self.width
    }

    /// The byte order; Intel by convention for a place inside one byte.
    pub const fn order(&self) -> ByteOrder {
        self.order
    }

    /// The first byte it touches, in sending order.
    pub const fn first_byte(&self) -> u32 {
        match self.order {
            ByteOrder::Intel => self.lsb_byte,
            ByteOrder::Motorola => self.msb_byte,
        }
    }

    /// The last byte it touches, in sending order: at most eight after the first.
    pub const fn last_byte(&self) -> u32 {
        match self.order {
            ByteOrder::Intel => self.msb_byte,
            ByteOrder::Motorola => self.lsb_byte,
        }
    }

    /// Whether it touches more than one byte, so that its byte order matters.
    pub const fn spans_bytes(&self) -> bool {
        self.msb_byte != self.lsb_byte
    }

    /// Every bit of it, the most significant one first.
    pub fn positions(&self) -> impl Iterator<Item = BitPosition> + use<> {
        let place = *self;
        (0..u64::from(place.width)).filter_map(move |step| match place.order {
            ByteOrder::Intel => BitPosition::from_intel_index(place.msb().intel_index() - step),
            ByteOrder::Motorola => BitPosition::from_motorola_index(place.msb().motorola_index() + step),
        })
    }

    /// The same place `bytes` bytes later; `None` past the last byte a payload can have.
    pub fn shifted(&self, bytes: u32) -> Option<Self> {
        let later = |end: BitPosition| Some(BitPosition::new(end.byte.checked_add(bytes)?, end.bit));
        Self::between(later(self.msb())?, later(self.lsb())?).ok()
    }

    /// Whether the two share a bit.
    pub fn overlaps(&self, other: &Self) -> bool {
        let first = self.first_byte().max(other.first_byte());
        let last = self.last_byte().min(other.last_byte());
        (first..=last).any(|byte| self.mask_in_byte(byte) & other.mask_in_byte(byte) != 0)
    }

    /// The bits of byte `byte`, one of those it touches, that belong to it.
    fn mask_in_byte(&self, byte: u32) -> u8 {
        let highest = if byte == self.msb_byte { self.msb_bit } else { 7 };
        let lowest = if byte == self.lsb_byte { self.lsb_bit } else { 0 };
        (0xFF >> (7 - highest)) & (0xFF << lowest)
    }
}

/// How many bits follow the first one of `width` that begin at `end`.
const fn checked_steps(end: BitPosition, width: u32) -> Result<u64, PlaceError> {
    match width {
        0 => Err(PlaceError::ZeroWidth),
        1..=64 if end.bit > 7 => Err(PlaceError::BitOutOfRange { bit: end.bit }),
        1..=64 => Ok(width as u64 - 1),
        _ => Err(PlaceError::TooWide { width: width as u64 }),
    }
}

#[cfg(test)]
mod tests;
