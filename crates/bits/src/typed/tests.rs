use std::string::{String, ToString};

use super::*;
use crate::e2e::{DataId, Profile};
use crate::{BitPosition, Extractor, Field, Fit, Place, STRIDE};

/// Bytes without any regularity: the generator of Knuth, TAOCP volume 2, section 3.3.4, line 26 of table 1.
fn noise() -> impl Iterator<Item = u8> {
    let mut state = 0x2545_F491_4F6C_DD1D_u64;
    core::iter::repeat_with(move || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 56) as u8
    })
}

#[test]
fn a_cut_is_what_the_extractor_takes() {
    let mut bytes = [0; 24];
    let mut noise = noise();
    let mut compared = 0;
    let ends = (0..16_u32).flat_map(|msb| (0..16_u32).map(move |lsb| (msb, lsb)));
    for (msb_byte, lsb_byte) in ends.step_by(STRIDE.min(11)) {
        for (msb_bit, lsb_bit) in (0..8).flat_map(|msb| (0..8).map(move |lsb| (msb, lsb))) {
            bytes.fill_with(|| noise.next().unwrap_or_default());
            let cut = Cut::between((msb_byte, msb_bit), (lsb_byte, lsb_bit));
            let Ok(place) = Place::between(BitPosition::new(msb_byte, msb_bit), BitPosition::new(lsb_byte, lsb_bit))
            else {
                assert_eq!(cut.get(&bytes), None);
                continue;
            };
            let extractor = Extractor::new(&Field::from(place));
            for length in [0, 1, 3, 7, 8, 9, 16, 24] {
                let payload = &bytes[..length];
                assert_eq!(cut.get(payload), extractor.extract(payload), "{place:?} in {length} bytes");
                let (mut ours, mut theirs) = (bytes, bytes);
                let bits = cut.of(&bytes) ^ 1;
                cut.put(&mut ours[..length], bits);
                let _ = extractor.insert(&mut theirs[..length], bits);
                assert_eq!(ours, theirs);
                compared += 1;
            }
        }
    }
    assert!(compared > 50_000 / STRIDE.min(11), "{compared}");
}

#[test]
fn pieces_make_one_number() {
    let cuts = Cuts([Cut::between((5, 7), (5, 5)), Cut::between((4, 7), (3, 0))]);
    let payload = [0, 0, 0, 0x34, 0x12, 0b1010_0000];
    assert_eq!(cuts.get(&payload), Some(0b101 << 16 | 0x1234));
    assert_eq!(cuts.get(&payload[..5]), None);
    let mut written = [0; 6];
    cuts.put(&mut written, 0b101 << 16 | 0x1234);
    assert_eq!(written, payload);
    let all = Cuts([Cut::between((7, 7), (0, 0))]);
    assert_eq!(all.get(&u64::MAX.to_le_bytes()), Some(u64::MAX));
}

#[test]
fn numbers_go_both_ways() {
    for width in 2..=64_u8 {
        let top = 1_u64 << (width - 1);
        for bits in [0, 1, top - 1, top, top | 1, top | (top - 1)] {
            assert_eq!(signed_bits(signed(bits, width), width, "x"), Ok(bits), "{width} bits, {bits:#X}");
            let back = sign_magnitude_bits(sign_magnitude(bits, width), width, "x");
            assert_eq!(back, Ok(if bits == top { 0 } else { bits }), "{width} bits, {bits:#X}");
        }
    }
    assert_eq!((signed(0xFE, 8), signed(1, 1), sign_magnitude(0x96, 8)), (-2, -1, -22));
    assert_eq!(signed_bits(-129, 8, "x"), Err(NotEncoded::DoesNotFit("x")));
    assert_eq!(unsigned_bits(256, 8, "x"), Err(NotEncoded::DoesNotFit("x")));
    assert_eq!(unsigned_bits(u64::MAX, 64, "x"), Ok(u64::MAX));
    assert_eq!((digits(0x96, 8), digits(0x9A, 8), digits_bits(96, 8, "x")), (Some(96), None, Ok(0x96)));
    assert_eq!((float(0x3C00, 16), float_bits(1.0, 16, "x")), (1.0, Ok(0x3C00)));
}

