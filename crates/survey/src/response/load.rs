//! Whether the streams up to some priority leave any time free: the one question about a load that must be answered exactly.

use super::Stream;

/// A sum of shares of the network's time, as a lower limit and how far it can be from the sum.
///
/// A sum of exact fractions would outgrow any fixed number of bits; this one has 128 of them behind the point and counts what was
/// rounded down. It takes a load for 1 that is below it by less than the number of streams times 2^-128; behind such a load a
/// busy period has no end that could be counted.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Load {
    /// The share behind the point, in parts of 2^128.
    fraction: u128,
    /// Shares that were rounded down, each by less than one part.
    rounded: u32,
    is_full: bool,
}

impl Load {
    pub(super) fn add(&mut self, stream: &Stream) {
        let (length, period) = (u128::from(stream.length.0), u128::from(stream.period.0));
        if length >= period {
            self.is_full = true;
            return;
        }
        let (upper, rest) = ((length << 64) / period, (length << 64) % period);
        let (lower, rest) = ((rest << 64) / period, (rest << 64) % period);
        let (fraction, overflows) = self.fraction.overflowing_add(upper << 64 | lower);
        self.fraction = fraction;
        self.rounded = self.rounded.saturating_add(u32::from(rest > 0));
        self.is_full |= overflows;
    }

    /// Whether there is no time left.
    pub(super) fn is_full(&self) -> bool {
        // Full: the limit above the sum is beyond 1. It is 1 itself where the last part is missing and was not reached.
        self.is_full || u128::MAX - self.fraction < u128::from(self.rounded.saturating_sub(1))
    }
}

#[cfg(test)]
mod tests {
    use super::super::Ticks;
    use super::*;

    fn is_full(shares: &[(u64, u64)]) -> bool {
        let mut load = Load::default();
        for &(length, period) in shares {
            load.add(&Stream {
                length: Ticks(length),
                period: Ticks(period),
                jitter: Ticks(0),
                deadline: Ticks(period),
            });
        }
        load.is_full()
    }

    #[test]
    fn exactly_one_is_full_and_a_tick_less_is_not() {
        assert!(is_full(&[(1, 2), (1, 2)]));
        assert!(is_full(&[(1, 3), (2, 3)]));
        assert!(is_full(&[(1, 7); 7]));
        assert!(is_full(&[(1, 2), (1, 3), (1, 6)]));
        assert!(is_full(&[(1, 1)]));
        assert!(is_full(&[(0, 0)]));
        assert!(!is_full(&[]));
        assert!(!is_full(&[(1, 2), (1, 3), (1, 7)]));
        assert!(!is_full(&[(u64::MAX - 1, u64::MAX)]));
        assert!(!is_full(&[(1, 7); 6]));
        let third = u64::MAX / 3;
        assert!(is_full(&[(third, u64::MAX); 3]));
        assert!(!is_full(&[(third, u64::MAX), (third, u64::MAX), (third - 1, u64::MAX)]));
    }
}
