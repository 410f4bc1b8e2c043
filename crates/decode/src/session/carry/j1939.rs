//! Messages of SAE J1939-21: parameter groups that are longer than a frame.

use wirelore_model::{NetworkId, SeenId};
use wirelore_transport::j1939_tp::{Conversation, Event, Fault, Outcome, Reassembler};

use super::{Give, Taken};
use crate::decoder::Decoder;
use crate::session::sample::Seen;

/// The messages of one channel.
#[derive(Debug, Default)]
pub(super) struct J1939Tp {
    reassembler: Reassembler,
}

impl J1939Tp {
    pub(super) fn take(
        &mut self,
        decoder: &Decoder,
        network: NetworkId,
        seen: &Seen<'_>,
        give: &mut dyn Give,
    ) -> Taken {
        let SeenId::Can { id, extended: true } = seen.id else { return Taken::Plain };
        let outcome = self.reassembler.feed(seen.time_ns, id, seen.payload, &mut |event| match event {
            Event::Message(message) => {
                let seen_as = |priority| group(message.pgn, message.conversation, priority);
                let is_described =
                    |priority: &u32| decoder.recognise(network, seen_as(*priority), message.bytes).is_some();
                // The transport does not send the priority of the message: any that is described will do.
                let own = id >> 26;
                let priority = std::iter::once(own).chain(0..=LOWEST_PRIORITY).find(is_described).unwrap_or(own);
                give.message(message.last_ns, seen_as(priority), message.bytes);
            }
            Event::Fault(fault) => tell_fault(&fault, id >> 26, give),
        });
        if outcome == Outcome::NotMine { Taken::Plain } else { Taken::Carrying }
    }

    pub(super) fn finish(&mut self, give: &mut dyn Give) {
        self.reassembler.finish(&mut |event| {
            if let Event::Fault(fault) = event {
                tell_fault(&fault, LOWEST_PRIORITY, give);
            }
        });
    }
}

/// Frames of the transport have this priority unless the sender chooses another (SAE J1939-21, from memory).
const LOWEST_PRIORITY: u32 = 7;

fn tell_fault(fault: &Fault, priority: u32, give: &mut dyn Give) {
    let pgn = fault.pgn.unwrap_or(CONTROL);
    give.fault(group(pgn, fault.conversation, priority), &fault.kind);
}

/// The group of frames whose message is not known.
const CONTROL: u32 = wirelore_transport::j1939_tp::CONTROL_GROUP;

/// The identifier that the message would have if it fitted into one frame (SAE J1939-21: PF below 240 has its destination in the low byte).
fn group(pgn: u32, conversation: Conversation, priority: u32) -> SeenId {
    let is_to_destination = (pgn >> 8) & 0xFF < 240;
    let pgn = if is_to_destination { pgn & 0x3_FF00 | u32::from(conversation.destination) } else { pgn & 0x3_FFFF };
    SeenId::Can { id: priority << 26 | pgn << 8 | u32::from(conversation.source), extended: true }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// SAE J1939-21 identifiers, from memory: 65226 is for everybody, 59904 for one.
    #[test]
    fn a_message_has_the_identifier_of_its_group() {
        let conversation = Conversation { source: 0x0B, destination: 0xF9 };
        let id = |id| SeenId::Can { id, extended: true };
        assert_eq!(group(65_226, conversation, 6), id(0x18FE_CA0B));
        assert_eq!(group(59_904, conversation, 6), id(0x18EA_F90B));
    }
}
