//! Fractions against the rational numbers of a general-purpose library.

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::Zero;

use super::*;
use crate::STRIDE;
use crate::exactly::two_to;

fn big(ratio: &Ratio) -> BigRational {
    BigRational::new(ratio.numerator().into(), ratio.denominator().into())
}

/// The exact result if it fits, which is what checked arithmetic must give.
fn fitting(exact: &BigRational) -> Option<Ratio> {
    let ratio = Ratio::new(exact.numer().try_into().ok()?, exact.denom().try_into().ok()?)?;
    assert_eq!(&big(&ratio), exact);
    Some(ratio)
}

/// Fractions of all sizes, many with common divisors.
fn random(state: &mut u64) -> Ratio {
    let mut next = || {
        *state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        *state >> 32
    };
    let mut part = |odd: bool| {
        let shift = next() % 127;
        let number =
            (u128::from(next()) << 96 | u128::from(next()) << 64 | u128::from(next()) << 32 | u128::from(next()))
                >> shift;
        if odd { number | 1 } else { number - number % 60 }
    };
    let (small, numerator, denominator) = (part(true) % 3 == 0, part(true), part(false).max(1));
    let numerator = (numerator >> 1) as i128 * if small { -1 } else { 1 };
    Ratio::new(numerator, denominator).expect("a denominator")
}

#[test]
fn arithmetic_is_exact_or_refused() {
    let mut state = 5;
    let mut refused = 0;
    let step = STRIDE * STRIDE.min(5);
    for _ in (0..20_000).step_by(step) {
        let (a, b) = (random(&mut state), random(&mut state));
        let (exact_a, exact_b) = (big(&a), big(&b));
        let sum = a.checked_add(&b);
        refused += usize::from(sum.is_none());
        assert_eq!(sum, fitting(&(&exact_a + &exact_b)), "{a:?} + {b:?}");
        assert_eq!(a.checked_sub(&b), fitting(&(&exact_a - &exact_b)), "{a:?} - {b:?}");
        assert_eq!(a.checked_mul(&b), fitting(&(&exact_a * &exact_b)), "{a:?} * {b:?}");
        let quotient = if b.is_zero() { None } else { fitting(&(&exact_a / &exact_b)) };
        assert_eq!(a.checked_div(&b), quotient, "{a:?} / {b:?}");
        assert_eq!(a.checked_neg(), fitting(&-&exact_a));
        assert_eq!(a.cmp(&b), exact_a.cmp(&exact_b), "{a:?} and {b:?}");
        assert_eq!(a.cmp(&a), Ordering::Equal);
    }
    assert!((1_000 / step..19_000 / step).contains(&refused), "{refused} sums did not fit");
}

#[test]
fn ends_of_the_range() {
    let lowest = Ratio::whole(i128::MIN);
    assert_eq!(lowest.checked_neg(), None);
    assert_eq!(lowest.checked_sub(&lowest), Some(Ratio::ZERO));
    assert_eq!(lowest.checked_add(&Ratio::ONE).and_then(|sum| sum.checked_sub(&Ratio::ONE)), Some(lowest));
    assert_eq!(lowest.checked_sub(&Ratio::ONE), None);
    let finest = Ratio::new(1, u128::MAX).expect("a ratio");
    assert_eq!(finest.checked_add(&finest), Ratio::new(2, u128::MAX));
    assert_eq!(finest.checked_mul(&finest), None);
    assert_eq!(finest.checked_div(&finest), Some(Ratio::ONE));
    assert_eq!(Ratio::ONE.checked_div(&Ratio::ZERO), None);
    assert_eq!(Ratio::new(1, 0), None);
    assert_eq!(Ratio::new(0, 7), Some(Ratio::ZERO));
    assert_eq!(Ratio::new(-6, 4).map(|ratio| (ratio.numerator(), ratio.denominator())), Some((-3, 2)));
    assert_eq!(Ratio::new(i128::MIN, 1 << 127), Some(Ratio::whole(-1)));
}

#[test]
fn doubles_are_read_exactly_or_refused() {
    for value in [0.0, -0.0, 1.0, -0.1, 0.05, 1e30, 1.0 / two_to(127), two_to(126), -two_to(127), 1e-20] {
        let ratio = Ratio::from_f64(value).expect("fits");
        assert_eq!(ratio.to_f64(), value);
        assert_eq!(big(&ratio), BigRational::from_float(value).expect("finite"));
    }
    assert_eq!(Ratio::from_f64(0.1).map(|ratio| ratio.denominator()), Some(1 << 55));
    for value in [f64::NAN, f64::INFINITY, two_to(127), 0.5 / two_to(127), 1e-40] {
        assert_eq!(Ratio::from_f64(value), None, "{value}");
    }
}

#[test]
fn nearest_doubles_of_random_fractions() {
    let mut state = 6;
    for _ in (0..20_000).step_by(STRIDE) {
        let ratio = random(&mut state);
        let value = ratio.to_f64();
        let exact = big(&ratio);
        let distance = |double: f64| {
            let difference = BigRational::from_float(double).expect("finite") - &exact;
            if difference < BigRational::zero() { -difference } else { difference }
        };
        let least = distance(value);
        for neighbour in [value.next_down(), value.next_up()] {
            let other = distance(neighbour);
            assert!(least < other || least == other && value.to_bits() & 1 == 0, "{ratio:?} gave {value}");
        }
    }
    let tie = Ratio::whole((1 << 53) + 1);
    assert_eq!(tie.to_f64(), 9_007_199_254_740_992.0);
    assert_eq!(BigInt::from(tie.numerator()), (BigInt::from(1) << 53u32) + 1);
}
