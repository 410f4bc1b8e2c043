//! LIN: identifiers, checksums, events and schedules as they arrive in the description, and what the messages say.

use wirelore_model::{FrameId, Identifier, LinChecksum, Nanoseconds, SlotContent};

use super::*;

/// A LIN network with a commander, behind two lines that declare it.
fn on_lin(rest: &str) -> Checked {
    check_text("test.lore", &format!("network seat lin 19.2 kbit/s\necu a leads seat\n{rest}"))
}

fn identifier(frame: &str) -> Identifier {
    database(&on_lin(&format!("frame x on seat {frame}\n"))).frames[0].seen_on[0].identifier.clone()
}

fn lin(id: u8, checksum: LinChecksum) -> Identifier {
    Identifier::Lin { id, checksum, stands_for: vec![] }
}

#[track_caller]
fn message(checked: &Checked, rule: Rule) -> &str {
    let found = checked.diagnostics.iter().find(|message| message.rule == rule);
    &found.unwrap_or_else(|| panic!("{:#?}", checked.diagnostics)).message
}

#[test]
fn identifiers_and_checksums() {
    use LinChecksum::{Classic, Enhanced};
    assert_eq!(identifier("id 0x23"), lin(0x23, Enhanced));
    assert_eq!(identifier("id 0x23, classic"), lin(0x23, Classic));
    assert_eq!(identifier("id 0x3B, enhanced"), lin(0x3B, Enhanced));
    // 60 to 63 are always classic: LIN 2.2A, section 2.3.1.5.
    assert_eq!(identifier("id 60"), lin(60, Classic));
    assert_eq!(identifier("id 63, classic"), lin(63, Classic));
    assert_eq!(rules(&on_lin("frame x on seat id 62, enhanced")), [Rule::ChecksumKindImpossible]);
    assert_eq!(rules(&on_can("frame x on n id 62, classic")), [Rule::ChecksumKindImpossible]);
    assert_eq!(rules(&on_lin("frame x on seat id 64")), [Rule::IdTooLarge]);
    assert_eq!(rules(&on_lin("frame x on seat id 1 extended")), [Rule::IdTooLarge]);
    assert_eq!(rules(&on_lin("frame x on seat id 1\nframe y on seat pid 0xC1")), [Rule::IdTaken]);
}

#[test]
fn a_protected_identifier_is_taken_as_it_was_measured() {
    // LIN 2.2A, section 2.3.1.3: identifier 01 is sent as C1, 11 as 11, 3F as BF.
    for (sent, id) in [("0xC1", 0x01), ("0x11", 0x11)] {
        assert_eq!(identifier(&format!("pid {sent}")), lin(id, LinChecksum::Enhanced));
    }
    assert_eq!(identifier("pid 0xBF"), lin(0x3F, LinChecksum::Classic));
    let wrong = on_lin("frame x on seat pid 0x41");
    assert_eq!(rules(&wrong), [Rule::PidParity]);
    assert!(wrong.diagnostics[0].help[0].contains("write `pid 0xC1` or `id 0x01`"), "{:?}", wrong.diagnostics[0].help);
    assert_eq!(rules(&on_lin("frame x on seat pid 0x141")), [Rule::IdTooLarge]);
    assert_eq!(rules(&on_can("frame x on n pid 0xC1")), [Rule::RecognitionDoesNotFit]);
}

#[test]
fn frames_of_diagnostics_have_eight_bytes() {
    let checked = on_lin("frame ask on seat id 0x3C\nframe answer on seat id 0x3D { length 8 }");
    let lengths: Vec<_> = database(&checked).frames.iter().map(|frame| frame.length.map(|length| length.max)).collect();
    assert_eq!(lengths, [Some(8), Some(8)]);
    assert_eq!(rules(&on_lin("frame ask on seat id 0x3C { length 2..8 }")), [Rule::DiagnosticLength]);
    assert_eq!(rules(&on_lin("frame x on seat id 1 { length 9 }")), [Rule::FrameTooLong]);
}

const FRAMES: &str = "frame eight on seat id 1 { length 8 }\nframe two on seat id 2 { length 2 }\n\
                      frame sporadic on seat id 3 { signal s in byte 0 }\n";

