//! What checks must know of a frame beside its payload: who sent it, and what stood in front of the payload.

use wirelore_model::{FlexRayChannels, Frame, Identifier, Role, SeenId, Signal};

use crate::source::SourceKinds;

/// What a frame shows beside its payload, as far as its checks ask for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Origin {
    /// What it is recognised by, where that is known.
    pub id: Option<SeenId>,
    /// Of a SOME/IP message bytes 8..15 of its header, which stand between its length and its payload.
    pub header: Option<[u8; 8]>,
}

impl Origin {
    /// The number that checksums over bytes of the identifier take: that of CAN frames, the acceptance field of CAN XL and the identifier
    /// of LIN. Frames of other networks have none.
    pub(super) fn number(&self) -> Option<u32> {
        match self.id? {
            SeenId::Can { id, .. } | SeenId::Xl { acceptance: id, .. } => Some(id),
            SeenId::Lin(id) => Some(id.into()),
            _ => None,
        }
    }

    /// A number that tells the sequences of one frame apart: sent by different senders, to different receivers, or on both channels.
    pub(super) fn sequence(&self, is_group: bool) -> u64 {
        let Some(id) = self.id else { return 0 };
        match id {
            // The priority of a group is the sender's choice, message by message.
            SeenId::Can { id, .. } if is_group => (id & 0x03FF_FFFF).into(),
            SeenId::Can { id, extended } => u64::from(id) | u64::from(extended) << 32,
            SeenId::Xl { acceptance, priority } => u64::from(acceptance) | u64::from(priority) << 32,
            // The answer to an event goes on in the sequence of the frame that it is.
            SeenId::Lin(_) => 0,
            // A frame on both channels is sent twice.
            SeenId::FlexRay { on_b, .. } => on_b.into(),
            SeenId::Telegram { source, target } => ends(source, target),
            SeenId::Most { instance, .. } => instance.into(),
            SeenId::SomeIp { message_type, .. } => {
                let client = self.header.map_or(0, |[high, low, ..]| u16::from_be_bytes([high, low]));
                u64::from(client) << 8 | u64::from(message_type)
            }
            SeenId::Ports { from, to, .. } => u64::from(from) << 16 | u64::from(to),
            SeenId::DoIp { source, target, .. } => ends(source, target),
            SeenId::Packet { .. } => 0,
        }
    }
}

/// Two addresses in one number, each of them or none.
fn ends<A: Into<u64>>(source: Option<A>, target: Option<A>) -> u64 {
    let number = |address: Option<A>| address.map_or(0, |address| address.into() + 1);
    number(source) << 32 | number(target)
}

/// Whether the identifier of a frame tells several sequences of it apart. (The source of a parameter group is told beside it.)
pub(crate) fn has_several_sequences(frame: &Frame) -> bool {
    let is_counted = |signal: &Signal| matches!(signal.role, Role::Counter(_) | Role::Protection(_));
    if !frame.signals.iter().any(is_counted) {
        return false;
    }
    let mut networks: Vec<_> = frame.seen_on.iter().map(|seen| seen.network).collect();
    networks.sort_unstable();
    let is_twice_on_one = networks.windows(2).any(|pair| pair[0] == pair[1]);
    is_twice_on_one || frame.seen_on.iter().any(|seen| leaves_open(&seen.identifier))
}

/// Whether an identifier leaves open who sends to whom.
fn leaves_open(identifier: &Identifier) -> bool {
    match identifier {
        Identifier::Can { first, last, .. } => first != last,
        Identifier::Pgn { pgn, .. } => is_to_destination(*pgn),
        Identifier::Xl { priority, .. } => priority.is_none(),
        Identifier::Lin { .. } => false,
        Identifier::FlexRay { channels, .. } => *channels == FlexRayChannels::Both,
        Identifier::Telegram { source, target, .. } => source.is_none() || target.is_none(),
        Identifier::Most { instance, .. } => instance.is_none(),
        Identifier::SomeIp { .. } | Identifier::Port { .. } => true,
        Identifier::DoIp { source, target, .. } => source.is_none() || target.is_none(),
    }
}

/// Whether the identifiers of a group name a destination too (SAE J1939-21: PF below 240).
pub(crate) fn is_to_destination(pgn: u32) -> bool {
    pgn >> 8 & 0xFF < 240
}

/// Whether a frame's checks, or who sent it, ask for more than its payload and the source address of a group, so that rows must keep it.
pub(crate) fn asks_for_origin(frame: &Frame) -> bool {
    let over_identifier = |signal: &Signal| matches!(&signal.role, Role::Checksum(sum) if sum.needs_identifier());
    // A protected SOME/IP message, whose header is protected with it, has several sequences.
    frame.signals.iter().any(over_identifier) || has_several_sequences(frame) || SourceKinds::of(frame).identifiers()
}
