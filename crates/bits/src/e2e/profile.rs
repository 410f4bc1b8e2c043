//! The profiles: what stands where in their headers, and what they calculate with.

use super::{AUTOSAR_8, AUTOSAR_32, BARE_CRC_8, IBM_3740, XZ_64};
use crate::{BitPosition, Crc, Field, Place};

/// A profile, and how it mixes its data id in where there are several ways.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Profile {
    /// Profile 1, both bytes of the data id (variant 1A).
    P01Both,
    /// Profile 1, the low byte with even counts and the high byte with odd ones (variant 1B).
    P01Alternating,
    /// Profile 1, the low byte.
    P01Low,
    /// Profile 1, the low byte; the low half of the high byte is sent (variant 1C).
    P01Nibble,
    /// Profile 2.
    P02,
    /// Profile 4.
    P04,
    /// Profile 5.
    P05,
    /// Profile 6.
    P06,
    /// Profile 7.
    P07,
    /// Profile 8.
    P08,
    /// Profile 11, both bytes of the data id (variant 11A).
    P11Both,
    /// Profile 11, the low byte; the low half of the high byte is sent (variant 11C).
    P11Nibble,
    /// Profile 22.
    P22,
}

/// A part of a header.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Part {
    /// The checksum.
    Sum,
    /// The counter.
    Counter,
    /// The length of what is protected.
    Length,
    /// The data id, or what is sent of it.
    DataId,
}

impl Part {
    /// All parts.
    pub const ALL: [Self; 4] = [Self::Sum, Self::Counter, Self::Length, Self::DataId];
}

/// The ends of a part, as (byte, bit) behind the beginning of the header: the most and the least significant bit.
type Ends = ((u32, u8), (u32, u8));

/// Whole bytes, the most significant first.
const fn bytes(first: u32, last: u32) -> Option<Ends> {
    Some(((first, 7), (last, 0)))
}

const LOW_HALF_OF_BYTE_1: Option<Ends> = Some(((1, 3), (1, 0)));
const HIGH_HALF_OF_BYTE_1: Option<Ends> = Some(((1, 7), (1, 4)));

impl Profile {
    /// All profiles.
    pub const ALL: [Self; 13] = [
        Self::P01Both,
        Self::P01Alternating,
        Self::P01Low,
        Self::P01Nibble,
        Self::P02,
        Self::P04,
        Self::P05,
        Self::P06,
        Self::P07,
        Self::P08,
        Self::P11Both,
        Self::P11Nibble,
        Self::P22,
    ];

    /// Its number in the standard.
    pub const fn number(self) -> u8 {
        match self {
            Self::P01Both | Self::P01Alternating | Self::P01Low | Self::P01Nibble => 1,
            Self::P02 => 2,
            Self::P04 => 4,
            Self::P05 => 5,
            Self::P06 => 6,
            Self::P07 => 7,
            Self::P08 => 8,
            Self::P11Both | Self::P11Nibble => 11,
            Self::P22 => 22,
        }
    }

