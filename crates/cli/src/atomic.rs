//! Output files that appear whole or not at all: written beside, then renamed.

use std::io::{self, BufWriter, StdoutLock, Write};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use crate::failure::Failure;

/// How much is gathered before the system is asked to write.
const BUFFER_BYTES: usize = 256 * 1024;

/// Where a command's result goes: standard output, or a file that is renamed into place by [`Destination::finish`].
pub(crate) enum Destination {
    /// Standard output.
    Standard(BufWriter<StdoutLock<'static>>),
    /// A file in the making; dropped unfinished, it leaves nothing behind.
    File {
        /// The bytes so far, in the folder of the final file.
        writer: Box<BufWriter<NamedTempFile>>,
        /// Its final name.
        path: PathBuf,
    },
}

impl Destination {
    /// Opens standard output, or the file of the given name.
    ///
    /// # Errors
    /// [`Failure::Write`] where the folder cannot be written to.
    pub(crate) fn open(path: Option<&Path>) -> Result<Self, Failure> {
        let Some(path) = path else {
            return Ok(Self::Standard(BufWriter::with_capacity(BUFFER_BYTES, io::stdout().lock())));
        };
        if path.is_dir() {
            let reason = io::Error::new(io::ErrorKind::IsADirectory, "it is a folder; give the name of a file");
            return Err(Failure::writing(path.display().to_string(), reason));
        }
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        let file = tempfile::Builder::new()
            .prefix(".wirelore-")
            .permissions(default_permissions())
            .tempfile_in(folder)
            .map_err(|reason| Failure::writing(path.display().to_string(), reason))?;
        let writer = Box::new(BufWriter::with_capacity(BUFFER_BYTES, file));
        Ok(Self::File { writer, path: path.to_owned() })
    }

    /// Writes what is still held back and gives the file its name.
    ///
    /// # Errors
    /// [`Failure::Write`]; then an earlier file of that name is still as it was.
    pub(crate) fn finish(self) -> Result<(), Failure> {
        match self {
            Self::Standard(mut writer) => writer.flush().map_err(|reason| Failure::writing("standard output", reason)),
            Self::File { writer, path } => {
                let failed = |reason| Failure::writing(path.display().to_string(), reason);
                let file = writer.into_inner().map_err(|error| failed(error.into_error()))?;
                file.persist(&path).map_err(|error| failed(error.error))?;
                Ok(())
            }
        }
    }

    /// The name for messages.
    pub(crate) fn name(&self) -> String {
        match self {
            Self::Standard(_) => "standard output".to_owned(),
            Self::File { path, .. } => path.display().to_string(),
        }
    }
}

impl Write for Destination {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        match self {
            Self::Standard(writer) => writer.write(bytes),
            Self::File { writer, .. } => writer.write(bytes),
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        match self {
            Self::Standard(writer) => writer.flush(),
            Self::File { writer, .. } => writer.flush(),
        }
    }
}

/// Writes a whole text to its destination.
///
/// # Errors
/// [`Failure::Write`], [`Failure::PipeClosed`].
pub(crate) fn write_whole(path: Option<&Path>, bytes: &[u8]) -> Result<(), Failure> {
    let mut destination = Destination::open(path)?;
    let name = destination.name();
    destination.write_all(bytes).map_err(|reason| Failure::writing(name, reason))?;
    destination.finish()
}

/// What an ordinary new file gets (the system takes the user's mask off); without this a temporary file is its owner's alone.
fn default_permissions() -> std::fs::Permissions {
    use std::os::unix::fs::PermissionsExt;
    std::fs::Permissions::from_mode(0o666)
}
