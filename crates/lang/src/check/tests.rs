//! Whole descriptions: which messages come, and above all which do not.

mod edges;
mod lin;
mod most_told;
mod texts;

use crate::{Checked, Level, Rule, check_text};

/// A description on one network, behind a line that declares it.
fn on_can(rest: &str) -> Checked {
    check_text("test.lore", &format!("network n can 500 kbit/s\n{rest}"))
}

fn rules(checked: &Checked) -> Vec<Rule> {
    checked.diagnostics.iter().map(|message| message.rule).collect()
}

/// The rules about a frame with these statements, whose bytes 0 to 2 hold selectors.
fn frame(statements: &str) -> Vec<Rule> {
    rules(&on_can(&format!(
        "frame f on n id 1 {{\nsignal a in byte 0\nsignal b in byte 1\nsignal c in byte 2, states {{ 1 one, 2 two }}\n{statements}\n}}\n"
    )))
}

#[test]
fn pages_that_exclude_each_other_may_share_bits() {
    let shared = [Rule::SignalOverlap];
    assert_eq!(
        frame(
            "when a is 1 { signal x in byte 3 }\nwhen a is 2 { signal y in byte 3 }\notherwise { signal z in byte 3 }"
        ),
        []
    );
    assert_eq!(frame("when a is 1 { signal x in byte 3 }\nwhen b is 1 { signal y in byte 3 }"), shared);
    assert_eq!(frame("signal x in byte 3\nwhen b is 1 { signal y in byte 3 }"), shared);
    assert_eq!(frame("when b is 1 { signal y in byte 3 }\nsignal x in byte 3"), shared);
    assert_eq!(
        frame("when a is 1 { signal x in byte 3 }\nwhen a is 2 and b is 1 { signal y in byte 3 }"),
        [],
        "another switch, but never both"
    );
    assert_eq!(frame("when a is 1 { signal x in byte 3 }\nwhen a is 1..4 and b is 1 { signal y in byte 3 }"), shared);
    assert_eq!(
        frame("when a is 1 { signal x in byte 3 }\nsignal s in byte 4\nwhen a is 2 { signal y in byte 3 }"),
        [],
        "not beside each other, but never both"
    );
    assert_eq!(
        frame("when a is 1 { signal x in byte 3\n when b is 1 { signal y in byte 3 } }"),
        shared,
        "one inside the other"
    );
    assert_eq!(
        frame("when a is 1 { when b is 1 { signal y in byte 3 } }\nwhen a is 2 { when b is 1 { signal x in byte 3 } }"),
        []
    );
    assert_eq!(
        frame(
            "when a is 1 { when b is 1 { signal y in byte 3 } }\nwhen c is one { when b is 1 { signal x in byte 3 } }"
        ),
        shared
    );
    assert_eq!(
        frame(
            "when a is 1 { when b is 1 { signal y in byte 3 } }\nwhen c is one { when b is 2 { signal x in byte 3 } }"
        ),
        [],
        "b tells them apart"
    );
    let rest = "when a is 1..3 { signal x in byte 4 }\notherwise { signal y in byte 3 }\nsignal s in byte 5\n";
    assert_eq!(frame(&format!("{rest}when a is 2 {{ signal z in byte 3 }}")), [], "the rest leaves nothing to 2");
    assert_eq!(frame(&format!("{rest}when a is 3..4 {{ signal z in byte 3 }}")), shared);
    assert_eq!(frame("unknown byte 3\nunused bits 3.7..3.4"), shared);
    assert_eq!(frame("unknown byte 3\nunused bytes 4..7"), []);
}

#[test]
fn pages_of_a_switch_hold_for_different_values() {
    assert_eq!(
        frame("when a is 1, 4..6 { signal x in byte 3 }\nwhen a is 5 { signal y in byte 3 }"),
        [Rule::PageTwice]
    );
    assert_eq!(frame("when a is 1, 1 { signal x in byte 3 }"), [Rule::PageTwice]);
    assert_eq!(
        frame("when a is 1 and b is 1 { signal x in byte 3 }\nwhen b is 2 and a is 1 { signal y in byte 3 }"),
        []
    );
    assert_eq!(
        frame("when a is 1 and b is 1..3 { signal x in byte 3 }\nwhen b is 2 and a is 1 { signal y in byte 3 }"),
        [Rule::PageTwice]
    );
    assert_eq!(
        frame("when c is one { signal x in byte 3 }\nwhen c is 1 { signal y in byte 3 }"),
        [Rule::PageTwice],
        "a word and its number"
    );
}

