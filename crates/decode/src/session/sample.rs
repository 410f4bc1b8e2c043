//! Copies of the first frames of a log, kept until it is known which networks they belong to.

use std::ops::Range;

use wirelore_log::{Channel, Faults, Frame, Kind, Medium, PlaceInLog};
use wirelore_model::SeenId;
use wirelore_transport::ethernet::ETHER_TYPES_OF_TAGS;

use crate::checks::Origin;
use crate::lin::LinWire;

/// How many frames are kept at most before the decision: at a usual 2,000 frames per second and network, several seconds.
pub(super) const SAMPLE_FRAMES: usize = 20_000;
/// How many bytes of them: Ethernet packets may have a quarter of a megabyte each.
const SAMPLE_BYTES: usize = 64 << 20;

/// What a session needs of a frame, lent by the recording or by the sample.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seen<'a> {
    pub(super) time_ns: Option<i64>,
    pub(super) channel: Channel,
    pub(super) id: SeenId,
    pub(super) kind: Kind,
    pub(super) place: PlaceInLog,
    /// What was wrong with a frame that was damaged on the wire.
    pub(super) faults: Faults,
    /// What a LIN frame had on the wire beside its data.
    pub(super) lin: LinWire,
    /// How a MOST message stands in a longer one.
    pub(super) part: Option<u8>,
    /// What stands in front of the payload of a SOME/IP message, behind its length.
    pub(super) header: Option<[u8; 8]>,
    pub(super) payload: &'a [u8],
}

impl<'a> From<&Frame<'a>> for Seen<'a> {
    #[inline(always)]
    fn from(frame: &Frame<'a>) -> Self {
        let &Frame { time_ns, channel, kind, place, payload, .. } = frame;
        Self {
            time_ns,
            channel,
            id: seen_id(frame),
            kind,
            place,
            faults: frame.medium.faults(),
            lin: LinWire::of(frame),
            part: part_of(frame.medium),
            header: None,
            payload,
        }
    }
}

impl Seen<'_> {
    /// What checks may ask for beside the payload.
    #[inline(always)]
    pub(super) fn origin(&self) -> Origin {
        Origin { id: Some(self.id), header: self.header }
    }
}

#[inline(always)]
fn part_of(medium: Medium) -> Option<u8> {
    match medium {
        Medium::Most(most) => most.part,
        _ => None,
    }
}

/// What a recorded frame shows of itself.
#[inline(always)]
#[must_use]
pub fn seen_id(frame: &Frame<'_>) -> SeenId {
    let &Frame { id, extended, .. } = frame;
    match frame.medium {
        Medium::Can => SeenId::Can { id, extended },
        _ => seen_id_elsewhere(frame),
    }
}

fn seen_id_elsewhere(frame: &Frame<'_>) -> SeenId {
    let &Frame { id, extended, .. } = frame;
    match frame.medium {
        Medium::Can => SeenId::Can { id, extended },
        Medium::CanXl(xl) => SeenId::Xl { acceptance: xl.acceptance, priority: id as u16 },
        Medium::Lin(_) => SeenId::Lin(id as u8),
        Medium::FlexRay(header) => SeenId::FlexRay { slot: id as u16, cycle: header.cycle, on_b: header.on_b },
        Medium::Most(_) => SeenId::Most {
            block: (id >> 24) as u8,
            instance: (id >> 16) as u8,
            function: (id >> 4 & 0xFFF) as u16,
            operation: (id & 0xF) as u8,
        },
        Medium::Serial => SeenId::Telegram { source: None, target: None },
        Medium::Ethernet => SeenId::Packet { ether_type: ether_type(frame.payload) },
    }
}

/// The EtherType of a packet, behind its VLAN tags if it has any (IEEE 802.3, 802.1Q).
fn ether_type(packet: &[u8]) -> u16 {
    let word = |at: usize| packet.get(at..at + 2).map(|word| u16::from_be_bytes([word[0], word[1]]));
    let places = [12, 16, 20];
    places.into_iter().filter_map(word).find(|word| !ETHER_TYPES_OF_TAGS.contains(word)).unwrap_or_default()
}

/// Frames with their payloads in one run of bytes.
#[derive(Debug, Default)]
pub(super) struct Sample {
    frames: Vec<(Seen<'static>, Range<usize>)>,
    bytes: Vec<u8>,
}

impl Sample {
    #[inline(never)]
    pub(super) fn push(&mut self, seen: &Seen<'_>) {
        let start = self.bytes.len();
        self.bytes.extend_from_slice(seen.payload);
        self.frames.push((Seen { payload: &[], ..*seen }, start..self.bytes.len()));
    }

    pub(super) fn is_empty(&self) -> bool {
        self.frames.is_empty()
    }

    pub(super) fn is_full(&self) -> bool {
        self.frames.len() >= SAMPLE_FRAMES || self.bytes.len() >= SAMPLE_BYTES
    }

    pub(super) fn frames(&self) -> impl Iterator<Item = Seen<'_>> {
        self.frames.iter().map(|frame| self.lend(frame))
    }

    fn lend(&self, (seen, bytes): &(Seen<'static>, Range<usize>)) -> Seen<'_> {
        Seen { payload: self.bytes.get(bytes.clone()).unwrap_or_default(), ..*seen }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The number that outer tags had before IEEE 802.1ad (common practice, no source), then a tag of IEEE 802.1Q and IPv4.
    #[test]
    fn all_tags_are_stepped_over() {
        let addresses = [0; 12];
        for (behind, ether_type) in [
            (&[0x91, 0, 0, 1, 0x81, 0, 0, 2, 0x08, 0][..], 0x0800),
            (&[0x91, 0, 0, 1, 0x86, 0xDD], 0x86DD),
            (&[0x88, 0xA8, 0, 1], 0),
        ] {
            let packet = [&addresses[..], behind].concat();
            let frame = Frame { medium: Medium::Ethernet, ..Frame::data(None, Channel(0), 0, &packet) };
            assert_eq!(seen_id(&frame), SeenId::Packet { ether_type });
        }
    }

    #[test]
    fn a_sample_is_full_by_its_bytes_too() {
        let packet = vec![0; 1 << 20];
        let frame = Frame { medium: Medium::Ethernet, ..Frame::data(None, Channel(0), 0, &packet) };
        let mut sample = Sample::default();
        for _ in 0..SAMPLE_BYTES >> 20 {
            assert!(!sample.is_full());
            sample.push(&Seen::from(&frame));
        }
        assert!(sample.is_full());
    }
}
