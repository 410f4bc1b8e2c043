//! The usual shape of a signal, read straight on: nearly all signals of a big description have it.
//!
//! `signal NAME "title" in PLACE KIND = raw * NUMBER + NUMBER UNIT, range NUMBER..NUMBER`, each part but the name and the place there or not.
//! Whatever is not exactly so, a mistake above all, is left to the general parser from the beginning; nothing is told here. What is read here
//! comes out as the general parser would have read it.

use std::borrow::Cow;

use wirelore_bits::{ByteOrder, Ratio};
use wirelore_model::unit::fold_look_alike;

use super::algebra::{Operator, RAW, combined, constant};
use super::cursor::Cursor;
use super::number::is_pattern;
use super::place::byte_and_bit;
use super::signal::{begins_clause, kind_named};
use super::tree::{
    Anchor, ByteIndex, Exact, FlatPosition, Formula, Head, Integer, Kind, Piece, Place, Position, Signal, UnitText,
    Value,
};
use super::unit::run;
use crate::lex::{TokenKind, unescape};
use crate::{Span, Spanned};

/// Reads a signal into a list, from the word `signal` to the end of the statement, or to the comma of the first clause that is left to read.
#[inline]
pub(super) fn signal<'a>(begin: Cursor<'a>, signals: &mut Vec<Signal<'a>>) -> Option<Cursor<'a>> {
    let mut i = begin.next();
    let head = head(&mut i)?;
    take_word(&mut i, "in")?;
    let place = place(&mut i)?;
    let kind = kind(&mut i)?;
    let (value, unit) = value(&mut i)?;
    if !is_part_over(i) {
        return None;
    }
    let range = range(&mut i);
    signals.push(Signal { head, place: Some(place), kind, value, unit, range, extras: None, incomplete: false });
    Some(i)
}

/// Takes the leaf here, if it is of this kind.
#[inline]
fn take(i: &mut Cursor<'_>, kind: TokenKind) -> Option<Span> {
    let leaf = i.first().filter(|leaf| leaf.kind == kind)?;
    *i = i.next();
    Some(leaf.span)
}

/// Takes a certain word.
#[inline]
fn take_word(i: &mut Cursor<'_>, word: &str) -> Option<()> {
    i.is_word(word).then(|| *i = i.next())
}

/// Whether the statement is over, or a clause follows: a comma with a word behind it.
#[inline]
fn is_part_over(i: Cursor<'_>) -> bool {
    i.at_end() || (i.kind() == Some(TokenKind::Comma) && i.nth_kind(1) == Some(TokenKind::Word))
}

/// Name and title.
#[inline]
fn head<'a>(i: &mut Cursor<'a>) -> Option<Head<'a>> {
    let span = take(i, TokenKind::Word)?;
    let written = i.context.text(span);
    if !written.is_ascii() {
        return None;
    }
    let name = Spanned::new(Cow::Borrowed(written), span);
    let title = take(i, TokenKind::Text).map(|span| Spanned::new(unescape(i.context.text(span)), span));
    Some(Head { name, title, called: None, certainty: None })
}

/// A place of one piece.
#[inline]
fn place(i: &mut Cursor<'_>) -> Option<Place> {
    let begin = *i;
    let word = i.word();
    *i = i.next();
    let piece = match word {
        "bits" => {
            let (msb, lsb) = ends(i, position)?;
            Piece::Bits { msb, lsb }
        }
        "bit" => Piece::Bit(position(i)?),
        "bytes" => {
            let (msb, lsb) = ends(i, byte_index)?;
            Piece::Bytes { msb, lsb }
        }
        "byte" => Piece::Byte(byte_index(i)?),
        "lsb" => counted(Anchor::Lsb, i)?,
        "msb" => counted(Anchor::Msb, i)?,
        _ => return None,
    };
    let first = Spanned::new(piece, begin.span_to(*i));
    let order = byte_order(i);
    Some(Place { first, others: Vec::new(), order, span: begin.span_to(*i) })
}

/// `END..END`, or one end that counts for both.
#[inline]
fn ends<'a, T: Copy>(i: &mut Cursor<'a>, end: fn(&mut Cursor<'a>) -> Option<T>) -> Option<(T, T)> {
    let msb = end(i)?;
    match take(i, TokenKind::DotDot) {
        Some(_) => Some((msb, end(i)?)),
        None => Some((msb, msb)),
    }
}

/// BYTE.BIT
#[inline]
fn position(i: &mut Cursor<'_>) -> Option<Position> {
    let span = take(i, TokenKind::Number)?;
    let (byte, bit) = byte_and_bit(i.context.text(span))?;
    Some(Position { byte, bit, span })
}

/// A whole decimal number of a few digits.
#[inline]
fn integer(i: &mut Cursor<'_>) -> Option<Integer> {
    const MOST_DIGITS: usize = 9;
    let span = take(i, TokenKind::Number)?;
    let digits = i.context.text(span).as_bytes();
    // With a word right behind it, it may be a hexadecimal number without its `0x`.
    let is_plain = digits.len() <= MOST_DIGITS && digits.iter().all(u8::is_ascii_digit);
    if !is_plain || (i.kind() == Some(TokenKind::Word) && i.touches()) {
        return None;
    }
    let value = digits.iter().fold(0, |value, digit| value * 10 + u32::from(digit - b'0'));
    Some(Integer { value: value.into(), pattern: false, span })
}

