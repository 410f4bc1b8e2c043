//! Answers that say several things, one behind the other: each of them is a row, frame by frame and in tables.

mod both_ways;
mod common;

use std::fmt::Write;
use std::time::{Duration, Instant};

use both_ways::{Random, compare, database};
use common::{Rows, read};
use wirelore_decode::{Decoder, Options, Setup, encode, parse_assignment};
use wirelore_model::FrameId;
use wirelore_transport::iso_tp::{Layout, segment};

/// The services 01 and 02 of ISO 15031-5 and 22 of ISO 14229-1 (from memory), cut down to what is asked here.
const ANSWERS: &str = "\
network plug can 500 kbit/s
layout data {
    when pid is 0x01 {
        length 4
        signal lamp in bit 0.7 flag
        signal has_misfire in bit 1.0 flag
        when has_misfire is 1 { signal misfire in bit 1.4 flag }
        otherwise {}
    }
    when pid is 0x05 { signal coolant in byte 0 = raw - 40 °C }
    when pid is 0x0C { signal engine_speed in bytes 0..1 = raw / 4 rpm }
    when pid is 0x0D { signal vehicle_speed in byte 0 = raw km/h }
    when pid is 0x10 { signal air_flow in bytes 0..1 = raw / 100 g/s }
    when pid is 0x11 { signal throttle in byte 0 = raw * 100/255 % }
    when pid is 0x66 {
        length 5
        signal has_a in bit 0.0 flag
        when has_a is 1 { signal flow_a in bytes 1..2 = raw / 32 g/s }
        otherwise {}
    }
}
frame answers on plug id 0x7E8, carried by iso_tp {
    signal service in byte 0
    when service is 0x41 {
        repeat from byte 1 to end as rows {
            signal pid in byte 0
            use layout data at byte 1
        }
    }
    when service is 0x42 {
        repeat from byte 1 to end as rows {
            signal freeze_pid in byte 0
            signal freeze_number in byte 1
            use layout data at byte 2 prefix freeze_
        }
    }
    when service is 0x62 {
        repeat from byte 1 to end as rows {
            signal identifier in bytes 0..1
            when identifier is 0xF190 { signal vin in bytes 2..18 text }
            when identifier is 0xF18C { signal serial in bytes 2..end text }
            when identifier is 0xF1A0 {
                signal name_length in byte 2
                signal name in bytes 3..end text, size name_length
            }
            when identifier is 0xF1A1 {
                signal count in byte 2
                repeat from byte 3 count times, up to 3 { signal part in bytes 0..1 }
            }
            when identifier is 0xF1A2 {
                repeat from byte 2 to end, up to 9 { signal further in byte 0 }
            }
        }
    }
    when service is 0x7F {
        length 3
        signal refused in byte 1
        signal refusal in byte 2
    }
}
";

/// A text log of one message, in its frames.
fn log(message: &[u8]) -> String {
    let mut text = "time_s,id_hex,data_hex\n".to_owned();
    push(&mut text, 0, 0x7E8, message);
    text
}

fn push(text: &mut String, number: usize, id: u32, message: &[u8]) {
    let cut = segment(message, &Layout::default(), &mut |frame: &[u8]| {
        let data: String = frame.iter().map(|byte| format!("{byte:02X}")).collect();
        let _ = writeln!(text, "{}.{:04},{id:X},{data}", number / 10_000, number % 10_000);
    });
    cut.expect("a message that can be sent");
}

fn bytes(hex: &str) -> Vec<u8> {
    hex.split_whitespace().map(|pair| u8::from_str_radix(pair, 16).expect("two digits")).collect()
}

/// What a message says, without time and frame, and how many rows it has beyond the first.
fn said(hex: &str) -> (Vec<String>, u64) {
    let Rows { lines, tally } = read(ANSWERS, log(&bytes(hex)));
    assert_eq!(tally.read, tally.carrying + 1 + tally.further_rows);
    let lines = lines.iter().filter_map(|line| line.strip_prefix("0 answers.").map(str::to_owned));
    (lines.collect(), tally.further_rows)
}

