//! Ways on behind a mistake, and the ends of statements.

use super::basic::shortened;
use super::cursor::{Cursor, Parsed, Problem};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span};

/// Words that begin an item and never a statement of a block.
const ITEM_ONLY: [&str; 10] =
    ["edition", "vehicle", "network", "ecu", "wire", "states", "layout", "frame", "gateway", "schedule"];

/// Reads a statement as its first word says, and goes on to its end. Where no statement begins so, `unknown` tells it and gives the word
/// that was meant, if that is plain. `None`: it could not be read, and that was told.
pub(super) fn statement<'a, T>(
    i: Cursor<'a>,
    mut read_as: impl FnMut(&str, Cursor<'a>) -> Parsed<'a, T>,
    unknown: impl FnOnce(Cursor<'a>) -> Option<&'static str>,
) -> (Cursor<'a>, Option<(T, Span)>) {
    let read = match read_as(i.word(), i) {
        Err(nom::Err::Error(_)) => match unknown(i) {
            Some(meant) => read_as(meant, i),
            None => return (give_up(i), None),
        },
        read => read,
    };
    match read {
        Ok((behind, said)) => {
            let span = i.span_to(behind);
            (finish(behind), Some((said, span)))
        }
        Err(problem) => {
            tell(i, problem);
            (give_up(i), None)
        }
    }
}

/// Whether an item begins here: its word stands at the very start of a line and has a name or number behind it.
///
/// Nothing else does in a tidy file, so that it ends whatever is still open.
pub(super) fn at_item(i: Cursor<'_>) -> bool {
    let Some(leaf) = i.first() else { return false };
    if leaf.kind != TokenKind::Word
        || !leaf.is_first
        || !matches!(i.nth_kind(1), Some(TokenKind::Word | TokenKind::Number | TokenKind::Text))
    {
        return false;
    }
    let word = i.word();
    let is_word = ITEM_ONLY.contains(&word)
        || (word == "use" && (i.nth_word(1) == "standard" || i.nth_kind(1) == Some(TokenKind::Text)));
    is_word && i.context.is_at_margin(leaf.span)
}

/// Whether a statement begins here beyond doubt, though the one before has not ended: behind a comma at the end of a line.
pub(super) fn begins_statement(i: Cursor<'_>) -> bool {
    if !i.first().is_some_and(|leaf| leaf.is_first) {
        return false;
    }
    let (next, next_word) = (i.nth_kind(1), i.nth_word(1));
    match i.word() {
        "signal" | "when" | "pass" | "copy" => next == Some(TokenKind::Word),
        "sent" | "read" | "protected" => next_word == "by",
        "length" => next == Some(TokenKind::Number),
        "otherwise" => next == Some(TokenKind::OpenBrace),
        "repeat" => matches!(next_word, "from" | "to") || i.nth_word(2) == "times",
        "unknown" | "unused" => matches!(next_word, "bit" | "bits" | "byte" | "bytes" | "lsb" | "msb"),
        "use" => next_word == "layout",
        "marks" => next_word == "j1939",
        _ => at_item(i),
    }
}

/// Words that only items begin with.
pub(super) fn is_item_word(word: &str) -> bool {
    ITEM_ONLY.contains(&word)
}

/// Goes on to the first leaf outside of inner braces for which `stop` holds, or to where the statement ends.
pub(super) fn skip_until(mut i: Cursor<'_>, stop: impl Fn(Cursor<'_>) -> bool) -> Cursor<'_> {
    let mut depth = 0_usize;
    let mut begins = true;
    while let Some(leaf) = i.first() {
        if !begins && at_item(i) {
            return i;
        }
        begins = false;
        match leaf.kind {
            TokenKind::LineEnd | TokenKind::CloseBrace if depth == 0 => return i,
            _ if depth == 0 && stop(i) => return i,
            TokenKind::OpenBrace => depth += 1,
            TokenKind::CloseBrace => depth -= 1,
            _ => {}
        }
        i = i.next();
    }
    i
}

/// Over the rest of a statement and the block that it opens.
pub(super) fn skip_statement(i: Cursor<'_>) -> Cursor<'_> {
    skip_until(i, |_| false)
}

/// Over the rest of a head, to the brace that opens its block.
pub(super) fn skip_head(i: Cursor<'_>) -> Cursor<'_> {
    skip_until(i, |i| i.kind() == Some(TokenKind::OpenBrace))
}

/// Tells a problem. [`Problem::Elsewhere`] comes here only if a parser was asked for something optional as if it had to be there.
pub(super) fn tell(i: Cursor<'_>, problem: nom::Err<Problem>) {
    match problem {
        nom::Err::Error(Problem::Broken(message)) | nom::Err::Failure(Problem::Broken(message)) => {
            i.context.report(*message)
        }
        _ => i.context.report(unexpected(i)),
    }
}

/// Whether a comma is here that has nothing behind it.
pub(super) fn is_idle_comma(i: Cursor<'_>) -> bool {
    i.kind() == Some(TokenKind::Comma) && (i.next().at_stop() || begins_statement(i.next()))
}

fn idle_comma(i: Cursor<'_>) -> Diagnostic {
    let site = i.site(i.span());
    Diagnostic::new(Rule::MissingPart, site, "nothing stands behind this comma")
        .here("something is missing, or the comma is one too many")
        .help("a comma at the end of a line joins it with the next one")
        .fix(site, "")
}

/// What stands here belongs nowhere.
pub(super) fn unexpected(i: Cursor<'_>) -> Diagnostic {
    if is_idle_comma(i) {
        return idle_comma(i);
    }
    let found = shortened(i.context.text(i.span()));
    let before = shortened(i.context.text(i.previous()));
    let message =
        Diagnostic::new(Rule::UnexpectedWord, i.site(i.span()), format!("`{found}` cannot stand behind `{before}`"));
    match i.kind() {
        Some(TokenKind::Slash) if i.nth_kind(1) == Some(TokenKind::Slash) => {
            message.here("a comment begins with `#`").help("write the remark behind `#` instead of `//`")
        }
        Some(TokenKind::Text) => {
            message.here("a text").help("a title stands directly behind the name, and nowhere else")
        }
        Some(TokenKind::Equals) => message
            .here("not here")
            .help("`=` belongs to a signal, behind its place: `signal NAME in PLACE = FORMULA UNIT`"),
        _ => message
            .here("not expected here")
            .help("a statement ends with its line; its clauses are set apart by commas"),
    }
}

/// The end of a statement: complains about what is left on its line, and goes behind it. Behind a block, the next one may begin at once.
pub(super) fn finish(i: Cursor<'_>) -> Cursor<'_> {
    let is_behind_block = i.context.text(i.previous()) == "}" && i.kind() == Some(TokenKind::Word);
    let i = if i.at_end() || is_behind_block || begins_statement(i) {
        i
    } else {
        i.context.report(unexpected(i));
        if is_idle_comma(i) { i.next() } else { skip_statement(i) }
    };
    over_line_end(i)
}

/// The end of a statement that was complained about already.
pub(super) fn give_up(i: Cursor<'_>) -> Cursor<'_> {
    over_line_end(skip_statement(i))
}

fn over_line_end(i: Cursor<'_>) -> Cursor<'_> {
    if i.kind() == Some(TokenKind::LineEnd) { i.next() } else { i }
}
