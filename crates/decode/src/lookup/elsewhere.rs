//! Frames of networks that are not CAN: few identifiers, recognised by several things at once.
//!
//! What every such identifier states is put into one number; those with the same number stand beside each other, the narrower before
//! the wider, and are compared one by one.

use wirelore_model::{FrameId, Identifier, SeenId};

/// The frames of one network.
#[derive(Debug, Clone, Default)]
pub(super) struct Elsewhere {
    /// By number, then by narrowness, then in the order of the description.
    entries: Box<[(u32, Identifier, FrameId)]>,
}

impl Elsewhere {
    pub(super) fn new(frames: Vec<(Identifier, FrameId)>) -> Self {
        let mut entries: Vec<_> =
            frames.into_iter().map(|(identifier, frame)| (number_of(&identifier), identifier, frame)).collect();
        entries.sort_by_key(|(number, identifier, frame)| (*number, width(identifier), *frame));
        Self { entries: entries.into() }
    }

    pub(super) fn find(&self, seen: SeenId, payload: &[u8]) -> Option<FrameId> {
        numbers_of(seen).into_iter().flatten().find_map(|number| {
            let first = self.entries.partition_point(|entry| entry.0 < number);
            let mut alike = self.entries[first..].iter().take_while(|entry| entry.0 == number);
            alike.find(|(_, identifier, _)| identifier.matches(seen, payload)).map(|&(.., frame)| frame)
        })
    }
}

/// What an identifier always states.
fn number_of(identifier: &Identifier) -> u32 {
    match *identifier {
        Identifier::Xl { acceptance, .. } => acceptance,
        Identifier::FlexRay { slot, .. } => slot.into(),
        Identifier::Most { block, function, .. } => pair(block.into(), function),
        Identifier::SomeIp { service, method, .. } => pair(service, method),
        Identifier::Port { port, .. } => port.into(),
        Identifier::DoIp { payload_type, .. } => payload_type.into(),
        Identifier::Can { .. } | Identifier::Pgn { .. } | Identifier::Lin { .. } | Identifier::Telegram { .. } => 0,
    }
}

/// The numbers of the identifiers that a frame may have, the first before the second.
fn numbers_of(seen: SeenId) -> [Option<u32>; 2] {
    match seen {
        SeenId::Xl { acceptance, .. } => [Some(acceptance), None],
        SeenId::FlexRay { slot, .. } => [Some(slot.into()), None],
        SeenId::Most { block, function, .. } => [Some(pair(block.into(), function)), None],
        SeenId::SomeIp { service, method, .. } => [Some(pair(service, method)), None],
        // Where it goes says more than where it comes from.
        SeenId::Ports { from, to, .. } => [Some(to.into()), Some(from.into())],
        SeenId::DoIp { payload_type, .. } => [Some(payload_type.into()), None],
        SeenId::Telegram { .. } => [Some(0), None],
        SeenId::Can { .. } | SeenId::Lin(_) | SeenId::Packet { .. } => [None, None],
    }
}

fn pair(high: u16, low: u16) -> u32 {
    u32::from(high) << 16 | u32::from(low)
}

/// How much an identifier leaves open; less is narrower.
fn width(identifier: &Identifier) -> usize {
    match identifier {
        Identifier::Xl { priority, .. } => usize::from(priority.is_none()),
        Identifier::FlexRay { repetition, .. } => 64 / usize::from(*repetition).max(1),
        Identifier::Most { instance, operation, .. } => {
            usize::from(instance.is_none()) + usize::from(operation.is_none())
        }
        Identifier::SomeIp { message_type, .. } => usize::from(message_type.is_none()),
        Identifier::DoIp { source, target, .. } => usize::from(source.is_none()) + usize::from(target.is_none()),
        // The longest beginning first; an address says as much as one byte.
        Identifier::Telegram { source, target, starts } => {
            1000_usize.saturating_sub(starts.len() + usize::from(source.is_some()) + usize::from(target.is_some()))
        }
        Identifier::Can { .. } | Identifier::Pgn { .. } | Identifier::Lin { .. } | Identifier::Port { .. } => 0,
    }
}

#[cfg(test)]
mod tests {
    use wirelore_model::{FlexRayChannels, PortProtocol};

    use super::*;

    fn find(identifiers: &[Identifier], seen: SeenId, payload: &[u8]) -> Option<u32> {
        let frames = identifiers.iter().cloned().zip((0..).map(FrameId)).collect();
        Elsewhere::new(frames).find(seen, payload).map(|frame| frame.0)
    }