/// The layout of ISO 15031-5 (from memory); 1726 rpm and 50 km/h follow from its formulas by hand.
#[test]
fn two_pids_in_one_answer() {
    let expected = ["service 65", "pid 12", "engine_speed 1726", "service 65", "pid 13", "vehicle_speed 50"];
    assert_eq!(said("41 0C 1A F8 0D 32"), (expected.map(str::to_owned).to_vec(), 1));
}

#[test]
fn six_pids_in_several_frames() {
    let (lines, further) = said("41 01 81 01 00 00 05 7B 0C 1A F8 0D 32 10 01 99 66 00 00 00 00 00");
    let told: Vec<&str> = lines.iter().map(String::as_str).filter(|line| *line != "service 65").collect();
    assert_eq!(
        told,
        [
            "pid 1",
            "lamp 1",
            "has_misfire 1",
            "misfire 0",
            "pid 5",
            "coolant 83",
            "pid 12",
            "engine_speed 1726",
            "pid 13",
            "vehicle_speed 50",
            "pid 16",
            "air_flow 4.09",
            "pid 102",
            "has_a 0"
        ]
    );
    assert_eq!((lines.len() - told.len(), further), (6, 5), "service 41 is told with each");
}

#[test]
fn an_unknown_pid_takes_the_rest_and_is_told() {
    let Rows { lines, tally } = read(ANSWERS, log(&bytes("41 0D 32 A9 01 0D 33")));
    assert_eq!(
        lines.iter().map(|line| line.trim_start_matches("0 answers.")).collect::<Vec<_>>(),
        ["service 65", "pid 13", "vehicle_speed 50", "service 65", "pid 169"]
    );
    let [(_, unmatched, 1)] = tally.unmatched_values()[..] else { panic!("{:?}", tally.unmatched_values()) };
    assert_eq!((unmatched.number, tally.decoded, tally.too_short, tally.further_rows), (Some(0xA9), 2, 0, 1));
}

#[test]
fn a_cut_element_is_too_short_and_the_ones_before_are_not() {
    let Rows { lines, tally } = read(ANSWERS, log(&bytes("41 0D 32 0C 1A")));
    assert_eq!(
        lines[2..],
        ["0 answers.vehicle_speed 50", "0 answers.service 65", "0 answers.pid 12", "0 answers.engine_speed TooShort"]
    );
    assert_eq!((tally.decoded, tally.too_short, tally.further_rows), (1, 1, 1));
    // PID 01 has four bytes, however few of them are described.
    let Rows { tally, .. } = read(ANSWERS, log(&bytes("41 0D 32 01 00 00")));
    assert_eq!((tally.decoded, tally.too_short, tally.further_rows), (1, 1, 1));
    // Nothing behind the service: one row, and that is too short.
    let Rows { tally, .. } = read(ANSWERS, log(&bytes("41")));
    assert_eq!((tally.decoded, tally.too_short, tally.further_rows), (0, 1, 0));
}

#[test]
fn freeze_frames_have_their_number_behind_each_pid() {
    let (lines, further) = said("42 0C 00 1A F8 0D 00 32");
    let told: Vec<&str> = lines.iter().map(String::as_str).filter(|line| *line != "service 66").collect();
    assert_eq!(
        told,
        [
            "freeze_pid 12",
            "freeze_number 0",
            "freeze_engine_speed 1726",
            "freeze_pid 13",
            "freeze_number 0",
            "freeze_vehicle_speed 50"
        ]
    );
    assert_eq!(further, 1);
}

/// ISO 14229-1, service 22 (from memory); the number is invented.
#[test]
fn two_data_identifiers() {
    let vin = "5A 5A 39 47 50 30 30 52 35 35 42 31 32 33 34 35 36";
    let (lines, further) = said(&format!("62 F1 90 {vin} F1 8C 53 31"));
    let expected = ["identifier 61840", "vin ZZ9GP00R55B123456", "identifier 61836", "serial S1"];
    assert_eq!(lines.into_iter().filter(|line| line != "service 98").collect::<Vec<_>>(), expected);
    assert_eq!(further, 1);
    // What is as long as a signal says, and a list with its count: the next begins behind them.
    let (lines, further) = said("62 F1 A0 02 41 42 F1 A1 02 00 01 00 02 F1 A0 00 F1 A2 07 08");
    let expected = [
        "identifier 61856",
        "name_length 2",
        "name AB",
        "identifier 61857",
        "count 2",
        "part[1] 1",
        "part[2] 2",
        "identifier 61856",
        "name_length 0",
        "name ",
        "identifier 61858",
        "further[1] 7",
        "further[2] 8",
    ];
    assert_eq!(lines.into_iter().filter(|line| line != "service 98").collect::<Vec<_>>(), expected);
    assert_eq!(further, 3);
}

