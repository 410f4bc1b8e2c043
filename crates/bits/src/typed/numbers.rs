//! Bits to numbers and back, each number format by itself.

use super::NotEncoded;
use crate::{Encoding, Number, NumberKind};

/// Two's complement.
#[inline(always)]
#[must_use]
pub const fn signed(bits: u64, width: u8) -> i64 {
    let unused = 64_u32.saturating_sub(width as u32);
    bits.wrapping_shl(unused).cast_signed().wrapping_shr(unused)
}

/// A sign bit and a size; both zeros are 0.
#[inline(always)]
#[must_use]
pub const fn sign_magnitude(bits: u64, width: u8) -> i64 {
    let sign = 1_u64.wrapping_shl(width as u32 - 1);
    let size = (bits & (sign - 1)).cast_signed();
    if bits & sign == 0 { size } else { -size }
}

/// A floating-point number of IEEE 754 with 16, 32 or 64 bits.
#[must_use]
pub fn float(bits: u64, width: u8) -> f64 {
    match Encoding::new(NumberKind::Float, width).map(|encoding| encoding.number(bits)) {
        Ok(Ok(Number::Float(number))) => number,
        _ => f64::NAN,
    }
}

/// Decimal digits in four bits each; `None` where some are no digits.
#[must_use]
pub fn digits(bits: u64, width: u8) -> Option<u64> {
    match Encoding::new(NumberKind::Bcd, width).ok()?.number(bits) {
        Ok(Number::Integer(number)) => u64::try_from(number).ok(),
        _ => None,
    }
}

/// The digits of a number in four bits each, for a place of `width` bits.
///
/// # Errors
/// Too many digits.
pub fn digits_bits(number: u64, width: u8, signal: &'static str) -> Result<u64, NotEncoded> {
    let encoding = Encoding::new(NumberKind::Bcd, width).map_err(|_| NotEncoded::DoesNotFit(signal))?;
    encoding.bits(Number::Integer(number.into())).map_err(|_| NotEncoded::DoesNotFit(signal))
}

/// A plain number for a place of `width` bits.
///
/// # Errors
/// It is too large.
#[inline(always)]
pub const fn unsigned_bits(number: u64, width: u8, signal: &'static str) -> Result<u64, NotEncoded> {
    if number > u64::MAX >> (64 - width as u32) { Err(NotEncoded::DoesNotFit(signal)) } else { Ok(number) }
}

/// The same in two's complement.
///
/// # Errors
/// It is too large or too small.
#[inline(always)]
pub const fn signed_bits(number: i64, width: u8, signal: &'static str) -> Result<u64, NotEncoded> {
    let bits = number.cast_unsigned() & u64::MAX >> (64 - width as u32);
    if signed(bits, width) == number { Ok(bits) } else { Err(NotEncoded::DoesNotFit(signal)) }
}

/// The same as a sign bit and a size.
///
/// # Errors
/// The size is too large.
#[inline(always)]
pub const fn sign_magnitude_bits(number: i64, width: u8, signal: &'static str) -> Result<u64, NotEncoded> {
    let sign = 1_u64 << (width as u32 - 1);
    let size = number.unsigned_abs();
    if size >= sign {
        return Err(NotEncoded::DoesNotFit(signal));
    }
    Ok(if number < 0 { size | sign } else { size })
}

/// The nearest floating-point number of 16, 32 or 64 bits.
///
/// # Errors
/// It is beyond the largest one.
pub fn float_bits(number: f64, width: u8, signal: &'static str) -> Result<u64, NotEncoded> {
    let encoding = Encoding::new(NumberKind::Float, width).map_err(|_| NotEncoded::DoesNotFit(signal))?;
    encoding.bits(Number::Float(number)).map_err(|_| NotEncoded::DoesNotFit(signal))
}

/// A number that counts something; `None` for one below zero.
#[must_use]
pub fn whole(number: Option<i64>) -> Option<u64> {
    number.and_then(|number| u64::try_from(number).ok())
}

/// Whether there is a number, and it lies between two others, both included.
#[inline(always)]
#[must_use]
pub fn within<T: PartialOrd>(number: Option<T>, first: T, last: T) -> bool {
    number.is_some_and(|number| first <= number && number <= last)
}
