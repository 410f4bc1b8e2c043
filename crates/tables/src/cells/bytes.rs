//! Characters and bytes of any length.

use std::sync::Arc;

use arrow_array::types::{BinaryType, ByteArrayType, Utf8Type};
use arrow_array::{ArrayRef, GenericByteArray};
use arrow_buffer::{Buffer, NullBufferBuilder, OffsetBuffer, ScalarBuffer};
use wirelore_decode::{Column, Reading, Value};

use super::{Cells, push_each};

/// Texts or byte strings, one behind the other, and where each one ends.
#[derive(Debug)]
pub(crate) struct Bytes {
    is_text: bool,
    /// Begins with 0.
    ends: Vec<i32>,
    bytes: Vec<u8>,
    there: NullBufferBuilder,
    lent: Option<Lent>,
}

/// The memory of the last batch, and how many of its texts were in that.
#[derive(Debug)]
struct Lent {
    ends: Buffer,
    bytes: Buffer,
    rows: usize,
}

impl Bytes {
    pub(crate) fn new(is_text: bool) -> Self {
        Self { is_text, ends: vec![0], bytes: Vec::new(), there: NullBufferBuilder::new(0), lent: None }
    }

    /// Appends a text or bytes; `None`: null.
    pub(crate) fn append(&mut self, bytes: Option<&[u8]>) {
        // A batch never comes near 2 GiB, and nor does a message; what would not fit is told as missing.
        let end = bytes.and_then(|bytes| i32::try_from(self.bytes.len() + bytes.len()).ok());
        if let (Some(bytes), Some(_)) = (bytes, end) {
            self.bytes.extend_from_slice(bytes);
        }
        self.ends.push(end.unwrap_or_else(|| self.ends.last().copied().unwrap_or_default()));
        self.there.append(end.is_some());
    }

    fn array<T: ByteArrayType<Offset = i32>>(&mut self, rows: usize) -> ArrayRef {
        let count = self.ends.len() - 1;
        let rows = rows.min(count);
        let ends = Buffer::from_vec(std::mem::replace(&mut self.ends, vec![0]));
        let bytes = Buffer::from_vec(std::mem::take(&mut self.bytes));
        self.lent = Some(Lent { ends: ends.clone(), bytes: bytes.clone(), rows });
        let there = self.there.finish();
        match &there {
            Some(there) => self.there.append_buffer(&there.slice(rows, count - rows)),
            None => self.there.append_n_non_nulls(count - rows),
        }
        let offsets = OffsetBuffer::new(ScalarBuffer::new(ends, 0, rows + 1));
        Arc::new(GenericByteArray::<T>::new(offsets, bytes, there.map(|there| there.slice(0, rows))))
    }
}

impl Cells for Bytes {
    fn push(&mut self, reading: Option<&Reading<'_>>) {
        match reading.map(|reading| &reading.value) {
            Some(Value::Text(text)) => self.append(Some(text.as_bytes())),
            Some(Value::Bytes(bytes)) => self.append(Some(bytes)),
            _ => self.append(None),
        }
    }

    fn extend(&mut self, column: &Column<'_>, rows: usize) {
        push_each(self, column, rows);
    }

    fn text_bytes(&self, rows: usize) -> usize {
        self.ends.get(rows).or(self.ends.last()).map_or(0, |end| *end as usize)
    }

    fn take(&mut self, rows: usize) -> ArrayRef {
        if self.is_text { self.array::<Utf8Type>(rows) } else { self.array::<BinaryType>(rows) }
    }

    fn restock(&mut self) {
        let Some(Lent { ends, bytes, rows }) = self.lent.take() else { return };
        let (begin, end) = (ends.typed_data::<i32>()[rows], bytes.len());
        let rest: Vec<i32> = ends.typed_data::<i32>()[rows..].iter().map(|at| at - begin).collect();
        self.bytes.extend_from_slice(&bytes[begin as usize..end]);
        self.ends = rest;
    }
}
