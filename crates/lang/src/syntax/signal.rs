//! Signals.

use nom::Parser;
use nom::combinator::opt;
use nom::sequence::preceded;
use wirelore_model::Charset;

use super::basic::{leaf, missing, name, one_of, shortened, want, want_so, word};
use super::checksum::checksum;
use super::clause::{Clauses, begins_common, check_once, common};
use super::cursor::{Cursor, Parsed, broken, elsewhere};
use super::formula::formula;
use super::list::List;
use super::map::head;
use super::meant::over_equals;
use super::number::{exact, integer, raw_ranges, span_of_exacts, span_of_integers};
use super::place::{begins_place, place};
use super::recover::{skip_until, tell};
use super::states::own;
use super::tree::{Counter, Elements, Exact, Integer, Kind, RawRange, Signal, StatesClause, Step, Value};
use super::unit::unit;
use super::usual;
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Spanned};

const CLAUSES: Clauses = Clauses {
    words: &[
        "states",
        "range",
        "absent",
        "fault",
        "size",
        "counter",
        "checksum",
        "shown",
        "called",
        "confirmed",
        "likely",
        "guessed",
        "measured",
        "from",
    ],
    begins: |i| match i.word() {
        "states" => matches!(i.nth_kind(1), Some(TokenKind::Word | TokenKind::OpenBrace)),
        "range" | "absent" | "fault" | "counter" => matches!(i.nth_kind(1), Some(TokenKind::Number | TokenKind::Minus)),
        "checksum" | "size" | "shown" => i.nth_kind(1) == Some(TokenKind::Word),
        _ => begins_common(i),
    },
    first_is_free: false,
    has_block: false,
};

const HELP: &str = "a signal is written `signal NAME in PLACE = FORMULA UNIT`, and its clauses behind commas";

/// Whether a clause of a signal begins here.
pub(super) fn begins_clause(i: Cursor<'_>) -> bool {
    (CLAUSES.begins)(i)
}

/// `signal NAME[1..12] "title" in PLACE [KIND] [= FORMULA UNIT][, clauses]`, into a list; gives its place there.
pub(super) fn signal<'a>(i: Cursor<'a>, signals: &mut Vec<Signal<'a>>) -> Parsed<'a, usize> {
    let index = signals.len();
    let i = match usual::signal(i, signals) {
        Some(behind) => behind,
        None => {
            let (behind, signal) = any_signal(i)?;
            signals.push(signal);
            behind
        }
    };
    let behind = signals.last_mut().map_or(i, |signal| clauses(i, signal));
    Ok((behind, index))
}

/// The clauses, to the end of the statement.
pub(super) fn clauses<'a>(i: Cursor<'a>, signal: &mut Signal<'a>) -> Cursor<'a> {
    let (behind, all) = CLAUSES.read(i, |word, i| clause(word, i, signal));
    signal.incomplete |= !all;
    behind
}

/// A signal of whatever shape, up to its clauses.
pub(super) fn any_signal(i: Cursor<'_>) -> Parsed<'_, Signal<'_>> {
    let (i, head, elements) = name_and_title(i.next())?;
    let mut signal =
        Signal { head, place: None, kind: None, value: None, unit: None, range: None, extras: None, incomplete: false };
    if elements.is_some() {
        signal.extras_mut().elements = elements;
    }
    let i = match where_and_what(i, &mut signal) {
        Ok((behind, ())) => behind,
        Err(problem) => {
            tell(i, problem);
            signal.incomplete = true;
            skip_until(i, |i| i.kind() == Some(TokenKind::Comma) && begins_clause(i.next()))
        }
    };
    Ok((i, signal))
}

fn name_and_title(
    i: Cursor<'_>,
) -> Result<(Cursor<'_>, super::tree::Head<'_>, Option<Elements>), nom::Err<super::cursor::Problem>> {
    if i.nth_kind(1) != Some(TokenKind::OpenBracket) {
        let (behind, head) = head("the signal's name")(i)?;
        return Ok((behind, head, None));
    }
    let (behind, name) = want("the signal's name", super::basic::name)(i)?;
    let (behind, elements) = elements(behind)?;
    let (behind, title) = opt(super::basic::text).parse(behind)?;
    Ok((behind, super::tree::Head { name, title, called: None, certainty: None }, Some(elements)))
}

