//! Pages, and payloads that end too early.

use wirelore_bits::NumberKind;
use wirelore_model::{Database, SignalId};

use super::readings;
use crate::reading::Unmatched;
use crate::testing::*;

/// Byte 0 chooses; page 0: byte 1 chooses again inside; page 3: `otherwise`; then a second switch beside the first one.
pub(super) fn nested() -> Database {
    let mut frame = frame(
        "nested",
        id(0x123),
        vec![
            unsigned("outer", "0.7..0.0"),
            unsigned("inner", "1.7..1.0").on_page(0),
            unsigned("deep_a", "2.7..2.0").on_page(1),
            unsigned("deep_b", "5.7..5.0").on_page(2),
            unsigned("other", "1.7..1.0").on_page(3),
            unsigned("beside", "3.7..3.0").on_page(4),
            unsigned("last", "4.7..4.0"),
        ],
    );
    frame.pages = vec![
        page(None, 0, &[(0, &[span(1, 1), span(4, 6)])]),
        page(Some(0), 1, &[(1, &[span(7, 7)])]),
        page(Some(0), 1, &[(1, &[span(8, 9)])]),
        page(None, 0, &[]),
        page(None, 2, &[(6, &[span(0, 9)])]),
    ];
    one_frame(frame)
}

#[test]
fn pages_hold_only_under_their_condition() {
    let database = nested();
    let names = |payload: &[u8]| {
        let (all, outcome) = readings(&database, payload);
        (all.into_iter().map(|(name, _)| name).collect::<Vec<_>>().join(" "), outcome)
    };
    let (seen, outcome) = names(&[1, 7, 0, 0, 3, 0]);
    assert_eq!(seen, "outer last inner deep_a beside");
    assert_eq!((outcome.too_short, outcome.unmatched), (false, None));
    assert_eq!(names(&[5, 9, 0, 0, 9, 0]).0, "outer last inner deep_b beside");
    assert_eq!(names(&[2, 9, 0, 0, 0, 0]).0, "outer last other beside");
    let (seen, outcome) = names(&[4, 1, 0, 0, 10, 0]);
    assert_eq!(seen, "outer last inner");
    let inner = Unmatched { selector: SignalId(1), number: Some(1), bits: 1 };
    assert_eq!(outcome.unmatched, Some(inner), "the first of two selectors without a page");
}

#[test]
fn two_selectors_decide_together() {
    let mut frame = frame(
        "answers",
        id(0x7E8),
        vec![
            unsigned("service", "0.7..0.0"),
            number("pid", "1.7..1.0", NumberKind::Bcd),
            unsigned("speed", "2.7..2.0").on_page(0),
            unsigned("load", "2.7..2.0").on_page(1),
        ],
    );
    let both = |service: i64, pid: i64| page(None, 0, &[(0, &[span(service, service)]), (1, &[span(pid, pid)])]);
    frame.pages = vec![both(0x41, 12), both(0x41, 4), both(0x42, 13)];
    let database = one_frame(frame);
    let last = |payload: &[u8]| readings(&database, payload).0.pop().map(|(name, _)| name).unwrap_or_default();
    assert_eq!(last(&[0x41, 0x12, 1]), "speed");
    assert_eq!(last(&[0x41, 0x04, 1]), "load");
    let unmatched =
        |payload: &[u8]| readings(&database, payload).1.unmatched.map(|told| (told.selector.0, told.number));
    assert_eq!(unmatched(&[0x40, 0x12, 1]), Some((0, Some(0x40))), "no page takes this service");
    assert_eq!(unmatched(&[0x41, 0x99, 1]), Some((1, Some(99))), "no page takes this pid");
    assert_eq!(unmatched(&[0x42, 0x04, 1]), Some((1, Some(4))), "each is taken, but not both together");
    assert_eq!(unmatched(&[0x41, 0xAA, 1]), Some((1, None)), "no digits");
}

