//! The items of a file: networks, control units, wires, states, layouts, gateways.

use wirelore_bits::ByteOrder;
use wirelore_model::{Grade, NetworkKind};

use super::{BodyItem, Frame, Integer, Name, RawRange, Time};
use crate::{Span, Spanned};

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

/// `layout NAME { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// Name and title.
    pub head: Head,
    /// What is in it: signals, `when`, `unknown`, `unused`, `use layout`.
    pub body: Vec<BodyItem>,
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
