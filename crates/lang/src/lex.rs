//! Text to tokens. Every byte of the text lies in exactly one token, blanks and comments too, so that a formatter can keep them.
//!
//! Nothing fails here: characters that the language has no use for become [`TokenKind::Wrong`], with one message per run.

mod plain;
mod scan;
mod text;

#[cfg(test)]
mod tests;

pub(crate) use text::unescape;

use crate::{Diagnostic, FileId, Span};

/// After so many messages the rest of a file is not worth a look.
pub(crate) const MOST_MESSAGES: usize = 500;

/// A token.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Token {
    /// What it is.
    pub kind: TokenKind,
    /// Where it stands.
    pub span: Span,
}

/// The kinds of token.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TokenKind {
    /// Blanks inside a line; the byte order mark at the start of a file.
    Blank,
    /// The end of a line.
    LineEnd,
    /// `# ...`, and `###` with any more of them.
    Comment,
    /// `## ...`
    Note,
    /// A name or a keyword: which of the two, only its neighbours tell.
    Word,
    /// A number without a sign.
    Number,
    /// A text in quotes; without the closing one where it is missing.
    Text,
    /// `,`
    Comma,
    /// `:`
    Colon,
    /// `=`
    Equals,
    /// `{`
    OpenBrace,
    /// `}`
    CloseBrace,
    /// `(`
    OpenParen,
    /// `)`
    CloseParen,
    /// `[`
    OpenBracket,
    /// `]`
    CloseBracket,
    /// `+`
    Plus,
    /// `-`
    Minus,
    /// `*`
    Star,
    /// `/`
    Slash,
    /// `.`
    Dot,
    /// `..`
    DotDot,
    /// `->`
    Arrow,
    /// A character that only units are written with: `%`, `°`, `·`, `²`, `^`.
    Mark,
    /// Characters that the language has no use for.
    Wrong,
}

impl TokenKind {
    /// Whether it counts, and neither opens, closes nor ends anything.
    #[inline]
    pub(crate) fn is_plain(self) -> bool {
        use TokenKind as Kind;
        let is_bracket = matches!(
            self,
            Kind::OpenBrace
                | Kind::CloseBrace
                | Kind::OpenParen
                | Kind::CloseParen
                | Kind::OpenBracket
                | Kind::CloseBracket
        );
        !is_bracket && !self.is_trivia() && !matches!(self, Kind::LineEnd | Kind::Note)
    }

    /// Whether it says nothing: blanks, comments, characters that were complained about.
    #[must_use]
    pub fn is_trivia(self) -> bool {
        matches!(self, Self::Blank | Self::Comment | Self::Wrong)
    }
}

/// Cuts a text into tokens.
///
/// The text must be shorter than 4 GiB; [`crate::syntax::Script::new`] refuses longer ones (and much shorter ones already) before.
#[must_use]
pub fn lex(text: &str, file: FileId) -> (Vec<Token>, Vec<Diagnostic>) {
    let mut tokens = Vec::with_capacity(text.len() / 3);
    let messages = scan::Scanner::<_, true>::new(text, file, |token| tokens.push(token)).run();
    (tokens, messages)
}

/// Cuts a text into tokens and hands on each that may count, for those who need not keep them.
pub(crate) fn each_token(text: &str, file: FileId, sink: impl FnMut(Token)) -> Vec<Diagnostic> {
    scan::Scanner::<_, false>::new(text, file, sink).run()
}
