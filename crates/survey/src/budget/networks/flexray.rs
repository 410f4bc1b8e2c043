//! FlexRay: how many of its slots are used, over all cycles that are counted.

use wirelore_model::{Database, FlexRayChannels, FlexRayTiming, FrameId, Identifier, Nanoseconds, NetworkId};

/// How the slots of one channel are used.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ChannelUse {
    /// Static slots with a frame, over all cycles.
    pub static_used: u64,
    /// All static slots, over all cycles; 0 where they are not described.
    pub static_all: u64,
    /// Dynamic slots with a frame, in the fullest cycle.
    pub dynamic_used: u64,
    /// All dynamic slots of a cycle; 0 where they are not described.
    pub dynamic_all: u64,
    /// The fullest cycle, the first of them.
    pub fullest_cycle: u8,
}

/// The use of a FlexRay network.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SlotsUse {
    /// How many cycles are counted.
    pub cycles: u8,
    /// How long one takes.
    pub cycle: Option<Nanoseconds>,
    /// Channels A and B.
    pub channels: [ChannelUse; 2],
    /// Each frame: how often it is sent in all the cycles, both channels together.
    pub frames: Vec<(FrameId, u64)>,
}

impl ChannelUse {
    /// The part of the static slots that is used.
    #[must_use]
    pub fn static_share(&self) -> Option<f64> {
        (self.static_all > 0).then(|| self.static_used as f64 / self.static_all as f64)
    }
}

pub(super) fn slots(database: &Database, id: NetworkId) -> SlotsUse {
    let timing = database.networks[id.index()].flexray.unwrap_or_default();
    let frames = frames_of(database, id);
    let channels = [false, true].map(|on_b| channel(timing, &frames, on_b));
    let times = |frame: &SlotFrame| {
        let cycles = (0..timing.cycles).filter(|cycle| frame.is_sent_in(*cycle)).count() as u64;
        (frame.id, cycles * if frame.channels == FlexRayChannels::Both { 2 } else { 1 })
    };
    SlotsUse { cycles: timing.cycles, cycle: timing.cycle, channels, frames: frames.iter().map(times).collect() }
}

/// Where a frame is sent.
struct SlotFrame {
    id: FrameId,
    slot: u16,
    first_cycle: u8,
    repetition: u8,
    channels: FlexRayChannels,
}

impl SlotFrame {
    fn is_sent_in(&self, cycle: u8) -> bool {
        cycle.checked_rem(self.repetition) == Some(self.first_cycle)
    }

    fn is_on(&self, on_b: bool) -> bool {
        match self.channels {
            FlexRayChannels::A => !on_b,
            FlexRayChannels::B => on_b,
            FlexRayChannels::Both => true,
        }
    }
}

fn frames_of(database: &Database, network: NetworkId) -> Vec<SlotFrame> {
    let mut frames = Vec::new();
    for (frame, id) in database.frames.iter().zip((0..).map(FrameId)) {
        for seen in frame.seen_on.iter().filter(|seen| seen.network == network) {
            if let Identifier::FlexRay { slot, first_cycle, repetition, channels } = seen.identifier {
                frames.push(SlotFrame { id, slot, first_cycle, repetition, channels });
            }
        }
    }
    frames
}

fn channel(timing: FlexRayTiming, frames: &[SlotFrame], on_b: bool) -> ChannelUse {
    let static_count = timing.static_slots.map_or(0, |slots| slots.count);
    let own: Vec<&SlotFrame> = frames.iter().filter(|frame| frame.is_on(on_b)).collect();
    let mut found = ChannelUse {
        static_all: u64::from(static_count) * u64::from(timing.cycles),
        dynamic_all: timing.last_dynamic_slot.map_or(0, |last| u64::from(last.saturating_sub(static_count))),
        ..ChannelUse::default()
    };
    for cycle in 0..timing.cycles {
        let (mut fixed, mut dynamic) = (Vec::new(), Vec::new());
        for frame in own.iter().filter(|frame| frame.is_sent_in(cycle)) {
            if timing.static_around(frame.slot).is_some() { fixed.push(frame.slot) } else { dynamic.push(frame.slot) }
        }
        found.static_used += different(fixed);
        let dynamic = different(dynamic);
        if dynamic > found.dynamic_used {
            (found.dynamic_used, found.fullest_cycle) = (dynamic, cycle);
        }
    }
    found
}

fn different(mut slots: Vec<u16>) -> u64 {
    slots.sort_unstable();
    slots.dedup();
    slots.len() as u64
}
