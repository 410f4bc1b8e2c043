//! Inputs made to exhaust the program, given to the command as a person would: each ends with a message or a result, in bounded memory and
//! time. The system holds it to that: the address space and the seconds of the processor are limited (`ulimit`, POSIX.1-2017 and its common
//! extension `-v`).
#![cfg(target_os = "linux")]

use std::fmt::Write as _;
use std::fs;
use std::io::Write;
use std::path::Path;
use std::process::{Command, Output, Stdio};

use flate2::Compression;
use flate2::write::GzEncoder;

/// What is streamed needs no more than this, however long it is; most of it is reserved by threads and never touched.
const STREAMED_MIB: u64 = 512;
/// What a description of the largest size may take.
const LARGEST_MIB: u64 = 3_072;
const CPU_S: u64 = 120;

const DESCRIPTION: &str = "network drive can 500 kbit/s\nframe f on drive id 0x100 { signal a in byte 0 }\n";

fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("van.lore"), DESCRIPTION).expect("written");
    folder
}

fn command(folder: &Path, mib: u64, words: &[&str]) -> Command {
    let limits = format!("ulimit -v {} && ulimit -t {CPU_S} && exec \"$0\" \"$@\"", mib * 1024);
    let mut command = Command::new("sh");
    command.current_dir(folder).args(["-c", &limits, env!("CARGO_BIN_EXE_wirelore-under-test")]).args(words);
    command
}

/// Runs the command within its limits; what it printed, and what it told.
#[track_caller]
fn run(folder: &Path, mib: u64, words: &[&str], status: i32) -> (String, String) {
    ended(&command(folder, mib, words).output().expect("it starts"), words, status)
}

#[track_caller]
fn ended(output: &Output, words: &[&str], status: i32) -> (String, String) {
    let texts = [&output.stdout, &output.stderr].map(|bytes| String::from_utf8_lossy(bytes).into_owned());
    let begin: String = texts[1].chars().take(2_000).collect();
    assert_eq!(output.status.code(), Some(status), "{words:?}: {:?} {begin}", output.status);
    assert!(!texts[1].contains("panicked"), "{words:?}: {begin}");
    texts.into()
}

/// Checks a description; what is said of it.
#[track_caller]
fn check(text: &str, status: i32) -> String {
    let folder = folder();
    fs::write(folder.path().join("hostile.lore"), text).expect("written");
    run(folder.path(), LARGEST_MIB, &["check", "hostile.lore"], status).0
}

#[test]
fn deep_nesting() {
    let head = "network n can 500 kbit/s\nframe f on n id 1 { signal a in byte 0\n";
    for opening in ["when a is 1 {\n", "repeat to end, size 1 bytes {\n"] {
        let said = check(&format!("{head}{}", opening.repeat(10_000)), 1);
        assert!(said.contains("nested"), "{said:.500}");
    }
    for (opening, closing) in [("(", ")"), ("-", ""), ("(", "")] {
        let formula = format!("{}raw{}", opening.repeat(100_000), closing.repeat(100_000));
        check(&format!("{head}signal b in byte 1 = {formula}\n}}\n"), 1);
    }
    check(&"{".repeat(1_000_000), 1);
}

#[test]
fn repeats_without_end() {
    let head = "network n ethernet 100 Mbit/s\nframe f on n udp port 1 {\n";
    check(&format!("{head}repeat to end, up to 4096, size 0 bytes {{ signal a in byte 0 }}\n}}\n"), 1);
    check(&format!("{head}repeat to end, up to 4294967295, size 1 bytes {{ signal a in byte 0 }}\n}}\n"), 1);
    let many = "repeat to end, up to 4096, size 1 bytes { signal a in byte 0 }\n".repeat(10_000);
    check(&format!("{head}{many}}}\n"), 1);
}

