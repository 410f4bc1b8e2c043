//! One signal as a loop over a column of words.
//!
//! [`way`] says how the arithmetic is exact, [`look`] how special raw numbers are noticed, [`loops`] holds the loops themselves.

mod look;
mod loops;
mod way;

use wirelore_bits::{Affine, Scaler};

use self::look::{Above, Look, Nowhere, Outside, Plain};
use self::loops::{Cut, TWO_POW_52_BITS, one_by_one};
use self::way::{Finish, Numerator, ToValue, ToWhole, Unfused, Way};
use super::instruction_sets::{InstructionSet, VectorLoop};

/// Where a signal's bits are in the words of its column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct WordBits {
    /// How far the least significant bit lies above bit 0 of the word.
    pub(crate) shift: u8,
    /// How many bits there are, 1 to 64.
    pub(crate) width: u8,
    /// Two's complement, else a plain binary number.
    pub(crate) signed: bool,
}

/// One signal as a loop over a column of words.
///
/// A word is eight bytes of a payload as a number: least significant byte first for Intel signals, last for Motorola signals.
#[derive(Debug, Clone)]
pub(crate) struct Kernel {
    cut: Cut,
    plain: Plain,
    bits: WordBits,
    /// `None`: row by row with the scaler.
    way: Option<Way>,
    scaler: Scaler,
}

/// A type that columns of raw numbers have.
pub(crate) trait RawInteger: Copy {
    /// The low bits of a raw number in 64 bits.
    fn truncated(raw: u64) -> Self;
}

macro_rules! raw_integers {
    ($($integer:ty),*) => {$(
        impl RawInteger for $integer {
            #[inline(always)]
            fn truncated(raw: u64) -> Self {
                raw as Self
            }
        }
    )*};
}

raw_integers!(u8, u16, u32, u64, i8, i16, i32, i64);

impl WordBits {
    const fn mask(self) -> u64 {
        u64::MAX >> (64 - self.width)
    }

    const fn sign_bit(self) -> u64 {
        if self.signed { 1 << (self.width - 1) } else { 0 }
    }

    /// The lowest and the highest raw number.
    fn raws(self) -> (i128, i128) {
        let (mask, sign) = (i128::from(self.mask()), i128::from(self.sign_bit()));
        (-sign, mask - sign)
    }
}

impl Kernel {
    /// The loop for the number in these bits, scaled by `formula` (none: the raw number is the value), with `plain` the run of raw numbers
    /// that are plain readings, both ends included (none: no number is).
    ///
    /// `None` for bits that do not lie inside the word.
    pub(crate) fn new(bits: WordBits, formula: Option<&Affine>, plain: Option<(i128, i128)>) -> Option<Self> {
        if bits.width == 0 || bits.width > 64 || bits.shift > 64 - bits.width {
            return None;
        }
        let identity = Affine::identity();
        let formula = formula.unwrap_or(&identity);
        let (lowest, highest) = bits.raws();
        let double_bits = if bits.width <= 52 { TWO_POW_52_BITS } else { 0 };
        let flip = bits.sign_bit() | double_bits;
        let rising = |raw: i128| (raw - lowest) as u64 | double_bits;
        let plain = match plain.map(|(first, last)| (first.max(lowest), last.min(highest))) {
            Some((first, last)) if (first, last) == (lowest, highest) => Plain::Everything,
            Some((first, last)) if first == lowest && first <= last => Plain::UpTo { last: rising(last) },
            Some((first, last)) if first <= last => Plain::Between { first: rising(first), last: rising(last) },
            // No number is at least the second and at most the first.
            _ => Plain::Between { first: double_bits + 1, last: double_bits },
        };
        let raw_zero = f64::from_bits(flip);
        let way = match (i64::try_from(lowest), i64::try_from(highest)) {
            (Ok(lowest), Ok(highest)) if bits.width <= 52 => Way::new(formula, (lowest, highest), raw_zero),
            _ => None,
        };
        let cut = Cut { shift: bits.shift, mask: bits.mask(), flip };
        Some(Self { cut, plain, bits, way, scaler: Scaler::new(formula, lowest, highest) })
    }

