//! Places: which bits of the payload.

use nom::Parser;
use nom::combinator::opt;
use nom::sequence::preceded;
use wirelore_bits::ByteOrder;

use super::basic::{keyword, leaf, shortened, want, want_so, word};
use super::cursor::{Cursor, Parsed, broken, elsewhere};
use super::meant::{at_dots, dots};
use super::number::integer;
use super::tree::{Anchor, ByteIndex, FlatPosition, Piece, Place, Position};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span, Spanned};

/// Whether a place begins here.
pub(super) fn begins_place(i: Cursor<'_>) -> bool {
    match i.word() {
        "bit" | "bits" | "byte" | "bytes" | "lsb" | "msb" => {
            matches!(i.nth_kind(1), Some(TokenKind::Number | TokenKind::Minus))
                || matches!(i.nth_word(1), "last" | "end")
        }
        _ => false,
    }
}

/// `PIECE then PIECE intel`
pub(super) fn place(i: Cursor<'_>) -> Parsed<'_, Place> {
    let (behind, first) = spanned_piece(i)?;
    let (behind, others) = more_pieces(behind)?;
    let (behind, order) = opt(byte_order).parse(behind)?;
    Ok((behind, Place { first, others, order, span: i.span_to(behind) }))
}

/// `then PIECE then PIECE`
fn more_pieces(mut i: Cursor<'_>) -> Parsed<'_, Vec<Spanned<Piece>>> {
    let mut all = Vec::new();
    while let (behind, Some(piece)) = opt(preceded(word("then"), spanned_piece)).parse(i)? {
        all.push(piece);
        i = behind;
    }
    Ok((i, all))
}

/// `intel`, `motorola`
fn byte_order(i: Cursor<'_>) -> Parsed<'_, Spanned<ByteOrder>> {
    let order = match i.word() {
        "intel" => ByteOrder::Intel,
        "motorola" => ByteOrder::Motorola,
        _ => return elsewhere(),
    };
    Ok((i.next(), Spanned::new(order, i.span())))
}

fn spanned_piece(i: Cursor<'_>) -> Parsed<'_, Spanned<Piece>> {
    let (behind, piece) = piece(i)?;
    Ok((behind, Spanned::new(piece, i.span_to(behind))))
}

fn piece(i: Cursor<'_>) -> Parsed<'_, Piece> {
    match i.word() {
        "bits" => bits(i.next()),
        "bit" => bit(i),
        "byte" => byte(i),
        "bytes" => bytes(i.next()),
        "lsb" => counted(Anchor::Lsb, i.next()),
        "msb" => counted(Anchor::Msb, i.next()),
        _ => elsewhere(),
    }
}

const POSITION_HELP: &str = "a position is written BYTE.BIT, as in `1.4`; where a document gives one running number, write `lsb 12 width 8 intel`";

/// `bit 6.5`; with a second end it is `bits`.
fn bit(i: Cursor<'_>) -> Parsed<'_, Piece> {
    let (behind, position) = want_so("the position of the bit", POSITION_HELP, position)(i.next())?;
    if !at_dots(behind) {
        return Ok((behind, Piece::Bit(position)));
    }
    report_singular(i, "bits");
    bits(i.next())
}

/// `byte 3`; with a second end it is `bytes`.
fn byte(i: Cursor<'_>) -> Parsed<'_, Piece> {
    let (behind, index) = want("the number of the byte", byte_index)(i.next())?;
    if !at_dots(behind) {
        return Ok((behind, Piece::Byte(index)));
    }
    report_singular(i, "bytes");
    bytes(i.next())
}

fn report_singular(i: Cursor<'_>, plural: &str) {
    let site = i.site(i.span());
    let message = Diagnostic::new(Rule::UnexpectedWord, site, format!("a place with two ends begins with `{plural}`"))
        .here(format!("write `{plural}`"))
        .fix(site, plural);
    i.context.report(message);
}

/// `bits 1.4..0.0`, `bits 3.7`
fn bits(i: Cursor<'_>) -> Parsed<'_, Piece> {
    let (behind, msb) = want_so("the position of the most significant bit", POSITION_HELP, position)(i)?;
    let end = preceded(dots, want_so("the position of the least significant bit", POSITION_HELP, position));
    let (behind, lsb) = opt(end).parse(behind)?;
    Ok((behind, Piece::Bits { msb, lsb: lsb.unwrap_or(msb) }))
}

/// `bytes 0..1`, `bytes 3..end`
fn bytes(i: Cursor<'_>) -> Parsed<'_, Piece> {
    let (behind, msb) = want("the number of the most significant byte", byte_index)(i)?;
    let (behind, lsb) =
        opt(preceded(dots, want("the number of the least significant byte, or `end`,", byte_index))).parse(behind)?;
    Ok((behind, Piece::Bytes { msb, lsb: lsb.unwrap_or(msb) }))
}

/// `N`, `last`, `end`
pub(super) fn byte_index(i: Cursor<'_>) -> Parsed<'_, ByteIndex> {
    if matches!(i.word(), "last" | "end") {
        return Ok((i.next(), ByteIndex::Last(i.span())));
    }
    integer.map(ByteIndex::Number).parse(i)
}

/// BYTE.BIT, from the text of the number: 1.10 is bit 10 of byte 1.
fn position(i: Cursor<'_>) -> Parsed<'_, Position> {
    let (behind, span) = leaf(TokenKind::Number)(i)?;
    let written = i.context.text(span);
    match byte_and_bit(written) {
        Some((byte, bit)) => Ok((behind, Position { byte, bit, span })),
        None => broken(no_position(i, span)),
    }
}

#[inline]
pub(super) fn byte_and_bit(written: &str) -> Option<(u32, u32)> {
    // As nearly all are.
    if let &[byte @ b'0'..=b'9', b'.', bit @ b'0'..=b'9'] = written.as_bytes() {
        return Some((u32::from(byte - b'0'), u32::from(bit - b'0')));
    }
    let point = written.bytes().position(|byte| byte == b'.')?;
    Some((written[..point].parse().ok()?, written[point + 1..].parse().ok()?))
}

fn no_position(i: Cursor<'_>, span: Span) -> Diagnostic {
    let written = shortened(i.context.text(span));
    let message = Diagnostic::new(Rule::BadNumber, i.site(span), format!("`{written}` is not a position"));
    message
        .here(if written.contains('.') { "BYTE and BIT are decimal numbers" } else { "the bit is missing" })
        .help(POSITION_HELP)
}

/// `lsb AT width N intel`: behind the first word.
fn counted(anchor: Anchor, i: Cursor<'_>) -> Parsed<'_, Piece> {
    const HELP: &str =
        "this form is written `lsb 16 width 12 intel`: which end, where it is, how many bits, in which order";
    let (behind, at) = want_so("the number of the bit", HELP, flat_position)(i)?;
    let (behind, _) = keyword("width", HELP)(behind)?;
    let (behind, width) = want_so("the number of bits", HELP, integer)(behind)?;
    let (behind, order) = opt(byte_order).parse(behind)?;
    Ok((behind, Piece::Counted { anchor, at, width, order: order.map(|order| order.value) }))
}

fn flat_position(i: Cursor<'_>) -> Parsed<'_, FlatPosition> {
    if i.kind() == Some(TokenKind::Number) && i.context.text(i.span()).contains('.') {
        return position.map(FlatPosition::Position).parse(i);
    }
    integer.map(FlatPosition::Flat).parse(i)
}
