//! One mistake, one message, and everything around it is read.

use super::super::tree::{BodyKind, ItemKind};
use super::*;

/// What is told about one line inside of a frame, with a good line on either side that must survive.
fn told_inside(line: &str) -> Vec<(Rule, String)> {
    let text = format!(
        "frame f on d id 1 {{\n    signal before in byte 0\n    {line}\n    signal behind in byte 1\n}}\nvehicle v\n"
    );
    let (file, messages) = parse(&text, FileId(0));
    let names: Vec<_> = signals(&frames(&file)[0].body).iter().map(|signal| signal.head.name.value.clone()).collect();
    assert!(
        names.iter().any(|name| name == "before") && names.iter().any(|name| name == "behind"),
        "{names:?} are left around {line}"
    );
    assert!(matches!(file.items.last().unwrap().kind, ItemKind::Vehicle(_)), "the frame of {line} does not end");
    messages.iter().map(|message| (message.rule, text[message.site.span.range()].to_owned())).collect()
}

#[test]
fn one_message_for_one_mistake() {
    use Rule::*;
    let cases: &[(&str, &[(Rule, &str)])] = &[
        ("signal", &[(MissingPart, "")]),
        ("signal 5x in byte 3", &[(UnexpectedWord, "5x")]),
        ("signal s", &[(MissingPart, "")]),
        ("signal s in", &[(MissingPart, "")]),
        ("signal s byte 3 = raw V", &[(MissingPart, "")]),
        ("signal s in bite 3, absent 1", &[(UnexpectedWord, "bite")]),
        ("signal s in bits 12..0 = raw V", &[(BadNumber, "12")]),
        ("signal s in bits 1.4.. = raw V", &[(UnexpectedWord, "=")]),
        ("signal s in byte 3 sined = raw V", &[(UnexpectedWord, "sined")]),
        ("signal s in byte 3 V", &[(UnexpectedWord, "V")]),
        ("signal s in byte 3 = ", &[(MissingPart, "")]),
        ("signal s in byte 3 = raw *, range 0..3", &[(MissingPart, "")]),
        ("signal s in byte 3 = speed * 2 km/h", &[(UnexpectedWord, "speed")]),
        ("signal s in byte 3 = RAW * 2 km/h", &[(UnexpectedWord, "RAW")]),
        ("signal s in byte 3 = 2 raw", &[(UnexpectedWord, "raw")]),
        ("signal s in byte 3 = raw (2)", &[(UnexpectedWord, "(")]),
        ("signal s in byte 3 = (raw - 40 °C, absent 1", &[(UnexpectedWord, "°")]),
        ("signal s in byte 3 = (raw - 40", &[(MissingPart, "")]),
        ("signal s in byte 3 = raw * 0,05 km/h, range 0..3", &[(BadNumber, "0,05")]),
        ("signal s in byte 3 = raw * 1/min", &[(UnitUnclear, "1/min")]),
        ("signal s in byte 3 = raw L / h, absent 1", &[(UnexpectedWord, "L / h")]),
        ("signal s in byte 3 = raw µA", &[]),
        ("signal s in byte 3 = raw μA", &[(LookAlike, "μA")]),
        ("signal s in byte 3 = raw km/h range 0..300", &[(MissingComma, "")]),
        ("signal s in byte 3 states { 0 a }", &[(MissingComma, "")]),
        ("signal s in byte 3, rang 0..3, absnt 1", &[(UnknownClause, "rang"), (UnknownClause, "absnt")]),
        ("signal s in byte 3, colour 3, absent 1", &[(UnknownClause, "colour")]),
        ("signal s in byte 3, absent , fault 3", &[(MissingPart, "")]),
        ("signal s in byte 3, absent 0xZZ, 3, fault 3", &[(BadNumber, "0xZZ")]),
        ("signal s in byte 3, range 0..3, range 0..4", &[(RepeatedClause, "range")]),
        ("signal s in byte 3, absent 1,", &[(MissingPart, ",")]),
        ("signal s in byte 3, states { 0 a, x b, 3, 4 d }, absent 1", &[(UnexpectedWord, "x"), (MissingPart, "")]),
        ("signal s in byte 3, states { 0 a 1 b }", &[(MissingComma, "")]),
        ("signal s in byte 3 = curve { 0: 1, 2 }", &[(MissingPart, "")]),
        ("signal s \"title in byte 3 = raw V, absent 3", &[(UnclosedText, "\"title in byte 3 = raw V, absent 3")]),
        ("signal s in byte 3 § = raw V", &[(UnexpectedCharacter, "§")]),
        ("signal s§t in byte 3", &[(UnexpectedCharacter, "§")]),
        ("signal s in byte 3, counter 0", &[(MissingPart, "")]),
        ("signal s in byte 3, checksum xor8 bytes 0..3", &[(UnexpectedWord, "bytes")]),
        ("signal cell[1-12] in byte 3", &[(UnexpectedWord, "-")]),
        ("// signal s in byte 3", &[(UnknownStatement, "/")]),
        ("signal s in byte 3 // remark", &[(UnexpectedWord, "/")]),
        ("= 5", &[(UnknownStatement, "=")]),
        ("lenght 8", &[(UnknownStatement, "lenght")]),
        ("length", &[(MissingPart, "")]),
        ("length 8 9", &[(UnexpectedWord, "9")]),
        ("length 1e400000000", &[(BadNumber, "1e400000000")]),
        ("lots of stuff { a b { c } } here", &[(UnknownStatement, "lots")]),
        ("sent brakes", &[(UnexpectedWord, "brakes")]),
        ("sent by brakes evry 10 ms", &[(UnknownClause, "evry")]),
        ("sent by brakes every 10", &[(MissingPart, "")]),
        ("sent by brakes every 0.0000001 ms", &[(BadNumber, "0.0000001")]),
        ("every 20 ms while s is 1", &[(MissingPart, "")]),
        ("every 20 parsecs", &[(UnexpectedWord, "parsecs")]),
        ("read by", &[(MissingPart, "")]),
        ("when before = 3 {\n signal inner in byte 4\n }", &[(UnexpectedWord, "=")]),
        ("when before is 3", &[(MissingPart, "")]),
        ("wen before is 3 {\n }", &[(UnknownStatement, "wen")]),
        ("otherwise", &[(MissingPart, "")]),
        ("use layot wheel at byte 3", &[(UnexpectedWord, "layot")]),
        ("use layout wheel at 3", &[(UnexpectedWord, "at")]),
        ("unknown", &[(MissingPart, "")]),
        ("marks 1939", &[(UnexpectedWord, "1939")]),
        ("allow", &[(MissingPart, "")]),
        ("network n can", &[(UnknownStatement, "network")]),
        ("when before is 1\n {\n }", &[(UnexpectedWord, "{")]),
        ("{\n }", &[(UnknownStatement, "{")]),
    ];
    for (line, expected) in cases {
        let expected: Vec<_> = expected.iter().map(|&(rule, place)| (rule, place.to_owned())).collect();
        assert_eq!(told_inside(line), expected, "about: {line}");
    }
}

