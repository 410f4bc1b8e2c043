//! A frame's table as csv: a line each row, a column for each signal with its unit in the heading.

use std::fmt;
use std::io::{self, Write};

use arrow_array::cast::AsArray;
use arrow_array::types::{
    DurationNanosecondType, Float32Type, Float64Type, Int8Type, Int16Type, Int32Type, Int64Type,
    TimestampNanosecondType, UInt8Type, UInt16Type, UInt32Type, UInt64Type,
};
use arrow_array::{Array, ArrowPrimitiveType, RecordBatch};
use arrow_schema::{DataType, Field, TimeUnit};
use wirelore_decode::Source;
use wirelore_tables::{SchemaRef, TableWriter};

use super::cell::push_hex;
use super::csv::Fields;
use super::{CHUNK_BYTES, pass_on};
use crate::args::TimeBase;
use crate::moment::Clock;
use crate::number::{push_double, push_integer};

/// The largest identifier of 11 bits.
const LARGEST_STANDARD: u32 = 0x7FF;

/// Writes the rows of one table as lines.
pub(crate) struct FramesCsv<W> {
    /// The times of a table count from where they should already.
    clock: Clock,
    fields: Fields,
    to: W,
    lines: Vec<u8>,
}

impl<W: Write> FramesCsv<W> {
    pub(crate) fn new(schema: &SchemaRef, times: TimeBase, fields: Fields, to: W) -> Self {
        let base = if times == TimeBase::Clock { TimeBase::Clock } else { TimeBase::Recorded };
        let headings: Vec<String> = schema.fields().iter().map(|field| fields.text(&heading(field))).collect();
        Self { clock: Clock::new(base), fields, to, lines: format!("{}\n", headings.join(",")).into_bytes() }
    }

    fn pass_on(&mut self) -> io::Result<()> {
        self.to.write_all(&self.lines)?;
        self.lines.clear();
        self.to.flush()
    }
}

/// The name, and what the numbers are: their unit, or the way from raw numbers to it.
fn heading(field: &Field) -> String {
    let told = ["formula", "unit"].map(|key| field.metadata().get(key).map(String::as_str));
    // That a number is what was sent needs no words.
    let told = if told == [Some("raw"), None] { [None; 2] } else { told };
    match told.into_iter().flatten().collect::<Vec<_>>().join(" ") {
        nothing if nothing.is_empty() => field.name().clone(),
        words => format!("{} [{words}]", field.name()),
    }
}

impl<W: Write + Send> TableWriter for FramesCsv<W> {
    fn write(&mut self, batch: &RecordBatch) -> io::Result<()> {
        let schema = batch.schema_ref();
        let columns = batch.columns().iter().zip(schema.fields());
        let columns: Vec<Cells<'_>> =
            columns.map(|(column, field)| cells(column.as_ref(), field, self.clock, self.fields)).collect();
        for row in 0..batch.num_rows() {
            for (number, (column, push)) in batch.columns().iter().zip(&columns).enumerate() {
                if number > 0 {
                    self.lines.push(b',');
                }
                if column.is_valid(row) {
                    push(row, &mut self.lines);
                }
            }
            self.lines.push(b'\n');
            pass_on(&mut self.lines, &mut self.to, CHUNK_BYTES)?;
        }
        self.pass_on()
    }

    fn finish(&mut self) -> io::Result<()> {
        self.pass_on()
    }
}

impl<W> fmt::Debug for FramesCsv<W> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("FramesCsv").field("clock", &self.clock).finish_non_exhaustive()
    }
}

/// Appends the text of a column's cell.
type Cells<'a> = Box<dyn Fn(usize, &mut Vec<u8>) + 'a>;

fn cells<'a>(column: &'a dyn Array, field: &'a Field, clock: Clock, fields: Fields) -> Cells<'a> {
    if let Some(kinds) = field.metadata().get("sources") {
        return sources(column, kinds);
    }
    match column.data_type() {
        DataType::Duration(TimeUnit::Nanosecond) => times::<DurationNanosecondType>(column, clock),
        DataType::Timestamp(TimeUnit::Nanosecond, _) => times::<TimestampNanosecondType>(column, clock),
        DataType::Int8 => integers::<Int8Type>(column),
        DataType::Int16 => integers::<Int16Type>(column),
        DataType::Int32 => integers::<Int32Type>(column),
        DataType::Int64 => integers::<Int64Type>(column),
        DataType::UInt8 => integers::<UInt8Type>(column),
        DataType::UInt16 => integers::<UInt16Type>(column),
        DataType::UInt32 => integers::<UInt32Type>(column),
        DataType::UInt64 => integers::<UInt64Type>(column),
        DataType::Float32 => floats::<Float32Type>(column),
        DataType::Float64 => floats::<Float64Type>(column),
        DataType::Utf8 => {
            let texts = column.as_string::<i32>();
            Box::new(move |row, to| to.extend_from_slice(fields.text(texts.value(row)).as_bytes()))
        }
        DataType::Binary => {
            let bytes = column.as_binary::<i32>();
            Box::new(move |row, to| push_hex(bytes.value(row), to))
        }
        // Words are all that is left of what a table's columns can be.
        _ => {
            let words = column.as_dictionary::<Int32Type>();
            let texts: Vec<String> =
                words.values().as_string::<i32>().iter().map(|word| fields.text(word.unwrap_or_default())).collect();
            Box::new(move |row, to| to.extend_from_slice(texts[words.keys().value(row) as usize].as_bytes()))
        }
    }
}

fn times<T: ArrowPrimitiveType<Native = i64>>(column: &dyn Array, clock: Clock) -> Cells<'_> {
    let times = column.as_primitive::<T>();
    Box::new(move |row, to| clock.write(Some(times.value(row)), None, to))
}

fn integers<T: ArrowPrimitiveType>(column: &dyn Array) -> Cells<'_>
where
    T::Native: Into<i128>,
{
    let numbers = column.as_primitive::<T>();
    Box::new(move |row, to| push_integer(numbers.value(row).into(), to))
}

/// Who sent each frame, as it is written everywhere.
fn sources<'a>(column: &'a dyn Array, kinds: &str) -> Cells<'a> {
    let push = |source: Source, to: &mut Vec<u8>| to.extend_from_slice(source.to_string().as_bytes());
    if let Some(addresses) = column.as_primitive_opt::<UInt8Type>() {
        return Box::new(move |row, to| push(Source::Address(addresses.value(row)), to));
    }
    let identifiers = column.as_primitive::<UInt32Type>();
    let all_extended = !kinds.contains("11 bits");
    Box::new(move |row, to| {
        let id = identifiers.value(row);
        push(Source::Identifier { id, extended: all_extended || id > LARGEST_STANDARD }, to);
    })
}

fn floats<T: ArrowPrimitiveType>(column: &dyn Array) -> Cells<'_>
where
    T::Native: Into<f64>,
{
    let numbers = column.as_primitive::<T>();
    Box::new(move |row, to| push_double(numbers.value(row).into(), to))
}
