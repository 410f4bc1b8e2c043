//! The tree: what the text says, before anybody asks whether it makes sense. Names are not looked up here and places are not
//! calculated; everything keeps its span. A part that could not be read is missing from the tree, and a message says so.

use wirelore_bits::{ByteOrder, Ratio};
use wirelore_model::{Charset, Grade, NetworkKind};

use crate::{Span, Spanned};

/// A name where it stands.
pub type Name = Spanned<String>;

/// One parsed file.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct File {
    /// The items, in order.
    pub items: Vec<Item>,
}

/// A top-level item.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// The whole item.
    pub span: Span,
    /// Notes and quieted rules in front of it.
    pub front: Front,
    /// What it is.
    pub kind: ItemKind,
}

/// What stands in front of an item.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Front {
    /// The `##` lines, joined with `\n`.
    pub note: Option<Spanned<String>>,
    /// `allow RULE, RULE` lines.
    pub allow: Vec<Name>,
}

/// The kinds of top-level item.
#[derive(Debug, Clone, PartialEq)]
pub enum ItemKind {
    /// `edition 1`
    Edition(Integer),
    /// `vehicle NAME "title"`
    Vehicle(Head),
    /// `allow RULE` at the top of the file, before any item: for the whole file.
    AllowInFile(Vec<Name>),
    /// `counting from 1`
    CountingFrom(Integer),
    /// `counting bits from the top`
    CountingBitsFromTop,
    /// `order intel`
    Order(Spanned<OrderWord>),
    /// `use "path"`
    UseFile(Spanned<String>),
    /// `use standard NAME`
    UseStandard(Name),
    /// `network ...`
    Network(Network),
    /// `ecu ...`
    Ecu(Ecu),
    /// `wire A -> B, C "what"`
    Wire(Wire),
    /// `states NAME { ... }`
    States(States),
    /// `layout NAME { ... }`
    Layout(Layout),
    /// `frame NAME ... { ... }`
    Frame(Frame),
    /// `gateway NAME { ... }`
    Gateway(Gateway),
}

/// A name with a title, and the clauses that any item may carry.
#[derive(Debug, Clone, PartialEq)]
pub struct Head {
    /// The name.
    pub name: Name,
    /// The title directly behind it.
    pub title: Option<Spanned<String>>,
    /// `called "..."`
    pub called: Option<Spanned<String>>,
    /// `guessed "..."` and its like.
    pub certainty: Option<Spanned<Certainty>>,
}

/// How sure the author is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Certainty {
    /// The grade.
    pub grade: Grade,
    /// The evidence.
    pub evidence: Option<String>,
}

/// `intel`, `motorola` or `mixed`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OrderWord {
    /// One order is expected.
    Only(ByteOrder),
    /// Both occur.
    Mixed,
}

/// A whole number as written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Integer {
    /// Its value, negative where a `-` stands in front.
    pub value: i128,
    /// Written in hexadecimal or binary: where raw values are meant, a pattern of bits.
    pub pattern: bool,
    /// Its place, with the sign.
    pub span: Span,
}

/// An exact number as written (`0.05`, `-40`, `1e-3`, `0x1F`).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exact {
    /// Its value.
    pub value: Ratio,
    /// Its place, with the sign.
    pub span: Span,
}

/// A length of time in nanoseconds.
pub type Time = Spanned<u64>;

/// `network NAME "title" KIND RATE[, data RATE][, order ...]`
#[derive(Debug, Clone, PartialEq)]
pub struct Network {
    /// Name and title.
    pub head: Head,
    /// The kind; missing where it could not be read.
    pub kind: Option<Spanned<NetworkKind>>,
    /// The rate in bit/s.
    pub rate: Option<Spanned<u64>>,
    /// `data 2 Mbit/s`
    pub data_rate: Option<Spanned<u64>>,
    /// `order intel`
    pub order: Option<Spanned<OrderWord>>,
}

/// `ecu NAME "title" on A, B, leads C, address 0x0B, optional`
#[derive(Debug, Clone, PartialEq)]
pub struct Ecu {
    /// Name and title.
    pub head: Head,
    /// The networks it sits on.
    pub on: Vec<Name>,
    /// The networks it leads (and sits on).
    pub leads: Vec<Name>,
    /// Its SAE J1939 address.
    pub address: Option<Integer>,
    /// `optional`
    pub optional: Option<Span>,
}

/// `wire A -> B, C "what"`
#[derive(Debug, Clone, PartialEq)]
pub struct Wire {
    /// From this unit.
    pub from: Name,
    /// To these.
    pub to: Vec<Name>,
    /// What it carries.
    pub what: Option<Spanned<String>>,
}

