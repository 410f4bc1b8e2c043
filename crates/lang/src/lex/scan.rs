//! One token after the other, with nom over the rest of the text.

use nom::branch::alt;
use nom::bytes::complete::{tag, take_till, take_while, take_while1};
use nom::character::complete::{anychar, digit1, one_of};
use nom::combinator::{opt, recognize, value};
use nom::sequence::{pair, preceded};
use nom::{IResult, Parser};
use unicode_normalization::char::is_combining_mark;
use wirelore_model::unit::fold_look_alike;

use super::{MOST_MESSAGES, Token, TokenKind, text};
use crate::{Diagnostic, FileId, Rule, Site, Span};

/// Walks over a text.
pub(super) struct Scanner<'a, S> {
    text: &'a str,
    file: FileId,
    sink: S,
    /// Characters that mean nothing, up to here.
    wrong: Option<Span>,
    messages: Vec<Diagnostic>,
}

impl<'a, S: FnMut(Token)> Scanner<'a, S> {
    pub(super) fn new(text: &'a str, file: FileId, sink: S) -> Self {
        Self { text, file, sink, wrong: None, messages: Vec::new() }
    }

    pub(super) fn run(mut self) -> Vec<Diagnostic> {
        let mut rest = self.text;
        if let Ok((behind, _)) = tag::<_, _, nom::error::Error<&str>>("\u{FEFF}").parse(rest) {
            self.push(TokenKind::Blank, rest, behind);
            rest = behind;
        }
        while !rest.is_empty() {
            // Each branch of `token` takes at least one character; the fallback keeps the loop going whatever happens.
            let (behind, kind) = token(rest).unwrap_or(("", TokenKind::Wrong));
            self.push(kind, rest, behind);
            rest = behind;
        }
        self.end_wrong();
        self.messages
    }

    #[inline]
    fn push(&mut self, kind: TokenKind, from: &str, behind: &str) {
        let start = self.text.len() - from.len();
        let end = self.text.len() - behind.len();
        let span = Span::new(start as u32, end as u32);
        if kind == TokenKind::Wrong && meant_instead(&self.text[start..end]).is_none() {
            self.wrong = Some(self.wrong.map_or(span, |wrong| wrong.to(span)));
            return;
        }
        if self.wrong.is_some() {
            self.end_wrong();
        }
        match kind {
            TokenKind::Wrong => return self.push_meant(span),
            TokenKind::Text => {
                let site = Site { file: self.file, span };
                let found = text::mistakes(&self.text[start..end], site);
                self.complain(found);
            }
            _ => {}
        }
        (self.sink)(Token { kind, span });
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

/// The next token.
fn token(input: &str) -> IResult<&str, TokenKind> {
    match input.as_bytes().first() {
        Some(b' ' | b'\t') => Ok((&input[ascii_run(input, |byte| byte == b' ' || byte == b'\t')..], TokenKind::Blank)),
        Some(b'a'..=b'z' | b'A'..=b'Z' | b'_') => word(input),
        Some(b'0'..=b'9') => number(input),
        Some(b'\n' | b'\r') => value(TokenKind::LineEnd, alt((tag("\r\n"), tag("\n"), tag("\r")))).parse(input),
        Some(b'#') => comment(input),
        Some(b'"') => text::quoted(input),
        Some(byte) if byte.is_ascii() => sign(input),
        _ => other(input),
    }
}

fn is_word_part(c: char) -> bool {
    c.is_ascii_alphanumeric() || c == '_' || (!c.is_ascii() && (c.is_alphabetic() || is_combining_mark(c)))
}

fn word(input: &str) -> IResult<&str, TokenKind> {
    // Nearly all words are ASCII, and bytes are looked through faster than characters.
    let plain = ascii_run(input, |byte| byte.is_ascii_alphanumeric() || byte == b'_');
    match input.as_bytes().get(plain) {
        Some(byte) if !byte.is_ascii() => value(TokenKind::Word, take_while1(is_word_part)).parse(input),
        _ => Ok((&input[plain..], TokenKind::Word)),
    }
}

/// How many bytes at the start are such ASCII characters.
fn ascii_run(input: &str, is_part: impl Fn(u8) -> bool) -> usize {
    input.bytes().position(|byte| !(byte.is_ascii() && is_part(byte))).unwrap_or(input.len())
}

/// `26`, `0x1A`, `0b1_1010`, `0.05`, `1e-3`. A sign is never part of it, and neither is the first dot of `0..6`.
fn number(input: &str) -> IResult<&str, TokenKind> {
    if let Some(plain) = plain_digits(input) {
        return Ok((&input[plain..], TokenKind::Number));
    }
    let hexadecimal = preceded(pair(tag("0"), one_of("xX")), take_while(|c: char| c.is_ascii_hexdigit() || c == '_'));
    let binary = preceded(pair(tag("0"), one_of("bB")), take_while(|c: char| c == '0' || c == '1' || c == '_'));
    value(TokenKind::Number, alt((hexadecimal, binary, decimal))).parse(input)
}

/// The length of a number that is nothing but digits: most are.
fn plain_digits(input: &str) -> Option<usize> {
    let plain = ascii_run(input, |byte| byte.is_ascii_digit());
    match input.as_bytes()[plain..] {
        [b'_' | b'.' | b'e' | b'E' | b'x' | b'X' | b'b' | b'B', ..] => None,
        _ => Some(plain),
    }
}

fn decimal(input: &str) -> IResult<&str, &str> {
    let digits = |input| take_while1(|c: char| c.is_ascii_digit() || c == '_').parse(input);
    let exponent = (one_of("eE"), opt(one_of("+-")), digit1);
    recognize((digits, opt(pair(tag("."), digit1)), opt(exponent))).parse(input)
}

/// Two signs make a note; one, or three and more (a ruled line), a comment.
fn comment(input: &str) -> IResult<&str, TokenKind> {
    let kind = if input.starts_with("##") && !input.starts_with("###") { TokenKind::Note } else { TokenKind::Comment };
    value(kind, take_till(|c| c == '\n' || c == '\r')).parse(input)
}

fn sign(input: &str) -> IResult<&str, TokenKind> {
    use TokenKind as Kind;
    let (behind, first) = anychar(input)?;
    let kind = match first {
        ',' => Kind::Comma,
        ':' => Kind::Colon,
        '=' => Kind::Equals,
        '{' => Kind::OpenBrace,
        '}' => Kind::CloseBrace,
        '(' => Kind::OpenParen,
        ')' => Kind::CloseParen,
        '[' => Kind::OpenBracket,
        ']' => Kind::CloseBracket,
        '+' => Kind::Plus,
        '-' if behind.starts_with('>') => return Ok((&behind[1..], Kind::Arrow)),
        '-' => Kind::Minus,
        '*' => Kind::Star,
        '/' => Kind::Slash,
        '.' if behind.starts_with('.') => return Ok((&behind[1..], Kind::DotDot)),
        '.' => Kind::Dot,
        '%' | '^' | '\'' => Kind::Mark,
        _ => Kind::Wrong,
    };
    Ok((behind, kind))
}

/// Everything beyond ASCII.
fn other(input: &str) -> IResult<&str, TokenKind> {
    let (behind, first) = anychar(input)?;
    match first {
        '\u{201C}' | '\u{201D}' | '\u{201E}' | '\u{00AB}' => {
            Ok(text::wrongly_quoted(input).unwrap_or((behind, TokenKind::Wrong)))
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
