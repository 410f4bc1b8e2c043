//! Formulas that are too large for plain arithmetic of doubles, and the way back from an engineering value to the raw one.

use crate::{Affine, Fit};

/// The exact formula (raw * N + O) / D.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Formula(Affine);

impl Formula {
    /// Out of N, O and D. Numbers that make no formula leave the raw value as it is.
    #[must_use]
    pub const fn new(factor: i128, offset: i128, denominator: u128) -> Self {
        match Affine::from_parts(factor, offset, denominator) {
            Some(formula) => Self(formula),
            None => Self(Affine::identity()),
        }
    }

    /// The double nearest to the exact value.
    #[must_use]
    pub fn of(self, raw: i128) -> f64 {
        self.0.value(raw)
    }

    /// The same of a floating-point number.
    #[must_use]
    pub fn of_float(self, raw: f64) -> f64 {
        self.0.value_of_float(raw)
    }

    /// The floating-point number whose value this is.
    #[must_use]
    pub fn float_for(self, value: f64) -> f64 {
        self.0.raw_float_nearest(value)
    }
}

/// Sets a field to the raw number, between two others, that stands for an engineering value or else is nearest to it. A raw number for which
/// `is_value` says no is none: where the nearest one is that, and beyond both ends, the field stays as it is.
#[must_use]
pub fn set<T: TryFrom<i128>>(
    field: &mut T,
    value: f64,
    formula: Formula,
    range: (i128, i128),
    is_value: impl Fn(i128) -> bool,
) -> Fit {
    let found = formula.0.raw_nearest(value, range);
    match T::try_from(found.raw) {
        Ok(raw) if found.fit != Fit::OutOfRange && is_value(found.raw) => {
            *field = raw;
            found.fit
        }
        _ => Fit::OutOfRange,
    }
}
