//! Decoded values as lines: csv, JSON lines or a table, one line a value or one line a moment.

pub(crate) mod cell;
pub(crate) mod csv;
pub(crate) mod grid;
pub(crate) mod held;
pub(crate) mod jsonl;
mod lines;
pub(crate) mod long;
mod snippet;
pub(crate) mod table;
mod texts;

use std::io::Write;

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
