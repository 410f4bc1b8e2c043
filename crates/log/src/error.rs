//! What can keep a log from being read or written at all.

use std::io;

/// Why a log could not be opened, read on or written.
///
/// Damage inside a log is no error: it is stepped over and told by [`Report`](crate::Report). Each sentence holds the
/// system's reason where there is one, so that no error has a source of its own.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum LogError {
    /// The file could not be opened.
    #[error("cannot open the log {name}: {reason}")]
    Open {
        /// The log.
        name: String,
        /// The system's reason.
        reason: io::Error,
    },
    /// Reading failed in the middle.
    #[error("cannot read the log {name} on from byte {byte}: {reason}")]
    Read {
        /// The log.
        name: String,
        /// How many bytes of the (compressed) file had been read.
        byte: u64,
        /// The system's reason.
        reason: io::Error,
    },
    /// There is nothing in it.
    #[error("the log {name} is empty; check that the recording was saved")]
    Empty {
        /// The log.
        name: String,
    },
    /// The content is none of the known layouts.
    #[error(
        "the log {name} {found}; the layouts read here are pcap, pcapng and text with a header line, each also in gzip or Zstandard"
    )]
    Unrecognised {
        /// The log.
        name: String,
        /// What it begins with.
        found: String,
    },
    /// The head of a packet file is damaged, or of a version that cannot be read.
    #[error("the log {name} cannot be read as {layout}: {what}")]
    Head {
        /// The log.
        name: String,
        /// The layout it was taken for.
        layout: &'static str,
        /// What is wrong at which byte.
        what: String,
    },
    /// The header line does not say what is needed.
    #[error("cannot tell the columns of the log {name} from its header, line {line}: {what}")]
    Header {
        /// The log.
        name: String,
        /// The line, counted from 1.
        line: u64,
        /// What is missing or doubtful, and what to write.
        what: String,
    },
    /// The text that tells the columns is wrong.
    #[error("cannot understand the columns '{text}' at character {at}: {what}")]
    ColumnMap {
        /// The text as given.
        text: String,
        /// Where, counted from 1.
        at: usize,
        /// What is wrong, and what is possible.
        what: String,
    },
    /// The pattern of a line is wrong.
    #[error("cannot understand the line pattern '{text}' at character {at}: {what}")]
    LinePattern {
        /// The text as given.
        text: String,
        /// Where, counted from 1.
        at: usize,
        /// What is wrong, and what is possible.
        what: String,
    },
    /// A frame cannot be written in the chosen layout.
    #[error("cannot write frame {number} of the log: {what}")]
    Unwritable {
        /// The frame, counted from 1.
        number: u64,
        /// What does not fit.
        what: String,
    },
    /// Writing failed.
    #[error("cannot write the log: {reason}")]
    Write {
        /// The system's reason.
        reason: io::Error,
    },
}

impl From<io::Error> for LogError {
    fn from(reason: io::Error) -> Self {
        Self::Write { reason }
    }
}