#[test]
fn files_in_circles_and_in_a_chain() {
    let folder = folder();
    let write = |name: String, text: String| fs::write(folder.path().join(name), text).expect("written");
    write("a.lore".into(), format!("use \"b.lore\"\n{DESCRIPTION}"));
    write("b.lore".into(), "use \"c.lore\"\nuse \"b.lore\"\n".into());
    write("c.lore".into(), "use \"./../../../nowhere/../a.lore\"\nuse \"a.lore\"\n".into());
    let (said, _) = run(folder.path(), STREAMED_MIB, &["check", "a.lore"], 1);
    assert!(said.contains("there is no file"), "{said}");
    write("c.lore".into(), "use \"a.lore\"\n".into());
    let (said, _) = run(folder.path(), STREAMED_MIB, &["check", "a.lore"], 0);
    assert!(said.contains("1 frame, 1 signal"), "{said}");
    // Ten thousand files are allowed, and one more is not.
    for number in 0..10_001 {
        write(format!("{number}.lore"), format!("network n{number} can 500 kbit/s\nuse \"{}.lore\"\n", number + 1));
    }
    write("10001.lore".into(), String::new());
    let (said, _) = run(folder.path(), STREAMED_MIB, &["check", "2.lore"], 0);
    assert!(said.contains("9,999 networks"), "{said:.500}");
    let (said, _) = run(folder.path(), STREAMED_MIB, &["check", "0.lore"], 1);
    assert!(said.contains("takes more than 10000 files"), "{said:.500}");
}

#[test]
fn texts_that_are_too_long() {
    let said = check(&"x".repeat(17 << 20), 2);
    assert!(said.contains("larger than 16 MiB"), "{said:.500}");
    check(&format!("{}{}", DESCRIPTION, "#".repeat(15 << 20)), 0);
    check(&"signal ".repeat(2_000_000), 1);
    let folder = folder();
    for words in [["check", "-"], ["format", "-"]] {
        let mut command = command(folder.path(), STREAMED_MIB, &words);
        let piped = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = piped.spawn().expect("it starts");
        let mut endless = child.stdin.take().expect("a pipe");
        let writing = std::thread::spawn(move || while endless.write_all(&[b'y'; 1 << 16]).is_ok() {});
        let (said, told) = ended(&child.wait_with_output().expect("it ends"), &words, 2);
        assert!(format!("{said}{told}").contains("larger than 16 MiB"), "{said:.500} {told:.500}");
        writing.join().expect("the pipe was closed");
    }
}

#[test]
fn a_million_signals() {
    let folder = folder();
    let mut uses = "network n can 500 kbit/s\n".to_owned();
    for part in 0..5 {
        let mut text = String::new();
        for frame in part * 3_125..(part + 1) * 3_125 {
            let _ = writeln!(text, "frame f{frame} on n id {} extended {{", 0x800 + frame);
            for bit in 0..64 {
                let _ = writeln!(text, "signal s{bit} in bit {}.{}", bit / 8, bit % 8);
            }
            text.push_str("}\n");
        }
        fs::write(folder.path().join(format!("{part}.lore")), text).expect("written");
        let _ = writeln!(uses, "use \"{part}.lore\"");
    }
    fs::write(folder.path().join("all.lore"), uses).expect("written");
    let (said, _) = run(folder.path(), LARGEST_MIB, &["check", "all.lore"], 0);
    assert!(said.ends_with("15,625 frames, 1,000,000 signals\n"), "{said:.500}");
}

#[test]
fn a_hundred_thousand_identifiers() {
    let folder = folder();
    let mut log = "time,id,data\n".to_owned();
    for id in 0..100_000 {
        let _ = writeln!(log, "{}.{:03},0x{:08X},07", id / 1_000, id % 1_000, 0x1000 + id);
    }
    let _ = writeln!(log, "200,0x100,2A");
    fs::write(folder.path().join("many.csv"), log).expect("written");
    let (said, told) = run(folder.path(), STREAMED_MIB, &["decode", "van.lore", "many.csv"], 0);
    assert!(said.ends_with(",42,,\n") && said.lines().count() == 2, "{said:.500}");
    assert!(told.contains("100,000  without a description") && told.len() < 4_000, "{told:.2000}");
    let (said, told) =
        run(folder.path(), STREAMED_MIB, &["budget", "van.lore", "many.csv", "--frames", "--to", "csv"], 0);
    assert_eq!(said.lines().count(), 65_537);
    assert!(told.contains("drive: 34,465 frames of identifiers beyond the first 65,536"), "{told:.2000}");
}

