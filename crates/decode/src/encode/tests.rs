//! Encoding, and what is said about it.

mod frames;

use wirelore_bits::NumberKind;
use wirelore_model::{Charset, Curve, CurvePoint, Meaning, Scaling, Signal};

use super::*;
use crate::testing::*;

/// Encodes assignments as a person types them.
fn typed(database: &Database, assignments: &[&str]) -> Result<(Vec<u8>, Vec<String>), EncodeError> {
    let given: Vec<(String, Given)> =
        assignments.iter().map(|text| parse_assignment(database, FrameId(0), text)).collect::<Result<_, _>>()?;
    let Encoded { payload, notes } = encode(database, FrameId(0), &given)?;
    Ok((payload, notes.iter().map(ToString::to_string).collect()))
}

fn payload(database: &Database, assignments: &[&str]) -> Vec<u8> {
    typed(database, assignments).expect("it encodes").0
}

fn notes(database: &Database, assignments: &[&str]) -> Vec<String> {
    typed(database, assignments).expect("it encodes").1
}

fn error(database: &Database, assignments: &[&str]) -> String {
    typed(database, assignments).expect_err("it does not encode").to_string()
}

fn one_signal(signal: Signal) -> Database {
    one_frame(frame("f", id(0x1B4), vec![signal]))
}

fn speed() -> Database {
    let speed = unsigned("speed", "1.4..0.0")
        .scaled("0.05", "0", "km/h")
        .in_range("0", "300")
        .absent(&[pattern(0x1FFF, 0x1FFF)]);
    let mut described = frame("f", id(0x1B4), vec![speed]);
    described.unused = vec![bits("1.7..1.5")];
    one_frame(described)
}

#[test]
fn values_are_taken_exactly() {
    let database = speed();
    assert_eq!(payload(&database, &["speed=62.5"]), [0xE2, 0x04]);
    assert_eq!(payload(&database, &["speed=62.50 km/h"]), [0xE2, 0x04]);
    for same in ["speed=6.25e1", "speed=6.25e+1", "speed=625E-1", "speed=+62.5"] {
        assert_eq!(payload(&database, &[same]), [0xE2, 0x04], "{same}");
    }
    for no_number in ["speed=", "speed=-", "speed=.", "speed=+.", "speed=e1"] {
        assert!(error(&database, &[no_number]).contains("write a number"), "{no_number}");
    }
    assert_eq!(payload(&database, &["speed = 0x4E2"]), [0xE2, 0x04]);
    assert_eq!(payload(&database, &["speed=0b100_1110_0010"]), [0xE2, 0x04]);
    // 25 m/s are 90 km/h.
    assert_eq!(payload(&database, &["speed=25m/s"]), 1800_u16.to_le_bytes());
    assert_eq!(payload(&database, &["speed=no reading"]), [0xFF, 0x1F]);
    assert_eq!(notes(&database, &["speed=62.5"]), [""; 0]);
    assert_eq!(notes(&database, &["speed=12.34"]), ["speed: rounded to 12.35 km/h"]);
    assert_eq!(notes(&database, &["speed=10mph"]), ["speed: rounded to 16.1 km/h"]);
    assert_eq!(notes(&database, &["speed=301"]), ["speed: outside the described range 0..300 km/h"]);
    assert_eq!(notes(&database, &[]), ["speed: not given, says no reading"]);
}

