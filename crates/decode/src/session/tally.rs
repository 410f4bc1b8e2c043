//! What became of every frame: each is counted in exactly one part.

use rustc_hash::FxHashMap;
use wirelore_model::{FrameId, NetworkId};

use crate::checks::{ChecksumVerdict, CounterVerdict, Verdict};
use crate::reading::{FrameOutcome, Unmatched};

/// How many different identifiers without a description are counted apart.
const UNKNOWN_MAX: usize = 100_000;
/// How many different selector values without a page are counted apart.
const UNMATCHED_MAX: usize = 10_000;

/// The frames of a session, each in one part.
#[derive(Debug, Clone, Default)]
pub struct Tally {
    /// All of them: the sum of the parts.
    pub read: u64,
    /// Part: decoded, with everything that the description promises.
    pub decoded: u64,
    /// Part: shorter than some signal that is there needs, or than the description allows; signals that fit were decoded all the same.
    pub too_short: u64,
    /// Part: no description of the identifier on its network.
    pub without_description: u64,
    /// Part: described, but none of its signals is selected.
    pub not_selected: u64,
    /// Part: remote frames.
    pub remote: u64,
    /// Part: error messages of the recording controller.
    pub error: u64,
    /// Part: CAN XL frames, which are not read.
    pub xl: u64,
    /// Part: lines, records or blocks that could not be read.
    pub damaged: u64,
    /// Part: on a channel that is no network of the description.
    pub on_unbound_channel: u64,
    /// Part: on a network that is not wanted.
    pub left_out_by_network: u64,
    /// Part: outside the wanted span of time, or without a time where one is wanted.
    pub left_out_by_time: u64,

    /// How many readings were handed out.
    pub readings: u64,
    /// How many frames had a selector without a page for its value, once for each such selector.
    pub unmatched_selectors: u64,
    /// What the counters said.
    pub counters: CounterCounts,
    /// What the checksums said.
    pub checksums: ChecksumCounts,

    unknown: FxHashMap<(NetworkId, u32, bool), u64>,
    unknown_rest: u64,
    unmatched: FxHashMap<(FrameId, Unmatched), u64>,
    unmatched_rest: u64,
}

/// An identifier without a description.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct UnknownFrame {
    /// The network.
    pub network: NetworkId,
    /// The identifier.
    pub id: u32,
    /// Whether it has 29 bits.
    pub extended: bool,
    /// How often it was seen.
    pub count: u64,
}

/// How many counters said what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct CounterCounts {
    /// Nothing to compare with.
    pub first: u64,
    /// One step on.
    pub right: u64,
    /// The same as before.
    pub repeated: u64,
    /// More or less than one step.
    pub jumped: u64,
    /// A special value instead of a count.
    pub suspended: u64,
    /// Neither a count nor a special value.
    pub outside_range: u64,
}

/// How many checksums said what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct ChecksumCounts {
    /// They fit.
    pub right: u64,
    /// They do not.
    pub wrong: u64,
    /// The payload ends before the bytes they cover.
    pub too_short: u64,
}

impl Tally {
    /// The identifiers without a description, the most frequent first; beyond 100,000 different ones the rest is only counted, see
    /// [`Tally::unknown_rest`].
    #[must_use]
    pub fn unknown_frames(&self) -> Vec<UnknownFrame> {
        let frames =
            self.unknown.iter().map(|(&(network, id, extended), &count)| UnknownFrame { network, id, extended, count });
        let mut frames: Vec<UnknownFrame> = frames.collect();
        frames.sort_unstable_by_key(|frame| (std::cmp::Reverse(frame.count), frame.network, frame.extended, frame.id));
        frames
    }

    /// Frames without a description whose identifiers are not listed.
    #[must_use]
    pub fn unknown_rest(&self) -> u64 {
        self.unknown_rest
    }

    /// The selector values without a page, each with its frame and how often it was seen, the most frequent first; beyond 10,000
    /// different ones the rest is only counted, see [`Tally::unmatched_rest`].
    #[must_use]
    pub fn unmatched_values(&self) -> Vec<(FrameId, Unmatched, u64)> {
        let mut values: Vec<_> = self.unmatched.iter().map(|(&(frame, value), &count)| (frame, value, count)).collect();
        values.sort_unstable_by_key(|&(frame, value, count)| (std::cmp::Reverse(count), frame, value));
        values
    }

    /// Selector values without a page that are not listed.
    #[must_use]
    pub fn unmatched_rest(&self) -> u64 {
        self.unmatched_rest
    }

    /// The sum of the parts, which is `read`.
    #[must_use]
    pub fn sum_of_parts(&self) -> u64 {
        let decoded = self.decoded + self.too_short + self.not_selected;
        let not_data = self.remote + self.error + self.xl + self.damaged;
        let left_out = self.on_unbound_channel + self.left_out_by_network + self.left_out_by_time;
        decoded + self.without_description + not_data + left_out
    }

    /// Adds what the log itself tells at its end.
    pub(crate) fn end_log(&mut self, xl: u64, damaged: u64) {
        self.xl += xl;
        self.damaged += damaged;
        self.read += xl + damaged;
        debug_assert_eq!(self.read, self.sum_of_parts(), "every frame is in exactly one part");
    }

    pub(crate) fn unknown(&mut self, network: NetworkId, id: u32, extended: bool) {
        self.without_description += 1;
        let room = self.unknown.len() < UNKNOWN_MAX;
        count(&mut self.unknown, room, &mut self.unknown_rest, (network, id, extended));
    }

    pub(crate) fn unmatched(&mut self, frame: FrameId, value: Unmatched) {
        self.unmatched_selectors += 1;
        let room = self.unmatched.len() < UNMATCHED_MAX;
        count(&mut self.unmatched, room, &mut self.unmatched_rest, (frame, value));
    }

    pub(crate) fn decoded(&mut self, outcome: &FrameOutcome) {
        self.readings += u64::from(outcome.readings);
        if outcome.too_short {
            self.too_short += 1;
        } else {
            self.decoded += 1;
        }
    }

    pub(crate) fn verdict(&mut self, verdict: Verdict) {
        let (counters, checksums) = (&mut self.counters, &mut self.checksums);
        let part = match verdict {
            Verdict::Counter(CounterVerdict::First) => &mut counters.first,
            Verdict::Counter(CounterVerdict::Right) => &mut counters.right,
            Verdict::Counter(CounterVerdict::Repeated) => &mut counters.repeated,
            Verdict::Counter(CounterVerdict::Jumped { .. }) => &mut counters.jumped,
            Verdict::Counter(CounterVerdict::Suspended) => &mut counters.suspended,
            Verdict::Counter(CounterVerdict::OutsideRange) => &mut counters.outside_range,
            Verdict::Checksum(ChecksumVerdict::Right) => &mut checksums.right,
            Verdict::Checksum(ChecksumVerdict::Wrong { .. }) => &mut checksums.wrong,
            Verdict::Checksum(ChecksumVerdict::TooShort) => &mut checksums.too_short,
        };
        *part += 1;
    }
}

/// Counts a key of its own where there is room or it has one already, else with the rest.
fn count<K: std::hash::Hash + Eq>(counts: &mut FxHashMap<K, u64>, room: bool, rest: &mut u64, key: K) {
    match counts.get_mut(&key) {
        Some(count) => *count += 1,
        None if room => {
            counts.insert(key, 1);
        }
        None => *rest += 1,
    }
}
