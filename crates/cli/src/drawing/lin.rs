//! What is said of a LIN frame beside its picture: how it is on the wire, which frames it stands for, its slots.

use std::fmt::Write;

use wirelore_bits::lin;
use wirelore_model::{Database, Frame, FrameId, Identifier, Schedule, SlotContent};

use super::words::time_text;

/// Protected identifier and kind of checksum.
pub(super) fn facts(frame: &Frame) -> Vec<String> {
    match &frame.seen_on[0].identifier {
        Identifier::Lin { id, checksum, .. } => {
            vec![format!("protected identifier 0x{:02X}", lin::protected(*id)), format!("{} checksum", checksum.word())]
        }
        _ => Vec::new(),
    }
}

/// Events and schedules, a line each.
pub(super) fn push_lines(text: &mut String, database: &Database, frame: &Frame) {
    let name = |id: &FrameId| database.frames[id.index()].label.name.as_str();
    let Some((own, _)) = database.frame_named(&frame.label.name) else { return };
    if let Identifier::Lin { stands_for, .. } = &frame.seen_on[0].identifier
        && !stands_for.is_empty()
    {
        let names = stands_for.iter().map(name).collect::<Vec<_>>().join(" or ");
        let _ = writeln!(text, "  event-triggered: the answer is {names}, told by its first byte");
    }
    let events = database.frames.iter().filter(
        |other| matches!(&other.seen_on[0].identifier, Identifier::Lin { stands_for, .. } if stands_for.contains(&own)),
    );
    for event in events {
        let _ = writeln!(text, "  also an answer to {}", event.label.name);
    }
    for schedule in &database.schedules {
        let slots = slots_text(schedule, own);
        if !slots.is_empty() {
            let _ = writeln!(text, "  in schedule {}: {}", schedule.label.name, slots.join(", "));
        }
    }
}

/// The slots of a frame in a schedule, then how often a round of it comes.
fn slots_text(schedule: &Schedule, frame: FrameId) -> Vec<String> {
    let slot = |slot: &wirelore_model::Slot| {
        let mut words = match slot.takes {
            Some(takes) => format!("a slot of {}", time_text(takes)),
            None => "a slot".to_owned(),
        };
        if let Some(every) = slot.every {
            let _ = write!(words, " every {}", time_text(every));
        }
        if matches!(slot.content, SlotContent::Sporadic(_)) {
            words.push_str(", sporadic");
        }
        words
    };
    let mut slots: Vec<String> = schedule.slots_of(frame).map(slot).collect();
    if let Some(round) = schedule.round().filter(|_| !slots.is_empty()) {
        slots.push(format!("in a round of {}", time_text(round)));
    }
    slots
}
