//! What belongs to the wires of a network: the resistors that end them, and the active star that they meet in.

use serde::{Deserialize, Serialize};

use crate::{Ecu, EcuId, Network, NetworkId};

/// Where something sits that belongs to the wires.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fitted {
    /// In a control unit.
    Unit(EcuId),
    /// In the wiring, at this place.
    Wiring(String),
}

/// A resistor between the two wires of a network, where they end.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Terminator {
    /// Where it is.
    pub at: Fitted,
    /// What it measures, in whole ohms.
    pub ohms: Option<u32>,
}

/// An active star of FlexRay: it passes on to all other branches what it hears on one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ActiveStar {
    /// Where it is.
    pub at: Fitted,
    /// The units that share a branch, in their order on it, where that is stated; every other unit has a branch of its own.
    pub branches: Vec<Vec<EcuId>>,
}

impl Fitted {
    /// The unit that it is in.
    #[must_use]
    pub fn unit(&self) -> Option<EcuId> {
        match self {
            Self::Unit(unit) => Some(*unit),
            Self::Wiring(_) => None,
        }
    }
}

impl Network {
    /// All branches of its active star: those that are stated, then one for each other unit. None without a star.
    #[must_use]
    pub fn branches(&self, own: NetworkId, ecus: &[Ecu]) -> Vec<Vec<EcuId>> {
        let Some(star) = &self.star else { return Vec::new() };
        let is_on = |ecu: &Ecu| ecu.leads.contains(&own) || ecu.on.iter().any(|attachment| attachment.network == own);
        let stated = |unit: &EcuId| star.branches.iter().any(|branch| branch.contains(unit));
        let others = ecus.iter().zip((0..).map(EcuId)).filter(|(ecu, _)| is_on(ecu)).map(|(_, unit)| unit);
        let alone = others.filter(|unit| star.at.unit() != Some(*unit) && !stated(unit)).map(|unit| vec![unit]);
        star.branches.iter().cloned().chain(alone).collect()
    }
}
