//! Frames of FlexRay, MOST and CAN XL as they arrive in the description.

use wirelore_model::{
    Appearance, FlexRayChannels, FlexRayTiming, Identifier, Nanoseconds, Network, Period, StaticSlots, appearance_text,
};

use super::*;

const CHASSIS: &str = "network n flexray 10 Mbit/s, cycle 5 ms, static slots 62 of 32 bytes, dynamic up to slot 200\n";
const RING: &str = "network n most 25 Mbit/s\n";
const XL: &str = "network n can_xl 500 kbit/s, data 10 Mbit/s\n";

fn home(network: &str, recognition: &str) -> Appearance {
    let checked = check_text("test.lore", &format!("{network}frame f on n {recognition}\n"));
    assert_eq!(checked.diagnostics, [], "{recognition}");
    database(&checked).frames[0].seen_on[0].clone()
}

/// The rules that a recognition breaks.
fn broken(network: &str, recognition: &str) -> Vec<Rule> {
    rules(&check_text("test.lore", &format!("{network}frame f on n {recognition}\n")))
}

/// The time of FlexRay 2.1A networks: cycle, static segment, dynamic segment.
#[test]
fn a_network_says_how_its_cycle_is_divided() {
    let of = |line: &str| -> Network {
        let checked = check_text("test.lore", &format!("{line}\necu a on n\n"));
        assert_eq!(checked.diagnostics, [], "{line}");
        database(&checked).networks[0].clone()
    };
    let whole = FlexRayTiming {
        cycle: Some(Nanoseconds(5_000_000)),
        cycles: 64,
        static_slots: Some(StaticSlots { count: 62, bytes: 32 }),
        last_dynamic_slot: Some(200),
    };
    assert_eq!(of(CHASSIS.trim_end()).flexray, Some(whole));
    assert_eq!(of("network n flexray").flexray, None);
    let numbered = of("network n flexray, cycle 2.5 ms numbered 0..49").flexray.expect("it states the cycle");
    assert_eq!((numbered.cycle, numbered.cycles, numbered.static_slots), (Some(Nanoseconds(2_500_000)), 50, None));
}

#[test]
fn slots_and_the_words_for_them() {
    let slot =
        |slot, first_cycle, repetition, channels| Identifier::FlexRay { slot, first_cycle, repetition, channels };
    for (written, identifier, shown) in [
        ("slot 42", slot(42, 0, 1, FlexRayChannels::Both), "slot 42"),
        ("slot 42 every 2nd", slot(42, 0, 2, FlexRayChannels::Both), "slot 42 from cycle 0 every 2nd"),
        (
            "slot 42 from cycle 63 every 64th channel b",
            slot(42, 63, 64, FlexRayChannels::B),
            "slot 42 from cycle 63 every 64th channel b",
        ),
        (
            "slot 200 from cycle 1 every 4th channel a",
            slot(200, 1, 4, FlexRayChannels::A),
            "slot 200 from cycle 1 every 4th channel a",
        ),
        ("slot 7 channel a and b", slot(7, 0, 1, FlexRayChannels::Both), "slot 7"),
    ] {
        let seen = home(CHASSIS, written);
        assert_eq!(seen.identifier, identifier, "{written}");
        let checked = check_text("test.lore", &format!("{CHASSIS}frame f on n {written}\n"));
        assert_eq!(appearance_text(database(&checked), &seen), format!("n {shown}"));
        assert_eq!(home(CHASSIS, shown).identifier, identifier, "what is shown can be written");
    }
}

/// Slots 1 to 2047, repetitions: FlexRay 2.1A and 3.0.1, from memory.
#[test]
fn slots_that_cannot_be() {
    for recognition in [
        "slot 0",
        "slot 2048",
        "slot 201",
        "slot 1 from cycle 4 every 4th",
        "slot 1 from cycle 0 every 3rd",
        "slot 1 from cycle 64 every 64th",
        "slot 1 every 128th",
    ] {
        assert_eq!(broken(CHASSIS, recognition), [Rule::SlotImpossible], "{recognition}");
    }
    assert_eq!(broken(CHASSIS, "slot 1 from cycle 1"), [Rule::MissingPart]);
    assert_eq!(broken(CHASSIS, "slot 1 channel c"), [Rule::UnexpectedWord]);
    assert_eq!(broken(CHASSIS, "slot"), [Rule::MissingPart]);
    assert_eq!(broken(CHASSIS, "slot 12 every 5th"), [Rule::CyclesUneven], "64 is no multiple of 5");
    assert_eq!(broken("network n flexray, cycle 5 ms numbered 0..49\n", "slot 12 every 5th"), []);
    assert_eq!(broken("network n can\n", "slot 12"), [Rule::RecognitionDoesNotFit]);
    assert_eq!(broken(CHASSIS, "id 0x12"), [Rule::RecognitionDoesNotFit]);
    let only_static = "network n flexray, static slots 62 of 32 bytes\n";
    assert_eq!(broken(only_static, "slot 63"), [Rule::SlotImpossible]);
    assert_eq!(broken(only_static, "slot 62"), []);
    let only_dynamic = "network n flexray 10 Mbit/s, dynamic up to slot 100\n";
    assert_eq!(broken(only_dynamic, "slot 101"), [Rule::SlotImpossible]);
    assert_eq!(broken(only_dynamic, "slot 100"), []);
}

