//! Decoding, against published positions and formats and against looking at every raw value.

mod heavy_duty;
mod pages;
mod special;

use wirelore_bits::{NumberKind, Ratio};
use wirelore_model::{Charset, Database, FrameId, NetworkId, Signal, SignalId};

use pages::nested;

use super::*;
use crate::reading::Value;
use crate::testing::*;

/// The readings of the first frame, by name.
fn readings(database: &Database, payload: &[u8]) -> (Vec<(String, String)>, FrameOutcome) {
    let decoder = Decoder::new(database).expect("a decoder");
    let mut all = Vec::new();
    let outcome = decoder.decode(FrameId(0), payload, |signal, reading| {
        let name = database.frames[0].signals[signal.index()].label.name.clone();
        all.push((name, shown(&reading)));
    });
    assert_eq!(outcome.readings as usize, all.len());
    (all, outcome)
}

fn shown(reading: &Reading<'_>) -> String {
    let value = match &reading.value {
        Value::Integer(number) => number.to_string(),
        Value::Number(number) => format!("{number:?}"),
        Value::TroubleCode(code) => code.to_string(),
        Value::Text(text) => format!("{text:?}"),
        Value::Bytes(bytes) => format!("{bytes:X?}"),
        Value::NoReading => "no reading".to_owned(),
        Value::SensorFault => "sensor fault".to_owned(),
        Value::NotDigits => "not digits".to_owned(),
        Value::BeyondCurve => "beyond curve".to_owned(),
        Value::TooShort => "too short".to_owned(),
    };
    let word = reading.word.map(|word| format!(" {word}")).unwrap_or_default();
    let outside = if reading.outside_range { " outside" } else { "" };
    format!("{value}{word}{outside}")
}

/// The only reading of a frame of one signal.
fn one(signal: Signal, payload: &[u8]) -> String {
    let database = one_fd_frame(frame("f", id(0x100), vec![signal]));
    let (mut all, _) = readings(&database, payload);
    assert_eq!(all.len(), 1);
    all.remove(0).1
}

fn list(all: &[(String, String)]) -> Vec<(&str, &str)> {
    all.iter().map(|(name, value)| (name.as_str(), value.as_str())).collect()
}

/// Derived from the definition of the two byte orders; no published example with bytes is known.
#[test]
fn bits_are_packed_by_the_definition() {
    let payload = [0x12, 0x34, 0x56, 0x78, 0x9A, 0xBC, 0xDE, 0xF0];
    let cases: &[(&str, i128, i128)] = &[
        ("0.7..0.0", 0x12, 18),
        ("1.7..0.0", 0x3412, 13330),
        ("1.3..0.4", 0x41, 65),
        ("1.7..0.4", 0x341, 833),
        ("2.7..1.4", 0x563, 1379),
        ("1.4..0.3", 0x282, -382),
        ("3.7..0.0", 0x7856_3412, 2_018_915_346),
        ("4.4..2.4", 0x1A785, -22651),
        ("7.7..7.5", 7, -1),
        ("7.7..0.0", 0xF0DE_BC9A_7856_3412, -1_090_226_688_147_180_526),
        ("5.0..4.7", 1, 1),
        ("0.7..1.0", 0x1234, 4660),
        ("0.3..1.4", 0x23, 35),
        ("0.3..1.0", 0x234, 564),
        ("1.3..2.0", 0x456, 1110),
        ("2.6..3.5", 0x2B3, -333),
        ("0.7..3.0", 0x1234_5678, 305_419_896),
        ("3.2..5.2", 0x26AF, 9903),
        ("0.7..7.0", 0x1234_5678_9ABC_DEF0, 1_311_768_467_463_790_320),
        ("4.0..5.7", 1, 1),
    ];
    for (place, plain, signed) in cases {
        assert_eq!(one(unsigned("s", place), &payload), plain.to_string(), "{place}");
        assert_eq!(one(number("s", place, NumberKind::Signed), &payload), signed.to_string(), "{place} signed");
        // The same bits as the upper piece of a split field, which takes the careful path.
        if bits(place).width() < 60 {
            let split = format!("{place} then 9.0");
            let longer = [payload.as_slice(), &[0, 1]].concat();
            assert_eq!(one(unsigned("s", &split), &longer), (2 * plain + 1).to_string(), "{split}");
        }
    }
}

