//! How the time of a FlexRay network is divided: cycles, and the slots in each.

use serde::{Deserialize, Serialize};

use crate::Nanoseconds;

/// What is stated of a FlexRay network's cycle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FlexRayTiming {
    /// How long a cycle takes.
    pub cycle: Option<Nanoseconds>,
    /// How many cycles are counted before the count begins anew: 1..=64.
    pub cycles: u8,
    /// The slots of the static segment.
    pub static_slots: Option<StaticSlots>,
    /// The last slot of the dynamic segment, behind the static ones.
    pub last_dynamic_slot: Option<u16>,
}

/// The static segment: slots of one length, in every cycle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StaticSlots {
    /// How many there are; the first one has number 1.
    pub count: u16,
    /// How many payload bytes each has: an even number of up to 254.
    pub bytes: u16,
}

/// How many cycles FlexRay 2.1A counts, and later versions at most.
pub const FLEXRAY_CYCLES: u8 = 64;

/// Every how many cycles a frame can be sent (2.1A: the powers of two; 3.0.1 adds the others).
pub const FLEXRAY_REPETITIONS: [u8; 12] = [1, 2, 4, 5, 8, 10, 16, 20, 32, 40, 50, 64];

impl Default for FlexRayTiming {
    fn default() -> Self {
        Self { cycle: None, cycles: FLEXRAY_CYCLES, static_slots: None, last_dynamic_slot: None }
    }
}

impl FlexRayTiming {
    /// The static segment, if this slot lies in it. `None` also where it is not stated.
    #[must_use]
    pub fn static_around(&self, slot: u16) -> Option<StaticSlots> {
        self.static_slots.filter(|slots| (1..=slots.count).contains(&slot))
    }

    /// How long it is from one turn to the next of a frame that may be sent every so many cycles.
    #[must_use]
    pub fn turn(&self, repetition: u8) -> Option<Nanoseconds> {
        self.cycle.and_then(|cycle| cycle.0.checked_mul(repetition.into())).map(Nanoseconds)
    }
}
