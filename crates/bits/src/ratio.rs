//! Exact fractions: what factors, offsets and values are written as.

use core::cmp::Ordering;

use crate::ieee::Dyadic;
use crate::wide::{Scaled, Signed, Wide};

/// An exact fraction, always in lowest terms: a numerator of 128 bits with sign over a positive denominator of 128 bits.
///
/// Arithmetic is checked: `None` means that the exact result, in lowest terms, does not fit. Nothing is ever rounded except by
/// [`Ratio::to_f64`]. Fractions compare by value. The text form is decimal where that is exact (`0.05`), else `n/d`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Ratio {
    numerator: i128,
    denominator: u128,
}

/// The largest number of 64 bits.
const LARGEST_WORD: u128 = u64::MAX as u128;

/// The greatest common divisor; of zero and a number, that number.
pub(crate) const fn greatest_common_divisor(mut a: u128, mut b: u128) -> u128 {
    while b != 0 {
        // Dividing 128 bits is a library call, dividing 64 an instruction; the numbers that people write are short.
        if a <= LARGEST_WORD && b <= LARGEST_WORD {
            return divisor_of_words(a as u64, b as u64) as u128;
        }
        (a, b) = (b, a % b);
    }
    a
}

const fn divisor_of_words(mut a: u64, mut b: u64) -> u64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

impl Ratio {
    /// 0.
    pub const ZERO: Self = Self::whole(0);
    /// 1.
    pub const ONE: Self = Self::whole(1);

    /// The whole number `value`.
    pub const fn whole(value: i128) -> Self {
        Self { numerator: value, denominator: 1 }
    }

    /// `numerator / denominator` in lowest terms; `None` if the denominator is zero.
    pub const fn new(numerator: i128, denominator: u128) -> Option<Self> {
        Self::from_signed(Signed { negative: numerator < 0, size: numerator.unsigned_abs() }, denominator)
    }

    /// `None` if the denominator is zero or the reduced numerator does not fit.
    pub(crate) const fn from_signed(numerator: Signed, denominator: u128) -> Option<Self> {
        if denominator == 0 {
            return None;
        }
        let common = greatest_common_divisor(numerator.size, denominator);
        match (Signed { negative: numerator.negative, size: numerator.size / common }).to_i128() {
            Some(numerator) => Some(Self { numerator, denominator: denominator / common }),
            None => None,
        }
    }

    /// A numerator over a positive denominator, of which the caller knows that they have no common divisor; `None` if the numerator does not fit.
    pub(crate) const fn in_lowest_terms(numerator: Signed, denominator: u128) -> Option<Self> {
        match numerator.to_i128() {
            Some(numerator) => Some(Self { numerator, denominator }),
            None => None,
        }
    }

    /// A wide numerator over a non-zero denominator, in lowest terms; `None` if that does not fit.
    pub(crate) fn from_wide(negative: bool, size: &Wide, denominator: u128) -> Option<Self> {
        // A quotient beyond 128 bits means that the reduced numerator is beyond them too.
        let (_, remainder) = size.divided_by(&Wide::from(denominator))?;
        let common = greatest_common_divisor(denominator, remainder.to_u128()?);
        let (size, _) = size.divided_by(&Wide::from(common))?;
        Some(Self { numerator: Signed { negative, size }.to_i128()?, denominator: denominator / common })
    }

    /// The numerator in lowest terms; it carries the sign.
    pub const fn numerator(&self) -> i128 {
        self.numerator
    }

    /// The denominator in lowest terms, at least 1.
    pub const fn denominator(&self) -> u128 {
        self.denominator
    }

    /// Whether it is 0.
    pub const fn is_zero(&self) -> bool {
        self.numerator == 0
    }

    /// Whether it is a whole number.
    pub const fn is_whole(&self) -> bool {
        self.denominator == 1
    }

    pub(crate) fn signed_numerator(&self) -> Signed {
        Signed::from(self.numerator)
    }

    /// The exact sum.
    pub fn checked_add(&self, other: &Self) -> Option<Self> {
        self.plus(other.signed_numerator(), other.denominator)
    }

    /// The exact difference.
    pub fn checked_sub(&self, other: &Self) -> Option<Self> {
        self.plus(other.signed_numerator().negated(), other.denominator)
    }