#[test]
fn cycles_that_cannot_be() {
    let of = |clauses: &str| {
        rules(&check_text("test.lore", &format!("network n flexray 10 Mbit/s, {clauses}\necu a on n\n")))
    };
    for clauses in [
        "cycle 17 ms",
        "cycle 0 ms",
        "cycle 5 ms numbered 1..64",
        "cycle 5 ms numbered 0..64",
        "static slots 1 of 32 bytes",
        "static slots 1024 of 0 bytes",
        "static slots 62 of 31 bytes",
        "static slots 62 of 256 bytes",
        "static slots 62 of 32 bytes, dynamic up to slot 62",
        "dynamic up to slot 2048",
    ] {
        assert_eq!(of(clauses), [Rule::SlotImpossible], "{clauses}");
    }
    assert_eq!(of("cycle 2 ms, static slots 62 of 32 bytes"), [Rule::CycleTooShort]);
    assert_eq!(of("cycle 5 ms, cycle 5 ms"), [Rule::RepeatedClause]);
    assert_eq!(of("cycle 5 ms, static 62"), [Rule::UnexpectedWord]);
    let on_can = check_text("test.lore", "network n can, dynamic up to slot 7\necu a on n\n");
    assert_eq!(rules(&on_can), [Rule::ClauseDoesNotFit]);
}

/// Every clause about the form of messages is told where it stands, on every kind of network that has a form of its own.
#[test]
fn only_single_wire_networks_have_messages_of_any_form() {
    let clauses = ["source byte 0", "target byte 2", "size byte 1 counts from byte 2", "xor byte last", "gap 10 ms"];
    for clause in clauses {
        for kind in ["can", "can_fd", "can_xl", "lin", "kline", "flexray", "most", "ethernet"] {
            let text = format!("network n {kind}, {clause}\necu a on n\n");
            let checked = check_text("test.lore", &text);
            let told = checked.diagnostics.iter().find(|message| message.rule == Rule::ClauseDoesNotFit);
            let told = told.unwrap_or_else(|| panic!("{text}: {:?}", checked.diagnostics));
            assert!(told.site.span.range().start >= text.find(',').unwrap_or(0), "{text}: {told:?}");
            assert!(checked.database.is_none(), "{text}");
            assert_eq!(
                checked.diagnostics.iter().filter(|message| message.level() == crate::Level::Error).count(),
                1,
                "{text}"
            );
        }
        let on_uart = check_text("test.lore", &format!("network n uart, {clause}\necu a on n\n"));
        assert!(!rules(&on_uart).contains(&Rule::ClauseDoesNotFit), "{clause}");
    }
}

/// In the static segment the period is the cycle times the repetition; a period that is stated stays.
#[test]
fn a_static_slot_gives_the_period() {
    let every = |recognition: &str, body: &str| {
        let text = format!("{CHASSIS}ecu a on n\nframe f on n {recognition} {{ {body}\nlength 8 }}");
        let checked = check_text("test.lore", &text);
        let sending = &database(&checked).frames[0].sending;
        let period = sending.every.map(|period| period.longest.0 / 1_000_000);
        (period, sending.missing_after().map(|time| time.0 / 1_000_000), rules(&checked))
    };
    assert_eq!(every("slot 42", "sent by a"), (Some(5), Some(15), vec![]));
    assert_eq!(every("slot 42 from cycle 1 every 4th", "read by a"), (Some(20), Some(60), vec![]));
    assert_eq!(every("slot 42", "every 40 ms"), (Some(40), Some(120), vec![]));
    assert_eq!(every("slot 42", "on change"), (None, None, vec![]));
    assert_eq!(every("slot 120", "sent by a"), (None, None, vec![]), "nobody knows when a dynamic slot is used");
    for period in ["every 2 ms", "every 12 ms", "every 2..50 ms"] {
        assert_eq!(every("slot 42", period).2, [Rule::PeriodOffCycle], "{period}");
    }
    assert_eq!(every("slot 42", "every 7..50 ms").2, []);
    let unknown = check_text("test.lore", "network n flexray, cycle 5 ms\nframe f on n slot 42");
    assert_eq!(database(&unknown).frames[0].sending.every, None::<Period>, "static or dynamic?");
}

