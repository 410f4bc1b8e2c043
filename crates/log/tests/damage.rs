//! Logs cut at every byte and with every byte turned: no panic, no hang, and what lies before the damage stays the same.

mod common;

use std::io::{self, Cursor};

use common::{Blocks, Kept, Read, pcap, read, read_with, record};
use proptest::prelude::*;
use wirelore_log::{Format, LinePattern, LogError, Options, PlaceInLog, Recording};

const CAN: u32 = 227;
/// How a byte is turned: one low bit, the letter case, the top bit, all of it.
const TURNS: [u8; 4] = [0x01, 0x20, 0x80, 0xFF];

/// A small log, how it is read, and how many of its first bytes describe the rest.
struct Sample {
    name: &'static str,
    bytes: Vec<u8>,
    options: Options,
    head_bytes: usize,
}

/// Records of every kind, with payloads that are easy to tell apart.
fn records() -> Vec<Vec<u8>> {
    let mut records: Vec<Vec<u8>> =
        (1..=6).map(|number| record(0x100 * number, &vec![number as u8; number as usize])).collect();
    records.push(record(0x18FE_F100, &[0xFF, 0x34, 0x17, 0xFC, 0xFF, 0x68, 0x00, 0xCF]));
    records.push([&[0x40, 0, 1, 0x23, 4, 0, 0, 0][..]].concat());
    records.push([&[0x20, 0, 0, 0x40, 8, 0, 0, 0][..], &[0; 8]].concat());
    records.push([&[0, 0, 3, 0x21, 12, 5, 0, 0][..], &[0x5A; 12]].concat());
    records.extend((1..=4).map(|number| record(0x200 + number, &[number as u8; 8])));
    records
}

fn pcap_sample(name: &'static str, big_endian: bool, magic: u32) -> Sample {
    let records = records();
    let timed: Vec<(u32, u32, &[u8])> =
        (0..).zip(&records).map(|(at, record)| (1_700_000_000 + at, at, &record[..])).collect();
    Sample { name, bytes: pcap(big_endian, magic, CAN, &timed), options: Options::default(), head_bytes: 24 }
}

fn pcapng_sample(name: &'static str, big_endian: bool) -> Sample {
    let mut blocks = Blocks::new(big_endian);
    blocks.interface(227, &[(2, b"drive"), (9, &[9])]).interface(227, &[(2, b"comfort")]);
    let head_bytes = blocks.file.len();
    for (at, record) in (0..).zip(&records()) {
        blocks.packet(at % 2, 1_000 * u64::from(at), record);
    }
    Sample { name, bytes: blocks.file, options: Options::default(), head_bytes }
}

/// Records of LIN, FlexRay and Ethernet with payloads that are easy to tell apart, each with its link type.
fn other_records() -> Vec<(u32, Vec<u8>)> {
    let lin = |number: u8| [&[1, 0, 0, 0, 0x40, 0x11, 0, 0][..], &[number; 4]].concat();
    let flexray = |number: u8| [&[1, 0, 0x20, 0x0A, 0x09, 0x4F, 0x05][..], &[number; 8]].concat();
    let ethernet = |number: u8| [&[2, 0, 0, 0, 0, 1, 2, 0, 0, 0, 0, 2, 8, 0][..], &[number; 46]].concat();
    (1..=4).flat_map(|number| [(212, lin(number)), (210, flexray(number)), (1, ethernet(number))]).collect()
}

/// One network of them in a classic file, which has only one.
fn other_pcap_sample(name: &'static str, link_type: u32) -> Sample {
    let records: Vec<Vec<u8>> =
        other_records().into_iter().filter(|(link, _)| *link == link_type).map(|(_, it)| it).collect();
    let timed: Vec<(u32, u32, &[u8])> =
        (0..).zip(records.iter().cycle().take(12)).map(|(at, record)| (1_700_000_000 + at, at, &record[..])).collect();
    Sample { name, bytes: pcap(false, 0xA1B2_C3D4, link_type, &timed), options: Options::default(), head_bytes: 24 }
}

