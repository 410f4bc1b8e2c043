//! Messages of ISO 15765-2, on the identifiers that are described as carried by it.

use wirelore_model::{NetworkId, SeenId, Transport};
use wirelore_transport::iso_tp::{Addressing, Conversation, Event, Outcome, Reassembler, Rules};

use super::{Give, Taken};
use crate::decoder::{CarriedBy, Decoder};
use crate::session::sample::Seen;

/// An identifier, and whether it has 29 bits.
type Key = (u32, bool);

/// The messages of one channel.
#[derive(Debug, Default)]
pub(super) struct IsoTp {
    reassembler: Reassembler<Key>,
}

impl IsoTp {
    pub(super) fn take(
        &mut self,
        decoder: &Decoder,
        network: NetworkId,
        seen: &Seen<'_>,
        give: &mut dyn Give,
    ) -> Taken {
        let SeenId::Can { id, extended } = seen.id else { return Taken::Plain };
        let found = decoder.recognise(network, seen.id, seen.payload);
        let Some(rules) = found.and_then(|found| rules(decoder.carried(found.frame())?)) else {
            return Taken::Plain;
        };
        let mut tell = |event: Event<'_, Key>| match event {
            Event::Message(message) => give.message(message.last_ns, seen_id(message.conversation), message.bytes),
            Event::Fault(fault) => give.fault(seen_id(fault.conversation), &fault.kind),
        };
        let outcome = self.reassembler.feed(&rules, seen.time_ns, (id, extended), seen.payload, &mut tell);
        if let (Outcome::FlowControl(answer), Some(key)) = (outcome, partner(id, extended)) {
            let answered = Conversation { key, address: None };
            self.reassembler.answered(answered, seen.time_ns, answer, &mut tell);
        }
        Taken::Carrying
    }

    pub(super) fn finish(&mut self, give: &mut dyn Give) {
        self.reassembler.finish(&mut |event| {
            if let Event::Fault(fault) = event {
                give.fault(seen_id(fault.conversation), &fault.kind);
            }
        });
    }
}

fn seen_id(conversation: Conversation<Key>) -> SeenId {
    let (id, extended) = conversation.key;
    SeenId::Can { id, extended }
}

fn rules(carried: CarriedBy) -> Option<Rules> {
    let addressing = match carried.transport {
        Transport::IsoTp => Addressing::Normal,
        Transport::IsoTpExtended => Addressing::Extended,
        Transport::IsoTpMixed => Addressing::Mixed,
        Transport::J1939Tp => return None,
    };
    Some(Rules { addressing, most_bytes: carried.most_bytes, ..Rules::default() })
}

/// The identifier of the other direction, where a standard pairs them: ISO 15765-4 (0x7E0..0x7E7 with 0x7E8..0x7EF), ISO 15765-2 normal
/// fixed addressing (0x18DA, target, source).
fn partner(id: u32, extended: bool) -> Option<Key> {
    match (id, extended) {
        (0x7E0..=0x7EF, false) => Some((id ^ 8, false)),
        (_, true) if id & 0x03FF_0000 == 0x00DA_0000 => {
            let (target, source) = (id >> 8 & 0xFF, id & 0xFF);
            Some((id & 0x1FFF_0000 | source << 8 | target, true))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 15765-4 and ISO 15765-2, from memory.
    #[test]
    fn the_other_direction_has_the_identifier_of_the_standard() {
        assert_eq!(partner(0x7E8, false), Some((0x7E0, false)));
        assert_eq!(partner(0x7E7, false), Some((0x7EF, false)));
        assert_eq!(partner(0x18DA_F110, true), Some((0x18DA_10F1, true)));
        assert_eq!(partner(0x7DF, false), None, "a functional request has no one answer");
        assert_eq!(partner(0x7E8, true), None);
    }
}
