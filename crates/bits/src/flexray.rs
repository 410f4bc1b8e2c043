//! What stands around the payload of a FlexRay frame: five bytes of header in front of it, three of check sequence behind it.
//!
//! Layout: FlexRay 2.1A, from memory (ISO 17458-2 has the same). The two check sequences are those of the public catalogue of parametrised
//! CRC algorithms: CRC-11/FLEXRAY over 20 bits of the header, CRC-24/FLEXRAY-A or -B over header and payload.

use crate::Crc;

/// The bytes of a header.
pub const HEADER_BYTES: usize = 5;
/// The bytes of the check sequence behind the payload.
pub const TRAILER_BYTES: usize = 3;

const PREAMBLE: u8 = 0x40;
const CARRIES_DATA: u8 = 0x20;
const SYNC: u8 = 0x10;
const STARTUP: u8 = 0x08;

/// What a header says, but for its own check sequence. Numbers count as far as their fields reach: 11 bits, 7 bits, 6 bits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Header {
    /// The payload preamble indicator.
    pub preamble: bool,
    /// The null frame indicator, which is set where the frame does carry data.
    pub carries_data: bool,
    /// The sync frame indicator.
    pub sync: bool,
    /// The startup frame indicator.
    pub startup: bool,
    /// The slot, 1..=2047.
    pub slot: u16,
    /// How many words of two bytes the payload has, 0..=127.
    pub words: u8,
    /// The cycle, 0..=63.
    pub cycle: u8,
}

impl Header {
    /// The header in its bytes, and the check sequence that was sent with it.
    #[must_use]
    pub fn of_bytes([b0, b1, b2, b3, b4]: [u8; HEADER_BYTES]) -> (Self, u16) {
        let header = Self {
            preamble: b0 & PREAMBLE != 0,
            carries_data: b0 & CARRIES_DATA != 0,
            sync: b0 & SYNC != 0,
            startup: b0 & STARTUP != 0,
            slot: u16::from(b0 & 0x07) << 8 | u16::from(b1),
            words: b2 >> 1,
            cycle: b4 & 0x3F,
        };
        (header, u16::from(b2 & 1) << 10 | u16::from(b3) << 2 | u16::from(b4 >> 6))
    }

    /// Its check sequence of 11 bits, over sync, startup, slot and length.
    #[must_use]
    pub fn crc(&self) -> u16 {
        const COVERED_BITS: u32 = 20;
        let parameters = Crc::FLEXRAY_11.parameters();
        let (top, mask) = (1_u64 << (parameters.width - 1), (1_u64 << parameters.width) - 1);
        let covered = u32::from(self.sync) << 19
            | u32::from(self.startup) << 18
            | u32::from(self.slot & 0x7FF) << 7
            | u32::from(self.words & 0x7F);
        let crc = (0..COVERED_BITS).rev().fold(parameters.init, |register, bit| {
            let differs = (register & top != 0) != (covered >> bit & 1 != 0);
            (register << 1 ^ if differs { parameters.poly } else { 0 }) & mask
        });
        crc as u16
    }

    /// The header as it is sent.
    #[must_use]
    pub fn bytes(&self) -> [u8; HEADER_BYTES] {
        self.bytes_with(self.crc())
    }

    /// The same with a check sequence that was sent, right or wrong.
    #[must_use]
    pub fn bytes_with(&self, crc: u16) -> [u8; HEADER_BYTES] {
        let flag = |is_set: bool, bit: u8| if is_set { bit } else { 0 };
        let indicators = flag(self.preamble, PREAMBLE)
            | flag(self.carries_data, CARRIES_DATA)
            | flag(self.sync, SYNC)
            | flag(self.startup, STARTUP);
        [
            indicators | (self.slot >> 8) as u8 & 0x07,
            self.slot as u8,
            self.words << 1 | (crc >> 10) as u8 & 1,
            (crc >> 2) as u8,
            (crc << 6) as u8 | self.cycle & 0x3F,
        ]
    }
}

/// The check sequence behind the payload, most significant byte first: each channel begins with another register.
#[must_use]
pub fn trailer(on_b: bool, header: &[u8; HEADER_BYTES], payload: &[u8]) -> [u8; TRAILER_BYTES] {
    let crc = if on_b { &Crc::FLEXRAY_24_B } else { &Crc::FLEXRAY_24_A };
    let state = crc.update(crc.update(crc.start(), header), payload);
    let [_, _, _, _, _, bytes @ ..] = crc.finish(state).to_be_bytes();
    bytes
}
