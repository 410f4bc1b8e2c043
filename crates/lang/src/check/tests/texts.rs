//! What messages say, and where they point.

use super::{frame, on_can, rules};
use crate::{Rule, check_text};

/// The first message of a rule, and the text that it points at.
#[track_caller]
pub(super) fn told_and_shown(text: &str, rule: Rule) -> (String, String) {
    let checked = check_text("t.lore", text);
    let found = checked.diagnostics.iter().find(|message| message.rule == rule).expect("a message");
    let span = found.site.span;
    (found.message.clone(), text[span.start as usize..span.end as usize].to_owned())
}

#[track_caller]
pub(super) fn told(text: &str, rule: Rule) -> String {
    told_and_shown(text, rule).0
}

#[test]
fn messages_about_lin_say_what_and_where() {
    let (_, shown) = told_and_shown(
        "network doors lin 19.2 kbit/s\nnetwork seats lin 19.2 kbit/s\necu a leads doors\necu b leads seats, doors\n",
        Rule::TwoCommanders,
    );
    assert_eq!(shown, "doors");
    let with_length = |length: &str| {
        let text = format!(
            "network doors lin 19.2 kbit/s\necu a leads doors\nframe f on doors id 0x3C {{\n length {length}\n}}\n"
        );
        told(&text, Rule::DiagnosticLength)
    };
    assert!(with_length("4").ends_with("not 4"), "{}", with_length("4"));
    assert!(with_length("2..8").ends_with("not 2 to 8"), "{}", with_length("2..8"));
}

#[test]
fn the_message_about_an_answers_slot_points_at_the_answer() {
    let page = include_str!("../../../rules/answer-has-slot.md");
    let wrong = page.split("```lore\n").nth(1).and_then(|behind| behind.split("```").next()).expect("an example");
    let (_, shown) = told_and_shown(wrong, Rule::AnswerHasSlot);
    assert_eq!(shown, "handle_left");
}

#[test]
fn frames_that_can_meet_are_told_where() {
    let both = |network: &str, one: &str, other: &str| {
        told(&format!("network n {network}\nframe f on n {one}\nframe g on n {other}\n"), Rule::IdTaken)
    };
    let chassis = "flexray 10 Mbit/s, cycle 5 ms, static slots 62 of 32 bytes";
    let met = both(chassis, "slot 42 from cycle 0 every 4th channel b", "slot 42 channel b");
    assert!(met.starts_with("slot 42 in cycle 0 on channel b "), "{met}");
    let met = both(chassis, "slot 42 channel a", "slot 42 from cycle 3 every 4th channel a");
    assert!(met.starts_with("slot 42 in cycle 3 on channel a "), "{met}");
    let met = both("most", "function 0x22.0x01.0x0D2 operation 0xC", "function 0x22.0x01.0x0D2 operation 0xC");
    assert!(met.starts_with("function 0x22.0x01.0x0D2 with operation 0xC "), "{met}");
}

#[test]
fn rates_are_shown_in_their_largest_whole_unit() {
    let of = |rate: &str| told(&format!("network n can {rate}\nframe f on n id 1\n"), Rule::RateBeyondKind);
    assert!(of("2000 kbit/s").starts_with("2 Mbit/s is no rate"), "{}", of("2000 kbit/s"));
    assert!(of("1500 kbit/s").starts_with("1500 kbit/s is no rate"), "{}", of("1500 kbit/s"));
    let same = rules(&check_text("t.lore", "network n can_fd 500 kbit/s, data 500 kbit/s\nframe f on n id 1\n"));
    assert!(!same.contains(&Rule::RateBeyondKind), "{same:?}");
}

#[test]
fn the_odd_one_out_is_told_with_its_order() {
    let odd = |one: &str, [a, b, c]: [&str; 3]| {
        let others = format!("signal a in {a}\nsignal b in {b}\nsignal c in {c}\n");
        let text = format!("network n can 500 kbit/s\nframe f on n id 1 {{\nsignal odd in {one}\n{others}}}\n");
        told(&text, Rule::OrderOddOneOut)
    };
    let met = odd("bytes 0..1", ["bytes 3..2", "bytes 5..4", "bytes 7..6"]);
    assert!(met.contains("`odd` is Motorola") && met.ends_with("are Intel"), "{met}");
    let met = odd("bytes 1..0", ["bytes 2..3", "bytes 4..5", "bytes 6..7"]);
    assert!(met.contains("`odd` is Intel") && met.ends_with("are Motorola"), "{met}");
}

#[test]
fn what_sticks_out_of_its_element_is_told_in_bytes() {
    let of = |size: &str, place: &str| {
        let text = format!(
            "network n can 500 kbit/s\nframe f on n id 1 {{\nrepeat from byte 2 2 times, size {size} {{ signal x in {place} }}\n}}\n"
        );
        told(&text, Rule::OutsideFrame)
    };
    let met = of("2 bytes", "byte 2");
    assert!(met.contains(" needs byte 2 of its element, which has 2 bytes"), "{met}");
    let met = of("1 byte", "byte 1");
    assert!(met.contains(" needs byte 1 of its element, which has 1 byte"), "{met}");
    assert!(!met.ends_with("bytes"), "{met}");
}

