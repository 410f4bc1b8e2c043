//! The listener: transfers in, messages and faults out.

use super::fault::{Fault, FaultKind};
use super::{Part, Rules};
use crate::conversations::{Conversations, MOST_CONVERSATIONS, SpareBuffers};

/// What a transfer led to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Event<'a, K> {
    /// A message is whole.
    Message(Message<'a, K>),
    /// Something went wrong.
    Fault(Fault<K>),
}

/// A whole message.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Message<'a, K> {
    /// What the caller tells messages apart by: ring, sender, function and operation, mostly.
    pub key: K,
    /// Its data, without the numbers of the parts.
    pub bytes: &'a [u8],
    /// The time of its first part.
    pub first_ns: Option<i64>,
    /// The time of its last part.
    pub last_ns: Option<i64>,
    /// How many transfers it came in.
    pub parts: u32,
}

/// What became of a transfer: each has exactly one outcome.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// With it a message was whole, which was told.
    Finished,
    /// It was taken; its message goes on.
    Part,
    /// It belongs to a message that had been given up, which was told at the time.
    OfGivenUp,
    /// It could not be used, which was told.
    Unusable,
}

/// Puts the messages of rings together. See the [module](super) for what it holds at most.
#[derive(Debug, Clone)]
pub struct Reassembler<K> {
    messages: Conversations<K, State>,
    spare: SpareBuffers,
}

#[derive(Debug, Clone)]
enum State {
    Open(Begun),
    /// Parts that still belong to a message that was given up.
    GivenUp {
        last_ns: Option<i64>,
    },
}

#[derive(Debug, Clone)]
struct Begun {
    bytes: Vec<u8>,
    parts: u32,
    first_ns: Option<i64>,
    last_ns: Option<i64>,
}

impl Begun {
    fn received(&self) -> u32 {
        u32::try_from(self.bytes.len()).unwrap_or(u32::MAX)
    }
}

/// One transfer, as far as its message is concerned.
struct Step<'r, K> {
    rules: &'r Rules,
    time_ns: Option<i64>,
    key: K,
}

impl<K: Copy> Step<'_, K> {
    fn fault(&self, parts: u32, kind: FaultKind) -> Event<'static, K> {
        Event::Fault(Fault { key: self.key, time_ns: self.time_ns, parts, kind })
    }

    fn given_up(&self) -> State {
        State::GivenUp { last_ns: self.time_ns }
    }

    /// How long nothing came since; 0 where it cannot be told.
    fn waited_ns(&self, last_ns: Option<i64>) -> i64 {
        self.time_ns.zip(last_ns).map_or(0, |(now, last)| now.saturating_sub(last))
    }

    /// Adds a part, if it is the one that is due.
    fn take(&self, begun: &mut Begun, number: u8, data: &[u8]) -> Result<(), FaultKind> {
        let index = begun.parts;
        let waited_ns = self.waited_ns(begun.last_ns);
        if waited_ns > self.rules.most_gap_ns {
            return Err(FaultKind::TimedOut { index, waited_ns, limit_ns: self.rules.most_gap_ns });
        }
        // The number has eight bits and begins anew behind 255.
        let expected = index as u8;
        if number != expected {
            let is_repeated = number == expected.wrapping_sub(1);
            return Err(if is_repeated {
                FaultKind::Repeated { index, number }
            } else {
                FaultKind::Lost { index, expected, found: number }
            });
        }
        if begun.bytes.len() + data.len() > self.rules.most_bytes as usize {
            return Err(FaultKind::TooLong { most: self.rules.most_bytes });
        }
        begun.bytes.extend_from_slice(data);
        begun.parts += 1;
        begun.last_ns = self.time_ns.or(begun.last_ns);
        Ok(())
    }
}

impl<K: Copy + Ord> Default for Reassembler<K> {
    fn default() -> Self {
        Self::new()
    }
}

impl<K: Copy + Ord> Reassembler<K> {
    /// A reassembler that has heard nothing yet.
    #[must_use]
    pub const fn new() -> Self {
        Self { messages: Conversations::new(), spare: SpareBuffers::new() }
    }

