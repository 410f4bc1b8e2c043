//! The load of each network: of everything that is counted on it, of each control unit, of each frame.

mod flexray;
mod lin;

use wirelore_model::{Database, EcuId, FrameId, Network, NetworkId, NetworkKind};

pub use flexray::{ChannelUse, SlotsUse};
pub use lin::{ScheduleUse, SlotUse};

use super::cost::{Spread, cost};
use super::remark::Remark;
use super::stream::{NS_PER_S, Stream, Traffic, Uncounted, WhyNot};

/// How full one network is, as its description says.
#[derive(Debug, Clone, PartialEq)]
pub struct NetworkLoad {
    /// The network.
    pub network: NetworkId,
    /// Frames per second ordinarily.
    pub frames_per_s: f64,
    /// Bits per second, stuff bits as the [`Spread`] says.
    pub bits_per_s: Spread,
    /// The part of the time that they take (of FlexRay the part of the static slots); `None` where it cannot be said.
    pub share: Option<Spread>,
    /// What is counted: on CAN in order of priority.
    pub streams: Vec<StreamLoad>,
    /// The same by control unit, in the order of the description; frames that several may send, and those of nobody, stand on their own.
    pub units: Vec<UnitLoad>,
    /// Frames that are not counted.
    pub uncounted: Vec<Uncounted>,
    /// LIN: its schedules.
    pub schedules: Vec<ScheduleUse>,
    /// LIN: which of [`NetworkLoad::schedules`] the figures are of, the fullest.
    pub fullest_schedule: Option<usize>,
    /// FlexRay: its slots.
    pub slots: Option<SlotsUse>,
    /// What else is to be known.
    pub remarks: Vec<Remark>,
}

/// What one stream takes of its network.
#[derive(Debug, Clone, PartialEq)]
pub struct StreamLoad {
    /// The stream.
    pub stream: Stream,
    /// Frames per second: ordinarily, and at most.
    pub frames_per_s: (f64, f64),
    /// Bits per second.
    pub bits_per_s: Spread,
    /// The part of the time; `None` where the rate is not described.
    pub share: Option<Spread>,
    /// How long one frame takes at most, in seconds.
    pub frame_s: Option<f64>,
}

/// What one control unit takes of a network.
#[derive(Debug, Clone, PartialEq)]
pub struct UnitLoad {
    /// The unit, or all that may send these frames; empty: not described.
    pub ecus: Vec<EcuId>,
    /// Frames per second.
    pub frames_per_s: f64,
    /// Bits per second.
    pub bits_per_s: Spread,
    /// The part of the time.
    pub share: Option<Spread>,
}

impl NetworkLoad {
    /// Whether what is sent takes more than so much of the network at most (1: all of it), beyond the rounding of the sums.
    #[must_use]
    pub fn exceeds(&self, limit: f64) -> bool {
        const ROUNDING: f64 = 1e-9;
        self.share.is_some_and(|share| share.most > limit + ROUNDING)
    }
}

/// The load of a network, out of what is sent on it.
pub(super) fn load(database: &Database, id: NetworkId, traffic: Traffic) -> NetworkLoad {
    let network = &database.networks[id.index()];
    let mut found = NetworkLoad {
        network: id,
        frames_per_s: 0.0,
        bits_per_s: Spread::default(),
        share: None,
        streams: Vec::new(),
        units: Vec::new(),
        uncounted: traffic.uncounted,
        schedules: Vec::new(),
        fullest_schedule: None,
        slots: None,
        remarks: Vec::new(),
    };
    if network.kind == NetworkKind::FlexRay {
        count_slots(database, &mut found);
    } else {
        let streams = match network.kind {
            NetworkKind::Lin => streams_of_schedule(database, &mut found, traffic.streams),
            _ => traffic.streams,
        };
        count_streams(database, network, streams, &mut found);
    }
    add_remarks(network, &mut found);
    add_units(&mut found);
    found
}

fn count_streams(database: &Database, network: &Network, streams: Vec<Stream>, found: &mut NetworkLoad) {
    let mut share = Some(Spread::default());
    for stream in streams {
        let frame = &database.frames[stream.frame.index()];
        let Some(cost) = cost(network, &frame.seen_on[stream.appearance].identifier, stream.bytes) else {
            found.uncounted.push(Uncounted { frame: stream.frame, why: WhyNot::NotCalculated });
            continue;
        };
        let parts = f64::from(stream.parts);
        let (usual, most) = (stream.timing.usual_per_s * parts, stream.timing.most_per_s() * parts);
        let load = StreamLoad {
            frames_per_s: (usual, most),
            bits_per_s: cost.bits.at_rates(usual, most),
            share: cost.seconds.map(|seconds| seconds.at_rates(usual, most)),
            frame_s: cost.seconds.map(|seconds| seconds.most),
            stream,
        };
        found.frames_per_s += usual;
        found.bits_per_s.add(load.bits_per_s);
        share = add_share(share, load.share);
        found.streams.push(load);
    }
    found.share = share;
}

fn add_share(sum: Option<Spread>, more: Option<Spread>) -> Option<Spread> {
    let (mut sum, more) = (sum?, more?);
    sum.add(more);
    Some(sum)
}

