//! The protocol control information: the first bytes of a frame, which say what the frame is.

use super::fault::FaultKind;
use super::{CLASSIC_BYTES_MAX, FRAME_BYTES_MAX, SHORT_LENGTH_MAX, single_most};

/// A frame, taken apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Pci<'a> {
    /// A whole message.
    Single(&'a [u8]),
    /// The beginning of a longer one.
    First { announced: u32, data: &'a [u8] },
    /// The next piece; what of it is padding is for the message to say.
    Consecutive { number: u8, data: &'a [u8] },
    /// The answer of the receiver.
    FlowControl(FlowControl),
}

/// What a receiver answers to a first frame, and after each block.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct FlowControl {
    /// Whether the sender may go on.
    pub status: FlowStatus,
    /// Consecutive frames until the next flow control; 0 where there will be none.
    pub block_size: u8,
    /// The least time between two consecutive frames.
    pub separation_time: SeparationTime,
}

/// Whether the sender may go on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FlowStatus {
    /// It may.
    Continue,
    /// It shall wait for another flow control.
    Wait,
    /// It shall not: the message is longer than the receiver can hold.
    Overflow,
}

/// STmin, as it stands in the frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct SeparationTime(pub u8);

impl SeparationTime {
    /// The time in nanoseconds. Reserved values count as the longest one, 127 ms.
    #[must_use]
    pub const fn ns(self) -> u64 {
        match self.0 {
            ms @ 0..=0x7F => ms as u64 * 1_000_000,
            steps @ 0xF1..=0xF9 => (steps - 0xF0) as u64 * 100_000,
            _ => 127_000_000,
        }
    }

    /// Whether the standard gives the value no meaning.
    #[must_use]
    pub const fn is_reserved(self) -> bool {
        matches!(self.0, 0x80..=0xF0 | 0xFA..=0xFF)
    }
}

impl FlowControl {
    /// The three bytes of the frame, behind the address byte if there is one.
    #[must_use]
    pub const fn to_bytes(self) -> [u8; 3] {
        let status = match self.status {
            FlowStatus::Continue => 0,
            FlowStatus::Wait => 1,
            FlowStatus::Overflow => 2,
        };
        [0x30 | status, self.block_size, self.separation_time.0]
    }

    fn read(head: u8, rest: &[u8]) -> Result<Self, FaultKind> {
        let &[block_size, separation_time, ..] = rest else {
            return Err(FaultKind::FlowControlCut { found: rest.len() + 1 });
        };
        let status = match head & 0xF {
            0 => FlowStatus::Continue,
            1 => FlowStatus::Wait,
            2 => FlowStatus::Overflow,
            status => return Err(FaultKind::FlowStatusReserved { status }),
        };
        Ok(Self { status, block_size, separation_time: SeparationTime(separation_time) })
    }
}

impl<'a> Pci<'a> {
    /// Takes the payload of a frame apart, behind its `address_bytes`.
    pub(super) fn read(payload: &'a [u8], address_bytes: usize) -> Result<Self, FaultKind> {
        let frame_bytes = payload.len();
        if frame_bytes > FRAME_BYTES_MAX {
            return Err(FaultKind::FrameTooLong { found: frame_bytes });
        }
        let Some((&head, rest)) = payload.get(address_bytes..).and_then(<[u8]>::split_first) else {
            return Err(FaultKind::FrameEmpty { found: frame_bytes });
        };
        match head >> 4 {
            0 => single(head, rest, frame_bytes, address_bytes).map(Self::Single),
            1 => first(head, rest, frame_bytes, address_bytes),
            2 => Ok(Self::Consecutive { number: head & 0xF, data: rest }),
            3 => FlowControl::read(head, rest).map(Self::FlowControl),
            number => Err(FaultKind::TypeReserved { number }),
        }
    }
}

fn single(head: u8, rest: &[u8], frame_bytes: usize, address_bytes: usize) -> Result<&[u8], FaultKind> {
    let short = usize::from(head & 0xF);
    let (announced, least, data) = if frame_bytes <= CLASSIC_BYTES_MAX {
        (short, 1, rest)
    } else if short != 0 {
        return Err(FaultKind::SingleWithoutEscape { frame_bytes });
    } else {
        // A long frame has the length in a byte of its own, and carries what a frame of eight bytes cannot.
        let (&long, data) = rest.split_first().unwrap_or((&0, rest));
        (usize::from(long), single_most(CLASSIC_BYTES_MAX, address_bytes) + 1, data)
    };
    match data.get(..announced) {
        Some(message) if announced >= least => Ok(message),
        _ => Err(FaultKind::SingleLength { announced, least, most: data.len() }),
    }
}

fn first(head: u8, rest: &[u8], frame_bytes: usize, address_bytes: usize) -> Result<Pci<'_>, FaultKind> {
    if frame_bytes < CLASSIC_BYTES_MAX {
        return Err(FaultKind::FirstCut { found: frame_bytes });
    }
    let short = u32::from(head & 0xF) << 8 | u32::from(rest[0]);
    let (announced, data) = match *rest {
        [0, a, b, c, d, ref data @ ..] if short == 0 => {
            let long = u32::from_be_bytes([a, b, c, d]);
            if long <= SHORT_LENGTH_MAX {
                return Err(FaultKind::FirstEscapeNeedless { announced: long });
            }
            (long, data)
        }
        _ => (short, &rest[1..]),
    };
    let most = single_most(frame_bytes, address_bytes);
    if announced as usize <= most {
        return Err(FaultKind::FirstFitsSingle { announced, most });
    }
    Ok(Pci::First { announced, data })
}
