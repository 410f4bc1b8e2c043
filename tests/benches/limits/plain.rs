//! A rival with a plan made at run time that scales as most programs do: factor and offset as doubles, two roundings.

use wirelore_tests::workload::{FrameShape, SignalShape};

use crate::constants::{TWO_POW_52, TWO_POW_52_BITS};
use crate::in_cache::{Block, Columns, ROWS};
use crate::ours::NamedSet;
use crate::ours::instruction_sets::VectorLoop;
use crate::stage::SIGNALS;

/// One message.
pub(crate) struct Plan {
    motorola: bool,
    signals: [Signal; SIGNALS],
}

#[derive(Clone, Copy)]
struct Signal {
    shift: u32,
    mask: u64,
    sign: u64,
    factor: f64,
    offset: f64,
}

impl Plan {
    pub(crate) fn new(frame: &FrameShape<SIGNALS>) -> Self {
        let signal = |shape: SignalShape| Signal {
            shift: shape.shift,
            mask: (1 << shape.width) - 1,
            sign: if shape.signed { 1 << (shape.width - 1) } else { 0 },
            factor: shape.formula.numerator as f64 / shape.formula.denominator as f64,
            offset: shape.formula.offset as f64 / shape.formula.denominator as f64,
        };
        Self { motorola: frame.is_motorola(), signals: frame.signals.map(signal) }
    }

    pub(crate) fn decode(&self, set: NamedSet, block: &Block<'_>, columns: &mut Columns) {
        set.run(Message { plan: self, words: &block.words, columns });
    }
}

struct Message<'a> {
    plan: &'a Plan,
    words: &'a [u64; ROWS],
    columns: &'a mut Columns,
}

impl VectorLoop for Message<'_> {
    type Output = ();

    #[inline(always)]
    fn run<const FUSED: bool>(self) {
        let mut swapped = [0; ROWS];
        let words = if self.plan.motorola {
            swapped.iter_mut().zip(self.words).for_each(|(swapped, word)| *swapped = word.swap_bytes());
            &swapped
        } else {
            self.words
        };
        for (signal, values) in self.plan.signals.iter().zip(self.columns.iter_mut()) {
            signal.decode(words, values);
        }
    }
}

impl Signal {
    #[inline(always)]
    fn decode(&self, words: &[u64; ROWS], values: &mut [f64; ROWS]) {
        let Self { shift, mask, sign, factor, offset } = *self;
        let bias = (TWO_POW_52 + sign) as f64;
        for (word, value) in words.iter().zip(values) {
            let bits = (word >> (shift & 63) & mask) ^ sign;
            let raw = f64::from_bits(bits | TWO_POW_52_BITS) - bias;
            *value = raw * factor + offset;
        }
    }
}
