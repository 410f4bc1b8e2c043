//! Block-structured packet files against the published layout.
//!
//! Sources: IETF draft opsawg-pcapng; public link-type registry, page of LINKTYPE 227. The bytes are worked out by hand from them.

mod common;

use common::{Blocks, bytes, damage, read, record};
use wirelore_log::{Channel, Kind, PlaceInLog};

/// Source: check bytes from draft-ietf-opsawg-pcapng: the same frame, nanosecond clock.
const PCAPNG: &str = "0A 0D 0D 0A 1C 00 00 00 4D 3C 2B 1A 01 00 00 00 FF FF FF FF FF FF FF FF 1C 00 00 00
    01 00 00 00 20 00 00 00 E3 00 00 00 00 00 00 00 09 00 01 00 09 00 00 00 00 00 00 00 20 00 00 00
    06 00 00 00 2C 00 00 00 00 00 00 00 FE 9C 97 17 80 B2 10 45 0B 00 00 00 0B 00 00 00
    00 00 01 23 03 00 00 00 11 22 33 00 2C 00 00 00";

#[test]
fn the_example_file_holds_one_frame() {
    let log = read(bytes(PCAPNG));
    let [frame] = &log.frames[..] else { panic!("{log:?}") };
    assert_eq!(frame.time_ns, Some(1_700_000_000_250_000_000));
    assert_eq!((frame.id, frame.extended, frame.kind, frame.fd), (0x123, false, Kind::Data, false));
    assert_eq!((frame.dlc, &frame.payload[..]), (Some(3), &[0x11, 0x22, 0x33][..]));
    assert_eq!(frame.channel, Channel(0));
    assert_eq!(frame.place, PlaceInLog::Block { number: 3, offset: 60 });
    assert_eq!(log.channels, [""]);
    assert_eq!((log.report.damaged, &log.report.lost_tail, log.report.frames_read()), (0, &None, 1));
}

#[test]
fn both_byte_orders_of_pcapng() {
    for big_endian in [false, true] {
        let mut blocks = Blocks::new(big_endian);
        blocks.interface(227, &[(2, b"drive"), (9, &[3])]).packet(0, 1500, &record(0x123, &[7]));
        let log = read(&blocks.file);
        assert_eq!((log.frames[0].time_ns, log.frames[0].payload[0]), (Some(1_500_000_000), 7));
        assert_eq!(log.channels, ["drive"]);
    }
}

#[test]
fn clocks_by_resolution_and_offset() {
    // Source: draft-ietf-opsawg-pcapng, if_tsresol and if_tsoffset; microseconds where nothing is told.
    let big_offset = 100_i64.to_be_bytes();
    let mut blocks = Blocks::new(true);
    blocks
        .interface(227, &[])
        .interface(227, &[(9, &[0x8A])])
        .interface(227, &[(9, &[9]), (14, &big_offset)])
        .interface(227, &[(9, &[0])]);
    for interface in 0..4 {
        blocks.packet(interface, 512, &record(1, &[]));
    }
    let times: Vec<_> = read(&blocks.file).frames.iter().map(|frame| frame.time_ns.expect("has a time")).collect();
    assert_eq!(times, [512_000, 500_000_000, 100_000_000_512, 512_000_000_000]);
}

#[test]
fn a_time_that_cannot_be_told_is_damage() {
    let mut blocks = Blocks::new(false);
    blocks.interface(227, &[(9, &[0])]).packet(0, u64::MAX, &record(1, &[])).packet(0, 1, &record(2, &[]));
    let log = read(&blocks.file);
    assert_eq!((log.frames.len(), log.report.damaged), (1, 1));
    assert!(damage(&log.report)[0].contains("outside the years"));
}

#[test]
fn interfaces_become_channels_over_all_sections() {
    let mut blocks = Blocks::new(false);
    blocks.interface(227, &[(2, b"drive")]).interface(147, &[(2, b"wire")]).interface(227, &[(2, b"comfort")]);
    blocks.packet(2, 1, &record(1, &[])).packet(0, 2, &record(2, &[])).packet(1, 3, &[0; 60]);
    let mut second = Blocks::new(true);
    second.interface(227, &[(2, b"comfort")]).interface(227, &[(2, b"comfort")]).interface(227, &[]);
    second.packet(0, 4, &record(3, &[])).packet(1, 5, &record(4, &[])).packet(2, 6, &record(5, &[]));
    blocks.file.extend_from_slice(&second.file);

    let log = read(&blocks.file);
    assert_eq!(log.channels, ["drive", "comfort", "comfort", ""]);
    let seen: Vec<(u32, u16)> = log.frames.iter().map(|frame| (frame.id, frame.channel.0)).collect();
    assert_eq!(seen, [(1, 1), (2, 0), (3, 1), (4, 2), (5, 3)]);
    assert_eq!(log.report.notes(), ["1 packet of link type 147 is not read"]);
}

#[test]
fn simple_and_old_packet_blocks() {
    let frame = record(0x123, &[1, 2, 3]);
    let mut blocks = Blocks::new(false);
    blocks.interface(227, &[]);
    let simple = [&(frame.len() as u32).to_le_bytes()[..], &frame].concat();
    let length = (frame.len() as u32).to_le_bytes();
    let old = [&[0, 0, 9, 0, 0, 0, 0, 0, 7, 0, 0, 0][..], &length, &length, &frame].concat();
    blocks.block(3, &simple).block(2, &old);
    let log = read(&blocks.file);
    assert_eq!(log.frames[0].time_ns, None);
    assert_eq!(log.frames[1].time_ns, Some(7_000));
    assert!(log.frames.iter().all(|frame| frame.payload == [1, 2, 3]));
    assert_eq!(log.report.notes(), ["1 of the 2 frames has no time"]);
}

