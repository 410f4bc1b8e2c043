// budget/cost/can.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CanCost {
    pub least: WireBits,
    pub most: WireBits,
}

// budget/cost/mod.rs

pub use can::CanCost;
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Spread {
    pub least: f64,
    pub expected: f64,
    pub most: f64,
}
impl Spread {
    pub fn expected_on(self, kind: NetworkKind) -> Option<f64> {}
    pub fn between(least: f64, most: f64) -> Self {}
}
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cost {
    pub bits: Spread,
    pub seconds: Option<Spread>,
}

// budget/figures.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figures {
    pub units: u64,
    pub networks: Vec<(NetworkKind, u64)>,
    pub frames: u64,
    pub signals: u64,
    pub routes: u64,
    pub protected_frames: u64,
}
impl Figures {
    pub fn of(database: &Database) -> Self {}
    pub fn of_kind(&self, kind: NetworkKind) -> u64 {}
    pub fn protected_share(&self) -> Option<f64> {}
}

// budget/lateness/mod.rs

#[derive(Debug, Clone, PartialEq)]
pub struct NetworkLateness {
    pub streams: Vec<Lateness>,
    pub another_order: Option<bool>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Lateness {
    pub worst: Result<Nanoseconds, NoBound>,
    pub arrives: Option<Nanoseconds>,
    pub deadline: Nanoseconds,
    pub reasons: Option<Reasons>,
}
impl Lateness {
    pub fn can_miss(&self) -> bool {}
    pub fn here(&self) -> Result<Nanoseconds, NoBound> {}
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reasons {
    pub blocking: Option<Delayed>,
    pub higher: Vec<Delayed>,
    pub earlier: Nanoseconds,
    pub late: Nanoseconds,
    pub length: Nanoseconds,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Delayed {
    pub stream: usize,
    pub frames: u64,
    pub time: Nanoseconds,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Path {
    pub frame: FrameId,
    pub source: Option<u8>,
    pub route: RouteId,
    pub before: Option<Nanoseconds>,
    pub clock: Option<Nanoseconds>,
    pub within: Option<Nanoseconds>,
    pub behind: Option<Nanoseconds>,
}
impl Path {
    pub fn total(&self) -> Option<Nanoseconds> {}
}

// budget/measure/mod.rs

pub use windows::Busiest;
#[derive(Debug)]
pub struct Meter<'d> {}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct MeterTally {
    pub read: u64,
    pub counted: u64,
    pub on_unbound_channels: u64,
    pub of_unknown_length: u64,
    pub damaged: u64,
    pub no_frames: u64,
}
#[derive(Debug, Clone, PartialEq)]
pub struct NetworkMeasure {
    pub network: NetworkId,
    pub frames: u64,
    pub bits: u64,
    pub bare_bits: u64,
    pub of_unknown_length: u64,
    pub span_s: f64,
    pub share: Option<(f64, f64)>,
    pub busiest_second: Option<Busiest>,
    pub busiest_tenth: Option<Busiest>,
    pub identifiers: Vec<IdMeasure>,
    pub beyond: u64,
}
#[derive(Debug, Clone, PartialEq)]
pub struct IdMeasure {
    pub seen: SeenId,
    pub frame: Option<FrameId>,
    pub senders: Vec<EcuId>,
    pub frames: u64,
    pub bits: u64,
    pub share: Option<f64>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct UnitMeasure {
    pub ecus: Vec<EcuId>,
    pub frames: u64,
    pub share: Option<f64>,
}
impl<'d> Meter<'d> {
    pub fn new(
        database: &'d Database,
        decoder: &'d Decoder,
        bind: &BindMap,
    ) -> Result<Self, SessionError> {}
    pub fn log(
        &mut self,
        recording: &mut Recording,
        mut after_each: impl FnMut(&Recording),
    ) -> Result<(), SessionError> {}
    pub fn bindings(&self) -> &[Binding] {}
    pub fn channels_never_seen(&self) -> impl Iterator<Item = &str> {}
    pub fn finish(mut self) -> (Vec<NetworkMeasure>, MeterTally) {}
}
impl NetworkMeasure {
    pub fn units(&self) -> Vec<UnitMeasure> {}
}

// budget/measure/windows.rs

#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Busiest {
    pub from_ns: i64,
    pub share: f64,
    pub bare_share: f64,
}

// budget/mod.rs

pub mod measure;
pub mod what_if;
pub use cost::{CanCost, Cost, Spread};
pub use figures::Figures;
pub use lateness::{Delayed, Lateness, NetworkLateness, Path, Reasons};
pub use networks::{
    ChannelUse, NetworkLoad, ScheduleUse, SlotUse, SlotsUse, StreamLoad, UnitLoad,
};
pub use rank::Rank;
pub use remark::Remark;
pub use stream::{Stream, Timing, Traffic, Uncounted, WhyNot, traffic};
#[derive(Debug, Clone, PartialEq)]
pub struct Budget {
    pub networks: Vec<NetworkLoad>,
    pub lateness: Vec<Option<Result<NetworkLateness, ClockError>>>,
    pub paths: Vec<Path>,
}
impl Budget {
    pub fn of(database: &Database) -> Self {}
    pub fn is_exceeded(&self, limit: f64, wanted: impl Fn(NetworkId) -> bool) -> bool {}
}

// budget/networks/flexray.rs

#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ChannelUse {
    pub static_used: u64,
    pub static_all: u64,
    pub dynamic_used: u64,
    pub dynamic_all: u64,
    pub fullest_cycle: u8,
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SlotsUse {
    pub cycles: u8,
    pub cycle: Option<Nanoseconds>,
    pub channels: [ChannelUse; 2],
    pub frames: Vec<(FrameId, u64)>,
}
impl ChannelUse {
    pub fn static_share(&self) -> Option<f64> {}
}

// budget/networks/lin.rs

#[derive(Debug, Clone, PartialEq)]
pub struct ScheduleUse {
    pub schedule: usize,
    pub round: Option<Nanoseconds>,
    pub slots: Vec<SlotUse>,
    pub share: Option<Spread>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct SlotUse {
    pub frame: FrameId,
    pub is_sporadic: bool,
    pub bytes: u32,
    pub takes: Option<Nanoseconds>,
    pub every: Option<Nanoseconds>,
    pub seconds: Option<Spread>,
}
impl SlotUse {
    pub fn share_of_slot(&self) -> Option<Spread> {}
}

// budget/networks/mod.rs

pub use flexray::{ChannelUse, SlotsUse};
pub use lin::{ScheduleUse, SlotUse};
#[derive(Debug, Clone, PartialEq)]
pub struct NetworkLoad {
    pub network: NetworkId,
    pub frames_per_s: f64,
    pub bits_per_s: Spread,
    pub share: Option<Spread>,
    pub streams: Vec<StreamLoad>,
    pub units: Vec<UnitLoad>,
    pub uncounted: Vec<Uncounted>,
    pub schedules: Vec<ScheduleUse>,
    pub fullest_schedule: Option<usize>,
    pub slots: Option<SlotsUse>,
    pub remarks: Vec<Remark>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct StreamLoad {
    pub stream: Stream,
    pub frames_per_s: (f64, f64),
    pub bits_per_s: Spread,
    pub share: Option<Spread>,
    pub frame_s: Option<f64>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct UnitLoad {
    pub ecus: Vec<EcuId>,
    pub frames_per_s: f64,
    pub bits_per_s: Spread,
    pub share: Option<Spread>,
}
impl NetworkLoad {
    pub fn exceeds(&self, limit: f64) -> bool {}
}

// budget/rank.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Rank {}
impl Rank {
    pub fn of_id(id: u32, extended: bool) -> Self {}
    pub fn id(self) -> u32 {}
    pub fn is_extended(self) -> bool {}
}
impl fmt::Display for Rank {}

// budget/remark.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Remark {
    NoRate,
    NothingCounted,
    LengthAssumed(Vec<FrameId>),
    OnChangeOpen(Vec<FrameId>),
    CutIntoFrames(Vec<FrameId>),
    NoSchedule,
    RoundOpen(String),
    NoSlots,
    UnknownRing,
    OneLink,
    NoPauses,
}

// budget/stream.rs

#[derive(Debug, Clone, PartialEq)]
pub struct Stream {
    pub frame: FrameId,
    pub network: NetworkId,
    pub appearance: usize,
    pub source: Option<u8>,
    pub page: Option<PageId>,
    pub senders: Vec<EcuId>,
    pub via: Option<RouteId>,
    pub rank: Option<Rank>,
    pub bytes: u32,
    pub length_is_stated: bool,
    pub parts: u32,
    pub timing: Timing,
}
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Timing {
    pub usual_per_s: f64,
    pub shortest: Nanoseconds,
    pub jitter: Nanoseconds,
    pub deadline: Nanoseconds,
    pub is_open: bool,
}
impl Timing {
    pub fn most_per_s(&self) -> f64 {}
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Uncounted {
    pub frame: FrameId,
    pub why: WhyNot,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum WhyNot {
    NoPeriod,
    LengthOpen,
    ManyIdentifiers,
    NotCalculated,
    NoSlot,
}
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Traffic {
    pub streams: Vec<Stream>,
    pub uncounted: Vec<Uncounted>,
}
pub fn traffic(database: &Database) -> Vec<Traffic> {}

// budget/what_if.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MoveNote {
    PassedOn { frame: FrameId, gateway: EcuId },
    PassedBack { frame: FrameId, gateway: EcuId },
    NoGateway { frame: FrameId },
    SharedStays { frame: FrameId },
    SameIdentifier { frame: FrameId, other: FrameId },
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum MoveError {
    NotCan,
    AlreadyThere,
    OnNone,
    OnSeveral,
}
pub fn set_rate(
    description: &mut Description,
    network: NetworkId,
    rate: BitRate,
    data_rate: Option<BitRate>,
) {}
pub fn move_unit(
    description: &mut Description,
    unit: EcuId,
    to: NetworkId,
) -> Result<Vec<MoveNote>, MoveError> {}

// lib.rs

pub mod budget;
pub mod response;
pub use listening::{Hop, Listening, Topic};

// listening.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Topic {
    pub frame: FrameId,
    pub signals: Vec<SignalId>,
}
impl From<FrameId> for Topic {}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Listening {
    pub network: NetworkId,
    pub senders: Vec<EcuId>,
    pub hops: Vec<Hop>,
    pub readers: Vec<(EcuId, Option<NetworkId>)>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hop {
    pub gateway: EcuId,
    pub from: NetworkId,
    pub to: NetworkId,
    pub frame: FrameId,
    pub becomes: FrameId,
    pub route: RouteId,
}
impl Listening {
    pub fn to(database: &Database, topic: impl Into<Topic>) -> Self {}
    pub fn networks(&self) -> Vec<NetworkId> {}
}

// response/clock.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Ticks(pub u64);
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Clock {}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum ClockError {
    NoRate,
    TooFine { rate: u64 },
    OtherRate { rate: u64 },
    TooLong { longest_s: u64 },
}
impl Clock {
    pub fn of_rates(
        rates: impl IntoIterator<Item = BitRate>,
    ) -> Result<Self, ClockError> {}
    pub fn per_second(self) -> u64 {}
    pub fn span(self, Nanoseconds(time): Nanoseconds) -> Result<Ticks, ClockError> {}
    pub fn bits(self, count: u64, BitRate(rate): BitRate) -> Result<Ticks, ClockError> {}
    pub fn frame(
        self,
        bits: WireBits,
        nominal: BitRate,
        data: Option<BitRate>,
    ) -> Result<Ticks, ClockError> {}
    pub fn nanoseconds(self, Ticks(ticks): Ticks) -> Nanoseconds {}
}

// response/delays.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Delay {
    pub stream: usize,
    pub frames: u64,
    pub time: Ticks,
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Delays {
    pub worst: Ticks,
    pub jitter: Ticks,
    pub blocking: Option<Delay>,
    pub higher: Vec<Delay>,
    pub earlier: Ticks,
    pub lead: Ticks,
    pub length: Ticks,
}
pub fn delays(streams: &[Stream], index: usize, bit: Ticks) -> Result<Delays, NoBound> {}

// response/mod.rs

pub use clock::{Clock, ClockError, Ticks};
pub use delays::{Delay, Delays, delays};
pub use order::{Order, order};
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stream {
    pub length: Ticks,
    pub period: Ticks,
    pub jitter: Ticks,
    pub deadline: Ticks,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Response {
    pub worst: Result<Ticks, NoBound>,
    pub instance: u64,
    pub blocking: Ticks,
}
impl Response {
    pub fn meets(&self, deadline: Ticks) -> bool {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum NoBound {
    Overload,
    TooFar,
}
pub fn responses(streams: &[Stream], bit: Ticks) -> Vec<Response> {}

// response/order.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Order {
    Found(Vec<usize>),
    Impossible(Vec<usize>),
    Unknown,
}
pub fn order(streams: &[Stream], bit: Ticks) -> Order {}