/// `states NAME "title" { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct States {
    /// Name and title.
    pub head: Head,
    /// The words.
    pub words: Vec<StateWord>,
}

/// `3..10 forward "Forward gear" as absent`
#[derive(Debug, Clone, PartialEq)]
pub struct StateWord {
    /// The raw values.
    pub values: RawRange,
    /// The word.
    pub word: Name,
    /// A title.
    pub title: Option<Spanned<String>>,
    /// `as absent`, `as fault`
    pub meaning: Option<Spanned<SpecialWord>>,
}

/// `absent` or `fault`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SpecialWord {
    /// No reading.
    Absent,
    /// Sensor fault.
    Fault,
}

/// `5` or `3..10`, raw.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RawRange {
    /// The first.
    pub first: Integer,
    /// The last; the same as `first` for a single value.
    pub last: Integer,
    /// Both.
    pub span: Span,
}

/// `layout NAME { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// Name and title.
    pub head: Head,
    /// What is in it: signals, `when`, `unknown`, `unused`, `use layout`.
    pub body: Vec<BodyItem>,
}

/// `frame NAME "title" on NETWORK RECOGNITION[, clauses] { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct Frame {
    /// Name and title.
    pub head: Head,
    /// The network; missing where it could not be read.
    pub on: Option<Name>,
    /// How it is recognised; missing where it could not be read.
    pub recognition: Option<Spanned<Recognition>>,
    /// `optional`
    pub optional: Option<Span>,
    /// The statements between the braces.
    pub body: Vec<BodyItem>,
}

/// How a frame is recognised.
#[derive(Debug, Clone, PartialEq)]
pub enum Recognition {
    /// `id 0x1B4`, `id 0x7E8..0x7EF`, `id 0x18FEF100 extended`
    Id {
        /// First and last identifier.
        ids: RawRange,
        /// The word `extended`.
        extended: Option<Span>,
    },
    /// `pgn 65265 from 0x0B, brakes priority 6`
    Pgn {
        /// The parameter group number.
        pgn: Integer,
        /// `from ...`
        sources: Vec<Source>,
        /// `priority 6`
        priority: Option<Integer>,
    },
}

/// A source of a parameter group.
#[derive(Debug, Clone, PartialEq)]
pub enum Source {
    /// An address.
    Address(Integer),
    /// A control unit with an address.
    Ecu(Name),
}

/// A statement inside a frame, a page or a layout.
#[derive(Debug, Clone, PartialEq)]
pub struct BodyItem {
    /// The whole statement.
    pub span: Span,
    /// Notes and quieted rules in front of it.
    pub front: Front,
    /// What it is.
    pub kind: BodyKind,
}

/// The kinds of statement inside a frame, a page or a layout.
#[derive(Debug, Clone, PartialEq)]
pub enum BodyKind {
    /// `sent by A, B TIMING`
    SentBy {
        /// The senders.
        ecus: Vec<Name>,
        /// What is said of the timing behind them.
        timing: Vec<Spanned<Timing>>,
    },
    /// `read by A, B`
    ReadBy(Vec<Name>),
    /// `every 20 ms, timeout 100 ms` without a sender.
    Timing(Vec<Spanned<Timing>>),
    /// `length 8`, `length 2..8`
    Length {
        /// The least.
        min: Integer,
        /// The greatest.
        max: Integer,
    },
    /// `signal ...`
    Signal(Box<Signal>),
    /// `when SIGNAL is VALUES [and ...] { ... }`
    When(When),
    /// `otherwise { ... }`
    Otherwise(Vec<BodyItem>),
    /// `unknown bits 3.7..3.4`
    Unknown(Place),
    /// `unused bits 3.7..3.4`
    Unused(Place),
    /// `use layout NAME at byte N prefix p_`
    UseLayout {
        /// The layout.
        layout: Name,
        /// The byte where its byte 0 (or 1, where it counts so) comes to lie.
        at_byte: Integer,
        /// What goes in front of its signals' names.
        prefix: Option<Name>,
    },
    /// `order intel`
    Order(Spanned<OrderWord>),
    /// `counting from 1`
    CountingFrom(Integer),
    /// `counting bits from the top`
    CountingBitsFromTop,
    /// `marks j1939`
    MarksJ1939,
}

/// One thing said about timing.
#[derive(Debug, Clone, PartialEq)]
pub enum Timing {
    /// `every 20 ms`, `every 10..40 ms`
    Every(PeriodSyntax),
    /// `every 20 ms while request is 1, else every 200 ms`
    EveryWhile {
        /// The period under the condition.
        fast: PeriodSyntax,
        /// The condition.
        test: Test,
        /// The period otherwise.
        slow: PeriodSyntax,
    },
    /// `on change`
    OnChange,
    /// `on request`
    OnRequest,
    /// `at least 10 ms apart`
    ApartAtLeast(Time),
    /// `20 ms..1 s apart`
    Apart(Time, Time),
    /// `jitter 2 ms`
    Jitter(Time),
    /// `timeout 100 ms`
    Timeout(Time),
}

