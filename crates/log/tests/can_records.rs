//! Records of link type 227 against the published layout.
//!
//! Sources: public link-type registry, page of LINKTYPE 227. The bytes are worked out by hand from them.

mod common;

use common::{bytes, damage, pcap, read, read_with, record};
use wirelore_log::{CanXl, IdentifierOrder, Kind, Medium, Options};

const MICROSECONDS: u32 = 0xA1B2_C3D4;
const CAN: u32 = 227;

/// One record of link type 227 in a file.
fn one(hex: &str) -> common::Read {
    read(pcap(false, MICROSECONDS, CAN, &[(0, 0, &bytes(hex))]))
}

#[test]
fn records_of_link_type_227() {
    // Source: public link-type registry, LINKTYPE 227.
    let classic = &one("98 FE F1 00 08 00 00 00 FF 00 50 FF FF FF FF FF").frames[0];
    assert_eq!((classic.id, classic.extended, classic.fd, classic.payload.len()), (0x18FE_F100, true, false, 8));

    let remote = &one("40 00 01 23 04 00 00 00").frames[0];
    assert_eq!((remote.id, remote.kind, remote.dlc, remote.payload.len()), (0x123, Kind::Remote, Some(4), 0));

    let raw_code = &one("00 00 07 E8 08 00 00 0F 01 02 03 04 05 06 07 08").frames[0];
    assert_eq!((raw_code.id, raw_code.dlc, &raw_code.payload[..]), (0x7E8, Some(15), &[1, 2, 3, 4, 5, 6, 7, 8][..]));

    let fd = &one("00 00 03 21 0C 05 00 00 10 11 12 13 14 15 16 17 18 19 1A 1B").frames[0];
    assert_eq!((fd.id, fd.fd, fd.bit_rate_switch, fd.error_state), (0x321, true, true, false));
    assert_eq!((fd.dlc, fd.payload.len(), fd.payload[11]), (Some(9), 12, 0x1B));

    let error = &one("20 00 00 40 08 00 00 00 00 00 00 00 00 00 00 00").frames[0];
    assert_eq!((error.kind, error.id, error.payload.len()), (Kind::Error, 0x40, 8));

    let xl = &one("00 2A 01 23 81 03 04 00 44 33 22 11 AA BB CC DD").frames[0];
    let header = CanXl {
        sdu_type: 3,
        virtual_network: 0x2A,
        acceptance: 0x1122_3344,
        extended_content: true,
        request_substitution: false,
    };
    assert_eq!((xl.id, xl.extended, xl.kind, xl.fd, xl.dlc), (0x123, false, Kind::Data, false, None));
    assert_eq!((xl.medium, &xl.payload[..]), (Medium::CanXl(header), &[0xAA, 0xBB, 0xCC, 0xDD][..]));
}

#[test]
fn the_longest_can_xl_frame() {
    // Source: public link-type registry, LINKTYPE 227: 1 to 2048 bytes of data.
    let mut hex = "00 00 07 FF 82 01 00 08 00 00 00 00".to_owned();
    hex.push_str(&"A5".repeat(2048));
    let log = one(&hex);
    let Medium::CanXl(xl) = log.frames[0].medium else { panic!("{:?}", log.frames[0].medium) };
    assert_eq!((log.frames[0].id, xl.request_substitution, xl.extended_content), (0x7FF, true, false));
    assert_eq!(log.frames[0].payload, [0xA5; 2048]);
}

#[test]
fn a_record_of_72_bytes_is_fd_without_its_flag() {
    // Source: public link-type registry, LINKTYPE 227: the rule by length, for recorders that set no flag.
    let mut hex = "00 00 03 21 40 00 00 00".to_owned();
    hex.push_str(&"5A".repeat(64));
    let frame = &one(&hex).frames[0];
    assert_eq!((frame.fd, frame.bit_rate_switch, frame.dlc, frame.payload.len()), (true, false, Some(15), 64));
}

#[test]
fn padded_records_and_records_that_cannot_be() {
    assert_eq!(one("00 00 01 23 03 00 00 00 11 22 33 00 00 00 00 00").frames[0].payload, [0x11, 0x22, 0x33]);
    for (hex, words) in [
        ("00 00 01 23 03 00 00", "has 7 bytes, and a CAN record has at least 8"),
        ("00 00 01 23 03 00 00 00 11 22", "says 3 data bytes and holds 2"),
        ("00 00 01 23 09 00 00 00 01 02 03 04 05 06 07 08 09", "9 data bytes, and a classic CAN frame has at most 8"),
        ("00 00 01 23 09 04 00 00 01 02 03 04 05 06 07 08 09", "9 data bytes, which no CAN FD frame can have"),
        ("40 00 01 23 04 04 00 00", "CAN FD has no remote frames"),
        ("00 00 08 00 01 00 00 00 11", "00000800 has bits above the 11"),
        ("00 2A 01 23 81 03 04 00 44 33 22 11", "CAN XL record of 12 bytes"),
        ("00 2A 01 23 81 03 05 00 44 33 22 11 AA BB CC DD", "says 5 data bytes and holds 4"),
    ] {
        let log = one(hex);
        assert_eq!((log.frames.len(), log.report.damaged, log.report.frames_read()), (0, 1, 1), "{hex}");
        assert!(damage(&log.report)[0].contains(words), "{hex}: {:?}", damage(&log.report));
        assert!(damage(&log.report)[0].starts_with("block 1 at byte 24: "), "{:?}", damage(&log.report));
    }
}

#[test]
fn a_frame_that_was_cut_by_the_recorder_is_damage() {
    let mut file = pcap(false, MICROSECONDS, CAN, &[(0, 0, &record(0x123, &[1, 2])), (0, 1, &record(0x124, &[3]))]);
    file[24 + 12] = 16;
    let log = read(file);
    assert_eq!(
        damage(&log.report),
        ["block 1 at byte 24: only 10 of 16 bytes of the frame were recorded; raise the recorder's packet size limit"]
    );
    assert_eq!(log.frames.len(), 1);
}

#[test]
fn identifiers_in_the_other_order_are_told_and_read_on_request() {
    let words = [0x123_u32, 0x98FE_F100, 0x7E8, 0x98F0_0400];
    let turned: Vec<Vec<u8>> =
        words.iter().map(|word| [&word.to_le_bytes()[..], &[2, 0, 0, 0, 0xAA, 0xBB]].concat()).collect();
    let records: Vec<(u32, u32, &[u8])> = turned.iter().map(|record| (0, 0, &record[..])).collect();
    let file = pcap(false, MICROSECONDS, CAN, &records);

    let as_published = read(&file);
    assert!(
        as_published
            .report
            .notes()
            .iter()
            .any(|note| note.contains("the identifiers make sense only with their bytes"))
    );

    let swapped =
        read_with(&file, &Options { identifiers: IdentifierOrder::Swapped, ..Options::default() }).expect("opens");
    let ids: Vec<u32> = swapped.frames.iter().map(|frame| frame.id).collect();
    assert_eq!(ids, [0x123, 0x18FE_F100, 0x7E8, 0x18F0_0400]);
    assert!(swapped.report.notes().is_empty());
}
