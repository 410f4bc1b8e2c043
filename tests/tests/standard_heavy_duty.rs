//! The description `heavy_duty` against what is published of SAE J1939-71, -73 and -81, and against a truck on the road.

use std::io;

use wirelore_log::{Options, Recording};
use wirelore_model::{Appearance, Identifier};
use wirelore_tests::payloads::Described;
use wirelore_tests::readings::{Readings, shared_recording};

/// Frame, parameter group, signal; the first byte (from 0) and width in bytes; the least value and the greatest valid one; unit.
type Row = (&'static str, u32, &'static str, usize, usize, f64, f64, &'static str);

/// Whole-byte parameters, from memory of SAE J1939-71; SPN 84 as the FMS-Standard has it, SPN 1862 as ISO 11783-7 (isobus.net, PGN 65096).
/// The greatest valid raw values are FA, FAFF and FAFFFFFF (SAE J1939-71, table of signal widths).
const PARAMETERS: [Row; 44] = [
    ("engine_torque_and_speed", 61444, "drivers_demand_percent_torque", 1, 1, -125.0, 125.0, "%"),
    ("engine_torque_and_speed", 61444, "actual_engine_percent_torque", 2, 1, -125.0, 125.0, "%"),
    ("engine_torque_and_speed", 61444, "engine_speed", 3, 2, 0.0, 8031.875, "rpm"),
    ("accelerator_and_load", 61443, "accelerator_pedal_position", 1, 1, 0.0, 100.0, "%"),
    ("accelerator_and_load", 61443, "percent_load_at_current_speed", 2, 1, 0.0, 250.0, "%"),
    ("torque_speed_control", 0, "requested_speed", 1, 2, 0.0, 8031.875, "rpm"),
    ("torque_speed_control", 0, "requested_torque", 3, 1, -125.0, 125.0, "%"),
    ("engine_temperatures", 65262, "coolant_temperature", 0, 1, -40.0, 210.0, "°C"),
    ("engine_temperatures", 65262, "fuel_temperature", 1, 1, -40.0, 210.0, "°C"),
    ("engine_temperatures", 65262, "engine_oil_temperature", 2, 2, -273.0, 1_734.968_75, "°C"),
    ("cruise_and_vehicle_speed", 65265, "wheel_based_vehicle_speed", 1, 2, 0.0, 250.996_094, "km/h"),
    ("cruise_and_vehicle_speed", 65265, "cruise_set_speed", 5, 1, 0.0, 250.0, "km/h"),
    ("axle_and_wheel_speeds", 65215, "front_axle_speed", 0, 2, 0.0, 250.996_094, "km/h"),
    ("axle_and_wheel_speeds", 65215, "relative_speed_front_left", 2, 1, -7.8125, 7.8125, "km/h"),
    ("axle_and_wheel_speeds", 65215, "relative_speed_front_right", 3, 1, -7.8125, 7.8125, "km/h"),
    ("axle_and_wheel_speeds", 65215, "relative_speed_rear_1_left", 4, 1, -7.8125, 7.8125, "km/h"),
    ("axle_and_wheel_speeds", 65215, "relative_speed_rear_1_right", 5, 1, -7.8125, 7.8125, "km/h"),
    ("axle_and_wheel_speeds", 65215, "relative_speed_rear_2_left", 6, 1, -7.8125, 7.8125, "km/h"),
    ("axle_and_wheel_speeds", 65215, "relative_speed_rear_2_right", 7, 1, -7.8125, 7.8125, "km/h"),
    ("brake_control", 61441, "brake_pedal_position", 1, 1, 0.0, 100.0, "%"),
    ("transmission_shafts", 61442, "output_shaft_speed", 1, 2, 0.0, 8031.875, "rpm"),
    ("transmission_shafts", 61442, "input_shaft_speed", 5, 2, 0.0, 8031.875, "rpm"),
    ("transmission_gears", 61445, "current_gear", 3, 1, -125.0, 125.0, "gear"),
    ("transmission_gears", 61445, "selected_gear", 0, 1, -125.0, 125.0, "gear"),
    ("vehicle_dynamics", 61449, "steering_wheel_angle", 0, 2, -31.374, 31.375_023, "rad"),
    ("vehicle_dynamics", 61449, "yaw_rate", 3, 2, -3.92, 3.923_628, "rad/s"),
    ("vehicle_dynamics", 61449, "lateral_acceleration", 5, 2, -15.687, 15.687_512, "m/s²"),
    ("engine_fluids", 65263, "engine_oil_pressure", 3, 1, 0.0, 1000.0, "kPa"),
    ("engine_fluids", 65263, "fuel_delivery_pressure", 0, 1, 0.0, 1000.0, "kPa"),
    ("intake_and_exhaust", 65270, "boost_pressure", 1, 1, 0.0, 500.0, "kPa"),
    ("intake_and_exhaust", 65270, "intake_manifold_temperature", 2, 1, -40.0, 210.0, "°C"),
    ("ambient_conditions", 65269, "barometric_pressure", 0, 1, 0.0, 125.0, "kPa"),
    ("ambient_conditions", 65269, "ambient_temperature", 3, 2, -273.0, 1_734.968_75, "°C"),
    ("electrical_power", 65271, "battery_potential", 4, 2, 0.0, 3212.75, "V"),
    ("levels_and_filters", 65276, "fuel_level", 1, 1, 0.0, 100.0, "%"),
    ("fuel_economy", 65266, "fuel_rate", 0, 2, 0.0, 3212.75, "L/h"),
    ("fuel_economy", 65266, "instantaneous_fuel_economy", 2, 2, 0.0, 125.498_047, "km/L"),
    ("engine_hours", 65253, "total_engine_hours", 0, 4, 0.0, 210_554_060.75, "h"),
    ("vehicle_distance", 65248, "total_vehicle_distance", 4, 4, 0.0, 526_385_151.875, "km"),
    ("fuel_used", 65257, "total_fuel_used", 4, 4, 0.0, 2_105_540_607.5, "L"),
    ("wheel_based_machine_speed", 65096, "machine_speed", 0, 2, 0.0, 64.255, "m/s"),
    ("engine_configuration", 65251, "speed_at_idle", 0, 2, 0.0, 8031.875, "rpm"),
    ("engine_configuration", 65251, "reference_torque", 19, 2, 0.0, 64_255.0, "N·m"),
    ("engine_configuration", 65251, "default_torque_limit", 32, 2, 0.0, 64_255.0, "N·m"),
];

/// A message in which all bytes but some are FF.
fn message(frame: &str, first: usize, raw: &[u8]) -> String {
    let length = if frame == "engine_configuration" { 34 } else { 8 };
    let mut payload = vec![0xFF_u8; length];
    payload[first..first + raw.len()].copy_from_slice(raw);
    payload.iter().map(|byte| format!("{byte:02X} ")).collect()
}

fn is_of_group(appearance: &Appearance, group: u32) -> bool {
    matches!(appearance.identifier, Identifier::Pgn { pgn, .. } if pgn == group)
}

#[test]
fn parameters_of_whole_bytes() {
    let truck = Described::standard("heavy_duty");
    for (frame, group, signal, first, width, low, high, unit) in PARAMETERS {
        let (_, described) = truck.database.frame_named(frame).expect("it is described");
        assert!(is_of_group(&described.seen_on[0], group), "{frame}");
        // Least significant byte first.
        let mut greatest = vec![0xFF_u8; width];
        greatest[width - 1] = 0xFA;
        let marked = |top: u8| {
            let mut raw = vec![0_u8; width];
            raw[width - 1] = top;
            raw
        };
        for (raw, wanted) in [(vec![0_u8; width], low), (greatest, high)] {
            let said = truck.read(frame, &message(frame, first, &raw));
            assert!((said.number(signal) - wanted).abs() < 1e-6, "{frame}.{signal}: {}", said.number(signal));
            assert_eq!(said.unit(signal), unit, "{frame}.{signal}");
        }
        let said = |top| truck.read(frame, &message(frame, first, &marked(top))).shown(signal);
        assert_eq!((said(0xFE).as_str(), said(0xFF).as_str()), ("sensor fault", "no reading"), "{frame}.{signal}");
    }
}

/// SAE J1939-71, table of transmitted signal ranges (from memory; the greatest valid numbers 64255 and 4211081215 also in a public table):
/// first and last raw number of what is valid, what each parameter has for itself, what is reserved, errors and what is not available. Two
/// bytes and four are all it takes: what is neither valid nor error nor absent comes as a number that is told to be out of its range.
#[test]
fn raw_numbers_by_their_top_byte() {
    let truck = Described::standard("heavy_duty");
    let wide =
        [("engine_torque_and_speed", "engine_speed", 3, 2), ("vehicle_distance", "total_vehicle_distance", 4, 4)];
    let narrow = ("engine_temperatures", "coolant_temperature", 0, 1);
    for (frame, signal, first, width) in wide.into_iter().chain([narrow]) {
        let what = |top: u8, others: u8| {
            let mut raw = vec![others; width];
            raw[width - 1] = top;
            let said = truck.read(frame, &message(frame, first, &raw));
            match said.shown(signal).as_str() {
                "sensor fault" => "error",
                "no reading" => "not available",
                _ if said.is_outside(signal) => "neither",
                _ => "valid",
            }
        };
        for others in [0x00, 0xFF] {
            let told = [0x00, 0xFA, 0xFB, 0xFC, 0xFD, 0xFE, 0xFF].map(|top| what(top, others));
            let wanted = ["valid", "valid", "neither", "neither", "neither", "error", "not available"];
            assert_eq!(told, wanted, "{frame}.{signal} {others:02X}");
        }
    }
}

/// Frame, parameter group, signal; byte and bit (from 1, as the document counts), width in bits.
type Bits = (&'static str, u32, &'static str, usize, usize, u32);

/// Parameters of some bits, from memory of SAE J1939-71; cruise and clutch states as the FMS-Standard has them.
const PARTS_OF_BYTES: [Bits; 11] = [
    ("engine_torque_and_speed", 61444, "torque_mode", 1, 1, 4),
    ("accelerator_and_load", 61443, "accelerator_low_idle_switch", 1, 1, 2),
    ("torque_speed_control", 0, "override_control_mode", 1, 1, 2),
    ("torque_speed_control", 0, "requested_speed_control_conditions", 1, 3, 2),
    ("torque_speed_control", 0, "override_mode_priority", 1, 5, 2),
    ("cruise_and_vehicle_speed", 65265, "parking_brake_switch", 1, 3, 2),
    ("cruise_and_vehicle_speed", 65265, "cruise_control_active", 4, 1, 2),
    ("cruise_and_vehicle_speed", 65265, "brake_switch", 4, 5, 2),
    ("cruise_and_vehicle_speed", 65265, "clutch_switch", 4, 7, 2),
    ("cruise_and_vehicle_speed", 65265, "cruise_control_state", 7, 6, 3),
    ("brake_control", 61441, "abs_active", 1, 5, 2),
];

#[test]
fn parameters_of_some_bits() {
    let truck = Described::standard("heavy_duty");
    for (frame, group, signal, byte, bit, width) in PARTS_OF_BYTES {
        let (_, described) = truck.database.frame_named(frame).expect("it is described");
        assert!(is_of_group(&described.seen_on[0], group), "{frame}");
        for raw in 0..2_u8 {
            // All other bits are 1, so that none of them can be taken for its own.
            let mask = ((1_u8 << width) - 1) << (bit - 1);
            let said = truck.read(frame, &message(frame, byte - 1, &[!mask | raw << (bit - 1)]));
            assert_eq!(said.number(signal), f64::from(raw), "{frame}.{signal}");
        }
        // SAE J1939-71, discrete parameters of two bits: 10 is an error, 11 not available.
        if width == 2 && !ALL_FOUR_MEANT.contains(&signal) {
            let marked =
                |raw: u8| truck.read(frame, &message(frame, byte - 1, &[!(3 << (bit - 1)) | raw << (bit - 1)]));
            let told = [2, 3].map(|raw| marked(raw).shown(signal));
            assert_eq!(told, ["sensor fault", "no reading"], "{frame}.{signal}");
        }
    }
}

/// Modes of two bits, of which each number is a mode.
const ALL_FOUR_MEANT: [&str; 3] =
    ["override_control_mode", "requested_speed_control_conditions", "override_mode_priority"];

/// The rules above, by hand.
#[test]
fn whole_messages() {
    let truck = Described::standard("heavy_duty");
    let engine = truck.read("engine_torque_and_speed", "F0 7D 7D 20 4E 00 F0 7D");
    assert_eq!(engine.word("torque_mode"), "low_idle_or_none");
    let shown = [
        "drivers_demand_percent_torque",
        "actual_engine_percent_torque",
        "engine_speed",
        "engine_demand_percent_torque",
    ];
    assert_eq!(shown.map(|name| engine.shown(name)), ["0 %", "0 %", "2500 rpm", "0 %"]);
    assert_eq!(engine.word("starter_mode"), "not_requested");

    let speed = truck.read("cruise_and_vehicle_speed", "FF 00 50 FF FF FF FF FF");
    assert_eq!(speed.shown("wheel_based_vehicle_speed"), "80 km/h");
    let others = speed.names().filter(|name| *name != "wheel_based_vehicle_speed");
    let readings: Vec<&str> = others.filter(|name| speed.shown(name) != "no reading").collect();
    assert!(readings.is_empty(), "{readings:?}");

    let wheels = truck.read("axle_and_wheel_speeds", "40 32 7D 7D 85 75 FF FF");
    let relative = ["front_left", "front_right", "rear_1_left", "rear_1_right", "rear_2_left", "rear_2_right"];
    let relative = relative.map(|wheel| wheels.shown(&format!("relative_speed_{wheel}")));
    assert_eq!(relative, ["0 km/h", "0 km/h", "0.5 km/h", "-0.5 km/h", "no reading", "no reading"]);
    assert_eq!(wheels.shown("front_axle_speed"), "50.25 km/h");

    let request = truck.read("torque_speed_control", "03 E8 2E AF FF FF FF FF");
    assert_eq!(
        (request.word("override_control_mode"), request.shown("requested_speed")),
        ("limit", "1501 rpm".to_owned())
    );
    assert_eq!(request.shown("requested_torque"), "50 %");

    let hot = truck.read("engine_temperatures", "82 FF 20 2D FF FF FF FF");
    let shown = ["coolant_temperature", "fuel_temperature", "engine_oil_temperature"].map(|name| hot.shown(name));
    assert_eq!(shown, ["90 °C", "no reading", "88 °C"]);

    // The error indicator of two bytes, all of them from FE00 on.
    for raw in ["00 FE", "FF FE"] {
        let said = truck.read("engine_torque_and_speed", &format!("F0 7D 7D {raw} 00 F0 7D"));
        assert_eq!(said.shown("engine_speed"), "sensor fault");
    }
}

/// SPN, FMI, how often, conversion method, and their four bytes. The first is the worked example of SAE J1939-73 (from memory); the others follow
/// from the places that it gives.
const CODES: [(u32, u8, &str, u8, &str); 5] = [
    (1208, 3, "10", 0, "B8 04 03 0A"),
    (110, 0, "1", 0, "6E 00 00 01"),
    (639, 9, "126", 0, "7F 02 09 7E"),
    (520_192, 31, "no reading", 0, "00 F0 FF 7F"),
    (524_287, 31, "no reading", 1, "FF FF FF FF"),
];

#[test]
fn trouble_codes() {
    let truck = Described::standard("heavy_duty");
    let all = CODES.map(|(.., bytes)| bytes).join(" ");
    for frame in ["active_trouble_codes", "previous_trouble_codes"] {
        let said = truck.read(frame, &format!("04 FF {all}"));
        for (index, (spn, fmi, count, method, _)) in CODES.into_iter().enumerate() {
            let of = |name: &str| format!("{name}[{}]", index + 1);
            assert_eq!((said.number(&of("spn")), said.number(&of("fmi"))), (f64::from(spn), f64::from(fmi)));
            assert_eq!(
                (said.shown(&of("occurrences")).as_str(), said.number(&of("conversion_method"))),
                (count, f64::from(method))
            );
        }
        assert!(!said.has("spn[6]"));
    }
}

/// SAE J1939-73 (from memory): lamps from the top of byte 1, two bits each; one code in a frame of its own, the rest FF; no code at all.
#[test]
fn lamps_and_short_messages() {
    let truck = Described::standard("heavy_duty");
    let one = truck.read("active_trouble_codes", "04 FF B8 04 03 0A FF FF");
    let lamps = ["malfunction_lamp", "red_stop_lamp", "amber_warning_lamp", "protect_lamp"];
    assert_eq!(lamps.map(|lamp| one.word(lamp)), ["off", "off", "on", "off"]);
    let flash = ["malfunction_flash", "red_stop_flash", "amber_warning_flash", "protect_flash"];
    assert_eq!(flash.map(|lamp| one.word(lamp)), ["steady"; 4]);
    assert_eq!(
        (one.number("spn[1]"), one.word("fmi[1]"), one.number("occurrences[1]")),
        (1208.0, "voltage_high", 10.0)
    );
    assert!(!one.has("spn[2]") && !one.too_short, "what fills the frame up is no code");

    let none = truck.read("active_trouble_codes", "00 FF 00 00 00 00 FF FF");
    assert_eq!(none.shown("spn[1]"), "no reading");
    assert!(!none.has("fmi[1]") && none.without_page.is_none());
    let lit = truck.read("active_trouble_codes", "40 3F 00 00 00 00 FF FF");
    assert_eq!((lit.word("malfunction_lamp"), lit.word("malfunction_flash")), ("on", "slow"));
}

/// Identity number, manufacturer, instances of unit and function, function, vehicle system and its instance, industry group, arbitrary address.
type Name = [f64; 9];

/// Bit positions as the documentation of the Linux kernel gives them (Documentation/networking/j1939.rst, include/uapi/linux/can/j1939.h, after
/// SAE J1939-81); the bytes follow from them, the least significant one first.
const NAMES: [(&str, Name); 3] = [
    ("40 E2 81 25 00 00 00 80", [123_456.0, 300.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0]),
    ("01 00 E0 FF FF FF FE FF", [1.0, 2047.0, 7.0, 31.0, 255.0, 127.0, 15.0, 7.0, 1.0]),
    ("55 55 55 08 11 82 32 23", [1_398_101.0, 66.0, 1.0, 2.0, 130.0, 25.0, 3.0, 2.0, 0.0]),
];

#[test]
fn names_of_control_units() {
    let fields = [
        "identity_number",
        "manufacturer_code",
        "ecu_instance",
        "function_instance",
        "function",
        "vehicle_system",
        "vehicle_system_instance",
        "industry_group",
        "arbitrary_address_capable",
    ];
    let truck = Described::standard("heavy_duty");
    for (bytes, numbers) in NAMES {
        let claimed = truck.read("address_claimed", bytes);
        assert_eq!(fields.map(|field| claimed.number(field)), numbers, "{bytes}");
        let commanded = truck.read("commanded_address", &format!("{bytes} 2A"));
        assert_eq!((commanded.number("identity_number"), commanded.number("new_address")), (numbers[0], 42.0));
    }
}

/// Requests and long messages of SAE J1939-21, from memory: the number of a group in three bytes, the least significant one first; a broadcast
/// of 18 bytes with an invented identification number.
#[test]
fn requests_and_identifications() {
    let truck = Described::standard("heavy_duty");
    assert_eq!(truck.read("group_request", "EC FE 00").number("requested_group"), 65_260.0);
    let refused = truck.read("acknowledgement", "01 FF FF FF F9 EC FE 00");
    assert_eq!((refused.word("acknowledgement"), refused.number("acknowledged_group")), ("negative", 65_260.0));
    assert_eq!(
        (refused.number("acknowledged_address"), refused.shown("group_function")),
        (249.0, "no reading".to_owned())
    );
    assert_eq!(truck.read("software_identification", "01 56 31 2E 32 2A").shown("software"), "V1.2*");

    let log = "time_s,id_hex,ext,data_hex\n\
               0.00,18EAFFF9,1,EC FE 00\n\
               0.01,18ECFF00,1,20 12 00 03 FF EC FE 00\n\
               0.06,18EBFF00,1,01 5A 5A 39 47 50 30 30\n\
               0.11,18EBFF00,1,02 52 35 35 42 31 32 33\n\
               0.16,18EBFF00,1,03 34 35 36 2A FF FF FF\n\
               0.20,18EEFF80,1,40 E2 81 25 00 00 00 80\n";
    let reader = Box::new(io::Cursor::new(log.to_owned()));
    let read =
        Readings::of(&truck.database, Recording::from_reader(reader, "truck.csv", &Options::default()).expect("a log"));
    assert_eq!(read.texts["vehicle_identification.vin"], ["ZZ9GP00R55B123456*"]);
    assert_eq!(read.of_signal("group_request.requested_group"), [(0.0, 65_260.0)]);
    assert_eq!(read.of_signal("address_claimed.manufacturer_code"), [(0.2, 300.0)]);
    assert_eq!((read.tally.messages, read.tally.carrying, read.tally.decoded), (1, 4, 3));
}

/// The long messages of the truck, whose counts come with the recording: trouble codes of the engine (14 bytes, three codes) every second, the engine's
/// configuration six times; in both, numbers that the rest of the recording knows, too.
#[test]
fn long_messages_of_a_truck_on_the_road() {
    let Some(path) = shared_recording("heavy-truck-drive.csv") else { return };
    let truck = Described::standard("heavy_duty");
    let read = Readings::of(&truck.database, Recording::open(&path, &Options::default()).expect("it can be opened"));
    assert_eq!(read.tally.messages, 44);
    assert_eq!(read.times["active_trouble_codes from 0x00"].len(), 30);
    assert_eq!(
        read.times["active_trouble_codes from 0x31"].len() + read.times["active_trouble_codes from 0x03"].len(),
        61
    );
    // The engine tells three codes, another unit two in its messages of 10 bytes: 84 is the wheel-based vehicle speed, 191 the output shaft's
    // speed, 96 the fuel level.
    let count = |element: u32, spn: f64| {
        let numbers = read.of_signal(&format!("active_trouble_codes.spn[{element}]"));
        numbers.iter().filter(|point| point.1 == spn).count()
    };
    assert_eq!(
        [(1, 191.0), (2, 84.0), (3, 5357.0), (1, 96.0)].map(|(element, spn)| count(element, spn)),
        [30, 30, 30, 2]
    );
    assert!(!read.numbers.contains_key("active_trouble_codes.spn[4]"));
    // The engine idles below the least speed that it ran at on the road, and may run faster than the greatest one.
    let (_, idle) = read.span("engine_configuration.speed_at_idle");
    let (_, high_idle) = read.span("engine_configuration.speed_at_high_idle");
    let (least, greatest) = read.span("engine_torque_and_speed.engine_speed");
    assert!(idle < least && greatest < high_idle, "{idle} {least} {greatest} {high_idle}");
    assert_eq!(read.of_signal("engine_configuration.reference_torque").len(), 6);
}
