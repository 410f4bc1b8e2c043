//! Units behind formulas.

use std::borrow::Cow;

use wirelore_model::unit::{fold_look_alike, recognise};

use super::basic::{shortened, text};
use super::cursor::{Cursor, Parsed, broken, elsewhere};
use super::tree::UnitText;
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Spanned};

/// A unit: in quotes, or a run of characters without a blank.
pub(super) fn unit(i: Cursor<'_>) -> Parsed<'_, Spanned<UnitText<'_>>> {
    match i.kind() {
        Some(TokenKind::Text) => {
            let (behind, quoted) = text(i)?;
            Ok((behind, Spanned::new(UnitText::Quoted(quoted.value), quoted.span)))
        }
        Some(TokenKind::Word) if i.word() == "raw" => broken(no_product(i)),
        Some(TokenKind::OpenParen) => broken(no_product(i)),
        Some(TokenKind::Number) if !begins_per(i) => broken(no_product(i)),
        // Read on behind the message that the 1 in front of it is unclear.
        Some(TokenKind::Slash) if i.context.text(i.previous()) == "1" => symbol(i),
        Some(TokenKind::Word | TokenKind::Mark | TokenKind::Number) => symbol(i),
        _ => elsewhere(),
    }
}

/// `1/min`: the one number that a unit begins with.
fn begins_per(i: Cursor<'_>) -> bool {
    i.context.text(i.span()) == "1" && i.nth_kind(1) == Some(TokenKind::Slash) && i.next().touches()
}

/// Behind the leaves that touch one another.
pub(super) fn run(i: Cursor<'_>) -> Cursor<'_> {
    let mut behind = i.next();
    while behind.touches() && !behind.at_stop() && behind.kind() != Some(TokenKind::Text) {
        behind = behind.next();
    }
    behind
}

fn symbol(i: Cursor<'_>) -> Parsed<'_, Spanned<UnitText<'_>>> {
    let behind = run(i);
    let mut span = i.span_to(behind);
    if i.kind() == Some(TokenKind::Slash) {
        span = i.previous().to(span);
    }
    let written = i.context.text(span);
    let folded: Cow<'_, str> = if written.chars().any(|c| fold_look_alike(c) != c) {
        written.chars().map(fold_look_alike).collect()
    } else {
        written.into()
    };
    if folded != written {
        let site = i.site(span);
        let message = Diagnostic::new(
            Rule::LookAlike,
            site,
            format!("`{}` has a character that looks like another one", shortened(written)),
        )
        .here(format!("read as `{folded}`"))
        .help("searching for the unit finds only one of the two")
        .fix(site, &*folded);
        i.context.report(message);
    }
    if let Some((behind, joined)) = unit_with_blank(i, behind, &folded) {
        return Ok((behind, Spanned::new(UnitText::Symbol(joined.into()), i.span_to(behind))));
    }
    if behind.kind() == Some(TokenKind::Slash) && !behind.touches() {
        return broken(blank_inside(i, behind));
    }
    Ok((behind, Spanned::new(UnitText::Symbol(folded), span)))
}

/// `N m`, `° C`: two words that make one known unit; told, and read as that.
fn unit_with_blank<'a>(i: Cursor<'a>, second: Cursor<'a>, first: &str) -> Option<(Cursor<'a>, String)> {
    if !matches!(second.kind(), Some(TokenKind::Word | TokenKind::Mark)) || second.first()?.is_first {
        return None;
    }
    let behind = run(second);
    if !behind.at_stop() {
        return None;
    }
    let rest = i.context.text(second.span_to(behind));
    // The degree belongs to its letter; between any other two, a product is meant (`m s` is not the millisecond).
    let written = if matches!(first, "°" | "deg") { format!("{first}{rest}") } else { format!("{first}·{rest}") };
    let joined = recognise(&written)?.unit.symbol();
    let site = i.site(i.span_to(behind));
    let message = Diagnostic::new(Rule::UnexpectedWord, site, "a unit is written without blanks")
        .here("one unit?")
        .help(format!("write `{joined}`"))
        .fix(site, joined);
    i.context.report(message);
    Some((behind, joined.to_owned()))
}

/// `L / h`
fn blank_inside(i: Cursor<'_>, slash: Cursor<'_>) -> Diagnostic {
    let behind = run(slash.next());
    let whole = i.span_to(behind);
    let joined: String = i.context.text(whole).split_whitespace().collect();
    Diagnostic::new(Rule::UnexpectedWord, i.site(whole), "a unit is written without blanks")
        .here("one unit?")
        .help(format!("write `{}`, or put the unit in quotes", shortened(&joined)))
        .fix(i.site(whole), joined)
}

/// Two operands without a sign between them.
fn no_product(i: Cursor<'_>) -> Diagnostic {
    let before = shortened(i.context.text(i.previous()));
    let found = shortened(i.context.text(i.span()));
    Diagnostic::new(
        Rule::UnexpectedWord,
        i.site(i.span()),
        format!("there is no sign between `{before}` and `{found}`"),
    )
    .here("a unit or an operator goes in front of this")
    .help(format!("a product is written `{before} * {found}`"))
}
