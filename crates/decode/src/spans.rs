//! Sorted runs of numbers, each with what it stands for: looked up by halving.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// A run of numbers, both ends inside, and what it stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Run<T> {
    pub(crate) first: i128,
    pub(crate) last: i128,
    pub(crate) what: T,
}

/// Runs that do not overlap, in rising order.
#[derive(Debug, Clone)]
pub(crate) struct Spans<T> {
    runs: Box<[Run<T>]>,
}

impl<T: Copy + PartialEq> Spans<T> {
    /// From runs in any order; where some overlap, the one that was given first holds.
    pub(crate) fn first_wins(given: impl IntoIterator<Item = Run<T>>) -> Self {
        let given: Vec<Run<T>> = given.into_iter().filter(|run| run.first <= run.last).collect();
        let mut edges: Vec<i128> = given.iter().flat_map(|run| [run.first, run.last + 1]).collect();
        edges.sort_unstable();
        edges.dedup();
        let mut by_first: Vec<usize> = (0..given.len()).collect();
        by_first.sort_by_key(|&index| given[index].first);
        let mut opening = by_first.into_iter().peekable();
        let mut open = BinaryHeap::new();
        let mut runs: Vec<Run<T>> = Vec::new();
        for pair in edges.windows(2) {
            let (first, last) = (pair[0], pair[1] - 1);
            while let Some(index) = opening.next_if(|&index| given[index].first <= first) {
                open.push(Reverse(index));
            }
            while open.peek().is_some_and(|&Reverse(index)| given[index].last < first) {
                open.pop();
            }
            if let Some(&Reverse(index)) = open.peek() {
                push_joined(&mut runs, Run { first, last, what: given[index].what });
            }
        }
        Self { runs: runs.into() }
    }

    /// What the run around `number` stands for.
    #[inline]
    pub(crate) fn get(&self, number: i128) -> Option<T> {
        let behind = self.runs.partition_point(|run| run.first <= number);
        let run = self.runs.get(behind.checked_sub(1)?)?;
        (number <= run.last).then_some(run.what)
    }

    /// The runs, in rising order.
    pub(crate) fn runs(&self) -> &[Run<T>] {
        &self.runs
    }

    /// Where something begins or ends.
    pub(crate) fn edges(&self) -> impl Iterator<Item = i128> {
        self.runs.iter().flat_map(|run| [run.first, run.last + 1])
    }
}

/// Adds a run, as part of the one before where it goes on with the same.
pub(crate) fn push_joined<T: PartialEq>(runs: &mut Vec<Run<T>>, run: Run<T>) {
    match runs.last_mut() {
        Some(before) if before.last + 1 == run.first && before.what == run.what => before.last = run.last,
        _ => runs.push(run),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(first: i128, last: i128, what: u8) -> Run<u8> {
        Run { first, last, what }
    }

    #[test]
    fn the_first_of_overlapping_runs_holds() {
        let spans = Spans::first_wins([run(5, 9, 1), run(0, 20, 2), run(8, 12, 3), run(30, 30, 4), run(31, 29, 5)]);
        assert_eq!(spans.runs(), [run(0, 4, 2), run(5, 9, 1), run(10, 20, 2), run(30, 30, 4)]);
        let found: Vec<_> = [-1, 0, 4, 5, 9, 10, 20, 21, 30, 31].map(|number| spans.get(number)).into();
        let (one, two, four) = (Some(1), Some(2), Some(4));
        assert_eq!(found, [None, two, two, one, one, two, two, None, four, None]);
    }

    #[test]
    fn looks_up_like_a_search_from_the_front() {
        let given: Vec<_> = (0..200_i128).map(|k| run(k * 37 % 101, k * 37 % 101 + k % 13, k as u8)).collect();
        let spans = Spans::first_wins(given.clone());
        for number in -5..130 {
            let plain = given.iter().find(|run| (run.first..=run.last).contains(&number)).map(|run| run.what);
            assert_eq!(spans.get(number), plain, "{number}");
        }
    }
}
