//! Delimited text: headings, told columns, and how numbers are written.
//!
//! The lines are our own; that such lines are common is common practice, no source.

mod common;

use common::{Read, damage, read, read_with, refusal};
use wirelore_log::{Channel, ColumnMap, Kind, Options, PlaceInLog};

fn columns(map: &str) -> Options {
    Options { columns: Some(ColumnMap::parse(map).unwrap_or_else(|error| panic!("{error}"))), ..Options::default() }
}

fn read_as(text: &str, options: &Options) -> Read {
    read_with(text, options).unwrap_or_else(|error| panic!("{error}"))
}

/// Time, identifier, extended, data of each frame.
fn brief(log: &Read) -> Vec<(Option<i64>, u32, bool, &[u8])> {
    log.frames.iter().map(|frame| (frame.time_ns, frame.id, frame.extended, &frame.payload[..])).collect()
}

#[test]
fn common_headings_with_every_delimiter() {
    for (text, delimiter) in [
        ("Time [ms];CAN ID (hex);Data", ';'),
        ("time_ms\tid_hex\tdata_hex", '\t'),
        ("T (ms),Identifier hex,Payload", ','),
    ] {
        let text = format!("{text}\n1.5{delimiter}7FF{delimiter}01 FF\n2{delimiter}00000800{delimiter}\n");
        assert_eq!(
            brief(&read(&text)),
            [(Some(1_500_000), 0x7FF, false, &[1, 0xFF][..]), (Some(2_000_000), 0x800, true, &[][..]),],
            "{text}"
        );
    }
}

#[test]
fn channels_lengths_and_flags() {
    let text = "bus,id_hex,ext,rtr,fd,brs,esi,dlc,data\n\
                drive,123,0,0,0,0,0,2,AABB\n\
                comfort,123,yes,0,1,1,0,9,000102030405060708090A0B\n\
                drive,7E8,no,1,,,,4,\n\
                \"b, 2\",7E8,0,0,0,0,0,15,0102030405060708\n";
    let log = read(text);
    assert_eq!(damage(&log.report), [""; 0]);
    assert_eq!(log.channels, ["drive", "comfort", "b, 2"]);
    let [first, second, third, fourth] = &log.frames[..] else { panic!("{log:?}") };
    assert_eq!((first.channel, first.extended, first.fd, first.dlc), (Channel(0), false, false, Some(2)));
    assert_eq!((second.channel, second.extended, second.dlc), (Channel(1), true, Some(9)));
    assert_eq!((second.fd, second.bit_rate_switch, second.error_state, second.payload.len()), (true, true, false, 12));
    assert_eq!((third.kind, third.dlc, third.time_ns), (Kind::Remote, Some(4), None));
    assert_eq!((fourth.channel, fourth.dlc, fourth.fd), (Channel(2), Some(15), false));
    assert_eq!(fourth.place, PlaceInLog::Line(5));
}

#[test]
fn data_bytes_in_columns_of_their_own() {
    let log = read("time_s,id_hex,b0,b1,b2\n0,1,0A,1,FF\n0,2,01,,\n0,3\n0,4,01,,03\n0,5,1FF,,\n");
    assert_eq!(
        brief(&log)[..3],
        [(Some(0), 1, false, &[0x0A, 1, 0xFF][..]), (Some(0), 2, false, &[1][..]), (Some(0), 3, false, &[][..]),]
    );
    assert_eq!(
        damage(&log.report),
        ["line 5: data byte 1 is empty, and later ones are not", "line 6: data \"1FF\" is not bytes of two hex digits",]
    );
    let decimal = read("id_hex,data1,data2\n1,10,255\n");
    assert_eq!(decimal.frames[0].payload, [10, 255]);
    assert!(refusal("id_hex,data0,data1\n1,10,20\n").contains("--columns 'data=data0..data1:hex'"));
    assert!(refusal("id_hex,data0,data2\n1,10,20\n").contains("do not follow each other"));
}

