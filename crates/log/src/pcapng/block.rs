//! The envelope of a block, and the bodies of the three packet blocks.

use std::ops::Range;

use crate::byte_order::ByteOrder;
use crate::flaw::{Flaw, Implausible};

/// The numbers of block types.
pub(super) mod kind {
    /// Section Header Block; reads the same in both byte orders.
    pub(crate) const SECTION: u32 = 0x0A0D_0D0A;
    /// Interface Description Block.
    pub(crate) const INTERFACE: u32 = 1;
    /// Packet Block: obsolete, still found in old logs.
    pub(crate) const OLD_PACKET: u32 = 2;
    /// Simple Packet Block: no time, always the first interface.
    pub(crate) const SIMPLE_PACKET: u32 = 3;
    /// Name Resolution Block.
    pub(crate) const NAMES: u32 = 4;
    /// Interface Statistics Block.
    pub(crate) const STATISTICS: u32 = 5;
    /// Enhanced Packet Block.
    pub(crate) const PACKET: u32 = 6;
    /// Published blocks that hold no packet: name resolution, statistics, journal, secrets, custom (two).
    pub(crate) const PUBLISHED_AND_PASSED_OVER: [u32; 6] = [NAMES, STATISTICS, 9, 10, 0x0000_0BAD, 0x4000_0BAD];
}

/// Type, length, and the length again at the end.
pub(super) const ENVELOPE_BYTES: usize = 12;
/// Where the body begins.
pub(super) const BODY_AT: usize = 8;
/// No block is believed to be longer: the largest packet of any published link type is far below.
const BLOCK_BYTES_MAX: u32 = 16 * 1024 * 1024;
/// After damage only shorter blocks are believed.
const LIKELY_BYTES_MAX: usize = 256 * 1024;
/// The shortest section header block: envelope, mark, version and section length.
const SECTION_BYTES_MIN: u32 = 28;
const BYTE_ORDER_MARK: u32 = 0x1A2B_3C4D;

/// The outside of one block.
#[derive(Debug, Clone, Copy)]
pub(super) struct Envelope {
    pub(super) kind: u32,
    pub(super) order: ByteOrder,
    pub(super) total_bytes: usize,
}

/// The byte order that a section header block announces, or the mark that is none.
pub(super) fn byte_order_mark(bytes: &[u8]) -> Result<ByteOrder, u32> {
    match ByteOrder::Little.u32_at(bytes, BODY_AT) {
        Some(BYTE_ORDER_MARK) => Ok(ByteOrder::Little),
        Some(mark) if mark.swap_bytes() == BYTE_ORDER_MARK => Ok(ByteOrder::Big),
        other => Err(other.unwrap_or_default()),
    }
}

impl Envelope {
    /// Reads type and length at the start of `bytes`, in the section's order or, for a section header, its own.
    #[inline]
    pub(super) fn read(bytes: &[u8], section: Option<ByteOrder>) -> Result<Self, Implausible> {
        let order = match (bytes.first_chunk(), section) {
            (Some(first), _) if u32::from_be_bytes(*first) == kind::SECTION => {
                byte_order_mark(bytes).map_err(Implausible::ByteOrderMark)?
            }
            (_, Some(order)) => order,
            _ => return Err(Implausible::NoSection),
        };
        let [kind, length] = [0, 4].map(|at| order.u32_at(bytes, at).unwrap_or_default());
        let least = if kind == kind::SECTION { SECTION_BYTES_MIN } else { ENVELOPE_BYTES as u32 };
        if length < least || length % 4 != 0 || length > BLOCK_BYTES_MAX {
            return Err(Implausible::BlockLength(length));
        }
        Ok(Self { kind, order, total_bytes: length as usize })
    }

    /// Compares the length at the end of the whole block with the one at its start.
    #[inline]
    pub(super) fn check_trailer(self, bytes: &[u8]) -> Result<Self, Implausible> {
        let start = self.total_bytes as u32;
        match self.order.u32_at(bytes, self.total_bytes - 4) {
            Some(end) if end == start => Ok(self),
            end => Err(Implausible::BlockTrailer { start, end: end.unwrap_or_default() }),
        }
    }

    /// The bytes between the envelope's two ends.
    #[inline]
    pub(super) fn body(self, bytes: &[u8]) -> &[u8] {
        bytes.get(BODY_AT..self.total_bytes - 4).unwrap_or_default()
    }

    /// Whether type and length would be believed after damage.
    pub(super) fn is_likely(self) -> bool {
        use kind::{INTERFACE, OLD_PACKET, PACKET, SECTION, SIMPLE_PACKET, STATISTICS};
        matches!(self.kind, SECTION | INTERFACE | OLD_PACKET | SIMPLE_PACKET | STATISTICS | PACKET)
            && (ENVELOPE_BYTES + 4..=LIKELY_BYTES_MAX).contains(&self.total_bytes)
    }

