//! The short cautions that stand wherever the work can hurt somebody.

/// Wherever bytes are made that somebody might send.
pub(crate) const SENDING: &str = "\
Caution: for the bench and the desk. Frames sent into a live vehicle can move it, start it or fire airbags. Follow the
manufacturer's information and local law; leave high voltage, restraint and brake systems to people licensed for them.";