#[test]
fn unknown_blocks_are_stepped_over_by_their_length() {
    let mut blocks = Blocks::new(false);
    blocks
        .interface(227, &[])
        .block(4, &[1, 0, 5, 0, 10, 0, 0, 1, 97, 0, 0, 0, 0, 0, 0, 0])
        .block(0x0BAD, &[2; 7])
        .block(0x7777, &[3; 400]);
    blocks.packet(0, 1, &record(1, &[]));
    let log = read(&blocks.file);
    assert_eq!((log.frames.len(), log.report.damaged), (1, 0));
    assert_eq!(log.report.notes(), ["1 block of types in no published list is not read"]);
}

#[test]
fn packets_that_contradict_themselves() {
    let mut blocks = Blocks::new(false);
    blocks.interface(227, &[]).packet(7, 1, &record(1, &[]));
    let mut body = vec![0; 20];
    body[12] = 99;
    blocks.block(6, &body).block(6, &[0; 8]).packet(0, 2, &record(2, &[]));
    let log = read(&blocks.file);
    assert_eq!((log.frames.len(), log.report.damaged), (1, 3));
    assert!(damage(&log.report)[0].contains("interface 7, which the log does not describe"));
    assert!(damage(&log.report)[1].contains("says 99 packet bytes and has room for 0"));
}

#[test]
fn a_damaged_description_keeps_the_numbers_of_the_others() {
    let mut blocks = Blocks::new(false);
    blocks.block(1, &[227, 0, 0, 0]).interface(227, &[(2, b"comfort")]);
    blocks.packet(0, 1, &record(1, &[])).packet(1, 2, &record(2, &[]));
    let log = read(&blocks.file);
    assert_eq!((log.frames.len(), log.frames[0].id, log.channels.len()), (1, 2, 1));
    assert_eq!(log.report.damaged, 2);
}

#[test]
fn sections_of_another_version_are_skipped() {
    let mut blocks = Blocks::new(false);
    blocks.section(2).interface(227, &[]).packet(0, 1, &record(1, &[]));
    blocks.section(1).interface(227, &[]).packet(0, 1, &record(2, &[]));
    let log = read(&blocks.file);
    assert_eq!((log.frames.len(), log.frames[0].id, log.report.damaged), (1, 2, 1));
    assert!(damage(&log.report)[0].contains("version 2.0"));
}

/// A packet whose block type has one bit turned (6 to 4) would otherwise be gone in silence.
#[test]
fn a_block_of_names_without_names_is_damage() {
    let mut blocks = Blocks::new(false);
    blocks.interface(227, &[(9, &[9])]).packet(0, 1_700_000_000_000_000_001, &record(1, &[7])).block(4, &[0; 4]);
    let at = blocks.file.len();
    blocks.packet(0, 1_700_000_000_000_000_002, &record(2, &[7; 8])).packet(
        0,
        1_700_000_000_000_000_003,
        &record(3, &[]),
    );
    blocks.file[at] = 4;
    let log = read(&blocks.file);
    assert_eq!((log.frames.len(), log.report.damaged), (2, 1));
    let told = format!("block 5 at byte {at}: a block of names has something else inside; it may have been a packet");
    assert_eq!(damage(&log.report), [told]);
}

#[test]
fn damaged_lengths_cost_one_block() {
    for at in [4, 44] {
        let mut blocks = Blocks::new(false);
        blocks.interface(227, &[]);
        let damaged_at = blocks.file.len();
        blocks.packet(0, 1, &record(1, &[9; 8])).packet(0, 2, &record(2, &[])).packet(0, 3, &record(3, &[]));
        blocks.file[damaged_at + at] ^= 0x40;
        let log = read(&blocks.file);
        let ids: Vec<u32> = log.frames.iter().map(|frame| frame.id).collect();
        assert_eq!((&ids[..], log.report.damaged), (&[2, 3][..], 1), "{:?}", damage(&log.report));
    }
}

#[test]
fn a_lost_description_of_an_interface_is_noted() {
    let mut blocks = Blocks::new(false);
    let at = blocks.file.len();
    blocks.interface(227, &[(2, b"drive")]).interface(227, &[(2, b"comfort")]).packet(0, 2, &record(2, &[]));
    blocks.file[at + 4] ^= 0x01;
    let log = read(&blocks.file);
    assert_eq!(log.report.damaged, 1);
    assert_eq!(
        log.report.notes(),
        [
            "block 2 at byte 28 is damaged, and may have described an interface: the channels and times after it may be wrong"
        ]
    );
}

#[test]
fn many_damaged_sections_make_one_note() {
    let mut blocks = Blocks::new(false);
    for _ in 0..1_000 {
        let at = blocks.file.len();
        blocks.interface(227, &[]).section(1);
        blocks.file[at + 4] ^= 0x01;
    }
    let report = read(&blocks.file).report;
    let notes = report.notes();
    let [note] = &notes[..] else { panic!("{notes:?}") };
    assert!(note.starts_with("block 2 at byte 28 ") && note.ends_with("; so it is in 999 later sections"), "{note}");
}

#[test]
fn a_cut_file_gives_what_it_has() {
    let file = bytes(PCAPNG);
    let log = read(&file[..file.len() - 1]);
    assert!(log.frames.is_empty());
    let lost = log.report.lost_tail.expect("the tail is lost").to_string();
    assert_eq!(
        lost,
        "block 3 at byte 60: the recording is cut off here: a block says that it has 44 bytes, and the log has 43 more; \
         the frames before it are kept"
    );
}
