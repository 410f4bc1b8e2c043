//! Questions about a vehicle: each a function from a description, and frames where they are needed, to a typed result.
//!
//! It prints nothing and opens no file.

mod listening;

pub use listening::{Hop, Listening};
