//! Numbers: whole, exact, ranges of raw values.

use nom::Parser;
use nom::combinator::opt;
use nom::sequence::preceded;
use wirelore_bits::Ratio;

use super::basic::{comma_list, leaf, shortened, want};
use super::cursor::{Cursor, Parsed, broken, elsewhere};
use super::meant::{bare_hexadecimal, bare_hexadecimal_word, dots};
use super::tree::{Exact, Integer, RawRange};
use crate::lex::TokenKind;
use crate::{Diagnostic, Rule, Span};

/// A whole number, with a sign or without.
pub(super) fn integer(i: Cursor<'_>) -> Parsed<'_, Integer> {
    if let Some(read) = bare_hexadecimal(i) {
        return Ok(read);
    }
    let (number, sign) = opt(leaf(TokenKind::Minus)).parse(i)?;
    let Ok((behind, digits)) = leaf(TokenKind::Number)(number) else {
        return if sign.is_some() {
            broken(bad(number, number.span(), "a number must stand behind the `-`"))
        } else {
            elsewhere()
        };
    };
    let written = i.context.text(digits);
    if is_pattern(written) && behind.kind() == Some(TokenKind::Word) && behind.touches() {
        let whole = digits.to(behind.span());
        return broken(bad_digits(behind, whole));
    }
    match whole_number(written) {
        Ok(value) => {
            let value = if sign.is_some() { -value } else { value };
            Ok((behind, Integer { value, pattern: is_pattern(written), span: i.span_to(behind) }))
        }
        Err(why) => broken(bad(i, digits, &format!("`{}` {why}", shortened(written)))),
    }
}

/// Hexadecimal or binary.
pub(super) fn is_pattern(written: &str) -> bool {
    matches!(written.as_bytes(), [b'0', b'x' | b'X' | b'b' | b'B', ..])
}

fn bad(i: Cursor<'_>, span: Span, message: &str) -> Diagnostic {
    Diagnostic::new(Rule::BadNumber, i.site(span), message)
}

fn bad_digits(i: Cursor<'_>, whole: Span) -> Diagnostic {
    let written = i.context.text(whole);
    let digits = if written.as_bytes().get(1).is_some_and(|letter| letter.eq_ignore_ascii_case(&b'x')) {
        "the digits behind `0x` are 0 to 9 and A to F"
    } else {
        "the digits behind `0b` are 0 and 1"
    };
    bad(i, whole, &format!("`{}` is not a number", shortened(written))).help(digits)
}

/// The value of a whole number's text.
pub(super) fn whole_number(written: &str) -> Result<i128, &'static str> {
    const NOT_WHOLE: &str = "is not a whole number";
    let (digits, radix) = match written.as_bytes() {
        [b'0', b'x' | b'X', ..] => (&written[2..], 16),
        [b'0', b'b' | b'B', ..] => (&written[2..], 2),
        _ if written.contains(['.', 'e', 'E']) => return Err(NOT_WHOLE),
        _ => (written, 10),
    };
    let mut value: i128 = 0;
    let mut any = false;
    for digit in digits.chars().filter(|&c| c != '_') {
        let digit = digit.to_digit(radix).ok_or(NOT_WHOLE)?;
        value = value
            .checked_mul(i128::from(radix))
            .and_then(|value| value.checked_add(i128::from(digit)))
            .ok_or("has more digits than any payload could need")?;
        any = true;
    }
    if any { Ok(value) } else { Err("has no digits") }
}

