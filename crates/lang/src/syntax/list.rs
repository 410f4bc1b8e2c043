//! Lists between braces: the words of `states`, the points of a `curve`. However they are damaged, they end where they were meant to.

use super::basic::missing;
use super::block::Open;
use super::cursor::{Cursor, Parsed, broken};
use super::recover::{at_item, begins_statement, skip_until, tell, unexpected};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule};

/// A search for a closing brace goes no further than so many leaves.
const LONGEST_SEARCH: usize = 64;

/// No edit replaces more text than this, in bytes.
const LONGEST_EDIT: usize = 400;

/// What a list belongs to.
#[derive(Clone, Copy)]
pub(super) struct List {
    /// The word in front of it.
    pub(super) word: &'static str,
    /// Whether something begins here that stands behind the list and cannot stand in it.
    pub(super) is_behind: fn(Cursor<'_>) -> bool,
    /// Whether an entry can only be in a list, so that it is one even without its brace.
    pub(super) begins_bare: fn(Cursor<'_>) -> bool,
    /// What to say where there is no list.
    pub(super) what: &'static str,
    /// And how one is written.
    pub(super) help: &'static str,
}

/// How a list begins and ends.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Bounds {
    /// `{ ... }`
    Braces,
    /// `( ... )`, told already.
    Others,
    /// Without an opening brace.
    None,
}

impl List {
    /// `{ X, X }`: a line end counts as a comma, and a comma behind the last one does no harm. A broken one is told and left out.
    pub(super) fn read<'a, T>(self, i: Cursor<'a>, entry: impl Fn(Cursor<'a>) -> Parsed<'a, T>) -> Parsed<'a, Vec<T>> {
        match i.kind() {
            Some(TokenKind::OpenBrace) => Ok(self.entries(i, Open::at(i), Bounds::Braces, &entry)),
            Some(TokenKind::OpenParen | TokenKind::OpenBracket) => {
                let (behind, all) = self.entries(i, Open::at(i), Bounds::Others, &entry);
                self.report_other_braces(i, behind);
                Ok((behind, all))
            }
            _ if (self.begins_bare)(i) => {
                let (behind, all) = self.entries(i, Open::bare(i), Bounds::None, &entry);
                self.report_no_brace(i, behind);
                Ok((behind, all))
            }
            _ => broken(missing(i, self.what).help(self.help)),
        }
    }

    /// The list of an opening brace that stands on the next line, or does not stand there.
    pub(super) fn read_from<'a, T>(
        self,
        begin: Cursor<'a>,
        open: Open<'a>,
        entry: impl Fn(Cursor<'a>) -> Parsed<'a, T>,
    ) -> (Cursor<'a>, Vec<T>) {
        self.entries(begin, open, Bounds::Braces, &entry)
    }

    fn entries<'a, T>(
        self,
        begin: Cursor<'a>,
        open: Open<'a>,
        bounds: Bounds,
        entry: &impl Fn(Cursor<'a>) -> Parsed<'a, T>,
    ) -> (Cursor<'a>, Vec<T>) {
        let mut all = Vec::new();
        let mut i = open.first();
        // Behind the last entry, and whether all so far stand on the line of the opening brace.
        let (mut last, mut is_one_line) = (i, true);
        loop {
            match i.kind() {
                Some(TokenKind::CloseBrace) if bounds == Bounds::None && self.is_of_block(begin, i) => {
                    return (last, all);
                }
                Some(TokenKind::CloseBrace)
                    if is_one_line && last.is_behind(open.first()) && self.is_of_block(begin, i) =>
                {
                    self.report_unclosed(open, last);
                    return (last, all);
                }
                Some(TokenKind::CloseBrace) => {
                    i.context.compare_margins(open.brace(), i.span());
                    i.context.settle_unclosed();
                    return (i.next(), all);
                }
                Some(TokenKind::CloseParen | TokenKind::CloseBracket) => {
                    if bounds == Bounds::Braces {
                        self.report_other_close(open, i);
                    }
                    return (i.next(), all);
                }
                Some(TokenKind::LineEnd) if bounds == Bounds::None => return (i, all),
                Some(TokenKind::Comma) if bounds == Bounds::None && !(self.begins_bare)(i.next()) => return (i, all),
                Some(TokenKind::Comma | TokenKind::LineEnd | TokenKind::Note) => i = i.next(),
                kind if (kind.is_none() || at_item(i)) && !(is_one_line && last.is_behind(open.first())) => {
                    open.keep_unclosed(i);
                    i.context.settle_unclosed();
                    return (i, all);
                }
                _ if self.is_over(i) => {
                    if bounds == Bounds::Braces {
                        self.report_unclosed(open, last);
                    }
                    return (self.way_on(last, i), all);
                }
                _ => {
                    is_one_line &= !i.first().is_some_and(|leaf| leaf.is_first);
                    i = self.one(i, entry, &mut all);
                    last = i;
                }
            }
        }
    }

