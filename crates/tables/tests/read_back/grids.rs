//! A grid as a table holds what the same grid holds as rows.

use std::io;
use std::sync::{Arc, Mutex};

use arrow_schema::SchemaRef;
use wirelore_decode::Decoder;
use wirelore_tables::{Grid, GridColumn, GridColumns, GridRows, GridTable, Setup, Store};

use crate::support::{Cell, Format, Memory, Said, cell, demo, expected, run, setup};

/// Every row as it comes: its time, and what each column holds.
type Rows = Arc<Mutex<Vec<(i64, Vec<Option<Said>>)>>>;

struct Gather(Rows);

impl GridRows for Gather {
    fn row(&mut self, at_ns: i64, first_ns: Option<i64>, columns: &[GridColumn]) -> io::Result<()> {
        let held = columns.iter().map(|column| Some(Said::of(&column.reading_at(at_ns)?, None)));
        self.0.lock().expect("nobody panics").push((at_ns - first_ns.unwrap_or(0), held.collect()));
        Ok(())
    }

    fn finish(&mut self) -> io::Result<()> {
        Ok(())
    }
}

const EVERY_NS: i64 = 50_000_000;

#[test]
fn a_grid_of_the_demo_drive() {
    let (database, recording) = demo();
    let decoder = Decoder::new(&database).expect("a decoder");
    let rows = Rows::default();
    let columns = GridColumns::for_people(&database, &decoder, |_, _, _| true);
    let titles: Vec<String> = columns.columns().iter().map(|column| column.name().to_owned()).collect();
    let mut grid = Grid::new(columns, EVERY_NS, Gather(Arc::clone(&rows)));
    run(&decoder, recording(), &mut grid);
    let remarks = grid.finish().expect("memory takes everything");
    let gold = rows.lock().expect("nobody panics");
    assert!(gold.len() > 1000, "{}", gold.len());

    for format in [Format::Parquet, Format::File, Format::Stream] {
        for (store, states) in [(Store::Values, true), (Store::Raw, false)] {
            let setup = Setup { store, states, memory_bytes: 1 << 20, ..setup() };
            let memory = Memory::default();
            let open = |schema: &SchemaRef| format.writer(schema, memory.clone());
            let (columns, table) =
                GridTable::open(&database, &decoder, |_, _, _| true, &setup, open).expect("memory takes everything");
            let mut grid = Grid::new(columns, EVERY_NS, table);
            run(&decoder, recording(), &mut grid);
            assert_eq!(grid.finish().expect("memory takes everything"), remarks);
            let (schema, batches) = format.read(memory.bytes());
            assert_eq!(schema.fields().len() - 1, titles.len() * if states { 2 } else { 1 });
            let mut rows = gold.iter();
            let mut compared = 0;
            for batch in &batches {
                for (row, (time_ns, held)) in (0..batch.num_rows()).zip(&mut rows) {
                    assert_eq!(cell(batch.column(0).as_ref(), row), Cell::Whole((*time_ns).into()));
                    for (place, held) in (1..).step_by(if states { 2 } else { 1 }).zip(held) {
                        let field = schema.field(place);
                        let (_, frame) = database.frame_named(&field.metadata()["frame"]).expect("described");
                        let (_, signal) = frame.signals_named(&field.metadata()["signal"]).next().expect("described");
                        let wanted = |held| expected(field.data_type(), store, held, signal.encoding());
                        let wanted = held.as_ref().map_or(Cell::Null, wanted);
                        assert_eq!(cell(batch.column(place).as_ref(), row), wanted, "{} {row}", field.name());
                        if states {
                            let state = held.as_ref().map(|held| held.state.clone()).filter(|state| !state.is_empty());
                            let wanted = state.map_or(Cell::Null, Cell::Words);
                            assert_eq!(cell(batch.column(place + 1).as_ref(), row), wanted, "{} {row}", field.name());
                        }
                        compared += 1;
                    }
                }
            }
            assert_eq!(rows.next().map(|row| row.0), None, "as many rows");
            assert!(compared > 100_000, "{compared}");
        }
    }
}
