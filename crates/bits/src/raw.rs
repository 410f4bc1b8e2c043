//! From an engineering value back to the raw value that stands for it.

use crate::ieee::Dyadic;
use crate::wide::{Scaled, Signed, Wide};
use crate::{Affine, Ratio};

/// How well a raw value stands for the engineering value that was asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fit {
    /// Decoding the raw value gives the engineering value back.
    Exact,
    /// No raw value gives it; this one is nearest, of two equally near ones the even one.
    Rounded,
    /// The nearest raw value lies outside the range, or the value is not a number.
    OutOfRange,
}

/// A raw value found for an engineering value.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct RawFor {
    /// The raw value; always inside the range that was given, at its nearer end where the fit is [`Fit::OutOfRange`].
    pub raw: i128,
    /// How well it fits.
    pub fit: Fit,
}

/// The whole numbers on both sides of an exact number: the nearest one and the one on the other side.
struct Neighbours {
    nearest: i128,
    other: i128,
    /// The exact number is a whole one: `nearest`.
    whole: bool,
    /// The exact number is beyond every `i128`, and both neighbours are the last one.
    beyond: bool,
}

impl Neighbours {
    /// From twice the exact size, rounded down, and whether that was exact; `None` stands for more than any `i128`.
    fn new(negative: bool, doubled: Option<(u128, bool)>) -> Self {
        let last = if negative { i128::MIN } else { i128::MAX };
        let signed = |size| (Signed { negative, size }).to_i128();
        let Some((doubled, exact)) = doubled else {
            return Self { nearest: last, other: last, whole: false, beyond: true };
        };
        let (below, half) = (doubled >> 1, doubled & 1 == 1);
        let whole = exact && !half;
        let above = below + u128::from(!whole);
        let nearer_above = half && (!exact || below & 1 == 1);
        let (nearest, other) = if nearer_above { (above, below) } else { (below, above) };
        let beyond = signed(nearest).is_none();
        Self { nearest: signed(nearest).unwrap_or(last), other: signed(other).unwrap_or(last), whole, beyond }
    }

    /// The answer, with `gives_back` deciding whether a raw value decodes to what was asked for.
    ///
    /// Decoding never decreases (or never increases) from one raw value to the next. So if any raw value in the range decodes to
    /// the value asked for, one of the two neighbours does, each moved to the nearest raw value in the range.
    fn choose(&self, range: (i128, i128), gives_back: impl Fn(i128) -> bool) -> RawFor {
        let inside = |raw: i128| raw.max(range.0).min(range.1);
        let nearest = inside(self.nearest);
        let exact = [nearest, inside(self.other)].into_iter().find(|raw| gives_back(*raw));
        match exact {
            Some(raw) => RawFor { raw, fit: Fit::Exact },
            None if nearest == self.nearest && !self.beyond => RawFor { raw: nearest, fit: Fit::Rounded },
            None => RawFor { raw: nearest, fit: Fit::OutOfRange },
        }
    }
}

impl Affine {
    /// The raw value, from `range.0` to `range.1`, whose engineering value is `value` or else nearest to it.
    ///
    /// [`Fit::Exact`] means that [`Affine::value`] of the raw value is `value`, bit for bit but for the sign of zero; where several
    /// raw values share one double, one of them is found. Infinities and not-a-number are out of range.
    pub fn raw_nearest(&self, value: f64, range: (i128, i128)) -> RawFor {
        let (factor, offset) = (Signed::from(self.factor_numerator()), Signed::from(self.offset_numerator()));
        let Some(number) = Dyadic::of(value) else {
            let towards_low = (value == f64::NEG_INFINITY) != factor.negative;
            let end = if value.is_nan() {
                0
            } else if towards_low {
                i128::MIN
            } else {
                i128::MAX
            };
            return RawFor { raw: end.max(range.0).min(range.1), fit: Fit::OutOfRange };
        };
        // raw = (value * D - O) / N
        let dividend = Scaled::affine(number, Signed { negative: false, size: self.denominator() }, offset.negated());
        let doubled = dividend.doubled_quotient(&Wide::from(factor.size));
        Neighbours::new(dividend.negative != factor.negative, doubled).choose(range, |raw| self.value(raw) == value)
    }

    /// The raw value, from `range.0` to `range.1`, whose exact engineering value is `value` or else nearest to it.
    ///
    /// For values that come as decimal text: nothing passes through a double, and [`Fit::Exact`] means exactly equal.
    pub fn raw_for_ratio(&self, value: &Ratio, range: (i128, i128)) -> RawFor {
        let (factor, offset) = (Signed::from(self.factor_numerator()), Signed::from(self.offset_numerator()));
        let wanted = value.signed_numerator();
        // raw = (n * D - O * d) / (N * d) for a value of n / d
        let left = (wanted.negative, Wide::product(wanted.size, self.denominator()));
        let right = (!offset.negative, Wide::product(offset.size, value.denominator()));
        let dividend = Scaled::sum(left, right, 0);
        let doubled = dividend.doubled_quotient(&Wide::product(factor.size, value.denominator()));
        let neighbours = Neighbours::new(dividend.negative != factor.negative, doubled);
        neighbours.choose(range, |raw| neighbours.whole && !neighbours.beyond && raw == neighbours.nearest)
    }
}

#[cfg(test)]
mod tests;
