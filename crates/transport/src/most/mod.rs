//! Control messages of MOST that are longer than one transfer: sent in parts that are numbered.
//!
//! [`ControlMessage`] reads the 17 bytes in which MOST25 carries a message or a part of one; the [`Reassembler`] puts parts together,
//! wherever they come from. Layout and numbering: MOST Specification 3.0, from memory; recorded messages of a real ring agree.
//!
//! What the reassembler holds is bounded: at most 256 messages at once (the one that was silent for longest is given up for a new one),
//! each with one buffer, which grows with the bytes that come and never beyond twice [`Rules::most_bytes`].

mod control;
mod fault;
mod reassembler;

pub use control::{CONTROL_BYTES, ControlError, ControlMessage};
pub use fault::{Fault, FaultKind};
pub use reassembler::{Event, Message, Outcome, Reassembler};

/// How a transfer stands in its message (TelID).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Part {
    /// It is the whole message.
    Whole,
    /// The first part.
    First,
    /// A part in between.
    Middle,
    /// The last part.
    Last,
}

impl Part {
    /// The part of a number: 0 to 3. Others announce sizes, or are kept for later.
    #[must_use]
    pub const fn of_number(number: u8) -> Option<Self> {
        match number {
            0 => Some(Self::Whole),
            1 => Some(Self::First),
            2 => Some(Self::Middle),
            3 => Some(Self::Last),
            _ => None,
        }
    }
}

/// What holds for the messages of a ring.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rules {
    /// The longest message that is put together; 65,535 bytes is the longest there is.
    pub most_bytes: u32,
    /// How long a message may wait for its next part: 5 s (common practice, no source).
    pub most_gap_ns: i64,
}

impl Default for Rules {
    fn default() -> Self {
        Self { most_bytes: 65_535, most_gap_ns: 5_000_000_000 }
    }
}
