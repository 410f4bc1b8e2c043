//! Column by column gives what frame by frame gives: every value to the bit, every special value, every count.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::io;
use std::sync::{Arc, Mutex};

use wirelore_decode::{
    Block, Column, Decoder, Event, Numbers, Options, Reading, Selection, Session, Setup, Sink, Store, TableSink,
    Tables, Tally, Units, Value, Verdict,
};
use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_model::{Database, FrameId, SignalId};

/// Every kind of signal and page there is.
const DESCRIPTION: &str = include_str!("tables.lore");

fn database() -> Database {
    let checked = check_text("van.lore", DESCRIPTION);
    let found: Vec<String> = checked.diagnostics.iter().map(|found| format!("{found:?}")).collect();
    checked.database.unwrap_or_else(|| panic!("{found:#?}"))
}

/// One reading, told so that equal texts mean equal bits.
fn told(reading: &Reading<'_>, verdict: Option<Verdict>) -> String {
    let mut text = String::new();
    let _ = match &reading.value {
        Value::Number(number) => write!(text, "number {:016X}", number.to_bits()),
        other => write!(text, "{other:?}"),
    };
    let _ = write!(text, " {:?} {} {:?} {verdict:?}", reading.word, reading.outside_range, reading.bits);
    text
}

/// Time, channel, network, source, and each signal's reading with the bits of its number.
type Row = (Option<i64>, u16, u32, Option<u8>, Vec<(SignalId, String, Option<u64>)>);
type ByFrame = BTreeMap<FrameId, Vec<Row>>;

#[derive(Default)]
struct ByRow(ByFrame, Vec<(SignalId, Verdict)>);

impl Sink for ByRow {
    fn begin(&mut self, event: &Event<'_>) {
        let rows = self.0.entry(event.frame).or_default();
        rows.push((event.time_ns, event.channel.0, event.network.0, event.source, Vec::new()));
        self.1.clear();
    }

    fn verdict(&mut self, _: &Event<'_>, signal: SignalId, verdict: Verdict) {
        self.1.push((signal, verdict));
    }

    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let row = self.0.get_mut(&event.frame).and_then(|rows| rows.last_mut()).expect("the frame began");
        let verdict = self.1.iter().find(|(checked, _)| *checked == signal).map(|(_, verdict)| *verdict);
        row.4.push((signal, told(&reading, verdict), reading.value.number().map(f64::to_bits)));
    }
}

struct Collect {
    frame: FrameId,
    rows: Vec<Row>,
    into: Arc<Mutex<ByFrame>>,
    begins: usize,
}

impl TableSink for Collect {
    fn block(&mut self, block: &Block<'_>) {
        self.begins = self.rows.len();
        assert_eq!(block.frame(), self.frame);
        assert_eq!(block.all_have_times(), (0..block.rows()).all(|row| block.has_time(row)));
        for row in 0..block.rows() {
            let time_ns = block.has_time(row).then_some(block.times_ns()[row]);
            let network = block.network(row).expect("a channel that is bound");
            self.rows.push((time_ns, block.channel(row).0, network.0, block.source(row), Vec::new()));
        }
    }

    fn column(&mut self, column: &Column<'_>) {
        for (row, into) in self.rows[self.begins..].iter_mut().enumerate() {
            let Some(reading) = column.reading(row) else {
                assert!(column.valid().is_none_or(|valid| !valid.has(row)), "no page, no value");
                continue;
            };
            let number = match column.numbers() {
                _ if column.valid().is_some_and(|valid| !valid.has(row)) => None,
                Some(Numbers::F64(numbers)) => Some(numbers[row]),
                Some(Numbers::U64(numbers)) => Some(numbers[row] as f64),
                Some(Numbers::I64(numbers)) => Some(numbers[row] as f64),
                Some(other) => panic!("{other:?} among engineering values"),
                None => None,
            };
            into.4.push((column.signal(), told(&reading, column.verdict(row)), number.map(f64::to_bits)));
        }
    }
}

impl Drop for Collect {
    fn drop(&mut self) {
        self.into.lock().expect("nobody panicked").insert(self.frame, std::mem::take(&mut self.rows));
    }
}

fn by_rows(decoder: &Decoder, options: &Options, logs: &[String]) -> (ByFrame, Tally) {
    let mut session = Session::new(decoder, options).expect("a session");
    let mut sink = ByRow::default();
    for log in logs {
        session.run(&mut opened(log), &mut sink).expect("it is read");
    }
    sink.0.values_mut().flatten().for_each(|row| row.4.sort_by_key(|(signal, ..)| *signal));
    (sink.0, session.tally().clone())
}

fn by_tables(database: &Database, decoder: &Decoder, options: &Options, logs: &[String]) -> (ByFrame, Tally) {
    let mut session = Session::new(decoder, options).expect("a session");
    let into = Arc::new(Mutex::new(ByFrame::new()));
    let open = |frame| Ok(Collect { frame, rows: Vec::new(), into: Arc::clone(&into), begins: 0 });
    let mut tables = Tables::new(database, decoder, Store::Values, open);
    for log in logs {
        session.run_tables(&mut opened(log), &mut tables).expect("it is read");
    }
    drop(tables);
    let collected = into.lock().expect("nobody panicked").clone();
    (collected, session.tally().clone())
}

fn opened(log: &str) -> Recording {
    let reader = Box::new(io::Cursor::new(log.as_bytes().to_vec()));
    Recording::from_reader(reader, "log.csv", &wirelore_log::Options::default()).expect("it opens")
}

struct Random(u64);

impl Random {
    fn next(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }
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

fn compare(database: &Database, setup: &Setup, options: &Options, logs: &[String]) {
    let decoder = Decoder::with(database, setup).expect("it can be decoded");
    let (rows, row_tally) = by_rows(&decoder, options, logs);
    let (tables, table_tally) = by_tables(database, &decoder, options, logs);
    assert_eq!(row_tally, table_tally);
    assert_eq!(rows.keys().collect::<Vec<_>>(), tables.keys().collect::<Vec<_>>());
    for (frame, rows) in &rows {
        let tables = &tables[frame];
        assert_eq!(rows.len(), tables.len(), "{frame:?}");
        for (number, (row, table)) in rows.iter().zip(tables).enumerate() {
            assert_eq!((row.0, row.1, row.2, row.3), (table.0, table.1, table.2, table.3), "{frame:?} row {number}");
            for (one, other) in row.4.iter().zip(&table.4) {
                assert_eq!((one.0, &one.1), (other.0, &other.1), "{frame:?} row {number}");
                assert_eq!(one.2, other.2, "{frame:?} row {number} {:?}: {}", one.0, one.1);
            }
            assert_eq!(row.4.len(), table.4.len(), "{frame:?} row {number}");
        }
    }
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
            let mut session = Session::new(&decoder, &options).expect("a session");
            let into = Arc::new(Mutex::new(ByFrame::new()));
            let open = |frame| Ok(Collect { frame, rows: Vec::new(), into: Arc::clone(&into), begins: 0 });
            let mut tables = Tables::new(&database, &decoder, Store::Values, open);
            let mut recording = Recording::open(&path, &wirelore_log::Options::default()).expect("it opens");
            session.run_tables(&mut recording, &mut tables).expect("it is read");
            drop(tables);
            let collected = into.lock().expect("nobody panicked").clone();
            (collected, session.tally().clone())
        })
        .into();
    assert_eq!(told[0].1.read, 320_000);
    for other in &told[1..] {
        assert!(told[0].1 == other.1, "the same counts");
        assert!(told[0].0 == other.0, "the same tables");
    }
}
