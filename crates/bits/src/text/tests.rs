//! Against the standard library's printer, which gives the shortest digits that read back (documented for `Display` of `f64`).

use std::format;
use std::string::{String, ToString};

use super::*;
use crate::STRIDE;
use crate::{Affine, Ratio};

fn shown(value: f64) -> Option<String> {
    let mut room = [b'#'; ROOM_BYTES];
    let length = decimal(value, &mut room)?;
    Some(String::from_utf8_lossy(&room[..length]).into_owned())
}

/// What [`decimal`] promises, by the standard library.
fn promised(value: f64) -> Option<String> {
    let text = value.to_string();
    let decimals = text.split_once('.').map_or(0, |(_, behind)| behind.len());
    let in_reach = value == 0.0 || (1e-5..1e7).contains(&value.abs());
    (in_reach && decimals <= 8).then_some(text)
}

/// Numbers that look random and are the same every time.
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        self.0 ^ (self.0 >> 31)
    }
}

#[test]
fn every_value_of_sixteen_bits() {
    let formulas = [
        ("1", "0"),
        ("0.05", "0"),
        ("0.1", "-40"),
        ("0.01", "-327.68"),
        ("0.05", "-273.15"),
        ("0.001", "0"),
        ("-0.0039", "12.5"),
        ("0.125", "-125"),
        ("0.00390625", "0"),
        ("0.0009765625", "-8"),
        ("0.0000001", "-210"),
        ("0.00000001", "0"),
        ("0.000000001", "0"),
        ("1234.5", "0"),
    ];
    let mut short = 0;
    for (factor, offset) in formulas {
        let ratio = |text| Ratio::from_decimal(text).expect("a decimal");
        let formula = Affine::new(ratio(factor), ratio(offset)).expect("it fits");
        for raw in (0..=0xFFFF).step_by(STRIDE) {
            let value = formula.value(raw);
            assert_eq!(shown(value), promised(value), "{raw} * {factor} + {offset}");
            short += usize::from(shown(value).is_some());
        }
    }
    assert!(short > 11 * 65_536 / STRIDE, "{short}");
}

#[test]
fn decimals_of_all_lengths_and_their_neighbours() {
    let mut numbers = Numbers(1);
    for decimals in 0..=15 {
        for digits in 1..=15 {
            let (scale, limit) = (10_f64.powi(decimals), 10_u64.pow(digits));
            for _ in (0..1_000).step_by(STRIDE) {
                let number = numbers.next();
                let value = (number % limit) as f64 / scale * if number >> 63 == 0 { 1.0 } else { -1.0 };
                for value in [value, value.next_up(), value.next_down()] {
                    assert_eq!(shown(value), promised(value), "{value:e}");
                }
            }
        }
    }
}

#[test]
fn doubles_of_any_kind() {
    let mut numbers = Numbers(2);
    for _ in (0..500_000).step_by(STRIDE) {
        let bits = numbers.next();
        // Any sign and fraction, with the exponents around the reach three times of four.
        let near = (bits & !(0x7FF << 52)) | (990 + (bits >> 52) % 64) << 52;
        let value = f64::from_bits(if bits.is_multiple_of(4) { bits } else { near });
        assert_eq!(shown(value), promised(value), "{value:e}");
    }
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, f64::MAX, f64::MIN_POSITIVE, 5e-324] {
        assert_eq!(shown(value), None);
    }
}

#[test]
fn edges() {
    for (value, text) in [
        (0.0, Some("0")),
        (-0.0, Some("-0")),
        (1e-5, Some("0.00001")),
        (-1e-5, Some("-0.00001")),
        (9.99e-6, None),
        (1e-8, None),
        (0.00001234, Some("0.00001234")),
        (9999.9999, Some("9999.9999")),
        (9999.99999, Some("9999.99999")),
        (10_000.0, Some("10000")),
        (9_999_999.99999999, Some("9999999.99999999")),
        (1e7, None),
        (0.1 + 0.2, None),
    ] {
        assert_eq!(shown(value).as_deref(), text, "{value:e}");
    }
}

#[test]
fn whole_numbers() {
    let mut numbers = Numbers(3);
    let powers = (0..20).map(|power| 10_u64.pow(power)).flat_map(|power| [power - 1, power, power + 1]);
    let random = (0..200_000).step_by(STRIDE).map(|shift| numbers.next() >> (shift % 64));
    for value in powers.chain([u64::MAX]).chain(random) {
        let mut room = [b'#'; ROOM_BYTES];
        let length = whole(value, &mut room);
        assert_eq!(&room[..length], format!("{value}").as_bytes());
    }
}
