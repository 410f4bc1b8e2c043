//! Frames and what stands between their braces.

use wirelore_model::{FlexRayChannels, LinChecksum, PortProtocol, Transport};

use super::{Front, Head, Integer, MessageSort, Name, OrderWord, Place, RawRange, Signal, Time};
use crate::{Span, Spanned};

/// `frame NAME "title" on NETWORK RECOGNITION[, clauses] { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct Frame<'t> {
    /// Name and title.
    pub head: Head<'t>,
    /// The network; missing where it could not be read.
    pub on: Option<Name<'t>>,
    /// How it is recognised; missing where it could not be read.
    pub recognition: Option<Spanned<Recognition<'t>>>,
    /// `carried by iso_tp`
    pub carried: Option<Spanned<Transport>>,
    /// `optional`
    pub optional: Option<Span>,
    /// `classic`, `enhanced`
    pub checksum: Option<Spanned<LinChecksum>>,
    /// `stands for A, B`
    pub stands_for: Vec<Name<'t>>,
    /// What stands between the braces.
    pub body: Body<'t>,
}

/// How a frame is recognised.
#[derive(Debug, Clone, PartialEq)]
pub enum Recognition<'t> {
    /// `id 0x1B4`, `id 0x7E8..0x7EF`, `id 0x18FEF100 extended`
    Id {
        /// First and last identifier.
        ids: RawRange,
        /// The word `extended`.
        extended: Option<Span>,
    },
    /// `pid 0x92`
    Pid(Integer),
    /// `pgn 65265 from 0x0B, brakes priority 6`
    Pgn {
        /// The parameter group number.
        pgn: Integer,
        /// `from ...`
        sources: Vec<Source<'t>>,
        /// `priority 6`
        priority: Option<Integer>,
    },
    /// `xl 0x11223344 priority 0x123`
    Xl {
        /// The acceptance field.
        acceptance: Integer,
        /// `priority 0x123`
        priority: Option<Integer>,
    },
    /// `slot 42 from cycle 1 every 4th channel a`
    Slot {
        /// The slot.
        slot: Integer,
        /// `from cycle 1`
        first_cycle: Option<Integer>,
        /// `every 4th`
        repetition: Option<Integer>,
        /// `channel a`
        channels: FlexRayChannels,
    },
    /// `function 0x22.0x01.0x0D2 operation status`
    Function {
        /// The function block.
        block: Integer,
        /// The instance; `None`: any.
        instance: Option<Integer>,
        /// The function.
        function: Integer,
        /// The operation, from its word or its number.
        operation: Option<Integer>,
    },
    /// `service 0x4A10 event 0x8001`, `service 0x4A10 method 0x0001 response`
    Service {
        /// The service.
        service: Integer,
        /// The word is `event`, not `method`.
        is_event: bool,
        /// The method or event.
        method: Integer,
        /// `response`
        sort: Option<MessageSort>,
    },
    /// `udp port 41200`
    Port {
        /// `udp` or `tcp`
        protocol: PortProtocol,
        /// The port.
        port: Integer,
    },
    /// `doip 0x8001 from 0x0E00 to 0x1001`
    DoIp {
        /// The payload type.
        payload_type: Integer,
        /// `from 0x0E00`
        source: Option<Integer>,
        /// `to 0x1001`
        target: Option<Integer>,
    },
    /// `from 0x10 to 0xF1 starts 0x41 0x0C`, `any message`
    Telegram {
        /// `from 0x10`
        source: Option<Integer>,
        /// `to 0xF1`
        target: Option<Integer>,
        /// `starts 0x41 0x0C`
        starts: Vec<Integer>,
    },
}

/// A source of a parameter group.
#[derive(Debug, Clone, PartialEq)]
pub enum Source<'t> {
    /// An address.
    Address(Integer),
    /// A control unit with an address.
    Ecu(Name<'t>),
}

/// What stands between the braces of a frame, a page or a layout.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Body<'t> {
    /// The statements, in order.
    pub items: Vec<BodyItem<'t>>,
    /// Its signals, in order. (They are large and there are tens of thousands of them: side by side they are quickly made and dropped.)
    pub signals: Vec<Signal<'t>>,
}

