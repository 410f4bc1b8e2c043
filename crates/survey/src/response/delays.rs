//! Who makes a frame late: the parts of its worst response.

use super::demand::{Demand, Effort};
use super::level::Level;
use super::load::Load;
use super::{NoBound, Stream, Ticks, blockers};

/// What another stream adds to the response.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Delay {
    /// The place of that stream in the order of priority.
    pub stream: usize,
    /// How many frames of it.
    pub frames: u64,
    /// How long they take.
    pub time: Ticks,
}

/// The parts of a worst response. Jitter, blocking, what goes first, the stream's own earlier frames and the frame itself, less the lead,
/// are `worst`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Delays {
    /// The whole response.
    pub worst: Ticks,
    /// From the event to the queue.
    pub jitter: Ticks,
    /// The frame of lower priority that has just begun.
    pub blocking: Option<Delay>,
    /// The frames of higher priority that go first, by priority.
    pub higher: Vec<Delay>,
    /// The stream's own frames that are in the queue before it.
    pub earlier: Ticks,
    /// How long after the event of the first of those its own event comes: nobody waits for that time.
    pub lead: Ticks,
    /// The frame itself.
    pub length: Ticks,
}

/// The reasons for the worst response of one stream.
///
/// # Errors
/// There is no bound.
///
/// # Panics
/// If there is no stream with that index.
pub fn delays(streams: &[Stream], index: usize, bit: Ticks) -> Result<Delays, NoBound> {
    let (stream, bit) = (streams[index], bit.0.max(1));
    let (mut load, mut demand) = (Load::default(), Demand::default());
    streams[..=index].iter().for_each(|stream| load.add(stream));
    if load.is_full() {
        return Err(NoBound::Overload);
    }
    let higher = &streams[..index];
    higher.iter().try_for_each(|higher| demand.add(higher))?;
    let blocking = blockers(streams)[index].map(|blocker| frames_of(streams, blocker, 1));
    let level = Level { stream, blocking: blocking.map_or(0, |blocking| blocking.time.0), bit };
    let latest = level.alone(&demand, &mut Effort::whole())?;

    let frames = |higher: &Stream| (latest.queued + bit + higher.jitter.0).div_ceil(higher.period.0);
    Ok(Delays {
        worst: Ticks(latest.time),
        jitter: stream.jitter,
        blocking,
        higher: higher.iter().enumerate().map(|(place, higher)| frames_of(streams, place, frames(higher))).collect(),
        earlier: Ticks(latest.instance * stream.length.0),
        lead: Ticks(latest.instance * stream.period.0),
        length: stream.length,
    })
}

fn frames_of(streams: &[Stream], stream: usize, frames: u64) -> Delay {
    Delay { stream, frames, time: Ticks(frames * streams[stream].length.0) }
}
