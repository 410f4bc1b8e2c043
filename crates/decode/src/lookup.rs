//! From a recorded identifier to the frame that is described: a table for 11 bits, hashing at low load for 29.
//!
//! Runs of identifiers and parameter groups are not searched one by one: runs are cut into disjoint pieces once, and groups are found
//! by their number. So a look-up is at most three probes, whatever is described, and needs no memory of earlier ones: it can be shared
//! between threads.

mod elsewhere;

use wirelore_model::{Database, FrameId, Identifier, NetworkId, SeenId, pgn_of};

use elsewhere::Elsewhere;

use crate::source::Source;
use crate::spans::{Run, Spans};

/// 11-bit identifiers.
const STANDARD_IDS: usize = 1 << 11;
/// No entry.
const NONE: u32 = u32::MAX;

/// The frames of each network.
#[derive(Debug, Clone)]
pub(crate) struct Lookup {
    networks: Box<[NetworkFrames]>,
}

/// A described frame that was recognised, and whether its identifier says who sent it: in one word, as tables hold it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Recognised(u32);

impl Recognised {
    /// The frame is a parameter group, so the identifier's low byte says who sent it.
    const IS_GROUP: u32 = 1 << 31;
    /// The frame is described for a run of identifiers, so the identifier says who sent it.
    const IS_RUN: u32 = 1 << 30;

    /// A frame that only one identifier makes.
    #[inline(always)]
    pub(crate) fn alone(frame: FrameId) -> Self {
        Self(frame.0 & (Self::IS_RUN - 1))
    }

    fn of_group(frame: FrameId) -> Self {
        Self(Self::alone(frame).0 | Self::IS_GROUP)
    }

    fn of_run(frame: FrameId) -> Self {
        Self(Self::alone(frame).0 | Self::IS_RUN)
    }

    #[inline(always)]
    pub(crate) fn frame(self) -> FrameId {
        FrameId(self.0 & (Self::IS_RUN - 1))
    }

    #[inline(always)]
    pub(crate) fn is_group(self) -> bool {
        self.0 & Self::IS_GROUP != 0
    }

    /// Who sent the frame, where its identifier leaves that open.
    #[inline(always)]
    pub(crate) fn source(self, seen: SeenId) -> Option<Source> {
        if self.0 < Self::IS_RUN { None } else { self.sender(seen) }
    }

    fn sender(self, seen: SeenId) -> Option<Source> {
        match seen {
            SeenId::Can { id, .. } if self.is_group() => Some(Source::Address(id as u8)),
            SeenId::Can { id, extended } => Some(Source::Identifier { id, extended }),
            _ => None,
        }
    }
}

impl Lookup {
    pub(crate) fn new(database: &Database) -> Self {
        let mut drafts: Vec<Draft> = database.networks.iter().map(|_| Draft::default()).collect();
        for (frame, index) in database.frames.iter().zip(0..) {
            for appearance in &frame.seen_on {
                if let Some(draft) = drafts.get_mut(appearance.network.index()) {
                    draft.add(&appearance.identifier, FrameId(index));
                }
            }
        }
        Self { networks: drafts.into_iter().map(NetworkFrames::new).collect() }
    }

    #[inline(always)]
    pub(crate) fn find(&self, network: NetworkId, id: u32, extended: bool) -> Option<Recognised> {
        let frames = self.networks.get(network.index())?;
        if extended { frames.extended(id) } else { frames.standard(id) }
    }

    /// The same for whatever a recording shows; some messages are told apart by the bytes they begin with.
    #[inline(always)]
    pub(crate) fn find_seen(&self, network: NetworkId, seen: SeenId, payload: &[u8]) -> Option<Recognised> {
        match seen {
            SeenId::Can { id, extended } => self.find(network, id, extended),
            SeenId::Lin(id) => self.find(network, id.into(), false),
            _ => self.find_elsewhere(network, seen, payload),
        }
    }

    #[inline(never)]
    fn find_elsewhere(&self, network: NetworkId, seen: SeenId, payload: &[u8]) -> Option<Recognised> {
        let frame = self.networks.get(network.index())?.elsewhere.find(seen, payload)?;
        Some(Recognised::alone(frame))
    }

