//! State words: `states NAME { 0 off, 1 on }`.

use nom::Parser;
use nom::combinator::opt;

use super::basic::{missing, name, one_of, text, want_so, word};
use super::block::find_open;
use super::clause::{COMMON, Clauses, begins_common, common};
use super::cursor::{Cursor, Parsed};
use super::list::List;
use super::map::head;
use super::number::{any_raw_range, raw_range};
use super::tree::{SpecialWord, StateWord, States};
use crate::lex::TokenKind;

const LIST: List = List {
    word: "states",
    is_behind: |_| false,
    begins_bare: |i| matches!(i.kind(), Some(TokenKind::Number | TokenKind::Minus)),
    what: "the list of states between braces",
    help: "write `states NAME { 0 off, 1 on }`, or `states { 0 off, 1 on }` behind a signal",
};

const TABLE: Clauses = Clauses { words: &COMMON, begins: begins_common, first_is_free: false, has_block: true };

/// `states NAME "title" { ... }`
pub(super) fn table(i: Cursor<'_>) -> Parsed<'_, States<'_>> {
    let (behind, mut head) = head("the name of the table of states")(i.next())?;
    if !matches!(behind.kind(), Some(TokenKind::Comma | TokenKind::OpenBrace))
        && let Ok((behind, words)) = LIST.read(behind, state_word)
    {
        return Ok((behind, States { head, words }));
    }
    let (behind, _) = TABLE.read(behind, |word, i| common(word, i, &mut head));
    let Some(open) = find_open(i, behind) else {
        let message = missing(behind, "the list of states between braces").help("write `states NAME { 0 off, 1 on }`");
        i.context.report(message);
        return Ok((behind, States { head, words: Vec::new() }));
    };
    let (behind, words) = LIST.read_from(i, open, state_word);
    Ok((behind, States { head, words }))
}

const MEANINGS: [(&str, SpecialWord); 2] = [("absent", SpecialWord::Absent), ("fault", SpecialWord::Fault)];

/// `3..10 forward "Forward gear" as absent`
pub(super) fn state_word(i: Cursor<'_>) -> Parsed<'_, StateWord<'_>> {
    const HELP: &str = "a state is a raw value and its word, as in `0 off` or `3..10 forward \"Forward gear\"`";
    let (behind, values) =
        want_so("a raw value", HELP, if is_hexadecimal_entry(i) { any_raw_range } else { raw_range })(i)?;
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

/// `FF invalid`: a word in front of the word of the state can only be its value, if it can be a number at all.
fn is_hexadecimal_entry(i: Cursor<'_>) -> bool {
    i.nth_kind(1) == Some(TokenKind::Word) && i.word().bytes().all(|byte| !byte.is_ascii_lowercase())
}

/// The list of states of a signal's own.
pub(super) fn own<'a>(i: Cursor<'a>, is_behind: fn(Cursor<'_>) -> bool) -> Parsed<'a, Vec<StateWord<'a>>> {
    List { is_behind, what: "the name of a table of states, or a list between braces,", ..LIST }.read(i, state_word)
}
