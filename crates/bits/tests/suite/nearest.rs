//! The double nearest to an exact fraction, by whole numbers alone: in 128 bits where they do, else with big integers.
//!
//! Nothing of the crate under test is used here.

use num_bigint::{BigInt, BigUint, Sign};
use num_traits::{ToPrimitive, Zero};

use crate::support::{Random, exactly, is_nearest};

/// A formula (raw * factor + offset) / denominator, never brought to lowest terms.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Formula {
    pub(crate) factor: i128,
    pub(crate) offset: i128,
    pub(crate) denominator: u128,
}

/// A finite binary floating-point number: significand * 2^exponent.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Binary {
    pub(crate) significand: i64,
    pub(crate) exponent: i32,
}

impl Binary {
    fn without_trailing_zeros(self) -> Self {
        match self.significand.trailing_zeros() {
            64 => Self { significand: 0, exponent: 0 },
            zeros => Self { significand: self.significand >> zeros, exponent: self.exponent + zeros as i32 },
        }
    }
}

/// A double, and whether 128 bits did.
pub(crate) type Nearest = (f64, bool);

impl Formula {
    /// The double nearest to the value of a whole raw number, ties to even.
    pub(crate) fn at(&self, raw: i128) -> Nearest {
        let numerator = raw.checked_mul(self.factor).and_then(|product| product.checked_add(self.offset));
        match numerator.and_then(|numerator| nearest_in_128_bits(numerator, self.denominator)) {
            Some(value) => (value, true),
            None => (self.at_with_big_integers(raw), false),
        }
    }

    /// The same, whatever the numbers are.
    pub(crate) fn at_with_big_integers(&self, raw: i128) -> f64 {
        let numerator = BigInt::from(raw) * self.factor + self.offset;
        nearest_of_big_integers(&numerator, &BigUint::from(self.denominator))
    }

    /// The double nearest to the value of a floating-point raw number, ties to even.
    pub(crate) fn at_binary(&self, raw: Binary) -> Nearest {
        let raw = raw.without_trailing_zeros();
        let product = i128::from(raw.significand).checked_mul(self.factor);
        let up = |number: i128, bits: i32| number.checked_mul(1_i128.checked_shl(bits.unsigned_abs())?);
        let parts = || match raw.exponent {
            0.. => Some((up(product?, raw.exponent)?.checked_add(self.offset)?, self.denominator)),
            _ => {
                let denominator = up(i128::try_from(self.denominator).ok()?, raw.exponent)?;
                Some((product?.checked_add(up(self.offset, raw.exponent)?)?, denominator.unsigned_abs()))
            }
        };
        // A shift by 127 is that of the sign.
        let short = if raw.exponent.abs() < 127 { parts() } else { None };
        match short.and_then(|(numerator, denominator)| nearest_in_128_bits(numerator, denominator)) {
            Some(value) => (value, true),
            None => (self.at_binary_with_big_integers(raw), false),
        }
    }

    /// The same, whatever the numbers are.
    pub(crate) fn at_binary_with_big_integers(&self, raw: Binary) -> f64 {
        let (up, down) = (raw.exponent.max(0).unsigned_abs(), raw.exponent.min(0).unsigned_abs());
        let numerator = ((BigInt::from(raw.significand) * self.factor) << up) + (BigInt::from(self.offset) << down);
        nearest_of_big_integers(&numerator, &(BigUint::from(self.denominator) << down))
    }
}

/// `None` where the division needs more than 128 bits.
fn nearest_in_128_bits(numerator: i128, denominator: u128) -> Option<f64> {
    let length = |number: u128| 128 - number.leading_zeros();
    let size = numerator.unsigned_abs();
    if size == 0 {
        return Some(0.0);
    }
    // A quotient of at least 55 bits: two more than a double has.
    let shift = (55 + length(denominator)).saturating_sub(length(size));
    if length(size) + shift > 128 {
        return None;
    }
    let dividend = size << shift;
    let (quotient, remainder) = (dividend / denominator, dividend % denominator);
    let dropped = length(quotient) - 53;
    let kept = round(quotient, dropped, remainder != 0);
    // All exponents are within 200 of zero.
    let value = kept as f64 * power_of_two(dropped as i32 - shift as i32);
    Some(if numerator < 0 { -value } else { value })
}

