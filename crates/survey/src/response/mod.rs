//! How late a frame on CAN can get at worst: from the event that makes its sender queue it to its last bit and the pause behind it.
//!
//! The analysis is the revised, exact one of R. I. Davis, A. Burns, R. J. Bril, J. J. Lukkien, "Controller Area Network (CAN)
//! schedulability analysis: refuted, revisited and revised", Real-Time Systems 35 (2007). It looks at every instance of a frame in the
//! longest busy time of its priority: the first need not be the one that waits longest, which is what the analysis of the years before
//! had overlooked. It holds for CAN FD with the times of both phases: only arbitration, at the nominal rate, decides who is next.
//!
//! What it assumes: every sender offers its most urgent frame first and never withdraws it; no frame is damaged and sent again; a
//! frame is queued within its jitter and not more often than its period says; two senders never offer the same identifier.
//! All arithmetic is of whole ticks; see [`Clock`].
//!
//! ```
//! use wirelore_survey::response::{Stream, Ticks, responses};
//!
//! // The example of the paper: 125 kbit/s, frames of 1 ms; a tick is a nanosecond.
//! let stream = |period_us: u64, deadline_us: u64| Stream {
//!     length: Ticks(1_000_000),
//!     period: Ticks(1_000 * period_us),
//!     jitter: Ticks(0),
//!     deadline: Ticks(1_000 * deadline_us),
//! };
//! let streams = [stream(2_500, 2_500), stream(3_500, 3_250), stream(3_500, 3_250)];
//! let found = responses(&streams, Ticks(8_000));
//! assert_eq!(found[2].worst, Ok(Ticks(3_500_000)));
//! assert!(!found[2].meets(streams[2].deadline));
//! ```

mod clock;
mod delays;
mod demand;
mod level;
mod load;
mod order;

use thiserror::Error;

use demand::{Demand, Effort};
use level::Level;
use load::Load;

pub use clock::{Clock, ClockError, Ticks};
pub use delays::{Delay, Delays, delays};
pub use order::{Order, order};

/// A stream of frames as the analysis sees it. Slices of streams are in order of priority, highest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stream {
    /// How long its longest frame takes, the pause included.
    pub length: Ticks,
    /// The shortest time between two events that make its sender queue a frame.
    pub period: Ticks,
    /// How long after the event the frame is queued at most.
    pub jitter: Ticks,
    /// The longest time from the event to the end of the frame that is good enough.
    pub deadline: Ticks,
}

/// What the analysis finds for one stream.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Response {
    /// The longest time from the event to the end of the frame.
    pub worst: Result<Ticks, NoBound>,
    /// Which frame of the stream waits longest, counted from 0 since the network was last free for it. 0 without a bound.
    pub instance: u64,
    /// How long a frame of lower priority that has just begun makes it wait.
    pub blocking: Ticks,
}

impl Response {
    /// Whether the frame is always there in time.
    #[must_use]
    pub fn meets(&self, deadline: Ticks) -> bool {
        self.worst.is_ok_and(|worst| worst <= deadline)
    }
}

/// Why there is no longest time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum NoBound {
    /// What is sent with this priority and the higher ones takes all of the network's time or more.
    #[error("no bound: the frames of this and of every higher priority take 100 % of the network or more")]
    Overload,
    /// The network is so full, or the times are so long, that the end of the busy time was not reached.
    #[error("no bound found: the network is so full that the end of its busy time lies too far away to be followed")]
    TooFar,
}

/// The worst response of each stream. `bit` is a bit at the nominal rate.
#[must_use]
pub fn responses(streams: &[Stream], bit: Ticks) -> Vec<Response> {
    let mut above = Above { effort: Effort::whole(), ..Above::default() };
    let blockers = blockers(streams);
    let mut found = Vec::with_capacity(streams.len());
    for (stream, blocker) in streams.iter().zip(&blockers) {
        let blocking = blocker.map_or(Ticks(0), |index| streams[index].length);
        found.push(above.next(Level { stream: *stream, blocking: blocking.0, bit: bit.0.max(1) }));
    }
    found
}

/// For each stream the longest of lower priority, the first where several are.
fn blockers(streams: &[Stream]) -> Vec<Option<usize>> {
    let mut longest: Option<usize> = None;
    let mut found = vec![None; streams.len()];
    for (index, stream) in streams.iter().enumerate().rev() {
        found[index] = longest;
        if longest.is_none_or(|longest| stream.length >= streams[longest].length) {
            longest = Some(index);
        }
    }
    found
}

/// What is known of the streams above the next one.
#[derive(Default)]
struct Above {
    demand: Demand,
    load: Load,
    /// Once there is no bound there is none further down.
    unbounded: Option<NoBound>,
    /// Where the solutions for the next stream can be sought.
    busy: u64,
    queued: u64,
    /// The last stream's length and blocking.
    last: (u64, u64),
    effort: Effort,
}

impl Above {
    fn next(&mut self, level: Level) -> Response {
        self.load.add(&level.stream);
        if self.load.is_full() {
            self.unbounded = Some(NoBound::Overload);
        }
        let without_bound = |reason| Response { worst: Err(reason), instance: 0, blocking: Ticks(level.blocking) };
        if let Some(reason) = self.unbounded {
            return without_bound(reason);
        }
        match self.solve(&level) {
            Ok(response) => response,
            Err(reason) => {
                self.unbounded = Some(reason);
                without_bound(reason)
            }
        }
    }

    /// Each iteration starts from the solution of the stream before. For the busy time that is always a lower limit: one more frame of the
    /// last stream, now above, takes at least as long as what its longest blocker was longer than this one's. For the time in the
    /// queue it is one where that holds, and else the search starts anew.
    fn solve(&mut self, level: &Level) -> Result<Response, NoBound> {
        let (last_length, last_blocking) = self.last;
        let still_below = level.blocking.saturating_add(last_length) >= last_blocking;
        let queued_from = if still_below { self.queued } else { 0 };
        let busy = level.busy(&self.demand, self.busy, &mut self.effort)?;
        let first = level.queued(&self.demand, 0, queued_from, &mut self.effort)?;
        let worst = level.worst(&self.demand, busy, first, &mut self.effort)?;
        self.demand.add(&level.stream)?;
        (self.busy, self.queued, self.last) = (busy, first, (level.stream.length.0, level.blocking));
        Ok(Response { worst: Ok(Ticks(worst.time)), instance: worst.instance, blocking: Ticks(level.blocking) })
    }
}

#[cfg(test)]
mod tests;
