//! Whole ticks in which nanoseconds and the bit times of all networks are exact.

use thiserror::Error;
use wirelore_bits::can_frame::WireBits;
use wirelore_model::{BitRate, Nanoseconds};

const NANOSECONDS: u64 = 1_000_000_000;

/// A length of time in ticks of a [`Clock`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Ticks(pub u64);

/// How long a tick is: so short that a nanosecond and a bit of each network are whole numbers of ticks.
///
/// ```
/// use wirelore_model::{BitRate, Nanoseconds};
/// use wirelore_survey::response::{Clock, Ticks};
///
/// let clock = Clock::of_rates([BitRate(500_000), BitRate(33_333)])?;
/// assert_eq!(clock.per_second(), 33_333_000_000_000);
/// assert_eq!(clock.span(Nanoseconds(1))?, Ticks(33_333));
/// assert_eq!(clock.bits(1, BitRate(33_333))?, Ticks(1_000_000_000));
/// # Ok::<(), wirelore_survey::response::ClockError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Clock {
    per_second: u64,
}

/// Why a time cannot be told in ticks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum ClockError {
    /// A rate of nothing.
    #[error("a network of 0 bit/s never sends a bit: state the rate that it has")]
    NoRate,
    /// The rates have too little in common.
    #[error(
        "no clock counts nanoseconds and the bits of {rate} bit/s and of the rates before it: look at this network alone"
    )]
    TooFine {
        /// The rate that was one too many, in bits per second.
        rate: u64,
    },
    /// A rate that the clock was not made for.
    #[error("a bit of {rate} bit/s is no whole number of ticks: make the clock with this rate too")]
    OtherRate {
        /// The rate, in bits per second.
        rate: u64,
    },
    /// A time longer than the clock counts.
    #[error("a time is longer than the {longest_s} s that can be counted: shorten it, or look at this network alone")]
    TooLong {
        /// The longest time, in seconds.
        longest_s: u64,
    },
}

impl Clock {
    /// The coarsest clock for these rates.
    ///
    /// # Errors
    /// A rate of 0, or rates whose clock has more than 2^64 ticks a second.
    pub fn of_rates(rates: impl IntoIterator<Item = BitRate>) -> Result<Self, ClockError> {
        let per_second = rates.into_iter().try_fold(NANOSECONDS, |ticks, BitRate(rate)| {
            if rate == 0 {
                return Err(ClockError::NoRate);
            }
            (ticks / common_divisor(ticks, rate)).checked_mul(rate).ok_or(ClockError::TooFine { rate })
        })?;
        Ok(Self { per_second })
    }

    /// Its ticks in a second.
    #[must_use]
    pub fn per_second(self) -> u64 {
        self.per_second
    }

    /// A length of time.
    ///
    /// # Errors
    /// It is longer than the clock counts.
    pub fn span(self, Nanoseconds(time): Nanoseconds) -> Result<Ticks, ClockError> {
        self.times(time, self.per_second / NANOSECONDS)
    }

    /// The time of some bits.
    ///
    /// # Errors
    /// The clock was not made for this rate, or the time is longer than it counts.
    pub fn bits(self, count: u64, BitRate(rate): BitRate) -> Result<Ticks, ClockError> {
        match self.per_second.checked_rem(rate) {
            None => Err(ClockError::NoRate),
            Some(0) => self.times(count, self.per_second / rate),
            Some(_) => Err(ClockError::OtherRate { rate }),
        }
    }

    /// The time of a frame; without a data rate all of its bits have the nominal one.
    ///
    /// # Errors
    /// Those of [`Clock::bits`].
    pub fn frame(self, bits: WireBits, nominal: BitRate, data: Option<BitRate>) -> Result<Ticks, ClockError> {
        let first = self.bits(u64::from(bits.nominal), nominal)?;
        let second = self.bits(u64::from(bits.data), data.unwrap_or(nominal))?;
        first.0.checked_add(second.0).map(Ticks).ok_or_else(|| self.too_long())
    }

    /// The time in nanoseconds, rounded up: a bound never becomes shorter.
    #[must_use]
    pub fn nanoseconds(self, Ticks(ticks): Ticks) -> Nanoseconds {
        Nanoseconds(ticks.div_ceil(self.per_second / NANOSECONDS))
    }

    fn times(self, count: u64, ticks: u64) -> Result<Ticks, ClockError> {
        count.checked_mul(ticks).map(Ticks).ok_or_else(|| self.too_long())
    }

    fn too_long(self) -> ClockError {
        ClockError::TooLong { longest_s: u64::MAX / self.per_second }
    }
}

fn common_divisor(mut a: u64, mut b: u64) -> u64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn common_rates_need_no_more_than_nanoseconds() {
        let rates = [125_000, 250_000, 500_000, 1_000_000, 2_000_000, 5_000_000].map(BitRate);
        let clock = Clock::of_rates(rates).expect("they divide a second into whole nanoseconds");
        assert_eq!(clock.per_second(), NANOSECONDS);
        assert_eq!(Clock::of_rates([]).map(Clock::per_second), Ok(NANOSECONDS));
    }

    /// 135 bits at 83,333 bit/s are 1.6200064... ms: not a whole number of nanoseconds.
    #[test]
    fn odd_rates_are_exact_and_never_told_too_short() {
        let odd = BitRate(83_333);
        let clock = Clock::of_rates([BitRate(500_000), odd]).expect("it fits");
        let frame = clock.bits(135, odd).expect("it fits");
        assert_eq!(u128::from(frame.0) * 83_333, 135 * u128::from(clock.per_second()));
        assert_eq!(clock.nanoseconds(frame), Nanoseconds(1_620_007));
    }

    #[test]
    fn two_phases() {
        let clock = Clock::of_rates([BitRate(500_000), BitRate(2_000_000)]).expect("it fits");
        let bits = WireBits { nominal: 30, data: 550 };
        assert_eq!(clock.frame(bits, BitRate(500_000), Some(BitRate(2_000_000))), Ok(Ticks(60_000 + 275_000)));
        assert_eq!(clock.frame(bits, BitRate(500_000), None), Ok(Ticks(1_160_000)));
    }

    #[test]
    fn what_does_not_fit_is_refused() {
        let (large, larger) = (BitRate(999_999_937), BitRate(999_999_929));
        assert_eq!(Clock::of_rates([BitRate(0)]), Err(ClockError::NoRate));
        assert_eq!(Clock::of_rates([large, larger]), Err(ClockError::TooFine { rate: larger.0 }));
        let clock = Clock::of_rates([large]).expect("one alone fits");
        assert_eq!(clock.bits(1, larger), Err(ClockError::OtherRate { rate: larger.0 }));
        assert_eq!(clock.bits(1, BitRate(0)), Err(ClockError::NoRate));
        assert_eq!(clock.span(Nanoseconds(u64::MAX)), Err(ClockError::TooLong { longest_s: 18 }));
        assert_eq!(clock.bits(u64::MAX, large), Err(ClockError::TooLong { longest_s: 18 }));
    }
}