    /// Takes the next transfer of the log: what became of it, and in `tell` the messages and faults that it led to. `part` is its TelID.
    pub fn feed(
        &mut self,
        rules: &Rules,
        time_ns: Option<i64>,
        key: K,
        part: u8,
        data: &[u8],
        tell: &mut dyn FnMut(Event<'_, K>),
    ) -> Outcome {
        let step = Step { rules, time_ns, key };
        let Some(part) = Part::of_number(part) else {
            tell(step.fault(0, FaultKind::PartUnknown { number: part }));
            return Outcome::Unusable;
        };
        if part == Part::Whole {
            self.break_off(&step, tell);
            tell(Event::Message(Message { key, bytes: data, first_ns: time_ns, last_ns: time_ns, parts: 1 }));
            return Outcome::Finished;
        }
        match (part, data) {
            (_, []) => {
                tell(step.fault(0, FaultKind::PartEmpty));
                Outcome::Unusable
            }
            (Part::First, [number, data @ ..]) => self.begin(&step, *number, data, tell),
            (_, [number, data @ ..]) => self.go_on(&step, *number, data, part == Part::Last, tell),
        }
    }

    /// The log ended: tells the messages that are not whole. Afterwards it is as new.
    pub fn finish(&mut self, tell: &mut dyn FnMut(Event<'_, K>)) {
        for (key, state) in self.messages.take_all() {
            if let State::Open(begun) = state {
                let kind = FaultKind::Unfinished { received: begun.received() };
                tell(Event::Fault(Fault { key, time_ns: begun.last_ns, parts: begun.parts, kind }));
            }
        }
        *self = Self::new();
    }

    /// Memory that is set aside for the bytes of messages just now.
    #[must_use]
    pub fn held_bytes(&self) -> usize {
        let of_state = |state: &State| if let State::Open(begun) = state { begun.bytes.capacity() } else { 0 };
        self.messages.states().map(of_state).sum::<usize>() + self.spare.held_bytes()
    }

    fn begin(&mut self, step: &Step<'_, K>, number: u8, data: &[u8], tell: &mut dyn FnMut(Event<'_, K>)) -> Outcome {
        self.break_off(step, tell);
        if number != 0 {
            tell(step.fault(0, FaultKind::FirstNumber { found: number }));
            self.keep(step, step.given_up(), tell);
            return Outcome::Unusable;
        }
        let mut begun = Begun { bytes: self.spare.take(), parts: 0, first_ns: step.time_ns, last_ns: step.time_ns };
        match step.take(&mut begun, 0, data) {
            Ok(()) => {
                self.keep(step, State::Open(begun), tell);
                Outcome::Part
            }
            Err(kind) => {
                tell(step.fault(0, kind));
                self.spare.give(begun.bytes);
                self.keep(step, step.given_up(), tell);
                Outcome::Unusable
            }
        }
    }

    fn go_on(
        &mut self,
        step: &Step<'_, K>,
        number: u8,
        data: &[u8],
        is_last: bool,
        tell: &mut dyn FnMut(Event<'_, K>),
    ) -> Outcome {
        let taken = match self.messages.get(&step.key) {
            Some(State::Open(begun)) => step.take(begun, number, data),
            Some(State::GivenUp { last_ns }) if step.waited_ns(*last_ns) <= step.rules.most_gap_ns => {
                *last_ns = step.time_ns.or(*last_ns);
                if is_last {
                    self.messages.remove(&step.key);
                }
                return Outcome::OfGivenUp;
            }
            Some(State::GivenUp { .. }) | None => {
                tell(step.fault(0, FaultKind::NothingBegun { number }));
                match is_last {
                    true => _ = self.messages.remove(&step.key),
                    false => self.keep(step, step.given_up(), tell),
                }
                return Outcome::Unusable;
            }
        };
        match taken {
            Ok(()) if !is_last => return Outcome::Part,
            // The same part again changes nothing.
            Err(kind @ FaultKind::Repeated { .. }) if !is_last => {
                tell(step.fault(0, kind));
                return Outcome::Unusable;
            }
            _ => {}
        }
        let Some(State::Open(begun)) = self.messages.remove(&step.key) else { return Outcome::Unusable };
        let outcome = match taken {
            Ok(()) => {
                let Begun { bytes, parts, first_ns, last_ns } = &begun;
                let (first_ns, last_ns, parts) = (*first_ns, *last_ns, *parts);
                tell(Event::Message(Message { key: step.key, bytes, first_ns, last_ns, parts }));
                Outcome::Finished
            }
            Err(kind) => {
                tell(step.fault(begun.parts, kind));
                if !is_last {
                    self.keep(step, step.given_up(), tell);
                }
                Outcome::Unusable
            }
        };
        self.spare.give(begun.bytes);
        outcome
    }

    /// Another message of the same key begins: the one that is open will not be whole.
    fn break_off(&mut self, step: &Step<'_, K>, tell: &mut dyn FnMut(Event<'_, K>)) {
        if let Some(State::Open(begun)) = self.messages.remove(&step.key) {
            tell(step.fault(begun.parts, FaultKind::BrokenOff { received: begun.received() }));
            self.spare.give(begun.bytes);
        }
    }

    /// Keeps a state, and tells which message had to make room for it.
    fn keep(&mut self, step: &Step<'_, K>, state: State, tell: &mut dyn FnMut(Event<'_, K>)) {
        let Some((key, State::Open(begun))) = self.messages.put(step.key, state) else { return };
        let kind = FaultKind::PushedOut { most: MOST_CONVERSATIONS, received: begun.received() };
        tell(Event::Fault(Fault { key, time_ns: step.time_ns, parts: begun.parts, kind }));
        self.spare.give(begun.bytes);
    }
}
