//! Values as text: the printer of short decimals, and the whole command from a pcapng file to a csv file, against printing the doubles with zmij.

use std::ffi::OsString;
use std::fs;
use std::path::Path;
use std::process::ExitCode;

use wirelore_bits::text;

use crate::clock::Meter;
use crate::kept::Kept;
use crate::race::Race;
use crate::stage::{Recordings, Stage, add_value};
use crate::table::{Goal, Row, Work};

/// Text is given away in pieces of this size.
const PIECE_BYTES: usize = 1 << 16;

pub(crate) fn rows(stage: &Stage) -> Vec<Row> {
    let recordings = stage.part();
    let kept = Kept::expected(&stage.vehicle, recordings.frames, 0);
    check_printing(&kept);
    let output = stage.path("part-decoded.csv");
    assert_eq!(decode(stage, recordings, &output), 0, "the command fails");
    assert_eq!(value_sum(&output), recordings.value_sum, "the csv file has other values");

    let mut race = Race::default();
    let command = race.enter_with(Meter::Process, "command", 0, || decode(stage, recordings, &output));
    let zmij = race.enter("zmij", print(&kept, put_zmij), || print(&kept, put_zmij));
    let short = race.enter("short decimals", print(&kept, put_short), || print(&kept, put_short));
    let times = race.run(stage.rounds);
    let work = Work { item: "value", items: recordings.values(), bytes: 0 };
    let goal = Goal::Faster { reach: 3.0, floor: 2.0 };
    vec![
        Row::pair(work, &times, ("doubles as text", short), ("zmij on the doubles", zmij), goal),
        Row::pair(
            work,
            &times,
            ("whole command, pcapng file to csv file", command),
            ("zmij on the doubles alone", zmij),
            Goal::Stated,
        ),
    ]
}

/// Runs the command; 0 where it succeeds.
fn decode(stage: &Stage, recordings: &Recordings, output: &Path) -> u64 {
    let words: [OsString; 7] = [
        "wirelore".into(),
        "decode".into(),
        stage.description().into(),
        recordings.pcapng.path.clone().into(),
        "--quiet".into(),
        "-o".into(),
        output.into(),
    ];
    u64::from(wirelore_cli::run(words) != ExitCode::SUCCESS)
}

/// What the numbers in the value column add up to.
fn value_sum(path: &Path) -> u64 {
    let text = fs::read_to_string(path).expect("the command has written it");
    let mut lines = text.lines();
    let heads = lines.next().unwrap_or_default();
    let column = heads.split(',').position(|head| head == "value").expect("there is a value column");
    let mut sum = 0;
    for line in lines {
        let cell = line.split(',').nth(column).expect("every line has all columns");
        add_value(&mut sum, cell.parse().expect("every value is a number"));
    }
    sum
}

/// Prints every value with a line end behind it, into a piece of memory that is used again; how many bytes that makes.
fn print(kept: &Kept, put: impl Fn(f64, &mut [u8; text::ROOM_BYTES]) -> usize) -> u64 {
    let mut piece = vec![0; PIECE_BYTES];
    let (mut end, mut bytes) = (0, 0);
    for value in kept.columns().flatten() {
        if piece.len() - end <= text::ROOM_BYTES {
            bytes += end as u64;
            std::hint::black_box(&mut piece);
            end = 0;
        }
        let room = piece[end..].first_chunk_mut().expect("there is room for a number");
        end += put(*value, room);
        piece[end] = b'\n';
        end += 1;
    }
    bytes + end as u64
}

/// As the general printer gives it.
fn put_zmij(value: f64, to: &mut [u8; text::ROOM_BYTES]) -> usize {
    let mut buffer = zmij::Buffer::new();
    put(buffer.format_finite(value), to)
}

/// From the decimal that the double stands for, where that is a short one.
fn put_short(value: f64, to: &mut [u8; text::ROOM_BYTES]) -> usize {
    text::decimal(value, to).unwrap_or_else(|| {
        let mut buffer = zmij::Buffer::new();
        let text = buffer.format_finite(value);
        put(text.strip_suffix(".0").unwrap_or(text), to)
    })
}

fn put(text: &str, to: &mut [u8; text::ROOM_BYTES]) -> usize {
    to[..text.len()].copy_from_slice(text.as_bytes());
    text.len()
}

/// That every text reads back to its double, and that both printers write the same but for the `.0` of whole numbers.
fn check_printing(kept: &Kept) {
    let (mut short, mut general) = ([0; text::ROOM_BYTES], [0; text::ROOM_BYTES]);
    for value in kept.columns().flatten() {
        let length = put_short(*value, &mut short);
        let short = &short[..length];
        let length = put_zmij(*value, &mut general);
        let general = &general[..length];
        assert_eq!(short, general.strip_suffix(b".0").unwrap_or(general));
        let back: f64 = str::from_utf8(short).ok().and_then(|text| text.parse().ok()).expect("it is a number");
        assert_eq!(back.to_bits(), value.to_bits());
    }
}
