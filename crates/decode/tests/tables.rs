//! Column by column gives what frame by frame gives: every value to the bit, every special value, every count.

mod both_ways;

use std::fmt::Write;

use both_ways::{ByFrame, Random, by_tables, compare};
use wirelore_decode::{Decoder, Options, Selection, Setup, Tally, Units};
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