#[test]
fn twenty_thousand_selector_values() {
    let folder = folder();
    let description = "network drive can 500 kbit/s\nframe pages on drive id 0x100 {\n    length 2\n    signal page in bytes 1..0\n    \
                       when page is 0 {\n    }\n}\n";
    fs::write(folder.path().join("pages.lore"), description).expect("written");
    let mut log = "time,id,data\n".to_owned();
    for value in 0..20_001 {
        let _ = writeln!(log, "{}.{:03},0x100,{:02X}{:02X}", value / 1_000, value % 1_000, value & 0xFF, value >> 8);
    }
    fs::write(folder.path().join("values.csv"), log).expect("written");
    let (_, told) = run(folder.path(), STREAMED_MIB, &["decode", "pages.lore", "values.csv"], 0);
    assert!(told.contains("no page for 9,994 more selector values\n"), "{told:.2000}");
    assert!(told.contains("no page in 10,000 frames for selector values beyond the first 10,000\n"), "{told:.2000}");
}

/// A gzip file of one byte so many MiB long between two texts (RFC 1952: members may follow each other).
fn gzip_bomb(first: &[u8], byte: u8, mib: usize, last: &[u8]) -> Vec<u8> {
    const MEMBER_MIB: usize = 16;
    let member = |bytes: &[u8]| {
        let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
        encoder.write_all(bytes).expect("memory");
        encoder.finish().expect("memory")
    };
    let filling = member(&vec![byte; MEMBER_MIB << 20]);
    assert!((MEMBER_MIB << 20) / filling.len() >= 1_000, "{}", filling.len());
    [member(first), filling.repeat(mib / MEMBER_MIB), member(last)].concat()
}

/// The same as a Zstandard frame: raw blocks, and blocks that say one byte and how often (RFC 8878, 3.1.1.2).
fn zstd_bomb(first: &[u8], byte: u8, mib: usize, last: &[u8]) -> Vec<u8> {
    const BLOCK_BYTES: usize = 128 << 10;
    let header = |size: usize, kind: u32, is_last: bool| {
        ((size as u32) << 3 | kind << 1 | u32::from(is_last)).to_le_bytes()[..3].to_vec()
    };
    // The window has 128 KiB: 2 to the power of 10 and 7.
    let mut file = vec![0x28, 0xB5, 0x2F, 0xFD, 0, 7 << 3];
    file.extend([header(first.len(), 0, false), first.to_vec()].concat());
    for _ in 0..(mib << 20) / BLOCK_BYTES {
        file.extend([header(BLOCK_BYTES, 1, false), vec![byte]].concat());
    }
    file.extend([header(last.len(), 0, true), last.to_vec()].concat());
    file
}

#[test]
fn logs_that_unpack_to_a_thousand_times_their_size() {
    let folder = folder();
    let first = "time,id,data\n0.1,0x100,01\n".as_bytes();
    // Empty lines; one line that does not end; 1 GiB is twice the limit of the memory.
    for (name, byte, last) in [("lines", b'\n', "0.2,0x100,02\n"), ("line", b'x', "\n0.2,0x100,02\n")] {
        for (ending, bomb) in [("gz", gzip_bomb as fn(&[u8], u8, usize, &[u8]) -> Vec<u8>), ("zst", zstd_bomb)] {
            let name = format!("{name}.csv.{ending}");
            let bomb = bomb(first, byte, 1_024, last.as_bytes());
            assert!(bomb.len() < 1_100_000, "{name} has {} bytes", bomb.len());
            fs::write(folder.path().join(&name), bomb).expect("written");
            let (said, told) = run(folder.path(), STREAMED_MIB, &["decode", "van.lore", &name], 0);
            let values: Vec<&str> = said.lines().skip(1).filter_map(|line| line.split(',').nth(4)).collect();
            assert_eq!(values, ["1", "2"], "{name}: {told}");
            assert_eq!(told.contains("longer than 64 KiB"), byte == b'x', "{told}");
        }
    }
    // Between two blocks of a packet file there is a sea of nothing.
    let blocks = [packet_file(), packet(1)].concat();
    fs::write(folder.path().join("sea.gz"), gzip_bomb(&blocks, 0, 128, &packet(2))).expect("written");
    let (said, told) = run(folder.path(), STREAMED_MIB, &["decode", "van.lore", "sea.gz"], 0);
    assert!(said.lines().count() == 3 && told.contains("134217728 bytes are skipped"), "{said} {told}");
    // A window of 1 TiB (RFC 8878, 3.1.1.1.2: 2 to the power of 10 and 30) is refused and not taken.
    let mut window = zstd_bomb(first, b'\n', 1, b"0.2,0x100,02\n");
    window[5] = 30 << 3;
    fs::write(folder.path().join("window.zst"), window).expect("written");
    let (_, told) = run(folder.path(), STREAMED_MIB, &["decode", "van.lore", "window.zst"], 2);
    assert!(told.contains("compressed"), "{told}");
}

