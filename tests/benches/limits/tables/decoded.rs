//! Tables in memory: what the tables of the workload are, ready for being written, and a receiver that only uses every value.

use std::io;
use std::sync::{Arc, Mutex, PoisonError};

use wirelore_decode::{Block, Column, Numbers, Options, Session, TableSink, Tables};
use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_tables::{RecordBatch, SchemaRef, Setup, Store, TableMaker, TableWriter, Times};

use crate::stage::{Recordings, Stage, add_value};

/// What the command takes when it is not told otherwise.
const MEMORY_BYTES: usize = 128 << 20;

/// The table of one frame.
pub(super) struct Ready {
    pub(super) schema: SchemaRef,
    pub(super) batches: Vec<RecordBatch>,
}

/// Keeps all batches.
#[derive(Debug, Clone, Default)]
struct Keep(Arc<Mutex<Vec<RecordBatch>>>);

impl TableWriter for Keep {
    fn most_rows(&self) -> usize {
        1 << 20
    }

    fn write(&mut self, batch: &RecordBatch) -> io::Result<()> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).push(batch.clone());
        Ok(())
    }

    fn finish(&mut self) -> io::Result<()> {
        Ok(())
    }
}

/// The tables of a recording.
pub(super) fn tables(stage: &Stage, recordings: &Recordings, store: Store) -> Vec<Ready> {
    let checked = check_text("workload.lore", &stage.vehicle.description());
    let database = checked.database.expect("the workload has no mistakes");
    let setup = Setup { store, states: false, times: Times::Recorded, memory_bytes: MEMORY_BYTES };
    let mut kept: Vec<(SchemaRef, Keep)> = Vec::new();
    let open = |_, schema: &SchemaRef| {
        let keep = Keep::default();
        kept.push((Arc::clone(schema), keep.clone()));
        Ok(Box::new(keep) as Box<dyn TableWriter>)
    };
    let mut maker = TableMaker::new(&database, &stage.decoder, |_, _| true, setup, open);
    let mut tables = Tables::new(&database, &stage.decoder, store.into(), |frame| maker.table(frame));
    run(stage, recordings, &mut tables);
    for (_, table) in tables.into_sinks() {
        table.finish().expect("memory takes everything");
    }
    drop(maker);
    let take = |keep: Keep| std::mem::take(&mut *keep.0.lock().unwrap_or_else(PoisonError::into_inner));
    kept.into_iter().map(|(schema, keep)| Ready { schema, batches: take(keep) }).collect()
}

/// Reads and decodes a recording and does nothing with the values but add them up.
pub(super) fn sum(stage: &Stage, recordings: &Recordings) -> u64 {
    let checked = check_text("workload.lore", &stage.vehicle.description());
    let database = checked.database.expect("the workload has no mistakes");
    let open = |_| Ok(Sum(0));
    let mut tables = Tables::new(&database, &stage.decoder, wirelore_decode::Store::Values, open);
    run(stage, recordings, &mut tables);
    tables.into_sinks().fold(0, |sum, (_, table)| sum.wrapping_add(table.0))
}

fn run<S: TableSink>(stage: &Stage, recordings: &Recordings, tables: &mut Tables<'_, S>) {
    let mut recording = Recording::open(&recordings.pcapng.path, &Default::default()).expect("it was just written");
    let mut session = Session::new(&stage.decoder, &Options::default()).expect("a session begins");
    session.run_tables(&mut recording, tables).expect("it was just written");
}

struct Sum(u64);

impl TableSink for Sum {
    fn block(&mut self, _block: &Block<'_>) {}

    fn column(&mut self, column: &Column<'_>) {
        if let Some(Numbers::F64(values)) = column.numbers() {
            values.iter().for_each(|value| add_value(&mut self.0, *value));
        }
    }
}
