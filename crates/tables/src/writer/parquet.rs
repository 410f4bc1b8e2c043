//! Parquet (Apache Parquet format).
//!
//! Whole numbers and times are stored as differences, packed to as few bits as they need; words and doubles of few different values as
//! numbers of a dictionary. Row groups are written as they fill.

use std::fmt;
use std::io::{self, Write};

use arrow_array::RecordBatch;
use arrow_schema::{DataType, SchemaRef};
use parquet::arrow::ArrowWriter;
use parquet::basic::Encoding;
use parquet::errors::ParquetError;
use parquet::file::properties::{EnabledStatistics, WriterProperties};
use parquet::schema::types::ColumnPath;

use super::TableWriter;
use crate::metadata::PROGRAM;

/// A row group of more rows helps no reader.
const ROWS_IN_GROUP: usize = 1 << 20;

/// A writer of a Parquet file that holds about so many bytes at most.
///
/// # Errors
/// What the receiver says.
pub fn parquet_file<W: Write + Send + 'static>(
    schema: &SchemaRef,
    to: W,
    memory_bytes: usize,
) -> io::Result<Box<dyn TableWriter>> {
    let writer = ArrowWriter::try_new(to, SchemaRef::clone(schema), Some(properties(schema))).map_err(io_error)?;
    Ok(Box::new(Parquet { writer, memory_bytes }))
}

struct Parquet<W: Write + Send> {
    writer: ArrowWriter<W>,
    memory_bytes: usize,
}

impl<W: Write + Send> TableWriter for Parquet<W> {
    fn write(&mut self, batch: &RecordBatch) -> io::Result<()> {
        self.writer.write(batch).map_err(io_error)?;
        // What is encoded so far, not what encoders have set aside: that is a MiB for every column, and hardly ever touched.
        if self.writer.in_progress_size() >= self.memory_bytes {
            self.writer.flush().map_err(io_error)?;
            self.writer.sync()?;
        }
        Ok(())
    }

    fn finish(&mut self) -> io::Result<()> {
        self.writer.finish().map_err(io_error)?;
        self.writer.sync()
    }
}

impl<W: Write + Send> fmt::Debug for Parquet<W> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Parquet").field("memory_bytes", &self.memory_bytes).finish_non_exhaustive()
    }
}

fn properties(schema: &SchemaRef) -> WriterProperties {
    let mut builder = WriterProperties::builder()
        .set_created_by(PROGRAM.to_owned())
        .set_max_row_group_row_count(Some(ROWS_IN_GROUP))
        .set_statistics_enabled(EnabledStatistics::Chunk)
        .set_dictionary_enabled(false);
    for field in schema.fields() {
        // A path of one part: a name with a point in it is no path.
        let path = ColumnPath::new(vec![field.name().clone()]);
        builder = match field.data_type() {
            DataType::Dictionary(..) | DataType::Utf8 | DataType::Binary => {
                builder.set_column_dictionary_enabled(path, true)
            }
            DataType::Float32 | DataType::Float64 => builder.set_column_encoding(path, Encoding::PLAIN),
            _ => builder.set_column_encoding(path, Encoding::DELTA_BINARY_PACKED),
        };
    }
    builder.build()
}

/// The receiver's own error, where it is one: a closed pipe has to stay recognisable.
fn io_error(error: ParquetError) -> io::Error {
    match error {
        ParquetError::External(reason) => match reason.downcast::<io::Error>() {
            Ok(reason) => *reason,
            Err(other) => io::Error::other(other),
        },
        other => io::Error::other(other),
    }
}
