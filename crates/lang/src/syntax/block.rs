//! Blocks of statements between braces.

use super::cursor::Cursor;
use super::front::Gathered;
use super::recover::at_item;
use super::tree::Front;
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span};

/// Where a block begins.
#[derive(Clone, Copy)]
pub(super) struct Open<'a> {
    /// The first leaf inside.
    first: Cursor<'a>,
    /// The opening brace; empty where it is missing.
    brace: Span,
    /// What closes it.
    close: TokenKind,
}

impl<'a> Open<'a> {
    /// At an opening brace.
    pub(super) fn at(i: Cursor<'a>) -> Self {
        let close = match i.kind() {
            Some(TokenKind::OpenParen) => TokenKind::CloseParen,
            Some(TokenKind::OpenBracket) => TokenKind::CloseBracket,
            _ => TokenKind::CloseBrace,
        };
        Self { first: i.next(), brace: i.span(), close }
    }

    /// Without an opening brace, at the first leaf inside.
    pub(super) fn bare(first: Cursor<'a>) -> Self {
        Self { first, brace: first.previous().after(), close: TokenKind::CloseBrace }
    }

    /// The opening brace; empty where it is missing.
    pub(super) fn brace(self) -> Span {
        self.brace
    }

    /// The first leaf inside.
    pub(super) fn first(self) -> Cursor<'a> {
        self.first
    }

    /// Keeps in mind that nothing closes this block; the end of the file or an item that begins is here.
    pub(super) fn keep_unclosed(self, i: Cursor<'a>) {
        if self.brace.start < self.brace.end {
            i.context.keep_unclosed(self.brace, if i.first().is_some() { i.span() } else { i.span().after() });
        }
    }
}

/// Reads a block, from its opening brace to behind its closing one. `read` reads one statement with its end into the list.
///
/// An item at the start of a line ends the block too: then its closing brace is missing.
pub(super) fn block<'a, T>(
    open: Open<'a>,
    mut read: impl FnMut(Cursor<'a>, Front<'a>, &mut Vec<T>) -> Cursor<'a>,
) -> (Cursor<'a>, Vec<T>) {
    let context = open.first.context;
    let mut statements = Vec::new();
    if !context.enter() {
        context.report(
            Diagnostic::new(Rule::NestedTooDeep, open.first.site(open.brace), "this block lies too deep in others")
                .here("what is in it was not read")
                .help("64 blocks may lie in one another"),
        );
        return (skip_block(open.first), statements);
    }
    let mut i = open.first;
    let mut gathered = Gathered::default();
    let end = loop {
        match i.kind() {
            None => {
                open.keep_unclosed(i);
                break i;
            }
            Some(TokenKind::CloseBrace) => {
                context.compare_margins(open.brace, i.span());
                break i.next();
            }
            Some(kind) if kind == open.close => break i.next(),
            Some(TokenKind::LineEnd) => i = i.next(),
            Some(TokenKind::Note) => i = gathered.note(i),
            Some(TokenKind::Word) if at_item(i) => {
                open.keep_unclosed(i);
                break i;
            }
            Some(TokenKind::Word) if i.word() == "allow" => i = gathered.allow(i).0,
            Some(_) => {
                let behind = read(i, gathered.take(), &mut statements);
                // A statement takes a leaf at least: whatever went wrong, the loop goes on.
                i = if behind.left() < i.left() { behind } else { i.next() };
            }
        }
    };
    gathered.check_taken(end);
    context.leave();
    (end, statements)
}

/// Over a block without reading it, from its first leaf inside.
fn skip_block(first: Cursor<'_>) -> Cursor<'_> {
    let mut depth = 1_usize;
    let mut i = first;
    while let Some(kind) = i.kind() {
        match kind {
            TokenKind::OpenBrace => depth += 1,
            TokenKind::CloseBrace => depth -= 1,
            TokenKind::Word if at_item(i) => break,
            _ => {}
        }
        i = i.next();
        if depth == 0 {
            break;
        }
    }
    i
}

/// The block of a statement, if it has one: `begin` is where the statement begins, `i` where its head ends.
///
/// A brace on the next line is told, and taken all the same. So is a missing one, where the next line stands further in than the statement.
pub(super) fn find_open<'a>(begin: Cursor<'a>, i: Cursor<'a>) -> Option<Open<'a>> {
    if i.kind() == Some(TokenKind::OpenBrace) {
        return Some(Open::at(i));
    }
    if opens_wrongly(i) {
        i.context.report(wrong_brace(begin, i));
        return Some(Open::at(i));
    }
    let next = i.next();
    if i.kind() != Some(TokenKind::LineEnd) {
        return None;
    }
    if next.kind() == Some(TokenKind::OpenBrace) {
        i.context.report(brace_alone(begin, i));
        return Some(Open::at(next));
    }
    let is_inside = matches!(next.kind(), Some(TokenKind::Word | TokenKind::Number))
        && i.context.is_further_in(next.span(), begin.span());
    if !is_inside {
        return None;
    }
    let place = i.previous().after();
    let message = Diagnostic::new(
        Rule::MissingPart,
        i.site(place),
        format!("the `{{` that opens the block of this `{}` is missing", begin.word()),
    )
    .here("put `{` here")
    .remark(i.site(next.span()), "this line stands further in, as if it were in a block")
    .fix(i.site(place), " {");
    i.context.report(message);
    Some(Open::bare(next))
}

/// Whether a `(` or `[` is here that a line of its own follows, so that a `{` was meant.
pub(super) fn opens_wrongly(i: Cursor<'_>) -> bool {
    let is_other = matches!(i.kind(), Some(TokenKind::OpenParen | TokenKind::OpenBracket));
    is_other && i.next().first().is_none_or(|leaf| leaf.kind == TokenKind::LineEnd || leaf.is_first)
}

fn wrong_brace(begin: Cursor<'_>, i: Cursor<'_>) -> Diagnostic {
    let site = i.site(i.span());
    let found = i.context.text(i.span());
    Diagnostic::new(Rule::UnexpectedWord, site, format!("the block of this `{}` begins with `{found}`", begin.word()))
        .here("put `{` here")
        .help("a block stands between `{` and `}`")
        .fix(site, "{")
}

fn brace_alone(begin: Cursor<'_>, i: Cursor<'_>) -> Diagnostic {
    let brace = i.next().span();
    let between = i.previous().after().to(brace);
    let message = Diagnostic::new(Rule::UnexpectedWord, i.site(brace), "this `{` stands on a line of its own")
        .here(format!("belongs to the line of `{}`", begin.word()))
        .help("a statement ends with its line, so that its block must begin there");
    if i.context.text(between).trim_end_matches('{').trim().is_empty() {
        message.fix(i.site(between), " {")
    } else {
        message
    }
}
