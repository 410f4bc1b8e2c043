//! The listener: frames in, messages and faults out.

use super::Timeouts;
use super::control::{Control, ControlKind};
use super::exchange::Announced;
use super::fault::{Fault, FaultKind};
use super::identifier::Addressed;
use super::packets::Packets;
use crate::conversations::{Conversations, SpareBuffers};

/// Who sends a message to whom.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Conversation {
    /// The address of who sends it.
    pub source: u8,
    /// The address of who receives it; [`EVERYBODY`](super::EVERYBODY) for a broadcast.
    pub destination: u8,
}

impl Conversation {
    pub(super) const fn answered(self) -> Self {
        Self { source: self.destination, destination: self.source }
    }
}

/// What a frame led to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Event<'a> {
    /// A message is whole.
    Message(Message<'a>),
    /// Something went wrong.
    Fault(Fault),
}

/// A whole message.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Message<'a> {
    /// Who sent it to whom.
    pub conversation: Conversation,
    /// Its parameter group.
    pub pgn: u32,
    /// What was sent, without the filling of the last packet.
    pub bytes: &'a [u8],
    /// The time of the frame that announced it.
    pub first_ns: Option<i64>,
    /// The time of the packet that made it whole.
    pub last_ns: Option<i64>,
    /// How many frames the sender needed, the announcement and repeated packets among them.
    pub frames: u32,
}

/// What became of a frame: each has exactly one outcome.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// It is none of the transport protocol.
    NotMine,
    /// With it a message was whole, which was told.
    Finished,
    /// It announces a message or carries a packet, and was taken.
    Part,
    /// An answer to a message that is open, or its abort.
    Answer(ControlKind),
    /// It belongs to a message that had been given up, which was told at the time.
    OfGivenUp,
    /// It could not be used, which was told.
    Unusable,
}

/// Puts the messages of a network together. See the [module](super) for what it holds at most.
#[derive(Debug, Clone)]
pub struct Reassembler {
    pub(super) timeouts: Timeouts,
    pub(super) conversations: Conversations<Conversation, State>,
    pub(super) spare: SpareBuffers,
}

#[derive(Debug, Clone)]
pub(super) enum State {
    Open(Packets),
    /// Frames that still belong to a message that was given up.
    GivenUp {
        pgn: u32,
        last_ns: Option<i64>,
    },
}

/// One frame, as far as its message is concerned.
#[derive(Clone, Copy)]
pub(super) struct Step {
    pub(super) time_ns: Option<i64>,
    pub(super) conversation: Conversation,
    pub(super) pgn: Option<u32>,
}

impl Step {
    pub(super) fn fault(&self, frames: u32, kind: FaultKind) -> Event<'static> {
        Event::Fault(Fault { conversation: self.conversation, pgn: self.pgn, time_ns: self.time_ns, frames, kind })
    }
}

impl Default for Reassembler {
    fn default() -> Self {
        Self::new(Timeouts::default())
    }
}

impl Reassembler {
    /// A reassembler that has heard nothing yet.
    #[must_use]
    pub const fn new(timeouts: Timeouts) -> Self {
        Self { timeouts, conversations: Conversations::new(), spare: SpareBuffers::new() }
    }

    /// Takes the next frame of the log: what became of it, and in `tell` the messages and faults that it led to. `id` is a 29-bit
    /// identifier; frames with 11 bits are none of this protocol and are not for this function.
    pub fn feed(&mut self, time_ns: Option<i64>, id: u32, payload: &[u8], tell: &mut dyn FnMut(Event<'_>)) -> Outcome {
        let Some(Addressed { is_control, source, destination }) = Addressed::read(id) else { return Outcome::NotMine };
        let mut step = Step { time_ns, conversation: Conversation { source, destination }, pgn: None };
        if !is_control {
            return self.packet(&step, payload, tell);
        }
        let control = match Control::read(payload) {
            Ok(control) => control,
            Err(kind) => {
                tell(step.fault(0, kind));
                return Outcome::Unusable;
            }
        };
        step.pgn = Some(control.pgn);
        match control.kind {
            ControlKind::RequestToSend { size, packets, .. } => {
                self.begin(&step, Announced { pgn: control.pgn, size, packets, is_broadcast: false }, tell)
            }
            ControlKind::Broadcast { size, packets } => {
                self.begin(&step, Announced { pgn: control.pgn, size, packets, is_broadcast: true }, tell)
            }
            ControlKind::Abort(reason) => self.abort(step, control.pgn, reason, tell),
            ControlKind::ClearToSend { .. } | ControlKind::Acknowledge { .. } => {
                step.conversation = step.conversation.answered();
                self.answer(&step, control, tell)
            }
        }
    }

    /// The log ended: tells the messages that are not whole. Afterwards it is as new.
    pub fn finish(&mut self, tell: &mut dyn FnMut(Event<'_>)) {
        for (conversation, state) in self.conversations.take_all() {
            match state {
                State::Open(open) if !open.is_told => {
                    let kind = open.gap_or(FaultKind::Unfinished { received: open.received, packets: open.packets });
                    let step = Step { time_ns: open.last_ns, conversation, pgn: Some(open.pgn) };
                    tell(step.fault(open.frames, kind));
                }
                _ => {}
            }
        }
        *self = Self::new(self.timeouts);
    }

    /// Memory that is set aside for the bytes of messages just now.
    #[must_use]
    pub fn held_bytes(&self) -> usize {
        let of_state = |state: &State| if let State::Open(open) = state { open.held_bytes() } else { 0 };
        self.conversations.states().map(of_state).sum::<usize>() + self.spare.held_bytes()
    }
}