fn mixed_pcapng_sample() -> Sample {
    let mut blocks = Blocks::new(false);
    for link_type in [227, 212, 210, 1] {
        blocks.interface(link_type, &[(9, &[9])]);
    }
    let head_bytes = blocks.file.len();
    for (at, (link_type, bytes)) in (0..).zip(&other_records()) {
        let interface = [227, 212, 210, 1].iter().position(|link| link == link_type).expect("is one of them");
        blocks.packet(interface as u32, 2_000 * at, bytes).packet(
            0,
            2_000 * at + 1_000,
            &record(0x100, &[at as u8; 8]),
        );
    }
    let name = "pcapng, several networks";
    Sample { name, bytes: blocks.file, options: Options::default(), head_bytes }
}

fn text_samples() -> [Sample; 2] {
    let header = "time_s,channel,id_hex,ext,len,data_hex\n";
    let (mut delimited, mut patterned) = (header.to_owned(), String::new());
    for number in 1..=20 {
        let data = format!("{number:02X}").repeat(number % 9);
        let length = number % 9;
        delimited.push_str(&format!("{number}.25,\"drive\",{:X},0,{length},{data}\n", 0x100 + number));
        patterned.push_str(&format!("({number}.25) drive {:X} [{length}] {data}\n", 0x100 + number));
    }
    let line = LinePattern::parse("({time}) {channel} {id} [{length}] {data}").expect("is a pattern");
    [
        Sample {
            name: "delimited",
            bytes: delimited.into_bytes(),
            options: Options::default(),
            head_bytes: header.len(),
        },
        Sample {
            name: "pattern",
            bytes: patterned.into_bytes(),
            options: Options { line: Some(line), ..Options::default() },
            head_bytes: 0,
        },
    ]
}

fn samples() -> Vec<Sample> {
    let mut samples = vec![
        pcap_sample("pcap, little-endian, microseconds", false, 0xA1B2_C3D4),
        pcap_sample("pcap, big-endian, nanoseconds", true, 0xA1B2_3C4D),
        pcapng_sample("pcapng, little-endian", false),
        pcapng_sample("pcapng, big-endian", true),
    ];
    samples.extend(text_samples());
    samples.push(mixed_pcapng_sample());
    samples.push(other_pcap_sample("pcap, LIN", 212));
    samples.push(other_pcap_sample("pcap, FlexRay", 210));
    samples.push(other_pcap_sample("pcap, Ethernet", 1));
    samples
}

/// The byte behind a frame: the next line or block begins there at the latest.
fn end_of(frames: &[Kept], index: usize, bytes: &[u8]) -> usize {
    match (frames[index].place, frames.get(index + 1).map(|next| next.place)) {
        (PlaceInLog::Line(number), _) => {
            let ends = bytes.iter().enumerate().filter(|(_, byte)| **byte == b'\n').map(|(at, _)| at + 1);
            ends.take(number as usize).last().unwrap_or(bytes.len())
        }
        (_, Some(PlaceInLog::Block { offset, .. })) => offset as usize,
        _ => bytes.len(),
    }
}

/// How many frames lie wholly before a byte.
fn frames_before(whole: &Read, bytes: &[u8], at: usize) -> usize {
    (0..whole.frames.len()).take_while(|&index| end_of(&whole.frames, index, bytes) <= at).count()
}

#[test]
fn cut_at_every_byte() {
    for sample in samples() {
        let whole = read_with(&sample.bytes, &sample.options).expect(sample.name);
        assert_eq!((whole.report.damaged, &whole.report.lost_tail), (0, &None), "{}", sample.name);
        for cut in 0..sample.bytes.len() {
            let Ok(part) = read_with(&sample.bytes[..cut], &sample.options) else {
                assert!(cut < sample.head_bytes.max(1), "{} cut at {cut} does not open", sample.name);
                continue;
            };
            let sure = frames_before(&whole, &sample.bytes, cut);
            assert_eq!(part.frames[..sure], whole.frames[..sure], "{} cut at {cut}", sample.name);
            let is_text = matches!(whole.frames[0].place, PlaceInLog::Line(_));
            assert!(part.frames.len() <= sure + usize::from(is_text), "{} cut at {cut}", sample.name);
            let is_told = part.report.lost_tail.is_some() || part.report.damaged > 0 || !part.report.notes().is_empty();
            let at_end_of_frame = sure > 0 && end_of(&whole.frames, sure - 1, &sample.bytes) == cut;
            if cut > sample.head_bytes && !at_end_of_frame {
                assert!(is_told, "{} cut at {cut} says nothing", sample.name);
            }
        }
    }
}

