//! What the tests share: tables in memory, their reading back, and the per-frame path beside them.

use std::collections::BTreeMap;
use std::io::{self, Cursor, Write};
use std::num::NonZero;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};

use arrow_array::cast::AsArray;
use arrow_array::types::*;
use arrow_array::{Array, RecordBatch};
use arrow_ipc::reader::{FileReader, StreamReader};
use arrow_schema::{DataType, SchemaRef, TimeUnit};
use parquet::arrow::arrow_reader::ParquetRecordBatchReaderBuilder;
use wirelore_decode::{Decoder, Event, FrameOutcome, Options, Reading, Session, Sink, Source, Tables, Value, Verdict};
use wirelore_log::Recording;
use wirelore_model::{Database, FrameId, SignalId};
use wirelore_tables::{Setup, Store, TableMaker, TableWriter, Times, arrow_file, arrow_stream, parquet_file};

/// The file formats.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Format {
    Parquet,
    File,
    Stream,
}

/// Bytes that somebody else can look at.
#[derive(Debug, Clone, Default)]
pub(crate) struct Memory(pub(crate) Arc<Mutex<Vec<u8>>>);

impl Memory {
    pub(crate) fn bytes(&self) -> Vec<u8> {
        self.0.lock().expect("nobody panics").clone()
    }
}

impl Write for Memory {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.lock().expect("nobody panics").extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl Format {
    pub(crate) fn writer(self, schema: &SchemaRef, to: Memory) -> io::Result<Box<dyn TableWriter>> {
        match self {
            Self::Parquet => parquet_file(schema, to),
            Self::File => arrow_file(schema, to),
            Self::Stream => arrow_stream(schema, to),
        }
    }

    /// Everything in a file of this format.
    pub(crate) fn read(self, bytes: Vec<u8>) -> (SchemaRef, Vec<RecordBatch>) {
        match self {
            Self::Parquet => {
                let mut file = tempfile::tempfile().expect("a file for the table");
                file.write_all(&bytes).expect("written");
                let builder = ParquetRecordBatchReaderBuilder::try_new(file).expect("a Parquet file");
                (builder.schema().clone(), builder.build().expect("read").collect::<Result<_, _>>().expect("whole"))
            }
            Self::File => {
                let reader = FileReader::try_new(Cursor::new(bytes), None).expect("an Arrow file");
                (reader.schema(), reader.collect::<Result<_, _>>().expect("whole"))
            }
            Self::Stream => {
                let reader = StreamReader::try_new(Cursor::new(bytes), None).expect("an Arrow stream");
                (reader.schema(), reader.collect::<Result<_, _>>().expect("whole"))
            }
        }
    }
}

pub(crate) fn setup() -> Setup {
    Setup { store: Store::Values, states: false, times: Times::Start, memory_bytes: 64 << 20 }
}

/// The tables of a recording, by the name of their frame.
pub(crate) fn tables(
    database: &Database,
    recording: Recording,
    setup: Setup,
    format: Format,
) -> BTreeMap<String, Vec<u8>> {
    tables_by(1, database, recording, setup, format)
}

/// The same, made by so many threads.
pub(crate) fn tables_by(
    threads: usize,
    database: &Database,
    mut recording: Recording,
    setup: Setup,
    format: Format,
) -> BTreeMap<String, Vec<u8>> {
    let made: Mutex<BTreeMap<String, Memory>> = Mutex::default();
    let decoder = Decoder::new(database).expect("a decoder");
    let open = |frame: FrameId, schema: &SchemaRef| {
        let memory = Memory::default();
        let name = database.frames[frame.index()].label.name.clone();
        made.lock().expect("nobody panics").insert(name, memory.clone());
        format.writer(schema, memory)
    };
    let mut maker = TableMaker::new(database, &decoder, |_, _| true, setup, open);
    let options = Options { threads: NonZero::new(threads), ..Default::default() };
    let mut session = Session::new(&decoder, &options).expect("a session begins");
    let mut tables = Tables::new(database, &decoder, setup.store.into(), |frame| maker.table(frame));
    session.run_tables(&mut recording, &mut tables).expect("the recording can be read");
    for (_, table) in tables.into_sinks() {
        table.finish().expect("memory takes everything");
    }
    drop(maker);
    made.into_inner().expect("nobody panics").into_iter().map(|(name, memory)| (name, memory.bytes())).collect()
}

pub(crate) fn run(decoder: &Decoder, mut recording: Recording, sink: &mut impl Sink) {
    let mut session = Session::new(decoder, &Options::default()).expect("a session begins");
    session.run(&mut recording, sink).expect("the recording can be read");
}

/// A cell, bit by bit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Cell {
    Null,
    Whole(i128),
    Single(u32),
    Double(u64),
    Words(String),
    Bytes(Vec<u8>),
}

