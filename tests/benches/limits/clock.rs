//! CPU time: what a neighbour on the machine takes does not count. Elapsed time only where several threads are to share the work.

use std::time::Instant;

use rustix::time::{ClockId, Timespec, clock_gettime};

/// Whose CPU time is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Meter {
    /// The thread that runs the contender.
    Thread,
    /// All threads together.
    Process,
    /// The busier of two: the thread that runs the contender, and all others of the process together.
    Busier,
    /// Elapsed time: what a person waits.
    Elapsed,
}

/// The clocks at one moment.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Reading {
    thread_ns: u64,
    process_ns: u64,
    instant: Instant,
}

impl Reading {
    pub(crate) fn now() -> Self {
        Self {
            thread_ns: read(ClockId::ThreadCPUTime),
            process_ns: read(ClockId::ProcessCPUTime),
            instant: Instant::now(),
        }
    }

    /// Time since this reading.
    pub(crate) fn elapsed_ns(self, meter: Meter) -> f64 {
        let now = Self::now();
        let thread_ns = now.thread_ns - self.thread_ns;
        let process_ns = now.process_ns - self.process_ns;
        let measured_ns = match meter {
            Meter::Thread => thread_ns,
            Meter::Process => process_ns,
            Meter::Busier => thread_ns.max(process_ns.saturating_sub(thread_ns)),
            Meter::Elapsed => (now.instant - self.instant).as_nanos() as u64,
        };
        measured_ns as f64
    }
}

fn read(clock: ClockId) -> u64 {
    let Timespec { tv_sec, tv_nsec } = clock_gettime(clock);
    tv_sec as u64 * 1_000_000_000 + tv_nsec as u64
}
