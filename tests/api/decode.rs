// batch/bitmap.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bitmap {}
impl Bitmap {
    pub fn has(&self, row: usize) -> bool {}
    pub fn rows(&self) -> usize {}
    pub fn count(&self) -> usize {}
    pub fn words(&self) -> &[u64] {}
}

// batch/block.rs

#[derive(Debug, Clone, Copy)]
pub struct Block<'a> {}
impl<'a> Block<'a> {
    pub fn frame(&self) -> FrameId {}
    pub fn rows(&self) -> usize {}
    pub fn times_ns(&self) -> &'a [i64] {}
    pub fn first_time_ns(&self) -> Option<i64> {}
    pub fn all_have_times(&self) -> bool {}
    pub fn has_time(&self, row: usize) -> bool {}
    pub fn channel(&self, row: usize) -> Channel {}
    pub fn network(&self, row: usize) -> Option<NetworkId> {}
    pub fn source(&self, row: usize) -> Option<Source> {}
}
#[derive(Debug, Clone, Copy)]
pub struct Column<'a> {}
#[derive(Debug, Clone, Copy)]
pub enum Numbers<'a> {
    U8(&'a [u8]),
    U16(&'a [u16]),
    U32(&'a [u32]),
    U64(&'a [u64]),
    I8(&'a [i8]),
    I16(&'a [i16]),
    I32(&'a [i32]),
    I64(&'a [i64]),
    F64(&'a [f64]),
}
impl<'a> Column<'a> {
    pub fn index(&self) -> usize {}
    pub fn signal(&self) -> SignalId {}
    pub fn numbers(&self) -> Option<Numbers<'a>> {}
    pub fn valid(&self) -> Option<&'a Bitmap> {}
    pub fn is_there(&self, row: usize) -> Option<bool> {}
    pub fn reading(&self, row: usize) -> Option<Reading<'a>> {}
    pub fn verdict(&self, row: usize) -> Option<Verdict> {}
}

// batch/mod.rs

pub use bitmap::Bitmap;
pub use block::{Block, Column, Numbers};
pub use plan::Store;
pub use table::{TableSink, Tables};

// batch/plan.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Store {
    Values,
    Raw,
}

// batch/table.rs

pub trait TableSink: Send {
    fn block(&mut self, block: &Block<'_>);
    fn column(&mut self, column: &Column<'_>);
    fn end(&mut self) -> io::Result<()> {}
}
pub struct Tables<'d, S> {}
impl<S> fmt::Debug for Tables<'_, S> {}
impl<'d, S: TableSink> Tables<'d, S> {
    pub fn new(
        database: &Database,
        decoder: &Decoder,
        store: Store,
        open: impl FnMut(FrameId) -> io::Result<S> + 'd,
    ) -> Self {}
    pub fn into_sinks(self) -> impl Iterator<Item = (FrameId, S)> {}
}

// bind/mod.rs

#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct BindMap {}
impl BindMap {
    pub fn parse(text: &str) -> Result<Self, SessionError> {}
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Binding {
    pub log: usize,
    pub channel: String,
    pub network: Option<NetworkId>,
    pub network_name: Option<String>,
    pub reason: Reason,
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reason {
    Told,
    SameName,
    EarlierLog,
    OnlyOne,
    Identifiers { seen: usize, described: usize, next: Option<(String, usize)> },
    Messages { seen: usize, described: usize, next: Option<(String, usize)> },
    AnyMessage,
    NotNamed,
    NameTaken { by: String },
    NothingDescribed { seen: usize },
    NoMessageDescribed { seen: usize },
}
impl Reason {
    pub fn was_a_choice(&self) -> bool {}
}
impl fmt::Display for Binding {}
impl fmt::Display for Reason {}

// checks/mod.rs

pub use origin::Origin;
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    Counter(CounterVerdict),
    Checksum(ChecksumVerdict),
    Protection(ProtectionVerdict),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CounterVerdict {
    First,
    Right,
    Repeated,
    Jumped { by: u64 },
    Suspended,
    OutsideRange,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ChecksumVerdict {
    Right,
    Wrong { expected: u64, found: u64 },
    TooShort,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ProtectionVerdict {
    First,
    Right,
    Repeated,
    Lost { messages: u32 },
    WrongSequence { rise: u32 },
    NotACount,
    WrongSum { expected: u64, found: u64, belongs: Option<Belongs> },
    WrongDataId { found: u32, belongs: Option<Belongs> },
    WrongLength { told: u64, is: u64 },
    TooShort,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Belongs {
    pub frame: FrameId,
    pub data_id: u32,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Sender {
    pub channel: Channel,
    pub network: NetworkId,
    pub frame: FrameId,
    pub source: Option<u8>,
}
#[derive(Debug, Clone, Default)]
pub struct Checks {}
impl Checks {
    pub fn frame(
        &mut self,
        decoder: &Decoder,
        sender: Sender,
        origin: Origin,
        payload: &[u8],
        mut each: impl FnMut(SignalId, Verdict),
    ) {}
}

// checks/origin.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Origin {
    pub id: Option<SeenId>,
    pub header: Option<[u8; 8]>,
}

// decoder.rs

#[derive(Debug, Clone, Default)]
pub struct Setup {
    pub selection: Selection,
    pub units: Units,
}
#[derive(Debug, Clone)]
pub struct Decoder {}
impl Decoder {
    pub fn new(database: &Database) -> Result<Self, SessionError> {}
    pub fn with(database: &Database, setup: &Setup) -> Result<Self, SessionError> {}
    pub fn find(&self, network: NetworkId, id: u32, extended: bool) -> Option<FrameId> {}
    pub fn find_seen(
        &self,
        network: NetworkId,
        seen: SeenId,
        payload: &[u8],
    ) -> Option<FrameId> {}
    pub fn decode(
        &self,
        frame: FrameId,
        payload: &[u8],
        each: impl FnMut(SignalId, Reading<'_>),
    ) -> FrameOutcome {}
    pub fn decode_into(
        &self,
        frame: FrameId,
        payload: &[u8],
        readings: &mut impl Readings,
    ) -> FrameOutcome {}
    pub fn unit(&self, frame: FrameId, signal: SignalId) -> Option<&Unit> {}
    pub fn wants(&self, frame: FrameId) -> bool {}
    pub fn formula(&self, frame: FrameId, signal: SignalId) -> Option<&Affine> {}
}

// encode/assignment.rs

pub fn parse_assignment(
    database: &Database,
    frame: FrameId,
    text: &str,
) -> Result<(String, Given), EncodeError> {}

// encode/error.rs

#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum EncodeError {
    NoSuchFrame { frame: u32, count: usize },
    AssignmentText { text: String },
    NoSuchSignal { frame: String, signal: String, hint: String },
    GivenTwice { signal: String },
    SeveralPages { signal: String, conditions: String },
    NoValue { signal: String, text: String, why: String },
    Unit { signal: String, unit: String, why: String },
    OutOfReach { signal: String, value: String, reachable: String },
    MeansSomethingElse {
        signal: String,
        value: String,
        bits: u64,
        meaning: &'static str,
    },
    NoSuchPattern { signal: String, what: &'static str },
    CurveBothWays { signal: String },
    CannotHold { signal: String, what: String, why: String },
    IdentifierUnknown { signal: String },
    NeverTogether {
        one: String,
        one_condition: String,
        other: String,
        other_condition: String,
    },
    NotThere { signal: String, condition: String },
    EventTriggered { frame: String, answers: String },
    CurveTooFine { signal: String },
    TooLong { needed: usize, most: usize },
    TooLarge { needed: usize, most: usize },
}

// encode/mod.rs

pub use assignment::parse_assignment;
pub use error::EncodeError;
pub use note::Note;
pub use wire::{OnWire, on_wire};
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Given {
    Value { number: Ratio, unit: Option<Unit> },
    Word(String),
    Raw(u64),
    NoReading,
    SensorFault,
    Text(String),
    Bytes(Vec<u8>),
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Encoded {
    pub payload: Vec<u8>,
    pub notes: Vec<Note>,
}
pub fn encode<N: AsRef<str>>(
    database: &Database,
    frame: FrameId,
    assignments: &[(N, Given)],
) -> Result<Encoded, EncodeError> {}

// encode/note.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Note {
    Rounded { signal: String, to: String },
    OutsideRange { signal: String, range: String },
    NotACount { signal: String, found: u64, low: u64, high: u64 },
    NoWord { signal: String, number: i128 },
    SelectorSet { selector: String, value: String, needed_by: String },
    SizeSet { signal: String, of: String, bytes: usize },
    UnsetAbsent { signal: String },
    UnsetZero { signal: String },
    UnsetBytes { signal: String, bytes: usize },
    CounterStarts { signal: String, at: u64 },
    ChecksumCalculated { signal: String, value: u64 },
    ChecksumAsGiven { signal: String, right: u64 },
    Protected { signal: String, profile: u8, sum: u64 },
    HeaderTaken { signal: String, header: [u8; 8] },
    Lengthened { from: usize, to: usize, why: &'static str },
    OnLin { protected_id: u8, checksum: u8, kind: LinChecksum },
    Carried { by: &'static str },
    Around { without: &'static str },
    Undescribed { places: Vec<(BitPosition, BitPosition)> },
    FurtherElements { from: usize },
}
impl fmt::Display for Note {}

// encode/wire.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OnWire {
    pub on_b: bool,
    pub cycle: u8,
    pub bytes: Vec<u8>,
}
pub fn on_wire(database: &Database, frame: FrameId, payload: &[u8]) -> Vec<OnWire> {}

// error.rs

#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum SessionError {
    CurveTooFine { frame: String, signal: String },
    TableTooLong,
    UnitTooFine { frame: String, signal: String, from: String, to: String },
    NoSuchSignal { pattern: String, hint: String },
    NothingChosen,
    UnitsText { part: String },
    UnknownUnit { unit: String, hint: String },
    UnitsDiffer { from: String, to: String, from_is: &'static str, to_is: &'static str },
    UnitsReciprocal { from: String, to: String, from_is: &'static str },
    UnitTwice { unit: String },
    NoSuchNetwork { name: String, hint: String },
    BindText { part: String },
    BoundTwice { channel: String },
    NoSuchChannel { channel: String, hint: String },
    NoNetwork,
    ChannelUnclear { channel: String, seen: String, networks: String },
    ChannelsAlike { one: String, other: String, network: String, bind: String },
    TimesTurned { from: String, until: String },
    Log(LogError),
    Sink(io::Error),
}

// flat/mod.rs

pub fn lorec(database: &Database) -> Result<Vec<u8>, SessionError> {}

// lib.rs

pub use batch::{Bitmap, Block, Column, Numbers, Store, TableSink, Tables};
pub use bind::{BindMap, Binding, Reason};
pub use checks::{
    Belongs, Checks, ChecksumVerdict, CounterVerdict, Origin, ProtectionVerdict, Sender,
    Verdict,
};
pub use decoder::{Decoder, Setup};
pub use encode::{
    EncodeError, Encoded, Given, Note, OnWire, encode, on_wire, parse_assignment,
};
pub use error::SessionError;
pub use flat::lorec;
pub use payload_rows::PayloadRows;
pub use reach::reachable;
pub use reading::{FrameOutcome, Reading, Readings, Unmatched, Value};
pub use selection::Selection;
pub use session::{
    ChecksumCounts, CounterCounts, Event, LinTally, MessageFault, Options,
    ProtectionCounts, Session, Sink, Tally, UnknownFrame, WholeLogs, seen_id,
};
pub use source::{Source, SourceKinds};
pub use units::Units;

// payload_rows.rs

#[derive(Debug)]
pub struct PayloadRows<'a> {}
impl PayloadRows<'_> {
    pub fn next_row(&mut self) -> Option<&[u8]> {}
}
impl Decoder {
    pub fn rows<'a>(&'a self, frame: FrameId, payload: &'a [u8]) -> PayloadRows<'a> {}
}

// reach.rs

pub fn reachable(
    database: &Database,
    frame: FrameId,
    signal: SignalId,
) -> Option<(Ratio, Ratio)> {}

// reading.rs

#[derive(Debug, Clone, PartialEq)]
pub struct Reading<'a> {
    pub value: Value<'a>,
    pub word: Option<&'a str>,
    pub outside_range: bool,
    pub bits: Option<u64>,
}
#[derive(Debug, Clone, PartialEq)]
pub enum Value<'a> {
    Integer(i128),
    Number(f64),
    TroubleCode(TroubleCode),
    Text(Cow<'a, str>),
    Bytes(&'a [u8]),
    NoReading,
    SensorFault,
    NotDigits,
    BeyondCurve,
    TooShort,
}
impl Value<'_> {
    pub fn number(&self) -> Option<f64> {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Unmatched {
    pub selector: SignalId,
    pub number: Option<i128>,
    pub bits: u64,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct FrameOutcome {
    pub readings: u32,
    pub too_short: bool,
    pub unmatched: Option<Unmatched>,
}
pub trait Readings {
    fn reading(&mut self, signal: SignalId, reading: Reading<'_>);
    fn unmatched(&mut self, unmatched: Unmatched) {}
}
impl<F: FnMut(SignalId, Reading<'_>)> Readings for F {}

// selection.rs

#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Selection {}
impl Selection {
    pub fn all() -> Self {}
    pub fn of(signals: impl IntoIterator<Item = (FrameId, SignalId)>) -> Self {}
    pub fn matching(database: &Database, patterns: &str) -> Result<Self, SessionError> {}
    pub fn wants(&self, frame: FrameId, signal: SignalId) -> bool {}
}

// session/lin.rs

#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct LinTally {
    pub right_checksums: u64,
    pub other_checksums: u64,
    pub sleep_requests: u64,
    pub wake_ups: u64,
}
impl LinTally {
    pub fn other_kinds(&self) -> Vec<(NetworkId, FrameId, u64)> {}
    pub fn unanswered(&self) -> Vec<(NetworkId, SeenId, u64)> {}
}

// session/mod.rs

pub use lin::LinTally;
pub use sample::seen_id;
pub use sink::{Event, Sink};
pub use tally::{
    ChecksumCounts, CounterCounts, MessageFault, ProtectionCounts, Tally, UnknownFrame,
};
pub use whole_logs::WholeLogs;
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Options {
    pub bind: BindMap,
    pub only: Option<Vec<String>>,
    pub from_ns: Option<i64>,
    pub until_ns: Option<i64>,
    pub threads: Option<NonZero<usize>>,
}
#[derive(Debug)]
pub struct Session<'d> {}
impl<'d> Session<'d> {
    pub fn new(decoder: &'d Decoder, options: &Options) -> Result<Self, SessionError> {}
    pub fn run(
        &mut self,
        recording: &mut Recording,
        sink: &mut impl Sink,
    ) -> Result<(), SessionError> {}
    pub fn advance(
        &mut self,
        recording: &mut Recording,
        sink: &mut impl Sink,
    ) -> Result<bool, SessionError> {}
    pub fn tally(&self) -> &Tally {}
    pub fn bindings(&self) -> &[Binding] {}
    pub fn channels_never_seen(&self) -> impl Iterator<Item = &str> {}
    pub fn first_time_ns(&self) -> Option<i64> {}
}

// session/sample.rs

pub fn seen_id(frame: &Frame<'_>) -> SeenId {}

// session/sink.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Event<'a> {
    pub time_ns: Option<i64>,
    pub first_time_ns: Option<i64>,
    pub network: NetworkId,
    pub frame: FrameId,
    pub source: Option<Source>,
    pub channel: Channel,
    pub id: SeenId,
    pub payload: &'a [u8],
}
pub trait Sink {
    fn begin(&mut self, event: &Event<'_>) {}
    fn verdict(&mut self, event: &Event<'_>, signal: SignalId, verdict: Verdict) {}
    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>);
    fn end(&mut self, event: &Event<'_>, outcome: &FrameOutcome) -> io::Result<()> {}
}
impl<F: FnMut(&Event<'_>, SignalId, Reading<'_>)> Sink for F {}

// session/tables.rs

impl Session<'_> {
    pub fn run_tables<S: TableSink>(
        &mut self,
        recording: &mut Recording,
        tables: &mut Tables<'_, S>,
    ) -> Result<(), SessionError> {}
    pub fn advance_tables<S: TableSink>(
        &mut self,
        recording: &mut Recording,
        tables: &mut Tables<'_, S>,
    ) -> Result<bool, SessionError> {}
}

// session/tally/verdicts.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct CounterCounts {
    pub first: u64,
    pub right: u64,
    pub repeated: u64,
    pub jumped: u64,
    pub suspended: u64,
    pub outside_range: u64,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct ChecksumCounts {
    pub right: u64,
    pub wrong: u64,
    pub too_short: u64,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct ProtectionCounts {
    pub first: u64,
    pub right: u64,
    pub repeated: u64,
    pub after_loss: u64,
    pub messages_lost: u64,
    pub wrong_sequence: u64,
    pub not_a_count: u64,
    pub wrong_sum: u64,
    pub wrong_data_id: u64,
    pub wrong_length: u64,
    pub too_short: u64,
}

// session/tally.rs

pub use self::verdicts::{ChecksumCounts, CounterCounts, ProtectionCounts};
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Tally {
    pub read: u64,
    pub decoded: u64,
    pub too_short: u64,
    pub without_description: u64,
    pub not_selected: u64,
    pub remote: u64,
    pub error: u64,
    pub carrying: u64,
    pub unanswered: u64,
    pub faulty: u64,
    pub null: u64,
    pub wire_signals: u64,
    pub damaged: u64,
    pub on_unbound_channel: u64,
    pub left_out_by_network: u64,
    pub left_out_by_time: u64,
    pub messages: u64,
    pub further_rows: u64,
    pub message_faults: u64,
    pub readings: u64,
    pub no_reading: u64,
    pub sensor_fault: u64,
    pub outside_range: u64,
    pub unmatched_selectors: u64,
    pub counters: CounterCounts,
    pub checksums: ChecksumCounts,
    pub protections: ProtectionCounts,
    pub lin: LinTally,
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MessageFault {
    pub network: NetworkId,
    pub id: SeenId,
    pub place: Option<PlaceInLog>,
    pub what: String,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct UnknownFrame {
    pub network: NetworkId,
    pub id: SeenId,
    pub count: u64,
}
impl Tally {
    pub fn unknown_frames(&self) -> Vec<UnknownFrame> {}
    pub fn unknown_rest(&self) -> u64 {}
    pub fn unmatched_values(&self) -> Vec<(FrameId, Unmatched, u64)> {}
    pub fn unmatched_rest(&self) -> u64 {}
    pub fn wrong_checksums(&self) -> Vec<(NetworkId, FrameId, u64)> {}
    pub fn counter_faults(&self) -> Vec<(NetworkId, FrameId, u64)> {}
    pub fn protection_faults(&self) -> Vec<(NetworkId, FrameId, u64)> {}
    pub fn belongings(&self) -> Vec<(NetworkId, FrameId, Belongs, u64)> {}
    pub fn outside_ranges(&self) -> Vec<(FrameId, SignalId, u64)> {}
    pub fn first_message_faults(&self) -> &[MessageFault] {}
    pub fn damaged_frames(&self) -> Vec<(NetworkId, SeenId, Faults, u64)> {}
    pub fn remote_frames(&self) -> Vec<(NetworkId, SeenId, u64)> {}
    pub fn was_damaged_on_the_way(&self) -> bool {}
    pub fn sum_of_parts(&self) -> u64 {}
}

// session/whole_logs.rs

#[derive(Debug)]
pub struct WholeLogs<'d> {}
impl<'d> WholeLogs<'d> {
    pub fn new(decoder: &'d Decoder, bind: &BindMap) -> Result<Self, SessionError> {}
    pub fn bind(
        &mut self,
        recording: &Recording,
        seen: &[(Channel, Vec<SeenId>)],
    ) -> Result<Vec<Option<NetworkId>>, SessionError> {}
    pub fn bindings(&self) -> &[Binding] {}
    pub fn channels_never_seen(&self) -> impl Iterator<Item = &str> {}
}

// source.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Source {
    Address(u8),
    Identifier { id: u32, extended: bool },
}
impl Source {
    pub fn address(self) -> Option<u8> {}
    pub fn number(self) -> u32 {}
}
impl fmt::Display for Source {}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct SourceKinds {
    pub addresses: bool,
    pub standard: bool,
    pub extended: bool,
}
impl SourceKinds {
    pub fn of(frame: &Frame) -> Self {}
    pub fn any(self) -> bool {}
    pub fn identifiers(self) -> bool {}
}
impl std::ops::BitOrAssign for SourceKinds {}

// units.rs

#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Units {}
impl Units {
    pub fn as_described() -> Self {}
    pub fn imperial() -> Self {}
    pub fn parse(text: &str) -> Result<Self, SessionError> {}
    pub fn shown(&self, described: &Unit) -> Unit {}
}

// words.rs

impl fmt::Display for Value<'_> {}
impl Value<'_> {
    pub fn instead(&self) -> Option<&'static str> {}
}
impl Reading<'_> {
    pub fn state(&self, verdict: Option<Verdict>) -> impl fmt::Display {}
    pub fn write_state(
        &self,
        verdict: Option<Verdict>,
        to: &mut impl Write,
    ) -> fmt::Result {}
}
impl Event<'_> {
    pub fn since_first_ns(&self) -> Option<i64> {}
    pub fn seconds(&self) -> impl fmt::Display {}
}
impl fmt::Display for Verdict {}
impl fmt::Display for ProtectionVerdict {}
