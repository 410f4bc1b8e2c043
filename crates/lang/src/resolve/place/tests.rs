//! Places in all spellings and all ways of counting: text to most significant bit, least significant bit, width and order.

use wirelore_bits::ByteOrder;
use wirelore_model::{Content, Signal};

use crate::{Checked, Rule, check_text};

/// One signal in a frame of 32 bytes, with statements in front of it.
fn frame(statements: &str, place: &str) -> Checked {
    let text = format!(
        "network n can_fd 500 kbit/s\nframe f on n id 1 {{\n    length 32\n    {statements}\n    signal s in {place}\n}}\n"
    );
    check_text("places.lore", &text)
}

fn signal(checked: &Checked) -> &Signal {
    let database = checked.database.as_ref().unwrap_or_else(|| panic!("{:#?}", checked.diagnostics));
    &database.frames[0].signals[0]
}

/// `msb lsb width order`, for each piece.
fn read(statements: &str, place: &str) -> String {
    let checked = frame(statements, place);
    let Content::Number { field, .. } = &signal(&checked).content else { panic!("a number") };
    let pieces = field.places().iter().map(|piece| {
        let order = if piece.order() == ByteOrder::Intel { "intel" } else { "motorola" };
        let order = if piece.spans_bytes() { order } else { "-" };
        format!("{} {} {} {order}", piece.msb(), piece.lsb(), piece.width())
    });
    pieces.collect::<Vec<_>>().join(", ")
}

#[test]
fn all_spellings() {
    let cases = [
        // From the ends, most significant first.
        ("", "bits 1.4..0.0", "1.4 0.0 13 intel"),
        ("", "bits 0.4..1.0", "0.4 1.0 13 motorola"),
        ("", "bits 0.7..1.0 motorola", "0.7 1.0 16 motorola"),
        ("", "bits 6.3..4.7", "6.3 4.7 13 intel"),
        ("", "bits 2.5..2.1", "2.5 2.1 5 -"),
        ("", "bit 6.5", "6.5 6.5 1 -"),
        ("", "byte 3", "3.7 3.0 8 -"),
        ("", "bytes 0..1", "0.7 1.0 16 motorola"),
        ("", "bytes 1..0", "1.7 0.0 16 intel"),
        ("", "bytes 7..0", "7.7 0.0 64 intel"),
        ("", "byte last", "31.7 31.0 8 -"),
        ("", "bytes 30..end", "30.7 31.0 16 motorola"),
        ("", "bytes end..30", "31.7 30.0 16 intel"),
        // Byte and bit come from the digits, not from a fraction.
        ("", "bits 10.7..9.0", "10.7 9.0 16 intel"),
        ("", "bits 1.1..0.7", "1.1 0.7 3 intel"),
        // From one end, a width and an order; flat numbers are byte * 8 + bit.
        ("", "lsb 16 width 12 intel", "3.3 2.0 12 intel"),
        ("", "msb 7 width 16 motorola", "0.7 1.0 16 motorola"),
        ("", "lsb 8 width 16 motorola", "0.7 1.0 16 motorola"),
        ("", "msb 27 width 12 intel", "3.3 2.0 12 intel"),
        ("", "lsb 4.1 width 16 intel", "6.0 4.1 16 intel"),
        ("", "lsb 12 width 4 intel", "1.7 1.4 4 -"),
        // Several pieces, most significant first.
        ("", "bits 5.7..5.5 then bytes 4..3", "5.7 5.5 3 -, 4.7 3.0 16 intel"),
        ("", "bit 0.0 then bit 9.7 then bits 3.3..3.1", "0.0 0.0 1 -, 9.7 9.7 1 -, 3.3 3.1 3 -"),
        // Counting from 1 shifts bytes and bits, and leaves flat numbers and widths alone.
        ("counting from 1", "bits 2.5..1.1", "1.4 0.0 13 intel"),
        ("counting from 1", "bit 1.8", "0.7 0.7 1 -"),
        ("counting from 1", "byte 4", "3.7 3.0 8 -"),
        ("counting from 1", "bytes 3..2", "2.7 1.0 16 intel"),
        ("counting from 1", "bytes 3..2 then byte 1", "2.7 1.0 16 intel, 0.7 0.0 8 -"),
        ("counting from 1", "lsb 16 width 12 intel", "3.3 2.0 12 intel"),
        ("counting from 1", "lsb 3.1 width 12 intel", "3.3 2.0 12 intel"),
        ("counting from 1", "bytes 31..end", "30.7 31.0 16 motorola"),
        // Bits from the top: bit 0 is the most significant one of its byte.
        ("counting bits from the top", "bits 0.0..1.7", "0.7 1.0 16 motorola"),
        ("counting bits from the top", "bits 2.2..2.6", "2.5 2.1 5 -"),
        ("counting bits from the top", "bits 1.3..0.7", "1.4 0.0 13 intel"),
        ("counting bits from the top", "lsb 0 width 4 intel", "0.3 0.0 4 -"),
        ("counting from 1\n    counting bits from the top", "bits 1.1..1.3", "0.7 0.5 3 -"),
        ("counting from 1\n    counting bits from the top", "bits 1.1..2.8", "0.7 1.0 16 motorola"),
    ];
    for (statements, place, expected) in cases {
        assert_eq!(read(statements, place), expected, "{statements} {place}");
    }
}

