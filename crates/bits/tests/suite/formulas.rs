//! Formulas at random, of all the kinds that descriptions have and of some that are hard on purpose.

use wirelore_bits::Ratio;

use crate::nearest::Formula;
use crate::support::Random;

/// Kinds of formulas.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Family {
    /// Decimal factors and offsets of up to 12 digits.
    Decimal,
    /// Decimal digits with exponents: tiny and huge numbers.
    Exponents,
    /// Quotients of whole numbers of up to 40 bits.
    Quotients,
    /// Binary fractions: with wide raw values every other result is a tie or next to one.
    PowersOfTwo,
    /// Numerators and denominators up to all of 127 bits.
    Huge,
    /// The straight line through two points of a curve.
    Curve,
    /// Made for one raw value: the exact result is half way between two doubles, or as little beside it as the formula can tell.
    NearTies,
}

impl Family {
    pub(crate) const ALL: [Self; 7] =
        [Self::Decimal, Self::Exponents, Self::Quotients, Self::PowersOfTwo, Self::Huge, Self::Curve, Self::NearTies];
}

/// A formula as the crate takes it, and as the reference does.
#[derive(Debug)]
pub(crate) struct Made {
    pub(crate) family: Family,
    pub(crate) factor: Ratio,
    pub(crate) offset: Ratio,
    pub(crate) exact: Formula,
    /// The raw value that it was made for.
    pub(crate) raw: Option<u64>,
}

/// A formula whose parts over one denominator fit in 127 bits; it was made for raw values of this width.
pub(crate) fn make(family: Family, random: &mut Random, width: u8) -> Made {
    loop {
        let made = match family {
            Family::Decimal => decimal(random, 13, -12, 0),
            Family::Exponents => decimal(random, 13, -36, 18),
            Family::Quotients => quotients(random),
            Family::PowersOfTwo => powers_of_two(random),
            Family::Huge => huge(random),
            Family::Curve => curve(random),
            Family::NearTies => near_tie(random, width),
        };
        if let Some(made) = made.filter(|made| made.exact.factor != 0) {
            return Made { family, ..made };
        }
    }
}

/// A made formula, still without its family.
fn made((factor, offset): (Ratio, Ratio), (factor_whole, offset_whole, denominator): (i128, i128, u128)) -> Made {
    let exact = Formula { factor: factor_whole, offset: offset_whole, denominator };
    Made { family: Family::Decimal, factor, offset, exact, raw: None }
}

/// A whole number of up to `bits` bits with a sign, short and long ones alike.
fn whole(random: &mut Random, bits: u32) -> i128 {
    let wide = u128::from(random.next()) << 64 | u128::from(random.next());
    let size = (wide >> (128 - bits) >> random.below(bits)) as i128;
    if random.below(2) == 0 { size } else { -size }
}

/// Digits and an exponent of ten for each, as text to be read; whole numbers over a power of ten for the reference.
fn decimal(random: &mut Random, digits: u32, least: i32, most: i32) -> Option<Made> {
    let number = |random: &mut Random| {
        let digits = (random.next() % 10_u64.pow(random.below(digits))) as i128;
        let exponent = least + random.below((most - least) as u32 + 1) as i32;
        (if random.below(2) == 0 { digits } else { -digits }, exponent)
    };
    let (factor, mut offset) = (number(random), number(random));
    if random.below(3) == 0 {
        offset = (0, 0);
    }
    let tens = -factor.1.min(offset.1).min(0);
    let over = |(digits, exponent): (i128, i32)| digits.checked_mul(10_i128.checked_pow((exponent + tens) as u32)?);
    let ratio = |number| written(random.below(2) == 0, number).parse().expect("a number of some digits");
    let ratios = [factor, offset].map(ratio);
    let whole = (over(factor)?, over(offset)?, 10_u128.checked_pow(tens as u32)?);
    Some(made((ratios[0], ratios[1]), whole))
}

/// Decimal text with a point or with an exponent.
fn written(has_point: bool, (digits, exponent): (i128, i32)) -> String {
    if !has_point || exponent >= 0 {
        return format!("{digits}e{exponent}");
    }
    let (sign, size, places) = (if digits < 0 { "-" } else { "" }, digits.unsigned_abs(), exponent.unsigned_abs());
    let power = 10_u128.pow(places);
    format!("{sign}{}.{:0places$}", size / power, size % power, places = places as usize)
}

/// `None` where the parts over one denominator are too long.
fn of_fractions(factor: (i128, u128), offset: (i128, u128)) -> Option<Made> {
    let ratio = |(numerator, denominator)| Ratio::new(numerator, denominator);
    let scaled = |numerator: i128, other: u128| numerator.checked_mul(i128::try_from(other).ok()?);
    let denominator = factor.1.checked_mul(offset.1).filter(|both| *both <= i128::MAX as u128)?;
    let wholes = (scaled(factor.0, offset.1)?, scaled(offset.0, factor.1)?, denominator);
    Some(made((ratio(factor)?, ratio(offset)?), wholes))
}

fn quotients(random: &mut Random) -> Option<Made> {
    let mut fraction = || (whole(random, 40), whole(random, 40).unsigned_abs().max(1));
    let (factor, offset) = (fraction(), fraction());
    of_fractions(factor, offset)
}

fn powers_of_two(random: &mut Random) -> Option<Made> {
    let mut fraction = || (whole(random, 20), 1 << random.below(50));
    let (factor, offset) = (fraction(), fraction());
    of_fractions(factor, offset)
}

fn huge(random: &mut Random) -> Option<Made> {
    let denominator = whole(random, 127).unsigned_abs().max(1);
    let (factor, offset) = (whole(random, 127), whole(random, 127));
    let ratio = |numerator| Ratio::new(numerator, denominator);
    Some(made((ratio(factor)?, ratio(offset)?), (factor, offset, denominator)))
}

/// Slope and offset by the fractions of the crate, as a sensor curve is made into formulas; the reference stays with whole numbers.
fn curve(random: &mut Random) -> Option<Made> {
    let places = 10_u128.pow(random.below(5));
    let (raw, run) = (whole(random, 20), i128::from(1 + random.below(1 << 16)));
    let (value, rise) = (whole(random, 24), whole(random, 24));
    let at = |numerator| Ratio::new(numerator, places);
    let slope = at(value + rise)?.checked_sub(&at(value)?)?.checked_div(&Ratio::whole(run))?;
    let offset = at(value)?.checked_sub(&slope.checked_mul(&Ratio::whole(raw))?)?;
    Some(made((slope, offset), (rise, value * run - rise * raw, places * run.unsigned_abs())))
}

/// An offset such that the result for one raw value is an odd number of half units in the last place of a double, times a power of two,
/// and then nothing, or one step of the denominator, more or less.
fn near_tie(random: &mut Random, width: u8) -> Option<Made> {
    let raw = random.next() >> (64 - width);
    let denominator = whole(random, 60).unsigned_abs().max(1);
    let factor = whole(random, 50);
    let middle = i128::from(random.next() >> 11 | 1 << 52) * 2 + 1;
    let step = i128::from(random.below(3)) - 1;
    let offset = middle
        .checked_mul(denominator as i128)?
        .checked_mul(1 << random.below(12))?
        .checked_add(step)?
        .checked_sub(factor.checked_mul(raw.into())?)?;
    let ratio = |numerator| Ratio::new(numerator, denominator);
    let made = made((ratio(factor)?, ratio(offset)?), (factor, offset, denominator));
    Some(Made { raw: Some(raw), ..made })
}
