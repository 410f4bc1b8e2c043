//! What both packet layouts do with one packet once they have found it.

use crate::flaw::Flaw;
use crate::frame::{Channel, Found, PlaceInLog};
use crate::pass::Shared;
use crate::record::{self, LinkType, Record};

/// One packet as its container describes it.
pub(crate) struct Packet<'a> {
    pub(crate) link: LinkType,
    /// The recorded bytes.
    pub(crate) record: &'a [u8],
    /// Where they begin in the buffer.
    pub(crate) position: usize,
    /// How many bytes the packet had before it was recorded.
    pub(crate) original: u32,
    pub(crate) time_ns: Option<i64>,
    pub(crate) channel: Channel,
    /// Where the record or block of the packet begins in the log.
    pub(crate) offset: u64,
    pub(crate) place: PlaceInLog,
}

impl Packet<'_> {
    /// The frame in the packet; what is none is counted in the report.
    #[inline]
    pub(crate) fn frame(&self, shared: &mut Shared) -> Option<Found> {
        match self.read(shared) {
            Ok(record) => Some(Found {
                time_ns: self.time_ns,
                channel: self.channel,
                id: record.id,
                extended: record.extended,
                kind: record.kind,
                fd: record.fd,
                bit_rate_switch: record.bit_rate_switch,
                error_state: record.error_state,
                dlc: record.dlc,
                medium: record.medium,
                payload: record.payload.start + self.position..record.payload.end + self.position,
                place: self.place,
            }),
            Err(flaw) => {
                shared.report.damaged_at(self.place, &flaw);
                None
            }
        }
    }

    #[inline]
    fn read(&self, shared: &mut Shared) -> Result<Record, Flaw<'static>> {
        let (captured, original) = (self.record.len() as u32, self.original);
        if captured < original {
            return Err(Flaw::FrameCut { captured, original });
        }
        if captured > original {
            return Err(Flaw::FrameGrown { captured, original });
        }
        if self.link == LinkType::Can
            && let Some(word) = record::can::identifier_word(self.record, shared.identifiers)
        {
            shared.report.weigh_identifier(word, self.offset);
        }
        record::read(self.link, self.record, shared.identifiers)
    }
}
