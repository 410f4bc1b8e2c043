//! The budget of a vehicle: how full each network is, how late each frame can get.
//!
//! [`Budget::of`] calculates it from a description alone. [`measure`] counts the same out of recordings; [`what_if`] changes a
//! description first; [`figures`] says a vehicle in numbers, to be held against another one.
//!
//! Nothing is invented: where a description does not say enough, the figure is missing and a [`Remark`] or [`WhyNot`] says why.

mod cost;
pub mod measure;
mod networks;
mod parts;
mod rank;
mod remark;
mod stream;

pub use cost::{CanCost, Cost, Spread};
pub use networks::{ChannelUse, NetworkLoad, ScheduleUse, SlotUse, SlotsUse, StreamLoad, UnitLoad};
pub use rank::Rank;
pub use remark::Remark;
pub use stream::{Stream, Timing, Traffic, Uncounted, WhyNot, traffic};

use wirelore_model::{Database, NetworkId};

/// What a description says of the load of every network.
#[derive(Debug, Clone, PartialEq)]
pub struct Budget {
    /// By network, in the order of the description.
    pub networks: Vec<NetworkLoad>,
}

impl Budget {
    /// Calculates it.
    #[must_use]
    pub fn of(database: &Database) -> Self {
        let networks = traffic(database).into_iter().zip((0..).map(NetworkId));
        Self { networks: networks.map(|(traffic, id)| networks::load(database, id, traffic)).collect() }
    }
}
