//! How often each of many keys was seen, in bounded memory.

use std::cmp::Reverse;
use std::hash::Hash;

use rustc_hash::FxHashMap;

/// Counts by key: up to `MOST` different keys, the rest together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Counts<K: Hash + Eq, const MOST: usize> {
    by_key: FxHashMap<K, u64>,
    rest: u64,
}

impl<K: Hash + Eq, const MOST: usize> Default for Counts<K, MOST> {
    fn default() -> Self {
        Self { by_key: FxHashMap::default(), rest: 0 }
    }
}

impl<K: Copy + Ord + Hash, const MOST: usize> Counts<K, MOST> {
    /// Counts a key of its own where there is room or it has one already, else with the rest.
    pub(super) fn add(&mut self, key: K) {
        let room = self.by_key.len() < MOST;
        match self.by_key.get_mut(&key) {
            Some(count) => *count += 1,
            None if room => {
                self.by_key.insert(key, 1);
            }
            None => self.rest += 1,
        }
    }

    /// Takes over the counts of another, which then has none; where there is no room for all of its keys, the more frequent ones get it.
    pub(super) fn take_over(&mut self, other: &mut Self) {
        self.rest += std::mem::take(&mut other.rest);
        if other.by_key.is_empty() {
            return;
        }
        for (key, count) in other.sorted() {
            let room = self.by_key.len() < MOST;
            match self.by_key.get_mut(&key) {
                Some(known) => *known += count,
                None if room => {
                    self.by_key.insert(key, count);
                }
                None => self.rest += count,
            }
        }
        other.by_key.clear();
    }

    /// The keys with their counts, the most frequent first, then in their order.
    pub(super) fn sorted(&self) -> Vec<(K, u64)> {
        let mut counts: Vec<(K, u64)> = self.by_key.iter().map(|(&key, &count)| (key, count)).collect();
        counts.sort_unstable_by_key(|&(key, count)| (Reverse(count), key));
        counts
    }

    /// How often a key was seen that has no count of its own.
    pub(super) fn rest(&self) -> u64 {
        self.rest
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn counts(keys: &[u8]) -> Counts<u8, 3> {
        let mut counts = Counts::default();
        keys.iter().for_each(|key| counts.add(*key));
        counts
    }

    #[test]
    fn what_finds_no_room_is_counted_together() {
        let mut full = counts(&[1, 1, 2, 3, 4, 4, 1]);
        assert_eq!((full.sorted(), full.rest()), (vec![(1, 3), (2, 1), (3, 1)], 2));
        // Of the other one 2 is known here, 5 (twice) and 6 are not, and 7 had no room there.
        let mut other = counts(&[2, 5, 5, 6, 7]);
        full.take_over(&mut other);
        assert_eq!((other.sorted(), other.rest()), (Vec::new(), 0), "it begins anew");
        assert_eq!((full.sorted(), full.rest()), (vec![(1, 3), (2, 2), (3, 1)], 6));
        let mut few = counts(&[9]);
        few.take_over(&mut counts(&[5, 6, 6, 7]));
        assert_eq!(
            (few.sorted(), few.rest()),
            (vec![(6, 2), (5, 1), (9, 1)], 1),
            "the more frequent ones get the room"
        );
    }
}
