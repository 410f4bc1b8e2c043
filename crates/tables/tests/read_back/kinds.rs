//! Which columns there are, of which type, with which words beside them; and what each kind of reading becomes in each kind of column.

use std::fmt::Write;

use wirelore_lang::check_text;
use wirelore_model::Database;
use wirelore_tables::{Setup, Store, Times};

use crate::support::{Cell, Format, cell, log, setup, tables};

/// Every kind of signal that the language has.
const KINDS: &str = r#"
edition 1
vehicle kite "A van of paper"
network drive can_fd 500 kbit/s
network comfort can_fd 500 kbit/s
network heavy can 250 kbit/s
ecu hub on drive, comfort

## Every kind of signal.
frame kinds "All kinds" on drive id 0x100 {
    ## At the hub.
    signal speed "Speed" in bytes 1..0 = raw * 0.05 - 40 km/h, range 0..300, absent 0xFFFF, fault 0xFFFE
    signal ratio    in bytes 3..2 signed = raw / 256
    signal plain    in byte 4, guessed "moves with the lever"
    signal wide     in bytes 12..5
    signal wide_too in bytes 20..13 signed
    signal lever    in bits 21.3..21.0, states { 0 park, 1..3 forward, 14 broken as fault, 15 unknown as absent }
    signal digits   in byte 22 bcd
    signal half     in bytes 24..23 float = raw * 2 V
    signal single   in bytes 28..25 float
    signal time     in byte 29 sign_magnitude = raw °C
    signal probe    in byte 30 = curve { 10: 0, 20: 50 } kPa
    signal label    in bytes 31..34 text ascii
    signal rest     in bytes 35..end bytes
}
frame paged on drive id 0x101 {
    signal page in byte 0
    when page is 1 { signal value in byte 1 = raw * 0.5 bar }
    when page is 2 { signal value in byte 1 = raw * 0.5 bar }
    when page is 3 { signal value in byte 1 = raw °C }
}
frame twice on drive id 0x102 {
    signal left  in byte 0
    signal right in byte 1
    when left is 1 {
        signal value in byte 2
        signal inner in byte 4
        when inner is 1 { signal deep in byte 5 }
        when inner is 2 { signal deep in byte 5 }
    }
    when right is 1 { signal value in byte 3 }
}
frame group on heavy pgn 65265 { signal speed in bytes 2..1 = raw / 256 km/h }
frame answers on drive id 0x7E8..0x7EF, carried by iso_tp {
    length 1..10
    signal speed in byte 0
    signal last in byte 9
}
frame long_answers on heavy id 0x18DAF100..0x18DAF1FF extended { signal speed in byte 0 }
gateway hub { pass paged from drive to comfort as id 0x201 }
"#;

fn database() -> Database {
    let checked = check_text("kinds.lore", KINDS);
    let told: Vec<String> = checked.diagnostics.iter().map(|diagnostic| format!("{diagnostic:?}")).collect();
    checked.database.unwrap_or_else(|| panic!("{}", told.join("\n")))
}

const LOG: &str = "time,channel,id,ext,data\n\
    10.0,drive,0x100,0,E80300FF07FFFFFFFFFFFFFFFF00000000000000800125003C0000C03F8514414220007FFE0000000000000000000000\n\
    10.1,drive,0x100,0,FFFF000000010000000000200000000000000000\
    00050A00FC0000C07F05144142204301020000000000000000000000\n\
    10.2,drive,0x100,0,FEFF000000000000000000000000000000000000000F9900\n\
    9.9,drive,0x101,0,0114\n\
    ,comfort,0x201,0,0228\n\
    10.3,drive,0x101,0,0364\n\
    10.4,drive,0x102,0,01010A0B010C\n\
    10.5,drive,0x102,0,01000A0B020D\n\
    10.4,heavy,0x18FEF10B,1,FF3417FFFFFFFFFF\n\
    10.50,drive,0x7E8,0,100A010000000000\n\
    10.51,drive,0x7E9,0,100A020000000000\n\
    10.52,drive,0x7E9,0,210000000B000000\n\
    10.53,drive,0x7E8,0,210000000A000000\n\
    10.60,drive,0x7E8,0,0103000000000000\n\
    10.6,heavy,0x18DAF110,1,01\n\
    10.7,heavy,0x18DAF118,1,02\n";

