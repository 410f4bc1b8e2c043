//! What can keep a command from being done, and how the exit status follows from it.

use std::io;
use std::path::PathBuf;

/// How a command ended that was done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Outcome {
    /// Nothing to look at: status 0.
    Clean,
    /// Mistakes in a description, findings or damage in a log: status 1.
    SomethingToLookAt,
}

/// Why a command was not done: status 2 (a pipe that the reader closed: 0).
#[derive(Debug, thiserror::Error)]
pub(crate) enum Failure {
    /// The reader of our output has seen enough.
    #[error("the output was closed")]
    PipeClosed,
    /// The reason has been shown already, as messages.
    #[error("the reason has been told")]
    Told,
    /// An option or argument that makes no sense.
    #[error("{0}")]
    Usage(String),
    /// A file could not be read.
    #[error("cannot read {}: {reason}", path.display())]
    Read {
        /// The file.
        path: PathBuf,
        /// Why.
        reason: io::Error,
    },
    /// Output could not be written.
    #[error("cannot write {to}: {reason}")]
    Write {
        /// Where to.
        to: String,
        /// Why.
        reason: io::Error,
    },
    /// A stored database was refused.
    #[error("cannot load {name}")]
    Store {
        /// The file.
        name: String,
        /// Why.
        #[source]
        reason: wirelore_model::store::LoadError,
    },
    /// A log could not be read on.
    #[error(transparent)]
    Log(#[from] wirelore_log::LogError),
    /// A recording could not be decoded.
    #[error(transparent)]
    Session(#[from] wirelore_decode::SessionError),
    /// A frame could not be encoded.
    #[error(transparent)]
    Encode(#[from] wirelore_decode::EncodeError),
}

impl Failure {
    /// A failed write to standard output or to a file.
    pub(crate) fn writing(to: impl Into<String>, reason: io::Error) -> Self {
        if reason.kind() == io::ErrorKind::BrokenPipe {
            return Self::PipeClosed;
        }
        Self::Write { to: to.into(), reason }
    }
}
