//! The steps of an exchange: announced, cleared, packet after packet, acknowledged or aborted.

use super::control::{AbortReason, Control, ControlKind, check_size};
use super::fault::FaultKind;
use super::identifier::EVERYBODY;
use super::packets::Packets;
use super::reassembler::{Conversation, Event, Message, Outcome, Reassembler, State, Step};
use crate::conversations::MOST_CONVERSATIONS;

/// What a request to send or the announcement of a broadcast says.
#[derive(Debug, Clone, Copy)]
pub(super) struct Announced {
    pub(super) pgn: u32,
    pub(super) size: u16,
    pub(super) packets: u8,
    pub(super) is_broadcast: bool,
}

impl Announced {
    fn check(&self, destination: u8) -> Result<(), FaultKind> {
        if self.is_broadcast != (destination == EVERYBODY) {
            return Err(FaultKind::Destination { destination });
        }
        check_size(self.size, self.packets)
    }
}

impl Reassembler {
    /// A message is announced.
    pub(super) fn begin(&mut self, step: &Step, announced: Announced, tell: &mut dyn FnMut(Event<'_>)) -> Outcome {
        if let Some(State::Open(open)) = self.conversations.get(&step.conversation)
            && !open.is_told
        {
            let broken_off = FaultKind::BrokenOff { received: open.received, packets: open.packets };
            let kind = open.gap_or(open.timed_out(step.time_ns, &self.timeouts).unwrap_or(broken_off));
            self.give_up(step, kind, tell);
        }
        if let Err(kind) = announced.check(step.conversation.destination) {
            tell(step.fault(1, kind));
            self.keep(step, State::GivenUp { pgn: announced.pgn, last_ns: step.time_ns }, tell);
            return Outcome::Unusable;
        }
        let open = Packets::new(announced, step.time_ns, self.spare.take());
        self.keep(step, State::Open(open), tell);
        Outcome::Part
    }

    /// A data packet comes.
    pub(super) fn packet(&mut self, step: &Step, payload: &[u8], tell: &mut dyn FnMut(Event<'_>)) -> Outcome {
        let &[number, a, b, c, d, e, f, g] = payload else {
            return self.fail(step, FaultKind::FrameLength { found: payload.len() }, tell);
        };
        match self.conversations.get(&step.conversation) {
            Some(State::Open(open)) => {
                if let Some(late) = open.timed_out(step.time_ns, &self.timeouts) {
                    let kind = if open.is_told { FaultKind::NothingBegun { number } } else { open.gap_or(late) };
                    return self.fail(step, kind, tell);
                }
                if let Err(kind) = open.take(number, [a, b, c, d, e, f, g]) {
                    return self.fail(step, kind, tell);
                }
                open.last_ns = step.time_ns.or(open.last_ns);
                if !open.is_whole() || open.is_told {
                    return Outcome::Part;
                }
                tell(Event::Message(Message {
                    conversation: step.conversation,
                    pgn: open.pgn,
                    bytes: open.message(),
                    first_ns: open.first_ns,
                    last_ns: step.time_ns,
                    frames: open.frames,
                }));
                self.end(step);
                Outcome::Finished
            }
            Some(State::GivenUp { last_ns, .. }) => {
                let waited_ns =
                    step.time_ns.zip(*last_ns).map_or(0, |(now_ns, last_ns)| now_ns.saturating_sub(last_ns));
                *last_ns = step.time_ns;
                if waited_ns > self.timeouts.t3_ns {
                    self.conversations.remove(&step.conversation);
                    return self.fail(step, FaultKind::NothingBegun { number }, tell);
                }
                Outcome::OfGivenUp
            }
            None => self.fail(step, FaultKind::NothingBegun { number }, tell),
        }
    }

    /// The receiver of a message answers.
    pub(super) fn answer(&mut self, step: &Step, control: Control, tell: &mut dyn FnMut(Event<'_>)) -> Outcome {
        let open = match self.conversations.get(&step.conversation) {
            Some(State::Open(open)) if open.pgn == control.pgn => open,
            Some(State::GivenUp { pgn, .. }) if *pgn == control.pgn => return Outcome::OfGivenUp,
            _ => {
                tell(step.fault(0, FaultKind::NothingToAnswer));
                return Outcome::Unusable;
            }
        };
        let checked = match control.kind {
            ControlKind::ClearToSend { packets, next } => match open.timed_out(step.time_ns, &self.timeouts) {
                Some(late) if !open.is_told => Err(open.gap_or(late)),
                _ => open.clear(packets, next),
            },
            ControlKind::Acknowledge { size, .. } if size != open.size => {
                Err(FaultKind::AcknowledgeDisagrees { acknowledged: size, announced: open.size })
            }
            _ if open.is_told => {
                self.forget(&step.conversation);
                return Outcome::Answer(control.kind);
            }
            _ => Err(open.gap_or(FaultKind::NotRecorded { missing: open.missing() })),
        };
        if let Err(kind) = checked {
            return self.fail(step, kind, tell);
        }
        open.last_ns = step.time_ns.or(open.last_ns);
        Outcome::Answer(control.kind)
    }

    /// One side of a connection gives it up; which side is which message's, its parameter group says.
    pub(super) fn abort(
        &mut self,
        mut step: Step,
        pgn: u32,
        reason: AbortReason,
        tell: &mut dyn FnMut(Event<'_>),
    ) -> Outcome {
        let as_sent = step.conversation;
        let directions = [(as_sent, true), (as_sent.answered(), false)];
        for (conversation, by_sender) in directions {
            let Some(State::Open(open)) = self.conversations.get(&conversation) else { continue };
            if open.pgn != pgn {
                continue;
            }
            step.conversation = conversation;
            if open.is_told {
                tell(step.fault(0, FaultKind::Aborted { reason, by_sender }));
                self.forget(&conversation);
            } else {
                self.give_up(&step, FaultKind::Aborted { reason, by_sender }, tell);
            }
            return Outcome::Answer(ControlKind::Abort(reason));
        }
        // A message that is open comes first: what was given up in the other direction may lie long ago.
        for (conversation, _) in directions {
            if let Some(State::GivenUp { pgn: given_up, .. }) = self.conversations.get(&conversation)
                && *given_up == pgn
            {
                return Outcome::OfGivenUp;
            }
        }
        tell(step.fault(0, FaultKind::NothingToAbort { reason }));
        Outcome::Unusable
    }

    /// The message was told: a broadcast is over, a connection may still repeat packets and be acknowledged.
    fn end(&mut self, step: &Step) {
        match self.conversations.get(&step.conversation) {
            Some(State::Open(open)) if step.conversation.destination != EVERYBODY => open.is_told = true,
            _ => self.forget(&step.conversation),
        }
    }

    fn forget(&mut self, conversation: &Conversation) {
        if let Some(State::Open(open)) = self.conversations.remove(conversation) {
            self.spare.give(open.into_buffer());
        }
    }

    /// A frame cannot be used: the message that it should go on with is given up, if one is open.
    fn fail(&mut self, step: &Step, kind: FaultKind, tell: &mut dyn FnMut(Event<'_>)) -> Outcome {
        match self.conversations.get(&step.conversation) {
            Some(State::Open(open)) if !open.is_told => self.give_up(step, kind, tell),
            _ => tell(step.fault(0, kind)),
        }
        Outcome::Unusable
    }

    /// Gives an open message up; what is still to come of it is passed over.
    fn give_up(&mut self, step: &Step, kind: FaultKind, tell: &mut dyn FnMut(Event<'_>)) {
        let Some(state) = self.conversations.get(&step.conversation) else { return };
        let &mut State::Open(Packets { pgn, frames, .. }) = state else { return };
        let given_up = State::GivenUp { pgn, last_ns: step.time_ns };
        if let State::Open(open) = std::mem::replace(state, given_up) {
            self.spare.give(open.into_buffer());
        }
        tell(Step { pgn: Some(pgn), ..*step }.fault(frames, kind));
    }

    fn keep(&mut self, step: &Step, state: State, tell: &mut dyn FnMut(Event<'_>)) {
        let Some((conversation, State::Open(open))) = self.conversations.put(step.conversation, state) else { return };
        if !open.is_told {
            let (received, packets) = (open.received, open.packets);
            let kind = FaultKind::PushedOut { most: MOST_CONVERSATIONS, received, packets };
            tell(Step { conversation, pgn: Some(open.pgn), ..*step }.fault(open.frames, kind));
        }
        self.spare.give(open.into_buffer());
    }
}
