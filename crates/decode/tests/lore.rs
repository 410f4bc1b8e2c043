//! From the text of a description to values: the language, the model and the decoder mean the same.

use wirelore_decode::{
    Decoder, Encoded, Note, Options, Reading, Session, Sink, Tally, Value, encode, parse_assignment,
};
use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_model::{Database, NetworkId, SignalId};

const VAN: &str = r#"
edition 1
network drive   "Drive network" can 500 kbit/s
network comfort can 125 kbit/s
ecu gearbox on drive
ecu hub on drive, comfort

states gear_position { 0 park, 1 reverse, 2 neutral, 3..10 forward "Forward gear", 15 unknown as absent }

frame wheel_speeds on drive id 0x1B4 {
    length 8
    signal front_left   in bits 1.4..0.0 = raw * 0.05 km/h, range 0..300, absent 0x1FFF
    signal front_right  in bits 3.1..1.5 = raw * 0.05 km/h, range 0..300, absent 0x1FFF
    signal alive        in bits 6.7..6.4, counter 0..14, absent 15
    signal check        in byte 7, checksum crc8_sae_j1850 over bytes 0..6
}
frame shift_request on drive id 0x0C8 {
    sent by gearbox every 20 ms
    length 6
    signal torque_request in bytes 0..1 signed = raw * 0.1 N·m, range -500..1000
    signal target_gear    in bits 2.3..2.0, states gear_position
    signal page           in byte 3
    when page is 1 {
        signal oil_temperature in byte 4 = raw - 40 °C, absent 0xFF
    }
    when page is 2, 4..6 {
        signal line_pressure in bytes 5..4 = raw / 16 bar
    }
}
frame door on comfort id 0x300 { signal open in bit 0.0 }
gateway hub {
    pass wheel_speeds from drive to comfort as id 0x3A0, every 100 ms
    pass all from comfort to drive
}
"#;

fn database(text: &str) -> Database {
    let checked = check_text("test.lore", text);
    let told: Vec<String> = checked.diagnostics.iter().map(|diagnostic| format!("{diagnostic:?}")).collect();
    checked.database.unwrap_or_else(|| panic!("{}", told.join("\n")))
}

/// One frame's readings as text.
fn readings(database: &Database, frame: &str, payload: &[u8]) -> Vec<String> {
    let decoder = Decoder::new(database).expect("a decoder");
    let (id, frame) = database.frame_named(frame).expect("it is described");
    let mut all = Vec::new();
    decoder.decode(id, payload, |signal, reading| {
        let name = &frame.signals[signal.index()].label.name;
        let unit = decoder.unit(id, signal).map(|unit| format!(" {unit}")).unwrap_or_default();
        all.push(match (&reading.value, reading.word) {
            (Value::NoReading, word) => {
                format!("{name}: no reading {}", word.unwrap_or_default()).trim_end().to_owned()
            }
            (Value::SensorFault, _) => format!("{name}: sensor fault"),
            (value, Some(word)) => format!("{name}: {} {word}", value.number().expect("a number")),
            (value, None) => format!("{name}: {}{unit}", value.number().expect("a number")),
        });
    });
    all
}

#[test]
fn a_description_as_people_write_it_is_decoded() {
    let van = database(VAN);
    let wheels = readings(&van, "wheel_speeds", &[0xE2, 0x04, 0xFF, 0x03, 0, 0, 0xF0, 0]);
    assert_eq!(wheels[..2], ["front_left: 62.5 km/h", "front_right: 409.2 km/h"]);
    assert_eq!(wheels[2], "alive: no reading");
    assert_eq!(
        readings(&van, "shift_request", &[0xFF, 0x38, 0x04, 1, 130, 0]),
        ["torque_request: -20 N·m", "target_gear: 4 forward", "page: 1", "oil_temperature: 90 °C"]
    );
    assert_eq!(
        readings(&van, "shift_request", &[0, 0, 0x0F, 5, 0x80, 0x02]),
        ["torque_request: 0 N·m", "target_gear: no reading unknown", "page: 5", "line_pressure: 40 bar"]
    );
}

