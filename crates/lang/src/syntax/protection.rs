//! Protected frames.

use std::borrow::Cow;

use nom::Parser;
use nom::combinator::opt;

use super::basic::{comma_list, keyword, name, want_so, word, words};
use super::checksum::{byte_span, over};
use super::clause::{Clauses, begins_common, check_once, common};
use super::cursor::{Cursor, Parsed};
use super::number::integer;
use super::place::byte_index;
use super::tree::{Head, Protection, Signal};
use crate::Spanned;

const CLAUSES: Clauses = Clauses {
    words: &["data", "at", "over", "delta", "called", "confirmed", "likely", "guessed", "measured", "from"],
    begins: |i| match i.word() {
        "data" => matches!(i.nth_word(1), "id" | "ids"),
        "at" => i.nth_word(1) == "byte",
        "over" => matches!(i.nth_word(1), "byte" | "bytes"),
        "delta" => i.nth_word(1) == "up",
        _ => begins_common(i),
    },
    first_is_free: false,
    has_block: false,
};

const HELP: &str = "a protected frame says `protected by e2e 1 both, data id 0x123`: the profile's number, for profiles 1 and 11 the way in which the data id is mixed in, and the data id";

/// The name under which its counter and its verdicts are shown.
const NAME: &str = "protection";

/// `protected by e2e PROFILE MODE, clauses`, as a signal of which the place follows from the profile; gives its place in the list.
pub(super) fn protection<'a>(i: Cursor<'a>, signals: &mut Vec<Signal<'a>>) -> Parsed<'a, usize> {
    let (behind, _) = keyword("by", HELP)(i.next())?;
    let (behind, _) = keyword("e2e", HELP)(behind)?;
    let (behind, profile) = want_so("the number of the profile", HELP, integer)(behind)?;
    let (behind, mode) = if (CLAUSES.begins)(behind) { (behind, None) } else { opt(name).parse(behind)? };
    let called = Spanned::new(Cow::Borrowed(NAME), i.span_to(behind));
    let mut head = Head { name: called, title: None, called: None, certainty: None };
    let mut written = Protection { profile, mode, data_ids: None, at: None, over: None, delta: None };
    let (behind, all) = CLAUSES.read(behind, |word, i| clause(word, i, &mut written, &mut head));
    let mut signal =
        Signal { head, place: None, kind: None, value: None, unit: None, range: None, extras: None, incomplete: !all };
    signal.extras_mut().protection = Some(Box::new(Spanned::new(written, i.span_to(behind))));
    signals.push(signal);
    Ok((behind, signals.len() - 1))
}

/// One clause.
fn clause<'a>(said: &str, i: Cursor<'a>, written: &mut Protection<'a>, head: &mut Head<'a>) -> Parsed<'a, ()> {
    match said {
        "data" => {
            check_once(i, "data id", written.data_ids.as_ref().map(|ids| ids.span));
            let help = "a data id is written `data id 0x123`, a list `data ids 0x01, 0x02, ...`";
            let (behind, _) = want_so("`id` or `ids`", help, id_or_ids)(i.next())?;
            let (behind, ids) = want_so("the data id", help, comma_list(integer))(behind)?;
            written.data_ids.get_or_insert(Spanned::new(ids, i.span_to(behind)));
            Ok((behind, ()))
        }
        "at" => {
            check_once(i, said, written.at.as_ref().map(|at| at.span));
            let help = "where the header begins is written `at byte 8`";
            let (behind, _) = keyword("byte", help)(i.next())?;
            let (behind, at) = want_so("the first byte of the header", help, byte_index)(behind)?;
            written.at.get_or_insert(Spanned::new(at, i.span_to(behind)));
            Ok((behind, ()))
        }
        "over" => {
            check_once(i, said, written.over.as_ref().map(|over| over.span));
            let help = "what is protected is written `over bytes 0..15`; without it, the whole frame is";
            let (behind, ()) = want_so("`over bytes`", help, over)(i)?;
            let (behind, span) = want_so("the first and last byte that is protected", help, byte_span)(behind)?;
            written.over.get_or_insert(span);
            Ok((behind, ()))
        }
        "delta" => {
            check_once(i, said, written.delta.as_ref().map(|delta| delta.span));
            let help = "how far the count may rise from one message to the next is written `delta up to 3`";
            let (behind, _) = want_so("`up to`", help, words("up", "to"))(i.next())?;
            let (behind, delta) = want_so("the greatest rise", help, integer)(behind)?;
            written.delta.get_or_insert(delta);
            Ok((behind, ()))
        }
        _ => common(said, i, head),
    }
}

fn id_or_ids(i: Cursor<'_>) -> Parsed<'_, ()> {
    word("id").or(word("ids")).map(|_| ()).parse(i)
}