#[test]
fn selectors_are_there_when_they_are_looked_at() {
    assert_eq!(frame("when d is 1 { signal x in byte 3 }"), [Rule::SelectorUnknown]);
    assert_eq!(frame("when d is 1 { signal d in byte 3 }"), [Rule::SelectorInBranch]);
    assert_eq!(
        frame("when a is 1 { signal d in byte 3 }\nwhen d is 1 { signal x in byte 4 }"),
        [Rule::SelectorInBranch]
    );
    assert_eq!(frame("when a is 1 { signal d in byte 3\n when d is 1 { signal x in byte 4 } }"), []);
    assert_eq!(
        frame("when d is 1 { signal x in byte 4 }\nsignal d in byte 3"),
        [],
        "the order of statements does not matter"
    );
    assert_eq!(frame("when a is 256 { signal x in byte 3 }"), [Rule::SelectorValue]);
    assert_eq!(frame("when c is three { signal x in byte 3 }"), [Rule::SelectorValue]);
    assert_eq!(frame("when a is one { signal x in byte 3 }"), [Rule::SelectorValue]);
    assert_eq!(frame("signal t in bytes 4..7 text\nwhen t is 1 { signal x in byte 3 }"), [Rule::SelectorValue]);
    assert_eq!(frame("every 10 ms while d is 1, else every 100 ms"), [Rule::SelectorUnknown]);
    assert_eq!(frame("every 10 ms while c is one, else every 100 ms"), []);
}

#[test]
fn what_is_left_for_otherwise_is_not_what_others_take() {
    let beside = |value: &str| {
        frame(&format!(
            "when a is 2..4 {{ }}\notherwise {{ signal x in byte 3 }}\nsignal s in byte 4\nwhen a is {value} {{ signal y in byte 3 }}"
        ))
    };
    for value in ["2", "3", "4", "2..4"] {
        assert_eq!(beside(value), [], "{value}");
    }
    for value in ["1", "5", "1..4", "2..5"] {
        assert_eq!(beside(value), [Rule::SignalOverlap], "{value}");
    }
}

#[test]
fn every_page_of_a_switch_is_compared_with_every_other_switch() {
    let two = "when a is 1 { signal x in byte 3 }\nwhen a is 2 { signal y in byte 3 }";
    assert_eq!(frame(&format!("when b is 1 {{ signal z in byte 3 }}\n{two}")), [Rule::SignalOverlap; 2]);
    assert_eq!(frame(&format!("{two}\nwhen b is 1 {{ signal z in byte 3 }}")), [Rule::SignalOverlap], "told once");
}

/// A selector that is not there is told, and nothing else that would follow from it.
#[test]
fn an_unknown_selector_makes_no_overlaps() {
    let (known, unknown) = ("when a is 1 { signal x in byte 3 }", "when d is 1 { signal y in byte 3 }");
    assert_eq!(frame(&format!("{known}\n{unknown}")), [Rule::SelectorUnknown]);
    assert_eq!(frame(&format!("{unknown}\n{known}")), [Rule::SelectorUnknown]);
}

#[test]
fn names_may_come_again_on_pages_beside_each_other() {
    assert_eq!(frame("when a is 1 { signal x in byte 3 }\nwhen a is 2 { signal x in byte 4 }"), []);
    assert_eq!(frame("when a is 1 { signal x in byte 3\n when b is 2 { signal x in byte 4 } }"), [Rule::NameTaken]);
    assert_eq!(frame("signal b in byte 5"), [Rule::NameTaken]);
}

#[test]
fn identifiers_belong_to_one_frame() {
    let taken = [Rule::IdTaken];
    let both = |one: &str, other: &str| rules(&on_can(&format!("frame f on n {one}\nframe g on n {other}\n")));
    assert_eq!(both("id 0x100", "id 0x100"), taken);
    assert_eq!(both("id 0x100", "id 0x10000100 extended"), []);
    assert_eq!(both("id 0x100..0x10F", "id 0x10F..0x11F"), taken);
    assert_eq!(both("id 0x100..0x10F", "id 0x110..0x11F"), []);
    assert_eq!(both("pgn 65265", "pgn 65265 from 0x0B"), taken);
    assert_eq!(both("pgn 65265 from 0x0A", "pgn 65265 from 0x0B"), []);
    assert_eq!(both("pgn 65265 priority 3", "pgn 65265 priority 6"), []);
    assert_eq!(both("pgn 65265 from 0x0B", "id 0x18FEF10B extended"), taken);
    assert_eq!(both("pgn 65265 from 0x0B", "id 0x18FEF10A extended"), []);
    assert_eq!(both("pgn 65265 from 0x0B", "id 0x18FEF100..0x18FEF1FF extended"), taken);
    assert_eq!(both("pgn 0xEF00 from 0x0B", "id 0x18EF120B extended"), taken, "whatever the destination");
    assert_eq!(both("pgn 0xEF00 priority 3", "id 0x18EF120B extended"), []);
    assert_eq!(both("pgn 65265 priority 6", "pgn 65265 from 0x0B priority 6"), taken);
    assert_eq!(both("pgn 65265 priority 6", "id 0x18FEF10B extended"), taken);
}

