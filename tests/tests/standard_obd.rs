//! The description `obd` against what is published of SAE J1979 (ISO 15031-5), SAE J2012 and ISO 15765-4.

use std::io;

use wirelore_log::{Options, Recording};
use wirelore_tests::payloads::Described;
use wirelore_tests::readings::Readings;

/// PID and data of an answer; signal, number and unit.
type Row = (&'static str, &'static str, f64, &'static str);

/// Formulas as the SAE J1979 table of service 01 has them, as copied at liquisearch.com/obd-ii_pids/standard_pids (ISO 15031 wording:
/// blog.csdn.net/weixin_48120109/136609335). The numbers follow from these formulas by hand.
const PUBLISHED: [Row; 12] = [
    ("04 80", "calculated_load", 50.196_078, "%"),
    ("05 7B", "coolant_temperature", 83.0, "°C"),
    ("06 90", "short_fuel_trim_bank_1", 12.5, "%"),
    ("0A 64", "fuel_pressure", 300.0, "kPa"),
    ("0B 65", "intake_manifold_pressure", 101.0, "kPa"),
    ("0C 1A F8", "engine_speed", 1726.0, "rpm"),
    ("0D 32", "vehicle_speed", 50.0, "km/h"),
    ("0E 8A", "ignition_advance", 5.0, "°"),
    ("0F 28", "intake_air_temperature", 0.0, "°C"),
    ("10 01 99", "mass_air_flow", 4.09, "g/s"),
    ("11 33", "throttle_position", 20.0, "%"),
    ("14 5A FF", "oxygen_sensor_1_voltage", 0.45, "V"),
];

/// Formulas from memory of SAE J1979, service 01; the numbers follow from them by hand.
const REMEMBERED: [Row; 63] = [
    ("07 90", "long_fuel_trim_bank_1", 12.5, "%"),
    ("08 00", "short_fuel_trim_bank_2", -100.0, "%"),
    ("09 80", "long_fuel_trim_bank_2", 0.0, "%"),
    ("1B 14 FF", "oxygen_sensor_8_voltage", 0.1, "V"),
    ("15 5A 90", "oxygen_sensor_2_trim", 12.5, "%"),
    ("1F 0E 10", "run_time", 3600.0, "s"),
    ("21 00 64", "mil_distance", 100.0, "km"),
    ("22 10 00", "fuel_rail_pressure_relative", 323.584, "kPa"),
    ("23 0F A0", "fuel_rail_pressure_gauge", 40_000.0, "kPa"),
    ("24 80 00 80 00", "sensor_1_lambda", 1.0, "lambda"),
    ("24 80 00 80 00", "sensor_1_voltage", 4.0, "V"),
    ("2B 80 00 20 00", "sensor_8_voltage", 1.0, "V"),
    ("2C 66", "commanded_egr", 40.0, "%"),
    ("2D 7A", "egr_error", -4.6875, "%"),
    ("2E FF", "commanded_purge", 100.0, "%"),
    ("2F BF", "fuel_level", 74.901_961, "%"),
    ("30 19", "warm_ups_since_clear", 25.0, "warm-ups"),
    ("31 04 D2", "distance_since_clear", 1234.0, "km"),
    ("32 FF 38", "evap_vapour_pressure", -50.0, "Pa"),
    ("33 64", "barometric_pressure", 100.0, "kPa"),
    ("34 80 00 80 00", "sensor_1_lambda_by_current", 1.0, "lambda"),
    ("34 80 00 80 00", "sensor_1_current", 0.0, "mA"),
    ("3B 80 00 81 00", "sensor_8_current", 1.0, "mA"),
    ("3C 11 94", "catalyst_temperature_b1s1", 410.0, "°C"),
    ("3F 11 94", "catalyst_temperature_b2s2", 410.0, "°C"),
    ("42 36 B0", "control_module_voltage", 14.0, "V"),
    ("43 00 80", "absolute_load", 50.196_078, "%"),
    ("44 7F FF", "commanded_lambda", 0.999_969, "lambda"),
    ("45 1A", "relative_throttle_position", 10.196_078, "%"),
    ("46 3C", "ambient_temperature", 20.0, "°C"),
    ("47 33", "throttle_position_b", 20.0, "%"),
    ("48 33", "throttle_position_c", 20.0, "%"),
    ("49 4D", "accelerator_pedal_d", 30.196_078, "%"),
    ("4A 4D", "accelerator_pedal_e", 30.196_078, "%"),
    ("4B 4D", "accelerator_pedal_f", 30.196_078, "%"),
    ("4C 33", "commanded_throttle_actuator", 20.0, "%"),
    ("4D 00 3C", "mil_time", 60.0, "min"),
    ("4E 00 3C", "time_since_clear", 60.0, "min"),
    ("4F 02 05 80 19", "greatest_sensor_voltage", 5.0, "V"),
    ("4F 02 05 80 19", "greatest_manifold_pressure", 250.0, "kPa"),
    ("50 40 00 00 00", "greatest_air_flow", 640.0, "g/s"),
    ("52 D9", "ethanol_content", 85.098_039, "%"),
    ("53 4E 20", "evap_vapour_pressure_absolute", 100.0, "kPa"),
    ("54 FF FE", "evap_vapour_pressure_wide", -2.0, "Pa"),
    ("55 90", "second_short_trim_bank_1", 12.5, "%"),
    ("59 0F A0", "fuel_rail_pressure_absolute", 40_000.0, "kPa"),
    ("5A 33", "relative_accelerator_pedal", 20.0, "%"),
    ("5B CC", "hybrid_battery_life", 80.0, "%"),
    ("5C 82", "engine_oil_temperature", 90.0, "°C"),
    ("5D 6A 00", "injection_timing", 2.0, "°"),
    ("5E 00 C8", "engine_fuel_rate", 10.0, "L/h"),
    ("61 AF", "demand_percent_torque", 50.0, "%"),
    ("62 A0", "actual_percent_torque", 35.0, "%"),
    ("63 01 90", "reference_torque", 400.0, "N·m"),
    ("64 7D 87 91 9B A5", "idle_percent_torque", 0.0, "%"),
    ("64 7D 87 91 9B A5", "percent_torque_point_4", 40.0, "%"),
    ("66 01 01 40 00 00", "air_flow_a", 10.0, "g/s"),
    ("67 02 00 7B", "coolant_temperature_2", 83.0, "°C"),
    ("8D 33", "throttle_position_g", 20.0, "%"),
    ("8E 87", "friction_percent_torque", 10.0, "%"),
    ("9E 01 F4", "exhaust_flow", 100.0, "kg/h"),
    ("A2 01 40", "cylinder_fuel_rate", 10.0, "mg/stroke"),
    ("A6 00 12 D6 87", "odometer", 123_456.7, "km"),
];

#[test]
fn values_behind_pids() {
    let obd = Described::standard("obd");
    for (message, signal, value, unit) in PUBLISHED.into_iter().chain(REMEMBERED) {
        let (pid, data) = message.split_once(' ').expect("a PID and data");
        // The same data as an answer of service 01, and as a freeze frame of service 02 (PID, number of the frame, data).
        let answers = [
            (format!("41 {pid} {data}"), signal.to_owned()),
            (format!("42 {pid} 00 {data}"), format!("freeze_{signal}")),
        ];
        for (answer, signal) in answers {
            for frame in ["obd_answers", "obd_answers_29"] {
                let said = obd.read(frame, &answer);
                let miss = (said.number(&signal) - value).abs();
                assert!(miss < 5e-7, "{answer}: {signal} is {}", said.number(&signal));
                assert_eq!((said.unit(&signal), said.too_short), (unit, false), "{answer}");
                assert_eq!(said.without_page, None, "{answer}");
            }
        }
    }
}

/// PID, how many bytes its data has, signal; what all bytes 00 and all bytes FF say (ranges of the same sources, to three decimals where they
/// do not end earlier).
type Ends = (&'static str, usize, &'static str, f64, f64);

const ENDS: [Ends; 38] = [
    ("04", 1, "calculated_load", 0.0, 100.0),
    ("05", 1, "coolant_temperature", -40.0, 215.0),
    ("06", 1, "short_fuel_trim_bank_1", -100.0, 99.219),
    ("0A", 1, "fuel_pressure", 0.0, 765.0),
    ("0B", 1, "intake_manifold_pressure", 0.0, 255.0),
    ("0C", 2, "engine_speed", 0.0, 16_383.75),
    ("0D", 1, "vehicle_speed", 0.0, 255.0),
    ("0E", 1, "ignition_advance", -64.0, 63.5),
    ("0F", 1, "intake_air_temperature", -40.0, 215.0),
    ("10", 2, "mass_air_flow", 0.0, 655.35),
    ("11", 1, "throttle_position", 0.0, 100.0),
    ("14", 2, "oxygen_sensor_1_voltage", 0.0, 1.275),
    ("1F", 2, "run_time", 0.0, 65_535.0),
    ("21", 2, "mil_distance", 0.0, 65_535.0),
    ("22", 2, "fuel_rail_pressure_relative", 0.0, 5_177.265),
    ("23", 2, "fuel_rail_pressure_gauge", 0.0, 655_350.0),
    ("24", 4, "sensor_1_lambda", 0.0, 2.0),
    ("2C", 1, "commanded_egr", 0.0, 100.0),
    ("2D", 1, "egr_error", -100.0, 99.219),
    ("2F", 1, "fuel_level", 0.0, 100.0),
    ("30", 1, "warm_ups_since_clear", 0.0, 255.0),
    ("31", 2, "distance_since_clear", 0.0, 65_535.0),
    ("33", 1, "barometric_pressure", 0.0, 255.0),
    ("3C", 2, "catalyst_temperature_b1s1", -40.0, 6_513.5),
    ("42", 2, "control_module_voltage", 0.0, 65.535),
    ("43", 2, "absolute_load", 0.0, 25_700.0),
    ("44", 2, "commanded_lambda", 0.0, 2.0),
    ("45", 1, "relative_throttle_position", 0.0, 100.0),
    ("46", 1, "ambient_temperature", -40.0, 215.0),
    ("49", 1, "accelerator_pedal_d", 0.0, 100.0),
    ("4D", 2, "mil_time", 0.0, 65_535.0),
    ("52", 1, "ethanol_content", 0.0, 100.0),
    ("5C", 1, "engine_oil_temperature", -40.0, 215.0),
    ("5D", 2, "injection_timing", -210.0, 301.992),
    ("5E", 2, "engine_fuel_rate", 0.0, 3_276.75),
    ("61", 1, "demand_percent_torque", -125.0, 130.0),
    ("62", 1, "actual_percent_torque", -125.0, 130.0),
    ("63", 2, "reference_torque", 0.0, 65_535.0),
];

#[test]
fn the_ends_of_what_pids_can_say() {
    let obd = Described::standard("obd");
    let says = |pid: &str, data: &str, signal: &str, wanted: f64| {
        let said = obd.read("obd_answers", &format!("41 {pid} {data}")).number(signal);
        assert!((said - wanted).abs() < 5.1e-4, "{pid} {data}: {signal} is {said}");
    };
    for (pid, bytes, signal, low, high) in ENDS {
        says(pid, &"00 ".repeat(bytes), signal, low);
        says(pid, &"FF ".repeat(bytes), signal, high);
    }
    // In two's complement, so that neither end is all 00 or all FF.
    says("32", "80 00", "evap_vapour_pressure", -8192.0);
    says("32", "7F FF", "evap_vapour_pressure", 8191.75);
}

/// How many data bytes each PID of service 01 has, from memory of SAE J1979; PIDs 06 to 09 and 55 to 58 without banks 3 and 4.
const DATA_BYTES: [(usize, &[u8]); 8] = [
    (
        1,
        &[
            0x04, 0x05, 0x06, 0x07, 0x08, 0x09, 0x0A, 0x0B, 0x0D, 0x0E, 0x0F, 0x11, 0x12, 0x13, 0x1C, 0x1D, 0x1E, 0x2C,
            0x2D, 0x2E, 0x2F, 0x30, 0x33, 0x45, 0x46, 0x47, 0x48, 0x49, 0x4A, 0x4B, 0x4C, 0x51, 0x52, 0x55, 0x56, 0x57,
            0x58, 0x5A, 0x5B, 0x5C, 0x61, 0x62, 0x8D, 0x8E,
        ],
    ),
    (
        2,
        &[
            0x02, 0x03, 0x0C, 0x10, 0x14, 0x15, 0x16, 0x17, 0x18, 0x19, 0x1A, 0x1B, 0x1F, 0x21, 0x22, 0x23, 0x31, 0x32,
            0x3C, 0x3D, 0x3E, 0x3F, 0x42, 0x43, 0x44, 0x4D, 0x4E, 0x53, 0x54, 0x59, 0x5D, 0x5E, 0x63, 0x9E, 0xA2,
        ],
    ),
    (3, &[0x67]),
    (
        4,
        &[
            0x00, 0x01, 0x20, 0x24, 0x25, 0x26, 0x27, 0x28, 0x29, 0x2A, 0x2B, 0x34, 0x35, 0x36, 0x37, 0x38, 0x39, 0x3A,
            0x3B, 0x40, 0x41, 0x4F, 0x50, 0x60, 0x80, 0xA0, 0xA6,
        ],
    ),
    (5, &[0x64, 0x66]),
    (7, &[0x68]),
    (9, &[0x78, 0x79]),
    (13, &[0x7F]),
];

/// Behind the data of each PID the next one is found, whatever the data say.
#[test]
fn as_many_bytes_as_each_pid_has() {
    let obd = Described::standard("obd");
    let mut seen = 0;
    for (bytes, pid) in DATA_BYTES.iter().flat_map(|(bytes, pids)| pids.iter().map(move |pid| (*bytes, *pid))) {
        for data in ["00 ", "FF ", "A5 "].map(|byte| byte.repeat(bytes)) {
            let rows = obd.read_rows("obd_answers", &format!("41 {pid:02X} {data}0D 32"));
            assert_eq!(rows.len(), 2, "{pid:02X} {data}");
            assert_eq!(rows[0].number("pid"), f64::from(pid));
            assert_eq!((rows[0].too_short, rows[0].without_page.clone()), (false, None), "{pid:02X} {data}");
            assert_eq!(rows[1].number("vehicle_speed"), 50.0, "{pid:02X} {data}");
            let frozen = obd.read_rows("obd_answers", &format!("42 {pid:02X} 00 {data}0D 00 32"));
            assert_eq!((frozen.len(), frozen[1].number("freeze_vehicle_speed")), (2, 50.0), "{pid:02X} {data}");
            let short = &format!("41 {pid:02X} {data}")[..5 + 3 * bytes - 3];
            assert!(obd.read("obd_answers", short).too_short, "{pid:02X}: {short}");
        }
        seen += 1;
    }
    let layout = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../schema/standard/obd.lore"));
    assert_eq!(layout.expect("the description").matches("    when pid is ").count(), seen, "every PID is asked for");
}

/// The layout of ISO 15031-5, several PIDs in one answer (from memory); the values follow from its formulas by hand.
#[test]
fn several_pids_in_one_answer() {
    let obd = Described::standard("obd");
    for frame in ["obd_answers", "obd_answers_29"] {
        let rows = obd.read_rows(frame, "41 0C 1A F8 0D 32");
        assert_eq!(rows.len(), 2);
        assert_eq!(
            (rows[0].shown("engine_speed"), rows[1].shown("vehicle_speed")),
            ("1726 rpm".into(), "50 km/h".into())
        );
        assert!(!rows[0].has("vehicle_speed") && !rows[1].has("engine_speed"));
        let of_first = obd.read(frame, "41 0C 1A F8 0D 32");
        assert!(of_first.has("engine_speed") && !of_first.has("vehicle_speed"), "the first one alone");
    }
    // A PID that is not described: where the next one begins is not known.
    let rows = obd.read_rows("obd_answers", "41 0C 1A F8 5F 0E 0D 32");
    assert_eq!(rows.len(), 2);
    assert_eq!((rows[1].number("pid"), rows[1].shown("data")), (95.0, "0E 0D 32".into()));
}

#[test]
fn an_oxygen_sensor_without_a_part_in_the_trim() {
    // FF: not used for the trim (SAE J1979 as copied at liquisearch.com/obd-ii_pids/standard_pids).
    assert_eq!(
        Described::standard("obd").read("obd_answers", "41 14 5A FF").shown("oxygen_sensor_1_trim"),
        "no reading"
    );
}

/// SAE J1979 (from memory): bit 7 of the first byte is the PID one above the one that was asked. BE 1F A8 13 is a widely printed answer.
#[test]
fn which_pids_there_are() {
    let said = Described::standard("obd").read("obd_answers", "41 00 BE 1F A8 13");
    let there: Vec<&str> =
        said.names().filter(|name| name.starts_with("supports_") && said.number(name) == 1.0).collect();
    let expected =
        ["01", "03", "04", "05", "06", "07", "0c", "0d", "0e", "0f", "10", "11", "13", "15", "1c", "1f", "20"];
    assert_eq!(there, expected.map(|pid| format!("supports_{pid}")));
    assert_eq!(said.names().filter(|name| name.starts_with("supports_")).count(), 32);
}

/// SAE J1979 (from memory): PID 01, bit 7 of byte A is the lamp, the others count codes; B to D tell of the monitors.
#[test]
fn the_lamp_and_the_monitors() {
    let obd = Described::standard("obd");
    let said = obd.read("obd_answers", "41 01 81 07 65 04");
    assert_eq!((said.word("mil"), said.shown("stored_codes").as_str()), ("on", "1 codes"));
    assert_eq!((said.number("compression_ignition"), said.number("misfire_supported")), (0.0, 1.0));
    assert_eq!(
        ["misfire", "catalyst", "evap", "oxygen_heater"].map(|name| said.word(name)),
        ["complete", "complete", "not_complete", "complete"]
    );
    assert!(!said.has("secondary_air"), "a monitor that is not supported has not run through either");
    let diesel = obd.read("obd_answers", "41 41 00 0F 6A 42");
    assert_eq!(diesel.number("cycle_compression_ignition"), 1.0);
    assert_eq!(
        (diesel.word("cycle_particulate_filter"), diesel.word("cycle_nox_treatment")),
        ("not_complete", "not_complete")
    );
}

/// States from memory of SAE J1979.
#[test]
fn words_of_states() {
    let obd = Described::standard("obd");
    let rows = [
        ("41 03 02 00", "fuel_system_1", "closed"),
        ("41 03 02 00", "fuel_system_2", "none"),
        ("41 12 04", "secondary_air", "atmosphere"),
        ("41 1C 06", "obd_standard", "eobd"),
        ("41 1E 01", "power_take_off", "active"),
        ("41 51 04", "fuel_type", "diesel"),
        ("7F 01 31", "refusal", "out_of_range"),
        ("7F 01 12", "refused_service", "current_data"),
    ];
    for (answer, signal, word) in rows {
        assert_eq!(obd.read("obd_answers", answer).word(signal), word, "{answer}");
    }
    let sensors = obd.read("obd_answers", "41 13 13");
    let there: Vec<&str> =
        sensors.names().filter(|name| name.starts_with("has_") && sensors.number(name) == 1.0).collect();
    assert_eq!(there, ["has_sensor_b1s1", "has_sensor_b1s2", "has_sensor_b2s1"]);
}

/// Trouble codes of two bytes (SAE J2012, ISO 15031-6): P0135 is the worked example at talk.maemo.org, post 1257514; P0143, U0100, U0158 and U0073
/// from memory of SAE J2012; the others follow from its rule.
#[test]
fn trouble_codes() {
    let codes = [
        ("01 35", "P0135"),
        ("01 43", "P0143"),
        ("C1 00", "U0100"),
        ("C1 58", "U0158"),
        ("C0 73", "U0073"),
        ("43 00", "C0300"),
        ("92 34", "B1234"),
        ("33 99", "P3399"),
        ("F1 23", "U3123"),
    ];
    let obd = Described::standard("obd");
    let all = codes.map(|(bytes, _)| bytes).join(" ");
    for (service, prefix) in [("43", ""), ("47", "pending_"), ("4A", "permanent_")] {
        let said = obd.read("obd_answers", &format!("{service} 09 {all}"));
        for (index, (_, code)) in codes.iter().enumerate() {
            assert_eq!(said.shown(&format!("{prefix}code[{}]", index + 1)), *code);
        }
        assert!(!said.has(&format!("{prefix}code[10]")) && !said.too_short);
    }
    let none = obd.read("obd_answers", "43 00");
    assert!(!none.has("code[1]") && !none.too_short && none.without_page.is_none());
    assert_eq!(obd.read("obd_answers", "42 02 00 01 35").shown("freeze_freeze_frame_code"), "P0135");
    assert_eq!(obd.read("obd_answers", "41 02 00 00").shown("freeze_frame_code"), "no reading");
}

/// Vehicle information, monitors' results and requests, from memory of SAE J1979.
#[test]
fn other_services() {
    let obd = Described::standard("obd");
    let calibrations = obd.read("obd_answers", &format!("49 04 02 {}{}", "41 ".repeat(16), "42 ".repeat(16)));
    assert_eq!(
        (calibrations.shown("calibration[1]"), calibrations.shown("calibration[2]")),
        ("A".repeat(16), "B".repeat(16))
    );
    assert_eq!(obd.read("obd_answers", "49 06 01 17 91 BC 82").shown("verification[1]"), "17 91 BC 82");
    let name = obd.read("obd_answers", "49 0A 01 45 43 4D 00 2D 45 6E 67 69 6E 65 43 6F 6E 74 72 6F 6C 00 00");
    assert!(name.shown("ecu_name").starts_with("ECM") && name.shown("ecu_name").ends_with("EngineControl"), "{name:?}");
    let tracking = obd.read("obd_answers", &format!("49 08 10 00 64 01 00 {}", "00 05 ".repeat(14)));
    let counted = ["condition_met", "ignition_cycles", "evap_conditions"].map(|name| tracking.number(name));
    assert_eq!(counted, [100.0, 256.0, 5.0]);

    let results = obd.read("obd_answers", "46 01 0B 0B 00 10 00 00 00 20 01 0C 0B 00 11 00 00 00 21");
    assert_eq!(
        ["test", "scaling", "value", "least", "greatest"].map(|name| results.number(name)),
        [11.0, 11.0, 16.0, 0.0, 32.0]
    );
    let next = ["monitor", "test", "scaling", "value", "least", "greatest"]
        .map(|name| results.number(&format!("next_{name}[1]")));
    assert_eq!(next, [1.0, 12.0, 11.0, 17.0, 0.0, 33.0]);
    assert_eq!(obd.read("obd_answers", "46 00 C0 00 00 01").number("supports_monitor[32]"), 1.0);

    let request = obd.read("obd_requests_to_all", "01 0C 0D 05");
    let asked = ["pid", "further_pid[1]", "further_pid[2]"].map(|name| request.word(name));
    assert_eq!(asked, ["engine_speed", "vehicle_speed", "coolant"]);
    for (request, word) in [("03", "codes"), ("04", "clear"), ("07", "pending_codes"), ("0A", "permanent_codes")] {
        let said = obd.read("obd_requests", request);
        assert_eq!((said.word("service"), said.without_page.is_none(), said.too_short), (word, true, false));
    }
    assert_eq!(obd.read("obd_answers", "44").word("service"), "clear_answer");
    assert!(obd.read("obd_answers", "41 0C 1A").too_short, "an answer that ends too early is told");
    assert_eq!(obd.read("obd_answers", "41 E1 05").shown("data"), "05");
    let request = obd.read("obd_requests", "02 0C 00 0D 01");
    let asked = (request.word("pid"), request.word("further_pid[1]"), request.number("further_frame_number[1]"));
    assert_eq!(asked, ("engine_speed", "vehicle_speed", 1.0));
}

/// A message in three frames by the layout of ISO 15765-2, identifiers and padding by ISO 15765-4, from memory; the number is invented. In between, an answer of another unit, and one with an identifier of 29 bits.
#[test]
fn a_vehicle_tells_its_identification_number() {
    let log = "time_s,id_hex,ext,data_hex\n\
               0.000,7DF,0,02 09 02 00 00 00 00 00\n\
               0.010,7E8,0,10 14 49 02 01 5A 5A 39\n\
               0.011,7E0,0,30 00 00 00 00 00 00 00\n\
               0.020,7E8,0,21 47 50 30 30 52 35 35\n\
               0.025,7E9,0,03 41 0D 32 00 00 00 00\n\
               0.030,7E8,0,22 42 31 32 33 34 35 36\n\
               0.040,18DB33F1,1,02 01 0C 00 00 00 00 00\n\
               0.050,18DAF110,1,04 41 0C 1A F8 00 00 00\n";
    let obd = Described::standard("obd");
    let reader = Box::new(io::Cursor::new(log.to_owned()));
    let recording = Recording::from_reader(reader, "plug.csv", &Options::default()).expect("a log");
    let read = Readings::of(&obd.database, recording);
    assert_eq!(read.texts["obd_answers.vin"], ["ZZ9GP00R55B123456"]);
    assert_eq!(read.of_signal("obd_answers.vehicle_speed"), [(0.025, 50.0)]);
    assert_eq!(read.of_signal("obd_answers_29.engine_speed"), [(0.05, 1726.0)]);
    assert_eq!((read.tally.carrying, read.tally.messages, read.tally.decoded, read.tally.message_faults), (8, 5, 5, 0));
}