#[test]
fn lengths_of_flexray_frames() {
    let of = |slot: u32, body: &str| {
        rules(&check_text("test.lore", &format!("{CHASSIS}frame f on n slot {slot} {{ {body} }}")))
    };
    assert_eq!(of(62, "length 32"), []);
    assert_eq!(of(62, "length 34"), [Rule::FrameTooLong]);
    assert_eq!(of(63, "length 34"), [], "in the dynamic segment");
    assert_eq!(of(63, "length 256"), [Rule::FrameTooLong]);
    assert_eq!(of(62, "signal s in byte 32"), [Rule::FrameTooLong]);
    assert_eq!(of(62, "length 7..9"), [Rule::LengthWithoutCode, Rule::LengthWithoutCode]);
}

/// Cycle multiplexing: FlexRay 2.1A, from memory.
#[test]
fn frames_that_share_a_slot_must_not_meet() {
    let pair = |one: &str, other: &str| {
        check_text("test.lore", &format!("{CHASSIS}frame f on n {one}\nframe g on n {other}\n"))
    };
    for (one, other) in [
        ("slot 7 every 2nd", "slot 7 from cycle 1 every 2nd"),
        ("slot 7 from cycle 1 every 4th", "slot 7 from cycle 3 every 8th"),
        ("slot 7 channel a", "slot 7 channel b"),
        ("slot 7", "slot 8"),
    ] {
        assert_eq!(pair(one, other).diagnostics, [], "{one}, {other}");
    }
    let met = pair("slot 7 from cycle 1 every 4th", "slot 7 from cycle 5 every 8th channel b");
    assert_eq!(met.diagnostics[0].message, "slot 7 in cycle 5 on channel b on `n` belongs to two frames: `f` and `g`");
    assert_eq!(rules(&met), [Rule::IdTaken]);
    assert_eq!(rules(&pair("slot 7", "slot 7 from cycle 63 every 64th")), [Rule::IdTaken]);
}

/// 512, 1024 and 3072 bits a frame (the first as authorea.com article 359359 has it, the others from memory of MOST Specification 3.0), 44,100
/// or 48,000 frames a second.
#[test]
fn rates_of_rings() {
    for (rate, exact) in
        [("22.5792", 512 * 44_100), ("24.576", 512 * 48_000), ("49.152", 1024 * 48_000), ("147.456", 3072 * 48_000)]
    {
        let checked = check_text("test.lore", &format!("network n most {rate} Mbit/s\necu a on n\n"));
        assert_eq!(rules(&checked), [], "{rate}");
        assert_eq!(database(&checked).networks[0].rate.map(|rate| rate.0), Some(exact), "{rate}");
    }
    let faster = check_text("test.lore", "network n most 160 Mbit/s\necu a on n\n");
    assert_eq!(rules(&faster), [Rule::RateBeyondKind]);
}

