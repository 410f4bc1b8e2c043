//! Protected SOME/IP messages: what stands behind the length in the header is protected with the payload.

mod common;
mod ethernet;

use common::{Rows, read};
use ethernet::{datagrams, someip};
use wirelore_bits::e2e::{DataId, E2e, Profile};
use wirelore_decode::{Given, Note, ProtectionCounts, encode};
use wirelore_lang::check_text;
use wirelore_model::FrameId;

const SERVICES: &str = "
network backbone ethernet 100 Mbit/s
frame motion on backbone service 0x4A10 event 0x8001 {
    length 16
    protected by e2e 4, data id 0x0A0B0C0D
    signal speed in bytes 12..13 = raw * 0.01 km/h
}
frame late on backbone service 0x4A10 event 0x8002 {
    length 20
    protected by e2e 6, data id 0x1234, at byte 4, over bytes 4..19
}
";

/// The message of a sender: the end-to-end header is 64 bits behind the beginning of what is protected, which is the client of the header
/// (AUTOSAR PRS SOME/IP Protocol and PRS E2EProtocol, offset of 64 bits, from memory). The sum over both is the reference here: it is
/// calculated from the standard's polynomial by the caller, not by what is tested.
fn motion(session: u16, counter: u16) -> Vec<u8> {
    let mut message = someip(0x4A10_8001, 0, session, 2, &[0; 16]);
    // Length with the eight bytes of the header, counter, data id.
    message[16..18].copy_from_slice(&24_u16.to_be_bytes());
    message[18..20].copy_from_slice(&counter.to_be_bytes());
    message[20..24].copy_from_slice(&0x0A0B_0C0D_u32.to_be_bytes());
    let sum = crc_32_p4(message[8..24].iter().chain(&message[28..]));
    message[24..28].copy_from_slice(&sum.to_be_bytes());
    message
}

/// CRC-32 of profile 4, bit by bit: polynomial F4ACFB13, reflected, start and end all ones (AUTOSAR SWS CRCLibrary, from memory).
fn crc_32_p4<'a>(bytes: impl Iterator<Item = &'a u8>) -> u32 {
    !bytes.fold(u32::MAX, |state, byte| {
        (0..8).fold(state ^ u32::from(*byte), |state, _| {
            if state & 1 == 1 { state >> 1 ^ 0xF4AC_FB13_u32.reverse_bits() } else { state >> 1 }
        })
    })
}

#[test]
fn the_header_in_front_is_protected_too() {
    let mut other_session = motion(3, 2);
    other_session[11] = 9;
    let mut other_payload = motion(4, 2);
    other_payload[30] ^= 1;
    let log = [motion(1, 0), motion(2, 1), other_session, other_payload, motion(5, 2)];
    let Rows { lines, tally } = read(SERVICES, datagrams(30_501, &log));
    assert_eq!((lines[0].as_str(), lines[1].as_str()), ("0 motion.protection 0", "0 motion.speed 0"));
    let expected = ProtectionCounts { first: 1, right: 2, wrong_sum: 2, ..ProtectionCounts::default() };
    assert_eq!(tally.protections, expected);
}

#[test]
fn a_protection_that_begins_later_is_of_the_payload_alone() {
    let mut payload = [0; 20];
    let e2e = E2e::new(Profile::P06, DataId::One(0x1234), 0).expect("a good one");
    assert!(e2e.protect(&mut payload[4..], 0));
    let Rows { tally, .. } = read(SERVICES, datagrams(30_501, &[someip(0x4A10_8002, 0, 1, 2, &payload)]));
    assert_eq!((tally.protections.first, tally.protections.wrong_sum), (1, 0));
}

#[test]
fn encoding_writes_what_decoding_checks_and_tells_the_header_it_took() {
    let database = check_text("services.lore", SERVICES).database.expect("no mistakes");
    let encoded = encode(&database, FrameId(0), &[("speed", Given::Raw(0x1234))]).expect("it encodes");
    let header = [0, 0, 0, 0, 1, 1, 2, 0];
    assert!(encoded.notes.contains(&Note::HeaderTaken { signal: "protection".into(), header }), "{:?}", encoded.notes);
    let told: Vec<String> = encoded.notes.iter().map(ToString::to_string).collect();
    assert!(told.iter().any(|note| note.contains("00 00 00 00 01 01 02 00 as bytes 8..15")), "{told:?}");
    let Rows { tally, .. } = read(SERVICES, datagrams(30_501, &[someip(0x4A10_8001, 0, 0, 2, &encoded.payload)]));
    assert_eq!((tally.protections.first, tally.protections.wrong_sum), (1, 0));
    let Rows { tally, .. } = read(SERVICES, datagrams(30_501, &[someip(0x4A10_8001, 0, 1, 2, &encoded.payload)]));
    assert_eq!(tally.protections.wrong_sum, 1, "another session");
}