/// The ends of runs and of sources. From 0xF000 on the second byte of a group is no destination (SAE J1939-21, from memory).
#[test]
fn identifiers_meet_at_their_ends() {
    let taken = [Rule::IdTaken];
    let both = |one: &str, other: &str| rules(&on_can(&format!("frame f on n {one}\nframe g on n {other}\n")));
    assert_eq!(both("pgn 65265", "id 0x18FEF10B extended"), taken, "whatever the source");
    assert_eq!(both("pgn 65265 from 0", "id 0x18FEF100 extended"), taken);
    assert_eq!(both("pgn 65265", "id 0x18FEF1FF extended"), taken);
    assert_eq!(both("pgn 65265", "id 0x18FEF20B extended"), []);
    assert_eq!(both("pgn 0xF000", "id 0x18F0010B extended"), []);
    assert_eq!(both("pgn 0xEF00 from 0x0B", "id 0x18EF0100..0x18EF0200 extended"), taken);
    // A run over the end of one destination's sources.
    assert_eq!(both("pgn 0xEF00 from 0x0B", "id 0x18EF010C..0x18EF020A extended"), []);
    assert_eq!(both("pgn 0xEF00 from 0x80", "id 0x18EF01F0..0x18EF0205 extended"), []);
    assert_eq!(both("pgn 0xEF00 from 0xF0", "id 0x18EF01F0..0x18EF0205 extended"), taken);
    assert_eq!(both("pgn 0xEF00 from 5", "id 0x18EF01F0..0x18EF0205 extended"), taken);
    // What a run has behind the end of another one is still compared.
    let three = |ids: [&str; 3]| {
        rules(&on_can(&format!("frame f on n id {}\nframe g on n id {}\nframe h on n id {}\n", ids[0], ids[1], ids[2])))
    };
    assert_eq!(three(["0x100..0x10F", "0x108..0x120", "0x118..0x130"]), [Rule::IdTaken; 2]);
    assert_eq!(three(["0x100..0x120", "0x108..0x110", "0x118..0x130"]), [Rule::IdTaken; 2]);
    assert_eq!(three(["0x100..0x10F", "0x108..0x110", "0x118..0x130"]), taken);
}

#[test]
fn a_unit_that_only_sends_is_used() {
    let found = rules(&on_can("ecu a\nframe f on n id 1 { sent by a every 10 ms\n signal s in byte 0 }\n"));
    assert!(!found.contains(&Rule::EcuUnused), "{found:?}");
}

#[test]
fn allow_quiets_hints_and_warnings() {
    let name = "signal Speed in byte 3";
    assert_eq!(frame(name), [Rule::NameStyle]);
    assert_eq!(frame(&format!("allow name-style\n{name}")), []);
    assert_eq!(
        frame(&format!("{name}\nallow name-style\nsignal other in byte 4")),
        [Rule::NameStyle, Rule::AllowQuietsNothing]
    );
    let whole = |rest: &str| rules(&check_text("allow.lore", rest));
    assert_eq!(whole("allow name-style\n\nnetwork N can 500 kbit/s\nframe F on N id 1 { signal S in byte 0 }\n"), []);
    assert_eq!(whole("network n can 500 kbit/s\nallow name-style\nframe F on n id 1 { signal S in byte 0 }\n"), []);
    assert_eq!(
        whole(
            "network n can 500 kbit/s\nallow signal-overlap\nframe f on n id 1 {\n signal a in byte 0\n signal b in byte 0\n}\n"
        ),
        [Rule::AllowQuietsNothing, Rule::SignalOverlap]
    );
    let idle = |rest: &str| {
        let checked = check_text("allow.lore", rest);
        let found = checked.diagnostics.iter().find(|message| message.rule == Rule::AllowQuietsNothing);
        found.expect("a message").help[0].clone()
    };
    let errors_stay =
        idle("network n can 500 kbit/s\nallow signal-overlap\nframe f on n id 1 {\n signal a in byte 0\n}\n");
    assert!(errors_stay.starts_with("errors stay"), "{errors_stay}");
    let nothing = idle("network n can 500 kbit/s\nallow name-style\nframe f on n id 1 {\n signal a in byte 0\n}\n");
    assert!(nothing.starts_with("take it out"), "{nothing}");
    assert_eq!(whole("allow name-stile\n\nnetwork n can 500 kbit/s\nframe f on n id 1\n"), [Rule::UnknownRule]);
    assert_eq!(
        whole("allow allow-quiets-nothing\n\nallow name-style\nnetwork n can 500 kbit/s\nframe f on n id 1\n"),
        []
    );
}

