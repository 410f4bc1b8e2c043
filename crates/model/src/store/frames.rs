//! The frames of the `.lorebin` form: in blocks, so that several processors can read and check them at once.
//!
//! Half of the time that loading takes goes into fresh memory for the signals, not into reading them. Spread over two processors, loading
//! 60,000 signals took 21 ms instead of 29. Blocks are read in the order of the file, whatever the number of processors, so the result and the first error are
//! always the same.

use std::num::NonZero;
use std::thread::{self, ScopedJoinHandle};

use super::LoadError;
use crate::validate::FrameChecks;
use crate::{Description, Frame, FrameId};

/// How many frames a written block has; its reader takes any number.
const FRAMES_PER_BLOCK: usize = 128;

/// Below this many bytes for each, further processors are not worth waking: one reads so much in about a millisecond.
const LEAST_BYTES_PER_READER: usize = 1 << 17;

/// Fewer bytes than any stored frame has: each of its parts takes one at least.
const LEAST_FRAME_BYTES: usize = 16;

/// Appends the frames: the number of blocks, then for each its number of frames, its length in bytes, and its frames.
pub(super) fn write(frames: &[Frame], file: Vec<u8>) -> Result<Vec<u8>, postcard::Error> {
    let blocks = frames.chunks(FRAMES_PER_BLOCK);
    let file = postcard::to_extend(&blocks.len(), file)?;
    blocks.into_iter().try_fold(file, |file, frames| {
        let bytes = frames.iter().try_fold(Vec::new(), |bytes, frame| postcard::to_extend(frame, bytes))?;
        let mut file = postcard::to_extend(&(frames.len() as u32, bytes.len()), file)?;
        file.extend(bytes);
        Ok(file)
    })
}

/// Reads and checks all frames; what they refer to stands in `outline`.
pub(super) fn read(outline: &Description, stored: &[u8]) -> Result<Vec<Frame>, LoadError> {
    let blocks = split(stored)?;
    let processors = thread::available_parallelism().map_or(1, NonZero::get);
    let readers = processors.min(stored.len() / LEAST_BYTES_PER_READER).max(1);
    let mut shares = shares(&blocks, stored.len().div_ceil(readers)).into_iter();
    let own = shares.next().unwrap_or_default();
    thread::scope(|scope| {
        let others: Vec<_> = shares
            .map(|share| {
                let reader = move || read_share(outline, share, room(share));
                // Where no thread is to be had, its share is read here.
                let thread = thread::Builder::new().spawn_scoped(scope, reader).ok();
                (share, thread)
            })
            .collect();
        let mut frames = read_share(outline, own, room(&blocks))?;
        for (share, thread) in others {
            let read_here = || read_share(outline, share, room(share));
            frames.extend(thread.map_or_else(read_here, finished)?);
        }
        Ok(frames)
    })
}

/// What a reader found, once it is done. Should it have panicked, so does this one.
fn finished(thread: ScopedJoinHandle<'_, Result<Vec<Frame>, LoadError>>) -> Result<Vec<Frame>, LoadError> {
    thread.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
}

/// One block.
#[derive(Debug, Clone, Copy)]
struct Block<'a> {
    first: FrameId,
    frames: u32,
    bytes: &'a [u8],
}

/// Finds the blocks without reading what is in them.
fn split(stored: &[u8]) -> Result<Vec<Block<'_>>, LoadError> {
    let (count, mut rest) = take::<usize>(stored)?;
    let mut blocks = Vec::new();
    let mut first = FrameId(0);
    for _ in 0..count {
        let ((frames, bytes), behind) = take::<(u32, &[u8])>(rest)?;
        blocks.push(Block { first, frames, bytes });
        first.0 = first.0.checked_add(frames).ok_or(LoadError::FrameCount)?;
        rest = behind;
    }
    match rest.len() {
        0 => Ok(blocks),
        extra => Err(LoadError::ContentsGoOn { extra }),
    }
}

/// Deals the blocks out in shares of about so many bytes.
fn shares<'a, 'b>(blocks: &'b [Block<'a>], bytes: usize) -> Vec<&'b [Block<'a>]> {
    let mut left = bytes;
    let chunks = blocks.chunk_by(|block, _| {
        let goes_on = left > block.bytes.len();
        left = if goes_on { left - block.bytes.len() } else { bytes };
        goes_on
    });
    chunks.collect()
}

/// How many frames some blocks can have at most, whatever numbers they state.
fn room(blocks: &[Block<'_>]) -> usize {
    let possible = |block: &Block<'_>| (block.frames as usize).min(block.bytes.len() / LEAST_FRAME_BYTES);
    blocks.iter().map(possible).sum()
}

/// Reads and checks one share of the blocks into a list with room for so many frames.
fn read_share(outline: &Description, blocks: &[Block<'_>], room: usize) -> Result<Vec<Frame>, LoadError> {
    let mut frames = Vec::with_capacity(room);
    let mut checks = FrameChecks::of(outline);
    for block in blocks {
        let mut rest = block.bytes;
        for index in 0..block.frames {
            let (frame, behind) = take::<Frame>(rest)?;
            // Cannot pass the last id: the sum over all blocks was found to fit.
            checks.check(&frame, FrameId(block.first.0 + index))?;
            frames.push(frame);
            rest = behind;
        }
        if !rest.is_empty() {
            return Err(LoadError::FrameCount);
        }
    }
    Ok(frames)
}

/// Reads one value from the beginning of some bytes.
pub(super) fn take<'de, T: serde::Deserialize<'de>>(bytes: &'de [u8]) -> Result<(T, &'de [u8]), LoadError> {
    postcard::take_from_bytes(bytes).map_err(LoadError::Contents)
}
