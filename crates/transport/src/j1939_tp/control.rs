//! The control messages, TP.CM.

use std::fmt;

use super::fault::FaultKind;
use super::{FRAME_BYTES, LEAST_BYTES, MOST_BYTES, PACKET_BYTES};

/// A control message.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Control {
    /// The parameter group of the message that it is about.
    pub pgn: u32,
    /// What it says.
    pub kind: ControlKind,
}

/// What a control message says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ControlKind {
    /// RTS: the sender asks to send.
    RequestToSend {
        /// Bytes of the message.
        size: u16,
        /// Packets of the message.
        packets: u8,
        /// The most packets that may be cleared at once; 255 where the sender sets no limit.
        most_at_once: u8,
    },
    /// CTS: the receiver asks for packets.
    ClearToSend {
        /// How many; 0 where the sender shall wait.
        packets: u8,
        /// The number of the first one.
        next: u8,
    },
    /// End of message: the receiver has all of it.
    Acknowledge {
        /// Bytes that came.
        size: u16,
        /// Packets that came.
        packets: u8,
    },
    /// BAM: the message follows, for everybody.
    Broadcast {
        /// Bytes of the message.
        size: u16,
        /// Packets of the message.
        packets: u8,
    },
    /// Either side gives the connection up.
    Abort(AbortReason),
}

impl Control {
    /// Reads the payload of a control message.
    ///
    /// # Errors
    /// A payload that is none.
    pub fn read(payload: &[u8]) -> Result<Self, FaultKind> {
        let &[head, a, b, c, d, pgn_low, pgn_middle, pgn_high] = payload else {
            return Err(FaultKind::FrameLength { found: payload.len() });
        };
        let size = u16::from_le_bytes([a, b]);
        let kind = match head {
            16 => ControlKind::RequestToSend { size, packets: c, most_at_once: d },
            17 => ControlKind::ClearToSend { packets: a, next: b },
            19 => ControlKind::Acknowledge { size, packets: c },
            32 => ControlKind::Broadcast { size, packets: c },
            255 => ControlKind::Abort(AbortReason(a)),
            number => return Err(FaultKind::ControlReserved { number }),
        };
        let pgn = u32::from_le_bytes([pgn_low, pgn_middle, pgn_high, 0]);
        if pgn > PGN_MAX {
            return Err(FaultKind::PgnImpossible { pgn });
        }
        Ok(Self { pgn, kind })
    }

    /// The payload of the control message.
    #[must_use]
    pub fn to_bytes(self) -> [u8; FRAME_BYTES] {
        let [low, middle, high, _] = self.pgn.to_le_bytes();
        let head = match self.kind {
            ControlKind::RequestToSend { size, packets, most_at_once } => {
                let [a, b] = size.to_le_bytes();
                [16, a, b, packets, most_at_once]
            }
            ControlKind::ClearToSend { packets, next } => [17, packets, next, 0xFF, 0xFF],
            ControlKind::Acknowledge { size, packets } => {
                let [a, b] = size.to_le_bytes();
                [19, a, b, packets, 0xFF]
            }
            ControlKind::Broadcast { size, packets } => {
                let [a, b] = size.to_le_bytes();
                [32, a, b, packets, 0xFF]
            }
            ControlKind::Abort(AbortReason(reason)) => [255, reason, 0xFF, 0xFF, 0xFF],
        };
        let [a, b, c, d, e] = head;
        [a, b, c, d, e, low, middle, high]
    }
}

/// The largest parameter group number: 18 bits.
const PGN_MAX: u32 = 0x3_FFFF;

/// Packets that `size` bytes need.
pub(super) const fn packets_for(size: u16) -> u8 {
    let packets = (size as usize).div_ceil(PACKET_BYTES);
    if packets > u8::MAX as usize { u8::MAX } else { packets as u8 }
}

/// Whether size and number of packets can be those of one message.
pub(super) fn check_size(size: u16, packets: u8) -> Result<(), FaultKind> {
    if !(LEAST_BYTES..=MOST_BYTES).contains(&size) {
        return Err(FaultKind::Size { size });
    }
    let needed = packets_for(size);
    if packets != needed {
        return Err(FaultKind::PacketsDisagree { size, packets, needed });
    }
    Ok(())
}

/// Why a connection was given up, as the number in the message. Its words are those of SAE J1939-21 in meaning, from memory.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct AbortReason(pub u8);

impl AbortReason {
    /// The reason in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self.0 {
            1 => "it is in another connection and cannot hold one more",
            2 => "it needs its resources for something else",
            3 => "it waited too long",
            4 => "it was cleared to send in the middle of sending",
            5 => "packets were asked for again too often",
            6 => "a data packet came that was not due",
            7 => "a data packet had a wrong number, and there was no way on",
            8 => "a data packet came twice, and there was no way on",
            9..=15 => "a reason of long messages (extended transport)",
            250 => "another reason",
            251..=255 => "a reason that is kept for the parameter group's own standard",
            0 | 16..=249 => "a reserved reason",
        }
    }
}

impl fmt::Display for AbortReason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({})", self.words(), self.0)
    }
}
