//! How frames of FlexRay, MOST and CAN XL are recognised.

use wirelore_model::{FLEXRAY_REPETITIONS, FlexRayChannels, Identifier};

use crate::syntax::tree::{Integer, Recognition};
use crate::{Diagnostic, FileId, Rule};

use super::messages::{Messages, at};

/// The largest slot number (FlexRay 2.1A, from memory): 11 bits.
pub(super) const LARGEST_SLOT: u16 = 2047;

/// The largest priority of CAN XL (ISO 11898-1:2024): 11 bits.
const LARGEST_XL_PRIORITY: u16 = 0x7FF;

/// The last place on the largest MOST ring, which has 64 nodes (MOST Specification 3.0, from memory).
const LAST_RING_POSITION: u8 = 63;

/// Reads what frames of these networks are recognised by. `None` where it makes no sense; a message says so.
pub(super) fn identifier(written: &Recognition, file: FileId, messages: &mut Messages) -> Option<Identifier> {
    match written {
        Recognition::Xl { acceptance, priority } => {
            let number = number(acceptance, u32::MAX, "acceptance field", file, messages);
            let priority = optional(priority, LARGEST_XL_PRIORITY, "priority of CAN XL", file, messages);
            Some(Identifier::Xl { acceptance: number?, priority: priority? })
        }
        Recognition::Slot { slot, first_cycle, repetition, channels } => {
            self::slot(slot, first_cycle.as_ref(), repetition.as_ref(), *channels, file, messages)
        }
        Recognition::Function { block, instance, function, operation } => {
            let block = number(block, u8::MAX, "function block", file, messages);
            let instance = optional(instance, u8::MAX, "instance", file, messages);
            let function = number(function, 0xFFF_u16, "function", file, messages);
            let operation = optional(operation, 0xF_u8, "operation", file, messages);
            Some(Identifier::Most { block: block?, instance: instance?, function: function?, operation: operation? })
        }
        _ => None,
    }
}

/// A number from 0 to the largest there is.
fn number<T>(written: &Integer, most: T, what: &str, file: FileId, messages: &mut Messages) -> Option<T>
where
    T: TryFrom<i128> + PartialOrd + std::fmt::UpperHex,
{
    let number = T::try_from(written.value).ok().filter(|number| *number <= most);
    if number.is_none() {
        let text = format!("no {what} has this number");
        let message = Diagnostic::new(Rule::IdTooLarge, at(file, written.span), text);
        messages.push(message.here(format!("0 to {most:#X}")));
    }
    number
}

/// The same where the number may be left out: `Some(None)`.
fn optional<T>(
    written: &Option<Integer>,
    most: T,
    what: &str,
    file: FileId,
    messages: &mut Messages,
) -> Option<Option<T>>
where
    T: TryFrom<i128> + PartialOrd + std::fmt::UpperHex,
{
    written.as_ref().map_or(Some(None), |written| number(written, most, what, file, messages).map(Some))
}

fn slot(
    slot: &Integer,
    first_cycle: Option<&Integer>,
    repetition: Option<&Integer>,
    channels: FlexRayChannels,
    file: FileId,
    messages: &mut Messages,
) -> Option<Identifier> {
    let number = u16::try_from(slot.value).ok().filter(|slot| (1..=LARGEST_SLOT).contains(slot));
    if number.is_none() {
        let text = format!("FlexRay has no slot {}", slot.value);
        let message = Diagnostic::new(Rule::SlotImpossible, at(file, slot.span), text);
        messages.push(message.here(format!("1 to {LARGEST_SLOT}")));
    }
    let every = repetition.map_or(Some(1), |written| self::repetition(written, file, messages))?;
    let first = first_cycle.map_or(0, |first| first.value);
    let Some(first) = u8::try_from(first).ok().filter(|first| *first < every) else {
        let span = first_cycle.map_or(slot.span, |first| first.span);
        let text = format!("a frame of every {every} cycles cannot begin with cycle {first}");
        let message = Diagnostic::new(Rule::SlotImpossible, at(file, span), text);
        let message = message.here(format!("0 to {}", every - 1));
        messages.push(match repetition {
            Some(repetition) if first > 0 => message
                .remark(at(file, repetition.span), "it comes again after so many cycles")
                .help(format!("cycles count from 0; its first one is cycle {}", first % i128::from(every))),
            _ => message,
        });
        return None;
    };
    Some(Identifier::FlexRay { slot: number?, first_cycle: first, repetition: every, channels })
}

fn repetition(written: &Integer, file: FileId, messages: &mut Messages) -> Option<u8> {
    let every = u8::try_from(written.value).ok().filter(|every| FLEXRAY_REPETITIONS.contains(every));
    if every.is_none() {
        let text = format!("a FlexRay frame cannot come every {} cycles", written.value);
        let message = Diagnostic::new(Rule::SlotImpossible, at(file, written.span), text);
        messages.push(message.here("1, 2, 4, 8, 16, 32 or 64; later versions also 5, 10, 20, 40 or 50").help(
            "a frame that is sent in several runs of cycles is several frames: describe each, and what they share as a layout",
        ));
    }
    every
}

/// Reads a place on a ring.
pub(super) fn ring_position(written: &Integer, file: FileId, messages: &mut Messages) -> Option<u8> {
    let position = u8::try_from(written.value).ok().filter(|position| *position <= LAST_RING_POSITION);
    if position.is_none() {
        let text = format!("no unit can have the ring position {}", written.value);
        let message = Diagnostic::new(Rule::RingPosition, at(file, written.span), text);
        messages.push(message.here(format!("0 (the timing master) to {LAST_RING_POSITION}")));
    }
    position
}
