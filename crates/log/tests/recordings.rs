//! Real recordings, where they lie beside the checkout; the tests say so when they are not there.

mod common;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use common::{Kept, damage};
use wirelore_log::{Options, Recording, Report};

/// The recording, or `None` with a word about it.
fn recording(name: &str) -> Option<PathBuf> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../shared/data").join(name);
    if path.exists() {
        return Some(path);
    }
    eprintln!("skipped: the recording ../shared/data/{name} is not there");
    None
}

fn read(path: &Path) -> (Vec<Kept>, Report) {
    let mut recording = Recording::open(path, &Options::default()).unwrap_or_else(|error| panic!("{error}"));
    let mut frames = Vec::new();
    while let Some(frame) = recording.next().expect("reads to the end") {
        frames.push(Kept::from(frame));
    }
    assert_eq!(recording.size(), Some(recording.bytes_read()));
    (frames, recording.report().clone())
}

#[test]
fn a_heavy_truck_on_the_road() {
    // Source: the description that comes with the recording.
    let Some(path) = recording("heavy-truck-drive.csv") else {
        return;
    };
    let (frames, report) = read(&path);
    let ids: BTreeSet<u32> = frames.iter().map(|frame| frame.id).collect();
    assert_eq!((frames.len(), ids.len(), report.damaged), (19_957, 90, 0), "{:?}", damage(&report));
    assert!(frames.iter().all(|frame| frame.extended && !frame.fd));
    assert_eq!((report.notes(), &report.lost_tail), (vec![], &None));
    let speed = frames.iter().find(|frame| frame.id == 0x18FE_F100).expect("the truck tells its speed");
    assert_eq!(speed.time_ns, Some(11_063_000));
    assert_eq!(speed.payload, [0xFF, 0x34, 0x17, 0xFC, 0xFF, 0x68, 0x00, 0xCF]);
    let engine = frames.iter().find(|frame| frame.id == 0x0CF0_0400).expect("the engine tells its speed");
    assert_eq!((engine.time_ns, &engine.payload[3..5]), (Some(17_118_000), &[0xDD, 0x2F][..]));
}

#[test]
fn a_heavy_truck_on_the_bench() {
    let Some(path) = recording("heavy-truck-bench-transport.csv") else {
        return;
    };
    let (frames, report) = read(&path);
    assert_eq!((frames.len(), report.damaged), (3_056, 0), "{:?}", damage(&report));
}

#[test]
fn a_boat_at_rest() {
    // The recording says of every frame whether its checksum was right: 408 of 19,358 were not.
    let Some(path) = recording("wire-level/marine-can.csv") else {
        return;
    };
    let (frames, report) = read(&path);
    assert_eq!((frames.len(), report.damaged, report.frames_read()), (18_950, 408, 19_358));
    assert!(damage(&report)[0].contains("the log itself marks the checksum as wrong"));
    let position = frames.iter().find(|frame| frame.id == 0x09F8_0100).expect("the boat tells its position");
    let degrees = |at: usize| {
        let bytes =
            [position.payload[at], position.payload[at + 1], position.payload[at + 2], position.payload[at + 3]];
        i32::from_le_bytes(bytes)
    };
    assert_eq!((degrees(0) / 100, degrees(4) / 100), (3_317_229, -9_686_104));
}

#[test]
fn standard_and_extended_identifiers_mixed() {
    let Some(path) = recording("wire-level/can-mixed.csv") else {
        return;
    };
    let (frames, report) = read(&path);
    let ids: BTreeSet<(u32, bool)> = frames.iter().map(|frame| (frame.id, frame.extended)).collect();
    assert_eq!((frames.len(), report.damaged), (286, 0), "{:?}", damage(&report));
    assert_eq!(ids.into_iter().collect::<Vec<_>>(), [(0x110, false), (0x550, false), (0x1461_1234, true)]);
}
