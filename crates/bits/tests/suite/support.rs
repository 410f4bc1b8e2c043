//! What the tests of this crate share: reproducible random numbers, and exact arithmetic from general-purpose libraries.

use core::cmp::Ordering;

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::float::FloatCore;
use num_traits::{Pow, Signed, Zero};
use wirelore_bits::{Affine, Ratio};

/// SplitMix64 (Steele, Lea, Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014; constants from memory).
pub(crate) struct Random(pub(crate) u64);

impl Random {
    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ mixed >> 30).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ mixed >> 27).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ mixed >> 31
    }

    /// From 0 to `bound` - 1.
    pub(crate) fn below(&mut self, bound: u32) -> u32 {
        (((self.next() >> 32) * u64::from(bound)) >> 32) as u32
    }

    /// A raw value of 1 to 64 bits with or without a sign, small and large ones alike.
    pub(crate) fn raw(&mut self) -> i128 {
        let bits = self.next() >> self.below(64);
        if self.below(2) == 0 { i128::from(bits) } else { i128::from(bits as i64) }
    }

    /// A decimal number of 1 to 18 digits, as text.
    pub(crate) fn decimal(&mut self) -> String {
        let digits = self.next() % 10u64.pow(1 + self.below(18));
        let sign = if self.below(2) == 0 { "-" } else { "" };
        format!("{sign}{digits}e-{}", self.below(19))
    }
}

/// Factors and offsets: those of section 2 of the project's measurements of correct rounding, and others that vehicles use or that are
/// awkward on purpose.
pub(crate) const FORMULAS: &[(&str, &str)] = &[
    ("1", "0"),
    ("1", "-40"),
    ("0.1", "0"),
    ("0.01", "0"),
    ("0.001", "0"),
    ("0.05", "0"),
    ("0.03", "0"),
    ("0.0039", "0"),
    ("0.125", "0"),
    ("0.125", "-250"),
    ("1/256", "0"),
    ("1/256", "-128"),
    ("0.1", "-40"),
    ("0.01", "-50"),
    ("0.01", "-327.68"),
    ("0.05", "-273.15"),
    ("0.4", "0"),
    ("0.8", "-100"),
    ("9/5", "32"),
    ("5/9", "-160/9"),
    ("1/3", "0"),
    ("1/7", "1/11"),
    ("-0.1", "100"),
    ("-2/3", "0.7"),
    ("0.0000001", "-210"),
    ("1000000007", "0.5"),
    ("0.1234567890123456789", "-98765.4321098765"),
    ("3.6e-30", "0"),
    ("12345678901234567890.5", "-7e20"),
    ("1/18446744073709551615", "1/3"),
];

pub(crate) fn affine(factor: &str, offset: &str) -> Affine {
    let ratio = |text: &str| text.parse::<Ratio>().expect("a number");
    Affine::new(ratio(factor), ratio(offset)).expect("a formula that fits")
}

/// A number in the notation of [`FORMULAS`], read without the crate under test.
pub(crate) fn exactly(text: &str) -> BigRational {
    if let Some((numerator, denominator)) = text.split_once('/') {
        return exactly(numerator) / exactly(denominator);
    }
    let (mantissa, exponent) = text.split_once('e').unwrap_or((text, "0"));
    let (whole, fraction) = mantissa.split_once('.').unwrap_or((mantissa, ""));
    let digits: BigInt = format!("{whole}{fraction}").parse().expect("digits");
    let exponent = exponent.parse::<i32>().expect("an exponent") - fraction.len() as i32;
    let power = BigRational::from_integer(BigInt::from(10).pow(exponent.unsigned_abs()));
    if exponent < 0 { BigRational::from_integer(digits) / power } else { BigRational::from_integer(digits) * power }
}

pub(crate) fn exactly_ratio(ratio: &Ratio) -> BigRational {
    BigRational::new(ratio.numerator().into(), ratio.denominator().into())
}

/// The exact formula over one unreduced denominator, so that a million evaluations stay cheap.
pub(crate) struct ExactFormula {
    factor: BigInt,
    offset: BigInt,
    denominator: BigInt,
}

impl ExactFormula {
    pub(crate) fn new(factor: &str, offset: &str) -> Self {
        let (factor, offset) = (exactly(factor), exactly(offset));
        Self {
            factor: factor.numer() * offset.denom(),
            offset: offset.numer() * factor.denom(),
            denominator: factor.denom() * offset.denom(),
        }
    }

    /// The exact value of a whole raw value.
    pub(crate) fn at(&self, raw: i128) -> BigRational {
        BigRational::new_raw(&self.factor * BigInt::from(raw) + &self.offset, self.denominator.clone())
    }

    /// The exact value of a finite floating-point raw value.
    pub(crate) fn at_float(&self, raw: f64) -> BigRational {
        let raw = exactly_double(raw);
        BigRational::new_raw(&self.factor * raw.numer() + &self.offset * raw.denom(), &self.denominator * raw.denom())
    }
}

/// A finite double as significand times power of two, by way of a general-purpose library.
fn parts(value: f64) -> (BigInt, i32) {
    let (significand, exponent, sign) = FloatCore::integer_decode(value);
    (BigInt::from(significand) * sign, i32::from(exponent))
}

pub(crate) fn exactly_double(value: f64) -> BigRational {
    let (significand, exponent) = parts(value);
    let power = BigInt::from(1) << exponent.unsigned_abs();
    if exponent < 0 { BigRational::new_raw(significand, power) } else { BigRational::from_integer(significand * power) }
}

/// How `exact` compares with the number half way between two neighbouring doubles.
fn against_middle(exact: &BigRational, lower: f64, upper: f64) -> Ordering {
    let ((low, low_exponent), (high, high_exponent)) = (parts(lower), parts(upper));
    let exponent = low_exponent.min(high_exponent);
    let twice_middle = (low << (low_exponent - exponent)) + (high << (high_exponent - exponent));
    let (mut left, mut right): (BigInt, BigInt) = (exact.numer() * 2, twice_middle * exact.denom());
    if exponent < 0 {
        left <<= exponent.unsigned_abs()
    } else {
        right <<= exponent.unsigned_abs()
    }
    left.cmp(&right)
}

/// Whether `value` is the double nearest to `exact`, ties to even; infinity is nearest from the middle between the largest double
/// and 2^1024 on.
pub(crate) fn is_nearest(value: f64, exact: &BigRational) -> bool {
    if value.is_infinite() {
        let largest = BigInt::from((1u64 << 53) - 1) << 971u32;
        let limit = largest + (BigInt::from(1) << 970u32);
        return exact.is_negative() == (value < 0.0) && exact.numer().abs() >= limit * exact.denom();
    }
    if exact.is_zero() {
        return value == 0.0;
    }
    let even = value.to_bits() & 1 == 0;
    let below = match against_middle(exact, value.next_down(), value) {
        Ordering::Greater => true,
        Ordering::Equal => even,
        Ordering::Less => false,
    };
    below
        && match against_middle(exact, value, value.next_up()) {
            Ordering::Less => true,
            Ordering::Equal => even,
            Ordering::Greater => false,
        }
}
