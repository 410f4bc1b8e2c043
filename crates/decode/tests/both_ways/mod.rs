//! Logs read frame by frame and column by column, and what they gave compared: every value to the bit, every special value, every count.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::io;
use std::sync::{Arc, Mutex};

use wirelore_decode::{
    Block, Column, Decoder, Event, Numbers, Options, Reading, Session, Setup, Sink, Source, Store, TableSink, Tables,
    Tally, Value, Verdict,
};
use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_model::{Database, FrameId, SignalId};

/// The database of a description without mistakes.
pub(crate) fn database(description: &str) -> Database {
    let checked = check_text("van.lore", description);
    let found: Vec<String> = checked.diagnostics.iter().map(|found| format!("{found:?}")).collect();
    checked.database.unwrap_or_else(|| panic!("{found:#?}"))
}

/// One reading, told so that equal texts mean equal bits.
fn told(reading: &Reading<'_>, verdict: Option<Verdict>) -> String {
    let mut text = String::new();
    let _ = match &reading.value {
        Value::Number(number) => write!(text, "number {:016X}", number.to_bits()),
        other => write!(text, "{other:?}"),
    };
    let _ = write!(text, " {:?} {} {:?} {verdict:?}", reading.word, reading.outside_range, reading.bits);
    text
}

/// Time, channel, network, source, and each signal's reading with the bits of its number.
pub(crate) type Row = (Option<i64>, u16, u32, Option<Source>, Vec<(SignalId, String, Option<u64>)>);
pub(crate) type ByFrame = BTreeMap<FrameId, Vec<Row>>;

#[derive(Default)]
struct ByRow(ByFrame, Vec<(SignalId, Verdict)>);

impl Sink for ByRow {
    fn begin(&mut self, event: &Event<'_>) {
        let rows = self.0.entry(event.frame).or_default();
        rows.push((event.time_ns, event.channel.0, event.network.0, event.source, Vec::new()));
        self.1.clear();
    }

    fn verdict(&mut self, _: &Event<'_>, signal: SignalId, verdict: Verdict) {
        self.1.push((signal, verdict));
    }

    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let row = self.0.get_mut(&event.frame).and_then(|rows| rows.last_mut()).expect("the frame began");
        let verdict = self.1.iter().find(|(checked, _)| *checked == signal).map(|(_, verdict)| *verdict);
        row.4.push((signal, told(&reading, verdict), reading.value.number().map(f64::to_bits)));
    }
}

struct Collect {
    frame: FrameId,
    rows: Vec<Row>,
    into: Arc<Mutex<ByFrame>>,
    begins: usize,
    columns: usize,
}

impl TableSink for Collect {
    fn block(&mut self, block: &Block<'_>) {
        (self.begins, self.columns) = (self.rows.len(), 0);
        assert_eq!(block.frame(), self.frame);
        assert_eq!(block.all_have_times(), (0..block.rows()).all(|row| block.has_time(row)));
        for row in 0..block.rows() {
            let time_ns = block.has_time(row).then_some(block.times_ns()[row]);
            let network = block.network(row).expect("a channel that is bound");
            self.rows.push((time_ns, block.channel(row).0, network.0, block.source(row), Vec::new()));
        }
    }

    fn column(&mut self, column: &Column<'_>) {
        assert_eq!(column.index(), self.columns);
        self.columns += 1;
        for (row, into) in self.rows[self.begins..].iter_mut().enumerate() {
            let Some(reading) = column.reading(row) else {
                assert!(column.valid().is_none_or(|valid| !valid.has(row)), "no page, no value");
                continue;
            };
            let number = match column.numbers() {
                _ if column.valid().is_some_and(|valid| !valid.has(row)) => None,
                Some(Numbers::F64(numbers)) => Some(numbers[row]),
                Some(Numbers::U64(numbers)) => Some(numbers[row] as f64),
                Some(Numbers::I64(numbers)) => Some(numbers[row] as f64),
                Some(other) => panic!("{other:?} among engineering values"),
                None => None,
            };
            into.4.push((column.signal(), told(&reading, column.verdict(row)), number.map(f64::to_bits)));
        }
    }
}

impl Drop for Collect {
    fn drop(&mut self) {
        self.into.lock().expect("nobody panicked").insert(self.frame, std::mem::take(&mut self.rows));
    }
}

fn by_rows(decoder: &Decoder, options: &Options, logs: &[String]) -> (ByFrame, Tally) {
    let mut session = Session::new(decoder, options).expect("a session");
    let mut sink = ByRow::default();
    for log in logs {
        session.run(&mut opened(log), &mut sink).expect("it is read");
    }
    sink.0.values_mut().flatten().for_each(|row| row.4.sort_by_key(|(signal, ..)| *signal));
    (sink.0, session.tally().clone())
}

/// What the tables of some recordings hold.
pub(crate) fn by_tables(
    database: &Database,
    decoder: &Decoder,
    options: &Options,
    recordings: impl IntoIterator<Item = Recording>,
) -> (ByFrame, Tally) {
    let mut session = Session::new(decoder, options).expect("a session");
    let into = Arc::new(Mutex::new(ByFrame::new()));
    let open = |frame| Ok(Collect { frame, rows: Vec::new(), into: Arc::clone(&into), begins: 0, columns: 0 });
    let mut tables = Tables::new(database, decoder, Store::Values, open);
    for mut recording in recordings {
        session.run_tables(&mut recording, &mut tables).expect("it is read");
    }
    drop(tables);
    let collected = into.lock().expect("nobody panicked").clone();
    (collected, session.tally().clone())
}

fn opened(log: &str) -> Recording {
    let reader = Box::new(io::Cursor::new(log.as_bytes().to_vec()));
    Recording::from_reader(reader, "log.csv", &wirelore_log::Options::default()).expect("it opens")
}

/// Compares both ways; what they gave.
pub(crate) fn compare(database: &Database, setup: &Setup, options: &Options, logs: &[String]) -> (ByFrame, Tally) {
    let decoder = Decoder::with(database, setup).expect("it can be decoded");
    let (rows, row_tally) = by_rows(&decoder, options, logs);
    let (tables, table_tally) = by_tables(database, &decoder, options, logs.iter().map(|log| opened(log)));
    assert_eq!(row_tally, table_tally);
    assert_eq!(rows.keys().collect::<Vec<_>>(), tables.keys().collect::<Vec<_>>());
    for (frame, rows) in &rows {
        let tables = &tables[frame];
        assert_eq!(rows.len(), tables.len(), "{frame:?}");
        for (number, (row, table)) in rows.iter().zip(tables).enumerate() {
            assert_eq!((row.0, row.1, row.2, row.3), (table.0, table.1, table.2, table.3), "{frame:?} row {number}");
            for (one, other) in row.4.iter().zip(&table.4) {
                assert_eq!((one.0, &one.1), (other.0, &other.1), "{frame:?} row {number}");
                assert_eq!(one.2, other.2, "{frame:?} row {number} {:?}: {}", one.0, one.1);
            }
            assert_eq!(row.4.len(), table.4.len(), "{frame:?} row {number}");
        }
    }
    (tables, table_tally)
}

/// Numbers that look random and are always the same.
pub(crate) struct Random(pub(crate) u64);

impl Random {
    pub(crate) fn next(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }
}
