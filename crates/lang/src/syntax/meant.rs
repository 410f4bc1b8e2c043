//! Slips that leave no doubt about what was meant: each is told, with the edit that mends it, and read as meant.

use super::basic::leaf;
use super::cursor::{Cursor, Parsed};
use super::tree::Integer;
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span};

/// Whether the sign between two ends is here, or what is written in its place: `5.3-4.0`, `0 to 300`.
pub(super) fn at_dots(i: Cursor<'_>) -> bool {
    i.kind() == Some(TokenKind::DotDot) || at_other_dots(i)
}

fn at_other_dots(i: Cursor<'_>) -> bool {
    let is_sign = i.kind() == Some(TokenKind::Minus) || i.word() == "to";
    let is_number = matches!(i.nth_kind(1), Some(TokenKind::Number | TokenKind::Minus));
    is_sign && (is_number || matches!(i.nth_word(1), "last" | "end"))
}

/// The `..` between two ends.
pub(super) fn dots(i: Cursor<'_>) -> Parsed<'_, Span> {
    if !at_other_dots(i) {
        return leaf(TokenKind::DotDot)(i);
    }
    let found = i.context.text(i.span());
    let message = Diagnostic::new(Rule::UnexpectedWord, i.site(i.span()), format!("expected `..`, found `{found}`"))
        .here("put `..` here");
    let between = Span::new(i.previous().end, i.next().span().start);
    i.context.report(message.help("the two ends of a span are joined by `..`").fix(i.site(between), ".."));
    Ok((i.next(), i.span()))
}

/// Behind the word here, and behind an `=` or `:` that has no business there.
pub(super) fn over_equals(i: Cursor<'_>) -> Cursor<'_> {
    let sign = i.next();
    let is_number = matches!(sign.nth_kind(1), Some(TokenKind::Number | TokenKind::Minus | TokenKind::Word));
    if !matches!(sign.kind(), Some(TokenKind::Equals | TokenKind::Colon)) || !is_number {
        return sign;
    }
    let found = sign.context.text(sign.span());
    let message = Diagnostic::new(
        Rule::UnexpectedWord,
        sign.site(sign.span()),
        format!("no `{found}` stands behind `{}`", i.word()),
    )
    .here("take this away")
    .fix(sign.site(Span::new(i.span().end, sign.next().span().start)), " ");
    sign.context.report(message);
    sign.next()
}

/// A hexadecimal number has at most so many digits: 64 bits.
const MOST_DIGITS: usize = 16;

/// `2F1`, `2E1`, `0F`: a number that can only be hexadecimal, without its `0x`.
pub(super) fn bare_hexadecimal(i: Cursor<'_>) -> Option<(Cursor<'_>, Integer)> {
    if i.kind() != Some(TokenKind::Number) {
        return None;
    }
    let second = i.next();
    let goes_on = second.kind() == Some(TokenKind::Word) && second.touches();
    let behind = if goes_on { second.next() } else { second };
    as_hexadecimal(i, behind)
}

/// `FF`, `F1`: a word that can be a hexadecimal number, for places where no word can stand.
pub(super) fn bare_hexadecimal_word(i: Cursor<'_>) -> Option<(Cursor<'_>, Integer)> {
    if i.kind() == Some(TokenKind::Word) { as_hexadecimal(i, i.next()) } else { None }
}

fn as_hexadecimal<'a>(i: Cursor<'a>, behind: Cursor<'a>) -> Option<(Cursor<'a>, Integer)> {
    let span = i.span_to(behind);
    let written = i.context.text(span);
    let has_letter = written.bytes().any(|byte| byte.is_ascii_alphabetic());
    let is_binary = matches!(written.as_bytes(), [b'0', b'b' | b'B', b'0' | b'1', rest @ ..] if rest.iter().all(|digit| matches!(digit, b'0' | b'1')));
    if !has_letter || is_binary || written.len() > MOST_DIGITS || !written.bytes().all(|byte| byte.is_ascii_hexdigit())
    {
        return None;
    }
    let value = i128::from_str_radix(written, 16).ok()?;
    let site = i.site(span);
    let read_as = format!("0x{written}");
    let message = Diagnostic::new(Rule::BadNumber, site, format!("`{written}` is not a decimal number"))
        .here("hexadecimal?")
        .help(format!("hexadecimal numbers begin with `0x`: write `{read_as}`"))
        .fix(site, read_as);
    i.context.report(message);
    Some((behind, Integer { value, pattern: true, span }))
}