#[test]
fn words_of_states_have_a_style_too() {
    assert_eq!(frame("signal s in byte 3, states { 0 Off, 1 on }"), [Rule::NameStyle]);
}

#[test]
fn ranges_that_are_not_reached_are_told_from_those_that_are_never_met() {
    let of = |range: &str| {
        let signal = format!("signal s in byte 0 = raw * 1 km/h, range {range}");
        told(&format!("network n can 500 kbit/s\nframe f on n id 1 {{\n{signal}\n}}\n"), Rule::RangeUnreachable)
    };
    for range in ["-5..-1", "256..300"] {
        assert!(of(range).ends_with("ever comes into this range"), "{range}: {}", of(range));
    }
    for range in ["-5..0", "255..300", "-1..256"] {
        assert!(of(range).ends_with("do not reach all of this range"), "{range}: {}", of(range));
    }
}

#[test]
fn what_is_said_of_a_raw_value_twice_is_told() {
    let text = "network n can 500 kbit/s\nframe f on n id 1 {\nsignal s in byte 0, absent 0xFF, fault 0xFE..0xFF\n}\n";
    let met = told(text, Rule::SpecialTwice);
    assert!(met.ends_with("is both `absent` and `fault`"), "{met}");
}

#[test]
fn the_identifier_that_a_group_shares_with_a_run_is_named() {
    let met = |one: &str, other: &str| {
        told(&format!("network n can 500 kbit/s\nframe f on n {one}\nframe g on n {other}\n"), Rule::IdTaken)
    };
    for (group, run, id) in [
        ("pgn 65265", "id 0x18FEF000..0x18FEF120 extended", "0x18FEF100"),
        ("pgn 65265 from 0x30, 0x15", "id 0x18FEF100..0x18FEF140 extended", "0x18FEF115"),
        ("pgn 65265 from 0x15", "id 0x18FEF115 extended", "0x18FEF115"),
        ("pgn 65265 from 0x20", "id 0x18FEF115..0x18FEF120 extended", "0x18FEF120"),
        // To any destination: the next one's sources begin anew.
        ("pgn 0xEF00 from 0x0B", "id 0x18EF01F0..0x18EF0220 extended", "0x18EF020B"),
    ] {
        let met = met(group, run);
        assert!(met.starts_with(&format!("{id} (parameter group ")), "{group}, {run}: {met}");
    }
}

#[test]
fn two_frames_of_one_identifier_are_named_in_their_order() {
    let ids = "frame f on n id 0x100..0x10F\nframe g on n id 0x108..0x10F\nframe h on n id 0x10C..0x120\n";
    let checked = on_can(ids);
    let told: Vec<_> = checked.diagnostics.iter().map(|message| message.message.as_str()).collect();
    assert_eq!(
        told,
        ["0x108 on `n` belongs to two frames: `f` and `g`", "0x10C on `n` belongs to two frames: `f` and `h`"]
    );
    let passed = on_can(
        "network m can 500 kbit/s\necu hub on n, m\nframe f on n id 1\nframe g on n id 1\ngateway hub { pass all from n to m }\n",
    );
    let told: Vec<_> = passed.diagnostics.iter().map(|message| message.message.as_str()).collect();
    assert_eq!(
        told,
        ["0x1 on `n` belongs to two frames: `f` and `g`", "0x1 on `m` belongs to two frames: `f` and `g`"]
    );
}

#[test]
fn elements_and_layouts_that_overlap_are_told_apart() {
    let first = |text: &str| {
        let checked = on_can(text);
        checked.diagnostics.into_iter().find(|message| message.rule == Rule::SignalOverlap).expect("an overlap")
    };
    let met = first("frame f on n id 1 { signal cell[1..2] in byte 0 intel step 4 bits }\n");
    assert_eq!(met.message, "`cell[2]` and `cell[1]` share bit 0.4");
    assert!(met.help[0].starts_with("the elements of an array"), "{met:?}");
    let layout = "layout l { signal x in byte 0 }\n";
    let met = first(&format!(
        "{layout}frame f on n id 1 {{\nuse layout l at byte 0 prefix a_\nuse layout l at byte 0 prefix b_\n}}\n"
    ));
    let remarks: Vec<_> = met.elsewhere.iter().map(|remark| remark.text.as_str()).collect();
    assert_eq!((met.message.as_str(), remarks), ("`b_x` and `a_x` share bit 0.0", vec!["put in here", "and here"]));
}

#[test]
fn the_value_that_two_pages_share_is_told() {
    let text = "network n can 500 kbit/s\nframe f on n id 1 {\nsignal a in byte 0\nwhen a is 1, 5 { }\nwhen a is 3, 5 { }\n}\n";
    assert_eq!(told(text, Rule::PageTwice), "two pages hold for the same values (5)");
}

#[test]
fn several_places_that_nobody_is_at_are_told_from_the_first_to_the_last() {
    let gap = |position: u32| {
        let radio = "network sound most 25 Mbit/s\necu radio leads sound, ring position 0\n";
        told(&format!("{radio}ecu changer on sound, ring position {position}\n"), Rule::RingGap)
    };
    assert_eq!(gap(2), "nobody has ring position 1 of `sound`");
    assert_eq!(gap(5), "nobody has ring positions 1 to 4 of `sound`");
}
