//! What became of every frame: each is counted in exactly one part.

mod verdicts;

use std::mem::take;

use wirelore_log::{Faults, PlaceInLog};
use wirelore_model::{FrameId, NetworkId, SeenId, SignalId};

pub use self::verdicts::{ChecksumCounts, CounterCounts, ProtectionCounts};
use super::counts::Counts;
use super::lin::LinTally;
use crate::checks::Belongs;
use crate::reading::{FrameOutcome, Reading, Unmatched, Value};

/// How many different identifiers without a description are counted apart.
const UNKNOWN_MAX: usize = 100_000;
/// How many different selector values without a page are counted apart.
const UNMATCHED_MAX: usize = 10_000;
/// How many messages that could not be used are kept in words.
const MESSAGE_FAULTS_KEPT: usize = 10;
/// How many different frames or signals with faults are counted apart.
pub(super) const FAULTS_MAX: usize = 10_000;

/// The frames of a session, and the messages put together from them, each in one part.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Tally {
    /// All of them: the sum of the parts.
    pub read: u64,
    /// Part: decoded, with everything that the description promises.
    pub decoded: u64,
    /// Part: shorter than the description allows, or, where it states no length, than some signal that is there needs; signals that fit
    /// were decoded all the same.
    pub too_short: u64,
    /// Part: no description of the identifier on its network.
    pub without_description: u64,
    /// Part: described, but none of its signals is selected.
    pub not_selected: u64,
    /// Part: remote frames.
    pub remote: u64,
    /// Part: error messages of the recording controller.
    pub error: u64,
    /// Part: frames that carry a longer message or a part of one; the messages themselves are counted in other parts.
    pub carrying: u64,
    /// Part: headers that nobody answered.
    pub unanswered: u64,
    /// Part: frames that were damaged on the wire.
    pub faulty: u64,
    /// Part: frames that say that their sender has nothing to say.
    pub null: u64,
    /// Part: signals on the wire that are no frames: wake-ups, networks falling asleep, symbols.
    pub wire_signals: u64,
    /// Part: lines, records or blocks that could not be read.
    pub damaged: u64,
    /// Part: on a channel that is no network of the description.
    pub on_unbound_channel: u64,
    /// Part: on a network that is not wanted.
    pub left_out_by_network: u64,
    /// Part: outside the wanted span of time, or without a time where one is wanted.
    pub left_out_by_time: u64,

    /// How many of those read are no frames of the log but messages that were put together.
    pub messages: u64,
    /// How many of those read are neither, but rows behind the first one of a frame or a message that says several things.
    pub further_rows: u64,
    /// How often a longer message, or a part of one, could not be used.
    pub message_faults: u64,
    /// How many readings were handed out.
    pub readings: u64,
    /// How many of them said "no reading".
    pub no_reading: u64,
    /// How many of them said "sensor fault".
    pub sensor_fault: u64,
    /// How many of them lay outside the range that the description states.
    pub outside_range: u64,
    /// How many frames had a selector without a page for its value, once for each such selector.
    pub unmatched_selectors: u64,
    /// What the counters said.
    pub counters: CounterCounts,
    /// What the checksums said.
    pub checksums: ChecksumCounts,
    /// What the end-to-end protections said.
    pub protections: ProtectionCounts,
    /// What LIN networks say beside their signals.
    pub lin: LinTally,

    unknown: Counts<(NetworkId, SeenId), UNKNOWN_MAX>,
    unmatched: Counts<(FrameId, Unmatched), UNMATCHED_MAX>,
    wrong_checksums: Counts<(NetworkId, FrameId), FAULTS_MAX>,
    counter_faults: Counts<(NetworkId, FrameId), FAULTS_MAX>,
    protection_faults: Counts<(NetworkId, FrameId), FAULTS_MAX>,
    belongings: Counts<(NetworkId, FrameId, Belongs), FAULTS_MAX>,
    outside_ranges: Counts<(FrameId, SignalId), FAULTS_MAX>,
    damaged_on_wire: Counts<(NetworkId, (SeenId, Faults)), FAULTS_MAX>,
    remote_frames: Counts<(NetworkId, SeenId), FAULTS_MAX>,
    /// The first of them.
    first_message_faults: Vec<MessageFault>,
}

/// A longer message, or a part of one, that could not be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MessageFault {
    /// The network.
    pub network: NetworkId,
    /// What the message is, or would have been, recognised by.
    pub id: SeenId,
    /// The frame at which it turned out; `None` at the end of the log.
    pub place: Option<PlaceInLog>,
    /// What is wrong.
    pub what: String,
}

/// An identifier without a description.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct UnknownFrame {
    /// The network.
    pub network: NetworkId,
    /// What it shows of itself.
    pub id: SeenId,
    /// How often it was seen.
    pub count: u64,
}

