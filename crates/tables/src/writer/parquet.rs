//! Parquet (Apache Parquet format).
//!
//! Whole numbers and times are stored as differences, packed to as few bits as they need; words as numbers of a dictionary; doubles as
//! they are. A batch is a row group, and is encoded a column at a time: what a file takes of the memory is that one column.

use std::fmt;
use std::io::{self, Write};

use arrow_array::RecordBatch;
use arrow_schema::{DataType, SchemaRef};
use parquet::arrow::ArrowWriter;
use parquet::arrow::arrow_writer::{ArrowRowGroupWriterFactory, compute_leaves};
use parquet::basic::Encoding;
use parquet::errors::{ParquetError, Result};
use parquet::file::properties::{EnabledStatistics, WriterProperties};
use parquet::file::writer::SerializedFileWriter;
use parquet::schema::types::ColumnPath;

use super::TableWriter;
use crate::metadata::PROGRAM;

/// A row group of more rows helps no reader.
const ROWS_IN_GROUP: usize = 1 << 20;

/// A writer of a Parquet file; each batch becomes a row group.
///
/// # Errors
/// What the receiver says.
pub fn parquet_file<W: Write + Send + 'static>(schema: &SchemaRef, to: W) -> io::Result<Box<dyn TableWriter>> {
    let begin =
        || ArrowWriter::try_new(to, SchemaRef::clone(schema), Some(properties(schema)))?.into_serialized_writer();
    let (file, encoders) = begin().map_err(io_error)?;
    Ok(Box::new(Parquet { file, encoders, groups: 0 }))
}

struct Parquet<W: Write + Send> {
    file: SerializedFileWriter<W>,
    encoders: ArrowRowGroupWriterFactory,
    groups: usize,
}

impl<W: Write + Send> Parquet<W> {
    fn group(&mut self, batch: &RecordBatch) -> Result<()> {
        let encoders = self.encoders.create_column_writers(self.groups)?;
        self.groups += 1;
        let mut group = self.file.next_row_group()?;
        // No column here has parts: each one is encoded by one encoder.
        for (mut encoder, (field, column)) in
            encoders.into_iter().zip(batch.schema().fields().iter().zip(batch.columns()))
        {
            for leaf in compute_leaves(field, column)? {
                encoder.write(&leaf)?;
            }
            encoder.close()?.append_to_row_group(&mut group)?;
        }
        group.close().map(drop)
    }
}

impl<W: Write + Send> TableWriter for Parquet<W> {
    fn most_rows(&self) -> usize {
        ROWS_IN_GROUP
    }

    fn write(&mut self, batch: &RecordBatch) -> io::Result<()> {
        self.group(batch).map_err(io_error)?;
        self.file.flush()
    }

    fn finish(&mut self) -> io::Result<()> {
        self.file.finish().map_err(io_error)?;
        self.file.flush()
    }
}

impl<W: Write + Send> fmt::Debug for Parquet<W> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Parquet").field("groups", &self.groups).finish_non_exhaustive()
    }
}

fn properties(schema: &SchemaRef) -> WriterProperties {
    let mut builder = WriterProperties::builder()
        .set_created_by(PROGRAM.to_owned())
        .set_statistics_enabled(EnabledStatistics::Chunk)
        // Without statistics of pages nobody looks for one, and what is told of every page would be held to the end of the file.
        .set_offset_index_disabled(true)
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
