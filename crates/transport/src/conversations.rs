//! The conversations that are under way: a bounded number of them, each found by its key.

/// Conversations that are kept at once. A tester that asks everybody is answered by some dozens of units; more than this is no traffic
/// of a vehicle, and the conversation that was silent for longest makes room.
pub(crate) const MOST_CONVERSATIONS: usize = 256;

/// What is known of each conversation, in the order of the keys. A sorted list: mostly there are fewer than ten, and nothing is allocated
/// where one ends and the next begins.
#[derive(Debug, Clone)]
pub(crate) struct Conversations<K, S> {
    kept: Vec<Kept<K, S>>,
    /// Counts uses, so that the one that was silent for longest can be told.
    uses: u64,
}

#[derive(Debug, Clone)]
struct Kept<K, S> {
    key: K,
    used: u64,
    state: S,
}

impl<K: Copy + Ord, S> Conversations<K, S> {
    pub(crate) const fn new() -> Self {
        Self { kept: Vec::new(), uses: 0 }
    }

    fn find(&self, key: &K) -> Result<usize, usize> {
        self.kept.binary_search_by(|kept| kept.key.cmp(key))
    }

    /// The conversation, which counts as used.
    pub(crate) fn get(&mut self, key: &K) -> Option<&mut S> {
        let at = self.find(key).ok()?;
        self.uses += 1;
        let kept = &mut self.kept[at];
        kept.used = self.uses;
        Some(&mut kept.state)
    }

    pub(crate) fn remove(&mut self, key: &K) -> Option<S> {
        let at = self.find(key).ok()?;
        Some(self.kept.remove(at).state)
    }

    /// Keeps a conversation, in place of what stood under its key. Gives back the one that had to make room for it.
    pub(crate) fn put(&mut self, key: K, state: S) -> Option<(K, S)> {
        if let Some(known) = self.get(&key) {
            *known = state;
            return None;
        }
        let out = if self.kept.len() == MOST_CONVERSATIONS { self.remove_longest_silent() } else { None };
        let (Ok(at) | Err(at)) = self.find(&key);
        self.uses += 1;
        self.kept.insert(at, Kept { key, used: self.uses, state });
        out
    }

    fn remove_longest_silent(&mut self) -> Option<(K, S)> {
        let (at, _) = self.kept.iter().enumerate().min_by_key(|(_, kept)| kept.used)?;
        let kept = self.kept.remove(at);
        Some((kept.key, kept.state))
    }

    /// Takes all of them out, those first that were silent for longest.
    pub(crate) fn take_all(&mut self) -> impl Iterator<Item = (K, S)> + use<K, S> {
        let mut all = std::mem::take(&mut self.kept);
        all.sort_unstable_by_key(|kept| kept.used);
        all.into_iter().map(|kept| (kept.key, kept.state))
    }

    pub(crate) fn states(&self) -> impl Iterator<Item = &S> {
        self.kept.iter().map(|kept| &kept.state)
    }
}

/// Buffers of messages that ended, for those that begin.
#[derive(Debug, Clone)]
pub(crate) struct SpareBuffers(Vec<Vec<u8>>);

/// How many buffers wait, and how large one may be to be worth keeping.
const MOST_SPARE: usize = 4;
const MOST_SPARE_BYTES: usize = 64 << 10;

impl SpareBuffers {
    pub(crate) const fn new() -> Self {
        Self(Vec::new())
    }

    pub(crate) fn take(&mut self) -> Vec<u8> {
        self.0.pop().unwrap_or_default()
    }

    pub(crate) fn give(&mut self, mut buffer: Vec<u8>) {
        if self.0.len() < MOST_SPARE && buffer.capacity() <= MOST_SPARE_BYTES {
            buffer.clear();
            self.0.push(buffer);
        }
    }

    pub(crate) fn held_bytes(&self) -> usize {
        self.0.iter().map(Vec::capacity).sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_one_that_was_silent_for_longest_makes_room() {
        let mut conversations = Conversations::new();
        for key in 0..MOST_CONVERSATIONS {
            assert!(conversations.put(key, 'a').is_none());
        }
        assert_eq!(conversations.get(&0), Some(&mut 'a'));
        assert_eq!(conversations.put(1000, 'b'), Some((1, 'a')));
        assert_eq!(conversations.put(1000, 'c'), None);
        assert_eq!(conversations.get(&1000), Some(&mut 'c'));
        assert_eq!(conversations.get(&1), None);
        let order: Vec<_> = conversations.take_all().map(|(key, _)| key).collect();
        assert_eq!(order.len(), MOST_CONVERSATIONS);
        assert_eq!((order[0], &order[MOST_CONVERSATIONS - 2..]), (2, [0, 1000].as_slice()));
    }

    #[test]
    fn few_and_small_buffers_wait() {
        let mut spare = SpareBuffers::new();
        spare.give(Vec::with_capacity(MOST_SPARE_BYTES + 1));
        assert_eq!(spare.held_bytes(), 0);
        for _ in 0..10 {
            spare.give(Vec::with_capacity(100));
        }
        assert_eq!(spare.held_bytes(), MOST_SPARE * 100);
        assert!(spare.take().is_empty());
    }
}
