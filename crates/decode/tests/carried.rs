//! Messages that are longer than a frame, from description and recording to values, row by row and in tables.

mod common;

use common::{Rows, read};
use wirelore_model::SeenId;

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

/// A message in three frames by the layout of ISO 15765-2, identifiers and padding by ISO 15765-4, from memory; the number is invented.
const EXCHANGE: &str = "\
time_s,id_hex,data_hex
0.000,7DF,02 09 02 00 00 00 00 00
0.010,7E8,10 14 49 02 01 5A 5A 39
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
            "30000000 answers.service 73 from 0x7E8",
            "30000000 answers.item 2 from 0x7E8",
            "30000000 answers.count 1 from 0x7E8",
            "30000000 answers.vin ZZ9GP00R55B123456 from 0x7E8",
        ]
    );
    assert_eq!((tally.read, tally.messages, tally.carrying, tally.decoded, tally.message_faults), (6, 1, 4, 2, 0));
}

#[test]
fn what_is_lost_is_told_and_the_next_message_is_whole() {
    let log = EXCHANGE.replace("0.020,7E8,21 47 50 30 30 52 35 35\n", "")
        + "0.040,7E9,03 41 0D 32\n0.050,7E9,10 09 41 00 01 02 03 04\n";
    let Rows { lines, tally } = read(DIAGNOSTICS, &log);
    assert_eq!(
        lines,
        ["0 requests.service 9", "40000000 answers.service 65 from 0x7E9", "40000000 answers.item 13 from 0x7E9"]
    );
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
    let Rows { lines, tally } = read(DIAGNOSTICS, "time_s,id_hex,data_hex\n0.1,7E8,1F FF 49 02 01 5A 5A 39\n");
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
               0.05,18EBFF00,1,01 5A 5A 39 47 50 30 30\n\
               0.07,18FECA0B,1,04 FF B8 04 03 0A FF FF\n\
               0.10,18EBFF00,1,02 52 35 35 42 31 32 33\n\
               0.15,18EBFF00,1,03 34 35 36 2A FF FF FF\n";
    let Rows { lines, tally } = read(TRUCK, log);
    assert_eq!(
        lines,
        [
            "70000000 short_or_long.lamps 4 from 0x0B",
            "150000000 vehicle_identification.number ZZ9GP00R55B123456* from 0x00",
        ]
    );
    assert_eq!((tally.read, tally.messages, tally.carrying, tally.decoded), (6, 1, 4, 2));
}

/// The priority of a group is that of its short frames: the transport's own have another (SAE J1939-21, from memory).
#[test]
fn a_long_message_of_a_group_with_a_priority_is_found() {
    let truck = TRUCK.replace("pgn 65260,", "pgn 65260 priority 6,");
    let log = "time_s,id_hex,ext,data_hex\n\
               0.00,1CECFF00,1,20 0A 00 02 FF EC FE 00\n\
               0.05,1CEBFF00,1,01 5A 5A 39 47 50 30 30\n\
               0.10,1CEBFF00,1,02 52 35 2A FF FF FF FF\n";
    let Rows { lines, tally } = read(&truck, log);
    assert_eq!(lines, ["100000000 vehicle_identification.number ZZ9GP00R5* from 0x00"]);
    assert_eq!((tally.messages, tally.decoded, tally.without_description), (1, 1, 0));
}

/// The message that is not whole has the identifier of its group: with the priority of the frame at which it turned out, and at the end of
/// the log with the transport's own, 7 (SAE J1939-21, from memory).
#[test]
fn a_long_message_that_is_not_whole_is_told_with_its_group() {
    let log = "time_s,id_hex,ext,data_hex\n\
               0.00,18ECFF00,1,20 12 00 03 FF EC FE 00\n\
               0.05,18EBFF00,1,01 5A 5A 39 47 50 30 30\n\
               0.15,18EBFF00,1,03 34 35 36 2A FF FF FF\n\
               0.20,18ECFF05,1,20 12 00 03 FF EC FE 00\n";
    let Rows { lines, tally } = read(TRUCK, log);
    assert_eq!((lines.len(), tally.message_faults, tally.carrying), (0, 2, 4));
    let faults = tally.first_message_faults().iter();
    let told: Vec<_> = faults.map(|fault| (fault.id, fault.place.is_some())).collect();
    let id = |id| SeenId::Can { id, extended: true };
    assert_eq!(told, [(id(0x18FE_EC00), true), (id(0x1CFE_EC05), false)]);
}

