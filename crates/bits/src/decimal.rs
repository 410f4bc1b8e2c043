//! Fractions as text: read exactly, written exactly.

use core::fmt;
use core::str::FromStr;

use crate::Ratio;
use crate::wide::Signed;

/// Why a text is no exact number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DecimalError {
    /// Not of the form `-12`, `0.05`, `1_000.5`, `1e-3`.
    Malformed,
    /// More digits, or a larger exponent, than an exact fraction of 128 bits can hold.
    TooLong,
}

impl fmt::Display for DecimalError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Malformed => "a number is written as digits with at most one point between them and at most one exponent, such as 0.05 or 1e-3",
            Self::TooLong => "the number has more digits than can be kept exactly (about 38); shorten it or write it as a quotient",
        })
    }
}

impl core::error::Error for DecimalError {}

/// The digits of a decimal number as one integer times a power of ten.
#[derive(Default)]
struct Digits {
    /// Without the zeros that are still pending.
    integer: u128,
    /// Zeros since the last other digit: they count only when another digit follows.
    pending_zeros: u32,
    /// Digits read after the point.
    after_point: u32,
}

impl Digits {
    fn push(&mut self, digit: u8, fractional: bool) -> Result<(), DecimalError> {
        self.after_point = self.after_point.saturating_add(u32::from(fractional));
        if digit == 0 {
            self.pending_zeros = self.pending_zeros.saturating_add(u32::from(self.integer != 0));
            return Ok(());
        }
        let room = 10u128.checked_pow(self.pending_zeros.saturating_add(1));
        let shifted = room.and_then(|room| self.integer.checked_mul(room));
        self.integer =
            shifted.and_then(|shifted| shifted.checked_add(u128::from(digit))).ok_or(DecimalError::TooLong)?;
        self.pending_zeros = 0;
        Ok(())
    }

    /// Reads one run of digits, with single underscores between them.
    fn push_run(&mut self, run: &str, fractional: bool) -> Result<(), DecimalError> {
        let mut after_digit = false;
        for byte in run.bytes() {
            match byte {
                b'0'..=b'9' => self.push(byte - b'0', fractional)?,
                b'_' if after_digit => {}
                _ => return Err(DecimalError::Malformed),
            }
            after_digit = byte != b'_';
        }
        if after_digit { Ok(()) } else { Err(DecimalError::Malformed) }
    }

    /// The number, with the written exponent of ten taken in.
    fn to_ratio(&self, negative: bool, written_exponent: i64) -> Option<Ratio> {
        if self.integer == 0 {
            return Some(Ratio::ZERO);
        }
        let exponent = written_exponent + i64::from(self.pending_zeros) - i64::from(self.after_point);
        let tens = u32::try_from(exponent.unsigned_abs()).ok()?;
        if exponent >= 0 {
            let size = self.integer.checked_mul(10u128.checked_pow(tens)?)?;
            return Ratio::from_signed(Signed { negative, size }, 1);
        }
        // Reduce by twos and by fives before the power of ten is made: it may be larger than what is left of it. Afterwards there is nothing
        // else to reduce by.
        let twos = self.integer.trailing_zeros().min(tens);
        let (mut size, mut fives) = (self.integer >> twos, 0);
        while fives < tens && size.is_multiple_of(5) {
            (size, fives) = (size / 5, fives + 1);
        }
        let denominator = 5u128.checked_pow(tens - fives)?.checked_mul(2u128.checked_pow(tens - twos)?)?;
        Ratio::in_lowest_terms(Signed { negative, size }, denominator)
    }
}

/// The powers of five up to [`MOST_SHORT_DIGITS`].
const POWERS_OF_FIVE: [u64; MOST_SHORT_DIGITS + 1] = {
    let mut powers = [1; MOST_SHORT_DIGITS + 1];
    let mut at = 1;
    while at < powers.len() {
        powers[at] = powers[at - 1] * 5;
        at += 1;
    }
    powers
};

/// Any number of so many digits fits in 64 bits, and so does the power of ten below it.
const MOST_SHORT_DIGITS: usize = 18;

/// The value of `12` or `0.05`: a few digits, a point between them or not. `None` for everything else that is a number, and for what is none.
/// Nearly all numbers that people write are such, and 64 bits do for them.
fn short_decimal(text: &[u8]) -> Option<Ratio> {
    let (mut integer, mut point) = (0_u64, None);
    if text.len() > MOST_SHORT_DIGITS + 1 {
        return None;
    }
    for (at, &byte) in text.iter().enumerate() {
        match byte {
            b'0'..=b'9' => integer = integer * 10 + u64::from(byte - b'0'),
            b'.' if at > 0 && point.is_none() => point = Some(at),
            _ => return None,
        }
    }
    let digits = text.len() - usize::from(point.is_some());
    let decimals = point.map_or(0, |point| text.len() - 1 - point);
    if digits == 0 || digits > MOST_SHORT_DIGITS || (point.is_some() && decimals == 0) {
        return None;
    }
    let twos = (integer.trailing_zeros() as usize).min(decimals);
    let (mut size, mut fives) = (integer >> twos, 0);
    while fives < decimals && size.is_multiple_of(5) {
        (size, fives) = (size / 5, fives + 1);
    }
    if size == 0 {
        return Some(Ratio::ZERO);
    }
    let denominator = POWERS_OF_FIVE.get(decimals - fives)? << (decimals - twos);
    Ratio::in_lowest_terms(Signed { negative: false, size: size.into() }, denominator.into())
}