/// A period: shortest and longest, the same where it is fixed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PeriodSyntax {
    /// The shortest, in ns.
    pub shortest: Time,
    /// The longest, in ns.
    pub longest: Time,
}

/// `when SIGNAL is VALUES and ... { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct When {
    /// The condition: all must hold; empty where it could not be read.
    pub tests: Vec<Test>,
    /// What is there then.
    pub body: Vec<BodyItem>,
}

/// `SIGNAL is 2, 4..6, forward`
#[derive(Debug, Clone, PartialEq)]
pub struct Test {
    /// The signal.
    pub signal: Name,
    /// The values, any of which will do.
    pub values: Vec<TestValue>,
}

/// A value in a condition.
#[derive(Debug, Clone, PartialEq)]
pub enum TestValue {
    /// Raw values.
    Raw(RawRange),
    /// A state word of the signal.
    Word(Name),
}

/// `signal NAME[1..12] "title" in PLACE [KIND] [= FORMULA UNIT][, clauses]`
#[derive(Debug, Clone, PartialEq)]
pub struct Signal {
    /// Name and title.
    pub head: Head,
    /// `[1..12]`
    pub elements: Option<Box<Elements>>,
    /// Where it sits; missing where it could not be read.
    pub place: Option<Place>,
    /// `step 2 bytes`
    pub step: Option<Spanned<Step>>,
    /// `signed` and its like.
    pub kind: Option<Spanned<Kind>>,
    /// What stands behind `=`.
    pub value: Option<Value>,
    /// The unit behind the formula or curve.
    pub unit: Option<Spanned<UnitText>>,
    /// `states NAME` or `states { ... }`
    pub states: Option<Spanned<StatesClause>>,
    /// `range LOW..HIGH`
    pub range: Option<Spanned<(Exact, Exact)>>,
    /// `absent RAW, RAW..RAW`
    pub absent: Vec<RawRange>,
    /// `fault RAW, RAW..RAW`
    pub fault: Vec<RawRange>,
    /// `counter LOW..HIGH step N`
    pub counter: Option<Box<Spanned<Counter>>>,
    /// `checksum ...`
    pub checksum: Option<Box<Spanned<Checksum>>>,
    /// A part of it could not be read, and a message says so: what is missing here is not missing in the text.
    pub incomplete: bool,
}

/// The element numbers of an array, both inside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Elements {
    /// The first.
    pub first: Integer,
    /// The last.
    pub last: Integer,
    /// With the brackets.
    pub span: Span,
}

/// The distance from one element of an array to the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// In bytes.
    Bytes(u32),
    /// In bits, in the signal's own order.
    Bits(u32),
}

/// Where a signal sits, as written: one piece, or several with `then` between them, most significant first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// The pieces.
    pub pieces: Vec<Spanned<Piece>>,
    /// The word `intel` or `motorola` behind them.
    pub order: Option<Spanned<ByteOrder>>,
    /// All of it.
    pub span: Span,
}

/// One piece of a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Piece {
    /// `bits 1.4..0.0` (or `bits 3.7`)
    Bits {
        /// The most significant end.
        msb: Position,
        /// The least significant end.
        lsb: Position,
    },
    /// `bit 6.5`
    Bit(Position),
    /// `byte 3`, `byte last`
    Byte(ByteIndex),
    /// `bytes 0..1`, `bytes 3..end`
    Bytes {
        /// The most significant one.
        msb: ByteIndex,
        /// The least significant one.
        lsb: ByteIndex,
    },
    /// `lsb 16 width 12 intel`, `msb 0.7 width 16 motorola`
    Counted {
        /// Which end is given.
        anchor: Anchor,
        /// Where that end is.
        at: FlatPosition,
        /// How many bits.
        width: Integer,
        /// The order, which this form must say.
        order: Option<ByteOrder>,
    },
}

/// Which end of a place the second form gives.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// The most significant bit.
    Msb,
    /// The least significant bit.
    Lsb,
}

/// BYTE.BIT as written: nothing shifted or turned yet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Position {
    /// The byte.
    pub byte: u32,
    /// The bit; may be out of range.
    pub bit: u32,
    /// Its place in the text.
    pub span: Span,
}

/// A position of the second form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FlatPosition {
    /// byte * 8 + bit, with bit 0 the least significant of its byte; never shifted by `counting`.
    Flat(Integer),
    /// BYTE.BIT
    Position(Position),
}

