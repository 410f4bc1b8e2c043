//! Every bit pattern of small formats, and the ends of large ones.

use super::*;

fn encoding(kind: NumberKind, width: u8) -> Encoding {
    Encoding::new(kind, width).expect("a format")
}

#[test]
fn formats_that_do_not_exist() {
    for kind in
        [NumberKind::Unsigned, NumberKind::Signed, NumberKind::SignMagnitude, NumberKind::Float, NumberKind::Bcd]
    {
        for width in 0..=u8::MAX {
            let expected = match (kind, width) {
                (_, 0 | 65..) => Err(EncodingError::Width { width }),
                (NumberKind::SignMagnitude, 1) => Err(EncodingError::SignWithoutSize),
                (NumberKind::Float, _) if ![16, 32, 64].contains(&width) => Err(EncodingError::FloatWidth { width }),
                (NumberKind::Bcd, _) if width % 4 != 0 => Err(EncodingError::BcdWidth { width }),
                _ => Ok((kind, width)),
            };
            assert_eq!(Encoding::new(kind, width).map(|encoding| (encoding.kind(), encoding.width())), expected);
        }
    }
}

#[test]
fn every_pattern_up_to_12_bits_comes_back() {
    let widest = if crate::STRIDE > 1 { 5 } else { 12 };
    for kind in [NumberKind::Unsigned, NumberKind::Signed, NumberKind::SignMagnitude, NumberKind::Bcd] {
        for width in 1..=widest {
            let Ok(encoding) = Encoding::new(kind, width) else {
                continue;
            };
            let (lowest, highest) = encoding.integer_range().expect("integers");
            let (mut seen_lowest, mut seen_highest) = (i128::MAX, i128::MIN);
            for bits in 0..1u64 << width {
                let Ok(Number::Integer(number)) = encoding.number(bits) else {
                    assert!((0..3).any(|digit| bits >> (4 * digit) & 0xF > 9), "{bits:X}");
                    continue;
                };
                (seen_lowest, seen_highest) = (seen_lowest.min(number), seen_highest.max(number));
                let negative_zero = kind == NumberKind::SignMagnitude && bits == 1 << (width - 1);
                let expected = if negative_zero { 0 } else { bits };
                assert_eq!(
                    encoding.bits(Number::Integer(number)),
                    Ok(expected),
                    "{kind:?} of {width} bits: {bits:X} is {number}"
                );
                assert_eq!(
                    encoding.number(bits | !0 << width),
                    Ok(Number::Integer(number)),
                    "bits above the width do not count"
                );
            }
            assert_eq!((seen_lowest, seen_highest), (lowest, highest), "{kind:?} of {width} bits");
            for outside in [lowest - 1, highest + 1, i128::MIN, i128::MAX] {
                assert_eq!(encoding.bits(Number::Integer(outside)), Err(DoesNotFit::OutOfRange { lowest, highest }));
            }
        }
    }
}

#[test]
fn the_ends_of_64_bits() {
    for (kind, lowest_bits, lowest, highest_bits, highest) in [
        (NumberKind::Unsigned, 0, 0, u64::MAX, u64::MAX.into()),
        (NumberKind::Signed, 1 << 63, i64::MIN.into(), u64::MAX >> 1, i64::MAX.into()),
        (NumberKind::SignMagnitude, u64::MAX, -i128::from(i64::MAX), u64::MAX >> 1, i64::MAX.into()),
        (NumberKind::Bcd, 0, 0, 0x9999_9999_9999_9999, 9_999_999_999_999_999),
    ] {
        let encoding = encoding(kind, 64);
        assert_eq!(encoding.integer_range(), Some((lowest, highest)));
        for (bits, number) in [(lowest_bits, lowest), (highest_bits, highest)] {
            assert_eq!(encoding.number(bits), Ok(Number::Integer(number)));
            assert_eq!(encoding.bits(Number::Integer(number)), Ok(bits));
        }
    }
}

#[test]
fn decimal_digits() {
    let clock = encoding(NumberKind::Bcd, 16);
    assert_eq!(clock.number(0x2359), Ok(Number::Integer(2359)));
    assert_eq!(clock.bits(Number::Integer(7)), Ok(0x0007));
    assert_eq!(clock.number(0x2A5F), Err(InvalidDigits { digit: 10, power: 2 }));
    assert_eq!(clock.number(0x235F), Err(InvalidDigits { digit: 15, power: 0 }));
}

#[test]
fn floats_round_and_say_so() {
    let single = encoding(NumberKind::Float, 32);
    assert_eq!(single.float_bits(0.1), Ok(FloatBits { bits: 0x3DCC_CCCD, exact: false }));
    assert_eq!(single.float_bits(0.5), Ok(FloatBits { bits: 0x3F00_0000, exact: true }));
    assert_eq!(single.bits(Number::Float(0.1)), Ok(0x3DCC_CCCD));
    assert_eq!(single.float_bits(f64::INFINITY), Ok(FloatBits { bits: 0x7F80_0000, exact: true }));
    assert_eq!(single.float_bits(1e39), Err(DoesNotFit::BeyondFloat { width: 32 }));
    assert_eq!(
        encoding(NumberKind::Float, 16).bits(Number::Float(-65520.0)),
        Err(DoesNotFit::BeyondFloat { width: 16 })
    );
    assert_eq!(
        encoding(NumberKind::Float, 64).float_bits(f64::MAX),
        Ok(FloatBits { bits: f64::MAX.to_bits(), exact: true })
    );
    assert_eq!(single.integer_range(), None);
}

#[test]
fn kinds_do_not_mix() {
    assert_eq!(encoding(NumberKind::Float, 32).bits(Number::Integer(1)), Err(DoesNotFit::NotAFloat));
    assert_eq!(encoding(NumberKind::Unsigned, 32).bits(Number::Float(1.0)), Err(DoesNotFit::NotAnInteger));
}
