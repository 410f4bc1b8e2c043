//! What only the machine below can do: files as memory, hints to the processor, sixteen characters at once.
//!
//! The only module with `unsafe`; each part says why by measurement, and what its blocks rest on.

#![allow(unsafe_code)]

mod map;
mod prefetch;
mod vectors;

pub(crate) use map::Map;
pub(crate) use prefetch::prefetch;
pub(crate) use vectors::{hex_digits, places_of};
