//! What was seen on one channel of a log.

use rustc_hash::FxHashMap;
use wirelore_decode::seen_id;
use wirelore_log::{Frame, Medium};
use wirelore_model::{NetworkId, NetworkKind, SeenId};

use super::Bits;
use super::rates::{Rates, bits_of, is_of};
use super::windows::Windows;

/// So many identifiers are told apart; no vehicle has more, and a damaged log shall not take all memory.
const IDENTIFIERS_MAX: usize = 65_536;

/// The counts of a channel.
#[derive(Debug)]
pub(super) struct ChannelCount {
    pub(super) read: u64,
    pub(super) frames: u64,
    pub(super) of_unknown_length: u64,
    pub(super) damaged: u64,
    pub(super) no_frames: u64,
    pub(super) bits: Bits,
    pub(super) beyond: IdCount,
    pub(super) windows: Windows,
    identifiers: FxHashMap<SeenId, IdCount>,
    /// The first frame's: a channel is of one kind.
    medium: Medium,
}

/// The counts of one identifier.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct IdCount {
    pub(super) frames: u64,
    pub(super) bits: Bits,
}

impl ChannelCount {
    pub(super) fn new(medium: Medium, candidates: &[(NetworkId, Rates)]) -> Self {
        Self {
            read: 0,
            frames: 0,
            of_unknown_length: 0,
            damaged: 0,
            no_frames: 0,
            bits: Bits::default(),
            beyond: IdCount::default(),
            windows: Windows::new(candidates),
            identifiers: FxHashMap::default(),
            medium,
        }
    }

    /// A frame, so long after the first one of the log.
    pub(super) fn frame(&mut self, frame: &Frame<'_>, after_ns: Option<i64>) {
        let id = seen_id(frame);
        let is_room = self.identifiers.len() < IDENTIFIERS_MAX;
        let count = match self.identifiers.get_mut(&id) {
            Some(count) => count,
            None if is_room => self.identifiers.entry(id).or_default(),
            None => &mut self.beyond,
        };
        let Some(bits) = bits_of(frame) else {
            self.of_unknown_length += 1;
            return;
        };
        count.frames += 1;
        count.bits.add(bits);
        self.frames += 1;
        self.bits.add(bits);
        if let Some(after_ns) = after_ns {
            self.windows.frame(after_ns, bits);
        }
    }

    /// Whether its frames are those of a kind of network.
    pub(super) fn is_of(&self, kind: NetworkKind) -> bool {
        is_of(self.medium, kind)
    }

    /// What was seen, in order.
    pub(super) fn identifiers(&self) -> Vec<SeenId> {
        let mut identifiers: Vec<SeenId> = self.identifiers.keys().copied().collect();
        identifiers.sort_unstable();
        identifiers
    }

    /// The counts of what could be counted, in order.
    pub(super) fn sorted(&self) -> Vec<(SeenId, IdCount)> {
        let counted = |id: SeenId| self.identifiers.get(&id).map(|count| (id, *count));
        let counts = self.identifiers().into_iter().filter_map(counted);
        counts.filter(|(_, count)| count.frames > 0).collect()
    }
}
