//! What counters, checksums and protections said, counted.

use wirelore_model::{FrameId, NetworkId};

use super::Tally;
use crate::checks::{ChecksumVerdict, CounterVerdict, ProtectionVerdict, Verdict};

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

/// How many protections said what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct ProtectionCounts {
    /// Nothing is wrong, and there is nothing to compare with.
    pub first: u64,
    /// The next one.
    pub right: u64,
    /// The same count as before.
    pub repeated: u64,
    /// Some messages before it are missing, not more than allowed.
    pub after_loss: u64,
    /// How many messages are missing before those.
    pub messages_lost: u64,
    /// The count rose by more than allowed.
    pub wrong_sequence: u64,
    /// A count that the profile does not have.
    pub not_a_count: u64,
    /// The checksum does not fit.
    pub wrong_sum: u64,
    /// Another data id.
    pub wrong_data_id: u64,
    /// Another length.
    pub wrong_length: u64,
    /// The payload ends too early.
    pub too_short: u64,
}

impl Tally {
    pub(crate) fn verdict(&mut self, network: NetworkId, frame: FrameId, verdict: Verdict) {
        match verdict {
            Verdict::Counter(CounterVerdict::Repeated | CounterVerdict::Jumped { .. }) => {
                self.counter_faults.add((network, frame));
            }
            Verdict::Checksum(ChecksumVerdict::Wrong { .. }) => self.wrong_checksums.add((network, frame)),
            Verdict::Protection(verdict) => return self.protection(network, frame, verdict),
            _ => {}
        }
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
            Verdict::Protection(_) => return,
        };
        *part += 1;
    }

    fn protection(&mut self, network: NetworkId, frame: FrameId, verdict: ProtectionVerdict) {
        use ProtectionVerdict::*;
        let counts = &mut self.protections;
        if !matches!(verdict, First | Right) {
            self.protection_faults.add((network, frame));
        }
        if let WrongSum { belongs: Some(belongs), .. } | WrongDataId { belongs: Some(belongs), .. } = verdict {
            self.belongings.add((network, frame, belongs));
        }
        if let Lost { messages } = verdict {
            counts.messages_lost += u64::from(messages);
        }
        let part = match verdict {
            First => &mut counts.first,
            Right => &mut counts.right,
            Repeated => &mut counts.repeated,
            Lost { .. } => &mut counts.after_loss,
            WrongSequence { .. } => &mut counts.wrong_sequence,
            NotACount => &mut counts.not_a_count,
            WrongSum { .. } => &mut counts.wrong_sum,
            WrongDataId { .. } => &mut counts.wrong_data_id,
            WrongLength { .. } => &mut counts.wrong_length,
            TooShort => &mut counts.too_short,
        };
        *part += 1;
    }
}
