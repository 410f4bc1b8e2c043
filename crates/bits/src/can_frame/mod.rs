//! How many bits a CAN or CAN FD frame takes on the wire (ISO 11898-1), from its start bit to the pause of three bits behind it.
//!
//! A [`Shape`] gives the limits before a frame is sent: [`Shape::unstuffed`] without any stuff bit, [`Shape::longest`] with as many as
//! the rules can ask for. [`CanFrame::bits`] gives the exact count of a frame that is known. For classic CAN the longest lengths are
//! those of Davis, Burns, Bril, Lukkien, "Controller Area Network (CAN) schedulability analysis: refuted, revisited and revised",
//! Real-Time Systems 35 (2007): 55 + 10n bits with an identifier of 11 bits, 80 + 10n with one of 29.
//!
//! The rate changes inside two bits of a CAN FD frame, BRS and the CRC delimiter. Both count whole at the nominal rate, so
//! that a time from these counts is never too short and is too long by less than two nominal bits.
//!
//! ```
//! use wirelore_bits::can_frame::{CanFrame, Format, Shape};
//!
//! let shape = Shape { extended: false, format: Format::Data };
//! assert_eq!(shape.unstuffed(8).ok_or("too long")?.total(), 111);
//! assert_eq!(shape.longest(8).ok_or("too long")?.total(), 135);
//!
//! let frame = CanFrame { identifier: 0x000, error_state: false, dlc: None, shape, payload: &[0; 8] };
//! assert_eq!(frame.bits().ok_or("cannot be sent")?.total(), 127);
//! # Ok::<(), &str>(())
//! ```

mod stuffing;

use crate::Crc;
use crate::payload_lengths::{can_fd_dlc, can_length};

use stuffing::Stuffing;

/// The bits of end of frame and what stands around it: CRC delimiter, ACK slot, ACK delimiter, end of frame (7), pause (3).
const ENDING: u32 = 13;
/// The check sequence of classic frames.
const CRC_15: u32 = 15;
/// Stuff count, CRC-17 and the fixed stuff bits among them: one before the stuff count, then one after every four bits.
const CHECK_SHORT: u32 = 4 + 17 + 6;
/// The same with CRC-21.
const CHECK_LONG: u32 = 4 + 21 + 7;
/// The most data bytes behind which CRC-17 stands.
const SHORT_CHECK_BYTES: u32 = 16;
/// The bits of a CAN FD header behind the BRS bit: ESI and the data length code.
const BEHIND_SWITCH: u32 = 5;

/// Bits on the wire, by the rate at which they are sent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct WireBits {
    /// Bits at the nominal rate: all of a classic frame and of a CAN FD frame without rate switch.
    pub nominal: u32,
    /// Bits at the data rate.
    pub data: u32,
}

impl WireBits {
    /// All bits.
    #[must_use]
    pub const fn total(self) -> u32 {
        self.nominal + self.data
    }
}

/// The kinds of frame that differ in length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Format {
    /// A classic data frame.
    Data,
    /// A classic remote frame: no data, whatever its data length code says.
    Remote,
    /// A CAN FD frame.
    Fd {
        /// Whether its data phase has the data rate (the BRS bit).
        bit_rate_switch: bool,
    },
}

/// What decides the length of a frame beside its data.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Shape {
    /// Whether the identifier has 29 bits.
    pub extended: bool,
    /// The kind of frame.
    pub format: Format,
}

impl Shape {
    /// The bits of a frame with so many data bytes that needs no stuff bits; the fixed ones of CAN FD count. `None` if no such frame
    /// carries so many. A CAN FD frame is as long as the next length that a data length code announces.
    #[must_use]
    pub const fn unstuffed(self, data_bytes: u32) -> Option<WireBits> {
        match self.sent_bytes(data_bytes) {
            Some(bytes) => Some(self.with_stuff_bits(bytes, 0, 0)),
            None => None,
        }
    }

