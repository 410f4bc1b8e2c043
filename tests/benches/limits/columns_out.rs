//! Recordings to columns as the product does it: what receives the columns, and one run.

use std::num::NonZero;
use std::path::Path;

use wirelore_decode::{Block, Column, Decoder, Numbers, Options, Session, Store, TableSink, Tables};
use wirelore_log::Recording;
use wirelore_model::{Database, FrameId};

use crate::chunks::KeptChunks;
use crate::machine::{Mapped, Stores};
use crate::ours::instruction_sets::{InstructionSet, VectorLoop};

/// Where a recording is.
#[derive(Clone, Copy)]
pub(crate) enum Log<'a> {
    /// In memory, as the rivals have it.
    Memory(&'a Mapped),
    /// In a file that the system knows, but is still to be mapped.
    File(&'a Path),
}

/// Opens a recording.
pub(crate) fn open(log: Log<'_>) -> Recording {
    let options = wirelore_log::Options::default();
    let opened = match log {
        Log::Memory(bytes) => Recording::from_bytes(bytes.clone(), "workload", &options),
        Log::File(path) => Recording::open(path, &options),
    };
    opened.expect("the workload opens")
}

/// What a run needs beside the recording.
#[derive(Clone, Copy)]
pub(crate) struct Job<'a> {
    pub(crate) database: &'a Database,
    pub(crate) decoder: &'a Decoder,
    pub(crate) threads: NonZero<usize>,
}

impl Job<'_> {
    /// Uses all values of a recording when their columns come; what they add up to.
    pub(crate) fn used(&self, log: Log<'_>) -> u64 {
        let sums = self.run(log, |_| Used(0));
        sums.into_iter().fold(0, |sum, (_, Used(more))| sum.wrapping_add(more))
    }

    /// Keeps all columns of a recording in memory that may have been used before; how many rows they have.
    pub(crate) fn keep(&self, log: Log<'_>, kept: &mut KeptChunks, stores: Stores) -> u64 {
        kept.clear(stores);
        let sinks = self.run(log, |frame| std::mem::take(&mut kept.0[frame.index()]));
        for (frame, columns) in sinks {
            kept.0[frame.index()] = columns;
        }
        kept.rows()
    }

    /// All tables of a recording; `sink` makes what receives one.
    fn run<S: TableSink>(&self, log: Log<'_>, mut sink: impl FnMut(FrameId) -> S) -> Vec<(FrameId, S)> {
        let options = Options { threads: Some(self.threads), ..Options::default() };
        let mut session = Session::new(self.decoder, &options).expect("a session begins");
        let mut tables = Tables::new(self.database, self.decoder, Store::Values, |frame| Ok(sink(frame)));
        session.run_tables(&mut open(log), &mut tables).expect("the workload is whole");
        tables.into_sinks().collect()
    }
}

/// Adds up the bits of every value when its column comes.
struct Used(u64);

impl TableSink for Used {
    fn block(&mut self, _block: &Block<'_>) {}

    fn column(&mut self, column: &Column<'_>) {
        if let Some(Numbers::F64(values)) = column.numbers() {
            self.0 = self.0.wrapping_add(InstructionSet::best().run(AddUp(values)));
        }
    }
}

/// The bits of a column as whole numbers, added up.
struct AddUp<'a>(&'a [f64]);

impl VectorLoop for AddUp<'_> {
    type Output = u64;

    #[inline(always)]
    fn run<const FUSED: bool>(self) -> u64 {
        self.0.iter().fold(0, |sum, value| sum.wrapping_add(value.to_bits()))
    }
}
