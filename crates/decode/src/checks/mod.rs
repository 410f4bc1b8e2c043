//! Counters, checksums and protections: does a frame belong to the unbroken, undamaged sequence that its description promises?

mod checksum;
mod counter;
mod protection;

use rustc_hash::FxHashMap;
use wirelore_bits::Extractor;
use wirelore_log::Channel;
use wirelore_model::{Content, Frame, FrameId, NetworkId, Role, SeenId, SignalId, StateWord};

pub(crate) use checksum::ChecksumPlan;
use counter::CounterPlan;
pub(crate) use protection::ByProfile;
use protection::ProtectionPlan;

use crate::decoder::Decoder;
use crate::plan::{FramePlan, Group, Visit};
use crate::reading::Unmatched;

/// What a counter, a checksum or a protection says about a frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Of a counter.
    Counter(CounterVerdict),
    /// Of a checksum.
    Checksum(ChecksumVerdict),
    /// Of an end-to-end protection.
    Protection(ProtectionVerdict),
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

/// What an end-to-end protection says: first about the message itself, then, where nothing is wrong with it, about its place in the
/// sequence.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ProtectionVerdict {
    /// Nothing is wrong, and there is no message before it to compare with.
    First,
    /// Nothing is wrong, and it is the next one.
    Right,
    /// The same count as before.
    Repeated,
    /// Some messages before it are missing, not more than the description allows.
    Lost {
        /// How many; at least 1.
        messages: u32,
    },
    /// The count rose by more than the description allows.
    WrongSequence {
        /// How much, around the ring.
        rise: u32,
    },
    /// A count that the profile does not have.
    NotACount,
    /// The checksum does not fit.
    WrongSum {
        /// What the bytes and the data id give.
        expected: u64,
        /// What the message says.
        found: u64,
        /// The one other frame of the description with whose data id it fits.
        belongs: Option<Belongs>,
    },
    /// The checksum fits, and the data id that is sent is another one.
    WrongDataId {
        /// What is sent.
        found: u32,
        /// The frame of the description that has it.
        belongs: Option<Belongs>,
    },
    /// The message tells another length than it has.
    WrongLength {
        /// What it tells, in bytes.
        told: u64,
        /// What it has.
        is: u64,
    },
    /// The payload ends before the header or the bytes that are covered.
    TooShort,
}

/// The frame that a message seems to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Belongs {
    /// The frame.
    pub frame: FrameId,
    /// Its data id; of a list the one for the message's count.
    pub data_id: u32,
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
    Protection(Box<ProtectionPlan>),
}

impl CheckPlan {
    /// The check of a signal among those of its frame; `None` for signals that check nothing. `others` is asked where the frame is
    /// protected: for its greatest length, and for the protections of the vehicle.
    pub(crate) fn new<'p>(
        id: SignalId,
        frame: &Frame,
        words: &[StateWord],
        others: impl FnOnce() -> (usize, &'p ByProfile),
    ) -> Option<Self> {
        let signals = &frame.signals;
        let signal = signals.get(id.index())?;
        let Content::Number { field, .. } = &signal.content else {
            return None;
        };
        let rule = match &signal.role {
            Role::Value => return None,
            Role::Counter(counter) => Rule::Counter(CounterPlan::new(counter, signal, words)?),
            Role::Checksum(checksum) => Rule::Checksum(ChecksumPlan::new(checksum, field.width(), signals)),
            Role::Protection(protection) => {
                let (most_bytes, others) = others();
                Rule::Protection(Box::new(ProtectionPlan::new(protection, most_bytes, others)?))
            }
        };
        Some(Self { signal: id, extractor: Extractor::new(field), rule })
    }
}

/// The number that checksums over bytes of the identifier take: that of CAN frames, the acceptance field of CAN XL and the identifier of
/// LIN. Frames of other networks have none.
pub(crate) fn number_in(id: SeenId) -> Option<u32> {
    match id {
        SeenId::Can { id, .. } | SeenId::Xl { acceptance: id, .. } => Some(id),
        SeenId::Lin(id) => Some(id.into()),
        _ => None,
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

/// Which counter or protection: its sender, and its place among the frame's checks.
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
/// checks.frame(&decoder, sender, Some(0x123), &[0x11, 0x22], |_signal, _verdict| wrong += 1);
/// assert_eq!(wrong, 0, "a frame that is not described has no checks");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Default)]
pub struct Checks {
    last_counts: FxHashMap<CounterKey, u64>,
}

impl Checks {
    /// Checks one frame. Frames of one sender are to be given in their order. The identifier goes into some checksums; where it is not
    /// known, they say nothing.
    pub fn frame(
        &mut self,
        decoder: &Decoder,
        sender: Sender,
        id: Option<u32>,
        payload: &[u8],
        mut each: impl FnMut(SignalId, Verdict),
    ) {
        let Some(plan) = decoder.plan(sender.frame).filter(|plan| !plan.checks.is_empty()) else {
            return;
        };
        plan.walk(payload, &mut Checking { checks: self, plan, sender, id, payload, each: &mut each });
    }

    fn count(&mut self, key: CounterKey, counter: &CounterPlan, found: u64) -> Verdict {
        let verdict = counter.verdict(self.last_counts.get(&key).copied(), found);
        match verdict {
            CounterVerdict::Suspended | CounterVerdict::OutsideRange => self.last_counts.remove(&key),
            _ => self.last_counts.insert(key, found),
        };
        Verdict::Counter(verdict)
    }

    fn protection(&mut self, key: CounterKey, plan: &ProtectionPlan, payload: &[u8]) -> Verdict {
        let (verdict, count) = plan.verdict(payload, self.last_counts.get(&key).copied());
        if let Some(count) = count {
            self.last_counts.insert(key, count);
        }
        Verdict::Protection(verdict)
    }
}

/// The checks of one frame under way.
struct Checking<'a, F> {
    checks: &'a mut Checks,
    plan: &'a FramePlan,
    sender: Sender,
    id: Option<u32>,
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
                Rule::Checksum(checksum) if self.id.is_none() && checksum.needs_identifier() => continue,
                Rule::Checksum(checksum) => Verdict::Checksum(checksum.verdict(self.payload, self.id, found)),
                Rule::Protection(plan) => self.checks.protection((self.sender, index), plan, self.payload),
            };
            (self.each)(check.signal, verdict);
        }
    }

    fn unmatched(&mut self, _: Unmatched) {}
}

#[cfg(test)]
mod tests;
