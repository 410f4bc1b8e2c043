//! Where a blank stands between two tokens of a statement.

use super::piece::Piece;
use super::spans::Spans;
use crate::lex::TokenKind as Kind;

/// One statement being joined.
pub(super) struct Spacing<'a> {
    pub(super) text: &'a str,
    pub(super) spans: &'a Spans,
}

impl Spacing<'_> {
    /// Whether a blank stands between `pieces[at - 1]` and `pieces[at]`.
    pub(super) fn blank_before(&self, pieces: &[Piece], at: usize) -> bool {
        let (left, right) = (pieces[at - 1], pieces[at]);
        let touching = left.span.end == right.span.start;
        if matches!(right.kind, Kind::Comma | Kind::Colon | Kind::CloseParen | Kind::CloseBracket | Kind::OpenBracket) {
            return false;
        }
        if matches!(left.kind, Kind::OpenParen | Kind::OpenBracket) {
            return false;
        }
        if left.kind == Kind::OpenBrace && right.kind == Kind::CloseBrace {
            return false;
        }
        if self.spans.in_whole(left.span) && self.spans.in_whole(right.span) {
            return !touching;
        }
        if self.spans.in_formula(left.span) && self.spans.in_formula(right.span) {
            return self.blank_in_formula(pieces, at);
        }
        match (left.kind, right.kind) {
            (Kind::DotDot | Kind::Dot | Kind::Slash, _) | (_, Kind::DotDot | Kind::Dot | Kind::Slash) => false,
            (Kind::Minus, Kind::Number) => false,
            (Kind::Number, Kind::Word) => !(touching && matches!(self.word(right), "st" | "nd" | "rd" | "th")),
            _ => true,
        }
    }

    /// Signs between operands have blanks on both sides, except in a fraction such as `9/5`.
    fn blank_in_formula(&self, pieces: &[Piece], at: usize) -> bool {
        let (left, right) = (pieces[at - 1], pieces[at]);
        let kind = |index: Option<usize>| index.and_then(|index| pieces.get(index)).map(|piece| piece.kind);
        match (left.kind, right.kind) {
            (Kind::Minus, _) if self.is_sign(pieces, at - 1) => false,
            (Kind::Slash, Kind::Number) => kind(at.checked_sub(2)) != Some(Kind::Number),
            (Kind::Number, Kind::Slash) => kind(Some(at + 1)) != Some(Kind::Number),
            _ => true,
        }
    }

    /// Whether a minus belongs to the operand behind it, as no operand stands in front of it.
    fn is_sign(&self, pieces: &[Piece], at: usize) -> bool {
        let before = pieces[..at].iter().rev().find(|piece| !piece.is_comment());
        !before.is_some_and(|&piece| match piece.kind {
            Kind::Number | Kind::CloseParen => true,
            Kind::Word => self.word(piece) == "raw",
            _ => false,
        })
    }

    fn word(&self, piece: Piece) -> &str {
        self.text.get(piece.span.range()).unwrap_or_default()
    }
}