impl Tally {
    /// The identifiers without a description, the most frequent first; beyond 100,000 different ones the rest is only counted, see
    /// [`Tally::unknown_rest`].
    #[must_use]
    pub fn unknown_frames(&self) -> Vec<UnknownFrame> {
        let frames = self.unknown.sorted().into_iter();
        frames.map(|((network, id), count)| UnknownFrame { network, id, count }).collect()
    }

    /// Frames without a description whose identifiers are not listed.
    #[must_use]
    pub fn unknown_rest(&self) -> u64 {
        self.unknown.rest()
    }

    /// The selector values without a page, each with its frame and how often it was seen, the most frequent first; beyond 10,000
    /// different ones the rest is only counted, see [`Tally::unmatched_rest`].
    #[must_use]
    pub fn unmatched_values(&self) -> Vec<(FrameId, Unmatched, u64)> {
        flat(self.unmatched.sorted())
    }

    /// Selector values without a page that are not listed.
    #[must_use]
    pub fn unmatched_rest(&self) -> u64 {
        self.unmatched.rest()
    }

    /// The frames with wrong checksums, each with its network and how many were wrong, the most frequent first; beyond 10,000 different
    /// ones the rest is only in the sum, [`ChecksumCounts::wrong`].
    #[must_use]
    pub fn wrong_checksums(&self) -> Vec<(NetworkId, FrameId, u64)> {
        flat(self.wrong_checksums.sorted())
    }

    /// The frames whose counters stood still or jumped, each with its network and how often they did, the most frequent first; beyond
    /// 10,000 different ones the rest is only in the sums, [`CounterCounts::repeated`] and [`CounterCounts::jumped`].
    #[must_use]
    pub fn counter_faults(&self) -> Vec<(NetworkId, FrameId, u64)> {
        flat(self.counter_faults.sorted())
    }

    /// The frames whose protection was not right, each with its network and how often that was, the most frequent first; beyond 10,000
    /// different ones the rest is only in the sums of [`ProtectionCounts`].
    #[must_use]
    pub fn protection_faults(&self) -> Vec<(NetworkId, FrameId, u64)> {
        flat(self.protection_faults.sorted())
    }

    /// The frames that seem to be others by their data ids, each with its network, what it seems to be, and how often that was, the most
    /// frequent first, 10,000 different ones at most.
    #[must_use]
    pub fn belongings(&self) -> Vec<(NetworkId, FrameId, Belongs, u64)> {
        let sorted = self.belongings.sorted().into_iter();
        sorted.map(|((network, frame, belongs), count)| (network, frame, belongs, count)).collect()
    }

    /// The signals with readings outside their described range, each with its frame and how often that was, the most frequent first;
    /// beyond 10,000 different ones the rest is only in the sum, [`Tally::outside_range`](field@Tally::outside_range).
    #[must_use]
    pub fn outside_ranges(&self) -> Vec<(FrameId, SignalId, u64)> {
        flat(self.outside_ranges.sorted())
    }

    /// The first ten longer messages that could not be used.
    #[must_use]
    pub fn first_message_faults(&self) -> &[MessageFault] {
        &self.first_message_faults
    }

    /// Only the first are worth putting into words.
    pub(crate) fn message_fault(&mut self, fault: impl FnOnce() -> MessageFault) {
        self.message_faults += 1;
        if self.first_message_faults.len() < MESSAGE_FAULTS_KEPT {
            self.first_message_faults.push(fault());
        }
    }

    /// The frames that were damaged on the wire, each with its network, what was wrong and how often that was, the most frequent first;
    /// those on channels that are no network are only in the sum, [`Tally::faulty`].
    #[must_use]
    pub fn damaged_frames(&self) -> Vec<(NetworkId, SeenId, Faults, u64)> {
        let sorted = self.damaged_on_wire.sorted().into_iter();
        sorted.map(|((network, (id, faults)), count)| (network, id, faults, count)).collect()
    }

    /// What remote frames asked for, each with its network and how often that was, the most frequent first; those on channels that are no
    /// network are only in the sum, [`Tally::remote`](field@Tally::remote).
    #[must_use]
    pub fn remote_frames(&self) -> Vec<(NetworkId, SeenId, u64)> {
        flat(self.remote_frames.sorted())
    }

    pub(super) fn remote(&mut self, network: Option<NetworkId>, id: SeenId) {
        self.remote += 1;
        if let Some(network) = network {
            self.remote_frames.add((network, id));
        }
    }

    pub(super) fn damaged_on_wire(&mut self, network: NetworkId, id: SeenId, faults: Faults) {
        self.damaged_on_wire.add((network, (id, faults)));
    }

    /// Whether anything did not come over the wire, or into the log, as it was sent: frames, longer messages, or messages that a protection
    /// misses. What was damaged in the log itself is in its report.
    #[must_use]
    pub fn was_damaged_on_the_way(&self) -> bool {
        self.faulty + self.error + self.message_faults + self.protections.messages_lost > 0
    }

