//! One stream below all that go first: the formulas of the paper's sections on the busy period and the queuing delay.

use super::demand::{Demand, Effort, within};
use super::{NoBound, Stream};

/// A stream, and what else decides how late it gets beside the streams above.
#[derive(Debug, Clone, Copy)]
pub(super) struct Level {
    pub(super) stream: Stream,
    /// The longest frame of lower priority: what has begun is not interrupted.
    pub(super) blocking: u64,
    /// A bit: who queues a frame within the first bit of an arbitration still takes part in it.
    pub(super) bit: u64,
}

/// The instance that gets latest.
#[derive(Debug, Clone, Copy)]
pub(super) struct Latest {
    /// From the event to the end of the frame.
    pub(super) time: u64,
    pub(super) instance: u64,
    /// From the start of the busy time to the start of the frame.
    pub(super) queued: u64,
}

impl Level {
    /// How long the network is busy without a gap with frames of this priority and above, a blocking one in front.
    pub(super) fn busy(&self, demand: &Demand, from: u64, effort: &mut Effort) -> Result<u64, NoBound> {
        let Stream { length, period, jitter, .. } = self.stream;
        // Whatever is added to a time that is followed must fit into 64 bits.
        within(u128::from(jitter.0) + u128::from(self.bit))?;
        effort.settle(demand, from.max(length.0).max(1), |demand, time| {
            let own = u128::from((time + jitter.0).div_ceil(period.0)) * u128::from(length.0);
            u128::from(self.blocking) + demand.in_window(time) + own
        })
    }

    /// When the given instance begins, counted from the start of the busy time, if it does not begin before `from`.
    pub(super) fn queued(
        &self,
        demand: &Demand,
        instance: u64,
        from: u64,
        effort: &mut Effort,
    ) -> Result<u64, NoBound> {
        let ahead = u128::from(self.blocking) + u128::from(instance) * u128::from(self.stream.length.0);
        let from = u128::from(from).max(ahead);
        effort.settle(demand, within(from)?, |demand, time| ahead + demand.in_window(time + self.bit))
    }

    /// The latest of all instances in the busy time; the first one begins at `first`.
    pub(super) fn worst(&self, demand: &Demand, busy: u64, first: u64, effort: &mut Effort) -> Result<Latest, NoBound> {
        let instances = (busy + self.stream.jitter.0).div_ceil(self.stream.period.0);
        let mut latest = self.at(0, first);
        let mut queued = first;
        for instance in 1..instances {
            let from = within(u128::from(queued) + u128::from(self.stream.length.0))?;
            queued = self.queued(demand, instance, from, effort)?;
            let this = self.at(instance, queued);
            if this.time > latest.time {
                latest = this;
            }
        }
        Ok(latest)
    }

    /// Busy time, first instance and the latest one, with nothing known before.
    pub(super) fn alone(&self, demand: &Demand, effort: &mut Effort) -> Result<Latest, NoBound> {
        let busy = self.busy(demand, 0, effort)?;
        let first = self.queued(demand, 0, 0, effort)?;
        self.worst(demand, busy, first, effort)
    }

    fn at(&self, instance: u64, queued: u64) -> Latest {
        let Stream { length, period, jitter, .. } = self.stream;
        // The event of an instance comes as many periods after that of the first one, which came its jitter before the busy time.
        let since_first = jitter.0 + queued + length.0;
        Latest { time: since_first.saturating_sub(instance * period.0), instance, queued }
    }
}
