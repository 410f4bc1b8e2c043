//! Frames compiled for decoding: once from the model, before the first frame is seen.
//!
//! What the innermost loop touches ([`Step`]) stands in one row; what it needs only for special values, sensor curves, texts and the
//! like ([`Detail`]) stands in a second row beside it.

mod classes;
mod curve;
mod detail;
mod floats;
mod frame;
mod range;
mod rows;
mod step;
mod switch;

pub(crate) use classes::{Standing, class_runs, reading_runs};
pub(crate) use curve::ExactLine;
pub(crate) use detail::Detail;
pub(crate) use floats::FloatSpan;
pub(crate) use frame::{FramePlan, Group, NO_SWITCH, Planner, Visit};
pub(crate) use rows::{Cut, RowPlan};
pub(crate) use step::{Form, Geometry, Loadable, Step};
pub(crate) use switch::{Selected, Switch};

use wirelore_bits::{Affine, Ratio};

/// A conversion of units behind a signal's formula.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Conversion {
    /// The described unit stays.
    None,
    /// `value * factor + offset`.
    To {
        /// Never zero.
        factor: Ratio,
        /// In the new unit.
        offset: Ratio,
    },
}

impl Conversion {
    /// A formula with the conversion behind it; `None` where it does not fit in exact fractions.
    pub(crate) fn affine(&self, formula: &Affine) -> Option<Affine> {
        match self {
            Self::None => Some(*formula),
            Self::To { factor, offset } => formula.then(factor, offset),
        }
    }

    /// A value converted.
    pub(crate) fn ratio(&self, value: &Ratio) -> Option<Ratio> {
        match self {
            Self::None => Some(*value),
            Self::To { factor, offset } => value.checked_mul(factor)?.checked_add(offset),
        }
    }
}
