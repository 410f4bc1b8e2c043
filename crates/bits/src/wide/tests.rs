//! Wide integers against a general-purpose library.

use std::vec::Vec;

use num_bigint::BigUint;
use num_traits::ToPrimitive;

use super::*;
use crate::STRIDE;

/// The top bits of a linear congruential generator (constants of Knuth's MMIX, from memory).
fn next(state: &mut u64) -> u64 {
    let half = |state: &mut u64| {
        *state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        *state >> 32
    };
    half(state) << 32 | half(state)
}

fn random_u128(state: &mut u64) -> u128 {
    (u128::from(next(state)) << 64 | u128::from(next(state))) >> (next(state) % 128)
}

fn big(wide: &Wide) -> BigUint {
    BigUint::from_slice(&wide.0.iter().flat_map(|limb| [*limb as u32, (limb >> 32) as u32]).collect::<Vec<_>>())
}

#[test]
fn products_sums_and_shifts() {
    let mut state = 1;
    for _ in (0..20_000).step_by(STRIDE) {
        let (a, b, c) = (random_u128(&mut state), random_u128(&mut state), random_u128(&mut state));
        let shift = (next(&mut state) % 1000) as u32;
        let expected = ((BigUint::from(a) * b) << shift) + c;
        let wide = Wide::product(a, b).shifted_left(shift).plus(&Wide::from(c));
        assert_eq!(big(&wide), expected);
        assert_eq!(u64::from(wide.bit_length()), expected.bits());
        assert_eq!(wide.to_u128(), expected.to_u128());
        assert_eq!(wide.is_zero(), expected == BigUint::from(0u8));
        assert_eq!(big(&wide.minus(&Wide::from(c))), expected.clone() - c);
        assert_eq!(wide.compare(&Wide::from(b)), expected.cmp(&BigUint::from(b)));
        let right = (next(&mut state) % 1400) as u32;
        let (halved, cut) = wide.shifted_right(right);
        assert_eq!(big(&halved), &expected >> right);
        assert_eq!(cut, (&expected >> right << right) != expected);
        assert_eq!(wide.bit(right), expected.bit(right.into()));
    }
}

#[test]
fn division() {
    let mut state = 2;
    let mut fitting = 0;
    for _ in (0..20_000).step_by(STRIDE) {
        let (a, b) = (random_u128(&mut state), random_u128(&mut state));
        let (c, d) = (random_u128(&mut state).max(1), random_u128(&mut state).max(1));
        // Divisors of one and of two words, and of up to four.
        let (dividend, divisor) = (Wide::product(a, b), if a & 1 == 0 { Wide::from(c) } else { Wide::product(c, d) });
        let (quotient, remainder) = (big(&dividend) / big(&divisor), big(&dividend) % big(&divisor));
        match dividend.divided_by(&divisor) {
            Some((found, rest)) => {
                fitting += 1;
                assert_eq!((BigUint::from(found), big(&rest)), (quotient, remainder));
            }
            None => assert!(quotient.bits() > 128, "{quotient} fits"),
        }
    }
    assert!(fitting > 10_000 / STRIDE);
}

#[test]
fn the_largest_intermediate_fits() {
    let smallest = Dyadic { negative: false, significand: 1, exponent: -1074 };
    let most = Signed { negative: false, size: u128::MAX };
    let sum = Scaled::affine(smallest, most, most);
    assert_eq!((sum.exponent, sum.size.bit_length()), (-1074, 1202));
    let largest = Dyadic { negative: true, significand: (1 << 53) - 1, exponent: 971 };
    let sum = Scaled::affine(largest, most, most.negated());
    assert_eq!((sum.negative, sum.exponent, sum.size.bit_length()), (true, 0, 1152));
}

#[test]
fn signs_meet() {
    let number = |size: u8, negative: bool| (negative, Wide::from(u128::from(size)));
    for (left, right) in (-3i8..=3).flat_map(|left| (-3i8..=3).map(move |right| (left, right))) {
        let sum = Scaled::sum(number(left.unsigned_abs(), left < 0), number(right.unsigned_abs(), right < 0), 0);
        assert_eq!(sum.size.to_u128(), Some((left + right).unsigned_abs().into()));
        assert!(sum.negative == (left + right < 0) || left + right == 0);
    }
    assert_eq!(Signed::from(i128::MIN).to_i128(), Some(i128::MIN));
    assert_eq!(Signed::from(i128::MIN).negated().to_i128(), None);
    assert_eq!(Signed { negative: true, size: u128::MAX }.to_i128(), None);
}
