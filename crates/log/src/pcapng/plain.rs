//! The fast way through plain packet blocks, which nearly all blocks of a log are.
//!
//! A block is plain when it is an Enhanced Packet Block of a little-endian section that holds a whole classic or FD frame with a time.
//! Most have the same lengths and flags as the one before: these are proved once, in the careful way, and compared from
//! then on ([`Shape`]). The first block that is anything else is left to the careful way, which gives the same frames and
//! also tells what is wrong.

use std::ops::Range;

use crate::byte_order::ByteOrder;
use crate::frame::{Frame, Kind, PlaceInLog, STANDARD_ID_MAX};
use crate::identifiers::{ERROR_FLAG, EXTENDED_FLAG, IDENTIFIER_BITS, REMOTE_FLAG};
use crate::machine;
use crate::medium::Medium;
use crate::options::IdentifierOrder;
use crate::pass::Shared;
use crate::receive::{Plain, Receive};
use crate::record::{Record, can};
use crate::window::Window;

use super::PcapngReader;
use super::block::{Envelope, PacketBody, kind};
use super::lined_up::LinedUp;

// Where the parts of a packet block stand.
pub(super) const INTERFACE_AT: usize = 8;
pub(super) const TICKS_AT: usize = 12;
pub(super) const LENGTHS_AT: usize = 20;
pub(super) const RECORD_AT: usize = 28;
/// Length, flags and raw code of the CAN record.
pub(super) const EXTENT_AT: usize = RECORD_AT + 4;
/// The shortest block with a frame: no data, and the length at its end.
const BLOCK_BYTES_MIN: usize = RECORD_AT + can::HEADER_BYTES + 4;

/// The kinds of frames that the identifier word tells.
const KIND_FLAGS: u32 = ERROR_FLAG | REMOTE_FLAG;

/// What a block has in common with one that was proved to hold a frame: a block with the same words holds one too, whatever
/// its interface, time, identifier and data.
#[derive(Debug, Clone)]
pub(super) struct Shape {
    /// Block type and block length.
    pub(super) envelope: u64,
    /// Recorded and original length of the packet.
    pub(super) lengths: u64,
    /// Length, flags and raw code of the CAN record.
    pub(super) extent: u32,
    /// Those of the identifier word, and where they stand in it as it is stored.
    pub(super) kind_flags: u32,
    pub(super) kind_mask: u32,
    pub(super) total_bytes: usize,
    /// Identifiers up to here need no flag for 29 bits.
    short_id_max: u32,
    /// Where the data stands in the block.
    pub(super) data: Range<usize>,
    /// The frame that was proved.
    pub(super) frame: Record,
}

impl Shape {
    /// Proves in the careful way that some bytes begin with a plain block, and tells its shape.
    #[cold]
    fn learn(bytes: &[u8], order: IdentifierOrder) -> Option<Self> {
        let section = ByteOrder::Little;
        let envelope = Envelope::read(bytes, Some(section)).ok().filter(|envelope| envelope.kind == kind::PACKET)?;
        let block = bytes.get(..envelope.total_bytes)?;
        let body = envelope.check_trailer(block).ok()?.body(block);
        let packet = PacketBody::enhanced(body, section).ok()?;
        let record = body.get(packet.data).filter(|record| record.len() == packet.original as usize)?;
        let frame = can::read(record, order).ok().filter(|frame| frame.medium == Medium::Can)?;
        let kind_mask = in_order(KIND_FLAGS, order);
        Some(Self {
            envelope: u64_at::<BLOCK_BYTES_MIN>(block.first_chunk()?, 0),
            lengths: u64_at::<BLOCK_BYTES_MIN>(block.first_chunk()?, LENGTHS_AT),
            extent: u32_at::<BLOCK_BYTES_MIN>(block.first_chunk()?, EXTENT_AT),
            kind_flags: u32_at::<BLOCK_BYTES_MIN>(block.first_chunk()?, RECORD_AT) & kind_mask,
            kind_mask,
            total_bytes: envelope.total_bytes,
            short_id_max: if frame.kind == Kind::Error { u32::MAX } else { STANDARD_ID_MAX },
            data: RECORD_AT + frame.payload.start..RECORD_AT + frame.payload.end,
            frame,
        })
    }

    /// The block at the start of the bytes, with its first part, if it has this shape.
    #[inline(always)]
    fn of_same<'d>(&self, bytes: &'d [u8]) -> Option<(&'d [u8; BLOCK_BYTES_MIN], &'d [u8])> {
        let block = bytes.get(..self.total_bytes)?;
        let (first, trailer) = (block.first_chunk()?, u32::from_le_bytes(*block.last_chunk()?));
        let differs = (u64_at(first, 0) ^ self.envelope)
            | (u64_at(first, LENGTHS_AT) ^ self.lengths)
            | u64::from(u32_at(first, EXTENT_AT) ^ self.extent)
            | u64::from(trailer ^ self.total_bytes as u32)
            | u64::from((u32_at(first, RECORD_AT) & self.kind_mask) ^ self.kind_flags);
        (differs == 0).then_some((first, block))
    }
}

