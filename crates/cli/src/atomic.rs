//! Output files that appear whole or not at all: written beside, then renamed.

use std::fs::File;
use std::io::{self, BufWriter, IsTerminal, Stdout, Write};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use crate::failure::Failure;
use crate::half_done::HalfDone;
use crate::tell::visible_lines;

/// How much is gathered before the system is asked to write.
const BUFFER_BYTES: usize = 256 * 1024;

/// Where a command's result goes: standard output, or a file that is renamed into place by [`Destination::finish`].
pub(crate) enum Destination {
    /// Standard output.
    Standard(BufWriter<Stdout>),
    /// Something else that can be written to and is no ordinary file: a device, a pipe with a name.
    Direct {
        /// The open device.
        writer: BufWriter<File>,
        /// Its name.
        path: PathBuf,
    },
    /// A file in the making; dropped unfinished, it leaves nothing behind.
    File {
        /// The bytes so far, in the folder of the final file.
        writer: Box<BufWriter<NamedTempFile>>,
        /// Its final name.
        path: PathBuf,
        /// For a run that is broken off.
        half_done: HalfDone,
    },
    /// A terminal that shows what comes from recordings and descriptions: nothing in it acts on the terminal.
    Terminal {
        /// Standard output.
        writer: BufWriter<Stdout>,
        /// The line that is not whole yet.
        line: Vec<u8>,
    },
}

impl Destination {
    /// Opens standard output, or the file of the given name.
    ///
    /// # Errors
    /// [`Failure::Write`] where the folder cannot be written to.
    pub(crate) fn open(path: Option<&Path>) -> Result<Self, Failure> {
        let Some(path) = path.filter(|path| *path != Path::new("-")) else {
            return Ok(Self::Standard(BufWriter::with_capacity(BUFFER_BYTES, io::stdout())));
        };
        if path.is_dir() {
            let reason = io::Error::new(io::ErrorKind::IsADirectory, "it is a folder; give the name of a file");
            return Err(Failure::writing(path.display().to_string(), reason));
        }
        if path.metadata().is_ok_and(|data| !data.is_file()) {
            let file = File::options().write(true).open(path);
            let file = file.map_err(|reason| Failure::writing(path.display().to_string(), reason))?;
            return Ok(Self::Direct { writer: BufWriter::with_capacity(BUFFER_BYTES, file), path: path.to_owned() });
        }
        // A link stays a link: what it leads to is what is written.
        let path = &path.canonicalize().unwrap_or_else(|_| path.to_owned());
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        if !folder.is_dir() {
            let reason = io::Error::new(io::ErrorKind::NotFound, format!("there is no folder {}", folder.display()));
            return Err(Failure::writing(path.display().to_string(), reason));
        }
        let mut builder = tempfile::Builder::new();
        builder.prefix(".wirelore-");
        like_an_ordinary_file(&mut builder, path);
        let file = builder.tempfile_in(folder).map_err(|reason| {
            let reason = io::Error::new(reason.kind(), format!("the folder {} cannot be written to", folder.display()));
            Failure::writing(path.display().to_string(), reason)
        })?;
        let half_done = HalfDone::new(file.path());
        let writer = Box::new(BufWriter::with_capacity(BUFFER_BYTES, file));
        Ok(Self::File { writer, path: path.to_owned(), half_done })
    }

    /// The same for plain lines: where they go to a terminal, what would act on it is written out.
    pub(crate) fn for_lines(self) -> Self {
        match self {
            Self::Standard(writer) if io::stdout().is_terminal() => Self::Terminal { writer, line: Vec::new() },
            other => other,
        }
    }