#[test]
fn functions_of_a_ring() {
    let most = |instance, operation| Identifier::Most { block: 0x22, instance, function: 0x0D2, operation };
    for (written, identifier) in [
        ("function 0x22.0x01.0x0D2", most(Some(1), None)),
        ("function 0x22.any.0x0D2", most(None, None)),
        ("function 0x22.0x1.0xD2 operation status", most(Some(1), Some(0xC))),
        ("function 0x22.any.0x0D2 operation 0xC", most(None, Some(0xC))),
    ] {
        assert_eq!(home(RING, written).identifier, identifier, "{written}");
    }
    // MOST Specification 3.0 (from memory): operations on a property, then those of a method.
    for (word, number) in [
        ("set", 0x0),
        ("get", 0x1),
        ("set_get", 0x2),
        ("increment", 0x3),
        ("decrement", 0x4),
        ("get_interface", 0x5),
        ("status", 0xC),
        ("interface", 0xD),
        ("error", 0xF),
        ("start", 0x0),
        ("abort", 0x1),
        ("start_result", 0x2),
        ("start_result_ack", 0x6),
        ("start_ack", 0x8),
        ("processing_ack", 0xA),
        ("processing", 0xB),
        ("result", 0xC),
        ("result_ack", 0xD),
    ] {
        let written = format!("function 0x22.0x01.0x0D2 operation {word}");
        assert_eq!(home(RING, &written).identifier, most(Some(1), Some(number)), "{written}");
    }
    for recognition in [
        "function 0x100.any.0x0D2",
        "function 0x22.0x100.0x0D2",
        "function 0x22.any.0x1000",
        "function 0x22.any.0x0D2 operation 16",
    ] {
        assert_eq!(broken(RING, recognition), [Rule::IdTooLarge], "{recognition}");
    }
    for recognition in [
        "function 22.01.0D2",
        "function 34.1.210",
        "function 0x22.0x01",
        "function 0x22.0x01.0x0D2.1",
        "function any.0x01.0x0D2",
        "function 0x22..0x0D2",
    ] {
        assert_eq!(broken(RING, recognition), [Rule::BadNumber], "{recognition}");
    }
    let plain = check_text("test.lore", &format!("{RING}frame f on n function 22.01.0D2\n"));
    assert_eq!(plain.diagnostics[0].fix.as_ref().map(|fix| fix.text.as_str()), Some("0x22.0x01.0x0D2"));
    assert_eq!(broken(RING, "function"), [Rule::MissingPart]);
    assert_eq!(broken(RING, "function 0x22.any.0x0D2 operation stats"), [Rule::UnexpectedWord]);
    let pair = |one: &str, other: &str| {
        rules(&check_text("test.lore", &format!("{RING}frame f on n function {one}\nframe g on n function {other}\n")))
    };
    assert_eq!(pair("0x22.any.0x0D2", "0x22.0x01.0x0D2"), [Rule::IdTaken]);
    assert_eq!(pair("0x22.any.0x0D2 operation get", "0x22.0x01.0x0D2 operation status"), []);
    assert_eq!(pair("0x22.0x02.0x0D2", "0x22.0x01.0x0D2"), []);
}

#[test]
fn the_order_round_a_ring() {
    let ring = |ecus: &str| rules(&check_text("test.lore", &format!("{RING}network c can\n{ecus}\n")));
    assert_eq!(ring("ecu a leads n, ring position 0\necu b on n, c, ring position 1\necu d on n, c"), []);
    assert_eq!(ring("ecu a on n, ring position 0\necu b on n, c, ring position 0"), [Rule::RingPosition]);
    assert_eq!(ring("ecu a on n, c, ring position 64"), [Rule::RingPosition]);
    assert_eq!(ring("ecu a on c, ring position 0\necu b on n"), [Rule::RingPosition]);
    assert_eq!(ring("ecu a on n, ring position 0\necu b on c, leads n, ring position 1"), [Rule::RingPosition]);
    assert_eq!(ring("ecu a on n, ring position 0\necu b on n, c, ring position 2"), [Rule::RingGap]);
    assert_eq!(ring("ecu a on n, c, ring position 3"), [Rule::RingGap]);
    assert_eq!(ring("ecu a on n, c, ring 3"), [Rule::UnexpectedWord]);
}

/// Lengths and fields: ISO 11898-1:2024, from memory.
#[test]
fn frames_on_can_xl() {
    let priority = Some(0x123);
    assert_eq!(
        home(XL, "xl 0x11223344 priority 0x123").identifier,
        Identifier::Xl { acceptance: 0x1122_3344, priority }
    );
    assert_eq!(home(XL, "xl 7").identifier, Identifier::Xl { acceptance: 7, priority: None });
    assert_eq!(broken(XL, "xl 0x100000000"), [Rule::IdTooLarge]);
    assert_eq!(broken(XL, "xl 7 priority 0x800"), [Rule::IdTooLarge]);
    assert_eq!(broken("network n can_fd\n", "xl 7"), [Rule::RecognitionDoesNotFit]);
    for (recognition, length, rules) in [
        ("xl 7", "1..2048", vec![]),
        ("xl 7", "2049", vec![Rule::FrameTooLong]),
        ("xl 7", "0..8", vec![Rule::LengthWithoutCode]),
        ("id 0x1B4", "64", vec![]),
        ("id 0x1B4", "65", vec![Rule::FrameTooLong]),
        ("id 0x1B4", "13", vec![Rule::LengthWithoutCode]),
        ("pgn 65265", "8", vec![]),
    ] {
        assert_eq!(broken(XL, &format!("{recognition} {{\nlength {length}\n}}")), rules, "{recognition} {length}");
    }
    let both = |one: &str, other: &str| {
        rules(&check_text("test.lore", &format!("{XL}frame f on n {one}\nframe g on n {other}\n")))
    };
    assert_eq!(both("xl 7 priority 1", "xl 7"), [Rule::IdTaken]);
    assert_eq!(both("xl 7 priority 1", "xl 7 priority 2"), []);
    assert_eq!(both("xl 0x7", "id 0x7"), []);
}
