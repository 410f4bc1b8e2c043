//! Edges of rules: what is just right, what is just wrong, and what is told once.

use super::texts::told;
use super::{frame, on_can, rules};
use crate::{Rule, check_text};

/// What goes to the end of the payload goes to the end of its page, which may be longer than the frame without it.
#[test]
fn a_page_has_an_end_of_its_own() {
    let page = "length 8\nwhen a is 1 {\nlength 12\nsignal x in bytes 6..end text\nsignal y in byte 10\n}";
    let text = format!("network n can_fd 500 kbit/s\nframe f on n id 1 {{\nsignal a in byte 0\n{page}\n}}\n");
    assert_eq!(rules(&check_text("t.lore", &text)), [Rule::SignalOverlap]);
}

#[test]
fn a_page_is_not_compared_with_itself() {
    assert_eq!(frame("when a is 1..4 and a is 2..3 { signal x in byte 3 }\nwhen a is 7 { signal y in byte 3 }"), []);
}

/// A network that is unknown may be a ring.
#[test]
fn a_place_on_an_unknown_ring_is_told_once() {
    let of = |ecu: &str| rules(&on_can(&format!("network l lin 20 kbit/s\necu radio {ecu}, ring position 1\n")));
    assert_eq!(of("on n, leads l"), [Rule::RingPosition]);
    assert_eq!(of("on l, leads l"), [Rule::NetworkUnused, Rule::RingPosition]);
    assert_eq!(of("on sound, leads l"), [Rule::NetworkUnused, Rule::UnknownNetwork]);
}

/// Fault-tolerant networks run at up to 125 kbit/s (ISO 11898-3).
#[test]
fn terminators_are_counted_on_fast_networks_only() {
    let of = |rate: &str| {
        rules(&check_text("t.lore", &format!("network m can {rate}, terminators a\necu a on m\nframe f on m id 1\n")))
    };
    assert_eq!(of("125 kbit/s"), []);
    assert_eq!(of("126 kbit/s"), [Rule::TerminatorCount]);
    let count = |units: &str| {
        let ecus = "ecu a on m\necu b on m\necu c on m\n";
        told(&format!("network m can 500 kbit/s, terminators {units}\n{ecus}"), Rule::TerminatorCount)
    };
    assert!(count("a").starts_with("`m` has 1 terminator, and"), "{}", count("a"));
    assert!(count("a, b, c").starts_with("`m` has 3 terminators, and"), "{}", count("a, b, c"));
}

#[test]
fn a_range_is_compared_with_formulas_that_could_be_read() {
    let of = |formula: &str| rules(&on_can(&format!("frame f on n id 1 {{ signal s in byte 0 = {formula} }}\n")));
    assert_eq!(of("curve { 0: 0, 255: 100 } km/h, range 0..100"), []);
    assert_eq!(of("curve { 0: 0, 255: 100 } km/h, range 0..101"), [Rule::RangeUnreachable]);
    assert_eq!(of("curve { 0: 0 } km/h, range 0..300"), [Rule::CurveNotRising]);
    assert_eq!(of("raw * raw km/h, range 0..300"), [Rule::FormulaNotAffine]);
    assert_eq!(of("raw *, range 0..300"), [Rule::MissingPart]);
    assert_eq!(frame("signal s in byte 3, range 0..300"), [Rule::RangeUnreachable]);
    assert_eq!(of("raw * 2 km/h absnt 3, range 0..600"), [Rule::UnknownClause, Rule::RangeUnreachable]);
}

#[test]
fn values_that_do_not_fit_are_not_said_to_be_named_twice() {
    for clauses in ["absent 0x1FF, 0xFE, fault 0xFE", "absent 0xFE, fault 0x1FF, 0xFE"] {
        assert_eq!(frame(&format!("signal s in byte 3, {clauses}")), [Rule::SpecialOutsideWidth], "{clauses}");
    }
}