#[test]
fn all_tests_of_a_page_must_pass_also_those_of_one_selector() {
    let signals = vec![
        unsigned("p", "0.7..0.0"),
        unsigned("few", "1.7..1.0").on_page(0),
        unsigned("many", "1.7..1.0").on_page(1),
        unsigned("other", "1.7..1.0").on_page(2),
    ];
    let mut frame = frame("f", id(1), signals);
    let both = |one, other| page(None, 0, &[(0, &[one]), (0, &[other])]);
    frame.pages = vec![both(span(1, 5), span(4, 9)), both(span(10, 20), span(15, 30)), page(None, 0, &[])];
    let database = one_frame(frame);
    let there = |p| readings(&database, &[p, 0]).0.pop().map(|(name, _)| name).unwrap_or_default();
    for (p, name) in [(3, "other"), (4, "few"), (5, "few"), (6, "other"), (14, "other"), (15, "many"), (21, "other")] {
        assert_eq!(there(p), name, "{p}");
    }
}

#[test]
fn short_payloads_give_what_they_hold() {
    let database = nested();
    let whole = [1, 7, 0x22, 0x33, 4, 0x55, 0x66, 0x77];
    let (all, _) = readings(&database, &whole);
    let needed =
        |name: &str| database.frames[0].signals_named(name).map(|(_, signal)| signal.needed_bytes() as usize).next();
    for length in 0..=whole.len() {
        let (short, outcome) = readings(&database, &whole[..length]);
        // The selectors themselves may be missing, and then their pages are.
        for (name, value) in &short {
            let fits = needed(name).is_some_and(|needed| needed <= length);
            let full = all.iter().find(|(known, _)| known == name).map(|(_, value)| value.as_str());
            assert_eq!(Some(value.as_str()), if fits { full } else { Some("too short") }, "{name} in {length} bytes");
        }
        assert_eq!(outcome.too_short, length < 5, "{length} bytes");
        assert_eq!(short.iter().any(|(name, _)| name == "deep_a"), length >= 2, "{length} bytes");
    }
}

#[test]
fn a_payload_shorter_than_described_is_too_short() {
    let mut described = frame("f", id(1), vec![unsigned("s", "0.7..0.0")]);
    described.length = length(4, 8);
    let database = one_frame(described);
    assert!(readings(&database, &[1, 2, 3]).1.too_short);
    assert_eq!(readings(&database, &[1, 2, 3]).0[0].1, "1", "it is decoded all the same");
    assert!(!readings(&database, &[1, 2, 3, 4]).1.too_short);
}

#[test]
fn a_stated_length_says_what_is_too_short() {
    // The length is 2 to 8 bytes: a signal that a frame leaves out is not missing.
    let mut described = frame("f", id(1), vec![unsigned("s", "0.7..0.0"), unsigned("far", "7.7..7.0")]);
    described.length = length(2, 8);
    let (all, outcome) = readings(&one_frame(described), &[1, 2]);
    assert_eq!((all[0].1.as_str(), all[1].1.as_str(), outcome.too_short), ("1", "too short", false));
    // A page's own length holds in place of the frame's.
    let mut paged = frame("f", id(1), vec![unsigned("p", "0.7..0.0"), unsigned("s", "5.7..5.0").on_page(0)]);
    paged.pages = vec![page(None, 0, &[(0, &[span(1, 1)])]), page(None, 0, &[(0, &[span(2, 2)])])];
    (paged.length, paged.pages[0].length) = (length(8, 8), length(4, 6));
    let database = one_frame(paged);
    assert_eq!([3, 4].map(|bytes| readings(&database, &[1; 8][..bytes]).1.too_short), [true, false]);
    assert_eq!([7, 8].map(|bytes| readings(&database, &[2; 8][..bytes]).1.too_short), [true, false]);
    assert!(readings(&database, &[]).1.too_short, "the frame's length, where no page can be told");
}
