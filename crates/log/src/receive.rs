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

impl<F: FnMut(&Frame<'_>)> Receive for F {
    #[inline(always)]
    fn frame(&mut self, frame: &Frame<'_>) {
        self(frame);
    }
}
