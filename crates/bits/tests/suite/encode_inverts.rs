//! Encoding inverts decoding for every raw value, and finds the nearest raw value for what no raw value reaches.

use crate::support::{ExactFormula, FORMULAS, Random, affine, exactly_double, exactly_ratio};
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::Signed;
use wirelore_bits::{Encoding, Fit, Number, NumberKind, Ratio};

const SIGNED: (i128, i128) = (-0x8000, 0x7FFF);
const UNSIGNED: (i128, i128) = (0, 0xFFFF);

#[test]
fn every_16_bit_raw_value_comes_back() {
    for (factor, offset) in FORMULAS {
        let formula = affine(factor, offset);
        // The one formula whose offset hides its steps: many raw values share a double, so any of them will do.
        let hidden = formula.value(0) == formula.value(1);
        for range in [UNSIGNED, SIGNED] {
            for raw in range.0..=range.1 {
                let value = formula.value(raw);
                let found = formula.raw_nearest(value, range);
                assert_eq!(found.fit, Fit::Exact, "{raw} * {factor} + {offset}");
                assert!(
                    found.raw == raw || hidden && formula.value(found.raw) == value,
                    "{raw} * {factor} + {offset} came back as {}",
                    found.raw
                );
            }
        }
    }
}

#[test]
fn wider_raw_values_come_back() {
    let mut random = Random(21);
    for _ in 0..10_000 {
        for (factor, offset) in FORMULAS {
            let (formula, raw) = (affine(factor, offset), random.raw());
            let range = if raw < 0 { (i64::MIN.into(), i64::MAX.into()) } else { (0, u64::MAX.into()) };
            let (value, found) = (formula.value(raw), formula.raw_nearest(formula.value(raw), range));
            assert_eq!((found.fit, formula.value(found.raw)), (Fit::Exact, value), "{raw} * {factor} + {offset}");
        }
    }
}

/// The ends of 64 bits: their doubles lie outside the raw range, and yet they are reached.
#[test]
fn the_ends_of_64_bits_come_back() {
    let formula = affine("1", "0");
    for raw in [u64::MAX, u64::MAX - 1, u64::MAX - 1023] {
        let found = formula.raw_nearest(raw as f64, (0, u64::MAX.into()));
        assert_eq!((found.fit, formula.value(found.raw)), (Fit::Exact, raw as f64));
    }
    let found = formula.raw_nearest(2f64.powi(64).next_up(), (0, u64::MAX.into()));
    assert_eq!((found.fit, found.raw), (Fit::OutOfRange, u64::MAX.into()));
}

/// Every raw value of a small range looked at, with exact distances.
fn nearest_by_search(exact: &ExactFormula, wanted: &BigRational, range: (i128, i128)) -> (BigRational, Vec<i128>) {
    let distance = |raw: i128| (exact.at(raw) - wanted).abs();
    let least = (range.0..=range.1).map(distance).min().expect("a range with raw values");
    let nearest = (range.0..=range.1).filter(|raw| distance(*raw) == least).collect();
    (least, nearest)
}

#[test]
fn unreached_values_get_the_nearest_raw_value() {
    let mut random = Random(22);
    let mut seen = [0u32; 3];
    for _ in 0..200 {
        for (factor, offset) in FORMULAS {
            let (formula, exact) = (affine(factor, offset), ExactFormula::new(factor, offset));
            let range = (-5, 7);
            // From a little below the range to a little above it.
            let twentieths = i128::from(random.below(340)) - 140;
            let wanted = exact.at(0) + (exact.at(1) - exact.at(0)) * BigRational::new(twentieths.into(), 20.into());
            let Some(ratio) = to_ratio(&wanted) else {
                continue;
            };

            let found = formula.raw_for_ratio(&ratio, range);
            let (least, nearest) = nearest_by_search(&exact, &wanted, range);
            assert!(
                nearest.contains(&found.raw),
                "{wanted} through {factor}, {offset} gave {found:?}, not of {nearest:?}"
            );
            let half = (exact.at(1) - exact.at(0)).abs() / BigInt::from(2);
            let expected = if least == BigRational::from_integer(0.into()) {
                Fit::Exact
            } else if least <= half {
                Fit::Rounded
            } else {
                Fit::OutOfRange
            };
            // Half a step beyond an end: the even one of the two nearest raw values may lie outside.
            if least < half || nearest.len() == 2 || expected == Fit::OutOfRange {
                assert_eq!(found.fit, expected, "{wanted} through {factor}, {offset}");
            }
            if nearest.len() == 2 {
                assert_eq!(found.raw % 2, 0, "a tie goes to the even raw value");
            }
            seen[found.fit as usize] += 1;
        }
    }
    assert!(seen.iter().all(|count| *count > 200), "every kind of answer was met: {seen:?}");
}

fn to_ratio(exact: &BigRational) -> Option<Ratio> {
    let exact = BigRational::new(exact.numer().clone(), exact.denom().clone());
    Ratio::new(exact.numer().try_into().ok()?, exact.denom().try_into().ok()?)
}

#[test]
fn unreached_doubles_get_the_nearest_raw_value() {
    let mut random = Random(23);
    for _ in 0..200 {
        for (factor, offset) in FORMULAS {
            let (formula, exact) = (affine(factor, offset), ExactFormula::new(factor, offset));
            let range = (-5, 7);
            let raw = f64::from(random.below(300)) / 20.0 - 6.0;
            let value = formula.value_of_float(raw);
            let found = formula.raw_nearest(value, range);
            if found.fit == Fit::Exact {
                assert_eq!(formula.value(found.raw), value);
            } else {
                let (_, nearest) = nearest_by_search(&exact, &exactly_double(value), range);
                assert!(
                    nearest.contains(&found.raw),
                    "{value} through {factor}, {offset} gave {found:?}, not of {nearest:?}"
                );
                assert!((range.0..=range.1).all(|raw| formula.value(raw) != value));
            }
        }
    }
}

#[test]
fn exact_values_are_exact() {
    let mut random = Random(24);
    for _ in 0..5_000 {
        for (factor, offset) in FORMULAS {
            let (formula, exact, raw) = (affine(factor, offset), ExactFormula::new(factor, offset), random.raw());
            let Some(value) = formula.exact(raw) else {
                assert!(to_ratio(&exact.at(raw)).is_none(), "{raw} * {factor} + {offset} fits");
                continue;
            };
            assert_eq!(exactly_ratio(&value), exact.at(raw).reduced());
            let found = formula.raw_for_ratio(&value, (i64::MIN.into(), u64::MAX.into()));
            assert_eq!((found.raw, found.fit), (raw, Fit::Exact), "{raw} * {factor} + {offset}");
        }
    }
}

#[test]
fn half_precision_raw_values_come_back() {
    let half = Encoding::new(NumberKind::Float, 16).expect("a float");
    for (factor, offset) in [("1", "0"), ("0.1", "0"), ("-0.05", "0"), ("9/5", "32"), ("0.01", "-327.68")] {
        let formula = affine(factor, offset);
        for bits in (0..=0xFFFFu64).filter(|bits| bits & 0x7C00 != 0x7C00) {
            let Ok(Number::Float(raw)) = half.number(bits) else { panic!("a float reads as a float") };
            let value = formula.value_of_float(raw);
            let back = half.float_bits(formula.raw_float_nearest(value)).expect("it was a half");
            let Ok(Number::Float(again)) = half.number(back.bits) else { panic!("a float reads as a float") };
            assert_eq!(formula.value_of_float(again), value, "{raw} * {factor} + {offset}");
        }
    }
}
