//! Clauses: what may follow the head of a statement, each behind a comma.

use nom::Parser;
use nom::combinator::opt;
use wirelore_model::Grade;

use super::basic::{keyword, name, shortened, text, want};
use super::block::opens_wrongly;
use super::cursor::{Cursor, Parsed, elsewhere};
use super::recover::{begins_statement, is_idle_comma, skip_until, tell, unexpected};
use super::tree::{Certainty, Head, Name};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span, Spanned};
use wirelore_model::nearest_name;

/// The clauses that one kind of statement knows.
#[derive(Clone, Copy)]
pub(super) struct Clauses {
    /// The words that they begin with.
    pub(super) words: &'static [&'static str],
    /// Whether one of them begins here: the word and a look at what is behind it.
    pub(super) begins: fn(Cursor<'_>) -> bool,
    /// Whether the first one may stand without a comma.
    pub(super) first_is_free: bool,
    /// Whether a brace ends them.
    pub(super) has_block: bool,
}

impl Clauses {
    /// Reads clauses to the end of the statement, or to its block. `read` is given the clause's word and the place of it.
    ///
    /// Gives the place behind, and whether all could be read.
    pub(super) fn read<'a>(
        &self,
        start: Cursor<'a>,
        mut read: impl FnMut(&str, Cursor<'a>) -> Parsed<'a, ()>,
    ) -> (Cursor<'a>, bool) {
        let mut i = start;
        let mut all = true;
        let mut is_free = self.first_is_free;
        while !self.is_over(i) {
            if i.kind() == Some(TokenKind::Comma) {
                let behind = i.next();
                if is_idle_comma(i) || self.is_over(behind) {
                    i.context.report(unexpected(i));
                    return (behind, all);
                }
                i = behind;
            } else if (self.begins)(i) {
                if !is_free {
                    report_missing_comma(i);
                }
            } else if i.next().at_stop() || nearest_name(i.word(), self.words.iter().copied()).is_none() {
                i.context.report(unexpected(i));
                all = false;
                i = self.skip(i);
                continue;
            }
            is_free = false;
            let (behind, is_right) = self.read_one(i, &mut read);
            i = behind;
            all &= is_right;
        }
        (i, all)
    }

    fn read_one<'a>(
        &self,
        i: Cursor<'a>,
        read: &mut impl FnMut(&str, Cursor<'a>) -> Parsed<'a, ()>,
    ) -> (Cursor<'a>, bool) {
        match read(i.word(), i) {
            Ok((behind, ())) => (behind, true),
            Err(nom::Err::Failure(problem)) => {
                tell(i, nom::Err::Failure(problem));
                (self.skip(i), false)
            }
            Err(_) => {
                let near = nearest_name(i.word(), self.words.iter().copied());
                i.context.report(self.unknown(i, near));
                match near.map(|near| read(near, i)) {
                    Some(Ok((behind, ()))) => (behind, true),
                    _ => (self.skip(i), false),
                }
            }
        }
    }

    fn is_over(&self, i: Cursor<'_>) -> bool {
        i.at_end() || (self.has_block && (i.kind() == Some(TokenKind::OpenBrace) || opens_wrongly(i)))
    }

    /// On to the next comma with a clause behind it.
    fn skip<'a>(&self, i: Cursor<'a>) -> Cursor<'a> {
        skip_until(i, |i| match i.kind() {
            Some(TokenKind::Comma) => (self.begins)(i.next()) || begins_statement(i.next()),
            Some(TokenKind::OpenBrace) => self.has_block,
            _ => self.has_block && opens_wrongly(i),
        })
    }

    fn unknown(&self, i: Cursor<'_>, near: Option<&'static str>) -> Diagnostic {
        let site = i.site(i.span());
        let found = shortened(i.context.text(i.span()));
        if i.kind() != Some(TokenKind::Word) {
            return Diagnostic::new(
                Rule::UnexpectedWord,
                site,
                format!("a clause begins with a word, not with `{found}`"),
            )
            .here("behind a comma stands a clause")
            .help(self.choice());
        }
        let message =
            Diagnostic::new(Rule::UnknownClause, site, format!("`{found}` is not a clause of this statement"));
        match near {
            Some(near) => message.here(format!("did you mean `{near}`?")).fix(site, near),
            None => message.here("not known here").help(self.choice()),
        }
    }

    fn choice(&self) -> String {
        let words: Vec<_> = self.words.iter().map(|word| format!("`{word}`")).collect();
        format!("the clauses that can stand here are {}", words.join(", "))
    }
}

