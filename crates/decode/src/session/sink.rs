//! Where decoded frames go.

use std::io;

use wirelore_log::Channel;
use wirelore_model::{FrameId, NetworkId, SeenId, SignalId};

use crate::checks::Verdict;
use crate::reading::{FrameOutcome, Reading};
use crate::source::Source;

/// One described frame of a recording; where a frame gives several rows, one of these.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Event<'a> {
    /// Its time in nanoseconds, as the log counts; `None` where it tells none.
    pub time_ns: Option<i64>,
    /// The time of the session's first frame, described or not, as its log counts.
    pub first_time_ns: Option<i64>,
    /// The network it was seen on.
    pub network: NetworkId,
    /// Its description.
    pub frame: FrameId,
    /// Who sent it, where the description leaves that open.
    pub source: Option<Source>,
    /// The channel of the log it was seen on.
    pub channel: Channel,
    /// What it shows of itself to be recognised by.
    pub id: SeenId,
    /// Its bytes; of a row those in front of its group, and its element.
    pub payload: &'a [u8],
}

/// Takes what a [`Session`](crate::Session) decodes: for each frame one `begin`, the verdicts of its checks, its readings, one `end`.
///
/// Whoever wants nothing but the readings gives a closure: `|event: &Event<'_>, signal: SignalId, reading: Reading<'_>|`.
pub trait Sink {
    /// A frame begins.
    fn begin(&mut self, event: &Event<'_>) {
        let _ = event;
    }

    /// What a counter, a checksum or a protection of the frame says.
    fn verdict(&mut self, event: &Event<'_>, signal: SignalId, verdict: Verdict) {
        let _ = (event, signal, verdict);
    }

    /// One signal's reading. It cannot fail: what goes wrong is told at the frame's end.
    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>);

    /// A frame ends.
    ///
    /// # Errors
    /// Whatever keeps the receiver from taking more; the session then stops with [`SessionError::Sink`](crate::SessionError::Sink).
    fn end(&mut self, event: &Event<'_>, outcome: &FrameOutcome) -> io::Result<()> {
        let _ = (event, outcome);
        Ok(())
    }
}

impl<F: FnMut(&Event<'_>, SignalId, Reading<'_>)> Sink for F {
    #[inline]
    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        self(event, signal, reading);
    }
}
