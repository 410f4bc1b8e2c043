//! Where the elements of payloads that say several things end, told by the rows that are cut from them. The layouts are made up.

use wirelore_decode::Decoder;
use wirelore_lang::check_text;
use wirelore_model::FrameId;

/// The rows of a payload, as hexadecimal digits; behind those that are too short `cut`.
fn rows(group: &str, payload: &str) -> Vec<String> {
    rows_of(&format!("repeat from byte 1 to end as rows {{\nsignal p in byte 0\n{group}\n}}"), payload)
}

fn rows_of(frame: &str, payload: &str) -> Vec<String> {
    let text = format!(
        "network plug can 500 kbit/s\nframe a on plug id 0x7E8, carried by iso_tp {{\nsignal s in byte 0\n{frame}\n}}\n"
    );
    let checked = check_text("plug.lore", &text);
    let told: Vec<String> = checked.diagnostics.iter().map(|told| told.message.clone()).collect();
    let database = checked.database.unwrap_or_else(|| panic!("a description without mistakes: {told:?}"));
    let decoder = Decoder::new(&database).expect("a database that can be decoded");
    let payload: Vec<u8> = payload.split(' ').map(|pair| u8::from_str_radix(pair, 16).expect("two digits")).collect();
    let mut rows = decoder.rows(FrameId(0), &payload);
    let mut found = Vec::new();
    while let Some(row) = rows.next_row() {
        let mut told: Vec<String> = row.iter().map(|byte| format!("{byte:02X}")).collect();
        told.extend(decoder.decode(FrameId(0), row, |_, _| ()).too_short.then(|| "cut".to_owned()));
        found.push(told.join(" "));
    }
    found
}

#[test]
fn what_nobody_knows_or_uses_belongs_to_the_element() {
    let pages = "when p is 1 { unknown bytes 1..2 }\nwhen p is 2 { unused byte 1 }\n\
                 when p is 4 { signal x in byte 1\nunknown bytes 2..4 }";
    assert_eq!(rows(pages, "41 01 02 AA 02 00"), ["41 01 02 AA", "41 02 00"]);
    assert_eq!(rows(pages, "41 04 01 01 01 01 02 00"), ["41 04 01 01 01 01", "41 02 00"]);
    assert_eq!(rows("unknown byte 1", "41 01 02 03 04"), ["41 01 02", "41 03 04"]);
    let layout = "when p is 1 { unknown bits 1.3..1.0\nsignal q in bits 1.7..1.4 }\nwhen p is 2 {}";
    assert_eq!(rows(layout, "41 02 01 02 02"), ["41 02", "41 01 02", "41 02"]);
}

#[test]
fn what_reaches_further_than_unknown_bytes_is_not_cut_off() {
    let inner =
        "when p is 1 { signal q in byte 1\nunknown bytes 2..3\nwhen q is 9 { signal x in byte 5 }\notherwise {} }";
    assert_eq!(rows(inner, "41 01 09 01 01 01 07 01 08 01 01"), ["41 01 09 01 01 01 07", "41 01 08 01 01"]);
    let sized =
        "when p is 1 { signal n in byte 1\nunknown byte 2\nsignal t in bytes 3..end text, size n }\nwhen p is 2 {}";
    assert_eq!(rows(sized, "41 01 02 FF 61 62 02"), ["41 01 02 FF 61 62", "41 02"]);
    let open = "when p is 1 { unknown byte 1\nsignal t in bytes 2..end text }";
    assert_eq!(rows(open, "41 01 02 61 62 01"), ["41 01 02 61 62 01"]);
    let counted = "signal n in byte 1\nrepeat from byte 2 n times, up to 3, size 2 bytes { signal x in byte 0 }";
    assert_eq!(rows(counted, "41 01 02 05 00 06 00 01 00"), ["41 01 02 05 00 06 00", "41 01 00"]);
}