    /// The word for how it mixes its data id in, where there are several ways.
    pub const fn mode(self) -> Option<&'static str> {
        match self {
            Self::P01Both | Self::P11Both => Some("both"),
            Self::P01Alternating => Some("alternating"),
            Self::P01Low => Some("low"),
            Self::P01Nibble | Self::P11Nibble => Some("nibble"),
            _ => None,
        }
    }

    /// Whether it has a list of data ids instead of one.
    pub const fn takes_list(self) -> bool {
        matches!(self, Self::P02 | Self::P22)
    }

    /// Whether its header can only stand at the front of what is protected.
    pub const fn is_at_the_front(self) -> bool {
        matches!(self, Self::P02)
    }

    /// The greatest data id.
    pub const fn greatest_id(self) -> u32 {
        match self {
            Self::P01Both | Self::P01Alternating | Self::P01Low | Self::P05 | Self::P06 | Self::P11Both => 0xFFFF,
            Self::P01Nibble | Self::P11Nibble => 0x0FFF,
            Self::P02 | Self::P22 => 0xFF,
            Self::P04 | Self::P07 | Self::P08 => u32::MAX,
        }
    }

    /// The last count; the first one of the ring is 0.
    pub const fn last_count(self) -> u32 {
        match self.number() {
            1 | 11 => 14,
            2 | 22 => 15,
            5 | 6 => 0xFF,
            4 => 0xFFFF,
            _ => u32::MAX,
        }
    }

    /// The count of the first message after a start: profiles with a list count before they send.
    pub const fn first_count(self) -> u32 {
        if self.takes_list() { 1 } else { 0 }
    }

    /// How far a count is from the one before, around the ring. Both are counts of the profile.
    pub fn rise(self, before: u32, now: u32) -> u32 {
        let ring = u64::from(self.last_count()) + 1;
        ((u64::from(now) + ring - u64::from(before) % ring) % ring) as u32
    }

    /// The bytes of its header.
    pub const fn header_bytes(self) -> u32 {
        match self.number() {
            1 | 2 | 11 | 22 => 2,
            5 => 3,
            6 => 5,
            4 => 12,
            8 => 16,
            _ => 20,
        }
    }

    /// Where a part is, with the header from byte `header` on; `None` where the profile has no such part, or beyond any payload.
    pub fn part(self, part: Part, header: u32) -> Option<Field> {
        let (msb, lsb) = self.ends(part)?;
        let position = |(byte, bit): (u32, u8)| Some(BitPosition::new(header.checked_add(byte)?, bit));
        Place::between(position(msb)?, position(lsb)?).ok().map(Field::from)
    }

    const fn ends(self, part: Part) -> Option<Ends> {
        match (self.number(), part) {
            (1 | 2 | 11 | 22, Part::Sum) => bytes(0, 0),
            (1 | 2 | 11 | 22, Part::Counter) => LOW_HALF_OF_BYTE_1,
            (1 | 11, Part::DataId) if matches!(self, Self::P01Nibble | Self::P11Nibble) => HIGH_HALF_OF_BYTE_1,
            (4, Part::Length) => bytes(0, 1),
            (4, Part::Counter) => bytes(2, 3),
            (4, Part::DataId) => bytes(4, 7),
            (4, Part::Sum) => bytes(8, 11),
            // The only one whose less significant byte comes first.
            (5, Part::Sum) => Some(((1, 7), (0, 0))),
            (5, Part::Counter) => bytes(2, 2),
            (6, Part::Sum) => bytes(0, 1),
            (6, Part::Length) => bytes(2, 3),
            (6, Part::Counter) => bytes(4, 4),
            (7, Part::Sum) => bytes(0, 7),
            (7, Part::Length) => bytes(8, 11),
            (7, Part::Counter) => bytes(12, 15),
            (7, Part::DataId) => bytes(16, 19),
            (8, Part::Sum) => bytes(0, 3),
            (8, Part::Length) => bytes(4, 7),
            (8, Part::Counter) => bytes(8, 11),
            (8, Part::DataId) => bytes(12, 15),
            _ => None,
        }
    }

    /// The greatest length that its length field can tell.
    pub(super) const fn greatest_length(self) -> u64 {
        match self.number() {
            4 | 6 => 0xFFFF,
            _ => 0xFFFF_FFFF,
        }
    }

    /// What of a data id is sent, by profiles that send some.
    pub(super) const fn sent_of(self, id: u32) -> u32 {
        match self {
            Self::P01Nibble | Self::P11Nibble => id >> 8 & 0xF,
            _ => id,
        }
    }

    /// The checksum's first byte, and the one behind its last.
    pub(super) const fn sum_bytes(self, header: u32) -> (u32, u32) {
        let (first, count) = match self.number() {
            1 | 2 | 11 | 22 => (0, 1),
            5 | 6 => (0, 2),
            4 => (8, 4),
            8 => (0, 4),
            _ => (0, 8),
        };
        (header.saturating_add(first), header.saturating_add(first + count))
    }

    pub(super) fn crc(self) -> &'static Crc {
        match self.number() {
            1 | 11 => &BARE_CRC_8,
            2 | 22 => &AUTOSAR_8,
            5 | 6 => &IBM_3740,
            4 | 8 => &AUTOSAR_32,
            _ => &XZ_64,
        }
    }
}
