//! A grid as one typed table.

use std::io;
use std::sync::Arc;

use arrow_array::RecordBatch;
use arrow_schema::{Field, Schema, SchemaRef};
use wirelore_decode::Decoder;
use wirelore_model::{Database, FrameId, NetworkId, SignalId};

use super::{GridColumn, GridColumns, GridRows};
use crate::cells::{Stamps, cells};
use crate::kind::Kind;
use crate::layout::TIME;
use crate::metadata;
use crate::setup::Setup;
use crate::share::Share;
use crate::table::{Column, signal_fields};
use crate::writer::TableWriter;

/// The rows of a grid, gathered into batches.
#[derive(Debug)]
pub struct GridTable {
    schema: SchemaRef,
    times: Stamps,
    columns: Vec<Column>,
    rows: usize,
    share: Share,
    writer: Box<dyn TableWriter>,
}

impl GridTable {
    /// The columns of a grid of the wanted signals, and the table for its rows; `open` makes its writer.
    ///
    /// # Errors
    /// What keeps the table from being opened.
    pub fn open(
        database: &Database,
        decoder: &Decoder,
        wanted: impl Fn(NetworkId, FrameId, SignalId) -> bool,
        setup: &Setup,
        open: impl FnOnce(&SchemaRef) -> io::Result<Box<dyn TableWriter>>,
    ) -> io::Result<(GridColumns, Self)> {
        let grid = GridColumns::typed(database, decoder, wanted, setup.store);
        let mut fields = vec![Field::new(TIME, setup.times.data_type(), true)];
        let mut columns = Vec::new();
        for column in grid.columns() {
            let GridColumn { frame, signal, network, .. } = *column;
            let described = &database.frames[frame.index()].signals[signal.index()];
            let kind = Kind::of(database, decoder, (frame, signal, described), setup.store);
            let mut told = metadata::of_signal(database, decoder, (frame, signal), setup.store);
            told.insert("networks".to_owned(), database.networks[network.index()].label.name.clone());
            fields.extend(signal_fields(&column.name, kind, told, setup.states));
            columns.push(Column::new(cells(kind, database.words(described)), setup.states));
        }
        let schema = Arc::new(Schema::new_with_metadata(fields, metadata::of_file(database, setup)));
        let writer = open(&schema)?;
        let share = Share::new(setup.memory_bytes, &schema, writer.most_rows());
        Ok((grid, Self { schema, times: Stamps::new(setup.times), columns, rows: 0, share, writer }))
    }

    fn pass_on(&mut self, rows: usize) -> io::Result<()> {
        let mut arrays = vec![self.times.take(rows)];
        self.columns.iter_mut().for_each(|column| column.take(rows, &mut arrays));
        self.rows -= rows;
        let batch =
            RecordBatch::try_new(Arc::clone(&self.schema), arrays).expect("each row has one cell in every column");
        self.writer.write(&batch)?;
        drop(batch);
        self.times.restock();
        self.columns.iter_mut().for_each(Column::restock);
        Ok(())
    }
}

impl GridRows for GridTable {
    fn row(&mut self, at_ns: i64, first_ns: Option<i64>, columns: &[GridColumn]) -> io::Result<()> {
        self.times.push(Some(at_ns), first_ns);
        for (column, heard) in self.columns.iter_mut().zip(columns) {
            column.push(heard.reading_at(at_ns).as_ref(), None);
        }
        self.rows += 1;
        let text_bytes = |rows| self.columns.iter().map(|column| column.text_bytes(rows)).sum();
        self.share.full(self.rows, text_bytes).map_or(Ok(()), |rows| self.pass_on(rows))
    }

    fn finish(&mut self) -> io::Result<()> {
        if self.rows > 0 {
            self.pass_on(self.rows)?;
        }
        self.writer.finish()
    }
}
