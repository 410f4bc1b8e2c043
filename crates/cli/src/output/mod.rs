//! Decoded values as lines (csv, JSON lines or a table, one line a value or one line a moment), or as typed tables.

pub(crate) mod cell;
pub(crate) mod csv;
pub(crate) mod frames_csv;
pub(crate) mod grid;
pub(crate) mod jsonl;
mod lines;
pub(crate) mod long;
mod snippet;
pub(crate) mod table;
mod texts;
pub(crate) mod typed;

use std::io::Write;

/// The forms of lines.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum LineForm {
    /// Comma-separated.
    Csv,
    /// One JSON object a line.
    Jsonl,
    /// Aligned columns for people.
    Table,
}

/// How much is gathered before it is written.
pub(crate) const CHUNK_BYTES: usize = 64 * 1024;

/// Writes gathered lines once there are enough of them.
///
/// # Errors
/// What the receiver says.
pub(crate) fn pass_on(lines: &mut Vec<u8>, to: &mut impl Write, least_bytes: usize) -> std::io::Result<()> {
    if lines.len() >= least_bytes {
        to.write_all(lines)?;
        lines.clear();
    }
    Ok(())
}
