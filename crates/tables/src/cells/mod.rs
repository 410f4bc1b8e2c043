//! The cells of a column while they are gathered. Their memory is lent to the batch that is written and taken back for the next one: memory
//! that is fresh from the system is dearer than anything that is done with it.

mod bytes;
mod numbers;
mod senders;
mod states;
mod words;

use std::fmt::Debug;

use arrow_array::ArrayRef;
use wirelore_decode::{Column, Reading};
use wirelore_model::StateWord;

pub(crate) use bytes::Bytes;
pub(crate) use numbers::{Numbers, Slots, Stamps};
pub(crate) use senders::Senders;
pub(crate) use states::States;
pub(crate) use words::{Codes, Words, WordsOf};

use crate::kind::{Kind, Number};

/// A column in the making.
pub(crate) trait Cells: Debug + Send {
    /// Prepares for batches of so many rows.
    fn expect(&mut self, _batch_rows: usize) {}

    /// Appends what a reading says; null where it says nothing, and for `None`.
    fn push(&mut self, reading: Option<&Reading<'_>>);

    /// Appends the first `rows` rows of a decoded column.
    fn extend(&mut self, column: &Column<'_>, rows: usize);

    /// What the texts or bytes of the first so many cells take, where each cell holds its own.
    fn text_bytes(&self, _rows: usize) -> usize {
        0
    }

    /// The first so many cells, as what a batch is made of. The rest is there again after `restock`.
    fn take(&mut self, rows: usize) -> ArrayRef;

    /// Takes the memory of the last batch back, once that is gone.
    fn restock(&mut self);
}

/// Appends a column reading by reading.
fn push_each(cells: &mut impl Cells, column: &Column<'_>, rows: usize) {
    (0..rows).for_each(|row| cells.push(column.reading(row).as_ref()));
}

/// The cells for a kind of column; `words` are those of its signal.
pub(crate) fn cells(kind: Kind, words: &[StateWord]) -> Box<dyn Cells> {
    use arrow_array::types::{
        Float32Type, Float64Type, Int8Type, Int16Type, Int32Type, Int64Type, UInt8Type, UInt16Type, UInt32Type,
        UInt64Type,
    };
    match kind {
        Kind::Double => Box::new(Numbers::<Float64Type>::new(|reading| reading.value.number())),
        Kind::Codes => Box::new(Codes::new()),
        Kind::Words => Box::new(WordsOf::new(words)),
        Kind::Text | Kind::Bytes => Box::new(Bytes::new(kind == Kind::Text)),
        Kind::Raw(encoding, number) => match number {
            Number::I8 => Box::new(Numbers::<Int8Type>::of_raw(encoding)),
            Number::I16 => Box::new(Numbers::<Int16Type>::of_raw(encoding)),
            Number::I32 => Box::new(Numbers::<Int32Type>::of_raw(encoding)),
            Number::I64 => Box::new(Numbers::<Int64Type>::of_raw(encoding)),
            Number::U8 => Box::new(Numbers::<UInt8Type>::of_raw(encoding)),
            Number::U16 => Box::new(Numbers::<UInt16Type>::of_raw(encoding)),
            Number::U32 => Box::new(Numbers::<UInt32Type>::of_raw(encoding)),
            Number::U64 => Box::new(Numbers::<UInt64Type>::of_raw(encoding)),
            Number::F32 => Box::new(Numbers::<Float32Type>::of_raw_floats(encoding)),
            Number::F64 => Box::new(Numbers::<Float64Type>::of_raw_doubles()),
        },
    }
}
