//! What each raw number of a signal says beside its value, as runs: worked out once, exactly.

use wirelore_bits::{Affine, Encoding, Ratio};
use wirelore_model::{Curve, CurvePoint, Database, Meaning, RawSpan, Scaling, Signal, ValueRange};

/// Raw numbers between two others, both included.
pub(crate) type Span = (i128, i128);

/// Whether a raw number is a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Standing {
    Reading,
    Absent,
    Fault,
}

/// Raw numbers of one signal that say the same beside their values.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Run {
    pub(crate) span: Span,
    pub(crate) standing: Standing,
    /// The value lies outside the stated range.
    pub(crate) is_outside: bool,
}

/// All raw numbers of a signal that holds whole numbers, in rising runs.
pub(crate) fn runs(database: &Database, signal: &Signal, encoding: Encoding) -> Vec<Run> {
    let Some(all) = encoding.integer_range() else { return Vec::new() };
    let layers = Layers::new(database, signal, encoding, all);
    let mut edges = vec![all.0, all.1 + 1];
    edges.extend(layers.spans().flat_map(|(first, last)| [first, last + 1]));
    edges.retain(|edge| (all.0..=all.1 + 1).contains(edge));
    edges.sort_unstable();
    edges.dedup();
    let mut runs: Vec<Run> = Vec::new();
    for pair in edges.windows(2) {
        let (standing, is_outside) = layers.at(pair[0]);
        match runs.last_mut() {
            Some(before) if (before.standing, before.is_outside) == (standing, is_outside) => {
                before.span.1 = pair[1] - 1
            }
            _ => runs.push(Run { span: (pair[0], pair[1] - 1), standing, is_outside }),
        }
    }
    runs
}

/// What a description says of raw numbers.
struct Layers {
    absent: Vec<Span>,
    fault: Vec<Span>,
    words: Vec<(Span, Meaning)>,
    /// Where the value is in range; `None`: everywhere.
    inside: Option<Vec<Span>>,
    /// Where the curve has a value; `None`: there is no curve.
    curve: Option<Span>,
}

impl Layers {
    fn new(database: &Database, signal: &Signal, encoding: Encoding, all: Span) -> Self {
        let numbers = |spans: &[RawSpan]| spans.iter().filter_map(|span| span.numbers(encoding)).collect();
        let words = database.words(signal).iter();
        let inside = signal.range.as_deref().map(|range| match &signal.scaling {
            Scaling::Curve(curve) => inside_curve(curve, range),
            Scaling::Affine(formula) => raws_inside(formula, range, all).into_iter().collect(),
            Scaling::Raw | Scaling::TroubleCode => raws_inside(&Affine::identity(), range, all).into_iter().collect(),
        });
        Self {
            absent: numbers(&signal.absent),
            fault: numbers(&signal.fault),
            words: words.filter_map(|word| Some((word.values.numbers(encoding)?, word.meaning))).collect(),
            inside,
            curve: match &signal.scaling {
                Scaling::Curve(curve) => domain(curve),
                _ => None,
            },
        }
    }

    fn spans(&self) -> impl Iterator<Item = Span> {
        let words = self.words.iter().map(|(span, _)| span);
        let inside = self.inside.iter().flatten();
        self.absent.iter().chain(&self.fault).chain(words).chain(inside).chain(&self.curve).copied()
    }

    /// What a number says: a special value before a word, and the word that comes first.
    fn at(&self, number: i128) -> (Standing, bool) {
        let holds = |spans: &[Span]| spans.iter().any(|(first, last)| (*first..=*last).contains(&number));
        let word = self.words.iter().find(|(span, _)| holds(&[*span])).map(|(_, meaning)| *meaning);
        let standing = match word {
            _ if holds(&self.absent) => Standing::Absent,
            _ if holds(&self.fault) => Standing::Fault,
            Some(Meaning::Absent) => Standing::Absent,
            Some(Meaning::Fault) => Standing::Fault,
            Some(Meaning::Reading) | None => Standing::Reading,
        };
        let has_value = standing == Standing::Reading && self.curve.is_none_or(|domain| holds(&[domain]));
        (standing, has_value && self.inside.as_ref().is_some_and(|inside| !holds(inside)))
    }
}

/// The raw numbers at which a curve has a value.
pub(crate) fn domain(curve: &Curve) -> Option<Span> {
    Some((curve.points.first()?.raw.into(), curve.points.last()?.raw.into()))
}

/// The line between two points of a curve.
pub(crate) enum Line {
    /// The same value all along.
    Level(Ratio),
    /// A formula in the raw number.
    Slope(Affine),
}

