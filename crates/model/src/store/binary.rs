//! The `.lorebin` form: a header of 24 bytes, then the description in the postcard encoding.
//!
//! | bytes | content |
//! | --- | --- |
//! | 0..8 | the mark `F1 4C 4F 52 45 42 49 4E` (`LOREBIN` behind a byte that no text begins with) |
//! | 8..12 | version of the format, least significant byte first |
//! | 12..20 | length of the body in bytes, least significant byte first |
//! | 20..24 | CRC-32/ISO-HDLC of the body, least significant byte first |
//! | 24.. | the body |

use super::checksum::crc32;
use super::{FORMAT_VERSION, LoadError, check_version};
use crate::{Database, Description};

const MARK: [u8; 8] = *b"\xF1LOREBIN";
const HEADER_BYTES: usize = 24;

/// The database in the `.lorebin` form. The same database gives the same bytes.
#[must_use]
pub fn to_lorebin(database: &Database) -> Vec<u8> {
    let description: &Description = database;
    let mut file = postcard::to_extend(description, vec![0; HEADER_BYTES])
        .expect("every list and text of a description has a known length, so that postcard holds it");
    let (header, body) = file.split_at_mut(HEADER_BYTES);
    header[..8].copy_from_slice(&MARK);
    header[8..12].copy_from_slice(&FORMAT_VERSION.to_le_bytes());
    header[12..20].copy_from_slice(&(body.len() as u64).to_le_bytes());
    header[20..].copy_from_slice(&crc32(body).to_le_bytes());
    file
}

/// Loads a database from the `.lorebin` form.
///
/// # Errors
/// Bytes that are something else, a newer version, a file that is cut off, too long or damaged, or a description that is not valid.
pub fn from_lorebin(bytes: &[u8]) -> Result<Database, LoadError> {
    let (description, rest) = postcard::take_from_bytes::<Description>(body(bytes)?).map_err(LoadError::Contents)?;
    if !rest.is_empty() {
        return Err(LoadError::ContentsGoOn { extra: rest.len() });
    }
    Ok(Database::new(description)?)
}

/// Whether some bytes begin as a `.lorebin` file does, as far as they go.
pub(super) fn is_lorebin(bytes: &[u8]) -> bool {
    let known = bytes.len().min(MARK.len());
    known > 0 && bytes[..known] == MARK[..known]
}

/// The body, once mark, version, length and checksum are as they should be.
fn body(bytes: &[u8]) -> Result<&[u8], LoadError> {
    if !is_lorebin(bytes) {
        return Err(LoadError::NotADatabase);
    }
    let found = bytes.len() as u64;
    let header = bytes.first_chunk::<HEADER_BYTES>().ok_or(LoadError::Cut { found, needed: HEADER_BYTES as u64 })?;
    let [_, _, _, _, _, _, _, _, v0, v1, v2, v3, length @ .., c0, c1, c2, c3] = *header;
    check_version(u32::from_le_bytes([v0, v1, v2, v3]))?;
    let needed = u64::from_le_bytes(length).saturating_add(HEADER_BYTES as u64);
    if found < needed {
        return Err(LoadError::Cut { found, needed });
    }
    if found > needed {
        return Err(LoadError::ExtraBytes { extra: found - needed });
    }
    let body = &bytes[HEADER_BYTES..];
    let (stored, found) = (u32::from_le_bytes([c0, c1, c2, c3]), crc32(body));
    if stored == found { Ok(body) } else { Err(LoadError::Damaged { found, stored }) }
}
