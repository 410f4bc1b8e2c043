//! Sensor curves: straight lines between points, each kept as an exact formula in the raw value.

use wirelore_bits::{Affine, Ratio, Scaler};
use wirelore_model::{Curve, CurvePoint, ValueRange};

use super::Conversion;
use super::range::raws_inside;
use crate::spans::{Run, Spans};

/// A curve made ready for decoding.
#[derive(Debug, Clone)]
pub(crate) struct CurvePlan {
    /// The raw value at which each piece begins; the last entry is where the curve ends.
    starts: Box<[i64]>,
    pieces: Box<[Line]>,
}

/// One straight piece.
#[derive(Debug, Clone)]
enum Line {
    Level(f64),
    Slope(Scaler),
}

/// The exact line through two points: `None` where it is too fine for fractions of 128 bits.
pub(crate) enum ExactLine {
    /// The same value all along.
    Level(Ratio),
    /// A formula in the raw value.
    Slope(Affine),
}

impl ExactLine {
    /// The line through two points of which the second has the greater raw value.
    pub(crate) fn through(from: &CurvePoint, to: &CurvePoint) -> Option<Self> {
        if from.value == to.value {
            return Some(Self::Level(from.value));
        }
        let run = Ratio::whole(i128::from(to.raw) - i128::from(from.raw));
        let slope = to.value.checked_sub(&from.value)?.checked_div(&run)?;
        let offset = from.value.checked_sub(&slope.checked_mul(&Ratio::from(from.raw))?)?;
        Affine::new(slope, offset).map(Self::Slope)
    }

    fn converted(self, conversion: &Conversion) -> Option<Self> {
        Some(match self {
            Self::Level(value) => Self::Level(conversion.ratio(&value)?),
            Self::Slope(formula) => Self::Slope(conversion.affine(&formula)?),
        })
    }
}

impl CurvePlan {
    /// The curve with a conversion of units behind it; `None` where a piece cannot be held exactly.
    pub(crate) fn new(curve: &Curve, conversion: &Conversion) -> Option<Self> {
        let pieces = curve.points.windows(2).map(|pair| {
            Some(match ExactLine::through(&pair[0], &pair[1])?.converted(conversion)? {
                ExactLine::Level(value) => Line::Level(value.to_f64()),
                ExactLine::Slope(formula) => Line::Slope(Scaler::new(&formula, pair[0].raw.into(), pair[1].raw.into())),
            })
        });
        Some(Self {
            pieces: pieces.collect::<Option<_>>()?,
            starts: curve.points.iter().map(|point| point.raw).collect(),
        })
    }

    /// The double nearest to the exact value; `None` beyond the ends.
    pub(crate) fn value(&self, raw: i128) -> Option<f64> {
        Some(match self.piece(|start| i128::from(start) <= raw, |end| raw <= i128::from(end))? {
            Line::Level(value) => *value,
            Line::Slope(scaler) => scaler.value_of(raw),
        })
    }

    /// The same for a raw floating-point number.
    pub(crate) fn value_of_float(&self, raw: f64) -> Option<f64> {
        Some(match self.piece(|start| start as f64 <= raw, |end| raw <= end as f64)? {
            Line::Level(value) => *value,
            Line::Slope(scaler) => scaler.affine().value_of_float(raw),
        })
    }

    fn piece(&self, begun: impl Fn(i64) -> bool, not_ended: impl Fn(i64) -> bool) -> Option<&Line> {
        if !not_ended(*self.starts.last()?) {
            return None;
        }
        let behind = self.starts.partition_point(|&start| begun(start));
        // At the very end of the curve the last piece holds.
        self.pieces.get(behind.checked_sub(1)?.min(self.pieces.len() - 1))
    }
}

/// The raw values at which the curve has a value.
pub(crate) fn domain(curve: &Curve) -> Option<(i128, i128)> {
    Some((curve.points.first()?.raw.into(), curve.points.last()?.raw.into()))
}

/// The raw values at which the curve's value lies in the range.
pub(crate) fn curve_inside(curve: &Curve, range: &ValueRange) -> Spans<()> {
    let run = |(first, last)| Run { first, last, what: () };
    Spans::first_wins(curve.points.windows(2).filter_map(|pair| {
        let raws = (i128::from(pair[0].raw), i128::from(pair[1].raw));
        match ExactLine::through(&pair[0], &pair[1])? {
            ExactLine::Level(value) => (range.low <= value && value <= range.high).then(|| run(raws)),
            ExactLine::Slope(formula) => raws_inside(&formula, range, raws).map(run),
        }
    }))
}
