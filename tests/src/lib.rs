//! What the checks of the whole program share: the demo vehicle, and the minute in town that its recording holds.
//!
//! This package is never published and never part of the program. The checks themselves stand in its `tests` folder.

pub mod drive;
pub mod folder;
pub mod noise;
pub mod payloads;
pub mod readings;
pub mod workload;
