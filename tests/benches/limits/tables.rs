//! Columns into files for other programs. What they are measured against: copying the columns from memory to memory, and Parquet files of
//! doubles with Zstandard compression of level 1.

use std::fs::{self, File};
use std::hint::black_box;
use std::path::Path;
use std::sync::Arc;

use arrow_array::{ArrayRef, Float64Array, Int64Array, RecordBatch};
use parquet::arrow::ArrowWriter;
use parquet::arrow::arrow_reader::ParquetRecordBatchReaderBuilder;
use parquet::basic::{Compression, Encoding, ZstdLevel};
use parquet::file::properties::WriterProperties;
use parquet::schema::types::ColumnPath;

use crate::kept::{Columns, Kept};
use crate::race::Race;
use crate::stage::Stage;
use crate::table::{Row, Work};

pub(crate) fn rows(stage: &Stage) -> Vec<Row> {
    let recordings = stage.part();
    let kept = Kept::expected(&stage.vehicle, recordings.frames, 0);
    let batches: Vec<RecordBatch> = kept.0.iter().map(batch).collect();
    let [plain, split] = [Encoding::PLAIN, Encoding::BYTE_STREAM_SPLIT].map(properties);
    let path = stage.path("back.parquet");
    batches.iter().for_each(|batch| check(batch, &plain, &path));

    let column_bytes: u64 = batches.iter().flat_map(RecordBatch::columns).map(|column| 8 * column.len() as u64).sum();
    let [plain_bytes, split_bytes] = [&plain, &split].map(|properties| write(&batches, properties, &mut Vec::new()));
    let mut copies = kept.0.clone();
    let [mut plain_file, mut split_file] = [Vec::new(), Vec::new()];
    let mut race = Race::default();
    let copied = race.enter("copy", column_bytes, || copy(&kept, &mut copies));
    let plain_zstd = race.enter("parquet", plain_bytes, || write(&batches, &plain, &mut plain_file));
    let split_zstd = race.enter("parquet split", split_bytes, || write(&batches, &split, &mut split_file));
    let times = race.run(stage.rounds);

    let work = Work { item: "value", items: recordings.values(), bytes: column_bytes };
    let row = |measure, runner| Row::alone(work, measure, times.of(runner));
    let size = |bytes: u64| format!("{:.1} MB from {:.1} MB", bytes as f64 / 1e6, column_bytes as f64 / 1e6);
    vec![
        row("memcpy of the columns", copied),
        row("Parquet of doubles, Zstandard 1", plain_zstd).with_note(size(plain_bytes)),
        row("Parquet of doubles, bytes apart, Zstandard 1", split_zstd).with_note(size(split_bytes)),
    ]
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

fn batch(columns: &Columns) -> RecordBatch {
    let times: ArrayRef = Arc::new(Int64Array::from(columns.times_ns.clone()));
    let value = |(index, column): (usize, &Vec<f64>)| {
        let array: ArrayRef = Arc::new(Float64Array::from(column.clone()));
        (format!("signal_{index}"), array)
    };
    let values = columns.values.iter().enumerate().map(value);
    RecordBatch::try_from_iter([("time".to_owned(), times)].into_iter().chain(values))
        .expect("columns of one frame have one length")
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

/// Writes each batch as a file into `file`, one after the other; how many bytes they have together.
fn write(batches: &[RecordBatch], properties: &WriterProperties, file: &mut Vec<u8>) -> u64 {
    let mut bytes = 0;
    for batch in batches {
        file.clear();
        let mut writer =
            ArrowWriter::try_new(&mut *file, batch.schema(), Some(properties.clone())).expect("the schema is plain");
        writer.write(batch).expect("memory takes everything");
        writer.close().expect("memory takes everything");
        bytes += black_box(&*file).len() as u64;
    }
    bytes
}

/// That a batch reads back as it is.
fn check(batch: &RecordBatch, properties: &WriterProperties, path: &Path) {
    let mut file = Vec::new();
    write(std::slice::from_ref(batch), properties, &mut file);
    fs::write(path, file).expect("the temporary folder can be written to");
    let file = File::open(path).expect("it was just written");
    let reader = ParquetRecordBatchReaderBuilder::try_new(file).expect("it was just written");
    let mut back = reader.with_batch_size(batch.num_rows()).build().expect("it was just written");
    assert_eq!(&back.next().expect("it has rows").expect("it was just written"), batch);
}