/// LIN: a frame is sent when its slot comes. The figures are those of the fullest schedule.
fn streams_of_schedule(database: &Database, found: &mut NetworkLoad, by_periods: Vec<Stream>) -> Vec<Stream> {
    found.schedules = lin::schedules(database, found.network);
    if found.schedules.is_empty() {
        found.remarks.push(Remark::NoSchedule);
        return by_periods;
    }
    for schedule in found.schedules.iter().filter(|schedule| schedule.slots.iter().any(|slot| slot.every.is_none())) {
        let name = database.schedules[schedule.schedule].label.name.clone();
        found.remarks.push(Remark::RoundOpen(name));
    }
    let most = |at: usize| found.schedules[at].share.map_or(0.0, |share| share.most);
    // The first of the fullest ones.
    let fullest = (0..found.schedules.len()).rev().max_by(|one, other| most(*one).total_cmp(&most(*other)));
    found.fullest_schedule = fullest;
    let slots = fullest.map_or(&[][..], |at| &found.schedules[at].slots);
    let streams = slots.iter().filter_map(|slot| slot.stream(database, found.network)).collect();
    let has_slot = |frame: FrameId| {
        let here = database.schedules.iter().filter(|schedule| schedule.network == found.network);
        here.flat_map(|schedule| &schedule.slots).any(|slot| slot.content.frames().contains(&frame))
    };
    let here = |frame: FrameId| database.frames[frame.index()].seen_on.iter().any(|seen| seen.network == found.network);
    let without = (0..database.frames.len() as u32).map(FrameId).filter(|frame| here(*frame) && !has_slot(*frame));
    found.uncounted = without.map(|frame| Uncounted { frame, why: WhyNot::NoSlot }).collect();
    streams
}

/// FlexRay: a frame has its slots in every round of the cycles, whether there is something to say or not.
fn count_slots(database: &Database, found: &mut NetworkLoad) {
    let slots = flexray::slots(database, found.network);
    let shares = slots.channels.each_ref().map(ChannelUse::static_share);
    found.share = shares.into_iter().flatten().reduce(f64::max).map(|share| Spread::between(share, share));
    if found.share.is_none() {
        found.remarks.push(Remark::NoSlots);
    }
    if let Some(cycle) = slots.cycle {
        let round_s = cycle.0 as f64 / NS_PER_S * f64::from(slots.cycles);
        found.frames_per_s = slots.frames.iter().map(|(_, times)| *times as f64 / round_s).sum();
    }
    // What is said of periods is no reason to leave a frame out here.
    found.uncounted.clear();
    found.slots = Some(slots);
}

fn add_remarks(network: &Network, found: &mut NetworkLoad) {
    let named = |wanted: &dyn Fn(&Stream) -> bool| {
        let mut frames: Vec<FrameId> =
            found.streams.iter().map(|load| &load.stream).filter(|stream| wanted(stream)).map(|it| it.frame).collect();
        frames.dedup();
        frames
    };
    let assumed = named(&|stream| !stream.length_is_stated);
    let open = named(&|stream| stream.timing.is_open);
    let cut = named(&|stream| stream.parts > 1);
    let lists = [
        (assumed, Remark::LengthAssumed as fn(Vec<FrameId>) -> Remark),
        (open, Remark::OnChangeOpen),
        (cut, Remark::CutIntoFrames),
    ];
    let counts_something = !found.streams.is_empty();
    let mut more: Vec<Remark> =
        lists.into_iter().filter(|(frames, _)| !frames.is_empty()).map(|(frames, remark)| remark(frames)).collect();
    if network.kind == NetworkKind::FlexRay {
        return;
    }
    if !counts_something {
        more.push(Remark::NothingCounted);
    } else if network.rate.is_none() {
        more.push(Remark::NoRate);
    }
    match network.kind {
        NetworkKind::Ethernet if counts_something => more.push(Remark::OneLink),
        NetworkKind::Kline if counts_something => more.push(Remark::NoPauses),
        NetworkKind::Uart if counts_something && network.telegram.is_none_or(|telegram| telegram.gap.is_none()) => {
            more.push(Remark::NoPauses);
        }
        NetworkKind::Most if found.uncounted.iter().any(|it| it.why == WhyNot::NotCalculated) => {
            more.push(Remark::UnknownRing);
        }
        _ => {}
    }
    found.remarks.extend(more);
}

fn add_units(found: &mut NetworkLoad) {
    let mut units: Vec<UnitLoad> = Vec::new();
    for load in &found.streams {
        let ecus = &load.stream.senders;
        let at = units.iter().position(|unit| unit.ecus == *ecus).unwrap_or_else(|| {
            let share = load.share.map(|_| Spread::default());
            units.push(UnitLoad { ecus: ecus.clone(), frames_per_s: 0.0, bits_per_s: Spread::default(), share });
            units.len() - 1
        });
        let unit = &mut units[at];
        unit.frames_per_s += load.frames_per_s.0;
        unit.bits_per_s.add(load.bits_per_s);
        unit.share = add_share(unit.share, load.share);
    }
    // Single units first, in the order of the description; then those that share frames; then nobody.
    units.sort_by_key(|unit| (unit.ecus.is_empty(), unit.ecus.len() > 1, unit.ecus.clone()));
    found.units = units;
}
