//! Frames against what their network says of itself: FlexRay frames against cycle and slots, frames of CAN FD on a network of CAN XL.

use wirelore_bits::payload_lengths::is_can_fd_length;
use wirelore_model::{FlexRayTiming, Frame, Identifier, Network, NetworkKind};

use crate::resolve::Resolved;
use crate::resolve::catalogue::{Catalogue, Sourced};
use crate::resolve::frame::FrameOrigin;
use crate::resolve::messages::{Messages, at};
use crate::resolve::timing::shown;
use crate::syntax::tree::{self, BodyKind, Recognition, Timing};
use crate::{Diagnostic, Rule, Site, Span};

pub(crate) fn check(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    let networks = &resolved.description.networks;
    for (frame, origin) in resolved.description.frames.iter().zip(&resolved.frames) {
        let Some(home) = frame.seen_on.first() else { continue };
        let network = &networks[home.network.index()];
        let declared = &catalogue.networks[home.network.index()];
        let mut on = OnNetwork { frame, origin, network, declared, messages };
        match home.identifier {
            Identifier::FlexRay { slot, repetition, .. } => {
                if let Some(timing) = &network.flexray {
                    on.slot(slot, timing);
                    on.static_length(slot, timing);
                    on.cycles(repetition, timing);
                    on.period(repetition, timing);
                }
            }
            Identifier::Xl { .. } => on.xl_length(),
            Identifier::Can { .. } | Identifier::Pgn { .. }
                if network.kind == NetworkKind::CanXl && frame.carried.is_none() =>
            {
                on.fd_length()
            }
            _ => {}
        }
    }
}

/// A frame on its own network.
struct OnNetwork<'a, 't> {
    frame: &'a Frame,
    origin: &'a FrameOrigin<'t>,
    network: &'a Network,
    declared: &'a Sourced<'t, tree::Network<'t>>,
    messages: &'a mut Messages,
}

impl OnNetwork<'_, '_> {
    fn declared_at(&self, span: Span) -> Site {
        at(self.declared.file, span)
    }

    /// Whether a cycle has the slot.
    fn slot(&mut self, slot: u16, timing: &FlexRayTiming) {
        let clauses = &self.declared.tree.flexray;
        let name = &self.network.label.name;
        // The dynamic segment is the last one: where its end is known, nothing else counts.
        let (text, span, why) = match (timing.last_dynamic_slot, timing.static_slots) {
            (Some(last), _) if slot > last => {
                let Some(written) = &clauses.dynamic else { return };
                (format!("`{name}` has no slot {slot}"), written.span, format!("its last one is slot {last}"))
            }
            (None, Some(slots)) if slot > slots.count && clauses.dynamic.is_none() => {
                let Some(written) = &clauses.static_slots else { return };
                let why = format!("its last static slot is slot {}, and no dynamic segment is described", slots.count);
                (format!("slot {slot} of `{name}` lies behind its static segment"), written.span, why)
            }
            _ => return,
        };
        let message = Diagnostic::new(Rule::SlotImpossible, self.origin.recognition(), text)
            .here("no such slot")
            .remark(self.declared_at(span), why);
        self.messages.push(message.help("correct the slot, or describe the segment: `dynamic up to slot 200`"));
    }

    /// The longest payload that the frame is said to have, and where; where no length is stated, what its signals need.
    fn longest(&self) -> (u32, Site) {
        let pages = self.frame.pages.iter().filter_map(|page| page.length);
        let stated = self.frame.length.into_iter().chain(pages).map(|length| length.max).max();
        match stated {
            Some(bytes) => (bytes, self.length_site()),
            None => {
                let needed = self.frame.signals.iter().map(|signal| signal.needed_bytes()).max();
                (needed.unwrap_or(0), self.origin.name())
            }
        }
    }

    fn length_site(&self) -> Site {
        let items = &self.origin.tree.body.items;
        let stated = items.iter().find(|item| matches!(item.kind, BodyKind::Length(_)));
        stated.map_or_else(|| self.origin.name(), |item| at(self.origin.file, item.span))
    }

    /// Whether the frame fits the static slot that it is in.
    fn static_length(&mut self, slot: u16, timing: &FlexRayTiming) {
        let Some(slots) = timing.static_around(slot) else { return };
        let (bytes, site) = self.longest();
        if bytes <= slots.bytes.into() {
            return;
        }
        let Some(written) = &self.declared.tree.flexray.static_slots else { return };
        let text = format!("`{}` has {bytes} bytes, and slot {slot} has {}", self.frame.label.name, slots.bytes);
        let message = Diagnostic::new(Rule::FrameTooLong, site, text)
            .here("too long for a static slot")
            .remark(self.declared_at(written.span), "the static slots");
        self.messages.push(message.help("correct the length, the slot, or the length of the static slots"));
    }

