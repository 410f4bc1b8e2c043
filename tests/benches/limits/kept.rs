//! Columns of doubles, kept for all frames of a recording: what a receiver that wants everything at once has to hold.

use std::io;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use wirelore_decode::{Block, Column, Numbers, TableSink};
use wirelore_tests::workload::Vehicle;

use crate::ours::instruction_sets::past_caches;
use crate::stage::{DESCRIBED, SIGNALS};

/// The columns of one described frame.
#[derive(Debug, Clone, Default)]
pub(crate) struct Columns {
    pub(crate) times_ns: Vec<i64>,
    pub(crate) values: [Vec<f64>; SIGNALS],
}

/// The columns of all described frames, in the order of the description.
#[derive(Debug)]
pub(crate) struct Kept(pub(crate) Vec<Columns>);

impl Kept {
    pub(crate) fn new() -> Self {
        Self(vec![Columns::default(); DESCRIBED as usize])
    }

    /// What the slow path makes of the first frames of the traffic, with times from `start_ns` on.
    pub(crate) fn expected(vehicle: &Vehicle<SIGNALS>, frames: u64, start_ns: i64) -> Self {
        let mut kept = Self::new();
        for sent in vehicle.traffic().take(frames as usize) {
            let columns = &mut kept.0[sent.frame.number as usize];
            columns.times_ns.push(start_ns + sent.time_ns);
            for (column, signal) in columns.values.iter_mut().zip(&sent.frame.signals) {
                column.push(signal.value(sent.word));
            }
        }
        kept
    }

    /// Forgets the rows and keeps the memory.
    pub(crate) fn clear(&mut self) {
        for columns in &mut self.0 {
            columns.times_ns.clear();
            columns.values.iter_mut().for_each(Vec::clear);
        }
    }

    pub(crate) fn rows(&self) -> u64 {
        self.0.iter().map(|columns| columns.times_ns.len() as u64).sum()
    }

    pub(crate) fn columns(&self) -> impl Iterator<Item = &Vec<f64>> {
        self.0.iter().flat_map(|columns| &columns.values)
    }

    /// That both hold the same times and the same doubles, bit for bit.
    pub(crate) fn assert_same(&self, other: &Self) {
        for (frame, (ours, theirs)) in self.0.iter().zip(&other.0).enumerate() {
            assert!(ours.times_ns == theirs.times_ns, "times of frame {frame} differ");
            for (signal, (ours, theirs)) in ours.values.iter().zip(&theirs.values).enumerate() {
                let same = ours.iter().map(|value| value.to_bits()).eq(theirs.iter().map(|value| value.to_bits()));
                assert!(same, "values of signal {signal} of frame {frame} differ");
            }
        }
    }
}

impl TableSink for Columns {
    fn block(&mut self, block: &Block<'_>) {
        self.times_ns.extend_from_slice(block.times_ns());
    }

    fn column(&mut self, column: &Column<'_>) {
        if let Some(Numbers::F64(values)) = column.numbers() {
            self.values[column.signal().index()].extend_from_slice(values);
        }
    }
}

/// One block, copied to where it is kept when it is complete: past the caches, which need not be read before they are written then.
#[derive(Debug, Default)]
pub(crate) struct Staged {
    times_ns: Vec<i64>,
    values: [Vec<f64>; SIGNALS],
}

/// Columns that are written past the caches; `staged` is for all tables of a thread.
#[derive(Debug)]
pub(crate) struct PastCaches {
    pub(crate) columns: Columns,
    pub(crate) rows: usize,
    pub(crate) staged: Arc<Mutex<Staged>>,
}

impl PastCaches {
    fn staged(&self) -> MutexGuard<'_, Staged> {
        self.staged.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl TableSink for PastCaches {
    fn block(&mut self, block: &Block<'_>) {
        let mut staged = self.staged();
        staged.times_ns.clear();
        staged.times_ns.extend_from_slice(block.times_ns());
    }

    fn column(&mut self, column: &Column<'_>) {
        if let Some(Numbers::F64(values)) = column.numbers() {
            let mut staged = self.staged();
            let to = &mut staged.values[column.signal().index()];
            to.clear();
            to.extend_from_slice(values);
        }
    }

    fn end(&mut self) -> io::Result<()> {
        let Self { columns, rows, staged } = self;
        let staged = staged.lock().unwrap_or_else(PoisonError::into_inner);
        let end = *rows + staged.times_ns.len();
        if columns.times_ns.len() < end {
            columns.times_ns.resize(end, 0);
            columns.values.iter_mut().for_each(|values| values.resize(end, 0.0));
        }
        past_caches(|copies| {
            copies.copy(&staged.times_ns, &mut columns.times_ns[*rows..end]);
            for (from, to) in staged.values.iter().zip(&mut columns.values) {
                copies.copy(from, &mut to[*rows..end]);
            }
        });
        *rows = end;
        Ok(())
    }
}
