//! What only the machine below can do: files as memory, and what comes of it where they are cut; hints to the processor; sixteen characters
//! at once.
//!
//! The only module with `unsafe`; each part says why by measurement, and what its blocks rest on.

#![allow(unsafe_code)]

#[cfg(target_os = "linux")]
mod cut;
mod map;
mod prefetch;
mod vectors;

#[cfg(target_os = "linux")]
pub use cut::CutWatch;
pub(crate) use map::Map;
pub(crate) use prefetch::prefetch;
pub(crate) use vectors::{hex_digits, places_in_64, places_of};
