//! Parameters of heavy-duty vehicles.

use wirelore_model::Signal;

use super::{list, readings};
use crate::testing::*;

/// A J1939 parameter with the error and not-available ranges of its width (SAE J1939-71 table 1, from memory).
fn parameter(name: &str, place: &str, factor: &str, offset: &str, unit: &str) -> Signal {
    let signal = unsigned(name, place).scaled(factor, offset, unit);
    match bits(place).width() {
        2 => signal.fault(&[pattern(2, 2)]).absent(&[pattern(3, 3)]),
        8 => signal.fault(&[pattern(0xFE, 0xFE)]).absent(&[pattern(0xFF, 0xFF)]),
        16 => signal.fault(&[pattern(0xFE00, 0xFEFF)]).absent(&[pattern(0xFF00, 0xFFFF)]),
        _ => signal,
    }
}

/// Positions, resolutions and offsets: SAE J1939-71, from memory; payloads derived from them.
#[test]
fn heavy_duty_parameters_decode_as_published() {
    let speed = |name, place| parameter(name, place, "1/256", "0", "km/h");
    let relative = |name, place| parameter(name, place, "1/16", "-7.8125", "km/h");
    let engine = one_frame(frame(
        "eec1",
        pgn(61444),
        vec![
            unsigned("torque_mode", "0.3..0.0"),
            parameter("demand", "1.7..1.0", "1", "-125", "%"),
            parameter("actual", "2.7..2.0", "1", "-125", "%"),
            parameter("speed", "4.7..3.0", "0.125", "0", "rpm"),
        ],
    ));
    let (all, _) = readings(&engine, &[0xF0, 0x7D, 0x7D, 0x20, 0x4E, 0x00, 0xF0, 0x7D]);
    assert_eq!(list(&all), [("torque_mode", "0"), ("demand", "0.0"), ("actual", "0.0"), ("speed", "2500.0")]);
    for (raw, said) in [([0x00, 0xFE], "sensor fault"), ([0xFF, 0xFF], "no reading"), ([0xFF, 0xFA], "8031.875")] {
        let (all, _) = readings(&engine, &[0, 0, 0, raw[0], raw[1], 0, 0, 0]);
        assert_eq!(all[3].1, said);
    }

    let cruise = one_frame(frame(
        "ccvs",
        pgn(65265),
        vec![parameter("brake", "3.5..3.4", "1", "0", ""), speed("speed", "2.7..1.0")],
    ));
    let (all, _) = readings(&cruise, &[0xFF, 0x00, 0x50, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF]);
    assert_eq!(list(&all), [("brake", "no reading"), ("speed", "80.0")]);

    let wheels = one_frame(frame(
        "ebc2",
        pgn(65215),
        vec![
            speed("front_axle", "1.7..0.0"),
            relative("front_left", "2.7..2.0"),
            relative("front_right", "3.7..3.0"),
            relative("rear_left", "4.7..4.0"),
            relative("rear_right", "5.7..5.0"),
            relative("rear_2_left", "6.7..6.0"),
        ],
    ));
    let (all, _) = readings(&wheels, &[0x40, 0x32, 0x7D, 0x7D, 0x85, 0x75, 0xFF, 0xFF]);
    let values: Vec<_> = all.iter().map(|(_, value)| value.as_str()).collect();
    assert_eq!(values, ["50.25", "0.0", "0.0", "0.5", "-0.5", "no reading"]);

    let temperatures = one_frame(frame(
        "et1",
        pgn(65262),
        vec![
            parameter("coolant", "0.7..0.0", "1", "-40", "°C"),
            parameter("fuel", "1.7..1.0", "1", "-40", "°C"),
            parameter("oil", "3.7..2.0", "1/32", "-273", "°C"),
        ],
    ));
    let (all, _) = readings(&temperatures, &[0x82, 0xFF, 0x20, 0x2D, 0xFF, 0xFF, 0xFF, 0xFF]);
    assert_eq!(list(&all), [("coolant", "90.0"), ("fuel", "no reading"), ("oil", "88.0")]);

    let request = one_frame(frame(
        "tsc1",
        pgn(0),
        vec![
            unsigned("mode", "0.1..0.0"),
            parameter("speed", "2.7..1.0", "0.125", "0", "rpm"),
            parameter("torque", "3.7..3.0", "1", "-125", "%"),
        ],
    ));
    let (all, _) = readings(&request, &[0x03, 0xE8, 0x2E, 0xAF, 0xFF, 0xFF, 0xFF, 0xFF]);
    assert_eq!(list(&all), [("mode", "3"), ("speed", "1501.0"), ("torque", "50.0")]);
}
