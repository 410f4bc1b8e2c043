//! Names and numbers as they are written.

use std::borrow::Cow;

use wirelore_bits::Ratio;

use crate::{Span, Spanned};

/// A text where it stands: a piece of the source, or with its escapes resolved or its letters normalised.
pub type Text<'t> = Spanned<Cow<'t, str>>;

/// A name where it stands, in Unicode normal form C.
pub type Name<'t> = Text<'t>;

/// A whole number as written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Integer {
    /// Its value, negative where a `-` stands in front.
    pub value: i128,
    /// Written in hexadecimal or binary: where raw values are meant, a pattern of bits.
    pub pattern: bool,
    /// Its place, with the sign.
    pub span: Span,
}

/// An exact number as written (`0.05`, `-40`, `1e-3`, `0x1F`).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exact {
    /// Its value.
    pub value: Ratio,
    /// Its place, with the sign.
    pub span: Span,
}

/// A length of time in nanoseconds.
pub type Time = Spanned<u64>;

/// `5` or `3..10`, raw.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RawRange {
    /// The first.
    pub first: Integer,
    /// The last; the same as `first` for a single value.
    pub last: Integer,
    /// Both.
    pub span: Span,
}