#[test]
fn a_schedule_arrives_as_it_is_written() {
    let checked = on_lin(&format!(
        "{FRAMES}schedule normal \"Normal\" on seat, time base 5 ms, jitter 500 us, guessed {{\n\
         ## The large one.\n eight takes 10 ms, every 30 ms\n sporadic two, eight takes 15 ms\n sporadic takes 5 ms\n}}\n"
    ));
    let schedule = &database(&checked).schedules[0];
    let ms = |count: u64| Some(Nanoseconds(count * 1_000_000));
    assert_eq!((schedule.time_base, schedule.jitter), (ms(5), Some(Nanoseconds(500_000))));
    let contents: Vec<_> = schedule.slots.iter().map(|slot| slot.content.clone()).collect();
    let expected = [
        SlotContent::Frame(FrameId(0)),
        SlotContent::Sporadic(vec![FrameId(1), FrameId(0)]),
        SlotContent::Frame(FrameId(2)),
    ];
    assert_eq!(contents, expected, "a frame may be called `sporadic`");
    assert_eq!((schedule.slots[0].takes, schedule.slots[0].every, schedule.round()), (ms(10), ms(30), ms(30)));
    assert_eq!(rules(&checked), [Rule::StillGuessed]);
}

fn schedule(head: &str, slots: &str) -> Checked {
    on_lin(&format!("{FRAMES}schedule normal on seat{head} {{\n{slots}\n}}\n"))
}

/// The longest times of LIN 2.2A, section 2.3.2, at 19200 bit/s: 4.667 ms for 2 data bytes, 9.042 ms for 8.
#[test]
fn slots_are_as_long_as_their_frames_may_take() {
    for (head, slots, rule) in [
        ("", "two takes 4667 us", None),
        ("", "two takes 4666 us", Some(Rule::SlotTooShort)),
        ("", "eight takes 9042 us", None),
        ("", "eight takes 9041 us", Some(Rule::SlotTooShort)),
        (", jitter 1 ms", "eight takes 10 ms", Some(Rule::SlotTooShort)),
        (", time base 5 ms", "eight takes 10 ms", None),
        (", time base 5 ms", "eight takes 12 ms", Some(Rule::SlotOffBeat)),
        ("", "sporadic two, eight takes 5 ms", Some(Rule::SlotTooShort)),
        ("", "two every 5 ms", None),
        ("", "two every 4 ms", Some(Rule::ScheduleTooFull)),
        (", time base 5 ms", "eight every 20 ms\ntwo every 10 ms", None),
        (", time base 5 ms", "eight every 20 ms\ntwo every 9 ms", Some(Rule::ScheduleTooFull)),
        ("", "eight takes 10 ms, every 20 ms\ntwo takes 10 ms", None),
        ("", "eight takes 10 ms, every 20 ms\ntwo takes 20 ms", Some(Rule::SchedulePeriod)),
        ("", "eight takes 0 ms", Some(Rule::EveryZero)),
        ("", "nobody takes 10 ms", Some(Rule::UnknownFrame)),
        ("", "", Some(Rule::MissingPart)),
        ("", "eight", Some(Rule::MissingPart)),
    ] {
        assert_eq!(rules(&schedule(head, slots)), Vec::from_iter(rule), "{head} {slots}");
    }
    let short = schedule(", time base 5 ms, jitter 900 us", "eight takes 5 ms");
    assert_eq!(message(&short, Rule::SlotTooShort), "this slot takes 5 ms, and `eight` can take 9.942 ms");
    assert!(short.diagnostics[0].help[1].contains("`takes 10 ms`"), "{:?}", short.diagnostics[0].help);
}

#[test]
fn periods_of_frames_are_those_of_some_schedule() {
    let text = |every: &str| {
        format!(
            "frame x on seat id 1 {{ sent by a {every}\nlength 2 }}\nschedule one on seat {{\nx takes 5 ms\nx takes 5 ms\n}}\n\
             schedule other on seat {{\nx takes 20 ms\n}}\n"
        )
    };
    for every in ["every 5 ms", "every 20 ms", "every 10..30 ms", "on change"] {
        assert_eq!(rules(&on_lin(&text(every))), [], "{every}");
    }
    let wrong = on_lin(&text("every 10 ms"));
    let told = message(&wrong, Rule::SchedulePeriod);
    assert_eq!(told, "`x` is described with `every 10 ms`, and this schedule sends it every 5 ms");
}

