//! Widening and narrowing, against the conversions of the standard library where it has them.

use super::*;
use crate::STRIDE;
use crate::exactly::two_to;

#[test]
fn every_half_comes_back() {
    for bits in (0..=0xFFFF).step_by(STRIDE) {
        let value = HALF.widen(bits);
        assert_eq!(HALF.narrow(value), (bits, true), "{bits:04X} is {value}");
    }
}

/// IEEE 754: between two neighbouring halves, values narrow to the nearer one, and from the middle to the even one.
#[test]
fn halves_round_to_nearest_even() {
    for bits in (0..0x7BFFu64).step_by(STRIDE) {
        let (low, high) = (HALF.widen(bits), HALF.widen(bits + 1));
        let middle = (low + high) / 2.0;
        let even = bits + (bits & 1);
        assert_eq!(HALF.narrow(middle), (even, false), "{middle}");
        assert_eq!(HALF.narrow(middle.next_down()), (bits, false), "{middle}");
        assert_eq!(HALF.narrow(middle.next_up()), (bits + 1, false), "{middle}");
        assert_eq!(HALF.narrow(-middle), (0x8000 | even, false), "{middle}");
    }
}

#[test]
fn halves_overflow_from_the_middle_on() {
    assert_eq!(HALF.narrow(65519.9), (0x7BFF, false));
    assert_eq!(HALF.narrow(65520.0), (0x7C00, false));
    assert_eq!(HALF.narrow(f64::MIN), (0xFC00, false));
    assert_eq!(HALF.narrow(f64::MIN_POSITIVE), (0, false));
    assert_eq!(HALF.narrow(-5e-324), (0x8000, false));
}

#[test]
fn singles_agree_with_the_language() {
    let mut state = 7u64;
    for _ in (0..500_000).step_by(STRIDE) {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let single = f32::from_bits((state >> 32) as u32);
        if !single.is_nan() {
            assert_eq!(SINGLE.widen(single.to_bits().into()).to_bits(), f64::from(single).to_bits());
        }
        assert_eq!(SINGLE.narrow(SINGLE.widen(state >> 32)), (state >> 32, true));
        // Any double, and one in reach of a single.
        for double in [f64::from_bits(state), f64::from(single) * (1.0 + (state as u32) as f64 / two_to(54))] {
            if !double.is_nan() {
                let (bits, exact) = SINGLE.narrow(double);
                assert_eq!(bits, u64::from((double as f32).to_bits()), "{double:e}");
                assert_eq!(exact, f64::from(double as f32) == double, "{double:e}");
            }
        }
    }
}

#[test]
fn not_a_numbers_keep_what_fits() {
    // Signalling ones stay signalling, bit for bit.
    assert_eq!(SINGLE.widen(0x7FA0_0001).to_bits(), 0x7FF4_0000_2000_0000);
    assert_eq!(SINGLE.narrow(f64::from_bits(0x7FF4_0000_2000_0000)), (0x7FA0_0001, true));
    // A payload that does not fit is cut; one that is lost wholly becomes the quiet one.
    assert_eq!(SINGLE.narrow(f64::from_bits(0xFFF4_0000_2000_0001)), (0xFFA0_0001, false));
    assert_eq!(SINGLE.narrow(f64::from_bits(0x7FF0_0000_0000_0001)), (0x7FC0_0000, false));
}

#[test]
fn doubles_are_themselves() {
    for value in [0.0, -0.0, 1.5, -5e-324, f64::MIN_POSITIVE, f64::MAX, f64::NEG_INFINITY] {
        assert_eq!(DOUBLE.narrow(value), (value.to_bits(), true));
        assert_eq!(DOUBLE.widen(value.to_bits()).to_bits(), value.to_bits());
    }
}

#[test]
fn more_breaks_ties_upwards() {
    // 2^55 + 2 is half way between two doubles; anything more is nearer to the upper one.
    let tie = Dyadic { negative: false, significand: (1 << 54) + 2 - 1, exponent: 0 };
    let double = |significand: u64, more| f64::from_bits(DOUBLE.round(Dyadic { significand, ..tie }, more));
    assert_eq!(double((1 << 54) + 2, false), two_to(54));
    assert_eq!(double((1 << 54) + 2, true), two_to(54) + 4.0);
    assert_eq!(double((1 << 54) + 1, true), two_to(54));
}
