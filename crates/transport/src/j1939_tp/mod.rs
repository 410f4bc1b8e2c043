//! The transport protocol of SAE J1939-21: messages of 9 to 1785 bytes, broadcast or over a connection between two addresses.
//!
//! The [`Reassembler`] puts messages together, [`broadcast`] and [`connection`] cut them. It hears both sides of a connection, so a packet
//! that was lost on the way and asked for again is no fault. All rules and values here are those of SAE J1939-21, from memory.
//!
//! What the reassembler holds is bounded: at most 256 conversations at once (the one that was silent for longest is given up for a new
//! one), each with one buffer, which grows with the packets that come and never beyond twice 1785 bytes.

mod control;
mod exchange;
mod fault;
mod identifier;
mod packets;
mod reassembler;
mod segment;
mod timers;

pub use control::{AbortReason, Control, ControlKind};
pub use fault::{Fault, FaultKind};
pub use identifier::{CONTROL_GROUP, DATA_GROUP, EVERYBODY};
pub use reassembler::{Conversation, Event, Message, Outcome, Reassembler};
pub use segment::{Group, SegmentError, broadcast, connection};
pub use timers::{Timeouts, Timer};

/// Whether frames with this 29-bit identifier are frames of the protocol.
#[must_use]
pub fn carries(id: u32) -> bool {
    identifier::Addressed::read(id).is_some()
}

/// The shortest message: up to 8 bytes go into a frame of their own.
pub const LEAST_BYTES: u16 = 9;
/// The longest message: 255 packets of 7 bytes.
pub const MOST_BYTES: u16 = 1785;
/// Bytes of a message in a packet, behind its number.
const PACKET_BYTES: usize = 7;
/// Bytes of each frame of the protocol.
const FRAME_BYTES: usize = 8;
