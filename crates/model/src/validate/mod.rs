//! The checks that make a description a database: the same for one that comes from text and one that comes from a file.
//!
//! What is checked here is what the data types promise. Whether a description makes sense (identifiers taken twice, bits that overlap) is
//! for the language's rules, which can be quieted; a promise cannot. All of it takes time about proportional to the description's size.

mod duty;
mod flaw;
mod frame;
mod general;
mod pages;
mod raw;
mod rows;
mod signal;
mod wiring;

pub use flaw::{Flaw, InvalidDescription};
pub(crate) use frame::FrameChecks;
pub(crate) use general::{check_outline, check_routes, check_schedules};
