//! Places of bits as they are written: nothing shifted, turned or calculated yet.

use wirelore_bits::ByteOrder;

use super::Integer;
use crate::{Span, Spanned};

/// Where a signal sits, as written: one piece, or several with `then` between them, most significant first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// The first piece, which most often is the only one.
    pub first: Spanned<Piece>,
    /// The others.
    pub others: Vec<Spanned<Piece>>,
    /// The word `intel` or `motorola` behind them.
    pub order: Option<Spanned<ByteOrder>>,
    /// All of it.
    pub span: Span,
}

impl Place {
    /// All pieces.
    pub fn pieces(&self) -> impl Iterator<Item = &Spanned<Piece>> {
        std::iter::once(&self.first).chain(&self.others)
    }
}

/// One piece of a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Piece {
    /// `bits 1.4..0.0` (or `bits 3.7`)
    Bits {
        /// The most significant end.
        msb: Position,
        /// The least significant end.
        lsb: Position,
    },
    /// `bit 6.5`
    Bit(Position),
    /// `byte 3`, `byte last`
    Byte(ByteIndex),
    /// `bytes 0..1`, `bytes 3..end`
    Bytes {
        /// The most significant one.
        msb: ByteIndex,
        /// The least significant one.
        lsb: ByteIndex,
    },
    /// `lsb 16 width 12 intel`, `msb 0.7 width 16 motorola`
    Counted {
        /// Which end is given.
        anchor: Anchor,
        /// Where that end is.
        at: FlatPosition,
        /// How many bits.
        width: Integer,
        /// The order, which this form must say.
        order: Option<ByteOrder>,
    },
}

/// Which end of a place the second form gives.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// The most significant bit.
    Msb,
    /// The least significant bit.
    Lsb,
}

/// BYTE.BIT as written: nothing shifted or turned yet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Position {
    /// The byte.
    pub byte: u32,
    /// The bit; may be out of range.
    pub bit: u32,
    /// Its place in the text.
    pub span: Span,
}

/// A position of the second form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FlatPosition {
    /// byte * 8 + bit, with bit 0 the least significant of its byte; never shifted by `counting`.
    Flat(Integer),
    /// BYTE.BIT
    Position(Position),
}

/// A byte number as written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ByteIndex {
    /// A number.
    Number(Integer),
    /// `end` or `last`: the last byte of the payload.
    Last(Span),
}