/// The columns of each table as text: name, type, and what is told beside.
fn schemas(setup: Setup) -> String {
    let mut text = String::new();
    for (name, bytes) in tables(&database(), log(LOG), setup, Format::Parquet) {
        let (schema, _) = Format::Parquet.read(bytes);
        let _ = writeln!(text, "{name}");
        let mut pairs: Vec<_> = schema.metadata().iter().collect();
        pairs.sort();
        pairs.iter().for_each(|(key, value)| {
            let _ = writeln!(text, "    {key}: {value}");
        });
        for field in schema.fields() {
            let _ = writeln!(text, "  {} {}", field.name(), field.data_type());
            let mut pairs: Vec<_> = field.metadata().iter().collect();
            pairs.sort();
            pairs.iter().for_each(|(key, value)| {
                let _ = writeln!(text, "      {key}: {value}");
            });
        }
    }
    text
}

/// `BLESS=1` writes what the schemas are now; the difference is reviewed like any text.
#[test]
fn columns_are_as_is_written_down() {
    let mut text = schemas(setup());
    text.push_str("---- raw numbers, with states, in UTC\n");
    text.push_str(&schemas(Setup { store: Store::Raw, states: true, times: Times::Clock, ..setup() }));
    let text = text.replace(concat!("wirelore ", env!("CARGO_PKG_VERSION")), "wirelore VERSION");
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/read_back/schemas.txt");
    if std::env::var_os("BLESS").is_some() {
        std::fs::write(&path, &text).expect("written");
    }
    let known = std::fs::read_to_string(path).expect("it is there");
    assert!(known == text.replace("\r\n", "\n"), "{text}");
}

/// A column's cells, in the order of the rows.
fn column(setup: Setup, table: &str, name: &str) -> Vec<Cell> {
    column_of(Format::File, setup, table, name)
}

fn column_of(format: Format, setup: Setup, table: &str, name: &str) -> Vec<Cell> {
    let mut made = tables(&database(), log(LOG), setup, format);
    let bytes = made.remove(table).expect("it was seen");
    let (schema, batches) = format.read(bytes);
    let place = schema.index_of(name).expect("a column");
    let cells =
        batches.iter().flat_map(|batch| (0..batch.num_rows()).map(|row| cell(batch.column(place).as_ref(), row)));
    cells.collect()
}

fn double(value: f64) -> Cell {
    Cell::Double(value.to_bits())
}

fn words(text: &str) -> Cell {
    Cell::Words(text.to_owned())
}

#[test]
fn engineering_values() {
    let values = |name| column(setup(), "kinds", name);
    // 13 bytes up to the 48 of the frame.
    let rest = |first: &[u8]| Cell::Bytes([first, &[0; 11]].concat());
    // 0x03E8 = 1000: 1000 * 0.05 - 40 = 10; 0xFFFF is no reading, 0xFFFE a sensor fault.
    assert_eq!(values("speed"), [double(10.0), Cell::Null, Cell::Null]);
    assert_eq!(values("ratio"), [double(-1.0), double(0.0), double(0.0)]);
    assert_eq!(values("plain"), [double(7.0), double(0.0), double(0.0)]);
    // What a double would round: 2^64 - 1 and, beyond 2^53, an odd number; and the least of 64 bits.
    assert_eq!(values("wide"), [Cell::Whole(u64::MAX.into()), Cell::Whole((1 << 53) + 1), Cell::Whole(0)]);
    assert_eq!(values("wide_too"), [Cell::Whole(i64::MIN.into()), Cell::Whole(0), Cell::Whole(0)]);
    assert_eq!(values("lever"), [words("forward"), words("5"), Cell::Null]);
    // 0x25 is 25, 0x0A no decimal digits, 0x99 is 99.
    assert_eq!(values("digits"), [double(25.0), Cell::Null, double(99.0)]);
    // Half precision 0x3C00 is 1, 0xFC00 minus infinity (IEEE 754).
    assert_eq!(values("half"), [double(2.0), double(f64::NEG_INFINITY), Cell::Null]);
    assert_eq!(values("single")[0], double(1.5));
    assert!(matches!(values("single")[1], Cell::Double(bits) if f64::from_bits(bits).is_nan()));
    assert_eq!(values("time.2"), [double(-5.0), double(5.0), Cell::Null]);
    assert_eq!(values("probe"), [double(50.0), double(50.0), Cell::Null]);
    assert_eq!(values("label"), [words("AB "), words("AB C"), Cell::Null]);
    assert_eq!(values("rest"), [rest(&[0x7F, 0xFE]), rest(&[0x01, 0x02]), Cell::Null]);
}

