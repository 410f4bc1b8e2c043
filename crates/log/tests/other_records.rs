//! Records of LIN, FlexRay and Ethernet against the published layouts.
//!
//! Sources: public link-type registry, pages of LINKTYPE 212, 210 and 1. The bytes are worked out by hand from them; the frames are those
//! of the standards where they print some, which is said beside them.

mod common;

use common::{Blocks, Kept, Read, bytes, damage, pcap, read};
use wirelore_log::{Channel, Faults, FlexRay, Kind, Lin, LinChecksum, Medium};

const MICROSECONDS: u32 = 0xA1B2_C3D4;
const LIN: u32 = 212;
const FLEXRAY: u32 = 210;
const ETHERNET: u32 = 1;

fn log_of(link_type: u32, hex: &str) -> Read {
    read(pcap(false, MICROSECONDS, link_type, &[(0, 0, &bytes(hex))]))
}

fn one(link_type: u32, hex: &str) -> Kept {
    let log = log_of(link_type, hex);
    assert_eq!((log.frames.len(), log.report.damaged, log.channels.len()), (1, 0, 1), "{hex}: {log:?}");
    log.frames[0].clone()
}

fn lin(frame: &Kept) -> Lin {
    let Medium::Lin(lin) = frame.medium else { panic!("{frame:?}") };
    lin
}

fn flexray(frame: &Kept) -> FlexRay {
    let Medium::FlexRay(flexray) = frame.medium else { panic!("{frame:?}") };
    flexray
}

/// Each record is no frame, counted once as damage, in these words.
fn are_damage(link_type: u32, records: &[(&str, &str)]) {
    for (hex, words) in records {
        let log = log_of(link_type, hex);
        assert_eq!((log.frames.len(), log.report.damaged, log.report.frames_read()), (0, 1, 1), "{hex}");
        assert!(damage(&log.report)[0].contains(words), "{hex}: {:?}", damage(&log.report));
    }
}

#[test]
fn lin_frames() {
    // Source: public link-type registry, LINKTYPE 212; data and checksums: LIN 2.2A, section 2.8.3, and documentation that quotes it.
    let enhanced = one(LIN, "01 00 00 00 42 11 D5 00 4A 55 93 E5");
    assert_eq!((enhanced.id, enhanced.kind, &enhanced.payload[..]), (0x11, Kind::Data, &[0x4A, 0x55, 0x93, 0xE5][..]));
    assert_eq!((enhanced.extended, enhanced.fd, enhanced.dlc), (false, false, None));
    let wanted = Lin {
        protected_id: Some(0x11),
        checksum: Some(0xD5),
        checksum_kind: Some(LinChecksum::Enhanced),
        faults: Faults::NONE,
    };
    assert_eq!(lin(&enhanced), wanted);

    // A request to a node by its address; the payload from memory of LIN 2.2A, node configuration.
    let request = one(LIN, "01 00 00 00 81 3C C6 00 01 06 B2 00 FF 7F FF FF");
    assert_eq!((request.id, request.kind, request.payload.len()), (0x3C, Kind::Data, 8));
    assert_eq!(lin(&request).checksum_kind, Some(LinChecksum::Classic));

    // The recorder does not say which sum it is: nothing is checked, and a byte 0 that fits as neither kind is no sum.
    for (record, checksum) in [
        ("01 00 00 00 40 11 00 00 4A 55 93 E5", None),
        ("01 00 00 00 40 11 E7 00 4A 55 93 E5", Some(0xE7)),
        // Go to sleep: LIN 2.2A, section 2.6.3 (from memory), its classic sum is 0.
        ("01 00 00 00 80 3C 00 00 00 FF FF FF FF FF FF FF", Some(0)),
    ] {
        let untold = one(LIN, record);
        assert_eq!((untold.kind, lin(&untold).checksum, lin(&untold).checksum_kind), (Kind::Data, checksum, None));
    }

    // Room that holds no data, and none of it.
    assert_eq!(one(LIN, "01 00 00 00 12 C1 3D 00 00 FF FF FF").payload, [0]);
    assert_eq!(one(LIN, "01 00 00 00 12 C1 3D 00 00").payload, [0]);
}

