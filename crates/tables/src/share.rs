//! How much memory one of several tables may take: bounded by what the user allows, and no more than helps.

use arrow_schema::{DataType, Schema};

/// Batches of fewer rows cost more than they hold: in a file each one has a description of its own, and those are kept to the file's end.
const LEAST_ROWS: usize = 1024;

/// As many rows as a block has, as a rule at most.
const BLOCK_ROWS: usize = 512;

/// What is set aside for a text or for bytes: those of a CAN FD frame at their longest. Messages can be a thousand times longer, and then
/// fewer of them make a batch.
const TEXT_BYTES: usize = 64;
/// The bytes of a column are counted in 31 bits (Arrow columnar format, `Utf8` and `Binary`): a batch stays far below that.
const MOST_TEXT_BYTES: usize = 1 << 30;

/// When a table hands its rows on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Share {
    /// After so many rows.
    rows: usize,
    /// Before its texts and bytes take more than this; `None`: it has none.
    text_bytes: Option<usize>,
}

impl Share {
    /// For a table that may take so many bytes and whose writer takes `most_rows` at once.
    ///
    /// Three quarters are for the rows; the rest is for the column that is being encoded and for what the system cannot use again at once.
    pub(crate) fn new(share_bytes: usize, schema: &Schema, most_rows: usize) -> Self {
        let row_bytes: usize = schema.fields().iter().map(|field| cell_bytes(field.data_type())).sum();
        let rows = (share_bytes / 4 * 3 / row_bytes.max(1)).clamp(LEAST_ROWS, most_rows.max(LEAST_ROWS));
        let texts = schema.fields().iter().filter(|field| is_text(field.data_type())).count();
        let text_bytes = (rows * TEXT_BYTES).saturating_mul(texts).min(MOST_TEXT_BYTES);
        Self { rows, text_bytes: (texts > 0).then_some(text_bytes) }
    }

    /// The most rows that ever wait: a full batch, and the block that fills it.
    pub(crate) fn most_rows(&self) -> usize {
        self.rows + BLOCK_ROWS
    }

    /// How many of the rows that wait make a full batch; `None` where they do not yet. `text_bytes` says what texts and bytes of the first
    /// so many rows take.
    ///
    /// It is the same number however many more rows there are already, so that the same rows always make the same batches.
    pub(crate) fn full(&self, waiting: usize, text_bytes: impl Fn(usize) -> usize) -> Option<usize> {
        let most = self.text_bytes.filter(|most| text_bytes(waiting) > *most);
        let Some(most) = most else {
            return (waiting >= self.rows).then_some(self.rows);
        };
        let (mut fitting, mut beyond) = (0, waiting);
        while beyond - fitting > 1 {
            let middle = fitting.midpoint(beyond);
            if text_bytes(middle) > most { beyond = middle } else { fitting = middle }
        }
        Some(fitting.clamp(1, self.rows))
    }
}

fn is_text(data_type: &DataType) -> bool {
    matches!(data_type, DataType::Utf8 | DataType::Binary)
}

/// What a cell takes, with the bit that says whether it is there.
fn cell_bytes(data_type: &DataType) -> usize {
    match data_type {
        DataType::Utf8 | DataType::Binary => 4 + TEXT_BYTES + 1,
        DataType::Dictionary(..) => 4 + 1,
        other => other.primitive_width().unwrap_or(8) + 1,
    }
}

#[cfg(test)]
mod tests {
    use arrow_schema::Field;

    use super::*;

    fn schema(types: &[DataType]) -> Schema {
        Schema::new(types.iter().map(|data_type| Field::new("s", data_type.clone(), true)).collect::<Vec<_>>())
    }

    #[test]
    fn rows_without_texts_are_counted() {
        let share = Share::new(1 << 20, &schema(&[DataType::Float64]), 1 << 20);
        assert_eq!((share.full(87_380, |_| 0), share.full(87_381, |_| 0)), (None, Some(87_381)));
        assert_eq!(share.full(100_000, |_| 0), Some(87_381));
        assert_eq!(Share::new(0, &schema(&[DataType::Float64]), 5).full(1024, |_| 0), Some(1024));
    }

    #[test]
    fn long_texts_make_short_batches_wherever_one_looks() {
        // 11,397 rows of 69 bytes are three quarters of a MiB.
        let share = Share::new(1 << 20, &schema(&[DataType::Utf8]), 1 << 20);
        let most = 11_397 * 64;
        assert_eq!(share.full(11_396, |rows| rows * 64), None);
        assert_eq!(share.full(11_397, |rows| rows * 64), Some(11_397));
        for each in [65, 1000, 4095, most - 1, most, most + 1, 1 << 30] {
            let fitting = (most / each).clamp(1, 11_397);
            let text_bytes = |rows: usize| rows.saturating_mul(each);
            assert_eq!(share.full(most / each, text_bytes), None, "{each}");
            for more in [1, 2, 500] {
                assert_eq!(share.full(most / each + more, text_bytes), Some(fitting), "{each}, {more}");
            }
        }
    }
}
