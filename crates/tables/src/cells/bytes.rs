//! Characters and bytes of any length.

use std::sync::Arc;

use arrow_array::types::{BinaryType, ByteArrayType, Utf8Type};
use arrow_array::{ArrayRef, GenericByteArray};
use arrow_buffer::{Buffer, NullBufferBuilder, OffsetBuffer, ScalarBuffer};
use wirelore_decode::{Reading, Value};

use super::Cells;

/// Texts or byte strings, one behind the other, and where each one ends.
#[derive(Debug)]
pub(crate) struct Bytes {
    is_text: bool,
    /// Begins with 0.
    ends: Vec<i32>,
    bytes: Vec<u8>,
    there: NullBufferBuilder,
    lent: Option<(Buffer, Buffer)>,
}

impl Bytes {
    pub(crate) fn new(is_text: bool) -> Self {
        Self { is_text, ends: vec![0], bytes: Vec::new(), there: NullBufferBuilder::new(0), lent: None }
    }

    /// Appends a text or bytes; `None`: null.
    pub(crate) fn append(&mut self, bytes: Option<&[u8]>) {
        // A batch never comes near 2 GiB; what would not fit is told as missing.
        let end = bytes.and_then(|bytes| i32::try_from(self.bytes.len() + bytes.len()).ok());
        if let (Some(bytes), Some(_)) = (bytes, end) {
            self.bytes.extend_from_slice(bytes);
        }
        self.ends.push(end.unwrap_or_else(|| self.ends.last().copied().unwrap_or_default()));
        self.there.append(end.is_some());
    }

    fn array<T: ByteArrayType<Offset = i32>>(&mut self) -> ArrayRef {
        let ends = Buffer::from_vec(std::mem::replace(&mut self.ends, vec![0]));
        let bytes = Buffer::from_vec(std::mem::take(&mut self.bytes));
        self.lent = Some((ends.clone(), bytes.clone()));
        let count = ends.len() / size_of::<i32>();
        let offsets = OffsetBuffer::new(ScalarBuffer::new(ends, 0, count));
        Arc::new(GenericByteArray::<T>::new(offsets, bytes, self.there.finish()))
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

    fn take(&mut self) -> ArrayRef {
        if self.is_text { self.array::<Utf8Type>() } else { self.array::<BinaryType>() }
    }

    fn restock(&mut self) {
        let Some((ends, bytes)) = self.lent.take() else { return };
        if let Ok(ends) = ends.into_vec::<i32>() {
            self.ends = ends;
            self.ends.truncate(1);
        }
        if let Ok(bytes) = bytes.into_vec::<u8>() {
            self.bytes = bytes;
            self.bytes.clear();
        }
    }
}
