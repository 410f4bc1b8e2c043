//! Values as text: the whole command, from a pcapng file to a csv file, against nothing but printing the doubles with zmij.

use std::ffi::OsString;
use std::fs;
use std::path::Path;
use std::process::ExitCode;

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
    let zmij = race.enter("zmij", print(&kept), || print(&kept));
    let times = race.run(stage.rounds);
    let work = Work { item: "value", items: recordings.values(), bytes: 0 };
    let measure = ("whole command, pcapng file to csv file", command);
    vec![Row::pair(work, &times, measure, ("zmij on the doubles alone", zmij), Goal::Stated)]
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

/// Prints every value; how many bytes that makes.
fn print(kept: &Kept) -> u64 {
    let mut text = Vec::with_capacity(PIECE_BYTES + 64);
    let mut bytes = 0;
    for value in kept.columns().flatten() {
        text.extend_from_slice(zmij::Buffer::new().format_finite(*value).as_bytes());
        text.push(b'\n');
        if text.len() > PIECE_BYTES {
            bytes += std::hint::black_box(&text).len() as u64;
            text.clear();
        }
    }
    bytes + text.len() as u64
}

/// That every text reads back to its double.
fn check_printing(kept: &Kept) {
    let mut buffer = zmij::Buffer::new();
    for value in kept.columns().flatten() {
        let back: f64 = buffer.format_finite(*value).parse().expect("it is a number");
        assert_eq!(back.to_bits(), value.to_bits());
    }
}
