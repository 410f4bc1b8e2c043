//! Cycle and slots of FlexRay networks, and the periods that follow from them.

use wirelore_bits::flexray::{HEADER_BYTES, TRAILER_BYTES};
use wirelore_model::{
    Description, FLEXRAY_CYCLES, FlexRayTiming, Identifier, Nanoseconds, NetworkKind, Period, StaticSlots,
};

use crate::syntax::tree::{self, Integer};
use crate::{Diagnostic, Rule, Site, Spanned};

use super::catalogue::Sourced;
use super::elsewhere::LARGEST_SLOT;
use super::messages::{Messages, at, clause_does_not_fit};
use super::timing::shown;

/// The limits of FlexRay 2.1A, from memory: the longest cycle (gdCycle), the static slots (gNumberOfStaticSlots) and their payload
/// (gPayloadLengthStatic).
const LONGEST_CYCLE: u64 = 16_000_000;
const STATIC_SLOTS: std::ops::RangeInclusive<u16> = 2..=1023;
const LONGEST_PAYLOAD: u16 = 254;

/// Reads what a network line says of cycle and slots; `None` where it says nothing.
pub(super) fn timing(sourced: &Sourced<'_, tree::Network<'_>>, messages: &mut Messages) -> Option<FlexRayTiming> {
    let written = &sourced.tree.flexray;
    let clauses = [
        written.cycle.map(|cycle| cycle.span),
        written.static_slots.as_ref().map(|slots| slots.span),
        written.dynamic.as_ref().map(|dynamic| dynamic.span),
    ];
    let first = clauses.into_iter().flatten().min()?;
    let kind = sourced.tree.kind?;
    if kind.value != NetworkKind::FlexRay {
        let text = format!("a `{}` network has no cycles and slots", kind.value.keyword());
        let clause = at(sourced.file, first);
        let remark = (at(sourced.file, kind.span), NetworkKind::FlexRay);
        messages.push(clause_does_not_fit(clause, text, "only FlexRay divides its time like this", remark));
        return None;
    }
    let mut reader = Reader { sourced, messages };
    let static_slots = written.static_slots.as_ref().and_then(|slots| reader.static_slots(slots));
    let timing = FlexRayTiming {
        cycle: written.cycle.and_then(|cycle| reader.cycle(cycle)),
        cycles: written.numbered.as_ref().map_or(FLEXRAY_CYCLES, |numbers| reader.cycles(numbers)),
        static_slots,
        last_dynamic_slot: written.dynamic.as_ref().and_then(|last| reader.last_dynamic(&last.value, static_slots)),
    };
    reader.fits(&timing);
    Some(timing)
}

struct Reader<'a, 't> {
    sourced: &'a Sourced<'t, tree::Network<'t>>,
    messages: &'a mut Messages,
}

impl Reader<'_, '_> {
    fn site(&self, span: crate::Span) -> Site {
        at(self.sourced.file, span)
    }

    fn impossible(&mut self, span: crate::Span, text: String, possible: &str) {
        let message = Diagnostic::new(Rule::SlotImpossible, self.site(span), text);
        self.messages.push(message.here(possible));
    }

    fn cycle(&mut self, cycle: tree::Time) -> Option<Nanoseconds> {
        let text = match cycle.value {
            1..=LONGEST_CYCLE => return Some(Nanoseconds(cycle.value)),
            _ => format!("a FlexRay cycle cannot take {}", shown(cycle.value)),
        };
        self.impossible(cycle.span, text, "up to 16 ms");
        None
    }

    /// How many cycles are counted.
    fn cycles(&mut self, numbers: &Spanned<(Integer, Integer)>) -> u8 {
        let (first, last) = (&numbers.value.0, &numbers.value.1);
        let count = u8::try_from(last.value).ok().filter(|last| *last < FLEXRAY_CYCLES).map(|last| last + 1);
        if let Some(count) = count.filter(|_| first.value == 0) {
            return count;
        }
        let text = format!("the cycles of FlexRay are not numbered {} to {}", first.value, last.value);
        self.impossible(first.span.to(last.span), text, "from 0 to 63, or to a smaller number");
        FLEXRAY_CYCLES
    }