#[test]
fn items_recover_too() {
    use Rule::*;
    let cases: &[(&str, &[(Rule, &str)])] = &[
        ("edition", &[(MissingPart, "")]),
        ("edition one", &[(UnexpectedWord, "one")]),
        ("network n kan 500 kbit/s", &[(UnexpectedWord, "kan")]),
        ("network n serial 500 kbit/s, order intel", &[(UnexpectedWord, "serial")]),
        ("network n can 500", &[(MissingPart, "")]),
        ("network n can 500 kbit/s \"Late\"", &[(UnexpectedWord, "\"Late\"")]),
        ("network n can 0.0001 bit/s", &[(BadNumber, "0.0001")]),
        ("ecu a on d, adress 0x0B", &[(UnknownClause, "adress")]),
        ("ecu a on d on e", &[(MissingComma, ""), (RepeatedClause, "on")]),
        ("ecu a on d \"Late\"", &[(UnexpectedWord, "\"Late\"")]),
        ("wire a - b", &[(UnexpectedWord, "-")]),
        ("states s", &[(MissingPart, "")]),
        ("layout l", &[(MissingPart, "")]),
        ("layout l {\n length 8\n}", &[(UnknownStatement, "length")]),
        ("gateway g", &[(MissingPart, "")]),
        ("gateway g {\n pass f form a to b\n}", &[(UnexpectedWord, "form")]),
        ("gateway g {\n pass f from a to b, every 10nth\n}", &[(UnexpectedWord, "nth")]),
        ("gateway g {\n pass f from a to b, except c\n}", &[(UnexpectedWord, "except")]),
        ("gateway g {\n push f from a to b\n}", &[(UnknownStatement, "push")]),
        ("frame f id 1 {\n}", &[(UnexpectedWord, "id")]),
        ("frame f on d {\n}", &[(MissingPart, "")]),
        ("frame f on d id {\n}", &[(MissingPart, "")]),
        ("frame f on d id 3.00E+09 {\n}", &[(BadNumber, "3.00E+09")]),
        ("frame {\n signal s in bite 3\n}", &[(MissingPart, ""), (UnexpectedWord, "bite")]),
        ("frame f on d id 1\n{\n}", &[(UnexpectedWord, "{")]),
        ("frame f on d id 1, otional {\n}", &[(UnknownClause, "otional")]),
        ("signal s in byte 0", &[(UnknownStatement, "signal")]),
        ("}\n}", &[(StrayBrace, "}")]),
        ("use doors.lore", &[(UnexpectedWord, "doors")]),
        ("counting from the top", &[(UnexpectedWord, "the")]),
        ("order inetl", &[(UnexpectedWord, "inetl")]),
    ];
    for (item, expected) in cases {
        let text = format!("vehicle before\n{item}\nvehicle behind\n");
        let (file, messages) = parse(&text, FileId(0));
        let vehicles = file.items.iter().filter(|item| matches!(item.kind, ItemKind::Vehicle(_))).count();
        assert_eq!(vehicles, 2, "around: {item}");
        let found: Vec<_> = messages.iter().map(|message| (message.rule, &text[message.site.span.range()])).collect();
        assert_eq!(found, *expected, "about: {item}");
    }
}

