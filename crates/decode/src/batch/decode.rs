//! One column of a block: the loop over its rows, and then what is not plain, row by row.

use super::BLOCK_ROWS;
use super::bitmap::Bitmap;
use super::block::Block;
use super::instruction_sets::InstructionSet;
use super::plan::{ColumnPlan, Cut, NumberType};
use super::workspace::{Output, Window};
use crate::plan::{Detail, Standing, Step};
use crate::reading::Value;
use crate::session::Tally;

/// What is decoded, and with what.
pub(crate) struct Source<'a> {
    pub(crate) block: &'a Block<'a>,
    pub(crate) column: &'a ColumnPlan,
    pub(crate) set: InstructionSet,
    /// The rows in which the signal is there; `None`: all.
    pub(crate) rows: Option<&'a [u16]>,
}

/// Decodes a column of numbers into the output, and tells which rows have a value: `None` where all do.
pub(crate) fn numbers(
    source: &Source<'_>,
    number: NumberType,
    (windows, picked): (&mut [Window; 2], &mut [u64; BLOCK_ROWS]),
    output: &mut Output,
    tally: &mut Tally,
) -> Option<Bitmap> {
    let Some((step, detail)) = source.plan() else {
        return Some(Bitmap::all(source.block.rows(), false));
    };
    let Some(cut) = &source.column.cut else {
        return Some(one_by_one(source, number, detail, output, tally));
    };
    let words = windows[usize::from(cut.motorola)].load(source.set, &source.block.rows, cut.window, cut.motorola);
    let words = match source.rows {
        None => words,
        Some(rows) => {
            let picked = &mut picked[..rows.len()];
            for (word, &row) in picked.iter_mut().zip(rows) {
                *word = words.get(usize::from(row)).copied().unwrap_or(0);
            }
            picked
        }
    };
    let all_plain = run(cut, source.set, number, words, output);
    let mut valid = source.rows.map(|rows| Bitmap::of(source.block.rows(), rows));
    if !all_plain || source.may_be_short() {
        let valid = valid.get_or_insert_with(|| Bitmap::all(source.block.rows(), true));
        look_closer(source, (cut, step, detail), words, valid, tally);
    }
    if let Some(rows) = source.rows {
        output.spread(number, rows, source.block.rows());
    }
    valid.filter(|valid| valid.count() < source.block.rows())
}

impl Source<'_> {
    fn plan(&self) -> Option<(&Step, &Detail)> {
        let plan = self.block.plan;
        Some((plan.steps.get(self.column.step)?, plan.details.get(self.column.step)?))
    }

    /// Whether some payload may end before the signal does.
    fn may_be_short(&self) -> bool {
        self.block.rows.uniform().is_none_or(|tag| tag.length() < self.column.needed_bytes)
    }

    /// The rows in which the signal is there.
    fn rows(&self) -> impl Iterator<Item = usize> {
        let count = self.rows.map_or(self.block.rows(), <[u16]>::len);
        (0..count).map(|at| self.row(at))
    }

    /// The row of the word at a place.
    #[inline]
    fn row(&self, at: usize) -> usize {
        self.rows.map_or(at, |rows| rows.get(at).copied().map_or(0, usize::from))
    }
}

/// Runs the loop of a column for its type of numbers; tells whether every raw number is a plain reading.
fn run(cut: &Cut, set: InstructionSet, number: NumberType, words: &[u64], output: &mut Output) -> bool {
    let (kernel, rows) = (&cut.kernel, words.len());
    match number {
        NumberType::U8 => kernel.raws(set, words, &mut output.u8[..rows]),
        NumberType::U16 => kernel.raws(set, words, &mut output.u16[..rows]),
        NumberType::U32 => kernel.raws(set, words, &mut output.u32[..rows]),
        NumberType::U64 => kernel.raws(set, words, &mut output.u64[..rows]),
        NumberType::I8 => kernel.raws(set, words, &mut output.i8[..rows]),
        NumberType::I16 => kernel.raws(set, words, &mut output.i16[..rows]),
        NumberType::I32 => kernel.raws(set, words, &mut output.i32[..rows]),
        NumberType::I64 => kernel.raws(set, words, &mut output.i64[..rows]),
        NumberType::F64 => kernel.values(set, words, &mut output.f64[..rows]),
    }
}

/// Looks at the rows that are no plain readings: which have no value, and what the tally is to know of them.
fn look_closer(
    source: &Source<'_>,
    (cut, step, detail): (&Cut, &Step, &Detail),
    words: &[u64],
    valid: &mut Bitmap,
    tally: &mut Tally,
) {
    let may_be_short = source.may_be_short();
    let (frame, signal) = (source.block.frame, source.column.signal);
    for (at, &word) in words.iter().enumerate() {
        let row = source.row(at);
        if may_be_short && source.block.rows.tag(row).length() < source.column.needed_bytes {
            valid.clear(row);
            continue;
        }
        let bits = cut.bits(word);
        if step.plain_count(bits).is_some() {
            continue;
        }
        let class = detail.class(bits, step.number_of(bits)).unwrap_or_default();
        match class.standing {
            Standing::Reading => {}
            Standing::Absent => tally.no_reading += 1,
            Standing::Fault => tally.sensor_fault += 1,
            Standing::BeyondCurve => {}
        }
        if class.standing != Standing::Reading {
            valid.clear(row);
        }
        if class.outside_range {
            tally.outside_range(frame, signal);
        }
    }
}

/// Tells the tally what the readings of a column without numbers say. Of texts and bytes there is nothing to tell.
pub(crate) fn count_codes(source: &Source<'_>, tally: &mut Tally) {
    let Some((_, detail)) = source.plan().filter(|(_, detail)| detail.is_trouble_code()) else { return };
    let block = source.block;
    for row in source.rows() {
        tally.reading(block.frame, source.column.signal, &detail.read(block.rows.payload(row), block.words));
    }
}

/// Signals that no loop reads: floats, decimal digits, several pieces, sensor curves.
fn one_by_one(
    source: &Source<'_>,
    number: NumberType,
    detail: &Detail,
    output: &mut Output,
    tally: &mut Tally,
) -> Bitmap {
    let block = source.block;
    let mut valid = Bitmap::all(block.rows(), true);
    if let Some(rows) = source.rows {
        valid = Bitmap::of(block.rows(), rows);
        output.clear(number, block.rows());
    }
    for row in source.rows() {
        let reading = detail.read(block.rows.payload(row), block.words);
        tally.reading(block.frame, source.column.signal, &reading);
        match reading.value.number() {
            Some(value) if number == NumberType::F64 => output.f64[row] = value,
            None if !matches!(reading.value, Value::TroubleCode(_)) => {
                output.set_whole(number, row, 0);
                valid.clear(row);
            }
            _ => output.set_whole(number, row, reading.bits.and_then(|bits| detail.whole(bits)).unwrap_or(0)),
        }
    }
    valid
}
