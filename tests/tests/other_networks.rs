//! Bench captures of LIN and FlexRay that lie beside the checkout: every documented frame is there, and each deliberate damage is counted
//! as what it is. Skipped aloud where they are not there.

use std::fs;
use std::path::Path;

use wirelore_log::{ColumnMap, Faults, FlexRay, Kind, Lin, LinChecksum, Medium, Options, Recording};
use wirelore_tests::readings::{Readings, shared_recording};

/// What a frame is: its kind, what was wrong, its identifier, its data.
type Seen = (Kind, Medium, u32, Vec<u8>);

fn frames(path: &Path, columns: Option<&str>) -> Vec<Seen> {
    let columns = columns.map(|columns| ColumnMap::parse(columns).expect("the columns are told well"));
    let mut recording = Recording::open(path, &Options { columns, ..Options::default() }).expect("it can be opened");
    let mut frames = Vec::new();
    while let Some(frame) = recording.next().expect("it can be read") {
        assert!(frame.time_ns.is_some());
        frames.push((frame.kind, frame.medium, frame.id, frame.payload.to_vec()));
    }
    let report = recording.report();
    assert_eq!((report.damaged, report.frames_read()), (0, frames.len() as u64), "{:?}", report.damage);
    frames
}

/// The lines of a capture, cell by cell, without its header.
fn lines(path: &Path) -> Vec<Vec<String>> {
    let text = fs::read_to_string(path).expect("it can be read");
    text.lines().skip(1).map(|line| line.split(',').map(|cell| cell.trim().to_owned()).collect()).collect()
}

fn count(frames: &[Seen], kind: Kind) -> usize {
    frames.iter().filter(|(seen, ..)| *seen == kind).count()
}

const LIN_COLUMNS: &str = "time=time_s:s, pid=pid_hex:hex, id=id_hex:hex, data=data_hex:hex, checksum=checksum_hex:hex, \
    parity_good=parity_ok, checksum_kind=checksum_ok";

/// Once recognised by the headings, once with the columns told.
fn lin_frames(name: &str) -> Option<Vec<Seen>> {
    let path = shared_recording(name)?;
    let frames_by_headings = frames(&path, None);
    assert_eq!(frames_by_headings, frames(&path, Some(LIN_COLUMNS)));
    // What the notes of the capture say of each line is what its frame says.
    let lines = lines(&path);
    assert_eq!(lines.len(), frames_by_headings.len());
    for (cells, (kind, medium, ..)) in lines.iter().zip(&frames_by_headings) {
        let wanted = match cells[7].as_str() {
            "" => (Kind::Data, Faults::NONE),
            "short" => (Kind::Unanswered, Faults::NONE),
            note if note == "no-pid" || note.starts_with("no-sync") => (Kind::Faulty, Faults::IDENTIFIER),
            other => panic!("{other}"),
        };
        assert_eq!((*kind, medium.faults()), wanted, "{cells:?}");
    }
    Some(frames_by_headings)
}

fn lin(protected_id: u8, checksum: u8) -> Medium {
    let (protected_id, checksum) = (Some(protected_id), Some(checksum));
    Medium::Lin(Lin { protected_id, checksum, checksum_kind: Some(LinChecksum::Enhanced), faults: Faults::NONE })
}

/// The facts come with the recordings; the checksums are checked by the rule of LIN 2.2A, section 2.3.1.5, while reading.
#[test]
fn lin_on_the_bench() {
    if let Some(single) = lin_frames("wire-level/lin_single_frame.csv") {
        assert_eq!(single, [(Kind::Data, lin(0xC1, 0x1C), 0x01, vec![0x11, 0x11])]);
    }
    if let Some(burst) = lin_frames("wire-level/lin_burst.csv") {
        assert_eq!(burst, vec![(Kind::Data, lin(0xA3, 0x29), 0x23, vec![0x11, 0x22]); 10]);
    }
    if let Some(stress) = lin_frames("wire-level/lin_stress.csv") {
        // The last line has data and neither synchronisation nor identifier.
        let counts = [Kind::Data, Kind::Unanswered, Kind::Faulty].map(|kind| count(&stress, kind));
        assert_eq!(counts, [58, 8, 1]);
        assert_eq!(stress[66].3, [0x15, 0x05, 0x01, 0x00]);
    }
}

