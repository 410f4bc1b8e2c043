//! The header of a FlexRay frame: 40 bits, and their own check sequence (FlexRay 2.1A, ISO 17458-2).

use wirelore_bits::Crc;

/// The bytes of a header.
pub(crate) const HEADER_BYTES: usize = 5;
/// The largest number of a slot.
pub(crate) const SLOT_MAX: u16 = 2047;
/// The last cycle before they count from 0 again.
pub(crate) const CYCLE_MAX: u8 = 63;
/// The most data bytes of a frame: 127 words of two.
pub(crate) const BYTES_MAX: usize = 254;

const PREAMBLE: u8 = 0x40;
const CARRIES_DATA: u8 = 0x20;
const SYNC: u8 = 0x10;
const STARTUP: u8 = 0x08;

/// What a header says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Header {
    pub(crate) preamble: bool,
    /// The null frame indicator, which is off in null frames.
    pub(crate) carries_data: bool,
    pub(crate) sync: bool,
    pub(crate) startup: bool,
    pub(crate) slot: u16,
    /// The length of the payload in words of two bytes, 0..=127.
    pub(crate) words: u8,
    pub(crate) crc: u16,
    pub(crate) cycle: u8,
}

impl Header {
    pub(crate) fn of_bytes([b0, b1, b2, b3, b4]: [u8; HEADER_BYTES]) -> Self {
        Self {
            preamble: b0 & PREAMBLE != 0,
            carries_data: b0 & CARRIES_DATA != 0,
            sync: b0 & SYNC != 0,
            startup: b0 & STARTUP != 0,
            slot: u16::from(b0 & 0x07) << 8 | u16::from(b1),
            words: b2 >> 1,
            crc: u16::from(b2 & 1) << 10 | u16::from(b3) << 2 | u16::from(b4 >> 6),
            cycle: b4 & CYCLE_MAX,
        }
    }

    pub(crate) fn bytes(&self) -> [u8; HEADER_BYTES] {
        let flag = |is_on: bool, bit: u8| if is_on { bit } else { 0 };
        let flags = flag(self.preamble, PREAMBLE)
            | flag(self.carries_data, CARRIES_DATA)
            | flag(self.sync, SYNC)
            | flag(self.startup, STARTUP);
        [
            flags | (self.slot >> 8) as u8 & 0x07,
            self.slot as u8,
            self.words << 1 | (self.crc >> 10) as u8 & 1,
            (self.crc >> 2) as u8,
            (self.crc << 6) as u8 | self.cycle & CYCLE_MAX,
        ]
    }

    /// The check sequence that belongs to the header: CRC-11/FLEXRAY over 20 bits, which are sync, startup, slot and length.
    pub(crate) fn right_crc(&self) -> u16 {
        const BITS: u32 = 20;
        let parameters = Crc::FLEXRAY_11.parameters();
        let top = 1 << (parameters.width - 1);
        let covered = u32::from(self.sync) << 19
            | u32::from(self.startup) << 18
            | u32::from(self.slot & SLOT_MAX) << 7
            | u32::from(self.words & 0x7F);
        let register = (0..BITS).rev().fold(parameters.init, |register, at| {
            let differs = (register & top != 0) != (covered >> at & 1 != 0);
            register << 1 ^ if differs { parameters.poly } else { 0 }
        });
        (register & ((top << 1) - 1)) as u16
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headers_to_bytes_and_back() {
        // Layout and polynomial: FlexRay 2.1A (from memory; ISO 17458-2 the same) and the public catalogue of CRC algorithms. No
        // published frame was found: the bytes were worked out from the rule by a second program, bit after bit.
        for (bytes, slot, words, crc, cycle) in [
            ([0x38, 0x01, 0x10, 0x46, 0xC0], 1, 8, 0x11B, 0),
            ([0x20, 0x0A, 0x09, 0x4F, 0x05], 10, 4, 0x53C, 5),
            ([0x10, 0x03, 0x05, 0xEF, 0x7F], 3, 2, 0x7BD, 63),
            ([0x67, 0xFF, 0x03, 0x78, 0xD1], 2047, 1, 0x5E3, 17),
            ([0x20, 0x40, 0x00, 0xE4, 0xE0], 64, 0, 0x393, 32),
        ] {
            let header = Header::of_bytes(bytes);
            assert_eq!((header.slot, header.words, header.crc, header.cycle), (slot, words, crc, cycle));
            assert_eq!((header.right_crc(), header.bytes()), (crc, bytes));
        }
        let null = Header::of_bytes([0x10, 0x03, 0x05, 0xEF, 0x7F]);
        assert!(!null.carries_data && null.sync && !null.startup && !null.preamble);
        assert!(Header::of_bytes([0x67, 0xFF, 0x03, 0x78, 0xD1]).preamble);
    }
}
