//! Building, chaining, and floating-point raw values at the edges.

use super::*;
use crate::exactly::two_to;

fn ratio(text: &str) -> Ratio {
    text.parse().expect("a number")
}

fn formula(factor: &str, offset: &str) -> Affine {
    Affine::new(ratio(factor), ratio(offset)).expect("fits")
}

#[test]
fn factor_and_offset_come_back() {
    for (factor, offset) in [("0.05", "-273.15"), ("1/3", "1/7"), ("-2", "0"), ("0.1", "0.1"), ("6", "4"), ("1", "0")] {
        let formula = formula(factor, offset);
        assert_eq!((formula.factor(), formula.offset()), (ratio(factor), ratio(offset)));
    }
    assert_eq!(formula("1", "0"), Affine::identity());
    assert!(Affine::default().is_identity() && !formula("1", "1").is_identity());
}

#[test]
fn what_does_not_fit_is_refused() {
    assert_eq!(Affine::new(Ratio::ZERO, Ratio::ONE), None);
    assert_eq!(Affine::new(ratio("1e-38"), ratio("1/7")), None);
    assert_eq!(Affine::new(ratio("1e38"), ratio("1e-3")), None);
    assert!(Affine::new(ratio("1e-30"), ratio("1e7")).is_some());
}

/// Degrees Celsius to Fahrenheit and back to Celsius: the conversions cancel exactly.
#[test]
fn formulas_chain_exactly() {
    let celsius = formula("0.1", "-40");
    let fahrenheit = celsius.then(&ratio("9/5"), &ratio("32")).expect("fits");
    assert_eq!(fahrenheit, formula("0.18", "-40"));
    assert_eq!(fahrenheit.value(1400), 212.0);
    assert_eq!(fahrenheit.then(&ratio("5/9"), &ratio("-160/9")), Some(celsius));
    assert_eq!(celsius.then(&Ratio::ZERO, &Ratio::ONE), None);
    assert_eq!(celsius.then(&ratio("1e-38"), &Ratio::ZERO), None);
}

/// The exact zero of raw 5463 that plain arithmetic misses.
#[test]
fn zero_is_zero() {
    assert_eq!(formula("0.05", "-273.15").value(5463).to_bits(), 0);
    assert_ne!(5463.0 * 0.05 - 273.15, 0.0);
    assert_eq!(formula("-0.1", "0").value(0).to_bits(), 0);
}

#[test]
fn any_raw_value_may_be_given() {
    let formula = formula("170141183460469231731687303715884105727", "-1");
    let greatest = two_to(127);
    assert_eq!(formula.value(i128::MAX), greatest * greatest);
    assert_eq!(formula.value(i128::MIN), -greatest * greatest);
    assert_eq!(formula.exact(1), Some(Ratio::whole(i128::MAX - 1)));
    assert_eq!(formula.exact(2), None);
}

#[test]
fn floats_that_are_no_numbers_pass() {
    let formula = formula("-0.1", "5");
    assert!(formula.value_of_float(f64::NAN).is_nan() && formula.raw_float_nearest(f64::NAN).is_nan());
    assert_eq!(formula.value_of_float(f64::INFINITY), f64::NEG_INFINITY);
    assert_eq!(formula.raw_float_nearest(f64::INFINITY), f64::NEG_INFINITY);
    assert_eq!(self::formula("1e30", "0").value_of_float(1e300), f64::INFINITY);
    assert_eq!(self::formula("1e30", "0").value_of_float(-1e300), f64::NEG_INFINITY);
}

#[test]
fn floats_keep_the_sign_of_zero_and_the_smallest_numbers() {
    let bits = |factor, offset, raw| formula(factor, offset).value_of_float(raw).to_bits();
    assert_eq!(bits("1", "0", -0.0), (-0.0f64).to_bits());
    assert_eq!(bits("2", "0", -0.0), (-0.0f64).to_bits());
    assert_eq!(bits("-2", "0", 0.0), (-0.0f64).to_bits());
    assert_eq!(bits("2", "1", -0.0), 1f64.to_bits());
    assert_eq!(bits("0.5", "-0.5", 1.0), 0);
    assert_eq!(bits("1", "0", 5e-324), 1);
    // Half of the smallest number ties to zero, a little more than half goes up.
    assert_eq!(bits("0.5", "0", 5e-324), 0);
    assert_eq!(bits("0.51", "0", 5e-324), 1);
    assert_eq!(bits("-1e-30", "0", 5e-324), (-0.0f64).to_bits());
    let signalling = f64::from_bits(0x7FF4_0000_0000_0000);
    assert!(formula("1", "0").value_of_float(signalling).is_nan());
}

#[test]
fn float_raw_values_come_back() {
    let formula = formula("0.1", "-40");
    assert_eq!(formula.value_of_float(250.0), -15.0);
    assert_eq!(formula.raw_float_nearest(-15.0), 250.0);
    assert_eq!(formula.raw_float_nearest(-40.0).to_bits(), 0);
    assert_eq!(Affine::identity().raw_float_nearest(-0.0).to_bits(), (-0.0f64).to_bits());
}
