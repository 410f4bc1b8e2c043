//! Checksums.

use nom::Parser;
use nom::combinator::opt;
use nom::multi::{many1, separated_list1};
use nom::sequence::preceded;

use super::basic::{leaf, name, want, want_so, word, words};
use super::cursor::{Cursor, Parsed, elsewhere};
use super::number::integer;
use super::place::byte_index;
use super::tree::{Algorithm, ByteIndex, Checksum, CrcParameters, MixedIn};
use crate::Spanned;
use crate::lex::TokenKind;

const HELP: &str = "a checksum is written `checksum crc8_sae_j1850 over bytes 0..6`";

/// `ALGORITHM over bytes A..B, C..D starting N first bytes ... then bytes ...`
pub(super) fn checksum(i: Cursor<'_>) -> Parsed<'_, Checksum<'_>> {
    let (behind, algorithm) = want_so("the algorithm's name", HELP, algorithm)(i)?;
    let (behind, _) = want_so("`over bytes`", HELP, over)(behind)?;
    let (behind, over) =
        want_so("the first and last byte that it covers", HELP, separated_list1(leaf(TokenKind::Comma), byte_span))
            .parse(behind)?;
    let (behind, starting) =
        opt(preceded(word("starting"), want("the number that the sum starts with", integer))).parse(behind)?;
    let (behind, first) = opt(preceded(words("first", "bytes"), mixed_in)).parse(behind)?;
    let (behind, then) = opt(preceded(words("then", "bytes"), mixed_in)).parse(behind)?;
    Ok((
        behind,
        Checksum { algorithm, over, starting, first: first.unwrap_or_default(), then: then.unwrap_or_default() },
    ))
}

/// `NAME`, `crc width N poly N start N xor N reflected`
fn algorithm(i: Cursor<'_>) -> Parsed<'_, Algorithm<'_>> {
    const CRC_HELP: &str = "the parameters of a CRC are written `crc width 8 poly 0x1D start 0xFF xor 0xFF`, with `reflected` behind them where bytes go in the least significant bit first";
    if i.word() != "crc" || i.nth_word(1) == "over" {
        return name.map(Algorithm::Named).parse(i);
    }
    let (behind, _) = want_so("`width`", CRC_HELP, word("width"))(i.next())?;
    let (behind, width) = want_so("the number of bits", CRC_HELP, integer)(behind)?;
    let (behind, _) = want_so("`poly`", CRC_HELP, word("poly"))(behind)?;
    let (behind, poly) = want_so("the polynomial", CRC_HELP, integer)(behind)?;
    let (behind, start) = opt(preceded(word("start"), want_so("the start value", CRC_HELP, integer))).parse(behind)?;
    let end_value = "the number that the result is combined with by exclusive or";
    let (behind, xor) = opt(preceded(word("xor"), want_so(end_value, CRC_HELP, integer))).parse(behind)?;
    let (behind, reflected) = opt(word("reflected")).parse(behind)?;
    let parameters = CrcParameters { width, poly, start, xor, reflected: reflected.is_some() };
    Ok((behind, Algorithm::Crc(Box::new(Spanned::new(parameters, i.span_to(behind))))))
}

pub(super) fn over(i: Cursor<'_>) -> Parsed<'_, ()> {
    let (behind, _) = word("over")(i)?;
    if matches!(behind.word(), "byte" | "bytes") { Ok((behind.next(), ())) } else { elsewhere() }
}

/// `A..B`, `A`
pub(super) fn byte_span(i: Cursor<'_>) -> Parsed<'_, Spanned<(ByteIndex, ByteIndex)>> {
    let (behind, first) = byte_index(i)?;
    let (behind, last) = opt(preceded(leaf(TokenKind::DotDot), want("the last byte", byte_index))).parse(behind)?;
    Ok((behind, Spanned::new((first, last.unwrap_or(first)), i.span_to(behind))))
}

/// Bytes that are mixed in, with blanks between them.
fn mixed_in(i: Cursor<'_>) -> Parsed<'_, Vec<MixedIn<'_>>> {
    want("the bytes that are mixed in", many1(mixed_byte))(i)
}

/// `0x5A`, `id 0`, `signal NAME`
fn mixed_byte(i: Cursor<'_>) -> Parsed<'_, MixedIn<'_>> {
    match i.word() {
        "id" => want("the number of a byte of the identifier", integer).map(MixedIn::Identifier).parse(i.next()),
        "signal" => want("the signal's name", name).map(MixedIn::Signal).parse(i.next()),
        _ => integer.map(MixedIn::Byte).parse(i),
    }
}
