//! Counters and checksums, with the published examples of the AUTOSAR checksum library and of LIN.

use wirelore_bits::e2e::{DataId, E2e, Profile};
use wirelore_model::{
    Appearance, ByteSpan, Checksum, ChecksumAlgorithm, Counter, Database, FrameId, Identifier, Meaning, MixedByte,
    NetworkId, PortProtocol, Role, SeenId, Signal,
};

use super::*;
use crate::testing::*;

fn sender(source: Option<u8>) -> Sender {
    Sender { channel: Channel(0), network: NetworkId(0), frame: FrameId(0), source }
}

fn checksum(algorithm: ChecksumAlgorithm, over: &[(u32, Option<u32>)]) -> Checksum {
    let over = over.iter().map(|&(first, last)| ByteSpan { first, last }).collect();
    Checksum { algorithm, over, start: None, first: Vec::new(), then: Vec::new() }
}

fn verdicts(database: &Database, payloads: &[&[u8]]) -> Vec<Verdict> {
    let decoder = Decoder::new(database).expect("a decoder");
    let mut checks = Checks::default();
    let mut verdicts = Vec::new();
    for payload in payloads {
        checks.frame(&decoder, sender(None), Origin::default(), payload, |_, told| verdicts.push(told));
    }
    verdicts
}

fn always(bytes: &[u8]) -> Vec<MixedByte> {
    bytes.iter().copied().map(MixedByte::Byte).collect()
}

fn of(plan: &Checksum, payload: &[u8]) -> Option<u64> {
    ChecksumPlan::new(plan, plan.algorithm.width(), &[]).of(payload, None)
}

/// AUTOSAR SWS CRCLibrary, example table (CRC8H2F column published; the other columns from memory of the same table).
#[test]
fn crcs_are_those_of_the_autosar_example_table() {
    use ChecksumAlgorithm::*;
    let rows: [(&[u8], [u64; 7]); 6] = [
        (&[0, 0, 0, 0], [0x59, 0x12, 0x84C0, 0x0000, 0x2144_DF1C, 0x6FB3_2240, 0xF4A5_8635_1E1B_9F4B]),
        (&[0xF2, 0x01, 0x83], [0x37, 0xC2, 0xD374, 0xC2E1, 0x24AB_9D77, 0x4F72_1A25, 0x319C_2766_8164_F1C6]),
        (&[0x0F, 0xAA, 0x00, 0x55], [0x79, 0xC6, 0x2023, 0x0BE3, 0xB6C9_B287, 0x2066_2DF8, 0x54C5_D0F7_667C_1575]),
        (&[0x00, 0xFF, 0x55, 0x11], [0xB8, 0x77, 0xB8F9, 0x6CCF, 0x32A0_6212, 0x9BD7_996E, 0xA638_22BE_7E07_04E6]),
        (
            &[0x33, 0x22, 0x55, 0xAA, 0xBB, 0xCC, 0xDD, 0xEE, 0xFF],
            [0xCB, 0x11, 0xF53F, 0xAE98, 0xB0AE_863D, 0xA65A_343D, 0x701E_CEB2_19A8_E5D5],
        ),
        (&[0xFF, 0xFF, 0xFF, 0xFF], [0x74, 0x6C, 0x1D0F, 0x9401, 0xFFFF_FFFF, 0xFFFF_FFFF, 0xFFFF_FFFF_0000_0000]),
    ];
    let algorithms = [Crc8SaeJ1850, Crc8Autosar, Crc16Ibm3740, Crc16Arc, Crc32IsoHdlc, Crc32Autosar, Crc64Xz];
    for (bytes, values) in rows {
        for (algorithm, value) in algorithms.into_iter().zip(values) {
            assert_eq!(of(&checksum(algorithm, &[(0, None)]), bytes), Some(value), "{algorithm:?} of {bytes:X?}");
            // The same bytes, some of them mixed in from outside the payload, and covered in two spans.
            let (head, rest) = bytes.split_at(1);
            let (body, tail) = rest.split_at(rest.len() - 1);
            let mut mixed = checksum(algorithm, &[(1, Some(body.len() as u32))]);
            (mixed.first, mixed.then) = (always(head), always(tail));
            let payload = [&[0xEE], body].concat();
            assert_eq!(of(&mixed, &payload), Some(value), "{algorithm:?} of {bytes:X?} mixed");
        }
    }
}

