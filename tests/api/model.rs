// database.rs

#[derive(Debug, Clone)]
pub struct Database {}
impl Database {
    pub fn new(description: Description) -> Result<Self, InvalidDescription> {}
    pub fn network_named(&self, name: &str) -> Option<(NetworkId, &Network)> {}
    pub fn ecu_named(&self, name: &str) -> Option<(EcuId, &Ecu)> {}
    pub fn frame_named(&self, name: &str) -> Option<(FrameId, &Frame)> {}
    pub fn states_named(&self, name: &str) -> Option<(StatesId, &StateTable)> {}
    pub fn words<'a>(&'a self, signal: &'a Signal) -> &'a [StateWord] {}
    pub fn certainty(&self, frame: FrameId, signal: SignalId) -> Option<&Certainty> {}
    pub fn into_description(self) -> Description {}
}
impl Deref for Database {
    type Target = Description;
}
impl PartialEq for Database {}

// description.rs

#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Description {
    pub vehicle: Option<Vehicle>,
    pub networks: Vec<Network>,
    pub ecus: Vec<Ecu>,
    pub wires: Vec<Wire>,
    pub states: Vec<StateTable>,
    pub frames: Vec<Frame>,
    pub routes: Vec<Route>,
    pub schedules: Vec<Schedule>,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Vehicle {
    pub label: Label,
}

