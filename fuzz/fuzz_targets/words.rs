//! Any text as what a person writes on the command line: it is refused or read, and numbers are read as the standard library reads them.
#![no_main]

use libfuzzer_sys::fuzz_target;
use wirelore_bits::{BitPosition, Ratio};
use wirelore_decode::{BindMap, Selection, Units, parse_assignment};
use wirelore_fuzz::DESCRIBED;
use wirelore_log::{ColumnMap, LinePattern};
use wirelore_model::{FrameId, Unit};

fuzz_target!(|input: &[u8]| {
    let Some((way, text)) = input.split_first() else { return };
    let Ok(text) = std::str::from_utf8(text) else { return };
    match way % 8 {
        0 => drop(ColumnMap::parse(text)),
        1 => drop(LinePattern::parse(text)),
        2 => drop(BindMap::parse(text)),
        3 => drop(Units::parse(text)),
        4 => DESCRIBED.iter().for_each(|described| drop(Selection::matching(&described.database, text))),
        5 => assignment(text),
        6 => number(text),
        _ => names(text),
    }
});

fn assignment(text: &str) {
    for described in DESCRIBED.iter() {
        for frame in (0..described.database.frames.len() as u32).map(FrameId) {
            let _ = parse_assignment(&described.database, frame, text);
        }
    }
}

fn number(text: &str) {
    if let Ok(ratio) = text.parse::<Ratio>() {
        assert_eq!(ratio.to_string().parse(), Ok(ratio), "written and read it is another number");
    }
    if let Ok(ratio) = Ratio::from_decimal(text) {
        let expected: f64 = text.replace('_', "").parse().expect("what is a decimal number here is one there");
        assert_eq!(ratio.to_f64(), expected);
    }
}

fn names(text: &str) {
    if let Ok(position) = text.parse::<BitPosition>() {
        assert_eq!(position.to_string().parse(), Ok(position));
    }
    if let Some(unit) = Unit::known(text) {
        assert_eq!(Unit::known(unit.as_str()), Some(unit));
    }
}
