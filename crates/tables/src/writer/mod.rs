//! Where batches of rows go: the file formats.

mod arrow;
mod parquet;

use std::fmt::Debug;
use std::io;

use arrow_array::RecordBatch;

pub use arrow::{arrow_file, arrow_stream};
pub use parquet::parquet_file;

/// Batches of more rows leave the processor's cache.
const ROWS_IN_CACHE: usize = 8192;

/// Takes the batches of one table. Batches of one table have one schema; none has no rows.
pub trait TableWriter: Debug + Send {
    /// How many rows a batch has at most. Where memory is short it has fewer.
    fn most_rows(&self) -> usize {
        ROWS_IN_CACHE
    }

    /// Takes some rows.
    ///
    /// # Errors
    /// What the receiver of the bytes says.
    fn write(&mut self, batch: &RecordBatch) -> io::Result<()>;

    /// Ends the table: writes what is still held back.
    ///
    /// # Errors
    /// What the receiver of the bytes says.
    fn finish(&mut self) -> io::Result<()>;
}
