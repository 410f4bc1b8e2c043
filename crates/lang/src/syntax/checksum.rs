//! Checksums.

use nom::Parser;
use nom::combinator::opt;
use nom::multi::{many1, separated_list1};
use nom::sequence::preceded;

use super::basic::{leaf, name, want, want_so, word, words};
use super::cursor::{Cursor, Parsed, elsewhere};
use super::number::integer;
use super::place::byte_index;
use super::tree::{ByteIndex, Checksum, Integer};
use crate::Spanned;
use crate::lex::TokenKind;

const HELP: &str = "a checksum is written `checksum crc8_sae_j1850 over bytes 0..6`";

/// `ALGORITHM over bytes A..B, C..D starting N first bytes ... then bytes ...`
pub(super) fn checksum(i: Cursor<'_>) -> Parsed<'_, Checksum<'_>> {
    let (behind, algorithm) = want_so("the algorithm's name", HELP, name)(i)?;
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

fn over(i: Cursor<'_>) -> Parsed<'_, ()> {
    let (behind, _) = word("over")(i)?;
    if matches!(behind.word(), "byte" | "bytes") { Ok((behind.next(), ())) } else { elsewhere() }
}

/// `A..B`, `A`
fn byte_span(i: Cursor<'_>) -> Parsed<'_, Spanned<(ByteIndex, ByteIndex)>> {
    let (behind, first) = byte_index(i)?;
    let (behind, last) = opt(preceded(leaf(TokenKind::DotDot), want("the last byte", byte_index))).parse(behind)?;
    Ok((behind, Spanned::new((first, last.unwrap_or(first)), i.span_to(behind))))
}

/// Bytes that are mixed in, with blanks between them.
fn mixed_in(i: Cursor<'_>) -> Parsed<'_, Vec<Integer>> {
    want("the bytes that are mixed in", many1(integer))(i)
}
