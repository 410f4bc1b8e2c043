//! What both packet layouts do with one CAN packet once they have found it.

use crate::can_record::{self, CanRecord};
use crate::flaw::Flaw;
use crate::frame::{Channel, Found, PlaceInLog};
use crate::medium::Medium;
use crate::pass::Shared;

/// One packet as its container describes it.
pub(crate) struct Packet<'a> {
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
            Ok(CanRecord::Frame(frame)) => {
                let payload = frame.payload.start + self.position..frame.payload.end + self.position;
                Some(Found {
                    time_ns: self.time_ns,
                    channel: self.channel,
                    id: frame.id,
                    extended: frame.extended,
                    kind: frame.kind,
                    fd: frame.fd,
                    bit_rate_switch: frame.bit_rate_switch,
                    error_state: frame.error_state,
                    dlc: frame.dlc,
                    medium: Medium::Can,
                    payload,
                    place: self.place,
                })
            }
            Ok(CanRecord::Xl) => {
                shared.report.xl += 1;
                None
            }
            Err(flaw) => {
                shared.report.damaged_at(self.place, &flaw);
                None
            }
        }
    }

    #[inline]
    fn read(&self, shared: &mut Shared) -> Result<CanRecord, Flaw<'static>> {
        let (captured, original) = (self.record.len() as u32, self.original);
        if captured < original {
            return Err(Flaw::FrameCut { captured, original });
        }
        if captured > original {
            return Err(Flaw::FrameGrown { captured, original });
        }
        if let Some(word) = can_record::identifier_word(self.record, shared.identifiers) {
            shared.report.weigh_identifier(word, self.offset);
        }
        can_record::read(self.record, shared.identifiers)
    }
}