#[test]
fn other_pages_of_the_frame_are_as_ever() {
    let (lines, further) = said("7F 01 12");
    assert_eq!((lines.join(", ").as_str(), further), ("service 127, refused 1, refusal 18", 0));
    let Rows { tally, .. } = read(ANSWERS, log(&bytes("7F 01")));
    assert_eq!((tally.too_short, tally.further_rows), (1, 0));
}

/// Rows put one behind the other, each without the bytes in front, are the payload.
#[test]
fn no_byte_is_lost() {
    let database = database(ANSWERS);
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut random = Random(11);
    let (mut several, pids) = (0, [0x01, 0x05, 0x0C, 0x0D, 0x10, 0x11, 0x66, 0x42, 0x99]);
    for _ in 0..20_000 {
        let length = random.next(30) as usize;
        let mut payload: Vec<u8> = (0..length).map(|_| pids[random.next(9) as usize]).collect();
        if let Some(service) = payload.first_mut() {
            *service = [0x41, 0x42, 0x62, 0x7F, 0x00][random.next(5) as usize];
        }
        let mut rows = decoder.rows(FrameId(0), &payload);
        let mut joined = rows.next_row().expect("there is always a first one").to_vec();
        let mut count = 1;
        while let Some(row) = rows.next_row() {
            assert_eq!(row.first(), payload.first());
            joined.extend_from_slice(&row[1..]);
            count += 1;
        }
        several += u32::from(count > 1);
        assert_eq!(joined, payload);
        // What is decoded without asking for rows is the first one.
        let readings = |payload: &[u8]| {
            let mut told = Vec::new();
            let outcome =
                decoder.decode(FrameId(0), payload, |signal, reading| told.push(format!("{signal:?} {reading:?}")));
            (told, outcome)
        };
        let first = decoder.rows(FrameId(0), &payload).next_row().expect("a first one").to_vec();
        assert_eq!(readings(&payload), readings(&first));
    }
    assert!(several > 3_000, "{several}");
}

#[test]
fn tables_have_the_rows_that_frames_have() {
    let database = database(ANSWERS);
    let (mut random, mut text) = (Random(12), "time_s,id_hex,data_hex\n".to_owned());
    let elements = ["01 81 01 00 00", "05 7B", "0C 1A F8", "0D 32", "10 01 99", "11 33", "66 01 00 20 00 00", "A9 01"];
    let items =
        ["F1 90 5A 5A 39 47 50 30 30 52 35 35 42 31 32 33 34 35 36", "F1 A0 02 41 42", "F1 A1 01 00 07", "F1 8C 53"];
    for number in 0..3_000 {
        let mut message = match random.next(3) {
            0 => "41".to_owned(),
            1 => "62".to_owned(),
            _ => "42".to_owned(),
        };
        for _ in 0..random.next(7) {
            let element = match message.as_bytes()[..2] {
                [b'4', b'1'] => elements[random.next(8) as usize].to_owned(),
                [b'4', b'2'] => elements[random.next(8) as usize].replacen(' ', " 00 ", 1),
                _ => items[random.next(4) as usize].to_owned(),
            };
            message = format!("{message} {element}");
        }
        let mut message = bytes(&message);
        if random.next(5) == 0 {
            message.truncate(1 + random.next(message.len() as u64) as usize);
        }
        push(&mut text, number, 0x7E8, &message);
    }
    let (tables, tally) = compare(&database, &Setup::default(), &Options::default(), &[text]);
    assert!(tally.further_rows > 3_000 && tally.too_short > 100 && tally.unmatched_selectors > 100, "{tally:?}");
    assert_eq!(tables[&FrameId(0)].len() as u64, tally.messages + tally.further_rows);
}