#[test]
fn a_base_that_is_not_told_is_proved_for_the_whole_column() {
    for (ids, wanted) in [
        (["110", "18FEF100"], [0x110, 0x18FE_F100]),
        (["110", "012"], [0x110, 0x12]),
        (["00000110", "550"], [0x110, 0x550]),
        (["272", "419361024"], [272, 419_361_024]),
        // Ten digits are more than hexadecimal identifiers have: a leading zero there proves nothing.
        (["272", "0419361024"], [272, 419_361_024]),
        (["0000000272", "0419361024"], [272, 419_361_024]),
        (["0x110", "0x550"], [0x110, 0x550]),
    ] {
        let log = read(format!("id,data\n{},00\n{},00\n", ids[0], ids[1]));
        assert_eq!(log.frames.iter().map(|frame| frame.id).collect::<Vec<_>>(), wanted, "{ids:?}");
    }
    let told_standard = read("id,ext,data\n1365,0,00\n110,0,00\n");
    assert_eq!((told_standard.frames[0].id, told_standard.frames[1].id), (1365, 110));
    assert_eq!(
        told_standard.report.notes(),
        ["the ids are read as decimal, as \"1365\" on line 2 is", "none of the 2 frames has a time"]
    );
}

#[test]
fn a_base_that_is_not_proved_is_asked_for() {
    assert!(
        refusal("id,data\n110,00\n550,00\n").contains("say it with --columns 'id=id:hex' or --columns 'id=id:dec'")
    );
    assert!(refusal("can id,data\n110,00\n").contains("--columns 'id=can id:hex'"));
    assert!(
        refusal("id,data\n7FF,00\n419361024,00\n").contains("hexadecimal on line 2 (\"7FF\") and decimal on line 3")
    );
    let log = read_as("id,data\n110,00\n550,00\n", &columns("id=id:hex"));
    assert_eq!((log.frames[0].id, log.frames[1].id), (0x110, 0x550));
    assert!(refusal("id,data\n7FF,00\n0419361024,00\n").contains("decimal on line 3 (\"0419361024\")"));
    // A damaged cell proves nothing, nor does a damaged line.
    assert!(refusal("id,data\n110,00\n7FF,00,00\n").contains("can be hexadecimal or decimal"));
    assert!(refusal("id,data\n110,00\n3.00E+09,00\n").contains("can be hexadecimal or decimal"));
}

#[test]
fn a_unit_of_time_that_is_not_told_is_proved_or_asked_for() {
    let seconds = read("time,id_hex,data\n1000.5,1,00\n");
    assert_eq!(seconds.frames[0].time_ns, Some(1_000_500_000_000));
    assert_eq!(
        seconds.report.notes(),
        ["the times are read as seconds, as \"1000.5\" on line 2 has decimals; if they are milliseconds, say \
          --columns 'time=time:ms'"]
    );
    assert!(read("time_s,id_hex,data\n1000.5,1,00\n").report.notes().is_empty());
    assert_eq!(read("time;id_hex;data\n1,5;1;00\n").frames[0].time_ns, Some(1_500_000_000));
    let date = read("timestamp,id_hex,data\n2023-11-14T22:13:20.25Z,1,00\n");
    assert_eq!(date.frames[0].time_ns, Some(1_700_000_000_250_000_000));
    assert!(date.report.notes().is_empty());
    let asked = "say it with --columns 'time=time:s', 'time=time:ms', 'time=time:us' or 'time=time:ns'";
    assert!(refusal("time,id_hex,data\n1500,1,00\n").contains(asked));
    assert!(refusal("time,id_hex,data\n1700000000250000000,1,00\n").contains(asked));
    assert!(refusal("time:,id_hex,data\n1500,1,00\n").contains("'time=\"time:\":s'"));
    assert_eq!(read_as("time,id_hex,data\n1500,1,00\n", &columns("time=time:us")).frames[0].time_ns, Some(1_500_000));
}

