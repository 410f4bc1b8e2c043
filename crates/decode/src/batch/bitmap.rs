//! One bit for each row of a block.

use super::BLOCK_ROWS;

const WORDS: usize = BLOCK_ROWS / 64;

/// Which rows of a block have something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bitmap {
    words: [u64; WORDS],
    rows: usize,
}

impl Bitmap {
    /// The bits of so many rows, all the same.
    pub(crate) fn all(rows: usize, set: bool) -> Self {
        let mut bits = Self { words: [0; WORDS], rows: rows.min(BLOCK_ROWS) };
        if set {
            for (index, word) in bits.words.iter_mut().enumerate() {
                let there = bits.rows.saturating_sub(64 * index).min(64) as u32;
                *word = u64::MAX.checked_shr(64 - there).unwrap_or(0);
            }
        }
        bits
    }

    /// Set for the given rows.
    pub(crate) fn of(rows: usize, set: &[u16]) -> Self {
        let mut bits = Self::all(rows, false);
        for &row in set {
            bits.words[usize::from(row) / 64 % WORDS] |= 1 << (row % 64);
        }
        bits
    }

    #[inline]
    pub(crate) fn clear(&mut self, row: usize) {
        self.words[row / 64 % WORDS] &= !(1 << (row % 64));
    }

    /// Whether a row has it.
    #[inline]
    #[must_use]
    pub fn has(&self, row: usize) -> bool {
        row < self.rows && self.words[row / 64 % WORDS] >> (row % 64) & 1 == 1
    }

    /// How many rows there are.
    #[must_use]
    pub fn rows(&self) -> usize {
        self.rows
    }

    /// How many rows have it.
    #[must_use]
    pub fn count(&self) -> usize {
        self.words.iter().map(|word| word.count_ones() as usize).sum()
    }

    /// The bits, row 0 in the least significant one of the first word; bits beyond the rows are 0.
    #[must_use]
    pub fn words(&self) -> &[u64] {
        &self.words[..self.rows.div_ceil(64)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_what_is_set() {
        for rows in [0, 1, 63, 64, 65, 511, 512] {
            let mut all = Bitmap::all(rows, true);
            assert_eq!((all.count(), all.rows(), all.words().len()), (rows, rows, rows.div_ceil(64)));
            assert_eq!(Bitmap::all(rows, false).count(), 0);
            if rows > 0 {
                all.clear(rows - 1);
                assert!(!all.has(rows - 1));
                assert_eq!(all.count(), rows - 1);
            }
        }
        let some = Bitmap::of(100, &[0, 64, 99]);
        let set: Vec<usize> = (0..200).filter(|&row| some.has(row)).collect();
        assert_eq!(set, [0, 64, 99]);
    }
}
