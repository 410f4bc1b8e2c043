//! Formulas: algebra reduced to one exact factor and one exact offset.

use wirelore_bits::{Affine, Ratio};

use crate::syntax::tree::{Binary, Expr, ExprKind, Operator};
use crate::{Diagnostic, Rule, Span};

use super::flat::Scope;
use super::messages::Messages;

/// How deep brackets may stand inside each other. Long sums are no matter: they are walked from left to right.
const DEEPEST: usize = 200;

/// `factor * raw + offset`.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Line {
    factor: Ratio,
    offset: Ratio,
}

/// Why a formula is none that the language takes, and the characters it is about.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Trouble {
    /// `raw * raw`
    RawTimesRaw(Span),
    /// `1 / raw`
    DividedByRaw(Span),
    /// `raw / 0`
    DividedByZero(Span),
    /// A number that does not fit.
    TooLong(Span),
    /// Too many brackets.
    TooDeep(Span),
}

/// Reduces a formula; says so where that cannot be done.
pub(crate) fn affine(expr: &Expr, scope: &Scope, messages: &mut Messages) -> Option<Affine> {
    let line = match line(expr, 0) {
        Ok(line) => line,
        Err(trouble) => {
            messages.push(trouble.in_words(scope));
            return None;
        }
    };
    if line.factor.is_zero() {
        let site = scope.site(expr.span);
        let message =
            Diagnostic::new(Rule::FormulaNotAffine, site, "this formula gives the same value for every raw number");
        let message =
            if mentions_raw(expr) { message.here("`raw` cancels out") } else { message.here("`raw` is missing") };
        messages.push(message.help("write how the value follows from the raw number, such as `raw * 0.1`"));
        return None;
    }
    let affine = Affine::new(line.factor, line.offset);
    if affine.is_none() {
        messages.push(Trouble::TooLong(expr.span).in_words(scope));
    }
    affine
}

fn line(expr: &Expr, depth: usize) -> Result<Line, Trouble> {
    if depth > DEEPEST {
        return Err(Trouble::TooDeep(expr.span));
    }
    // A sum of many parts leans to the left; going down that side in a loop keeps the stack flat.
    let mut rest = Vec::new();
    let mut start = expr;
    while let ExprKind::Binary(binary) = &start.kind {
        rest.push((&**binary, start.span));
        start = &binary.left;
    }
    let mut sum = match &start.kind {
        ExprKind::Raw => Line { factor: Ratio::ONE, offset: Ratio::ZERO },
        ExprKind::Number(number) => Line { factor: Ratio::ZERO, offset: *number },
        ExprKind::Negative(inner) => negative(line(inner, depth + 1)?).ok_or(Trouble::TooLong(start.span))?,
        ExprKind::Binary(..) => return Err(Trouble::TooDeep(start.span)),
    };
    for (Binary { operator, right, .. }, span) in rest.into_iter().rev() {
        sum = combined(sum, *operator, line(right, depth + 1)?, span, right.span)?;
    }
    Ok(sum)
}

fn combined(left: Line, operator: Operator, right: Line, span: Span, right_span: Span) -> Result<Line, Trouble> {
    let exact = match operator {
        Operator::Add => added(left, right),
        Operator::Subtract => negative(right).and_then(|right| added(left, right)),
        Operator::Multiply if !left.factor.is_zero() && !right.factor.is_zero() => {
            return Err(Trouble::RawTimesRaw(span));
        }
        Operator::Multiply if right.factor.is_zero() => times(left, right.offset),
        Operator::Multiply => times(right, left.offset),
        Operator::Divide if !right.factor.is_zero() => return Err(Trouble::DividedByRaw(right_span)),
        Operator::Divide if right.offset.is_zero() => return Err(Trouble::DividedByZero(right_span)),
        Operator::Divide => divided(left, right.offset),
    };
    exact.ok_or(Trouble::TooLong(span))
}

fn added(one: Line, other: Line) -> Option<Line> {
    Some(Line { factor: sum(one.factor, other.factor)?, offset: sum(one.offset, other.offset)? })
}

/// Most sums and products in formulas are with 0 and 1: those need no exact arithmetic.
fn sum(one: Ratio, other: Ratio) -> Option<Ratio> {
    match (one.is_zero(), other.is_zero()) {
        (true, _) => Some(other),
        (_, true) => Some(one),
        _ => one.checked_add(&other),
    }
}

fn product(one: Ratio, other: Ratio) -> Option<Ratio> {
    if one.is_zero() || other == Ratio::ONE {
        Some(one)
    } else if one == Ratio::ONE {
        Some(other)
    } else {
        one.checked_mul(&other)
    }
}

fn negative(line: Line) -> Option<Line> {
    Some(Line { factor: line.factor.checked_neg()?, offset: line.offset.checked_neg()? })
}

fn times(line: Line, number: Ratio) -> Option<Line> {
    Some(Line { factor: product(line.factor, number)?, offset: product(line.offset, number)? })
}

