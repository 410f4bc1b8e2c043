//! Look-ups, against asking every description in turn.

use wirelore_model::{FrameId, Identifier, NetworkId, NetworkKind, pgn_of};

use super::*;
use crate::testing::*;

fn found(lookup: &Lookup, id: u32, extended: bool) -> Option<u32> {
    lookup.find(NetworkId(0), id, extended).map(|found| found.frame().0)
}

fn lookup(identifiers: Vec<Identifier>) -> Lookup {
    let frames = identifiers.into_iter().enumerate();
    let frames = frames.map(|(index, identifier)| frame(&format!("f{index}"), identifier, Vec::new()));
    Lookup::new(&database(vec![network("drive", NetworkKind::Can)], frames.collect()))
}

fn run(first: u32, last: u32, extended: bool) -> Identifier {
    Identifier::Can { first, last, extended }
}

#[test]
fn identifiers_of_both_lengths_are_apart() {
    let lookup =
        lookup(vec![id(0x123), Identifier::Can { first: 0x123, last: 0x123, extended: true }, id(0x7FF), id(0)]);
    assert_eq!(found(&lookup, 0x123, false), Some(0));
    assert_eq!(found(&lookup, 0x123, true), Some(1));
    assert_eq!(found(&lookup, 0x7FF, false), Some(2));
    assert_eq!(found(&lookup, 0x7FF, true), None);
    assert_eq!(found(&lookup, 0x800, false), None, "no 11-bit identifier");
    assert_eq!(found(&lookup, 0, false), Some(3));
}

/// Numbers that no identifier has, and those that stand in free places of a table.
#[test]
fn nothing_is_found_that_was_not_described() {
    let extended = |id| run(id, id, true);
    let tables = [vec![], vec![extended(5)], vec![extended(0)], vec![extended(1)], (7..90).map(extended).collect()];
    for identifiers in tables {
        let described: Vec<u32> = identifiers
            .iter()
            .map(|identifier| match identifier {
                Identifier::Can { first, .. } => *first,
                _ => unreachable!("none here"),
            })
            .collect();
        let lookup = lookup(identifiers);
        for id in (0..200).chain([0x1FFF_FFFF, 0x2000_0000, u32::MAX - 1, u32::MAX]) {
            let expected = described.iter().position(|described| *described == id);
            assert_eq!(found(&lookup, id, true), expected.map(|index| index as u32), "{id}");
        }
    }
}

#[test]
fn the_narrower_recognition_goes_first() {
    let narrow = Identifier::Pgn { pgn: 65265, sources: vec![0x0B, 0x21], priority: None };
    let urgent = Identifier::Pgn { pgn: 65265, sources: vec![], priority: Some(3) };
    let runs = [run(0x18FE_F120, 0x18FE_F12F, true), run(0x18FE_F100, 0x18FE_F1FF, true), run(0x700, 0x7FF, false)];
    let [first, second, third] = runs;
    let lookup = lookup(vec![pgn(65265), narrow, urgent, first, id(0x18FE_F12F), third, id(0x7E8)]);
    assert_eq!(found(&lookup, 0x18FE_F100, true), Some(0));
    assert_eq!(found(&lookup, 0x18FE_F10B, true), Some(1));
    assert_eq!(found(&lookup, 0x0CFE_F10B, true), Some(1), "sources before the priority");
    assert_eq!(found(&lookup, 0x0CFE_F100, true), Some(2));
    assert_eq!(found(&lookup, 0x18FE_F121, true), Some(3), "a run before a group");
    assert_eq!(found(&lookup, 0x18FE_F12F, true), Some(4), "an exact identifier before a run");
    assert_eq!(found(&lookup, 0x7E8, false), Some(6));
    assert_eq!(found(&lookup, 0x7E9, false), Some(5));
    let wide = super::tests::lookup(vec![second]);
    assert_eq!(found(&wide, 0x18FE_F1FF, true), Some(0));
}

/// Identifier; priority, group and sender in it.
type InIdentifier = (u32, u8, u32, u8);

/// Priority, group and sender by the bits of SAE J1939-21 (widths as the documentation of the Linux kernel gives them,
/// Documentation/networking/j1939.rst; the two pages from memory); PF below 240 leaves the low byte to the destination. The last one is the
/// case of a fixed address in that documentation: group 0x12300 from 0x20 to 0x30.
const IN_IDENTIFIERS: [InIdentifier; 14] = [
    (0x0CF0_0400, 3, 61444, 0x00),
    (0x18FE_F100, 6, 65265, 0x00),
    (0x18FE_E900, 6, 65257, 0x00),
    (0x18EA_FFF9, 6, 59904, 0xF9),
    (0x18EC_FF00, 6, 60416, 0x00),
    (0x18EB_0B03, 6, 60160, 0x03),
    (0x0C00_0003, 3, 0, 0x03),
    (0x18FE_BF0B, 6, 65215, 0x0B),
    (0x18FE_CA00, 6, 65226, 0x00),
    (0x18EE_FF80, 6, 60928, 0x80),
    (0x1DEF_F905, 7, 126_720, 0x05),
    (0x18DA_F110, 6, 55808, 0x10),
    (0x1CFF_4011, 7, 65344, 0x11),
    (0x1923_3020, 6, 0x12300, 0x20),
];

