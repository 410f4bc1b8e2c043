//! One token after the other. Most are found by a look at bytes; nom reads the others.

use nom::bytes::complete::take_while1;
use nom::character::complete::anychar;
use nom::combinator::value;
use nom::{IResult, Parser};
use unicode_normalization::char::is_combining_mark;
use wirelore_model::unit::fold_look_alike;

use super::{MOST_MESSAGES, Token, TokenKind, plain, text};
use crate::{Diagnostic, FileId, Rule, Site, Span};

/// Walks over a text; without `BLANKS` it leaves out the spaces, but for those behind characters that mean nothing.
pub(super) struct Scanner<'a, S, const BLANKS: bool> {
    text: &'a str,
    file: FileId,
    sink: S,
    /// Characters that mean nothing, up to here.
    wrong: Option<Span>,
    messages: Vec<Diagnostic>,
}

impl<'a, S: FnMut(Token), const BLANKS: bool> Scanner<'a, S, BLANKS> {
    pub(super) fn new(text: &'a str, file: FileId, sink: S) -> Self {
        Self { text, file, sink, wrong: None, messages: Vec::new() }
    }

    pub(super) fn run(mut self) -> Vec<Diagnostic> {
        let text = self.text;
        let mut at =
            if text.starts_with('\u{FEFF}') { self.push(TokenKind::Blank, 0, '\u{FEFF}'.len_utf8()) } else { 0 };
        while at < text.len() {
            if !BLANKS && text.as_bytes()[at] == b' ' && self.wrong.is_none() {
                at += 1;
                continue;
            }
            at = match plain::token(&text.as_bytes()[at..]) {
                Some((length, kind)) => self.push(kind, at, at + length),
                None => self.push_other(at),
            };
        }
        self.end_wrong();
        self.messages
    }

    /// Hands a token on; gives the place behind it.
    #[inline]
    fn push(&mut self, kind: TokenKind, start: usize, end: usize) -> usize {
        if self.wrong.is_some() {
            self.end_wrong();
        }
        (self.sink)(Token { kind, span: Span::new(start as u32, end as u32) });
        end
    }

    /// A token that takes more than a look at bytes; gives the place behind it.
    fn push_other(&mut self, start: usize) -> usize {
        let rest = &self.text[start..];
        // Each branch of `token` takes at least one character; the fallback keeps the loop going whatever happens.
        let (behind, kind) = token(rest).unwrap_or(("", TokenKind::Wrong));
        let end = self.text.len() - behind.len();
        let span = Span::new(start as u32, end as u32);
        let found = &self.text[start..end];
        match kind {
            TokenKind::Wrong if meant_instead(found).is_none() => {
                self.wrong = Some(self.wrong.map_or(span, |wrong| wrong.to(span)));
                return end;
            }
            TokenKind::Wrong => {
                self.end_wrong();
                self.push_meant(span);
                return end;
            }
            TokenKind::Text => {
                self.end_wrong();
                let mistakes = text::mistakes(found, Site { file: self.file, span });
                self.complain(mistakes);
            }
            _ => {}
        }
        self.push(kind, start, end)
    }

    /// A character that can only mean one of ours: told, and taken for it.
    fn push_meant(&mut self, span: Span) {
        let site = Site { file: self.file, span };
        let found = &self.text[span.range()];
        let Some((kind, meant)) = meant_instead(found) else { return };
        (self.sink)(Token { kind, span });
        let number = found.chars().next().map_or(0, u32::from);
        let message = Diagnostic::new(Rule::UnexpectedCharacter, site, format!("`{found}` is not the sign `{meant}`"))
            .here(format!("U+{number:04X}"))
            .help(format!("type `{meant}`: text processors and documents put look-alikes in its place"))
            .fix(site, meant);
        self.complain([message]);
    }

    /// The end of characters that mean nothing: one token and one message for a run of them.
    fn end_wrong(&mut self) {
        let Some(span) = self.wrong.take() else { return };
        (self.sink)(Token { kind: TokenKind::Wrong, span });
        let found = &self.text[span.range()];
        let said = if found.chars().nth(1).is_some() {
            "these characters mean nothing here".to_owned()
        } else {
            format!("{} means nothing here", shown(found))
        };
        let help = match found {
            ";" => "a statement ends with its line: no sign is needed",
            _ => {
                "names are made of letters, digits and `_`; anything else can stand in a text between quotes or in a comment"
            }
        };
        let site = Site { file: self.file, span };
        self.complain([Diagnostic::new(Rule::UnexpectedCharacter, site, said).here("take it away").help(help)]);
    }