fn divided(line: Line, number: Ratio) -> Option<Line> {
    Some(Line { factor: line.factor.checked_div(&number)?, offset: line.offset.checked_div(&number)? })
}

/// Whether `raw` occurs in a formula that [`line()`] could reduce (so it is not too deep).
fn mentions_raw(expr: &Expr) -> bool {
    let mut open = vec![expr];
    while let Some(expr) = open.pop() {
        match &expr.kind {
            ExprKind::Raw => return true,
            ExprKind::Number(_) => {}
            ExprKind::Negative(inner) => open.push(inner),
            ExprKind::Binary(binary) => open.extend([&binary.left, &binary.right]),
        }
    }
    false
}

impl Trouble {
    fn in_words(self, scope: &Scope) -> Diagnostic {
        match self {
            Self::RawTimesRaw(span) => {
                Diagnostic::new(Rule::FormulaNotAffine, scope.site(span), "a formula cannot multiply `raw` by `raw`")
                    .here("not a straight line")
                    .help("for a bent characteristic write `curve { RAW: VALUE, ... }`")
            }
            Self::DividedByRaw(span) => {
                Diagnostic::new(Rule::FormulaNotAffine, scope.site(span), "a formula cannot divide by `raw`")
                    .here("not a straight line")
                    .help("for a bent characteristic write `curve { RAW: VALUE, ... }`")
            }
            Self::DividedByZero(span) => {
                Diagnostic::new(Rule::FormulaNotAffine, scope.site(span), "a formula cannot divide by 0")
                    .here("this is 0")
            }
            Self::TooLong(span) => Diagnostic::new(
                Rule::FormulaNotExact,
                scope.site(span),
                "this formula has more digits than can be held exactly",
            )
            .here("its exact fraction takes more than 128 bits")
            .help("nothing is rounded here: write the numbers with fewer digits"),
            Self::TooDeep(span) => {
                Diagnostic::new(Rule::NestedTooDeep, scope.site(span), "too many brackets inside each other")
                    .help("write the formula as `raw * FACTOR + OFFSET`")
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(start: u32) -> Span {
        Span::new(start, start + 1)
    }

    fn raw() -> Expr {
        Expr { kind: ExprKind::Raw, span: at(0) }
    }

    fn number(text: &str) -> Expr {
        Expr { kind: ExprKind::Number(Ratio::from_decimal(text).expect("a decimal")), span: at(1) }
    }

    fn of(left: Expr, operator: Operator, right: Expr) -> Expr {
        Expr { span: left.span.to(right.span), kind: ExprKind::Binary(Box::new(Binary { left, operator, right })) }
    }

    fn reduced(expr: &Expr) -> (String, String) {
        let line = line(expr, 0).expect("a straight line");
        (line.factor.to_string(), line.offset.to_string())
    }

    #[test]
    fn algebra_becomes_a_line() {
        use Operator::{Add, Divide, Multiply, Subtract};
        let cases = [
            (of(raw(), Multiply, number("0.05")), ("0.05", "0")),
            (of(raw(), Divide, number("256")), ("0.00390625", "0")),
            (of(of(raw(), Subtract, number("125")), Multiply, number("0.8")), ("0.8", "-100")),
            (of(of(of(raw(), Multiply, number("9")), Divide, number("5")), Add, number("32")), ("1.8", "32")),
            (of(number("100"), Subtract, raw()), ("-1", "100")),
            (of(raw(), Add, raw()), ("2", "0")),
            (of(number("3"), Multiply, of(raw(), Divide, number("7"))), ("3/7", "0")),
        ];
        for (expr, (factor, offset)) in cases {
            assert_eq!(reduced(&expr), (factor.to_owned(), offset.to_owned()));
        }
    }

    #[test]
    fn other_formulas_are_told_apart() {
        use Operator::{Divide, Multiply};
        assert!(matches!(line(&of(raw(), Multiply, raw()), 0), Err(Trouble::RawTimesRaw(_))));
        assert!(matches!(line(&of(number("1"), Divide, raw()), 0), Err(Trouble::DividedByRaw(_))));
        assert!(matches!(line(&of(raw(), Divide, number("0")), 0), Err(Trouble::DividedByZero(_))));
        let long = number("0.0000000000000000000000000000000001");
        assert!(matches!(line(&of(of(raw(), Multiply, long.clone()), Multiply, long), 0), Err(Trouble::TooLong(_))));
    }

    #[test]
    fn long_sums_and_deep_brackets_need_little_stack() {
        let long = (0..20_000).fold(raw(), |sum, _| of(sum, Operator::Add, number("1")));
        assert_eq!(reduced(&long), ("1".to_owned(), "20000".to_owned()));
        // Taken apart by hand: dropping it in one go would take the stack that the test is about.
        let mut rest = long;
        while let ExprKind::Binary(binary) = rest.kind {
            rest = binary.left;
        }
        let deep = (0..500).fold(raw(), |inner, _| Expr { kind: ExprKind::Negative(Box::new(inner)), span: at(0) });
        assert!(matches!(line(&deep, 0), Err(Trouble::TooDeep(_))));
    }
}
