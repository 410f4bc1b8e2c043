//! What each raw value is beside its number: a reading, no reading, a fault; in range or not; with which word.

use wirelore_bits::Affine;
use wirelore_bits::{Encoding, Number};
use wirelore_model::{Meaning, RawSpan, Scaling, Signal, StateWord};

use super::curve::{curve_inside, domain};
use super::range::raws_inside;
use crate::spans::{Run, Spans, push_joined};

/// Signals up to this width that have state words are looked up by their bits in a table.
const TABLE_BITS_MAX: u8 = 8;

/// Whether a raw value is a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Standing {
    #[default]
    Reading,
    Absent,
    Fault,
    BeyondCurve,
}

/// What a raw value is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Class {
    pub(crate) standing: Standing,
    pub(crate) outside_range: bool,
    /// Which of the decoder's words.
    pub(crate) word: Option<u32>,
}

/// The classes of the raw numbers of one signal that holds whole numbers.
#[derive(Debug, Clone)]
pub(crate) enum Classes {
    /// Every raw number is a plain reading.
    Plain,
    /// By the bits, for narrow signals.
    Table { by_bits: Box<[u8]>, classes: Box<[Class]> },
    /// By the number; every number of the encoding is in one of the runs.
    Runs(Spans<Class>),
}

impl Classes {
    /// The class of a raw value.
    #[inline]
    pub(crate) fn of(&self, bits: u64, number: i128) -> Class {
        match self {
            Self::Plain => Class::default(),
            Self::Table { by_bits, classes } => {
                let index = by_bits.get(bits as usize).copied().unwrap_or_default();
                classes.get(usize::from(index)).copied().unwrap_or_default()
            }
            Self::Runs(runs) => runs.get(number).unwrap_or_default(),
        }
    }

    /// The classes of a signal, and the longest run of raw numbers that are plain readings.
    pub(crate) fn new(
        signal: &Signal,
        encoding: Encoding,
        words: &[StateWord],
        first_word: u32,
    ) -> (Self, Option<(i128, i128)>) {
        let Some(all) = encoding.integer_range() else {
            return (Self::Plain, None);
        };
        let layers = Layers::new(signal, encoding, words, first_word, all);
        let runs = layers.joined(all);
        let plain = runs.iter().filter(|run| run.what == Class::default()).max_by_key(|run| run.last - run.first);
        let plain = plain.map(|run| (run.first, run.last));
        let classes = match runs.as_slice() {
            [only] if only.what == Class::default() => Self::Plain,
            _ if encoding.width() <= TABLE_BITS_MAX && !words.is_empty() => table(encoding, &runs),
            _ => Self::Runs(Spans::first_wins(runs)),
        };
        (classes, plain)
    }
}

/// What all raw numbers of a signal are, in rising runs of one class each; the words are counted from the signal's first one. None for floating-point
/// signals.
pub(crate) fn class_runs(signal: &Signal, encoding: Encoding, words: &[StateWord]) -> Vec<Run<Class>> {
    match encoding.integer_range() {
        Some(all) => Layers::new(signal, encoding, words, 0, all).joined(all),
        None => Vec::new(),
    }
}

/// The raw numbers that are readings, in rising runs; none for floating-point signals.
pub(crate) fn reading_runs(signal: &Signal, encoding: Encoding, words: &[StateWord]) -> Vec<(i128, i128)> {
    let runs = class_runs(signal, encoding, words);
    let readings = runs.iter().filter(|run| run.what.standing == Standing::Reading);
    readings.map(|run| (run.first, run.last)).collect()
}

