//! The written forms: readable, round, and closed to invalid values.

use serde_json::{from_str, to_string};
use wirelore_bits::{Affine, BitPosition, ByteOrder, Encoding, Field, NumberKind, Place, Ratio};

fn round_trip<T: serde::Serialize + serde::de::DeserializeOwned + PartialEq + core::fmt::Debug>(value: &T, text: &str) {
    assert_eq!(to_string(value).expect("serialises"), text);
    assert_eq!(&from_str::<T>(text).expect("deserialises"), value);
}

fn place(msb: (u32, u8), lsb: (u32, u8)) -> Place {
    Place::between(BitPosition::new(msb.0, msb.1), BitPosition::new(lsb.0, lsb.1)).expect("a place")
}

#[test]
fn forms() {
    round_trip(&BitPosition::new(6, 4), r#""6.4""#);
    round_trip(&ByteOrder::Intel, r#""intel""#);
    round_trip(&ByteOrder::Motorola, r#""motorola""#);
    round_trip(&place((1, 4), (0, 0)), r#"{"msb":"1.4","lsb":"0.0"}"#);
    round_trip(&place((6, 5), (6, 5)), r#"{"msb":"6.5","lsb":"6.5"}"#);
    let field = Field::of(&[place((5, 7), (5, 5)), place((4, 7), (3, 0))]).expect("disjoint");
    round_trip(&field, r#"[{"msb":"5.7","lsb":"5.5"},{"msb":"4.7","lsb":"3.0"}]"#);
    round_trip(
        &Encoding::new(NumberKind::SignMagnitude, 12).expect("a width"),
        r#"{"kind":"sign_magnitude","width":12}"#,
    );
    let (twentieth, absolute_zero) = (Ratio::new(1, 20).expect("a ratio"), Ratio::new(-27315, 100).expect("a ratio"));
    round_trip(&Affine::new(twentieth, absolute_zero).expect("fits"), r#"{"factor":"0.05","offset":"-273.15"}"#);
    round_trip(&twentieth, r#""0.05""#);
    round_trip(&Ratio::new(-5, 9).expect("a ratio"), r#""-5/9""#);
}

#[test]
fn invalid_values_stay_out() {
    for bad in [r#""6.8""#, r#""6""#, "6.4", r#""""#] {
        assert!(from_str::<BitPosition>(bad).is_err(), "{bad}");
    }
    for bad in [
        r#"{"msb":"0.0","lsb":"0.4"}"#,
        r#"{"msb":"9.0","lsb":"0.0"}"#,
        r#"{"msb":"1.0"}"#,
        r#"{"msb":"1.0","lsb":"0.0","order":"motorola"}"#,
        r#"{"msb":"4294967295.0","lsb":"4294967295.0"}"#,
    ] {
        assert!(from_str::<Place>(bad).is_err(), "{bad}");
    }
    let bit = r#"{"msb":"0.0","lsb":"0.0"}"#;
    for bad in ["[]".to_owned(), format!("[{bit},{bit}]"), format!("[{}]", [bit; 5].join(",")), bit.to_owned()] {
        assert!(from_str::<Field>(&bad).is_err(), "{bad}");
    }
    for bad in [r#""1/0""#, r#""five""#, "0.05", r#""1e99""#, r#""1/3/4""#, r#""1/-3""#, r#""0.5/2""#] {
        assert!(from_str::<Ratio>(bad).is_err(), "{bad}");
    }
    for bad in [r#"{"kind":"float","width":17}"#, r#"{"kind":"unsigned","width":0}"#, r#"{"kind":"octal","width":8}"#] {
        assert!(from_str::<Encoding>(bad).is_err(), "{bad}");
    }
    assert!(from_str::<Affine>(r#"{"factor":"0","offset":"1"}"#).is_err());
}