#[test]
fn one_mistake_gives_one_message() {
    let cases = [
        (
            "frame f on m id 1 {\n sent by e\n read by e\n length 12\n signal a in byte 11\n}\necu e on n\n",
            Rule::UnknownNetwork,
        ),
        ("network m cna 500 kbit/s\nframe f on m id 1 {\n length 8\n signal a in byte 7\n}\n", Rule::UnexpectedWord),
        ("frame f on n id 1 {\n length 12\n signal a in byte 11\n}\n", Rule::FrameTooLong),
        (
            "frame f on n id 1 {\n signal a in bits 0.0..0.7\n when a is 1 { signal b in byte 1 }\n}\n",
            Rule::EndsUpsideDown,
        ),
        ("frame f on n id 0x800\necu e on n\n", Rule::ExtendedMissing),
        ("states s { 0 off }\nframe f on n id 1 { signal a in bits 0.0..0.7, states s }\n", Rule::EndsUpsideDown),
        ("frame f on n id 1 {\n sent by x\n}\n", Rule::UnknownEcu),
        (
            "frame f on n id 1 {\n signal a in byte 0\n when b is 1 { signal x in byte 1 }\n when b is 2 { signal y in byte 1 }\n signal z in byte 2\n}\n",
            Rule::SelectorUnknown,
        ),
    ];
    for (text, rule) in cases {
        let checked = on_can(text);
        let mut errors: Vec<_> = checked
            .diagnostics
            .iter()
            .filter(|message| message.level() == Level::Error)
            .map(|message| message.rule)
            .collect();
        errors.dedup();
        assert_eq!(errors, [rule], "{text}{:#?}", checked.diagnostics);
    }
}

#[test]
fn the_same_text_gives_the_same_messages() {
    let text = include_str!("../../rules/signal-overlap.md");
    let shown = |checked: Checked| format!("{:?}", checked.diagnostics);
    assert_eq!(shown(check_text("page.lore", text)), shown(check_text("page.lore", text)));
}

