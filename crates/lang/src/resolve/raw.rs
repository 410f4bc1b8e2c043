//! Raw values: from written integers to numbers and patterns of bits, and whether a signal can have them.

use wirelore_bits::{Encoding, NumberKind};
use wirelore_model::{RawSpan, RawValue};

use crate::syntax::tree::{Integer, RawRange};
use crate::{Diagnostic, Rule, Site};

use super::messages::Messages;

/// The value that an integer stands for: hexadecimal and binary ones are patterns of bits. `None` beyond 64 bits.
pub(crate) fn raw_value(integer: &Integer) -> Option<RawValue> {
    if integer.pattern && integer.value >= 0 {
        return u64::try_from(integer.value).ok().map(RawValue::Bits);
    }
    match i64::try_from(integer.value) {
        Ok(number) => Some(RawValue::Number(number)),
        // Only an unsigned signal of 64 bits has these, and there number and pattern are the same.
        Err(_) => u64::try_from(integer.value).ok().map(RawValue::Bits),
    }
}

/// A run of values. Where only one end is a pattern, it is taken for the number that it writes.
pub(crate) fn raw_span(range: &RawRange) -> Option<RawSpan> {
    let as_number = |integer: &Integer| raw_value(&Integer { pattern: false, ..*integer });
    let is_mixed = range.first.pattern != range.last.pattern;
    let read = |integer: &Integer| if is_mixed { as_number(integer) } else { raw_value(integer) };
    Some(RawSpan { first: read(&range.first)?, last: read(&range.last)? })
}

/// Why a signal cannot have a run of values, for the sentence ``raw value 9 ...``.
pub(crate) fn misfit(span: RawSpan, encoding: Encoding) -> Option<String> {
    misfit_of_value(span.first, encoding)
        .or_else(|| misfit_of_value(span.last, encoding))
        .or_else(|| broken_run(span, encoding))
}

fn misfit_of_value(value: RawValue, encoding: Encoding) -> Option<String> {
    let width = encoding.width();
    let bits = if width == 1 { "bit" } else { "bits" };
    match (value, encoding.integer_range()) {
        (RawValue::Bits(pattern), _) if pattern.checked_shr(width.into()).unwrap_or(0) != 0 => {
            let needed = 64 - pattern.leading_zeros();
            Some(format!("raw value {value} has {needed} bits, and the signal has {width}"))
        }
        (RawValue::Number(number), Some((least, greatest))) if !(least..=greatest).contains(&number.into()) => {
            Some(format!("raw value {value} does not fit: {width} {bits} hold {least}..{greatest}"))
        }
        (RawValue::Bits(_), Some(_)) if value.number(encoding).is_none() => {
            Some(format!("the bits {value} make no number in a signal of decimal digits"))
        }
        _ => None,
    }
}

fn broken_run(span: RawSpan, encoding: Encoding) -> Option<String> {
    let is_whole = match (span.first, span.last) {
        _ if encoding.integer_range().is_some() => span.numbers(encoding).is_some(),
        (RawValue::Number(first), RawValue::Number(last)) => first <= last,
        (RawValue::Bits(first), RawValue::Bits(last)) => first <= last,
        _ => false,
    };
    if is_whole {
        return None;
    }
    let has_sign = matches!(encoding.kind(), NumberKind::Signed | NumberKind::SignMagnitude);
    Some(match (span.first, span.last) {
        (RawValue::Bits(first), RawValue::Bits(last)) if first <= last && has_sign => {
            format!("the patterns {span} run from positive into negative numbers; write two runs")
        }
        _ => format!("the run {span} goes downwards; write its smaller end first"),
    })
}

