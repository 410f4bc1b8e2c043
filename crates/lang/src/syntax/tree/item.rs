//! The items of a file: networks, control units, wires, states, layouts, gateways.

use std::borrow::Cow;

use wirelore_bits::ByteOrder;
use wirelore_model::{Grade, NetworkKind};

use super::{Body, Frame, Integer, Name, RawRange, Schedule, TelegramClauses, Text, Time, WiringClauses};
use crate::{Span, Spanned};

/// One parsed file.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct File<'t> {
    /// The items, in order.
    pub items: Vec<Item<'t>>,
    /// Whether an `allow` stands anywhere in it: in most files none does, and nobody needs to look for one.
    pub has_allow: bool,
}

/// A top-level item.
#[derive(Debug, Clone, PartialEq)]
pub struct Item<'t> {
    /// The whole item.
    pub span: Span,
    /// Notes and quieted rules in front of it.
    pub front: Front<'t>,
    /// What it is.
    pub kind: ItemKind<'t>,
}

/// What stands in front of an item.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Front<'t> {
    /// The `##` lines, joined with `\n`.
    pub note: Option<Box<Text<'t>>>,
    /// `allow RULE, RULE` lines.
    pub allow: Vec<Name<'t>>,
}

/// The kinds of top-level item.
#[derive(Debug, Clone, PartialEq)]
pub enum ItemKind<'t> {
    /// `edition 1`
    Edition(Integer),
    /// `vehicle NAME "title"`
    Vehicle(Head<'t>),
    /// `allow RULE` at the top of the file, before any item: for the whole file.
    AllowInFile(Vec<Name<'t>>),
    /// `counting from 1`
    CountingFrom(Integer),
    /// `counting bits from the top`
    CountingBitsFromTop,
    /// `order intel`
    Order(Spanned<OrderWord>),
    /// `use "path"`
    UseFile(Text<'t>),
    /// `use standard NAME`, `use standard NAME on NETWORK`
    UseStandard {
        /// The standard.
        standard: Name<'t>,
        /// The network that its frames are on, in place of its own.
        on: Option<Name<'t>>,
    },
    /// `network ...`
    Network(Box<Network<'t>>),
    /// `ecu ...`
    Ecu(Ecu<'t>),
    /// `wire A -> B, C "what"`
    Wire(Wire<'t>),
    /// `states NAME { ... }`
    States(States<'t>),
    /// `layout NAME { ... }`
    Layout(Layout<'t>),
    /// `frame NAME ... { ... }`
    Frame(Frame<'t>),
    /// `gateway NAME { ... }`
    Gateway(Gateway<'t>),
    /// `schedule NAME on NETWORK { ... }`
    Schedule(Schedule<'t>),
}

/// A name with a title, and the clauses that any item may carry.
#[derive(Debug, Clone, PartialEq)]
pub struct Head<'t> {
    /// The name.
    pub name: Name<'t>,
    /// The title directly behind it.
    pub title: Option<Text<'t>>,
    /// `called "..."`
    pub called: Option<Box<Text<'t>>>,
    /// `guessed "..."` and its like.
    pub certainty: Option<Box<Spanned<Certainty<'t>>>>,
}

/// How sure the author is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Certainty<'t> {
    /// The grade.
    pub grade: Grade,
    /// The evidence.
    pub evidence: Option<Cow<'t, str>>,
}

/// `intel`, `motorola` or `mixed`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OrderWord {
    /// One order is expected.
    Only(ByteOrder),
    /// Both occur.
    Mixed,
}

/// `network NAME "title" KIND RATE[, data RATE][, order ...][, cycle ...]`
#[derive(Debug, Clone, PartialEq)]
pub struct Network<'t> {
    /// Name and title.
    pub head: Head<'t>,
    /// The kind; missing where it could not be read.
    pub kind: Option<Spanned<NetworkKind>>,
    /// The rate in bit/s.
    pub rate: Option<Spanned<u64>>,
    /// `data 2 Mbit/s`
    pub data_rate: Option<Spanned<u64>>,
    /// `order intel`
    pub order: Option<Spanned<OrderWord>>,
    /// What its messages look like.
    pub telegram: TelegramClauses,
    /// What is said of cycle and slots.
    pub flexray: FlexRayClauses,
    /// What is said of its wires.
    pub wiring: WiringClauses<'t>,
}

/// What a network line says of a FlexRay network's time.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FlexRayClauses {
    /// `cycle 5 ms`
    pub cycle: Option<Time>,
    /// `numbered 0..63` behind it.
    pub numbered: Option<Spanned<(Integer, Integer)>>,
    /// `static slots 62 of 32 bytes`
    pub static_slots: Option<Spanned<(Integer, Integer)>>,
    /// `dynamic up to slot 200`
    pub dynamic: Option<Spanned<Integer>>,
}

/// `ecu NAME "title" on A, B, leads C, address 0x0B, ring position 3, optional`
#[derive(Debug, Clone, PartialEq)]
pub struct Ecu<'t> {
    /// Name and title.
    pub head: Head<'t>,
    /// The networks it sits on.
    pub on: Vec<Name<'t>>,
    /// The networks it leads (and sits on).
    pub leads: Vec<Name<'t>>,
    /// Its SAE J1939 address.
    pub address: Option<Integer>,
    /// `ring position 3`
    pub ring_position: Option<Integer>,
    /// `optional`
    pub optional: Option<Span>,
}

/// `wire A -> B, C "what"`
#[derive(Debug, Clone, PartialEq)]
pub struct Wire<'t> {
    /// From this unit.
    pub from: Name<'t>,
    /// To these.
    pub to: Vec<Name<'t>>,
    /// What it carries.
    pub what: Option<Text<'t>>,
}

/// `states NAME "title" { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct States<'t> {
    /// Name and title.
    pub head: Head<'t>,
    /// The words.
    pub words: Vec<StateWord<'t>>,
}

/// `3..10 forward "Forward gear" as absent`
#[derive(Debug, Clone, PartialEq)]
pub struct StateWord<'t> {
    /// The raw values.
    pub values: RawRange,
    /// The word.
    pub word: Name<'t>,
    /// A title.
    pub title: Option<Text<'t>>,
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

/// `layout NAME { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct Layout<'t> {
    /// Name and title.
    pub head: Head<'t>,
    /// What is in it: signals, `when`, `unknown`, `unused`, `use layout`.
    pub body: Body<'t>,
}

/// `gateway NAME { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct Gateway<'t> {
    /// The control unit.
    pub ecu: Name<'t>,
    /// What it passes on.
    pub routes: Vec<Route<'t>>,
}

