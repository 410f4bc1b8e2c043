// error.rs

#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum LogError {
    Open { name: String, reason: io::Error },
    Read { name: String, byte: u64, reason: io::Error },
    Empty { name: String },
    Unrecognised { name: String, found: String },
    Head { name: String, layout: &'static str, what: String },
    Header { name: String, line: u64, what: String },
    ColumnMap { text: String, at: usize, what: String },
    LinePattern { text: String, at: usize, what: String },
    Unwritable { number: u64, what: String },
    Write { reason: io::Error },
}
impl From<io::Error> for LogError {}

// faults.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Faults;
impl Faults {
    pub const NONE: Self = Self(0);
    pub const OVERFLOW: Self = Self(1);
    pub const IDENTIFIER: Self = Self(1 << 1);
    pub const CHECKSUM: Self = Self(1 << 2);
    pub const PARITY: Self = Self(1 << 3);
    pub const FRAMING: Self = Self(1 << 4);
    pub const FRAME_CRC: Self = Self(1 << 5);
    pub const HEADER_CRC: Self = Self(1 << 6);
    pub const FRAME_END: Self = Self(1 << 7);
    pub const CODING: Self = Self(1 << 8);
    pub const FRAME_START: Self = Self(1 << 9);
    pub fn is_empty(self) -> bool {}
    pub fn contains(self, other: Self) -> bool {}
    pub fn names(self) -> impl Iterator<Item = &'static str> {}
}
impl BitOr for Faults {
    type Output = Self;
}
impl BitOrAssign for Faults {}
impl fmt::Display for Faults {}