    /// Addition of fractions by way of the common divisor of the denominators (Knuth, TAOCP volume 2, section 4.5.1): only a
    /// divisor of that common divisor can be left to reduce by.
    fn plus(&self, numerator: Signed, denominator: u128) -> Option<Self> {
        let common = greatest_common_divisor(self.denominator, denominator);
        let own = self.signed_numerator();
        let left = (own.negative, Wide::product(own.size, denominator / common));
        let right = (numerator.negative, Wide::product(numerator.size, self.denominator / common));
        let sum = Scaled::sum(left, right, 0);
        let over_common = Self::from_wide(sum.negative, &sum.size, common)?;
        let denominator =
            (self.denominator / common).checked_mul(over_common.denominator)?.checked_mul(denominator / common)?;
        Some(Self {
            numerator: over_common.numerator,
            denominator: if over_common.is_zero() { 1 } else { denominator },
        })
    }

    /// The exact product.
    pub fn checked_mul(&self, other: &Self) -> Option<Self> {
        self.times(other.signed_numerator(), other.denominator)
    }

    /// The exact quotient; `None` also for a division by zero.
    pub fn checked_div(&self, other: &Self) -> Option<Self> {
        if other.is_zero() {
            return None;
        }
        let Signed { negative, size } = other.signed_numerator();
        self.times(Signed { negative, size: other.denominator }, size)
    }

    /// Crosswise reduction first leaves products that are in lowest terms already.
    fn times(&self, numerator: Signed, denominator: u128) -> Option<Self> {
        let own = self.signed_numerator();
        let first = greatest_common_divisor(own.size, denominator);
        let second = greatest_common_divisor(numerator.size, self.denominator);
        let size = (own.size / first).checked_mul(numerator.size / second)?;
        let denominator = (self.denominator / second).checked_mul(denominator / first)?;
        Some(Self { numerator: Signed { negative: own.negative != numerator.negative, size }.to_i128()?, denominator })
    }

    /// The number with the other sign; `None` only for a numerator of -2^127.
    pub const fn checked_neg(&self) -> Option<Self> {
        match self.numerator.checked_neg() {
            Some(numerator) => Some(Self { numerator, denominator: self.denominator }),
            None => None,
        }
    }

    /// The double nearest to it, ties to even.
    pub fn to_f64(&self) -> f64 {
        let Signed { negative, size } = self.signed_numerator();
        Scaled { negative, size: Wide::from(size), exponent: 0 }.nearest_double(self.denominator)
    }

    /// Exactly the value of `value`; `None` for infinities, not-a-numbers, and numbers too large or too fine to fit.
    pub fn from_f64(value: f64) -> Option<Self> {
        let Dyadic { negative, significand, exponent } = Dyadic::of(value)?;
        let power = |bits: u32| 1u128.checked_shl(bits);
        let size = u128::from(significand);
        if exponent < 0 {
            Self::from_signed(Signed { negative, size }, power(exponent.unsigned_abs())?)
        } else {
            Self::from_signed(Signed { negative, size: size.checked_mul(power(exponent.unsigned_abs())?)? }, 1)
        }
    }
}

impl From<i64> for Ratio {
    fn from(value: i64) -> Self {
        Self::whole(i128::from(value))
    }
}

impl Ord for Ratio {
    #[inline]
    fn cmp(&self, other: &Self) -> Ordering {
        match (self.short(), other.short()) {
            (Some((left, under_left)), Some((right, under_right))) => (left * under_right).cmp(&(right * under_left)),
            _ => self.compare_wide(other),
        }
    }
}

impl Ratio {
    /// Both parts, where they are so short that the product of two such parts fits in 128 bits with its sign.
    #[inline]
    fn short(&self) -> Option<(i128, i128)> {
        const MOST: u128 = LARGEST_WORD / 2;
        let is_short = self.numerator.unsigned_abs() <= MOST && self.denominator <= MOST;
        is_short.then_some((self.numerator, self.denominator as i128))
    }

    fn compare_wide(&self, other: &Self) -> Ordering {
        let signs = self.numerator.signum().cmp(&other.numerator.signum());
        let sizes = || {
            let left = Wide::product(self.numerator.unsigned_abs(), other.denominator);
            left.compare(&Wide::product(other.numerator.unsigned_abs(), self.denominator))
        };
        signs.then_with(|| if self.numerator < 0 { sizes().reverse() } else { sizes() })
    }
}

impl PartialOrd for Ratio {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

#[cfg(test)]
mod tests;
