//! The block-structured packet file: sections, interfaces, packets, each a block that says its own length twice.
//!
//! The layout is the one of the IETF draft on the pcapng capture file format (opsawg-pcapng).

mod block;
mod clock;
mod interface;
mod lined_up;
mod plain;

use crate::byte_order::ByteOrder;
use crate::flaw::{Flaw, Implausible};
use crate::frame::{Found, PlaceInLog};
use crate::packet::Packet;
use crate::pass::{Shared, Step};
use crate::search;
use crate::window::Window;

use block::{Content, Envelope, PacketBody, kind};
pub(crate) use interface::NAME_BYTES_MAX;
use interface::{Interfaces, Link};

/// Whether the bytes begin with a section header.
pub(crate) fn begins(first: &[u8]) -> bool {
    first.starts_with(&kind::SECTION.to_be_bytes()) && block::byte_order_mark(first).is_ok()
}

/// The reader of one block-structured packet file.
#[derive(Debug, Clone, Default)]
pub(crate) struct PcapngReader {
    /// The byte order of the section being read; `None` before the first.
    section: Option<ByteOrder>,
    /// Whether the section is of a version whose blocks are not understood.
    unreadable_version: bool,
    interfaces: Interfaces,
    /// Whether the section has had a packet: interfaces are described before (common practice, no source).
    has_packets: bool,
    blocks: u64,
    /// Sections and interfaces described so far.
    descriptions: u64,
}

/// So many blocks in a row make the place where a piece of a log begins.
const BLOCKS_IN_A_ROW: usize = 4;

impl PcapngReader {
    /// Where the reading position is.
    pub(crate) fn place(&self, window: &Window) -> PlaceInLog {
        PlaceInLog::Block { number: self.blocks + 1, offset: window.offset() }
    }

    /// How many blocks were read.
    pub(crate) fn blocks(&self) -> u64 {
        self.blocks
    }

    /// Counts on from `blocks`.
    pub(crate) fn count_from(&mut self, blocks: u64) {
        self.blocks = blocks;
    }

    /// How many sections and interfaces were described, and whether the section has had a packet.
    pub(crate) fn knowledge(&self) -> (u64, bool) {
        (self.descriptions, self.has_packets)
    }

    /// Takes it that the section has had packets before.
    pub(crate) fn assume_packets(&mut self) {
        self.has_packets = true;
    }

    /// Moves to the next place where several whole blocks stand in a row; false where there is none before byte `until`.
    pub(crate) fn find_start(&self, window: &mut Window, until: u64) -> bool {
        while window.offset() < until && window.have(block::ENVELOPE_BYTES) {
            if self.are_likely_here(window, BLOCKS_IN_A_ROW) {
                return true;
            }
            window.consume(1);
        }
        false
    }

    /// Whether so many whole blocks of known kinds stand in a row at the reading position.
    fn are_likely_here(&self, window: &mut Window, count: usize) -> bool {
        let mut at = 0;
        (0..count).all(|_| {
            let likely_bytes = self.likely_bytes_at(window, at);
            at += likely_bytes.unwrap_or_default();
            likely_bytes.is_some()
        })
    }

    /// Reads one block, or steps over one damaged place.
    #[inline]
    pub(crate) fn step(&mut self, window: &mut Window, shared: &mut Shared) -> Step {
        if !self.is_more(window, shared) {
            return Step::End;
        }
        match self.envelope(window) {
            Ok(envelope) => {
                let frame = self.block(envelope, window, shared);
                self.blocks += 1;
                window.consume(envelope.total_bytes);
                frame.map_or(Step::Nothing, Step::Frame)
            }
            Err(what) => {
                self.search(window, shared, what);
                Step::Nothing
            }
        }
    }

    /// Whether at least the envelope of a block is left; tells a tail that is too short for one.
    #[inline]
    fn is_more(&self, window: &mut Window, shared: &mut Shared) -> bool {
        if window.have(block::ENVELOPE_BYTES) {
            return true;
        }
        let left = window.data().len();
        if left > 0 {
            shared.report.tail_lost(self.place(window), format!("the log ends after {left} bytes of a block"));
            window.consume(left);
        }
        false
    }

    /// The checked envelope of the block at the reading position, with the whole block fetched.
    #[inline]
    fn envelope(&self, window: &mut Window) -> Result<Envelope, Implausible> {
        let envelope = Envelope::read(window.data(), self.section)?;
        if !window.have(envelope.total_bytes) {
            let left = window.data().len();
            return Err(Implausible::BlockBeyondEnd { told: envelope.total_bytes as u32, left });
        }
        envelope.check_trailer(window.data())
    }

