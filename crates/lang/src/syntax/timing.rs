//! What is said of a frame's timing.

use nom::Parser;
use nom::combinator::opt;

use super::basic::{keyword, want, want_so, word, words};
use super::clause::Clauses;
use super::cursor::{Cursor, Parsed, elsewhere};
use super::frame_body::test;
use super::time::{begins_time, period, time};
use super::tree::Timing;
use crate::Spanned;
use crate::lex::TokenKind;

/// The clauses of timing.
pub(super) const TIMING: Clauses = Clauses {
    words: &["every", "on", "at", "jitter", "timeout"],
    begins: begins_timing,
    first_is_free: false,
    has_block: false,
};

/// Whether something about timing begins here.
pub(super) fn begins_timing(i: Cursor<'_>) -> bool {
    match i.word() {
        "every" | "jitter" | "timeout" => i.nth_kind(1) == Some(TokenKind::Number),
        "on" => matches!(i.nth_word(1), "change" | "request"),
        "at" => i.nth_word(1) == "least",
        _ => begins_time(i),
    }
}

/// `every 20 ms, timeout 100 ms`: the first one as its word says, then those behind commas.
pub(super) fn timings<'a>(i: Cursor<'a>, word: &str) -> Parsed<'a, Vec<Spanned<Timing<'a>>>> {
    let mut all = Vec::new();
    let (behind, ()) = timing(i, word, &mut all)?;
    Ok(rest_of_timings(behind, all))
}

/// More of it, behind commas.
pub(super) fn rest_of_timings<'a>(
    i: Cursor<'a>,
    mut all: Vec<Spanned<Timing<'a>>>,
) -> (Cursor<'a>, Vec<Spanned<Timing<'a>>>) {
    let (behind, _) = TIMING.read(i, |word, i| timing(i, word, &mut all));
    (behind, all)
}

/// One thing about timing; `every 1 s or on change` is two.
fn timing<'a>(i: Cursor<'a>, said: &str, all: &mut Vec<Spanned<Timing<'a>>>) -> Parsed<'a, ()> {
    let (behind, timing) = match said {
        "every" => every(i)?,
        "on" => want_so(
            "`change` or `request`",
            "a frame is sent `on change`, `on request`, or `every` so often",
            occasion,
        )(i.next())?,
        "at" => {
            let (behind, _) = keyword("least", APART_HELP)(i.next())?;
            let (behind, least) = want("the shortest time between two frames", time)(behind)?;
            let (behind, _) = keyword("apart", APART_HELP)(behind)?;
            (behind, Timing::ApartAtLeast(least))
        }
        "jitter" => want("the length of time", time).map(Timing::Jitter).parse(i.next())?,
        "timeout" => want("the length of time", time).map(Timing::Timeout).parse(i.next())?,
        _ if begins_time(i) => {
            let (behind, period) = period(i)?;
            let (behind, _) = keyword("apart", APART_HELP)(behind)?;
            (behind, Timing::Apart(period.shortest, period.longest))
        }
        _ => return elsewhere(),
    };
    all.push(Spanned::new(timing, i.span_to(behind)));
    if said == "every" && behind.word() == "or" {
        let (end, also) =
            want_so("`on change` or `on request`", "write `every 1 s or on change`", or_occasion)(behind)?;
        all.push(Spanned::new(also, behind.span_to(end)));
        return Ok((end, ()));
    }
    Ok((behind, ()))
}

const APART_HELP: &str = "write `at least 10 ms apart`, or `20 ms..1 s apart` for a span";

fn occasion(i: Cursor<'_>) -> Parsed<'_, Timing<'_>> {
    match i.word() {
        "change" => Ok((i.next(), Timing::OnChange)),
        "request" => Ok((i.next(), Timing::OnRequest)),
        _ => elsewhere(),
    }
}

fn or_occasion(i: Cursor<'_>) -> Parsed<'_, Timing<'_>> {
    let (behind, _) = words("or", "on")(i)?;
    occasion(behind)
}

/// `every 20 ms`, `every 10..40 ms`, `every 20 ms while request is 1, else every 200 ms`
fn every(i: Cursor<'_>) -> Parsed<'_, Timing<'_>> {
    const HELP: &str = "write `every 20 ms while SIGNAL is VALUE, else every 200 ms`";
    let (behind, fast) =
        want_so("the period", "a period is a number and a unit of time, as in `every 20 ms`", period)(i.next())?;
    let (behind, condition) = opt(word("while")).parse(behind)?;
    if condition.is_none() {
        return Ok((behind, Timing::Every(fast)));
    }
    let stops = |i: Cursor<'_>| i.word() == "else" && i.nth_word(1) == "every" || begins_timing(i);
    let (behind, test) = want_so("the signal of the condition", HELP, |i| test(i, stops))(behind)?;
    let at_else = if behind.kind() == Some(TokenKind::Comma) { behind.next() } else { behind };
    let (behind, _) = want_so("`, else every` and the period otherwise", HELP, words("else", "every"))(at_else)?;
    let (behind, slow) = want_so("the period otherwise", HELP, period)(behind)?;
    Ok((behind, Timing::EveryWhile { fast, test, slow }))
}
