//! # wirelore-tables
//!
//! Decoded recordings as typed tables, in Parquet and Arrow IPC: for everything that comes after decoding, in whatever tool the person
//! likes. [`TableMaker`] makes one table for each described frame, with its time and a typed column for each signal ([`FrameTable`], filled
//! column by column by [`wirelore_decode::Tables`]); [`GridTable`] makes one table of all signals, the last values held at even distances
//! of time ([`Grid`], which also feeds other forms of that shape).
//!
//! It never rounds more than a reading is rounded, never gives a number where there is no reading, never names clock or machine in a file
//! (the same input gives the same bytes), and never opens a file: whoever uses it says where the bytes go.
//!
//! ```
//! use std::sync::{Arc, Mutex};
//!
//! use wirelore_decode::{Decoder, Options, Session, Tables};
//! use wirelore_lang::check_text;
//! use wirelore_log::Recording;
//! use wirelore_tables::{Setup, Store, TableMaker, TableWriter, Times};
//!
//! /// Counts rows; `parquet_file`, `arrow_file` and `arrow_stream` write them.
//! #[derive(Debug)]
//! struct Count(Arc<Mutex<usize>>);
//!
//! impl TableWriter for Count {
//!     fn write(&mut self, rows: &wirelore_tables::RecordBatch) -> std::io::Result<()> {
//!         *self.0.lock().expect("nobody panics") += rows.num_rows();
//!         Ok(())
//!     }
//!     fn finish(&mut self) -> std::io::Result<()> {
//!         Ok(())
//!     }
//! }
//!
//! let text = "network drive can 500 kbit/s\n\
//!             frame speeds on drive id 0x1B4 { signal front in bits 1.4..0.0 = raw * 0.05 km/h }\n";
//! let database = check_text("van.lore", text).database.ok_or("a mistake in the text")?;
//! let decoder = Decoder::new(&database)?;
//! let setup = Setup { store: Store::Values, states: false, times: Times::Start, memory_bytes: 1 << 20 };
//!
//! let count = Arc::new(Mutex::new(0));
//! let mut maker = TableMaker::new(&database, &decoder, |_, _| true, setup, |_, schema| {
//!     assert_eq!(schema.field(1).metadata()["unit"], "km/h");
//!     Ok(Box::new(Count(Arc::clone(&count))))
//! });
//! let mut tables = Tables::new(&database, &decoder, setup.store.into(), |frame| maker.table(frame));
//! let log = "time,id,data\n0.0,0x1B4,E803\n0.1,0x1B4,E903\n";
//! let mut recording = Recording::from_reader(Box::new(log.as_bytes()), "drive.csv", &Default::default())?;
//! Session::new(&decoder, &Options::default())?.run_tables(&mut recording, &mut tables)?;
//! for (_, table) in tables.into_sinks() {
//!     assert_eq!(table.finish()?, 2);
//! }
//! assert_eq!(*count.lock().expect("nobody panics"), 2);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod cells;
mod frames;
mod grid;
mod kind;
mod layout;
mod metadata;
mod setup;
mod share;
mod table;
mod writer;

pub use arrow_array::RecordBatch;
pub use arrow_schema::SchemaRef;

pub use frames::{FrameTable, TableMaker};
pub use grid::{Grid, GridColumn, GridColumns, GridRemarks, GridRows, GridTable, ROWS_IN_A_GAP, SeveralSenders};
pub use setup::{Setup, Store, Times};
pub use writer::{TableWriter, arrow_file, arrow_stream, parquet_file};