#[test]
fn the_file_may_say_how_it_counts_and_the_frame_otherwise() {
    let text = "counting from 1\nnetwork n can 500 kbit/s\n\
        frame a on n id 1 { signal s in byte 1 }\n\
        frame b on n id 2 { counting from 0\n signal s in byte 1 }\n";
    let checked = check_text("counting.lore", text);
    let database = checked.database.expect("no errors");
    assert_eq!(database.frames[0].signals[0].needed_bytes(), 1);
    assert_eq!(database.frames[1].signals[0].needed_bytes(), 2);
}

/// The rule that the first error is about, and the message.
fn refused(statements: &str, place: &str) -> (Rule, String) {
    let checked = frame(statements, place);
    assert!(checked.database.is_none(), "{statements} {place}");
    (checked.diagnostics[0].rule, checked.diagnostics[0].message.clone())
}

#[test]
fn what_is_no_place() {
    let cases = [
        ("", "bits 0.3..0.7", Rule::EndsUpsideDown),
        ("counting bits from the top", "bits 0.7..0.3", Rule::EndsUpsideDown),
        ("", "bits 0.8..0.0", Rule::BitOutOfRange),
        ("", "bit 1.10", Rule::BitOutOfRange),
        ("counting from 1", "bit 0.1", Rule::BitOutOfRange),
        ("counting from 1", "bit 1.0", Rule::BitOutOfRange),
        ("counting from 1", "byte 0", Rule::BitOutOfRange),
        ("", "bytes 8..0", Rule::SignalTooWide),
        ("", "bytes 3..0 then bytes 12..8", Rule::SignalTooWide),
        ("", "lsb 0 width 65 intel", Rule::SignalTooWide),
        ("", "lsb 0 width 0 intel", Rule::SignalTooWide),
        ("", "bit 0.0 then bit 0.1 then bit 0.2 then bit 0.3 then bit 0.4", Rule::SignalTooWide),
        ("", "lsb 0 width 12", Rule::OrderMissing),
        ("", "byte 32", Rule::OutsideFrame),
        ("", "byte 4000000000", Rule::OutsideFrame),
        ("", "lsb 0 width 16 motorola", Rule::OutsideFrame),
        ("", "msb 0 width 16 intel", Rule::OutsideFrame),
        ("", "byte 3 then bits 3.1..3.0", Rule::SignalOverlap),
        ("", "bits 0.7..1.0 intel", Rule::OrderContradictsEnds),
        ("", "bytes 1..0 motorola", Rule::OrderContradictsEnds),
        ("order intel", "bytes 0..1", Rule::OrderContradictsEnds),
        ("order motorola", "bits 1.4..0.0", Rule::OrderContradictsEnds),
        ("", "bytes 3..1 text", Rule::EndsUpsideDown),
        ("", "bits 0.6..3.0 bytes", Rule::KindDoesNotFit),
        ("", "byte 1 then byte 2 text", Rule::KindDoesNotFit),
    ];
    for (statements, place, rule) in cases {
        assert_eq!(refused(statements, place).0, rule, "{statements} {place}");
    }
}

#[test]
fn messages_use_the_authors_way_of_counting() {
    assert_eq!(refused("", "byte 32").1, "signal `s` needs byte 32, but the frame ends with byte 31 (length 32)");
    assert_eq!(
        refused("counting from 1", "byte 33").1,
        "signal `s` needs byte 33, but the frame ends with byte 32 (length 32)"
    );
    let checked = frame("counting from 1", "bits 1.3..1.5");
    assert_eq!(checked.diagnostics[0].fix.as_ref().expect("a fix").text, "bits 1.5..1.3");
}

#[test]
fn a_word_behind_the_place_answers_for_it() {
    assert_eq!(read("order intel", "bytes 0..1 motorola"), "0.7 1.0 16 motorola");
    assert_eq!(read("order mixed", "bytes 0..1"), "0.7 1.0 16 motorola");
    assert_eq!(read("order motorola", "bits 2.7..2.0"), "2.7 2.0 8 -");
}

#[test]
fn the_end_of_the_payload_has_to_be_known() {
    let text = |length: &str| {
        format!(
            "network n can 500 kbit/s\nframe f on n id 1 {{\n    {length}\n    signal s in byte last\n    signal t in bytes 3..end text\n}}\n"
        )
    };
    let rules =
        |text: String| check_text("end.lore", &text).diagnostics.iter().map(|message| message.rule).collect::<Vec<_>>();
    assert_eq!(rules(text("length 2..8")), [Rule::LengthUnknown]);
    assert_eq!(rules(text("")), [Rule::LengthUnknown]);
    assert_eq!(rules(text("length 8")), [Rule::SignalOverlap], "the text reaches to the last byte too");
}
