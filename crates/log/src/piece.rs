//! Pieces of a log that are read side by side.

use std::fmt;

use crate::frame::ChannelInfo;
use crate::pass::{Knowledge, Pass};
use crate::receive::Receive;

/// A part of a log ahead of the reading position, to be read on any thread while others read the parts beside it.
///
/// Where a piece begins is a guess, except for the first: its frames count only once [`Recording::join`] has taken over its
/// end.
///
/// [`Recording::join`]: crate::Recording::join
pub struct Piece {
    pass: Pass,
    until: u64,
    begins_sure: bool,
}

impl Piece {
    /// The piece from the pass's reading position up to byte `until`.
    pub(crate) fn new(pass: Pass, until: u64, begins_sure: bool) -> Self {
        Self { pass, until, begins_sure }
    }

    /// The channels that are known before the piece; it may add others.
    #[must_use]
    pub fn channels(&self) -> &[ChannelInfo] {
        self.pass.shared.channels.infos()
    }

    /// Hands out the frames of the piece, one after the other. The numbers in [`Frame::place`](crate::Frame::place) count from the piece's start.
    pub fn read(mut self, receive: &mut impl Receive) -> PieceEnd {
        let is_found = self.begins_sure || self.pass.find_start(self.until);
        let (start, known) = (self.pass.window.offset(), self.pass.knowledge());
        if is_found {
            self.pass.stretch(self.until, receive);
        }
        PieceEnd { start, known, pass: self.pass }
    }
}

impl fmt::Debug for Piece {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Piece").field("until", &self.until).finish_non_exhaustive()
    }
}

/// Where reading a [`Piece`] has ended, and what was found in it.
pub struct PieceEnd {
    start: u64,
    known: Knowledge,
    pass: Pass,
}

impl PieceEnd {
    /// The channels that are known behind the piece.
    #[must_use]
    pub fn channels(&self) -> &[ChannelInfo] {
        self.pass.shared.channels.infos()
    }

    /// The pass behind the piece, if a pass that stands at `before` would have read the piece just so. A piece that met
    /// the end of the bytes it may see cannot tell whether the log ends there.
    pub(crate) fn joining(self, before: &Pass) -> Option<Pass> {
        let joins = self.start == before.window.offset()
            && self.known == before.knowledge()
            && self.pass.window.is_of_same_memory(&before.window)
            && !self.pass.window.is_at_end();
        joins.then_some(self.pass)
    }
}

impl fmt::Debug for PieceEnd {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("PieceEnd").field("start", &self.start).finish_non_exhaustive()
    }
}
