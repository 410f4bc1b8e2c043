//! Groups of signals that are there several times: `repeat ... { ... }`.

use nom::Parser;
use nom::combinator::opt;
use nom::sequence::preceded;

use super::basic::{keyword, missing, name, want_so, word, words};
use super::block::{find_open, opens_wrongly};
use super::clause::{Clauses, check_once};
use super::cursor::{Cursor, Parsed, broken, elsewhere};
use super::frame_body::{Inside, body};
use super::number::integer;
use super::recover::{skip_until, tell};
use super::tree::{Body, Repeat, Times};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule};

const HELP: &str = "a group is written `repeat from byte 2 to end, up to 32 { ... }`, `repeat 4 times { ... }`, `repeat COUNT times, up to 32 { ... }` or `repeat from byte 1 to end as rows { ... }`";

const CLAUSES: Clauses = Clauses {
    words: &["up", "size", "as"],
    begins: |i| match i.word() {
        "as" => i.nth_word(1) == "rows",
        "up" => i.nth_word(1) == "to",
        "size" => i.nth_kind(1) == Some(TokenKind::Number),
        _ => false,
    },
    first_is_free: false,
    has_block: true,
};

/// `repeat from byte N HOW OFTEN, up to N, size N bytes { ... }`: whatever is wrong with the head, the block is read.
pub(super) fn repeat(begin: Cursor<'_>, inside: Inside) -> Parsed<'_, Repeat<'_>> {
    let mut repeat =
        Repeat { from: None, times: None, up_to: None, size: None, head: begin.span(), body: Body::default() };
    let i = match start_and_times(begin.next(), &mut repeat) {
        Ok((behind, ())) => behind,
        Err(problem) => {
            tell(begin, problem);
            let begins_block = |i: Cursor<'_>| i.kind() == Some(TokenKind::OpenBrace) || opens_wrongly(i);
            skip_until(begin, |i| begins_block(i) || (i.kind() == Some(TokenKind::Comma) && (CLAUSES.begins)(i.next())))
        }
    };
    let (behind, _) = CLAUSES.read(i, |word, i| clause(word, i, &mut repeat));
    repeat.head = begin.span_to(behind);
    let Some(open) = find_open(begin, behind) else {
        behind.context.report(missing(behind, "the block of the group between braces").help(HELP));
        return Ok((behind, repeat));
    };
    let (behind, body) = body(open, inside);
    repeat.body = body;
    Ok((behind, repeat))
}

/// `from byte N to end`, `from byte N to end as rows`, `4 times`, `COUNT times`
fn start_and_times<'a>(i: Cursor<'a>, repeat: &mut Repeat<'a>) -> Parsed<'a, ()> {
    let number = want_so("the number of the byte where the first one begins", HELP, integer);
    // A signal may be called `from`, too.
    let (i, from) =
        if i.nth_word(1) == "times" { (i, None) } else { opt(preceded(words("from", "byte"), number)).parse(i)? };
    repeat.from = from;
    let (i, times) = match (integer(i), i.word()) {
        (Ok((behind, number)), _) => times_word(behind).map(|(behind, ())| (behind, Times::Number(number))),
        (Err(nom::Err::Failure(problem)), _) => Err(nom::Err::Failure(problem)),
        (Err(_), "to") if i.nth_word(1) != "times" => to_end(i.next()),
        (Err(_), _) => match name(i) {
            Ok((behind, count)) => times_word(behind).map(|(behind, ())| (behind, Times::Signal(count))),
            Err(_) => broken(missing(i, "how often the group is there").help(HELP)),
        },
    }?;
    repeat.times = Some(times);
    Ok((i, ()))
}

/// `end`, `end as rows`
fn to_end(i: Cursor<'_>) -> Parsed<'_, Times<'_>> {
    let (behind, _) = keyword("end", HELP)(i)?;
    if behind.word() != "as" {
        return Ok((behind, Times::ToEnd));
    }
    keyword("rows", HELP).map(|_| Times::Rows).parse(behind.next())
}

fn times_word(i: Cursor<'_>) -> Parsed<'_, ()> {
    let (behind, _) = keyword("times", HELP)(i)?;
    if behind.word() == "as" && behind.nth_word(1) == "rows" {
        let help = "rows go on to the end of the payload: write `to end as rows`, without a number of times";
        return broken(rows_elsewhere(behind, help));
    }
    Ok((behind, ()))
}

fn rows_elsewhere(i: Cursor<'_>, help: &str) -> Diagnostic {
    let site = i.site(i.span_to(i.next().next()));
    Diagnostic::new(Rule::UnexpectedWord, site, "`as rows` stands directly behind `to end`").here("not here").help(help)
}

fn clause<'a>(word_here: &str, i: Cursor<'a>, repeat: &mut Repeat<'a>) -> Parsed<'a, ()> {
    match word_here {
        "up" => {
            check_once(i, word_here, repeat.up_to.map(|number| number.span));
            let (behind, _) = keyword("to", HELP)(i.next())?;
            let (behind, number) = want_so("the greatest number of elements", HELP, integer)(behind)?;
            repeat.up_to.get_or_insert(number);
            Ok((behind, ()))
        }
        "size" => {
            check_once(i, word_here, repeat.size.map(|number| number.span));
            let (behind, number) =
                want_so("the bytes of one element", "the size of an element is written `size 4 bytes`", integer)(
                    i.next(),
                )?;
            let (behind, _) = opt(|i| match word("bytes")(i) {
                Ok(read) => Ok(read),
                Err(_) => word("byte")(i),
            })
            .parse(behind)?;
            repeat.size.get_or_insert(number);
            Ok((behind, ()))
        }
        "as" if i.nth_word(1) == "rows" => {
            i.context.report(rows_elsewhere(i, "write `repeat to end as rows, size 4 bytes { ... }`"));
            // What is meant is clear.
            if matches!(repeat.times, Some(Times::ToEnd)) {
                repeat.times = Some(Times::Rows);
            }
            Ok((i.next().next(), ()))
        }
        _ => elsewhere(),
    }
}
