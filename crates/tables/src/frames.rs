//! One table for each described frame of a recording.

use std::io;

use arrow_schema::SchemaRef;
use wirelore_decode::{Decoder, Event, FrameOutcome, Reading, Sink, Verdict};
use wirelore_model::{Database, FrameId, SignalId};

use crate::setup::Setup;
use crate::share::Share;
use crate::table::FrameTable;
use crate::writer::TableWriter;

/// Opens the table of a frame: is given its schema and how many bytes its writer may hold.
pub trait OpenTable {
    /// A writer for the table of `frame`.
    ///
    /// # Errors
    /// What keeps it from being opened.
    fn open(&mut self, frame: FrameId, schema: &SchemaRef, memory_bytes: usize) -> io::Result<Box<dyn TableWriter>>;
}

impl<F> OpenTable for F
where
    F: FnMut(FrameId, &SchemaRef, usize) -> io::Result<Box<dyn TableWriter>>,
{
    fn open(&mut self, frame: FrameId, schema: &SchemaRef, memory_bytes: usize) -> io::Result<Box<dyn TableWriter>> {
        self(frame, schema, memory_bytes)
    }
}

/// Puts every decoded frame into the table of its description. A table is opened with its first row.
#[derive(Debug)]
pub struct FrameTables<'d, O, F> {
    database: &'d Database,
    decoder: &'d Decoder,
    wanted: F,
    setup: Setup,
    share_bytes: usize,
    open: O,
    /// By frame.
    tables: Vec<Option<Box<Filling>>>,
    verdicts: Vec<(SignalId, Verdict)>,
    failed: Option<io::Error>,
}

/// A table and where its rows go.
#[derive(Debug)]
struct Filling {
    table: FrameTable,
    writer: Box<dyn TableWriter>,
    share: Share,
    rows: u64,
}

impl<'d, O: OpenTable, F: Fn(FrameId, SignalId) -> bool> FrameTables<'d, O, F> {
    /// Tables of the wanted signals. The decoder's selection should be the same.
    pub fn new(database: &'d Database, decoder: &'d Decoder, wanted: F, setup: Setup, open: O) -> Self {
        let frames = (0..database.frames.len() as u32).map(FrameId);
        let tables = frames.filter(|frame| decoder.wants(*frame)).count();
        Self {
            database,
            decoder,
            wanted,
            setup,
            // Fixed beforehand and by nothing but the description, so that the same input gives the same bytes.
            share_bytes: setup.memory_bytes / tables.max(1),
            open,
            tables: database.frames.iter().map(|_| None).collect(),
            verdicts: Vec::new(),
            failed: None,
        }
    }

    /// Opens the table of a frame, whether a row comes or not.
    ///
    /// # Errors
    /// What keeps it from being opened.
    pub fn open(&mut self, frame: FrameId) -> io::Result<()> {
        let table =
            FrameTable::new(self.database, self.decoder, frame, &self.setup, |signal| (self.wanted)(frame, signal));
        let share = Share::of(self.share_bytes, table.schema());
        let writer = self.open.open(frame, table.schema(), share.writer_bytes)?;
        self.tables[frame.index()] = Some(Box::new(Filling { table, writer, share, rows: 0 }));
        Ok(())
    }

    /// Ends all tables; which there are, and how many rows each has.
    ///
    /// # Errors
    /// What the receiver of a table says.
    pub fn finish(self) -> io::Result<Vec<(FrameId, u64)>> {
        let mut written = Vec::new();
        for (id, filling) in (0..).map(FrameId).zip(self.tables) {
            if let Some(mut filling) = filling {
                filling.pass_on()?;
                filling.writer.finish()?;
                written.push((id, filling.rows));
            }
        }
        Ok(written)
    }

    fn filling(&mut self, frame: FrameId) -> Option<&mut Filling> {
        self.tables.get_mut(frame.index())?.as_deref_mut()
    }
}

impl Filling {
    fn pass_on(&mut self) -> io::Result<()> {
        if self.table.rows() == 0 {
            return Ok(());
        }
        self.rows += self.table.rows() as u64;
        self.writer.write(&self.table.take())?;
        self.table.restock();
        Ok(())
    }
}

impl<O: OpenTable, F: Fn(FrameId, SignalId) -> bool> Sink for FrameTables<'_, O, F> {
    fn begin(&mut self, event: &Event<'_>) {
        self.verdicts.clear();
        if self.filling(event.frame).is_none()
            && let Err(reason) = self.open(event.frame)
        {
            self.failed.get_or_insert(reason);
        }
        if let Some(filling) = self.filling(event.frame) {
            filling.table.begin(event);
        }
    }

    fn verdict(&mut self, _event: &Event<'_>, signal: SignalId, verdict: Verdict) {
        self.verdicts.push((signal, verdict));
    }

    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let verdict = self.verdicts.iter().find(|(checked, _)| *checked == signal).map(|(_, verdict)| *verdict);
        if let Some(filling) = self.filling(event.frame) {
            filling.table.reading(signal, &reading, verdict);
        }
    }

    fn end(&mut self, event: &Event<'_>, _outcome: &FrameOutcome) -> io::Result<()> {
        if let Some(reason) = self.failed.take() {
            return Err(reason);
        }
        let Some(filling) = self.filling(event.frame) else { return Ok(()) };
        filling.table.end();
        if filling.table.rows() >= filling.share.batch_rows { filling.pass_on() } else { Ok(()) }
    }
}
