//! The tree: what the text says, before anybody asks whether it makes sense. Names are not looked up here and places are not
//! calculated; everything keeps its span. A part that could not be read is missing from the tree, and a message says so.

mod formula;
mod frame;
mod item;
mod number;
mod packets;
mod place;
mod schedule;
mod signal;
mod wiring;

pub use formula::{Formula, Line, Trouble};
pub use frame::{
    Body, BodyItem, BodyKind, Frame, PeriodSyntax, Recognition, Repeat, Source, Test, TestValue, Times, Timing,
    UseLayout, When,
};
pub use item::{
    Certainty, Ecu, File, FlexRayClauses, Front, Gateway, Head, Item, ItemKind, Layout, Network, OrderWord, Pace,
    Passed, Route, SpecialWord, StateWord, States, Wire,
};
pub use number::{Exact, Integer, Name, RawRange, Text, Time};
pub use packets::{CheckByte, MessageSort, SizeByte, TelegramClauses};
pub use place::{Anchor, ByteIndex, FlatPosition, Piece, Place, Position};
pub use schedule::{Schedule, Slot};
pub use signal::{
    Algorithm, Checksum, Counter, CrcParameters, Elements, Extras, Kind, MixedIn, Protection, Signal, StatesClause,
    Step, UnitText, Value,
};
pub use wiring::{FittedAt, TerminatorItem, WiringClauses};
