// compiler.rs

#[derive(Debug, Clone)]
pub struct Checked {
    pub sources: Sources,
    pub diagnostics: Vec<Diagnostic>,
    pub database: Option<Database>,
}
impl Checked {
    pub fn has_errors(&self) -> bool {}
    pub fn unreadable(&self) -> bool {}
}
pub fn check(entries: &[&str], loader: &dyn Loader) -> Checked {}
pub fn check_text(name: &str, text: &str) -> Checked {}

// diagnostic.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    Hint,
    Warning,
    Error,
}
impl Level {
    pub fn word(self) -> &'static str {}
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Diagnostic {
    pub rule: Rule,
    pub message: String,
    pub site: Site,
    pub here: String,
    pub elsewhere: Vec<Remark>,
    pub help: Vec<String>,
    pub fix: Option<Fix>,
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Remark {
    pub site: Site,
    pub text: String,
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fix {
    pub site: Site,
    pub text: String,
}
impl Diagnostic {
    pub fn new(rule: Rule, site: Site, message: impl Into<String>) -> Self {}
    pub fn here(mut self, text: impl Into<String>) -> Self {}
    pub fn remark(mut self, site: Site, text: impl Into<String>) -> Self {}
    pub fn help(mut self, text: impl Into<String>) -> Self {}
    pub fn fix(mut self, site: Site, text: impl Into<String>) -> Self {}
    pub fn level(&self) -> Level {}
}

// format.rs

pub fn format(text: &str) -> Result<String, Vec<Diagnostic>> {}

// lex.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Token {
    pub kind: TokenKind,
    pub span: Span,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TokenKind {
    Blank,
    LineEnd,
    Comment,
    Note,
    Word,
    Number,
    Text,
    Comma,
    Colon,
    Equals,
    OpenBrace,
    CloseBrace,
    OpenParen,
    CloseParen,
    OpenBracket,
    CloseBracket,
    Plus,
    Minus,
    Star,
    Slash,
    Dot,
    DotDot,
    Arrow,
    Mark,
    Wrong,
}
impl TokenKind {
    pub fn is_trivia(self) -> bool {}
}
pub fn lex(text: &str, file: FileId) -> (Vec<Token>, Vec<Diagnostic>) {}

// lib.rs

pub mod lex;
pub mod render;
pub mod syntax;
pub use compiler::{Checked, check, check_text};
pub use diagnostic::{Diagnostic, Fix, Level, Remark};
pub use format::format;
pub use open::{OpenError, holds_stored, open};
pub use rules::{Page, Rule};
pub use source::{
    Contents, FileLoader, LoadError, Loaded, Loader, MemoryLoader, Sources, read_source,
};
pub use span::{FileId, Site, Span, Spanned};

// open.rs

#[derive(Debug, thiserror::Error)]
pub enum OpenError {
    Mistakes { text: String },
    Read { name: String, reason: std::io::Error },
    Store { name: String, reason: store::LoadError },
}
pub fn open(path: impl AsRef<Path>) -> Result<Database, OpenError> {}
pub fn holds_stored(path: &Path) -> bool {}

// render/json.rs

pub fn json_lines(sources: &Sources, messages: &[Diagnostic]) -> String {}

// render/safe.rs

pub fn message(text: &str) -> Cow<'_, str> {}

// render/sarif.rs

pub fn sarif(sources: &Sources, messages: &[Diagnostic]) -> String {}

// render/text.rs

pub fn text(sources: &Sources, messages: &[Diagnostic], color: bool) -> String {}

// render.rs

pub use json::json_lines;
pub use safe::message as visible;
pub use sarif::sarif;
pub use text::text;

// rules.rs

impl Rule {
    pub fn named(name: &str) -> Option<Self> {}
    pub fn page(self) -> Page {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Page {
    pub summary: &'static str,
    pub body: &'static str,
    pub wrong: &'static str,
    pub right: &'static str,
}

// source/contents.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Contents {
    Recording,
    Compiled,
    FlatTable,
}

// source/file_loader.rs

#[derive(Debug, Clone, Copy, Default)]
pub struct FileLoader;
impl Loader for FileLoader {}
pub fn read_source(reader: impl Read, name: &str) -> Result<String, LoadError> {}

// source/memory_loader.rs

#[derive(Debug, Clone, Default)]
pub struct MemoryLoader {}
impl MemoryLoader {
    pub fn with(mut self, path: &str, text: impl Into<String>) -> Self {}
}
impl Loader for MemoryLoader {}

// source.rs

pub use contents::Contents;
pub use file_loader::{FileLoader, read_source};
pub use memory_loader::MemoryLoader;
#[derive(Debug, Clone, Default)]
pub struct Sources {}
impl Sources {
    pub fn add(&mut self, name: impl Into<String>, text: impl Into<String>) -> FileId {}
    pub fn ids(&self) -> impl Iterator<Item = FileId> + use<> {}
    pub fn name(&self, file: FileId) -> &str {}
    pub fn text(&self, file: FileId) -> &str {}
    pub fn line_column(&self, site: Site) -> (u32, u32) {}
    pub fn end_line_column(&self, site: Site) -> (u32, u32) {}
}
pub trait Loader {
    fn load(&self, path: &str, from: Option<&str>) -> Result<Loaded, LoadError>;
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Loaded {
    pub key: String,
    pub name: String,
    pub text: String,
}
#[derive(Debug, thiserror::Error)]
pub enum LoadError {
    NotFound { path: String },
    Unreadable { path: String, cause: std::io::Error },
    TooLarge { path: String },
    NotText { path: String, byte_offset: usize },
    NoDescription { path: String, contents: Contents },
}

// span.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize)]
pub struct Span {
    pub start: u32,
    pub end: u32,
}
impl Span {
    pub fn new(start: u32, end: u32) -> Self {}
    pub fn to(self, other: Self) -> Self {}
    pub fn after(self) -> Self {}
    pub fn range(self) -> std::ops::Range<usize> {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Spanned<T> {
    pub value: T,
    pub span: Span,
}
impl<T> Spanned<T> {
    pub fn new(value: T, span: Span) -> Self {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(pub u32);
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Site {
    pub file: FileId,
    pub span: Span,
}

// syntax/mod.rs

pub mod tree;
pub use report::Script;
pub const LONGEST_TEXT: usize = 16 << 20;

// syntax/report.rs

#[derive(Debug)]
pub struct Script {}
impl Script {
    pub fn new(text: impl Into<String>, file: FileId) -> Self {}
    pub fn read(&self) -> (File<'_>, Vec<Diagnostic>) {}
    pub fn into_text(self) -> String {}
}

// syntax/tree/formula.rs

#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Formula {
    pub line: Result<Line, Trouble>,
    pub mentions_raw: bool,
    pub span: Span,
}
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    pub factor: Ratio,
    pub offset: Ratio,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trouble {
    RawTimesRaw(Span),
    DividedByRaw(Span),
    DividedByZero(Span),
    TooLong(Span),
}

// syntax/tree/frame.rs

#[derive(Debug, Clone, PartialEq)]
pub struct Frame<'t> {
    pub head: Head<'t>,
    pub on: Option<Name<'t>>,
    pub recognition: Option<Spanned<Recognition<'t>>>,
    pub carried: Option<Spanned<Transport>>,
    pub optional: Option<Span>,
    pub checksum: Option<Spanned<LinChecksum>>,
    pub stands_for: Vec<Name<'t>>,
    pub body: Body<'t>,
}
#[derive(Debug, Clone, PartialEq)]
pub enum Recognition<'t> {
    Id { ids: RawRange, extended: Option<Span> },
    Pid(Integer),
    Pgn { pgn: Integer, sources: Vec<Source<'t>>, priority: Option<Integer> },
    Xl { acceptance: Integer, priority: Option<Integer> },
    Slot {
        slot: Integer,
        first_cycle: Option<Integer>,
        repetition: Option<Integer>,
        channels: FlexRayChannels,
    },
    Function {
        block: Integer,
        instance: Option<Integer>,
        function: Integer,
        operation: Option<Integer>,
    },
    Service {
        service: Integer,
        is_event: bool,
        method: Integer,
        sort: Option<MessageSort>,
    },
    Port { protocol: PortProtocol, port: Integer },
    DoIp { payload_type: Integer, source: Option<Integer>, target: Option<Integer> },
    Telegram { source: Option<Integer>, target: Option<Integer>, starts: Vec<Integer> },
}
#[derive(Debug, Clone, PartialEq)]
pub enum Source<'t> {
    Address(Integer),
    Ecu(Name<'t>),
}
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Body<'t> {
    pub items: Vec<BodyItem<'t>>,
    pub signals: Vec<Signal<'t>>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct BodyItem<'t> {
    pub span: Span,
    pub front: Front<'t>,
    pub kind: BodyKind<'t>,
}
#[derive(Debug, Clone, PartialEq)]
pub enum BodyKind<'t> {
    SentBy { ecus: Vec<Name<'t>>, timing: Vec<Spanned<Timing<'t>>> },
    ReadBy(Vec<Name<'t>>),
    Timing(Vec<Spanned<Timing<'t>>>),
    Length(Box<RawRange>),
    Signal(usize),
    When(Box<When<'t>>),
    Otherwise(Box<Body<'t>>),
    Repeat(Box<Repeat<'t>>),
    Unknown(Box<Place>),
    Unused(Box<Place>),
    UseLayout(Box<UseLayout<'t>>),
    Order(Spanned<OrderWord>),
    CountingFrom(Box<Integer>),
    CountingBitsFromTop,
    MarksJ1939,
}
#[derive(Debug, Clone, PartialEq)]
pub struct UseLayout<'t> {
    pub layout: Name<'t>,
    pub at_byte: Integer,
    pub prefix: Option<Name<'t>>,
}
#[derive(Debug, Clone, PartialEq)]
pub enum Timing<'t> {
    Every(PeriodSyntax),
    EveryWhile { fast: PeriodSyntax, test: Test<'t>, slow: PeriodSyntax },
    OnChange,
    OnRequest,
    ApartAtLeast(Time),
    Apart(Time, Time),
    Jitter(Time),
    Timeout(Time),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PeriodSyntax {
    pub shortest: Time,
    pub longest: Time,
}
#[derive(Debug, Clone, PartialEq)]
pub struct When<'t> {
    pub tests: Vec<Test<'t>>,
    pub body: Body<'t>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Repeat<'t> {
    pub from: Option<Integer>,
    pub times: Option<Times<'t>>,
    pub up_to: Option<Integer>,
    pub size: Option<Integer>,
    pub head: Span,
    pub body: Body<'t>,
}
#[derive(Debug, Clone, PartialEq)]
pub enum Times<'t> {
    ToEnd,
    Rows,
    Number(Integer),
    Signal(Name<'t>),
}
#[derive(Debug, Clone, PartialEq)]
pub struct Test<'t> {
    pub signal: Name<'t>,
    pub values: Vec<TestValue<'t>>,
}
#[derive(Debug, Clone, PartialEq)]
pub enum TestValue<'t> {
    Raw(RawRange),
    Word(Name<'t>),
}

// syntax/tree/item.rs

#[derive(Debug, Clone, PartialEq, Default)]
pub struct File<'t> {
    pub items: Vec<Item<'t>>,
    pub has_allow: bool,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Item<'t> {
    pub span: Span,
    pub front: Front<'t>,
    pub kind: ItemKind<'t>,
}
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Front<'t> {
    pub note: Option<Box<Text<'t>>>,
    pub allow: Vec<Name<'t>>,
}
#[derive(Debug, Clone, PartialEq)]
pub enum ItemKind<'t> {
    Edition(Integer),
    Vehicle(Head<'t>),
    AllowInFile(Vec<Name<'t>>),
    CountingFrom(Integer),
    CountingBitsFromTop,
    Order(Spanned<OrderWord>),
    UseFile(Text<'t>),
    UseStandard { standard: Name<'t>, on: Option<Name<'t>> },
    Network(Box<Network<'t>>),
    Ecu(Ecu<'t>),
    Wire(Wire<'t>),
    States(States<'t>),
    Layout(Layout<'t>),
    Frame(Frame<'t>),
    Gateway(Gateway<'t>),
    Schedule(Schedule<'t>),
}
#[derive(Debug, Clone, PartialEq)]
pub struct Head<'t> {
    pub name: Name<'t>,
    pub title: Option<Text<'t>>,
    pub called: Option<Box<Text<'t>>>,
    pub certainty: Option<Box<Spanned<Certainty<'t>>>>,
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Certainty<'t> {
    pub grade: Grade,
    pub evidence: Option<Cow<'t, str>>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OrderWord {
    Only(ByteOrder),
    Mixed,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Network<'t> {
    pub head: Head<'t>,
    pub kind: Option<Spanned<NetworkKind>>,
    pub rate: Option<Spanned<u64>>,
    pub data_rate: Option<Spanned<u64>>,
    pub order: Option<Spanned<OrderWord>>,
    pub telegram: TelegramClauses,
    pub flexray: FlexRayClauses,
    pub wiring: WiringClauses<'t>,
}
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FlexRayClauses {
    pub cycle: Option<Time>,
    pub numbered: Option<Spanned<(Integer, Integer)>>,
    pub static_slots: Option<Spanned<(Integer, Integer)>>,
    pub dynamic: Option<Spanned<Integer>>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Ecu<'t> {
    pub head: Head<'t>,
    pub on: Vec<Name<'t>>,
    pub leads: Vec<Name<'t>>,
    pub address: Option<Integer>,
    pub ring_position: Option<Integer>,
    pub optional: Option<Span>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Wire<'t> {
    pub from: Name<'t>,
    pub to: Vec<Name<'t>>,
    pub what: Option<Text<'t>>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct States<'t> {
    pub head: Head<'t>,
    pub words: Vec<StateWord<'t>>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct StateWord<'t> {
    pub values: RawRange,
    pub word: Name<'t>,
    pub title: Option<Text<'t>>,
    pub meaning: Option<Spanned<SpecialWord>>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SpecialWord {
    Absent,
    Fault,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Layout<'t> {
    pub head: Head<'t>,
    pub body: Body<'t>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Gateway<'t> {
    pub ecu: Name<'t>,
    pub routes: Vec<Route<'t>>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Route<'t> {
    pub span: Span,
    pub front: Front<'t>,
    pub what: Passed<'t>,
    pub pace: Option<Spanned<Pace>>,
    pub within: Option<Time>,
}
#[derive(Debug, Clone, PartialEq)]
pub enum Passed<'t> {
    Frame {
        frame: Name<'t>,
        from: Name<'t>,
        to: Name<'t>,
        new_id: Option<(Integer, Option<Span>)>,
    },
    Ids { ids: RawRange, extended: Option<Span>, from: Name<'t>, to: Name<'t> },
    All { from: Name<'t>, to: Name<'t>, except: Vec<Name<'t>> },
    Signal {
        source: (Name<'t>, Name<'t>),
        from: Name<'t>,
        target: (Name<'t>, Name<'t>),
        to: Name<'t>,
    },
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pace {
    Every(u64),
    Nth(u32),
}

// syntax/tree/number.rs

pub type Text<'t> = Spanned<Cow<'t, str>>;
pub type Name<'t> = Text<'t>;
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Integer {
    pub value: i128,
    pub pattern: bool,
    pub span: Span,
}
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exact {
    pub value: Ratio,
    pub span: Span,
}
pub type Time = Spanned<u64>;
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RawRange {
    pub first: Integer,
    pub last: Integer,
    pub span: Span,
}

// syntax/tree/packets.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MessageSort {
    Request,
    RequestNoReturn,
    Notification,
    Response,
    Error,
}
impl MessageSort {
    pub const ALL: [Self; 5] = [
        Self::Request,
        Self::RequestNoReturn,
        Self::Notification,
        Self::Response,
        Self::Error,
    ];
    pub fn word(self) -> &'static str {}
    pub fn number(self) -> u8 {}
}
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TelegramClauses {
    pub source: Option<Integer>,
    pub target: Option<Integer>,
    pub size: Option<Spanned<SizeByte>>,
    pub check: Option<Spanned<CheckByte>>,
    pub gap: Option<Time>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SizeByte {
    pub byte: Integer,
    pub counts_from: Integer,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CheckByte {
    Xor,
    Sum,
}

// syntax/tree/place.rs

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    pub first: Spanned<Piece>,
    pub others: Vec<Spanned<Piece>>,
    pub order: Option<Spanned<ByteOrder>>,
    pub span: Span,
}
impl Place {
    pub fn pieces(&self) -> impl Iterator<Item = &Spanned<Piece>> {}
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Piece {
    Bits { msb: Position, lsb: Position },
    Bit(Position),
    Byte(ByteIndex),
    Bytes { msb: ByteIndex, lsb: ByteIndex },
    Counted {
        anchor: Anchor,
        at: FlatPosition,
        width: Integer,
        order: Option<ByteOrder>,
    },
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    Msb,
    Lsb,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Position {
    pub byte: u32,
    pub bit: u32,
    pub span: Span,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FlatPosition {
    Flat(Integer),
    Position(Position),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ByteIndex {
    Number(Integer),
    Last(Span),
}

// syntax/tree/schedule.rs

#[derive(Debug, Clone, PartialEq)]
pub struct Schedule<'t> {
    pub head: Head<'t>,
    pub on: Name<'t>,
    pub time_base: Option<Time>,
    pub jitter: Option<Time>,
    pub slots: Vec<Slot<'t>>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Slot<'t> {
    pub span: Span,
    pub front: Front<'t>,
    pub sporadic: Option<Span>,
    pub frames: Vec<Name<'t>>,
    pub takes: Option<Time>,
    pub every: Option<Time>,
}

// syntax/tree/signal.rs

#[derive(Debug, Clone, PartialEq)]
pub struct Signal<'t> {
    pub head: Head<'t>,
    pub place: Option<Place>,
    pub kind: Option<Spanned<Kind>>,
    pub value: Option<Value>,
    pub unit: Option<Spanned<UnitText<'t>>>,
    pub range: Option<Spanned<(Ratio, Ratio)>>,
    pub extras: Option<Box<Extras<'t>>>,
    pub incomplete: bool,
}
impl<'t> Signal<'t> {
    pub fn extras(&self) -> &Extras<'t> {}
}
#[derive(Debug, Clone, PartialEq)]
pub struct Extras<'t> {
    pub elements: Option<Elements>,
    pub step: Option<Spanned<Step>>,
    pub states: Option<Spanned<StatesClause<'t>>>,
    pub absent: Vec<RawRange>,
    pub fault: Vec<RawRange>,
    pub size: Option<Name<'t>>,
    pub counter: Option<Box<Spanned<Counter>>>,
    pub checksum: Option<Box<Spanned<Checksum<'t>>>>,
    pub shown: Option<Span>,
    pub protection: Option<Box<Spanned<Protection<'t>>>>,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Elements {
    pub first: Integer,
    pub last: Integer,
    pub span: Span,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    Bytes(u32),
    Bits(u32),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    Unsigned,
    Signed,
    SignMagnitude,
    Float,
    Bcd,
    Flag,
    TroubleCode,
    Text(Charset),
    Bytes,
}
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    Formula(Formula),
    Curve { points: Vec<(Integer, Exact)>, span: Span },
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UnitText<'t> {
    Symbol(Cow<'t, str>),
    Quoted(Cow<'t, str>),
}
#[derive(Debug, Clone, PartialEq)]
pub enum StatesClause<'t> {
    Table(Name<'t>),
    Own(Vec<StateWord<'t>>),
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Counter {
    pub low: Integer,
    pub high: Integer,
    pub step: Option<Integer>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct Checksum<'t> {
    pub algorithm: Algorithm<'t>,
    pub over: Vec<Spanned<(ByteIndex, ByteIndex)>>,
    pub starting: Option<Integer>,
    pub first: Vec<MixedIn<'t>>,
    pub then: Vec<MixedIn<'t>>,
}
#[derive(Debug, Clone, PartialEq)]
pub enum Algorithm<'t> {
    Named(Name<'t>),
    Crc(Box<Spanned<CrcParameters>>),
}
impl Algorithm<'_> {
    pub fn span(&self) -> Span {}
}
#[derive(Debug, Clone, PartialEq)]
pub struct CrcParameters {
    pub width: Integer,
    pub poly: Integer,
    pub start: Option<Integer>,
    pub xor: Option<Integer>,
    pub reflected: bool,
}
#[derive(Debug, Clone, PartialEq)]
pub enum MixedIn<'t> {
    Byte(Integer),
    Identifier(Integer),
    Signal(Name<'t>),
}
#[derive(Debug, Clone, PartialEq)]
pub struct Protection<'t> {
    pub profile: Integer,
    pub mode: Option<Name<'t>>,
    pub data_ids: Option<Spanned<Vec<Integer>>>,
    pub at: Option<Spanned<ByteIndex>>,
    pub over: Option<Spanned<(ByteIndex, ByteIndex)>>,
    pub delta: Option<Integer>,
}

// syntax/tree/wiring.rs

#[derive(Debug, Clone, PartialEq, Default)]
pub struct WiringClauses<'t> {
    pub terminators: Option<Spanned<Vec<TerminatorItem<'t>>>>,
    pub star: Option<Spanned<FittedAt<'t>>>,
    pub branches: Vec<Spanned<Vec<Name<'t>>>>,
}
#[derive(Debug, Clone, PartialEq)]
pub enum FittedAt<'t> {
    Unit(Name<'t>),
    Wiring(Text<'t>),
}
#[derive(Debug, Clone, PartialEq)]
pub struct TerminatorItem<'t> {
    pub at: FittedAt<'t>,
    pub ohms: Option<Integer>,
}

// syntax/tree.rs

pub use formula::{Formula, Line, Trouble};
pub use frame::{
    Body, BodyItem, BodyKind, Frame, PeriodSyntax, Recognition, Repeat, Source, Test,
    TestValue, Times, Timing, UseLayout, When,
};
pub use item::{
    Certainty, Ecu, File, FlexRayClauses, Front, Gateway, Head, Item, ItemKind, Layout,
    Network, OrderWord, Pace, Passed, Route, SpecialWord, StateWord, States, Wire,
};
pub use number::{Exact, Integer, Name, RawRange, Text, Time};
pub use packets::{CheckByte, MessageSort, SizeByte, TelegramClauses};
pub use place::{Anchor, ByteIndex, FlatPosition, Piece, Place, Position};
pub use schedule::{Schedule, Slot};
pub use signal::{
    Algorithm, Checksum, Counter, CrcParameters, Elements, Extras, Kind, MixedIn,
    Protection, Signal, StatesClause, Step, UnitText, Value,
};
pub use wiring::{FittedAt, TerminatorItem, WiringClauses};