// duty.rs

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Role {
    Value,
    Counter(Counter),
    Checksum(Box<Checksum>),
    Protection(Box<Protection>),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Counter {
    pub low: u64,
    pub high: u64,
    pub step: u64,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Checksum {
    pub algorithm: ChecksumAlgorithm,
    pub over: Vec<ByteSpan>,
    pub start: Option<u64>,
    pub first: Vec<MixedByte>,
    pub then: Vec<MixedByte>,
}
impl Checksum {
    pub fn mixed_in(&self) -> impl Iterator<Item = MixedByte> {}
    pub fn needs_identifier(&self) -> bool {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum MixedByte {
    Byte(u8),
    Identifier(u8),
    Signal(SignalId),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum ChecksumAlgorithm {
    Crc8SaeJ1850,
    Crc8Autosar,
    Crc16Ibm3740,
    Crc16Arc,
    Crc32IsoHdlc,
    Crc32Autosar,
    Crc64Xz,
    Xor8,
    Sum8,
    InvertedSum8,
    InvertedCarrySum8,
    Nibble4,
    Crc(CrcRule),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct CrcRule {
    pub width: u8,
    pub poly: u64,
    pub start: u64,
    pub xor: u64,
    pub reflected: bool,
}
impl CrcRule {
    pub fn parameters(&self) -> CrcParameters {}
}
impl fmt::Display for CrcRule {}
impl ChecksumAlgorithm {
    pub const NAMED: [Self; 12] = [
        Self::Crc8SaeJ1850,
        Self::Crc8Autosar,
        Self::Crc16Ibm3740,
        Self::Crc16Arc,
        Self::Crc32IsoHdlc,
        Self::Crc32Autosar,
        Self::Crc64Xz,
        Self::Xor8,
        Self::Sum8,
        Self::InvertedSum8,
        Self::InvertedCarrySum8,
        Self::Nibble4,
    ];
    pub fn name(self) -> Option<&'static str> {}
    pub fn width(self) -> u8 {}
}
impl fmt::Display for ChecksumAlgorithm {}

// flexray.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct FlexRayTiming {
    pub cycle: Option<Nanoseconds>,
    pub cycles: u8,
    pub static_slots: Option<StaticSlots>,
    pub last_dynamic_slot: Option<u16>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct StaticSlots {
    pub count: u16,
    pub bytes: u16,
}
pub const FLEXRAY_CYCLES: u8 = 64;
pub const FLEXRAY_REPETITIONS: [u8; 12] = [1, 2, 4, 5, 8, 10, 16, 20, 32, 40, 50, 64];
impl Default for FlexRayTiming {}
impl FlexRayTiming {
    pub fn static_around(&self, slot: u16) -> Option<StaticSlots> {}
    pub fn turn(&self, repetition: u8) -> Option<Nanoseconds> {}
}

// frame.rs

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Frame {
    pub label: Label,
    pub seen_on: Vec<Appearance>,
    pub carried: Option<Transport>,
    pub length: Option<LengthRange>,
    pub senders: Vec<EcuId>,
    pub readers: Vec<EcuId>,
    pub sending: Sending,
    pub optional: bool,
    pub pages: Vec<Page>,
    pub signals: Vec<Signal>,
    pub unknown: Vec<Field>,
    pub unused: Vec<Field>,
}
impl Frame {
    pub fn signals_named<'a>(
        &'a self,
        name: &'a str,
    ) -> impl Iterator<Item = (SignalId, &'a Signal)> {}
    pub fn gives_rows(&self) -> bool {}
    pub fn pages_around(&self, page: Option<PageId>) -> impl Iterator<Item = &Page> {}
    pub fn page_ids_around(&self, page: Option<PageId>) -> impl Iterator<Item = PageId> {}
    pub fn rows_around(&self, page: Option<PageId>) -> Option<u32> {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Transport {
    IsoTp,
    IsoTpExtended,
    IsoTpMixed,
    J1939Tp,
}
impl Transport {
    pub fn words(self) -> &'static str {}
    pub fn longest_payload(self) -> u32 {}
    pub fn usual_most(self) -> u32 {}
    pub fn carries(self, identifier: &Identifier) -> bool {}
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Appearance {
    pub network: NetworkId,
    pub identifier: Identifier,
    pub via: Option<RouteId>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct LengthRange {
    pub min: u32,
    pub max: u32,
}
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Sending {
    pub every: Option<Period>,
    pub faster: Option<FasterWhile>,
    pub on_change: bool,
    pub on_request: bool,
    pub apart_at_least: Option<Nanoseconds>,
    pub apart_at_most: Option<Nanoseconds>,
    pub jitter: Option<Nanoseconds>,
    pub timeout: Option<Nanoseconds>,
}
impl Sending {
    pub fn missing_after(&self) -> Option<Nanoseconds> {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Period {
    pub shortest: Nanoseconds,
    pub longest: Nanoseconds,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FasterWhile {
    pub every: Period,
    pub test: Test,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Page {
    pub parent: Option<PageId>,
    pub switch: u32,
    pub tests: Vec<Test>,
    pub element: Option<Element>,
    pub rows_from: Option<u32>,
    pub every: Option<Period>,
    pub length: Option<LengthRange>,
}
pub const ROWS_FROM_MOST: u32 = 64;
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Element {
    pub number: u32,
    pub most: u32,
    pub reaches: u32,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Test {
    pub selector: SignalId,
    pub values: Vec<RawSpan>,
}

// identifier.rs

#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Identifier {
    Can { first: u32, last: u32, extended: bool },
    Pgn { pgn: u32, sources: Vec<u8>, priority: Option<u8> },
    Xl { acceptance: u32, priority: Option<u16> },
    Lin { id: u8, checksum: LinChecksum, stands_for: Vec<FrameId> },
    FlexRay { slot: u16, first_cycle: u8, repetition: u8, channels: FlexRayChannels },
    Telegram { source: Option<u8>, target: Option<u8>, starts: Vec<u8> },
    Most { block: u8, instance: Option<u8>, function: u16, operation: Option<u8> },
    SomeIp { service: u16, method: u16, message_type: Option<u8> },
    Port { protocol: PortProtocol, port: u16 },
    DoIp { payload_type: u16, source: Option<u16>, target: Option<u16> },
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum FlexRayChannels {
    A,
    B,
    Both,
}
#[derive(
    Debug,
    Clone,
    Copy,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Serialize,
    Deserialize
)]
pub enum PortProtocol {
    Udp,
    Tcp,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SeenId {
    Can { id: u32, extended: bool },
    Xl { acceptance: u32, priority: u16 },
    Lin(u8),
    FlexRay { slot: u16, cycle: u8, on_b: bool },
    Telegram { source: Option<u8>, target: Option<u8> },
    Most { block: u8, instance: u8, function: u16, operation: u8 },
    SomeIp { service: u16, method: u16, message_type: u8 },
    Ports { protocol: PortProtocol, from: u16, to: u16 },
    DoIp { payload_type: u16, source: Option<u16>, target: Option<u16> },
    Packet { ether_type: u16 },
}
impl Identifier {
    pub fn matches(&self, seen: SeenId, payload: &[u8]) -> bool {}
    pub fn longest_payload(&self, kind: NetworkKind) -> u32 {}
    pub fn belongs_on(&self, kind: NetworkKind) -> bool {}
}

// identifier_text.rs

pub const MOST_OPERATIONS: [(&str, u8); 21] = [
    ("set", 0x0),
    ("get", 0x1),
    ("set_get", 0x2),
    ("increment", 0x3),
    ("decrement", 0x4),
    ("get_interface", 0x5),
    ("status", 0xC),
    ("interface", 0xD),
    ("error", 0xF),
    ("start", 0x0),
    ("abort", 0x1),
    ("start_result", 0x2),
    ("start_result_ack", 0x6),
    ("abort_ack", 0x7),
    ("start_ack", 0x8),
    ("error_ack", 0x9),
    ("processing_ack", 0xA),
    ("processing", 0xB),
    ("result", 0xC),
    ("result_ack", 0xD),
    ("method_interface", 0xE),
];
pub fn appearance_text(database: &Database, appearance: &Appearance) -> String {}
pub fn identifier_text(identifier: &Identifier) -> String {}
pub fn message_type_word(message_type: u8) -> Option<&'static str> {}
pub fn seen_text(seen: SeenId) -> String {}

// label.rs

#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Label {
    pub name: String,
    pub title: Option<String>,
    pub note: Option<String>,
    pub called: Option<String>,
    pub certainty: Option<Certainty>,
}
impl Label {
    pub fn named(name: impl Into<String>) -> Self {}
    pub fn display(&self) -> &str {}
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Certainty {
    pub grade: Grade,
    pub evidence: Option<String>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Grade {
    Confirmed,
    Likely,
    Guessed,
    Measured,
    Document,
}
impl Certainty {
    pub fn text(&self) -> String {}
}
impl Grade {
    pub fn words(self) -> &'static str {}
    pub fn mark(self) -> Option<char> {}
}

// lib.rs

pub mod store;
pub mod unit;
pub use database::Database;
pub use description::{Description, Vehicle};
pub use duty::{Checksum, ChecksumAlgorithm, Counter, CrcRule, MixedByte, Role};
pub use flexray::{FLEXRAY_CYCLES, FLEXRAY_REPETITIONS, FlexRayTiming, StaticSlots};
pub use frame::{
    Appearance, Element, FasterWhile, Frame, LengthRange, Page, Period, ROWS_FROM_MOST,
    Sending, Test, Transport,
};
pub use identifier::{FlexRayChannels, Identifier, PortProtocol, SeenId};
pub use identifier_text::{
    MOST_OPERATIONS, appearance_text, identifier_text, message_type_word, seen_text,
};
pub use ids::{EcuId, FrameId, NetworkId, PageId, RouteId, SignalId, StatesId};
pub use label::{Certainty, Grade, Label};
pub use near::{nearest_name, nearest_names};
pub use network::{Attachment, BitRate, Ecu, Nanoseconds, Network, NetworkKind, Wire};
pub use protection::Protection;
pub use route::{Pace, Passed, Route};
pub use schedule::{Schedule, Slot, SlotContent};
pub use signal::{
    ByteSpan, Charset, Content, Curve, CurvePoint, Scaling, Shown, Signal, States,
    ValueRange,
};
pub use states::{Meaning, RawSpan, RawValue, StateTable, StateWord};
pub use telegram::{Telegram, TelegramCheck, TelegramSize};
pub use texts::{formula_text, state_words_text};
pub use unit::Unit;
pub use validate::{Flaw, InvalidDescription};
pub use wirelore_bits::TroubleCode;
pub use wirelore_bits::lin::LinChecksum;
pub use wirelore_bits::typed::pgn_of;
pub use wiring::{ActiveStar, Fitted, Terminator};

// near.rs

pub fn nearest_name<'k>(
    name: &str,
    known: impl IntoIterator<Item = &'k str>,
) -> Option<&'k str> {}
pub fn nearest_names<'k>(
    name: &str,
    known: impl IntoIterator<Item = &'k str>,
    most: usize,
) -> Vec<&'k str> {}

// network.rs

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Network {
    pub label: Label,
    pub kind: NetworkKind,
    pub rate: Option<BitRate>,
    pub data_rate: Option<BitRate>,
    pub telegram: Option<Telegram>,
    pub flexray: Option<FlexRayTiming>,
    pub terminators: Vec<Terminator>,
    pub star: Option<ActiveStar>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum NetworkKind {
    Can,
    CanFd,
    CanXl,
    Lin,
    Kline,
    Uart,
    FlexRay,
    Most,
    Ethernet,
}
impl NetworkKind {
    pub const ALL: [Self; 9] = [
        Self::Can,
        Self::CanFd,
        Self::CanXl,
        Self::Lin,
        Self::Kline,
        Self::Uart,
        Self::FlexRay,
        Self::Most,
        Self::Ethernet,
    ];
    pub fn keyword(self) -> &'static str {}
    pub fn longest_payload(self) -> u32 {}
    pub fn is_can(self) -> bool {}
}
#[derive(
    Debug,
    Clone,
    Copy,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Serialize,
    Deserialize
)]
pub struct BitRate(pub u64);
#[derive(
    Debug,
    Clone,
    Copy,
    Default,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Serialize,
    Deserialize
)]
pub struct Nanoseconds(pub u64);
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Ecu {
    pub label: Label,
    pub on: Vec<Attachment>,
    pub leads: Vec<NetworkId>,
    pub optional: bool,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Attachment {
    pub network: NetworkId,
    pub address: Option<u8>,
    pub ring_position: Option<u8>,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Wire {
    pub from: EcuId,
    pub to: Vec<EcuId>,
    pub what: String,
    pub note: Option<String>,
}

// protection.rs

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Protection {
    pub profile: Profile,
    pub data_id: DataId,
    pub header: u32,
    pub over: ByteSpan,
    pub most_rise: u32,
}
impl Protection {
    pub fn e2e(&self) -> Result<E2e, E2eError> {}
    pub fn parts(&self) -> impl Iterator<Item = (Part, Field)> {}
    pub fn header_end(&self) -> u32 {}
    pub fn covered<'p>(&self, payload: &'p [u8]) -> Option<&'p [u8]> {}
    pub fn covered_mut<'p>(&self, payload: &'p mut [u8]) -> Option<&'p mut [u8]> {}
}

// route.rs

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Route {
    pub gateway: EcuId,
    pub what: Passed,
    pub from: NetworkId,
    pub to: NetworkId,
    pub pace: Pace,
    pub within: Option<Nanoseconds>,
    pub note: Option<String>,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Passed {
    Frame(FrameId),
    Identifiers { first: u32, last: u32, extended: bool },
    All { except: Vec<FrameId> },
    Signal {
        from_frame: FrameId,
        from_signal: SignalId,
        to_frame: FrameId,
        to_signal: SignalId,
    },
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Pace {
    Each,
    Every(Nanoseconds),
    Nth(u32),
}

// schedule.rs

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Schedule {
    pub label: Label,
    pub network: NetworkId,
    pub time_base: Option<Nanoseconds>,
    pub jitter: Option<Nanoseconds>,
    pub slots: Vec<Slot>,
}
impl Schedule {
    pub fn round(&self) -> Option<Nanoseconds> {}
    pub fn slots_of(&self, frame: FrameId) -> impl Iterator<Item = &Slot> {}
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Slot {
    pub content: SlotContent,
    pub takes: Option<Nanoseconds>,
    pub every: Option<Nanoseconds>,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum SlotContent {
    Frame(FrameId),
    Sporadic(Vec<FrameId>),
}
impl SlotContent {
    pub fn frames(&self) -> &[FrameId] {}
}

// signal.rs

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Signal {
    pub label: Label,
    pub page: Option<PageId>,
    pub content: Content,
    pub scaling: Scaling,
    pub unit: Option<Unit>,
    pub states: Option<States>,
    pub range: Option<Box<ValueRange>>,
    pub absent: Vec<RawSpan>,
    pub fault: Vec<RawSpan>,
    pub role: Role,
    pub shown: Shown,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum Shown {
    Decimal,
    Hexadecimal,
}
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Content {
    Number { field: Field, kind: NumberKind },
    Text { bytes: ByteSpan, charset: Charset, size: Option<SignalId> },
    Bytes { bytes: ByteSpan, size: Option<SignalId> },
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct ByteSpan {
    pub first: u32,
    pub last: Option<u32>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Charset {
    Ascii,
    Latin1,
    Utf8,
}
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Scaling {
    Raw,
    Affine(Affine),
    Curve(Curve),
    TroubleCode,
}
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Curve {
    pub points: Vec<CurvePoint>,
}
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CurvePoint {
    pub raw: i64,
    pub value: Ratio,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum States {
    Table(StatesId),
    Own(Vec<StateWord>),
}
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ValueRange {
    pub low: Ratio,
    pub high: Ratio,
}
impl Signal {
    pub fn encoding(&self) -> Option<Encoding> {}
    pub fn hexadecimal_digits(&self) -> Option<usize> {}
    pub fn size(&self) -> Option<SignalId> {}
    pub fn protection(&self) -> Option<&Protection> {}
    pub fn more_fields(&self) -> impl Iterator<Item = Field> {}
    pub fn needed_bytes(&self) -> u32 {}
    pub fn occupied_bytes(&self) -> u32 {}
}

// states.rs

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StateTable {
    pub label: Label,
    pub words: Vec<StateWord>,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct StateWord {
    pub values: RawSpan,
    pub word: String,
    pub title: Option<String>,
    pub meaning: Meaning,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Meaning {
    Reading,
    Absent,
    Fault,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct RawSpan {
    pub first: RawValue,
    pub last: RawValue,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum RawValue {
    Number(i64),
    Bits(u64),
}
impl RawValue {
    pub fn number(self, encoding: Encoding) -> Option<i128> {}
}
impl RawSpan {
    pub fn single(value: RawValue) -> Self {}
    pub fn numbers(self, encoding: Encoding) -> Option<(i128, i128)> {}
}
impl fmt::Display for RawValue {}
impl fmt::Display for RawSpan {}

// store/binary.rs

pub fn to_lorebin(database: &Database) -> Vec<u8> {}
pub fn from_lorebin(bytes: &[u8]) -> Result<Database, LoadError> {}

// store/json.rs

pub fn to_json(database: &Database) -> String {}
pub fn from_json(text: &str) -> Result<Database, LoadError> {}

// store/mod.rs

pub use binary::{from_lorebin, to_lorebin};
pub use json::{from_json, to_json};
pub const FORMAT_VERSION: u32 = 4;
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum LoadError {
    NotADatabase,
    Newer { found: u32 },
    Older { found: u32 },
    UnknownVersion { found: u32 },
    Cut { found: u64, needed: u64 },
    ExtraBytes { extra: u64 },
    Damaged { found: u32, stored: u32 },
    Contents(postcard::Error),
    ContentsGoOn { extra: usize },
    Json(serde_json::Error),
    OtherFormat { found: String },
    Invalid(InvalidDescription),
}
pub fn load(bytes: &[u8]) -> Result<Database, LoadError> {}

// telegram.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Telegram {
    pub source_byte: Option<u8>,
    pub target_byte: Option<u8>,
    pub size: Option<TelegramSize>,
    pub check: Option<TelegramCheck>,
    pub gap: Option<Nanoseconds>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct TelegramSize {
    pub byte: u8,
    pub counts_from: u8,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum TelegramCheck {
    Xor,
    Sum,
}

// texts.rs

pub fn formula_text(scaling: &Scaling) -> String {}
pub fn state_words_text(database: &Database, signal: &Signal) -> String {}

// unit/dimension.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum Dimension {
    Share,
    Speed,
    Acceleration,
    Jerk,
    Temperature,
    TemperatureDifference,
    Frequency,
    Angle,
    AngularSpeed,
    AngularAcceleration,
    RadianAngle,
    RadianSpeed,
    RadianAcceleration,
    Curvature,
    Torque,
    Force,
    Pressure,
    Power,
    Energy,
    Voltage,
    Current,
    Charge,
    Resistance,
    ResistancePerVoltage,
    Capacitance,
    Inductance,
    Volume,
    VolumeFlow,
    Mass,
    MassFlow,
    Density,
    Length,
    DistancePerFuel,
    FuelPerDistance,
    EnergyPerDistance,
    Time,
    Illuminance,
    LuminousIntensity,
    Luminance,
    Irradiance,
    Level,
    Data,
    DataRate,
}
impl Dimension {
    pub fn in_words(self) -> &'static str {}
}

// unit/look_alike.rs

pub fn fold_look_alike(character: char) -> char {}

// unit/mod.rs

pub use dimension::Dimension;
pub use look_alike::fold_look_alike;
pub use written_out::symbol_of_name;
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Unit {
    Symbol(KnownUnit),
    Text(String),
}
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct KnownUnit;
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Recognised {
    pub unit: KnownUnit,
    pub folded: bool,
}
pub fn recognise(spelling: &str) -> Option<Recognised> {}
pub fn symbols() -> &'static [&'static str] {}
pub fn known_units() -> impl Iterator<Item = KnownUnit> {}
pub fn conversion(from: &Unit, to: &Unit) -> Option<(Ratio, Ratio)> {}
pub fn imperial(unit: &Unit) -> Option<Unit> {}
impl Unit {
    pub fn known(spelling: &str) -> Option<Self> {}
    pub fn as_str(&self) -> &str {}
    pub fn dimension(&self) -> Option<Dimension> {}
}
impl fmt::Display for Unit {}
impl KnownUnit {
    pub fn symbol(self) -> &'static str {}
    pub fn dimension(self) -> Dimension {}
}
impl From<KnownUnit> for Unit {}
impl fmt::Debug for KnownUnit {}
impl Serialize for KnownUnit {}
impl<'de> Deserialize<'de> for KnownUnit {}

// unit/written_out.rs

pub fn symbol_of_name(name: &str) -> Option<&'static str> {}

// validate/flaw.rs

#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub struct InvalidDescription {}
impl InvalidDescription {
    pub fn item(&self) -> &str {}
    pub fn flaw(&self) -> &Flaw {}
}
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum Flaw {
    BadName { name: String },
    NameNotNormal { name: String },
    NameTaken,
    SignalNameTaken,
    NoSuchItem { what: &'static str, index: u32, count: usize },
    Missing { what: &'static str },
    Zero { what: &'static str },
    UpsideDown { what: &'static str },
    TooLarge { what: &'static str, value: u64, most: u64 },
    Twice { what: &'static str },
    NoDataPhase,
    NoSlots,
    NoWirePair,
    NoStar,
    NotOnNetwork { unit: String },
    OddBytes { bytes: u16 },
    NoRing { network: String },
    WrongIdentifier { network: String, kind: &'static str },
    WrongTransport { network: String, transport: &'static str },
    NoTelegram,
    NoSchedules { network: String, kind: &'static str },
    AlwaysClassic,
    NoRepetition { every: u8 },
    DestinationInPgn { pgn: u32 },
    WrongAppearance { network: String, problem: &'static str },
    PageOrder { parent: u32 },
    WrongSwitch { switch: u32, problem: &'static str },
    WrongRows { problem: &'static str },
    SelectorOutOfSight { selector: String },
    SelectorNoNumber { selector: String },
    OutsidePayload { byte: u32, bytes: u32 },
    WrongWidth { width: u8, problem: String },
    NumbersOnly { what: &'static str },
    QuantitiesOnly { what: &'static str },
    ShownInHex,
    RawOutside { value: String, width: u8 },
    RawNoNumber { value: String },
    RawBroken { span: String },
    WordsOverlap { one: String, other: String },
    WrongCurve,
    NotUnsigned { what: &'static str },
    CounterStands { low: u64, high: u64 },
    CoversItself { byte: u32 },
    WrongCrc { problem: String },
    WrongMixedIn { signal: String },
    WrongProtection { problem: &'static str },
}

// validate/mod.rs

pub use flaw::{Flaw, InvalidDescription};

// wiring.rs

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Fitted {
    Unit(EcuId),
    Wiring(String),
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Terminator {
    pub at: Fitted,
    pub ohms: Option<u32>,
}
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ActiveStar {
    pub at: Fitted,
    pub branches: Vec<Vec<EcuId>>,
}
impl Fitted {
    pub fn unit(&self) -> Option<EcuId> {}
}
impl Network {
    pub fn branches(&self, own: NetworkId, ecus: &[Ecu]) -> Vec<Vec<EcuId>> {}
}
