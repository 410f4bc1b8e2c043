//! Counters and checksums: does a frame belong to the unbroken, undamaged sequence that its description promises?

mod checksum;
mod counter;

use rustc_hash::FxHashMap;
use wirelore_bits::Extractor;
use wirelore_log::Channel;
use wirelore_model::{Content, FrameId, NetworkId, Role, Signal, SignalId, StateWord};

pub(crate) use checksum::ChecksumPlan;
use counter::CounterPlan;

use crate::decoder::Decoder;
use crate::plan::{FramePlan, Group, Visit};
use crate::reading::Unmatched;

/// What a counter or a checksum says about a frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Of a counter.
    Counter(CounterVerdict),
    /// Of a checksum.
    Checksum(ChecksumVerdict),
}

/// How a counter stands to the one before from the same sender.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CounterVerdict {
    /// The first one, or the first one after a suspension: nothing to compare with.
    First,
    /// One step on.
    Right,
    /// The same as before.
    Repeated,
    /// Neither.
    Jumped {
        /// How much the count rose, modulo its range; a right one rises by the counter's step.
        by: u64,
    },
    /// A value that stands for no count (absent or fault): the sequence begins anew after it.
    Suspended,
    /// A number that is neither a count nor a special value: the sequence begins anew after it.
    OutsideRange,
}

/// How a checksum stands to the payload.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ChecksumVerdict {
    /// It fits.
    Right,
    /// It does not.
    Wrong {
        /// What the payload's bytes give.
        expected: u64,
        /// What the frame says.
        found: u64,
    },
    /// The payload ends before the bytes that the checksum covers.
    TooShort,
}

/// A counter or checksum made ready for checking.
#[derive(Debug, Clone)]
pub(crate) struct CheckPlan {
    signal: SignalId,
    extractor: Extractor,
    rule: Rule,
}

#[derive(Debug, Clone)]
enum Rule {
    Counter(CounterPlan),
    Checksum(ChecksumPlan),
}

impl CheckPlan {
    /// `None` for signals that check nothing.
    pub(crate) fn new(id: SignalId, signal: &Signal, words: &[StateWord]) -> Option<Self> {
        let Content::Number { field, .. } = &signal.content else {
            return None;
        };
        let rule = match &signal.role {
            Role::Value => return None,
            Role::Counter(counter) => Rule::Counter(CounterPlan::new(counter, signal, words)?),
            Role::Checksum(checksum) => Rule::Checksum(ChecksumPlan::new(checksum, field.width())),
        };
        Some(Self { signal: id, extractor: Extractor::new(field), rule })
    }
}

/// Who sends one sequence of frames, as far as a recording tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Sender {
    /// The channel of the log.
    pub channel: Channel,
    /// The network.
    pub network: NetworkId,
    /// The frame.
    pub frame: FrameId,
    /// The source address of a parameter group (SAE J1939); of a FlexRay frame its channel: 0 is A, 1 is B.
    pub source: Option<u8>,
}

/// Which counter: its sender, and its place among the frame's checks.
type CounterKey = (Sender, usize);

/// The running checks of one recording: remembers each counter's last count, per [`Sender`].
///
/// ```
/// # use wirelore_decode::{Checks, Decoder, Sender};
/// # use wirelore_log::Channel;
/// # use wirelore_model::{Database, Description, FrameId, NetworkId};
/// # let decoder = Decoder::new(&Database::new(Description::default())?)?;
/// let mut checks = Checks::default();
/// let mut wrong = 0;
/// let sender = Sender { channel: Channel(0), network: NetworkId(0), frame: FrameId(0), source: None };
/// checks.frame(&decoder, sender, &[0x11, 0x22], |_signal, _verdict| wrong += 1);
/// assert_eq!(wrong, 0, "a frame that is not described has no checks");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Default)]
pub struct Checks {
    last_counts: FxHashMap<CounterKey, u64>,
}

impl Checks {
    /// Checks one frame. Frames of one sender are to be given in their order.
    pub fn frame(
        &mut self,
        decoder: &Decoder,
        sender: Sender,
        payload: &[u8],
        mut each: impl FnMut(SignalId, Verdict),
    ) {
        let Some(plan) = decoder.plan(sender.frame).filter(|plan| !plan.checks.is_empty()) else {
            return;
        };
        plan.walk(payload, &mut Checking { checks: self, plan, sender, payload, each: &mut each });
    }

    fn count(&mut self, key: CounterKey, counter: &CounterPlan, found: u64) -> Verdict {
        let verdict = counter.verdict(self.last_counts.get(&key).copied(), found);
        match verdict {
            CounterVerdict::Suspended | CounterVerdict::OutsideRange => self.last_counts.remove(&key),
            _ => self.last_counts.insert(key, found),
        };
        Verdict::Counter(verdict)
    }
}

/// The checks of one frame under way.
struct Checking<'a, F> {
    checks: &'a mut Checks,
    plan: &'a FramePlan,
    sender: Sender,
    payload: &'a [u8],
    each: F,
}

impl<F: FnMut(SignalId, Verdict)> Visit for Checking<'_, F> {
    fn group(&mut self, group: &Group) {
        for index in group.checks.clone() {
            let Some(check) = self.plan.checks.get(index) else {
                continue;
            };
            // A check whose own bits are missing says nothing; the payload is told as too short.
            let Some(found) = check.extractor.extract(self.payload) else {
                continue;
            };
            let verdict = match &check.rule {
                Rule::Counter(counter) => self.checks.count((self.sender, index), counter, found),
                Rule::Checksum(checksum) => Verdict::Checksum(checksum.verdict(self.payload, found)),
            };
            (self.each)(check.signal, verdict);
        }
    }

    fn unmatched(&mut self, _: Unmatched) {}
}

#[cfg(test)]
mod tests;
