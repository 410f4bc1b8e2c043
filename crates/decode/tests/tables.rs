//! Column by column gives what frame by frame gives: every value to the bit, every special value, every count.

mod both_ways;

use std::fmt::Write;
use std::io;
use std::sync::{Arc, Mutex};

use both_ways::{ByFrame, Random, by_tables, compare};
use wirelore_decode::{
    BindMap, Block, Column, Decoder, Numbers, Options, Selection, Session, Setup, Store, TableSink, Tables, Tally,
    Units, Value,
};
use wirelore_log::Recording;
use wirelore_model::Database;

/// Every kind of signal and page there is.
const DESCRIPTION: &str = include_str!("tables.lore");

fn database() -> Database {
    both_ways::database(DESCRIPTION)
}

/// A log of everything: known and unknown identifiers, whole, short and long payloads, frames without a time.
fn log(seed: u64, lines: usize, oddities: u64) -> String {
    let mut random = Random(seed);
    let mut text = "time_s,channel,id_hex,extended,fd,data_hex\n".to_owned();
    for line in 0..lines {
        let (channel, id, extended, length) = match random.next(15) {
            0 | 1 => ("drive", 0x100, 0, 8),
            2 if random.next(2) == 0 => ("comfort", 0x2F0, 0, 8),
            2 => ("drive", 0x103, 0, [1, 3, 8, 64][random.next(4) as usize]),
            3 | 4 => ("drive", 0x101, 0, 64),
            5 | 6 => ("drive", 0x102, 0, 4),
            7 | 8 => ("comfort", 0x200, 0, 8),
            9 => ("comfort", 0x201 + random.next(4) as u32, 0, 2),
            10 => ("comfort", 0x18FE_F100 + random.next(3) as u32, 1, 8),
            11 => ("drive", 0x104, 0, [2, 5, 6, 8, 12, 24, 64][random.next(7) as usize]),
            12 => ("drive", 0x105, 0, [1, 3, 8, 12, 16][random.next(5) as usize]),
            13 => ("drive", 0x106, 0, [1, 4, 8, 12, 48][random.next(5) as usize]),
            _ => ("drive", 0x7FF, 0, 1),
        };
        let is_odd = random.next(1000) < oddities;
        let length = if is_odd { [0, 1, 2, 3, 5, 7, 8, 12, 20, 48, 64][random.next(11) as usize] } else { length };
        let narrow = random.next(2) == 0;
        let byte = |random: &mut Random| if narrow { random.next(4) as u8 } else { random.next(256) as u8 };
        let data: String = (0..length).map(|_| format!("{:02X}", byte(&mut random))).collect();
        let time =
            if is_odd && random.next(4) == 0 { String::new() } else { format!("{}.{:03}", line / 1000, line % 1000) };
        let fd = u8::from(length > 8);
        let _ = writeln!(text, "{time},{channel},{id:X},{extended},{fd},{data}");
    }
    text
}

#[test]
fn tables_hold_what_frames_say() {
    let database = database();
    for (seed, oddities) in [(1, 0), (2, 5), (3, 300), (4, 1000)] {
        for lines in [0, 1, 100, 9_000] {
            compare(&database, &Setup::default(), &Options::default(), &[log(seed, lines, oddities)]);
        }
    }
}

/// Texts whose length another signal says are looked at row by row, also where all rows are of one length.
#[test]
fn said_lengths_are_looked_at_in_rows_of_one_length() {
    let mut log = "time_s,channel,id_hex,extended,fd,data_hex\n".to_owned();
    for line in 0..300_u32 {
        // Up to 20 bytes there is room for; up to 31 can be said.
        let data: String = (0..48).map(|at| format!("{:02X}", if at == 0 { line % 32 } else { 0x41 + at })).collect();
        let _ = writeln!(log, "{}.{:03},drive,106,0,1,{data}", line / 1000, line % 1000);
        let _ = writeln!(log, "{}.{:03},comfort,200,0,0,0000000000000000", line / 1000, line % 1000);
    }
    let (_, tally) = compare(&database(), &Setup::default(), &Options::default(), &[log]);
    let cut_off = (0..300).filter(|line| line % 32 > 20).count() as u64;
    assert_eq!((tally.too_short, tally.decoded), (cut_off, 600 - cut_off));
}