#[inline(always)]
pub(super) fn u32_at<const BYTES: usize>(first: &[u8; BYTES], at: usize) -> u32 {
    u32::from_le_bytes([first[at], first[at + 1], first[at + 2], first[at + 3]])
}

#[inline(always)]
pub(super) fn u64_at<const BYTES: usize>(first: &[u8; BYTES], at: usize) -> u64 {
    u64::from(u32_at(first, at)) | u64::from(u32_at(first, at + 4)) << 32
}

/// An identifier word as it is stored, from or to one as it is meant.
#[inline(always)]
pub(super) fn in_order(word: u32, order: IdentifierOrder) -> u32 {
    if order == IdentifierOrder::AsPublished { word.swap_bytes() } else { word }
}

/// The bytes of the plain blocks that one call may read, and where they stand in the log.
struct Run<'d> {
    data: &'d [u8],
    /// Blocks that begin from here on are left.
    stop: usize,
    start_offset: u64,
}

impl<'d> Run<'d> {
    fn new(window: &'d Window, until: u64) -> Self {
        let (data, start_offset) = (window.data(), window.offset());
        let stop = usize::try_from(until.saturating_sub(start_offset)).unwrap_or(usize::MAX).min(data.len());
        Self { data, stop, start_offset }
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
        receive: &mut impl Receive,
    ) {
        let order = shared.identifiers;
        let run = Run::new(window, until);
        let is_plain_section = self.section == Some(ByteOrder::Little) && !self.unreadable_version;
        let learnt = Shape::learn(run.data, order).filter(|_| is_plain_section);
        let (Some(mut latest_ns), Some(mut shape)) = (shared.report.latest_time_ns(), learnt) else {
            return;
        };
        let (mut at, mut frames) = (0, 0);
        let mut lined_up = receive.takes_runs().then(|| LinedUp::new(order));
        while at < run.stop {
            if let Some(lined_up) = &mut lined_up {
                let data = &run.data[at..run.stop];
                let taken = lined_up.hand_on(&shape, data, self.interfaces.timings(), latest_ns, receive);
                if let Some((ids, time_ns)) = lined_up.first(taken) {
                    let offsets = (run.start_offset + at as u64..).step_by(shape.total_bytes);
                    shared.report.weigh_identifiers(ids, offsets);
                    latest_ns = time_ns;
                    frames += taken as u64;
                    at += taken * shape.total_bytes;
                    continue;
                }
            }
            machine::prefetch(run.data, at);
            let Some((first, block)) = shape.of_same(&run.data[at..]) else {
                match Shape::learn(&run.data[at..], order) {
                    Some(other) => shape = other,
                    None => break,
                }
                continue;
            };
            let Some(timing) = self.interfaces.timing(u32_at(first, INTERFACE_AT)) else { break };
            let ticks = u64_at(first, TICKS_AT).rotate_left(32);
            let Some(time_ns) = timing.time_ns(ticks) else { break };
            let word = in_order(u32_at(first, RECORD_AT), order);
            let (id, extended) = (word & IDENTIFIER_BITS, word & EXTENDED_FLAG != 0);
            if !extended && id > shape.short_id_max {
                break;
            }
            let offset = run.start_offset + at as u64;
            let place = PlaceInLog::Block { number: self.blocks + frames + 1, offset };
            if time_ns < latest_ns {
                shared.report.went_backwards(place);
            }
            latest_ns = time_ns;
            shared.report.weigh_identifier(word, offset);
            let Record { kind, fd, bit_rate_switch, error_state, dlc, .. } = shape.frame;
            let payload = block.get(shape.data.clone()).unwrap_or_default();
            let channel = timing.channel;
            if kind != Kind::Data || !receive.plain(Plain { time_ns, channel, id, extended, payload }) {
                let time_ns = Some(time_ns);
                receive.frame(&Frame {
                    time_ns,
                    channel,
                    id,
                    extended,
                    kind,
                    fd,
                    bit_rate_switch,
                    error_state,
                    dlc,
                    medium: Medium::Can,
                    payload,
                    place,
                });
            }
            frames += 1;
            at += block.len();
        }
        if frames > 0 {
            self.has_packets = true;
            self.blocks += frames;
            shared.report.timed_frames(frames, latest_ns);
            window.consume(at);
        }
    }
}
