//! Recordings over weeks, and many at a time: no nanosecond drifts, no time overflows, and the same recording gives the same bytes whoever reads
//! beside it.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::io::{self, Write};
use std::num::NonZero;
use std::path::Path;
use std::process::{Command, Output};
use std::sync::{Arc, Mutex};
use std::thread;

use arrow_array::cast::AsArray;
use arrow_array::types::DurationNanosecondType;
use parquet::arrow::arrow_reader::ParquetRecordBatchReaderBuilder;
use wirelore_decode::{Decoder, Options, Session, Tables};
use wirelore_log::{Channel, Frame, LinkType, Recording, write::PcapngWriter};
use wirelore_model::{Database, FrameId};
use wirelore_tables::{SchemaRef, Setup, Store, TableMaker, Times, parquet_file};
use wirelore_tests::drive::{demo_folder, kestrel};

const DESCRIPTION: &str = "network drive can 500 kbit/s\nframe f on drive id 0x100 { every 2 h\nsignal a in byte 0 }\n";
const HOUR_NS: i64 = 3_600_000_000_000;
const START_NS: i64 = 1_791_877_277_400_000_001;

/// Every hour of a month, each a few nanoseconds later than the hour: a double of seconds would not tell them apart.
fn month() -> impl Iterator<Item = i64> {
    (0..30 * 24).map(|hour| START_NS + hour * (HOUR_NS + 7))
}

fn wirelore(folder: &Path, line: &str) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_wirelore-under-test"));
    command.current_dir(folder).args(line.split(' ')).output().expect("the command starts")
}

#[track_caller]
fn printed(folder: &Path, line: &str) -> String {
    let output = wirelore(folder, line);
    assert_eq!(output.status.code(), Some(0), "{line}: {}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).expect("UTF-8")
}

/// The month as a text and as a packet file.
fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let mut text = "time_ns,id_hex,data_hex\n".to_owned();
    let packets = fs::File::create(folder.path().join("month.pcapng")).expect("made");
    let mut packets = PcapngWriter::new(packets).expect("it begins");
    packets.add_channel("drive", LinkType::Can).expect("an interface");
    for (number, time_ns) in month().enumerate() {
        let _ = writeln!(text, "{time_ns},100,{:02X}", number % 256);
        packets.write(&Frame::data(Some(time_ns), Channel(0), 0x100, &[number as u8])).expect("written");
    }
    packets.finish().expect("written");
    fs::write(folder.path().join("month.csv"), text).expect("written");
    fs::write(folder.path().join("van.lore"), DESCRIPTION).expect("written");
    folder
}

/// Seconds with all nanoseconds, in whole numbers.
fn seconds(time_ns: i64) -> String {
    format!("{}.{:09}", time_ns / 1_000_000_000, time_ns % 1_000_000_000)
}

/// Seconds as they are printed: six digits, and nine where those are not enough.
fn as_printed(time_ns: i64) -> String {
    let seconds = seconds(time_ns);
    seconds.strip_suffix("000").unwrap_or(&seconds).to_owned()
}

#[test]
fn no_nanosecond_is_lost_in_a_month() {
    let folder = folder();
    for log in ["month.csv", "month.pcapng"] {
        for (times, since) in [("start", START_NS), ("recorded", 0)] {
            let text = printed(folder.path(), &format!("decode van.lore {log} --to csv --times {times}"));
            let found: Vec<&str> = text.lines().skip(1).filter_map(|line| line.split(',').next()).collect();
            let expected: Vec<String> = month().map(|time_ns| as_printed(time_ns - since)).collect();
            assert_eq!(found, expected, "{log}, {times}");
        }
        let text = printed(folder.path(), &format!("decode van.lore {log} --to csv --times clock"));
        for (line, time_ns) in text.lines().skip(1).zip(month()) {
            let (second, nanosecond) = (time_ns / 1_000_000_000 % 86_400, time_ns % 1_000_000_000);
            let of_day = format!("T{:02}:{:02}:{:02}.", second / 3_600, second / 60 % 60, second % 60);
            let fraction = format!("{nanosecond:09}");
            let fraction = fraction.strip_suffix("000").unwrap_or(&fraction);
            assert!(line.contains(&format!("{of_day}{fraction}Z")), "{line}: {time_ns}");
        }
        printed(folder.path(), &format!("decode van.lore {log} -o f.parquet --quiet"));
        let file = fs::File::open(folder.path().join("f.parquet")).expect("it is there");
        let reader =
            ParquetRecordBatchReaderBuilder::try_new(file).expect("it is Parquet").build().expect("it can be read");
        let batches: Vec<_> = reader.collect::<Result<_, _>>().expect("whole");
        let times = batches.iter().flat_map(|batch| {
            batch.column_by_name("time").expect("a column").as_primitive::<DurationNanosecondType>().values().to_vec()
        });
        assert!(times.eq(month().map(|time_ns| time_ns - START_NS)), "{log}");
    }
}

#[test]
fn a_grid_over_a_month_stays_in_step() {
    let folder = folder();
    let text = printed(folder.path(), "decode van.lore month.pcapng --to csv --shape grid --every 3600s --quiet");
    let rows: Vec<(&str, &str)> = text.lines().skip(1).filter_map(|line| line.split_once(',')).collect();
    assert!(rows.len() >= 720, "{}", rows.len());
    for (number, (time, value)) in rows.iter().enumerate() {
        assert_eq!(*time, format!("{}.000000", number as i64 * 3_600));
        // Each frame comes a little late for its row, which shows the one before.
        assert_eq!(*value, (number.saturating_sub(1) % 256).to_string(), "row {number}");
    }
}

