//! Logs in gzip and Zstandard: recognised by their bytes, all their parts read, and told where they break off.

mod common;

use std::io::Write;

use common::{read, read_with, refusal};
use flate2::Compression;
use flate2::write::GzEncoder;
use ruzstd::encoding::{CompressionLevel, compress_to_vec};
use wirelore_log::{Options, Recording};

fn gzip(bytes: &[u8]) -> Vec<u8> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::default());
    encoder.write_all(bytes).expect("memory");
    encoder.finish().expect("memory")
}

fn zstd(bytes: &[u8]) -> Vec<u8> {
    compress_to_vec(bytes, CompressionLevel::Fastest)
}

/// A text log whose lines do not repeat, so that it stays long when it is packed.
fn text(lines: u32) -> String {
    let mut text = "time_s,id_hex,data_hex\n".to_owned();
    let mut state = 1_u32;
    for number in 0..lines {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        text.push_str(&format!("{number}.5,{:X},{state:08X}\n", 1 + number % 0x700));
    }
    text
}

#[test]
fn packed_logs_give_what_plain_ones_give() {
    let text = text(5_000);
    let plain = read(&text);
    assert_eq!(plain.frames.len(), 5_000);
    for packed in [gzip(text.as_bytes()), zstd(text.as_bytes())] {
        assert_eq!(read(packed).frames, plain.frames);
    }
}

#[test]
fn all_members_and_frames_are_read() {
    let text = text(300);
    let (first, second) = text.as_bytes().split_at(2_000);
    let plain = read(&text);
    assert_eq!(read([gzip(first), gzip(second)].concat()).frames, plain.frames);
    // RFC 8878 section 3.1.2: a skippable frame may stand between frames.
    let skippable = [&[0x50, 0x2A, 0x4D, 0x18, 3, 0, 0, 0][..], b"abc"].concat();
    assert_eq!(read([zstd(first), skippable, zstd(second)].concat()).frames, plain.frames);
}

/// One Zstandard frame with a raw block and no checksum, by hand from RFC 8878 section 3.1.1.
#[test]
fn a_zstandard_frame_made_by_hand() {
    let text = b"id_hex,data\n123,00\n";
    let mut packed = vec![0x28, 0xB5, 0x2F, 0xFD, 0x20, text.len() as u8];
    let block_header = (text.len() as u32) << 3 | 1;
    packed.extend_from_slice(&block_header.to_le_bytes()[..3]);
    packed.extend_from_slice(text);
    assert_eq!(read(packed).frames[0].id, 0x123);
}

#[test]
fn a_cut_stream_gives_what_it_had_and_says_so() {
    let text = text(20_000);
    let plain = read(&text);
    for packed in [gzip(text.as_bytes()), zstd(text.as_bytes())] {
        for part in [packed.len() / 2, packed.len() - 2] {
            let log = read(&packed[..part]);
            let count = log.frames.len();
            // A block of Zstandard unpacks whole or not at all: 128 KiB, RFC 8878 section 3.1.1.2.
            let lines_in_block = 128 * 1024 / (text.len() / 20_000);
            assert!(count + lines_in_block >= 20_000 * part / packed.len(), "{count} frames of {part} bytes");
            assert_eq!(log.frames[..], plain.frames[..count]);
            let lost = log.report.lost_tail.expect("is told").to_string();
            assert!(lost.contains("the log is compressed, and its stream is cut or damaged"), "{lost}");
            assert_eq!(lost.matches("the recording is cut off here: ").count(), 1, "{lost}");
            assert!(lost.ends_with("; the frames before it are kept"), "{lost}");
            assert_eq!(log.report.damaged, 0);
        }
    }
}

#[test]
fn a_block_that_is_cut_with_its_stream_tells_both() {
    let mut blocks = common::Blocks::new(false);
    blocks.interface(227, &[]);
    for number in 0..20_u32 {
        blocks.packet(0, u64::from(number), &common::record(number, &number.to_le_bytes()));
    }
    let packed = gzip(&blocks.file);
    let log = read(&packed[..packed.len() / 2]);
    assert_eq!(log.frames[..], read(&blocks.file).frames[..log.frames.len()]);
    let lost = log.report.lost_tail.expect("is told").to_string();
    assert!(lost.contains("a block") && lost.contains("the log is compressed, and its stream is cut"), "{lost}");
}

#[test]
fn packed_bytes_cut_or_turned_anywhere() {
    let text = text(60);
    let plain = read(&text);
    for packed in [gzip(text.as_bytes()), zstd(text.as_bytes())] {
        for at in 0..packed.len() {
            if let Ok(log) = read_with(&packed[..at], &Options::default()) {
                let count = log.frames.len();
                assert_eq!(log.frames[..], plain.frames[..count], "cut at {at}");
                assert!(log.report.lost_tail.is_some(), "cut at {at}");
            }
            for turn in [0x01, 0x80, 0xFF] {
                let mut bytes = packed.clone();
                bytes[at] ^= turn;
                let _ = read_with(&bytes, &Options::default());
            }
        }
    }
}

#[test]
fn a_stream_that_gives_nothing_is_no_log() {
    let packed = gzip(text(10).as_bytes());
    assert!(refusal(&packed[..12]).contains("is compressed, and its stream is cut or damaged"));
}

#[test]
fn progress_counts_the_packed_bytes() {
    let packed = gzip(text(20_000).as_bytes());
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("named_as_something_else.txt");
    std::fs::write(&path, &packed).expect("written");
    let mut recording = Recording::open(&path, &Options::default()).expect("opens");
    assert_eq!(recording.size(), Some(packed.len() as u64));
    while recording.next().expect("reads").is_some() {}
    assert_eq!(recording.bytes_read(), packed.len() as u64);
}
