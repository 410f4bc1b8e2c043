//! Raw values: do they fit the bits, and do state words keep apart.

use wirelore_bits::Encoding;

use super::flaw::{Checked, Flaw};
use crate::{RawSpan, RawValue, StateWord};

/// Whether every value of some spans is one that the bits can have.
pub(super) fn spans(spans: &[RawSpan], encoding: Encoding) -> Checked {
    spans.iter().try_for_each(|span| bounds(*span, Some(encoding)).map(|_| ()))
}

/// Whether state words fit the bits and stand for different values. A table that has a name is also checked without knowing the signals
/// that use it: then values are only compared with values that are written in the same way.
pub(super) fn words(words: &[StateWord], encoding: Option<Encoding>) -> Checked {
    let mut runs = Vec::with_capacity(words.len());
    for word in words {
        if word.word.is_empty() {
            return Err(Flaw::Missing { what: "letter in one of its state words" });
        }
        if let Some((space, first, last)) = bounds(word.values, encoding)? {
            runs.push((space, first, last, &word.word));
        }
    }
    runs.sort_unstable();
    match runs.windows(2).find(|pair| pair[0].0 == pair[1].0 && pair[1].1 <= pair[0].2) {
        Some(pair) => Err(Flaw::WordsOverlap { one: pair[0].3.clone(), other: pair[1].3.clone() }),
        None => Ok(()),
    }
}

/// In which space a span's ends can be compared with others'.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Space {
    Numbers,
    Patterns,
}

/// The ends of a span, once it is clear that it is one; `None` where they can only be compared when the signal is known.
fn bounds(span: RawSpan, encoding: Option<Encoding>) -> Result<Option<(Space, i128, i128)>, Flaw> {
    if let Some(encoding) = encoding {
        fits(span.first, encoding)?;
        fits(span.last, encoding)?;
        if encoding.integer_range().is_some() {
            let (first, last) = span.numbers(encoding).ok_or_else(|| broken(span))?;
            return Ok(Some((Space::Numbers, first, last)));
        }
    }
    let (space, first, last) = match (span.first, span.last) {
        (RawValue::Number(first), RawValue::Number(last)) => (Space::Numbers, first.into(), last.into()),
        (RawValue::Bits(first), RawValue::Bits(last)) => (Space::Patterns, first.into(), last.into()),
        _ if encoding.is_none() => return Ok(None),
        _ => return Err(broken(span)),
    };
    if last < first { Err(broken(span)) } else { Ok(Some((space, first, last))) }
}

fn fits(value: RawValue, encoding: Encoding) -> Checked {
    let outside = match (value, encoding.integer_range()) {
        (RawValue::Bits(bits), _) => bits.checked_shr(encoding.width().into()).unwrap_or(0) != 0,
        (RawValue::Number(number), Some((least, greatest))) => !(least..=greatest).contains(&number.into()),
        // A float's value may be compared with any number.
        (RawValue::Number(_), None) => false,
    };
    if outside {
        return Err(Flaw::RawOutside { value: value.to_string(), width: encoding.width() });
    }
    if encoding.integer_range().is_some() && value.number(encoding).is_none() {
        return Err(Flaw::RawNoNumber { value: value.to_string() });
    }
    Ok(())
}

fn broken(span: RawSpan) -> Flaw {
    Flaw::RawBroken { span: span.to_string() }
}
