//! How a loop of doubles comes to the double nearest to (raw * N + O) / D, without a division where it can be avoided.
//!
//! The loop starts from `f` = 2^52 + (raw number, moved up by the sign bit), which has no error. Two things follow.
//!
//! 1. **A whole number `b`** with value = `b` * Y, Y a fraction. Where N divides O (nearly always) `b` = raw + O/N and Y = N/D: one
//!    addition. Else `b` = raw * N + O and Y = 1/D. All numbers on the way are whole and at most 2^53 for every raw number of the width:
//!    no step rounds. Y is above zero, so that zero comes out as +0 like everywhere else.
//! 2. **`b` * Y, rounded once.**
//!    - D a power of two: Y is a double, and so the product rounds once.
//!    - Else Y is kept as two doubles, `high` + `low`, `low` being the double nearest to Y - `high`; the value is
//!      `b * high + round(b * low)`, rounded once: with a fused multiply-add whatever `high` is, without it if `high` is so short that
//!      `b * high` fits in 53 bits.
//!    - Else b / D, where both are doubles and IEEE 754 rounds the exact quotient.
//!
//! **Why the pair is exact.** Let v = b*Y = a/D with a whole number a, 0 < |a| <= 2^53, D no power of two, and let u be the distance of the
//! two doubles around v, so |v| < 2^53 u. Let `high` have p bits: |Y - `high`| <= 2^-p Y, so |b * `low`| is at most that part of |v|.
//! - *How far the sum is off.* Rounding `low` and rounding `b * low` each change b * `low` by at most one part in 2^53. Before the last
//!   rounding the sum is off v by no more than 2 * 2^-53 * 2^-p * |v| (1 + 2^-53) < 2^(1-p) (1 + 2^-53) u.
//! - *How far v is from a tie.* The middle of two doubles is m * 2^e with 2^e = u/2 and m odd, of 54 bits. v is none: a * 2^-e = m * D (e is
//!   below zero, since |v| < 2^53) would make the odd m >= 2^53 a divisor of a. So v - m * 2^e = (a * 2^-e - m * D) * 2^e / D is at least
//!   2^e / D = u / (2 D) in size.
//! - *So* the last rounding goes to the double nearest to v where 2^(1-p) (1 + 2^-53) < 1 / (2 D): for p = 53 bits where D <= 2^50, and for
//!   |b| <= 2^k, p = 53 - k where D <= 2^(50-k), each with a factor of two to spare. (A sum that strays over a power of two, beyond which
//!   the doubles lie wider or closer, is as near to that power as it is off, and both v and the sum round to it.)
//!
//! This is the multiplication by a constant of two doubles of Brisebarre and Muller ("Correctly rounded multiplication by arbitrary
//! precision constants", IEEE Transactions on Computers 57, 2008; named from memory). It needs one operation less than the division by a
//! known divisor of the same school (a product, its remainder, a correction). The tests hold it against the division for thousands of D.

use wirelore_bits::Affine;

/// The largest whole number up to which every whole number is a double: 2^53.
const WHOLE_MAX: u128 = 1 << 53;
/// The longest pair: see the module's head.
const PAIR_BITS_MAX: u32 = 50;

/// From 2^52 + rising number to the whole number `b`.
pub(super) trait Numerator: Copy {
    fn whole<const FUSED: bool>(self, from_two_pow_52: f64) -> f64;
}

/// `b` = raw + O/N.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Moved {
    addend: f64,
}

/// `b` = raw * N + O.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Multiplied {
    raw_zero: f64,
    factor: f64,
    addend: f64,
}

/// From the whole number `b` to the value.
pub(super) trait Finish: Copy {
    fn value<const FUSED: bool>(self, whole: f64) -> f64;
}

/// A product that rounds once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Product {
    factor: f64,
}

/// A product with a factor of two doubles.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Pair {
    high: f64,
    low: f64,
}

/// A division that rounds once, of a product that does not round.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Quotient {
    factor: f64,
    divisor: f64,
}

impl Numerator for Moved {
    #[inline(always)]
    fn whole<const FUSED: bool>(self, from_two_pow_52: f64) -> f64 {
        from_two_pow_52 + self.addend
    }
}

impl Numerator for Multiplied {
    #[inline(always)]
    fn whole<const FUSED: bool>(self, from_two_pow_52: f64) -> f64 {
        fused_or_not::<FUSED>(from_two_pow_52 - self.raw_zero, self.factor, self.addend)
    }
}

impl Finish for Product {
    #[inline(always)]
    fn value<const FUSED: bool>(self, whole: f64) -> f64 {
        whole * self.factor
    }
}

impl Finish for Pair {
    #[inline(always)]
    fn value<const FUSED: bool>(self, whole: f64) -> f64 {
        fused_or_not::<FUSED>(whole, self.high, whole * self.low)
    }
}

