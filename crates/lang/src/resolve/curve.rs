//! Sensor curves: points between which the value runs in straight lines.

use wirelore_bits::Encoding;
use wirelore_model::{Curve, CurvePoint, RawSpan};

use crate::syntax::tree::{Exact, Integer};
use crate::{Diagnostic, Rule, Span};

use super::flat::Scope;
use super::messages::Messages;
use super::raw::{misfit, raw_value};

/// Reads a curve; says so where its points are none.
pub(crate) fn read(
    points: &[(Integer, Exact)],
    span: Span,
    encoding: Encoding,
    scope: &Scope,
    messages: &mut Messages,
) -> Option<Curve> {
    let mut read: Vec<CurvePoint> = Vec::with_capacity(points.len());
    let mut is_whole = true;
    for (raw, value) in points {
        let Some(point) = point(raw, value, encoding, scope, messages) else {
            is_whole = false;
            continue;
        };
        if let Some(before) = read.last().filter(|before| point.raw <= before.raw) {
            let message = format!("the curve's raw values have to rise, and {} comes behind {}", point.raw, before.raw);
            messages.push(
                Diagnostic::new(Rule::CurveNotRising, scope.site(raw.span), message)
                    .here("not above the one before")
                    .help("sort the points by their raw values and name each of them once"),
            );
            is_whole = false;
        }
        read.push(point);
    }
    if !is_whole {
        return None;
    }
    if read.len() < 2 {
        let message = Diagnostic::new(Rule::CurveNotRising, scope.site(span), "a curve needs at least two points");
        messages.push(message.here(format!("{} here", read.len())).help("write `curve { RAW: VALUE, RAW: VALUE }`"));
        return None;
    }
    say_not_monotone(&read, points, scope, messages);
    Some(Curve { points: read })
}

fn point(
    raw: &Integer,
    value: &Exact,
    encoding: Encoding,
    scope: &Scope,
    messages: &mut Messages,
) -> Option<CurvePoint> {
    let why = match raw_value(raw) {
        None => "this raw value has more than 64 bits".to_owned(),
        Some(written) => match misfit(RawSpan::single(written), encoding) {
            Some(why) => why,
            None => match written.number(encoding).and_then(|number| i64::try_from(number).ok()) {
                Some(raw) => return Some(CurvePoint { raw, value: value.value }),
                None => format!("raw values of a curve reach up to {}", i64::MAX),
            },
        },
    };
    let message =
        Diagnostic::new(Rule::SpecialOutsideWidth, scope.site(raw.span), format!("a point of the curve: {why}"));
    messages.push(message.here("never reached"));
    None
}

/// Mentions a curve that goes up and down: it decodes well, but a value cannot be encoded.
fn say_not_monotone(read: &[CurvePoint], points: &[(Integer, Exact)], scope: &Scope, messages: &mut Messages) {
    let rises = |index: usize| read[index].value.cmp(&read[index - 1].value);
    let first = rises(1);
    let turn = (1..read.len()).find(|&index| rises(index) != first || rises(index).is_eq());
    if let Some(index) = turn {
        let text = if rises(index).is_eq() { "the curve is level here" } else { "the curve turns here" };
        messages.push(
            Diagnostic::new(
                Rule::CurveNotMonotone,
                scope.site(points[index].1.span),
                format!("{text}: a value can belong to several raw values"),
            )
            .here("decodes well, but cannot be encoded"),
        );
    }
}
