//! LIN networks: each schedule with its round, its slots, and how much of them the frames take.

use wirelore_bits::lin;
use wirelore_model::{
    Database, EcuId, Frame, FrameId, Identifier, Nanoseconds, Network, NetworkId, Schedule, Slot, SlotContent,
};

use super::super::cost::Spread;
use super::super::stream::{NS_PER_S, Stream, Timing};

/// One schedule.
#[derive(Debug, Clone, PartialEq)]
pub struct ScheduleUse {
    /// Its position in [`wirelore_model::Description::schedules`].
    pub schedule: usize,
    /// How long one round takes, where the slots tell.
    pub round: Option<Nanoseconds>,
    /// Its slots, in their order.
    pub slots: Vec<SlotUse>,
    /// The part of the time that frames take; `None` where the slots have no times or the network no rate.
    pub share: Option<Spread>,
}

/// One slot.
#[derive(Debug, Clone, PartialEq)]
pub struct SlotUse {
    /// The frame; of a sporadic slot the longest of those that may be sent.
    pub frame: FrameId,
    /// Nothing may be sent.
    pub is_sporadic: bool,
    /// The data bytes of the longest answer.
    pub bytes: u32,
    /// How long the slot is.
    pub takes: Option<Nanoseconds>,
    /// How often it comes: as is stated, else once a round.
    pub every: Option<Nanoseconds>,
    /// How long its frame takes, in seconds: nominal, and at most.
    pub seconds: Option<Spread>,
}

impl SlotUse {
    /// The part of the slot that the frame takes.
    #[must_use]
    pub fn share_of_slot(&self) -> Option<Spread> {
        let slot_s = self.takes?.0 as f64 / NS_PER_S;
        self.seconds.map(|time| Spread {
            least: time.least / slot_s,
            expected: time.expected / slot_s,
            most: time.most / slot_s,
        })
    }

    /// The same frame as a stream, if it is known how often the slot comes.
    pub(super) fn stream(&self, database: &Database, network: NetworkId) -> Option<Stream> {
        let frame = &database.frames[self.frame.index()];
        let every = self.every?;
        let appearance = frame.seen_on.iter().position(|seen| seen.network == network)?;
        let per_s = NS_PER_S / every.0 as f64;
        Some(Stream {
            frame: self.frame,
            network,
            appearance,
            source: None,
            page: None,
            senders: senders_of(database, frame),
            via: None,
            rank: None,
            bytes: self.bytes,
            length_is_stated: frame.length.is_some(),
            parts: 1,
            timing: Timing {
                usual_per_s: if self.is_sporadic { 0.0 } else { per_s },
                shortest: every,
                jitter: Nanoseconds(0),
                deadline: frame.sending.timeout.unwrap_or(every),
                is_open: false,
            },
        })
    }
}

/// Who may answer: for an event-triggered frame those of the frames that it stands for.
fn senders_of(database: &Database, frame: &Frame) -> Vec<EcuId> {
    let stands_for = frame.seen_on.iter().flat_map(|seen| match &seen.identifier {
        Identifier::Lin { stands_for, .. } => stands_for.as_slice(),
        _ => &[],
    });
    let mut senders = frame.senders.clone();
    for id in stands_for {
        let others = &database.frames[id.index()].senders;
        senders.extend(others.iter().filter(|ecu| !frame.senders.contains(ecu)));
    }
    senders.dedup();
    senders
}

/// The schedules of a network.
pub(super) fn schedules(database: &Database, id: NetworkId) -> Vec<ScheduleUse> {
    let network = &database.networks[id.index()];
    let own = database.schedules.iter().enumerate().filter(|(_, schedule)| schedule.network == id);
    own.map(|(at, schedule)| schedule_use(database, network, at, schedule)).collect()
}

fn schedule_use(database: &Database, network: &Network, at: usize, schedule: &Schedule) -> ScheduleUse {
    let round = schedule.round();
    let slots: Vec<SlotUse> = schedule.slots.iter().map(|slot| slot_use(database, network, slot, round)).collect();
    let share = slots.iter().try_fold(Spread::default(), |mut sum, slot| {
        let per_s = NS_PER_S / slot.every?.0 as f64;
        sum.add(slot.seconds?.at_rates(if slot.is_sporadic { 0.0 } else { per_s }, per_s));
        Some(sum)
    });
    ScheduleUse { schedule: at, round, slots, share }
}

fn slot_use(database: &Database, network: &Network, slot: &Slot, round: Option<Nanoseconds>) -> SlotUse {
    let lengths = slot.content.frames().iter().map(|id| (data_bytes(database, *id), *id));
    // The first of the longest ones; a slot is never empty.
    let longest = lengths.rev().max_by_key(|(bytes, _)| *bytes).unwrap_or((0, FrameId(0)));
    let (bytes, frame) = longest;
    let seconds = network.rate.map(|rate| {
        let nominal = f64::from(lin::nominal_bits(bytes)) / rate.0 as f64;
        // Rounded up to whole nanoseconds.
        let most = lin::longest_time_ns(bytes, rate.0).map_or(nominal, |time| time as f64 / NS_PER_S);
        Spread::between(nominal, most)
    });
    let is_sporadic = matches!(slot.content, SlotContent::Sporadic(_));
    SlotUse { frame, is_sporadic, bytes, takes: slot.takes, every: slot.every.or(round), seconds }
}

/// The data bytes of the longest answer to a header.
fn data_bytes(database: &Database, id: FrameId) -> u32 {
    let frame = &database.frames[id.index()];
    let own = frame.length.map(|length| length.max);
    let stands_for = frame.seen_on.iter().flat_map(|seen| match &seen.identifier {
        Identifier::Lin { stands_for, .. } => stands_for.as_slice(),
        _ => &[],
    });
    let of_answers = stands_for.filter_map(|id| database.frames.get(id.index())?.length).map(|length| length.max);
    own.into_iter().chain(of_answers).max().unwrap_or(lin::BYTES_MAX as u32)
}
