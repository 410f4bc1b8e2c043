//! What stands in front of items and statements: notes, and the rules that are quiet there.

use nom::Parser;

use super::basic::{comma_list, want_so};
use super::cursor::{Cursor, Parsed, elsewhere};
use super::recover::{finish, give_up, tell};
use super::tree::{Front, Name};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span, Spanned};

/// Gathers notes and `allow` lines until an item takes them.
#[derive(Debug, Default)]
pub(super) struct Gathered<'a> {
    front: Front<'a>,
    /// The `allow` lines, to point at.
    lines: Option<Span>,
}

impl<'a> Gathered<'a> {
    /// Adds the note that is here.
    pub(super) fn note(&mut self, i: Cursor<'a>) -> Cursor<'a> {
        let written = i.context.text(i.span());
        let said = written.strip_prefix("##").unwrap_or(written);
        let said = said.strip_prefix(' ').unwrap_or(said).trim_end();
        match &mut self.front.note {
            Some(note) => {
                let joined = note.value.to_mut();
                joined.push('\n');
                joined.push_str(said);
                note.span = note.span.to(i.span());
            }
            none => *none = Some(Box::new(Spanned::new(said.into(), i.span()))),
        }
        i.next()
    }

    /// Adds the `allow` line that is here. `true` where an empty line or the end of the file is behind it.
    pub(super) fn allow(&mut self, i: Cursor<'a>) -> (Cursor<'a>, bool) {
        i.context.has_allow.set(true);
        let end = match allow(i) {
            Ok((behind, rules)) => {
                self.front.allow.extend(rules);
                let line = i.span_to(behind);
                self.lines = Some(self.lines.map_or(line, |lines| lines.to(line)));
                behind
            }
            Err(problem) => {
                tell(i, problem);
                return (give_up(i), false);
            }
        };
        let has_gap = end.first().is_none_or(|leaf| leaf.has_gap)
            || (end.kind() == Some(TokenKind::LineEnd) && end.nth_kind(1).is_none());
        (finish(end), has_gap)
    }

    /// Hands everything to an item, or to a statement.
    pub(super) fn take(&mut self) -> Front<'a> {
        self.lines = None;
        std::mem::take(&mut self.front)
    }

    /// Hands the `allow` lines to the file.
    pub(super) fn take_allowed(&mut self) -> Option<(Span, Vec<Name<'a>>)> {
        let lines = self.lines.take()?;
        Some((lines, std::mem::take(&mut self.front.allow)))
    }

    /// At the end of a block: an `allow` without a statement behind it.
    pub(super) fn check_taken(&self, i: Cursor<'_>) {
        if let Some(lines) = self.lines {
            let message = Diagnostic::new(Rule::MissingPart, i.site(lines), "no statement stands behind this `allow`")
                .here("allows nothing")
                .help("inside a block, `allow` quiets rules in the statement behind it; put it in front of that statement");
            i.context.report(message);
        }
    }
}

/// `allow RULE, RULE`
fn allow(i: Cursor<'_>) -> Parsed<'_, Vec<Name<'_>>> {
    want_so(
        "the name of a rule",
        "messages show the names of their rules, as in `allow still-guessed`",
        comma_list(rule_name),
    )
    .parse(i.next())
}

/// `signal-overlap`: words and the dashes between them, without blanks.
fn rule_name(i: Cursor<'_>) -> Parsed<'_, Name<'_>> {
    if i.kind() != Some(TokenKind::Word) {
        return elsewhere();
    }
    let mut behind = i.next();
    while matches!(behind.kind(), Some(TokenKind::Minus | TokenKind::Word | TokenKind::Number)) && behind.touches() {
        behind = behind.next();
    }
    let span = i.span_to(behind);
    Ok((behind, Spanned::new(i.context.text(span).into(), span)))
}
