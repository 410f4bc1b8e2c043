//! The budget of whole descriptions, held against figures that were calculated by hand.

mod lateness;
mod load;
mod measured;
mod others;
mod support;
mod what_if;
