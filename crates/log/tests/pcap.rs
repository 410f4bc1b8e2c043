//! Classic packet files against the published layout.
//!
//! Sources: IETF draft opsawg-pcap. The bytes are worked out by hand from them.

mod common;

use common::{bytes, pcap, read, record, refusal};
use wirelore_log::{Channel, Kind, PlaceInLog};

const MICROSECONDS: u32 = 0xA1B2_C3D4;
const NANOSECONDS: u32 = 0xA1B2_3C4D;
const CAN: u32 = 227;

/// Source: check bytes from draft-ietf-opsawg-pcap and the LINKTYPE 227 page: one frame at 1700000000.250000 s.
const PCAP: &str = "D4 C3 B2 A1 02 00 04 00 00 00 00 00 00 00 00 00 FF FF 00 00 E3 00 00 00
    00 F1 53 65 90 D0 03 00 0B 00 00 00 0B 00 00 00 00 00 01 23 03 00 00 00 11 22 33";

#[test]
fn the_example_file_holds_one_frame() {
    let log = read(bytes(PCAP));
    let [frame] = &log.frames[..] else { panic!("{log:?}") };
    assert_eq!(frame.time_ns, Some(1_700_000_000_250_000_000));
    assert_eq!((frame.id, frame.extended, frame.kind, frame.fd), (0x123, false, Kind::Data, false));
    assert_eq!((frame.dlc, &frame.payload[..]), (Some(3), &[0x11, 0x22, 0x33][..]));
    assert_eq!(frame.channel, Channel(0));
    assert_eq!(frame.place, PlaceInLog::Block { number: 1, offset: 24 });
    assert_eq!(log.channels, [""]);
    assert_eq!((log.report.damaged, &log.report.lost_tail, log.report.frames_read()), (0, &None, 1));
}

#[test]
fn both_byte_orders_and_both_clocks_of_pcap() {
    let record = record(0x123, &[1]);
    for big_endian in [false, true] {
        let micro = read(pcap(big_endian, MICROSECONDS, CAN, &[(5, 999_999, &record)]));
        let nano = read(pcap(big_endian, NANOSECONDS, CAN, &[(5, 999_999_999, &record)]));
        assert_eq!(micro.frames[0].time_ns, Some(5_999_999_000));
        assert_eq!(nano.frames[0].time_ns, Some(5_999_999_999));
    }
}

#[test]
fn the_first_bytes_are_the_published_ones() {
    // Source: draft-ietf-opsawg-pcap, definition of the magic number.
    assert_eq!(pcap(false, MICROSECONDS, CAN, &[])[..4], [0xD4, 0xC3, 0xB2, 0xA1]);
    assert_eq!(pcap(true, NANOSECONDS, CAN, &[])[..4], [0xA1, 0xB2, 0x3C, 0x4D]);
    // 5 s and 250 parts of a second, by the clock and the byte order that the first four bytes say.
    for (first, big_endian, time_ns) in [
        ("D4 C3 B2 A1", false, 5_000_250_000),
        ("4D 3C B2 A1", false, 5_000_000_250),
        ("A1 B2 C3 D4", true, 5_000_250_000),
        ("A1 B2 3C 4D", true, 5_000_000_250),
    ] {
        let mut file = pcap(big_endian, MICROSECONDS, CAN, &[(5, 250, &record(0x123, &[1]))]);
        file[..4].copy_from_slice(&bytes(first));
        let log = read(file);
        assert_eq!(log.frames[0].time_ns, Some(time_ns), "{first}");
        assert_eq!((log.frames[0].id, &log.frames[0].payload[..]), (0x123, &[1][..]), "{first}");
    }
}

#[test]
fn the_link_type_is_in_the_low_16_bits() {
    // Source: draft-ietf-opsawg-pcap: bits 31-28 the length of the frame check sequence, bit 26 its flag.
    let log = read(pcap(false, MICROSECONDS, 0x5400_0000 | CAN, &[(0, 0, &record(1, &[]))]));
    assert_eq!(log.frames.len(), 1);
}

#[test]
fn other_link_types_are_counted() {
    let log = read(pcap(false, MICROSECONDS, 211, &[(0, 0, &[0; 60]), (0, 1, &[0; 60])]));
    assert!(log.frames.is_empty());
    assert_eq!(log.report.notes(), ["2 packets of link type 211 (MOST, of which no layout is published) are not read"]);
    assert!(log.channels.is_empty());
    assert_eq!(log.report.damaged, 0);
}

#[test]
fn heads_that_cannot_be_read() {
    assert!(refusal(&bytes(PCAP)[..20]).contains("its header has 24 bytes, and the log only 20"));
    let mut old = bytes(PCAP);
    old[4] = 1;
    assert!(refusal(old).contains("version 1"));
    assert!(refusal([]).contains("is empty"));
    assert!(refusal([0, 1, 2, 3, 0, 0, 0, 0]).contains("begins with the bytes 00 01 02 03"));
    assert!(refusal(b"PK\x03\x04....").contains("zip"));
    assert!(refusal(b"\xFF\xFEt\0i\0m\0e\0").contains("UTF-16"));
}

#[test]
fn time_going_backwards_is_counted_and_the_frames_are_kept() {
    let record = record(1, &[]);
    let log =
        read(pcap(false, MICROSECONDS, CAN, &[(5, 0, &record), (4, 0, &record), (6, 0, &record), (1, 0, &record)]));
    assert_eq!(log.frames.len(), 4);
    assert_eq!(
        log.report.notes(),
        ["the time goes backwards 2 times, first at block 2 at byte 48; the frames are kept in the order of the log"]
    );
}

#[test]
fn a_cut_file_gives_what_it_has() {
    let file = bytes(PCAP);
    for (part, cause) in [
        (file.len() - 1, "a record says that it has 11 bytes, and the log has 26 more"),
        (30, "the log ends after 6 bytes of a record"),
    ] {
        let report = read(&file[..part]).report;
        let lost = report.lost_tail.expect("the tail is lost").to_string();
        let wanted =
            format!("block 1 at byte 24: the recording is cut off here: {cause}; the frames before it are kept");
        assert_eq!((lost, report.damaged), (wanted, 0));
    }
}