    /// What the content of the whole block would be, where something else may stand: a length that happens to stand twice is common
    /// among blocks of one size.
    pub(super) fn content(self, bytes: &[u8], limit_bytes: u32) -> Content {
        let (body, order) = (self.body(bytes), self.order);
        let packet = match self.kind {
            kind::PACKET => PacketBody::enhanced(body, order),
            kind::OLD_PACKET => PacketBody::old(body, order),
            kind::SIMPLE_PACKET => PacketBody::simple(body, order, limit_bytes),
            kind::INTERFACE => {
                let is_sound = order.u16_at(body, 2) == Some(0) && are_options(body.get(8..), order);
                return if is_sound { Content::Describing } else { Content::Nonsense };
            }
            kind::STATISTICS => {
                return match order.u32_at(body, 0).filter(|_| are_options(body.get(12..), order)) {
                    Some(interface) => Content::OfInterface(interface),
                    None => Content::Nonsense,
                };
            }
            _ => return Content::Describing,
        };
        let Ok(packet) = packet else { return Content::Nonsense };
        let behind = body.get(packet.data.end.next_multiple_of(4)..);
        let is_sound = match self.kind {
            kind::SIMPLE_PACKET => behind.is_some_and(<[u8]>::is_empty),
            _ => are_options(behind, order),
        };
        if is_sound { Content::OfInterface(packet.interface) } else { Content::Nonsense }
    }
}

/// What a block would hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Content {
    /// A section or an interface.
    Describing,
    /// A packet or numbers of this interface.
    OfInterface(u32),
    /// Nothing that there is.
    Nonsense,
}

/// Whether these are options up to their end mark or the end of the block.
fn are_options(options: Option<&[u8]>, order: ByteOrder) -> bool {
    let Some(mut rest) = options else { return false };
    while !rest.is_empty() {
        let (Some(code), Some(length)) = (order.u16_at(rest, 0), order.u16_at(rest, 2)) else { return false };
        if code == 0 {
            return rest.len() == 4 && length == 0;
        }
        let Some(behind) = rest.get(4 + usize::from(length).next_multiple_of(4)..) else { return false };
        rest = behind;
    }
    true
}

/// Whether the body of a Name Resolution Block holds records up to their end mark, options behind it, and nothing else.
pub(super) fn are_names(body: &[u8], order: ByteOrder) -> bool {
    let mut rest = body;
    while !rest.is_empty() {
        let (Some(kind), Some(length)) = (order.u16_at(rest, 0), order.u16_at(rest, 2)) else { return false };
        let Some(behind) = rest.get(4 + usize::from(length).next_multiple_of(4)..) else { return false };
        if kind == 0 {
            return length == 0 && are_options(Some(behind), order);
        }
        rest = behind;
    }
    true
}

/// What a packet block says; `data` is a range of the block's body.
#[derive(Debug, Clone)]
pub(super) struct PacketBody {
    pub(super) interface: u32,
    pub(super) ticks: Option<u64>,
    pub(super) original: u32,
    pub(super) data: Range<usize>,
}

impl PacketBody {
    /// An Enhanced Packet Block.
    #[inline]
    pub(super) fn enhanced(body: &[u8], order: ByteOrder) -> Result<Self, Flaw<'static>> {
        let interface = order.u32_at(body, 0);
        Self::timed(body, order, interface)
    }

    /// An obsolete Packet Block: a 16-bit interface and a count of lost packets where the enhanced one has 32 bits.
    pub(super) fn old(body: &[u8], order: ByteOrder) -> Result<Self, Flaw<'static>> {
        let interface = order.u16_at(body, 0).map(u32::from);
        Self::timed(body, order, interface)
    }

    #[inline]
    fn timed(body: &[u8], order: ByteOrder, interface: Option<u32>) -> Result<Self, Flaw<'static>> {
        const DATA_AT: usize = 20;
        let room = body.len().saturating_sub(DATA_AT);
        let [high, low, captured, original] = [4, 8, 12, 16].map(|at| order.u32_at(body, at).unwrap_or_default());
        let Some(interface) = interface.filter(|_| body.len() >= DATA_AT) else {
            return Err(Flaw::PacketShort(body.len()));
        };
        if captured as usize > room {
            return Err(Flaw::PacketLength { told: captured, room });
        }
        Ok(Self {
            interface,
            ticks: Some(u64::from(high) << 32 | u64::from(low)),
            original,
            data: DATA_AT..DATA_AT + captured as usize,
        })
    }

    /// A Simple Packet Block: as many bytes as the packet had, up to the interface's limit.
    pub(super) fn simple(body: &[u8], order: ByteOrder, limit_bytes: u32) -> Result<Self, Flaw<'static>> {
        const DATA_AT: usize = 4;
        let room = body.len().saturating_sub(DATA_AT);
        let original = order.u32_at(body, 0).unwrap_or_default();
        let captured = if limit_bytes == 0 { original } else { original.min(limit_bytes) };
        if body.len() < DATA_AT {
            return Err(Flaw::PacketShort(body.len()));
        }
        if captured as usize > room {
            return Err(Flaw::PacketLength { told: captured, room });
        }
        Ok(Self { interface: 0, ticks: None, original, data: DATA_AT..DATA_AT + captured as usize })
    }
}