#[test]
fn parameter_groups_are_found_in_identifiers() {
    let lookup = lookup(IN_IDENTIFIERS.iter().map(|row| pgn(row.2)).collect());
    for (index, (id, priority, group, source)) in (0..).zip(IN_IDENTIFIERS) {
        assert_eq!(pgn_of(id), group);
        let seen = SeenId::Can { id, extended: true };
        let is = |source, priority| {
            let identifier = Identifier::Pgn { pgn: group, sources: vec![source], priority: Some(priority) };
            identifier.matches(seen, &[])
        };
        assert_eq!((0..8).filter(|sent| is(source, *sent)).collect::<Vec<_>>(), [priority], "{id:X}");
        assert_eq!((0..=255).filter(|sent| is(*sent, priority)).collect::<Vec<_>>(), [source], "{id:X}");
        let seen = lookup.find(NetworkId(0), id, true);
        assert_eq!(seen, Some(Recognised::of_group(FrameId(index))), "{id:X}");
        assert_eq!(found(&lookup, id & 0x7FF, false), None);
    }
}

#[test]
fn many_identifiers_are_found_as_by_asking_each() {
    let mut state = 7_u64;
    let mut random = move || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 40) as u32
    };
    let mut identifiers = Vec::new();
    for _ in 0..400 {
        identifiers.push(Identifier::Can { first: random(), last: 0, extended: true });
        if let Some(Identifier::Can { first, last, .. }) = identifiers.last_mut() {
            *first &= 0x1FFF_FFFF;
            *last = *first;
        }
    }
    let lookup = lookup(identifiers.clone());
    for identifier in &identifiers {
        let &Identifier::Can { first, .. } = identifier else {
            continue;
        };
        for id in [first.saturating_sub(1), first, (first + 1) & 0x1FFF_FFFF] {
            let plain =
                identifiers.iter().position(|identifier| identifier.matches(SeenId::Can { id, extended: true }, &[]));
            assert_eq!(found(&lookup, id, true), plain.map(|index| index as u32), "{id:X}");
        }
    }
    assert_eq!(lookup.count(NetworkId(0)), 400);
}

/// A frame is sent where its cycle leaves the first one as remainder: FlexRay 2.1A, cycle multiplexing (from memory); worked out by hand.
#[test]
fn cycles_of_a_flexray_frame() {
    let odd: Vec<u8> = (0..32).map(|number| 2 * number + 1).collect();
    for (first_cycle, repetition, wanted) in
        [(3, 8, &[3, 11, 19, 27, 35, 43, 51, 59][..]), (0, 64, &[0]), (1, 2, &odd), (5, 16, &[5, 21, 37, 53])]
    {
        let channels = wirelore_model::FlexRayChannels::Both;
        let identifier = Identifier::FlexRay { slot: 7, first_cycle, repetition, channels };
        let is_sent = |cycle: &u8| identifier.matches(SeenId::FlexRay { slot: 7, cycle: *cycle, on_b: false }, &[]);
        assert_eq!((0..64).filter(is_sent).collect::<Vec<u8>>(), wanted, "{first_cycle} of {repetition}");
    }
}

#[test]
fn groups_and_runs_tell_who_sent_them() {
    let lookup = lookup(vec![
        pgn(0xFEF1),
        Identifier::Can { first: 0x7E8, last: 0x7EF, extended: false },
        Identifier::Can { first: 0x7EA, last: 0x7EA, extended: false },
        Identifier::Can { first: 0x18DA_F100, last: 0x18DA_F1FF, extended: true },
        Identifier::Can { first: 0x18DA_F133, last: 0x18DA_F133, extended: true },
    ]);
    let told = |id, extended| {
        let found = lookup.find(NetworkId(0), id, extended).expect("it is described");
        (found.frame().0, found.source(SeenId::Can { id, extended }).map(|source| source.to_string()))
    };
    let says = |source: &str| Some(source.to_owned());
    assert_eq!(told(0x18FE_F10B, true), (0, says("0x0B")));
    assert_eq!(told(0x7E8, false), (1, says("0x7E8")));
    assert_eq!(told(0x7EA, false), (2, None), "one identifier of its own goes before the run");
    assert_eq!(told(0x18DA_F110, true), (3, says("0x18DAF110")));
    assert_eq!(told(0x18DA_F133, true), (4, None));
}
