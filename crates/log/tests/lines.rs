//! Lines of text as spreadsheets and recorders leave them.
//!
//! The lines are our own; that such lines are common is common practice, no source.

mod common;

use common::{Read, damage, read};
use wirelore_log::PlaceInLog;

/// Time, identifier, extended, data of each frame.
fn brief(log: &Read) -> Vec<(Option<i64>, u32, bool, &[u8])> {
    log.frames.iter().map(|frame| (frame.time_ns, frame.id, frame.extended, &frame.payload[..])).collect()
}

/// Reads one bad line between two good ones, and gives the words about it.
fn flaw(line: &str) -> String {
    let log = read(format!("time_s,id_hex,ext,len,data_hex,crc_ok\n0.1,110,0,1,AA,1\n{line}\n0.3,112,0,1,CC,1\n"));
    let ids: Vec<u32> = log.frames.iter().map(|frame| frame.id).collect();
    assert_eq!((&ids[..], log.report.damaged), (&[0x110, 0x112][..], 1), "{line}");
    let words = &damage(&log.report)[0];
    words.strip_prefix("line 3: ").unwrap_or_else(|| panic!("{words}")).to_owned()
}

#[test]
fn the_damage_of_one_line_is_told_and_the_others_are_kept() {
    let longer = "00".repeat(65);
    for (line, words) in [
        ("0.2,3.00E+09,0,1,BB,1", "id \"3.00E+09\" was rewritten by a spreadsheet; export the column as text"),
        ("0.2,111,0,8,1.12233E+15,1", "data \"1.12233E+15\" was rewritten by a spreadsheet; export the column as text"),
        ("1.7E+09,111,0,1,BB,1", "time \"1.7E+09\" was rewritten by a spreadsheet; export the column as text"),
        ("0.2,111,0,2,ABC,1", "data \"ABC\" has an odd number of hex digits"),
        ("0.2,111,0,2,AXBC,1", "data \"AXBC\" is not bytes of two hex digits"),
        ("0.2,111,0,2,,1", "the line says 2 data bytes and holds 0"),
        ("0.2,111,0,2,AA,1", "the line says 2 data bytes and holds 1"),
        (
            "0.2,111,0,2,11,1",
            "the line says 2 data bytes and holds 1; perhaps a spreadsheet took leading zeros away: export the column as text",
        ),
        ("0.2,111,0", "the line has 3 cells, and length is cell 4"),
        ("0.2,,0,1,BB,1", "id is empty"),
        ("0.2,xyz,0,1,BB,1", "id \"xyz\" is not a hexadecimal number"),
        ("0.2,20000000,1,1,BB,1", "id \"20000000\" is larger than 29 bits can be (1FFFFFFF)"),
        ("0.2,800,0,1,BB,1", "id \"800\" is larger than 7FF, and the line says that it is not extended"),
        ("0.2,111,maybe,1,BB,1", "extended \"maybe\" is not 1 or 0, or yes or no"),
        (
            "noon,111,0,1,BB,1",
            "time \"noon\" is not a number of time, or a date and time such as 2026-01-02T03:04:05.678Z",
        ),
        ("0.2,111,0,one,BB,1", "length \"one\" is not a whole number"),
        ("0.2,111,0,1,BB,0", "the log itself marks the checksum as wrong (\"0\")"),
        ("0.2,\"111,0,1,BB,1", "a cell begins with a quote that never ends on this line"),
        ("0.2,1\u{0}1,0,1,BB,1", "the line holds NUL bytes; perhaps the recorder lost power before it closed the file"),
        ("0.2,111,0,9,000000000000000000,1", "there are 9 data bytes, which neither a CAN nor a CAN FD frame can have"),
        (
            &format!("0.2,111,0,65,{longer},1"),
            "data \"0000000000000000000000000000000000000000...\" has more than 64 bytes",
        ),
    ] {
        assert_eq!(flaw(line), words, "{line}");
    }
}

#[test]
fn line_ends_blanks_trailing_commas_and_quotes_do_no_harm() {
    let text = "\u{FEFF}time_s , id_hex,data_hex,\r\n# a comment\n 0.1 , 110 ,  AA BB ,\r\n\n\"0.2\",\"111\",\"CC\",\n,,,\n  \r\n0.3,112,\tDD,";
    let log = read(text);
    assert_eq!(
        brief(&log),
        [
            (Some(100_000_000), 0x110, false, &[0xAA, 0xBB][..]),
            (Some(200_000_000), 0x111, false, &[0xCC][..]),
            (Some(300_000_000), 0x112, false, &[0xDD][..]),
        ]
    );
    assert_eq!((log.report.damaged, log.frames[2].place), (0, PlaceInLog::Line(8)));
    assert_eq!(log.report.notes(), ["the last line, 8, has no line end; perhaps it is cut"]);
}

