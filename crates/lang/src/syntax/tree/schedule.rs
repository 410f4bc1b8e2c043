//! Schedules of LIN networks.

use super::{Front, Head, Name, Time};
use crate::Span;

/// `schedule NAME "title" on NETWORK, time base 5 ms, jitter 500 us { ... }`
#[derive(Debug, Clone, PartialEq)]
pub struct Schedule<'t> {
    /// Name and title.
    pub head: Head<'t>,
    /// The network.
    pub on: Name<'t>,
    /// `time base 5 ms`
    pub time_base: Option<Time>,
    /// `jitter 500 us`
    pub jitter: Option<Time>,
    /// The slots, in order.
    pub slots: Vec<Slot<'t>>,
}

/// `FRAME takes 10 ms`, `sporadic A, B takes 15 ms`, `FRAME every 20 ms`
#[derive(Debug, Clone, PartialEq)]
pub struct Slot<'t> {
    /// The whole line.
    pub span: Span,
    /// Notes and quieted rules in front of it.
    pub front: Front<'t>,
    /// The word `sporadic`.
    pub sporadic: Option<Span>,
    /// The frame; several only behind `sporadic`.
    pub frames: Vec<Name<'t>>,
    /// `takes 10 ms`
    pub takes: Option<Time>,
    /// `every 20 ms`
    pub every: Option<Time>,
}
