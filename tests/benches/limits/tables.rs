//! Columns into files for other programs. What they are measured against: copying the columns from memory to memory, Parquet files of
//! doubles with Zstandard compression of level 1, and, for the whole command, its parts one after the other.

mod decoded;

use std::ffi::OsString;
use std::fs;
use std::hint::black_box;
use std::io::{self, Cursor, Write};
use std::path::Path;
use std::process::ExitCode;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use arrow_array::cast::AsArray;
use arrow_array::types::{DurationNanosecondType, Float64Type};
use arrow_array::{Array, RecordBatch};
use arrow_ipc::reader::FileReader;
use parquet::arrow::ArrowWriter;
use parquet::arrow::arrow_reader::ParquetRecordBatchReaderBuilder;
use parquet::basic::{Compression, Encoding, ZstdLevel};
use parquet::file::properties::WriterProperties;
use parquet::schema::types::ColumnPath;
use wirelore_tables::{SchemaRef, Store, TableWriter, arrow_file, parquet_file};
use wirelore_tests::workload::START_NS;

use crate::clock::Meter;
use crate::kept::{Columns, Kept};
use crate::race::Race;
use crate::stage::{Recordings, Stage};
use crate::table::{Goal, Row, Work};
use decoded::Ready;

pub(crate) fn rows(stage: &Stage) -> Vec<Row> {
    let recordings = stage.part();
    let kept = Kept::expected(&stage.vehicle, recordings.frames, START_NS);
    let [doubles, raw] = [Store::Values, Store::Raw].map(|store| decoded::tables(stage, recordings, store));
    assert_same(&kept, &doubles);
    let memory = Memory::default();
    doubles.iter().for_each(|table| check_arrow(table, &memory));
    raw.iter().chain(&doubles).for_each(|table| check_parquet(table, &memory, &stage.path("back.parquet")));

    let mut rows = formats(stage, recordings, (&kept, &doubles, &raw), &memory);
    rows.push(command(stage, recordings, &doubles, &memory));
    rows
}

fn formats(
    stage: &Stage,
    recordings: &Recordings,
    (kept, doubles, raw): (&Kept, &[Ready], &[Ready]),
    memory: &Memory,
) -> Vec<Row> {
    let [plain, split] = [Encoding::PLAIN, Encoding::BYTE_STREAM_SPLIT].map(properties);
    let column_bytes = recordings.frames * 8 + recordings.values() * 8;
    let write_zstd = |properties: &WriterProperties| write(doubles, |table| zstd(table, properties, memory), memory);
    let write_arrow = || write(doubles, |table| arrow(table, memory), memory);
    let write_raw = || write(raw, |table| parquet(table, memory), memory);
    let write_plain = || write(doubles, |table| parquet(table, memory), memory);
    let [plain_bytes, split_bytes] = [&plain, &split].map(&write_zstd);
    let (arrow_bytes, raw_bytes, double_bytes) = (write_arrow(), write_raw(), write_plain());
    let mut copies = kept.0.clone();
    let mut race = Race::default();
    let copied = race.enter("copy", column_bytes, || copy(kept, &mut copies));
    let arrow_out = race.enter("arrow", arrow_bytes, write_arrow);
    let raw_delta = race.enter("parquet raw", raw_bytes, write_raw);
    let as_they_are = race.enter("parquet doubles", double_bytes, write_plain);
    let plain_zstd = race.enter("parquet zstd", plain_bytes, || write_zstd(&plain));
    let split_zstd = race.enter("parquet split zstd", split_bytes, || write_zstd(&split));
    let times = race.run(stage.rounds);

    let work = Work { item: "value", items: recordings.values(), bytes: column_bytes };
    let size = |bytes: u64| format!("{:.1} MB from {:.1} MB of doubles", bytes as f64 / 1e6, column_bytes as f64 / 1e6);
    let smaller = plain_bytes.min(split_bytes) as f64 / raw_bytes as f64;
    let zstd_rival = ("Parquet of doubles, Zstandard 1", plain_zstd);
    let faster = Goal::Faster { reach: 3.0, floor: 2.0 };
    let at_most = Goal::AtMost { reach: 1.1, floor: 1.5 };
    vec![
        Row::pair(work, &times, ("Arrow IPC out", arrow_out), ("memcpy of the columns", copied), at_most),
        Row::pair(work, &times, ("Parquet out, raw numbers as differences", raw_delta), zstd_rival, faster)
            .with_note(format!("{}; {smaller:.2} times smaller than the smaller rival", size(raw_bytes))),
        Row::pair(work, &times, ("Parquet out, doubles as they are", as_they_are), zstd_rival, Goal::Stated)
            .with_note(size(double_bytes)),
        Row::alone(work, zstd_rival.0, times.of(plain_zstd)).with_note(size(plain_bytes)),
        Row::alone(work, "Parquet of doubles, bytes apart, Zstandard 1", times.of(split_zstd))
            .with_note(size(split_bytes)),
    ]
}

