//! Source files from the file system.

use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::{Component, Path, PathBuf};

use super::{Contents, LoadError, Loaded, Loader};
use crate::syntax::LONGEST_TEXT;

/// Opens files of the file system; relative paths count from the folder of the file that uses them.
#[derive(Debug, Clone, Copy, Default)]
pub struct FileLoader;

impl Loader for FileLoader {
    fn load(&self, path: &str, from: Option<&str>) -> Result<Loaded, LoadError> {
        let folder = from.and_then(|key| Path::new(key).parent());
        let place = folder.map_or_else(|| PathBuf::from(path), |folder| folder.join(path));
        let shown = if folder.is_some() { for_people(&place) } else { path.to_owned() };
        let text = read(&place, &shown)?;
        let key = place.canonicalize().map_err(|cause| LoadError::Unreadable { path: shown.clone(), cause })?;
        let name = if folder.is_some() { for_people(&key) } else { shown };
        Ok(Loaded { key: key.to_string_lossy().into_owned(), name, text })
    }
}

/// A path as seen from the current folder: relative where the two have a folder in common, below the root.
fn for_people(path: &Path) -> String {
    let here = std::env::current_dir().and_then(|here| here.canonicalize());
    let short = here.ok().and_then(|here| relative(path, &here));
    short.as_deref().unwrap_or(path).to_string_lossy().into_owned()
}

/// The way from one absolute folder to an absolute path; `None` where they have nothing but the root in common.
fn relative(path: &Path, from: &Path) -> Option<PathBuf> {
    let common = path.components().zip(from.components()).take_while(|(a, b)| a == b).count();
    if common < 2 {
        return None;
    }
    let up = from.components().skip(common).map(|_| Component::ParentDir);
    Some(up.chain(path.components().skip(common)).collect())
}

fn read(place: &Path, shown: &str) -> Result<String, LoadError> {
    let path = || shown.to_owned();
    let unreadable = |cause: std::io::Error| match cause.kind() {
        ErrorKind::NotFound => LoadError::NotFound { path: path() },
        _ => LoadError::Unreadable { path: path(), cause },
    };
    let file = File::open(place).map_err(unreadable)?;
    read_source(file, shown)
}

/// Reads the text of a description from any reader, and no more than a description may have; `name` stands for it in messages.
///
/// # Errors
/// When it cannot be read, is too long, or is no text.
pub fn read_source(reader: impl Read, name: &str) -> Result<String, LoadError> {
    let path = || name.to_owned();
    let mut bytes = Vec::new();
    // One byte more than allowed is read, so that endless devices are found out too.
    let read = reader.take(LONGEST_TEXT as u64 + 1).read_to_end(&mut bytes);
    read.map_err(|cause| LoadError::Unreadable { path: path(), cause })?;
    if let Some(contents) = Contents::of(&bytes) {
        return Err(LoadError::NoDescription { path: path(), contents });
    }
    if bytes.len() > LONGEST_TEXT {
        return Err(LoadError::TooLarge { path: path() });
    }
    String::from_utf8(bytes)
        .map_err(|error| LoadError::NotText { path: path(), byte_offset: error.utf8_error().valid_up_to() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_are_shown_as_seen_from_here() {
        let shown = |path, from| relative(Path::new(path), Path::new(from));
        assert_eq!(shown("/cars/van/doors.lore", "/cars/van"), Some("doors.lore".into()));
        assert_eq!(shown("/cars/body/doors.lore", "/cars/van/logs"), Some("../../body/doors.lore".into()));
        assert_eq!(shown("/cars/doors.lore", "/home/me"), None);
        assert_eq!(shown("doors.lore", "/home/me"), None);
    }
}
