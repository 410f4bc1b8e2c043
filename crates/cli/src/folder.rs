//! A folder of output files that appears whole or not at all: the files are written in a hidden folder and moved at the end.
//!
//! A folder holds the result of one run. One that is there already is used only where it holds nothing but files that such a run would
//! write; they are replaced, and those that this run has no rows for are removed, so that two runs never mix.

use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use tempfile::TempDir;

use crate::failure::Failure;
use crate::half_done::HalfDone;

/// How the hidden folders begin.
const HIDDEN: &str = ".wirelore-";

/// A folder in the making; dropped unfinished, it leaves nothing behind.
pub(crate) struct Folder {
    target: PathBuf,
    is_there: bool,
    /// The files that were in it.
    earlier: BTreeSet<String>,
    work: TempDir,
    /// For a run that is broken off.
    _half_done: HalfDone,
    written: BTreeSet<String>,
}

impl Folder {
    /// Opens a folder for files of which `may_hold` names each one that there can be.
    ///
    /// # Errors
    /// [`Failure::Usage`] where something else is in it, or one of `inputs`; [`Failure::Write`] where it cannot be written to.
    pub(crate) fn open<'a>(
        target: &Path,
        may_hold: impl Fn(&str) -> bool,
        inputs: impl IntoIterator<Item = &'a str>,
    ) -> Result<Self, Failure> {
        let failed = |reason| Failure::writing(target.display().to_string(), reason);
        let is_there = target.exists();
        if is_there && !target.is_dir() {
            return Err(Failure::Usage(format!(
                "{} is a file; tables of several frames need a folder of their own, such as -o tables",
                target.display()
            )));
        }
        let earlier = if is_there { list(target).map_err(failed)? } else { BTreeSet::new() };
        if let Some(other) = earlier.iter().find(|name| !may_hold(name)) {
            return Err(Failure::Usage(format!(
                "the folder {} holds {other}, which is no table of this description; give a new or an empty folder",
                target.display()
            )));
        }
        for input in inputs {
            let folder = Path::new(input).canonicalize().ok().and_then(|path| path.parent().map(Path::to_owned));
            if is_there && folder.is_some_and(|folder| target.canonicalize().is_ok_and(|target| target == folder)) {
                return Err(Failure::Usage(format!("{input} is read here; give the output a folder of its own")));
            }
        }
        let beside = if is_there { target } else { parent(target) };
        if !beside.is_dir() {
            return Err(failed(io::Error::new(
                io::ErrorKind::NotFound,
                format!("there is no folder {}", beside.display()),
            )));
        }
        let work = tempfile::Builder::new().prefix(HIDDEN).tempdir_in(beside).map_err(failed)?;
        let half_done = HalfDone::new(work.path());
        // Made like any new folder, with the permissions that the user gives those; the hidden one around it is private.
        fs::create_dir(work.path().join("tables")).map_err(failed)?;
        Ok(Self { target: target.to_owned(), is_there, earlier, work, _half_done: half_done, written: BTreeSet::new() })
    }

    /// A new file of the folder.
    pub(crate) fn file(&mut self, name: String) -> FileInParts {
        let path = self.files().join(&name);
        self.written.insert(name);
        FileInParts { path, open: None }
    }

    /// Gives everything its place.
    ///
    /// # Errors
    /// [`Failure::Write`]. Where the folder is new, it then is not there.
    pub(crate) fn finish(self) -> Result<(), Failure> {
        let place = || {
            if !self.is_there {
                return fs::rename(self.files(), &self.target);
            }
            for name in &self.written {
                fs::rename(self.files().join(name), self.target.join(name))?;
            }
            self.earlier.difference(&self.written).try_for_each(|name| fs::remove_file(self.target.join(name)))
        };
        place().map_err(|reason| Failure::writing(self.target.display().to_string(), reason))
    }

    fn files(&self) -> PathBuf {
        self.work.path().join("tables")
    }
}

fn parent(path: &Path) -> &Path {
    path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

/// What is in a folder, without what an interrupted run may have left.
fn list(folder: &Path) -> io::Result<BTreeSet<String>> {
    let mut names = BTreeSet::new();
    for entry in fs::read_dir(folder)? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        if !name.starts_with(HIDDEN) {
            names.insert(name);
        }
    }
    Ok(names)
}

/// A file that is open only between a write and the next flush: there may be more tables than a program may have files open.
#[derive(Debug)]
pub(crate) struct FileInParts {
    path: PathBuf,
    open: Option<File>,
}

impl Write for FileInParts {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let file = match &mut self.open {
            Some(file) => file,
            closed => closed.insert(File::options().append(true).create(true).open(&self.path)?),
        };
        file.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.open = None;
        Ok(())
    }
}
