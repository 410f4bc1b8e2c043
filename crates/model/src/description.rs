//! A vehicle's description as plain data, before anything has vouched for it.

use serde::{Deserialize, Serialize};

use crate::{Ecu, Frame, Label, Network, Route, Schedule, StateTable, Wire};

/// Everything that a set of `.lore` files says. Lists keep the order of the text; indices ([`crate::FrameId`] and its like) point into them.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Description {
    /// The vehicle, where the files name one.
    pub vehicle: Option<Vehicle>,
    /// The networks.
    pub networks: Vec<Network>,
    /// The control units.
    pub ecus: Vec<Ecu>,
    /// The discrete wires.
    pub wires: Vec<Wire>,
    /// The tables of state words that have a name.
    pub states: Vec<StateTable>,
    /// The frames.
    pub frames: Vec<Frame>,
    /// What the gateways pass on.
    pub routes: Vec<Route>,
    /// The schedules of the LIN networks.
    pub schedules: Vec<Schedule>,
}

/// The vehicle itself.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Vehicle {
    /// Name, title and notes.
    pub label: Label,
}
