//! Texts in quotes.

use std::borrow::Cow;

use crate::{Diagnostic, Rule, Site, Span};

/// `"..."`, or up to where the line ends: what is behind it.
pub(super) fn quoted(input: &str) -> &str {
    let inside = closing(input.as_bytes());
    match input[inside..].strip_prefix('"') {
        Some(behind) => behind,
        None => &input[unclosed_length(&input[..inside])..],
    }
}

/// Where the closing quote is, or else the end of the line.
fn closing(input: &[u8]) -> usize {
    let mut at = 1;
    while let Some(byte) = input.get(at) {
        let next = input.get(at + 1);
        at += match byte {
            b'"' | b'\n' | b'\r' => return at,
            b'\\' if next.is_some_and(|next| !matches!(next, b'\n' | b'\r')) => 2,
            _ => 1,
        };
    }
    input.len()
}

/// How far a text without its closing quote goes: to the end of the line, but the brace that opens a block there still does so, or
/// everything inside the block would be complained about.
fn unclosed_length(line: &str) -> usize {
    let bare = line.trim_end();
    let bare = bare.strip_suffix('{').map_or(bare, str::trim_end);
    bare.len().max(1)
}

/// A text in wrong quotes is looked for no further than this, in bytes.
const LONGEST_WRONG: usize = 200;

/// A text in the quotes of a text processor, if the closing one stands on the same line.
pub(super) fn wrongly_quoted(input: &str) -> Option<&str> {
    let mut characters = input.char_indices();
    characters.next()?;
    for (at, c) in characters {
        match c {
            '\n' | '\r' => return None,
            _ if at > LONGEST_WRONG => return None,
            '\u{201C}' | '\u{201D}' | '\u{00BB}' | '"' => return Some(&input[at + c.len_utf8()..]),
            _ => {}
        }
    }
    None
}

/// The quotes at the two ends of a text token, as byte lengths; 0 where there is none.
fn quotes(token: &str) -> (usize, usize) {
    let is_quote = |c: &char| matches!(c, '"' | '\u{201C}' | '\u{201D}' | '\u{201E}' | '\u{00AB}' | '\u{00BB}');
    let open = token.chars().next().filter(is_quote).map_or(0, char::len_utf8);
    let inner = &token[open..];
    let close = if is_closed(token) { inner.chars().next_back().filter(is_quote).map_or(0, char::len_utf8) } else { 0 };
    (open, close)
}

/// Whether the closing quote is there (and not part of an escape).
fn is_closed(token: &str) -> bool {
    let Some(inner) = token.strip_prefix('"') else { return true };
    let Some(before) = inner.strip_suffix('"') else { return false };
    before.bytes().rev().take_while(|&byte| byte == b'\\').count() % 2 == 0
}

/// What is wrong with a text token.
pub(super) fn mistakes(token: &str, site: Site) -> Vec<Diagnostic> {
    let mut found = Vec::new();
    if !token.starts_with('"') {
        let (open, close) = quotes(token);
        let plain = format!("\"{}\"", &token[open..token.len() - close]);
        let message =
            Diagnostic::new(Rule::UnexpectedCharacter, site, "these are not the quotes that a text stands in")
                .help("type `\"`: text processors put other quotes in its place")
                .fix(site, plain);
        found.push(message);
    } else if !is_closed(token) {
        let message = Diagnostic::new(Rule::UnclosedText, site, "the closing quote of this text is missing")
            .here("goes on to the end of the line")
            .help("put `\"` where the text ends; a line break inside is written `\\n`");
        found.push(message);
    }
    if token.contains('\\') {
        decode(token, |escape, why| {
            let start = site.span.start + escape.start;
            let place = Site { file: site.file, span: Span::new(start, site.span.start + escape.end) };
            let shown = &token[escape.range()];
            let message = Diagnostic::new(Rule::BadEscape, place, format!("`{shown}` {why}")).help(
                "the escapes are `\\\"`, `\\\\`, `\\n`, `\\t` and `\\u{1F600}`; a backslash itself is written `\\\\`",
            );
            found.push(message);
        });
    }
    found
}

/// What a text token says.
#[inline]
pub(crate) fn unescape(token: &str) -> Cow<'_, str> {
    match token.as_bytes() {
        [b'"', said @ .., b'"'] if !said.contains(&b'\\') => token[1..token.len() - 1].into(),
        _ => unescape_any(token),
    }
}

#[inline(never)]
fn unescape_any(token: &str) -> Cow<'_, str> {
    if token.contains('\\') {
        return decode(token, |_, _| {}).into();
    }
    let (open, close) = quotes(token);
    token[open..token.len() - close].into()
}

/// Resolves the escapes; bad ones are told and left as they stand.
fn decode(token: &str, mut bad: impl FnMut(Span, &str)) -> String {
    let (open, close) = quotes(token);
    let inner = &token[open..token.len() - close];
    let mut said = String::with_capacity(inner.len());
    let mut rest = inner;
    while let Some(at) = rest.find('\\') {
        said.push_str(&rest[..at]);
        let start = open + (inner.len() - rest.len()) + at;
        let (length, result) = escape(&rest[at..]);
        match result {
            Ok(c) => said.push(c),
            Err(why) => {
                bad(Span::new(start as u32, (start + length) as u32), why);
                said.push_str(&rest[at..at + length]);
            }
        }
        rest = &rest[at + length..];
    }
    said.push_str(rest);
    said
}

/// One escape at the start of a text: its length in bytes, and the character.
fn escape(text: &str) -> (usize, Result<char, &'static str>) {
    let mut characters = text.chars();
    characters.next();
    match characters.next() {
        Some('n') => (2, Ok('\n')),
        Some('t') => (2, Ok('\t')),
        Some(c @ ('"' | '\\')) => (2, Ok(c)),
        Some('u') => unicode_escape(text),
        Some(other) => (1 + other.len_utf8(), Err("is not an escape")),
        None => (1, Err("is not an escape")),
    }
}

/// `\u{...}`: one to six hexadecimal digits that number a character.
fn unicode_escape(text: &str) -> (usize, Result<char, &'static str>) {
    let Some(behind) = text.strip_prefix("\\u{") else {
        return (2, Err("lacks the braces around the character's number"));
    };
    let digits = behind.bytes().take_while(u8::is_ascii_hexdigit).count();
    let length = 3 + digits;
    if !behind[digits..].starts_with('}') {
        return (length, Err("lacks the closing brace"));
    }
    let number = (1..=6).contains(&digits).then(|| u32::from_str_radix(&behind[..digits], 16).ok()).flatten();
    (length + 1, number.and_then(char::from_u32).ok_or("is not the number of a character"))
}
