//! End-to-end protection: messages as published, and messages that follow from the same rules.
//!
//! AUTOSAR PRS E2EProtocol (R20-11) has examples for each profile ("Protocol Examples"), all other bytes zero. They are given here from
//! memory of that document; an independent calculation, bit by bit, gave the same bytes.

use wirelore_bits::e2e::{DataId, E2e, E2eError, Part, Profile};

/// The list of the examples of profiles 2 and 22: 1 to 16.
const LIST: DataId = DataId::List([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]);
const ID_16: DataId = DataId::One(0x1234);
const ID_32: DataId = DataId::One(0x0A0B_0C0D);
const ID_12: DataId = DataId::One(0x123);

/// Name, profile, data id, byte of the header, count, the bytes.
type Row = (&'static str, Profile, DataId, u32, u32, &'static str);

/// PRS E2EProtocol, protocol examples.
const PUBLISHED: [Row; 16] = [
    ("11 both, count 0", Profile::P11Both, ID_12, 0, 0, "CC 00 00 00 00 00 00 00"),
    ("11 both, count 1", Profile::P11Both, ID_12, 0, 1, "91 01 00 00 00 00 00 00"),
    ("11 nibble, count 0", Profile::P11Nibble, ID_12, 0, 0, "2A 10 00 00 00 00 00 00"),
    ("11 nibble, count 1", Profile::P11Nibble, ID_12, 0, 1, "77 11 00 00 00 00 00 00"),
    ("11 nibble at byte 8", Profile::P11Nibble, ID_12, 8, 0, "00 00 00 00 00 00 00 00 7D 10 00 00 00 00 00 00"),
    ("4", Profile::P04, ID_32, 0, 0, "00 10 00 00 0A 0B 0C 0D 86 2B 05 56 00 00 00 00"),
    (
        "4 at byte 8",
        Profile::P04,
        ID_32,
        8,
        0,
        "00 00 00 00 00 00 00 00 00 18 00 00 0A 0B 0C 0D 69 D7 50 2E 00 00 00 00",
    ),
    ("5", Profile::P05, ID_16, 0, 0, "1C CA 00 00 00 00 00 00"),
    ("5 at byte 8", Profile::P05, ID_16, 8, 0, "00 00 00 00 00 00 00 00 28 91 00 00 00 00 00 00"),
    ("6", Profile::P06, ID_16, 0, 0, "B1 55 00 08 00 00 00 00"),
    ("6 at byte 8", Profile::P06, ID_16, 8, 0, "00 00 00 00 00 00 00 00 4E B7 00 10 00 00 00 00"),
    ("7", Profile::P07, ID_32, 0, 0, "1F B2 E7 37 FC ED BC D9 00 00 00 18 00 00 00 00 0A 0B 0C 0D 00 00 00 00"),
    (
        "7 at byte 8",
        Profile::P07,
        ID_32,
        8,
        0,
        "00 00 00 00 00 00 00 00 17 F7 C8 17 32 38 65 A8 00 00 00 20 00 00 00 00 0A 0B 0C 0D 00 00 00 00",
    ),
    ("8", Profile::P08, ID_32, 0, 0, "41 49 4E 52 00 00 00 14 00 00 00 00 0A 0B 0C 0D 00 00 00 00"),
    ("22, count 1", Profile::P22, LIST, 0, 1, "1B 01 00 00 00 00 00 00"),
    ("22 at byte 8, count 1", Profile::P22, LIST, 8, 1, "00 00 00 00 00 00 00 00 14 01 00 00 00 00 00 00"),
];

