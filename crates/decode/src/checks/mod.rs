//! Counters, checksums and protections: does a frame belong to the unbroken, undamaged sequence that its description promises?

mod checksum;
mod counter;
mod origin;
mod protection;

use std::collections::hash_map::Entry;

use rustc_hash::FxHashMap;
use wirelore_bits::Extractor;
use wirelore_log::Channel;
use wirelore_model::{Content, Frame, FrameId, NetworkId, Role, SignalId, StateWord};

pub(crate) use checksum::ChecksumPlan;
use counter::CounterPlan;
pub use origin::Origin;
pub(crate) use origin::{asks_for_origin, has_several_sequences, is_to_destination};
pub(crate) use protection::{ByProfile, behind_header};
use protection::{ProtectionPlan, Suspect};

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

/// Who sends a frame, as far as a recording tells. What the frame's identifier tells beyond that is in its [`Origin`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Sender {
    /// The channel of the log.
    pub channel: Channel,
    /// The network.
    pub network: NetworkId,
    /// The frame.
    pub frame: FrameId,
    /// The source address of a parameter group (SAE J1939).
    pub source: Option<u8>,
}

/// Which sequence of a counter or a protection: its sender, what its origin tells, and its place among the frame's checks.
type SequenceKey = (Sender, u64, usize);

/// So many sequences are remembered; each message of any other is the first of its sequence.
const SEQUENCES_MAX: usize = 1 << 18;

/// What is remembered of a sequence.
#[derive(Debug, Clone, Copy, Default)]
struct Memory {
    /// The last count that the next one is to be compared with.
    count: Option<u64>,
    /// Whose messages its damaged ones seem to be.
    suspect: Option<Suspect>,
}

/// The running checks of one recording: remembers the last count of each counter and protection, for each [`Sender`] and [`Origin`] that
/// has a sequence of its own.
///
/// ```
/// # use wirelore_decode::{Checks, Decoder, Origin, Sender};
/// # use wirelore_log::Channel;
/// # use wirelore_model::{Database, Description, FrameId, NetworkId, SeenId};
/// # let decoder = Decoder::new(&Database::new(Description::default())?)?;
/// let mut checks = Checks::default();
/// let mut wrong = 0;
/// let sender = Sender { channel: Channel(0), network: NetworkId(0), frame: FrameId(0), source: None };
/// let origin = Origin { id: Some(SeenId::Can { id: 0x123, extended: false }), header: None };
/// checks.frame(&decoder, sender, origin, &[0x11, 0x22], |_signal, _verdict| wrong += 1);
/// assert_eq!(wrong, 0, "a frame that is not described has no checks");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Default)]
pub struct Checks {
    sequences: FxHashMap<SequenceKey, Memory>,
    /// Where header and payload are laid one behind the other.
    together: Vec<u8>,
}

impl Checks {
    /// Checks one frame. Frames of one sender are to be given in their order. The identifier goes into some checksums; where it is not
    /// known, they say nothing. Neither does it then tell sequences apart.
    pub fn frame(
        &mut self,
        decoder: &Decoder,
        sender: Sender,
        origin: Origin,
        payload: &[u8],
        mut each: impl FnMut(SignalId, Verdict),
    ) {
        let Some(plan) = decoder.plan(sender.frame).filter(|plan| !plan.checks.is_empty()) else {
            return;
        };
        let sequence = if plan.has_several_sequences { origin.sequence(sender.source.is_some()) } else { 0 };
        plan.walk(payload, &mut Checking { checks: self, plan, sender, sequence, origin, payload, each: &mut each });
    }

    fn count(&mut self, key: SequenceKey, counter: &CounterPlan, found: u64) -> Verdict {
        let mut unknown = Memory::default();
        let memory = remembered(&mut self.sequences, key).unwrap_or(&mut unknown);
        let verdict = counter.verdict(memory.count, found);
        let begins_anew = matches!(verdict, CounterVerdict::Suspended | CounterVerdict::OutsideRange);
        memory.count = (!begins_anew).then_some(found);
        Verdict::Counter(verdict)
    }

    fn protection(
        &mut self,
        key: SequenceKey,
        plan: &ProtectionPlan,
        header: Option<&[u8; 8]>,
        payload: &[u8],
    ) -> Verdict {
        let mut unknown = Memory::default();
        let memory = remembered(&mut self.sequences, key).unwrap_or(&mut unknown);
        Verdict::Protection(plan.verdict(header, payload, &mut self.together, memory))
    }
}

/// What is remembered of a sequence; `None` where there are too many.
fn remembered(sequences: &mut FxHashMap<SequenceKey, Memory>, key: SequenceKey) -> Option<&mut Memory> {
    let is_full = sequences.len() >= SEQUENCES_MAX;
    match sequences.entry(key) {
        Entry::Occupied(known) => Some(known.into_mut()),
        Entry::Vacant(_) if is_full => None,
        Entry::Vacant(place) => Some(place.insert(Memory::default())),
    }
}

/// The checks of one frame under way.
struct Checking<'a, F> {
    checks: &'a mut Checks,
    plan: &'a FramePlan,
    sender: Sender,
    sequence: u64,
    origin: Origin,
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
            let key = (self.sender, self.sequence, index);
            let verdict = match &check.rule {
                Rule::Counter(counter) => self.checks.count(key, counter, found),
                Rule::Checksum(checksum) => {
                    let number = self.origin.number();
                    if number.is_none() && checksum.needs_identifier() {
                        continue;
                    }
                    Verdict::Checksum(checksum.verdict(self.payload, number, found))
                }
                Rule::Protection(plan) => self.checks.protection(key, plan, self.origin.header.as_ref(), self.payload),
            };
            (self.each)(check.signal, verdict);
        }
    }

    fn unmatched(&mut self, _: Unmatched) {}
}

#[cfg(test)]
mod tests;