    /// Whether the frame comes at equal distances although the count of cycles begins anew.
    fn cycles(&mut self, repetition: u8, timing: &FlexRayTiming) {
        if timing.cycles.is_multiple_of(repetition) {
            return;
        }
        let text = format!("{} cycles cannot be divided into runs of {repetition}", timing.cycles);
        let message = Diagnostic::new(Rule::CyclesUneven, self.origin.recognition(), text)
            .here("comes too early when the count begins anew")
            .help("correct the repetition, or say how far the cycles count: `cycle 5 ms numbered 0..49`");
        self.messages.push(match &self.declared.tree.flexray.numbered {
            Some(numbered) => message.remark(self.declared_at(numbered.span), "the count"),
            None => message,
        });
    }

    /// Whether the stated period is one that the frame's turns can give.
    fn period(&mut self, repetition: u8, timing: &FlexRayTiming) {
        let (Some(turn), Some((every, span))) = (timing.turn(repetition), self.stated_period()) else { return };
        let is_fixed = every.shortest.value == every.longest.value;
        let is_right = every.shortest.value >= turn.0 && (!is_fixed || every.shortest.value.is_multiple_of(turn.0));
        if is_right {
            return;
        }
        let text = format!("`{}` has its turn every {}", self.frame.label.name, shown(turn.0));
        let message = Diagnostic::new(Rule::PeriodOffCycle, at(self.origin.file, span), text)
            .here("cannot be sent so often, or not so regularly")
            .remark(self.origin.recognition(), format!("every {repetition} cycles"));
        let Some(cycle) = self.declared.tree.flexray.cycle else { return };
        let message = message.remark(self.declared_at(cycle.span), "the cycle");
        self.messages.push(message.help(format!("a period in a slot is a multiple of {}", shown(turn.0))));
    }

    fn stated_period(&self) -> Option<(tree::PeriodSyntax, Span)> {
        let timings = self.origin.tree.body.items.iter().flat_map(|item| match &item.kind {
            BodyKind::SentBy { timing, .. } | BodyKind::Timing(timing) => timing.as_slice(),
            _ => &[],
        });
        timings.into_iter().find_map(|timing| match &timing.value {
            Timing::Every(every) => Some((*every, timing.span)),
            Timing::EveryWhile { fast, .. } => Some((*fast, timing.span)),
            _ => None,
        })
    }

    /// A frame of CAN XL has a byte at least (ISO 11898-1:2024).
    fn xl_length(&mut self) {
        if self.frame.length.is_none_or(|length| length.min > 0) {
            return;
        }
        let message = Diagnostic::new(Rule::LengthWithoutCode, self.length_site(), "no frame of CAN XL is empty");
        self.messages.push(message.here("1 to 2048 bytes"));
    }

    /// On a network of CAN XL, too, the frames with identifiers are those of CAN and CAN FD.
    fn fd_length(&mut self) {
        let (bytes, site) = self.longest();
        let word = match &self.origin.tree.recognition {
            Some(written) if matches!(written.value, Recognition::Pgn { .. }) => "pgn",
            _ => "id",
        };
        let longest = NetworkKind::CanFd.longest_payload();
        if bytes > longest {
            let text = format!("a frame that is recognised by `{word}` cannot have {bytes} bytes");
            let message = Diagnostic::new(Rule::FrameTooLong, site, text)
                .here(format!("it is a frame of CAN FD and has up to {longest}"));
            self.messages.push(message.help("a longer one is a frame of CAN XL: `xl 0x11223344`"));
            return;
        }
        let lengths = self.frame.length.map(|length| [length.min, length.max]);
        let is_possible = |bytes: &u32| u8::try_from(*bytes).is_ok_and(is_can_fd_length);
        if let Some(bytes) = lengths.into_iter().flatten().find(|bytes| !is_possible(bytes)) {
            let text = format!("no CAN FD frame has {bytes} bytes");
            let message = Diagnostic::new(Rule::LengthWithoutCode, self.length_site(), text);
            self.messages
                .push(message.here("beyond 8 bytes there are only 12, 16, 20, 24, 32, 48 and 64 (ISO 11898-1)"));
        }
    }
}
