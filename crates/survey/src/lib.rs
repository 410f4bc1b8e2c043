//! Questions about a vehicle: each a function from a description, and frames where they are needed, to a typed result.
//!
//! It prints nothing and opens no file.

pub mod budget;
mod listening;
pub mod response;

pub use listening::{Hop, Listening, Topic};
