//! Answers at the edges: ranges, infinities, ties.

use super::*;
use crate::exactly::two_to;

fn formula(factor: &str, offset: &str) -> Affine {
    let ratio = |text: &str| text.parse::<Ratio>().expect("a number");
    Affine::new(ratio(factor), ratio(offset)).expect("fits")
}

const BYTE: (i128, i128) = (0, 255);

fn answer(raw: i128, fit: Fit) -> RawFor {
    RawFor { raw, fit }
}

#[test]
fn edges_of_the_range() {
    let temperature = formula("1", "-40");
    assert_eq!(temperature.raw_nearest(-40.0, BYTE), answer(0, Fit::Exact));
    assert_eq!(temperature.raw_nearest(-40.5, BYTE), answer(0, Fit::Rounded));
    assert_eq!(temperature.raw_nearest(-40.6, BYTE), answer(0, Fit::OutOfRange));
    assert_eq!(temperature.raw_nearest(215.4, BYTE), answer(255, Fit::Rounded));
    assert_eq!(temperature.raw_nearest(215.5, BYTE), answer(255, Fit::OutOfRange));
    assert_eq!(temperature.raw_nearest(1e300, BYTE), answer(255, Fit::OutOfRange));
    assert_eq!(temperature.raw_nearest(-1e300, BYTE), answer(0, Fit::OutOfRange));
}

#[test]
fn ties_go_to_the_even_raw_value() {
    let half = formula("1", "0");
    for (value, raw) in [(0.5, 0), (1.5, 2), (2.5, 2), (3.5, 4)] {
        assert_eq!(half.raw_nearest(value, BYTE), answer(raw, Fit::Rounded));
        assert_eq!(half.raw_nearest(-value, (-255, 255)), answer(-raw, Fit::Rounded));
        assert_eq!(formula("-1", "0").raw_nearest(-value, BYTE), answer(raw, Fit::Rounded));
    }
    let quarter = Ratio::from_decimal("0.25").expect("a number");
    assert_eq!(formula("0.1", "0").raw_for_ratio(&quarter, BYTE), answer(2, Fit::Rounded));
}

#[test]
fn infinities_point_to_an_end() {
    for (factor, high, low) in [("0.1", 255, 0), ("-0.1", 0, 255)] {
        let formula = formula(factor, "3");
        assert_eq!(formula.raw_nearest(f64::INFINITY, BYTE), answer(high, Fit::OutOfRange));
        assert_eq!(formula.raw_nearest(f64::NEG_INFINITY, BYTE), answer(low, Fit::OutOfRange));
        assert_eq!(formula.raw_nearest(f64::MAX, BYTE), answer(high, Fit::OutOfRange));
        assert_eq!(formula.raw_nearest(f64::MIN, BYTE), answer(low, Fit::OutOfRange));
    }
    assert_eq!(formula("0.1", "3").raw_nearest(f64::NAN, BYTE), answer(0, Fit::OutOfRange));
    assert_eq!(formula("0.1", "3").raw_nearest(f64::NAN, (7, 9)), answer(7, Fit::OutOfRange));
}

#[test]
fn a_value_that_only_looks_reached_is_exact_only_as_a_double() {
    // 0.1 as a double is not a tenth, and yet raw 1 decodes to that very double.
    let tenths = formula("0.1", "0");
    assert_eq!(tenths.raw_nearest(0.1, BYTE), answer(1, Fit::Exact));
    assert_eq!(tenths.raw_nearest(0.1f64.next_up(), BYTE), answer(1, Fit::Rounded));
    let double = Ratio::from_f64(0.1).expect("fits");
    assert_eq!(tenths.raw_for_ratio(&double, BYTE), answer(1, Fit::Rounded));
}

/// Below a power of two doubles lie twice as dense as above it, so the nearest raw value may decode to a neighbour of the value
/// while the one on the other side decodes to the value itself.
#[test]
fn the_other_neighbour_may_be_the_exact_one() {
    let value = two_to(56);
    // Raw 0 stands 5 below and rounds to 8 below; raw 1 stands 6 above, less than half of the 16 to the next double.
    let formula = formula("11", "72057594037927931");
    assert_eq!(formula.value(0), value - 8.0);
    assert_eq!(formula.value(1), value);
    assert_eq!(formula.raw_nearest(value, BYTE), answer(1, Fit::Exact));
    assert_eq!(formula.raw_nearest(value, (-3, 0)), answer(0, Fit::Rounded));
}

#[test]
fn values_beyond_all_integers() {
    let everything = (i128::MIN, i128::MAX);
    let fine = formula("1e-30", "0");
    assert_eq!(fine.raw_nearest(1e300, everything), answer(i128::MAX, Fit::OutOfRange));
    assert_eq!(fine.raw_nearest(-1e300, everything), answer(i128::MIN, Fit::OutOfRange));
    assert_eq!(formula("1", "0").raw_nearest(-two_to(127), everything), answer(i128::MIN, Fit::Exact));
    assert_eq!(formula("1", "0").raw_nearest(2.0 * two_to(127), everything), answer(i128::MAX, Fit::OutOfRange));
    assert_eq!(fine.raw_for_ratio(&Ratio::whole(i128::MAX), everything), answer(i128::MAX, Fit::OutOfRange));
    let finest = Ratio::new(1, u128::MAX).expect("a ratio");
    assert_eq!(
        formula("170141183460469231731687303715884105727", "1").raw_for_ratio(&finest, everything),
        answer(0, Fit::Rounded)
    );
}

#[test]
fn a_range_the_wrong_way_round_is_no_panic() {
    assert_eq!(formula("1", "0").raw_nearest(7.0, (10, 5)).fit, Fit::OutOfRange);
}