/// A period that stands in the slots is the frame's own, however many slots there are.
#[test]
fn a_period_in_the_slots_is_that_of_the_frame() {
    let text = |every: &str| {
        format!(
            "frame x on seat id 1 {{ sent by a {every}\nlength 2 }}\nframe y on seat id 2 {{ length 2 }}\n\
             schedule one on seat {{\nx takes 5 ms, every 10 ms\ny takes 5 ms\nx takes 5 ms, every 10 ms\ny takes 5 ms\n}}\n"
        )
    };
    assert_eq!(rules(&on_lin(&text("every 10 ms"))), []);
    assert_eq!(rules(&on_lin(&text("every 5 ms"))), [Rule::SchedulePeriod]);
}

#[test]
fn a_network_has_one_commander() {
    assert_eq!(rules(&on_lin("ecu b leads seat")), [Rule::TwoCommanders]);
    assert_eq!(rules(&check_text("t.lore", "network seat lin\necu b on seat")), [], "nothing to be led is described");
    assert_eq!(rules(&check_text("t.lore", "network seat lin\nframe x on seat id 1")), [Rule::NoCommander]);
    assert_eq!(rules(&on_can("schedule s on n { x takes 5 ms }\nframe x on n id 1")), [Rule::ScheduleElsewhere]);
}

#[test]
fn events_stand_for_frames_that_look_alike() {
    let frames = "frame l on seat id 1 { length 2 }\nframe r on seat id 2 { length 2 }\nframe c on seat id 3, classic { length 2 }\n\
                  frame long on seat id 4 { length 3 }\nnetwork n can\nframe far on n id 1\n";
    let event = |clauses: &str| on_lin(&format!("{frames}frame e on seat id 9, {clauses}\n"));
    let checked = event("stands for l, r, optional");
    let Identifier::Lin { stands_for, .. } = &database(&checked).frames[5].seen_on[0].identifier else { panic!() };
    assert_eq!(stands_for, &[FrameId(0), FrameId(1)]);
    for clauses in [
        "stands for l, c",
        "stands for l, long",
        "stands for far",
        "stands for e",
        "stands for l { signal s in byte 0 }",
    ] {
        assert_eq!(rules(&event(clauses)), [Rule::StandsForImpossible], "{clauses}");
    }
    assert_eq!(rules(&event("classic, stands for c")), []);
    assert_eq!(rules(&event("stands for lamp")), [Rule::UnknownFrame]);
    let first_byte = |body: &str| {
        rules(&on_lin(&format!("frame l on seat id 1 {{ {body} }}\nframe e on seat id 9, stands for l\n")))
    };
    assert_eq!(first_byte("signal s in bits 1.1..0.7"), [Rule::StandsForImpossible]);
    assert_eq!(first_byte("signal s in bytes 0..end bytes"), [Rule::StandsForImpossible]);
    assert_eq!(first_byte("unused byte 0\nsignal s in byte 1"), []);
    assert_eq!(rules(&on_can("frame x on n id 1\nframe y on n id 2, stands for x")), [Rule::StandsForImpossible]);
}

/// Whose frames they are: LIN 2.2A, sections 2.3.3.2 and 2.3.3.3, from memory.
#[test]
fn sporadic_frames_are_the_commanders_and_answers_come_from_different_units() {
    let told = |one: &str, other: &str, rest: &str| {
        let sent = |id: u32, by: &str| format!("frame f{id} on seat id {id} {{ {by}\nlength 2 }}\n");
        rules(&on_lin(&format!("ecu b on seat\necu c on seat\n{}{}{rest}", sent(1, one), sent(2, other))))
    };
    let event = "frame e on seat id 9, stands for f1, f2\n";
    assert_eq!(told("sent by b", "sent by c", event), []);
    assert_eq!(told("sent by b", "sent by b", event), [Rule::SenderOutOfTurn]);
    let schedule = "schedule s on seat { sporadic f1, f2 takes 10 ms }\n";
    assert_eq!(told("sent by a", "sent by a, b", schedule), []);
    assert_eq!(told("sent by a", "sent by b", schedule), [Rule::SenderOutOfTurn]);
}
