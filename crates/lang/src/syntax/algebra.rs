//! The algebra of formulas, exactly: each operation makes one straight line of two.

use wirelore_bits::Ratio;

use super::tree::{Line, Trouble};
use crate::Span;

/// Operators of formulas.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Operator {
    /// `+`
    Add,
    /// `-`
    Subtract,
    /// `*`
    Multiply,
    /// `/`
    Divide,
}

/// The formula `raw`.
pub(super) const RAW: Line = Line { factor: Ratio::ONE, offset: Ratio::ZERO };

/// The formula that is a number.
pub(super) fn constant(number: Ratio) -> Line {
    Line { factor: Ratio::ZERO, offset: number }
}

/// Two formulas with an operator between them; `span` is the place of both, `right_span` that of the second one.
pub(super) fn combined(
    left: Line,
    operator: Operator,
    right: Line,
    span: Span,
    right_span: Span,
) -> Result<Line, Trouble> {
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

/// A formula with a minus in front of it.
pub(super) fn negative(line: Line) -> Option<Line> {
    Some(Line { factor: line.factor.checked_neg()?, offset: line.offset.checked_neg()? })
}

fn times(line: Line, number: Ratio) -> Option<Line> {
    Some(Line { factor: product(line.factor, number)?, offset: product(line.offset, number)? })
}

fn divided(line: Line, number: Ratio) -> Option<Line> {
    Some(Line { factor: line.factor.checked_div(&number)?, offset: line.offset.checked_div(&number)? })
}
