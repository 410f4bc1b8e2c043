//! Ethernet and what runs over it, and single-wire messages, from outside.

mod ethernet;
mod tcp;
