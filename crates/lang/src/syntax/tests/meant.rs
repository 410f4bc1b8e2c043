//! Slips that leave no doubt: one message each, an edit that mends it, and a tree as if it had been mended.

use super::*;

/// The text with the edit of its one message done.
fn mended(text: &str) -> String {
    let (_, messages) = parse(text, FileId(0));
    assert_eq!(messages.len(), 1, "{text}\n{messages:#?}");
    let fix = messages[0].fix.as_ref().unwrap_or_else(|| panic!("no edit for {text}\n{messages:#?}"));
    format!("{}{}{}", &text[..fix.site.span.start as usize], fix.text, &text[fix.site.span.end as usize..])
}

/// A tree without its places.
fn shape(file: &File) -> String {
    let tree = format!("{file:?}");
    let mut parts = tree.split("Span { ");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |shape, part| shape + part.split_once(" }").unwrap_or_default().1)
}

/// That each text has one message, that its edit makes the second text, and that both are read alike.
fn assert_mended(cases: &[(&str, &str)], around: impl Fn(&str) -> String) {
    for (wrong, right) in cases {
        let (wrong, right) = (around(wrong), around(right));
        assert_eq!(mended(&wrong), right);
        let (as_meant, _) = parse(&wrong, FileId(0));
        assert_eq!(shape(&as_meant), shape(&read(&right)), "{wrong}");
    }
}

fn in_frame(line: &str) -> String {
    format!(
        "frame f on d id 1 {{\n    signal before in byte 0\n    {line}\n    signal behind in byte 1\n}}\nvehicle v\n"
    )
}

fn between_items(item: &str) -> String {
    format!("vehicle before\n{item}\nvehicle behind\n")
}

#[test]
fn lists_end_where_they_were_meant_to() {
    let cases = [
        ("signal s in byte 3, states { 0 off, 1 on )", "signal s in byte 3, states { 0 off, 1 on }"),
        ("signal s in byte 3, states { 0 off, 1 on], absent 3", "signal s in byte 3, states { 0 off, 1 on}, absent 3"),
        ("signal s in byte 3, states { 0 off, 1 on", "signal s in byte 3, states { 0 off, 1 on }"),
        ("signal s in byte 3, states { 0 off, 1 on, absent 3", "signal s in byte 3, states { 0 off, 1 on }, absent 3"),
        ("signal s in byte 3, states 0 off, 1 on", "signal s in byte 3, states { 0 off, 1 on }"),
        ("signal s in byte 3, states 0 off, 1 on }", "signal s in byte 3, states { 0 off, 1 on }"),
        ("signal s in byte 3, states 0 off, 1 on, absent 3", "signal s in byte 3, states { 0 off, 1 on }, absent 3"),
        (
            "signal s in byte 3, states ( 0 off, 1 on ), absent 3",
            "signal s in byte 3, states { 0 off, 1 on }, absent 3",
        ),
        ("signal s in byte 3 = curve { 0: -40, 9: 150 °C", "signal s in byte 3 = curve { 0: -40, 9: 150 } °C"),
        ("signal s in byte 3 = curve { 0: -40, 9: 150) °C", "signal s in byte 3 = curve { 0: -40, 9: 150} °C"),
        ("signal s in byte 3 = curve { 0: -40, 9: 150", "signal s in byte 3 = curve { 0: -40, 9: 150 }"),
        (
            "signal s in byte 3 = curve { 0: -40, 9: 150 °C, absent 3",
            "signal s in byte 3 = curve { 0: -40, 9: 150 } °C, absent 3",
        ),
        ("signal s in byte 3, states {\n 0 off\n 1 on\n", "signal s in byte 3, states {\n 0 off\n 1 on }\n"),
        ("signal s in byte 3, states {\n 0 off\n 1 on )", "signal s in byte 3, states {\n 0 off\n 1 on }"),
    ];
    assert_mended(&cases, in_frame);
    let items = [
        ("states s { 0 off, 1 on )", "states s { 0 off, 1 on }"),
        ("states s { 0 off, 1 on", "states s { 0 off, 1 on }"),
        ("states s \"S\" 0 off, 1 on", "states s \"S\" { 0 off, 1 on }"),
        ("states s (0 off, 1 on)", "states s {0 off, 1 on}"),
    ];
    assert_mended(&items, between_items);
}

#[test]
fn a_list_leaves_the_brace_of_its_frame_alone() {
    for last in ["when x is 1 {}", "unknown byte 3", "sent by a", "read by a", "length 4", "every 20 ms", ""] {
        let around = |line: &str| format!("frame f on d id 1 {{\n    {line}\n    {last}\n}}\nvehicle v\n");
        let cases = [("signal s in byte 3, states { 0 off, 1 on", "signal s in byte 3, states { 0 off, 1 on }")];
        assert_mended(&cases, around);
    }
}

#[test]
fn other_mistakes_are_still_told() {
    let text =
        "frame f on d id 1 {\n signal a in byte 0, states { 0 off, 1 on )\n signal b in bite 1\n}\nnetwork n kan\n";
    assert_eq!(told(text).iter().map(|(line, ..)| *line).collect::<Vec<_>>(), [2, 3, 5]);
    let text = "frame f on d id 1 {\n signal a in byte 0, states { 0 off, 1 on,\n signal b in bite 1\n}\n";
    assert_eq!(told(text).iter().map(|(line, ..)| *line).collect::<Vec<_>>(), [2, 3]);
    let text = "frame f on d id 1 {\n signal a in byte 0, states { 0 off, x on, 2 b }\n}\n";
    assert_eq!(told(text), [(2, Rule::UnexpectedWord, "x")]);
}

