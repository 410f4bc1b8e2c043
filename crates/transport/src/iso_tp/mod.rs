//! ISO 15765-2: messages of up to 4 GiB in frames of CAN and CAN FD.
//!
//! The [`Reassembler`] puts messages together, [`segment`] cuts them. Clause and table numbers are not given in this module: its rules are
//! those of ISO 15765-2:2016, from memory.
//!
//! What the reassembler holds is bounded: at most 256 conversations at once (the one that was silent for longest is given up for a new
//! one), each with one buffer, which grows with the bytes that come and never beyond twice [`Rules::most_bytes`].

mod fault;
mod pci;
mod reassembler;
mod segment;

pub use fault::{Fault, FaultKind};
pub use pci::{FlowControl, FlowStatus, SeparationTime};
pub use reassembler::{Conversation, Event, Message, Outcome, Reassembler};
pub use segment::{Layout, SegmentError, segment};

/// How a frame says whom it is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Addressing {
    /// The identifier says it all.
    #[default]
    Normal,
    /// The first byte is the address of the target.
    Extended,
    /// The first byte is an address extension.
    Mixed,
}

impl Addressing {
    const fn address_bytes(self) -> usize {
        match self {
            Self::Normal => 0,
            Self::Extended | Self::Mixed => 1,
        }
    }
}

/// What holds for the messages of one identifier.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rules {
    /// Whether a byte of address stands before everything else.
    pub addressing: Addressing,
    /// The longest message that is put together; 4095 bytes is what a first frame without escape can announce.
    pub most_bytes: u32,
    /// How long a message may wait for its next frame: N_Cr, 1000 ms. A flow control that is told with [`Reassembler::answered`] begins
    /// the wait anew.
    pub most_gap_ns: i64,
}

impl Default for Rules {
    fn default() -> Self {
        Self { addressing: Addressing::Normal, most_bytes: 4095, most_gap_ns: 1_000_000_000 }
    }
}

/// The most bytes of a CAN FD frame.
const FRAME_BYTES_MAX: usize = 64;
/// The most bytes of a classic frame.
const CLASSIC_BYTES_MAX: usize = 8;
/// The longest message that a first frame announces in 12 bits.
const SHORT_LENGTH_MAX: u32 = 0xFFF;

/// The most bytes that a single frame of `frame_bytes` can carry, the address byte already taken off for `address_bytes`.
const fn single_most(frame_bytes: usize, address_bytes: usize) -> usize {
    let header = if frame_bytes > CLASSIC_BYTES_MAX { 2 } else { 1 };
    frame_bytes.saturating_sub(header + address_bytes)
}