    /// What one whole block says.
    #[inline]
    fn block(&mut self, envelope: Envelope, window: &Window, shared: &mut Shared) -> Option<Found> {
        let order = envelope.order;
        let body = envelope.body(window.data());
        if envelope.kind != kind::SECTION && self.unreadable_version {
            return None;
        }
        let packet = match envelope.kind {
            kind::PACKET => PacketBody::enhanced(body, order),
            kind::SIMPLE_PACKET => PacketBody::simple(body, order, self.interfaces.first_limit_bytes()),
            kind::OLD_PACKET => PacketBody::old(body, order),
            _ => {
                self.describing_block(envelope, body, self.place(window), shared);
                return None;
            }
        };
        let place = self.place(window);
        let outcome = packet.and_then(|packet| {
            let position = window.position() + block::BODY_AT + packet.data.start;
            self.packet(packet, body, position, window.offset(), place, shared)
        });
        outcome.unwrap_or_else(|flaw| {
            shared.report.damaged_at(place, &flaw);
            None
        })
    }

    /// The frame in a packet block.
    #[inline]
    fn packet(
        &mut self,
        packet: PacketBody,
        body: &[u8],
        position: usize,
        offset: u64,
        place: PlaceInLog,
        shared: &mut Shared,
    ) -> Result<Option<Found>, Flaw<'static>> {
        self.has_packets = true;
        let interface = self.interfaces.get(packet.interface).ok_or(Flaw::NoInterface(packet.interface))?;
        let (channel, link) = match interface.link {
            Link::Channel(channel, link) => (channel, link),
            Link::Other(link_type) => {
                shared.report.other_link(link_type);
                return Ok(None);
            }
            Link::Unknown => return Err(Flaw::NoInterface(packet.interface)),
        };
        let time_ns = match packet.ticks {
            Some(ticks) => Some(interface.clock.time_ns(ticks).ok_or(Flaw::TimeOutOfRange)?),
            None => None,
        };
        let record = body.get(packet.data).unwrap_or_default();
        Ok(Packet { link, record, position, original: packet.original, time_ns, channel, offset, place }.frame(shared))
    }

    /// Blocks that hold no packet: sections and interfaces are kept, all others are passed over.
    #[cold]
    fn describing_block(&mut self, envelope: Envelope, body: &[u8], place: PlaceInLog, shared: &mut Shared) {
        self.descriptions += u64::from(matches!(envelope.kind, kind::SECTION | kind::INTERFACE));
        let outcome = match envelope.kind {
            kind::SECTION => self.begin_section(envelope.order, body),
            kind::INTERFACE => self.interfaces.describe(body, envelope.order, &mut shared.channels),
            // One turned bit makes such a block of one with a packet.
            kind::NAMES if !block::are_names(body, envelope.order) => Err(Flaw::NotNames),
            other => {
                if !kind::PUBLISHED_AND_PASSED_OVER.contains(&other) {
                    shared.report.unknown_block();
                }
                Ok(())
            }
        };
        if let Err(flaw) = outcome {
            shared.report.damaged_at(place, &flaw);
        }
    }

    /// Forgets the interfaces of the section before.
    fn begin_section(&mut self, order: ByteOrder, body: &[u8]) -> Result<(), Flaw<'static>> {
        let [major, minor] = [4, 6].map(|at| order.u16_at(body, at).unwrap_or_default());
        self.section = Some(order);
        self.has_packets = false;
        self.interfaces.begin_section();
        self.unreadable_version = major != 1;
        if self.unreadable_version { Err(Flaw::SectionVersion { major, minor }) } else { Ok(()) }
    }

    /// Steps over a damaged place, to the next whole block of a known kind.
    #[cold]
    fn search(&mut self, window: &mut Window, shared: &mut Shared, what: Implausible) {
        let place = self.place(window);
        if self.section.is_some() && !self.has_packets {
            shared.report.interface_doubted(place);
            self.has_packets = true;
        }
        self.blocks += 1;
        let is_likely_here = |window: &mut Window| self.is_likely_here(window);
        search::next_likely(window, &mut shared.report, (place, what), block::ENVELOPE_BYTES, is_likely_here);
    }

    /// Whether a whole block that makes sense stands at the reading position.
    fn is_likely_here(&self, window: &mut Window) -> bool {
        self.likely_bytes_at(window, 0).is_some()
    }

    /// The length of the whole block that makes sense `at` bytes behind the reading position. One of an interface that is not known
    /// is believed where another block follows.
    fn likely_bytes_at(&self, window: &mut Window, at: usize) -> Option<usize> {
        let (bytes, content) = self.sensible_at(window, at)?;
        let is_known = match content {
            Content::OfInterface(interface) => self.interfaces.get(interface).is_some(),
            _ => true,
        };
        (is_known || self.sensible_at(window, at + bytes).is_some()).then_some(bytes)
    }

    /// The length and the content of the block of a known kind, believable length and sound content at this place.
    fn sensible_at(&self, window: &mut Window, at: usize) -> Option<(usize, Content)> {
        if !window.have(at + block::ENVELOPE_BYTES) {
            return None;
        }
        let envelope = Envelope::read(&window.data()[at..], self.section).ok().filter(|it| it.is_likely())?;
        if !window.have(at + envelope.total_bytes) {
            return None;
        }
        let bytes = &window.data()[at..];
        envelope.check_trailer(bytes).ok()?;
        let content = envelope.content(bytes, self.interfaces.first_limit_bytes());
        (content != Content::Nonsense).then_some((envelope.total_bytes, content))
    }
}
