//! From the bits of a payload to the double nearest to the exact result: every width, number format, byte order and kind of formula, against
//! a reference in whole numbers that shares no code with the crate.
//!
//! The suite runs a hundred thousand cases. `WIRELORE_LONG=1 cargo test -p wirelore-bits exact_everywhere -- --nocapture` runs a hundred million.

use std::collections::BTreeMap;

use wirelore_bits::{Affine, Encoding, Extractor, Field, Number, NumberKind, Ratio, Scaler};

use crate::formulas::{Family, Made, make};
use crate::nearest::{Binary, Nearest};
use crate::payload::{Run, write};
use crate::support::Random;

const CASES: u64 = 100_000;
const LONG_CASES: u64 = 100_000_000;
/// Raw values that each formula is tried with, unless it was made for one.
const RAWS: u64 = 10;

/// What was met: a test that meets nothing proves nothing.
#[derive(Debug, Default)]
struct Met {
    cases: u64,
    by_family: BTreeMap<Family, u64>,
    by_kind: BTreeMap<NumberKind, u64>,
    /// Cases that 128 bits were too few for.
    with_big_integers: u64,
    /// Cases in which `raw * factor + offset` in doubles gives another double.
    plainly_wrong: u64,
}

#[test]
fn every_case_gives_the_nearest_double() {
    let cases = if std::env::var_os("WIRELORE_LONG").is_some() { LONG_CASES } else { CASES };
    let (mut random, mut met) = (Random(31), Met::default());
    while met.cases < cases {
        let family = match random.below(2) {
            0 => Family::NearTies,
            _ => Family::ALL[random.below(Family::ALL.len() as u32) as usize],
        };
        let (kind, width) = format(&mut random, family);
        let made = make(family, &mut random, width);
        let formula = Affine::new(made.factor, made.offset)
            .unwrap_or_else(|| panic!("{made:?} fits before it is reduced, so it must fit afterwards"));
        check(&mut random, &mut met, (&made, &formula), Encoding::new(kind, width).expect("a format"));
    }
    println!("{met:#?}");
    assert!(Family::ALL.iter().all(|family| met.by_family[family] > cases / 20), "{met:?}");
    assert!(met.by_kind.len() == 5 && met.by_kind.values().all(|count| *count > cases / 20), "{met:?}");
    assert!(met.with_big_integers > cases / 100 && met.with_big_integers < cases / 2, "{met:?}");
    assert!(met.plainly_wrong > cases / 10, "{met:?}");
}

/// A number format and its width.
fn format(random: &mut Random, family: Family) -> (NumberKind, u8) {
    let width = 1 + random.below(64) as u8;
    if family == Family::NearTies {
        return (NumberKind::Unsigned, width);
    }
    match random.below(6) {
        0 | 1 => (NumberKind::Unsigned, width),
        2 => (NumberKind::Signed, width),
        3 => (NumberKind::SignMagnitude, width.max(2)),
        4 => (NumberKind::Bcd, width.div_ceil(4) * 4),
        _ => (NumberKind::Float, [16, 32, 64][random.below(3) as usize]),
    }
}

/// One formula with some raw values of one format, each through a payload.
fn check(random: &mut Random, met: &mut Met, (made, formula): (&Made, &Affine), encoding: Encoding) {
    let (kind, width) = (encoding.kind(), encoding.width());
    let run = Run::random(random, width.into());
    let extractor = Extractor::new(&Field::from(run.place()));
    let scaler = encoding.integer_range().map(|(least, most)| Scaler::new(formula, least, most));
    let mut payload = [0; 64];
    payload.as_chunks_mut::<8>().0.iter_mut().for_each(|word| *word = random.next().to_le_bytes());
    let raws = if made.raw.is_some() { 1 } else { RAWS };
    for _ in 0..raws {
        let bits = made.raw.unwrap_or_else(|| bits_of(random, kind, width));
        write(&mut payload, run, bits);
        let read = extractor.extract(&payload).map(|bits| encoding.number(bits));
        met.cases += 1;
        *met.by_family.entry(made.family).or_default() += 1;
        *met.by_kind.entry(kind).or_default() += 1;
        let (value, plain, (expected, is_short)) = match (read, number_of(kind, width, bits)) {
            (Some(Ok(Number::Integer(read))), Raw::Whole(raw)) => {
                assert_eq!(read, raw, "{bits:#X} as {encoding:?}");
                let value = formula.value(raw);
                let scaled = scaler.as_ref().map(|scaler| scaler.value_of(raw).to_bits());
                assert_eq!(scaled, Some(value.to_bits()), "{raw} of {encoding:?} by the scaler of {made:?}");
                (value, raw as f64, judged(met, made.exact.at(raw), || made.exact.at_with_big_integers(raw)))
            }
            (Some(Ok(Number::Float(read))), Raw::Binary(raw)) => {
                let value = formula.value_of_float(read);
                (value, read, judged(met, made.exact.at_binary(raw), || made.exact.at_binary_with_big_integers(raw)))
            }
            (Some(Ok(Number::Float(read))), Raw::None) => {
                let value = formula.value_of_float(read);
                assert!(!value.is_finite() && value.is_nan() == read.is_nan(), "{read} by {made:?} gave {value}");
                continue;
            }
            (read, raw) => panic!("{bits:#X} as {encoding:?} gave {read:?}, not {raw:?}"),
        };
        assert_eq!(value, expected, "{bits:#X} as {encoding:?} by {made:?}");
        met.with_big_integers += u64::from(!is_short);
        met.plainly_wrong += u64::from(plain * made.factor.to_f64() + made.offset.to_f64() != expected);
    }
}

