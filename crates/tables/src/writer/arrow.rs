//! Arrow IPC (Apache Arrow columnar format): files, and streams for pipes. Nothing is encoded: the memory of the columns is what is written.

use std::fmt;
use std::io::{self, Write};

use arrow_array::RecordBatch;
use arrow_ipc::writer::{DictionaryHandling, FileWriter, IpcWriteOptions, StreamWriter};
use arrow_schema::{ArrowError, Schema};

use super::TableWriter;

/// A writer of an Arrow IPC file.
///
/// # Errors
/// What the receiver says.
pub fn arrow_file<W: Write + Send + 'static>(schema: &Schema, to: W) -> io::Result<Box<dyn TableWriter>> {
    Ok(Box::new(File(FileWriter::try_new_with_options(to, schema, options()).map_err(io_error)?)))
}

/// A writer of an Arrow IPC stream.
///
/// # Errors
/// What the receiver says.
pub fn arrow_stream<W: Write + Send + 'static>(schema: &Schema, to: W) -> io::Result<Box<dyn TableWriter>> {
    Ok(Box::new(Stream(StreamWriter::try_new_with_options(to, schema, options()).map_err(io_error)?)))
}

/// Dictionaries only grow here, so that what is new in them is all that has to be written.
fn options() -> IpcWriteOptions {
    IpcWriteOptions::default().with_dictionary_handling(DictionaryHandling::Delta)
}

struct File<W: Write>(FileWriter<W>);

impl<W: Write + Send> TableWriter for File<W> {
    fn write(&mut self, batch: &RecordBatch) -> io::Result<()> {
        self.0.write(batch).and_then(|()| self.0.flush()).map_err(io_error)
    }

    fn finish(&mut self) -> io::Result<()> {
        self.0.finish().and_then(|()| self.0.flush()).map_err(io_error)
    }
}

struct Stream<W: Write>(StreamWriter<W>);

impl<W: Write + Send> TableWriter for Stream<W> {
    fn write(&mut self, batch: &RecordBatch) -> io::Result<()> {
        self.0.write(batch).and_then(|()| self.0.flush()).map_err(io_error)
    }

    fn finish(&mut self) -> io::Result<()> {
        self.0.finish().and_then(|()| self.0.flush()).map_err(io_error)
    }
}

impl<W: Write> fmt::Debug for File<W> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("File").finish_non_exhaustive()
    }
}

impl<W: Write> fmt::Debug for Stream<W> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Stream").finish_non_exhaustive()
    }
}

/// The receiver's own error, where it is one: a closed pipe has to stay recognisable.
fn io_error(error: ArrowError) -> io::Error {
    match error {
        ArrowError::IoError(_, reason) => reason,
        other => io::Error::other(other),
    }
}