#[test]
fn several_logs_one_after_the_other() {
    let logs: Vec<String> = (10..14).map(|seed| log(seed, 700, 20)).collect();
    compare(&database(), &Setup::default(), &Options::default(), &logs);
}

#[test]
fn a_choice_of_signals_times_networks_and_units() {
    let database = database();
    let chosen = Setup {
        selection: Selection::matching(&database, "plain.b*,paged.c,paged.b,wide.*r").expect("they are there"),
        units: Units::imperial(),
    };
    let options = Options {
        only: Some(vec!["drive".to_owned()]),
        from_ns: Some(1_000_000_000),
        until_ns: Some(3_000_000_000),
        ..Options::default()
    };
    let logs = [log(20, 5_000, 30)];
    compare(&database, &chosen, &Options::default(), &logs);
    compare(&database, &chosen, &options, &logs);
    compare(&database, &Setup::default(), &options, &logs);
}

/// Frames as in [`log`], but many and in a file, so that threads can share the work.
fn file(folder: &std::path::Path, text: &str) -> std::path::PathBuf {
    let path = folder.join("log.csv");
    std::fs::write(&path, text).expect("the folder can be written to");
    path
}

#[test]
fn threads_change_nothing() {
    let database = database();
    let decoder = Decoder::new(&database).expect("it can be decoded");
    let folder = tempfile::tempdir().expect("a folder");
    // A channel that turns up late, where several threads have begun already.
    let late = log(31, 120_000, 10).replace(",comfort,2F0,", ",drive,2F0,");
    let more = log(32, 200_000, 10).split_off(1 + log(32, 0, 0).find('\n').expect("a header"));
    let path = file(folder.path(), &(late + &more));
    let told: Vec<(ByFrame, Tally)> = [1, 2, 5]
        .map(|threads| {
            let options = Options { threads: std::num::NonZero::new(threads), ..Options::default() };
            let recording = Recording::open(&path, &wirelore_log::Options::default()).expect("it opens");
            by_tables(&database, &decoder, &options, [recording])
        })
        .into();
    assert_eq!(told[0].1.read, 320_000);
    for other in &told[1..] {
        assert!(told[0].1 == other.1, "the same counts");
        assert!(told[0].0 == other.0, "the same tables");
    }
}

const WIDTHS: &str = "\
network drive can_fd 500 kbit/s
frame widths on drive id 0x100 {
    length 64
    signal u1 in bit 0.0
    signal u8 in byte 1
    signal u9 in bits 3.0..2.0
    signal u16 in bytes 5..4
    signal u17 in bits 8.0..6.0
    signal u32 in bytes 12..9
    signal u33 in bits 17.0..13.0
    signal u64 in bytes 25..18
    signal i8 in byte 26 signed
    signal i9 in bits 28.0..27.0 signed
    signal i16 in bytes 30..29 signed
    signal i17 in bits 33.0..31.0 signed
    signal i32 in bytes 37..34 signed
    signal i33 in bits 42.0..38.0 signed
    signal i64 in bytes 50..43 signed
    signal scaled in bits 52.3..51.0 = raw * 0.5 V
    signal code in bytes 53..54 trouble_code
    signal curved in byte 55 = curve { 0: 1, 255: 2 } V
    signal single in bytes 59..56 float
    signal digits in bytes 60..61 bcd
}
";

/// The type of each column and its numbers, by signal; no number where there is none.
#[derive(Default)]
struct Raw(Vec<(String, Vec<Option<f64>>)>);

struct RawSink(Arc<Mutex<Raw>>);

impl TableSink for RawSink {
    fn block(&mut self, block: &Block<'_>) {
        assert_eq!((block.first_time_ns(), block.times_ns().first()), (Some(1_000_000_000), Some(&2_000_000_000)));
    }