#[test]
fn what_does_not_fit_is_told() {
    let database = speed();
    assert_eq!(
        error(&database, &["speed=-1"]),
        "signal `speed` cannot be -1 km/h: its values reach from 0 to 409.5 km/h"
    );
    assert_eq!(
        error(&database, &["speed=409.55"]),
        "signal `speed` cannot be 409.55 km/h: the raw value 0x1FFF for it says no reading"
    );
    assert_eq!(error(&database, &["speed=0x2000"]), "signal `speed` cannot hold 0x2000: it has 13 bits");
    assert_eq!(
        error(&database, &["speed=fault"]),
        "signal `speed` has no raw value that says sensor fault; the description would have to name one"
    );
    assert_eq!(
        error(&database, &["speed=1 km/hh"]),
        "signal `speed` cannot be given in `km/hh`: it is no unit; did you mean `km/h`?"
    );
    assert_eq!(error(&database, &["speed=1 °C"]), "signal `speed` cannot be given in `°C`: its values are in km/h");
    assert_eq!(error(&database, &["sped=1"]), "frame `f` has no signal `sped`; did you mean `speed`?");
    assert_eq!(
        error(&database, &["speed"]),
        "cannot understand `speed`: write SIGNAL=VALUE, such as front_left=62.5 or gear=park"
    );
    assert_eq!(error(&database, &["speed=1", "speed=2"]), "signal `speed` is given twice");
    assert_eq!(
        error(&database, &["speed=fast"]),
        "`fast` is no value of signal `speed`: write a number, 0x... for bits, or `no reading`"
    );
    assert!(error(&database, &["speed=1.2.3"]).starts_with("signal `speed` cannot be given in `.3`"));
    let point = "is no value of signal `speed`: the decimal sign is a point:";
    assert_eq!(error(&database, &["speed=12,6"]), format!("`12,6` {point} 12.6"));
    assert_eq!(error(&database, &["speed=-12,60 km/h"]), format!("`-12,60 km/h` {point} -12.60 km/h"));
    assert!(error(&database, &["speed=1,234.5"]).starts_with("signal `speed` cannot be given in `,234.5`"));
    assert!(error(&database, &["speed=0xG"]).starts_with("`0xG` is no value of signal `speed`"));
    assert_eq!(
        error(&database, &["speed=-"]),
        "`-` is no value of signal `speed`: write a number, 0x... for bits, or `no reading`"
    );
}

#[test]
fn words_stand_for_raw_values() {
    use Meaning::{Absent, Fault, Reading};
    let gear = unsigned("gear", "0.3..0.0").words(&[
        (0, 0, "park", Reading),
        (3, 10, "forward", Reading),
        (14, 14, "broken", Fault),
        (15, 15, "unknown", Absent),
    ]);
    let database = one_signal(gear);
    for (word, raw) in [("park", 0), ("forward", 3), ("unknown", 15), ("absent", 15), ("sensor fault", 14), ("7", 7)] {
        assert_eq!(payload(&database, &[&format!("gear={word}")]), [raw], "{word}");
    }
    assert_eq!(error(&database, &["gear=prak"]), "`prak` is no value of signal `gear`: did you mean `park`?");
    assert_eq!(error(&database, &["gear=15"]), "signal `gear` cannot be 15: the raw value 0xF for it says no reading");
}

