//! Whole frames: selectors, counters, checksums, lengths.

use wirelore_bits::NumberKind;
use wirelore_model::{
    ByteSpan, Checksum, ChecksumAlgorithm, Counter, Database, FlexRayChannels, FlexRayTiming, Frame, Identifier,
    LinChecksum, Meaning, Network, NetworkKind, PageId, PortProtocol, Role, StaticSlots,
};

use super::{error, notes, payload, typed};
use crate::testing::*;

/// A frame with a page for 1, one for 2 and 4..6 (in which another switch stands), and one for everything else.
fn paged() -> Database {
    let mut described = frame(
        "f",
        id(1),
        vec![
            unsigned("page", "0.7..0.0"),
            unsigned("oil", "1.7..1.0").scaled("1", "-40", "°C").absent(&[pattern(0xFF, 0xFF)]).on_page(0),
            unsigned("sub", "1.7..1.0").on_page(1),
            unsigned("deep", "2.7..2.0").on_page(2),
            unsigned("other", "3.7..3.0").on_page(3),
            unsigned("twin", "4.7..4.0").on_page(0),
            unsigned("twin", "5.7..5.0").on_page(3),
        ],
    );
    described.pages = vec![
        page(None, 0, &[(0, &[span(1, 1)])]),
        page(None, 0, &[(0, &[span(2, 2), span(4, 6)])]),
        page(Some(1), 1, &[(2, &[pattern(0x20, 0x2F)])]),
        page(None, 0, &[]),
    ];
    one_frame(described)
}

#[test]
fn selectors_follow_the_given_signals() {
    let database = paged();
    assert_eq!(payload(&database, &["oil=90"]), [1, 130, 0, 0, 0]);
    assert_eq!(
        notes(&database, &["oil=90"]),
        [
            "page: set to 1, because oil is there only then",
            "twin: not given, raw value 0",
            "bits 2.7..3.0 are not described, sent as 0",
        ]
    );
    assert_eq!(payload(&database, &["deep=7"]), [2, 0x20, 7]);
    assert_eq!(
        notes(&database, &["deep=7"]),
        ["page: set to 2, because deep is there only then", "sub: set to 0x20, because deep is there only then"],
        "from the outside in"
    );
    assert_eq!(payload(&database, &["deep=7", "page=5"]), [5, 0x20, 7]);
    assert_eq!(payload(&database, &["deep=7", "sub=0x2F"]), [2, 0x2F, 7]);
    assert_eq!(payload(&database, &["other=9"]), [0, 0, 0, 9, 0, 0]);
    assert_eq!(payload(&database, &["page=3", "twin=9"]), [3, 0, 0, 0, 0, 9]);
    assert_eq!(payload(&database, &["oil=90", "twin=9"]), [1, 130, 0, 0, 9]);
    assert_eq!(payload(&database, &["page=1"]), [1, 0xFF, 0, 0, 0]);
    assert_eq!(
        error(&database, &["oil=90", "deep=7"]),
        "signals `oil` and `deep` are never there together: oil only when page is 1, deep only when page is 2, 4..6 and sub is 0x20..0x2F"
    );
    assert_eq!(
        error(&database, &["deep=7", "page=1"]),
        "signal `deep` is there only when page is 2, 4..6 and sub is 0x20..0x2F, and the selector is given otherwise or cannot be set so"
    );
    assert_eq!(
        error(&database, &["twin=7"]),
        "signal `twin` is on several pages; give the selector too (page is 1; or page is none of the other pages' values)"
    );
}

#[test]
fn conditions_are_told_in_the_words_of_the_selector() {
    let kind = || unsigned("kind", "0.7..0.0");
    let worded = kind().words(&[(1, 1, "oil", Meaning::Reading), (2, 2, "air", Meaning::Reading)]);
    let on_pages = |kind| {
        let signals = vec![kind, unsigned("a", "1.7..1.0").on_page(0), unsigned("b", "1.7..1.0").on_page(1)];
        let mut described = frame("f", id(1), signals);
        described.pages = vec![page(None, 0, &[(0, &[span(1, 1)])]), page(None, 0, &[(0, &[span(2, 2)])])];
        one_frame(described)
    };
    let start = "signals `a` and `b` are never there together: ";
    assert_eq!(
        error(&on_pages(worded), &["a=1", "b=1"]),
        format!("{start}a only when kind is oil, b only when kind is air")
    );
    assert_eq!(
        error(&on_pages(kind()), &["a=1", "b=1"]),
        format!("{start}a only when kind is 1, b only when kind is 2")
    );
}

