//! The worst responses on one network, once it is known how late frames reach the gateways.

use std::ops::Range;

use wirelore_model::{Nanoseconds, Network};

use super::super::cost::can_cost;
use super::super::networks::{NetworkLoad, StreamLoad};
use super::{Delayed, Lateness, Reasons};
use crate::response::{self, Clock, ClockError, NoBound, Order, Ticks, delays, order, responses};

/// One network, ready to be calculated.
pub(super) struct Question<'a> {
    load: &'a NetworkLoad,
    clock: Clock,
    bit: Ticks,
    lengths: Vec<Ticks>,
}

impl<'a> Question<'a> {
    /// `None` where there is no rate.
    pub(super) fn new(network: &Network, load: &'a NetworkLoad) -> Option<Result<Self, ClockError>> {
        let rate = network.rate.filter(|_| network.kind.is_can())?;
        let make = || {
            let clock = Clock::of_rates([rate].into_iter().chain(network.data_rate))?;
            let length = |load: &StreamLoad| {
                let is_extended = load.stream.rank.is_some_and(|rank| rank.is_extended());
                let bits = can_cost(network, is_extended, load.stream.bytes).most;
                clock.frame(bits, rate, network.data_rate)
            };
            let lengths = load.streams.iter().map(length).collect::<Result<_, _>>()?;
            Ok(Self { load, clock, bit: clock.bits(1, rate)?, lengths })
        };
        Some(make())
    }

    /// The streams as the analysis sees them. `late` says how late each comes to the network, where that is not its own jitter.
    ///
    /// A message of several frames is two streams: its last frame, and in front of it all others, which are queued at the same time.
    fn streams(&self, late: &[Option<Nanoseconds>]) -> Result<Analysed, ClockError> {
        let mut found = Analysed { streams: Vec::new(), of: Vec::new() };
        for (at, (load, length)) in self.load.streams.iter().zip(&self.lengths).enumerate() {
            let timing = load.stream.timing;
            let last = response::Stream {
                length: *length,
                period: self.clock.span(timing.shortest)?,
                jitter: self.clock.span(late[at].unwrap_or(timing.jitter))?,
                deadline: self.clock.span(timing.deadline)?,
            };
            let others = u64::from(load.stream.parts.saturating_sub(1));
            // So many at once are as many that come one after the other, the first of them very late.
            if let Some(period) = last.period.0.checked_div(others) {
                let period = Ticks(period.max(1));
                let jitter = Ticks(last.jitter.0.saturating_add(period.0.saturating_mul(others - 1)));
                found.push(at, response::Stream { period, jitter, ..last });
            }
            found.push(at, last);
        }
        Ok(found)
    }

    /// The worst response of each stream, in their order.
    pub(super) fn worst(&self, late: &[Option<Nanoseconds>]) -> Result<Vec<Result<Nanoseconds, NoBound>>, ClockError> {
        let Analysed { streams, of } = self.streams(late)?;
        let mut worst: Vec<Result<Ticks, NoBound>> =
            responses(&streams, self.bit).iter().map(|response| response.worst).collect();
        for run in self.equal_ranks(&of) {
            // Several streams of one identifier wait in one queue: each may be the last in it.
            for (place, worst) in worst.iter_mut().enumerate().take(run.end - 1).skip(run.start) {
                let turned = last_of_run(&streams, place, run.end);
                *worst = delays(&turned, run.end - 1, self.bit).map(|delays| delays.worst);
            }
        }
        let mut found = vec![Err(NoBound::TooFar); self.load.streams.len()];
        for (at, worst) in of.into_iter().zip(worst) {
            // Of a message's two the last one holds.
            found[at] = worst.map(|worst| self.clock.nanoseconds(worst));
        }
        Ok(found)
    }

    /// Runs of more than one stream with the same identifier, out of the streams that these are of.
    fn equal_ranks(&self, of: &[usize]) -> Vec<Range<usize>> {
        let rank = |at: usize| self.load.streams[at].stream.rank;
        let mut runs = Vec::new();
        let mut start = 0;
        for run in of.chunk_by(|one, next| rank(*one) == rank(*next)) {
            // A message's own two are in their order already.
            if run.iter().any(|at| *at != run[0]) {
                runs.push(start..start + run.len());
            }
            start += run.len();
        }
        runs
    }

    /// Everything about each stream: for those that can miss their deadline, who delays them.
    pub(super) fn lateness(&self, late: &[Option<Nanoseconds>]) -> Result<Vec<Lateness>, ClockError> {
        let (worst, analysed) = (self.worst(late)?, self.streams(late)?);
        let of = |at: usize| {
            let deadline = self.load.streams[at].stream.timing.deadline;
            let misses = worst[at].is_ok_and(|worst| worst > deadline);
            let reasons = if misses { self.reasons(&analysed, at) } else { None };
            Lateness { worst: worst[at], arrives: late[at], deadline, reasons }
        };
        Ok((0..worst.len()).map(of).collect())
    }

    fn reasons(&self, analysed: &Analysed, at: usize) -> Option<Reasons> {
        let index = analysed.of.iter().rposition(|of| *of == at)?;
        let run = self.equal_ranks(&analysed.of).into_iter().find(|run| run.contains(&index));
        let end = run.map_or(index + 1, |run| run.end);
        let turned = last_of_run(&analysed.streams, index, end);
        let of: Vec<usize> = last_of_run(&analysed.of, index, end);
        let delays = delays(&turned, end - 1, self.bit).ok()?;
        let time = |ticks| self.clock.nanoseconds(ticks);
        let delayed = |delay: &response::Delay| Delayed {
            stream: of[delay.stream],
            frames: delay.frames,
            time: time(delay.time),
        };
        let (own, mut higher): (Vec<Delayed>, Vec<Delayed>) =
            delays.higher.iter().map(delayed).partition(|delay| delay.stream == at);
        // Those that cost most first; equal ones in order of priority.
        higher.sort_by_key(|delay| (std::cmp::Reverse(delay.time), delay.stream));
        let own = own.iter().map(|delay| delay.time.0).sum::<u64>();
        Some(Reasons {
            blocking: delays.blocking.as_ref().map(delayed),
            higher,
            earlier: Nanoseconds(time(delays.earlier).0 + own),
            late: time(delays.jitter),
            length: time(delays.length),
        })
    }

    /// Whether an order of priorities would do in which nobody misses; `None` where it was not found out.
    pub(super) fn another_order(&self, late: &[Option<Nanoseconds>]) -> Option<bool> {
        match order(&self.streams(late).ok()?.streams, self.bit) {
            Order::Found(_) => Some(true),
            Order::Impossible(_) => Some(false),
            Order::Unknown => None,
        }
    }
}

/// Streams of the analysis, each with the place of the stream that it is of.
struct Analysed {
    streams: Vec<response::Stream>,
    of: Vec<usize>,
}

impl Analysed {
    fn push(&mut self, of: usize, stream: response::Stream) {
        self.streams.push(stream);
        self.of.push(of);
    }
}

/// The same list with one item moved behind the others of its run.
fn last_of_run<T: Clone>(items: &[T], place: usize, end: usize) -> Vec<T> {
    let mut turned = items.to_vec();
    turned[place..end].rotate_left(1);
    turned
}
