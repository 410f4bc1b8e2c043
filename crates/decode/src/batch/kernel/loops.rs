//! The innermost loops: a column of words to a column of numbers.
//!
//! No call, no branch and no index inside them, so that the compiler turns each into vectors; one is made for every way of scaling
//! and of looking at the plain run, for every set of instructions.

use super::RawInteger;
use super::look::{Look, Plain};
use super::way::{Finish, Numerator};

/// 2^52 as the bits of a double. Below it stand 52 bits for a whole number: with those filled in, the double *is* 2^52 and the number.
pub(super) const TWO_POW_52_BITS: u64 = 0x433 << 52;

/// How a signal's bits are cut out of a word.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Cut {
    pub(super) shift: u8,
    pub(super) mask: u64,
    /// Turns the bits into a number that rises with the raw number and is never negative: the sign bit of a two's complement number, and
    /// for up to 52 bits those of 2^52, which make a double of it without a conversion.
    pub(super) flip: u64,
}

impl Cut {
    /// The rising number in a word.
    #[inline(always)]
    pub(super) fn rising(self, word: u64) -> u64 {
        (word >> (self.shift & 63) & self.mask) ^ self.flip
    }

    /// The raw number, in two's complement.
    #[inline(always)]
    pub(super) fn raw(self, rising: u64) -> u64 {
        rising.wrapping_sub(self.flip)
    }
}

/// Engineering values of numbers of up to 52 bits; true if all rows are in the plain run.
#[inline(always)]
pub(super) fn values<const FUSED: bool>(
    cut: Cut,
    look: impl Look,
    (numerator, finish): (impl Numerator, impl Finish),
    words: &[u64],
    values: &mut [f64],
) -> bool {
    let mut borrows = 0;
    for (word, value) in words.iter().zip(values) {
        let rising = cut.rising(*word);
        borrows |= look.borrow(rising);
        *value = finish.value::<FUSED>(numerator.whole::<FUSED>(f64::from_bits(rising)));
    }
    borrows >> 63 == 0
}

/// Raw numbers of up to 63 bits; true if all rows are in the plain run.
#[inline(always)]
pub(super) fn raws<T: RawInteger>(cut: Cut, look: impl Look, words: &[u64], raws: &mut [T]) -> bool {
    let mut borrows = 0;
    for (word, raw) in words.iter().zip(raws) {
        let rising = cut.rising(*word);
        borrows |= look.borrow(rising);
        *raw = T::truncated(cut.raw(rising));
    }
    borrows >> 63 == 0
}

/// Any numbers, row by row, where the loops above cannot; true if all rows are in the plain run.
#[inline(always)]
pub(super) fn one_by_one<T>(
    cut: Cut,
    plain: Plain,
    words: &[u64],
    column: &mut [T],
    of_raw: impl Fn(u64) -> T,
) -> bool {
    let mut all_plain = true;
    for (word, number) in words.iter().zip(column) {
        let rising = cut.rising(*word);
        all_plain &= plain.holds(rising);
        *number = of_raw(cut.raw(rising));
    }
    all_plain
}
