//! Unsigned integers of 1280 bits on the stack: room for every intermediate result of exact scaling.
//!
//! The largest one is an offset of 128 bits over the smallest double's 2^-1074, plus a carry: 1203 bits.

use core::cmp::Ordering;

use crate::ieee::{DOUBLE, Dyadic};

const LIMBS: usize = 20;

/// An unsigned integer, least significant limb first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Wide([u64; LIMBS]);

/// A whole number with a sign, for numerators whose size may be 2^127.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Signed {
    pub(crate) negative: bool,
    pub(crate) size: u128,
}

impl From<i128> for Signed {
    fn from(value: i128) -> Self {
        Self { negative: value < 0, size: value.unsigned_abs() }
    }
}

impl Signed {
    pub(crate) const fn negated(self) -> Self {
        Self { negative: !self.negative, size: self.size }
    }

    /// As an `i128`, if it fits.
    pub(crate) const fn to_i128(self) -> Option<i128> {
        if self.negative { 0i128.checked_sub_unsigned(self.size) } else { 0i128.checked_add_unsigned(self.size) }
    }
}

impl From<u128> for Wide {
    fn from(value: u128) -> Self {
        let mut limbs = [0; LIMBS];
        limbs[0] = value as u64;
        limbs[1] = (value >> 64) as u64;
        Self(limbs)
    }
}

impl Wide {
    pub(crate) fn is_zero(&self) -> bool {
        self.0.iter().all(|limb| *limb == 0)
    }

    pub(crate) fn bit_length(&self) -> u32 {
        let used = self.0.iter().rposition(|limb| *limb != 0);
        used.map_or(0, |index| 64 * index as u32 + 64 - self.0[index].leading_zeros())
    }

    fn bit(&self, index: u32) -> bool {
        self.0.get(index as usize / 64).is_some_and(|limb| limb >> (index % 64) & 1 == 1)
    }

    /// The value, if it has at most 128 bits.
    pub(crate) fn to_u128(self) -> Option<u128> {
        let [low, high, rest @ ..] = self.0;
        rest.iter().all(|limb| *limb == 0).then_some(u128::from(high) << 64 | u128::from(low))
    }

    pub(crate) fn product(left: u128, right: u128) -> Self {
        let mut sum = Self::from(0);
        for (index, right) in [right as u64, (right >> 64) as u64].into_iter().enumerate() {
            let low = u128::from(left as u64) * u128::from(right);
            let high = (left >> 64) * u128::from(right);
            sum = sum
                .plus(&Self::from(low).shifted_left(64 * index as u32))
                .plus(&Self::from(high).shifted_left(64 * index as u32 + 64));
        }
        sum
    }

    /// The sum; the caller knows that it fits.
    pub(crate) fn plus(&self, other: &Self) -> Self {
        let mut sum = *self;
        let mut carry = false;
        for (limb, addend) in sum.0.iter_mut().zip(other.0) {
            (*limb, carry) = limb.carrying_add(addend, carry);
        }
        sum
    }

    /// The difference; `other` is not the larger one.
    fn minus(&self, other: &Self) -> Self {
        let mut difference = *self;
        let mut borrow = false;
        for (limb, subtrahend) in difference.0.iter_mut().zip(other.0) {
            (*limb, borrow) = limb.borrowing_sub(subtrahend, borrow);
        }
        difference
    }

    /// Times 2^`bits`; the caller knows that it fits.
    pub(crate) fn shifted_left(&self, bits: u32) -> Self {
        let (limbs, bits) = (bits as usize / 64, bits % 64);
        let mut shifted = [0; LIMBS];
        let mut below = 0;
        for (target, source) in shifted.iter_mut().skip(limbs).zip(self.0) {
            let pair = u128::from(source) << 64 | u128::from(below);
            *target = (pair >> (64 - bits)) as u64;
            below = source;
        }
        Self(shifted)
    }

    /// Divided by 2^`bits`, and whether anything was cut off.
    fn shifted_right(&self, bits: u32) -> (Self, bool) {
        let (limbs, bits) = (bits as usize / 64, bits % 64);
        let mut shifted = [0; LIMBS];
        let above = self.0.iter().skip(limbs + 1).copied().chain(core::iter::once(0));
        for ((target, source), above) in shifted.iter_mut().zip(self.0.iter().skip(limbs)).zip(above) {
            let pair = u128::from(above) << 64 | u128::from(*source);
            *target = (pair >> bits) as u64;
        }
        let cut_limbs = self.0.iter().take(limbs).any(|limb| *limb != 0);
        let cut_bits = self.0.get(limbs).is_some_and(|limb| limb & ((1 << bits) - 1) != 0);
        (Self(shifted), cut_limbs || cut_bits)
    }

