//! What a network line says of the network's wires: terminators, active star, branches.

use nom::Parser;
use nom::branch::alt;

use super::basic::{name, text, want, want_so};
use super::clause::{Clauses, check_once, is_listed, names};
use super::cursor::{Cursor, Parsed, elsewhere};
use super::number::any_integer;
use super::tree::{FittedAt, TerminatorItem, WiringClauses};
use crate::Spanned;
use crate::lex::TokenKind;

/// The words that such clauses begin with.
pub(super) const WORDS: [&str; 3] = ["terminators", "star", "branch"];

/// Whether such a clause begins here.
pub(super) fn begins_clause(i: Cursor<'_>) -> bool {
    let behind = i.nth_kind(1);
    match i.word() {
        "terminators" | "star" => matches!(behind, Some(TokenKind::Word | TokenKind::Text)),
        "branch" => behind == Some(TokenKind::Word),
        _ => false,
    }
}

/// `terminators engine 120 ohm, "behind the dashboard"`, `star hub`, `branch brakes, dampers`
pub(super) fn clause<'a>(said: &str, i: Cursor<'a>, all: Clauses, clauses: &mut WiringClauses<'a>) -> Parsed<'a, ()> {
    match said {
        "terminators" => terminators(i, all, clauses),
        "star" => star(i, clauses),
        _ => {
            let (behind, units) = want("the name of a control unit", |i| names(i, all))(i.next())?;
            clauses.branches.push(Spanned::new(units, i.span_to(behind)));
            Ok((behind, ()))
        }
    }
}

const TERMINATORS_HELP: &str = "terminators are in control units, or at places in the wiring, which stand in quotes: `terminators engine 120 ohm, \"behind the dashboard\"`";

fn terminators<'a>(i: Cursor<'a>, all: Clauses, clauses: &mut WiringClauses<'a>) -> Parsed<'a, ()> {
    check_once(i, "terminators", clauses.terminators.as_ref().map(|list| list.span));
    let (mut behind, first) = want_so("where a terminator is", TERMINATORS_HELP, terminator)(i.next())?;
    let mut list = vec![first];
    while behind.kind() == Some(TokenKind::Comma) && is_next(behind.next(), all) {
        let (further, item) = terminator(behind.next())?;
        list.push(item);
        behind = further;
    }
    clauses.terminators.get_or_insert(Spanned::new(list, i.span_to(behind)));
    Ok((behind, ()))
}

/// Whether the list goes on here.
fn is_next(i: Cursor<'_>, all: Clauses) -> bool {
    let has_ohms = i.kind() == Some(TokenKind::Word) && i.nth_kind(1) == Some(TokenKind::Number);
    i.kind() == Some(TokenKind::Text) || (has_ohms && !(all.begins)(i)) || is_listed(i, all)
}

fn terminator(i: Cursor<'_>) -> Parsed<'_, TerminatorItem<'_>> {
    let (behind, at) = fitted(i)?;
    if behind.kind() != Some(TokenKind::Number) {
        return Ok((behind, TerminatorItem { at, ohms: None }));
    }
    let (unit, ohms) = want_so("the resistance", "a resistance is a whole number: `120 ohm`", any_integer)(behind)?;
    let (behind, ()) = want_so("`ohm`", "a resistance is written `120 ohm` or `120 Ω`", ohm)(unit)?;
    Ok((behind, TerminatorItem { at, ohms: Some(ohms) }))
}

/// The unit; the sign of the ohm (U+2126) looks like the Greek letter.
fn ohm(i: Cursor<'_>) -> Parsed<'_, ()> {
    if matches!(i.word(), "ohm" | "\u{3A9}" | "\u{2126}") { Ok((i.next(), ())) } else { elsewhere() }
}

fn star<'a>(i: Cursor<'a>, clauses: &mut WiringClauses<'a>) -> Parsed<'a, ()> {
    const HELP: &str = "an active star is in a control unit, or at a place in the wiring, which stands in quotes: `star hub`, `star \"under the seat\"`";
    check_once(i, "star", clauses.star.as_ref().map(|star| star.span));
    let (behind, at) = want_so("where the star is", HELP, fitted)(i.next())?;
    clauses.star.get_or_insert(Spanned::new(at, i.span_to(behind)));
    Ok((behind, ()))
}

fn fitted(i: Cursor<'_>) -> Parsed<'_, FittedAt<'_>> {
    alt((name.map(FittedAt::Unit), text.map(FittedAt::Wiring))).parse(i)
}