/// AUTOSAR end-to-end profile 11, mode BOTH, data id 0x123 (PRS E2EProtocol, protocol examples, from memory): CRC-8 with polynomial 0x1D,
/// start 0 and nothing combined at the end, over the data id (low byte first) and the data.
#[test]
fn a_start_value_and_bytes_from_outside_make_the_published_profile() {
    for (counter, published) in [(0_u8, 0xCC_u64), (1, 0x91)] {
        let mut profile = checksum(ChecksumAlgorithm::Crc8SaeJ1850, &[(1, Some(7))]);
        (profile.start, profile.first) = (Some(0), always(&[0x23, 0x01]));
        // The algorithm's own end value of 0xFF inverts what the profile leaves as it is.
        let payload = [0, counter, 0, 0, 0, 0, 0, 0];
        assert_eq!(of(&profile, &payload).map(|crc| crc ^ 0xFF), Some(published));
    }
}

/// LIN 2.2A section 2.8.3: 4A 55 93 E5 has the sum 19 before inversion, E6 after it; with the protected identifier BF in front 27.
/// The others are arithmetic.
#[test]
fn sums_are_as_published_or_by_arithmetic() {
    use ChecksumAlgorithm::*;
    let bytes = [0x4A, 0x55, 0x93, 0xE5];
    let all = |algorithm| checksum(algorithm, &[(0, None)]);
    assert_eq!(of(&all(InvertedCarrySum8), &bytes), Some(0xE6));
    let enhanced = Checksum { first: always(&[0xBF]), ..all(InvertedCarrySum8) };
    assert_eq!(of(&enhanced, &bytes), Some(0x27));
    assert_eq!(of(&Checksum { start: Some(0xBF), ..all(InvertedCarrySum8) }, &bytes), Some(0x27));
    assert_eq!(of(&all(Sum8), &bytes), Some(0x17));
    assert_eq!(of(&all(InvertedSum8), &bytes), Some(0xE8));
    assert_eq!(of(&all(Xor8), &bytes), Some(0x4A ^ 0x55 ^ 0x93 ^ 0xE5));
    assert_eq!(of(&all(Nibble4), &bytes), Some(0x8));
}

#[test]
fn a_frame_with_a_checksum_is_right_wrong_or_too_short() {
    let rule = Role::Checksum(Box::new(checksum(ChecksumAlgorithm::Xor8, &[(1, Some(3)), (5, None)])));
    let database = one_frame(frame("f", id(1), vec![unsigned("check", "0.7..0.0").role(rule)]));
    let right = [3, 1, 2, 3, 4, 5, 6];
    let wrong = [9, 1, 2, 3, 4, 5, 6];
    let told = verdicts(&database, &[&right, &wrong, &right[..6], &right[..5], &right[..3], &[]]);
    let checksum = |verdict| Verdict::Checksum(verdict);
    assert_eq!(
        told,
        [
            checksum(ChecksumVerdict::Right),
            checksum(ChecksumVerdict::Wrong { expected: 3, found: 9 }),
            // Open spans end with the payload.
            checksum(ChecksumVerdict::Wrong { expected: 5, found: 3 }),
            checksum(ChecksumVerdict::Wrong { expected: 0, found: 3 }),
            checksum(ChecksumVerdict::TooShort),
        ]
    );
}

fn counting(signal: Signal, low: u64, high: u64, step: u64, counts: &[u8]) -> Vec<CounterVerdict> {
    let signal = signal.role(Role::Counter(Counter { low, high, step }));
    let database = one_frame(frame("f", id(1), vec![signal]));
    let payloads: Vec<[u8; 1]> = counts.iter().map(|count| [*count]).collect();
    let payloads: Vec<&[u8]> = payloads.iter().map(<[u8; 1]>::as_slice).collect();
    let told = verdicts(&database, &payloads).into_iter();
    told.map(|verdict| if let Verdict::Counter(told) = verdict { told } else { panic!("a counter") }).collect()
}

#[test]
fn counters_step_modulo_their_range() {
    use CounterVerdict::{First, Jumped, OutsideRange, Repeated, Right, Suspended};
    let nibble = || unsigned("alive", "0.3..0.0");
    let told = counting(nibble(), 0, 14, 1, &[12, 13, 14, 0, 0, 3, 2]);
    assert_eq!(told, [First, Right, Right, Right, Repeated, Jumped { by: 3 }, Jumped { by: 14 }]);
    let told = counting(nibble().absent(&[pattern(15, 15)]), 0, 14, 1, &[3, 15, 9, 10]);
    assert_eq!(told, [First, Suspended, First, Right]);
    let told = counting(nibble().words(&[(15, 15, "starting", Meaning::Absent)]), 0, 14, 1, &[15, 1]);
    assert_eq!(told, [Suspended, First]);
    assert_eq!(counting(nibble(), 1, 12, 1, &[12, 1, 0, 2]), [First, Right, OutsideRange, First]);
    // 10..14 in steps of 2: 10, 12, 14, then 11, 13, 10.
    assert_eq!(
        counting(nibble(), 10, 14, 2, &[12, 14, 11, 13, 10, 11]),
        [First, Right, Right, Right, Right, Jumped { by: 1 }]
    );
}