// frame.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Channel(pub u16);
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChannelInfo {
    pub name: String,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    Data,
    Remote,
    Error,
    Unanswered,
    Faulty,
    Null,
    Signal,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Frame<'a> {
    pub time_ns: Option<i64>,
    pub channel: Channel,
    pub id: u32,
    pub extended: bool,
    pub kind: Kind,
    pub fd: bool,
    pub bit_rate_switch: bool,
    pub error_state: bool,
    pub dlc: Option<u8>,
    pub medium: Medium,
    pub payload: &'a [u8],
    pub place: PlaceInLog,
}
impl<'a> Frame<'a> {
    pub fn data(
        time_ns: Option<i64>,
        channel: Channel,
        id: u32,
        payload: &'a [u8],
    ) -> Self {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlaceInLog {
    Line(u64),
    Block { number: u64, offset: u64 },
}
impl fmt::Display for PlaceInLog {}

// lib.rs

pub mod write;
pub use error::LogError;
pub use faults::Faults;
pub use frame::{Channel, ChannelInfo, Frame, Kind, PlaceInLog};
#[cfg(target_os = "linux")]
pub use machine::CutWatch;
pub use medium::{CanXl, FlexRay, Lin, LinChecksum, Medium, Most};
pub use options::{Format, IdentifierOrder, Options};
pub use piece::{Piece, PieceEnd};
pub use receive::{Plain, PlainRun, Receive};
pub use record::LinkType;
pub use recording::Recording;
pub use report::{Damage, Report};
pub use text::{ColumnMap, LinePattern};

// machine/cut.rs

#[derive(Debug)]
pub struct CutWatch {}
impl CutWatch {
    pub fn begin() -> Option<Self> {}
    pub fn wait(mut self) {}
}

// machine/mod.rs

#[cfg(target_os = "linux")]
pub use cut::CutWatch;

// medium.rs

pub use wirelore_bits::lin::LinChecksum;
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Medium {
    Can,
    CanXl(CanXl),
    Lin(Lin),
    FlexRay(FlexRay),
    Most(Most),
    Serial,
    Ethernet,
}
impl Medium {
    pub fn faults(&self) -> Faults {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct CanXl {
    pub sdu_type: u8,
    pub virtual_network: u8,
    pub acceptance: u32,
    pub extended_content: bool,
    pub request_substitution: bool,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Lin {
    pub protected_id: Option<u8>,
    pub checksum: Option<u8>,
    pub checksum_kind: Option<LinChecksum>,
    pub faults: Faults,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct FlexRay {
    pub cycle: u8,
    pub on_b: bool,
    pub preamble: bool,
    pub sync: bool,
    pub startup: bool,
    pub header_crc: Option<u16>,
    pub faults: Faults,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Most {
    pub part: Option<u8>,
}

// options.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    Pcap,
    Pcapng,
    Text,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum IdentifierOrder {
    AsPublished,
    Swapped,
}
#[derive(Debug, Clone, Default)]
pub struct Options {
    pub columns: Option<ColumnMap>,
    pub line: Option<LinePattern>,
    pub identifiers: IdentifierOrder,
    pub format: Option<Format>,
}

// piece.rs

pub struct Piece {}
impl Piece {
    pub fn channels(&self) -> &[ChannelInfo] {}
    pub fn read(mut self, receive: &mut impl Receive) -> PieceEnd {}
}
impl fmt::Debug for Piece {}
pub struct PieceEnd {}
impl PieceEnd {
    pub fn channels(&self) -> &[ChannelInfo] {}
}
impl fmt::Debug for PieceEnd {}

// receive.rs

pub trait Receive {
    fn frame(&mut self, frame: &Frame<'_>);
    fn plain(&mut self, plain: Plain<'_>) -> bool {}
    fn takes_runs(&self) -> bool {}
    fn run(&mut self, run: &PlainRun) -> usize {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Plain<'a> {
    pub time_ns: i64,
    pub channel: Channel,
    pub id: u32,
    pub extended: bool,
    pub payload: &'a [u8],
}
#[derive(Debug, Clone)]
pub struct PlainRun {
    pub times_ns: [i64; Self::FRAMES],
    pub channels: [Channel; Self::FRAMES],
    pub ids: [u32; Self::FRAMES],
    pub payloads: [u64; Self::FRAMES],
}
impl PlainRun {
    pub const FRAMES: usize = 32;
    pub const EXTENDED: u32 = 1 << 31;
}
impl<F: FnMut(&Frame<'_>)> Receive for F {}

// record/mod.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LinkType {
    Can,
    Lin,
    FlexRay,
    Ethernet,
}
impl LinkType {
    pub fn number(self) -> u16 {}
    pub fn of_number(number: u16) -> Option<Self> {}
}

// recording.rs

pub struct Recording {}
impl Recording {
    pub fn open(path: &Path, options: &Options) -> Result<Self, LogError> {}
    pub fn from_reader(
        reader: Box<dyn Read + Send>,
        name: &str,
        options: &Options,
    ) -> Result<Self, LogError> {}
    pub fn from_bytes(
        bytes: impl AsRef<[u8]> + Send + Sync + 'static,
        name: &str,
        options: &Options,
    ) -> Result<Self, LogError> {}
    pub fn next(&mut self) -> Result<Option<Frame<'_>>, LogError> {}
    pub fn stretch(
        &mut self,
        most_bytes: usize,
        receive: &mut impl Receive,
    ) -> Result<bool, LogError> {}
    pub fn pieces(&self, count: usize, piece_bytes: usize) -> Vec<Piece> {}
    pub fn join(&mut self, end: PieceEnd) -> bool {}
    pub fn channels(&self) -> &[ChannelInfo] {}
    pub fn report(&self) -> &Report {}
    pub fn bytes_read(&self) -> u64 {}
    pub fn size(&self) -> Option<u64> {}
}
impl fmt::Debug for Recording {}

// report.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Damage {
    pub place: PlaceInLog,
    pub what: String,
}
impl fmt::Display for Damage {}
#[derive(Debug, Clone, Default)]
#[non_exhaustive]
pub struct Report {
    pub damaged: u64,
    pub damage: Vec<Damage>,
    pub lost_tail: Option<Damage>,
}
impl Report {
    pub fn frames_read(&self) -> u64 {}
    pub fn told(&self) -> Vec<String> {}
    pub fn notes(&self) -> Vec<String> {}
    pub fn is_of_other_kinds(&self) -> bool {}
}

// text/column_map.rs

#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ColumnMap {}
impl ColumnMap {
    pub fn parse(text: &str) -> Result<Self, LogError> {}
}

// text/mod.rs

pub use column_map::ColumnMap;
pub use pattern::LinePattern;

// text/pattern.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LinePattern {}
impl LinePattern {
    pub fn parse(text: &str) -> Result<Self, LogError> {}
}

// write/mod.rs

pub use pcapng::PcapngWriter;

// write/pcapng.rs

pub struct PcapngWriter<W: Write> {}
impl<W: Write> PcapngWriter<W> {
    pub fn new(output: W) -> Result<Self, LogError> {}
    pub fn add_channel(
        &mut self,
        name: &str,
        link: LinkType,
    ) -> Result<Channel, LogError> {}
    pub fn write(&mut self, frame: &Frame<'_>) -> Result<(), LogError> {}
    pub fn finish(mut self) -> Result<W, LogError> {}
}
impl<W: Write> fmt::Debug for PcapngWriter<W> {}