    /// How many frames are described on a network.
    pub(crate) fn count(&self, network: NetworkId) -> usize {
        self.networks.get(network.index()).map_or(0, |frames| frames.count)
    }
}

/// What is described on one network, before it is put into tables.
#[derive(Debug, Default)]
struct Draft {
    standard: Vec<Run<Recognised>>,
    exact: Vec<(u32, FrameId)>,
    runs: Vec<Run<Recognised>>,
    groups: Vec<GroupFrame>,
    elsewhere: Vec<(Identifier, FrameId)>,
    count: usize,
}

impl Draft {
    fn add(&mut self, identifier: &Identifier, frame: FrameId) {
        self.count += 1;
        match identifier {
            &Identifier::Can { first, last, extended } => {
                let found = if first == last { Recognised::alone(frame) } else { Recognised::of_run(frame) };
                let run = Run { first: first.into(), last: last.into(), what: found };
                match (extended, first == last) {
                    (false, _) => self.standard.push(run),
                    (true, true) => self.exact.push((first, frame)),
                    (true, false) => self.runs.push(run),
                }
            }
            Identifier::Pgn { pgn, sources, priority } => {
                self.groups.push(GroupFrame {
                    pgn: *pgn,
                    sources: SourceSet::new(sources),
                    priority: *priority,
                    frame,
                });
            }
            // Told by their number alone, as those of CAN.
            &Identifier::Lin { id, .. } => {
                self.standard.push(Run { first: id.into(), last: id.into(), what: Recognised::alone(frame) });
            }
            other => self.elsewhere.push((other.clone(), frame)),
        }
    }
}

#[derive(Debug, Clone)]
struct NetworkFrames {
    /// By 11-bit identifier: what is [`Recognised`].
    standard: Box<[u32]>,
    /// By exact 29-bit identifier.
    exact: Table,
    /// Runs of 29-bit identifiers.
    runs: Spans<Recognised>,
    /// Where a parameter group's entries begin in `groups`.
    group_starts: Table,
    groups: Box<[GroupFrame]>,
    /// Frames that are not recognised by a CAN identifier.
    elsewhere: Elsewhere,
    count: usize,
}

impl NetworkFrames {
    fn new(draft: Draft) -> Self {
        let Draft { standard: mut standard_runs, exact, runs, mut groups, elsewhere, count } = draft;
        // Single identifiers go before runs, and otherwise the description's order decides.
        standard_runs.sort_by_key(|run| run.first != run.last);
        let mut standard = Vec::new();
        if !standard_runs.is_empty() {
            standard = vec![NONE; STANDARD_IDS];
            for run in Spans::first_wins(standard_runs).runs() {
                let ids = usize::try_from(run.first).unwrap_or(STANDARD_IDS)
                    ..=usize::try_from(run.last).unwrap_or(STANDARD_IDS);
                if let Some(slots) = standard.get_mut(ids) {
                    slots.fill(run.what.0);
                }
            }
        }
        // Within a group the narrower recognition goes first.
        groups.sort_by_key(|group| (group.pgn, group.sources.is_any(), group.priority.is_none(), group.frame));
        let first_of = |at: &usize| *at == 0 || groups[*at - 1].pgn != groups[*at].pgn;
        let group_starts = (0..groups.len()).filter(first_of).map(|at| (groups[at].pgn, at as u32));
        Self {
            standard: standard.into(),
            exact: Table::new(exact.into_iter().map(|(id, frame)| (id, frame.0)).collect()),
            runs: Spans::first_wins(runs),
            group_starts: Table::new(group_starts.collect()),
            groups: groups.into(),
            elsewhere: Elsewhere::new(elsewhere),
            count,
        }
    }

    #[inline(always)]
    fn standard(&self, id: u32) -> Option<Recognised> {
        let found = *self.standard.get(id as usize)?;
        (found != NONE).then_some(Recognised(found))
    }