#[inline]
fn byte_index(i: &mut Cursor<'_>) -> Option<ByteIndex> {
    integer(i).map(ByteIndex::Number)
}

/// `AT width N intel`
#[inline]
fn counted(anchor: Anchor, i: &mut Cursor<'_>) -> Option<Piece> {
    let is_position = i.first().is_some_and(|leaf| i.context.text(leaf.span).contains('.'));
    let at = if is_position { FlatPosition::Position(position(i)?) } else { FlatPosition::Flat(integer(i)?) };
    take_word(i, "width")?;
    let width = integer(i)?;
    Some(Piece::Counted { anchor, at, width, order: byte_order(i).map(|order| order.value) })
}

/// The byte order, if it stands here.
#[inline]
fn byte_order(i: &mut Cursor<'_>) -> Option<Spanned<ByteOrder>> {
    let order = match i.word() {
        "intel" => ByteOrder::Intel,
        "motorola" => ByteOrder::Motorola,
        _ => return None,
    };
    let span = i.span();
    *i = i.next();
    Some(Spanned::new(order, span))
}

/// The kind, if one stands here: of numbers only. `None` where another word does.
#[inline]
fn kind(i: &mut Cursor<'_>) -> Option<Option<Spanned<Kind>>> {
    if i.kind() != Some(TokenKind::Word) {
        return Some(None);
    }
    let kind = kind_named(i.word()).filter(|kind| !matches!(kind, Kind::Text(_)))?;
    let span = i.span();
    *i = i.next();
    Some(Some(Spanned::new(kind, span)))
}

/// `= FORMULA UNIT`, if it stands here.
#[inline]
fn value<'a>(i: &mut Cursor<'a>) -> Option<(Option<Value>, Option<Spanned<UnitText<'a>>>)> {
    if take(i, TokenKind::Equals).is_none() {
        return Some((None, None));
    }
    let formula = formula(i)?;
    Some((Some(Value::Formula(formula)), unit(i)?))
}

/// `raw`, `raw * NUMBER`, `raw / NUMBER`, with a number added or taken away behind it.
#[inline]
fn formula(i: &mut Cursor<'_>) -> Option<Formula> {
    let begin = i.span();
    take_word(i, "raw")?;
    let (mut line, mut span) = (RAW, begin);
    for operators in [
        [(TokenKind::Star, Operator::Multiply), (TokenKind::Slash, Operator::Divide)],
        [(TokenKind::Plus, Operator::Add), (TokenKind::Minus, Operator::Subtract)],
    ] {
        let Some((_, operator)) = operators.into_iter().find(|(sign, _)| i.kind() == Some(*sign)) else { continue };
        *i = i.next();
        let number = number(i)?;
        let whole = begin.to(number.span);
        line = combined(line, operator, constant(number.value), whole, number.span).ok()?;
        span = whole;
    }
    Some(Formula { line: Ok(line), mentions_raw: true, span })
}

/// A decimal number without a sign.
#[inline]
fn number(i: &mut Cursor<'_>) -> Option<Exact> {
    let span = take(i, TokenKind::Number)?;
    let written = i.context.text(span);
    if is_pattern(written) {
        return None;
    }
    Some(Exact { value: Ratio::from_decimal(written).ok()?, span })
}

/// The unit, if one stands here. `None` where something else does.
#[inline]
fn unit<'a>(i: &mut Cursor<'a>) -> Option<Option<Spanned<UnitText<'a>>>> {
    match i.kind() {
        Some(TokenKind::Word) if matches!(i.word(), "raw" | "x" | "X") || begins_clause(*i) => return None,
        Some(TokenKind::Word | TokenKind::Mark) => {}
        _ => return Some(None),
    }
    let behind = run(*i);
    let span = i.span_to(behind);
    let written = i.context.text(span);
    if !written.is_ascii() && written.chars().any(|c| fold_look_alike(c) != c) {
        return None;
    }
    *i = behind;
    Some(Some(Spanned::new(UnitText::Symbol(written.into()), span)))
}

/// `, range NUMBER..NUMBER`, if it stands here.
#[inline]
fn range(begin: &mut Cursor<'_>) -> Option<Spanned<(Ratio, Ratio)>> {
    let mut i = *begin;
    take(&mut i, TokenKind::Comma)?;
    let word = i;
    take_word(&mut i, "range")?;
    let low = signed_number(&mut i)?;
    take(&mut i, TokenKind::DotDot)?;
    let high = signed_number(&mut i)?;
    if !is_part_over(i) {
        return None;
    }
    *begin = i;
    Some(Spanned::new((low.value, high.value), word.span_to(i)))
}

/// A decimal number, with a sign or without.
#[inline]
fn signed_number(i: &mut Cursor<'_>) -> Option<Exact> {
    let Some(sign) = take(i, TokenKind::Minus) else { return number(i) };
    let Exact { value, span } = number(i)?;
    Some(Exact { value: value.checked_neg()?, span: sign.to(span) })
}