#[test]
fn every_byte_turned() {
    for sample in samples() {
        let whole = read_with(&sample.bytes, &sample.options).expect(sample.name);
        for at in 0..sample.bytes.len() {
            for turn in TURNS {
                let mut bytes = sample.bytes.clone();
                bytes[at] ^= turn;
                let Ok(part) = read_with(&bytes, &sample.options) else {
                    assert!(at < sample.head_bytes, "{} turned at {at} does not open", sample.name);
                    continue;
                };
                if at < sample.head_bytes {
                    continue;
                }
                let sure = frames_before(&whole, &sample.bytes, at);
                assert_eq!(part.frames[..sure], whole.frames[..sure], "{} turned at {at}", sample.name);
                let last_good = part.frames.last().map(|frame| &frame.payload);
                let missing = whole.frames.len().saturating_sub(part.frames.len());
                assert!(missing <= 2, "{} turned at {at} by {turn:02X}: {missing} frames lost", sample.name);
                if sure + 3 < whole.frames.len() {
                    assert_eq!(last_good, whole.frames.last().map(|frame| &frame.payload), "{} at {at}", sample.name);
                }
            }
        }
    }
}

#[test]
fn holes_and_foreign_bytes_cost_only_what_they_hit() {
    for sample in samples() {
        let whole = read_with(&sample.bytes, &sample.options).expect(sample.name);
        let middle = sample.head_bytes + (sample.bytes.len() - sample.head_bytes) / 2;
        let mut filled = sample.bytes.clone();
        filled.splice(middle..middle, std::iter::repeat_n(0xA5, 777));
        let mut hollow = sample.bytes.clone();
        hollow.drain(middle..middle + 13);
        for damaged in [filled, hollow] {
            let part = read_with(&damaged, &sample.options).expect(sample.name);
            assert!(part.frames.len() + 3 >= whole.frames.len(), "{}: {} frames", sample.name, part.frames.len());
            assert!(part.report.damaged > 0, "{}", sample.name);
            assert_eq!(
                part.frames.last().map(|frame| frame.id),
                whole.frames.last().map(|frame| frame.id),
                "{}",
                sample.name
            );
        }
    }
}

/// Behind a damaged block its payload looks like the head of an obsolete block, and its length stands again where that would end.
#[test]
fn a_length_that_stands_twice_by_chance_is_no_block() {
    const BLOCK_BYTES: u32 = 48;
    for kind in [1, 2, 3, 5, 6] {
        let false_length = 50 * BLOCK_BYTES + 4;
        let mut blocks = Blocks::new(false);
        blocks.interface(227, &[(9, &[9])]);
        let head_bytes = blocks.file.len();
        for index in 0..100 {
            let payload = match index {
                10 => [u32::to_le_bytes(kind), false_length.to_le_bytes()].concat(),
                60 => [false_length.to_le_bytes(), [0; 4]].concat(),
                _ => vec![index as u8; 8],
            };
            blocks.packet(0, index, &record(0x100, &payload));
        }
        let mut file = blocks.file;
        file[head_bytes + 10 * BLOCK_BYTES as usize + 4] ^= 1;
        let log = read(&file);
        assert_eq!((log.frames.len(), log.report.damaged), (99, 1), "block type {kind}: {:?}", log.report.damage);
    }
}