    fn slot(slot: u16, first_cycle: u8, repetition: u8, channels: FlexRayChannels) -> Identifier {
        Identifier::FlexRay { slot, first_cycle, repetition, channels }
    }

    /// Cycles of base 3 repetition 8: FlexRay 2.1A cycle multiplexing, from memory.
    #[test]
    fn a_slot_is_told_apart_by_its_cycles_and_channels() {
        let frames = [
            slot(42, 0, 1, FlexRayChannels::Both),
            slot(42, 3, 8, FlexRayChannels::A),
            slot(43, 1, 2, FlexRayChannels::B),
        ];
        let seen = |slot, cycle, on_b| find(&frames, SeenId::FlexRay { slot, cycle, on_b }, &[]);
        for cycle in 0..64 {
            let narrow = [3, 11, 19, 27, 35, 43, 51, 59].contains(&cycle);
            assert_eq!(seen(42, cycle, false), Some(u32::from(narrow)), "cycle {cycle}");
            assert_eq!(seen(42, cycle, true), Some(0), "cycle {cycle}");
            assert_eq!(seen(43, cycle, true), (cycle % 2 == 1).then_some(2), "cycle {cycle}");
        }
        assert_eq!(seen(43, 1, false), None);
        assert_eq!(seen(44, 1, false), None);
    }

    #[test]
    fn the_narrowest_telegram_goes_first() {
        let telegram = |source, target, starts: &[u8]| Identifier::Telegram { source, target, starts: starts.to_vec() };
        let frames = [
            telegram(None, None, &[]),
            telegram(Some(0x10), None, &[]),
            telegram(Some(0x10), Some(0xF1), &[0x41]),
            telegram(None, None, &[0x41, 0x0C]),
        ];
        let seen = |source, target, payload: &[u8]| find(&frames, SeenId::Telegram { source, target }, payload);
        assert_eq!(seen(None, None, &[1]), Some(0));
        assert_eq!(seen(Some(0x10), None, &[1]), Some(1));
        assert_eq!(seen(Some(0x10), Some(0xF1), &[0x41, 0x0D]), Some(2));
        assert_eq!(seen(Some(0x11), Some(0xF1), &[0x41, 0x0C]), Some(3));
        assert_eq!(find(&frames[1..2], SeenId::Telegram { source: None, target: None }, &[]), None);
    }

    #[test]
    fn ports_are_those_of_both_ends() {
        let port = |protocol, port| Identifier::Port { protocol, port };
        let frames = [port(PortProtocol::Udp, 30_490), port(PortProtocol::Tcp, 13_400), port(PortProtocol::Udp, 5)];
        let seen = |protocol, from, to| find(&frames, SeenId::Ports { protocol, from, to }, &[]);
        assert_eq!(seen(PortProtocol::Udp, 5, 30_490), Some(0), "where it goes first");
        assert_eq!(seen(PortProtocol::Udp, 5, 6), Some(2));
        assert_eq!(seen(PortProtocol::Tcp, 5, 13_400), Some(1));
        assert_eq!(seen(PortProtocol::Udp, 13_400, 13_400), None);
    }

    #[test]
    fn messages_of_services_functions_and_doip_are_found() {
        let frames = [
            Identifier::SomeIp { service: 0x4A10, method: 0x8001, message_type: None },
            Identifier::SomeIp { service: 0x4A10, method: 1, message_type: Some(0x80) },
            Identifier::Most { block: 0x22, instance: None, function: 0x0D2, operation: Some(0xC) },
            Identifier::DoIp { payload_type: 0x8001, source: Some(0x0E00), target: None },
            Identifier::Xl { acceptance: 7, priority: None },
        ];
        let message = |method, message_type| SeenId::SomeIp { service: 0x4A10, method, message_type };
        assert_eq!(find(&frames, message(0x8001, 2), &[]), Some(0));
        assert_eq!(find(&frames, message(1, 0x80), &[]), Some(1));
        assert_eq!(find(&frames, message(1, 0), &[]), None);
        let function = SeenId::Most { block: 0x22, instance: 9, function: 0x0D2, operation: 0xC };
        assert_eq!(find(&frames, function, &[]), Some(2));
        let diagnostic = SeenId::DoIp { payload_type: 0x8001, source: Some(0x0E00), target: Some(1) };
        assert_eq!(find(&frames, diagnostic, &[]), Some(3));
        assert_eq!(find(&frames, SeenId::Xl { acceptance: 7, priority: 3 }, &[]), Some(4));
        assert_eq!(find(&frames, SeenId::Can { id: 7, extended: false }, &[]), None);
    }
}