/// The first and the last nanosecond that 64 bits can tell, in the years 1677 and 2262: what lies between them is more than they can.
#[test]
fn times_at_the_ends_of_64_bits() {
    let folder = folder();
    let text = format!(
        "time_ns,id_hex,data_hex\n{},100,01\n0,100,02\n{},100,03\n{},100,04\n",
        i64::MIN + 1,
        i64::MAX,
        1_u64 << 63
    );
    fs::write(folder.path().join("ends.csv"), text).expect("written");
    let text = printed(folder.path(), "decode van.lore ends.csv --to csv");
    let between = i128::from(i64::MAX) - i128::from(i64::MIN + 1);
    let last = format!("{}.{:09},drive,f,a,3,,", between / 1_000_000_000, between % 1_000_000_000);
    assert!(text.lines().any(|line| line == last), "{last}: {text}");
    assert!(!text.contains(",4,,"), "no time can be later: {text}");
    for line in [
        "decode van.lore ends.csv --to csv --times recorded",
        "decode van.lore ends.csv --to csv --times clock",
        "decode van.lore ends.csv --to jsonl",
        "decode van.lore ends.csv --to table",
        "decode van.lore ends.csv --to parquet -o ends.parquet",
        "decode van.lore ends.csv --to csv --shape frames -o -",
        "decode van.lore ends.csv --to csv --shape grid --every 3600s",
        "decode van.lore ends.csv --to parquet --shape grid --every 3600s -o ends.parquet",
        "decode van.lore ends.csv --to csv --from 1s --until 9000000000s",
        "budget van.lore ends.csv",
    ] {
        let output = wirelore(folder.path(), line);
        let told = String::from_utf8_lossy(&output.stderr);
        assert!(matches!(output.status.code(), Some(0 | 2)) && !told.contains("panicked"), "{line}: {told}");
    }
}

/// Bytes that somebody else can look at.
#[derive(Clone, Default)]
struct Memory(Arc<Mutex<Vec<u8>>>);

impl Write for Memory {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.lock().expect("nobody panics").extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

/// The demo's drive as Parquet files, by so many threads.
fn parquet(database: &Database, decoder: &Decoder, threads: usize) -> BTreeMap<String, Vec<u8>> {
    let made: Mutex<BTreeMap<String, Memory>> = Mutex::default();
    let open = |frame: FrameId, schema: &SchemaRef| {
        let memory = Memory::default();
        made.lock().expect("nobody panics").insert(database.frames[frame.index()].label.name.clone(), memory.clone());
        parquet_file(schema, memory)
    };
    let setup = Setup { store: Store::Values, states: true, times: Times::Start, memory_bytes: 4 << 20 };
    let mut maker = TableMaker::new(database, decoder, |_, _| true, setup, open);
    let options = Options { threads: NonZero::new(threads), ..Options::default() };
    let mut session = Session::new(decoder, &options).expect("a session begins");
    let mut tables = Tables::new(database, decoder, setup.store.into(), |frame| maker.table(frame));
    let path = demo_folder().join("town-drive.pcapng");
    let mut recording = Recording::open(&path, &wirelore_log::Options::default()).expect("the demo is there");
    session.run_tables(&mut recording, &mut tables).expect("it can be read");
    for (_, table) in tables.into_sinks() {
        table.finish().expect("memory takes everything");
    }
    drop(maker);
    let made = made.into_inner().expect("nobody panics").into_iter();
    made.map(|(name, memory)| (name, memory.0.lock().expect("nobody panics").clone())).collect()
}

#[test]
fn a_hundred_decodes_at_a_time_write_the_same_bytes() {
    let database = kestrel().expect("the demo description is free of mistakes");
    let decoder = Decoder::new(&database).expect("it can be decoded");
    let expected = parquet(&database, &decoder, 1);
    assert!(expected.len() > 20 && expected.values().all(|bytes| bytes.starts_with(b"PAR1")));
    let is_same = |threads| parquet(&database, &decoder, threads) == expected;
    let run = &is_same;
    thread::scope(|scope| {
        let running: Vec<_> =
            [1, 2, 7].into_iter().cycle().take(100).map(|threads| scope.spawn(move || run(threads))).collect();
        for thread in running {
            assert!(thread.join().expect("nobody panics"), "the same bytes");
        }
    });
}

/// The command takes as many threads as it may run on; what it writes does not tell how many those were.
#[cfg(target_os = "linux")]
#[test]
fn one_processor_or_all_give_the_same_files() {
    let folder = tempfile::tempdir().expect("a folder");
    let description = demo_folder().join("kestrel.lore");
    // Long enough to be read in pieces, each section of the file with the same interfaces.
    let log = folder.path().join("drive.pcapng");
    let drive = fs::read(demo_folder().join("town-drive.pcapng")).expect("it is there");
    fs::write(&log, drive.repeat(12)).expect("written");
    for (name, starter) in [("all", &[][..]), ("one", &["taskset", "-c", "0"])] {
        let words = [starter, &[env!("CARGO_BIN_EXE_wirelore-under-test"), "decode"]].concat();
        let mut command = Command::new(words[0]);
        command.current_dir(folder.path()).args(&words[1..]).arg(&description).arg(&log);
        let done = command.args(["--to", "parquet", "--quiet", "-o", name]).status();
        let Ok(done) = done else {
            eprintln!("skipped: there is no {} here", words[0]);
            return;
        };
        assert_eq!(done.code(), Some(0), "{name}");
    }
    let files = |name: &str| -> BTreeMap<String, Vec<u8>> {
        let entries = fs::read_dir(folder.path().join(name)).expect("it is there").flatten();
        entries
            .map(|entry| (entry.file_name().to_string_lossy().into_owned(), fs::read(entry.path()).expect("read")))
            .collect()
    };
    assert!(files("one").len() > 20 && files("one") == files("all"));
}