#[test]
fn times_of_day_are_refused_and_can_be_left_out() {
    let text = "time,id_hex,data\n07:41:17.400,1,00\n07:41:17.500,2,00\n";
    for text in [text.to_owned(), text.replace("time,", "time_s,")] {
        let error = refusal(&text);
        assert!(error.contains("\"07:41:17.400\" on line 2 is a time of day, which is not read"), "{error}");
    }
    assert!(refusal(text).contains("--columns 'skip=time'"));
    let log = read_as(text, &columns("skip=time"));
    assert_eq!(brief(&log), [(None, 1, false, &[0][..]), (None, 2, false, &[0][..])]);
    // One such cell among numbers is only damage.
    let log = read("time_s,id_hex,data\n07:41:17.400,1,00\n1.0,2,00\n");
    assert_eq!((log.frames.len(), log.report.damaged), (1, 1));
}

#[test]
fn ids_that_all_have_eight_digits_raise_a_doubt_where_some_are_small() {
    let words = "every id has eight hex digits, so those below 800 are taken as extended too (in 1 frame)";
    let doubted = |text: &str| read(text).report.notes().iter().any(|note| note.starts_with(words));
    assert!(doubted("time_s,id_hex,data\n0,00000123,00\n1,18FEF100,00\n"));
    assert!(doubted("time_s,id,data\n0,0x000007FF,00\n"));
    assert!(!doubted("time_s,id_hex,data\n0,00000123,00\n1,7FF,00\n"));
    assert!(!doubted("time_s,id_hex,data\n0,00000800,00\n1,18FEF100,00\n"));
    assert!(!doubted("time_s,id_hex,ext,data\n0,00000123,0,00\n1,00000124,1,00\n"));
    assert!(!doubted("time_s,id_dec,data\n0,00000123,00\n"));
}

#[test]
fn told_columns() {
    let log = read_as(
        "When,Ident,b0,b1,Where\n250,123,AA,BB,x\n",
        &columns("time=when:ms, id=ident:hex, data=b0..b1:hex, channel=\"where\""),
    );
    assert_eq!(brief(&log), [(Some(250_000_000), 0x123, false, &[0xAA, 0xBB][..])]);
    assert_eq!(log.channels, ["x"]);
    // What is not told is known by its heading.
    let log = read_as("time_ms,first id,id,data\n1,100,200,AA\n", &columns("id=first id:dec"));
    assert_eq!(brief(&log), [(Some(1_000_000), 100, false, &[0xAA][..])]);
}

#[test]
fn told_columns_that_are_not_there() {
    let error = read_with("a,b\n1,2\n", &columns("id=c:hex")).expect_err("no such column").to_string();
    assert!(error.contains("no column is called \"c\"; the columns are \"a\", \"b\""), "{error}");
    let error = refusal("a,b\n1,2\n");
    assert!(error.contains("no column is known as the id") && error.contains("--columns"), "{error}");
    assert!(
        refusal("time_s,timestamp_ms,id_hex,data\n").contains("both \"time_s\" and \"timestamp_ms\" can be the time")
    );
    assert!(refusal("# only\n\n# comments\n").contains("neither empty nor a comment"));
    assert!(refusal("id_hex,data\r1,00\r").contains("lone carriage return"));
}

#[test]
fn column_maps_that_are_wrong() {
    for (map, at, words) in [
        ("id", 1, "not of the form role=heading"),
        ("time=a:s, di=b", 11, "'di' is no role"),
        ("id=a:octal", 1, "':octal' cannot stand behind id; what can is hex or dec"),
        ("time=a:hex", 1, "what can is s, ms, us or ns"),
        ("id=a, id=b", 7, "id is told twice"),
        ("id=", 1, "the heading of the id column is missing"),
        ("data=b0..c7", 1, "no range"),
        ("data=b0..b99", 1, "no range"),
        ("id=a0..a3", 1, "only data can be spread"),
        ("id=\"a", 1, "a quote is not closed"),
        ("é=1", 1, "'é' is no role"),
        ("", 1, "not of the form"),
        ("id=a, skip=", 7, "the heading of the column to skip is missing"),
        ("skip=a:hex", 1, "':hex' cannot stand behind skip"),
    ] {
        let error = ColumnMap::parse(map).expect_err(map).to_string();
        assert!(error.contains(words) && error.contains(&format!("at character {at}:")), "{map}: {error}");
    }
}