    /// The most bits that a frame with so many data bytes can take: no frame takes more. `None` as for [`Shape::unstuffed`].
    ///
    /// The first stuff bit can stand behind the fifth bit, and then one behind every fourth. Where the rate changes, as many of
    /// them as there is room for count at the nominal rate: the frame that takes longest wherever the data rate is the higher one.
    #[must_use]
    pub const fn longest(self, data_bytes: u32) -> Option<WireBits> {
        let Some(bytes) = self.sent_bytes(data_bytes) else {
            return None;
        };
        let all = (self.stuffed_bits(bytes) - 1) / 4;
        // A stuff bit behind BRS itself would be in the data phase already.
        let before_switch = match self.format {
            Format::Fd { bit_rate_switch: true } => (self.header_bits() - BEHIND_SWITCH - 2) / 4,
            _ => all,
        };
        Some(self.with_stuff_bits(bytes, before_switch, all - before_switch))
    }

    /// The data bytes that are on the wire for so many described ones.
    const fn sent_bytes(self, data_bytes: u32) -> Option<u32> {
        match (self.format, data_bytes) {
            (Format::Remote, _) => Some(0),
            (_, 0..=8) => Some(data_bytes),
            (Format::Fd { .. }, 9..=24) => Some(data_bytes.next_multiple_of(4)),
            (Format::Fd { .. }, 25..=32) => Some(32),
            (Format::Fd { .. }, 33..=64) => Some(data_bytes.next_multiple_of(16)),
            _ => None,
        }
    }

    /// The bits from the start of the frame to the data length code.
    const fn header_bits(self) -> u32 {
        match (self.format, self.extended) {
            (Format::Fd { .. }, false) => 22,
            (Format::Fd { .. }, true) => 41,
            (_, false) => 19,
            (_, true) => 39,
        }
    }

    /// The bits among which stuff bits depend on the bits before: to the end of the check sequence, in CAN FD to the end of the data.
    const fn stuffed_bits(self, data_bytes: u32) -> u32 {
        let sequence = match self.format {
            Format::Fd { .. } => 0,
            Format::Data | Format::Remote => CRC_15,
        };
        self.header_bits() + 8 * data_bytes + sequence
    }

    /// The whole frame with stuff bits before and behind the place where the rate can change.
    const fn with_stuff_bits(self, data_bytes: u32, before_switch: u32, behind_switch: u32) -> WireBits {
        let check = match self.format {
            Format::Fd { .. } if data_bytes > SHORT_CHECK_BYTES => CHECK_LONG,
            Format::Fd { .. } => CHECK_SHORT,
            Format::Data | Format::Remote => CRC_15,
        };
        let first = self.header_bits() - BEHIND_SWITCH + before_switch;
        let second = BEHIND_SWITCH + 8 * data_bytes + check + behind_switch;
        match self.format {
            Format::Fd { bit_rate_switch: true } => WireBits { nominal: first + ENDING, data: second },
            _ => WireBits { nominal: first + second + ENDING, data: 0 },
        }
    }
}

/// A frame of which every bit is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CanFrame<'a> {
    /// The identifier: 11 bits, or 29 where it is extended; bits above them do not count.
    pub identifier: u32,
    /// What decides its length beside the data.
    pub shape: Shape,
    /// CAN FD: whether the sender was error passive (the ESI bit).
    pub error_state: bool,
    /// The data length code of a classic frame where it is known; else it is the number of data bytes.
    pub dlc: Option<u8>,
    /// The data bytes.
    pub payload: &'a [u8],
}

