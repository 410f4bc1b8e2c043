//! Formulas: what their algebra comes to. No tree is kept: there are as many formulas as signals, and all of them are straight lines.

use wirelore_bits::Ratio;

use crate::Span;

/// A formula.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Formula {
    /// The straight line that it is.
    pub line: Result<Line, Trouble>,
    /// Whether `raw` occurs in it.
    pub mentions_raw: bool,
    /// Its place.
    pub span: Span,
}

/// `factor * raw + offset`; the factor may be 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// What `raw` is multiplied by.
    pub factor: Ratio,
    /// What is added.
    pub offset: Ratio,
}

/// Why a formula is no straight line that can be held exactly, and the characters it is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trouble {
    /// `raw * raw`
    RawTimesRaw(Span),
    /// `1 / raw`
    DividedByRaw(Span),
    /// `raw / 0`
    DividedByZero(Span),
    /// A number that does not fit.
    TooLong(Span),
}