/// One line of a gateway.
#[derive(Debug, Clone, PartialEq)]
pub struct Route<'t> {
    /// The whole line.
    pub span: Span,
    /// Notes and quieted rules in front of it.
    pub front: Front<'t>,
    /// What is passed.
    pub what: Passed<'t>,
    /// `every 100 ms`, `every 10th`
    pub pace: Option<Spanned<Pace>>,
    /// `within 20 ms`
    pub within: Option<Time>,
}

/// What a gateway line passes on.
#[derive(Debug, Clone, PartialEq)]
pub enum Passed<'t> {
    /// `pass FRAME from A to B [as id N [extended]]`
    Frame {
        /// The frame.
        frame: Name<'t>,
        /// From this network.
        from: Name<'t>,
        /// To this network.
        to: Name<'t>,
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
        from: Name<'t>,
        /// To this network.
        to: Name<'t>,
    },
    /// `pass all from A to B, except X, Y`
    All {
        /// From this network.
        from: Name<'t>,
        /// To this network.
        to: Name<'t>,
        /// The frames that stay behind.
        except: Vec<Name<'t>>,
    },
    /// `copy FRAME.SIGNAL from A to FRAME.SIGNAL on B`
    Signal {
        /// Frame and signal it comes from.
        source: (Name<'t>, Name<'t>),
        /// From this network.
        from: Name<'t>,
        /// Frame and signal it goes to.
        target: (Name<'t>, Name<'t>),
        /// On this network.
        to: Name<'t>,
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
