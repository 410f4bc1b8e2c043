//! LIN networks: who leads them, and their schedules.

use super::rules;
use super::texts::told_and_shown;
use crate::{Rule, check_text};

/// The rules about a network of 20 kbit/s that has a commander, with these items.
fn on_lin(rest: &str) -> Vec<Rule> {
    rules(&check_text("t.lore", &format!("network seat lin 20 kbit/s\necu a leads seat\n{rest}")))
}

/// 34 bits of header, 10 for each of 8 data bytes and the checksum, 1.4 times that: 173.6 bits (LIN 2.2A, section 2.3.2), 8.68 ms.
#[test]
fn a_slot_may_be_just_as_long_as_its_frame_can_take() {
    let of = |takes: &str| {
        on_lin(&format!("frame f on seat id 1 {{ length 8 }}\nschedule s on seat {{ f takes {takes} }}\n"))
    };
    assert_eq!(of("8.68 ms"), []);
    assert_eq!(of("8.679 ms"), [Rule::SlotTooShort]);
}

#[test]
fn what_is_allowed_before_a_slot_holds_from_its_first_name_on() {
    let of = |allow: &str| {
        let slot = format!("{allow}\nf takes 10 ms\ng takes 10 ms");
        let frames = "frame f on seat id 1 { sent by a every 50 ms\nlength 2 }\nframe g on seat id 2 { sent by a every 50 ms\nlength 2 }";
        on_lin(&format!("{frames}\nschedule s on seat {{\n{slot}\n}}\n"))
    };
    assert_eq!(of(""), [Rule::SchedulePeriod; 2]);
    assert_eq!(of("allow schedule-period"), [Rule::SchedulePeriod]);
}

#[test]
fn a_schedule_alone_asks_for_a_commander() {
    let of = |network: &str| {
        let text = "network seat lin 20 kbit/s\nnetwork door lin 20 kbit/s\necu a leads door\nframe f on door id 1 { length 2 }";
        rules(&check_text("t.lore", &format!("{text}\nschedule s on {network} {{ f takes 10 ms }}\n")))
    };
    assert_eq!(of("seat"), [Rule::NoCommander, Rule::ScheduleElsewhere]);
    assert_eq!(of("door"), [Rule::NetworkUnused]);
}

#[test]
fn in_a_sporadic_slot_the_frame_is_shown_that_does_not_belong_there() {
    let text = "network seat lin 20 kbit/s\nnetwork door lin 20 kbit/s\necu a leads seat, door\necu b on seat
frame first on seat id 1 { sent by a\nlength 2 }
frame second on seat id 2 { sent by b\nlength 2 }
frame third on door id 3 { sent by a\nlength 2 }
schedule s on seat {\nsporadic first, second, third takes 20 ms\n}\n";
    assert_eq!(told_and_shown(text, Rule::SenderOutOfTurn).1, "second");
    assert_eq!(told_and_shown(text, Rule::ScheduleElsewhere).1, "third");
}
