//! What files are: the same bytes for the same input, row groups as small as the memory asks for, tables without rows, receivers that fail.

use std::fmt::Write as _;
use std::io::{self, Write};

use arrow_schema::SchemaRef;
use parquet::file::reader::{FileReader, SerializedFileReader};
use wirelore_decode::{Decoder, Options, Session, SessionError, Tables};
use wirelore_lang::check_text;
use wirelore_model::{Database, FrameId};
use wirelore_tables::{Setup, TableMaker, arrow_file, arrow_stream, parquet_file};

use crate::support::{Format, Memory, demo, log, setup, tables};

const SPEED: &str = "network drive can 500 kbit/s\n\
    frame speed on drive id 0x1B4 { signal wheel in bytes 1..0 = raw * 0.05 km/h\n signal door in byte 2, states { 0 shut, 1 open } }\n";

fn speed() -> Database {
    check_text("van.lore", SPEED).database.expect("no mistakes")
}

fn long_log(frames: u32) -> String {
    let mut text = String::from("time,id,data\n");
    for number in 0..frames {
        let _ =
            writeln!(text, "{}.{:03},0x1B4,{:04X}{:02X}", number / 1000, number % 1000, number & 0xFFFF, number % 251);
    }
    text
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    let (database, recording) = demo();
    for format in [Format::Parquet, Format::File, Format::Stream] {
        let setup = Setup { states: true, ..setup() };
        assert_eq!(tables(&database, recording(), setup, format), tables(&database, recording(), setup, format));
    }
}

#[test]
fn less_memory_makes_smaller_row_groups() {
    let text = long_log(200_000);
    let groups = |memory_bytes| {
        let made = tables(&speed(), log(&text), Setup { memory_bytes, ..setup() }, Format::Parquet);
        let mut file = tempfile::tempfile().expect("a file");
        file.write_all(&made["speed"]).expect("written");
        let reader = SerializedFileReader::new(file).expect("a Parquet file");
        let rows: Vec<i64> = reader.metadata().row_groups().iter().map(|group| group.num_rows()).collect();
        assert_eq!(rows.iter().sum::<i64>(), 200_000);
        rows.len()
    };
    assert_eq!(groups(256 << 20), 1);
    assert!(groups(1 << 20) > 1);
}

#[test]
fn a_table_without_rows_is_a_file_with_columns() {
    let database = speed();
    let decoder = Decoder::new(&database).expect("a decoder");
    for format in [Format::Parquet, Format::File, Format::Stream] {
        let memory = Memory::default();
        let open = |_, schema: &SchemaRef| format.writer(schema, memory.clone());
        let table = TableMaker::new(&database, &decoder, |_, _| true, setup(), open).table(FrameId(0));
        assert_eq!(table.expect("memory takes everything").finish().expect("memory takes everything"), 0);
        let (schema, batches) = format.read(memory.bytes());
        assert_eq!(
            schema.fields().iter().map(|field| field.name().as_str()).collect::<Vec<_>>(),
            ["time", "wheel", "door"]
        );
        assert_eq!(batches.iter().map(|batch| batch.num_rows()).sum::<usize>(), 0);
    }
}

/// A dictionary grows with what turns up; the formats of Arrow take what is new only.
#[test]
fn words_that_turn_up_late_are_found_again() {
    let text = long_log(30_000);
    for format in [Format::Parquet, Format::File, Format::Stream] {
        let made = tables(&speed(), log(&text), Setup { memory_bytes: 1 << 20, ..setup() }, format);
        let (_, batches) = format.read(made["speed"].clone());
        let mut number = 0_u32;
        for batch in &batches {
            for row in 0..batch.num_rows() {
                let wanted = match number % 251 {
                    0 => "shut".to_owned(),
                    1 => "open".to_owned(),
                    other => other.to_string(),
                };
                assert_eq!(crate::support::cell(batch.column(2).as_ref(), row), crate::support::Cell::Words(wanted));
                number += 1;
            }
        }
        assert_eq!(number, 30_000);
    }
}

/// Takes so many bytes and then says that nobody reads any more.
#[derive(Debug)]
struct Leaves(usize);

impl Write for Leaves {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0 = self.0.checked_sub(bytes.len()).ok_or(io::ErrorKind::BrokenPipe)?;
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

#[test]
fn a_receiver_that_leaves_is_recognised() {
    let database = speed();
    let decoder = Decoder::new(&database).expect("a decoder");
    let text = long_log(100_000);
    for room in [0, 100, 5_000, 20_000] {
        for format in [Format::Parquet, Format::File, Format::Stream] {
            let open = |_, schema: &SchemaRef| match format {
                Format::Parquet => parquet_file(schema, Leaves(room)),
                Format::File => arrow_file(schema, Leaves(room)),
                Format::Stream => arrow_stream(schema, Leaves(room)),
            };
            let setup = Setup { memory_bytes: 1 << 20, ..setup() };
            let mut maker = TableMaker::new(&database, &decoder, |_, _| true, setup, open);
            let mut tables = Tables::new(&database, &decoder, setup.store.into(), |frame| maker.table(frame));
            let mut session = Session::new(&decoder, &Options::default()).expect("a session begins");
            let reason = match session.run_tables(&mut log(&text), &mut tables) {
                Err(SessionError::Sink(reason)) => reason,
                Err(other) => panic!("{other}"),
                Ok(()) => {
                    let finished = tables.into_sinks().map(|(_, table)| table.finish());
                    finished.collect::<Result<Vec<_>, _>>().expect_err("the receiver has left")
                }
            };
            assert_eq!(reason.kind(), io::ErrorKind::BrokenPipe, "{format:?} {room}: {reason}");
        }
    }
}
