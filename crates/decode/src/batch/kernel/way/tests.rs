//! The pair of doubles against the division of IEEE 754, and which way is taken when.

use super::*;
use wirelore_bits::Ratio;

fn way(factor: &str, offset: &str, raws: (i64, i64)) -> Option<Way> {
    let ratio = |text: &str| text.parse::<Ratio>().expect("a number");
    let formula = Affine::new(ratio(factor), ratio(offset)).expect("it fits");
    Way::new(&formula, raws, TWO_POW_52)
}

const TWO_POW_52: f64 = (1_u64 << 52) as f64;
const U16: (i64, i64) = (0, 0xFFFF);
const U52: (i64, i64) = (0, (1 << 52) - 1);

fn is_moved(way: &Way) -> bool {
    matches!(way.whole, ToWhole::Moved(_))
}

fn is_divided_by_pairs(way: &Way) -> bool {
    matches!(way.value, ToValue::Divided { unfused: Unfused::Pair(_), .. })
}

#[test]
fn the_cheapest_way_that_is_exact_is_taken() {
    let product = |factor| ToValue::Product(Product { factor });
    let identity = way("1", "0", U16).expect("exact");
    assert_eq!(identity.whole, ToWhole::Moved(Moved { addend: -TWO_POW_52 }));
    assert_eq!(identity.value, product(1.0));
    let eighths = way("3/8", "-6/8", U16).expect("exact");
    assert_eq!((eighths.whole, eighths.value), (ToWhole::Moved(Moved { addend: -2.0 - TWO_POW_52 }), product(0.375)));

    let kelvin = way("0.05", "-273.15", U16).expect("exact");
    assert!(is_moved(&kelvin) && is_divided_by_pairs(&kelvin));
    let thirds = way("0.03", "0.06", U16).expect("exact");
    assert!(is_moved(&thirds) && is_divided_by_pairs(&thirds));
    // The offset is no multiple of the factor; a factor below zero would make zero a -0.
    for (factor, offset) in [("0.03", "0.01"), ("-0.05", "0"), ("-1", "0")] {
        let multiplied = way(factor, offset, U16).expect("exact");
        assert!(!is_moved(&multiplied), "{factor}, {offset}");
    }
    // Without a fused multiply-add numbers of 16 bits leave room for denominators up to 2^34 = 17179869184.
    assert!(is_divided_by_pairs(&way("1/15258789063", "0", (0, 0xFFFF)).expect("exact")));
    assert!(!is_divided_by_pairs(&way("1/30517578125", "0", (0, 0xFFFF)).expect("exact")));
    assert!(!is_divided_by_pairs(&way("1e-7", "0", (0, u32::MAX.into())).expect("exact")));
}

#[test]
fn a_way_that_would_round_on_the_way_is_not_taken() {
    assert!(way("0.1", "0", U52).is_some());
    assert!(way("0.3", "0", U52).is_none(), "the product is beyond 2^53");
    assert!(way("1", "9007199254740993", U16).is_none(), "the offset is no double");
    assert!(way("1", "-9007199254740000", U16).is_some());
    assert!(way("1/1125899906842623", "0", U16).is_some());
    assert!(way("1/1125899906842625", "0", U16).is_none(), "the denominator is beyond 2^50");
    assert!(way("1/1125899906842624", "0", U16).is_some(), "2^50 is a power of two");
    assert!(way("1e20", "0", U16).is_none());
}

/// The inverse of two to a power modulo an odd number.
fn halved(exponent: u32, modulus: u64) -> u64 {
    let half = modulus / 2 + 1;
    (0..exponent).fold(1 % modulus, |power, _| (u128::from(power) * u128::from(half) % u128::from(modulus)) as u64)
}

