//! How much memory one of several tables may take: bounded by what the user allows, and no more than helps.

use arrow_schema::{DataType, Schema};

/// Batches of fewer rows cost more than they hold: in a file each one has a description of its own, and those are kept to the file's end.
const LEAST_ROWS: usize = 1024;

/// After how many rows a table hands them on, where it may take so many bytes and its writer takes `most_rows` at once.
///
/// Three quarters are for the rows; the rest is for the column that is being encoded and for what the system cannot use again at once.
pub(crate) fn batch_rows(share_bytes: usize, schema: &Schema, most_rows: usize) -> usize {
    let row_bytes: usize = schema.fields().iter().map(|field| cell_bytes(field.data_type())).sum();
    (share_bytes / 4 * 3 / row_bytes.max(1)).clamp(LEAST_ROWS, most_rows.max(LEAST_ROWS))
}

/// What a cell takes, with the bit that says whether it is there; texts and bytes at their longest (CAN FD: 64 bytes).
fn cell_bytes(data_type: &DataType) -> usize {
    match data_type {
        DataType::Utf8 | DataType::Binary => 4 + 64 + 1,
        DataType::Dictionary(..) => 4 + 1,
        other => other.primitive_width().unwrap_or(8) + 1,
    }
}