#[test]
fn raw_numbers() {
    let raw = Setup { store: Store::Raw, states: true, ..setup() };
    let values = |name| column(raw, "kinds", name);
    assert_eq!(values("speed"), [Cell::Whole(1000), Cell::Null, Cell::Null]);
    assert_eq!(values("speed.state"), [Cell::Null, words("no reading"), words("sensor fault")]);
    assert_eq!(values("ratio"), [Cell::Whole(-256), Cell::Whole(0), Cell::Whole(0)]);
    assert_eq!(values("lever"), [Cell::Whole(1), Cell::Whole(5), Cell::Null]);
    assert_eq!(values("lever.state"), [words("forward"), Cell::Null, words("no reading; unknown")]);
    assert_eq!(
        values("half"),
        [Cell::Single(1.0_f32.to_bits()), Cell::Single(f32::NEG_INFINITY.to_bits()), Cell::Null]
    );
    // Not-a-number with all its bits.
    assert_eq!(values("single"), [Cell::Single(0x3FC0_0000), Cell::Single(0x7FC0_0000), Cell::Null]);
    assert_eq!(values("digits.state"), [Cell::Null, words("not decimal digits"), Cell::Null]);
    assert_eq!(values("probe.state"), [Cell::Null, Cell::Null, words("frame too short")]);
    let without = Setup { states: false, ..raw };
    for name in ["speed", "ratio", "lever", "digits", "half", "single", "probe", "wide"] {
        assert_eq!(column(without, "kinds", name), values(name));
    }
}

#[test]
fn times_networks_sources_and_pages() {
    let values = |times, table, name| column(Setup { times, ..setup() }, table, name);
    let whole = |value: i128| Cell::Whole(value * 100_000_000);
    assert_eq!(values(Times::Start, "paged", "time"), [whole(-1), Cell::Null, whole(3)]);
    assert_eq!(values(Times::Recorded, "paged", "time"), [whole(99), Cell::Null, whole(103)]);
    assert_eq!(values(Times::Clock, "paged", "time"), [whole(99), Cell::Null, whole(103)]);
    assert_eq!(values(Times::Start, "paged", "network"), [words("drive"), words("comfort"), words("drive")]);
    // One column for the same thing on two pages, another for another thing of that name.
    assert_eq!(values(Times::Start, "paged", "value"), [double(10.0), double(20.0), Cell::Null]);
    assert_eq!(values(Times::Start, "paged", "value.2"), [Cell::Null, Cell::Null, double(100.0)]);
    // Pages that may hold together keep their columns apart.
    assert_eq!(values(Times::Start, "twice", "value"), [double(10.0), double(10.0)]);
    assert_eq!(values(Times::Start, "twice", "value.2"), [double(11.0), Cell::Null]);
    assert_eq!(values(Times::Start, "twice", "deep"), [double(12.0), double(13.0)]);
    assert_eq!(values(Times::Start, "group", "source"), [Cell::Whole(0x0B)]);
    // 0x1734 = 5940; 5940 / 256 = 23.203125.
    assert_eq!(values(Times::Start, "group", "speed"), [double(23.203_125)]);
}

/// Two units answer under one description, in frames that are mixed (identifiers of ISO 15765-4, frames of ISO 15765-2, from memory).
#[test]
fn units_that_answer_at_once_have_rows_of_their_own() {
    for format in [Format::Parquet, Format::File, Format::Stream] {
        let values = |table, name| column_of(format, setup(), table, name);
        assert_eq!(values("answers", "source"), [Cell::Whole(0x7E9), Cell::Whole(0x7E8), Cell::Whole(0x7E8)]);
        assert_eq!(values("answers", "speed"), [double(2.0), double(1.0), double(3.0)]);
        assert_eq!(values("answers", "last"), [double(11.0), double(10.0), Cell::Null]);
        assert_eq!(values("long_answers", "source"), [Cell::Whole(0x18DA_F110), Cell::Whole(0x18DA_F118)]);
    }
}
