//! Where frames come to be seen.

use super::*;

const MAP: &str = "\
network a can 500 kbit/s
network b can 500 kbit/s
network c can_fd 500 kbit/s
network seat lin 19.2 kbit/s
ecu sender on a
ecu first on a, b
ecu second on b, c
ecu reader on c, leads seat
";

fn with_map(rest: &str) -> Checked {
    check_text("gateways.lore", &format!("{MAP}{rest}"))
}

/// The networks and first identifiers of the first frame.
fn seen(checked: &Checked) -> Vec<String> {
    let database = database(checked);
    let show = |seen: &wirelore_model::Appearance| match &seen.identifier {
        wirelore_model::Identifier::Can { first, last, .. } if first == last => {
            format!("{} {first:X}", database.networks[seen.network.index()].label.name)
        }
        wirelore_model::Identifier::Can { first, last, .. } => {
            format!("{} {first:X}..{last:X}", database.networks[seen.network.index()].label.name)
        }
        wirelore_model::Identifier::Pgn { pgn, .. } => {
            format!("{} pgn {pgn}", database.networks[seen.network.index()].label.name)
        }
        other => format!("{other:?}"),
    };
    database.frames[0].seen_on.iter().map(show).collect()
}

#[test]
fn a_chain_of_gateways_in_any_order() {
    let forwards = with_map(
        "frame f on a id 0x100 { read by reader }\ngateway first { pass f from a to b as id 0x200 }\ngateway second { pass f from b to c }\n",
    );
    let backwards = with_map(
        "gateway second { pass f from b to c }\ngateway first { pass f from a to b as id 0x200 }\nframe f on a id 0x100 { read by reader }\n",
    );
    for checked in [forwards, backwards] {
        assert_eq!(seen(&checked), ["a 100", "b 200", "c 200"]);
        assert_eq!(rules(&checked), []);
    }
}

#[test]
fn a_reader_has_to_be_where_the_frame_comes() {
    let checked = with_map("frame f on a id 0x100 { read by reader }\ngateway first { pass f from a to b }\n");
    assert_eq!(rules(&checked), [Rule::ReaderNotOnNetwork]);
}

#[test]
fn everything_and_runs_of_identifiers_are_passed_on() {
    let all = "frame f on a id 0x100\nframe g on a id 0x101\ngateway first { pass all from a to b, except g }\ngateway second { pass all from b to c }\n";
    let checked = with_map(all);
    assert_eq!(seen(&checked), ["a 100", "b 100", "c 100"]);
    assert_eq!(database(&checked).frames[1].seen_on.len(), 1, "the excepted one stays");
    let checked =
        with_map("frame f on a id 0x7E0..0x7EF\ngateway first { pass id 0x7E8..0x7FF from a to b, every 10th }\n");
    assert_eq!(seen(&checked), ["a 7E0..7EF", "b 7E8..7EF"]);
    let checked =
        with_map("frame f on a pgn 65265\ngateway first { pass id 0x18FE0000..0x18FEFFFF extended from a to b }\n");
    assert_eq!(seen(&checked), ["a pgn 65265", "b pgn 65265"]);
}

#[test]
fn circles_of_gateways_come_to_an_end() {
    let checked = with_map(
        "frame f on a id 0x100\ngateway first {\n pass all from a to b\n pass all from b to a\n pass f from b to a as id 0x101\n pass f from a to b\n}\n",
    );
    assert_eq!(seen(&checked), ["a 100", "b 100", "a 101", "b 101"]);
}

#[test]
fn what_gateways_cannot_do() {
    let rule = |rest: &str| {
        rules(&with_map(&format!(
            "frame f on a id 0x100 {{ signal s in byte 0 }}\nframe g on b id 0x100 {{ signal t in byte 0 }}\n{rest}\n"
        )))
    };
    assert_eq!(rule("gateway first { pass f from a to b }"), [Rule::IdTaken]);
    assert_eq!(rule("gateway first { pass f from b to a }"), [Rule::PassFromNowhere]);
    assert_eq!(rule("gateway second { pass f from a to c }"), [Rule::PassWithoutGateway]);
    assert_eq!(rule("gateway first { pass f from a to a }"), [Rule::PassToItself]);
    assert_eq!(rule("gateway first { pass f from a to seat }"), [Rule::PassWithoutGateway]);
    let to_seat = |end: &str| {
        rule(&format!("frame h on c id 0x300 {{ length 2 }}\ngateway reader {{ pass h from c to seat{end} }}"))
    };
    assert_eq!(to_seat(""), [Rule::RecognitionDoesNotFit]);
    assert_eq!(to_seat(" as id 0x12"), []);
    assert_eq!(rule("gateway first { copy f.s from a to g.t on b }"), []);
    assert_eq!(rule("gateway first { copy f.s from b to g.t on b }"), [Rule::PassFromNowhere]);
    assert_eq!(rule("gateway first { copy f.x from a to g.t on b }"), [Rule::UnknownSignal]);
    assert_eq!(rule("gateway first { pass f from a to b as id 0x300, every 0 ms }"), [Rule::EveryZero]);
    assert_eq!(rule("gateway first { pass f from a to b as id 0x800 }"), [Rule::ExtendedMissing]);
}

#[test]
fn a_frame_has_to_fit_where_it_is_passed_to() {
    let checked = with_map("frame f on c id 0x100 { length 16 }\ngateway second { pass f from c to b }\n");
    assert_eq!(rules(&checked), [Rule::FrameTooLong]);
}

/// Longest messages: ISO 15765-2 and SAE J1939-21; frames of CAN XL: ISO 11898-1:2024, from memory.
#[test]
fn a_message_is_as_long_as_its_transport_lets_it_be() {
    let answers = "frame answers on a id 0x7E8, carried by iso_tp { length 1..4095 }\n";
    for line in ["pass answers from a to b", "pass all from a to b", "pass id 0x700..0x7FF from a to b"] {
        let checked = with_map(&format!("{answers}gateway first {{ {line} }}\n"));
        assert_eq!((seen(&checked), rules(&checked)), (vec!["a 7E8".to_owned(), "b 7E8".to_owned()], vec![]), "{line}");
    }
    let faults = "frame faults on a pgn 65226, carried by j1939_tp { length 8..1785 }\n";
    let passed = |line: &str| rules(&with_map(&format!("{faults}gateway first {{ {line} }}\n")));
    assert_eq!(passed("pass faults from a to b"), []);
    assert_eq!(passed("pass faults from a to b as id 0x100"), [Rule::TransportDoesNotFit]);
    let to_xl = |recognition: &str, line: &str| {
        let text = format!(
            "network x can_xl 500 kbit/s, data 10 Mbit/s\nnetwork y can_xl 500 kbit/s, data 10 Mbit/s\necu hub on x, y\n\
             frame f on x {recognition} {{ length 100 }}\ngateway hub {{ {line} }}\n"
        );
        rules(&check_text("test.lore", &text))
    };
    assert_eq!(to_xl("xl 7", "pass f from x to y"), []);
    assert_eq!(to_xl("xl 7", "pass f from x to y as id 0x100"), [Rule::FrameTooLong]);
}

#[test]
fn a_broken_line_makes_nothing_else_seem_wrong() {
    let checked = with_map(
        "frame f on a id 0x100 { read by reader }\ngateway first { pass f from a to bb }\ngateway second { pass f from b to c }\n",
    );
    assert_eq!(rules(&checked), [Rule::UnknownNetwork]);
}