/// A table over all bits of a narrow signal. Bits that make no number get a class that nobody asks for.
fn table(encoding: Encoding, runs: &[Run<Class>]) -> Classes {
    let mut classes: Vec<Class> = Vec::new();
    let by_bits = (0..1_u64 << encoding.width()).map(|bits| {
        let number = match encoding.number(bits) {
            Ok(Number::Integer(number)) => number,
            Ok(Number::Float(_)) | Err(_) => 0,
        };
        let behind = runs.partition_point(|run| run.first <= number);
        let class = runs.get(behind.saturating_sub(1)).map_or(Class::default(), |run| run.what);
        let known = classes.iter().position(|known| *known == class);
        known.unwrap_or_else(|| {
            classes.push(class);
            classes.len() - 1
        }) as u8
    });
    let by_bits = by_bits.collect();
    Classes::Table { by_bits, classes: classes.into() }
}

/// Everything that a description says of raw numbers, each as runs.
struct Layers {
    absent: Spans<()>,
    fault: Spans<()>,
    words: Spans<(u32, Meaning)>,
    /// Where the value is in range; `None`: everywhere.
    inside: Option<Spans<()>>,
    /// Where the curve has a value; `None`: there is no curve.
    curve: Option<(i128, i128)>,
}

impl Layers {
    fn new(signal: &Signal, encoding: Encoding, words: &[StateWord], first_word: u32, all: (i128, i128)) -> Self {
        let marked = |spans: &[RawSpan]| {
            let ends = spans.iter().filter_map(|span| span.numbers(encoding));
            Spans::first_wins(ends.map(|(first, last)| Run { first, last, what: () }))
        };
        let worded = words.iter().zip(first_word..).filter_map(|(word, index)| {
            let (first, last) = word.values.numbers(encoding)?;
            Some(Run { first, last, what: (index, word.meaning) })
        });
        let inside = signal.range.as_ref().map(|range| match &signal.scaling {
            Scaling::Curve(curve) => curve_inside(curve, range),
            Scaling::Affine(formula) => one_run(raws_inside(formula, range, all)),
            Scaling::Raw | Scaling::TroubleCode => one_run(raws_inside(&Affine::identity(), range, all)),
        });
        let curve = match &signal.scaling {
            Scaling::Curve(curve) => domain(curve),
            Scaling::Raw | Scaling::Affine(_) | Scaling::TroubleCode => None,
        };
        Self {
            absent: marked(&signal.absent),
            fault: marked(&signal.fault),
            words: Spans::first_wins(worded),
            inside,
            curve,
        }
    }

    fn class(&self, number: i128) -> Class {
        let word = self.words.get(number);
        let standing = match word {
            _ if self.absent.get(number).is_some() => Standing::Absent,
            _ if self.fault.get(number).is_some() => Standing::Fault,
            Some((_, Meaning::Absent)) => Standing::Absent,
            Some((_, Meaning::Fault)) => Standing::Fault,
            _ if self.curve.is_some_and(|(first, last)| number < first || last < number) => Standing::BeyondCurve,
            _ => Standing::Reading,
        };
        let in_range = self.inside.as_ref().is_none_or(|inside| inside.get(number).is_some());
        Class {
            standing,
            outside_range: standing == Standing::Reading && !in_range,
            word: word.map(|(index, _)| index),
        }
    }

    /// All numbers, in runs of one class each.
    fn joined(&self, (least, greatest): (i128, i128)) -> Vec<Run<Class>> {
        let mut edges = vec![least, greatest + 1];
        edges.extend(self.absent.edges().chain(self.fault.edges()).chain(self.words.edges()));
        edges.extend(self.inside.iter().flat_map(Spans::edges));
        edges.extend(self.curve.iter().flat_map(|&(first, last)| [first, last + 1]));
        edges.retain(|edge| (least..=greatest + 1).contains(edge));
        edges.sort_unstable();
        edges.dedup();
        let mut runs = Vec::new();
        for pair in edges.windows(2) {
            push_joined(&mut runs, Run { first: pair[0], last: pair[1] - 1, what: self.class(pair[0]) });
        }
        runs
    }
}

fn one_run(ends: Option<(i128, i128)>) -> Spans<()> {
    Spans::first_wins(ends.map(|(first, last)| Run { first, last, what: () }))
}