    /// Writes what is still held back and gives the file its name.
    ///
    /// # Errors
    /// [`Failure::Write`]; then an earlier file of that name is still as it was.
    pub(crate) fn finish(self) -> Result<(), Failure> {
        match self {
            Self::Standard(mut writer) => writer.flush().map_err(|reason| Failure::writing("standard output", reason)),
            Self::Direct { mut writer, path } => {
                writer.flush().map_err(|reason| Failure::writing(path.display().to_string(), reason))
            }
            Self::Terminal { mut writer, line } => {
                let end = writer.write_all(visible_lines(&String::from_utf8_lossy(&line)).as_bytes());
                end.and_then(|()| writer.flush()).map_err(|reason| Failure::writing("standard output", reason))
            }
            Self::File { writer, path, half_done } => {
                let failed = |reason| Failure::writing(path.display().to_string(), reason);
                let file = writer.into_inner().map_err(|error| failed(error.into_error()))?;
                file.persist(&path).map_err(|error| failed(error.error))?;
                drop(half_done);
                Ok(())
            }
        }
    }

    /// The name for messages.
    pub(crate) fn name(&self) -> String {
        match self {
            Self::Standard(_) | Self::Terminal { .. } => "standard output".to_owned(),
            Self::Direct { path, .. } | Self::File { path, .. } => path.display().to_string(),
        }
    }
}

impl Write for Destination {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        match self {
            Self::Standard(writer) => writer.write(bytes),
            Self::Direct { writer, .. } => writer.write(bytes),
            Self::File { writer, .. } => writer.write(bytes),
            Self::Terminal { writer, line } => {
                line.extend_from_slice(bytes);
                if let Some(end) = line.iter().rposition(|byte| *byte == b'\n') {
                    let rest = line.split_off(end + 1);
                    let whole = std::mem::replace(line, rest);
                    writer.write_all(visible_lines(&String::from_utf8_lossy(&whole)).as_bytes())?;
                }
                Ok(bytes.len())
            }
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        match self {
            Self::Standard(writer) => writer.flush(),
            Self::Direct { writer, .. } => writer.flush(),
            Self::File { writer, .. } => writer.flush(),
            Self::Terminal { writer, .. } => writer.flush(),
        }
    }
}

/// Writes a whole text to its destination; where that is a terminal, nothing in it acts there.
///
/// # Errors
/// [`Failure::Write`], [`Failure::PipeClosed`].
pub(crate) fn write_whole(path: Option<&Path>, bytes: &[u8]) -> Result<(), Failure> {
    write_to(Destination::open(path)?.for_lines(), bytes)
}

/// Writes a text to standard output that has its own colours, and nothing else that acts on a terminal.
///
/// # Errors
/// As for [`write_whole`].
pub(crate) fn write_coloured(text: &str) -> Result<(), Failure> {
    write_to(Destination::open(None)?, text.as_bytes())
}

fn write_to(mut destination: Destination, bytes: &[u8]) -> Result<(), Failure> {
    let name = destination.name();
    destination.write_all(bytes).map_err(|reason| Failure::writing(name, reason))?;
    destination.finish()
}

/// Refuses to write over a file that the same command reads.
///
/// # Errors
/// [`Failure::Usage`] that names it.
pub(crate) fn refuse_overwriting<'a>(output: &Path, inputs: impl IntoIterator<Item = &'a str>) -> Result<(), Failure> {
    let Ok(target) = output.canonicalize() else { return Ok(()) };
    match inputs.into_iter().find(|input| Path::new(input).canonicalize().is_ok_and(|input| input == target)) {
        Some(input) => Err(Failure::Usage(format!("{input} is what is read here; give the output another name"))),
        None => Ok(()),
    }
}

/// Makes the temporary file what an ordinary new file would be: with the permissions of the file whose place it takes, else with what
/// the system gives (it takes the user's mask off).
#[cfg(unix)]
fn like_an_ordinary_file(builder: &mut tempfile::Builder<'_, '_>, path: &Path) {
    use std::os::unix::fs::PermissionsExt;
    let present = std::fs::metadata(path).map(|data| data.permissions());
    builder.permissions(present.unwrap_or_else(|_| std::fs::Permissions::from_mode(0o666)));
}

#[cfg(not(unix))]
fn like_an_ordinary_file(_builder: &mut tempfile::Builder<'_, '_>, _path: &Path) {}
