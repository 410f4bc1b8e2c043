//! Where a quotient is taken, and that ranges are only a hint.

use super::*;
use crate::Ratio;

fn scaler(factor: &str, offset: &str, range: (i128, i128)) -> Scaler {
    let ratio = |text: &str| text.parse::<Ratio>().expect("a number");
    Scaler::new(&Affine::new(ratio(factor), ratio(offset)).expect("fits"), range.0, range.1)
}

const U16: (i128, i128) = (0, 0xFFFF);
const I64: (i128, i128) = (i64::MIN as i128, i64::MAX as i128);
const U64: (i128, i128) = (0, u64::MAX as i128);

#[test]
fn a_quotient_is_taken_where_it_is_exact() {
    let quotient = |factor, offset, divisor| Some(Quotient { factor, offset, divisor });
    assert_eq!(scaler("1", "0", I64).quotient, Some(Quotient::IDENTITY));
    assert_eq!(scaler("1", "-40", U16).quotient, quotient(1, -40, 1.0));
    assert_eq!(scaler("1/256", "3", U16).quotient, quotient(1, 768, 256.0));
    assert_eq!(scaler("0.05", "-273.15", U16).quotient, quotient(1, -5463, 20.0));
    // The conversion of a 64-bit numerator rounds, and a division would round again.
    assert_eq!(scaler("0.1", "0", I64).quotient, None);
    assert_eq!(scaler("0.1", "0", (0, 1 << 53)).quotient, quotient(1, 0, 10.0));
    assert_eq!(scaler("0.1", "0", (0, (1 << 53) + 1)).quotient, None);
    // The numerator of 2^63 / 2 does not fit, and neither does its product on the way to a sum that would.
    assert_eq!(scaler("1.5", "0", I64).quotient, None);
    assert_eq!(scaler("2", "-9223372036854775807", (0, i64::MAX.into())).quotient, None);
    assert_eq!(scaler("1e-20", "0", U16).quotient, None);
    assert_eq!(scaler("1e20", "0", U16).quotient, None);
    assert_eq!(scaler("0.1", "0", (9, 8)).quotient, None);
    assert_eq!(scaler("0.1", "0", (1 << 70, 1 << 71)).quotient, None);
}

#[test]
fn every_path_agrees_with_the_formula_inside_and_outside_its_range() {
    let edges = [
        0,
        1,
        2,
        9,
        0x7FFF,
        0x8000,
        0xFFFF,
        0x1_0000,
        (1 << 53) - 1,
        1 << 53,
        (1 << 53) + 1,
        i64::MAX as i128 - 1,
        i64::MAX as i128,
        1 << 63,
        u64::MAX as i128,
    ];
    for (factor, offset) in [
        ("1", "0"),
        ("1", "-40"),
        ("1/256", "3"),
        ("0.05", "-273.15"),
        ("1.5", "0"),
        ("2", "-9223372036854775807"),
        ("1e-20", "7"),
        ("-1e20", "0.1"),
        ("-1/3", "5"),
    ] {
        for range in [U16, I64, U64, (-5, 5), (9, 8), (1 << 70, 1 << 71), (i128::MIN, i128::MAX)] {
            let scaler = scaler(factor, offset, range);
            for raw in edges.into_iter().flat_map(|raw| [raw, -raw]) {
                let expected = scaler.affine().value(raw).to_bits();
                assert_eq!(
                    scaler.value_of(raw).to_bits(),
                    expected,
                    "{raw} * {factor} + {offset} scaled for {range:?}"
                );
                if let Ok(raw) = i64::try_from(raw) {
                    assert_eq!(scaler.value(raw).to_bits(), expected);
                }
            }
        }
    }
}

#[test]
fn whole_values_are_known() {
    assert!(scaler("2", "-40", U16).is_exactly_integer());
    assert!(!scaler("2", "0.5", U16).is_exactly_integer());
}

#[test]
fn a_quotient_may_be_counted_from_any_raw_value() {
    for (factor, offset, (first, last)) in [
        ("0.05", "-273.15", (-5000, 5000)),
        ("-1/3", "5", (-128, 127)),
        ("1", "0", (i64::MIN, i64::MAX)),
        ("-1", "0", (i64::MIN + 1, i64::MAX)),
        ("2", "7", (-(1 << 62), (1 << 62) - 4)),
    ] {
        let scaler = scaler(factor, offset, (first.into(), last.into()));
        let quotient = scaler.quotient.expect("numerators of 64 bits");
        let counted = quotient.counted_from(first);
        for raw in [first, first + 1, 0, 1, last - 1, last] {
            let expected = scaler.affine().value(raw.into()).to_bits();
            assert_eq!(quotient.value(raw).to_bits(), expected, "{raw} * {factor} + {offset}");
            assert_eq!(
                counted.value(raw.wrapping_sub(first)).to_bits(),
                expected,
                "{raw} * {factor} + {offset} from {first}"
            );
        }
    }
}