#[test]
fn passed_on_frames_are_known_where_they_arrive() {
    let van = database(VAN);
    let decoder = Decoder::new(&van).expect("a decoder");
    let network = |name: &str| van.network_named(name).map(|(id, _)| id).expect("it is described");
    let name = |network, id| decoder.find(network, id, false).map(|id| van.frames[id.index()].label.name.as_str());
    assert_eq!(name(network("drive"), 0x1B4), Some("wheel_speeds"));
    assert_eq!(name(network("comfort"), 0x3A0), Some("wheel_speeds"));
    assert_eq!(name(network("comfort"), 0x1B4), None);
    assert_eq!(name(network("drive"), 0x300), Some("door"), "everything is passed");
}

#[test]
fn what_is_encoded_is_decoded_again() {
    let van = database(VAN);
    let (id, _) = van.frame_named("shift_request").expect("it is described");
    let texts = ["torque_request=-20", "target_gear=forward", "line_pressure=40 bar"];
    let given: Vec<_> = texts.iter().map(|text| parse_assignment(&van, id, text).expect("an assignment")).collect();
    let Encoded { payload, notes } = encode(&van, id, &given).expect("it encodes");
    assert_eq!(payload, [0xFF, 0x38, 0x03, 2, 0x80, 0x02]);
    let notes: Vec<String> = notes.iter().map(ToString::to_string).collect();
    assert_eq!(
        notes,
        ["page: set to 2, because line_pressure is there only then", "bits 2.7..2.4 are not described, sent as 0",]
    );
}

/// SAE J1939-71, from memory: parameter positions, and error and not-available ranges by width.
/// A payload ends no earlier than where bytes of a stated size begin, and has as many as a given size says: else it would be read as cut off.
#[test]
fn what_was_not_given_has_the_room_that_its_size_says() {
    let database = database(
        "network drive can_fd 500 kbit/s, data 2 Mbit/s\n\
         frame song on drive id 1 {\n\
             length 1..48\n\
             signal title_length in bits 0.4..0.0\n\
             signal title in bytes 1..20 text, size title_length\n\
             signal lyrics_length in bits 0.7..0.5\n\
             signal lyrics in bytes 21..end bytes, size lyrics_length\n\
         }",
    );
    let (song, _) = database.frame_named("song").expect("it is described");
    let encoded = |assignments: &[&str]| {
        let given = assignments.iter().map(|text| parse_assignment(&database, song, text).expect("it is one"));
        encode(&database, song, &given.collect::<Vec<_>>())
    };
    let decoder = Decoder::new(&database).expect("it can be decoded");
    for (assignments, needed) in [
        (&[][..], 21),
        (&["title=Kestrel"], 21),
        (&["title=Kestrel", "lyrics=AA BB"], 23),
        (&["lyrics_length=7"], 28),
        (&["title_length=20", "lyrics_length=3"], 24),
    ] {
        let Encoded { payload, .. } = encoded(assignments).expect("it can be encoded");
        assert_eq!(payload.len(), payload_length(needed), "{assignments:?}");
        assert!(!decoder.decode(song, &payload, |_, _| {}).too_short, "{assignments:?}");
    }
    let nothing = encoded(&[]).expect("it can be encoded").notes;
    assert!(nothing.iter().all(|note| !matches!(note, Note::UnsetBytes { .. })), "{nothing:?}");
    let error = encoded(&["title_length=21"]).expect_err("there is no room");
    assert_eq!(error.to_string(), "signal `title` cannot hold 21 bytes: it has 20, and `title_length` says 21");
}

/// The lengths of CAN FD (ISO 11898-1, from memory).
fn payload_length(needed: usize) -> usize {
    [0, 1, 2, 3, 4, 5, 6, 7, 8, 12, 16, 20, 24, 32, 48, 64].into_iter().find(|length| *length >= needed).unwrap_or(64)
}

