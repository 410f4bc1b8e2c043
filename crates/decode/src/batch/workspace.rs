//! Buffers for decoding one block, used again for the next: they stay in the nearest caches.

use std::ops::{Deref, DerefMut};

use wirelore_model::SignalId;

use super::BLOCK_ROWS;
use super::block::Numbers;
use super::instruction_sets::InstructionSet;
use super::plan::NumberType;
use super::rows::RowSlice;
use crate::checks::Verdict;

/// The buffers of one thread.
#[derive(Debug, Default)]
pub(crate) struct Workspace {
    pub(crate) times_ns: Box<Buffer<i64, 0>>,
    /// The words of the latest window, Intel and Motorola.
    pub(crate) windows: [Window; 2],
    /// The words of the rows of one page.
    pub(crate) picked: Box<Buffer<u64, 0>>,
    pub(crate) output: Output,
    /// By group of signals: the rows in which it is there. Empty for frames without pages.
    pub(crate) rows_of: Vec<Vec<u16>>,
    /// What the counters, checksums and protections of the block say, row by row.
    pub(crate) verdicts: Vec<RowVerdict>,
    /// Where the rows of long messages are laid out.
    pub(crate) laid_out: Vec<u8>,
}

/// A column of one block, at a place in memory that does not get in the way of others.
///
/// A processor tells stores and loads apart by the low twelve bits of their addresses first. Where a loop's input and output lie a
/// multiple of 4 KiB apart, as boxes of that size may, a load can seem to want what was just stored. So buffers begin at a page, and the
/// outputs half a page behind one. (In a profile the loops' own share fell to 40 %; that of the whole did not change as much.)
#[repr(C, align(4096))]
#[derive(Debug)]
pub(crate) struct Buffer<T, const BEHIND_BYTES: usize> {
    behind: [u8; BEHIND_BYTES],
    rows: [T; BLOCK_ROWS],
}

/// Half a page.
const HALF_A_PAGE: usize = 2048;

impl<T: Copy + Default, const BEHIND_BYTES: usize> Default for Buffer<T, BEHIND_BYTES> {
    fn default() -> Self {
        Self { behind: [0; BEHIND_BYTES], rows: [T::default(); BLOCK_ROWS] }
    }
}

impl<T, const BEHIND_BYTES: usize> Deref for Buffer<T, BEHIND_BYTES> {
    type Target = [T; BLOCK_ROWS];

    #[inline(always)]
    fn deref(&self) -> &Self::Target {
        &self.rows
    }
}

impl<T, const BEHIND_BYTES: usize> DerefMut for Buffer<T, BEHIND_BYTES> {
    #[inline(always)]
    fn deref_mut(&mut self) -> &mut Self::Target {
        &mut self.rows
    }
}

/// What a counter, a checksum or a protection says about one row.
#[derive(Debug, Clone, Copy)]
pub(crate) struct RowVerdict {
    pub(crate) row: u16,
    pub(crate) signal: SignalId,
    pub(crate) verdict: Verdict,
}

/// A column of words around some signals.
#[derive(Debug, Default)]
pub(crate) struct Window {
    begins: Option<u32>,
    words: Box<Buffer<u64, 0>>,
}

/// A column of numbers, of whichever type.
#[derive(Debug, Default)]
pub(crate) struct Output {
    pub(crate) u8: Box<Buffer<u8, HALF_A_PAGE>>,
    pub(crate) u16: Box<Buffer<u16, HALF_A_PAGE>>,
    pub(crate) u32: Box<Buffer<u32, HALF_A_PAGE>>,
    pub(crate) u64: Box<Buffer<u64, HALF_A_PAGE>>,
    pub(crate) i8: Box<Buffer<i8, HALF_A_PAGE>>,
    pub(crate) i16: Box<Buffer<i16, HALF_A_PAGE>>,
    pub(crate) i32: Box<Buffer<i32, HALF_A_PAGE>>,
    pub(crate) i64: Box<Buffer<i64, HALF_A_PAGE>>,
    pub(crate) f64: Box<Buffer<f64, HALF_A_PAGE>>,
}

impl Window {
    /// Another block begins.
    pub(crate) fn forget(&mut self) {
        self.begins = None;
    }

    /// The words of the window that begins at a byte, turned for Motorola signals.
    pub(crate) fn load(&mut self, set: InstructionSet, rows: &RowSlice<'_>, begins: u32, motorola: bool) -> &[u64] {
        if self.begins != Some(begins) {
            rows.words(set, begins as usize, motorola, &mut self.words[..]);
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