    /// Most identifiers are exact ones at their home: that far there is no call.
    #[inline(always)]
    fn extended(&self, id: u32) -> Option<Recognised> {
        match self.exact.at_home(id) {
            Some(frame) => Some(Recognised::alone(FrameId(frame))),
            None => self.extended_elsewhere(id),
        }
    }

    #[inline(never)]
    fn extended_elsewhere(&self, id: u32) -> Option<Recognised> {
        if let Some(frame) = self.exact.get(id) {
            return Some(Recognised::alone(FrameId(frame)));
        }
        if !self.runs.runs().is_empty()
            && let Some(found) = self.runs.get(id.into())
        {
            return Some(found);
        }
        let pgn = pgn_of(id);
        let entries = self.groups.get(self.group_starts.get(pgn)? as usize..)?;
        let mut own = entries.iter().take_while(|group| group.pgn == pgn);
        own.find(|group| group.takes(id)).map(|group| Recognised::of_group(group.frame))
    }
}

/// One way in which a parameter group is recognised.
#[derive(Debug, Clone)]
struct GroupFrame {
    pgn: u32,
    sources: SourceSet,
    priority: Option<u8>,
    frame: FrameId,
}

impl GroupFrame {
    fn takes(&self, id: u32) -> bool {
        self.sources.has(id as u8) && self.priority.is_none_or(|priority| u32::from(priority) == id >> 26)
    }
}

/// Source addresses, one bit each.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct SourceSet([u64; 4]);

impl SourceSet {
    /// No address at all stands for any.
    fn new(sources: &[u8]) -> Self {
        if sources.is_empty() {
            return Self([u64::MAX; 4]);
        }
        let mut bits = [0; 4];
        for &source in sources {
            bits[usize::from(source / 64)] |= 1_u64 << (source % 64);
        }
        Self(bits)
    }

    fn has(&self, source: u8) -> bool {
        self.0[usize::from(source / 64)] >> (source % 64) & 1 == 1
    }

    fn is_any(&self) -> bool {
        self.0 == [u64::MAX; 4]
    }
}

/// Numbers to entries: open addressing, at most a quarter full.
#[derive(Debug, Clone)]
struct Table {
    /// Keys and values. Where the value is [`NONE`], the slot is free; its key then is one whose home is another slot, so that a look at
    /// the key alone tells whether the key that belongs here is here.
    slots: Box<[(u32, u32)]>,
    shift: u32,
}

impl Table {
    /// Where a key comes twice, the first entry holds.
    fn new(entries: Vec<(u32, u32)>) -> Self {
        // Two slots at least, so that 0 and 1 have different homes: that of 0 is slot 0.
        let capacity = (4 * entries.len()).next_power_of_two().max(2);
        let mut slots = vec![(0, NONE); capacity].into_boxed_slice();
        slots[0].0 = 1;
        let mut table = Self { slots, shift: 64 - capacity.ilog2() };
        for (key, value) in entries {
            let mut at = table.home(key);
            while table.slots[at].1 != NONE && table.slots[at].0 != key {
                at = (at + 1) % capacity;
            }
            if table.slots[at].1 == NONE {
                table.slots[at] = (key, value);
            }
        }
        table
    }

    /// Fibonacci hashing: Knuth, TAOCP volume 3, section 6.4.
    #[inline(always)]
    fn home(&self, key: u32) -> usize {
        (u64::from(key).wrapping_mul(0x9E37_79B9_7F4A_7C15) >> self.shift) as usize
    }

    /// The entry of a key, if it stands where it belongs.
    #[inline(always)]
    fn at_home(&self, key: u32) -> Option<u32> {
        let &(found, value) = self.slots.get(self.home(key))?;
        (found == key).then_some(value)
    }

    #[inline]
    fn get(&self, key: u32) -> Option<u32> {
        let mut at = self.home(key);
        loop {
            let &(found, value) = self.slots.get(at)?;
            if value == NONE {
                return None;
            }
            if found == key {
                return Some(value);
            }
            at = (at + 1) & (self.slots.len() - 1);
        }
    }
}

#[cfg(test)]
mod tests;
