//! Messages of thousands of bytes: batches stay as small as the memory asks for, and nothing is lost.

use std::fmt::Write as _;

use arrow_array::RecordBatch;
use arrow_schema::SchemaRef;
use wirelore_decode::Decoder;
use wirelore_lang::check_text;
use wirelore_model::Database;
use wirelore_tables::{Grid, GridTable, Setup};

use crate::support::{Cell, Format, Memory, cell, log, run, setup, tables};

const MESSAGES: &str = "network test can 500 kbit/s\n\
    frame stored on test id 0x7E8, carried by iso_tp { signal kind in byte 0\n signal data in bytes 1..end bytes }\n";

/// What a batch takes at most with 1 MiB of memory.
const BATCH_BYTES: usize = 3 << 18;

fn messages() -> Database {
    check_text("van.lore", MESSAGES).database.expect("no mistakes")
}

/// How many bytes stand behind the first of each message, in turn.
type Lengths = &'static [usize];

const MIXED: Lengths = &[1, 4094, 6, 2000, 100, 4000];
/// Whichever of them a row holds, it is long.
const LONG: Lengths = &[4094, 4000, 3900];

/// The bytes behind the first of a message.
fn data(lengths: Lengths, number: usize) -> Vec<u8> {
    let length = lengths[number % lengths.len()];
    (0..length).map(|at| (at * 3 + number) as u8).collect()
}

/// A log of such messages (ISO 15765-2: first frames and consecutive frames).
fn recorded(lengths: Lengths, count: usize) -> String {
    let (mut text, mut frames) = (String::from("time,id,data\n"), 0);
    let mut line = |payload: &[u8]| {
        let hex: String = payload.iter().map(|byte| format!("{byte:02X}")).collect();
        let _ = writeln!(text, "{}.{:04},0x7E8,{hex}", frames / 10_000, frames % 10_000);
        frames += 1;
    };
    for number in 0..count {
        let message: Vec<u8> = [number as u8].into_iter().chain(data(lengths, number)).collect();
        let head = [0x10 | (message.len() >> 8) as u8, message.len() as u8];
        if message.len() <= 7 {
            line(&[&[message.len() as u8], &message[..]].concat());
            continue;
        }
        line(&[&head, &message[..6]].concat());
        for (piece, sequence) in message[6..].chunks(7).zip((0..16).cycle().skip(1)) {
            line(&[&[0x20 | sequence], piece].concat());
        }
    }
    text
}

/// What a column of bytes takes.
fn held(batch: &RecordBatch, column: usize) -> usize {
    let bytes = |row| if let Cell::Bytes(bytes) = cell(batch.column(column).as_ref(), row) { bytes.len() } else { 0 };
    (0..batch.num_rows()).map(bytes).sum()
}

#[test]
fn batches_of_long_messages_have_fewer_rows() {
    let text = recorded(MIXED, 1200);
    for format in [Format::Parquet, Format::File, Format::Stream] {
        let made = tables(&messages(), log(&text), Setup { memory_bytes: 1 << 20, ..setup() }, format);
        let (_, batches) = format.read(made["stored"].clone());
        let mut number = 0;
        for batch in &batches {
            for row in 0..batch.num_rows() {
                assert_eq!(
                    cell(batch.column(2).as_ref(), row),
                    Cell::Bytes(data(MIXED, number)),
                    "{format:?} {number}"
                );
                number += 1;
            }
            // A reader of Parquet makes batches of its own.
            assert!(format == Format::Parquet || held(batch, 2) <= BATCH_BYTES, "{}", held(batch, 2));
        }
        assert_eq!(number, 1200);
        assert!(batches.len() > 1);
    }
}

#[test]
fn a_grid_holds_long_messages() {
    let (database, text) = (messages(), recorded(LONG, 240));
    let decoder = Decoder::new(&database).expect("a decoder");
    let setup = Setup { memory_bytes: 1 << 20, ..setup() };
    let memory = Memory::default();
    let open = |schema: &SchemaRef| Format::File.writer(schema, memory.clone());
    let (columns, table) =
        GridTable::open(&database, &decoder, |_, _, _| true, &setup, open).expect("memory takes everything");
    let mut grid = Grid::new(columns, 5_000_000, table);
    run(&decoder, log(&text), &mut grid);
    grid.finish().expect("memory takes everything");
    let (_, batches) = Format::File.read(memory.bytes());
    let mut compared = 0;
    let bytes: Vec<usize> = batches.iter().map(|batch| held(batch, 2)).collect();
    // Far more than one batch may take, so that only their bytes end them: all come to the same limit, but for a row.
    let (last, full) = bytes.split_last().expect("a batch");
    let (least, most) = (full.iter().min().expect("several"), full.iter().max().expect("several"));
    assert!(full.len() >= 10 && most - least <= 4094 && *least > BATCH_BYTES / 2, "{bytes:?}");
    assert!(most.max(last) <= &BATCH_BYTES, "{bytes:?}");
    for batch in &batches {
        for row in 0..batch.num_rows() {
            if let Cell::Double(number) = cell(batch.column(1).as_ref(), row) {
                let number = f64::from_bits(number) as usize;
                assert_eq!(cell(batch.column(2).as_ref(), row), Cell::Bytes(data(LONG, number)), "message {number}");
                compared += 1;
            }
        }
    }
    assert!(compared > 2000, "{compared} rows");
}