fn nearest_of_big_integers(numerator: &BigInt, denominator: &BigUint) -> f64 {
    let size = numerator.magnitude();
    if size.is_zero() {
        return 0.0;
    }
    // A quotient of 55 to 57 bits, or down to two bits below the smallest double.
    let lowest = (size.bits() as i64 - denominator.bits() as i64 - 56).max(-1076);
    let (mut dividend, mut divisor) = (size.clone(), denominator.clone());
    if lowest < 0 {
        dividend <<= lowest.unsigned_abs();
    } else {
        divisor <<= lowest.unsigned_abs();
    }
    let quotient = (&dividend / &divisor).to_u128().expect("at most 57 bits");
    let is_more = quotient * &divisor != dividend;
    let unit = (lowest + i64::from(128 - quotient.leading_zeros()) - 53).max(-1074);
    let kept = round(quotient, (unit - lowest) as u32, is_more);
    // The two last units are those of infinity: 2^53 of the last but one are the first of it.
    let value = if unit > 971 { f64::INFINITY } else { kept as f64 * power_of_two(unit as i32) };
    if numerator.sign() == Sign::Minus { -value } else { value }
}

/// A number without its last bits (at least one), to the nearest, ties to even; `is_more`: it is larger than stated.
fn round(number: u128, dropped: u32, is_more: bool) -> u64 {
    let (kept, rest, half) = (number >> dropped, number & ((1 << dropped) - 1), 1 << (dropped - 1));
    let is_up = rest > half || rest == half && (is_more || kept % 2 == 1);
    kept as u64 + u64::from(is_up)
}

fn power_of_two(exponent: i32) -> f64 {
    match exponent {
        -1022..=1023 => f64::from_bits(((exponent + 1023) as u64) << 52),
        _ => f64::from_bits(1 << (exponent + 1074)),
    }
}

#[test]
fn the_reference_agrees_with_the_number_parser_of_the_standard_library() {
    let mut random = Random(41);
    for _ in 0..20_000 {
        let (digits, tens) = (random.next() >> random.below(64), random.below(23));
        let formula = Formula { factor: 1, offset: 0, denominator: 10_u128.pow(tens) };
        let expected: f64 = format!("{digits}e-{tens}").parse().expect("a number");
        assert_eq!(formula.at(digits.into()).0, expected, "{digits}e-{tens}");
        assert_eq!(formula.at_with_big_integers(digits.into()), expected, "{digits}e-{tens}");
    }
}

#[test]
fn the_reference_reaches_both_ends_of_the_doubles() {
    let one = Formula { factor: 1, offset: 0, denominator: 1 };
    let value = |significand, exponent| one.at_binary(Binary { significand, exponent }).0;
    assert_eq!(value(1, -1074), f64::from_bits(1));
    assert_eq!(value(-3, -1075), f64::from_bits(1 << 63 | 2), "one unit and a half is a tie");
    assert_eq!((value(1, -1075), value(1, -1080)), (0.0, 0.0));
    assert_eq!(value((1 << 53) - 1, 971), f64::MAX);
    assert_eq!(value((1 << 54) - 1, 970), f64::INFINITY);
    assert_eq!(value((1 << 54) - 2, 970), f64::MAX);
    assert_eq!(value(-1, 1024), f64::NEG_INFINITY);
}

#[test]
fn the_reference_agrees_with_the_judge() {
    for (text, factor, denominator) in [("1/3", 1, 3), ("9007199254740993", (1 << 53) + 1, 1), ("-2/7", -2, 7)] {
        let formula = Formula { factor, offset: 0, denominator };
        assert!(is_nearest(formula.at(1).0, &exactly(text)), "{text}");
        assert_eq!(formula.at(1).0, formula.at_with_big_integers(1), "{text}");
    }
}
