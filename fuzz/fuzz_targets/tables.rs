//! Any bytes as a recording of a vehicle with every kind of signal: column by column gives what frame by frame gives.
#![no_main]

use std::collections::BTreeMap;
use std::io::Cursor;
use std::sync::{Arc, LazyLock, Mutex};

use libfuzzer_sys::fuzz_target;
use wirelore_decode::{
    Block, Column, Decoder, Event, Numbers, Options, Reading, Session, Sink, Store, TableSink, Tables,
};
use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_model::{Database, FrameId, SignalId};

static DATABASE: LazyLock<Database> = LazyLock::new(|| {
    let checked = check_text("tables.lore", include_str!("../../crates/decode/tests/tables.lore"));
    checked.database.expect("the description has no mistakes")
});

/// By frame and signal: the bits of each number, and whether its page was there.
type Seen = BTreeMap<(FrameId, SignalId), Vec<Option<u64>>>;

#[derive(Default)]
struct ByRow(Seen);

impl Sink for ByRow {
    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let number = reading.value.number().map(f64::to_bits);
        self.0.entry((event.frame, signal)).or_default().push(number);
    }
}

struct ByColumn(FrameId, Arc<Mutex<Seen>>);

impl TableSink for ByColumn {
    fn block(&mut self, _: &Block<'_>) {}

    fn column(&mut self, column: &Column<'_>) {
        let mut seen = self.1.lock().expect("nobody panicked");
        let rows = (0..).map_while(|row| Some((row, column.is_there(row)?)));
        for (row, _) in rows.filter(|(_, is_there)| *is_there) {
            let is_valid = column.valid().is_none_or(|valid| valid.has(row));
            let number = match column.numbers() {
                Some(Numbers::F64(numbers)) => Some(numbers[row]),
                Some(Numbers::U64(numbers)) => Some(numbers[row] as f64),
                Some(Numbers::I64(numbers)) => Some(numbers[row] as f64),
                Some(other) => panic!("{other:?} among engineering values"),
                None => None,
            };
            let number = number.filter(|_| is_valid).map(f64::to_bits);
            seen.entry((self.0, column.signal())).or_default().push(number);
        }
    }
}

fuzz_target!(|log: &[u8]| {
    let open =
        || Recording::from_reader(Box::new(Cursor::new(log.to_vec())), "input", &wirelore_log::Options::default());
    let Ok(mut recording) = open() else { return };
    let decoder = Decoder::new(&DATABASE).expect("the description can be decoded");
    let (mut rows, options) = (ByRow::default(), Options::default());
    let mut session = Session::new(&decoder, &options).expect("the options are plain");
    let by_row = session.run(&mut recording, &mut rows).map_err(|error| error.to_string());

    let seen = Arc::new(Mutex::new(Seen::new()));
    let mut tables = Tables::new(&DATABASE, &decoder, Store::Values, |frame| Ok(ByColumn(frame, Arc::clone(&seen))));
    let mut other = Session::new(&decoder, &options).expect("the options are plain");
    let by_column =
        other.run_tables(&mut open().expect("it opened before"), &mut tables).map_err(|error| error.to_string());
    assert_eq!(by_row, by_column);
    if by_row.is_ok() {
        assert_eq!(session.tally(), other.tally());
        assert_eq!(rows.0, *seen.lock().expect("nobody panicked"));
    }
});
