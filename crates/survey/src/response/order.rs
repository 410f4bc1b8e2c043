//! Whether other identifiers would do: an order of priorities in which every frame is in time.

use super::demand::{Demand, Effort};
use super::level::Level;
use super::load::Load;
use super::{Stream, Ticks};

/// What was found of the orders of some streams.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Order {
    /// Highest priority first: in this order every stream meets its deadline.
    Found(Vec<usize>),
    /// No order does: even with all others below them, some of these streams, in the order given, would miss.
    Impossible(Vec<usize>),
    /// The network is so full that it was not found out.
    Unknown,
}

/// N. C. Audsley's assignment, which the paper shows to be optimal for CAN: whoever is in time with the lowest priority can have it, and
/// what is left is a smaller question of the same kind.
///
/// Streams that have most time are tried first, so that mostly the first try holds.
#[must_use]
pub fn order(streams: &[Stream], bit: Ticks) -> Order {
    let mut load = Load::default();
    streams.iter().for_each(|stream| load.add(stream));
    let mut left: Vec<usize> = (0..streams.len()).collect();
    if load.is_full() {
        return Order::Impossible(left);
    }
    left.sort_by_key(|&index| streams[index].deadline.0.saturating_sub(streams[index].jitter.0));
    assign(streams, left, bit.0.max(1))
}

fn assign(streams: &[Stream], mut left: Vec<usize>, bit: u64) -> Order {
    let (mut demand, mut effort) = (Demand::default(), Effort::whole());
    if streams.iter().any(|stream| demand.add(stream).is_err()) {
        return Order::Unknown;
    }
    let (mut lowest_first, mut blocking) = (Vec::with_capacity(left.len()), 0);
    while !left.is_empty() {
        let mut last = None;
        for place in (0..left.len()).rev() {
            let stream = streams[left[place]];
            demand.remove(&stream);
            let Ok(latest) = (Level { stream, blocking, bit }).alone(&demand, &mut effort) else {
                return Order::Unknown;
            };
            if latest.time <= stream.deadline.0 {
                last = Some(place);
                break;
            }
            if demand.add(&stream).is_err() {
                return Order::Unknown;
            }
        }
        let Some(place) = last else {
            left.sort_unstable();
            return Order::Impossible(left);
        };
        let index = left.remove(place);
        blocking = blocking.max(streams[index].length.0);
        lowest_first.push(index);
    }
    lowest_first.reverse();
    Order::Found(lowest_first)
}
