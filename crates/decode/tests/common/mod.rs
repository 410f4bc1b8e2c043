//! A log read row by row and in tables: both must count the same.

use std::io;

use wirelore_decode::{
    Block, Column, Decoder, Event, Options, Reading, Session, Sink, Store, TableSink, Tables, Tally, Value,
};
use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_model::{Database, SignalId};

/// What a log gave.
pub(crate) struct Rows {
    /// Time in ns, frame and signal, value, and the source where one is told.
    pub(crate) lines: Vec<String>,
    pub(crate) tally: Tally,
}

/// Reads a log by a description.
pub(crate) fn read(description: &str, log: impl AsRef<[u8]>) -> Rows {
    let log = log.as_ref();
    let checked = check_text("test.lore", description);
    let told: Vec<String> = checked.diagnostics.iter().map(|diagnostic| format!("{diagnostic:?}")).collect();
    let database = checked.database.unwrap_or_else(|| panic!("{}", told.join("\n")));
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut rows = ByRow { database: &database, lines: Vec::new() };
    let mut session = Session::new(&decoder, &Options::default()).expect("a session");
    session.run(&mut recording(log), &mut rows).expect("it reads");

    let mut in_tables = Session::new(&decoder, &Options::default()).expect("a session");
    let mut tables = Tables::new(&database, &decoder, Store::Values, |_| Ok(Count));
    in_tables.run_tables(&mut recording(log), &mut tables).expect("it reads");
    assert_eq!(in_tables.tally(), session.tally(), "row by row and in tables");
    assert_eq!(session.tally().read, session.tally().sum_of_parts());
    Rows { lines: rows.lines, tally: session.tally().clone() }
}

fn recording(log: &[u8]) -> Recording {
    let reader = Box::new(io::Cursor::new(log.to_owned()));
    Recording::from_reader(reader, "test", &wirelore_log::Options::default()).expect("a log")
}

struct ByRow<'d> {
    database: &'d Database,
    lines: Vec<String>,
}

impl Sink for ByRow<'_> {
    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let frame = &self.database.frames[event.frame.index()];
        let value = match reading.value {
            Value::Integer(number) => number.to_string(),
            Value::Number(number) => number.to_string(),
            Value::Text(text) => text.into_owned(),
            other => format!("{other:?}"),
        };
        let source = event.source.map(|source| format!(" from {source}")).unwrap_or_default();
        let signal = &frame.signals[signal.index()].label.name;
        self.lines.push(format!("{} {}.{signal} {value}{source}", event.time_ns.unwrap_or(-1), frame.label.name));
    }
}

/// Takes tables and keeps nothing: only the counts are compared.
struct Count;

impl TableSink for Count {
    fn block(&mut self, _: &Block<'_>) {}

    fn column(&mut self, _: &Column<'_>) {}
}