fn report_missing_comma(i: Cursor<'_>) {
    let place = i.site(i.previous().after());
    let message =
        Diagnostic::new(Rule::MissingComma, place, format!("the comma in front of `{}` is missing", i.word()))
            .here("put `,` here")
            .help("the head of a statement has no commas; every clause behind it takes one")
            .fix(place, ",");
    i.context.report(message);
}

/// Tells a clause that is there twice.
pub(super) fn check_once(i: Cursor<'_>, word: &str, earlier: Option<Span>) {
    let Some(earlier) = earlier else { return };
    let message = Diagnostic::new(Rule::RepeatedClause, i.site(i.span()), format!("`{word}` is said twice"))
        .here("said again")
        .remark(i.site(earlier), "said first here")
        .help(
            "keep the one that is meant; several values of one clause stand behind one word, with commas between them",
        );
    i.context.report(message);
}

/// The words of [`common`].
pub(super) const COMMON: [&str; 6] = ["called", "confirmed", "likely", "guessed", "measured", "from"];

/// Whether one of the clauses that every item knows begins here.
pub(super) fn begins_common(i: Cursor<'_>) -> bool {
    match i.word() {
        "called" => i.nth_kind(1) == Some(TokenKind::Text),
        "confirmed" | "likely" | "guessed" | "measured" => i.nth_kind(1) == Some(TokenKind::Text) || i.next().at_stop(),
        "from" => i.nth_word(1) == "document",
        _ => false,
    }
}

/// Reads `called "..."` or a certainty into a head.
pub(super) fn common<'a>(word: &str, i: Cursor<'a>, head: &mut Head<'a>) -> Parsed<'a, ()> {
    let grade = match word {
        "called" => {
            check_once(i, word, head.called.as_ref().map(|called| called.span));
            let (behind, called) = want("the name in the other document, in quotes,", text)(i.next())?;
            head.called.get_or_insert_with(|| Box::new(called));
            return Ok((behind, ()));
        }
        "confirmed" => Grade::Confirmed,
        "likely" => Grade::Likely,
        "guessed" => Grade::Guessed,
        "measured" => Grade::Measured,
        "from" => {
            keyword("document", "write `from document \"...\"`")(i.next())?;
            Grade::Document
        }
        _ => return elsewhere(),
    };
    check_once(i, "a certainty", head.certainty.as_ref().map(|certainty| certainty.span));
    let (behind, evidence) = match grade {
        Grade::Document => want("the document's title in quotes", text).map(Some).parse(i.next().next())?,
        _ => opt(text).parse(i.next())?,
    };
    let certainty = Certainty { grade, evidence: evidence.map(|evidence| evidence.value) };
    head.certainty.get_or_insert_with(|| Box::new(Spanned::new(certainty, i.span_to(behind))));
    Ok((behind, ()))
}

/// A list of names: `A, B, C`. A word that begins a clause ends it, and so does one with a number or text behind it, which no name has.
pub(super) fn names<'a>(i: Cursor<'a>, clauses: Clauses) -> Parsed<'a, Vec<Name<'a>>> {
    let (mut i, first) = name(i)?;
    let mut all = vec![first];
    while i.kind() == Some(TokenKind::Comma) && is_listed(i.next(), clauses) {
        let (behind, next) = name(i.next())?;
        all.push(next);
        i = behind;
    }
    Ok((i, all))
}

/// Whether the word here goes on a list of names, and does not begin a clause.
pub(super) fn is_listed(i: Cursor<'_>, clauses: Clauses) -> bool {
    let is_name = i.kind() == Some(TokenKind::Word) && !(clauses.begins)(i) && !begins_statement(i);
    is_name
        && match i.nth_kind(1) {
            Some(TokenKind::Number | TokenKind::Text) => false,
            Some(TokenKind::Word) => {
                (clauses.begins)(i.next()) || nearest_name(i.word(), clauses.words.iter().copied()).is_none()
            }
            _ => true,
        }
}
