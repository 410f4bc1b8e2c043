//! Stretches and pieces give what one frame after another gives: the same frames, channels, report and notes.

mod common;

use std::io::{Cursor, Write};
use std::path::Path;

use common::{Blocks, Kept, in_words, record};
use wirelore_log::{Frame, Options, Recording};

/// Everything that a log gives, with the report in words.
#[derive(Debug, PartialEq)]
struct Given {
    frames: Vec<Kept>,
    channels: Vec<String>,
    report: String,
}

impl Given {
    fn of(frames: Vec<Kept>, recording: &Recording) -> Self {
        let channels = recording.channels().iter().map(|channel| channel.name.clone()).collect();
        Self { frames, channels, report: in_words(recording.report()) }
    }

    /// The first difference: whole logs are too long for a message.
    fn assert_same(&self, other: &Self, what: &str) {
        let differs = self.frames.iter().zip(&other.frames).position(|(one, other)| one != other);
        if let Some(at) = differs {
            panic!("{what}: frame {at} is {:?}, and was {:?}", other.frames[at], self.frames[at]);
        }
        assert_eq!(self.frames.len(), other.frames.len(), "{what}");
        assert_eq!((&self.channels, &self.report), (&other.channels, &other.report), "{what}");
    }
}

fn opened(bytes: &[u8], options: &Options) -> Recording {
    Recording::from_reader(Box::new(Cursor::new(bytes.to_vec())), "test", options).expect("opens")
}

fn in_memory(bytes: &[u8], options: &Options) -> Recording {
    Recording::from_bytes(bytes.to_vec(), "test", options).expect("opens")
}

fn one_by_one(mut recording: Recording) -> Given {
    let mut frames = Vec::new();
    while let Some(frame) = recording.next().expect("reads") {
        frames.push(Kept::from(frame));
    }
    Given::of(frames, &recording)
}

