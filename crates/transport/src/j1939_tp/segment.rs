//! A message cut into frames.

use super::control::{Control, ControlKind, packets_for};
use super::identifier::{CONTROL_GROUP, DATA_GROUP, EVERYBODY, identifier};
use super::{FRAME_BYTES, LEAST_BYTES, MOST_BYTES, PACKET_BYTES};

/// What a message is, and who sends it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Group {
    /// Its parameter group.
    pub pgn: u32,
    /// The address of who sends it.
    pub source: u8,
    /// The priority of its frames, 0 to 7; both sides of a connection take it.
    pub priority: u8,
}

/// Why a message cannot be cut into frames.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum SegmentError {
    /// Too short or too long.
    #[error("a message of {0} bytes cannot be sent in packets; they carry 9 to 1785")]
    Size(usize),
    /// A connection with everybody.
    #[error("a connection needs one address to connect to, and 255 means everybody; broadcast the message")]
    Destination,
    /// No packets at once.
    #[error("a receiver that clears 0 packets at once never gets the message; clear 1 to 255")]
    NothingCleared,
}

/// Cuts a message into the frames of a broadcast, and hands out identifier and payload of each, in their order.
///
/// # Errors
/// A size that the protocol does not carry.
pub fn broadcast(
    group: &Group,
    message: &[u8],
    give: &mut dyn FnMut(u32, [u8; FRAME_BYTES]),
) -> Result<(), SegmentError> {
    let size = size_of(message)?;
    let packets = packets_for(size);
    let control = Control { pgn: group.pgn, kind: ControlKind::Broadcast { size, packets } };
    give(identifier(group.priority, CONTROL_GROUP, EVERYBODY, group.source), control.to_bytes());
    for (number, piece) in (1..=u8::MAX).zip(message.chunks(PACKET_BYTES)) {
        give(identifier(group.priority, DATA_GROUP, EVERYBODY, group.source), packet(number, piece));
    }
    Ok(())
}

/// Cuts a message into the frames of a connection with `destination`, which clears `at_once` packets at a time, and hands out identifier
/// and payload of each, those of the receiver among them.
///
/// # Errors
/// A size that the protocol does not carry, a connection with everybody, or one that clears nothing.
pub fn connection(
    group: &Group,
    destination: u8,
    at_once: u8,
    message: &[u8],
    give: &mut dyn FnMut(u32, [u8; FRAME_BYTES]),
) -> Result<(), SegmentError> {
    let size = size_of(message)?;
    if destination == EVERYBODY {
        return Err(SegmentError::Destination);
    }
    if at_once == 0 {
        return Err(SegmentError::NothingCleared);
    }
    let &Group { pgn, source, priority } = group;
    let packets = packets_for(size);
    let forth = |format| identifier(priority, format, destination, source);
    let back = identifier(priority, CONTROL_GROUP, source, destination);
    let request = ControlKind::RequestToSend { size, packets, most_at_once: u8::MAX };
    give(forth(CONTROL_GROUP), Control { pgn, kind: request }.to_bytes());
    for (number, piece) in (1..=u8::MAX).zip(message.chunks(PACKET_BYTES)) {
        if (number - 1) % at_once == 0 {
            let clear = ControlKind::ClearToSend { packets: at_once.min(packets - (number - 1)), next: number };
            give(back, Control { pgn, kind: clear }.to_bytes());
        }
        give(forth(DATA_GROUP), packet(number, piece));
    }
    give(back, Control { pgn, kind: ControlKind::Acknowledge { size, packets } }.to_bytes());
    Ok(())
}

fn size_of(message: &[u8]) -> Result<u16, SegmentError> {
    let size = u16::try_from(message.len()).ok().filter(|size| (LEAST_BYTES..=MOST_BYTES).contains(size));
    size.ok_or(SegmentError::Size(message.len()))
}

/// A packet; the last one is filled with FF.
fn packet(number: u8, piece: &[u8]) -> [u8; FRAME_BYTES] {
    let mut bytes = [0xFF; FRAME_BYTES];
    bytes[0] = number;
    bytes[1..=piece.len()].copy_from_slice(piece);
    bytes
}
