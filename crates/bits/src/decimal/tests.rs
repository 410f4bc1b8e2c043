//! Text to fraction and back.

use std::format;
use std::string::{String, ToString};

use super::*;
use crate::STRIDE;

fn ratio(numerator: i128, denominator: u128) -> Ratio {
    Ratio::new(numerator, denominator).expect("a denominator")
}

#[test]
fn decimals_are_read_exactly() {
    for (text, numerator, denominator) in [
        ("0.05", 1, 20),
        ("-1e-3", -1, 1000),
        ("12", 12, 1),
        ("+7", 7, 1),
        ("6.02E+2", 602, 1),
        ("1_000.000_5", 2_000_001, 2000),
        ("0", 0, 1),
        ("-0.000", 0, 1),
        ("0e999999999999", 0, 1),
        ("007.50", 15, 2),
        ("3e-1", 3, 10),
        ("170141183460469231731687303715884105727", i128::MAX, 1),
        ("-170141183460469231731687303715884105728", i128::MIN, 1),
        ("1e38", 10i128.pow(38), 1),
        ("1000000000000000000000000000000000000000000e-42", 1, 1),
        ("1.00000000000000000000000000000000000000000000000000", 1, 1),
        ("4e-39", 1, 25 * 10u128.pow(37)),
    ] {
        assert_eq!(Ratio::from_decimal(text), Ok(ratio(numerator, denominator)), "{text}");
    }
    // 2^50 * 10^-50 is 5^-50 * 2^0: the power of ten alone would not fit.
    assert_eq!(Ratio::from_decimal("1125899906842624e-50"), Ok(ratio(1, 5u128.pow(50))));
}

#[test]
fn short_numbers_are_read_as_long_ones_are() {
    let mut state = 9_u64;
    let mut next = |most: u64| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) % most
    };
    let mut short = 0;
    for _ in (0..50_000).step_by(STRIDE) {
        let length = 1 + next(21);
        let text: String = (0..length).map(|_| b"0123456789050250.5._"[next(20) as usize] as char).collect();
        let long = Ratio::from_any_decimal(&text);
        if let Some(value) = short_decimal(text.as_bytes()) {
            short += 1;
            assert_eq!(long, Ok(value), "{text}");
            let again = Ratio::new(value.numerator(), value.denominator());
            assert_eq!(again, Some(value), "{text} in lowest terms");
        }
    }
    assert!(short > 5_000 / STRIDE, "{short} texts were short numbers");
    assert_eq!(short_decimal(b"999999999999999999"), Ratio::from_any_decimal("999999999999999999").ok());
    assert_eq!(short_decimal(b"1234567890123456789"), None);
}

#[test]
fn other_texts_are_refused() {
    for text in [
        "", "-", "+", ".", "5.", ".5", "1.2.3", "1e", "e3", "1e+", "1e1.5", "1e1_0", "_1", "1_", "1__0", "1_.5",
        "1._5", "--1", "+-1", "0x1A", "1,5", "1 ", " 1", "½", "٣", "inf", "nan", "1/2",
    ] {
        assert_eq!(Ratio::from_decimal(text), Err(DecimalError::Malformed), "{text:?}");
    }
    for text in [
        "170141183460469231731687303715884105728",
        "340282366920938463463374607431768211456",
        "1e39",
        "1e-60",
        "1e2147483648",
        "-1e-99999999999999999999",
        "0.1234567890123456789012345678901234567890",
    ] {
        assert_eq!(Ratio::from_decimal(text), Err(DecimalError::TooLong), "{text:?}");
    }
}

#[test]
fn long_texts_take_linear_time() {
    let digits = 1_000_000 / STRIDE;
    let zeros = "0".repeat(digits);
    assert_eq!(Ratio::from_decimal(&zeros), Ok(Ratio::ZERO));
    assert_eq!(Ratio::from_decimal(&format!("1.{zeros}")), Ok(Ratio::ONE));
    assert_eq!(Ratio::from_decimal(&format!("1.{zeros}1")), Err(DecimalError::TooLong));
    assert_eq!(Ratio::from_decimal(&format!("1{zeros}")), Err(DecimalError::TooLong));
    assert_eq!(Ratio::from_decimal(&format!("1{zeros}e-{digits}")), Ok(Ratio::ONE));
    assert_eq!(Ratio::from_decimal(&"9".repeat(digits)), Err(DecimalError::TooLong));
}

#[test]
fn quotients_are_read() {
    assert_eq!("-9/5".parse(), Ok(ratio(-9, 5)));
    assert_eq!("100/1000".parse(), Ok(ratio(1, 10)));
    assert_eq!("0/3".parse(), Ok(Ratio::ZERO));
    for text in ["1/0", "1/-2", "1/+2", "/2", "1/", "1/2/3", "1.5/2", "1e2/3", "1 / 2"] {
        assert_eq!(text.parse::<Ratio>(), Err(DecimalError::Malformed), "{text:?}");
    }
}

#[test]
fn text_is_shortest_exact() {
    for (numerator, denominator, text) in [
        (1, 20, "0.05"),
        (-1, 1000, "-0.001"),
        (12, 1, "12"),
        (0, 1, "0"),
        (-5, 2, "-2.5"),
        (1, 256, "0.00390625"),
        (1, 3, "1/3"),
        (-9, 7, "-9/7"),
        (1, 10u128.pow(38), "0.00000000000000000000000000000000000001"),
        (i128::MIN, 1, "-170141183460469231731687303715884105728"),
        (i128::MAX, u128::MAX, "170141183460469231731687303715884105727/340282366920938463463374607431768211455"),
        // Finite, but of more than 128 bits of digits.
        (1, 1 << 127, "1/170141183460469231731687303715884105728"),
    ] {
        assert_eq!(ratio(numerator, denominator).to_string(), text);
    }
    assert_eq!(
        format!("[{:>6}|{:<6}|{:06}|{:+}]", ratio(1, 20), ratio(1, 2), ratio(-1, 4), ratio(3, 1)),
        "[  0.05|0.5   |-00.25|+3]"
    );
}

#[test]
fn every_text_is_read_back() {
    let mut numerator = 1i128;
    for twos in (0..=127u32).step_by(STRIDE.min(20)) {
        for (fives, others) in [(0, 1), (1, 1), (twos.min(20), 1), (54, 1), (3, 3), (0, 1_000_003)] {
            let Some(denominator) =
                5u128.pow(fives).checked_mul(others).and_then(|product| product.checked_mul(1 << twos))
            else {
                continue;
            };
            numerator = numerator.wrapping_mul(-0x2545_F491_4F6C_DD1D).wrapping_add(11);
            for numerator in [numerator, numerator >> 64, numerator >> 110, 1] {
                let value = ratio(numerator, denominator);
                let text: String = value.to_string();
                assert_eq!(text.parse(), Ok(value), "{text}");
            }
        }
    }
}