/// A cell as it was read back.
pub(crate) fn cell(column: &dyn Array, row: usize) -> Cell {
    if column.is_null(row) {
        return Cell::Null;
    }
    match column.data_type() {
        DataType::Duration(TimeUnit::Nanosecond) => whole::<DurationNanosecondType>(column, row),
        DataType::Timestamp(TimeUnit::Nanosecond, Some(zone)) if &**zone == "UTC" => {
            whole::<TimestampNanosecondType>(column, row)
        }
        DataType::Int8 => whole::<Int8Type>(column, row),
        DataType::Int16 => whole::<Int16Type>(column, row),
        DataType::Int32 => whole::<Int32Type>(column, row),
        DataType::Int64 => whole::<Int64Type>(column, row),
        DataType::UInt8 => whole::<UInt8Type>(column, row),
        DataType::UInt16 => whole::<UInt16Type>(column, row),
        DataType::UInt32 => whole::<UInt32Type>(column, row),
        DataType::UInt64 => whole::<UInt64Type>(column, row),
        DataType::Float32 => Cell::Single(column.as_primitive::<Float32Type>().value(row).to_bits()),
        DataType::Float64 => Cell::Double(column.as_primitive::<Float64Type>().value(row).to_bits()),
        DataType::Utf8 => Cell::Words(column.as_string::<i32>().value(row).to_owned()),
        DataType::Binary => Cell::Bytes(column.as_binary::<i32>().value(row).to_owned()),
        DataType::Dictionary(..) => {
            let words = column.as_dictionary::<Int32Type>();
            let key = words.keys().value(row) as usize;
            Cell::Words(words.values().as_string::<i32>().value(key).to_owned())
        }
        other => panic!("no column is {other}"),
    }
}

fn whole<T: arrow_array::ArrowPrimitiveType>(column: &dyn Array, row: usize) -> Cell
where
    T::Native: Into<i128>,
{
    Cell::Whole(column.as_primitive::<T>().value(row).into())
}

/// A decoded frame as the per-frame path gives it.
#[derive(Debug)]
pub(crate) struct Row {
    pub(crate) time_ns: Option<i64>,
    pub(crate) first_ns: Option<i64>,
    pub(crate) network: String,
    pub(crate) source: Option<Source>,
    /// By signal: a cell for every way of storing it, and its state.
    pub(crate) signals: BTreeMap<SignalId, Said>,
}

/// What one reading is in a table.
#[derive(Debug, Clone)]
pub(crate) struct Said {
    pub(crate) number: Option<f64>,
    pub(crate) whole: Option<i128>,
    pub(crate) raw_bits: Option<u64>,
    pub(crate) word: Option<String>,
    pub(crate) text: Option<String>,
    pub(crate) bytes: Option<Vec<u8>>,
    pub(crate) state: String,
}

impl Said {
    pub(crate) fn of(reading: &Reading<'_>, verdict: Option<Verdict>) -> Self {
        let whole = if let Value::Integer(number) = reading.value { Some(number) } else { None };
        let is_number = matches!(reading.value, Value::Integer(_) | Value::Number(_));
        Self {
            number: reading.value.number(),
            whole,
            raw_bits: reading.bits.filter(|_| is_number),
            word: reading.word.map(str::to_owned),
            text: if let Value::Text(text) = &reading.value { Some(text.to_string()) } else { None },
            bytes: if let Value::Bytes(bytes) = reading.value { Some(bytes.to_owned()) } else { None },
            state: state(reading, verdict),
        }
    }
}

/// The state in words, told anew here.
fn state(reading: &Reading<'_>, verdict: Option<Verdict>) -> String {
    use wirelore_decode::{ChecksumVerdict as Sum, CounterVerdict as Count};
    let mut parts: Vec<String> = Vec::new();
    let lacking = match &reading.value {
        Value::NoReading => "no reading",
        Value::SensorFault => "sensor fault",
        Value::NotDigits => "not decimal digits",
        Value::BeyondCurve => "beyond the curve",
        Value::TooShort => "frame too short",
        Value::Number(number) if number.is_nan() => "not a number",
        Value::Number(number) if number.is_infinite() => "infinite",
        _ => "",
    };
    parts.push(lacking.to_owned());
    parts.push(reading.word.unwrap_or_default().to_owned());
    parts.push(if reading.outside_range { "outside range" } else { "" }.to_owned());
    parts.push(
        match verdict {
            Some(Verdict::Counter(Count::Repeated)) => "count repeated",
            Some(Verdict::Counter(Count::Jumped { .. })) => "count jumped",
            Some(Verdict::Counter(Count::OutsideRange)) => "not a count",
            Some(Verdict::Checksum(Sum::Right)) => "checksum right",
            Some(Verdict::Checksum(Sum::Wrong { .. })) => "checksum wrong",
            _ => "",
        }
        .to_owned(),
    );
    parts.retain(|part| !part.is_empty());
    parts.join("; ")
}