/// The whole command against its parts: reading and decoding with every value used, writing ready columns as Parquet into memory, and
/// writing the bytes of that into files.
fn command(stage: &Stage, recordings: &Recordings, doubles: &[Ready], memory: &Memory) -> Row {
    let (folder, parts_folder) = (stage.path("tables"), stage.path("parts"));
    fs::create_dir(&parts_folder).expect("the temporary folder can be written to");
    assert_eq!(decode(stage, recordings, &folder), 0, "the command fails");
    let files = fs::read_dir(&folder).expect("the command has made it").count();
    assert_eq!(files, doubles.len(), "the command makes other tables");
    let parts = || {
        for (number, table) in doubles.iter().enumerate() {
            parquet(table, memory);
            fs::write(parts_folder.join(number.to_string()), &*memory.bytes()).expect("there is room");
            memory.bytes().clear();
        }
        decoded::sum(stage, recordings)
    };
    let mut race = Race::default();
    let whole = race.enter_with(Meter::Process, "command", 0, || decode(stage, recordings, &folder));
    let parts = race.enter_with(Meter::Process, "parts", recordings.value_sum, parts);
    let times = race.run(stage.rounds);
    let work = Work { item: "frame", items: recordings.frames, bytes: recordings.pcapng.map.len() as u64 };
    let goal = Goal::AtMost { reach: 1.1, floor: 1.5 };
    let measure = ("whole command, pcapng to Parquet, all threads", whole);
    Row::pair(work, &times, measure, ("its parts, each alone", parts), goal)
}

/// Runs the command; 0 where it succeeds.
fn decode(stage: &Stage, recordings: &Recordings, folder: &Path) -> u64 {
    let words: [OsString; 9] = [
        "wirelore".into(),
        "decode".into(),
        stage.description().into(),
        recordings.pcapng.path.clone().into(),
        "--quiet".into(),
        "--to".into(),
        "parquet".into(),
        "-o".into(),
        folder.into(),
    ];
    u64::from(wirelore_cli::run(words) != ExitCode::SUCCESS)
}

fn copy(from: &Kept, to: &mut [Columns]) -> u64 {
    let mut bytes = 0;
    for (from, to) in from.0.iter().zip(&mut *to) {
        to.times_ns.copy_from_slice(&from.times_ns);
        bytes += size_of_val(from.times_ns.as_slice());
        for (from, to) in from.values.iter().zip(&mut to.values) {
            to.copy_from_slice(from);
            bytes += size_of_val(from.as_slice());
        }
    }
    black_box(to);
    bytes as u64
}

/// Bytes in memory that is used again.
#[derive(Debug, Clone, Default)]
struct Memory(Arc<Mutex<Vec<u8>>>);

