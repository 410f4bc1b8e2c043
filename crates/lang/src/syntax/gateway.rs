//! Gateways and what they pass on.

use nom::Parser;
use nom::combinator::opt;

use super::basic::{keyword, leaf, missing, name, shortened, want, want_so, word};
use super::block::{block, find_open};
use super::clause::{Clauses, check_once, names};
use super::cursor::{Cursor, Parsed, broken, elsewhere};
use super::number::{integer, ordinal, raw_range};
use super::recover::{is_item_word, statement};
use super::time::time;
use super::tree::{Front, Gateway, Integer, Name, Pace, Passed, Route};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span, Spanned};
use wirelore_model::nearest_name;

/// `gateway NAME { ... }`
pub(super) fn gateway(i: Cursor<'_>) -> Parsed<'_, Gateway<'_>> {
    let (behind, ecu) = want("the name of the control unit", name)(i.next())?;
    let Some(open) = find_open(i, behind) else {
        return broken(
            missing(behind, "the block with what it passes on")
                .help("write `gateway NAME { pass FRAME from A to B }`, one `pass` on each line"),
        );
    };
    let (behind, routes) = block(open, route);
    Ok((behind, Gateway { ecu, routes }))
}

/// One line with its end; none if it could not be read, and then that was told.
fn route<'a>(i: Cursor<'a>, front: Front<'a>, routes: &mut Vec<Route<'a>>) -> Cursor<'a> {
    let (behind, read) = statement(i, read_as, unknown);
    routes.extend(read.map(|((what, clauses), span)| Route {
        span,
        front,
        what,
        pace: clauses.pace,
        within: clauses.within,
    }));
    behind
}

fn unknown(i: Cursor<'_>) -> Option<&'static str> {
    let site = i.site(i.span());
    let found = shortened(i.context.text(i.span()));
    let near = nearest_name(i.word(), ["pass", "copy"]).filter(|_| !is_item_word(i.word()) && !i.next().at_end());
    let message = Diagnostic::new(Rule::UnknownStatement, site, format!("`{found}` is not a statement of a gateway"));
    i.context.report(match near {
        Some(near) => message.here(format!("did you mean `{near}`?")).fix(site, near),
        None => message.here("not known").help("a gateway has lines that begin with `pass` or `copy`"),
    });
    near
}

const CLAUSES: Clauses = Clauses {
    words: &["every", "within", "except"],
    begins: |i| match i.word() {
        "every" | "within" => i.nth_kind(1) == Some(TokenKind::Number),
        "except" => i.nth_kind(1) == Some(TokenKind::Word),
        _ => false,
    },
    first_is_free: false,
    has_block: false,
};

/// The clauses of a line.
#[derive(Debug, Default)]
struct Found {
    pace: Option<Spanned<Pace>>,
    within: Option<super::tree::Time>,
}

fn read_as<'a>(said: &str, i: Cursor<'a>) -> Parsed<'a, (Passed<'a>, Found)> {
    let (behind, mut what) = match said {
        "pass" => pass(i.next())?,
        "copy" => copy(i.next())?,
        _ => return elsewhere(),
    };
    let mut found = Found::default();
    let (behind, _) = CLAUSES.read(behind, |word, i| match (word, &mut what) {
        ("every", _) => {
            check_once(i, word, found.pace.map(|pace| pace.span));
            let (behind, pace) = want_so(
                "a period, or `10th` and its like,",
                "write `every 100 ms` for a clock of its own, `every 10th` to thin out",
                pace,
            )(i.next())?;
            found.pace.get_or_insert(Spanned::new(pace, i.span_to(behind)));
            Ok((behind, ()))
        }
        ("within", _) => {
            check_once(i, word, found.within.map(|within| within.span));
            let (behind, within) = want("the length of time", time)(i.next())?;
            found.within.get_or_insert(within);
            Ok((behind, ()))
        }
        ("except", Passed::All { except, .. }) => {
            check_once(i, word, except.first().map(|first| first.span));
            let (behind, frames) = want("the name of a frame", |i| names(i, CLAUSES))(i.next())?;
            except.extend(frames);
            Ok((behind, ()))
        }
        ("except", _) => broken(
            Diagnostic::new(Rule::UnexpectedWord, i.site(i.span()), "`except` goes with `pass all` only")
                .here("nothing to leave out here"),
        ),
        _ => elsewhere(),
    });
    Ok((behind, (what, found)))
}

