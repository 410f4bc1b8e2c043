//! Bit packing and number formats as published, each value with its source.

use wirelore_bits::{BitPosition, ByteOrder, Encoding, Extractor, Field, Number, NumberKind, Place};

const PACKING: [u8; 8] = [0x12, 0x34, 0x56, 0x78, 0x9A, 0xBC, 0xDE, 0xF0];

/// Extraction and two's complement of one place of [`PACKING`], and the same bits put into an empty payload and taken out again.
fn check_packing(place: Place, raw: u64, signed: i128) {
    let extractor = Extractor::new(&Field::from(place));
    assert_eq!(extractor.extract(&PACKING), Some(raw), "{place:?}");
    let encoding = Encoding::new(NumberKind::Signed, place.width()).expect("a width");
    assert_eq!(encoding.number(raw), Ok(Number::Integer(signed)), "{place:?}");
    assert_eq!(encoding.bits(Number::Integer(signed)), Ok(raw), "{place:?}");
    let mut empty = [0; 8];
    assert_eq!(extractor.insert(&mut empty, raw), Ok(()));
    assert_eq!(extractor.extract(&empty), Some(raw), "{place:?}");
}

/// Derived from the rule of numbering bits BYTE.BIT and recomputed by an independent program; no textbook example was found.
#[test]
fn bit_packing() {
    let intel: [((u32, u8), u32, u64, i128); 12] = [
        ((0, 0), 8, 0x12, 18),
        ((0, 0), 16, 0x3412, 13330),
        ((0, 4), 8, 0x41, 65),
        ((0, 4), 12, 0x341, 833),
        ((1, 4), 12, 0x563, 1379),
        ((0, 3), 10, 0x282, -382),
        ((0, 0), 32, 0x7856_3412, 2_018_915_346),
        ((2, 4), 17, 0x1_A785, -22651),
        ((7, 5), 3, 0x7, -1),
        ((0, 0), 64, 0xF0DE_BC9A_7856_3412, -1_090_226_688_147_180_526),
        ((0, 7), 1, 0x0, 0),
        ((4, 7), 2, 0x1, 1),
    ];
    for ((byte, bit), width, raw, signed) in intel {
        check_packing(
            Place::from_lsb(BitPosition::new(byte, bit), width, ByteOrder::Intel).expect("a place"),
            raw,
            signed,
        );
    }
    let motorola: [((u32, u8), u32, u64, i128); 12] = [
        ((0, 7), 8, 0x12, 18),
        ((0, 7), 16, 0x1234, 4660),
        ((0, 3), 8, 0x23, 35),
        ((0, 3), 12, 0x234, 564),
        ((1, 3), 12, 0x456, 1110),
        ((2, 6), 10, 0x2B3, -333),
        ((0, 7), 32, 0x1234_5678, 305_419_896),
        ((3, 2), 17, 0x26AF, 9903),
        ((7, 2), 3, 0x0, 0),
        ((0, 7), 64, 0x1234_5678_9ABC_DEF0, 1_311_768_467_463_790_320),
        ((0, 0), 1, 0x0, 0),
        ((4, 0), 2, 0x1, 1),
    ];
    for ((byte, bit), width, raw, signed) in motorola {
        check_packing(
            Place::from_msb(BitPosition::new(byte, bit), width, ByteOrder::Motorola).expect("a place"),
            raw,
            signed,
        );
    }
}

/// Arithmetic of two's complement.
#[test]
fn twos_complement() {
    for (width, bits, number) in [
        (8, 0xFF, -1),
        (8, 0x80, -128),
        (12, 0x800, -2048),
        (12, 0xFFF, -1),
        (5, 0x1F, -1),
        (5, 0x10, -16),
        (16, 0xFF38, -200),
        (24, 0x80_0000, -8_388_608),
    ] {
        let encoding = Encoding::new(NumberKind::Signed, width).expect("a width");
        assert_eq!(encoding.number(bits), Ok(Number::Integer(number)));
        assert_eq!(encoding.bits(Number::Integer(number)), Ok(bits));
    }
}

/// IEEE 754-2019, clause 3.4. Half 03FF, 3555, 3C01 and the maximum 65504 are printed on public pages on half precision; the others follow
/// by arithmetic and were recomputed.
#[test]
fn ieee_floats() {
    let floats = [
        (16, 0x0001, 5.960464477539063e-08),
        (16, 0x03FF, 6.097555160522461e-05),
        (16, 0x0400, 6.103515625e-05),
        (16, 0x3555, 0.333251953125),
        (16, 0x3BFF, 0.99951171875),
        (16, 0x3C00, 1.0),
        (16, 0x3C01, 1.0009765625),
        (16, 0x7BFF, 65504.0),
        (16, 0x7C00, f64::INFINITY),
        (16, 0x8000, -0.0),
        (16, 0xC000, -2.0),
        (16, 0xFC00, f64::NEG_INFINITY),
        (32, 0x0000_0001, 1.401298464324817e-45),
        (32, 0x007F_FFFF, 1.1754942106924411e-38),
        (32, 0x0080_0000, 1.1754943508222875e-38),
        (32, 0x3EAA_AAAB, 0.3333333432674408),
        (32, 0x3F80_0000, 1.0),
        (32, 0x4049_0FDB, 3.1415927410125732),
        (32, 0x7F7F_FFFF, 3.4028234663852886e+38),
        (32, 0xC2ED_4000, -118.625),
        (32, 0x41C8_0000, 25.0),
        (32, 0xBF80_0000, -1.0),
        (64, 0x3FF0_0000_0000_0000, 1.0),
        (64, 0x3FF0_0000_0000_0001, 1.0000000000000002),
        (64, 0x4009_21FB_5444_2D18, core::f64::consts::PI),
        (64, 0x3FD5_5555_5555_5555, 0.3333333333333333),
        (64, 0x7FEF_FFFF_FFFF_FFFF, 1.7976931348623157e+308),
        (64, 0x0000_0000_0000_0001, 5e-324),
        (64, 0xC05E_C000_0000_0000, -123.0),
    ];
    for (width, bits, value) in floats {
        let encoding = Encoding::new(NumberKind::Float, width).expect("a float");
        let Ok(Number::Float(read)) = encoding.number(bits) else { panic!("a float reads as a float") };
        assert_eq!(read.to_bits(), f64::to_bits(value), "{width} bits {bits:X}");
        let written = encoding.float_bits(value).expect("in reach");
        assert_eq!((written.bits, written.exact), (bits, true), "{width} bits {bits:X}");
    }
    for (width, bits) in [(16, 0x7E00), (32, 0x7FC0_0000), (64, 0x7FF8_0000_0000_0000)] {
        let encoding = Encoding::new(NumberKind::Float, width).expect("a float");
        assert!(matches!(encoding.number(bits), Ok(Number::Float(value)) if value.is_nan()));
    }
    // 25.0 in four bytes, least significant first.
    let place = Place::between(BitPosition::new(3, 7), BitPosition::new(0, 0)).expect("a place");
    assert_eq!(Extractor::new(&Field::from(place)).extract(&[0x00, 0x00, 0xC8, 0x41]), Some(0x41C8_0000));
}