#[test]
fn a_counter_may_have_all_64_bits() {
    let signal = unsigned("n", "7.7..0.0").role(Role::Counter(Counter { low: 0, high: u64::MAX, step: 1 }));
    let database = one_frame(frame("f", id(1), vec![signal]));
    let told = verdicts(&database, &[&[0xFF; 8], &[0; 8], &[0xFF; 8]]);
    let counter = |verdict| Verdict::Counter(verdict);
    assert_eq!(
        told,
        [
            counter(CounterVerdict::First),
            counter(CounterVerdict::Right),
            counter(CounterVerdict::Jumped { by: u64::MAX }),
        ]
    );
}

#[test]
fn everything_that_a_frame_shows_tells_sequences_apart() {
    let apart = |origins: Vec<Origin>| {
        let mut sequences: Vec<u64> = origins.iter().map(|origin| origin.sequence(false)).collect();
        sequences.sort_unstable();
        sequences.dedup();
        assert_eq!(sequences.len(), origins.len(), "{origins:?}");
    };
    let of = |id: SeenId| Origin { id: Some(id), header: None };
    apart([(5, false), (5, true), (6, false)].map(|(id, extended)| of(SeenId::Can { id, extended })).into());
    apart([(1, 2), (2, 1), (1, 3)].map(|(acceptance, priority)| of(SeenId::Xl { acceptance, priority })).into());
    let protocol = PortProtocol::Udp;
    apart([(1, 2), (2, 1), (1, 3), (3, 2)].map(|(from, to)| of(SeenId::Ports { protocol, from, to })).into());
    let ends = [(None, None), (Some(0), None), (None, Some(0)), (Some(1), Some(2)), (Some(2), Some(1))];
    apart(ends.map(|(source, target)| of(SeenId::Telegram { source, target })).into());
    apart(
        ends.map(|(source, target)| (source.map(u16::from), target.map(u16::from)))
            .map(|(source, target)| of(SeenId::DoIp { payload_type: 0x8001, source, target }))
            .into(),
    );
    let message = |client: u16, message_type| {
        let [high, low] = client.to_be_bytes();
        let id = SeenId::SomeIp { service: 1, method: 1, message_type };
        Origin { id: Some(id), header: Some([high, low, 0, 0, 0, 0, 0, 0]) }
    };
    apart(vec![message(1, 0), message(1, 2), message(2, 0), message(0x100, 0)]);
}

#[test]
fn what_an_identifier_leaves_open_makes_several_sequences() {
    let signal = unsigned("n", "0.7..0.0").role(Role::Counter(Counter { low: 0, high: 255, step: 1 }));
    let several = |identifier| has_several_sequences(&frame("f", identifier, vec![signal.clone()]));
    for (source, target, expected) in [(Some(1), Some(2), false), (Some(1), None, true), (None, Some(2), true)] {
        assert_eq!(several(Identifier::Telegram { source, target, starts: Vec::new() }), expected);
        let (source, target) = (source.map(u16::from), target.map(u16::from));
        assert_eq!(several(Identifier::DoIp { payload_type: 0x8001, source, target }), expected);
    }
    let can = |last| Identifier::Can { first: 5, last, extended: false };
    assert!(!several(can(5)) && several(can(6)));
    // SAE J1939-21 (from memory): the second byte of a group is a destination where the first is below 240.
    assert!(several(pgn(0xEF00)) && !several(pgn(0xF000)) && !several(pgn(65265)));
    assert!(!has_several_sequences(&frame("f", can(6), vec![unsigned("n", "0.7..0.0")])), "nothing is counted");
    // Two identifiers on one network are two senders; one on each of two networks is told apart by the network.
    for (network, expected) in [(0, true), (1, false)] {
        let mut twice = frame("f", can(5), vec![signal.clone()]);
        twice.seen_on.push(Appearance { network: NetworkId(network), identifier: id(7), via: None });
        assert_eq!(has_several_sequences(&twice), expected);
    }
}