#[test]
fn the_innermost_length_holds_and_the_greater_one_of_two_beside_each_other() {
    let beside = "signal q in byte 1\nwhen p is 1 { length 5 }\notherwise {}\nwhen q is 1 { length 3 }\notherwise {}";
    assert_eq!(rows(beside, "41 01 01 00 00 00 02 01 00"), ["41 01 01 00 00 00", "41 02 01 00"]);
    let turned = "signal q in byte 1\nwhen q is 1 { length 3 }\notherwise {}\nwhen p is 1 { length 5 }\notherwise {}";
    assert_eq!(rows(turned, "41 01 01 00 00 00 02 01 00"), ["41 01 01 00 00 00", "41 02 01 00"]);
    let nested = "when p is 1 { length 6\nsignal q in byte 1\nwhen q is 1 { length 3 }\notherwise {} }";
    assert_eq!(rows(nested, "41 01 01 00 01 00 00 00 00 00"), ["41 01 01 00", "41 01 00 00 00 00 00"]);
    let both = "signal q in byte 1\nwhen p is 1 { length 6\nwhen q is 1 { length 3 }\notherwise {} }\notherwise {}\n\
                when q is 1 { length 4 }\notherwise {}";
    assert_eq!(rows(both, "41 01 01 00 00 01 00 00 00 00 00"), ["41 01 01 00 00", "41 01 00 00 00 00 00"]);
}

#[test]
fn a_text_goes_to_the_stated_end_of_its_element() {
    let text = "when p is 1 { length 3\nsignal t in bytes 1..end text }\nwhen p is 2 { length 4\nrepeat from byte 1 to end, up to 9 { signal f in byte 0 } }";
    assert_eq!(rows(text, "41 01 61 62 02 05 06 07 01 63 64"), ["41 01 61 62", "41 02 05 06 07", "41 01 63 64"]);
}

/// What is stated for the whole frame, or for a page around the group, is said of the payload and not of each of its rows.
#[test]
fn a_length_around_the_elements_is_not_asked_of_each() {
    let group = "repeat from byte 1 to end as rows { signal p in byte 0\nsignal q in byte 1 }";
    let payload = "41 01 02 03 04 05";
    let cut = ["41 01 02", "41 03 04", "41 05 cut"];
    assert_eq!(rows_of(&format!("length 6..40\n{group}"), payload), cut);
    assert_eq!(rows_of(&format!("length 6..40\nwhen s is 0x41 {{ {group} }}\notherwise {{}}"), payload), cut);
    assert_eq!(rows_of(&format!("when s is 0x41 {{ length 6\n{group} }}\notherwise {{ length 3 }}"), payload), cut);
    let beside = format!("when s is 0x41 {{ {group} }}\notherwise {{ length 3 }}");
    assert_eq!(rows_of(&beside, "7F 01"), ["7F 01 cut"]);
    assert_eq!(rows_of(&beside, "7F 01 02"), ["7F 01 02"]);
}

/// A length is how long an element is; bytes that nobody knows may be missing at the end of the payload.
#[test]
fn an_element_is_cut_off_where_it_is_shorter_than_stated() {
    let pages = "when p is 1 { length 3 }\nwhen p is 2 { unknown bytes 1..2 }\nwhen p is 3 { length 4\n\
                 signal q in byte 1\nwhen q is 9 { signal x in byte 2 }\notherwise {} }";
    assert_eq!(rows(pages, "41 01 AA AA 01 AA"), ["41 01 AA AA", "41 01 AA cut"]);
    assert_eq!(rows(pages, "41 02 AA AA 02 AA"), ["41 02 AA AA", "41 02 AA"]);
    assert_eq!(rows(pages, "41 03 09 01 AA 03 09 01"), ["41 03 09 01 AA", "41 03 09 01 cut"]);
}

#[test]
fn an_element_of_no_byte_at_all_takes_the_rest() {
    let sized = "repeat from byte 1 to end as rows { signal t in bytes 0..end text, size s }";
    assert_eq!(rows_of(sized, "02 61 62 63 64"), ["02 61 62", "02 63 64"]);
    assert_eq!(rows_of(sized, "00 61 62"), ["00 61 62"]);
}
