//! The budget of a vehicle: how full each network is, how late each frame can get.
//!
//! [`Budget::of`] calculates it from a description alone. [`measure`] counts the same out of recordings; [`what_if`] changes a
//! description first; [`Figures`] say a vehicle in numbers, to be held against another one.
//!
//! Nothing is invented: where a description does not say enough, the figure is missing and a [`Remark`] or [`WhyNot`] says why.
//!
//! ```
//! use wirelore_lang::check_text;
//! use wirelore_survey::budget::Budget;
//!
//! let text = "network drive can 500 kbit/s\n\
//!             frame wheel_speeds on drive id 0x1B4 {\n every 10 ms\n length 8\n}\n";
//! let database = check_text("van.lore", text).database.ok_or("a mistake in the text")?;
//!
//! let budget = Budget::of(&database);
//! // 100 frames a second of 111 bits, and of 135 with all stuff bits that can be.
//! let share = budget.networks[0].share.ok_or("no rate")?;
//! assert_eq!((share.least, share.most), (0.0222, 0.027));
//! // Nobody goes first and nobody blocks it: it takes as long as it is.
//! let late = budget.lateness[0].clone().ok_or("no rate")??;
//! assert_eq!(late.streams[0].worst.map(|worst| worst.0), Ok(270_000));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod cost;
mod figures;
mod lateness;
pub mod measure;
mod networks;
mod parts;
mod rank;
mod remark;
mod stream;
pub mod what_if;

pub use cost::{CanCost, Cost, Spread};
pub use figures::Figures;
pub use lateness::{Delayed, Lateness, NetworkLateness, Path, Reasons};
pub use networks::{ChannelUse, NetworkLoad, ScheduleUse, SlotUse, SlotsUse, StreamLoad, UnitLoad};
pub use rank::Rank;
pub use remark::Remark;
pub use stream::{Stream, Timing, Traffic, Uncounted, WhyNot, traffic};

use wirelore_model::{Database, NetworkId};

use crate::response::ClockError;

/// What a description says of the load and the lateness of every network.
#[derive(Debug, Clone, PartialEq)]
pub struct Budget {
    /// By network, in the order of the description.
    pub networks: Vec<NetworkLoad>,
    /// By network: how late its frames can get. `None`: it is not CAN, has no rate, or nothing is counted on it.
    pub lateness: Vec<Option<Result<NetworkLateness, ClockError>>>,
    /// Frames that gateways pass on, in the order of the routes.
    pub paths: Vec<Path>,
}

impl Budget {
    /// Calculates it.
    #[must_use]
    pub fn of(database: &Database) -> Self {
        let networks: Vec<NetworkLoad> = traffic(database)
            .into_iter()
            .zip((0..).map(NetworkId))
            .map(|(traffic, id)| networks::load(database, id, traffic))
            .collect();
        let lateness::Found { networks: lateness, paths } = lateness::of(database, &networks);
        Self { networks, lateness, paths }
    }

    /// Whether on one of the networks that are asked for some frame can miss its deadline, or what is sent takes more than so much of it at
    /// most (1: all of it).
    #[must_use]
    pub fn is_exceeded(&self, limit: f64, wanted: impl Fn(NetworkId) -> bool) -> bool {
        self.networks.iter().zip(&self.lateness).filter(|(load, _)| wanted(load.network)).any(|(load, late)| {
            let can_miss = late.iter().flatten().any(|found| found.streams.iter().any(Lateness::can_miss));
            can_miss || load.exceeds(limit)
        })
    }
}