/// Everything that the per-frame path gives, by frame.
pub(crate) fn rows(database: &Database, recording: Recording) -> BTreeMap<String, Vec<Row>> {
    struct Gather<'d> {
        database: &'d Database,
        rows: BTreeMap<String, Vec<Row>>,
        row: Option<Row>,
        verdicts: Vec<(SignalId, Verdict)>,
    }
    impl Sink for Gather<'_> {
        fn begin(&mut self, event: &Event<'_>) {
            self.verdicts.clear();
            self.row = Some(Row {
                time_ns: event.time_ns,
                first_ns: event.first_time_ns,
                network: self.database.networks[event.network.index()].label.name.clone(),
                source: event.source,
                signals: BTreeMap::new(),
            });
        }
        fn verdict(&mut self, _event: &Event<'_>, signal: SignalId, verdict: Verdict) {
            self.verdicts.push((signal, verdict));
        }
        fn reading(&mut self, _event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
            let verdict = self.verdicts.iter().find(|(checked, _)| *checked == signal).map(|(_, verdict)| *verdict);
            let row = self.row.as_mut().expect("a frame has begun");
            row.signals.insert(signal, Said::of(&reading, verdict));
        }
        fn end(&mut self, event: &Event<'_>, _outcome: &FrameOutcome) -> io::Result<()> {
            let name = self.database.frames[event.frame.index()].label.name.clone();
            self.rows.entry(name).or_default().extend(self.row.take());
            Ok(())
        }
    }
    let decoder = Decoder::new(database).expect("a decoder");
    let mut gather = Gather { database, rows: BTreeMap::new(), row: None, verdicts: Vec::new() };
    run(&decoder, recording, &mut gather);
    gather.rows
}

/// What a reading has to be in a column of a type.
pub(crate) fn expected(
    data_type: &DataType,
    store: Store,
    said: &Said,
    encoding: Option<wirelore_bits::Encoding>,
) -> Cell {
    use wirelore_bits::Number;
    let raw = || match (said.raw_bits, encoding) {
        (Some(bits), Some(encoding)) => encoding.number(bits).ok(),
        _ => None,
    };
    match (data_type, store) {
        (DataType::Utf8, _) => said.text.clone().map_or(Cell::Null, Cell::Words),
        (DataType::Binary, _) => said.bytes.clone().map_or(Cell::Null, Cell::Bytes),
        (DataType::Dictionary(..), _) => {
            said.whole.map_or(Cell::Null, |whole| Cell::Words(said.word.clone().unwrap_or_else(|| whole.to_string())))
        }
        (DataType::Float64, Store::Values) => said.number.map_or(Cell::Null, |number| Cell::Double(number.to_bits())),
        (_, Store::Values) => said.whole.map_or(Cell::Null, Cell::Whole),
        (DataType::Float64, Store::Raw) => said.raw_bits.map_or(Cell::Null, Cell::Double),
        (DataType::Float32, Store::Raw) => match raw() {
            Some(Number::Float(number)) => Cell::Single((number as f32).to_bits()),
            _ => Cell::Null,
        },
        (_, Store::Raw) => match raw() {
            Some(Number::Integer(number)) => Cell::Whole(number),
            _ => Cell::Null,
        },
    }
}

/// A recording that lies beside the checkout and is not part of the project; says so where it is not there.
pub(crate) fn shared_recording(name: &str) -> Option<PathBuf> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../shared/data").join(name);
    if path.exists() {
        return Some(path);
    }
    eprintln!("skipped: the recording ../shared/data/{name} is not there");
    None
}

/// The demo: its description and its recording.
pub(crate) fn demo() -> (Database, impl Fn() -> Recording) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../schema/demo");
    let path = folder.join("kestrel.lore");
    let checked = wirelore_lang::check(&[path.to_str().expect("a plain name")], &wirelore_lang::FileLoader);
    let database = checked.database.expect("the demo has no mistakes");
    (database, move || Recording::open(&folder.join("town-drive.pcapng"), &Default::default()).expect("it opens"))
}

/// Opens a recording of a text.
pub(crate) fn log(text: &str) -> Recording {
    let reader = Box::new(Cursor::new(text.as_bytes().to_vec()));
    Recording::from_reader(reader, "test.csv", &Default::default()).expect("the log opens")
}
