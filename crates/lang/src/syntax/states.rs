//! State words: `states NAME { 0 off, 1 on }`.

use nom::Parser;
use nom::combinator::opt;

use super::basic::{leaf, missing, name, one_of, text, want, want_so, word};
use super::block::{Open, find_open};
use super::clause::{COMMON, Clauses, begins_common, common};
use super::cursor::{Cursor, Parsed};
use super::map::head;
use super::number::raw_range;
use super::recover::{at_item, skip_until, tell, unexpected};
use super::tree::{SpecialWord, StateWord, States};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule};

const TABLE: Clauses = Clauses { words: &COMMON, begins: begins_common, first_is_free: false, has_block: true };

/// `states NAME "title" { ... }`
pub(super) fn table(i: Cursor<'_>) -> Parsed<'_, States> {
    let (behind, mut head) = head("the name of the table of states")(i.next())?;
    let (behind, _) = TABLE.read(behind, |word, i| common(word, i, &mut head));
    let Some(open) = find_open(i, behind) else {
        let message = missing(behind, "the list of states between braces").help("write `states NAME { 0 off, 1 on }`");
        i.context.report(message);
        return Ok((behind, States { head, words: Vec::new() }));
    };
    let (behind, words) = list(open, state_word);
    Ok((behind, States { head, words }))
}

/// `{ X, X }`: a line end counts as a comma, and a comma behind the last one does no harm. A broken one is told and left out.
pub(super) fn list<'a, T>(open: Open<'a>, read: impl Fn(Cursor<'a>) -> Parsed<'a, T>) -> (Cursor<'a>, Vec<T>) {
    let mut all = Vec::new();
    let mut i = open.first();
    loop {
        match i.kind() {
            Some(TokenKind::CloseBrace) => return (i.next(), all),
            Some(TokenKind::Comma | TokenKind::LineEnd | TokenKind::Note) => i = i.next(),
            kind if kind.is_none() || at_item(i) => {
                open.keep_unclosed(i);
                i.context.settle_unclosed();
                return (i, all);
            }
            _ => i = one(i, &read, &mut all),
        }
    }
}

fn one<'a, T>(i: Cursor<'a>, read: &impl Fn(Cursor<'a>) -> Parsed<'a, T>, all: &mut Vec<T>) -> Cursor<'a> {
    let to_next = |i| skip_until(i, |i| matches!(i.kind(), Some(TokenKind::Comma)));
    let behind = match read(i) {
        Ok((behind, one)) => {
            all.push(one);
            behind
        }
        Err(problem) => {
            tell(i, problem);
            return progress(i, to_next(i));
        }
    };
    if behind.at_stop() {
        return progress(i, behind);
    }
    let place = i.site(behind.previous().after());
    if behind.kind() == Some(TokenKind::Number) {
        let message = Diagnostic::new(Rule::MissingComma, place, "the comma between two entries of a list is missing")
            .here("put `,` here")
            .fix(place, ",");
        i.context.report(message);
        return behind;
    }
    i.context.report(unexpected(behind));
    to_next(behind)
}

/// Never stands still.
fn progress<'a>(i: Cursor<'a>, behind: Cursor<'a>) -> Cursor<'a> {
    if behind.left() < i.left() { behind } else { i.next() }
}

const MEANINGS: [(&str, SpecialWord); 2] = [("absent", SpecialWord::Absent), ("fault", SpecialWord::Fault)];

/// `3..10 forward "Forward gear" as absent`
pub(super) fn state_word(i: Cursor<'_>) -> Parsed<'_, StateWord> {
    const HELP: &str = "a state is a raw value and its word, as in `0 off` or `3..10 forward \"Forward gear\"`";
    let (behind, values) = want_so("a raw value", HELP, raw_range)(i)?;
    let (behind, word_of_state) = want_so("the word for this value", HELP, name)(behind)?;
    let (behind, title) = opt(text).parse(behind)?;
    let (behind, meaning) = match word("as")(behind) {
        Ok((behind, _)) => {
            one_of("a meaning of a state", &MEANINGS)(behind).map(|(behind, meaning)| (behind, Some(meaning)))?
        }
        Err(_) => (behind, None),
    };
    Ok((behind, StateWord { values, word: word_of_state, title, meaning }))
}

/// The brace that opens a list of states of a signal's own.
pub(super) fn own<'a>(i: Cursor<'a>) -> Parsed<'a, Vec<StateWord>> {
    want("the name of a table of states, or a list between braces", leaf(TokenKind::OpenBrace))(i)?;
    Ok(list(Open::at(i), state_word))
}