    fn column(&mut self, column: &Column<'_>) {
        let (kind, numbers): (&str, Vec<f64>) = match column.numbers().expect("numbers") {
            Numbers::U8(all) => ("u8", all.iter().map(|&number| number.into()).collect()),
            Numbers::U16(all) => ("u16", all.iter().map(|&number| number.into()).collect()),
            Numbers::U32(all) => ("u32", all.iter().map(|&number| number.into()).collect()),
            Numbers::U64(all) => ("u64", all.iter().map(|&number| number as f64).collect()),
            Numbers::I8(all) => ("i8", all.iter().map(|&number| number.into()).collect()),
            Numbers::I16(all) => ("i16", all.iter().map(|&number| number.into()).collect()),
            Numbers::I32(all) => ("i32", all.iter().map(|&number| number.into()).collect()),
            Numbers::I64(all) => ("i64", all.iter().map(|&number| number as f64).collect()),
            Numbers::F64(all) => ("f64", all.to_vec()),
        };
        let is_valid = |row: usize| column.valid().is_none_or(|valid| valid.has(row));
        let numbers = numbers.into_iter().enumerate().map(|(row, number)| is_valid(row).then_some(number));
        self.0.lock().expect("nobody panicked").0.push((kind.to_owned(), numbers.collect()));
    }
}

#[test]
fn raw_numbers_have_the_narrowest_type_that_holds_all_of_a_signal() {
    let database = both_ways::database(WIDTHS);
    let decoder = Decoder::new(&database).expect("it can be decoded");
    let payloads = [vec![0xFF; 64], vec![0; 64], (0..64).map(|byte| byte * 3 + 0x40).collect::<Vec<u8>>()];
    let mut log = "time_s,id_hex,ext,data_hex\n1,7FF,0,00\n".to_owned();
    for (second, payload) in (2..).zip(&payloads) {
        let data: String = payload.iter().map(|byte| format!("{byte:02X}")).collect();
        let _ = writeln!(log, "{second},100,0,{data}");
    }
    let reader = Box::new(io::Cursor::new(log.into_bytes()));
    let mut recording = Recording::from_reader(reader, "log.csv", &wirelore_log::Options::default()).expect("a log");
    let raw = Arc::new(Mutex::new(Raw::default()));
    let mut tables = Tables::new(&database, &decoder, Store::Raw, |_| Ok(RawSink(Arc::clone(&raw))));
    let mut session = Session::new(&decoder, &Options::default()).expect("a session");
    session.run_tables(&mut recording, &mut tables).expect("it is read");
    let raw = std::mem::take(&mut *raw.lock().expect("nobody panicked"));
    let kinds: Vec<&str> = raw.0.iter().map(|(kind, _)| kind.as_str()).collect();
    assert_eq!(
        kinds,
        [
            "u8", "u8", "u16", "u16", "u32", "u32", "u64", "u64", "i8", "i16", "i16", "i32", "i32", "i64", "i64",
            "u16", "u16", "f64", "f64", "u16"
        ]
    );
    for (row, payload) in payloads.iter().enumerate() {
        let mut columns = raw.0.iter();
        decoder.decode(wirelore_model::FrameId(0), payload, |signal, reading| {
            let (_, numbers) = columns.next().expect("a column for each signal");
            let expected = match (&reading.value, reading.bits) {
                // Of a formula, and of a trouble code, the bits are the raw number here.
                (Value::Number(_), Some(bits)) if signal.0 == 15 => Some(bits as f64),
                (Value::TroubleCode(_), Some(bits)) => Some(bits as f64),
                (value, _) => value.number(),
            };
            assert_eq!(numbers[row].map(f64::to_bits), expected.map(f64::to_bits), "signal {} row {row}", signal.0);
        });
    }
}

/// Messages are put together out of frames in their order, however many threads there are.
#[test]
fn threads_put_no_message_together_out_of_pieces() {
    let database = both_ways::database(
        "network plug can 500 kbit/s\nframe answer on plug id 0x7E8, carried by iso_tp { signal last in bytes 18..19 }\n",
    );
    let decoder = Decoder::new(&database).expect("it can be decoded");
    let mut log = "time_s,id_hex,ext,data_hex\n".to_owned();
    // Frames of ISO 15765-2 (from memory): the first one of 20 bytes, and two that go on.
    let messages = 40_000;
    for message in 0..messages {
        let last = format!("220000000000{message:04X}");
        for (part, data) in ["1014000000000000", "2100000000000000", &last].iter().enumerate() {
            let _ = writeln!(log, "{}.{:02}{part},7E8,0,{data}", message / 100, message % 100);
        }
    }
    let folder = tempfile::tempdir().expect("a folder");
    let path = file(folder.path(), &log);
    for threads in [1, 3] {
        let options = Options { threads: std::num::NonZero::new(threads), ..Options::default() };
        let recording = Recording::open(&path, &wirelore_log::Options::default()).expect("it opens");
        let (tables, tally) = by_tables(&database, &decoder, &options, [recording]);
        assert_eq!((tally.messages, tally.carrying, tally.message_faults), (messages, 3 * messages, 0));
        let rows = &tables[&wirelore_model::FrameId(0)];
        let last = |row: &both_ways::Row| row.4[0].2.map(f64::from_bits);
        assert!(rows.iter().zip(0_u32..).all(|(row, message)| last(row) == Some(f64::from(message))));
    }
}