    fn static_slots(&mut self, slots: &Spanned<(Integer, Integer)>) -> Option<StaticSlots> {
        let (count, bytes) = (&slots.value.0, &slots.value.1);
        let number = u16::try_from(count.value).ok().filter(|count| STATIC_SLOTS.contains(count));
        if number.is_none() {
            let text = format!("a cycle cannot have {} static slots", count.value);
            self.impossible(count.span, text, "2 to 1023");
        }
        let is_possible = |bytes: &u16| *bytes <= LONGEST_PAYLOAD && bytes.is_multiple_of(2);
        let length = u16::try_from(bytes.value).ok().filter(is_possible);
        if length.is_none() {
            let text = format!("a static slot cannot have {} bytes", bytes.value);
            self.impossible(bytes.span, text, "an even number up to 254");
        }
        Some(StaticSlots { count: number?, bytes: length? })
    }

    fn last_dynamic(&mut self, last: &Integer, before: Option<StaticSlots>) -> Option<u16> {
        let least = before.map_or(1, |slots| slots.count + 1);
        let number = u16::try_from(last.value).ok().filter(|last| (least..=LARGEST_SLOT).contains(last));
        if number.is_none() {
            let text = format!("the dynamic segment cannot end with slot {}", last.value);
            self.impossible(last.span, text, &format!("{least} to {LARGEST_SLOT}: it begins behind the static slots"));
        }
        number
    }

    /// Whether the static slots have room in a cycle.
    fn fits(&mut self, timing: &FlexRayTiming) {
        let tree = self.sourced.tree;
        let (Some(cycle), Some(slots), Some(rate)) = (timing.cycle, timing.static_slots, tree.rate) else { return };
        let bits = u128::from(slots.count) * u128::from(least_bits(slots.bytes));
        let needed_ns = (bits * 1_000_000_000).checked_div(rate.value.into()).unwrap_or(0);
        if needed_ns <= cycle.0.into() {
            return;
        }
        let (Some(cycle_at), Some(slots_at)) = (tree.flexray.cycle, &tree.flexray.static_slots) else { return };
        let needed = shown(u64::try_from(needed_ns / 1000 * 1000).unwrap_or(u64::MAX));
        let text = format!("{} static slots of {} bytes need at least {needed}", slots.count, slots.bytes);
        let message = Diagnostic::new(Rule::CycleTooShort, self.site(slots_at.span), text)
            .here("more than a cycle has")
            .remark(self.site(cycle_at.span), format!("a cycle takes {}", shown(cycle.0)));
        self.messages.push(message.help("correct the cycle, the number of slots or their length"));
    }
}

/// The bits on the wire of a static frame, at the very least: each byte has two bits in front of it; the shortest start of transmission,
/// the frame's start and its end have 3, 1 and 2 bits (FlexRay 2.1A, from memory).
fn least_bits(payload_bytes: u16) -> u64 {
    const AROUND: u64 = 3 + 1 + 2;
    10 * (u64::from(payload_bytes) + (HEADER_BYTES + TRAILER_BYTES) as u64) + AROUND
}

/// A frame in a static slot whose timing is not stated comes whenever its turn comes.
pub(super) fn fill_periods(description: &mut Description) {
    let Description { frames, networks, .. } = description;
    for frame in frames {
        let sending = &mut frame.sending;
        let is_stated = sending.every.is_some() || sending.on_change || sending.on_request;
        let Some(home) = frame.seen_on.first().filter(|_| !is_stated) else { continue };
        let (Identifier::FlexRay { slot, repetition, .. }, Some(timing)) =
            (&home.identifier, &networks[home.network.index()].flexray)
        else {
            continue;
        };
        let turn = timing.static_around(*slot).and_then(|_| timing.turn(*repetition));
        sending.every = turn.map(|turn| Period { shortest: turn, longest: turn });
    }
}
