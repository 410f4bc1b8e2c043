//! Where the frames of a stretch go.

use crate::frame::{Channel, Frame};

/// Takes the frames of a stretch of a log, one after the other. Any `FnMut(&Frame)` does.
///
/// A type of its own can do more than a closure. It can mark its methods `#[inline(always)]`, so that they become part of each reader's
/// loop; and it can take [`plain`](Receive::plain) frames by the few parts that most receivers need, for which no [`Frame`] is put together.
pub trait Receive {
    /// The next frame.
    fn frame(&mut self, frame: &Frame<'_>);

    /// The next frame, where it is a classic or FD data frame with a time and the reader has no more to say of it than this. False: not taken; then
    /// [`frame`](Receive::frame) gets it.
    #[inline(always)]
    fn plain(&mut self, plain: Plain<'_>) -> bool {
        let _ = plain;
        false
    }

    /// Whether [`run`](Receive::run) takes frames. The answer holds for a stretch.
    #[inline]
    fn takes_runs(&self) -> bool {
        false
    }

    /// The next frames, all of them [`plain`](Receive::plain) and of eight bytes. How many were taken, from the first on; the others come
    /// again, one by one.
    #[inline(always)]
    fn run(&mut self, run: &PlainRun) -> usize {
        let _ = run;
        0
    }
}

/// The parts of a classic or FD data frame that most receivers need.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Plain<'a> {
    /// As in [`Frame::time_ns`].
    pub time_ns: i64,
    /// The channel it was seen on.
    pub channel: Channel,
    /// The identifier without flags.
    pub id: u32,
    /// Whether the identifier has 29 bits.
    pub extended: bool,
    /// The data bytes.
    pub payload: &'a [u8],
}

/// Frames of eight bytes that follow each other in a log, field by field: two short loops, one that lines them up and one that takes them,
/// do with few registers what one loop for everything does with many. (2026-11-28, a virtual Xeon: from a packet log to all values 3.0 in
/// place of 3.7 times what adding up its words takes.)
#[derive(Debug, Clone)]
pub struct PlainRun {
    /// As in [`Plain::time_ns`].
    pub times_ns: [i64; Self::FRAMES],
    /// The channels they were seen on.
    pub channels: [Channel; Self::FRAMES],
    /// The identifiers; [`PlainRun::EXTENDED`] is added to those of 29 bits.
    pub ids: [u32; Self::FRAMES],
    /// The data bytes, the first one lowest.
    pub payloads: [u64; Self::FRAMES],
}

impl PlainRun {
    /// How many frames a run has: so few that what the first loop tells the memory to fetch is still on its way during the second. (With 64 the
    /// memory stands still in between, 4 % longer; with 8 the loops are too short, 5 %.)
    pub const FRAMES: usize = 32;
    /// Marks an identifier of 29 bits.
    pub const EXTENDED: u32 = 1 << 31;

    pub(crate) fn new() -> Self {
        let (times_ns, channels) = ([0; Self::FRAMES], [Channel(0); Self::FRAMES]);
        Self { times_ns, channels, ids: [0; Self::FRAMES], payloads: [0; Self::FRAMES] }
    }
}

impl<F: FnMut(&Frame<'_>)> Receive for F {
    #[inline(always)]
    fn frame(&mut self, frame: &Frame<'_>) {
        self(frame);
    }
}
