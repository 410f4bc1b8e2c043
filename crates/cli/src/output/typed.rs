//! The files of typed tables.

use std::io::{self, BufWriter, Write};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use wirelore_tables::{SchemaRef, TableWriter, arrow_file, arrow_stream, parquet_file};

use super::csv::Fields;
use super::frames_csv::FramesCsv;
use crate::args::TimeBase;
use crate::atomic::Destination;
use crate::failure::Failure;
use crate::folder::FileInParts;

/// What a file in a folder of many gathers before it is opened to be written to.
const SMALL_BUFFER_BYTES: usize = 4096;

/// The file formats of tables.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Format {
    Parquet,
    ArrowFile,
    ArrowStream,
    Csv(Fields),
}

impl Format {
    /// How the names of its files end.
    pub(crate) fn ending(self) -> &'static str {
        match self {
            Self::Parquet => "parquet",
            Self::ArrowFile => "arrow",
            Self::ArrowStream => "arrows",
            Self::Csv(_) => "csv",
        }
    }

    /// A writer of this format.
    ///
    /// # Errors
    /// What the receiver says.
    pub(crate) fn writer<W: Write + Send + 'static>(
        self,
        times: TimeBase,
        schema: &SchemaRef,
        to: W,
    ) -> io::Result<Box<dyn TableWriter>> {
        match self {
            Self::Parquet => parquet_file(schema, to),
            Self::ArrowFile => arrow_file(schema, to),
            Self::ArrowStream => arrow_stream(schema, to),
            Self::Csv(fields) => Ok(Box::new(FramesCsv::new(schema, times, fields, to))),
        }
    }
}

/// A file of a folder with room for what comes in small pieces.
pub(crate) fn buffered(file: FileInParts) -> BufWriter<FileInParts> {
    BufWriter::with_capacity(SMALL_BUFFER_BYTES, file)
}

/// The one destination of a command, lent to the writer of its only table.
#[derive(Clone)]
pub(crate) struct Lent(Arc<Mutex<Option<Destination>>>);

impl Lent {
    pub(crate) fn new(destination: Destination) -> Self {
        Self(Arc::new(Mutex::new(Some(destination))))
    }

    /// Ends the output.
    ///
    /// # Errors
    /// As for [`Destination::finish`].
    pub(crate) fn finish(self) -> Result<(), Failure> {
        self.place().take().map_or(Ok(()), Destination::finish)
    }

    fn place(&self) -> MutexGuard<'_, Option<Destination>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Write for Lent {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.place().as_mut().ok_or_else(ended)?.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.place().as_mut().ok_or_else(ended)?.flush()
    }
}

fn ended() -> io::Error {
    io::Error::other("the output has ended already")
}
