//! Lengths of time and rates.

use super::basic::{leaf, shortened, want_so};
use super::cursor::{Cursor, Parsed, broken, elsewhere};
use super::tree::{PeriodSyntax, Time};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span, Spanned};

/// The units of time and how many nanoseconds they have.
const TIME_UNITS: [(&str, u64); 7] = [
    ("ns", 1),
    ("us", 1_000),
    ("µs", 1_000),
    ("ms", 1_000_000),
    ("s", 1_000_000_000),
    ("min", 60_000_000_000),
    ("h", 3_600_000_000_000),
];

/// The units of rates and how many bit/s they have.
const RATE_UNITS: [(&str, u64); 4] = [("bit", 1), ("kbit", 1_000), ("Mbit", 1_000_000), ("Gbit", 1_000_000_000)];

/// A number in decimal digits, as written: whole part and fraction.
fn decimal(i: Cursor<'_>) -> Parsed<'_, Span> {
    leaf(TokenKind::Number)(i)
}

/// `written * scale`, if that is a whole number of 64 bits.
fn scaled(written: &str, scale: u64) -> Option<u64> {
    let digits: String = written.chars().filter(|&c| c != '_').collect();
    let (whole, fraction) = digits.split_once('.').unwrap_or((&digits, ""));
    let fraction = fraction.trim_end_matches('0');
    let mut value = whole.parse::<u128>().ok()?.checked_mul(u128::from(scale))?;
    let mut place = u128::from(scale);
    for digit in fraction.bytes() {
        if !place.is_multiple_of(10) {
            return None;
        }
        place /= 10;
        value = value.checked_add(u128::from(digit.checked_sub(b'0').filter(|&digit| digit < 10)?) * place)?;
    }
    u64::try_from(value).ok()
}

/// The unit here, if it is one of time.
fn time_unit(i: Cursor<'_>) -> Option<u64> {
    TIME_UNITS.iter().find(|(unit, _)| *unit == i.word()).map(|&(_, scale)| scale)
}

/// Whether a length of time begins here.
pub(super) fn begins_time(i: Cursor<'_>) -> bool {
    i.kind() == Some(TokenKind::Number) && (time_unit(i.next()).is_some() || i.nth_kind(1) == Some(TokenKind::DotDot))
}

const TIME_HELP: &str = "the units of time are `ns`, `us`, `ms`, `s`, `min` and `h`, as in `20 ms`";

fn no_time(i: Cursor<'_>, number: Span) -> Diagnostic {
    let written = shortened(i.context.text(number));
    Diagnostic::new(Rule::BadNumber, i.site(number), format!("`{written}` is not a length of time"))
        .here("decimal digits, to the nanosecond")
        .help(TIME_HELP)
}

/// `20 ms`
pub(super) fn time(i: Cursor<'_>) -> Parsed<'_, Time> {
    let (unit, number) = decimal(i)?;
    let Some(scale) = time_unit(unit) else {
        return want_so("the unit of time", TIME_HELP, |_| elsewhere())(unit);
    };
    match scaled(i.context.text(number), scale) {
        Some(ns) => Ok((unit.next(), Spanned::new(ns, i.span_to(unit.next())))),
        None => broken(no_time(i, number)),
    }
}

/// `20 ms`, `10..40 ms`, `500 us..2 ms`
pub(super) fn period(i: Cursor<'_>) -> Parsed<'_, PeriodSyntax> {
    let (behind, number) = decimal(i)?;
    if behind.kind() == Some(TokenKind::DotDot) {
        let (behind, longest) = want_so("the longest period", TIME_HELP, time)(behind.next())?;
        let scale = TIME_UNITS
            .iter()
            .find(|(unit, _)| *unit == i.context.text(behind.previous()))
            .map_or(1, |&(_, scale)| scale);
        let Some(shortest) = scaled(i.context.text(number), scale) else { return broken(no_time(i, number)) };
        return Ok((behind, PeriodSyntax { shortest: Spanned::new(shortest, number), longest }));
    }
    let (behind, shortest) = time(i)?;
    if behind.kind() != Some(TokenKind::DotDot) {
        return Ok((behind, PeriodSyntax { shortest, longest: shortest }));
    }
    let (behind, longest) = want_so("the longest period", TIME_HELP, time)(behind.next())?;
    Ok((behind, PeriodSyntax { shortest, longest }))
}

/// `500 kbit/s`
pub(super) fn rate(i: Cursor<'_>) -> Parsed<'_, Spanned<u64>> {
    const HELP: &str = "the units of rates are `bit/s`, `kbit/s`, `Mbit/s` and `Gbit/s`, as in `500 kbit/s`";
    let (unit, number) = decimal(i)?;
    let is_per_second = unit.nth_kind(1) == Some(TokenKind::Slash) && unit.nth_word(2) == "s";
    let scale = RATE_UNITS.iter().find(|(word, _)| is_per_second && *word == unit.word()).map(|&(_, scale)| scale);
    let Some(scale) = scale else {
        return want_so("the unit of the rate", HELP, |_| elsewhere())(unit);
    };
    let behind = unit.next().next().next();
    match scaled(i.context.text(number), scale) {
        Some(bits) => Ok((behind, Spanned::new(bits, i.span_to(behind)))),
        None => {
            let message = format!("`{}` is not a whole number of bit/s", shortened(i.context.text(i.span_to(behind))));
            broken(Diagnostic::new(Rule::BadNumber, i.site(number), message).help(HELP))
        }
    }
}