#[test]
fn lin_headers_that_nobody_answers() {
    let header = one(LIN, "01 00 00 00 02 50 AF 01 00 00 00 00");
    assert_eq!((header.id, header.kind, header.payload.len()), (0x10, Kind::Unanswered, 0));
    assert_eq!((lin(&header).protected_id, lin(&header).checksum), (Some(0x50), None));
}

#[test]
fn lin_frames_that_were_damaged_on_the_wire() {
    // Errors: public link-type registry, LINKTYPE 212. Parity 91 for 11 and the checksums D4 and E6 for D5 are wrong by the rules.
    for (hex, faults) in [
        ("01 00 00 00 42 11 D5 20 4A 55 93 E5", Faults::OVERFLOW),
        ("01 00 00 00 42 11 D5 10 4A 55 93 E5", Faults::IDENTIFIER),
        ("01 00 00 00 42 11 D4 08 4A 55 93 E5", Faults::CHECKSUM),
        ("01 00 00 00 40 11 D4 08 4A 55 93 E5", Faults::CHECKSUM),
        ("01 00 00 00 42 11 D4 00 4A 55 93 E5", Faults::CHECKSUM),
        ("01 00 00 00 42 11 E6 00 4A 55 93 E5", Faults::CHECKSUM),
        ("01 00 00 00 40 91 00 04 4A 55 93 E5", Faults::PARITY),
        ("01 00 00 00 40 91 00 00 4A 55 93 E5", Faults::PARITY),
        ("01 00 00 00 42 11 D5 02 4A 55 93 E5", Faults::FRAMING),
        (
            "01 00 00 00 42 11 D4 3E 4A 55 93 E5",
            Faults::OVERFLOW | Faults::IDENTIFIER | Faults::CHECKSUM | Faults::PARITY | Faults::FRAMING,
        ),
    ] {
        let frame = one(LIN, hex);
        assert_eq!((frame.kind, lin(&frame).faults, frame.medium.faults()), (Kind::Faulty, faults, faults), "{hex}");
        assert_eq!(frame.payload, [0x4A, 0x55, 0x93, 0xE5], "{hex}");
    }
    let no_answer_to_a_wrong_header = one(LIN, "01 00 00 00 02 91 00 01 00 00 00 00");
    assert_eq!(no_answer_to_a_wrong_header.kind, Kind::Faulty);
}

#[test]
fn lin_events() {
    // Source of the codes: public link-type registry, LINKTYPE 212.
    for code in ["B0 B0 00 04", "B0 B0 00 01", "B0 B0 00 02"] {
        let event = one(LIN, &format!("01 00 00 00 4C 00 00 00 {code}"));
        let number = u32::from_be_bytes(bytes(code).try_into().expect("four bytes"));
        assert_eq!((event.id, event.kind, event.payload.len()), (number, Kind::Signal, 0));
        assert_eq!(lin(&event), Lin::default());
    }
}

#[test]
fn lin_records_that_cannot_be() {
    are_damage(
        LIN,
        &[
            ("01 00 00 00 42 11 D5", "has 7 bytes, and a LIN record has at least 8"),
            ("02 00 00 00 42 11 D5 00 4A 55 93 E5", "revision 2 of the LIN layout"),
            ("01 00 00 00 92 11 D5 00 4A 55 93 E5 00 00 00 00", "9 data bytes, and a LIN frame has at most 8"),
            ("01 00 00 00 82 11 D5 00 4A 55 93 E5", "says 8 data bytes and holds 4"),
            ("01 00 00 00 46 11 D5 00 4A 55 93 E5", "message type 1, and LIN has only frames (0) and events (3)"),
            ("01 00 00 00 4C 00 00 00 B0 B0 00", "says 4 data bytes and holds 3"),
        ],
    );
}

