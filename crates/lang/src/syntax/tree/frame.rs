//! Frames and what stands between their braces.

use super::{Front, Head, Integer, Name, OrderWord, Place, RawRange, Signal, Time};
use crate::{Span, Spanned};

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
