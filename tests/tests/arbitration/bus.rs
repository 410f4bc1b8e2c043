//! A CAN bus, one arbitration after another, as ISO 11898-1 has it: whoever is highest goes first, and what has begun is not interrupted.

use std::iter::Peekable;

/// A frame that its sender wants to send. All times are ticks.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Wanted {
    /// When the event came that it tells of.
    pub(crate) event: u64,
    /// When it was queued.
    pub(crate) queued: u64,
}

/// The frames of one stream, in the order in which they are queued.
pub(crate) type Frames<'a> = Box<dyn Iterator<Item = Wanted> + 'a>;

/// A frame that was sent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Sent {
    pub(crate) stream: usize,
    pub(crate) event: u64,
    pub(crate) start: u64,
    pub(crate) end: u64,
}

impl Sent {
    pub(crate) fn response(&self) -> u64 {
        self.end - self.event
    }
}

/// The streams on the bus, highest priority first. It sends as long as there are frames.
pub(crate) struct Bus<'a, J> {
    streams: Vec<(u64, Peekable<Frames<'a>>)>,
    bit: u64,
    joins: J,
    arbitrations: u64,
    free_at: u64,
}

impl<'a, J: FnMut(u64) -> bool> Bus<'a, J> {
    /// Streams with the length of their frames. A frame that is queued while the first bit of a frame is on the bus takes part in that
    /// arbitration or comes too late for it: `joins` says which, by the number of the arbitration.
    pub(crate) fn new(streams: impl IntoIterator<Item = (u64, Frames<'a>)>, bit: u64, joins: J) -> Self {
        let streams = streams.into_iter().map(|(length, frames)| (length, frames.peekable())).collect();
        Self { streams, bit, joins, arbitrations: 0, free_at: 0 }
    }

    /// Who wins the arbitration that begins at `start`.
    fn winner(&mut self, start: u64) -> Option<usize> {
        let nexts: Vec<Option<Wanted>> = self.streams.iter_mut().map(|(_, frames)| frames.peek().copied()).collect();
        let queued = |index: usize| nexts[index].map(|next| next.queued);
        let waiting = (0..nexts.len()).find(|&index| queued(index).is_some_and(|queued| queued < start));
        // Where nobody was waiting, somebody who has just queued a frame begins: the lowest, so that the others can come too late.
        let begins = waiting.or_else(|| (0..nexts.len()).rfind(|&index| queued(index) == Some(start)))?;
        let late = |index: &usize| queued(*index).is_some_and(|queued| queued < start + self.bit);
        let joining = (0..begins).filter(late).find(|_| (self.joins)(self.arbitrations));
        Some(joining.unwrap_or(begins))
    }
}

impl<J: FnMut(u64) -> bool> Iterator for Bus<'_, J> {
    type Item = Sent;

    fn next(&mut self) -> Option<Sent> {
        let earliest = self.streams.iter_mut().filter_map(|(_, frames)| frames.peek().map(|next| next.queued)).min()?;
        let start = self.free_at.max(earliest);
        let stream = self.winner(start)?;
        self.arbitrations += 1;
        let (length, frames) = &mut self.streams[stream];
        let frame = frames.next()?;
        self.free_at = start + *length;
        Some(Sent { stream, event: frame.event, start, end: self.free_at })
    }
}