/// Of a floating-point selector 0, 1 and -1 are tried where none of the other pages' values may hold.
#[test]
fn a_floating_point_selector_is_set_too() {
    let signals = vec![
        number("kind", "3.7..0.0", NumberKind::Float),
        unsigned("a", "4.7..4.0").on_page(0),
        unsigned("b", "5.7..5.0").on_page(1),
        unsigned("c", "6.7..6.0").on_page(2),
    ];
    let mut described = frame("f", id(1), signals);
    let test = |value| page(None, 0, &[(0, &[span(value, value)])]);
    described.pages = vec![test(0), test(1), page(None, 0, &[])];
    let database = one_frame(described);
    let kind = |given| payload(&database, &[given])[..4].to_vec();
    assert_eq!(kind("a=5"), 0_f32.to_le_bytes());
    assert_eq!(kind("b=5"), 1_f32.to_le_bytes());
    assert_eq!(kind("c=5"), (-1_f32).to_le_bytes());
}

#[test]
fn counters_start_and_checksums_come_last() {
    let over = vec![ByteSpan { first: 0, last: Some(2) }];
    let rule = Checksum { algorithm: ChecksumAlgorithm::Crc8SaeJ1850, over, start: None, first: vec![], then: vec![] };
    let signals = vec![
        unsigned("check", "3.7..3.0").role(Role::Checksum(Box::new(rule))),
        unsigned("alive", "0.7..0.4").role(Role::Counter(Counter { low: 1, high: 14, step: 1 })),
        unsigned("value", "2.7..1.0"),
    ];
    let database = one_frame(frame("f", id(1), signals));
    // CRC-8 of F2 01 83 is 37: AUTOSAR SWS CRCLibrary, example table (from memory).
    assert_eq!(payload(&database, &["value=0x8301", "alive=0xF", "check=0x37"]), [0xF0, 0x01, 0x83, 0x37]);
    let (bytes, said) = typed(&database, &["value=0x8301"]).expect("it encodes");
    assert_eq!(bytes[..3], [0x10, 0x01, 0x83]);
    assert_eq!(
        said,
        [
            "alive: not given, counts from 1".to_owned(),
            format!("check: calculated, 0x{:X}", bytes[3]),
            "bits 0.3..0.0 are not described, sent as 0".to_owned(),
        ]
    );
    let (wrong, said) = typed(&database, &["value=0x8301", "check=0"]).expect("it encodes");
    assert_eq!(
        (wrong[3], &said[1]),
        (0, &format!("check: as given, though the payload's checksum is 0x{:X}", bytes[3]))
    );
}

#[test]
fn lengths_are_as_described_or_as_needed() {
    let with_length = |range, fd: bool| {
        let mut described = frame("f", id(1), vec![unsigned("s", "8.7..8.0")]);
        if !fd {
            described.signals = vec![unsigned("s", "2.7..2.0")];
        }
        described.length = range;
        if fd { one_fd_frame(described) } else { one_frame(described) }
    };
    assert_eq!(payload(&with_length(None, false), &["s=1"]).len(), 3);
    assert_eq!(payload(&with_length(length(8, 8), false), &["s=1"]).len(), 8);
    assert_eq!(payload(&with_length(length(2, 8), false), &["s=1"]).len(), 3);
    assert_eq!(payload(&with_length(None, true), &["s=1"]).len(), 12);
    assert_eq!(
        notes(&with_length(None, true), &["s=1"]),
        [
            "9 bytes needed, 12 bytes long: CAN FD frames have only certain lengths",
            "bits 0.7..7.0 are not described, sent as 0",
        ]
    );
    assert_eq!(payload(&with_length(length(16, 16), true), &["s=1"]).len(), 16);
    let mut paged = frame("f", id(1), vec![unsigned("p", "0.7..0.0"), unsigned("s", "1.7..1.0").on_page(0)]);
    paged.pages = vec![page(None, 0, &[(0, &[span(1, 1)])])];
    (paged.length, paged.pages[0].length) = (length(8, 8), length(5, 5));
    let database = one_frame(paged);
    assert_eq!(payload(&database, &["s=1"]).len(), 5);
    assert_eq!(payload(&database, &["p=2"]).len(), 8);
}

