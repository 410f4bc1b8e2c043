//! How much the streams of higher priority can send in a window of time, and the smallest window that holds what is asked of it.

use std::collections::BTreeMap;

use super::{NoBound, Stream};

/// The longest time that is followed, in ticks. Two of them and a sum of both fit into 64 bits, and so does every sum of the analysis.
pub(super) const FARTHEST: u64 = 1 << 62;

/// Streams of equal period and jitter: as far as the time that they take goes, one stream.
#[derive(Debug, Clone)]
struct Group {
    period: u64,
    jitter: u64,
    length: u64,
}

/// Streams that all go first.
#[derive(Debug, Default)]
pub(super) struct Demand {
    groups: Vec<Group>,
    /// Where the group of a period and a jitter is.
    places: BTreeMap<(u64, u64), usize>,
    /// One frame of each.
    length: u64,
}

impl Demand {
    pub(super) fn add(&mut self, stream: &Stream) -> Result<(), NoBound> {
        let (period, jitter, length) = (stream.period.0, stream.jitter.0, stream.length.0);
        self.length = within(u128::from(self.length) + u128::from(length))?;
        let place = *self.places.entry((period, jitter)).or_insert(self.groups.len());
        match self.groups.get_mut(place) {
            Some(group) => group.length += length,
            None => self.groups.push(Group { period, jitter, length }),
        }
        Ok(())
    }

    /// Takes a stream that was added away again.
    pub(super) fn remove(&mut self, stream: &Stream) {
        if let Some(&place) = self.places.get(&(stream.period.0, stream.jitter.0)) {
            self.groups[place].length -= stream.length.0;
            self.length -= stream.length.0;
        }
    }

    /// The time of all frames that can be queued from the start of a window to just before its end.
    pub(super) fn in_window(&self, window: u64) -> u128 {
        self.groups
            .iter()
            .map(|group| u128::from((window + group.jitter).div_ceil(group.period)) * u128::from(group.length))
            .sum()
    }

    fn terms(&self) -> u64 {
        self.groups.len() as u64 + 1
    }
}

/// What may still be computed for one question, in terms of sums.
#[derive(Debug, Default)]
pub(super) struct Effort {
    terms: u64,
}

impl Effort {
    /// Some seconds on a usual machine: vehicles need far less, and a network that is full but for a hair must not hang anybody.
    const WHOLE: u64 = 1 << 31;

    pub(super) fn whole() -> Self {
        Self { terms: Self::WHOLE }
    }

    /// The smallest solution of `time = sum(time)` that is not below `from`, for a sum that grows with the time; `from` is not above it.
    pub(super) fn settle(
        &mut self,
        demand: &Demand,
        from: u64,
        sum: impl Fn(&Demand, u64) -> u128,
    ) -> Result<u64, NoBound> {
        let mut time = within(u128::from(from))?;
        loop {
            self.terms = self.terms.checked_sub(demand.terms()).ok_or(NoBound::TooFar)?;
            let next = within(sum(demand, time))?;
            if next <= time {
                return Ok(time);
            }
            time = next;
        }
    }
}

/// A time, if it can be followed so far.
pub(super) fn within(time: u128) -> Result<u64, NoBound> {
    u64::try_from(time).ok().filter(|&time| time <= FARTHEST).ok_or(NoBound::TooFar)
}

#[cfg(test)]
mod tests {
    use super::super::Ticks;
    use super::*;

    /// A stream that is hardly ever free below one that hardly ever ends: the busy time ends, but not soon.
    #[test]
    fn what_takes_too_long_is_given_up() {
        let mut demand = Demand::default();
        let above = Stream { length: Ticks(1), period: Ticks(1000), jitter: Ticks(0), deadline: Ticks(0) };
        demand.add(&above).expect("it is short");
        let sum = |demand: &Demand, time| 1_000_000 + 999 * demand.in_window(time);
        let mut much = Effort::whole();
        assert_eq!(much.settle(&demand, 0, sum), Ok(1_000_000_000));
        let used = Effort::WHOLE - much.terms;
        let mut enough = Effort { terms: used };
        assert_eq!(enough.settle(&demand, 0, sum), Ok(1_000_000_000));
        assert_eq!(Effort { terms: used - 1 }.settle(&demand, 0, sum), Err(NoBound::TooFar));
    }
}