/// Without a check byte nothing proves what is found by searching behind damage.
#[test]
fn a_telegram_behind_damage_counts_only_with_a_check_byte() {
    let seat = |check: &str| {
        format!(
            "network seat uart 9600 bit/s, source byte 0, size byte 1 counts from byte 2, target byte 2{check}\n\
             frame state on seat from 0x10 to 0x44 {{ signal height in byte 0 }}\n"
        )
    };
    // A size that cannot be, then a message, with and without the exclusive or of its bytes.
    let header = "time_s,data\n0.000,10\n0.001,00\n0.002,10\n";
    let checked = format!("{header}0.003,03\n0.004,44\n0.005,07\n0.006,50\n");
    let Rows { lines, tally } = read(&seat(", xor byte last"), &checked);
    assert_eq!((lines.len(), tally.decoded), (1, 1), "{:?}", tally.first_message_faults());
    let unchecked = format!("{header}0.003,02\n0.004,44\n0.005,07\n");
    let Rows { lines, tally } = read(&seat(""), &unchecked);
    let faults: Vec<&str> = tally.first_message_faults().iter().map(|fault| fault.what.as_str()).collect();
    assert_eq!((lines.len(), tally.messages, faults.len()), (0, 0, 2), "{faults:?}");
    assert_eq!(faults[1], "bytes behind damaged ones look like a message, and no check byte proves it");
    // The same message behind a pause needs no proof.
    let Rows { tally, .. } = read(&seat(""), "time_s,data\n0.5,10\n0.501,02\n0.502,44\n0.503,07\n");
    assert_eq!((tally.decoded, tally.message_faults), (1, 0));
}

/// The first part is one that was recorded on a real ring and is printed on the page "How Most control messages work" at
/// moderndaymods.com; how it goes on is invented.
#[test]
fn a_title_comes_in_three_parts() {
    let ring = "\
network sound most 25 Mbit/s
frame title on sound function 0x31.any.0x420 operation status {
    signal track in byte 2
    signal text in bytes 3..end text
}
frame seconds on sound function 0x31.0x02.0x201 { signal count in byte 5 }
";
    let log = "\
time_s,id,part,data
0.000,31.02.420.C,1,00060001526573746C657373
0.001,31.02.201.C,0,0200000000BF
0.002,31.02.420.C,2,0120736561
0.003,31.02.420.C,3,0221
0.010,31.02.420.C,1,00060001
0.011,31.02.420.C,3,0241
0.020,31.02.420.C,1,00060001
";
    let Rows { lines, tally } = read(ring, log);
    assert_eq!(lines, ["1000000 seconds.count 191", "3000000 title.track 1", "3000000 title.text Restless sea!"]);
    let faults: Vec<String> =
        tally.first_message_faults().iter().map(|fault| format!("{:?} {}", fault.place, fault.what)).collect();
    assert_eq!(
        faults,
        [
            "Some(Line(7)) a part has number 2, and part 1 with number 1 was due: parts were lost or changed places",
            "None the log ends after 3 bytes, before the last part",
        ]
    );
    assert_eq!((tally.read, tally.messages, tally.carrying, tally.decoded), (8, 1, 6, 2));
}

/// A frame on both channels of FlexRay comes twice in a cycle: its counter is right on each of them. Null frames have no values.
#[test]
fn both_channels_of_flexray_count_for_themselves() {
    let chassis = "\
network chassis flexray 10 Mbit/s, cycle 5 ms, static slots 62 of 2 bytes
frame state on chassis slot 7 from cycle 1 every 2nd {
    length 2
    signal count in byte 0, counter 0..255
}
";
    let mut log = String::from("time_s,slot,cycle,flexray_channel,indicators,data\n");
    for cycle in 0..10 {
        let indicators = if cycle == 9 { "00000" } else { "00100" };
        for channel in ["A", "B"] {
            log += &format!("0.{:03},7,{cycle},{channel},{indicators},{:02X}00\n", 5 * cycle, cycle / 2);
        }
    }
    let Rows { lines, tally } = read(chassis, &log);
    assert_eq!(
        (tally.decoded, tally.null, tally.without_description),
        (8, 2, 10),
        "cycles 1, 3, 5 and 7; 9; the even ones"
    );
    assert_eq!((tally.counters.first, tally.counters.right, tally.counters.repeated), (2, 6, 0));
    assert_eq!(lines[..2], ["5000000 state.count 0", "5000000 state.count 0"]);
    assert_eq!(tally.unknown_frames().len(), 10);
}