/// CAN XL has frames of 1 to 2048 bytes, and those of CAN FD as they are there (ISO 11898-1, from memory); LIN frames have 1 to 8 bytes (LIN
/// 2.2A, section 2.3.1.4, from memory).
#[test]
fn lengths_are_those_that_the_network_has() {
    let on = |kind, identifier, signals| {
        let mut described = frame("f", id(1), signals);
        described.seen_on[0].identifier = identifier;
        database(vec![network("n", kind)], vec![described])
    };
    let nine_bytes = || vec![unsigned("s", "8.7..8.0")];
    let group = Identifier::Pgn { pgn: 65_280, sources: vec![], priority: None };
    let xl = || Identifier::Xl { acceptance: 7, priority: None };
    assert_eq!(payload(&on(NetworkKind::CanXl, id(1), nine_bytes()), &["s=1"]).len(), 12);
    assert_eq!(payload(&on(NetworkKind::CanXl, group, nine_bytes()), &["s=1"]).len(), 12);
    assert_eq!(payload(&on(NetworkKind::CanXl, xl(), nine_bytes()), &["s=1"]).len(), 9);
    let empty = on(NetworkKind::CanXl, xl(), vec![]);
    assert_eq!(payload(&empty, &[]), [0]);
    assert_eq!(notes(&empty, &[]), ["0 bytes needed, 1 bytes long: CAN XL frames have at least one byte"]);
    let lin = Identifier::Lin { id: 0x11, checksum: LinChecksum::Classic, stands_for: vec![] };
    let empty = on(NetworkKind::Lin, lin, vec![]);
    assert_eq!(payload(&empty, &[]), [0]);
    assert!(notes(&empty, &[])[1].ends_with("classic checksum 0xFF"), "the inverted sum of one 0");
    // FlexRay: whole words, and in the static segment as many as a slot has (FlexRay 2.1A, from memory).
    let in_slot = |slot, static_bytes| {
        let identifier = Identifier::FlexRay { slot, first_cycle: 0, repetition: 1, channels: FlexRayChannels::A };
        let static_slots = Some(StaticSlots { count: 10, bytes: static_bytes });
        let timing = FlexRayTiming { cycle: None, cycles: 64, static_slots, last_dynamic_slot: Some(90) };
        let ring = Network { flexray: Some(timing), ..network("n", NetworkKind::FlexRay) };
        payload(&database(vec![ring], vec![frame("f", identifier, vec![unsigned("s", "2.7..2.0")])]), &["s=1"]).len()
    };
    assert_eq!([in_slot(10, 16), in_slot(10, 4), in_slot(11, 16)], [16, 4, 4]);
}

/// What is looked for in each signal must not be looked for in all of them.
#[test]
fn tens_of_thousands_of_signals_are_filled_in_at_once() {
    let bytes = 60_000;
    let mut signals: Vec<_> = (0..bytes).map(|at| unsigned(&format!("s{at}"), &format!("{at}.7..{at}.0"))).collect();
    for signal in &mut signals[30_000..] {
        signal.page = Some(PageId(0));
    }
    let mut described = frame("f", id(1), signals);
    described.pages = vec![page(None, 0, &[(0, &[span(0, 0)])])];
    described.seen_on[0].identifier = Identifier::Port { protocol: PortProtocol::Udp, port: 30_490 };
    let long = database(vec![network("backbone", NetworkKind::Ethernet)], vec![described]);
    let (payload, said) = typed(&long, &["s59999=7"]).expect("it encodes");
    // A note for each signal that was not given, and one that the headers of Ethernet are not in it.
    assert_eq!((payload.len(), payload[59_999], said.len()), (bytes, 7, bytes));
}

#[test]
fn what_the_description_would_not_expect_is_told() {
    use Meaning::{Absent, Fault, Reading};
    let signals = vec![
        unsigned("alive", "0.7..0.4")
            .role(Role::Counter(Counter { low: 0, high: 13, step: 1 }))
            .absent(&[span(15, 15)]),
        unsigned("key", "0.3..0.0").words(&[(0, 0, "off", Reading), (3, 5, "on", Reading), (15, 15, "bad", Fault)]),
        unsigned("level", "1.7..1.0")
            .in_range("0", "100")
            .words(&[(0, 0, "empty", Reading), (255, 255, "none", Absent)]),
        unsigned("steps", "2.7..2.0").words(&[(255, 255, "unknown", Absent)]),
    ];
    let database = one_frame(frame("f", id(1), signals));
    let said = |alive: &str, key: &str, level: &str| {
        notes(&database, &[&format!("alive={alive}"), &format!("key={key}"), &format!("level={level}"), "steps=7"])
    };
    assert_eq!(said("13", "off", "7"), [""; 0]);
    assert_eq!(said("0xF", "0xF", "none"), [""; 0], "special values are meant so");
    assert_eq!(
        said("14", "9", "101"),
        ["alive: 14 is not a count from 0 to 13", "key: 9 has no word", "level: outside the described range 0..100"]
    );
    assert_eq!(
        said("0b1110", "0x6", "0xFE"),
        ["alive: 14 is not a count from 0 to 13", "key: 6 has no word", "level: outside the described range 0..100"]
    );
}