/// In a frame that nothing carries, and where only a signal in front of the group is wanted.
#[test]
fn plain_frames_give_rows_too() {
    let text = "network n can 500 kbit/s\n\
                frame doors on n id 0x2A0 {\n\
                    length 8\n\
                    signal state in byte 0\n\
                    repeat from byte 2 to end as rows, size 2 bytes { signal position in byte 0, absent 0xFF }\n\
                }\n";
    let Rows { lines, tally } = read(text, "time_s,id_hex,data_hex\n0.5,2A0,07 00 01 00 FF 00 03 00\n");
    let told: Vec<&str> = lines.iter().map(|line| line.trim_start_matches("500000000 doors.")).collect();
    assert_eq!(told, ["state 7", "position 1", "state 7", "position NoReading", "state 7", "position 3"]);
    assert_eq!((tally.read, tally.decoded, tally.further_rows, tally.no_reading), (3, 3, 2, 1));
}

#[test]
fn an_element_that_never_ends_is_the_last() {
    let text = "network n can_fd 500 kbit/s\n\
                frame f on n id 1 { signal kind in byte 0\n repeat from byte 1 to end as rows { when kind is 2 { signal a in byte 0 } } }\n";
    let database = database(text);
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut rows = decoder.rows(FrameId(0), &[1, 2, 3, 4]);
    assert_eq!((rows.next_row().map(<[u8]>::len), rows.next_row()), (Some(4), None));
}

/// Messages as long as ISO 15765-2 announces without escape, of the smallest elements there are.
#[test]
fn thousands_of_elements_take_bounded_time() {
    let text = "network n can 500 kbit/s\n\
                frame f on n id 0x7E8, carried by iso_tp { length 1..1000000\n signal a in byte 0\n\
                repeat from byte 64 to end as rows { signal b in byte 0 } }\n";
    let Rows { lines, tally } = read(text, log(&vec![7; 4095]));
    assert_eq!((lines.len(), tally.further_rows), (2 * (4095 - 64), 4095 - 64 - 1));
    let database = database(text);
    let decoder = Decoder::new(&database).expect("a decoder");
    let (payload, begin) = (vec![7; 1_000_000], Instant::now());
    let mut rows = decoder.rows(FrameId(0), &payload);
    let mut count = 0;
    while let Some(row) = rows.next_row() {
        assert_eq!(row.len(), 65);
        count += 1;
    }
    assert_eq!(count, 1_000_000 - 64);
    assert!(begin.elapsed() < Duration::from_secs(20), "{:?}", begin.elapsed());
}

#[test]
fn one_element_is_encoded() {
    let database = database(ANSWERS);
    let given = |words: &[&str]| -> Vec<_> {
        words.iter().map(|word| parse_assignment(&database, FrameId(0), word).expect("it is given well")).collect()
    };
    let encoded = encode(&database, FrameId(0), &given(&["service=0x41", "engine_speed=1726 rpm"])).expect("it fits");
    assert_eq!(encoded.payload, bytes("41 0C 1A F8"));
    let encoded = encode(&database, FrameId(0), &given(&["service=0x41", "pid=1", "lamp=1"])).expect("it fits");
    assert_eq!(encoded.payload, bytes("41 01 80 00 00 00"));
    let told: Vec<String> = encoded.notes.iter().map(ToString::to_string).collect();
    assert!(!told.iter().any(|note| note.contains("further")), "{told:?}");
}

#[test]
fn an_encoded_frame_with_room_for_more_elements_says_so() {
    let group = "repeat from byte 1 to end as rows { signal x in byte 1 }";
    let text = format!("network plug can\nframe f on plug id 1 {{\n    length 8\n    {group}\n}}\n");
    let database = database(&text);
    let given = [parse_assignment(&database, FrameId(0), "x=3").expect("it is given well")];
    let encoded = encode(&database, FrameId(0), &given).expect("it fits");
    assert_eq!(encoded.payload, bytes("00 00 03 00 00 00 00 00"));
    let told: Vec<String> = encoded.notes.iter().map(ToString::to_string).collect();
    assert!(told.iter().any(|note| note.contains("ends before byte 3")), "{told:?}");
}
