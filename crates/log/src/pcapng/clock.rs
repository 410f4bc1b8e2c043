//! From the ticks of an interface's clock to nanoseconds.

const NS_PER_S: i64 = 1_000_000_000;

/// The length of one tick, and where ticks are counted from.
#[derive(Debug, Clone, Copy)]
pub(super) struct Clock {
    tick: Tick,
    offset_ns: i128,
    simple: SimpleClock,
}

/// One tick in nanoseconds.
#[derive(Debug, Clone, Copy)]
enum Tick {
    /// Whole nanoseconds.
    Times(u64),
    /// A fraction of a nanosecond; none can be told beyond 10^19 of them.
    DividedBy(u64),
    /// Two to the power of minus this many seconds.
    BinaryPower(u32),
}

/// A clock in 64 bits, as far as they reach.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct SimpleClock {
    tick_ns: i64,
    offset_ns: i64,
    /// Below this many ticks nothing overflows; zero where a tick is not whole nanoseconds.
    ticks_limit: u64,
}

impl SimpleClock {
    fn new(tick: Tick, offset_ns: i128) -> Self {
        let (Tick::Times(tick_ns), Ok(offset_ns)) = (tick, i64::try_from(offset_ns)) else {
            return Self::default();
        };
        let ticks_limit = (i64::MAX - offset_ns.max(0)) as u64 / tick_ns;
        Self { tick_ns: tick_ns as i64, offset_ns, ticks_limit }
    }

    /// The time of a tick, where this clock can tell it.
    #[inline]
    pub(super) fn time_ns(self, ticks: u64) -> Option<i64> {
        let (time_ns, is_told) = self.time_if_told_ns(ticks);
        is_told.then_some(time_ns)
    }

    /// The same without a branch: any time, and whether it is the right one.
    #[inline(always)]
    pub(super) fn time_if_told_ns(self, ticks: u64) -> (i64, bool) {
        let time_ns = (ticks as i64).wrapping_mul(self.tick_ns).wrapping_add(self.offset_ns);
        (time_ns, ticks < self.ticks_limit)
    }
}

impl Clock {
    /// From the options `if_tsresol` (6 where it is missing: microseconds) and `if_tsoffset` (seconds).
    pub(super) fn new(resolution: u8, offset_s: i64) -> Self {
        let exponent = u32::from(resolution & 0x7F);
        let tick = match (resolution & 0x80 != 0, exponent) {
            (true, _) => Tick::BinaryPower(exponent),
            (false, 0..=9) => Tick::Times(10_u64.pow(9 - exponent)),
            (false, _) => Tick::DividedBy(10_u64.checked_pow(exponent - 9).unwrap_or(u64::MAX)),
        };
        let offset_ns = i128::from(offset_s) * i128::from(NS_PER_S);
        Self { tick, offset_ns, simple: SimpleClock::new(tick, offset_ns) }
    }

    /// The clock in 64 bits.
    pub(super) fn simple(self) -> SimpleClock {
        self.simple
    }

    /// The time of a tick, rounded down; `None` where 64 bits of nanoseconds do not reach.
    #[inline]
    pub(super) fn time_ns(self, ticks: u64) -> Option<i64> {
        self.simple.time_ns(ticks).or_else(|| self.time_in_full(ticks))
    }

    fn time_in_full(self, ticks: u64) -> Option<i64> {
        let since_offset_ns = match self.tick {
            Tick::Times(length_ns) => i128::from(ticks) * i128::from(length_ns),
            Tick::DividedBy(parts) => i128::from(ticks / parts),
            Tick::BinaryPower(exponent) => (i128::from(ticks) * i128::from(NS_PER_S)) >> exponent,
        };
        i64::try_from(since_offset_ns + self.offset_ns).ok()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Source of the rules: IETF draft opsawg-pcapng, options if_tsresol and if_tsoffset. The values are worked out by hand.
    #[test]
    fn powers_of_ten() {
        assert_eq!(Clock::new(0, 0).time_ns(3), Some(3_000_000_000));
        assert_eq!(Clock::new(3, 0).time_ns(1500), Some(1_500_000_000));
        assert_eq!(Clock::new(6, 0).time_ns(1_700_000_000_250_000), Some(1_700_000_000_250_000_000));
        assert_eq!(Clock::new(9, 0).time_ns(7), Some(7));
        assert_eq!(Clock::new(12, 0).time_ns(1999), Some(1));
        assert_eq!(Clock::new(127, 0).time_ns(u64::MAX - 1), Some(0));
    }

    #[test]
    fn powers_of_two() {
        assert_eq!(Clock::new(0x80, 0).time_ns(2), Some(2_000_000_000));
        assert_eq!(Clock::new(0x8A, 0).time_ns(512), Some(500_000_000));
        assert_eq!(Clock::new(0xA0, 0).time_ns(1 << 32 | 1 << 31), Some(1_500_000_000));
        assert_eq!(Clock::new(0xFF, 0).time_ns(u64::MAX), Some(0));
    }

    #[test]
    fn offsets_count_in_seconds() {
        assert_eq!(Clock::new(6, 100).time_ns(250_000), Some(100_250_000_000));
        assert_eq!(Clock::new(6, -1).time_ns(250_000), Some(-750_000_000));
        assert_eq!(Clock::new(9, i64::MAX).time_ns(0), None);
    }

    #[test]
    fn the_short_way_and_the_full_way_agree() {
        for resolution in [0, 3, 6, 9] {
            for offset_s in [0, 1, -1, 1 << 33, -(1 << 33), 9_223_372_036, -9_223_372_036, i64::MIN] {
                let clock = Clock::new(resolution, offset_s);
                let limit = clock.simple.ticks_limit;
                for ticks in [0, 1, limit.saturating_sub(1), limit, limit.saturating_add(1), limit / 2, u64::MAX] {
                    assert_eq!(clock.time_ns(ticks), clock.time_in_full(ticks), "{clock:?} {ticks}");
                }
            }
        }
    }

    #[test]
    fn times_beyond_64_bits_of_nanoseconds_are_none() {
        assert_eq!(Clock::new(9, 0).time_ns(u64::MAX), None);
        assert_eq!(Clock::new(6, 0).time_ns(u64::MAX), None);
    }
}
