//! One table for each described frame of a recording.

use std::fmt;
use std::io;

use arrow_schema::SchemaRef;
use wirelore_decode::{Block, Column, Decoder, TableSink};
use wirelore_model::{Database, FrameId, SignalId};

use crate::setup::Setup;
use crate::share::Share;
use crate::table::Rows;
use crate::writer::TableWriter;

/// Makes the writer of a frame's table.
type Open<'d> = Box<dyn FnMut(FrameId, &SchemaRef) -> io::Result<Box<dyn TableWriter>> + 'd>;

/// Makes the tables of frames, each with its share of the memory.
pub struct TableMaker<'d> {
    database: &'d Database,
    decoder: &'d Decoder,
    wanted: Box<dyn Fn(FrameId, SignalId) -> bool + 'd>,
    setup: Setup,
    share_bytes: usize,
    open: Open<'d>,
}

impl<'d> TableMaker<'d> {
    /// Tables of the wanted signals: the decoder's selection has to be the same. `open` makes a table's writer.
    pub fn new(
        database: &'d Database,
        decoder: &'d Decoder,
        wanted: impl Fn(FrameId, SignalId) -> bool + 'd,
        setup: Setup,
        open: impl FnMut(FrameId, &SchemaRef) -> io::Result<Box<dyn TableWriter>> + 'd,
    ) -> Self {
        let frames = (0..database.frames.len() as u32).map(FrameId);
        let tables = frames.filter(|frame| decoder.wants(*frame)).count();
        Self {
            database,
            decoder,
            wanted: Box::new(wanted),
            setup,
            // Fixed beforehand and by nothing but the description, so that the same input gives the same bytes.
            share_bytes: setup.memory_bytes / tables.max(1),
            open: Box::new(open),
        }
    }

    /// The table of a frame, without rows.
    ///
    /// # Errors
    /// What keeps its writer from being opened.
    pub fn table(&mut self, frame: FrameId) -> io::Result<FrameTable> {
        let wanted = |signal| (self.wanted)(frame, signal);
        let mut rows = Rows::new(self.database, self.decoder, frame, &self.setup, wanted);
        let writer = (self.open)(frame, rows.schema())?;
        let share = Share::new(self.share_bytes, rows.schema(), writer.most_rows());
        rows.expect(share.most_rows());
        Ok(FrameTable { rows, writer, share, passed_on: 0 })
    }
}

impl fmt::Debug for TableMaker<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("TableMaker").field("setup", &self.setup).finish_non_exhaustive()
    }
}

/// The table of one frame and where its rows go; takes decoded columns ([`wirelore_decode::Tables`]).
#[derive(Debug)]
pub struct FrameTable {
    rows: Rows,
    writer: Box<dyn TableWriter>,
    share: Share,
    passed_on: u64,
}

impl FrameTable {
    /// Ends the table; how many rows it has.
    ///
    /// # Errors
    /// What the receiver of the table says.
    pub fn finish(mut self) -> io::Result<u64> {
        let rest = self.rows.count();
        self.pass_on(rest)?;
        self.writer.finish()?;
        Ok(self.passed_on)
    }

    /// Hands full batches on. They always hold the same rows, however these came.
    fn pass_on_full(&mut self) -> io::Result<()> {
        while let Some(rows) = self.share.full(self.rows.count(), |rows| self.rows.text_bytes(rows)) {
            self.pass_on(rows)?;
        }
        Ok(())
    }

    fn pass_on(&mut self, rows: usize) -> io::Result<()> {
        if rows == 0 {
            return Ok(());
        }
        self.passed_on += rows as u64;
        self.writer.write(&self.rows.take(rows))?;
        self.rows.restock();
        Ok(())
    }
}

impl TableSink for FrameTable {
    fn block(&mut self, block: &Block<'_>) {
        self.rows.block(block);
    }

    fn column(&mut self, column: &Column<'_>) {
        self.rows.column(column);
    }

    fn end(&mut self) -> io::Result<()> {
        self.rows.end_block();
        self.pass_on_full()
    }
}