/// The example of the language's first page: every kind of item once.
#[test]
fn a_whole_file_has_no_errors() {
    let text = "edition 1
vehicle kestrel \"Kestrel L3, a delivery van that exists only here\"

network drive    \"Drive network\"                             can 500 kbit/s
network comfort  \"Body network, fault-tolerant low speed\"    can 125 kbit/s
network seat     \"Driver's seat sub-bus\"                     lin 19.2 kbit/s

ecu engine   \"Engine control unit\"          on drive
ecu gearbox  \"Transmission control unit\"    on drive
ecu brakes   \"Brake control unit\"           on drive
ecu hub      \"Central gateway\"              on drive, comfort
ecu seat_l   \"Driver's seat module\"         on comfort, leads seat
ecu motor_l  \"Seat height motor\"            on seat

wire brakes -> engine \"Brake light switch, discrete 12 V\"

states gear_position { 0 park, 1 reverse, 2 neutral, 3..10 forward \"Forward gear\", 15 unknown as absent }

## Speeds of the four wheels, from the hub sensors.
frame wheel_speeds on drive id 0x1B4 {
    sent by brakes every 10 ms
    read by engine, gearbox, hub
    length 8

    signal front_left   in bits 1.4..0.0 = raw * 0.05 km/h, range 0..300, absent 0x1FFF
    signal front_right  in bits 3.1..1.5 = raw * 0.05 km/h, range 0..300, absent 0x1FFF
    signal rear_left    in bits 4.6..3.2 = raw * 0.05 km/h, range 0..300, absent 0x1FFF
    signal rear_right   in bits 6.3..4.7 = raw * 0.05 km/h, range 0..300, absent 0x1FFF
    signal alive        in bits 6.7..6.4, counter 0..14, absent 15
    signal check        in byte 7, checksum crc8_sae_j1850 over bytes 0..6
}

frame shift_request on drive id 0x0C8 {
    sent by gearbox every 20 ms
    length 6
    signal torque_request in bytes 0..1 signed = raw * 0.1 N·m, range -500..1000
    signal target_gear    in bits 2.3..2.0, states gear_position
    signal page           in byte 3
    when page is 1 {
        signal oil_temperature in byte 4 = raw - 40 °C, absent 0xFF
    }
    when page is 2, 4..6 {
        signal line_pressure in bytes 5..4 = raw / 16 bar
    }
}

gateway hub {
    pass wheel_speeds from drive to comfort as id 0x3A0, every 100 ms, within 20 ms
}
";
    let checked = check_text("kestrel.lore", text);
    assert!(checked.diagnostics.is_empty(), "{:#?}", checked.diagnostics);
    let database = checked.database.expect("no errors");
    assert_eq!(
        (database.networks.len(), database.ecus.len(), database.frames.len(), database.routes.len()),
        (3, 6, 2, 1)
    );
    assert_eq!(database.frames[0].seen_on.len(), 2);
    assert_eq!(database.frames[0].label.note.as_deref(), Some("Speeds of the four wheels, from the hub sensors."));
}

/// The messages about a frame of one signal with this formula, and what its edit puts in.
fn of_unit(formula: &str) -> (Vec<Rule>, Option<String>) {
    let checked = on_can(&format!("frame f on n id 1 {{\nsignal a in byte 0 = {formula}\n}}\n"));
    let fix = checked.diagnostics.first().and_then(|message| message.fix.as_ref()).map(|fix| fix.text.clone());
    (rules(&checked), fix)
}

#[test]
fn charge_and_capacitance_are_asked_about() {
    assert_eq!(of_unit("raw - 40 C"), (vec![Rule::UnitUnusual], Some("°C".to_owned())));
    assert_eq!(of_unit("raw F"), (vec![Rule::UnitUnusual], Some("°F".to_owned())));
    for fine in ["raw K", "raw °C", "raw degF", "raw \"C\"", "raw µF", "raw Ah"] {
        assert_eq!(of_unit(fine), (vec![], None), "{fine}");
    }
    let allowed = on_can("frame f on n id 1 {\nallow unit-unusual\nsignal a in byte 0 = raw C\n}\n");
    assert_eq!(rules(&allowed), []);
}

#[test]
fn a_unit_that_is_written_out_leads_to_its_symbol() {
    for (name, symbol) in [("Volt", "V"), ("litre", "L"), ("celsius", "°C"), ("kph", "km/h"), ("lbs", "lb")] {
        assert_eq!(of_unit(&format!("raw {name}")), (vec![Rule::UnknownUnit], Some(symbol.to_owned())), "{name}");
        let checked = on_can(&format!("frame f on n id 1 {{\nsignal a in byte 0 = raw {name}\n}}\n"));
        assert!(checked.diagnostics[0].help.iter().all(|help| !help.contains("quotes")));
    }
}

#[test]
fn a_condition_with_a_hexadecimal_number_is_told_its_prefix() {
    let told = |text: &str| on_can(text).diagnostics[0].clone();
    let plain = told("frame f on n id 1 {\nsignal a in byte 0\nwhen a is FF { signal x in byte 1 }\n}\n");
    assert_eq!(plain.help[0], "hexadecimal numbers begin with `0x`: write `0xFF`");
    assert_eq!(plain.fix.expect("an edit").text, "0xFF");
    let named =
        told("frame f on n id 1 {\nsignal a in byte 0, states { 1 fed }\nwhen a is fee { signal x in byte 1 }\n}\n");
    assert_eq!(named.fix.expect("an edit").text, "fed");
}

#[test]
fn the_help_about_rules_and_rates_is_true() {
    let told = |text: &str| {
        let checked = check_text("t.lore", text);
        checked.diagnostics.iter().flat_map(|message| message.help.clone()).collect::<Vec<_>>().join(" ")
    };
    assert!(told("allow no-such-rule\n\nvehicle v\n").contains("begins with its grade and the name of its rule"));
    assert!(told("network n can 500 kbps\n").contains("`Gbit/s`"));
}