/// The exponent after `e`: a sign and digits; beyond any use it saturates.
fn exponent_of(text: &str) -> Result<i64, DecimalError> {
    let (negative, digits) = split_sign(text);
    if digits.is_empty() {
        return Err(DecimalError::Malformed);
    }
    let size = digits.bytes().try_fold(0i64, |size, byte| match byte {
        b'0'..=b'9' => Ok((size * 10 + i64::from(byte - b'0')).min(i64::from(i32::MAX))),
        _ => Err(DecimalError::Malformed),
    })?;
    Ok(if negative { -size } else { size })
}

fn split_sign(text: &str) -> (bool, &str) {
    match text.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    }
}

impl Ratio {
    /// The exact value of a decimal number: `12`, `-0.05`, `1e-3`, `6.02E+2`, `1_000.000_5`.
    ///
    /// A sign may stand in front; a point needs digits on both sides; underscores may stand between digits.
    ///
    /// # Errors
    /// A text of another form, or more digits than fit: 38 significant ones always do if the exponent is small.
    pub fn from_decimal(text: &str) -> Result<Self, DecimalError> {
        match short_decimal(text.as_bytes()) {
            Some(value) => Ok(value),
            None => Self::from_any_decimal(text),
        }
    }

    fn from_any_decimal(text: &str) -> Result<Self, DecimalError> {
        let (negative, unsigned) = split_sign(text);
        let (mantissa, exponent) = match unsigned.split_once(['e', 'E']) {
            Some((mantissa, exponent)) => (mantissa, exponent_of(exponent)?),
            None => (unsigned, 0),
        };
        let mut digits = Digits::default();
        match mantissa.split_once('.') {
            Some((whole, fraction)) => {
                digits.push_run(whole, false)?;
                digits.push_run(fraction, true)?;
            }
            None => digits.push_run(mantissa, false)?,
        }
        digits.to_ratio(negative, exponent).ok_or(DecimalError::TooLong)
    }
}

impl FromStr for Ratio {
    type Err = DecimalError;

    /// Reads what [`Display`](fmt::Display) writes, and every decimal number: `0.05`, `1/3`, `-9/5`.
    fn from_str(text: &str) -> Result<Self, DecimalError> {
        let Some((numerator, denominator)) = text.split_once('/') else {
            return Self::from_decimal(text);
        };
        let whole = |text: &str| {
            let mut digits = Digits::default();
            digits.push_run(text, false)?;
            let size = 10u128.checked_pow(digits.pending_zeros).and_then(|zeros| digits.integer.checked_mul(zeros));
            size.ok_or(DecimalError::TooLong)
        };
        let (negative, numerator) = split_sign(numerator);
        let (size, denominator) = (whole(numerator)?, whole(denominator)?);
        if denominator == 0 {
            return Err(DecimalError::Malformed);
        }
        Self::from_signed(Signed { negative, size }, denominator).ok_or(DecimalError::TooLong)
    }
}

/// The most characters without a sign: 39 digits over 39 digits, or a point among at most 57 digits.
const MOST_CHARACTERS: usize = 80;

/// A short text built from its end.
struct Backwards {
    bytes: [u8; MOST_CHARACTERS],
    start: usize,
}

impl Backwards {
    const fn new() -> Self {
        Self { bytes: [b'0'; MOST_CHARACTERS], start: MOST_CHARACTERS }
    }

    fn push(&mut self, byte: u8) {
        self.start = self.start.saturating_sub(1);
        if let Some(slot) = self.bytes.get_mut(self.start) {
            *slot = byte;
        }
    }

    /// Exactly `count` digits of `number`; returns what stands before them.
    fn push_last_digits(&mut self, mut number: u128, count: u32) -> u128 {
        for _ in 0..count {
            self.push(b'0' + (number % 10) as u8);
            number /= 10;
        }
        number
    }

    /// All digits of `number`, at least one.
    fn push_number(&mut self, number: u128) {
        let mut rest = self.push_last_digits(number, 1);
        while rest != 0 {
            rest = self.push_last_digits(rest, 1);
        }
    }

    fn text(&self) -> Result<&str, fmt::Error> {
        let used = self.bytes.get(self.start..).ok_or(fmt::Error)?;
        core::str::from_utf8(used).map_err(|_| fmt::Error)
    }
}

impl Ratio {
    /// Its digits as one integer and how many of them stand after the point; `None` where no decimal number of 128 bits is exact.
    fn decimal_digits(&self) -> Option<(u128, u32)> {
        let twos = self.denominator().trailing_zeros();
        let mut fives = 0;
        let mut rest = self.denominator() >> twos;
        while rest.is_multiple_of(5) {
            (rest, fives) = (rest / 5, fives + 1);
        }
        if rest != 1 {
            return None;
        }
        let decimals = twos.max(fives);
        let scale = 2u128.checked_pow(decimals - twos)?.checked_mul(5u128.checked_pow(decimals - fives)?)?;
        Some((self.numerator().unsigned_abs().checked_mul(scale)?, decimals))
    }
}

impl fmt::Display for Ratio {
    /// Exact decimal text (`0.05`, `-40`) where the number has one that fits in 128 bits, else `n/d` in lowest terms. Width, fill
    /// and sign options apply as they do to integers.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut text = Backwards::new();
        let whole = match self.decimal_digits() {
            Some((digits, 0)) => digits,
            Some((digits, decimals)) => {
                let whole = text.push_last_digits(digits, decimals);
                text.push(b'.');
                whole
            }
            None => {
                text.push_number(self.denominator());
                text.push(b'/');
                self.numerator().unsigned_abs()
            }
        };
        text.push_number(whole);
        f.pad_integral(self.numerator() >= 0, "", text.text()?)
    }
}

#[cfg(test)]
mod tests;
