//! The innermost loops: a column of words to a column of values.
//!
//! No call, no branch and no index inside them, so that the compiler turns each into vectors; one is made for every way of scaling,
//! with and without a look at the plain run, for every set of instructions.

use super::way::{Finish, Numerator};

/// 2^52 as the bits of a double. Below it stand 52 bits for a whole number: with those filled in, the double *is* 2^52 and the number.
pub(super) const TWO_POW_52_BITS: u64 = 0x433 << 52;

/// How a signal's bits are cut out of a word.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Cut {
    pub(super) shift: u8,
    pub(super) mask: u64,
    /// Turns the bits into a number that rises with the raw number and is never negative: the sign bit of a two's complement number, and
    /// for up to 52 bits those of 2^52, which make a double of it without a conversion. The raw number is what it makes less itself.
    pub(super) flip: u64,
    /// The plain run, in such rising numbers.
    pub(super) first: u64,
    pub(super) last: u64,
}

impl Cut {
    #[inline(always)]
    pub(super) fn rising(&self, word: u64) -> u64 {
        (word >> (self.shift & 63) & self.mask) ^ self.flip
    }

    #[inline(always)]
    pub(super) fn raw(&self, rising: u64) -> u64 {
        rising.wrapping_sub(self.flip)
    }

    /// A number with the top bit set if the rising number, of less than 64 bits, is not in the plain run.
    ///
    /// Two subtractions that borrow: comparisons of 64 bits are several instructions where there are no instructions for them.
    #[inline(always)]
    fn borrows(&self, rising: u64) -> u64 {
        rising.wrapping_sub(self.first) | self.last.wrapping_sub(rising)
    }
}

/// Engineering values; true if no row is seen outside the plain run.
#[inline(always)]
pub(super) fn values<const FUSED: bool, const LOOK: bool>(
    cut: Cut,
    numerator: impl Numerator,
    finish: impl Finish,
    words: &[u64],
    values: &mut [f64],
) -> bool {
    let mut borrows = 0;
    for (word, value) in words.iter().zip(values) {
        let rising = cut.rising(*word);
        if LOOK {
            borrows |= cut.borrows(rising);
        }
        *value = finish.value::<FUSED>(numerator.of::<FUSED>(f64::from_bits(rising)));
    }
    borrows >> 63 == 0
}

/// Raw numbers; true if no row is seen outside the plain run.
#[inline(always)]
pub(super) fn raws<const LOOK: bool, T: super::RawInteger>(cut: Cut, words: &[u64], raws: &mut [T]) -> bool {
    let mut borrows = 0;
    for (word, raw) in words.iter().zip(raws) {
        let rising = cut.rising(*word);
        if LOOK {
            borrows |= cut.borrows(rising);
        }
        *raw = T::truncated(cut.raw(rising));
    }
    borrows >> 63 == 0
}

/// Whatever is done with each row, one by one: for numbers too wide for the loops above. True if no row is outside the plain run.
#[inline(always)]
pub(super) fn one_by_one<T>(cut: Cut, words: &[u64], column: &mut [T], of_raw: impl Fn(u64) -> T) -> bool {
    let mut outside = false;
    for (word, place) in words.iter().zip(column) {
        let rising = cut.rising(*word);
        outside |= rising < cut.first || cut.last < rising;
        *place = of_raw(cut.raw(rising));
    }
    !outside
}
