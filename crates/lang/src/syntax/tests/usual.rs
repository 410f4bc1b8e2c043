//! The short way of reading a signal gives what the long one gives.

use super::super::cursor::Cursor;
use super::super::{Script, signal, usual};
use crate::FileId;

/// Reads a signal in both ways, and compares trees, messages and ends. Tells whether the short way was open.
fn is_usual(line: &str) -> bool {
    let [one, other] = [(); 2].map(|()| Script::new(line, FileId(0)));
    let begin = Cursor::start(&one);
    let mut signals = Vec::new();
    let Some(i) = usual::signal(begin, &mut signals) else { return false };
    let short_end = signal::clauses(i, &mut signals[0]);
    let (i, mut long) = signal::any_signal(Cursor::start(&other)).unwrap_or_else(|_| panic!("{line} has no name"));
    let long_end = signal::clauses(i, &mut long);
    assert_eq!(signals, [long], "{line}");
    assert_eq!(short_end.left(), long_end.left(), "{line}");
    assert_eq!(one.take_messages(), other.take_messages(), "{line}");
    true
}

#[test]
fn the_usual_signals() {
    for line in [
        "signal s in bit 6.5",
        "signal s \"Door, \\\"left\\\"\" in bits 1.4..0.0 motorola",
        "signal in in bits 3.7 unsigned # a comment",
        "signal s in bytes 0..1 intel signed = raw * 0.05 km/h, range -40..215.5",
        "signal s in byte 3 = raw / 256 - 40 °C, absent 0xFF, range -40..215, likely \"seen\"",
        "signal s in lsb 16 width 12 intel = raw + 1_000 %",
        "signal s in msb 0.7 width 16 motorola motorola bcd = raw",
        "signal s in byte 3 flag, states { 0 off, 1 on }",
        "signal s in byte 3 = raw * 1e-3 m/s²,\n    range 0..1,\n    range 2..3",
        "signal s in byte 3 = raw * 5V, range 0..1, rnge 3..4",
    ] {
        assert!(is_usual(line), "{line}");
    }
}

#[test]
fn what_is_left_to_the_long_way() {
    for line in [
        "signal",
        "signal 5x in byte 3",
        "signal s[1..2] in byte 3",
        "signal größe in byte 3",
        "signal s byte 3",
        "signal s in bits 1.4..0.0 then byte 3",
        "signal s in bits 1.4-0.0",
        "signal s in bits 1.4 to 0.0",
        "signal s in bit 1.4..0.0",
        "signal s in byte last",
        "signal s in byte 0x1",
        "signal s in byte 1F",
        "signal s in byte 1e3",
        "signal s in byte 12345678901",
        "signal s in bits 12..0",
        "signal s in bytes 0..3 text",
        "signal s in byte 3 sined = raw",
        "signal s in byte 3 range 0..1",
        "signal s in byte 3 km/h",
        "signal s in byte 3 = (raw - 40) * 2",
        "signal s in byte 3 = 2 * raw",
        "signal s in byte 3 = raw * 2 * 3",
        "signal s in byte 3 = raw + 2 * 3",
        "signal s in byte 3 = raw - 2 - 3",
        "signal s in byte 3 = raw x 2",
        "signal s in byte 3 = raw * 0,05",
        "signal s in byte 3 = raw * 0x10",
        "signal s in byte 3 = raw / 0",
        "signal s in byte 3 = raw * 1/min",
        "signal s in byte 3 = raw 1/min",
        "signal s in byte 3 = raw \"steps\"",
        "signal s in byte 3 = raw N m",
        "signal s in byte 3 = raw L / h",
        "signal s in byte 3 = raw \u{3bc}m",
        "signal s in byte 3 = raw V range 0..1",
        "signal s in byte 3 = curve { 0: 1, 2: 3 } V",
        "signal s in byte 3, 5",
        "signal s in byte 3 {",
    ] {
        assert!(!is_usual(line), "{line}");
    }
    // Only the clause is.
    for range in ["0,5..1", "0..1,5", "0-1", "= 0..1", "0x10..0x20", "0..1 km/h", "0..", "1..0"] {
        assert!(is_usual(&format!("signal s in byte 3 = raw V, range {range}, absent 3")), "{range}");
    }
}