    pub(crate) fn compare(&self, other: &Self) -> Ordering {
        self.0.iter().rev().cmp(other.0.iter().rev())
    }

    /// Quotient and remainder; `None` if the quotient has more than 128 bits. The divisor is not zero.
    pub(crate) fn divided_by(&self, divisor: &Self) -> Option<(u128, Self)> {
        if let (Some(dividend), Some(divisor)) = (self.to_u128(), divisor.to_u128()) {
            return Some((dividend / divisor, Self::from(dividend % divisor)));
        }
        // Long division, one bit of the quotient at a time, starting with a remainder that is just below the divisor.
        let steps = (self.bit_length() + 1).saturating_sub(divisor.bit_length());
        if steps > 129 {
            return None;
        }
        let (mut remainder, _) = self.shifted_right(steps);
        let mut quotient = 0u128;
        for index in (0..steps).rev() {
            remainder = remainder.shifted_left(1);
            remainder.0[0] |= u64::from(self.bit(index));
            let fits = remainder.compare(divisor) != Ordering::Less;
            if fits {
                remainder = remainder.minus(divisor);
            }
            if quotient >> 127 == 1 {
                return None;
            }
            quotient = quotient << 1 | u128::from(fits);
        }
        Some((quotient, remainder))
    }
}

/// A wide integer with a sign, times a power of two that is at most 1.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Scaled {
    pub(crate) negative: bool,
    pub(crate) size: Wide,
    pub(crate) exponent: i32,
}

impl Scaled {
    /// `number` times `factor` plus `addend`, exactly.
    pub(crate) fn affine(number: Dyadic, factor: Signed, addend: Signed) -> Self {
        let product = Wide::product(u128::from(number.significand), factor.size);
        let negative = number.negative != factor.negative;
        let (above, below) = (number.exponent.max(0) as u32, number.exponent.min(0));
        let addend_size = Wide::from(addend.size).shifted_left(below.unsigned_abs());
        Self::sum((negative, product.shifted_left(above)), (addend.negative, addend_size), below)
    }

    /// The sum of two wide integers with their signs, times 2^`exponent`.
    pub(crate) fn sum(left: (bool, Wide), right: (bool, Wide), exponent: i32) -> Self {
        let (negative, size) = if left.0 == right.0 {
            (left.0, left.1.plus(&right.1))
        } else {
            match left.1.compare(&right.1) {
                Ordering::Less => (right.0, right.1.minus(&left.1)),
                Ordering::Equal => (false, Wide::from(0)),
                Ordering::Greater => (left.0, left.1.minus(&right.1)),
            }
        };
        Self { negative, size, exponent }
    }

    /// The double nearest to this number over `divisor`, ties to even. Exactly zero gives +0.
    pub(crate) fn nearest_double(&self, divisor: u128) -> f64 {
        if self.size.is_zero() {
            return 0.0;
        }
        let divisor = Wide::from(divisor);
        // A quotient of 55 or 56 bits: two more than a double has, so that the rest only breaks ties.
        let shift = 55 + divisor.bit_length() as i32 - self.size.bit_length() as i32;
        let (dividend, cut) = match shift {
            0.. => (self.size.shifted_left(shift.unsigned_abs()), false),
            _ => self.size.shifted_right(shift.unsigned_abs()),
        };
        let (quotient, remainder) =
            dividend.divided_by(&divisor).expect("the shift leaves a quotient of at most 56 bits");
        let number = Dyadic { negative: self.negative, significand: quotient as u64, exponent: self.exponent - shift };
        f64::from_bits(DOUBLE.round(number, cut || !remainder.is_zero()))
    }

    /// Twice the size of this number over `divisor`, rounded down, and whether that was exact; `None` beyond 128 bits.
    pub(crate) fn doubled_quotient(&self, divisor: &Wide) -> Option<(u128, bool)> {
        let shift = self.exponent + 1;
        let (dividend, cut) = match shift {
            0.. => (self.size.shifted_left(shift.unsigned_abs()), false),
            _ => self.size.shifted_right(shift.unsigned_abs()),
        };
        let (quotient, remainder) = dividend.divided_by(divisor)?;
        Some((quotient, !cut && remainder.is_zero()))
    }
}

#[cfg(test)]
mod tests;
