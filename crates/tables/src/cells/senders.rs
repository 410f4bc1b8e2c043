//! Who sent each frame.

use std::sync::Arc;

use arrow_array::types::{UInt8Type, UInt32Type};
use arrow_array::{ArrayRef, PrimitiveArray};
use arrow_schema::{DataType, Field};
use wirelore_decode::{Source, SourceKinds};

use super::Slots;
use crate::layout::SOURCE;
use crate::metadata;

/// The column of sources: addresses in a byte where there are only these, else identifiers.
#[derive(Debug)]
pub(crate) enum Senders {
    Addresses(Slots<u8>),
    Identifiers(Slots<u32>),
}

impl Senders {
    /// The column of a frame; `None` where nothing tells who sent it.
    pub(crate) fn new(kinds: SourceKinds) -> Option<Self> {
        let column = if kinds.identifiers() { Self::Identifiers(Slots::new()) } else { Self::Addresses(Slots::new()) };
        kinds.any().then_some(column)
    }

    /// The field of that column.
    pub(crate) fn field(kinds: SourceKinds) -> Option<Field> {
        let data_type = if kinds.identifiers() { DataType::UInt32 } else { DataType::UInt8 };
        kinds.any().then(|| Field::new(SOURCE, data_type, true).with_metadata(metadata::of_sources(kinds)))
    }

    pub(crate) fn push(&mut self, source: Option<Source>) {
        match self {
            Self::Addresses(slots) => slots.push(source.and_then(Source::address)),
            Self::Identifiers(slots) => slots.push(source.map(Source::number)),
        }
    }

    pub(crate) fn take(&mut self, rows: usize) -> ArrayRef {
        match self {
            Self::Addresses(slots) => {
                let (addresses, there) = slots.take(rows);
                Arc::new(PrimitiveArray::<UInt8Type>::new(addresses, there))
            }
            Self::Identifiers(slots) => {
                let (identifiers, there) = slots.take(rows);
                Arc::new(PrimitiveArray::<UInt32Type>::new(identifiers, there))
            }
        }
    }

    pub(crate) fn restock(&mut self) {
        match self {
            Self::Addresses(slots) => slots.restock(),
            Self::Identifiers(slots) => slots.restock(),
        }
    }
}