#[test]
fn bits_that_nobody_described_are_listed() {
    let mut described = frame("f", id(1), vec![unsigned("s", "1.4..0.0"), raw_bytes("rest", 5, Some(5))]);
    described.length = length(8, 8);
    (described.unused, described.unknown) = (vec![bits("3.7..3.0"), bits("7.7..7.1")], vec![bits("2.3..2.0")]);
    let said = |described: &Frame| notes(&one_frame(described.clone()), &["s=1", "rest=00"]);
    assert_eq!(said(&described), ["bits 1.7..1.5, 2.7..2.0, 4.7..4.0, 6.7..6.0, 7.0 are not described, sent as 0"]);
    described.unused.push(bits("1.7..1.5 then 2.7..2.0 then 4.7..4.0 then 6.7..6.0"));
    assert_eq!(said(&described), ["bit 7.0 is not described, sent as 0"]);
    described.unused.push(bits("7.0"));
    assert_eq!(said(&described), [""; 0]);
}

/// A description can state a length of 4 GiB (a message on Ethernet); nobody has to have that much memory.
#[test]
fn long_messages_take_no_more_than_their_signals() {
    let on_ethernet = |signals, range| {
        let mut described = frame("f", id(1), signals);
        described.length = range;
        described.seen_on[0].identifier = Identifier::Port { protocol: PortProtocol::Udp, port: 30_490 };
        database(vec![network("backbone", NetworkKind::Ethernet)], vec![described])
    };
    let open = on_ethernet(vec![unsigned("kind", "0.7..0.0"), raw_bytes("data", 1, None)], length(1, u32::MAX));
    assert_eq!(payload(&open, &["kind=7", "data=0102FF"]), [7, 1, 2, 0xFF]);
    let bytes = "5A".repeat(100_000);
    assert_eq!(payload(&open, &[&format!("data={bytes}")]).len(), 100_001, "longer than a datagram");
    let far = on_ethernet(vec![unsigned("far", "70000.7..70000.0")], None);
    assert_eq!(payload(&far, &["far=9"]).len(), 70_001);
    let too_far = on_ethernet(vec![unsigned("far", "4294967000.7..4294967000.0")], None);
    assert_eq!(
        error(&too_far, &["far=9"]),
        "the frame would need 4294967001 bytes, and at most 16777216 are put together; describe the part that you want to encode as a \
         frame of its own"
    );
    let long = on_ethernet(vec![unsigned("kind", "0.7..0.0")], length(u32::MAX, u32::MAX));
    assert!(error(&long, &["kind=7"]).starts_with("the frame would need 4294967295 bytes, and at most 16777216"));
}

/// The answer to a request for the engine speed: service 0x41 is 0x01 + 0x40, item 0x0C (ISO 15031-5, from memory).
#[test]
fn messages_begin_as_they_are_recognised() {
    let signals = || vec![unsigned("service", "0.7..0.0"), unsigned("speed", "2.7..3.0").scaled("0.25", "0", "rpm")];
    let starts = Identifier::Telegram { source: Some(0x10), target: Some(0xF1), starts: vec![0x41, 0x0C] };
    let database =
        crate::testing::database(vec![network("k", NetworkKind::Kline)], vec![frame("rpm", starts, signals())]);
    assert_eq!(payload(&database, &["speed=1726"]), [0x41, 0x0C, 0x1A, 0xF8]);
    assert_eq!(payload(&database, &["speed=1726", "service=0x41"]), [0x41, 0x0C, 0x1A, 0xF8]);
    assert_eq!(
        notes(&database, &["speed=1726"]),
        ["the data of a message: header and check byte are not in it"],
        "what the beginning says needs no note"
    );
    assert_eq!(
        error(&database, &["service=2"]),
        "signal `service` cannot hold what is given: messages of the frame begin with 41 0C"
    );
}