/// Scaling: arithmetic. IEEE 754-2019 interchange formats: half 0x3C01 and 0x7BFF as commonly printed, the others by arithmetic.
#[test]
fn numbers_are_scaled_and_floats_read() {
    assert_eq!(one(unsigned("s", "1.7..0.0").scaled("1/256", "0", "km/h"), &[0x00, 0x50]), "80.0");
    let quarter = number("s", "1.7..0.0", NumberKind::Signed).scaled("0.25", "0", "V");
    assert_eq!(one(quarter, &[0x38, 0xFF]), "-50.0");
    assert_eq!(one(unsigned("s", "0.7..0.0").scaled("1", "-125", "%"), &[0x7D]), "0.0");
    assert_eq!(one(unsigned("s", "0.7..0.0").scaled("0.4", "0", "%"), &[250]), "100.0");
    // 0.05 * 5463 - 273.15 is exactly zero; with doubles it is not.
    assert_eq!(one(unsigned("s", "1.7..0.0").scaled("0.05", "-273.15", "°C"), &[0x57, 0x15]), "0.0");

    let float = |place| number("s", place, NumberKind::Float);
    assert_eq!(one(float("1.7..0.0"), &[0x01, 0x3C]), "1.0009765625");
    assert_eq!(one(float("0.7..1.0"), &[0x7B, 0xFF]), "65504.0");
    assert_eq!(one(float("3.7..0.0"), &[0x00, 0x00, 0xC8, 0x41]), "25.0");
    assert_eq!(one(float("0.7..3.0"), &[0xC2, 0xED, 0x40, 0x00]), "-118.625");
    assert_eq!(one(float("7.7..0.0"), &[1, 0, 0, 0, 0, 0, 0, 0]), "5e-324");
    assert_eq!(one(float("0.7..3.0").scaled("2", "1", "V"), &[0xC2, 0xED, 0x40, 0x00]), "-236.25");
    assert_eq!(one(float("1.7..0.0"), &[0x00, 0x7C]), "inf");
}

#[test]
fn every_other_kind_is_read() {
    let kind = |kind, place| number("s", place, kind);
    assert_eq!(one(kind(NumberKind::SignMagnitude, "0.7..0.0"), &[0x85]), "-5");
    assert_eq!(one(kind(NumberKind::Bcd, "0.7..1.0"), &[0x19, 0x84]), "1984");
    assert_eq!(one(kind(NumberKind::Bcd, "0.7..1.0"), &[0x1A, 0x84]), "not digits");
    assert_eq!(one(unsigned("s", "7.7..0.0"), &[0xFF; 8]), u64::MAX.to_string());
    assert_eq!(
        one(unsigned("s", "7.7..0.0").scaled("0.5", "0", "V"), &[0xFF; 8]),
        format!("{:?}", (u64::MAX as f64) / 2.0)
    );
    assert_eq!(one(number("s", "7.7..0.0", NumberKind::Signed), &[0xFF; 8]), "-1");
    assert_eq!(one(text("s", 1, Some(4), Charset::Ascii), b"xab\0\0y"), "\"ab\"");
    assert_eq!(one(text("s", 0, None, Charset::Ascii), b"a\xE4"), "\"a\u{FFFD}\"");
    assert_eq!(one(text("s", 0, None, Charset::Latin1), b"a\xE4\0"), "\"a\u{E4}\"");
    assert_eq!(one(text("s", 0, None, Charset::Utf8), "aä€\u{0}".as_bytes()), "\"aä€\"");
    // To the end, which may come directly in front of it: there is none, and none is missing.
    assert_eq!(one(text("s", 2, None, Charset::Utf8), b"ab"), "\"\"");
    assert_eq!(one(text("s", 3, None, Charset::Utf8), b"ab"), "too short");
    assert_eq!(one(raw_bytes("s", 1, Some(2)), &[1, 0xAB, 0xC]), "[AB, C]");
    assert_eq!(one(raw_bytes("s", 1, None), &[1, 2, 3]), "[2, 3]");
}