/// A byte number as written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ByteIndex {
    /// A number.
    Number(Integer),
    /// `end` or `last`: the last byte of the payload.
    Last(Span),
}

/// How bits are read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// `unsigned`
    Unsigned,
    /// `signed`
    Signed,
    /// `sign_magnitude`
    SignMagnitude,
    /// `float`
    Float,
    /// `bcd`
    Bcd,
    /// `flag`
    Flag,
    /// `text`, `text latin1`, `text utf8`
    Text(Charset),
    /// `bytes`
    Bytes,
}

/// What stands behind `=`.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A formula.
    Formula(Expr),
    /// `curve { 0: -40, 255: 150 }`
    Curve {
        /// The points.
        points: Vec<(Integer, Exact)>,
        /// With the braces.
        span: Span,
    },
}

/// A formula.
#[derive(Debug, Clone, PartialEq)]
pub struct Expr {
    /// What it is.
    pub kind: ExprKind,
    /// Its place.
    pub span: Span,
}

/// The kinds of formula.
#[derive(Debug, Clone, PartialEq)]
pub enum ExprKind {
    /// `raw`
    Raw,
    /// A number.
    Number(Ratio),
    /// `-x`
    Negative(Box<Expr>),
    /// `x + y` and its like.
    Binary(Box<Expr>, Operator, Box<Expr>),
}

/// Operators of formulas.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Operator {
    /// `+`
    Add,
    /// `-`
    Subtract,
    /// `*`
    Multiply,
    /// `/`
    Divide,
}

/// A unit as written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UnitText {
    /// A bare symbol.
    Symbol(String),
    /// In quotes.
    Quoted(String),
}

/// `states ...` of a signal.
#[derive(Debug, Clone, PartialEq)]
pub enum StatesClause {
    /// A table by name.
    Table(Name),
    /// Words of its own.
    Own(Vec<StateWord>),
}

/// `counter LOW..HIGH step N`
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Counter {
    /// The first count.
    pub low: Integer,
    /// The last count.
    pub high: Integer,
    /// `step N`
    pub step: Option<Integer>,
}

/// `checksum ALGORITHM over bytes A..B, C..D starting N first bytes ... then bytes ...`
#[derive(Debug, Clone, PartialEq)]
pub struct Checksum {
    /// The algorithm's name.
    pub algorithm: Name,
    /// The bytes it covers: first and last.
    pub over: Vec<Spanned<(ByteIndex, ByteIndex)>>,
    /// `starting N`
    pub starting: Option<Integer>,
    /// `first bytes ...`
    pub first: Vec<Integer>,
    /// `then bytes ...`
    pub then: Vec<Integer>,
}

/// `gateway NAME { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct Gateway {
    /// The control unit.
    pub ecu: Name,
    /// What it passes on.
    pub routes: Vec<Route>,
}

/// One line of a gateway.
#[derive(Debug, Clone, PartialEq)]
pub struct Route {
    /// The whole line.
    pub span: Span,
    /// Notes and quieted rules in front of it.
    pub front: Front,
    /// What is passed.
    pub what: Passed,
    /// `every 100 ms`, `every 10th`
    pub pace: Option<Spanned<Pace>>,
    /// `within 20 ms`
    pub within: Option<Time>,
}

/// What a gateway line passes on.
#[derive(Debug, Clone, PartialEq)]
pub enum Passed {
    /// `pass FRAME from A to B [as id N [extended]]`
    Frame {
        /// The frame.
        frame: Name,
        /// From this network.
        from: Name,
        /// To this network.
        to: Name,
        /// Its identifier there.
        new_id: Option<(Integer, Option<Span>)>,
    },
    /// `pass id 0x700..0x7FF [extended] from A to B`
    Ids {
        /// The identifiers.
        ids: RawRange,
        /// The word `extended`.
        extended: Option<Span>,
        /// From this network.
        from: Name,
        /// To this network.
        to: Name,
    },
    /// `pass all from A to B, except X, Y`
    All {
        /// From this network.
        from: Name,
        /// To this network.
        to: Name,
        /// The frames that stay behind.
        except: Vec<Name>,
    },
    /// `copy FRAME.SIGNAL from A to FRAME.SIGNAL on B`
    Signal {
        /// Frame and signal it comes from.
        source: (Name, Name),
        /// From this network.
        from: Name,
        /// Frame and signal it goes to.
        target: (Name, Name),
        /// On this network.
        to: Name,
    },
}

/// How often a route passes something on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pace {
    /// By its own clock, in ns.
    Every(u64),
    /// Every n-th one.
    Nth(u32),
}
