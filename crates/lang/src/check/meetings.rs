//! Frames that are recognised by several things at once: can one frame on the wire be two of them?
//!
//! Whatever a description leaves open counts as all there is. Each place that a frame on the wire can have (a cycle on a channel, an
//! instance with an operation, a priority) has one owner, so that the work grows with the frames and not with their pairs.

use rustc_hash::FxHashMap;
use wirelore_model::{FLEXRAY_CYCLES, FlexRayChannels, Identifier};

use super::ids::{Seen, say};
use crate::resolve::messages::Messages;

/// What all the frames have in common that may meet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum Common {
    Slot(u16),
    Function(u8, u16),
    Acceptance(u32),
}

const INSTANCES: usize = 256;
const OPERATIONS: usize = 16;
const XL_PRIORITIES: usize = 0x800;

impl Common {
    fn of(identifier: &Identifier) -> Option<Self> {
        match identifier {
            Identifier::FlexRay { slot, .. } => Some(Self::Slot(*slot)),
            Identifier::Most { block, function, .. } => Some(Self::Function(*block, *function)),
            Identifier::Xl { acceptance, .. } => Some(Self::Acceptance(*acceptance)),
            _ => None,
        }
    }

    /// How many places there are.
    fn places(self) -> usize {
        match self {
            Self::Slot(_) => 2 * usize::from(FLEXRAY_CYCLES),
            Self::Function(..) => INSTANCES * OPERATIONS,
            Self::Acceptance(_) => XL_PRIORITIES,
        }
    }

    /// What stands at a place, for the message.
    fn place_text(self, place: usize) -> String {
        match self {
            Self::Slot(slot) => {
                let cycles = usize::from(FLEXRAY_CYCLES);
                let channel = if place < cycles { 'a' } else { 'b' };
                format!("slot {slot} in cycle {} on channel {channel}", place % cycles)
            }
            Self::Function(block, function) => {
                let (instance, operation) = (place / OPERATIONS, place % OPERATIONS);
                format!("function {block:#04X}.{instance:#04X}.0x{function:03X} with operation {operation:#X}")
            }
            Self::Acceptance(acceptance) => format!("acceptance field {acceptance:#010X} with priority {place:#X}"),
        }
    }
}

/// Tells which frames of a network can meet.
pub(super) fn check(frames: &[(&Identifier, Seen<'_>)], network: &str, messages: &mut Messages) {
    let mut groups: FxHashMap<Common, Vec<usize>> = FxHashMap::default();
    for (index, (identifier, _)) in frames.iter().enumerate() {
        if let Some(common) = Common::of(identifier) {
            groups.entry(common).or_default().push(index);
        }
    }
    for (index, (identifier, _)) in frames.iter().enumerate() {
        let Some(common) = Common::of(identifier) else { continue };
        let members = &groups[&common];
        // Each group is dealt with once, where its first frame stands.
        if members.len() > 1 && members[0] == index {
            apart(frames, common, members, network, messages);
        }
    }
}

/// Frames of one group: no place may belong to two of them.
fn apart(
    frames: &[(&Identifier, Seen<'_>)],
    common: Common,
    members: &[usize],
    network: &str,
    messages: &mut Messages,
) {
    let mut owners: Vec<Option<usize>> = vec![None; common.places()];
    for &index in members {
        let (identifier, seen) = frames[index];
        let mut told = None;
        each_place(identifier, |place| match owners[place] {
            Some(owner) => told = told.or(Some((owner, place))),
            None => owners[place] = Some(index),
        });
        if let Some((owner, place)) = told {
            say(seen, frames[owner].1, &common.place_text(place), network, messages);
        }
    }
}

fn each_place(identifier: &Identifier, mut place: impl FnMut(usize)) {
    match identifier {
        Identifier::FlexRay { first_cycle, repetition, channels, .. } => {
            let cycles = usize::from(FLEXRAY_CYCLES);
            let first_channel = usize::from(*channels == FlexRayChannels::B);
            let last_channel = usize::from(*channels != FlexRayChannels::A);
            for channel in first_channel..=last_channel {
                let own = (usize::from(*first_cycle)..cycles).step_by(usize::from(*repetition).max(1));
                own.for_each(|cycle| place(channel * cycles + cycle));
            }
        }
        Identifier::Most { instance, operation, .. } => {
            for instance in one_or_all(instance.map(usize::from), INSTANCES) {
                for operation in one_or_all(operation.map(usize::from), OPERATIONS) {
                    place(instance * OPERATIONS + operation);
                }
            }
        }
        Identifier::Xl { priority, .. } => one_or_all(priority.map(usize::from), XL_PRIORITIES).for_each(place),
        _ => {}
    }
}

fn one_or_all(one: Option<usize>, all: usize) -> std::ops::Range<usize> {
    one.map_or(0..all, |one| one..one + 1)
}
