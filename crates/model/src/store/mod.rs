//! The two stored forms of a database: JSON for other programs and for reading, and the compact `.lorebin`.
//!
//! Both load back to an equal [`Database`], and both run the same validation as a description from text. Any bytes may be offered: what is
//! not a stored database is refused, in memory that is bounded by the size of the input.

mod binary;
mod checksum;
mod json;

use thiserror::Error;

pub use binary::{from_lorebin, to_lorebin};
pub use json::{from_json, to_json};

use crate::{Database, InvalidDescription};

/// The version of both stored forms. It rises when a program that knows the present one could misread the new one.
pub const FORMAT_VERSION: u32 = 4;

/// Why stored bytes were refused.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum LoadError {
    /// Neither of the two forms.
    #[error(
        "this is no stored database: it begins neither like a .lorebin file nor like a JSON object; compile it anew from its text"
    )]
    NotADatabase,
    /// Written by a program that knows more.
    #[error(
        "this database is stored in version {found} of the format, and this program knows version {FORMAT_VERSION}; use a newer program or compile it anew"
    )]
    Newer {
        /// The version it has.
        found: u32,
    },
    /// Written by a program that knew less.
    #[error(
        "this database is stored in version {found} of the format, and this program reads version {FORMAT_VERSION}; compile it anew from its text"
    )]
    Older {
        /// The version it has.
        found: u32,
    },
    /// A version that never was.
    #[error(
        "this database says that it is stored in version {found} of the format, which does not exist; it is damaged, compile it anew"
    )]
    UnknownVersion {
        /// The version it says.
        found: u32,
    },
    /// Fewer bytes than there have to be.
    #[error(
        "this .lorebin file is cut off: it has {found} bytes and needs {needed}; fetch it again or compile it anew"
    )]
    Cut {
        /// How many bytes there are.
        found: u64,
        /// How many there have to be, so far as is known.
        needed: u64,
    },
    /// More bytes than there have to be.
    #[error("this .lorebin file has {extra} bytes behind its end; fetch it again or compile it anew")]
    ExtraBytes {
        /// How many are too many.
        extra: u64,
    },
    /// The checksum over the contents differs.
    #[error(
        "this .lorebin file is damaged: its contents have the checksum {found:08X} and should have {stored:08X}; fetch it again or compile it anew"
    )]
    Damaged {
        /// The checksum that the contents have.
        found: u32,
        /// The checksum that the header states.
        stored: u32,
    },
    /// Undamaged contents that make no description.
    #[error("the contents of this .lorebin file make no description; compile it anew")]
    Contents(#[source] postcard::Error),
    /// Undamaged contents with something behind the description.
    #[error("the contents of this .lorebin file go on for {extra} bytes behind the description; compile it anew")]
    ContentsGoOn {
        /// How many bytes are left.
        extra: usize,
    },
    /// JSON that is not well formed or not of the database's form.
    #[error("this JSON text is no stored database")]
    Json(#[source] serde_json::Error),
    /// JSON of another format.
    #[error("this JSON text says that it holds a `{found}`, not a `{expected}`; it is something else", expected = json::FORMAT)]
    OtherFormat {
        /// What it says.
        found: String,
    },
    /// A description that breaks a promise.
    #[error(transparent)]
    Invalid(#[from] InvalidDescription),
}

/// Loads a database in either form, whichever the bytes are.
///
/// # Errors
/// Bytes that are neither, a newer version, damage, or a description that is not valid.
pub fn load(bytes: &[u8]) -> Result<Database, LoadError> {
    if binary::is_lorebin(bytes) {
        return from_lorebin(bytes);
    }
    match std::str::from_utf8(bytes) {
        Ok(text) if text.trim_start().starts_with('{') => from_json(text),
        _ => Err(LoadError::NotADatabase),
    }
}

/// Refuses every version but the present one.
fn check_version(found: u32) -> Result<(), LoadError> {
    match found {
        FORMAT_VERSION => Ok(()),
        0 => Err(LoadError::UnknownVersion { found }),
        _ if found < FORMAT_VERSION => Err(LoadError::Older { found }),
        _ => Err(LoadError::Newer { found }),
    }
}