/// Reads a run of values that are no readings, or that select a page; says so where the signal cannot have them.
pub(crate) fn fitting_span(
    range: &RawRange,
    encoding: Encoding,
    rule: Rule,
    site: Site,
    messages: &mut Messages,
) -> Option<RawSpan> {
    let Some(span) = raw_span(range) else {
        messages.push(Diagnostic::new(rule, site, "this raw value has more than 64 bits").here("no signal has it"));
        return None;
    };
    let why = misfit(span, encoding);
    if let Some(why) = &why {
        messages.push(Diagnostic::new(rule, site, why).here("never occurs").help(decimal_hint(span, encoding)));
    }
    why.is_none().then_some(span)
}

/// A way out for a value that does not fit.
fn decimal_hint(span: RawSpan, encoding: Encoding) -> String {
    let width = encoding.width();
    match (encoding.integer_range(), span.first) {
        (Some((least, greatest)), RawValue::Number(_)) if least < 0 => {
            format!(
                "decimal values are numbers ({least}..{greatest} here); for a pattern of bits write it in hexadecimal"
            )
        }
        _ => {
            let all = u64::MAX >> (64 - u32::from(width.clamp(1, 64)));
            format!("the greatest pattern of {width} bits is {:#X}; correct the value or the place", all)
        }
    }
}

/// A run of values as numbers of the signal, or where it has none (floats) as they are written: for comparing runs with each other.
pub(crate) fn comparable(span: RawSpan, encoding: Option<Encoding>) -> Option<(bool, i128, i128)> {
    if let Some(encoding) = encoding
        && encoding.integer_range().is_some()
    {
        return span.numbers(encoding).map(|(first, last)| (false, first, last));
    }
    match (span.first, span.last) {
        (RawValue::Number(first), RawValue::Number(last)) => Some((false, first.into(), last.into())),
        (RawValue::Bits(first), RawValue::Bits(last)) => Some((true, first.into(), last.into())),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Span;

    fn integer(value: i128, pattern: bool) -> Integer {
        Integer { value, pattern, span: Span::default() }
    }

    fn span(first: (i128, bool), last: (i128, bool)) -> RawSpan {
        let range = RawRange { first: integer(first.0, first.1), last: integer(last.0, last.1), span: Span::default() };
        raw_span(&range).expect("within 64 bits")
    }

    fn encoding(kind: NumberKind, width: u8) -> Encoding {
        Encoding::new(kind, width).expect("a width that the kind can have")
    }

    #[test]
    fn patterns_and_numbers_are_kept_apart() {
        assert_eq!(raw_value(&integer(0xFF, true)), Some(RawValue::Bits(255)));
        assert_eq!(raw_value(&integer(-1, true)), Some(RawValue::Number(-1)), "a sign makes a number");
        assert_eq!(raw_value(&integer(i128::from(u64::MAX), false)), Some(RawValue::Bits(u64::MAX)));
        assert_eq!(raw_value(&integer(1 << 64, true)), None);
        assert_eq!(span((5, false), (0xF, true)), RawSpan { first: RawValue::Number(5), last: RawValue::Number(15) });
    }

    #[test]
    fn what_does_not_fit_is_told() {
        let unsigned = encoding(NumberKind::Unsigned, 3);
        assert_eq!(misfit(span((7, false), (7, false)), unsigned), None);
        assert_eq!(
            misfit(span((8, false), (8, false)), unsigned).as_deref(),
            Some("raw value 8 does not fit: 3 bits hold 0..7")
        );
        assert_eq!(
            misfit(span((8, true), (8, true)), unsigned).as_deref(),
            Some("raw value 0x8 has 4 bits, and the signal has 3")
        );
        let signed = encoding(NumberKind::Signed, 8);
        assert_eq!(misfit(span((0xFF, true), (0xFF, true)), signed), None, "the pattern of -1");
        assert!(misfit(span((255, false), (255, false)), signed).is_some(), "no number of 8 signed bits");
        assert!(misfit(span((0x7F, true), (0x80, true)), signed).is_some_and(|why| why.contains("two runs")));
        assert!(misfit(span((3, false), (1, false)), signed).is_some_and(|why| why.contains("downwards")));
        assert!(misfit(span((0xA, true), (0xA, true)), encoding(NumberKind::Bcd, 4)).is_some());
    }
}