#[test]
fn hexadecimal_numbers_without_their_prefix() {
    let cases = [
        ("signal s in byte 3, absent FF", "signal s in byte 3, absent 0xFF"),
        ("signal s in byte 3, absent 3, FE", "signal s in byte 3, absent 3, 0xFE"),
        ("signal s in byte 3, states { 0F off, 1 on }", "signal s in byte 3, states { 0x0F off, 1 on }"),
        ("signal s in byte 3, states { 0 off, FF on }", "signal s in byte 3, states { 0 off, 0xFF on }"),
        ("when before is 0B {\n }", "when before is 0x0B {\n }"),
        ("when before is 2F {\n }", "when before is 0x2F {\n }"),
    ];
    assert_mended(&cases, in_frame);
    let items = [
        ("frame f on d id 2F1 {\n}", "frame f on d id 0x2F1 {\n}"),
        ("frame f on d id 2E1 {\n}", "frame f on d id 0x2E1 {\n}"),
        ("frame f on d id F1 {\n}", "frame f on d id 0xF1 {\n}"),
        ("frame f on d id 18FEF100 extended {\n}", "frame f on d id 0x18FEF100 extended {\n}"),
        ("frame f on d pgn FEF1 {\n}", "frame f on d pgn 0xFEF1 {\n}"),
        ("ecu a on d, address 0B", "ecu a on d, address 0x0B"),
    ];
    assert_mended(&items, between_items);
    let (_, messages) = parse("frame f on d id 2F1 {\n}\n", FileId(0));
    assert_eq!(messages[0].help, ["hexadecimal numbers begin with `0x`: write `0x2F1`"]);
    // A word that may be the word of a state is none of them.
    read("frame f on d id 1 {\n when before is FF {\n }\n}\n");
}

#[test]
fn clauses_written_as_elsewhere() {
    let cases = [
        ("signal s in bits 5.3-4.0 = raw V", "signal s in bits 5.3..4.0 = raw V"),
        ("signal s in bytes 5 to 6", "signal s in bytes 5..6"),
        ("signal s in byte 5..6", "signal s in bytes 5..6"),
        ("signal s in byte 5..end text", "signal s in bytes 5..end text"),
        ("signal s in bit 5.3..5.0", "signal s in bits 5.3..5.0"),
        ("signal s in bytes 5..6 raw * 0.01 V", "signal s in bytes 5..6 = raw * 0.01 V"),
        ("signal s in bytes 5..6 (raw - 3) * 0.01 V", "signal s in bytes 5..6 = (raw - 3) * 0.01 V"),
        ("signal s in bytes 5..6 0.01 * raw V", "signal s in bytes 5..6 = 0.01 * raw V"),
        ("signal s in byte 5 curve { 0: 1, 2: 3 } V", "signal s in byte 5 = curve { 0: 1, 2: 3 } V"),
        ("signal s in byte 5 = raw * 0.01 N m, absent 3", "signal s in byte 5 = raw * 0.01 N·m, absent 3"),
        ("signal s in byte 5 = raw ° C", "signal s in byte 5 = raw °C"),
        ("signal s in byte 5 = raw x 0.01 V", "signal s in byte 5 = raw * 0.01 V"),
        ("signal s in byte 5 = raw + 2 X raw", "signal s in byte 5 = raw + 2 * raw"),
        ("signal s in byte 5, counter 0-14", "signal s in byte 5, counter 0..14"),
        ("signal s in byte 5, range 0-300", "signal s in byte 5, range 0..300"),
        ("signal s in byte 5, range -40 - -10", "signal s in byte 5, range -40..-10"),
        ("signal s in byte 5, absent = 3", "signal s in byte 5, absent 3"),
        ("signal s in byte 5, absent 250-254", "signal s in byte 5, absent 250..254"),
        ("length = 8", "length 8"),
        ("length: 8", "length 8"),
    ];
    assert_mended(&cases, in_frame);
    let items = [
        ("ecu bcm \"Body unit\" body", "ecu bcm \"Body unit\" on body"),
        ("ecu bcm body, drive, optional", "ecu bcm on body, drive, optional"),
        ("frame f on n id = 0x2F1 {\n}", "frame f on n id 0x2F1 {\n}"),
        ("frame f on n id 0x7E8-0x7EF {\n}", "frame f on n id 0x7E8..0x7EF {\n}"),
        ("frame f on n id 0x2F1 (\n length 8\n}", "frame f on n id 0x2F1 {\n length 8\n}"),
        ("frame f on n id 0x2F1, optional [\n length 8\n}", "frame f on n id 0x2F1, optional {\n length 8\n}"),
        (
            "frame f on n id 1 {\n when a is 1 (\n length 8\n }\n}",
            "frame f on n id 1 {\n when a is 1 {\n length 8\n }\n}",
        ),
    ];
    assert_mended(&items, between_items);
    assert_eq!(told("frame f on n id 0x2F1 (\n length 8\n)\n"), [(1, Rule::UnexpectedWord, "(")]);
}