#[test]
fn blocks_that_claim_to_be_huge_are_not_believed() {
    let mut blocks = Blocks::new(false);
    blocks.interface(227, &[]);
    for _ in 0..200 {
        blocks.file.extend_from_slice(&[6, 0, 0, 0, 0xF0, 0xFF, 0xFF, 0x00]);
    }
    blocks.packet(0, 1, &record(1, &[]));
    let log = read(&blocks.file);
    assert_eq!((log.frames.len(), log.report.damaged), (1, 1));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 512, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn random_bytes_in_any_layout(bytes in proptest::collection::vec(any::<u8>(), 0..2048), format in 0..3) {
        let format = [Format::Pcap, Format::Pcapng, Format::Text][format as usize];
        let _ = read_with(&bytes, &Options { format: Some(format), ..Options::default() });
        let _ = read_with(&bytes, &Options::default());
    }

    #[test]
    fn random_bytes_behind_a_good_head(bytes in proptest::collection::vec(any::<u8>(), 0..4096), which in 0..10_usize) {
        let sample = &samples()[which];
        let mut log = sample.bytes[..sample.head_bytes].to_vec();
        log.extend_from_slice(&bytes);
        let _ = read_with(&log, &sample.options);
    }

    #[test]
    fn random_texts(line in "[{}a-z:=,.\" ]{0,60}") {
        let _ = LinePattern::parse(&line);
        let _ = wirelore_log::ColumnMap::parse(&line);
    }

    #[test]
    fn random_lines(lines in "[0-9A-Fa-fx,;.\"# \\t\\r\\n\u{0}E+-]{0,400}") {
        let _ = read_with(format!("time_s,id,data\n{lines}"), &Options::default());
        let _ = read_with(format!("time;id_hex;b0;b1;dlc\n{lines}"), &Options::default());
        let _ = read_with(&lines, &samples()[5].options);
        let _ = read_with(format!("time_s,pid,checksum,data\n{lines}"), &Options::default());
        let _ = read_with(format!("channel,slot,cycle,id_hex,pid,checksum,data\n{lines}"), &Options::default());
        let _ = read_with(format!("id,fblock,inst,fkt,op,data\n{lines}"), &Options::default());
    }
}

/// A file on a disk that fails.
struct Failing(Cursor<Vec<u8>>);

impl io::Read for Failing {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        match self.0.read(buffer)? {
            0 => Err(io::Error::other("the disk is gone")),
            count => Ok(count),
        }
    }
}

#[test]
fn a_disk_that_fails_is_an_error_and_not_an_end() {
    let mut bytes = b"id_hex,data\n".to_vec();
    bytes.extend_from_slice(&b"123,00\n".repeat(10_000));
    let size = bytes.len();
    let mut recording =
        Recording::from_reader(Box::new(Failing(Cursor::new(bytes))), "drive.csv", &Options::default()).expect("opens");
    let mut frames = 0;
    let error = loop {
        match recording.next() {
            Ok(Some(_)) => frames += 1,
            Ok(None) => panic!("the failure is hidden"),
            Err(error) => break error,
        }
    };
    assert_eq!(frames, 10_000);
    assert_eq!(error.to_string(), format!("cannot read the log drive.csv on from byte {size}: the disk is gone"));
    assert!(std::error::Error::source(&error).is_none(), "the reason would be told twice");
    assert!(matches!(error, LogError::Read { .. }));
    assert!(recording.next().expect("it has ended").is_none());
}

#[test]
fn a_log_that_is_not_there() {
    let error = Recording::open(std::path::Path::new("nowhere/drive.csv"), &Options::default()).expect_err("not there");
    let text = error.to_string();
    let begin = "cannot open the log nowhere/drive.csv: ";
    assert!(text.len() > begin.len() && text.starts_with(begin), "{text}");
    assert!(std::error::Error::source(&error).is_none(), "the reason would be told twice");
}

/// A pipe that gives one byte at a time.
struct Trickle(Cursor<Vec<u8>>);

impl io::Read for Trickle {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let one = buffer.len().min(1);
        self.0.read(&mut buffer[..one])
    }
}

#[test]
fn a_pipe_that_trickles_gives_the_same() {
    for sample in samples() {
        let whole = read_with(&sample.bytes, &sample.options).expect(sample.name);
        let slow = Box::new(Trickle(Cursor::new(sample.bytes.clone())));
        let mut recording = Recording::from_reader(slow, "pipe", &sample.options).expect(sample.name);
        let mut index = 0;
        while let Some(frame) = recording.next().expect(sample.name) {
            assert_eq!(Kept::from(frame), whole.frames[index], "{}", sample.name);
            index += 1;
        }
        assert_eq!(index, whole.frames.len(), "{}", sample.name);
        assert_eq!((recording.bytes_read(), recording.size()), (sample.bytes.len() as u64, None));
    }
}
