//! The small parsers that all others are made of.

use std::borrow::Cow;

use nom::Parser;
use unicode_normalization::{UnicodeNormalization, is_nfc};

use super::cursor::{Cursor, Parsed, Problem, broken, elsewhere};
use super::tree::{Name, Text};
use crate::lex::{TokenKind, unescape};
use crate::{Diagnostic, Rule, Span, Spanned};
use wirelore_model::nearest_name;

/// A leaf of one kind.
pub(super) fn leaf<'a>(kind: TokenKind) -> impl Fn(Cursor<'a>) -> Parsed<'a, Span> + Copy {
    move |i| match i.first() {
        Some(leaf) if leaf.kind == kind => Ok((i.next(), leaf.span)),
        _ => elsewhere(),
    }
}

/// A certain word.
pub(super) fn word<'a>(expected: &'static str) -> impl Fn(Cursor<'a>) -> Parsed<'a, Span> + Copy {
    move |i| if i.word() == expected { Ok((i.next(), i.span())) } else { elsewhere() }
}

/// Two certain words.
pub(super) fn words<'a>(first: &'static str, second: &'static str) -> impl Fn(Cursor<'a>) -> Parsed<'a, Span> + Copy {
    move |i| {
        if i.word() == first && i.nth_word(1) == second {
            let behind = i.next().next();
            Ok((behind, i.span_to(behind)))
        } else {
            elsewhere()
        }
    }
}

/// A name, normalised to NFC.
#[inline]
pub(super) fn name(i: Cursor<'_>) -> Parsed<'_, Name<'_>> {
    let (behind, span) = leaf(TokenKind::Word)(i)?;
    let written = i.context.text(span);
    let is_normal = written.is_ascii() || is_nfc(written);
    let value = if is_normal { Cow::Borrowed(written) } else { Cow::Owned(written.nfc().collect()) };
    Ok((behind, Spanned::new(value, span)))
}

/// A text in quotes.
pub(super) fn text(i: Cursor<'_>) -> Parsed<'_, Text<'_>> {
    let (behind, span) = leaf(TokenKind::Text)(i)?;
    Ok((behind, Spanned::new(unescape(i.context.text(span)), span)))
}

/// `X, X, X` of anything that does not need more than one look to be told from a clause. Like nom's list, but a list of one, the usual
/// case, has no spare room: with tens of thousands of signals that room is most of the memory.
pub(super) fn comma_list<'a, T>(
    mut item: impl Parser<Cursor<'a>, Output = T, Error = Problem>,
) -> impl FnMut(Cursor<'a>) -> Parsed<'a, Vec<T>> {
    move |i| {
        let (mut i, first) = item.parse(i)?;
        let mut all = vec![first];
        while i.kind() == Some(TokenKind::Comma) {
            match item.parse(i.next()) {
                Ok((behind, next)) => {
                    all.push(next);
                    i = behind;
                }
                Err(nom::Err::Error(_)) => break,
                Err(problem) => return Err(problem),
            }
        }
        Ok((i, all))
    }
}

/// Something that must stand here: `what` says what, in words that go behind "expected".
pub(super) fn want<'a, T>(
    what: &'static str,
    mut parser: impl Parser<Cursor<'a>, Output = T, Error = Problem>,
) -> impl FnMut(Cursor<'a>) -> Parsed<'a, T> {
    move |i| match parser.parse(i) {
        Err(nom::Err::Error(_)) => broken(missing(i, what)),
        other => other,
    }
}

/// The same, with a way out.
pub(super) fn want_so<'a, T>(
    what: &'static str,
    help: &'static str,
    mut parser: impl Parser<Cursor<'a>, Output = T, Error = Problem>,
) -> impl FnMut(Cursor<'a>) -> Parsed<'a, T> {
    move |i| match parser.parse(i) {
        Err(nom::Err::Error(_)) => broken(missing(i, what).help(help)),
        other => other,
    }
}

/// A certain word that must stand here; a misspelt one is told, and taken for it.
pub(super) fn keyword<'a>(expected: &'static str, help: &'static str) -> impl Fn(Cursor<'a>) -> Parsed<'a, Span> {
    move |i| {
        if i.word() == expected {
            return Ok((i.next(), i.span()));
        }
        if nearest_name(i.word(), [expected]).is_none() {
            return broken(missing(i, &format!("`{expected}`")).help(help));
        }
        let site = i.site(i.span());
        let message = format!("expected `{expected}`, found `{}`", shortened(i.word()));
        i.context.report(
            Diagnostic::new(Rule::UnexpectedWord, site, message)
                .here(format!("did you mean `{expected}`?"))
                .fix(site, expected),
        );
        Ok((i.next(), i.span()))
    }
}

/// Nothing, or something else, stands where `what` should.
pub(super) fn missing(i: Cursor<'_>, what: &str) -> Diagnostic {
    let before = i.context.text(i.previous());
    if i.at_stop() {
        let place = i.site(i.previous().after());
        Diagnostic::new(Rule::MissingPart, place, format!("{what} is missing behind `{}`", shortened(before)))
            .here("here")
    } else {
        // `5x` is a number and a word to us, and one thing to whoever wrote it.
        let is_mixed =
            i.kind() == Some(TokenKind::Number) && i.nth_kind(1) == Some(TokenKind::Word) && i.next().touches();
        let span = if is_mixed { i.span_to(i.next().next()) } else { i.span() };
        let found = shortened(i.context.text(span));
        let message = Diagnostic::new(Rule::UnexpectedWord, i.site(span), format!("expected {what}, found `{found}`"))
            .here(format!("{what} goes here"));
        if is_mixed { message.help("a name begins with a letter or `_`") } else { message }
    }
}

/// At most so many characters of a piece of source text are worth repeating in a message.
const LONGEST_QUOTE: usize = 40;

/// A piece of source text for a message.
pub(super) fn shortened(text: &str) -> String {
    match text.char_indices().nth(LONGEST_QUOTE) {
        Some((at, _)) => format!("{}...", &text[..at]),
        None => text.to_owned(),
    }
}

/// One word of a table; a misspelt one is told, and read as what it was meant to be.
pub(super) fn one_of<'a, T: Copy>(
    what: &'static str,
    table: &'static [(&'static str, T)],
) -> impl Fn(Cursor<'a>) -> Parsed<'a, Spanned<T>> {
    move |i| {
        let written = i.word();
        let find = |wanted: &str| table.iter().find(|(word, _)| *word == wanted).map(|&(_, value)| value);
        if let Some(value) = find(written) {
            return Ok((i.next(), Spanned::new(value, i.span())));
        }
        let near = nearest_name(written, table.iter().map(|&(word, _)| word)).filter(|_| !written.is_empty());
        if let Some((near, value)) = near.and_then(|near| Some((near, find(near)?))) {
            let site = i.site(i.span());
            let message = format!("`{}` is not {what}", shortened(written));
            i.context.report(
                Diagnostic::new(Rule::UnexpectedWord, site, message)
                    .here(format!("did you mean `{near}`?"))
                    .fix(site, near),
            );
            return Ok((i.next(), Spanned::new(value, i.span())));
        }
        let all: Vec<_> = table.iter().map(|(word, _)| format!("`{word}`")).collect();
        broken(missing(i, what).help(format!("the words to choose from are {}", all.join(", "))))
    }
}