/// `100 ms`, `10th`
fn pace(i: Cursor<'_>) -> Parsed<'_, Pace> {
    let (behind, number) = match ordinal(i) {
        Err(nom::Err::Error(_)) => return time.map(|period| Pace::Every(period.value)).parse(i),
        read => read?,
    };
    match u32::try_from(number.value) {
        Ok(nth) => Ok((behind, Pace::Nth(nth))),
        Err(_) => broken(
            Diagnostic::new(Rule::BadNumber, i.site(number.span), "this number is too large to thin out by")
                .here("at most 4294967295"),
        ),
    }
}

const PASS_HELP: &str = "write `pass FRAME from A to B`, `pass id 0x700..0x7FF from A to B` or `pass all from A to B`";

/// What stands behind `pass`.
fn pass(i: Cursor<'_>) -> Parsed<'_, Passed<'_>> {
    if i.word() == "all" && i.nth_word(1) == "from" {
        let (behind, (from, to)) = from_to(i.next())?;
        return Ok((behind, Passed::All { from, to, except: Vec::new() }));
    }
    if i.word() == "id" && i.nth_kind(1) == Some(TokenKind::Number) {
        let (behind, ids) = raw_range(i.next())?;
        let (behind, extended) = opt(word("extended")).parse(behind)?;
        let (behind, (from, to)) = from_to(behind)?;
        return Ok((behind, Passed::Ids { ids, extended, from, to }));
    }
    let (behind, frame) = want_so("the name of a frame", PASS_HELP, name)(i)?;
    let (behind, (from, to)) = from_to(behind)?;
    let (behind, new_id) = opt(as_id).parse(behind)?;
    Ok((behind, Passed::Frame { frame, from, to, new_id }))
}

/// `from A to B`
fn from_to(i: Cursor<'_>) -> Parsed<'_, (Name<'_>, Name<'_>)> {
    let (behind, _) = keyword("from", PASS_HELP)(i)?;
    let (behind, from) = want("the name of a network", name)(behind)?;
    let (behind, _) = keyword("to", PASS_HELP)(behind)?;
    let (behind, to) = want("the name of a network", name)(behind)?;
    Ok((behind, (from, to)))
}

/// `as id N extended`
fn as_id(i: Cursor<'_>) -> Parsed<'_, (Integer, Option<Span>)> {
    let (behind, _) = word("as")(i)?;
    let (behind, _) = keyword("id", "write `as id 0x3A0` to give the frame another identifier")(behind)?;
    let (behind, id) = want("the new identifier", integer)(behind)?;
    let (behind, extended) = opt(word("extended")).parse(behind)?;
    Ok((behind, (id, extended)))
}

/// `copy FRAME.SIGNAL from A to FRAME.SIGNAL on B`: behind `copy`.
fn copy(i: Cursor<'_>) -> Parsed<'_, Passed<'_>> {
    const HELP: &str = "write `copy FRAME.SIGNAL from A to FRAME.SIGNAL on B`";
    let (behind, source) = want_so("a frame and its signal", HELP, frame_and_signal)(i)?;
    let (behind, _) = keyword("from", HELP)(behind)?;
    let (behind, from) = want_so("the name of a network", HELP, name)(behind)?;
    let (behind, _) = keyword("to", HELP)(behind)?;
    let (behind, target) = want_so("a frame and its signal", HELP, frame_and_signal)(behind)?;
    let (behind, _) = keyword("on", HELP)(behind)?;
    let (behind, to) = want_so("the name of a network", HELP, name)(behind)?;
    Ok((behind, Passed::Signal { source, from, target, to }))
}

/// `FRAME.SIGNAL`
fn frame_and_signal(i: Cursor<'_>) -> Parsed<'_, (Name<'_>, Name<'_>)> {
    let (behind, frame) = name(i)?;
    let (behind, _) = want("`.` and a signal", leaf(TokenKind::Dot))(behind)?;
    let (behind, signal) = want("the signal's name", name)(behind)?;
    Ok((behind, (frame, signal)))
}