impl Finish for Quotient {
    #[inline(always)]
    fn value<const FUSED: bool>(self, whole: f64) -> f64 {
        whole * self.factor / self.divisor
    }
}

/// x * y + z; without `FUSED` only for products that do not round.
#[inline(always)]
fn fused_or_not<const FUSED: bool>(x: f64, y: f64, z: f64) -> f64 {
    if FUSED { x.mul_add(y, z) } else { x * y + z }
}

/// Step 1 of a signal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum ToWhole {
    Moved(Moved),
    Multiplied(Multiplied),
}

/// Step 2 of a signal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum ToValue {
    Product(Product),
    /// With a fused multiply-add, and without.
    Divided {
        fused: Pair,
        unfused: Unfused,
    },
}

/// Step 2 without a fused multiply-add.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Unfused {
    Pair(Pair),
    Quotient(Quotient),
}

/// Both steps of a signal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Way {
    pub(super) whole: ToWhole,
    pub(super) value: ToValue,
}

impl Way {
    /// The way for raw numbers of at most 52 bits, from `raws.0` to `raws.1`, of which raw 0 is `raw_zero` among the doubles that the loop
    /// starts from; `None` where some step would round.
    pub(super) fn new(formula: &Affine, raws: (i64, i64), raw_zero: f64) -> Option<Self> {
        let (factor, offset) = (formula.factor_numerator(), formula.offset_numerator());
        let (factor_double, offset_double) = (whole_double(factor)?, whole_double(offset)?);
        // Affine in the raw number, so the largest is at an end. Neither step overflows: 2^52 * 2^53 + 2^53.
        let at = |raw: i64| (i128::from(raw) * factor, i128::from(raw) * factor + offset);
        let ((first_product, first), (last_product, last)) = (at(raws.0), at(raws.1));
        for numerator in [first_product, last_product, first, last] {
            whole_double(numerator)?;
        }
        let largest = first.unsigned_abs().max(last.unsigned_abs());
        let moved = (factor > 0 && offset % factor == 0).then(|| whole_double(offset / factor - raw_zero as i128));
        match moved.flatten() {
            Some(addend) => {
                let value = ToValue::new(largest / factor.unsigned_abs(), factor_double, formula.denominator())?;
                Some(Self { whole: ToWhole::Moved(Moved { addend }), value })
            }
            None => {
                let whole = Multiplied { raw_zero, factor: factor_double, addend: offset_double };
                let value = ToValue::new(largest, 1.0, formula.denominator())?;
                Some(Self { whole: ToWhole::Multiplied(whole), value })
            }
        }
    }
}

impl ToValue {
    /// For whole numbers up to `largest`, times the whole `factor` above zero, by `denominator`.
    fn new(largest: u128, factor: f64, denominator: u128) -> Option<Self> {
        let divisor = denominator as f64;
        if denominator.is_power_of_two() {
            return Some(Self::Product(Product { factor: factor / divisor }));
        }
        if denominator > 1 << PAIR_BITS_MAX {
            return None;
        }
        // The least k with |b| <= 2^k.
        let whole_bits = largest.next_power_of_two().trailing_zeros();
        let fraction = (factor as u128, denominator);
        let short = denominator <= 1 << PAIR_BITS_MAX.saturating_sub(whole_bits);
        let unfused = if short {
            Unfused::Pair(Pair::new(fraction, f64::MANTISSA_DIGITS - whole_bits))
        } else {
            Unfused::Quotient(Quotient { factor, divisor })
        };
        Some(Self::Divided { fused: Pair::new(fraction, f64::MANTISSA_DIGITS), unfused })
    }
}

impl Pair {
    /// `numerator` / `denominator` with `bits` bits in its high part; both are above zero and at most 2^53 and 2^50.
    fn new((numerator, denominator): (u128, u128), bits: u32) -> Self {
        // The quotient lies between 2^(exponent - 1) and 2^(exponent + 1). Where that leaves whole numbers of more bits than were asked for,
        // the high part is whole, and its products are no larger than the numerators of the values.
        let exponent = numerator.ilog2() as i32 - denominator.ilog2() as i32;
        let mut places = (bits as i32 - exponent).max(0) as u32;
        let nearest = |places: u32| ((numerator << places) + denominator / 2) / denominator;
        if nearest(places) > 1 << bits {
            places = places.saturating_sub(1);
        }
        let high = nearest(places);
        let rest = (numerator << places).cast_signed() - (high * denominator).cast_signed();
        // All four are doubles exactly, and powers of two change no digit.
        let unit = 1.0 / (1_u128 << places) as f64;
        Self { high: high as f64 * unit, low: rest as f64 / denominator as f64 * unit }
    }
}

fn whole_double(whole: i128) -> Option<f64> {
    (whole.unsigned_abs() <= WHOLE_MAX).then_some(whole as f64)
}

#[cfg(test)]
mod tests;
