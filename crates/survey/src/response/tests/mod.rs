//! The analysis against the paper, against sets worked out by hand, and against the paper's formulas written down plainly.

mod edges;
mod orders;
mod paper;
mod properties;
mod reference;

use super::*;

/// Length, period, jitter, deadline.
fn stream(length: u64, period: u64, jitter: u64, deadline: u64) -> Stream {
    Stream { length: Ticks(length), period: Ticks(period), jitter: Ticks(jitter), deadline: Ticks(deadline) }
}

fn worst(streams: &[Stream], bit: u64) -> Vec<Result<Ticks, NoBound>> {
    responses(streams, Ticks(bit)).into_iter().map(|response| response.worst).collect()
}
