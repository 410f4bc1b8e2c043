//! Any bytes as a recording, in every way that a user can ask for: reading ends, and the report adds up.
#![no_main]

use std::io::Cursor;

use libfuzzer_sys::fuzz_target;
use wirelore_log::{ColumnMap, IdentifierOrder, LinePattern, Options, Recording};

fuzz_target!(|input: &[u8]| {
    let Some((way, bytes)) = input.split_first() else { return };
    let mut options = Options::default();
    match way % 4 {
        1 => options.columns = ColumnMap::parse("time=t:s, id=i:hex, data=d:hex").ok(),
        2 => options.line = LinePattern::parse("{time:s};{channel};{id:hex};{data:hex}").ok(),
        3 => options.identifiers = IdentifierOrder::Swapped,
        _ => {}
    }
    let reader = Box::new(Cursor::new(bytes.to_vec()));
    let Ok(mut recording) = Recording::from_reader(reader, "input", &options) else { return };
    let mut frames = 0_u64;
    while let Ok(Some(frame)) = recording.next() {
        assert!(frame.payload.len() <= 64, "a payload longer than any CAN FD frame");
        frames += 1;
    }
    let report = recording.report();
    let given = report.frames_read() - report.damaged - report.xl;
    assert_eq!(given, frames, "the report counts other frames than were given");
});
