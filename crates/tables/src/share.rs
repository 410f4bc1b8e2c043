//! How much memory one of several tables may take: bounded by what the user allows, and no more than helps.

use arrow_schema::{DataType, Schema};

/// Batches of more rows leave the processor's cache.
const BATCH_MOST_ROWS: usize = 8192;
/// Batches of fewer rows cost more than they hold.
const BATCH_LEAST_ROWS: usize = 64;

/// The share of one table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Share {
    /// After so many rows they are handed to the writer.
    pub(crate) batch_rows: usize,
    /// The most that the writer may hold of a row group.
    pub(crate) writer_bytes: usize,
}

impl Share {
    /// A quarter is for the rows that are being gathered, the rest for the writer.
    pub(crate) fn of(share_bytes: usize, schema: &Schema) -> Self {
        let row_bytes: usize = schema.fields().iter().map(|field| cell_bytes(field.data_type())).sum();
        let batch_rows = (share_bytes / 4 / row_bytes.max(1)).clamp(BATCH_LEAST_ROWS, BATCH_MOST_ROWS);
        Self { batch_rows, writer_bytes: share_bytes.saturating_sub(batch_rows * row_bytes) }
    }
}

/// What a cell takes, with the bit that says whether it is there; texts and bytes at their longest (CAN FD: 64 bytes).
fn cell_bytes(data_type: &DataType) -> usize {
    match data_type {
        DataType::Utf8 | DataType::Binary => 4 + 64 + 1,
        DataType::Dictionary(..) => 4 + 1,
        other => other.primitive_width().unwrap_or(8) + 1,
    }
}
