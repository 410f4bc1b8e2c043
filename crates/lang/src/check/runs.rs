//! A set of whole numbers as runs that do not touch each other.
//!
//! It takes memory for its runs and not for how far they reach, so that thousands of places at the far end of a long message are as
//! cheap as those at its beginning.

use std::collections::BTreeMap;

/// Runs by where they begin, each with where the next number is that is not in it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Runs(BTreeMap<u32, u32>);

impl Runs {
    /// Takes in the numbers from `first` up to, and without, `end`.
    pub(super) fn add(&mut self, first: u32, end: u32) {
        if first >= end {
            return;
        }
        let (mut first, mut end) = (first, end);
        // What overlaps the new run, or touches it, becomes a part of it.
        while let Some((&other, &other_end)) = self.0.range(..=end).next_back() {
            if other_end < first {
                break;
            }
            self.0.remove(&other);
            (first, end) = (first.min(other), end.max(other_end));
        }
        self.0.insert(first, end);
    }

    /// Takes in all numbers of another set.
    pub(super) fn add_all(&mut self, other: &Self) {
        other.0.iter().for_each(|(&first, &end)| self.add(first, end));
    }

    /// The first number that both have.
    pub(super) fn common(&self, other: &Self) -> Option<u32> {
        // The work is that of the smaller set.
        let (few, many) = if self.0.len() <= other.0.len() { (self, other) } else { (other, self) };
        few.0.iter().find_map(|(&first, &end)| {
            let before = many.0.range(..=first).next_back().is_some_and(|(_, &other_end)| first < other_end);
            if before { Some(first) } else { many.0.range(first..end).next().map(|(&other, _)| other) }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn runs(list: &[(u32, u32)]) -> Runs {
        let mut runs = Runs::default();
        list.iter().for_each(|&(first, end)| runs.add(first, end));
        runs
    }

    #[test]
    fn runs_that_touch_become_one() {
        for list in [[(8, 12), (12, 20), (3, 8)], [(3, 20), (4, 6), (9, 20)], [(3, 4), (10, 20), (4, 10)]] {
            assert_eq!(runs(&list), runs(&[(3, 20)]), "{list:?}");
        }
        assert_ne!(runs(&[(3, 4), (5, 6)]), runs(&[(3, 6)]));
        assert_eq!(runs(&[(7, 7)]), Runs::default());
    }

    /// Against a list of all numbers.
    #[test]
    fn the_first_common_number_is_found() {
        let sets = [
            runs(&[(0, 5), (9, 12), (20, 30)]),
            runs(&[(5, 9), (12, 20)]),
            runs(&[(11, 13)]),
            runs(&[(29, 40)]),
            runs(&[(2, 3), (10, 11), (25, 26)]),
            Runs::default(),
        ];
        let has = |set: &Runs, number| set.0.iter().any(|(&first, &end)| (first..end).contains(&number));
        for one in &sets {
            for other in &sets {
                let expected = (0..50).find(|&number| has(one, number) && has(other, number));
                assert_eq!(one.common(other), expected, "{one:?} {other:?}");
            }
        }
    }
}
