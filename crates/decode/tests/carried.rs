//! Messages that are longer than a frame, from description and recording to values, row by row and in tables.

mod common;

use common::{Rows, read};

const DIAGNOSTICS: &str = "\
network test can 500 kbit/s
frame requests on test id 0x7DF { signal service in byte 1 }
frame requests_to_engine on test id 0x7E0, carried by iso_tp { signal service in byte 0 }
frame answers on test id 0x7E8..0x7EF, carried by iso_tp {
    length 1..200
    signal service in byte 0
    signal item in byte 1
    when service is 0x49 and item is 2 {
        signal count in byte 2
        signal vin in bytes 3..19 text
    }
}
";

/// The exchange that a manual of ISO 15765-4 diagnostics prints (identifiers and padding from memory).
const EXCHANGE: &str = "\
time_s,id_hex,data_hex
0.000,7DF,02 09 02 00 00 00 00 00
0.010,7E8,10 14 49 02 01 31 44 34
0.011,7E0,30 00 00 00 00 00 00 00
0.020,7E8,21 47 50 30 30 52 35 35
0.030,7E8,22 42 31 32 33 34 35 36
";

#[test]
fn a_vehicle_identification_number_comes_in_three_frames() {
    let Rows { lines, tally } = read(DIAGNOSTICS, EXCHANGE);
    assert_eq!(
        lines,
        [
            "0 requests.service 9",
            "30000000 answers.service 73",
            "30000000 answers.item 2",
            "30000000 answers.count 1",
            "30000000 answers.vin 1D4GP00R55B123456",
        ]
    );
    assert_eq!((tally.read, tally.messages, tally.carrying, tally.decoded, tally.message_faults), (6, 1, 4, 2, 0));
}

#[test]
fn what_is_lost_is_told_and_the_next_message_is_whole() {
    let log = EXCHANGE.replace("0.020,7E8,21 47 50 30 30 52 35 35\n", "")
        + "0.040,7E9,03 41 0D 32\n0.050,7E9,10 09 41 00 01 02 03 04\n";
    let Rows { lines, tally } = read(DIAGNOSTICS, &log);
    assert_eq!(lines, ["0 requests.service 9", "40000000 answers.service 65", "40000000 answers.item 13"]);
    let faults: Vec<String> =
        tally.first_message_faults().iter().map(|fault| format!("{:?} {}", fault.place, fault.what)).collect();
    assert_eq!(
        faults,
        [
            "Some(Line(5)) frame 1 of the message has number 2, and 1 was due: frames were lost or changed places",
            "None the log ends after 6 of 9 bytes",
        ]
    );
    assert_eq!(tally.message_faults, 2);
}

#[test]
fn a_longer_message_than_described_is_refused() {
    let Rows { lines, tally } = read(DIAGNOSTICS, "time_s,id_hex,data_hex\n0.1,7E8,1F FF 49 02 01 31 44 34\n");
    assert_eq!(lines, [""; 0]);
    assert!(tally.first_message_faults()[0].what.contains("announces 4095 bytes, and messages of at most 200"));
}

const TRUCK: &str = "\
network truck can 250 kbit/s
frame vehicle_identification on truck pgn 65260, carried by j1939_tp {
    signal number in bytes 0..end text
}
frame short_or_long on truck pgn 65226, carried by j1939_tp {
    length 2..1785
    marks j1939
    signal lamps in byte 0, absent 0xFF
}
";

/// SAE J1939-21, from memory: the broadcast of 18 bytes; the group in a frame of its own beside it.
#[test]
fn a_broadcast_and_a_frame_of_the_same_group() {
    let log = "time_s,id_hex,ext,data_hex\n\
               0.00,18ECFF00,1,20 12 00 03 FF EC FE 00\n\
               0.05,18EBFF00,1,01 31 44 34 47 50 30 30\n\
               0.07,18FECA0B,1,04 FF B8 04 03 0A FF FF\n\
               0.10,18EBFF00,1,02 52 35 35 42 31 32 33\n\
               0.15,18EBFF00,1,03 34 35 36 2A FF FF FF\n";
    let Rows { lines, tally } = read(TRUCK, log);
    assert_eq!(
        lines,
        ["70000000 short_or_long.lamps 4 from 11", "150000000 vehicle_identification.number 1D4GP00R55B123456* from 0",]
    );
    assert_eq!((tally.read, tally.messages, tally.carrying, tally.decoded), (6, 1, 4, 2));
}