    /// Whether a closing brace is that of the block around, so that the list has none.
    fn is_of_block<'a>(self, begin: Cursor<'a>, i: Cursor<'a>) -> bool {
        i.first().is_some_and(|leaf| leaf.is_first) && i.context.is_further_in(begin.span(), i.span())
    }

    /// Whether something begins here that ends the list, though no brace does.
    fn is_over(self, i: Cursor<'_>) -> bool {
        let Some(leaf) = i.first() else { return true };
        if leaf.is_first && leaf.kind == TokenKind::Word {
            return begins_statement(i) || begins_other_statement(i);
        }
        (self.is_behind)(i) && !closes_on_this_line(i)
    }

    /// Where to go on behind a list without its brace: in front of the line end that closes its statement, if one does.
    fn way_on<'a>(self, last: Cursor<'a>, i: Cursor<'a>) -> Cursor<'a> {
        let is_at_clause = i.first().is_some_and(|leaf| !leaf.is_first);
        if last.kind() == Some(TokenKind::LineEnd) || (is_at_clause && last.kind() == Some(TokenKind::Comma)) {
            last
        } else {
            i
        }
    }

    fn one<'a, T>(self, i: Cursor<'a>, entry: &impl Fn(Cursor<'a>) -> Parsed<'a, T>, all: &mut Vec<T>) -> Cursor<'a> {
        let to_next = |i| {
            skip_until(i, |i| {
                matches!(i.kind(), Some(TokenKind::Comma | TokenKind::CloseParen | TokenKind::CloseBracket))
            })
        };
        let behind = match entry(i) {
            Ok((behind, one)) => {
                all.push(one);
                behind
            }
            Err(problem) => {
                tell(i, problem);
                return progress(i, to_next(i));
            }
        };
        let is_closed = matches!(behind.kind(), Some(TokenKind::CloseParen | TokenKind::CloseBracket));
        if behind.at_stop() || is_closed || self.is_over(behind) {
            return progress(i, behind);
        }
        let place = i.site(behind.previous().after());
        if behind.kind() == Some(TokenKind::Number) {
            let message =
                Diagnostic::new(Rule::MissingComma, place, "the comma between two entries of a list is missing")
                    .here("put `,` here")
                    .fix(place, ",");
            i.context.report(message);
            return behind;
        }
        i.context.report(unexpected(behind));
        to_next(behind)
    }

    fn report_unclosed<'a>(self, open: Open<'a>, last: Cursor<'a>) {
        let place = last.site(last.previous().after());
        let message =
            Diagnostic::new(Rule::UnclosedBlock, place, format!("the `}}` of this `{}` is missing", self.word))
                .here("put `}` here")
                .remark(last.site(open.brace()), "the list begins here")
                .fix(place, " }");
        last.context.report(message);
    }

    fn report_other_close<'a>(self, open: Open<'a>, close: Cursor<'a>) {
        let site = close.site(close.span());
        let found = close.context.text(close.span());
        let message = Diagnostic::new(
            Rule::UnclosedBlock,
            site,
            format!("the `}}` of this `{}` is missing: `{found}` does not close a `{{`", self.word),
        )
        .here("put `}` here")
        .remark(close.site(open.brace()), "the list begins here")
        .fix(site, "}");
        close.context.report(message);
    }

    fn report_other_braces<'a>(self, open: Cursor<'a>, behind: Cursor<'a>) {
        let found = open.context.text(open.span());
        let message = Diagnostic::new(
            Rule::UnexpectedWord,
            open.site(open.span()),
            format!("the list of this `{}` begins with `{found}`", self.word),
        )
        .here("put `{` here")
        .help(self.help);
        let whole = open.span_to(behind);
        let inside = open.context.text(whole);
        let closed = inside.get(1..).and_then(|inside| inside.strip_suffix([')', ']', '}']));
        open.context.report(match closed.filter(|inside| inside.len() < LONGEST_EDIT) {
            Some(inside) => message.fix(open.site(whole), format!("{{{inside}}}")),
            None => message.fix(open.site(open.span()), "{"),
        });
    }

    fn report_no_brace<'a>(self, first: Cursor<'a>, behind: Cursor<'a>) {
        let place = first.site(first.previous().after());
        let message = Diagnostic::new(Rule::MissingPart, place, format!("the `{{` of this `{}` is missing", self.word))
            .here("put `{` here, and `}` behind the last entry")
            .help(self.help);
        let whole = first.span_to(behind);
        let inside = first.context.text(whole);
        let inside = inside.strip_suffix(['}', ')', ']']).unwrap_or(inside).trim_end();
        first.context.report(if inside.len() < LONGEST_EDIT {
            message.fix(first.site(whole), format!("{{ {inside} }}"))
        } else {
            message
        });
    }
}

/// Statements that may also go on the one in front of them, so that [`begins_statement`] does not count them.
fn begins_other_statement(i: Cursor<'_>) -> bool {
    match i.word() {
        "every" | "jitter" | "timeout" => i.nth_kind(1) == Some(TokenKind::Number),
        "on" => matches!(i.nth_word(1), "change" | "request"),
        "at" => i.nth_word(1) == "least",
        "allow" => i.nth_kind(1) == Some(TokenKind::Word),
        "order" => matches!(i.nth_word(1), "intel" | "motorola" | "mixed"),
        "counting" => matches!(i.nth_word(1), "from" | "bits"),
        _ => false,
    }
}

/// Whether a closing brace stands on the rest of this line.
fn closes_on_this_line(i: Cursor<'_>) -> bool {
    for count in 0..LONGEST_SEARCH {
        match i.nth(count) {
            Some(leaf) if count > 0 && leaf.is_first => return false,
            Some(leaf) if leaf.kind == TokenKind::CloseBrace => return true,
            Some(leaf) if !matches!(leaf.kind, TokenKind::LineEnd | TokenKind::OpenBrace) => {}
            _ => return false,
        }
    }
    false
}

/// Never stands still.
fn progress<'a>(i: Cursor<'a>, behind: Cursor<'a>) -> Cursor<'a> {
    if behind.left() < i.left() { behind } else { i.next() }
}
