//! Raw values that are no readings, words, and sensor curves.

use wirelore_bits::{NumberKind, Ratio};
use wirelore_model::{Curve, CurvePoint, Meaning, Scaling, Signal};

use super::one;
use crate::testing::*;

#[test]
fn special_values_never_give_a_number() {
    use Meaning::{Absent, Fault, Reading as Plain};
    let signal = || {
        number("s", "0.7..0.0", NumberKind::Signed)
            .scaled("0.5", "0", "V")
            .in_range("-10", "20")
            .absent(&[pattern(0x80, 0x80), span(-100, -90)])
            .fault(&[pattern(0xFF, 0xFF)])
            .words(&[
                (0, 0, "off", Plain),
                (50, 60, "high", Plain),
                (99, 99, "gone", Absent),
                (98, 98, "broken", Fault),
            ])
    };
    let expected = |raw: i8| match raw {
        -128 | -100..=-90 => "no reading".to_owned(),
        -1 => "sensor fault".to_owned(),
        0 => "0.0 off".to_owned(),
        50..=60 => format!("{:?} high outside", f64::from(raw) / 2.0),
        99 => "no reading gone".to_owned(),
        98 => "sensor fault broken".to_owned(),
        -20..=40 => format!("{:?}", f64::from(raw) / 2.0),
        _ => format!("{:?} outside", f64::from(raw) / 2.0),
    };
    for raw in i8::MIN..=i8::MAX {
        assert_eq!(one(signal(), &raw.to_le_bytes()), expected(raw), "{raw}");
        // Wider signals look their special values up in runs instead of a table.
        let wide = number("s", "1.7..0.0", NumberKind::Signed);
        let wide = Signal {
            absent: vec![span(-128, -128), span(-100, -90)],
            fault: vec![span(-1, -1)],
            content: wide.content,
            ..signal()
        };
        assert_eq!(one(wide, &i16::from(raw).to_le_bytes()), expected(raw), "{raw} in 16 bits");
    }
}

#[test]
fn special_values_of_floats_go_by_bits_or_numbers() {
    let signal = number("s", "3.7..0.0", NumberKind::Float)
        .scaled("2", "0", "V")
        .in_range("-10", "10")
        .absent(&[pattern(0x7FC0_0000, 0x7FFF_FFFF)])
        .fault(&[span(-1000, -999)]);
    let read = |value: f32| one(signal.clone(), &value.to_le_bytes());
    assert_eq!(read(f32::NAN), "no reading");
    assert_eq!(read(-999.5), "sensor fault");
    assert_eq!(read(2.25), "4.5");
    assert_eq!(read(5.0), "10.0");
    assert_eq!(read(5.5), "11.0 outside");
    assert_eq!(read(-5.0), "-10.0");
    assert_eq!(read(-5.5), "-11.0 outside");
}

#[test]
fn words_of_wide_signals_take_no_table_of_all_their_numbers() {
    let words: &[(i64, i64, &str, Meaning)] =
        &[(0, 0, "off", Meaning::Reading), (i64::MAX, i64::MAX, "full", Meaning::Reading)];
    let signal = || unsigned("s", "7.7..0.0").words(words);
    assert_eq!(one(signal(), &0_u64.to_le_bytes()), "0 off");
    assert_eq!(one(signal(), &i64::MAX.to_le_bytes()), "9223372036854775807 full");
    assert_eq!(one(signal(), &u64::MAX.to_le_bytes()), "18446744073709551615");
}

/// No run of readings that is told apart beforehand can be written in 64 bits with a sign here.
#[test]
fn readings_of_64_bits_may_all_lie_in_the_upper_half() {
    let upper = || unsigned("s", "7.7..0.0").absent(&[span(0, i64::MAX)]);
    assert_eq!(one(upper(), &(1_u64 << 63).to_le_bytes()), "9223372036854775808");
    assert_eq!(one(upper(), &u64::MAX.to_le_bytes()), "18446744073709551615");
    assert_eq!(one(upper(), &1_u64.to_le_bytes()), "no reading");
    let none = || number("s", "7.7..0.0", NumberKind::Signed).absent(&[span(i64::MIN, i64::MAX)]);
    assert_eq!(one(none(), &i64::MIN.to_le_bytes()), "no reading");
}

fn curve(points: &[(i64, &str)]) -> Scaling {
    let points = points.iter().map(|&(raw, value)| CurvePoint { raw, value: ratio(value) });
    Scaling::Curve(Curve { points: points.collect() })
}

#[test]
fn curves_are_straight_between_their_points() {
    let points: &[(i64, &str)] = &[(10, "-40"), (128, "21.5"), (140, "21.5"), (255, "0.1")];
    for raw in 0..=255_u8 {
        let signal = Signal { scaling: curve(points), ..unsigned("s", "0.7..0.0") };
        let expected =
            points.windows(2).find(|pair| pair[0].0 <= raw.into() && i64::from(raw) <= pair[1].0).map(|pair| {
                let (from, to) = (ratio(pair[0].1), ratio(pair[1].1));
                let share = Ratio::new(i128::from(raw) - i128::from(pair[0].0), (pair[1].0 - pair[0].0) as u128)
                    .expect("a share");
                let rise = to.checked_sub(&from).and_then(|rise| rise.checked_mul(&share)).expect("a rise");
                format!("{:?}", from.checked_add(&rise).expect("a value").to_f64())
            });
        assert_eq!(one(signal, &[raw]), expected.unwrap_or("beyond curve".to_owned()), "{raw}");
    }
    let ranged = Signal { scaling: curve(points), ..unsigned("s", "0.7..0.0").in_range("0", "21") };
    assert_eq!(one(ranged.clone(), &[130]), "21.5 outside");
    assert_eq!(one(ranged.clone(), &[255]), "0.1");
    assert_eq!(one(ranged, &[5]), "beyond curve");
    let worded = Signal { scaling: curve(points), ..unsigned("s", "0.7..0.0") };
    let worded = worded.words(&[(9, 10, "least", Meaning::Reading), (255, 255, "greatest", Meaning::Reading)]);
    assert_eq!(one(worded.clone(), &[9]), "beyond curve least");
    assert_eq!(one(worded.clone(), &[10]), "-40.0 least");
    assert_eq!(one(worded, &[255]), "0.1 greatest");
    let float = Signal { scaling: curve(&[(0, "0"), (2, "10")]), ..number("s", "3.7..0.0", NumberKind::Float) };
    assert_eq!(one(float.clone(), &(-0.5_f32).to_le_bytes()), "beyond curve");
    assert_eq!(one(float.clone(), &0.0_f32.to_le_bytes()), "0.0");
    assert_eq!(one(float.clone(), &0.5_f32.to_le_bytes()), "2.5");
    assert_eq!(one(float.clone(), &2.0_f32.to_le_bytes()), "10.0");
    assert_eq!(one(float.clone(), &2.5_f32.to_le_bytes()), "beyond curve");
    assert_eq!(one(float, &f32::NAN.to_le_bytes()), "beyond curve");
}
