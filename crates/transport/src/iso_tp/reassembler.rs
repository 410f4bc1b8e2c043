//! The listener: frames in, messages and faults out.

use super::fault::{Fault, FaultKind};
use super::pci::{FlowControl, FlowStatus, Pci};
use super::{Addressing, Rules};
use crate::conversations::{Conversations, MOST_CONVERSATIONS, SpareBuffers};

/// Which conversation a frame belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Conversation<K> {
    /// What the caller tells frames apart by: network and identifier, mostly.
    pub key: K,
    /// The byte before everything else: the target with extended addressing, the extension with mixed addressing.
    pub address: Option<u8>,
}

/// What a frame led to.
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
    /// The conversation.
    pub conversation: Conversation<K>,
    /// What was sent, without padding.
    pub bytes: &'a [u8],
    /// The time of its first frame.
    pub first_ns: Option<i64>,
    /// The time of its last frame.
    pub last_ns: Option<i64>,
    /// How many frames it came in.
    pub frames: u32,
}

/// What became of a frame: each has exactly one outcome.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// With it a message was whole, which was told.
    Finished,
    /// It was taken; its message goes on.
    Part,
    /// The answer of a receiver. See [`Reassembler::answered`].
    FlowControl(FlowControl),
    /// It belongs to a message that had been given up, which was told at the time.
    OfGivenUp,
    /// It could not be used, which was told.
    Unusable,
}

/// Puts the messages of a network together; `K` tells its conversations apart. See the [module](super) for what it holds at most.
#[derive(Debug, Clone)]
pub struct Reassembler<K> {
    conversations: Conversations<Conversation<K>, State>,
    spare: SpareBuffers,
}

#[derive(Debug, Clone)]
enum State {
    Open(Begun),
    /// Consecutive frames that still belong to a message that was given up.
    GivenUp {
        frames_left: u32,
        last_ns: Option<i64>,
    },
}

/// A message of which some frames came.
#[derive(Debug, Clone)]
struct Begun {
    announced: u32,
    /// Bytes of a full consecutive frame: those of the first one.
    frame_bytes: usize,
    bytes: Vec<u8>,
    first_ns: Option<i64>,
    last_ns: Option<i64>,
    frames: u32,
}

impl Begun {
    fn received(&self) -> u32 {
        // No more than was announced.
        self.bytes.len() as u32
    }

    fn frames_left(&self, address_bytes: usize) -> u32 {
        let each = (self.frame_bytes - 1 - address_bytes) as u32;
        (self.announced - self.received()).div_ceil(each)
    }
}