#[test]
fn a_value_finds_its_raw_number_and_never_a_special_one() {
    let twentieth = Formula::new(1, 0, 20);
    let is_value = |raw| raw != 0x1FFF;
    let mut field = 7_u16;
    assert_eq!(set(&mut field, 62.5, twentieth, (0, 0x1FFF), is_value), Fit::Exact);
    assert_eq!(field, 1250);
    assert_eq!(set(&mut field, 62.51, twentieth, (0, 0x1FFF), is_value), Fit::Rounded);
    assert_eq!(set(&mut field, f64::from(0x1FFF) / 20.0, twentieth, (0, 0x1FFF), is_value), Fit::OutOfRange);
    assert_eq!(set(&mut field, -1.0, twentieth, (0, 0x1FFF), is_value), Fit::OutOfRange);
    assert_eq!(field, 1250, "what cannot be said leaves the field alone");
}

#[test]
fn texts_are_shown_like_those_of_the_standard_library() {
    let mut noise = noise();
    for length in 0..200 {
        let bytes: std::vec::Vec<u8> = noise.by_ref().take(length).chain([0, 0]).collect();
        let end = bytes.iter().rposition(|byte| *byte != 0).map_or(0, |last| last + 1);
        let text = Text::new(&bytes, Charset::Utf8).to_string();
        assert_eq!(text, String::from_utf8_lossy(&bytes[..end]));
        let latin: String = bytes[..end].iter().map(|byte| char::from(*byte)).collect();
        assert_eq!(Text::new(&bytes, Charset::Latin1).to_string(), latin);
    }
    assert_eq!(Text::new(b"a\xE9\0", Charset::Ascii).to_string(), "a\u{FFFD}");
    assert_eq!(Text::new(b"abc\0\0", Charset::Ascii).as_str(), Some("abc"));
    assert_eq!(Text::new(b"a\xE9", Charset::Latin1).as_str(), None);
}

#[test]
fn lengths_are_looked_at() {
    assert_eq!(sized(b"abcdef", 1, Some(4), Some(3)), Ok(&b"bcd"[..]));
    assert!(sized(b"abcdef", 1, Some(4), Some(4)).is_err(), "the place has room for three");
    assert!(sized(b"abcdef", 1, None, Some(6)).is_err());
    assert!(sized(b"abcdef", 1, None, Some(u64::MAX)).is_err());
    let mut size = Size::default();
    size.part(4, None);
    assert_eq!((size.least(), size.length()), (4, 4));
    size.part(8, Some(2));
    size.reach(3);
    assert_eq!((size.least(), size.length()), (2, 3));
    assert_eq!(chunk::<3>(&[1, 2]), Err(TooShort { needed_bytes: 3, found_bytes: 2 }));
}

/// PRS E2EProtocol, example of profile 4: data id 0x0A0B0C0D, counter 0, all other bytes zero.
#[test]
fn a_protection_tells_what_is_wrong() {
    let protection =
        Protection { profile: Profile::P04, data_id: DataId::One(0x0A0B_0C0D), header: 0, first: 0, end: None };
    let mut payload = [0; 16];
    assert_eq!(protection.protect(&mut payload, 0), Ok(()));
    assert_eq!(payload, [0, 0x10, 0, 0, 0x0A, 0x0B, 0x0C, 0x0D, 0x86, 0x2B, 0x05, 0x56, 0, 0, 0, 0]);
    assert_eq!(protection.check(&payload, "count"), Ok(()));
    payload[15] = 1;
    assert!(matches!(protection.check(&payload, "count"), Err(Damage::Sum { signal: "count", .. })));
    assert_eq!(protection.check(&payload[..11], "count"), Err(Damage::TooShort));
    assert_eq!(protection.protect(&mut payload, 0x1_0000), Err(NotEncoded::Protection));
}