#[test]
fn a_sum_over_an_identifier_that_is_not_known_says_nothing() {
    let mut sum = checksum(ChecksumAlgorithm::Sum8, &[(0, Some(0))]);
    sum.then = vec![MixedByte::Identifier(1)];
    let signal = unsigned("sum", "1.7..1.0").role(Role::Checksum(Box::new(sum)));
    let decoder = Decoder::new(&one_frame(frame("f", id(0x321), vec![signal]))).expect("a decoder");
    let mut checks = Checks::default();
    let mut say = |id| {
        let mut told = None;
        let origin = Origin { id, header: None };
        checks.frame(&decoder, sender(None), origin, &[0x10, 0x13], |_, verdict| told = Some(verdict));
        told
    };
    assert_eq!(say(None), None);
    let seen = SeenId::Can { id: 0x321, extended: false };
    assert_eq!(say(Some(seen)), Some(Verdict::Checksum(ChecksumVerdict::Right)));
}

#[test]
fn each_sender_has_a_sequence_of_its_own() {
    let signal = unsigned("n", "0.7..0.0").role(Role::Counter(Counter { low: 0, high: 255, step: 1 }));
    let decoder = Decoder::new(&one_frame(frame("f", pgn(65265), vec![signal]))).expect("a decoder");
    let mut checks = Checks::default();
    let mut say = |source, count: u8| {
        let mut told = None;
        checks.frame(&decoder, sender(Some(source)), Origin::default(), &[count], |_, verdict| told = Some(verdict));
        told
    };
    let counter = |verdict| Some(Verdict::Counter(verdict));
    assert_eq!(say(1, 7), counter(CounterVerdict::First));
    assert_eq!(say(2, 100), counter(CounterVerdict::First));
    assert_eq!(say(1, 8), counter(CounterVerdict::Right));
    assert_eq!(say(2, 100), counter(CounterVerdict::Repeated));
}

#[test]
fn a_counter_on_a_page_counts_only_there() {
    let counter = |name, page| {
        unsigned(name, "1.7..1.0").role(Role::Counter(Counter { low: 0, high: 255, step: 1 })).on_page(page)
    };
    let mut paged = frame("f", id(1), vec![unsigned("page", "0.7..0.0"), counter("a", 0), counter("b", 1)]);
    paged.pages = vec![page(None, 0, &[(0, &[span(1, 1)])]), page(None, 0, &[(0, &[span(2, 2)])])];
    let told = verdicts(&one_frame(paged), &[&[1, 5], &[2, 9], &[3, 0], &[1, 6], &[2, 11], &[1]]);
    let counter = |verdict| Verdict::Counter(verdict);
    assert_eq!(
        told,
        [
            counter(CounterVerdict::First),
            counter(CounterVerdict::First),
            counter(CounterVerdict::Right),
            counter(CounterVerdict::Jumped { by: 2 }),
        ]
    );
}

/// The frame that a message of the second of so many protected frames, on the port of the first, is told to belong to.
fn belongs_among(frames: u32, bytes: usize) -> Option<Belongs> {
    let mut text = String::from("network backbone ethernet 100 Mbit/s\n");
    for number in 1..=frames {
        text += &format!(
            "frame f{number} on backbone udp port {number} {{ length 8..5000\n protected by e2e 5, data id {number} }}\n"
        );
    }
    let database = wirelore_lang::check_text("many.lore", &text).database.expect("no mistakes");
    let protection = database.frames[0].signals[0].protection().expect("it is protected");
    let plan = ProtectionPlan::new(protection, 5000, &ByProfile::of(&database)).expect("a good one");
    let mut message = vec![0; bytes];
    assert!(E2e::new(Profile::P05, DataId::One(2), 0).expect("a good one").protect(&mut message, 0));
    match plan.verdict(None, &message, &mut Vec::new(), &mut Memory::default()) {
        ProtectionVerdict::WrongSum { belongs, .. } => belongs,
        other => panic!("{other:?}"),
    }
}

/// A sum of 16 bits is believed at once. No more than 256 KiB are summed to find out whose a message is.
#[test]
fn whose_a_message_is_is_not_searched_for_without_end() {
    let second = Some(Belongs { frame: FrameId(1), data_id: 2 });
    assert_eq!(belongs_among(3, 8), second);
    assert_eq!(belongs_among(64, 4096), second);
    assert_eq!(belongs_among(65, 4096), None);
    assert_eq!(belongs_among(64, 4097), None);
}