/// Derived from the rules, and calculated independently bit by bit. Modes both and nibble of profile 1 have to be those of profile 11,
/// whose examples are published: PRS E2EProtocol says that the two work together where the header stands at the front.
const DERIVED: [Row; 19] = [
    ("1 both, count 0", Profile::P01Both, ID_12, 0, 0, "CC 00 00 00 00 00 00 00"),
    ("1 both, count 1", Profile::P01Both, ID_12, 0, 1, "91 01 00 00 00 00 00 00"),
    ("1 both, count 2", Profile::P01Both, ID_12, 0, 2, "76 02 00 00 00 00 00 00"),
    ("1 alternating, count 0", Profile::P01Alternating, ID_12, 0, 0, "CE 00 00 00 00 00 00 00"),
    ("1 alternating, count 1", Profile::P01Alternating, ID_12, 0, 1, "02 01 00 00 00 00 00 00"),
    ("1 alternating, count 2", Profile::P01Alternating, ID_12, 0, 2, "74 02 00 00 00 00 00 00"),
    ("1 low, count 0", Profile::P01Low, ID_12, 0, 0, "CE 00 00 00 00 00 00 00"),
    ("1 low, count 1", Profile::P01Low, ID_12, 0, 1, "93 01 00 00 00 00 00 00"),
    ("1 low, count 2", Profile::P01Low, ID_12, 0, 2, "74 02 00 00 00 00 00 00"),
    ("1 nibble, count 0", Profile::P01Nibble, ID_12, 0, 0, "2A 10 00 00 00 00 00 00"),
    ("1 nibble, count 1", Profile::P01Nibble, ID_12, 0, 1, "77 11 00 00 00 00 00 00"),
    ("1 nibble, count 2", Profile::P01Nibble, ID_12, 0, 2, "90 12 00 00 00 00 00 00"),
    ("1 both, data", Profile::P01Both, DataId::One(0xABC), 0, 5, "E4 05 AA BB CC DD EE FF"),
    ("1 nibble, last count", Profile::P01Nibble, DataId::One(0xABC), 0, 14, "63 AE AA BB CC DD EE FF"),
    ("1 nibble, round again", Profile::P01Nibble, DataId::One(0xABC), 0, 0, "62 A0 AA BB CC DD EE FF"),
    ("2, last count", Profile::P02, LIST, 0, 15, "B9 0F AA BB CC DD EE FF"),
    ("2, round again", Profile::P02, LIST, 0, 0, "7A 00 AA BB CC DD EE FF"),
    ("5, last count", Profile::P05, ID_16, 0, 255, "6E 9C FF 11 22 33 44 55"),
    ("4, last count", Profile::P04, ID_32, 0, 0xFFFF, "00 10 FF FF 0A 0B 0C 0D 50 23 33 50 DE AD BE EF"),
];

fn bytes(text: &str) -> Vec<u8> {
    text.split(' ').map(|byte| u8::from_str_radix(byte, 16).expect("two digits")).collect()
}

/// What the sender has before it protects: the same bytes, zero where the profile writes.
fn unprotected(bytes: &[u8], profile: Profile, header: u32) -> Vec<u8> {
    let mut bytes = bytes.to_vec();
    for field in Part::ALL.into_iter().filter_map(|part| profile.part(part, header)) {
        for position in field.places().iter().flat_map(|place| place.positions()) {
            bytes[position.byte as usize] &= !(1 << position.bit);
        }
    }
    bytes
}

#[test]
fn messages_as_published_and_as_derived() {
    for (name, profile, data_id, header, counter, text) in PUBLISHED.into_iter().chain(DERIVED) {
        let e2e = E2e::new(profile, data_id, header).expect(name);
        let right = bytes(text);
        let mut made = unprotected(&right, profile, header);
        assert!(e2e.protect(&mut made, counter), "{name}");
        assert_eq!(made, right, "{name}");
        let found = e2e.check(&right).expect(name);
        assert!(found.sum_fits() && found.length_fits() && found.data_id_fits(), "{name}: {found:?}");
        assert_eq!(found.counter, counter, "{name}");
        // Any single wrong bit is found: no CRC of the standard lets one pass. (Nibble modes send bits beside the data.)
        for bit in 0..right.len() * 8 {
            let mut wrong = right.clone();
            wrong[bit / 8] ^= 1 << (bit % 8);
            let found = e2e.check(&wrong).expect(name);
            assert!(!found.sum_fits(), "{name}, bit {bit}: {found:?}");
        }
        for length in 0..e2e.needed_bytes() {
            assert_eq!(e2e.check(&right[..length]), None, "{name}");
            assert!(!e2e.protect(&mut made[..length], counter), "{name}");
        }
    }
}

/// PRS E2EProtocol, example of profile 22: eight bytes, the checksum of each count from 0 to 15 (from memory).
#[test]
fn all_counts_of_profile_22() {
    let published = bytes("0E 1B 98 31 0D 18 9B 65 08 1D 9E 37 0B 1E 9D CD");
    for profile in [Profile::P22, Profile::P02] {
        let e2e = E2e::new(profile, LIST, 0).expect("a good one");
        for (counter, right) in (0..).zip(&published) {
            let mut payload = [0; 8];
            assert!(e2e.protect(&mut payload, counter));
            assert_eq!((payload[0], payload[1]), (*right, counter as u8), "count {counter}");
        }
    }
}

