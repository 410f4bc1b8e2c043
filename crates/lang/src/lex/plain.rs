//! Tokens that begin with an ASCII character, byte by byte: nearly all of them, and a big file has a million.

use super::TokenKind;

/// The token at the start of `rest`: its length in bytes and its kind. `None` where a look at characters, or at what the token says, is needed:
/// texts with escapes or without their end, words with other letters than ASCII, everything beyond ASCII, and what means nothing.
#[inline]
pub(super) fn token(rest: &[u8]) -> Option<(usize, TokenKind)> {
    use TokenKind as Kind;
    let one = |kind| Some((1, kind));
    let second = rest.get(1).copied();
    match *rest.first()? {
        b' ' | b'\t' => Some((run(rest, 1, |byte| matches!(byte, b' ' | b'\t')), Kind::Blank)),
        b'a'..=b'z' | b'A'..=b'Z' | b'_' => word(rest),
        b'0'..=b'9' => Some((number(rest), Kind::Number)),
        b'\n' => one(Kind::LineEnd),
        b'\r' => Some((if second == Some(b'\n') { 2 } else { 1 }, Kind::LineEnd)),
        b'#' => Some(comment(rest)),
        b',' => one(Kind::Comma),
        b':' => one(Kind::Colon),
        b'=' => one(Kind::Equals),
        b'{' => one(Kind::OpenBrace),
        b'}' => one(Kind::CloseBrace),
        b'(' => one(Kind::OpenParen),
        b')' => one(Kind::CloseParen),
        b'[' => one(Kind::OpenBracket),
        b']' => one(Kind::CloseBracket),
        b'+' => one(Kind::Plus),
        b'-' if second == Some(b'>') => Some((2, Kind::Arrow)),
        b'-' => one(Kind::Minus),
        b'*' => one(Kind::Star),
        b'/' => one(Kind::Slash),
        b'.' if second == Some(b'.') => Some((2, Kind::DotDot)),
        b'.' => one(Kind::Dot),
        b'%' | b'^' | b'\'' => one(Kind::Mark),
        b'"' => text(rest),
        _ => None,
    }
}

/// The end of a run of such bytes that begins at `from` or before it.
#[inline]
fn run(rest: &[u8], from: usize, is_part: impl Fn(u8) -> bool) -> usize {
    let behind = rest.get(from..).unwrap_or_default();
    from + behind.iter().position(|&byte| !is_part(byte)).unwrap_or(behind.len())
}

/// Which bytes an ASCII word is made of.
const WORD_PARTS: [bool; 256] = {
    let mut parts = [false; 256];
    let mut byte = 0;
    while byte < 128 {
        parts[byte as usize] = (byte as u8).is_ascii_alphanumeric() || byte as u8 == b'_';
        byte += 1;
    }
    parts
};

/// A text that says what is written.
fn text(rest: &[u8]) -> Option<(usize, TokenKind)> {
    let inside = rest.get(1..).unwrap_or_default();
    let end = inside.iter().position(|byte| matches!(byte, b'"' | b'\\' | b'\n' | b'\r'))?;
    (inside[end] == b'"').then_some((end + 2, TokenKind::Text))
}

#[inline]
fn word(rest: &[u8]) -> Option<(usize, TokenKind)> {
    let end = run(rest, 1, |byte| WORD_PARTS[usize::from(byte)]);
    match rest.get(end) {
        Some(byte) if !byte.is_ascii() => None,
        _ => Some((end, TokenKind::Word)),
    }
}

/// `26`, `0x1A`, `0b1_1010`, `0.05`, `1e-3`. A sign is never part of it, and neither is the first dot of `0..6`.
#[inline]
fn number(rest: &[u8]) -> usize {
    let end = run(rest, 1, |byte| byte.is_ascii_digit());
    match rest.get(end) {
        Some(b'x' | b'X') if rest[..end] == *b"0" => run(rest, 2, |byte| byte.is_ascii_hexdigit() || byte == b'_'),
        Some(b'b' | b'B') if rest[..end] == *b"0" => run(rest, 2, |byte| matches!(byte, b'0' | b'1' | b'_')),
        Some(b'_' | b'.' | b'e' | b'E') => decimal(rest, end),
        _ => end,
    }
}

/// A decimal number of which the first digits end at `end`.
fn decimal(rest: &[u8], end: usize) -> usize {
    let is_digit = |at: usize| rest.get(at).is_some_and(u8::is_ascii_digit);
    let digits = |from: usize| run(rest, from, |byte| byte.is_ascii_digit());
    let mut end = run(rest, end, |byte| byte.is_ascii_digit() || byte == b'_');
    if rest.get(end) == Some(&b'.') && is_digit(end + 1) {
        end = digits(end + 1);
    }
    if let Some(b'e' | b'E') = rest.get(end) {
        let signed = end + 1 + usize::from(matches!(rest.get(end + 1), Some(b'+' | b'-')));
        if is_digit(signed) {
            end = digits(signed);
        }
    }
    end
}

/// Two signs make a note; one, or three and more (a ruled line), a comment.
fn comment(rest: &[u8]) -> (usize, TokenKind) {
    let kind = if rest.starts_with(b"##") && !rest.starts_with(b"###") { TokenKind::Note } else { TokenKind::Comment };
    (memchr::memchr2(b'\n', b'\r', rest).unwrap_or(rest.len()), kind)
}
