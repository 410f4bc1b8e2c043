//! How long the payload of each type may be (field by field from memory of ISO 13400-2).

use std::ops::RangeInclusive;

pub(super) struct Lengths {
    pub(super) possible: RangeInclusive<u32>,
    /// The same in words.
    pub(super) words: &'static str,
}

impl Lengths {
    /// `None` for a type that table 17 of the standard does not name.
    pub(super) fn of(payload_type: u16) -> Option<Self> {
        let (possible, words) = match payload_type {
            0x0001 | 0x0007 | 0x4001 | 0x4003 => (0..=0, "none"),
            0x0000 | 0x4004 => (1..=1, "1"),
            0x0002 => (6..=6, "6"),
            0x0003 => (17..=17, "17"),
            0x0004 => (32..=33, "32 or 33"),
            0x0005 => (7..=11, "7 or 11"),
            0x0006 => (9..=13, "9 or 13"),
            0x0008 => (2..=2, "2"),
            0x4002 => (3..=7, "3 or 7"),
            0x8001..=0x8003 => (5..=u32::MAX, "at least 5"),
            _ => return None,
        };
        Some(Self { possible, words })
    }
}
