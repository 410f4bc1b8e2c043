//! What is said of FlexRay networks: cycle and slots behind the network, slot and cycles of a frame.

use nom::Parser;
use nom::combinator::opt;
use wirelore_model::FlexRayChannels;

use super::basic::{keyword, one_of, want, want_so, word, words};
use super::clause::check_once;
use super::cursor::{Cursor, Parsed};
use super::meant::over_equals;
use super::number::{integer, ordinal, span_of_integers};
use super::time::time;
use super::tree::{FlexRayClauses, Integer, Recognition};
use crate::Spanned;
use crate::lex::TokenKind;

/// Whether a clause about cycle and slots begins here.
pub(super) fn begins_clause(i: Cursor<'_>) -> bool {
    match i.word() {
        "cycle" => i.nth_kind(1) == Some(TokenKind::Number),
        "static" => i.nth_word(1) == "slots",
        "dynamic" => i.nth_word(1) == "up",
        _ => false,
    }
}

/// `cycle 5 ms numbered 0..63`, `static slots 62 of 32 bytes`, `dynamic up to slot 200`
pub(super) fn clause<'a>(said: &str, i: Cursor<'a>, clauses: &mut FlexRayClauses) -> Parsed<'a, ()> {
    match said {
        "cycle" => cycle(i, clauses),
        "static" => static_slots(i, clauses),
        _ => dynamic(i, clauses),
    }
}

fn cycle<'a>(i: Cursor<'a>, clauses: &mut FlexRayClauses) -> Parsed<'a, ()> {
    check_once(i, "cycle", clauses.cycle.map(|cycle| cycle.span));
    let (behind, cycle) = want("the length of a cycle", time)(i.next())?;
    clauses.cycle.get_or_insert(cycle);
    if behind.word() != "numbered" {
        return Ok((behind, ()));
    }
    const HELP: &str = "cycles are numbered from 0, mostly up to 63: `cycle 5 ms numbered 0..63`";
    let (end, numbers) = want_so("the first and the last number", HELP, span_of_integers)(behind.next())?;
    clauses.numbered.get_or_insert(Spanned::new(numbers, behind.span_to(end)));
    Ok((end, ()))
}

fn static_slots<'a>(i: Cursor<'a>, clauses: &mut FlexRayClauses) -> Parsed<'a, ()> {
    const HELP: &str = "the static segment is written `static slots 62 of 32 bytes`";
    check_once(i, "static", clauses.static_slots.map(|slots| slots.span));
    let (behind, _) = keyword("slots", HELP)(i.next())?;
    let (behind, count) = want_so("the number of slots", HELP, integer)(behind)?;
    let (behind, _) = keyword("of", HELP)(behind)?;
    let (behind, bytes) = want_so("the number of bytes", HELP, integer)(behind)?;
    let (behind, _) = keyword("bytes", HELP)(behind)?;
    clauses.static_slots.get_or_insert(Spanned::new((count, bytes), i.span_to(behind)));
    Ok((behind, ()))
}

fn dynamic<'a>(i: Cursor<'a>, clauses: &mut FlexRayClauses) -> Parsed<'a, ()> {
    const HELP: &str = "the dynamic segment is written `dynamic up to slot 200`";
    check_once(i, "dynamic", clauses.dynamic.map(|dynamic| dynamic.span));
    let (behind, _) = keyword("up", HELP)(i.next())?;
    let (behind, _) = keyword("to", HELP)(behind)?;
    let (behind, _) = keyword("slot", HELP)(behind)?;
    let (behind, last) = want_so("the number of the last slot", HELP, integer)(behind)?;
    clauses.dynamic.get_or_insert(Spanned::new(last, i.span_to(behind)));
    Ok((behind, ()))
}

/// `slot 42 from cycle 1 every 4th channel a`
pub(super) fn slot(i: Cursor<'_>) -> Parsed<'_, Recognition<'_>> {
    let (behind, slot) = want_so("the slot", "slots are numbered from 1, as in `slot 42`", integer)(over_equals(i))?;
    let (behind, first_cycle) = opt(first_cycle).parse(behind)?;
    let is_every = behind.word() == "every";
    let (behind, repetition) =
        if first_cycle.is_some() || is_every { repetition.map(Some).parse(behind)? } else { (behind, None) };
    let (behind, channels) = opt(channels).parse(behind)?;
    let channels = channels.unwrap_or(FlexRayChannels::Both);
    Ok((behind, Recognition::Slot { slot, first_cycle, repetition, channels }))
}

const CYCLES_HELP: &str = "a frame that is not sent in every cycle is written `slot 42 from cycle 1 every 4th`";

/// `from cycle 1`
fn first_cycle(i: Cursor<'_>) -> Parsed<'_, Integer> {
    let (behind, _) = words("from", "cycle")(i)?;
    want_so("the number of a cycle", CYCLES_HELP, integer)(behind)
}

/// `every 4th`
fn repetition(i: Cursor<'_>) -> Parsed<'_, Integer> {
    let (behind, _) = keyword("every", CYCLES_HELP)(i)?;
    want_so("`4th` or its like", CYCLES_HELP, ordinal)(behind)
}

/// `channel a`, `channel b`, `channel a and b`
fn channels(i: Cursor<'_>) -> Parsed<'_, FlexRayChannels> {
    const CHANNELS: [(&str, FlexRayChannels); 2] = [("a", FlexRayChannels::A), ("b", FlexRayChannels::B)];
    let (behind, _) = word("channel")(i)?;
    let (behind, channel) = one_of("a channel", &CHANNELS)(behind)?;
    if channel.value == FlexRayChannels::A && behind.word() == "and" {
        let (behind, _) =
            keyword("b", "a frame on both channels is written without a channel, or `channel a and b`")(behind.next())?;
        return Ok((behind, FlexRayChannels::Both));
    }
    Ok((behind, channel.value))
}
