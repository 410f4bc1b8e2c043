//! The fast way through plain packet blocks, which nearly all blocks of a log are.
//!
//! A block is plain when it is an Enhanced Packet Block of a little-endian section that holds a whole frame with a time.
//! The first block that is anything else is left to the careful way, which gives the same frames and also tells what is
//! wrong.

use crate::byte_order::ByteOrder;
use crate::can_record::{self, CanFrame, CanRecord};
use crate::frame::{CLASSIC_BYTES_MAX, Frame, Kind, PlaceInLog, STANDARD_ID_MAX};
use crate::identifiers::{ERROR_FLAG, EXTENDED_FLAG, IDENTIFIER_BITS, REMOTE_FLAG};
use crate::map;
use crate::options::IdentifierOrder;
use crate::pass::Shared;
use crate::window::Window;

use super::PcapngReader;
use super::block::kind;

/// Where the record begins in a packet block.
const RECORD_AT: usize = 28;
/// Where the data of a classic or FD record begins in a packet block.
const DATA_AT: usize = RECORD_AT + can_record::HEADER_BYTES;
/// The shortest block with such a record: no data, and the length at its end.
const BLOCK_BYTES_MIN: usize = DATA_AT + 4;

/// The block at the start of some bytes, if it is plain so far.
struct Block<'d> {
    bytes: &'d [u8],
    interface: u32,
    ticks: u64,
    record_bytes: usize,
    head: [u8; can_record::HEADER_BYTES],
}

impl<'d> Block<'d> {
    #[inline]
    fn at_start(bytes: &'d [u8]) -> Option<Self> {
        let first: &[u8; BLOCK_BYTES_MIN] = bytes.first_chunk()?;
        let [kind, total, interface, high, low, captured, original] = std::array::from_fn(|at| {
            u32::from_le_bytes([first[4 * at], first[4 * at + 1], first[4 * at + 2], first[4 * at + 3]])
        });
        let total_bytes = total as usize;
        let record_bytes = captured as usize;
        let is_plain = kind == kind::PACKET
            && total % 4 == 0
            && captured == original
            && record_bytes >= can_record::HEADER_BYTES
            && record_bytes + RECORD_AT + 4 <= total_bytes;
        let bytes = bytes.get(..total_bytes).filter(|_| is_plain)?;
        let trailer: &[u8; 4] = bytes.last_chunk()?;
        let head = std::array::from_fn(|at| first[RECORD_AT + at]);
        let ticks = u64::from(high) << 32 | u64::from(low);
        (u32::from_le_bytes(*trailer) == total).then_some(Self { bytes, interface, ticks, record_bytes, head })
    }

    /// The identifier word and the frame, if the record holds one.
    #[inline]
    fn frame(&self, order: IdentifierOrder) -> Option<(u32, CanFrame)> {
        let [i0, i1, i2, i3, length, flags, _, raw_dlc] = self.head;
        let word = match order {
            IdentifierOrder::AsPublished => u32::from_be_bytes([i0, i1, i2, i3]),
            IdentifierOrder::Swapped => u32::from_le_bytes([i0, i1, i2, i3]),
        };
        let (id, extended) = (word & IDENTIFIER_BITS, word & EXTENDED_FLAG != 0);
        let data_bytes = usize::from(length);
        let is_classic_data = word & (ERROR_FLAG | REMOTE_FLAG) == 0
            && (extended || id <= STANDARD_ID_MAX)
            && flags & can_record::NOT_CLASSIC == 0
            && self.record_bytes != can_record::FD_RECORD_BYTES
            && data_bytes <= CLASSIC_BYTES_MAX
            && data_bytes <= self.record_bytes - can_record::HEADER_BYTES;
        if !is_classic_data {
            return self.rarer_frame(order).map(|frame| (word, frame));
        }
        let frame = CanFrame {
            id,
            extended,
            kind: Kind::Data,
            fd: false,
            bit_rate_switch: false,
            error_state: false,
            dlc: Some(can_record::classic_dlc(length, raw_dlc)),
            payload: can_record::HEADER_BYTES..can_record::HEADER_BYTES + data_bytes,
        };
        Some((word, frame))
    }

    /// Remote frames, error messages and CAN FD.
    #[inline(never)]
    fn rarer_frame(&self, order: IdentifierOrder) -> Option<CanFrame> {
        match can_record::read(self.bytes.get(RECORD_AT..RECORD_AT + self.record_bytes)?, order) {
            Ok(CanRecord::Frame(frame)) => Some(frame),
            Ok(CanRecord::Xl) | Err(_) => None,
        }
    }
}

impl PcapngReader {
    /// Hands out the frames of the plain blocks at the reading position, of those that are fetched and begin before byte
    /// `until`.
    #[inline]
    pub(crate) fn run_plain(
        &mut self,
        window: &mut Window,
        shared: &mut Shared,
        until: u64,
        receive: &mut impl FnMut(&Frame<'_>),
    ) {
        let Some(mut latest_ns) = shared.report.latest_time_ns() else {
            return;
        };
        if self.section != Some(ByteOrder::Little) || self.unreadable_version {
            return;
        }
        let (data, start) = (window.data(), window.offset());
        let stop = usize::try_from(until.saturating_sub(start)).map_or(data.len(), |bytes| bytes.min(data.len()));
        let (mut at, mut frames) = (0, 0);
        while at < stop {
            map::prefetch(data, at);
            let Some(block) = Block::at_start(&data[at..]) else { break };
            let Some(timing) = self.interfaces.timing(block.interface) else { break };
            let Some(time_ns) = timing.time_ns(block.ticks) else { break };
            let Some((word, frame)) = block.frame(shared.identifiers) else { break };
            let place = PlaceInLog::Block { number: self.blocks + frames + 1, offset: start + at as u64 };
            if time_ns < latest_ns {
                shared.report.went_backwards(place);
            }
            latest_ns = time_ns;
            shared.report.weigh_identifier(word, start + at as u64);
            let payload = &block.bytes[RECORD_AT + frame.payload.start..RECORD_AT + frame.payload.end];
            receive(&Frame {
                time_ns: Some(time_ns),
                channel: timing.channel,
                id: frame.id,
                extended: frame.extended,
                kind: frame.kind,
                fd: frame.fd,
                bit_rate_switch: frame.bit_rate_switch,
                error_state: frame.error_state,
                dlc: frame.dlc,
                payload,
                place,
            });
            frames += 1;
            at += block.bytes.len();
        }
        if frames > 0 {
            self.has_packets = true;
            self.blocks += frames;
            shared.report.timed_frames(frames, latest_ns);
            window.consume(at);
        }
    }
}
