//! Every engineering value is the double nearest to the exact result: shown with the rational arithmetic of general-purpose libraries.

use crate::support::{ExactFormula, FORMULAS, Random, affine, exactly, is_nearest};
use wirelore_bits::{Affine, Encoding, Number, NumberKind, Ratio, Scaler};

/// Raw values of 16 bits, with and without a sign.
const ALL_16_BIT: core::ops::RangeInclusive<i128> = -0x8000..=0xFFFF;

fn check_16_bit(formulas: &[(&str, &str)]) {
    for (factor, offset) in formulas {
        let (formula, exact) = (affine(factor, offset), ExactFormula::new(factor, offset));
        let scaler = Scaler::new(&formula, *ALL_16_BIT.start(), *ALL_16_BIT.end());
        for raw in ALL_16_BIT {
            let value = formula.value(raw);
            assert!(is_nearest(value, &exact.at(raw)), "{raw} * {factor} + {offset} gave {value}");
            assert_eq!(scaler.value(raw as i64).to_bits(), value.to_bits(), "{raw} * {factor} + {offset}");
        }
    }
}

#[test]
fn every_16_bit_raw_value() {
    check_16_bit(&FORMULAS[..FORMULAS.len() / 2]);
}

#[test]
fn every_16_bit_raw_value_in_awkward_formulas() {
    check_16_bit(&FORMULAS[FORMULAS.len() / 2..]);
}

/// A second, independent judge: the number parser of the standard library, which rounds decimal text to the nearest double.
#[test]
fn decimal_text_read_as_a_double_agrees() {
    // Thousandths: the exact result of these is raw * factor + offset as a whole number of them.
    for (factor, offset, thousandths, start) in [
        ("0.01", "-327.68", 10, -327_680),
        ("0.001", "0", 1, 0),
        ("0.05", "-273.15", 50, -273_150),
        ("0.1", "-40", 100, -40_000),
    ] {
        let formula = affine(factor, offset);
        for raw in 0..=0xFFFF {
            let expected: f64 = format!("{}e-3", raw * thousandths + start).parse().expect("a number");
            assert_eq!(formula.value(raw), expected, "{raw} * {factor} + {offset}");
        }
    }
}

#[test]
fn a_million_wider_raw_values() {
    let mut random = Random(11);
    let exact: Vec<_> =
        FORMULAS.iter().map(|(factor, offset)| (affine(factor, offset), ExactFormula::new(factor, offset))).collect();
    for _ in 0..40_000 {
        for (index, (formula, exact)) in exact.iter().enumerate() {
            let raw = random.raw();
            check_value(formula, exact, raw, FORMULAS[index]);
        }
    }
}

#[test]
fn random_factors_and_offsets() {
    let mut random = Random(12);
    let mut fitting = 0;
    for _ in 0..20_000 {
        let (factor, offset) = (random.decimal(), random.decimal());
        let ratio = |text: &str| Ratio::from_decimal(text).expect("a number");
        let Some(formula) = Affine::new(ratio(&factor), ratio(&offset)) else {
            continue;
        };
        fitting += 1;
        let exact = ExactFormula::new(&factor, &offset);
        for _ in 0..10 {
            check_value(&formula, &exact, random.raw(), (&factor, &offset));
        }
    }
    assert!(fitting > 19_000, "only {fitting} formulas fit");
}

/// One value, by the formula itself and by scalers for ranges that do and do not hold the raw value.
fn check_value(formula: &Affine, exact: &ExactFormula, raw: i128, (factor, offset): (&str, &str)) {
    let value = formula.value(raw);
    assert!(is_nearest(value, &exact.at(raw)), "{raw} * {factor} + {offset} gave {value}");
    for (low, high) in [(0, u64::MAX.into()), (i64::MIN.into(), i64::MAX.into()), (raw - 3, raw + 9), (-7, 7), (5, -5)]
    {
        let scaler = Scaler::new(formula, low, high);
        assert_eq!(
            scaler.value_of(raw).to_bits(),
            value.to_bits(),
            "{raw} * {factor} + {offset} scaled for {low}..={high}"
        );
    }
}

/// The shares of wrong values are those measured for this project on all unsigned 16-bit raw values: without them the tests above
/// could pass with plain floating-point arithmetic.
#[test]
fn plain_arithmetic_would_be_wrong() {
    for (factor, offset, per_mille) in [
        (0.1, 0.0, 350),
        (0.01, 0.0, 134),
        (0.001, 0.0, 140),
        (0.1, -40.0, 361),
        (0.01, -50.0, 285),
        (0.01, -327.68, 527),
        (0.05, -273.15, 481),
        (0.125, 0.0, 0),
    ] {
        let formula = affine(&format!("{factor}"), &format!("{offset}"));
        let wrong =
            (0..=0xFFFFu16).filter(|raw| f64::from(*raw) * factor + offset != formula.value((*raw).into())).count();
        assert_eq!(
            (wrong * 1000 + 32_768) / 65_536,
            per_mille,
            "{wrong} values of raw * {factor} + {offset} are wrong"
        );
    }
}

#[test]
fn every_half_precision_raw_value() {
    let half = Encoding::new(NumberKind::Float, 16).expect("a float");
    for (factor, offset) in FORMULAS {
        let (formula, exact) = (affine(factor, offset), ExactFormula::new(factor, offset));
        for bits in 0..=0xFFFF {
            let Ok(Number::Float(raw)) = half.number(bits) else { panic!("a float reads as a float") };
            let value = formula.value_of_float(raw);
            if raw.is_finite() {
                assert!(is_nearest(value, &exact.at_float(raw)), "{raw} * {factor} + {offset} gave {value}");
            } else {
                assert_eq!(value.is_nan(), raw.is_nan());
                assert_eq!(value.is_infinite(), raw.is_infinite());
            }
        }
    }
}

#[test]
fn any_double_as_raw_value() {
    let mut random = Random(13);
    let exact: Vec<_> =
        FORMULAS.iter().map(|(factor, offset)| (affine(factor, offset), ExactFormula::new(factor, offset))).collect();
    for _ in 0..4_000 {
        for (formula, exact) in &exact {
            // Any exponent at all, and one near 0 where the offset matters.
            let near = (random.next() as i64) as f64 * 2f64.powi(-(random.below(80) as i32));
            for raw in [f64::from_bits(random.next()), near].into_iter().filter(|raw| raw.is_finite()) {
                let value = formula.value_of_float(raw);
                assert!(is_nearest(value, &exact.at_float(raw)), "{raw:e} through {formula:?} gave {value:e}");
            }
        }
    }
}

/// The judge itself: it accepts the nearest double and nothing else.
#[test]
fn the_judge_judges() {
    let (third, tie) = (exactly("1/3"), exactly("9007199254740993"));
    assert!(is_nearest(1.0 / 3.0, &third));
    assert!(!is_nearest((1.0f64 / 3.0).next_up(), &third) && !is_nearest((1.0f64 / 3.0).next_down(), &third));
    assert!(is_nearest(9_007_199_254_740_992.0, &tie) && !is_nearest(9_007_199_254_740_994.0, &tie));
    assert!(is_nearest(f64::INFINITY, &exactly("1.8e308")) && !is_nearest(f64::INFINITY, &exactly("1.79e308")));
    assert!(is_nearest(0.0, &exactly("1e-330")) && is_nearest(5e-324, &exactly("3e-324")));
}