/// `[1..12]`
fn elements(i: Cursor<'_>) -> Parsed<'_, Elements> {
    const HELP: &str = "an array is written `signal cell[1..12] in bytes 0..1 step 2 bytes`";
    let (behind, _) = leaf(TokenKind::OpenBracket)(i)?;
    let (behind, (first, last)) = want_so("the first and last element", HELP, span_of_integers)(behind)?;
    let (behind, _) = want_so("`]`", HELP, leaf(TokenKind::CloseBracket))(behind)?;
    Ok((behind, Elements { first, last, span: i.span_to(behind) }))
}

/// `in PLACE [step N bytes] [KIND] [= FORMULA UNIT]`
fn where_and_what<'a>(i: Cursor<'a>, signal: &mut Signal<'a>) -> Parsed<'a, ()> {
    let i = match word("in")(i) {
        Ok((behind, _)) => behind,
        Err(_) if begins_place(i) => {
            let before = i.site(i.previous().after());
            let message =
                Diagnostic::new(Rule::MissingPart, before, format!("`in` is missing in front of `{}`", i.word()))
                    .here("here")
                    .help(HELP)
                    .fix(before, " in");
            i.context.report(message);
            i
        }
        Err(_) => return broken(missing(i, "`in` and a place").help(HELP)),
    };
    let (i, place) = want_so(
        "a place",
        "places are written `bits 1.4..0.0`, `bit 6.5`, `byte 3`, `bytes 0..1` or `lsb 16 width 12 intel`",
        place,
    )(i)?;
    signal.place = Some(place);
    let (i, step) = opt(step).parse(i)?;
    if step.is_some() {
        signal.extras_mut().step = step;
    }
    let (i, kind) = opt(kind).parse(i)?;
    signal.kind = kind;
    value(misspelt_kind(i, signal), signal)
}

/// `step 2 bytes`
fn step(i: Cursor<'_>) -> Parsed<'_, Spanned<Step>> {
    const UNITS: [(&str, Step); 4] =
        [("bytes", Step::Bytes(1)), ("byte", Step::Bytes(1)), ("bits", Step::Bits(1)), ("bit", Step::Bits(1))];
    let (behind, _) = word("step")(i)?;
    let (unit, count) = want("the distance to the next element", integer)(behind)?;
    let (behind, step) = one_of("the unit of a step", &UNITS)(unit)?;
    let Ok(number) = u32::try_from(count.value) else {
        let message = Diagnostic::new(Rule::BadNumber, i.site(count.span), "a step is a small positive number");
        return broken(message.here("not a distance inside a payload"));
    };
    let step = match step.value {
        Step::Bytes(_) => Step::Bytes(number),
        Step::Bits(_) => Step::Bits(number),
    };
    Ok((behind, Spanned::new(step, i.span_to(behind))))
}

const KINDS: [(&str, Kind); 9] = [
    ("unsigned", Kind::Unsigned),
    ("signed", Kind::Signed),
    ("sign_magnitude", Kind::SignMagnitude),
    ("float", Kind::Float),
    ("bcd", Kind::Bcd),
    ("flag", Kind::Flag),
    ("trouble_code", Kind::TroubleCode),
    ("text", Kind::Text(Charset::Ascii)),
    ("bytes", Kind::Bytes),
];

/// The kind that a word stands for.
pub(super) fn kind_named(word: &str) -> Option<Kind> {
    KINDS.iter().find(|(known, _)| *known == word).map(|&(_, kind)| kind)
}

/// `signed`, `text latin1`
fn kind(i: Cursor<'_>) -> Parsed<'_, Spanned<Kind>> {
    let Some(mut kind) = kind_named(i.word()) else { return elsewhere() };
    let mut behind = i.next();
    if let Kind::Text(charset) = &mut kind {
        let named = match behind.word() {
            "ascii" => Some(Charset::Ascii),
            "latin1" => Some(Charset::Latin1),
            "utf8" => Some(Charset::Utf8),
            _ => None,
        };
        if let Some(named) = named {
            *charset = named;
            behind = behind.next();
        }
    }
    Ok((behind, Spanned::new(kind, i.span_to(behind))))
}

/// A word where only a kind can stand, or `=`, or a comma: told, and taken for the kind that is nearest.
fn misspelt_kind<'a>(i: Cursor<'a>, signal: &mut Signal<'a>) -> Cursor<'a> {
    if i.kind() != Some(TokenKind::Word) || (CLAUSES.begins)(i) || signal.kind.is_some() {
        return i;
    }
    let near = wirelore_model::nearest_name(i.word(), KINDS.iter().map(|&(word, _)| word));
    let is_kind = i.next().at_stop() || i.nth_kind(1) == Some(TokenKind::Equals);
    let (true, Some(near)) = (is_kind, near) else { return i };
    let site = i.site(i.span());
    let message =
        Diagnostic::new(Rule::UnexpectedWord, site, format!("`{}` is not a kind of signal", shortened(i.word())));
    i.context.report(message.here(format!("did you mean `{near}`?")).fix(site, near));
    signal.kind = kind_named(near).map(|kind| Spanned::new(kind, i.span()));
    i.next()
}

/// `= FORMULA UNIT`, `= curve { ... } UNIT`
fn value<'a>(i: Cursor<'a>, signal: &mut Signal<'a>) -> Parsed<'a, ()> {
    let i = match leaf(TokenKind::Equals)(i) {
        Ok((behind, _)) => behind,
        Err(_) if begins_formula(i) => {
            report_no_equals(i);
            i
        }
        Err(_) => return no_value(i),
    };
    let (i, value) = if i.word() == "curve" { curve(i) } else { formula.map(Value::Formula).parse(i) }?;
    signal.value = Some(value);
    if (CLAUSES.begins)(i) {
        return Ok((i, ()));
    }
    let (i, unit) = opt(unit).parse(i)?;
    signal.unit = unit;
    Ok((i, ()))
}

/// Whether a formula, or a curve, begins here beyond doubt, though no `=` stands in front of it.
fn begins_formula(i: Cursor<'_>) -> bool {
    match i.kind() {
        Some(TokenKind::OpenParen) => true,
        Some(TokenKind::Number) => matches!(i.nth_kind(1), Some(TokenKind::Star)),
        Some(TokenKind::Word) => {
            i.word() == "raw" || (i.word() == "curve" && i.nth_kind(1) == Some(TokenKind::OpenBrace))
        }
        _ => false,
    }
}

fn report_no_equals(i: Cursor<'_>) {
    let place = i.site(i.previous().after());
    let message = Diagnostic::new(Rule::MissingPart, place, "the `=` in front of this formula is missing")
        .here("put `=` here")
        .help(HELP)
        .fix(place, " =");
    i.context.report(message);
}

/// Without `=`, nothing may stand between the place and the clauses: a unit is asked for its formula.
fn no_value(i: Cursor<'_>) -> Parsed<'_, ()> {
    let is_unit = matches!(i.kind(), Some(TokenKind::Word | TokenKind::Mark))
        && super::unit::run(i).at_stop()
        && !(CLAUSES.begins)(i);
    if !is_unit {
        return Ok((i, ()));
    }
    let whole = i.span_to(super::unit::run(i));
    let written = shortened(i.context.text(whole));
    let message = Diagnostic::new(
        Rule::UnexpectedWord,
        i.site(whole),
        format!("`{written}` is neither a kind of signal nor a clause"),
    )
    .here("a unit?")
    .help(format!("a unit stands behind a formula: `= raw {written}` where the raw number is the value"));
    broken(message)
}

/// `curve { 0: -40, 255: 150 }`
fn curve(i: Cursor<'_>) -> Parsed<'_, Value> {
    let (open, _) = word("curve")(i)?;
    let (behind, points) = CURVE.read(open, point)?;
    Ok((behind, Value::Curve { points, span: i.span_to(behind) }))
}

/// Behind the points of a curve stands its unit.
const CURVE: List = List {
    word: "curve",
    is_behind: |i| {
        matches!(i.kind(), Some(TokenKind::Word | TokenKind::Mark | TokenKind::Text))
            && i.previous_kind() != Some(TokenKind::Colon)
    },
    begins_bare: |i| matches!(i.kind(), Some(TokenKind::Number | TokenKind::Minus)),
    what: "the points of the curve between braces",
    help: CURVE_HELP,
};

const CURVE_HELP: &str = "a curve is written `curve { 0: -40, 128: 21.5, 255: 150 }`: raw value, colon, value";

fn point(i: Cursor<'_>) -> Parsed<'_, (Integer, Exact)> {
    let (behind, raw) = want_so("a raw value", CURVE_HELP, integer)(i)?;
    let (behind, _) = want_so("`:`", CURVE_HELP, leaf(TokenKind::Colon))(behind)?;
    let (behind, value) = want_so("the value at this point", CURVE_HELP, exact)(behind)?;
    Ok((behind, (raw, value)))
}

/// One clause.
fn clause<'a>(word: &str, i: Cursor<'a>, signal: &mut Signal<'a>) -> Parsed<'a, ()> {
    match word {
        "states" => {
            check_once(i, word, signal.extras().states.as_ref().map(|states| states.span));
            let (behind, states) = states_clause(i.next())?;
            signal.extras_mut().states.get_or_insert(Spanned::new(states, i.span_to(behind)));
            Ok((behind, ()))
        }
        "range" => {
            check_once(i, word, signal.range.as_ref().map(|range| range.span));
            let help = "a range is written with the least and the greatest value, as in `range -40..215`";
            let (behind, (low, high)) = want_so("the least value", help, span_of_exacts)(over_equals(i))?;
            signal.range.get_or_insert_with(|| Spanned::new((low.value, high.value), i.span_to(behind)));
            Ok((behind, ()))
        }
        "absent" => special(word, i, &mut signal.extras_mut().absent),
        "fault" => special(word, i, &mut signal.extras_mut().fault),
        "size" => {
            check_once(i, word, signal.extras().size.as_ref().map(|size| size.span));
            let help =
                "text and bytes of varying length are written `signal label in bytes 1..16 text, size label_length`";
            let (behind, size) = want_so("the signal that says how many bytes there are", help, name)(over_equals(i))?;
            signal.extras_mut().size.get_or_insert(size);
            Ok((behind, ()))
        }
        "counter" => {
            check_once(i, word, signal.extras().counter.as_ref().map(|counter| counter.span));
            let (behind, counter) = counter(over_equals(i))?;
            signal.extras_mut().counter.get_or_insert(Box::new(Spanned::new(counter, i.span_to(behind))));
            Ok((behind, ()))
        }
        "checksum" => {
            check_once(i, word, signal.extras().checksum.as_ref().map(|checksum| checksum.span));
            let (behind, checksum) = checksum(i.next())?;
            signal.extras_mut().checksum.get_or_insert(Box::new(Spanned::new(checksum, i.span_to(behind))));
            Ok((behind, ()))
        }
        "shown" => {
            check_once(i, word, signal.extras().shown);
            let help = "the one other way to show a number is written `shown in hex`";
            let (behind, _) = want_so("`in`", help, super::basic::word("in"))(i.next())?;
            let (behind, _) = want_so("`hex`", help, super::basic::word("hex"))(behind)?;
            signal.extras_mut().shown.get_or_insert(i.span_to(behind));
            Ok((behind, ()))
        }
        _ => common(word, i, &mut signal.head),
    }
}

/// `absent 0x1FFF, 3..10`
fn special<'a>(word: &str, i: Cursor<'a>, values: &mut Vec<RawRange>) -> Parsed<'a, ()> {
    check_once(i, word, values.first().map(|first| first.span));
    let (behind, found) =
        want_so("a raw value", "special values are raw, as in `absent 0x1FFF` or `fault 250..254`", raw_ranges)(
            over_equals(i),
        )?;
    values.extend(found);
    Ok((behind, ()))
}

/// `NAME`, `{ ... }`
fn states_clause(i: Cursor<'_>) -> Parsed<'_, StatesClause<'_>> {
    match super::basic::name(i) {
        Ok((behind, table)) => Ok((behind, StatesClause::Table(table))),
        Err(_) => own(i, CLAUSES.begins).map(|(behind, words)| (behind, StatesClause::Own(words))),
    }
}

/// `LOW..HIGH step N`
fn counter(i: Cursor<'_>) -> Parsed<'_, Counter> {
    let (behind, (low, high)) = want_so(
        "the first and last count",
        "a counter is written `counter 0..14`, with `step 2` behind it where it does not count by one",
        span_of_integers,
    )(i)?;
    let (behind, step) = opt(preceded(word("step"), want("the step", integer))).parse(behind)?;
    Ok((behind, Counter { low, high, step }))
}
