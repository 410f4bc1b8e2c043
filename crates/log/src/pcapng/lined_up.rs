//! Runs of plain blocks with frames of eight bytes, which most blocks of most logs are, lined up field by field.
//!
//! What is compared with the shape, block by block, only adds to one word here, and the run counts where that stays zero: no step waits
//! for the one before. Whatever is out of the ordinary about one block sends all of the run to the loop that takes block after block.

use crate::frame::{Kind, STANDARD_ID_MAX};
use crate::machine;
use crate::options::IdentifierOrder;
use crate::receive::{PlainRun, Receive};

use super::interface::Timing;
use super::plain::{EXTENT_AT, INTERFACE_AT, LENGTHS_AT, RECORD_AT, Shape, TICKS_AT, in_order, u32_at, u64_at};

/// A block with eight bytes of data.
const BLOCK_BYTES: usize = 48;
const DATA_AT: usize = 36;
const TRAILER_AT: usize = BLOCK_BYTES - 4;

/// Where runs are lined up, one after the other.
#[derive(Debug)]
pub(super) struct LinedUp {
    order: IdentifierOrder,
    run: PlainRun,
    /// So many blocks are left to the other loop: they were lined up before, and were not taken.
    left: usize,
}

impl LinedUp {
    pub(super) fn new(order: IdentifierOrder) -> Self {
        Self { order, run: PlainRun::new(), left: 0 }
    }

    /// Lines up the blocks that the bytes begin with and hands them on. How many were taken: none, where the next block is to be
    /// looked at alone.
    #[inline(always)]
    pub(super) fn hand_on(
        &mut self,
        shape: &Shape,
        data: &[u8],
        timings: &[Timing],
        latest_ns: i64,
        receive: &mut impl Receive,
    ) -> usize {
        if self.left > 0 {
            self.left -= 1;
            return 0;
        }
        let blocks = data.as_chunks().0.first_chunk().filter(|_| is_usual(shape));
        let Some(blocks) = blocks else {
            return 0;
        };
        let are_lined_up = match self.order {
            IdentifierOrder::AsPublished => self.line_up::<true>(shape, blocks, timings, latest_ns),
            IdentifierOrder::Swapped => self.line_up::<false>(shape, blocks, timings, latest_ns),
        };
        let taken = if are_lined_up { receive.run(&self.run).min(PlainRun::FRAMES) } else { 0 };
        self.left = PlainRun::FRAMES - taken.max(1);
        taken
    }

    /// The first frames of the run, with the time of the last of them.
    pub(super) fn first(&self, count: usize) -> Option<(&[u32], i64)> {
        let latest_ns = self.run.times_ns.get(count.checked_sub(1)?)?;
        Some((self.run.ids.get(..count)?, *latest_ns))
    }

    /// Whether all blocks have the shape and hold frames in the order of time.
    #[inline(always)]
    fn line_up<const AS_PUBLISHED: bool>(
        &mut self,
        shape: &Shape,
        blocks: &[[u8; BLOCK_BYTES]; PlainRun::FRAMES],
        timings: &[Timing],
        mut latest_ns: i64,
    ) -> bool {
        let order = if AS_PUBLISHED { IdentifierOrder::AsPublished } else { IdentifierOrder::Swapped };
        let Shape { envelope, lengths, extent, kind_flags, kind_mask, .. } = *shape;
        let PlainRun { times_ns, channels, ids, payloads } = &mut self.run;
        let mut differs = 0;
        for (at, block) in blocks.iter().enumerate() {
            machine::prefetch(block, 0);
            let word = u32_at(block, RECORD_AT);
            differs |= (u64_at(block, 0) ^ envelope) | (u64_at(block, LENGTHS_AT) ^ lengths);
            let extents = (u32_at(block, EXTENT_AT) ^ extent) | (u32_at(block, TRAILER_AT) ^ BLOCK_BYTES as u32);
            differs |= u64::from(extents | (word & kind_mask) ^ kind_flags);
            let Some(timing) = timings.get(u32_at(block, INTERFACE_AT) as usize) else {
                return false;
            };
            let (time_ns, is_told) = timing.time_if_told_ns(u64_at(block, TICKS_AT).rotate_left(32));
            let id = in_order(word, order);
            if !is_told || time_ns < latest_ns || (id > STANDARD_ID_MAX && id < PlainRun::EXTENDED) {
                return false;
            }
            latest_ns = time_ns;
            times_ns[at] = time_ns;
            channels[at] = timing.channel;
            ids[at] = id;
            payloads[at] = u64_at(block, DATA_AT);
        }
        differs == 0
    }
}

/// Whether blocks of this shape hold data frames of eight bytes.
fn is_usual(shape: &Shape) -> bool {
    shape.total_bytes == BLOCK_BYTES && shape.data == (DATA_AT..DATA_AT + 8) && shape.frame.kind == Kind::Data
}
