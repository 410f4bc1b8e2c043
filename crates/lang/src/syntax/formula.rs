//! Formulas: `raw * 0.05`, `(raw - 125) * 9/5 + 32`.

use super::algebra::{Operator, RAW, combined, constant, negative};
use super::basic::{leaf, missing, shortened, want_so};
use super::cursor::{Cursor, Parsed, broken};
use super::number::unsigned_exact;
use super::tree::{Formula, Line, Trouble};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span};

/// How deep a formula may be.
const DEEPEST: u32 = 128;

const HELP: &str = "formulas are made of `raw`, numbers, `+ - * /` and parentheses, as in `(raw - 125) * 0.8`";

/// A formula, up to the first leaf that cannot go on it.
pub(super) fn formula(i: Cursor<'_>) -> Parsed<'_, Formula> {
    let (behind, sum) = sum(i, 0)?;
    Ok((behind, sum.formula))
}

/// A formula, or a part of one, and how deep its brackets and operators go.
struct Grown {
    formula: Formula,
    depth: u32,
}

impl Grown {
    fn leaf(line: Line, mentions_raw: bool, span: Span) -> Self {
        Self { formula: Formula { line: Ok(line), mentions_raw, span }, depth: 1 }
    }

    fn join(self, operator: Operator, right: Self) -> Self {
        let span = self.formula.span.to(right.formula.span);
        // What is wrong on the left is told, and nothing that comes behind it.
        let line =
            self.formula.line.and_then(|left| combined(left, operator, right.formula.line?, span, right.formula.span));
        let mentions_raw = self.formula.mentions_raw || right.formula.mentions_raw;
        Self { formula: Formula { line, mentions_raw, span }, depth: self.depth.max(right.depth) + 1 }
    }

    /// With a minus in front of it.
    fn negative(self, span: Span) -> Self {
        let line = self.formula.line.and_then(|line| negative(line).ok_or(Trouble::TooLong(span)));
        Self { formula: Formula { line, span, ..self.formula }, depth: self.depth + 1 }
    }

    /// With parentheses around it: what is wrong with all of it is told of the parentheses too.
    fn in_parentheses(self, span: Span) -> Self {
        let inner = self.formula.span;
        let line = self.formula.line.map_err(|trouble| match trouble {
            Trouble::RawTimesRaw(at) if at == inner => Trouble::RawTimesRaw(span),
            Trouble::TooLong(at) if at == inner => Trouble::TooLong(span),
            other => other,
        });
        Self { formula: Formula { line, span, ..self.formula }, depth: self.depth + 1 }
    }
}

fn too_deep(i: Cursor<'_>) -> Diagnostic {
    Diagnostic::new(Rule::NestedTooDeep, i.site(i.span()), "this formula is too long or too deep")
        .here("not read from here on")
        .help("a formula is `raw` times a number plus a number: work out the numbers first")
}

/// `x + y - z`; `depth` counts what it lies in.
fn sum(i: Cursor<'_>, depth: u32) -> Parsed<'_, Grown> {
    chain(
        i,
        depth,
        |kind| match kind {
            TokenKind::Plus => Some(Operator::Add),
            TokenKind::Minus => Some(Operator::Subtract),
            _ => None,
        },
        |i, depth| chain(i, depth, product_sign, factor),
    )
}

fn product_sign(kind: TokenKind) -> Option<Operator> {
    match kind {
        TokenKind::Star => Some(Operator::Multiply),
        TokenKind::Slash => Some(Operator::Divide),
        _ => None,
    }
}

/// `raw x 0.01`: the letter is told, and taken for the sign.
fn times_letter(i: Cursor<'_>) -> Option<TokenKind> {
    let is_operand = matches!(i.nth_kind(1), Some(TokenKind::Number | TokenKind::OpenParen)) || i.nth_word(1) == "raw";
    (matches!(i.word(), "x" | "X") && is_operand).then_some(TokenKind::Star)
}

fn report_letter(i: Cursor<'_>) {
    let site = i.site(i.span());
    let message = Diagnostic::new(Rule::UnexpectedWord, site, format!("`{}` is not a sign of a formula", i.word()))
        .here("put `*` here")
        .help("a product is written with `*`, as in `raw * 0.01`")
        .fix(site, "*");
    i.context.report(message);
}

/// Operands with operators of one rank between them, taken from the left.
#[inline]
fn chain<'a>(
    i: Cursor<'a>,
    depth: u32,
    operator: fn(TokenKind) -> Option<Operator>,
    operand: impl Fn(Cursor<'a>, u32) -> Parsed<'a, Grown>,
) -> Parsed<'a, Grown> {
    let (mut i, mut left) = operand(i, depth)?;
    while let Some(found) = i.kind().and_then(operator).or_else(|| operator(times_letter(i)?)) {
        if is_unit_behind(i) {
            report_unclear(i);
            break;
        }
        if i.kind() == Some(TokenKind::Word) {
            report_letter(i);
        }
        let (behind, right) = operand(i.next(), depth)?;
        left = left.join(found, right);
        if depth + left.depth > DEEPEST {
            return broken(too_deep(i));
        }
        i = behind;
    }
    Ok((i, left))
}

/// `-x`, a number, `raw`, `( ... )`
fn factor(i: Cursor<'_>, depth: u32) -> Parsed<'_, Grown> {
    if depth > DEEPEST {
        return broken(too_deep(i));
    }
    match i.kind() {
        Some(TokenKind::Minus) => {
            let (behind, inner) = factor(i.next(), depth + 1)?;
            Ok((behind, inner.negative(i.span_to(behind))))
        }
        Some(TokenKind::Number) => {
            let (behind, value) = unsigned_exact(i, false)?;
            Ok((behind, Grown::leaf(constant(value), false, i.span_to(behind))))
        }
        Some(TokenKind::Word) if i.word() == "raw" => Ok((i.next(), Grown::leaf(RAW, true, i.span()))),
        Some(TokenKind::OpenParen) => {
            let (behind, inner) = sum(i.next(), depth + 1)?;
            let (behind, _) =
                want_so("`)`", "every `(` of a formula needs its `)`", leaf(TokenKind::CloseParen))(behind)?;
            Ok((behind, inner.in_parentheses(i.span_to(behind))))
        }
        Some(TokenKind::Word) => broken(other_name(i)),
        _ => broken(missing(i, "`raw` or a number").help(HELP)),
    }
}

fn other_name(i: Cursor<'_>) -> Diagnostic {
    let found = shortened(i.word());
    let message =
        Diagnostic::new(Rule::UnexpectedWord, i.site(i.span()), format!("`{found}` cannot stand in a formula"));
    if i.word().eq_ignore_ascii_case("raw") || matches!(i.word(), "x" | "value") {
        return message.here("the raw number is called `raw`").fix(i.site(i.span()), "raw");
    }
    message.here("the only name in a formula is `raw`").help(HELP)
}

/// Whether the slash here has a word behind it, so that `1/min` was meant as a unit.
fn is_unit_behind(i: Cursor<'_>) -> bool {
    let is_touching = i.touches() && i.next().touches();
    i.kind() == Some(TokenKind::Slash)
        && i.nth_kind(1) == Some(TokenKind::Word)
        && i.nth_word(1) != "raw"
        && is_touching
        && i.context.text(i.previous()) == "1"
}

/// `raw * 1/min`: the 1 is read as a part of the formula, and the unit begins with it too.
fn report_unclear(slash: Cursor<'_>) {
    let one = slash.previous();
    let unit = super::unit::run(slash);
    let whole = one.to(slash.span_to(unit));
    let written = shortened(slash.context.text(whole));
    let message = Diagnostic::new(
        Rule::UnitUnclear,
        slash.site(whole),
        format!("`{written}` can be the unit, or the end of the formula and a unit"),
    )
    .here("which of the two?")
    .help(format!("write `1 {written}` if the factor is 1, or put the unit in quotes: `1 \"{written}\"`"))
    .fix(slash.site(whole), format!("1 {written}"));
    slash.context.report(message);
}