    /// The sum of the parts, which is `read`.
    #[must_use]
    pub fn sum_of_parts(&self) -> u64 {
        let decoded = self.decoded + self.too_short + self.not_selected;
        let not_data = self.remote + self.error + self.damaged + self.carrying;
        let not_frames = self.unanswered + self.faulty + self.null + self.wire_signals;
        let left_out = self.on_unbound_channel + self.left_out_by_network + self.left_out_by_time;
        decoded + self.without_description + not_data + not_frames + left_out
    }

    /// Takes over what another part of the session counted; that one begins anew.
    pub(crate) fn take_over(&mut self, other: &mut Self) {
        for (sum, part) in self.numbers().into_iter().zip(other.numbers()) {
            *sum += take(part);
        }
        self.unknown.take_over(&mut other.unknown);
        self.unmatched.take_over(&mut other.unmatched);
        self.wrong_checksums.take_over(&mut other.wrong_checksums);
        self.counter_faults.take_over(&mut other.counter_faults);
        self.protection_faults.take_over(&mut other.protection_faults);
        self.belongings.take_over(&mut other.belongings);
        self.outside_ranges.take_over(&mut other.outside_ranges);
        self.damaged_on_wire.take_over(&mut other.damaged_on_wire);
        self.remote_frames.take_over(&mut other.remote_frames);
        self.lin.take_over(&mut other.lin);
        let free = MESSAGE_FAULTS_KEPT.saturating_sub(self.first_message_faults.len());
        self.first_message_faults.extend(other.first_message_faults.drain(..).take(free));
    }

    /// All plain counts; the compiler asks whoever adds a field to say here what becomes of it.
    #[rustfmt::skip]
    fn numbers(&mut self) -> [&mut u64; 44] {
        let Self {
            read, decoded, too_short, without_description, not_selected, remote, error, damaged,
            carrying, unanswered, faulty, null, wire_signals, on_unbound_channel, left_out_by_network, left_out_by_time,
            messages, further_rows, message_faults, readings, no_reading, sensor_fault, outside_range, unmatched_selectors,
            counters: CounterCounts { first, right, repeated, jumped, suspended, outside_range: counter_outside },
            checksums: ChecksumCounts { right: sum_right, wrong, too_short: sum_too_short },
            protections: ProtectionCounts {
                first: protected_first, right: protected_right, repeated: protected_repeated, after_loss, messages_lost,
                wrong_sequence, not_a_count, wrong_sum, wrong_data_id, wrong_length, too_short: protected_too_short,
            },
            unknown: _, unmatched: _, wrong_checksums: _, counter_faults: _, protection_faults: _, belongings: _,
            outside_ranges: _, first_message_faults: _, damaged_on_wire: _, remote_frames: _, lin: _,
        } = self;
        [
            read, decoded, too_short, without_description, not_selected, remote, error, damaged,
            carrying, unanswered, faulty, null, wire_signals, on_unbound_channel, left_out_by_network, left_out_by_time,
            messages, further_rows, message_faults, readings, no_reading, sensor_fault, outside_range, unmatched_selectors,
            first, right, repeated, jumped, suspended, counter_outside,
            sum_right, wrong, sum_too_short,
            protected_first, protected_right, protected_repeated, after_loss, messages_lost,
            wrong_sequence, not_a_count, wrong_sum, wrong_data_id, wrong_length, protected_too_short,
        ]
    }

    /// Adds what the log itself tells at its end.
    pub(crate) fn end_log(&mut self, damaged: u64) {
        self.damaged += damaged;
        self.read += damaged;
        debug_assert_eq!(self.read, self.sum_of_parts(), "every frame is in exactly one part");
    }

    #[inline(never)]
    pub(crate) fn unknown(&mut self, network: NetworkId, id: SeenId) {
        self.without_description += 1;
        self.unknown.add((network, id));
    }

    pub(crate) fn unmatched(&mut self, frame: FrameId, value: Unmatched) {
        self.unmatched_selectors += 1;
        self.unmatched.add((frame, value));
    }

    #[inline(always)]
    pub(crate) fn reading(&mut self, frame: FrameId, signal: SignalId, reading: &Reading<'_>) {
        match reading.value {
            Value::NoReading => self.no_reading += 1,
            Value::SensorFault => self.sensor_fault += 1,
            _ => {}
        }
        if reading.outside_range {
            self.outside_range(frame, signal);
        }
    }

    pub(crate) fn outside_range(&mut self, frame: FrameId, signal: SignalId) {
        self.outside_range += 1;
        self.outside_ranges.add((frame, signal));
    }

    /// So many frames were decoded, each with this outcome.
    pub(crate) fn decoded(&mut self, outcome: &FrameOutcome, frames: u64) {
        self.readings += frames * u64::from(outcome.readings);
        if outcome.too_short {
            self.too_short += frames;
        } else {
            self.decoded += frames;
        }
    }
}

/// Keys of two parts with their counts, in one row.
pub(super) fn flat<A, B>(counts: Vec<((A, B), u64)>) -> Vec<(A, B, u64)> {
    counts.into_iter().map(|((one, other), count)| (one, other, count)).collect()
}
