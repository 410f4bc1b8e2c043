//! Places in source text.

use serde::Serialize;

/// A run of bytes of one source file: `start` is inside, `end` is not.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize)]
pub struct Span {
    /// The first byte.
    pub start: u32,
    /// The byte behind the last one.
    pub end: u32,
}

impl Span {
    /// A span from its two ends.
    #[must_use]
    pub fn new(start: u32, end: u32) -> Self {
        Self { start, end }
    }

    /// The smallest span that holds both.
    #[must_use]
    pub fn to(self, other: Self) -> Self {
        Self { start: self.start.min(other.start), end: self.end.max(other.end) }
    }

    /// The empty span behind this one: where something is missing.
    #[must_use]
    pub fn after(self) -> Self {
        Self { start: self.end, end: self.end }
    }

    /// As indices into the text.
    #[must_use]
    pub fn range(self) -> std::ops::Range<usize> {
        self.start as usize..self.end as usize
    }
}

/// A value and where it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Spanned<T> {
    /// The value.
    pub value: T,
    /// Its place.
    pub span: Span,
}

impl<T> Spanned<T> {
    /// Puts a value at a place.
    pub fn new(value: T, span: Span) -> Self {
        Self { value, span }
    }
}

/// Which source file, by its position in [`crate::Sources`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(pub u32);

/// A span in a certain file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Site {
    /// The file.
    pub file: FileId,
    /// The place in it.
    pub span: Span,
}