    /// Engineering values: for each word the double nearest to the exact result, the same bits on every set of instructions.
    ///
    /// True if every row's raw number is in the plain run; those that are not have their values all the same.
    /// The two columns are of one length; what one has more is left alone.
    pub(crate) fn values(&self, set: InstructionSet, words: &[u64], values: &mut [f64]) -> bool {
        match &self.way {
            Some(way) => set.run(Values { kernel: self, way, words, values }),
            None if self.bits.signed => {
                one_by_one(self.cut, self.plain, words, values, |raw| self.scaler.value(raw.cast_signed()))
            }
            None => one_by_one(self.cut, self.plain, words, values, |raw| self.scaler.value_of(i128::from(raw))),
        }
    }

    /// Raw numbers, in any type that is wide enough for the signal.
    ///
    /// True if every row's raw number is in the plain run. The two columns are of one length; what one has more is left alone.
    pub(crate) fn raws<T: RawInteger>(&self, set: InstructionSet, words: &[u64], raws: &mut [T]) -> bool {
        if self.bits.width == 64 && self.plain != Plain::Everything {
            return one_by_one(self.cut, self.plain, words, raws, T::truncated);
        }
        set.run(Raws { kernel: self, words, raws })
    }
}

/// [`Kernel::values`] of one call.
struct Values<'a> {
    kernel: &'a Kernel,
    way: &'a Way,
    words: &'a [u64],
    values: &'a mut [f64],
}

impl VectorLoop for Values<'_> {
    type Output = bool;

    #[inline(always)]
    fn run<const FUSED: bool>(self) -> bool {
        match self.way.whole {
            ToWhole::Moved(moved) => self.with_whole::<FUSED>(moved),
            ToWhole::Multiplied(multiplied) => self.with_whole::<FUSED>(multiplied),
        }
    }
}

impl Values<'_> {
    #[inline(always)]
    fn with_whole<const FUSED: bool>(self, whole: impl Numerator) -> bool {
        match self.way.value {
            ToValue::Product(product) => self.with_finish::<FUSED>(whole, product),
            ToValue::Divided { fused, .. } if FUSED => self.with_finish::<FUSED>(whole, fused),
            ToValue::Divided { unfused: Unfused::Pair(pair), .. } => self.with_finish::<FUSED>(whole, pair),
            ToValue::Divided { unfused: Unfused::Quotient(quotient), .. } => self.with_finish::<FUSED>(whole, quotient),
        }
    }

    #[inline(always)]
    fn with_finish<const FUSED: bool>(self, whole: impl Numerator, finish: impl Finish) -> bool {
        match self.kernel.plain {
            Plain::Everything => self.with_look::<FUSED>(whole, finish, Nowhere),
            Plain::UpTo { last } => self.with_look::<FUSED>(whole, finish, Above { last }),
            Plain::Between { first, last } => self.with_look::<FUSED>(whole, finish, Outside { first, last }),
        }
    }

    #[inline(always)]
    fn with_look<const FUSED: bool>(self, whole: impl Numerator, finish: impl Finish, look: impl Look) -> bool {
        loops::values::<FUSED>(self.kernel.cut, look, (whole, finish), self.words, self.values)
    }
}

/// [`Kernel::raws`] of one call.
struct Raws<'a, T> {
    kernel: &'a Kernel,
    words: &'a [u64],
    raws: &'a mut [T],
}

impl<T: RawInteger> VectorLoop for Raws<'_, T> {
    type Output = bool;

    #[inline(always)]
    fn run<const FUSED: bool>(self) -> bool {
        let (cut, words, raws) = (self.kernel.cut, self.words, self.raws);
        match self.kernel.plain {
            Plain::Everything => loops::raws(cut, Nowhere, words, raws),
            Plain::UpTo { last } => loops::raws(cut, Above { last }, words, raws),
            Plain::Between { first, last } => loops::raws(cut, Outside { first, last }, words, raws),
        }
    }
}

#[cfg(test)]
mod tests;
