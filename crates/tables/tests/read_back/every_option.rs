//! The demo drive and the truck's recording through every option: each cell is what the per-frame path gives.

use std::collections::BTreeMap;

use arrow_array::RecordBatch;
use arrow_schema::SchemaRef;
use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_model::{Database, Frame, SignalId};
use wirelore_tables::{Setup, Store, Times};

use crate::support::{Cell, Format, Row, cell, demo, expected, rows, setup, shared_recording, tables, tables_by};

/// All ways of making tables, the memory small enough for several row groups once.
fn setups() -> Vec<Setup> {
    let mut setups = Vec::new();
    for store in [Store::Values, Store::Raw] {
        for times in [Times::Start, Times::Recorded, Times::Clock] {
            setups.push(Setup { store, times, states: false, ..setup() });
        }
        setups.push(Setup { store, states: true, memory_bytes: 1 << 20, ..setup() });
    }
    setups
}

#[test]
fn the_demo_drive() {
    let (database, recording) = demo();
    let cells = compare(&database, recording);
    assert!(cells > 1_000_000, "{cells}");
}

#[test]
fn a_heavy_truck() {
    let Some(path) = shared_recording("heavy-truck-drive.csv") else { return };
    let checked = check_text("truck.lore", "use standard heavy_duty\n");
    let database = checked.database.expect("the standard description has no mistakes");
    let cells = compare(&database, || Recording::open(&path, &Default::default()).expect("it can be opened"));
    assert!(cells > 1_000_000, "{cells}");
}

/// Compares everything; how many cells that were.
fn compare(database: &Database, recording: impl Fn() -> Recording) -> u64 {
    let gold = rows(database, recording());
    let mut cells = 0;
    for setup in setups() {
        for format in [Format::Parquet, Format::File, Format::Stream] {
            let made = tables(database, recording(), setup, format);
            // The very same bytes come out on any number of threads.
            for threads in [2, 3, 7] {
                assert!(tables_by(threads, database, recording(), setup, format) == made, "{setup:?} {threads}");
            }
            assert_eq!(made.keys().collect::<Vec<_>>(), gold.keys().collect::<Vec<_>>());
            for (name, bytes) in made {
                let (_, frame) = database.frame_named(&name).expect("described");
                let (schema, batches) = format.read(bytes);
                let place = format!("{name}, {setup:?}, {format:?}");
                let count: usize = batches.iter().map(RecordBatch::num_rows).sum();
                assert_eq!(count, gold[&name].len(), "{place}");
                let mut rows = gold[&name].iter();
                for batch in &batches {
                    cells += compare_batch((frame, &setup), &schema, batch, &mut rows, &place);
                }
            }
        }
    }
    cells
}

fn compare_batch<'r>(
    (frame, setup): (&Frame, &Setup),
    schema: &SchemaRef,
    batch: &RecordBatch,
    rows: &mut impl Iterator<Item = &'r Row>,
    place: &str,
) -> u64 {
    let owners = owners(frame, schema);
    let mut cells = 0;
    for (row, gold) in (0..batch.num_rows()).zip(rows) {
        for (field, column) in schema.fields().iter().zip(batch.columns()) {
            let found = cell(column.as_ref(), row);
            let wanted = match (field.name().as_str(), owners.get(field.name().as_str())) {
                (_, Some((signals, is_state))) => {
                    let said = signals.iter().find_map(|signal| Some((signal, gold.signals.get(signal)?)));
                    match said {
                        None => Cell::Null,
                        Some((_, said)) if *is_state && said.state.is_empty() => Cell::Null,
                        Some((_, said)) if *is_state => Cell::Words(said.state.clone()),
                        Some((signal, said)) => {
                            let encoding = frame.signals[signal.index()].encoding();
                            expected(field.data_type(), setup.store, said, encoding)
                        }
                    }
                }
                ("time", None) => time(setup.times, gold),
                ("network", None) => Cell::Words(gold.network.clone()),
                ("source", None) => gold.source.map_or(Cell::Null, |source| Cell::Whole(source.number().into())),
                (other, None) => panic!("{place}: a column {other}"),
            };
            assert_eq!(found, wanted, "{place}, row {row}, {}", field.name());
            cells += 1;
        }
    }
    cells
}

fn time(times: Times, row: &Row) -> Cell {
    let first_ns = if times == Times::Start { row.first_ns.unwrap_or(0) } else { 0 };
    row.time_ns.map_or(Cell::Null, |time_ns| Cell::Whole(i128::from(time_ns) - i128::from(first_ns)))
}

/// The signals behind each column of a schema, by the signal that its metadata names; and whether it is a companion. Signals of one name
/// share a column here: in neither description do they differ in anything else.
fn owners<'s>(frame: &Frame, schema: &'s SchemaRef) -> BTreeMap<&'s str, (Vec<SignalId>, bool)> {
    let named = |name: &str| frame.signals_named(name).map(|(signal, _)| signal).collect::<Vec<_>>();
    let mut owners = BTreeMap::new();
    for field in schema.fields() {
        let name = field.name().as_str();
        if let Some(signal) = field.metadata().get("signal") {
            owners.insert(name, (named(signal), false));
        } else if let Some(of) = name.strip_suffix(".state") {
            owners.insert(name, (named(&schema.field_with_name(of).expect("its signal").metadata()["signal"]), true));
        }
    }
    owners
}
