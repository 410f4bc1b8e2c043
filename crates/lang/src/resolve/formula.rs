//! Formulas: one exact factor and one exact offset over one denominator.

use wirelore_bits::Affine;

use crate::syntax::tree::{Formula, Trouble};
use crate::{Diagnostic, Rule};

use super::flat::Scope;
use super::messages::Messages;

/// The exact form of a formula; says so where there is none.
pub(crate) fn affine(formula: &Formula, scope: &Scope, messages: &mut Messages) -> Option<Affine> {
    let line = match formula.line {
        Ok(line) => line,
        Err(trouble) => {
            messages.push(in_words(trouble, scope));
            return None;
        }
    };
    if line.factor.is_zero() {
        let site = scope.site(formula.span);
        let message =
            Diagnostic::new(Rule::FormulaNotAffine, site, "this formula gives the same value for every raw number");
        let message =
            if formula.mentions_raw { message.here("`raw` cancels out") } else { message.here("`raw` is missing") };
        messages.push(message.help("write how the value follows from the raw number, such as `raw * 0.1`"));
        return None;
    }
    let affine = Affine::new(line.factor, line.offset);
    if affine.is_none() {
        messages.push(in_words(Trouble::TooLong(formula.span), scope));
    }
    affine
}

fn in_words(trouble: Trouble, scope: &Scope) -> Diagnostic {
    match trouble {
        Trouble::RawTimesRaw(span) => {
            Diagnostic::new(Rule::FormulaNotAffine, scope.site(span), "a formula cannot multiply `raw` by `raw`")
                .here("not a straight line")
                .help("for a bent characteristic write `curve { RAW: VALUE, ... }`")
        }
        Trouble::DividedByRaw(span) => {
            Diagnostic::new(Rule::FormulaNotAffine, scope.site(span), "a formula cannot divide by `raw`")
                .here("not a straight line")
                .help("for a bent characteristic write `curve { RAW: VALUE, ... }`")
        }
        Trouble::DividedByZero(span) => {
            Diagnostic::new(Rule::FormulaNotAffine, scope.site(span), "a formula cannot divide by 0").here("this is 0")
        }
        Trouble::TooLong(span) => Diagnostic::new(
            Rule::FormulaNotExact,
            scope.site(span),
            "this formula has more digits than can be held exactly",
        )
        .here("its exact fraction takes more than 128 bits")
        .help("nothing is rounded here: write the numbers with fewer digits"),
    }
}
