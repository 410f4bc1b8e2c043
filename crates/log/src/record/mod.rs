//! The packets of each link type as frames, and back: where the parts stand is on the pages of the public link-type registry.

pub(crate) mod can;
mod flexray;
mod lin;

use std::ops::Range;

use crate::flaw::Flaw;
use crate::frame::{Frame, Kind};
use crate::medium::Medium;
use crate::options::IdentifierOrder;

/// The shortest Ethernet frame that says where it goes: two addresses and a type (IEEE 802.3).
pub(crate) const ETHERNET_HEADER_BYTES: usize = 14;
/// The largest Ethernet packet that is taken for one, and the largest that is written: the largest limit recorders use (common practice, no source).
pub(crate) const ETHERNET_BYTES_MAX: usize = 256 * 1024;
/// What Ethernet packets usually have at most: 1500 bytes of content, header, one tag and check sequence (IEEE 802.3).
const ETHERNET_USUAL_BYTES_MAX: usize = 1522;

/// The link types of the public registry whose packets are frames here.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LinkType {
    /// 227: classic CAN, CAN FD and CAN XL.
    Can,
    /// 212: LIN.
    Lin,
    /// 210: FlexRay.
    FlexRay,
    /// 1: Ethernet.
    Ethernet,
}

impl LinkType {
    /// The number in the public registry.
    #[must_use]
    pub fn number(self) -> u16 {
        match self {
            Self::Can => 227,
            Self::Lin => 212,
            Self::FlexRay => 210,
            Self::Ethernet => 1,
        }
    }

    /// The link type of a number in the public registry; `None` for those that are not read here.
    #[must_use]
    pub fn of_number(number: u16) -> Option<Self> {
        [Self::Can, Self::Lin, Self::FlexRay, Self::Ethernet].into_iter().find(|link| link.number() == number)
    }

    /// The lengths that a whole record can have.
    pub(crate) fn record_bytes(self) -> Range<usize> {
        match self {
            Self::Can => can::HEADER_BYTES..can::RECORD_BYTES_MAX + 1,
            Self::Lin => lin::HEADER_BYTES..lin::RECORD_BYTES_MAX + 1,
            Self::FlexRay => flexray::SYMBOL_BYTES..flexray::RECORD_BYTES_MAX + 1,
            Self::Ethernet => ETHERNET_HEADER_BYTES..ETHERNET_BYTES_MAX + 1,
        }
    }

    /// What nearly all records have at most: longer ones are doubted where something else may stand.
    pub(crate) fn usual_bytes_max(self) -> usize {
        match self {
            Self::Can => can::FD_RECORD_BYTES,
            Self::Lin => lin::RECORD_BYTES_MAX,
            Self::FlexRay => flexray::RECORD_BYTES_MAX,
            Self::Ethernet => ETHERNET_USUAL_BYTES_MAX,
        }
    }
}

/// What one packet says; `payload` is a range of its bytes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Record {
    pub(crate) id: u32,
    pub(crate) extended: bool,
    pub(crate) kind: Kind,
    pub(crate) fd: bool,
    pub(crate) bit_rate_switch: bool,
    pub(crate) error_state: bool,
    pub(crate) dlc: Option<u8>,
    pub(crate) medium: Medium,
    pub(crate) payload: Range<usize>,
}

impl Record {
    /// A record of a network where frames have no more than this.
    fn new(id: u32, kind: Kind, medium: Medium, payload: Range<usize>) -> Self {
        let (extended, fd, bit_rate_switch, error_state, dlc) = (false, false, false, false, None);
        Self { id, extended, kind, fd, bit_rate_switch, error_state, dlc, medium, payload }
    }
}

/// Reads one whole packet.
#[inline]
pub(crate) fn read(link: LinkType, bytes: &[u8], order: IdentifierOrder) -> Result<Record, Flaw<'static>> {
    match link {
        LinkType::Can => can::read(bytes, order),
        LinkType::Lin => lin::read(bytes),
        LinkType::FlexRay => flexray::read(bytes),
        LinkType::Ethernet => ethernet(bytes),
    }
}

/// An Ethernet packet is the frame itself.
fn ethernet(bytes: &[u8]) -> Result<Record, Flaw<'static>> {
    let (has, least) = (bytes.len(), ETHERNET_HEADER_BYTES);
    if has < least {
        return Err(Flaw::RecordShort { what: "an Ethernet packet", has, least });
    }
    Ok(Record::new(0, Kind::Data, Medium::Ethernet, 0..has))
}

/// Appends the packet of a frame that can exist, on a network that packets are written for.
pub(crate) fn write(frame: &Frame<'_>, to: &mut Vec<u8>) {
    match &frame.medium {
        Medium::Can => can::write(frame, to),
        Medium::CanXl(xl) => can::write_xl(frame, xl, to),
        Medium::Lin(lin) => lin::write(frame, lin, to),
        Medium::FlexRay(flexray) => flexray::write(frame, flexray, to),
        Medium::Ethernet | Medium::Most(_) | Medium::Serial => to.extend_from_slice(frame.payload),
    }
}
