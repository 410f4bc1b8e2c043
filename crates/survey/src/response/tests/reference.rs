//! The formulas of the paper, stream by stream and sum by sum, with nothing remembered and nothing put together.

use super::*;

/// Worst response and instance; `None` where the load is 1 or more.
pub(super) fn plain(streams: &[Stream], index: usize, bit: u64) -> Option<(u64, u64)> {
    let Stream { length: Ticks(c), period: Ticks(t), jitter: Ticks(j), .. } = streams[index];
    let (higher, lower) = (&streams[..index], &streams[index + 1..]);
    let blocking = lower.iter().map(|stream| stream.length.0).max().unwrap_or(0);
    if is_full(&streams[..=index]) {
        return None;
    }
    let mut busy = c;
    loop {
        let sum = blocking
            + streams[..=index].iter().map(|s| (busy + s.jitter.0).div_ceil(s.period.0) * s.length.0).sum::<u64>();
        if sum == busy {
            break;
        }
        busy = sum;
    }
    let mut found: Option<(u64, u64)> = None;
    for q in 0..(busy + j).div_ceil(t) {
        let mut w = blocking + q * c;
        loop {
            let sum = blocking
                + q * c
                + higher.iter().map(|s| (w + s.jitter.0 + bit).div_ceil(s.period.0) * s.length.0).sum::<u64>();
            if sum == w {
                break;
            }
            w = sum;
        }
        let response = j + w + c - q * t;
        if found.is_none_or(|(worst, _)| response > worst) {
            found = Some((response, q));
        }
    }
    found
}

/// Whether the shares add up to 1 or more, over the product of all periods.
fn is_full(streams: &[Stream]) -> bool {
    let product: u128 = streams.iter().map(|stream| u128::from(stream.period.0)).product();
    let sum: u128 =
        streams.iter().map(|stream| product / u128::from(stream.period.0) * u128::from(stream.length.0)).sum();
    sum >= product
}