#[test]
fn flexray_frames() {
    // Source: public link-type registry, LINKTYPE 210; header layout: FlexRay 2.1A (from memory; ISO 17458-2 the same).
    let frame = one(FLEXRAY, "01 00 20 0A 09 4F 05 00 01 02 03 04 05 06 07");
    assert_eq!((frame.id, frame.kind, &frame.payload[..]), (10, Kind::Data, &[0, 1, 2, 3, 4, 5, 6, 7][..]));
    assert_eq!(flexray(&frame), FlexRay { cycle: 5, header_crc: Some(0x53C), ..FlexRay::default() });

    let sync = one(FLEXRAY, "81 00 38 01 10 46 C0 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00");
    assert_eq!((sync.id, sync.kind, sync.payload.len()), (1, Kind::Data, 16));
    let wanted = FlexRay { on_b: true, sync: true, startup: true, header_crc: Some(0x11B), ..FlexRay::default() };
    assert_eq!(flexray(&sync), wanted);

    let with_preamble = one(FLEXRAY, "01 00 67 FF 03 78 D1 A5 5A");
    assert_eq!((with_preamble.id, flexray(&with_preamble).preamble, flexray(&with_preamble).cycle), (2047, true, 17));
}

#[test]
fn flexray_null_frames_and_symbols() {
    // A null frame has its null frame indicator off; its payload means nothing, and may be missing.
    for hex in ["01 00 10 03 05 EF 7F 00 00 00 00", "01 00 10 03 05 EF 7F 00", "01 00 10 03 05 EF 7F"] {
        let null = one(FLEXRAY, hex);
        assert_eq!((null.id, null.kind, flexray(&null).cycle, flexray(&null).sync), (3, Kind::Null, 63, true), "{hex}");
    }
    // Source: public link-type registry, LINKTYPE 210: a symbol has its length in bits behind.
    let symbol = one(FLEXRAY, "82 1E");
    assert_eq!((symbol.id, symbol.kind, flexray(&symbol).on_b), (30, Kind::Signal, true));
}

#[test]
fn flexray_frames_that_were_damaged_on_the_wire() {
    for (hex, faults) in [
        ("01 10 20 0A 09 4F 05 00 01 02 03 04 05 06 07", Faults::FRAME_CRC),
        ("01 08 20 0A 09 4F 05 00 01 02 03 04 05 06 07", Faults::HEADER_CRC),
        ("01 04 20 0A 09 4F 05 00 01 02 03 04 05 06 07", Faults::FRAME_END),
        ("01 02 20 0A 09 4F 05 00 01 02 03 04 05 06 07", Faults::CODING),
        ("01 01 20 0A 09 4F 05 00 01 02 03 04 05 06 07", Faults::FRAME_START),
        // The recorder saw nothing wrong, and the header's check sequence is that of slot 10, not 11.
        ("01 00 20 0B 09 4F 05 00 01 02 03 04 05 06 07", Faults::HEADER_CRC),
        // The payload is cut: the header may be wrong about its length.
        ("01 10 20 0A 09 4F 05 00 01", Faults::FRAME_CRC),
    ] {
        let frame = one(FLEXRAY, hex);
        assert_eq!((frame.kind, flexray(&frame).faults), (Kind::Faulty, faults), "{hex}");
    }
    let no_slot = one(FLEXRAY, "01 00 20 00 00 00 00");
    assert!(no_slot.medium.faults().contains(Faults::IDENTIFIER), "{no_slot:?}");
}