/// Now and then what 128 bits gave is compared with what big integers give.
fn judged(met: &Met, short: Nearest, with_big_integers: impl Fn() -> f64) -> Nearest {
    if short.1 && met.cases.is_multiple_of(64) {
        assert_eq!(short.0, with_big_integers(), "the reference disagrees with itself");
    }
    short
}

/// What some bits stand for, found without the crate.
#[derive(Debug)]
enum Raw {
    Whole(i128),
    Binary(Binary),
    /// Infinities and not-a-numbers.
    None,
}

fn number_of(kind: NumberKind, width: u8, bits: u64) -> Raw {
    let (number, power) = (i128::from(bits), |bits: u8| 1_i128 << bits);
    match kind {
        NumberKind::Unsigned => Raw::Whole(number),
        NumberKind::Signed if number >= power(width - 1) => Raw::Whole(number - power(width)),
        NumberKind::Signed => Raw::Whole(number),
        NumberKind::SignMagnitude if number >= power(width - 1) => Raw::Whole(power(width - 1) - number),
        NumberKind::SignMagnitude => Raw::Whole(number),
        NumberKind::Bcd => Raw::Whole(format!("{bits:x}").parse().expect("decimal digits")),
        NumberKind::Float => {
            // IEEE 754-2019, table 3.5: exponent fields of 5, 8 and 11 bits, biases of 15, 127 and 1023.
            let (exponent_bits, bias) = match width {
                16 => (5, 15),
                32 => (8, 127),
                _ => (11, 1023),
            };
            let fraction_bits = width - 1 - exponent_bits;
            let field = (bits >> fraction_bits & ((1 << exponent_bits) - 1)) as i32;
            let fraction = (bits & ((1 << fraction_bits) - 1)) as i64;
            if field == (1 << exponent_bits) - 1 {
                return Raw::None;
            }
            let size = if field == 0 { fraction } else { fraction | 1 << fraction_bits };
            let exponent = field.max(1) - bias - i32::from(fraction_bits);
            Raw::Binary(Binary { significand: if bits >> (width - 1) == 1 { -size } else { size }, exponent })
        }
    }
}

/// Bits of a format: all lengths alike, and the ends now and then.
fn bits_of(random: &mut Random, kind: NumberKind, width: u8) -> u64 {
    let all = u64::MAX >> (64 - width);
    if kind == NumberKind::Bcd {
        let digits = random.below(u32::from(width / 4)) + 1;
        return (0..digits).fold(0, |bits, _| bits << 4 | u64::from(random.below(10)));
    }
    match random.below(16) {
        0 => [0, 1, all, all >> 1, (all >> 1) + 1, all - 1][random.below(6) as usize] & all,
        // Exponents near zero, where an offset counts: of all doubles, few are.
        1..8 if kind == NumberKind::Float => near_one(random, width),
        1..8 => random.next() >> (64 - width) >> random.below(u32::from(width)),
        _ => random.next() >> (64 - width),
    }
}

/// A floating-point number between 2^-12 and 2^12 in size.
fn near_one(random: &mut Random, width: u8) -> u64 {
    let (fraction_bits, bias) = match width {
        16 => (10, 15),
        32 => (23, 127),
        _ => (52, 1023),
    };
    let exponent = u64::from(random.below(24)) + bias - 12;
    u64::from(random.below(2)) << (width - 1) | exponent << fraction_bits | random.next() & ((1 << fraction_bits) - 1)
}

/// A case by hand, so that the way through all of this is seen to be right: 0x1F40 is 8000, and 8000 * 0.05 - 273.15 is 126.85.
#[test]
fn a_case_by_hand() {
    let ratio = |text: &str| text.parse::<Ratio>().expect("a number");
    let formula = Affine::new(ratio("0.05"), ratio("-273.15")).expect("it fits");
    assert_eq!(formula.value(8000), 126.85);
    assert!(matches!(number_of(NumberKind::Signed, 12, 0xFFF), Raw::Whole(-1)));
    assert!(matches!(number_of(NumberKind::SignMagnitude, 12, 0xFFF), Raw::Whole(-0x7FF)));
    assert!(matches!(number_of(NumberKind::Bcd, 16, 0x1234), Raw::Whole(1234)));
    // 0x3E00 is 1.5 as a half: 1536 * 2^-10.
    let Raw::Binary(half) = number_of(NumberKind::Float, 16, 0x3E00) else { panic!("a finite number") };
    assert_eq!((half.significand, half.exponent), (1536, -10));
}