#[test]
fn long_payloads_are_read_at_every_place() {
    let payload: Vec<u8> = (0..64).map(|k| (k * 7 + 3) as u8).collect();
    for byte in 0..63_usize {
        let word = u16::from_le_bytes([payload[byte], payload[byte + 1]]);
        let place = format!("{}.7..{byte}.0", byte + 1);
        assert_eq!(one(unsigned("s", &place), &payload), word.to_string(), "{place}");
        let place = format!("{byte}.7..{}.0", byte + 1);
        assert_eq!(one(unsigned("s", &place), &payload), word.swap_bytes().to_string(), "{place}");
    }
    // Nine bytes: 64 bits that begin in the middle of a byte.
    let nine = u128::from_le_bytes(std::array::from_fn(|at| if at < 9 { payload[10 + at] } else { 0 }));
    assert_eq!(one(unsigned("s", "18.2..10.3"), &payload), ((nine >> 3) as u64).to_string());
}

#[test]
fn unwanted_signals_are_not_read_and_units_convert_exactly() {
    let database = one_frame(frame(
        "f",
        id(1),
        vec![
            unsigned("speed", "1.7..0.0").scaled("0.01", "0", "km/h").in_range("0", "300"),
            unsigned("other", "2.7..2.0"),
            unsigned("plain", "3.7..3.0"),
        ],
    ));
    let selection = Selection::matching(&database, "f.sp*, f.plai?").expect("they exist");
    let setup = Setup { selection, units: Units::parse("km/h=mph").expect("they convert") };
    let decoder = Decoder::with(&database, &setup).expect("a decoder");
    assert_eq!(decoder.unit(FrameId(0), SignalId(0)).map(Unit::as_str), Some("mph"));
    // One mile is 1.609344 km (international yard and pound agreement, 1959).
    for raw in 0..=u16::MAX {
        let mut values = Vec::new();
        decoder.decode(FrameId(0), &[raw as u8, (raw >> 8) as u8, 9, 8], |signal, reading| {
            values.push((signal.0, reading.value.number(), reading.outside_range))
        });
        let exact = Ratio::new(i128::from(raw) * 10_000, 1_609_344).expect("a speed").to_f64();
        assert_eq!(values, [(0, Some(exact), raw > 30_000), (2, Some(8.0), false)]);
    }
    assert!(decoder.wants(FrameId(0)));
    let error = Selection::matching(&database, "f.spede").expect_err("no such signal").to_string();
    assert_eq!(error, "no signal fits `f.spede`; did you mean `speed`?");
    let error = Selection::matching(&database, "speed").expect_err("no such frame").to_string();
    assert_eq!(error, "no signal fits `speed`; write FRAME.SIGNAL; did you mean `f.speed`?");
}

#[test]
fn a_frame_number_that_is_not_there_gives_nothing() {
    let database = nested();
    let decoder = Decoder::new(&database).expect("a decoder");
    let outcome = decoder.decode(FrameId(7), &[1, 2, 3], |_, _| panic!("there is no such frame"));
    assert_eq!(outcome, FrameOutcome::default());
    assert_eq!(decoder.find(NetworkId(9), 0x123, false), None);
}

#[test]
fn a_decoder_is_shared_between_threads() {
    fn shared<T: Send + Sync + 'static>(_: &T) {}
    shared(&Decoder::new(&nested()).expect("a decoder"));
}

/// 1 mph is 1.609344 km/h (the international yard and pound, 1959).
#[test]
fn formulas_are_those_of_what_is_shown() {
    let signals = vec![
        unsigned("speed", "1.7..0.0").scaled("0.05", "-3", "km/h"),
        unsigned("gear", "2.7..2.0"),
        unsigned("heat", "3.7..3.0").scaled("1", "-40", "°C"),
    ];
    let database = one_frame(frame("f", id(1), signals));
    let selection = Selection::matching(&database, "f.speed,f.gear").expect("they are there");
    let units = Units::parse("km/h=mph").expect("known units");
    let decoder = Decoder::with(&database, &Setup { selection, units }).expect("a decoder");
    let value = |signal, raw| decoder.formula(FrameId(0), SignalId(signal)).and_then(|formula| formula.exact(raw));
    assert_eq!(value(0, 60), Some(Ratio::ZERO));
    assert_eq!(value(0, 60 + 32_186_880), Some(ratio("1000000")));
    assert_eq!((value(1, 1), value(2, 1)), (None, None), "a raw number, and a signal that is not wanted");
}
