// frames.rs

pub struct TableMaker<'d> {}
impl<'d> TableMaker<'d> {
    pub fn new(
        database: &'d Database,
        decoder: &'d Decoder,
        wanted: impl Fn(FrameId, SignalId) -> bool + 'd,
        setup: Setup,
        open: impl FnMut(FrameId, &SchemaRef) -> io::Result<Box<dyn TableWriter>> + 'd,
    ) -> Self {}
    pub fn table(&mut self, frame: FrameId) -> io::Result<FrameTable> {}
}
impl fmt::Debug for TableMaker<'_> {}
#[derive(Debug)]
pub struct FrameTable {}
impl FrameTable {
    pub fn finish(mut self) -> io::Result<u64> {}
}
impl TableSink for FrameTable {}

// grid/columns.rs

#[derive(Debug)]
pub struct GridColumns {}
#[derive(Debug)]
pub struct GridColumn {}
impl GridColumns {
    pub fn for_people(
        database: &Database,
        decoder: &Decoder,
        wanted: impl Fn(NetworkId, FrameId, SignalId) -> bool,
    ) -> Self {}
    pub fn columns(&self) -> &[GridColumn] {}
}
impl GridColumn {
    pub fn name(&self) -> &str {}
    pub fn signal(&self) -> (FrameId, SignalId) {}
    pub fn reading_at(&self, at_ns: i64) -> Option<Reading<'_>> {}
}

// grid/mod.rs

pub use columns::{GridColumn, GridColumns};
pub use table::GridTable;
pub const ROWS_IN_A_GAP: i64 = 1_000_000;
pub trait GridRows {
    fn row(
        &mut self,
        at_ns: i64,
        first_ns: Option<i64>,
        columns: &[GridColumn],
    ) -> io::Result<()>;
    fn finish(&mut self) -> io::Result<()>;
}
#[derive(Debug)]
pub struct Grid<R> {}
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct GridRemarks {
    pub skipped_gaps: u64,
    pub beginnings: u64,
    pub without_time: u64,
    pub several_senders: Vec<SeveralSenders>,
}
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeveralSenders {
    pub frame: FrameId,
    pub shown: Source,
    pub left_out: Vec<Source>,
    pub and_others: bool,
}
impl<R: GridRows> Grid<R> {
    pub fn new(columns: GridColumns, every_ns: i64, rows: R) -> Self {}
    pub fn finish(mut self) -> io::Result<GridRemarks> {}
}
impl<R: GridRows> Sink for Grid<R> {}

// grid/table.rs

#[derive(Debug)]
pub struct GridTable {}
impl GridTable {
    pub fn open(
        database: &Database,
        decoder: &Decoder,
        wanted: impl Fn(NetworkId, FrameId, SignalId) -> bool,
        setup: &Setup,
        open: impl FnOnce(&SchemaRef) -> io::Result<Box<dyn TableWriter>>,
    ) -> io::Result<(GridColumns, Self)> {}
}
impl GridRows for GridTable {}

// lib.rs

pub use arrow_array::RecordBatch;
pub use arrow_schema::SchemaRef;
pub use frames::{FrameTable, TableMaker};
pub use grid::{
    Grid, GridColumn, GridColumns, GridRemarks, GridRows, GridTable, ROWS_IN_A_GAP,
    SeveralSenders,
};
pub use setup::{Setup, Store, Times};
pub use writer::{TableWriter, arrow_file, arrow_stream, parquet_file};

// setup.rs

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Setup {
    pub store: Store,
    pub states: bool,
    pub times: Times,
    pub memory_bytes: usize,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Store {
    Values,
    Raw,
}
impl From<Store> for wirelore_decode::Store {}
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Times {
    Start,
    Recorded,
    Clock,
}

// writer/arrow.rs

pub fn arrow_file<W: Write + Send + 'static>(
    schema: &Schema,
    to: W,
) -> io::Result<Box<dyn TableWriter>> {}
pub fn arrow_stream<W: Write + Send + 'static>(
    schema: &Schema,
    to: W,
) -> io::Result<Box<dyn TableWriter>> {}

// writer/mod.rs

pub use arrow::{arrow_file, arrow_stream};
pub use parquet::parquet_file;
pub trait TableWriter: Debug + Send {
    fn most_rows(&self) -> usize {}
    fn write(&mut self, batch: &RecordBatch) -> io::Result<()>;
    fn finish(&mut self) -> io::Result<()>;
}

// writer/parquet.rs

pub fn parquet_file<W: Write + Send + 'static>(
    schema: &SchemaRef,
    to: W,
) -> io::Result<Box<dyn TableWriter>> {}