#[test]
fn what_was_read_stays_in_the_tree() {
    let (file, _) = parse(
        "network n serial 500 kbit/s\nframe f on d oops {\n signal s in bite 3, absent 1\n signal t in byte 1, states { 0 a, oops }\n when u = 3 {\n signal v in byte 2\n }\n}\n",
        FileId(0),
    );
    assert!(matches!(&file.items[0].kind, ItemKind::Network(network) if network.kind.is_none()));
    let frame = frames(&file)[0];
    assert!(frame.recognition.is_none() && frame.on.is_some());
    let inside = signals(&frame.body);
    assert!(inside[0].place.is_none() && inside[0].incomplete && inside[0].extras().absent.len() == 1);
    assert!(inside[1].extras().states.is_some());
    assert!(
        matches!(&frame.body.items[2].kind, BodyKind::When(when) if when.tests.is_empty() && when.body.items.len() == 1)
    );
}

#[test]
fn a_comma_too_many_does_not_swallow_the_next_line() {
    let text = "frame f on d id 1 {\n signal a in byte 0,\n signal b in byte 1\n read by x,\n length 8\n}\n";
    assert_eq!(told(text), [(2, Rule::MissingPart, ","), (4, Rule::MissingPart, ",")]);
    let (file, _) = parse(text, FileId(0));
    assert_eq!(frames(&file)[0].body.items.len(), 4);
}

#[test]
fn the_block_that_lacks_its_brace_is_found() {
    // The inner one by its margin.
    let inner = "frame f on d id 1 {\n    when p is 1 {\n        length 8\n}\nframe g on d id 2 {\n}\n";
    let (file, messages) = parse(inner, FileId(0));
    assert_eq!(told(inner), [(2, Rule::UnclosedBlock, "{")]);
    assert_eq!(messages[0].elsewhere.len(), 2);
    assert_eq!(frames(&file).len(), 2);
    let outer = "frame f on d id 1 {\n    length 8\nframe g on d id 2 {\n}\n";
    assert_eq!(told(outer), [(1, Rule::UnclosedBlock, "{")]);
    let end = "frame f on d id 1 {\n    when p is 1 {\n";
    assert_eq!(told(end), [(2, Rule::UnclosedBlock, "{")]);
    let list = "states s {\n    0 a\nstates t { 0 b }\n";
    assert_eq!(told(list), [(1, Rule::UnclosedBlock, "{")]);
}

#[test]
fn a_forgotten_parenthesis_spoils_one_line() {
    let text =
        "frame f on d id 1 {\n signal a in byte 0 = (raw - 40\n signal b in byte 1 = raw)\n signal c in byte 2\n}\n";
    assert_eq!(told(text), [(2, Rule::MissingPart, ""), (3, Rule::UnexpectedWord, ")")]);
}

#[test]
fn an_allow_inside_a_block_needs_its_statement() {
    assert_eq!(
        told("frame f on d id 1 {\n length 8\n allow still-guessed\n}\n"),
        [(3, Rule::MissingPart, "allow still-guessed")]
    );
}

#[test]
fn after_five_hundred_messages_there_are_no_more() {
    let (_, messages) = parse(&"oops\n".repeat(10_000), FileId(0));
    assert_eq!(messages.len(), 500);
    assert!(messages[499].help.last().unwrap().contains("the last about this file"));
    let (_, messages) = parse(&"$\n".repeat(10_000), FileId(0));
    assert_eq!(messages.len(), 500);
    assert!(messages[499].help.last().unwrap().contains("the last about this file"));
    let (_, messages) = parse(&"$\n".repeat(500), FileId(0));
    assert!(!messages[499].help.last().unwrap().contains("the last about this file"));
}
