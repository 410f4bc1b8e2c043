//! Source files out of memory: for tests, and for programs that keep descriptions elsewhere.

use std::collections::BTreeMap;

use super::{LoadError, Loaded, Loader};

/// Texts by path. Paths are written with `/`; relative ones count from the folder of the file that uses them.
#[derive(Debug, Clone, Default)]
pub struct MemoryLoader {
    texts: BTreeMap<String, String>,
}

impl MemoryLoader {
    /// Adds a file.
    #[must_use]
    pub fn with(mut self, path: &str, text: impl Into<String>) -> Self {
        self.texts.insert(tidy(path), text.into());
        self
    }
}

impl Loader for MemoryLoader {
    fn load(&self, path: &str, from: Option<&str>) -> Result<Loaded, LoadError> {
        let folder = from.and_then(|key| key.rsplit_once('/')).map_or("", |(folder, _)| folder);
        let key =
            if folder.is_empty() || path.starts_with('/') { tidy(path) } else { tidy(&format!("{folder}/{path}")) };
        match self.texts.get(&key) {
            Some(text) => Ok(Loaded { name: key.clone(), key, text: text.clone() }),
            None => Err(LoadError::NotFound { path: key }),
        }
    }
}

/// A path without `.` and `..`, as far as it has a folder to leave.
fn tidy(path: &str) -> String {
    let mut parts: Vec<&str> = Vec::new();
    for part in path.split('/') {
        match part {
            "." => {}
            ".." if parts.last().is_some_and(|last| !last.is_empty() && *last != "..") => {
                parts.pop();
            }
            _ => parts.push(part),
        }
    }
    parts.join("/")
}