#[test]
fn lin_that_was_broken_on_purpose() {
    for (name, good, short, without_pid) in
        [("wire-level/lin_malformed.csv", 4, 3, 3), ("wire-level/lin_malformed2.csv", 66, 66, 65)]
    {
        let Some(frames) = lin_frames(name) else { continue };
        let counts = [Kind::Data, Kind::Unanswered, Kind::Faulty].map(|kind| count(&frames, kind));
        assert_eq!(counts, [good, short, without_pid], "{name}");
    }
}

const FLEXRAY_COLUMNS: &str = "time=time_s:s, flexray_channel=channel, slot=frame_id:dec, cycle=cycle:dec, \
    indicators=indicators_bin, data=payload_hex:hex, header_crc_good=header_crc_ok, frame_crc_good=frame_crc_ok";

#[test]
fn flexray_on_the_bench() {
    for (name, data, null) in [("wire-level/flexray-coldstart.csv", 17, 15), ("wire-level/flexray-one-cycle.csv", 3, 0)]
    {
        let Some(path) = shared_recording(name) else { continue };
        let seen = frames(&path, None);
        assert_eq!(seen, frames(&path, Some(FLEXRAY_COLUMNS)));
        let lines = lines(&path);
        assert_eq!(lines.len(), seen.len());
        for (cells, (kind, medium, slot, payload)) in lines.iter().zip(&seen) {
            let Medium::FlexRay(FlexRay { cycle, on_b, sync, startup, faults, .. }) = *medium else {
                panic!("{medium:?}")
            };
            assert_eq!((slot.to_string(), cycle.to_string()), (cells[2].clone(), cells[3].clone()));
            assert_eq!((on_b, payload.len().to_string(), faults), (false, cells[5].clone(), Faults::NONE));
            let bits: Vec<bool> = cells[4].chars().map(|bit| bit == '1').collect();
            assert_eq!((*kind == Kind::Data, sync, startup), (bits[2], bits[3], bits[4]), "{cells:?}");
            // The two static slots have 16 bytes, those behind them what they need.
            assert!(*slot > 2 || payload.len() == 16, "{cells:?}");
        }
        assert_eq!([Kind::Data, Kind::Null].map(|kind| count(&seen, kind)), [data, null], "{name}");
    }
}

/// The same captures through a description: which frame is which, what the null frames leave out, and that slots of the dynamic segment
/// come when they have something to say.
#[test]
fn flexray_through_a_description() {
    let bench = "\
network bench flexray 10 Mbit/s, cycle 2.5 ms, static slots 2 of 16 bytes, dynamic up to slot 20
frame first on bench slot 1 { signal pattern in bytes 0..3 }
frame second on bench slot 2 from cycle 0 every 2nd channel a { signal pattern in bytes 0..3 }
frame event on bench slot 4 channel a { signal what in byte 0 }
frame of_seventh_cycle on bench slot 15 from cycle 7 every 8th { signal what in byte 3 }
";
    let checked = wirelore_lang::check_text("bench.lore", bench);
    assert_eq!(checked.diagnostics, []);
    let database = checked.database.expect("it is right");
    let Some(path) = shared_recording("wire-level/flexray-coldstart.csv") else { return };
    let readings = Readings::of(&database, Recording::open(&path, &Options::default()).expect("it can be opened"));
    // From the lines of the capture: in the cycles 9 to 15 slot 1 has data, in 10 to 15 slot 2.
    assert_eq!(readings.of_signal("first.pattern").len(), 7);
    assert_eq!(readings.of_signal("second.pattern").len(), 3, "cycles 10, 12 and 14");
    assert_eq!(readings.span("first.pattern"), (f64::from(0x0001_0203), f64::from(0x0001_0203)));
    // A cycle takes 2.5 ms; the clock of the bench is a little off.
    let times = &readings.times["first"];
    assert!(times.windows(2).all(|pair| (pair[1] - pair[0] - 0.0025).abs() < 1e-6), "{times:?}");
    assert_eq!(readings.of_signal("event.what"), [(0.025_112, 1.0)]);
    assert_eq!(readings.of_signal("of_seventh_cycle.what"), [(0.027_688_4, 4.0)]);
    let tally = &readings.tally;
    // Slot 2 in the cycles 11, 13 and 15; slots 11 and 8.
    assert_eq!((tally.read, tally.decoded, tally.null, tally.without_description), (32, 12, 15, 5));
}
