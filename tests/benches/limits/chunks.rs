//! Columns of doubles that a receiver keeps: block after block, the columns of a block side by side. So each table writes to one place in
//! memory that only moves on, and not to one for each of its columns.

use std::io;

use wirelore_decode::{Block, Column, Numbers, TableSink};

use crate::kept::{Columns, Kept};
use crate::machine::{Stores, Words};
use crate::stage::{DESCRIBED, SIGNALS};

/// The blocks of one described frame.
#[derive(Debug, Clone, Default)]
pub(crate) struct Chunks {
    /// Rows of each block.
    rows: Vec<usize>,
    times_ns: Words<i64>,
    values: Words<f64>,
}

/// The blocks of all described frames, in the order of the description.
#[derive(Debug)]
pub(crate) struct KeptChunks(pub(crate) Vec<Chunks>);

impl KeptChunks {
    pub(crate) fn new() -> Self {
        Self(vec![Chunks::default(); DESCRIBED as usize])
    }

    /// Forgets the rows and keeps the memory, to be written so.
    pub(crate) fn clear(&mut self, stores: Stores) {
        for chunks in &mut self.0 {
            chunks.rows.clear();
            chunks.times_ns.clear(stores);
            chunks.values.clear(stores);
        }
    }

    pub(crate) fn rows(&self) -> u64 {
        self.0.iter().flat_map(|chunks| &chunks.rows).map(|rows| *rows as u64).sum()
    }

    /// That they hold the same times and the same doubles, bit for bit.
    pub(crate) fn assert_same(&self, expected: &Kept) {
        let columns = self.0.iter().map(Chunks::columns).collect();
        Kept(columns).assert_same(expected);
    }
}

impl Chunks {
    /// The same, each column in one piece.
    fn columns(&self) -> Columns {
        let rows = self.rows.iter().copied();
        let mut columns =
            Columns { times_ns: self.times_ns.columns(rows.clone()).flatten().collect(), ..Columns::default() };
        let chunks = self.values.columns(rows.flat_map(|rows| [rows; SIGNALS]));
        for (index, chunk) in chunks.enumerate() {
            columns.values[index % SIGNALS].extend(chunk);
        }
        columns
    }
}

impl TableSink for Chunks {
    fn block(&mut self, block: &Block<'_>) {
        self.rows.push(block.rows());
        self.times_ns.push(block.times_ns());
    }

    fn column(&mut self, column: &Column<'_>) {
        if let Some(Numbers::F64(values)) = column.numbers() {
            self.values.push(values);
        }
    }

    fn end(&mut self) -> io::Result<()> {
        self.times_ns.settle();
        self.values.settle();
        Ok(())
    }
}
