//! The JSON form: one object with the format's name and version, then the description. `schema/database.schema.json` describes it.

use serde::{Deserialize, Serialize};

use super::{FORMAT_VERSION, LoadError, check_version};
use crate::{Database, Description};

/// The name of the format.
pub(super) const FORMAT: &str = "wirelore database";

/// The first entry of the object.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Stamp {
    format: String,
    version: u32,
}

/// What every version has, whatever else there is.
#[derive(Debug, Deserialize)]
struct Head {
    wirelore: AnyStamp,
}

/// See [`Head`].
#[derive(Debug, Deserialize)]
struct AnyStamp {
    format: String,
    version: u32,
}

/// The whole object.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Stored<D> {
    wirelore: Stamp,
    description: D,
}

/// The database as JSON text, indented, with a line end at its end. The same database gives the same text, byte for byte.
///
/// Raw bit patterns and counters are whole numbers of up to 64 bits: a reader that keeps numbers as doubles loses digits of the large ones.
#[must_use]
pub fn to_json(database: &Database) -> String {
    let wirelore = Stamp { format: FORMAT.to_owned(), version: FORMAT_VERSION };
    let description: &Description = database;
    let mut text = serde_json::to_string_pretty(&Stored { wirelore, description })
        .expect("a description has only string keys and finite numbers, so that JSON holds it");
    text.push('\n');
    text
}

/// Loads a database from JSON text.
///
/// # Errors
/// Text that is no JSON or has another form (with line and column), a newer version, or a description that is not valid.
pub fn from_json(text: &str) -> Result<Database, LoadError> {
    // A newer version may have any other form, so the version is read first, and alone.
    let Head { wirelore } = serde_json::from_str(text).map_err(LoadError::Json)?;
    if wirelore.format != FORMAT {
        return Err(LoadError::OtherFormat { found: wirelore.format });
    }
    check_version(wirelore.version)?;
    let stored: Stored<Description> = serde_json::from_str(text).map_err(LoadError::Json)?;
    Ok(Database::new(stored.description)?)
}