    fn complain(&mut self, messages: impl IntoIterator<Item = Diagnostic>) {
        // One more than are shown: it tells that some are not.
        let room = (MOST_MESSAGES + 1).saturating_sub(self.messages.len());
        self.messages.extend(messages.into_iter().take(room));
    }
}

/// A character as a message can show it: those that cannot be seen by their number.
fn shown(found: &str) -> String {
    let Some(c) = found.chars().next() else { return String::new() };
    if c.is_control() || c.is_whitespace() || is_invisible(c) {
        format!("the invisible character U+{:04X}", u32::from(c))
    } else if c.is_ascii() {
        format!("`{c}`")
    } else {
        format!("`{c}` (U+{:04X})", u32::from(c))
    }
}

/// Format characters: zero widths, joiners, marks of direction.
fn is_invisible(c: char) -> bool {
    matches!(c, '\u{00AD}' | '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{206F}' | '\u{FEFF}')
}

/// Signs of other keyboards and of text processors that can only mean one of ours.
fn meant_instead(found: &str) -> Option<(TokenKind, &'static str)> {
    Some(match found {
        "\u{2013}" | "\u{2212}" | "\u{2012}" | "\u{2010}" | "\u{2011}" => (TokenKind::Minus, "-"),
        "\u{00D7}" | "\u{2217}" => (TokenKind::Star, "*"),
        "\u{00F7}" => (TokenKind::Slash, "/"),
        "\u{2026}" | "\u{2025}" => (TokenKind::DotDot, ".."),
        "\u{2192}" => (TokenKind::Arrow, "->"),
        "\u{FF0C}" | "\u{3001}" => (TokenKind::Comma, ","),
        "\u{FF1A}" => (TokenKind::Colon, ":"),
        _ => return None,
    })
}

/// The next token, where it takes more than a look at bytes.
fn token(input: &str) -> IResult<&str, TokenKind> {
    match input.as_bytes().first() {
        Some(b'a'..=b'z' | b'A'..=b'Z' | b'_') => word(input),
        Some(b'"') => Ok((text::quoted(input), TokenKind::Text)),
        _ => other(input),
    }
}

fn is_word_part(c: char) -> bool {
    c.is_ascii_alphanumeric() || c == '_' || (!c.is_ascii() && (c.is_alphabetic() || is_combining_mark(c)))
}

fn word(input: &str) -> IResult<&str, TokenKind> {
    value(TokenKind::Word, take_while1(is_word_part)).parse(input)
}

/// Everything beyond ASCII, and what means nothing.
fn other(input: &str) -> IResult<&str, TokenKind> {
    let (behind, first) = anychar(input)?;
    match first {
        '\u{201C}' | '\u{201D}' | '\u{201E}' | '\u{00AB}' => {
            Ok(text::wrongly_quoted(input).map_or((behind, TokenKind::Wrong), |behind| (behind, TokenKind::Text)))
        }
        // The degree's look-alikes count as letters (º, ᵒ), yet no name begins with one.
        'º' | 'ᵒ' => Ok((behind, TokenKind::Mark)),
        c if c.is_alphabetic() => word(input),
        // The blanks of other typesetting: nobody sees the difference.
        '\u{00A0}' | '\u{1680}' | '\u{2000}'..='\u{200A}' | '\u{202F}' | '\u{205F}' | '\u{3000}' => {
            Ok((behind, TokenKind::Blank))
        }
        c if is_mark(c) => Ok((behind, TokenKind::Mark)),
        _ => Ok((behind, TokenKind::Wrong)),
    }
}

/// Characters that units are written with, and what looks like them.
fn is_mark(c: char) -> bool {
    matches!(c, '°' | '·' | '²' | '³' | '¹' | '‰' | '′' | '″' | '\u{2070}'..='\u{207F}' | '\u{2080}'..='\u{208E}')
        || fold_look_alike(c) != c
}