impl Line {
    /// `None` where it is too fine for fractions of 128 bits.
    pub(crate) fn through(from: &CurvePoint, to: &CurvePoint) -> Option<Self> {
        if from.value == to.value {
            return Some(Self::Level(from.value));
        }
        let run = Ratio::whole(i128::from(to.raw) - i128::from(from.raw));
        let slope = to.value.checked_sub(&from.value)?.checked_div(&run)?;
        let offset = from.value.checked_sub(&slope.checked_mul(&Ratio::from(from.raw))?)?;
        Affine::new(slope, offset).map(Self::Slope)
    }
}

/// The raw numbers at which a curve's value lies in a range.
fn inside_curve(curve: &Curve, range: &ValueRange) -> Vec<Span> {
    let pieces = curve.points.windows(2).filter_map(|pair| {
        let raws = (i128::from(pair[0].raw), i128::from(pair[1].raw));
        match Line::through(&pair[0], &pair[1])? {
            Line::Level(value) => (range.low <= value && value <= range.high).then_some(raws),
            Line::Slope(formula) => raws_inside(&formula, range, raws),
        }
    });
    pieces.collect()
}

/// The raw numbers between two others whose value lies in a range.
fn raws_inside(formula: &Affine, range: &ValueRange, raws: Span) -> Option<Span> {
    let is_below = |raw, value: &Ratio| match formula.exact(raw) {
        Some(exact) => exact < *value,
        None => formula.value(raw) < value.to_f64(),
    };
    let is_above = |raw, value: &Ratio| match formula.exact(raw) {
        Some(exact) => exact > *value,
        None => formula.value(raw) > value.to_f64(),
    };
    let is_inside = |raw| !is_below(raw, &range.low) && !is_above(raw, &range.high);
    let ends = [&range.low, &range.high].map(|value| formula.raw_for_ratio(value, raws).raw);
    let (first, last) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
    // The nearest raw number to an end may lie one step outside.
    let first = if is_inside(first) { first } else { first + 1 };
    let last = if is_inside(last) { last } else { last - 1 };
    (first <= last && is_inside(first)).then_some((first, last))
}

/// Disjoint runs out of overlapping ones, of which the first that was given holds.
pub(crate) fn first_wins<T: Copy + PartialEq>(given: &[(Span, T)]) -> Vec<(Span, T)> {
    let mut edges: Vec<i128> = given.iter().flat_map(|((first, last), _)| [*first, *last + 1]).collect();
    edges.sort_unstable();
    edges.dedup();
    let mut runs: Vec<(Span, T)> = Vec::new();
    for pair in edges.windows(2) {
        let Some(&(_, what)) = given.iter().find(|((first, last), _)| (*first..=*last).contains(&pair[0])) else {
            continue;
        };
        match runs.last_mut() {
            Some((span, before)) if span.1 + 1 == pair[0] && *before == what => span.1 = pair[1] - 1,
            _ => runs.push(((pair[0], pair[1] - 1), what)),
        }
    }
    runs
}

/// Whether disjoint runs leave some of all numbers over.
pub(crate) fn leaves_some<T>(runs: &[(Span, T)], all: Span) -> bool {
    let count: i128 = runs.iter().map(|((first, last), _)| last - first + 1).sum();
    count <= all.1 - all.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_range_is_the_same_as_by_trying_every_raw_number() {
        let ratio = |text: &str| Ratio::from_decimal(text).expect("a decimal");
        let ends = ["-300", "-12.34", "-0.05", "0", "0.049", "0.05", "12.7", "409.5"];
        for (factor, offset) in [("0.05", "0"), ("1", "-40"), ("-0.1", "20"), ("0.007", "-3.3"), ("-3", "5")] {
            let formula = Affine::new(ratio(factor), ratio(offset)).expect("it fits");
            for (at, low) in ends.iter().enumerate() {
                for high in &ends[at..] {
                    let range = ValueRange { low: ratio(low), high: ratio(high) };
                    let value = |raw| formula.exact(raw).expect("it fits");
                    let inside: Vec<i128> =
                        (-128..=127).filter(|&raw| range.low <= value(raw) && value(raw) <= range.high).collect();
                    let plain = inside.first().copied().zip(inside.last().copied());
                    assert_eq!(
                        raws_inside(&formula, &range, (-128, 127)),
                        plain,
                        "raw * {factor} + {offset}, {low}..{high}"
                    );
                }
            }
        }
    }

    #[test]
    fn the_first_of_overlapping_runs_holds() {
        let given = [((5, 9), 1), ((0, 20), 2), ((8, 12), 3), ((30, 30), 4)];
        assert_eq!(first_wins(&given), [((0, 4), 2), ((5, 9), 1), ((10, 20), 2), ((30, 30), 4)]);
    }
}
