//! Buffers for decoding one block, used again for the next: they stay in the nearest caches.

use wirelore_model::SignalId;

use super::BLOCK_ROWS;
use super::block::Numbers;
use super::plan::NumberType;
use super::rows::RowSlice;
use crate::checks::Verdict;

/// The buffers of one thread.
#[derive(Debug)]
pub(crate) struct Workspace {
    pub(crate) times_ns: Box<[i64; BLOCK_ROWS]>,
    /// The words of the latest window, Intel and Motorola.
    pub(crate) windows: [Window; 2],
    /// The words of the rows of one page.
    pub(crate) picked: Box<[u64; BLOCK_ROWS]>,
    pub(crate) output: Output,
    /// By group of signals: the rows in which it is there. Empty for frames without pages.
    pub(crate) rows_of: Vec<Vec<u16>>,
    /// What the counters and checksums of the block say, row by row.
    pub(crate) verdicts: Vec<RowVerdict>,
}

/// What a counter or a checksum says about one row.
#[derive(Debug, Clone, Copy)]
pub(crate) struct RowVerdict {
    pub(crate) row: u16,
    pub(crate) signal: SignalId,
    pub(crate) verdict: Verdict,
}

/// A column of words around some signals.
#[derive(Debug)]
pub(crate) struct Window {
    begins: Option<u32>,
    words: Box<[u64; BLOCK_ROWS]>,
}

/// A column of numbers, of whichever type.
#[derive(Debug)]
pub(crate) struct Output {
    pub(crate) u8: Box<[u8; BLOCK_ROWS]>,
    pub(crate) u16: Box<[u16; BLOCK_ROWS]>,
    pub(crate) u32: Box<[u32; BLOCK_ROWS]>,
    pub(crate) u64: Box<[u64; BLOCK_ROWS]>,
    pub(crate) i8: Box<[i8; BLOCK_ROWS]>,
    pub(crate) i16: Box<[i16; BLOCK_ROWS]>,
    pub(crate) i32: Box<[i32; BLOCK_ROWS]>,
    pub(crate) i64: Box<[i64; BLOCK_ROWS]>,
    pub(crate) f64: Box<[f64; BLOCK_ROWS]>,
}

impl Default for Workspace {
    fn default() -> Self {
        let window = || Window { begins: None, words: Box::new([0; BLOCK_ROWS]) };
        Self {
            times_ns: Box::new([0; BLOCK_ROWS]),
            windows: [window(), window()],
            picked: Box::new([0; BLOCK_ROWS]),
            output: Output {
                u8: Box::new([0; BLOCK_ROWS]),
                u16: Box::new([0; BLOCK_ROWS]),
                u32: Box::new([0; BLOCK_ROWS]),
                u64: Box::new([0; BLOCK_ROWS]),
                i8: Box::new([0; BLOCK_ROWS]),
                i16: Box::new([0; BLOCK_ROWS]),
                i32: Box::new([0; BLOCK_ROWS]),
                i64: Box::new([0; BLOCK_ROWS]),
                f64: Box::new([0.0; BLOCK_ROWS]),
            },
            rows_of: Vec::new(),
            verdicts: Vec::new(),
        }
    }
}

impl Window {
    /// Another block begins.
    pub(crate) fn forget(&mut self) {
        self.begins = None;
    }

    /// The words of the window that begins at a byte, turned for Motorola signals.
    pub(crate) fn load(&mut self, rows: &RowSlice<'_>, begins: u32, motorola: bool) -> &[u64] {
        if self.begins != Some(begins) {
            rows.words(begins as usize, &mut self.words[..]);
            if motorola {
                self.words[..rows.len()].iter_mut().for_each(|word| *word = word.swap_bytes());
            }
            self.begins = Some(begins);
        }
        &self.words[..rows.len()]
    }
}

