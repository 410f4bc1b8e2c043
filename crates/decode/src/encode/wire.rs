//! Whole frames as they go over the wire, where the payload alone would not do on a bench: FlexRay.

use wirelore_bits::flexray::{Header, trailer};
use wirelore_model::{Database, FlexRayChannels, Frame, FrameId, Identifier, Network, NetworkKind};

/// A frame with everything that stands around its payload.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OnWire {
    /// On FlexRay's channel B; else on channel A.
    pub on_b: bool,
    /// The cycle that stands in its header.
    pub cycle: u8,
    /// Header, payload and check sequence.
    pub bytes: Vec<u8>,
}

/// A FlexRay frame with a payload as [`encode`](super::encode) gives it, once for each channel that it is sent on: in the first of its
/// cycles, and neither as a sync nor as a startup frame. Empty for frames of other networks.
#[must_use]
pub fn on_wire(database: &Database, frame: FrameId, payload: &[u8]) -> Vec<OnWire> {
    let home = database.frames.get(frame.index()).and_then(|frame| frame.seen_on.first());
    let Some(&Identifier::FlexRay { slot, first_cycle: cycle, channels, .. }) = home.map(|home| &home.identifier)
    else {
        return Vec::new();
    };
    let words = u8::try_from(payload.len() / 2).unwrap_or(u8::MAX);
    let header = Header { carries_data: true, slot, words, cycle, ..Header::default() }.bytes();
    let on_channel =
        |on_b| OnWire { on_b, cycle, bytes: [&header, payload, &trailer(on_b, &header, payload)].concat() };
    match channels {
        FlexRayChannels::A => vec![on_channel(false)],
        FlexRayChannels::B => vec![on_channel(true)],
        FlexRayChannels::Both => vec![on_channel(false), on_channel(true)],
    }
}

/// Whether a frame is one of CAN FD on its own network. Only the frames of CAN XL itself have any length there.
pub(super) fn is_of_can_fd(database: &Database, frame: &Frame) -> bool {
    let Some((identifier, network)) = home(database, frame) else { return false };
    match network.kind {
        NetworkKind::CanFd => true,
        NetworkKind::CanXl => matches!(identifier, Identifier::Can { .. } | Identifier::Pgn { .. }),
        _ => false,
    }
}

/// How long a payload of so many bytes is on the wire, and why: on FlexRay an even number, and all of a static slot; on LIN and CAN XL at
/// least one byte (LIN 2.2A section 2.3.1.4, ISO 11898-1, from memory).
pub(super) fn filled(database: &Database, frame: &Frame, bytes: usize) -> (usize, &'static str) {
    match home(database, frame) {
        Some((Identifier::FlexRay { slot, .. }, network)) => in_slot(network, *slot, bytes),
        Some((Identifier::Lin { .. }, _)) => (bytes.max(1), "LIN frames have at least one byte"),
        Some((Identifier::Xl { .. }, _)) => (bytes.max(1), "CAN XL frames have at least one byte"),
        _ => (bytes, ""),
    }
}

fn in_slot(network: &Network, slot: u16, bytes: usize) -> (usize, &'static str) {
    let slots = network.flexray.and_then(|timing| timing.static_around(slot));
    match slots.map(|slots| usize::from(slots.bytes)) {
        Some(all) if bytes <= all => (all, "a frame fills its static slot"),
        _ => (bytes.next_multiple_of(2), "FlexRay frames have an even number of bytes"),
    }
}

/// The network that a frame belongs to, and how it is recognised there.
fn home<'d>(database: &'d Database, frame: &'d Frame) -> Option<(&'d Identifier, &'d Network)> {
    let seen = frame.seen_on.first()?;
    Some((&seen.identifier, database.networks.get(seen.network.index())?))
}