#[test]
fn times_that_are_missing_or_run_backwards() {
    let log = read("time_s,id_hex,data\n2.0,1,00\n,2,00\n1.0,3,00\n3.0,4,00\n");
    assert_eq!((log.frames.len(), log.report.damaged), (4, 0));
    assert_eq!(
        log.report.notes(),
        [
            "1 of the 4 frames has no time",
            "the time goes backwards 1 time, first at line 4; the frames are kept in the order of the log"
        ]
    );
    let none = read("id_hex,data\n1,00\n2,00\n");
    assert_eq!(
        (none.frames[0].time_ns, none.report.notes()),
        (None, vec!["none of the 2 frames has a time".to_owned()])
    );
    assert_eq!(read("id_hex,data\n1,00\n").report.notes(), ["the only frame has no time"]);
}

#[test]
fn more_fields_than_headings_are_damage() {
    let log = read("time_s,id_hex,data_hex\n0.00,2F1,02,04,EC,00,00,00,00,00\n0.10,2F1,02\n0.20,2F1,03,,, \n");
    assert_eq!((log.frames.len(), log.report.frames_read()), (2, 3));
    assert_eq!(
        damage(&log.report),
        ["line 2: the line has 10 fields and the header has 3; are the data bytes set apart by commas? \
          then give each its own heading, b0 to b7, and say --columns 'data=b0..b7:hex'"]
    );
    // A field under a heading that means nothing is none too many, and a delimiter in quotes makes no field.
    let log = read("id_hex;data;note;x;\n1;00;\"a;b;c;d\";y\n2;00;a;b;c\n3;00;;;\"c\"\n4;00;a;;\n");
    assert_eq!((log.frames.len(), log.report.damaged), (2, 2));
    assert!(damage(&log.report)[0].contains("has 5 fields and the header has 4"), "{:?}", damage(&log.report));
    assert!(damage(&log.report)[1].contains("set apart by semicolons?"));
}

#[test]
fn lines_of_data_bytes_under_one_heading_can_be_read_as_the_message_says() {
    let log = read("time_s,id_hex,b0,b1,b2,b3,b4,b5,b6,b7\n0.00,2F1,02,04,EC,00,00,00,00,00\n");
    assert_eq!(log.frames[0].payload, [2, 4, 0xEC, 0, 0, 0, 0, 0]);
}

#[test]
fn lines_that_never_end_cost_one_line_and_no_memory() {
    let mut text = b"id_hex,data\n1,00\n".to_vec();
    text.resize(text.len() + 3_000_000, b'A');
    text.extend_from_slice(b"\n2,00\n");
    let log = read(&text);
    assert_eq!((log.frames.len(), log.report.damaged), (2, 1));
    assert_eq!(damage(&log.report), ["line 3: the line is longer than 64 KiB; it is skipped"]);
    assert_eq!(log.frames[1].place, PlaceInLog::Line(4));
    text.resize(text.len() + 3_000_000, 0);
    assert_eq!(read(&text).report.damaged, 2);
    let mut hollow = b"id_hex,data\n1,00\n".to_vec();
    hollow.resize(9_000, 0);
    let log = read(hollow);
    assert_eq!((log.frames.len(), log.report.damaged), (1, 1));
    assert!(damage(&log.report)[0].contains("holds NUL bytes"));
}

#[test]
fn ten_million_empty_lines() {
    let mut text = b"id_hex,data\n1,00\n".to_vec();
    text.resize(text.len() + 10_000_000, b'\n');
    text.extend_from_slice(b"2,00\n");
    let log = read(&text);
    assert_eq!((log.frames.len(), log.report.damaged, log.frames[1].place), (2, 0, PlaceInLog::Line(10_000_003)));
}

#[test]
fn a_wrong_channel_column_ends_in_words_and_not_in_memory() {
    let mut text = "channel,id_hex,data\n".to_owned();
    (0..5_000).for_each(|number| text.push_str(&format!("{number},1,00\n")));
    let log = read(&text);
    assert_eq!((log.channels.len(), log.report.damaged), (1024, 5_000 - 1024));
    assert!(damage(&log.report)[0].contains("is this column the channel?"));
}