impl Output {
    /// The first `rows` numbers of a type.
    pub(crate) fn numbers(&self, number: NumberType, rows: usize) -> Numbers<'_> {
        match number {
            NumberType::U8 => Numbers::U8(&self.u8[..rows]),
            NumberType::U16 => Numbers::U16(&self.u16[..rows]),
            NumberType::U32 => Numbers::U32(&self.u32[..rows]),
            NumberType::U64 => Numbers::U64(&self.u64[..rows]),
            NumberType::I8 => Numbers::I8(&self.i8[..rows]),
            NumberType::I16 => Numbers::I16(&self.i16[..rows]),
            NumberType::I32 => Numbers::I32(&self.i32[..rows]),
            NumberType::I64 => Numbers::I64(&self.i64[..rows]),
            NumberType::F64 => Numbers::F64(&self.f64[..rows]),
        }
    }
}

/// Runs an expression for the column of a type, with `$column` standing for it.
macro_rules! on_column {
    ($output:expr, $number:expr, $column:ident => $what:expr) => {
        match $number {
            NumberType::U8 => {
                let $column = &mut $output.u8[..];
                $what
            }
            NumberType::U16 => {
                let $column = &mut $output.u16[..];
                $what
            }
            NumberType::U32 => {
                let $column = &mut $output.u32[..];
                $what
            }
            NumberType::U64 => {
                let $column = &mut $output.u64[..];
                $what
            }
            NumberType::I8 => {
                let $column = &mut $output.i8[..];
                $what
            }
            NumberType::I16 => {
                let $column = &mut $output.i16[..];
                $what
            }
            NumberType::I32 => {
                let $column = &mut $output.i32[..];
                $what
            }
            NumberType::I64 => {
                let $column = &mut $output.i64[..];
                $what
            }
            NumberType::F64 => {
                let $column = &mut $output.f64[..];
                $what
            }
        }
    };
}

impl Output {
    /// Moves the numbers of a page, which stand at the front, to their rows; zeros elsewhere.
    pub(crate) fn spread(&mut self, number: NumberType, to: &[u16], rows: usize) {
        on_column!(self, number, column => spread(column, to, rows));
    }

    /// Zeros in all rows.
    pub(crate) fn clear(&mut self, number: NumberType, rows: usize) {
        on_column!(self, number, column => column[..rows].fill(Default::default()));
    }

    /// A whole number that the type holds.
    pub(crate) fn set_whole(&mut self, number: NumberType, row: usize, whole: i128) {
        match number {
            NumberType::U8 => self.u8[row] = whole as u8,
            NumberType::U16 => self.u16[row] = whole as u16,
            NumberType::U32 => self.u32[row] = whole as u32,
            NumberType::U64 => self.u64[row] = whole as u64,
            NumberType::I8 => self.i8[row] = whole as i8,
            NumberType::I16 => self.i16[row] = whole as i16,
            NumberType::I32 => self.i32[row] = whole as i32,
            NumberType::I64 => self.i64[row] = whole as i64,
            NumberType::F64 => self.f64[row] = whole as f64,
        }
    }
}

/// The rows rise, so each number moves up or stays; from the last one on nothing is written over that is still to be moved.
fn spread<T: Copy + Default>(column: &mut [T], to: &[u16], rows: usize) {
    let mut behind = rows;
    for (at, &row) in to.iter().enumerate().rev() {
        let row = usize::from(row);
        let number = column[at];
        column[row + 1..behind].fill(T::default());
        column[row] = number;
        behind = row;
    }
    column[..behind].fill(T::default());
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_of_a_page_go_to_their_rows() {
        let mut column = [1, 2, 3, 9, 9, 9, 9];
        spread(&mut column, &[1, 2, 5], 7);
        assert_eq!(column, [0, 1, 2, 0, 0, 3, 0]);
        let mut column = [1, 2, 3];
        spread(&mut column, &[0, 1, 2], 3);
        assert_eq!(column, [1, 2, 3]);
        spread(&mut column, &[], 3);
        assert_eq!(column, [0, 0, 0]);
    }
}
