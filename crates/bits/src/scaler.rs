//! The hot path of scaling: an exact formula compiled for a range of raw values.

use crate::Affine;
use crate::affine::EXACT_LIMIT;

/// An [`Affine`] with the cheapest exact way to compute it for the raw values of one signal, chosen once.
///
/// [`Scaler::value`] and [`Affine::value`] give the same double for every raw value, inside the range or not; inside the range
/// it is one multiplication and one addition of integers, a conversion, and a division (a multiplication where the denominator
/// is a power of two).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scaler {
    path: Path,
    /// Lowest raw value of the fast path, and how many follow it.
    first: i64,
    span: u64,
    affine: Affine,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Path {
    /// The raw value itself.
    Identity,
    /// The denominator is a power of two: any numerator of 64 bits, one rounding in its conversion, then an exact product.
    Product { factor: i64, offset: i64, reciprocal: f64 },
    /// Numerator and denominator are at most 2^53, so both are doubles and the division is the only rounding.
    Quotient { factor: i64, offset: i64, divisor: f64 },
    /// The exact wide arithmetic of [`Affine::value`].
    Wide,
}

impl Scaler {
    /// The scaler for `affine` on raw values from `raw_min` to `raw_max`, both included.
    pub fn new(affine: &Affine, raw_min: i128, raw_max: i128) -> Self {
        let (first, last) = (raw_min.max(i128::from(i64::MIN)), raw_max.min(i128::from(i64::MAX)));
        let wide = Self { path: Path::Wide, first: 0, span: 0, affine: *affine };
        // Both ends are within 64 bits now unless the range is empty or lies wholly outside.
        let (Ok(first), Ok(last)) = (i64::try_from(first), i64::try_from(last)) else {
            return wide;
        };
        if first > last {
            return wide;
        }
        Self { path: Path::new(affine, first, last), first, span: last.abs_diff(first), affine: *affine }
    }

    /// The double nearest to the exact value of `raw`, ties to even.
    #[inline]
    pub fn value(&self, raw: i64) -> f64 {
        if raw.wrapping_sub(self.first) as u64 > self.span {
            return self.wide_value(raw);
        }
        self.value_inside(raw)
    }

    /// [`Scaler::value`] of a raw value that is known to lie in the range the scaler was made for; of others it may be any number.
    #[inline]
    pub fn value_inside(&self, raw: i64) -> f64 {
        // Inside the range no numerator overflows: `Path::new` has looked at both of its ends.
        let numerator = |factor: i64, offset: i64| raw.wrapping_mul(factor).wrapping_add(offset) as f64;
        match self.path {
            Path::Identity => raw as f64,
            Path::Product { factor, offset, reciprocal } => numerator(factor, offset) * reciprocal,
            Path::Quotient { factor, offset, divisor } => numerator(factor, offset) / divisor,
            Path::Wide => self.wide_value(raw),
        }
    }

    /// [`Scaler::value`] for raw values that may be beyond 63 bits and a sign.
    #[inline]
    pub fn value_of(&self, raw: i128) -> f64 {
        match i64::try_from(raw) {
            Ok(raw) => self.value(raw),
            Err(_) => self.affine.value(raw),
        }
    }

    #[cold]
    fn wide_value(&self, raw: i64) -> f64 {
        self.affine.value(i128::from(raw))
    }

    /// The formula.
    pub const fn affine(&self) -> &Affine {
        &self.affine
    }

    /// Whether every value is a whole number, so that none needs a decimal point.
    pub const fn is_exactly_integer(&self) -> bool {
        self.affine.denominator() == 1
    }
}

impl Path {
    /// The cheapest path that is exact from `first` to `last`.
    fn new(affine: &Affine, first: i64, last: i64) -> Self {
        if affine.is_identity() {
            return Self::Identity;
        }
        let denominator = affine.denominator();
        let (Ok(factor), Ok(offset)) =
            (i64::try_from(affine.factor_numerator()), i64::try_from(affine.offset_numerator()))
        else {
            return Self::Wide;
        };
        // The numerator is affine in the raw value, so its largest size is at one of the ends; neither it nor the product may overflow.
        let end = |raw: i64| raw.checked_mul(factor)?.checked_add(offset).map(i64::unsigned_abs);
        let (Some(at_first), Some(at_last)) = (end(first), end(last)) else {
            return Self::Wide;
        };
        if denominator.is_power_of_two() {
            return Self::Product { factor, offset, reciprocal: 1.0 / denominator as f64 };
        }
        let exact = u128::from(at_first.max(at_last)) <= EXACT_LIMIT && denominator <= EXACT_LIMIT;
        if exact { Self::Quotient { factor, offset, divisor: denominator as f64 } } else { Self::Wide }
    }
}

#[cfg(test)]
mod tests;