fn block(kind: u32, body: &[u8]) -> Vec<u8> {
    let total = (12 + body.len() as u32).to_le_bytes();
    [&kind.to_le_bytes()[..], &total, body, &total].concat()
}

/// The head of a packet file with one interface of CAN (draft-ietf-opsawg-pcapng; link type 227), whose limit is as large as can be.
fn packet_file() -> Vec<u8> {
    let section = [&0x1A2B_3C4D_u32.to_le_bytes()[..], &[1, 0, 0, 0], &[0xFF; 8]].concat();
    [block(0x0A0D_0D0A, &section), block(1, &[&[227, 0, 0, 0][..], &[0xFF; 4]].concat())].concat()
}

fn packet(data: u8) -> Vec<u8> {
    packet_of(data, 9, 9)
}

/// A frame with one byte, and the lengths that are told of it.
fn packet_of(data: u8, captured: u32, original: u32) -> Vec<u8> {
    let head = [0, 0, u32::from(data) * 1_000_000, captured, original].map(u32::to_le_bytes).concat();
    block(6, &[&head[..], &[0, 0, 1, 0, 1, 0, 0, 0, data, 0, 0, 0]].concat())
}

#[test]
fn lengths_near_four_gibibytes() {
    let folder = folder();
    let values = |name: &str, bytes: Vec<u8>| {
        fs::write(folder.path().join(name), bytes).expect("written");
        let (said, told) = run(folder.path(), STREAMED_MIB, &["decode", "van.lore", name], 0);
        (said.lines().skip(1).filter_map(|line| line.split(',').nth(4)).collect::<Vec<_>>().join(" "), told)
    };
    for huge in [0xFFFF_FFFF_u32, 0xFFFF_FFFC, 0xFFFF_FFF0, 0x8000_0000, 0x7FFF_FFFC] {
        let mut wrong = packet(2);
        wrong[4..8].copy_from_slice(&huge.to_le_bytes());
        let mut both = wrong.clone();
        let end = both.len() - 4;
        both[end..].copy_from_slice(&huge.to_le_bytes());
        let option = block(6, &[packet(2)[8..40].to_vec(), vec![1, 0, 0xFF, 0xFF]].concat());
        for (number, wrong) in [wrong, both, packet_of(2, huge, 9), packet_of(2, 9, huge), option].iter().enumerate() {
            let file = [packet_file(), packet(1), wrong.clone(), packet(3)].concat();
            let (read, told) = values(&format!("{number}.pcapng"), file);
            let is_kept = number == 4;
            assert_eq!(read, if is_kept { "1 2 3" } else { "1 3" }, "{huge:X} in form {number}: {told}");
            assert_eq!(told.contains("block 4 at byte"), !is_kept, "{huge:X} in form {number}: {told}");
        }
        // The classic file (draft-ietf-opsawg-pcap): a record of the same frame between two others.
        let head = [0xA1B2_C3D4, 0x0004_0002, 0, 0, huge, 227].map(u32::to_le_bytes).concat();
        let record = |data: u8, captured: u32, original: u32| {
            let numbers = [u32::from(data), 0, captured, original].map(u32::to_le_bytes).concat();
            [&numbers[..], &[0, 0, 1, 0, 1, 0, 0, 0, data]].concat()
        };
        for wrong in [record(2, huge, 9), record(2, 9, huge), record(2, huge, huge)] {
            let file = [head.clone(), record(1, 9, 9), wrong, record(3, 9, 9)].concat();
            let (read, told) = values("classic.pcap", file);
            assert_eq!(read, "1 3", "{huge:X}: {told}");
            assert!(told.contains("block 2 at byte 49"), "{huge:X}: {told}");
        }
    }
}
