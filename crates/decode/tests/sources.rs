//! Several units answer under one description: each answer says which one it was, row by row and in tables.

mod both_ways;

use both_ways::{Random, compare, database};
use wirelore_decode::{Options, Setup, Source};
use wirelore_model::FrameId;

/// The identifiers of ISO 15765-4, the layout of ISO 15765-2, from memory.
const DESCRIPTION: &str = "network plug can 500 kbit/s\n\
    frame answers on plug id 0x7E8..0x7EF, carried by iso_tp { length 1..10\n\
    signal item in byte 0\n\
    signal last in byte 9\n}\n";

/// Two units answer in three frames each, mixed.
const MIXED: &str = "time_s,id_hex,ext,data_hex\n\
    0.00,7E8,0,10 0A A0 01 02 03 04 05\n\
    0.01,7E9,0,10 0A B0 11 12 13 14 15\n\
    0.02,7E9,0,21 16 17 18 19 00 00 00\n\
    0.03,7E8,0,21 06 07 08 09 00 00 00\n\
    0.04,7EA,0,01 C0 00 00 00 00 00 00\n\
    0.05,7E8,0,01 A1 00 00 00 00 00 00\n";

/// When each row of the only frame came, in hundredths of a second, and from whom.
fn sources(description: &str, log: &str) -> Vec<(i64, Option<Source>)> {
    let (rows, tally) = compare(&database(description), &Setup::default(), &Options::default(), &[log.to_owned()]);
    assert_eq!(tally.read, tally.sum_of_parts());
    rows[&FrameId(0)].iter().map(|row| (row.0.unwrap_or(-1) / 10_000_000, row.3)).collect()
}

fn identifier(id: u32, extended: bool) -> Option<Source> {
    Some(Source::Identifier { id, extended })
}

#[test]
fn units_that_answer_at_once_are_told_apart() {
    let standard = |id| identifier(id, false);
    let expected = [(2, standard(0x7E9)), (3, standard(0x7E8)), (4, standard(0x7EA)), (5, standard(0x7E8))];
    assert_eq!(sources(DESCRIPTION, MIXED), expected);
}

#[test]
fn identifiers_of_29_bits_are_told_whole() {
    let description = "network plug can 500 kbit/s\n\
        frame answers on plug id 0x18DAF100..0x18DAF1FF extended, carried by iso_tp { signal item in byte 0 }\n";
    let log = "time_s,id_hex,ext,data_hex\n0.01,18DAF110,1,01 A0\n0.02,18DAF118,1,01 B0\n";
    assert_eq!(sources(description, log), [(1, identifier(0x18DA_F110, true)), (2, identifier(0x18DA_F118, true))]);
}

/// Frames that are no messages, in such a number that they are gathered in several stretches; one identifier of its own is not told.
#[test]
fn plain_frames_of_a_run_are_told_apart() {
    let description =
        "network drive can 500 kbit/s\nframe wheels on drive id 0x200..0x203 { signal speed in byte 0 }\n";
    let mut random = Random(1);
    let ids: Vec<u32> = (0..30_000).map(|_| 0x200 + random.next(4) as u32).collect();
    let lines = (0..).zip(&ids).map(|(at, id): (u32, _)| format!("{}.{:02},{id:X},{at:016X}\n", at / 100, at % 100));
    let log = "time_s,id_hex,data_hex\n".to_owned() + &lines.collect::<String>();
    let expected: Vec<_> = (0..).zip(&ids).map(|(at, id)| (at, identifier(*id, false))).collect();
    assert!(sources(description, &log) == expected);
    let alone = "network drive can 500 kbit/s\nframe wheel on drive id 0x200 { signal speed in byte 0 }\n";
    let told = sources(alone, &log);
    assert!(
        told.len() == ids.iter().filter(|id| **id == 0x200).count() && told.iter().all(|(_, source)| source.is_none())
    );
}
