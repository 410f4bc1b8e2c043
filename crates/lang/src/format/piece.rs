//! The text as pieces: the tokens that count and the comments between them.

use crate::Span;
use crate::lex::{Token, TokenKind};
use crate::syntax::Leaf;

/// A token that counts, or a comment.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    pub(super) kind: TokenKind,
    pub(super) span: Span,
    /// A line end stands in front of it.
    pub(super) is_first: bool,
    /// An empty line stands in front of it.
    pub(super) has_gap: bool,
}

impl Piece {
    /// Whether it is kept as it is, up to the end of its line.
    pub(super) fn is_comment(&self) -> bool {
        matches!(self.kind, TokenKind::Comment | TokenKind::Note)
    }
}

/// Line ends are among them only where they end a statement.
pub(super) fn pieces(tokens: &[Token], leaves: &[Leaf]) -> Vec<Piece> {
    let mut ends = leaves.iter().filter(|leaf| leaf.kind == TokenKind::LineEnd).map(|leaf| leaf.span).peekable();
    let mut pieces: Vec<Piece> = Vec::with_capacity(leaves.len());
    let mut line_ends = 1;
    for token in tokens {
        match token.kind {
            TokenKind::Blank | TokenKind::Wrong => continue,
            TokenKind::LineEnd => {
                line_ends += 1;
                if ends.next_if_eq(&token.span).is_some() {
                    pieces.push(Piece { kind: TokenKind::LineEnd, span: token.span, is_first: false, has_gap: false });
                }
                continue;
            }
            _ => {}
        }
        let has_gap = line_ends > 1 && pieces.iter().any(|piece| piece.kind != TokenKind::LineEnd);
        pieces.push(Piece { kind: token.kind, span: token.span, is_first: line_ends > 0, has_gap });
        line_ends = 0;
    }
    pieces
}