#[test]
fn every_kind_is_written() {
    let kind = |kind, place| one_signal(number("s", place, kind));
    assert_eq!(payload(&kind(NumberKind::Signed, "1.7..0.0"), &["s=-200"]), [0x38, 0xFF]);
    assert_eq!(payload(&kind(NumberKind::SignMagnitude, "0.7..0.0"), &["s=-5"]), [0x85]);
    assert_eq!(payload(&kind(NumberKind::Bcd, "0.7..1.0"), &["s=1984"]), [0x19, 0x84]);
    assert_eq!(payload(&kind(NumberKind::Float, "3.7..0.0"), &["s=25"]), [0, 0, 0xC8, 0x41]);
    assert_eq!(notes(&kind(NumberKind::Float, "1.7..0.0"), &["s=0.1"]), ["s: rounded to 0.0999755859375"]);
    assert_eq!(
        error(&kind(NumberKind::Float, "1.7..0.0"), &["s=1e9"]),
        "signal `s` cannot be 1000000000: its values reach from the least to the greatest number of 16 bits"
    );
    assert_eq!(
        payload(&one_signal(number("s", "3.7..0.0", NumberKind::Float).scaled("2", "1", "V")), &["s=51"]),
        [0, 0, 0xC8, 0x41]
    );
    assert_eq!(payload(&one_signal(text("s", 1, Some(4), Charset::Latin1)), &["s=aä"]), [0, b'a', 0xE4, 0, 0]);
    assert_eq!(payload(&one_signal(text("s", 1, None, Charset::Utf8)), &["s=aä"]), [0, b'a', 0xC3, 0xA4]);
    assert_eq!(
        error(&one_signal(text("s", 0, Some(3), Charset::Ascii)), &["s=ä"]),
        "signal `s` cannot hold the character `ä`: it is ASCII"
    );
    assert_eq!(
        error(&one_signal(text("s", 0, Some(3), Charset::Utf8)), &["s=abcde"]),
        "signal `s` cannot hold 5 bytes: it has 4"
    );
    assert_eq!(
        error(&one_signal(text("s", 0, None, Charset::Utf8)), &["s=abcdefghi"]),
        "the frame would need 9 bytes, and it has at most 8; give a shorter text or fewer bytes"
    );
    assert_eq!(payload(&one_signal(raw_bytes("s", 1, Some(2))), &["s=11 22"]), [0, 0x11, 0x22]);
    assert_eq!(payload(&one_signal(raw_bytes("s", 0, None)), &["s=0x1122AB"]), [0x11, 0x22, 0xAB]);
    assert_eq!(
        error(&one_signal(raw_bytes("s", 1, Some(2))), &["s=112"]),
        "`112` is no value of signal `s`: write whole bytes in hexadecimal, such as 11 22 33"
    );
    let wrong_sort = encode(&one_signal(raw_bytes("s", 1, Some(2))), FrameId(0), &[("s", Given::Raw(1))]);
    assert_eq!(
        wrong_sort.map_err(|error| error.to_string()),
        Err("signal `s` cannot hold what is given: it holds bytes".to_owned())
    );
    let missing = encode(&speed(), FrameId(3), &[("s", Given::Raw(1))]);
    assert_eq!(
        missing.map_err(|error| error.to_string()),
        Err("frame number 3 is not in the description; it has 1".to_owned())
    );
}

#[test]
fn curves_are_inverted_where_they_run_one_way() {
    let curved = |points: &[(i64, &str)]| {
        let points = points.iter().map(|&(raw, value)| CurvePoint { raw, value: ratio(value) }).collect();
        one_signal(Signal { scaling: Scaling::Curve(Curve { points }), ..unsigned("t", "0.7..0.0") })
    };
    let falling = curved(&[(10, "150"), (100, "60"), (200, "60"), (255, "5")]);
    assert_eq!(payload(&falling, &["t=105"]), [55]);
    assert_eq!(payload(&falling, &["t=60"]), [100]);
    assert_eq!(payload(&falling, &["t=50"]), [210]);
    assert_eq!(error(&falling, &["t=4"]), "signal `t` cannot be 4: its values reach from 5 to 150");
    assert_eq!(notes(&falling, &["t=60.4"]), ["t: rounded to 60"]);
    let wave = curved(&[(0, "0"), (100, "60"), (200, "10")]);
    assert!(error(&wave, &["t=20"]).starts_with("signal `t` cannot be given as a value: its curve rises and falls"));
    assert_eq!(payload(&wave, &["t=0x64"]), [100]);
}

#[test]
fn spans_of_special_values_prefer_all_bits_set() {
    // SAE J1939-71, from memory: FFxx is "not available", and all bits set is what is sent.
    let signal = unsigned("s", "1.7..0.0").absent(&[pattern(0xFF00, 0xFFFF)]).fault(&[pattern(0xFE00, 0xFEFF)]);
    let database = one_signal(signal);
    assert_eq!(payload(&database, &["s=absent"]), [0xFF, 0xFF]);
    assert_eq!(payload(&database, &["s=fault"]), [0x00, 0xFE]);
}