#[test]
fn a_length_or_an_identifier_that_was_sent_wrong_shows_beside_a_right_sum() {
    let sent_by_another = E2e::new(Profile::P04, DataId::One(7), 0).expect("a good one");
    let e2e = E2e::new(Profile::P04, ID_32, 0).expect("a good one");
    let mut payload = [0; 16];
    assert!(sent_by_another.protect(&mut payload, 3));
    let found = e2e.check(&payload).expect("long enough");
    assert!(found.sum_fits() && found.length_fits());
    assert_eq!(found.data_id, Some((7, 0x0A0B_0C0D)));

    // Two bytes behind what was protected: the sum cannot fit any more, and the length says why.
    let longer: Vec<u8> = payload.iter().copied().chain([0, 0]).collect();
    let found = e2e.check(&longer).expect("long enough");
    assert!(!found.sum_fits());
    assert_eq!(found.length, Some((16, 18)));

    // The half byte that is sent, of a data id with the same low byte.
    let (one, other) = (DataId::One(0x123), DataId::One(0x723));
    let mut payload = [0; 8];
    assert!(E2e::new(Profile::P11Nibble, other, 0).expect("a good one").protect(&mut payload, 0));
    let found = E2e::new(Profile::P11Nibble, one, 0).expect("a good one").check(&payload).expect("long enough");
    assert_eq!((found.sum_fits(), found.data_id), (true, Some((7, 1))));
}

#[test]
fn the_data_id_that_fits_is_found() {
    let sent = E2e::new(Profile::P05, DataId::One(0x124), 0).expect("a good one");
    let expected = E2e::new(Profile::P05, DataId::One(0x123), 0).expect("a good one");
    let mut payload = [1, 2, 3, 4, 5, 6, 7, 8];
    assert!(sent.protect(&mut payload, 9));
    assert!(!expected.check(&payload).expect("long enough").sum_fits());
    assert!(expected.would_fit(&payload, DataId::One(0x124)));
    assert!(!expected.would_fit(&payload, DataId::One(0x125)));
    assert!(!expected.would_fit(&payload, LIST), "no data id of the profile");
}

/// The rings of the counters: AUTOSAR PRS E2EProtocol, from memory (15 values in profiles 1 and 11, whose 15 is never sent).
#[test]
fn counts_rise_around_the_ring() {
    for (profile, last) in [
        (Profile::P01Both, 14),
        (Profile::P02, 15),
        (Profile::P04, 0xFFFF),
        (Profile::P05, 0xFF),
        (Profile::P06, 0xFF),
        (Profile::P07, u32::MAX),
        (Profile::P08, u32::MAX),
        (Profile::P11Nibble, 14),
        (Profile::P22, 15),
    ] {
        assert_eq!(profile.last_count(), last, "{profile:?}");
        assert_eq!(profile.rise(last, 0), 1, "{profile:?}");
        assert_eq!(profile.rise(3, 3), 0, "{profile:?}");
        assert_eq!(profile.rise(2, 5), 3, "{profile:?}");
        assert_eq!(profile.rise(5, 4), last, "{profile:?}");
    }
    let mut payload = [0; 8];
    let profile_1 = E2e::new(Profile::P01Both, ID_12, 0).expect("a good one");
    assert!(!profile_1.protect(&mut payload, 15), "never sent");
    assert_eq!(payload, [0; 8]);
}

#[test]
fn what_is_no_protection_is_refused() {
    let refused = |profile, data_id, header| E2e::new(profile, data_id, header).expect_err("not a good one");
    assert_eq!(refused(Profile::P02, ID_12, 0), E2eError::WrongSortOfId { takes_list: true });
    assert_eq!(refused(Profile::P04, LIST, 0), E2eError::WrongSortOfId { takes_list: false });
    assert_eq!(refused(Profile::P05, DataId::One(0x1_0000), 0), E2eError::IdTooLarge { most: 0xFFFF });
    assert_eq!(refused(Profile::P01Nibble, DataId::One(0x1000), 0), E2eError::IdTooLarge { most: 0xFFF });
    assert_eq!(refused(Profile::P02, LIST, 1), E2eError::NotAtTheFront);
    assert_eq!(refused(Profile::P07, ID_32, u32::MAX - 3), E2eError::OutOfReach);
    for profile in Profile::ALL {
        let data_id = if profile.takes_list() { LIST } else { DataId::One(profile.greatest_id()) };
        let header = E2e::new(profile, data_id, 0).expect("a good one").needed_bytes();
        let ends = Part::ALL.into_iter().filter_map(|part| profile.part(part, 0)).map(|field| field.needed_bytes());
        assert_eq!(ends.max(), Some(header as u32), "{profile:?}: the header ends with its last part");
    }
}
