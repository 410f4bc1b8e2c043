//! How long each side waits for the other (SAE J1939-21, from memory).

use std::fmt;

/// The longest waits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Timeouts {
    /// Between two packets: 750 ms.
    pub t1_ns: i64,
    /// For the first packet after a clear to send: 1250 ms.
    pub t2_ns: i64,
    /// For the answer to a request to send or to the last packet that was cleared: 1250 ms.
    pub t3_ns: i64,
    /// For the next clear to send after one that holds the sender up (a receiver repeats it every 500 ms, its Th): 1050 ms.
    pub t4_ns: i64,
}

impl Default for Timeouts {
    fn default() -> Self {
        Self { t1_ns: 750_000_000, t2_ns: 1_250_000_000, t3_ns: 1_250_000_000, t4_ns: 1_050_000_000 }
    }
}

impl Timeouts {
    pub(super) const fn limit_ns(&self, timer: Timer) -> i64 {
        match timer {
            Timer::T1 => self.t1_ns,
            Timer::T2 => self.t2_ns,
            Timer::T3 => self.t3_ns,
            Timer::T4 => self.t4_ns,
        }
    }
}

/// One of the waits of [`Timeouts`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Timer {
    /// Between two packets.
    T1,
    /// After a clear to send.
    T2,
    /// After a request to send and after the last packet that was cleared.
    T3,
    /// After a clear to send that holds the sender up.
    T4,
}

impl fmt::Display for Timer {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self:?}")
    }
}