impl CanFrame<'_> {
    /// The bits that the frame took on the wire, with the stuff bits that it needed and the pause behind it. `None` if it cannot have
    /// been sent: more data than fits, a length that no code announces, a code that announces another length.
    #[must_use]
    pub fn bits(&self) -> Option<WireBits> {
        match self.shape.format {
            Format::Fd { bit_rate_switch } => self.fd_bits(bit_rate_switch),
            Format::Data => {
                let dlc = self.dlc.map_or_else(|| u8::try_from(self.payload.len()), Ok).ok()?;
                let announced = dlc <= 0xF && usize::from(can_length(dlc)) == self.payload.len();
                announced.then(|| self.classic_bits(self.classic_header(false, dlc), self.payload))
            }
            Format::Remote => {
                let dlc = self.dlc.map_or_else(|| u8::try_from(self.payload.len()), Ok).ok()?;
                (dlc <= 0xF).then(|| self.classic_bits(self.classic_header(true, dlc), &[]))
            }
        }
    }

    fn classic_bits(&self, header: Header, data: &[u8]) -> WireBits {
        let (bare, count) = header.bytes_behind_zeros();
        // The register starts with zeros, and zeros in front leave it there.
        let crc = Crc::CAN_15.update(Crc::CAN_15.update(Crc::CAN_15.start(), &bare[..count]), data);
        let crc = Crc::CAN_15.finish(crc) as u16;
        let mut stuffing = Stuffing::of_header(header);
        stuffing.pass(data);
        // The bit that makes two bytes of the sequence differs from the one before it: no stuff bit comes from it.
        stuffing.pass(&(crc << 1 | !crc & 1).to_be_bytes());
        self.shape.with_stuff_bits(data.len() as u32, stuffing.inserted(), 0)
    }

    fn fd_bits(&self, bit_rate_switch: bool) -> Option<WireBits> {
        let dlc = can_fd_dlc(u8::try_from(self.payload.len()).ok()?)?;
        let header = self.fd_header(bit_rate_switch, dlc);
        let mut stuffing = Stuffing::of_header(header);
        stuffing.pass(self.payload);
        let last_bit = self.payload.last().map_or(dlc & 1, |byte| byte & 1);
        // Where a stuff bit would stand behind the last data bit the first fixed one stands: there are never two (from memory of
        // ISO 11898-1:2015).
        let all = stuffing.inserted() - u32::from(stuffing.ends_with_stuff_bit(last_bit));
        // The bit before BRS is dominant and a BRS that switches is recessive: none stands behind it.
        let before_switch = Stuffing::of_header(header.without_last(BEHIND_SWITCH)).inserted();
        let before_switch = if bit_rate_switch { before_switch } else { all };
        Some(self.shape.with_stuff_bits(self.payload.len() as u32, before_switch, all - before_switch))
    }

    /// SOF, identifier (with SRR and IDE inside an extended one), RTR, reserved bits, data length code. Recessive bits are ones.
    fn classic_header(&self, remote: bool, dlc: u8) -> Header {
        let ending = u64::from(remote) << 6 | u64::from(dlc);
        let bits = if self.shape.extended { self.extended_identifier() << 7 } else { self.base_identifier() << 7 };
        Header { bits: bits | ending, count: self.shape.header_bits() }
    }

    /// SOF, identifier, RRS, FDF, reserved bit, BRS, ESI, data length code.
    fn fd_header(&self, bit_rate_switch: bool, dlc: u8) -> Header {
        let (switch, state) = (u64::from(bit_rate_switch), u64::from(self.error_state));
        let ending = 1 << 7 | switch << 5 | state << 4 | u64::from(dlc);
        let bits = if self.shape.extended { self.extended_identifier() << 9 } else { self.base_identifier() << 10 };
        Header { bits: bits | ending, count: self.shape.header_bits() }
    }

    fn base_identifier(&self) -> u64 {
        u64::from(self.identifier & 0x7FF)
    }

    /// Its first 11 bits, SRR and IDE, its last 18.
    fn extended_identifier(&self) -> u64 {
        u64::from(self.identifier >> 18 & 0x7FF) << 20 | 0b11 << 18 | u64::from(self.identifier & 0x3_FFFF)
    }
}

/// The first bits of a frame, the start bit as the highest of `count`.
#[derive(Clone, Copy)]
struct Header {
    bits: u64,
    count: u32,
}

impl Header {
    const fn without_last(self, bits: u32) -> Self {
        Self { bits: self.bits >> bits, count: self.count - bits }
    }

    /// In whole bytes, so many of the eight, with zeros in front.
    const fn bytes_behind_zeros(self) -> ([u8; 8], usize) {
        let count = self.count.div_ceil(8);
        ((self.bits << (64 - 8 * count)).to_be_bytes(), count as usize)
    }
}

#[cfg(test)]
mod tests;