/// A pcapng file (draft-ietf-opsawg-pcapng, from memory) with a frame of CAN (link type 227) every 0.1 ms, each with its interface and
/// identifier and eight bytes.
fn pcapng(frames: impl Iterator<Item = (u32, u32)>) -> Vec<u8> {
    let mut file = Vec::new();
    let mut block = |kind: u32, body: &[u8]| {
        let length = (body.len() as u32 + 12).to_le_bytes();
        [&kind.to_le_bytes(), &length[..], body, &length].iter().for_each(|part| file.extend_from_slice(part));
    };
    block(0x0A0D_0D0A, &[0x4D, 0x3C, 0x2B, 0x1A, 1, 0, 0, 0, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF]);
    (0..2).for_each(|_| block(1, &[227, 0, 0, 0, 0, 0, 0, 0]));
    for ((interface, id), number) in frames.zip(0_u32..) {
        let numbers = [interface, 0, 100 * number, 16, 16].map(u32::to_le_bytes).concat();
        block(6, &[&numbers[..], &id.to_be_bytes(), &[8, 0, 0, 0], &number.to_le_bytes(), &[0; 4]].concat());
    }
    file
}

/// Behind the first frame of a channel all others wait, also those that could be gathered many at once.
#[test]
fn no_frame_overtakes_one_that_waits() {
    let database = database();
    let decoder = Decoder::new(&database).expect("it can be decoded");
    let frames = (0..15_000).map(|number| if number == 12_000 { (1, 0x200) } else { (0, 0x100) });
    let reader = Box::new(io::Cursor::new(pcapng(frames)));
    let recording = Recording::from_reader(reader, "log.pcapng", &wirelore_log::Options::default()).expect("a log");
    let options = Options { bind: BindMap::parse("0=drive,1=comfort").expect("pairs"), ..Options::default() };
    let (tables, tally) = by_tables(&database, &decoder, &options, [recording]);
    assert_eq!((tally.read, tally.without_description), (15_000, 0));
    let plain = &tables[&wirelore_model::FrameId(0)];
    assert_eq!(plain.len(), 14_999);
    assert!(plain.is_sorted_by_key(|row| row.0), "in the order of the log");
}

#[test]
fn many_frames_at_once_are_counted_whoever_reads_them() {
    let database = database();
    let decoder = Decoder::new(&database).expect("it can be decoded");
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.pcapng");
    std::fs::write(&path, pcapng((0..160_000).map(|_| (0, 0x100)))).expect("the folder can be written to");
    for threads in [1, 3] {
        let bind = BindMap::parse("0=drive").expect("a pair");
        let options = Options { bind, threads: std::num::NonZero::new(threads), ..Options::default() };
        let recording = Recording::open(&path, &wirelore_log::Options::default()).expect("it opens");
        let (tables, tally) = by_tables(&database, &decoder, &options, [recording]);
        assert_eq!((tally.read, tally.decoded), (160_000, 160_000));
        let plain = &tables[&wirelore_model::FrameId(0)];
        assert!(plain.len() == 160_000 && plain.is_sorted_by_key(|row| row.0), "in the order of the log");
    }
}

/// Also where the identifier is known from frames with data.
#[test]
fn remote_frames_are_no_rows() {
    let mut log = "time_s,channel,id_hex,ext,rtr,data_hex\n".to_owned();
    for number in 0..15_000 {
        let (remote, data) = if number % 100 == 99 { (1, "") } else { (0, "0102030405060708") };
        let _ = writeln!(log, "{}.{:03},drive,100,0,{remote},{data}", number / 1000, number % 1000);
    }
    let (_, tally) = compare(&database(), &Setup::default(), &Options::default(), &[log]);
    assert_eq!((tally.read, tally.remote, tally.decoded), (15_000, 150, 14_850));
}
