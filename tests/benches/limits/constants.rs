//! A rival that knows everything when it is compiled: for each signal a loop of its own with place, sign and formula as constants, the way a
//! generator of source text would write it, over columns, for each instruction set.

use wirelore_tests::workload::{Formula, SignalShape, is_motorola, signals};

use crate::in_cache::{Block, Columns, ROWS};
use crate::ours::NamedSet;
use crate::ours::instruction_sets::VectorLoop;
use crate::stage::SIGNALS;

/// One of the first eight messages, exactly rounded or as `raw*f + o`.
pub(crate) fn decode<const EXACT: bool>(set: NamedSet, block: &Block<'_>, columns: &mut Columns) {
    set.run(Message::<EXACT> { number: block.frame.number, words: &block.words, columns });
}

struct Message<'a, const EXACT: bool> {
    number: u32,
    words: &'a [u64; ROWS],
    columns: &'a mut Columns,
}

impl<const EXACT: bool> VectorLoop for Message<'_, EXACT> {
    type Output = ();

    #[inline(always)]
    fn run<const FUSED: bool>(self) {
        match self.number {
            0 => message::<0, EXACT, FUSED>(self.words, self.columns),
            1 => message::<1, EXACT, FUSED>(self.words, self.columns),
            2 => message::<2, EXACT, FUSED>(self.words, self.columns),
            3 => message::<3, EXACT, FUSED>(self.words, self.columns),
            4 => message::<4, EXACT, FUSED>(self.words, self.columns),
            5 => message::<5, EXACT, FUSED>(self.words, self.columns),
            6 => message::<6, EXACT, FUSED>(self.words, self.columns),
            7 => message::<7, EXACT, FUSED>(self.words, self.columns),
            other => unreachable!("constants are there for eight messages, not for number {other}"),
        }
    }
}

#[inline(always)]
fn message<const NUMBER: u32, const EXACT: bool, const FUSED: bool>(words: &[u64; ROWS], columns: &mut Columns) {
    let mut swapped = [0; ROWS];
    let words = if is_motorola(NUMBER) {
        swapped.iter_mut().zip(words).for_each(|(swapped, word)| *swapped = word.swap_bytes());
        &swapped
    } else {
        words
    };
    let [a, b, c, d, e, f, g, h] = columns;
    signal::<NUMBER, 0, EXACT, FUSED>(words, a);
    signal::<NUMBER, 1, EXACT, FUSED>(words, b);
    signal::<NUMBER, 2, EXACT, FUSED>(words, c);
    signal::<NUMBER, 3, EXACT, FUSED>(words, d);
    signal::<NUMBER, 4, EXACT, FUSED>(words, e);
    signal::<NUMBER, 5, EXACT, FUSED>(words, f);
    signal::<NUMBER, 6, EXACT, FUSED>(words, g);
    signal::<NUMBER, 7, EXACT, FUSED>(words, h);
}

/// One signal of one message.
struct At<const NUMBER: u32, const INDEX: usize>;

impl<const NUMBER: u32, const INDEX: usize> At<NUMBER, INDEX> {
    const SHAPE: SignalShape = signals::<SIGNALS>(NUMBER)[INDEX];
}

#[inline(always)]
fn signal<const NUMBER: u32, const INDEX: usize, const EXACT: bool, const FUSED: bool>(
    words: &[u64; ROWS],
    values: &mut [f64; ROWS],
) {
    let SignalShape { shift, width, signed, formula } = const { At::<NUMBER, INDEX>::SHAPE };
    let mask = (1_u64 << width) - 1;
    let sign = if signed { 1_u64 << (width - 1) } else { 0 };
    let bias = (TWO_POW_52 + sign) as f64;
    for (word, value) in words.iter().zip(values) {
        let bits = (word >> shift & mask) ^ sign;
        // Bits below 2^52 put into the double 2^52 stand for themselves; taking 2^52 away again converts without a conversion.
        let raw = f64::from_bits(bits | TWO_POW_52_BITS) - bias;
        *value = if EXACT { exact::<FUSED>(raw, &formula) } else { plain(raw, &formula) };
    }
}

pub(crate) const TWO_POW_52: u64 = 1 << 52;
pub(crate) const TWO_POW_52_BITS: u64 = 0x4330 << 48;

#[inline(always)]
fn plain(raw: f64, formula: &Formula) -> f64 {
    let factor = formula.numerator as f64 / formula.denominator as f64;
    let offset = formula.offset as f64 / formula.denominator as f64;
    match formula.offset {
        0 => raw * factor,
        _ => raw * factor + offset,
    }
}

#[inline(always)]
fn exact<const FUSED: bool>(raw: f64, formula: &Formula) -> f64 {
    let numerator = match formula.offset {
        0 => raw * formula.numerator as f64,
        offset => raw * formula.numerator as f64 + offset as f64,
    };
    let divisor = formula.denominator as f64;
    let reciprocal = 1.0 / divisor;
    if formula.denominator.count_ones() == 1 {
        numerator * reciprocal
    } else if FUSED {
        // A quotient corrected by its exact remainder, as in Brisebarre, Muller, Raina, "Accelerating correctly rounded floating-point
        // division when the divisor is known in advance" (cited from memory); the comparison with the slow path stands beside it.
        let quotient = numerator * reciprocal;
        let remainder = quotient.mul_add(-divisor, numerator);
        remainder.mul_add(reciprocal, quotient)
    } else {
        numerator / divisor
    }
}
