//! The hot path of scaling: an exact formula compiled for a range of raw values.

use crate::Affine;
use crate::affine::EXACT_LIMIT;

/// An exact formula for the raw values of one signal whose numerators are small enough: one multiplication and one addition of integers, a
/// conversion, and a division, of which at most one step rounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quotient {
    factor: i64,
    offset: i64,
    divisor: f64,
}

/// An [`Affine`] with the cheapest exact way to compute it for the raw values of one signal, chosen once.
///
/// [`Scaler::value`] and [`Affine::value`] give the same double for every raw value, inside the range or not; inside the range
/// it is a [`Quotient`] where that is exact.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scaler {
    /// `None`: the exact wide arithmetic of [`Affine::value`].
    quotient: Option<Quotient>,
    /// Lowest raw value of the quotient, and how many follow it.
    first: i64,
    span: u64,
    affine: Affine,
}

impl Scaler {
    /// The scaler for `affine` on raw values from `raw_min` to `raw_max`, both included.
    pub fn new(affine: &Affine, raw_min: i128, raw_max: i128) -> Self {
        let (first, last) = (raw_min.max(i128::from(i64::MIN)), raw_max.min(i128::from(i64::MAX)));
        let wide = Self { quotient: None, first: 0, span: 0, affine: *affine };
        // Both ends are within 64 bits now unless the range is empty or lies wholly outside.
        let (Ok(first), Ok(last)) = (i64::try_from(first), i64::try_from(last)) else {
            return wide;
        };
        if first > last {
            return wide;
        }
        Self { quotient: Quotient::new(affine, first, last), first, span: last.abs_diff(first), affine: *affine }
    }

    /// The double nearest to the exact value of `raw`, ties to even.
    #[inline]
    pub fn value(&self, raw: i64) -> f64 {
        match &self.quotient {
            Some(quotient) if raw.wrapping_sub(self.first) as u64 <= self.span => quotient.value(raw),
            _ => self.wide_value(raw),
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

impl Quotient {
    /// The raw value itself.
    pub const IDENTITY: Self = Self { factor: 1, offset: 0, divisor: 1.0 };

    /// The quotient that gives the values of `affine` for raw values from `first` to `last`, both included and in this order; `None` where it
    /// would not give each as the nearest double.
    pub fn new(affine: &Affine, first: i64, last: i64) -> Option<Self> {
        let factor = i64::try_from(affine.factor_numerator()).ok()?;
        let offset = i64::try_from(affine.offset_numerator()).ok()?;
        // The numerator is affine in the raw value, so its largest size is at one of the ends; neither it nor the product may overflow.
        let end = |raw: i64| raw.checked_mul(factor)?.checked_add(offset).map(i64::unsigned_abs);
        let (at_first, at_last) = (end(first)?, end(last)?);
        let denominator = affine.denominator();
        // A power of two divides without rounding, so the conversion of the numerator may round. Else both have to be doubles.
        let is_exact = denominator.is_power_of_two()
            || (u128::from(at_first.max(at_last)) <= EXACT_LIMIT && denominator <= EXACT_LIMIT);
        is_exact.then_some(Self { factor, offset, divisor: denominator as f64 })
    }

    /// The quotient for how far raw values lie above `first`, in place of the raw values themselves.
    #[must_use]
    pub const fn counted_from(self, first: i64) -> Self {
        // Sums and products that go round come back with the numerator, which does not overflow.
        Self { offset: first.wrapping_mul(self.factor).wrapping_add(self.offset), ..self }
    }

    /// The double nearest to the exact value of a raw value in the range that the quotient was made for, ties to even; of others it may be any
    /// number.
    #[inline]
    pub fn value(&self, raw: i64) -> f64 {
        // Inside the range no numerator overflows: both of its ends were looked at.
        raw.wrapping_mul(self.factor).wrapping_add(self.offset) as f64 / self.divisor
    }
}

#[cfg(test)]
mod tests;
