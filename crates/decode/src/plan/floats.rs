//! Signals of floating-point numbers: their special values are compared as bits or as numbers, never counted through.

use wirelore_bits::Affine;
use wirelore_model::{Meaning, RawSpan, RawValue, Scaling, Signal, StateWord};

use super::Conversion;
use super::classes::{Class, Standing};
use super::curve::CurvePlan;

/// What the description says of a floating-point signal's raw values.
#[derive(Debug, Clone)]
pub(crate) struct FloatClasses {
    marks: Box<[Mark]>,
    range: Option<FloatRange>,
}

#[derive(Debug, Clone)]
struct Mark {
    span: FloatSpan,
    standing: Standing,
    word: Option<u32>,
}

/// A run of raw values of a floating-point signal.
#[derive(Debug, Clone, Copy)]
pub(crate) enum FloatSpan {
    /// By their bits.
    Bits(u64, u64),
    /// By their numbers.
    Numbers(f64, f64),
}

impl FloatSpan {
    /// From the description; `None` for a run from a number to a pattern.
    pub(crate) fn new(span: &RawSpan) -> Option<Self> {
        match (span.first, span.last) {
            (RawValue::Bits(first), RawValue::Bits(last)) => Some(Self::Bits(first, last)),
            (RawValue::Number(first), RawValue::Number(last)) => Some(Self::Numbers(first as f64, last as f64)),
            _ => None,
        }
    }

    /// Whether a raw value, given both ways, lies in it.
    pub(crate) fn contains(&self, bits: u64, number: f64) -> bool {
        match *self {
            Self::Bits(first, last) => (first..=last).contains(&bits),
            Self::Numbers(first, last) => (first..=last).contains(&number),
        }
    }
}

/// The range of engineering values, compared in the description's own unit.
#[derive(Debug, Clone)]
struct FloatRange {
    low: f64,
    high: f64,
    formula: Formula,
}

#[derive(Debug, Clone)]
enum Formula {
    Raw,
    Affine(Affine),
    Curve(CurvePlan),
}

impl FloatClasses {
    /// `None` where a curve cannot be held exactly.
    pub(crate) fn new(signal: &Signal, words: &[StateWord], first_word: u32) -> Option<Self> {
        let marked = |spans: &[RawSpan], standing| {
            let marks = spans.iter().filter_map(FloatSpan::new);
            marks.map(move |span| Mark { span, standing, word: None }).collect::<Vec<_>>()
        };
        let mut marks = marked(&signal.absent, Standing::Absent);
        marks.extend(marked(&signal.fault, Standing::Fault));
        marks.extend(words.iter().zip(first_word..).filter_map(|(word, index)| {
            let standing = match word.meaning {
                Meaning::Reading => Standing::Reading,
                Meaning::Absent => Standing::Absent,
                Meaning::Fault => Standing::Fault,
            };
            Some(Mark { span: FloatSpan::new(&word.values)?, standing, word: Some(index) })
        }));
        let range = match &signal.range {
            Some(range) => {
                let formula = match &signal.scaling {
                    Scaling::Raw | Scaling::TroubleCode => Formula::Raw,
                    Scaling::Affine(formula) => Formula::Affine(*formula),
                    Scaling::Curve(curve) => Formula::Curve(CurvePlan::new(curve, &Conversion::None)?),
                };
                Some(FloatRange { low: range.low.to_f64(), high: range.high.to_f64(), formula })
            }
            None => None,
        };
        Some(Self { marks: marks.into(), range })
    }

    /// The class of a raw value, given both ways.
    pub(crate) fn of(&self, bits: u64, number: f64) -> Class {
        let hits = || self.marks.iter().filter(|mark| mark.span.contains(bits, number));
        let word = hits().find_map(|mark| mark.word);
        let standing =
            hits().map(|mark| mark.standing).find(|standing| *standing != Standing::Reading).unwrap_or_default();
        let outside_range =
            standing == Standing::Reading && self.range.as_ref().is_some_and(|range| !range.contains(number));
        Class { standing, outside_range, word }
    }
}

impl FloatRange {
    /// Doubles that are nearest to exact values keep their order, so only a value within half a step of an end is not told from it.
    fn contains(&self, raw: f64) -> bool {
        let value = match &self.formula {
            Formula::Raw => Some(raw),
            Formula::Affine(formula) => Some(formula.value_of_float(raw)),
            Formula::Curve(curve) => curve.value_of_float(raw),
        };
        // Beyond a curve there is no value that could be out of range.
        value.is_none_or(|value| self.low <= value && value <= self.high)
    }
}
