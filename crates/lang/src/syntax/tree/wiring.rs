//! What is said of the wires of a network.

use super::{Integer, Name, Text};
use crate::Spanned;

/// What a network line says of the network's wires.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WiringClauses<'t> {
    /// `terminators engine 120 ohm, "behind the dashboard"`
    pub terminators: Option<Spanned<Vec<TerminatorItem<'t>>>>,
    /// `star hub`
    pub star: Option<Spanned<FittedAt<'t>>>,
    /// `branch brakes, dampers`, any number of them.
    pub branches: Vec<Spanned<Vec<Name<'t>>>>,
}

/// Where a part of the wiring is.
#[derive(Debug, Clone, PartialEq)]
pub enum FittedAt<'t> {
    /// In a control unit.
    Unit(Name<'t>),
    /// At a place in the wiring.
    Wiring(Text<'t>),
}

/// `engine 120 ohm`
#[derive(Debug, Clone, PartialEq)]
pub struct TerminatorItem<'t> {
    /// Where it is.
    pub at: FittedAt<'t>,
    /// What it measures.
    pub ohms: Option<Integer>,
}