#[test]
fn flexray_records_that_cannot_be() {
    are_damage(
        FLEXRAY,
        &[
            ("01", "has 1 bytes, and a FlexRay record has at least 2"),
            ("01 00 20 0A 09 4F", "has 6 bytes, and the record of a FlexRay frame has at least 7"),
            ("01 00 20 0A 09 4F 05 00 01 02 03 04 05 06", "says 8 data bytes and holds 7"),
            ("03 00 20 0A 09 4F 05", "says type 3, and FlexRay has only frames (1) and symbols (2)"),
        ],
    );
}

#[test]
fn ethernet_frames() {
    // A request for the address of 192.0.2.1, by the layouts of IEEE 802.3 and RFC 826, with an address of RFC 5737.
    let arp = "FF FF FF FF FF FF 02 00 00 00 00 01 08 06 00 01 08 00 06 04 00 01 02 00 00 00 00 01 C0 00 02 02
               00 00 00 00 00 00 C0 00 02 01";
    let frame = one(ETHERNET, arp);
    assert_eq!((frame.kind, frame.medium, frame.id), (Kind::Data, Medium::Ethernet, 0));
    assert_eq!(frame.payload, bytes(arp));
    are_damage(
        ETHERNET,
        &[("FF FF FF FF FF FF 02 00 00 00 00 01 08", "13 bytes, and an Ethernet packet has at least 14")],
    );
}

#[test]
fn records_that_the_recorder_cut_are_damage_on_every_network() {
    for (link_type, hex) in [
        (LIN, "01 00 00 00 42 11 D5 00 4A 55 93 E5"),
        (FLEXRAY, "01 00 20 0A 09 4F 05 00 01 02 03 04 05 06 07"),
        (ETHERNET, "FF FF FF FF FF FF 02 00 00 00 00 01 08 06 00 01 08 00"),
    ] {
        let mut file = pcap(false, MICROSECONDS, link_type, &[(0, 0, &bytes(hex)), (0, 1, &bytes(hex))]);
        file[24 + 12] = 99;
        let log = read(file);
        assert_eq!((log.frames.len(), log.report.damaged), (1, 1), "{hex}");
        assert!(damage(&log.report)[0].contains("of 99 bytes of the frame were recorded"), "{:?}", damage(&log.report));
    }
}

#[test]
fn each_interface_has_its_own_network() {
    let (lin_record, flexray_record) = (bytes("01 00 00 00 42 11 D5 00 4A 55 93 E5"), bytes("82 1E"));
    for big_endian in [false, true] {
        let mut blocks = Blocks::new(big_endian);
        blocks.interface(227, &[(2, b"drive")]).interface(212, &[(2, b"seat")]).interface(210, &[(2, b"chassis")]);
        blocks.interface(1, &[(2, b"backbone")]).interface(211, &[(2, b"media")]).interface(212, &[(2, b"drive")]);
        for number in 0..20 {
            blocks.packet(0, number, &common::record(0x123, &[1, 2, 3])).packet(1, number, &lin_record);
            blocks.packet(2, number, &flexray_record).packet(3, number, &[7; 60]).packet(4, number, &[0; 9]);
            blocks.packet(5, number, &lin_record);
        }
        let log = read(&blocks.file);
        // Two interfaces of one name and different networks are two channels.
        assert_eq!(log.channels, ["drive", "seat", "chassis", "backbone", "drive"]);
        assert_eq!((log.frames.len(), log.report.damaged), (100, 0));
        for turn in log.frames.chunks(5) {
            let channels: Vec<Channel> = turn.iter().map(|frame| frame.channel).collect();
            assert_eq!(channels, [0, 1, 2, 3, 4].map(Channel));
            assert!(matches!(
                [turn[0].medium, turn[1].medium, turn[2].medium, turn[3].medium, turn[4].medium],
                [Medium::Can, Medium::Lin(_), Medium::FlexRay(_), Medium::Ethernet, Medium::Lin(_)]
            ));
        }
        let note = "20 packets of link type 211 (MOST, of which no layout is published) are not read";
        assert_eq!(log.report.notes(), [note]);
    }
}
