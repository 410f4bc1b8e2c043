//! Exact scaling: engineering value = (raw * N + O) / D with whole N, O and D.

use crate::Ratio;
use crate::ieee::Dyadic;
use crate::ratio::greatest_common_divisor;
use crate::wide::{Scaled, Signed, Wide};

/// The largest whole number up to which every whole number is a double: 2^53.
pub(crate) const EXACT_LIMIT: u128 = 1 << 53;

/// A formula that is affine in the raw value, kept as exact fractions over one denominator.
///
/// [`Affine::value`] is the double nearest to the exact result (ties to even) for every raw value; no factor is ever turned into
/// a double first. Plain `raw * 0.01` is off by one unit in the last place for one raw value of 16 bits in seven.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(try_from = "crate::serial::AffineParts", into = "crate::serial::AffineParts")
)]
pub struct Affine {
    factor_numerator: i128,
    offset_numerator: i128,
    denominator: u128,
}

impl Affine {
    /// The formula `raw * factor + offset`.
    ///
    /// `None` for a factor of zero, and where the two fractions brought to one denominator do not fit in 128 bits.
    pub fn new(factor: Ratio, offset: Ratio) -> Option<Self> {
        if factor.is_zero() {
            return None;
        }
        let common = greatest_common_divisor(factor.denominator(), offset.denominator());
        let factor_scale = offset.denominator() / common;
        let offset_scale = factor.denominator() / common;
        Some(Self {
            factor_numerator: factor.numerator().checked_mul(i128::try_from(factor_scale).ok()?)?,
            offset_numerator: offset.numerator().checked_mul(i128::try_from(offset_scale).ok()?)?,
            denominator: factor.denominator().checked_mul(factor_scale)?,
        })
    }

    /// The formula `(raw * factor + offset) / denominator`; `None` for a factor or a denominator of zero.
    ///
    /// The parts are taken as they are: for those that [`Affine::factor_numerator`] and its like gave, this is the same formula again.
    pub const fn from_parts(factor: i128, offset: i128, denominator: u128) -> Option<Self> {
        if factor == 0 || denominator == 0 {
            return None;
        }
        Some(Self { factor_numerator: factor, offset_numerator: offset, denominator })
    }

    /// The formula that leaves the raw value as it is.
    pub const fn identity() -> Self {
        Self { factor_numerator: 1, offset_numerator: 0, denominator: 1 }
    }

    /// Whether it leaves the raw value as it is.
    pub const fn is_identity(&self) -> bool {
        self.factor_numerator == 1 && self.offset_numerator == 0 && self.denominator == 1
    }

    /// What one raw step is worth; never zero.
    pub fn factor(&self) -> Ratio {
        self.over_denominator(self.factor_numerator)
    }

    /// The value of raw 0.
    pub fn offset(&self) -> Ratio {
        self.over_denominator(self.offset_numerator)
    }

    fn over_denominator(&self, numerator: i128) -> Ratio {
        Ratio::new(numerator, self.denominator).unwrap_or(Ratio::ZERO)
    }

    /// N of the formula (raw * N + O) / D; never zero.
    pub const fn factor_numerator(&self) -> i128 {
        self.factor_numerator
    }

    /// O of the formula (raw * N + O) / D.
    pub const fn offset_numerator(&self) -> i128 {
        self.offset_numerator
    }

    /// D of the formula (raw * N + O) / D: the least one that serves factor and offset alike.
    pub const fn denominator(&self) -> u128 {
        self.denominator
    }

    /// The double nearest to the exact value of `raw`, ties to even.
    pub fn value(&self, raw: i128) -> f64 {
        match self.short_numerator_of(raw) {
            // Dividing by a power of two loses nothing, so the conversion of the numerator is the only rounding.
            Some(numerator) if self.denominator.is_power_of_two() => numerator as f64 / self.denominator as f64,
            // Both are doubles exactly, and IEEE 754 division rounds the exact quotient once.
            Some(numerator) if numerator.unsigned_abs() <= EXACT_LIMIT && self.denominator <= EXACT_LIMIT => {
                numerator as f64 / self.denominator as f64
            }
            _ => self.numerator_of(raw).nearest_double(self.denominator),
        }
    }

    /// raw * N + O where it fits in 128 bits.
    fn short_numerator_of(&self, raw: i128) -> Option<i128> {
        raw.checked_mul(self.factor_numerator)?.checked_add(self.offset_numerator)
    }

    /// raw * N + O in full width.
    fn numerator_of(&self, raw: i128) -> Scaled {
        let (raw, factor, offset) =
            (Signed::from(raw), Signed::from(self.factor_numerator), Signed::from(self.offset_numerator));
        let product = (raw.negative != factor.negative, Wide::product(raw.size, factor.size));
        Scaled::sum(product, (offset.negative, Wide::from(offset.size)), 0)
    }

    /// The double nearest to the exact value of a raw floating-point number, ties to even.
    ///
    /// Not-a-number stays as it is, infinities stay infinite (with the sign of the factor taken in); a result beyond the largest
    /// double is infinite. Zero keeps its sign where there is no offset.
    pub fn value_of_float(&self, raw: f64) -> f64 {
        if self.is_identity() {
            return raw;
        }
        let one = Signed { negative: false, size: self.denominator };
        scale_float(raw, Signed::from(self.factor_numerator), Signed::from(self.offset_numerator), one)
    }

    /// The double nearest to the exact raw number whose engineering value is `value`: [`Affine::value_of_float`] the other way round.
    pub fn raw_float_nearest(&self, value: f64) -> f64 {
        if self.is_identity() {
            return value;
        }
        let one = Signed { negative: false, size: self.denominator };
        scale_float(value, one, Signed::from(self.offset_numerator).negated(), Signed::from(self.factor_numerator))
    }

    /// The exact value of `raw`; `None` if it does not fit in a fraction of 128 bits.
    pub fn exact(&self, raw: i128) -> Option<Ratio> {
        if let Some(numerator) = self.short_numerator_of(raw) {
            return Ratio::new(numerator, self.denominator);
        }
        let numerator = self.numerator_of(raw);
        Ratio::from_wide(numerator.negative, &numerator.size, self.denominator)
    }

    /// This formula with `value * factor + offset` behind it, for example a conversion of units, still exact.
    ///
    /// `None` for a factor of zero, and where the result does not fit.
    pub fn then(&self, factor: &Ratio, offset: &Ratio) -> Option<Self> {
        let moved = self.offset().checked_mul(factor)?.checked_add(offset)?;
        Self::new(self.factor().checked_mul(factor)?, moved)
    }
}

impl Default for Affine {
    fn default() -> Self {
        Self::identity()
    }
}

/// The double nearest to (`number` * `factor` + `addend`) / `divisor`.
fn scale_float(number: f64, factor: Signed, addend: Signed, divisor: Signed) -> f64 {
    let flips = factor.negative != divisor.negative;
    let Some(parts) = Dyadic::of(number) else {
        return if flips && !number.is_nan() { -number } else { number };
    };
    if parts.significand == 0 && addend.size == 0 {
        return if flips { -number } else { number };
    }
    let mut scaled = Scaled::affine(parts, factor, addend);
    scaled.negative ^= divisor.negative;
    scaled.nearest_double(divisor.size)
}

#[cfg(test)]
mod tests;