/// How long nothing came, where that is too long. A time that goes back is no wait.
fn too_long(last_ns: Option<i64>, now_ns: Option<i64>, rules: &Rules) -> Option<i64> {
    let waited_ns = now_ns?.saturating_sub(last_ns?);
    (waited_ns > rules.most_gap_ns).then_some(waited_ns)
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
        Self { conversations: Conversations::new(), spare: SpareBuffers::new() }
    }

    /// Takes the next frame of the log: what became of it, and in `tell` the messages and faults that it led to. `payload` is the whole
    /// payload, as long as it was on the wire.
    pub fn feed(
        &mut self,
        rules: &Rules,
        time_ns: Option<i64>,
        key: K,
        payload: &[u8],
        tell: &mut dyn FnMut(Event<'_, K>),
    ) -> Outcome {
        let address_bytes = rules.addressing.address_bytes();
        let address = if rules.addressing == Addressing::Normal { None } else { payload.first().copied() };
        let step = Step { rules, time_ns, conversation: Conversation { key, address }, frame_bytes: payload.len() };
        match Pci::read(payload, address_bytes) {
            Ok(Pci::Single(bytes)) => {
                self.break_off(&step, tell);
                tell(Event::Message(step.message(bytes)));
                Outcome::Finished
            }
            Ok(Pci::First { announced, data }) => self.begin(&step, announced, data, tell),
            Ok(Pci::Consecutive { number, data }) => self.go_on(&step, number, data, tell),
            Ok(Pci::FlowControl(answer)) => Outcome::FlowControl(answer),
            Err(kind) => {
                tell(step.fault(0, kind));
                Outcome::Unusable
            }
        }
    }

    /// Tells that the receiver of `conversation` answered. The frame of a flow control comes in the other direction, and only the caller
    /// knows which conversation that answers. It is not needed for putting messages together: with it an overflow is told, and the
    /// longest wait is counted from the answer.
    pub fn answered(
        &mut self,
        conversation: Conversation<K>,
        time_ns: Option<i64>,
        answer: FlowControl,
        tell: &mut dyn FnMut(Event<'_, K>),
    ) {
        let Some(State::Open(begun)) = self.conversations.get(&conversation) else { return };
        begun.last_ns = time_ns.or(begun.last_ns);
        if answer.status == FlowStatus::Overflow {
            let (announced, frames) = (begun.announced, begun.frames);
            self.forget(&conversation);
            tell(Event::Fault(Fault { conversation, time_ns, frames, kind: FaultKind::Overflow { announced } }));
        }
    }

    /// The log ended: tells the messages that are not whole. Afterwards it is as new.
    pub fn finish(&mut self, tell: &mut dyn FnMut(Event<'_, K>)) {
        for (conversation, state) in self.conversations.take_all() {
            if let State::Open(begun) = state {
                let kind = FaultKind::Unfinished { received: begun.received(), announced: begun.announced };
                tell(Event::Fault(Fault { conversation, time_ns: begun.last_ns, frames: begun.frames, kind }));
            }
        }
        *self = Self::new();
    }

    /// Memory that is set aside for the bytes of messages just now.
    #[must_use]
    pub fn held_bytes(&self) -> usize {
        let of_state = |state: &State| if let State::Open(begun) = state { begun.bytes.capacity() } else { 0 };
        self.conversations.states().map(of_state).sum::<usize>() + self.spare.held_bytes()
    }

    /// A message begins, so the one before has ended.
    fn break_off(&mut self, step: &Step<'_, K>, tell: &mut dyn FnMut(Event<'_, K>)) {
        let Some(State::Open(begun)) = self.conversations.get(&step.conversation) else {
            self.conversations.remove(&step.conversation);
            return;
        };
        let kind = match too_long(begun.last_ns, step.time_ns, step.rules) {
            Some(waited_ns) => FaultKind::TimedOut { index: begun.frames, waited_ns, limit_ns: step.rules.most_gap_ns },
            None => FaultKind::BrokenOff { received: begun.received(), announced: begun.announced },
        };
        let frames = begun.frames;
        self.forget(&step.conversation);
        tell(step.fault(frames, kind));
    }

    fn begin(
        &mut self,
        step: &Step<'_, K>,
        announced: u32,
        data: &[u8],
        tell: &mut dyn FnMut(Event<'_, K>),
    ) -> Outcome {
        self.break_off(step, tell);
        let mut begun = Begun {
            announced,
            frame_bytes: step.frame_bytes,
            bytes: self.spare.take(),
            first_ns: step.time_ns,
            last_ns: step.time_ns,
            frames: 1,
        };
        begun.bytes.extend_from_slice(data);
        let most = step.rules.most_bytes;
        if announced > most {
            tell(step.fault(1, FaultKind::TooLong { announced, most }));
            let frames_left = begun.frames_left(step.rules.addressing.address_bytes());
            self.spare.give(begun.bytes);
            self.keep(step, State::GivenUp { frames_left, last_ns: step.time_ns }, tell);
            return Outcome::Unusable;
        }
        self.keep(step, State::Open(begun), tell);
        Outcome::Part
    }

    fn go_on(&mut self, step: &Step<'_, K>, number: u8, data: &[u8], tell: &mut dyn FnMut(Event<'_, K>)) -> Outcome {
        let nothing_begun = step.fault(0, FaultKind::NothingBegun { number });
        match self.conversations.get(&step.conversation) {
            None => {
                tell(nothing_begun);
                Outcome::Unusable
            }
            Some(State::GivenUp { frames_left, last_ns }) => {
                let is_late = too_long(*last_ns, step.time_ns, step.rules).is_some();
                *frames_left = frames_left.saturating_sub(1);
                *last_ns = step.time_ns;
                if is_late || *frames_left == 0 {
                    self.conversations.remove(&step.conversation);
                }
                if is_late {
                    tell(nothing_begun);
                    return Outcome::Unusable;
                }
                Outcome::OfGivenUp
            }
            Some(State::Open(begun)) => match step.take(begun, number, data) {
                Ok(()) if begun.received() < begun.announced => Outcome::Part,
                Ok(()) => {
                    if let Some(State::Open(begun)) = self.conversations.remove(&step.conversation) {
                        tell(Event::Message(Message {
                            first_ns: begun.first_ns,
                            frames: begun.frames,
                            ..step.message(&begun.bytes)
                        }));
                        self.spare.give(begun.bytes);
                    }
                    Outcome::Finished
                }
                Err(kind) => {
                    let frames = begun.frames;
                    self.give_up(step, kind);
                    tell(step.fault(frames, kind));
                    Outcome::Unusable
                }
            },
        }
    }

    /// Gives an open message up because of a consecutive frame; what is still to come of it is passed over.
    fn give_up(&mut self, step: &Step<'_, K>, kind: FaultKind) {
        let Some(State::Open(begun)) = self.conversations.remove(&step.conversation) else { return };
        // Where frames changed places the lost ones still come, so they are not taken off.
        let came = u32::from(!matches!(kind, FaultKind::Repeated { .. }));
        let frames_left = begun.frames_left(step.rules.addressing.address_bytes()) - came;
        self.spare.give(begun.bytes);
        if frames_left > 0 {
            // In the place of the one that was just taken out, so that nothing has to make room.
            self.conversations.put(step.conversation, State::GivenUp { frames_left, last_ns: step.time_ns });
        }
    }

    fn keep(&mut self, step: &Step<'_, K>, state: State, tell: &mut dyn FnMut(Event<'_, K>)) {
        let Some((conversation, State::Open(begun))) = self.conversations.put(step.conversation, state) else { return };
        let (received, announced) = (begun.received(), begun.announced);
        let kind = FaultKind::PushedOut { most: MOST_CONVERSATIONS, received, announced };
        tell(Event::Fault(Fault { conversation, time_ns: step.time_ns, frames: begun.frames, kind }));
        self.spare.give(begun.bytes);
    }

    fn forget(&mut self, conversation: &Conversation<K>) {
        if let Some(State::Open(begun)) = self.conversations.remove(conversation) {
            self.spare.give(begun.bytes);
        }
    }
}