/// A statement inside a frame, a page or a layout.
#[derive(Debug, Clone, PartialEq)]
pub struct BodyItem<'t> {
    /// The whole statement.
    pub span: Span,
    /// Notes and quieted rules in front of it.
    pub front: Front<'t>,
    /// What it is.
    pub kind: BodyKind<'t>,
}

/// The kinds of statement inside a frame, a page or a layout. (What is large is boxed: there are tens of thousands of statements.)
#[derive(Debug, Clone, PartialEq)]
pub enum BodyKind<'t> {
    /// `sent by A, B TIMING`
    SentBy {
        /// The senders.
        ecus: Vec<Name<'t>>,
        /// What is said of the timing behind them.
        timing: Vec<Spanned<Timing<'t>>>,
    },
    /// `read by A, B`
    ReadBy(Vec<Name<'t>>),
    /// `every 20 ms, timeout 100 ms` without a sender.
    Timing(Vec<Spanned<Timing<'t>>>),
    /// `length 8`, `length 2..8`
    Length(Box<RawRange>),
    /// `signal ...`: its place among the signals of the body.
    Signal(usize),
    /// `when SIGNAL is VALUES [and ...] { ... }`
    When(Box<When<'t>>),
    /// `otherwise { ... }`
    Otherwise(Box<Body<'t>>),
    /// `repeat from byte 2 to end, up to 32 { ... }`
    Repeat(Box<Repeat<'t>>),
    /// `unknown bits 3.7..3.4`
    Unknown(Box<Place>),
    /// `unused bits 3.7..3.4`
    Unused(Box<Place>),
    /// `use layout NAME at byte N prefix p_`
    UseLayout(Box<UseLayout<'t>>),
    /// `order intel`
    Order(Spanned<OrderWord>),
    /// `counting from 1`
    CountingFrom(Box<Integer>),
    /// `counting bits from the top`
    CountingBitsFromTop,
    /// `marks j1939`
    MarksJ1939,
}

/// `use layout NAME at byte N prefix p_`
#[derive(Debug, Clone, PartialEq)]
pub struct UseLayout<'t> {
    /// The layout.
    pub layout: Name<'t>,
    /// The byte where its byte 0 (or 1, where it counts so) comes to lie.
    pub at_byte: Integer,
    /// What goes in front of its signals' names.
    pub prefix: Option<Name<'t>>,
}

/// One thing said about timing.
#[derive(Debug, Clone, PartialEq)]
pub enum Timing<'t> {
    /// `every 20 ms`, `every 10..40 ms`
    Every(PeriodSyntax),
    /// `every 20 ms while request is 1, else every 200 ms`
    EveryWhile {
        /// The period under the condition.
        fast: PeriodSyntax,
        /// The condition.
        test: Test<'t>,
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
pub struct When<'t> {
    /// The condition: all must hold; empty where it could not be read.
    pub tests: Vec<Test<'t>>,
    /// What is there then.
    pub body: Body<'t>,
}

/// `repeat from byte N HOW OFTEN, up to N, size N bytes { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct Repeat<'t> {
    /// `from byte N`
    pub from: Option<Integer>,
    /// How often; missing where it could not be read.
    pub times: Option<Times<'t>>,
    /// `up to N`
    pub up_to: Option<Integer>,
    /// `size N bytes`
    pub size: Option<Integer>,
    /// All of it but the block.
    pub head: Span,
    /// What is there each time.
    pub body: Body<'t>,
}

/// How often a group is there.
#[derive(Debug, Clone, PartialEq)]
pub enum Times<'t> {
    /// `to end`
    ToEnd,
    /// `to end as rows`
    Rows,
    /// `4 times`
    Number(Integer),
    /// `COUNT times`
    Signal(Name<'t>),
}

/// `SIGNAL is 2, 4..6, forward`
#[derive(Debug, Clone, PartialEq)]
pub struct Test<'t> {
    /// The signal.
    pub signal: Name<'t>,
    /// The values, any of which will do.
    pub values: Vec<TestValue<'t>>,
}

/// A value in a condition.
#[derive(Debug, Clone, PartialEq)]
pub enum TestValue<'t> {
    /// Raw values.
    Raw(RawRange),
    /// A state word of the signal.
    Word(Name<'t>),
}