/// An exact number: `0.05`, `-40`, `1e-3`, `0x1F`.
pub(super) fn exact(i: Cursor<'_>) -> Parsed<'_, Exact> {
    let (number, sign) = opt(leaf(TokenKind::Minus)).parse(i)?;
    if sign.is_some() && number.kind() != Some(TokenKind::Number) {
        return broken(bad(number, number.span(), "a number must stand behind the `-`"));
    }
    let (behind, value) = unsigned_exact(number, sign.is_some())?;
    Ok((behind, Exact { value, span: i.span_to(behind) }))
}

/// The digits of an exact number; `negative` where a sign stood in front of it.
pub(super) fn unsigned_exact(i: Cursor<'_>, negative: bool) -> Parsed<'_, Ratio> {
    let (behind, span) = leaf(TokenKind::Number)(i)?;
    let written = i.context.text(span);
    if let Some((behind, read_as)) = decimal_comma(i, written) {
        return Ok((behind, exact_value(&read_as, negative).unwrap_or(Ratio::ZERO)));
    }
    if is_pattern(written) && behind.kind() == Some(TokenKind::Word) && behind.touches() && span.end - span.start <= 2 {
        return broken(bad_digits(behind, span.to(behind.span())));
    }
    match exact_value(written, negative) {
        Some(value) => Ok((behind, value)),
        None if is_pattern(written) || written.contains('_') => {
            let message = bad(i, span, &format!("`{}` is not a number", shortened(written)));
            broken(message.help("digits may have a single `_` between them; behind `0x` and `0b` there must be some"))
        }
        None => broken(
            bad(i, span, &format!("`{}` cannot be held exactly", shortened(written)))
                .here("too long")
                .help("numbers are kept as fractions, never rounded: about 36 digits are possible; leave out digits that nobody measured"),
        ),
    }
}

/// The fraction that a number's text stands for.
fn exact_value(written: &str, negative: bool) -> Option<Ratio> {
    let value = if is_pattern(written) {
        Ratio::whole(whole_number(written).ok()?)
    } else {
        Ratio::from_decimal(written).ok()?
    };
    if negative { value.checked_neg() } else { Some(value) }
}

/// `0,05`: two numbers to us, one to half of Europe. Told, and read as the one. Not where a colon follows: points of a curve.
fn decimal_comma<'a>(i: Cursor<'a>, written: &str) -> Option<(Cursor<'a>, String)> {
    let (comma, fraction) = (i.next(), i.next().next());
    let is_one = comma.kind() == Some(TokenKind::Comma)
        && comma.touches()
        && fraction.kind() == Some(TokenKind::Number)
        && fraction.touches()
        && fraction.nth_kind(1) != Some(TokenKind::Colon);
    let digits = i.context.text(fraction.span());
    if !is_one || !written.bytes().chain(digits.bytes()).all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let site = i.site(i.span().to(fraction.span()));
    let read_as = format!("{written}.{digits}");
    let message = Diagnostic::new(Rule::BadNumber, site, format!("`{written},{digits}` is two numbers"))
        .here("a comma ends a clause")
        .help(format!("the decimal sign is a dot: `{read_as}`"))
        .fix(site, read_as.clone());
    i.context.report(message);
    Some((fraction.next(), read_as))
}

/// A whole number where no word can stand, so that `FF` is one too.
pub(super) fn any_integer(i: Cursor<'_>) -> Parsed<'_, Integer> {
    match bare_hexadecimal_word(i) {
        Some(read) => Ok(read),
        None => integer(i),
    }
}

/// `10th`: the number.
pub(super) fn ordinal(i: Cursor<'_>) -> Parsed<'_, Integer> {
    let ending = i.next();
    if !(matches!(ending.word(), "st" | "nd" | "rd" | "th") && ending.touches()) {
        return elsewhere();
    }
    let (_, number) = integer(i)?;
    Ok((ending.next(), number))
}

/// `5`, `3..10`, `0xFE00..0xFEFF`.
pub(super) fn raw_range(i: Cursor<'_>) -> Parsed<'_, RawRange> {
    let (behind, first) = integer(i)?;
    to_last(i, behind, first)
}

/// The same where no word can stand.
pub(super) fn any_raw_range(i: Cursor<'_>) -> Parsed<'_, RawRange> {
    let (behind, first) = any_integer(i)?;
    to_last(i, behind, first)
}

fn to_last<'a>(i: Cursor<'a>, behind: Cursor<'a>, first: Integer) -> Parsed<'a, RawRange> {
    let (behind, last) = opt(preceded(dots, want("the last number of the range", any_integer))).parse(behind)?;
    Ok((behind, RawRange { first, last: last.unwrap_or(first), span: i.span_to(behind) }))
}

/// `0x1FFF, 3..10`
pub(super) fn raw_ranges(i: Cursor<'_>) -> Parsed<'_, Vec<RawRange>> {
    comma_list(any_raw_range)(i)
}

/// `LOW..HIGH`, whole numbers.
pub(super) fn span_of_integers(i: Cursor<'_>) -> Parsed<'_, (Integer, Integer)> {
    let (behind, low) = integer(i)?;
    let (behind, _) = want("`..`", dots)(behind)?;
    let (behind, high) = want("the number behind `..`", any_integer)(behind)?;
    Ok((behind, (low, high)))
}

/// `LOW..HIGH`, exact numbers.
pub(super) fn span_of_exacts(i: Cursor<'_>) -> Parsed<'_, (Exact, Exact)> {
    let (behind, low) = exact(i)?;
    let (behind, _) = want("`..`", dots)(behind)?;
    let (behind, high) = want("the number behind `..`", exact)(behind)?;
    Ok((behind, (low, high)))
}