/// One frame, as far as its message is concerned.
struct Step<'r, K> {
    rules: &'r Rules,
    time_ns: Option<i64>,
    conversation: Conversation<K>,
    frame_bytes: usize,
}

impl<K: Copy> Step<'_, K> {
    fn message<'a>(&self, bytes: &'a [u8]) -> Message<'a, K> {
        let Self { conversation, time_ns, .. } = *self;
        Message { conversation, bytes, first_ns: time_ns, last_ns: time_ns, frames: 1 }
    }

    fn fault(&self, frames: u32, kind: FaultKind) -> Event<'static, K> {
        Event::Fault(Fault { conversation: self.conversation, time_ns: self.time_ns, frames, kind })
    }

    /// Adds a consecutive frame, if it is the one that is due.
    fn take(&self, begun: &mut Begun, number: u8, data: &[u8]) -> Result<(), FaultKind> {
        let index = begun.frames;
        if let Some(waited_ns) = too_long(begun.last_ns, self.time_ns, self.rules) {
            return Err(FaultKind::TimedOut { index, waited_ns, limit_ns: self.rules.most_gap_ns });
        }
        let expected = (index & 0xF) as u8;
        if number != expected {
            // The first frame has no number, so that what precedes consecutive frame 1 cannot have come twice.
            let is_repeated = index > 1 && number == expected.wrapping_sub(1) & 0xF;
            return Err(if is_repeated {
                FaultKind::Repeated { index, number }
            } else {
                FaultKind::Lost { index, expected, found: number }
            });
        }
        let due = (begun.announced - begun.received()) as usize;
        let head_bytes = self.frame_bytes - data.len();
        let most = begun.frame_bytes;
        let least = most.min(head_bytes + due);
        if self.frame_bytes < least || self.frame_bytes > most {
            return Err(FaultKind::ConsecutiveLength { index, found: self.frame_bytes, least, most });
        }
        begun.bytes.extend_from_slice(&data[..due.min(data.len())]);
        begun.frames += 1;
        begun.last_ns = self.time_ns.or(begun.last_ns);
        Ok(())
    }
}