/// Whole numbers up to `largest` whose quotients lie as close as quotients by `divisor` can to the middle of two doubles, and to doubles.
fn hard(divisor: u64, largest: u64) -> Vec<u64> {
    let odd = divisor >> divisor.trailing_zeros();
    let mut numbers = vec![0, 1, largest, largest - 1, largest / 2];
    for size in [largest, largest / 2, largest / 3, largest >> 5, largest >> 11, largest >> 20] {
        let multiple = size / divisor * divisor;
        numbers.extend([multiple, multiple.saturating_sub(1), multiple + 1, multiple / 2, multiple / 2 + 1]);
        // size / divisor is in [2^(e-1), 2^(e+1)), so that the middles are odd multiples of 2^(e-53) or of half of it.
        let e = size.max(1).ilog2() as i32 - divisor.ilog2() as i32;
        for doublings in [52 - e, 53 - e, 54 - e].map(|doublings| doublings.max(0) as u32) {
            // number * 2^doublings leaves 1 or -1 over a multiple of the odd part.
            let near = halved(doublings, odd);
            let base = size / odd * odd;
            numbers.extend([base.saturating_sub(odd) + near, base.saturating_sub(near)]);
        }
    }
    numbers.retain(|number| *number <= largest);
    numbers
}

/// Compares both kinds of pair with the division; tells how many quotients were compared.
fn compare(factor: u64, divisor: u64, others: impl Fn(u64) -> Vec<u64>) -> usize {
    let mut compared = 0;
    let fraction = (u128::from(factor), u128::from(divisor));
    let expect = |whole: u64, value: f64, what: &str| {
        let expected = (whole * factor) as f64 / divisor as f64;
        assert_eq!(value.to_bits(), expected.to_bits(), "{whole} * {factor} / {divisor} {what}");
    };
    let largest = (1 << 53) / factor;
    let full = Pair::new(fraction, f64::MANTISSA_DIGITS);
    assert_eq!(full.high.to_bits(), (factor as f64 / divisor as f64).to_bits(), "the double nearest to the quotient");
    for whole in hard(divisor, largest).into_iter().chain(others(largest)) {
        expect(whole, full.value::<true>(whole as f64), "fused");
        assert_eq!(full.value::<true>(-(whole as f64)).abs().to_bits(), full.value::<true>(whole as f64).to_bits());
        compared += 1;
    }
    // The widest whole numbers that may do without the fused multiply-add.
    let whole_bits = (0..=53).rev().find(|bits| divisor <= 1 << (50_u32.saturating_sub(*bits)) && 1 << bits <= largest);
    let Some(whole_bits) = whole_bits else {
        return compared;
    };
    let short = Pair::new(fraction, f64::MANTISSA_DIGITS - whole_bits);
    for whole in hard(divisor, 1 << whole_bits).into_iter().chain(others(1 << whole_bits)) {
        expect(whole, short.value::<false>(whole as f64), "not fused");
        compared += 1;
    }
    compared
}

/// Some numbers up to `largest` that look random.
fn scattered(seed: u64, count: u64, largest: u64) -> Vec<u64> {
    let mixed = |at: u64| {
        (seed ^ at << 40 ^ at).wrapping_mul(0x9E37_79B9_7F4A_7C15).rotate_left(29).wrapping_mul(0xD6E8_FEB8_6659_FD93)
    };
    (0..count).map(|at| ((u128::from(mixed(at)) * (u128::from(largest) + 1)) >> 64) as u64).collect()
}

#[test]
fn the_pair_is_the_division_for_every_small_denominator() {
    let mut compared = 0;
    for divisor in (3..=4000_u64).filter(|divisor| !divisor.is_power_of_two()) {
        compared += compare(1, divisor, |largest| scattered(divisor, 60, largest));
        compared += compare(divisor / 2 + 1, divisor, |largest| scattered(divisor, 20, largest));
    }
    assert!(compared > 1_000_000, "{compared}");
}

#[test]
fn the_pair_is_the_division_for_large_denominators() {
    let tens = (1..=14).map(|power| 10_u64.pow(power));
    let beside_powers =
        (4..=50).flat_map(|power| [(1_u64 << power) - 1, (1 << power) + 1, 3 << (power - 2), 5 << (power - 3)]);
    let scattered_ones = scattered(7, 300, 1 << 50);
    let divisors = tens.chain(beside_powers).chain(scattered_ones);
    for divisor in divisors.filter(|divisor| *divisor <= 1 << 50 && *divisor > 2 && !divisor.is_power_of_two()) {
        for factor in [1, 3, 7, 999, 65_537, (1 << 31) - 1] {
            compare(factor, divisor, |largest| scattered(divisor, 120, largest));
        }
    }
}
