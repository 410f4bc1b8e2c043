//! Schedules: in which order, and at which times, the commander of a LIN network sends its headers.

use serde::{Deserialize, Serialize};

use crate::{FrameId, Label, Nanoseconds, NetworkId};

/// One schedule of a LIN network.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Schedule {
    /// Name, title and notes.
    pub label: Label,
    /// The network.
    pub network: NetworkId,
    /// The beat of the commander: every slot begins on it.
    pub time_base: Option<Nanoseconds>,
    /// How late a header may begin in its slot.
    pub jitter: Option<Nanoseconds>,
    /// The slots, in their order; never empty.
    pub slots: Vec<Slot>,
}

impl Schedule {
    /// How long one round takes; `None` where a slot's length is not stated.
    #[must_use]
    pub fn round(&self) -> Option<Nanoseconds> {
        let add = |sum: u64, slot: &Slot| Some(sum.saturating_add(slot.takes?.0));
        self.slots.iter().try_fold(0, add).map(Nanoseconds)
    }

    /// The slots in which a frame may be sent.
    pub fn slots_of(&self, frame: FrameId) -> impl Iterator<Item = &Slot> {
        self.slots.iter().filter(move |slot| slot.content.frames().contains(&frame))
    }
}

/// One slot of a schedule.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Slot {
    /// What is sent in it.
    pub content: SlotContent,
    /// From its beginning to that of the next one.
    pub takes: Option<Nanoseconds>,
    /// How often it comes, where that is stated.
    pub every: Option<Nanoseconds>,
}

/// What is sent in a slot.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SlotContent {
    /// The header of one frame.
    Frame(FrameId),
    /// The first of these frames that has something new to say, or nothing (sporadic frames); never empty.
    Sporadic(Vec<FrameId>),
}

impl SlotContent {
    /// The frames that may be sent.
    #[must_use]
    pub fn frames(&self) -> &[FrameId] {
        match self {
            Self::Frame(frame) => std::slice::from_ref(frame),
            Self::Sporadic(frames) => frames,
        }
    }
}