#[test]
fn a_heavy_duty_frame_has_the_special_values_of_its_standard() {
    let text = "network truck can 250 kbit/s\n\
        frame temperatures on truck pgn 65262 {\n\
            counting from 1\n\
            marks j1939\n\
            signal coolant in byte 1 = raw - 40 °C\n\
            signal fuel    in byte 2 = raw - 40 °C\n\
            signal oil     in bytes 4..3 = raw / 32 - 273 °C\n\
        }\n";
    let truck = database(text);
    assert_eq!(
        readings(&truck, "temperatures", &[0x82, 0xFF, 0x20, 0x2D, 0xFF, 0xFF, 0xFF, 0xFF]),
        ["coolant: 90 °C", "fuel: no reading", "oil: 88 °C"]
    );
    assert_eq!(readings(&truck, "temperatures", &[0xFE, 0, 0x00, 0xFE, 0, 0, 0, 0])[2], "oil: sensor fault");
    let decoder = Decoder::new(&truck).expect("a decoder");
    assert!(decoder.find(NetworkId(0), 0x18FE_EE00, true).is_some());
}

/// Keeps the least and the greatest value of every signal.
struct Extremes(Vec<Option<(f64, f64)>>);

impl Sink for Extremes {
    fn reading(&mut self, _: &wirelore_decode::Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let Some(value) = reading.value.number() else {
            return;
        };
        let slot = &mut self.0[signal.index()];
        *slot = Some(slot.map_or((value, value), |(least, most)| (least.min(value), most.max(value))));
    }
}

/// A recorded drive of a heavy truck, where it lies beside the checkout; what it holds is told in its README.
#[test]
fn a_recorded_drive_gives_the_documented_values() {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../shared/data/heavy-truck-drive.csv");
    if !path.exists() {
        eprintln!("skipped: {} is not there", path.display());
        return;
    }
    let text = "network truck can 250 kbit/s\n\
        frame speed on truck pgn 65265 { signal wheel_speed in bytes 2..1 = raw / 256 km/h, absent 0xFF00..0xFFFF, fault 0xFE00..0xFEFF }\n";
    let truck = database(text);
    let decoder = Decoder::new(&truck).expect("a decoder");
    let mut session = Session::new(&decoder, &Options::default()).expect("a session");
    let mut recording = Recording::open(&path, &wirelore_log::Options::default()).expect("a log");
    let mut extremes = Extremes(vec![None]);
    session.run(&mut recording, &mut extremes).expect("it reads");
    let (least, most) = extremes.0[0].expect("speeds");
    assert_eq!((format!("{least:.2}"), format!("{most:.2}")), ("23.20".to_owned(), "54.91".to_owned()));
    let tally: &Tally = session.tally();
    assert_eq!((tally.read, tally.sum_of_parts()), (19_957, 19_957));
    assert_eq!(tally.unknown_frames().len(), 88, "two of the 90 identifiers are this group, from two sources");
}

/// Where a curve is level at an end of the range, its values are in the range.
#[test]
fn a_level_piece_at_the_end_of_a_range_is_inside() {
    let probe = database(
        "network n can 500 kbit/s\n\
         frame f on n id 1 { signal s in byte 0 = curve { 0: 10, 5: 10, 10: 20, 15: 20, 20: 30 } °C, range 10..20 }",
    );
    let (frame, _) = probe.frame_named("f").expect("it is described");
    let decoder = Decoder::new(&probe).expect("it can be decoded");
    for raw in 0..=20 {
        let mut outside = None;
        decoder.decode(frame, &[raw], |_, reading| outside = Some(reading.outside_range));
        assert_eq!(outside, Some(raw > 15), "raw {raw}");
    }
}

/// Where all raw values are of one kind, they are of that kind.
#[test]
fn a_range_that_no_raw_value_comes_into_leaves_all_of_them_outside() {
    let far = database("network n can 500 kbit/s\nframe f on n id 1 { signal s in byte 0, range 300..400 }");
    let (frame, _) = far.frame_named("f").expect("it is described");
    let decoder = Decoder::new(&far).expect("it can be decoded");
    for raw in 0..=255 {
        let mut outside = None;
        decoder.decode(frame, &[raw], |_, reading| outside = Some(reading.outside_range));
        assert_eq!(outside, Some(true), "raw {raw}");
    }
}
