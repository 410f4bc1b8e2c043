//! Event-triggered frames of LIN: can the frames answer that they stand for?

use rustc_hash::FxHashMap;
use wirelore_model::{EcuId, Frame, FrameId, Identifier, LengthRange, LinChecksum, NetworkId, Schedule};

use super::lin::in_words;
use super::occupancy::Bits;
use crate::resolve::Resolved;
use crate::resolve::frame::FrameOrigin;
use crate::resolve::messages::{Messages, at};
use crate::resolve::schedules::ScheduleOrigin;
use crate::{Diagnostic, Rule, Site};

/// An event-triggered frame stands for frames of its own network that look alike (LIN 2.2A, section 2.3.3.2).
pub(super) fn check(
    resolved: &Resolved<'_>,
    (frame, origin): (&Frame, &FrameOrigin<'_>),
    (network, checksum): (NetworkId, LinChecksum),
    stands_for: &[FrameId],
    messages: &mut Messages,
) {
    let name = &frame.label.name;
    let mut say = |site: Site, text: String, here: String, help: &str| {
        messages.push(Diagnostic::new(Rule::StandsForImpossible, site, text).here(here).help(help));
    };
    if let Some(signal) = frame.signals.first() {
        say(
            origin.name(),
            format!("`{name}` stands for other frames and has signals of its own"),
            format!("has the signal `{}`", signal.label.name),
            "its answers are those of the frames that it stands for: describe the signals there",
        );
    }
    let mut alike: Option<(&str, LengthRange)> = None;
    let first_byte = Bits::of_bytes(0..1);
    for (&id, word) in stands_for.iter().zip(&origin.tree.stands_for) {
        let (other, site) = (&resolved.description.frames[id.index()], at(origin.file, word.span));
        let Some(seen) = other.seen_on.iter().find(|seen| seen.network == network) else {
            if !other.seen_on.is_empty() {
                let text = format!("`{}` is not on the network of `{name}`", word.value);
                say(
                    site,
                    text,
                    "on another network".to_owned(),
                    "an event-triggered frame stands for frames of its own network",
                );
            }
            continue;
        };
        match &seen.identifier {
            Identifier::Lin { stands_for, .. } if !stands_for.is_empty() => {
                let text = format!("`{}` stands for other frames itself", word.value);
                say(site, text, "event-triggered too".to_owned(), "name the frames that carry the data");
            }
            Identifier::Lin { checksum: other, .. } if *other != checksum => {
                let text = format!(
                    "`{}` has the {} checksum, and `{name}` the {} one",
                    word.value,
                    other.word(),
                    checksum.word()
                );
                say(
                    site,
                    text,
                    "another checksum".to_owned(),
                    "all frames of one event have the same kind of checksum",
                );
            }
            _ => {}
        }
        if let Some(signal) = other.signals.iter().find(|signal| Bits::of_signal(signal, 1).meets(&first_byte)) {
            let text = format!("`{}` has the signal `{}` in its first byte", word.value, signal.label.name);
            say(
                site,
                text,
                "byte 0 is the protected identifier".to_owned(),
                "the first byte of an answer says which frame it is: begin with byte 1, or write `unused byte 0`",
            );
        }
        let Some(length) = other.length else { continue };
        let (first, expected) = *alike.get_or_insert((&word.value, length));
        if expected != length {
            let text = format!("`{}` has {} bytes, and `{first}` {}", word.value, in_words(length), in_words(expected));
            say(
                site,
                text,
                "another length".to_owned(),
                "all frames of one event have the same length, and the protected identifier in their first byte",
            );
        }
    }
    answers_of_one_unit(resolved, origin, stands_for, messages);
}

/// Answers to one event come from different units (LIN 2.2A, section 2.3.3.2, from memory).
fn answers_of_one_unit(
    resolved: &Resolved<'_>,
    origin: &FrameOrigin<'_>,
    stands_for: &[FrameId],
    messages: &mut Messages,
) {
    let mut first_of: FxHashMap<EcuId, FrameId> = FxHashMap::default();
    let description = &resolved.description;
    for (&id, word) in stands_for.iter().zip(&origin.tree.stands_for) {
        for &sender in &description.frames[id.index()].senders {
            let first = *first_of.entry(sender).or_insert(id);
            if first == id {
                continue;
            }
            let (sender, first) = (&description.ecus[sender.index()], &description.frames[first.index()]);
            let text = format!("`{}` and `{}` are both sent by `{}`", first.label.name, word.value, sender.label.name);
            messages.push(
                Diagnostic::new(Rule::SenderOutOfTurn, at(origin.file, word.span), text)
                    .here("another answer of the same unit")
                    .help("each unit has one answer to an event; correct who sends which frame"),
            );
        }
    }
}

/// An answer has no slot of its own where its event has one: in that schedule the unit would never know which of the two headers its news
/// went out with (LIN 2.2A, section 2.3.3.2, from memory: "not be included in the same schedule table").
pub(super) fn answers_with_slots(
    resolved: &Resolved<'_>,
    schedule: &Schedule,
    origin: &ScheduleOrigin<'_>,
    messages: &mut Messages,
) {
    let frames = &resolved.description.frames;
    let mut event_of: FxHashMap<FrameId, FrameId> = FxHashMap::default();
    for &event in schedule.slots.iter().flat_map(|slot| slot.content.frames()) {
        let identifier = frames[event.index()].seen_on.first().map(|seen| &seen.identifier);
        let Some(Identifier::Lin { stands_for, .. }) = identifier else { continue };
        for &answer in stands_for {
            event_of.entry(answer).or_insert(event);
        }
    }
    for (slot, written) in schedule.slots.iter().zip(&origin.slots) {
        for &answer in slot.content.frames() {
            // Told once, however many slots it has.
            let Some(event) = event_of.remove(&answer) else { continue };
            let (answer, event) = (&frames[answer.index()].label.name, &frames[event.index()].label.name);
            let name = written.frames.iter().find(|name| name.value == answer.as_str());
            let site = at(origin.file, name.map_or(written.span, |name| name.span));
            let text = format!("`{answer}` has a slot beside `{event}`, which stands for it");
            messages.push(Diagnostic::new(Rule::AnswerHasSlot, site, text).here("an answer to that event").help(
                "put it into another schedule: the commander changes to that one when two have answered at once",
            ));
        }
    }
}
