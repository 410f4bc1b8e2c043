//! The tokens that count: blanks and comments are gone, and a line end is left only where it ends a statement.

use crate::Span;
use crate::lex::{Token, TokenKind};

/// A token that counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Leaf {
    pub(crate) kind: TokenKind,
    /// It is the first on its line.
    pub(super) is_first: bool,
    /// A line end that has an empty line behind it.
    pub(super) has_gap: bool,
    pub(crate) span: Span,
}

/// Picks the tokens that count.
///
/// A statement goes on over a line end behind a comma, and while a parenthesis or bracket is open. Only numbers, signs and `raw` stand
/// between those, so that any other word at the start of a line ends the statement all the same: a forgotten `)` spoils one line.
#[derive(Debug)]
pub(crate) struct Sieve<'a> {
    text: &'a str,
    leaves: Vec<Leaf>,
    /// Open parentheses and brackets.
    open: usize,
    /// A line end inside of them.
    held_back: Option<Span>,
    is_first: bool,
    is_empty: bool,
}

impl<'a> Sieve<'a> {
    pub(crate) fn new(text: &'a str) -> Self {
        // Descriptions have a leaf for every four bytes or more; too few here only cost a copy.
        Self {
            text,
            leaves: Vec::with_capacity(text.len() / 4 + 1),
            open: 0,
            held_back: None,
            is_first: true,
            is_empty: true,
        }
    }

    /// Takes the next token.
    #[inline(always)]
    pub(crate) fn take(&mut self, token: Token) {
        match token.kind {
            TokenKind::Blank => {}
            kind if self.is_first || self.held_back.is_some() || !kind.is_plain() => self.take_other(token),
            // Nearly all of them.
            kind => self.leaves.push(Leaf { kind, is_first: false, has_gap: false, span: token.span }),
        }
    }

    #[inline(never)]
    fn take_other(&mut self, token: Token) {
        match token.kind {
            TokenKind::Comment | TokenKind::Wrong => self.is_empty = false,
            TokenKind::LineEnd => self.line_end(token.span),
            TokenKind::Note => self.note(token),
            _ => self.token(token),
        }
    }

    /// All that count.
    pub(crate) fn into_leaves(self) -> Vec<Leaf> {
        self.leaves
    }

    fn push(&mut self, kind: TokenKind, span: Span) {
        self.leaves.push(Leaf { kind, is_first: self.is_first, has_gap: false, span });
        self.is_first = false;
        self.is_empty = false;
    }

    fn line_end(&mut self, span: Span) {
        let last = self.leaves.last().map(|leaf| leaf.kind);
        match last {
            Some(TokenKind::LineEnd) if self.is_empty => {
                if let Some(end) = self.leaves.last_mut() {
                    end.has_gap = true;
                }
            }
            None | Some(TokenKind::LineEnd | TokenKind::Comma | TokenKind::OpenBrace | TokenKind::Note) => {}
            Some(_) if self.open > 0 => self.held_back = self.held_back.or(Some(span)),
            Some(_) => self.push(TokenKind::LineEnd, span),
        }
        self.is_first = true;
        self.is_empty = true;
    }

    /// A note in the middle of a statement, or behind one on its line, has no item to belong to: it is a comment.
    fn note(&mut self, token: Token) {
        let last = self.leaves.last().map(|leaf| leaf.kind);
        let between = matches!(last, None | Some(TokenKind::LineEnd | TokenKind::OpenBrace | TokenKind::Note));
        if self.is_first && between {
            self.push(token.kind, token.span);
        }
        self.is_empty = false;
    }

    fn token(&mut self, token: Token) {
        use TokenKind as Kind;
        let ends = matches!(token.kind, Kind::OpenBrace | Kind::CloseBrace)
            || (self.is_first && token.kind == Kind::Word && self.text.get(token.span.range()) != Some("raw"));
        if ends {
            if let Some(span) = self.held_back {
                let is_first = std::mem::replace(&mut self.is_first, false);
                self.push(Kind::LineEnd, span);
                self.is_first = is_first;
            }
            self.open = 0;
        }
        self.held_back = None;
        match token.kind {
            Kind::OpenParen | Kind::OpenBracket => self.open += 1,
            Kind::CloseParen | Kind::CloseBracket => self.open = self.open.saturating_sub(1),
            _ => {}
        }
        self.push(token.kind, token.span);
    }
}
