//! What the targets share: descriptions with every kind of signal, two ways of decoding held against each other, and all that can be made of a
//! database.

#[path = "../../crates/decode/tests/told/mod.rs"]
mod told;

use std::path::Path;
use std::sync::LazyLock;

use told::{told, told_flat};
use wirelore_codegen::rust_source;
use wirelore_decode::{Decoder, lorec};
use wirelore_draw::{LoadBars, MapOptions, VehicleMap};
use wirelore_lang::{FileLoader, check, check_text};
use wirelore_lorec::Lorec;
use wirelore_model::{Database, FrameId};
use wirelore_survey::budget::Budget;

/// A description made ready.
pub struct Described {
    pub database: Database,
    pub decoder: Decoder,
    pub table: Vec<u8>,
}

impl Described {
    fn new(database: Option<Database>) -> Self {
        let database = database.expect("the description has no mistakes");
        let decoder = Decoder::new(&database).expect("the description can be decoded");
        let table = lorec(&database).expect("the description fits in a table");
        Self { database, decoder, table }
    }

    /// The frame with this number, counted round.
    pub fn frame(&self, number: u8) -> FrameId {
        FrameId(u32::from(number) % self.database.frames.len() as u32)
    }
}

/// Every kind of signal and page, the corners of each, and the demo van.
pub static DESCRIBED: LazyLock<[Described; 3]> = LazyLock::new(|| {
    let of_text = |text: &str| Described::new(check_text("input.lore", text).database);
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../schema/demo/kestrel.lore");
    [
        of_text(include_str!("../../crates/decode/tests/tables.lore")),
        of_text(include_str!("../../crates/decode/tests/corners.lore")),
        Described::new(check(&[&demo.to_string_lossy()], &FileLoader).database),
    ]
});

/// The decoder and a flat table give the same readings of every row of a payload, and say the same of it.
pub fn compare_with_table(decoder: &Decoder, table: &Lorec<'_>, frame: FrameId, payload: &[u8]) {
    let mut rows = decoder.rows(frame, payload);
    let mut bytes = 0;
    while let Some(row) = rows.next_row() {
        bytes += row.len();
        assert!(bytes <= 65 * (payload.len() + 1), "rows have at most 64 bytes in front of each element");
        compare_row(decoder, table, frame, row);
    }
}

fn compare_row(decoder: &Decoder, table: &Lorec<'_>, frame: FrameId, payload: &[u8]) {
    let (mut by_decoder, mut by_table) = (Vec::new(), Vec::new());
    let outcome = decoder.decode(frame, payload, |signal, reading| by_decoder.push((signal.0, told(&reading))));
    let flat = table.frames().nth(frame.index()).expect("the table has every frame");
    let other = flat.decode(payload, |signal, reading| by_table.push((signal.position(), told_flat(&reading))));
    assert_eq!(by_decoder, by_table);
    let unmatched = outcome.unmatched.map(|it| (it.selector.0, it.bits));
    assert_eq!(
        (outcome.readings, outcome.too_short, unmatched),
        (other.readings, other.too_short, other.unmatched.map(|it| (it.selector, it.bits)))
    );
}

/// Every frame of a database with one payload, both ways.
pub fn decode_all(database: &Database, payload: &[u8]) {
    let (decoder, table) = match (Decoder::new(database), lorec(database)) {
        (Ok(decoder), Ok(table)) => (decoder, table),
        (Err(one), Err(other)) => return assert_eq!(one.to_string(), other.to_string()),
        (one, other) => panic!("the decoder says {:?}, and the table {:?}", one.err(), other.err()),
    };
    let table = Lorec::new(&table).expect("it was just written");
    for frame in (0..database.frames.len() as u32).map(FrameId) {
        compare_with_table(&decoder, &table, frame, payload);
    }
}

/// Source, pictures and figures.
pub fn make_all(database: &Database) {
    let _ = rust_source(database);
    let map = VehicleMap::new(database, MapOptions::default());
    let _ = (map.svg(), map.html(), map.text());
    let bars = LoadBars::new(database, &Budget::of(database), |_| true);
    let _ = (bars.svg(), bars.html());
}
