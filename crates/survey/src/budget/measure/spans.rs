//! How long a network was recorded by several logs.

/// No recording of a vehicle network is older than 1980: a smaller time is no date.
const YEAR_1980_NS: i64 = 315_532_800_000_000_000;

/// The times of the logs in which a network is.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Spans {
    /// Of logs whose times are dates: from and to.
    dated: Vec<(i64, i64)>,
    /// Of all others, which count from times of their own: how long they are together, in nanoseconds.
    undated_ns: i128,
}

impl Spans {
    /// A log from its first to its last frame; `None`: it tells no times.
    pub(super) fn add(&mut self, span: Option<(i64, i64)>) {
        let Some((first, last)) = span else { return };
        if first >= YEAR_1980_NS {
            // Two channels of one log can be one network.
            self.dated.push((first, last));
        } else {
            self.undated_ns += i128::from(last) - i128::from(first);
        }
    }

    /// All of it; what several logs with dates recorded at the same time counts once.
    pub(super) fn seconds(&mut self) -> f64 {
        self.dated.sort_unstable();
        let (mut total, mut until) = (self.undated_ns, i64::MIN);
        for &(first, last) in &self.dated {
            let from = first.max(until);
            total += i128::from(last.max(from)) - i128::from(from);
            until = until.max(last);
        }
        total as f64 / 1e9
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_time_counts_once() {
        let day = YEAR_1980_NS;
        let s = 1_000_000_000;
        let mut spans = Spans::default();
        for (from, to) in [(0, 60), (10, 30), (50, 90), (100, 110)] {
            spans.add(Some((day + from * s, day + to * s)));
        }
        assert_eq!(spans.seconds(), 100.0);
        // Logs that count from their own beginning are not of the same time.
        spans.add(Some((0, 30 * s)));
        spans.add(Some((0, 30 * s)));
        spans.add(None);
        assert_eq!(spans.seconds(), 160.0);
    }
}