impl Memory {
    fn bytes(&self) -> MutexGuard<'_, Vec<u8>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Write for Memory {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.bytes().extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

/// Writes each table as a file into memory, one after the other; how many bytes they have together.
fn write(tables: &[Ready], write: impl Fn(&Ready), memory: &Memory) -> u64 {
    let mut bytes = 0;
    for table in tables {
        write(table);
        bytes += black_box(&*memory.bytes()).len() as u64;
        memory.bytes().clear();
    }
    bytes
}

fn arrow(table: &Ready, memory: &Memory) {
    fill(arrow_file(&table.schema, memory.clone()), &table.batches);
}

fn parquet(table: &Ready, memory: &Memory) {
    fill(parquet_file(&table.schema, memory.clone()), &table.batches);
}

fn fill(writer: io::Result<Box<dyn TableWriter>>, batches: &[RecordBatch]) {
    let mut writer = writer.expect("memory takes everything");
    batches.iter().for_each(|batch| writer.write(batch).expect("memory takes everything"));
    writer.finish().expect("memory takes everything");
}

fn zstd(table: &Ready, properties: &WriterProperties, memory: &Memory) {
    let schema = SchemaRef::clone(&table.schema);
    let writer = ArrowWriter::try_new(memory.clone(), schema, Some(properties.clone()));
    let mut writer = writer.expect("the schema is plain");
    table.batches.iter().for_each(|batch| writer.write(batch).expect("memory takes everything"));
    writer.close().expect("memory takes everything");
}

/// Times as differences, doubles in `encoding`, Zstandard of level 1.
fn properties(encoding: Encoding) -> WriterProperties {
    WriterProperties::builder()
        .set_dictionary_enabled(false)
        .set_compression(Compression::ZSTD(ZstdLevel::try_new(1).expect("there is a level 1")))
        .set_encoding(encoding)
        .set_column_encoding(ColumnPath::from("time"), Encoding::DELTA_BINARY_PACKED)
        .build()
}

/// That the tables hold what the slow path makes.
fn assert_same(kept: &Kept, tables: &[Ready]) {
    let mut found: Vec<Columns> = Vec::new();
    for table in tables {
        let mut columns = Columns::default();
        for batch in &table.batches {
            assert!(batch.columns().iter().all(|column| column.null_count() == 0));
            columns.times_ns.extend_from_slice(batch.column(0).as_primitive::<DurationNanosecondType>().values());
            for (values, column) in columns.values.iter_mut().zip(&batch.columns()[1..]) {
                values.extend_from_slice(column.as_primitive::<Float64Type>().values());
            }
        }
        found.push(columns);
    }
    let number = |table: &Ready| table.schema.metadata()["frame"].clone();
    let mut names: Vec<String> = tables.iter().map(number).collect();
    names.dedup();
    assert_eq!(names.len(), kept.0.len(), "every frame turns up");
    // Tables come in the order in which their frames turned up.
    for columns in &found {
        let same = kept.0.iter().find(|kept| kept.times_ns == columns.times_ns && kept.values == columns.values);
        assert!(same.is_some(), "a table differs from what the slow path makes");
    }
}

fn check_arrow(table: &Ready, memory: &Memory) {
    arrow(table, memory);
    let file = Cursor::new(std::mem::take(&mut *memory.bytes()));
    let back = FileReader::try_new(file, None).expect("it was just written");
    let back: Vec<RecordBatch> = back.collect::<Result<_, _>>().expect("it was just written");
    assert!(back == table.batches, "an Arrow file reads back otherwise");
}

fn check_parquet(table: &Ready, memory: &Memory, path: &Path) {
    parquet(table, memory);
    fs::write(path, &*memory.bytes()).expect("the temporary folder can be written to");
    memory.bytes().clear();
    let file = fs::File::open(path).expect("it was just written");
    let reader = ParquetRecordBatchReaderBuilder::try_new(file).expect("it was just written");
    // A batch that all rows fit in.
    let mut back = reader.with_batch_size(1 << 20).build().expect("it was just written");
    let back = back.next().expect("it has rows").expect("it was just written");
    let mut rows = 0;
    for batch in &table.batches {
        let part = back.slice(rows, batch.num_rows());
        assert!(part.columns() == batch.columns(), "a Parquet file reads back otherwise");
        rows += batch.num_rows();
    }
    assert_eq!(rows, back.num_rows(), "a Parquet file has other rows");
}
