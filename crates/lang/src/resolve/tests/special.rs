//! Raw values that are no readings: written, marked by width, or by state words.

use wirelore_model::Meaning;

use super::*;

fn specials(declarations: &str, name: &str) -> (Vec<String>, Vec<String>) {
    let checked = check_text("special.lore", &format!("network n can 250 kbit/s\n{declarations}"));
    let signal = named(&database(&checked).frames[0], name);
    (signal.fault.iter().map(ToString::to_string).collect(), signal.absent.iter().map(ToString::to_string).collect())
}

fn pair(fault: &[&str], absent: &[&str]) -> (Vec<String>, Vec<String>) {
    (fault.iter().map(ToString::to_string).collect(), absent.iter().map(ToString::to_string).collect())
}

#[test]
fn marks_by_width() {
    let frame = "frame f on n pgn 65265 {\n    marks j1939\n    signal two in bits 0.1..0.0\n    signal one in bit 0.2\n    signal byte_wide in byte 1\n    \
        signal word in bytes 3..2\n    signal own in byte 4, absent 250\n    signal counts in byte 5, counter 0..255\n    signal three in bits 6.2..6.0\n    \
        signal sign in byte 7 signed\n}\n";
    assert_eq!(specials(frame, "two"), pair(&["0x2"], &["0x3"]));
    assert_eq!(specials(frame, "one"), pair(&[], &[]));
    assert_eq!(specials(frame, "byte_wide"), pair(&["0xFE"], &["0xFF"]));
    assert_eq!(specials(frame, "word"), pair(&["0xFE00..0xFEFF"], &["0xFF00..0xFFFF"]));
    assert_eq!(specials(frame, "own"), pair(&[], &["250"]));
    assert_eq!(specials(frame, "counts"), pair(&[], &[]));
    assert_eq!(specials(frame, "three"), pair(&["0x6"], &["0x7"]));
    assert_eq!(specials(frame, "sign"), pair(&["0xFE"], &["0xFF"]));
}

#[test]
fn states_that_name_the_values_keep_them() {
    let frame = "states s { 0 off, 1 on, 2 broken as fault }\nframe f on n id 1 {\n    marks j1939\n    signal a in bits 0.1..0.0, states s\n    \
        signal b in bits 0.3..0.2, states { 0 off, 3 never }\n}\n";
    assert_eq!(specials(frame, "a"), pair(&[], &["0x3"]));
    assert_eq!(specials(frame, "b"), pair(&["0x2"], &[]));
}

#[test]
fn patterns_and_numbers() {
    let frame = "frame f on n id 1 {\n    signal a in byte 0 signed, absent 0x80, fault -127\n}\n";
    assert_eq!(specials(frame, "a"), pair(&["-127"], &["0x80"]));
    let rule = |clause: &str| rules(&on_can(&format!("frame f on n id 1 {{ signal a in byte 0 {clause} }}\n")));
    assert_eq!(rule("signed, absent 128"), [Rule::SpecialOutsideWidth], "decimal values are numbers");
    assert_eq!(rule("signed, absent 0x7F..0x80"), [Rule::SpecialOutsideWidth], "from 127 to -128");
    assert_eq!(rule(", absent 0x100"), [Rule::SpecialOutsideWidth]);
    assert_eq!(rule(", absent 3..1"), [Rule::SpecialOutsideWidth]);
    assert_eq!(rule("bcd, absent 0xFF"), [Rule::SpecialOutsideWidth], "no decimal digits");
    assert_eq!(rule(", absent 255, fault 255"), [Rule::SpecialTwice]);
    assert_eq!(rule(", states { 255 unknown }, absent 0xFF"), [Rule::SpecialTwice]);
    assert_eq!(rule(", states { 255 unknown as absent }, absent 0xFF"), [], "says the same");
}

#[test]
fn tables_fit_the_signals_that_use_them() {
    let rule = |states: &str, signal: &str| {
        rules(&on_can(&format!("states s {{ {states} }}\nframe f on n id 1 {{ signal a in {signal}, states s }}\n")))
    };
    assert_eq!(rule("0 off, 3..10 on", "bits 0.1..0.0"), [Rule::StateOutsideWidth]);
    assert_eq!(rule("0 off, 0xFF none", "byte 0 signed"), []);
    assert_eq!(
        rule("-1 off, 0xFF none", "byte 0 signed"),
        [Rule::StateOutsideWidth],
        "the same value in 8 signed bits"
    );
    assert_eq!(rule("0..3 off, 2 on", "byte 0"), [Rule::StateOverlap], "told at the table, and there only");
    assert_eq!(rule("2 reserved, 3 on, 5..7 reserved", "byte 0"), [], "one word may stand for several runs");
}

#[test]
fn words_keep_their_meaning() {
    let checked = on_can(
        "states s \"Title\" { 0 off \"Off\", 14 broken as fault, 15 none as absent }\nframe f on n id 1 { signal a in byte 0, states s }\n",
    );
    let table = &database(&checked).states[0];
    let meanings: Vec<_> = table.words.iter().map(|word| word.meaning).collect();
    assert_eq!(meanings, [Meaning::Reading, Meaning::Fault, Meaning::Absent]);
    assert_eq!(table.words[0].title.as_deref(), Some("Off"));
}