fn by_stretches(mut recording: Recording, most_bytes: usize) -> Given {
    let mut frames = Vec::new();
    while recording.stretch(most_bytes, &mut |frame: &Frame<'_>| frames.push(Kept::from(*frame))).expect("reads") {}
    assert!(
        !recording.stretch(most_bytes, &mut |_: &Frame<'_>| panic!("the end stays the end")).expect("it has ended")
    );
    Given::of(frames, &recording)
}

/// Reads by pieces, backwards to show that they do not need each other; also tells how many joined and how many did not.
fn by_pieces(mut recording: Recording, count: usize, piece_bytes: usize) -> (Given, [usize; 2]) {
    let mut frames = Vec::new();
    let mut joined = [0, 0];
    loop {
        let mut ends: Vec<_> = recording
            .pieces(count, piece_bytes)
            .into_iter()
            .rev()
            .map(|piece| {
                let mut of_piece = Vec::new();
                (piece.read(&mut |frame: &Frame<'_>| of_piece.push(Kept::from(*frame))), of_piece)
            })
            .collect();
        ends.reverse();
        for (end, of_piece) in ends {
            let is_joined = recording.join(end);
            joined[usize::from(!is_joined)] += 1;
            if is_joined {
                frames.extend(of_piece);
            }
        }
        if !recording.stretch(1, &mut |frame: &Frame<'_>| frames.push(Kept::from(*frame))).expect("reads") {
            return (Given::of(frames, &recording), joined);
        }
    }
}

fn unplaced(given: Given) -> Given {
    Given { frames: given.frames.into_iter().map(Kept::unplaced).collect(), ..given }
}

/// All ways of reading a log in a file agree; tells how many pieces joined and how many did not.
fn all_ways_agree(path: &Path, options: &Options, piece_bytes: usize) -> [usize; 2] {
    let open = || Recording::open(path, options).expect("opens");
    let whole = one_by_one(open());
    let bytes = std::fs::read(path).expect("is there");
    whole.assert_same(&one_by_one(opened(&bytes, options)), "from a reader");
    whole.assert_same(&one_by_one(in_memory(&bytes, options)), "from memory");
    for most_bytes in [1, 1000, usize::MAX] {
        whole.assert_same(&by_stretches(open(), most_bytes), "in stretches");
        whole.assert_same(&by_stretches(opened(&bytes, options), most_bytes), "in stretches from a reader");
    }
    let (pieced, joined) = by_pieces(open(), 5, piece_bytes);
    let (given, _) = by_pieces(in_memory(&bytes, options), 5, piece_bytes);
    let whole = unplaced(whole);
    whole.assert_same(&unplaced(pieced), "in pieces");
    whole.assert_same(&unplaced(given), "in pieces of memory");
    joined
}

fn in_file(bytes: &[u8]) -> tempfile::NamedTempFile {
    let mut file = tempfile::NamedTempFile::new().expect("a temporary file");
    file.write_all(bytes).expect("is written");
    file
}

fn random(state: &mut u64) -> u64 {
    *state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    *state >> 33
}

/// A packet file with blocks of many kinds, about `size_bytes` long.
fn blocks(size_bytes: usize, big_endian: bool) -> Vec<u8> {
    let mut blocks = Blocks::new(big_endian);
    blocks.interface(227, &[(2, b"drive"), (9, &[9])]).interface(147, &[]).interface(227, &[(2, b"comfort")]);
    blocks.interface(212, &[(2, b"seat")]).interface(210, &[(2, b"chassis")]).interface(1, &[(2, b"backbone")]);
    let mut state = 7;
    let mut time = 1_700_000_000_000_000_u64;
    while blocks.file.len() < size_bytes {
        let number = random(&mut state);
        time = time + 1_000 - if number.is_multiple_of(997) { 100_000 } else { 0 };
        let payload: Vec<u8> = (0..number % 9).map(|at| (number >> at) as u8).collect();
        let xl = [&[0, 0, 3, 0x21, 0x81, 5, 70, 0, 0, 0, 0, 0][..], &[0x5A; 70]].concat();
        let lin = [&[1, 0, 0, 0, 0x42, 0x11, number as u8, 0][..], &payload].concat();
        let flexray = [&[1, number as u8 & 1, 0x20, 0x40, 0, 0xE4, 0xE0][..], &payload].concat();
        match number % 1000 {
            0 => drop(blocks.packet(1, time, &payload)),
            1 => drop(blocks.block(0x0BAD, &payload)),
            2 => drop(blocks.block(0x7777, &payload)),
            3 => drop(blocks.block(3, &[&blocks.u32(8)[..], &record(0x100, &[])].concat())),
            4 => drop(blocks.packet(9, time, &record(0x100, &payload))),
            5 => drop(blocks.packet(0, time, &record(0x100, &payload)[..7])),
            6 => drop(blocks.packet(0, u64::MAX, &record(0x100, &payload))),
            7 => drop(blocks.packet(0, time, &[&[0, 0, 3, 0x21, 12, 5, 0, 0][..], &[0x5A; 12]].concat())),
            8 => drop(blocks.packet(0, time, &[0x40, 0, 1, 0x23, 4, 0, 0, 0])),
            9 => drop(blocks.packet(0, time, &xl)),
            10..40 => drop(blocks.packet(3, time, &lin)),
            40..60 => drop(blocks.packet(4, time, &flexray)),
            60..70 => drop(blocks.packet(5, time, &vec![number as u8; number as usize % 2000])),
            _ => drop(blocks.packet(2 * (number as u32 % 2), time, &record(number as u32 % 0x1000, &payload))),
        }
    }
    blocks.file
}

/// A text with lines of many kinds, about `size_bytes` long.
fn lines(size_bytes: usize) -> Vec<u8> {
    let mut text = "time_s,channel,id_hex,data_hex\n".to_owned();
    let mut state = 7;
    let mut time_ns = 99_990_000_000_u64;
    while text.len() < size_bytes {
        let number = random(&mut state);
        time_ns = time_ns + 123_457 - if number.is_multiple_of(997) { 1_000_000 } else { 0 };
        let payload: String = (0..number % 9).map(|at| format!("{:02x}", (number >> at) as u8)).collect();
        let (s, ns, id) = (time_ns / 1_000_000_000, time_ns % 1_000_000_000, number % 0x900);
        let name = ["drive", "comfort", "a name beyond sixteen bytes"][number as usize % 3];
        let line = match number % 500 {
            0 => "# a comment".to_owned(),
            1 => String::new(),
            2 => format!("{s}.{ns:09},{name},{id:X},{payload}F"),
            3 => format!("{s}.{ns:09},\"{name}\",{id:08X},{payload}"),
            4 => format!("{s}.{:03}, {name},{id:X},{payload}\r", ns / 1_000_000),
            5 => format!("{s}.{ns:09},{name},{id:X},{payload},,"),
            6 => format!("{s}.{ns:09},{name},{id:X}"),
            7 => format!("{s}.{ns:09},{name},{id:08X},{}", "5a".repeat(number as usize / 512 % 70)),
            8 => format!(",{name},0x{id:X},{payload}"),
            _ => format!("{s}.{ns:09},{name},{id:X},{payload}"),
        };
        text.push_str(&line);
        text.push('\n');
    }
    text.into_bytes()
}

#[test]
fn blocks_in_pieces() {
    for big_endian in [false, true] {
        let file = in_file(&blocks(1 << 20, big_endian));
        let joined = all_ways_agree(file.path(), &Options::default(), 20_000);
        assert!(joined[0] > 30 && joined[1] <= 6, "{joined:?}");
    }
}

#[test]
fn lines_in_pieces() {
    let file = in_file(&lines(1 << 20));
    let joined = all_ways_agree(file.path(), &Options::default(), 20_000);
    assert!(joined[0] > 30 && joined[1] <= 5, "{joined:?}");
}

#[test]
fn damage_in_pieces() {
    let mut state = 3;
    for mut log in [blocks(1 << 20, false), lines(1 << 20)] {
        for _ in 0..200 {
            let at = 1000 + random(&mut state) as usize % (log.len() - 1000);
            match random(&mut state) % 3 {
                0 => log[at] ^= 1 << (random(&mut state) % 8),
                1 => drop(log.drain(at..log.len().min(at + random(&mut state) as usize % 100))),
                _ => drop(log.splice(at..at, vec![random(&mut state) as u8; random(&mut state) as usize % 1000])),
            }
        }
        let file = in_file(&log);
        let joined = all_ways_agree(file.path(), &Options::default(), 20_000);
        assert!(joined[0] > 20, "{joined:?}");
    }
}

#[test]
fn a_new_section_amid_the_log_turns_later_pieces_away() {
    let mut log = blocks(400_000, false);
    log.extend(blocks(800_000, true));
    let file = in_file(&log);
    let joined = all_ways_agree(file.path(), &Options::default(), 20_000);
    assert!(joined[0] > 20 && joined[1] > 1, "{joined:?}");
}

#[test]
fn what_cannot_be_cut() {
    let bytes = lines(1 << 20);
    assert!(opened(&bytes, &Options::default()).pieces(4, 20_000).is_empty());
    let file = in_file(&bytes[..200_000]);
    assert!(Recording::open(file.path(), &Options::default()).expect("opens").pieces(4, 20_000).is_empty());
}

#[test]
fn a_piece_joins_only_where_it_began() {
    let file = in_file(&lines(1 << 20));
    let mut recording = Recording::open(file.path(), &Options::default()).expect("opens");
    let mut other = Recording::open(file.path(), &Options::default()).expect("opens");
    assert!(recording.pieces(2, 20_000).is_empty(), "nothing is known yet");
    assert!(recording.next().expect("reads").is_some());
    let mut pieces = recording.pieces(2, 20_000).into_iter();
    let (first, second) = (pieces.next().expect("a piece"), pieces.next().expect("another"));
    assert!(!recording.join(second.read(&mut |_: &Frame<'_>| {})), "the first is missing");
    let end = first.read(&mut |_: &Frame<'_>| {});
    assert_eq!(end.channels().len(), 3);
    assert_eq!(recording.channels().len(), 1);
    assert!(recording.join(end));
    assert_eq!(recording.channels().len(), 3);
    other.stretch(1, &mut |_: &Frame<'_>| {}).expect("reads");
    let foreign = other.pieces(1, 20_000).remove(0).read(&mut |_: &Frame<'_>| {});
    assert!(!recording.join(foreign), "it is a piece of another recording");
    assert!(other.next().expect("reads").is_some());
}

#[test]
fn the_file_grows_or_is_cut_while_it_is_read() {
    let (bytes, more) = (lines(3 << 20), b"9999.5,drive,123,00\n");
    let mut file = in_file(&bytes);
    let mut recording = Recording::open(file.path(), &Options::default()).expect("opens");
    file.write_all(more).expect("is written");
    let mut last = None;
    while recording.stretch(1 << 20, &mut |frame: &Frame<'_>| last = frame.time_ns).expect("reads") {}
    assert_eq!(last, Some(9_999_500_000_000));
    assert_eq!(recording.bytes_read(), (bytes.len() + more.len()) as u64);

    let mut recording = Recording::open(file.path(), &Options::default()).expect("opens");
    assert!(recording.next().expect("reads").is_some());
    file.as_file().set_len(2 << 20).expect("is cut");
    let mut frames = 0;
    while recording.stretch(1 << 20, &mut |_: &Frame<'_>| frames += 1).expect("reads") {}
    assert!(frames > 10_000 && recording.bytes_read() == 2 << 20, "{frames} of {}", recording.bytes_read());
}

#[test]
fn real_recordings() {
    for name in [
        "heavy-truck-drive.csv",
        "heavy-truck-bench-transport.csv",
        "wire-level/marine-can.csv",
        "wire-level/can-mixed.csv",
    ] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../shared/data").join(name);
        if path.exists() {
            all_ways_agree(&path, &Options::default(), 30_000);
        } else {
            eprintln!("skipped: the recording ../shared/data/{name} is not there");
        }
    }
}
