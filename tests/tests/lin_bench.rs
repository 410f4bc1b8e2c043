//! Bench captures of LIN from end to end: values, checksums, headers without an answer, damage. Skipped aloud where they are not there.

use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_model::SeenId;
use wirelore_tests::readings::{Readings, shared_recording};

/// The frames of all captures; `kind` is their checksum.
fn bench(kind: &str) -> String {
    format!(
        "network bench lin 19.2 kbit/s\necu tester leads bench\n\
         frame four on bench id 0x01, {kind} {{ signal first in bytes 0..1 }}\n\
         frame six on bench id 0x02, {kind} {{ length 6\nsignal last in byte 5 }}\n\
         frame eight on bench id 0x03, {kind} {{ length 8\nsignal last in byte 7 }}\n\
         frame two on bench id 0x23, {kind} {{ length 2\nsignal both in bytes 0..1 }}\n"
    )
}

fn decoded(name: &str, kind: &str) -> Option<Readings> {
    let path = shared_recording(&format!("wire-level/{name}"))?;
    let database = check_text("bench.lore", &bench(kind)).database.expect("no mistakes");
    let recording = Recording::open(&path, &wirelore_log::Options::default()).expect("it can be opened");
    let readings = Readings::of(&database, recording);
    assert_eq!(readings.tally.read, readings.tally.sum_of_parts());
    Some(readings)
}

/// The values and counts are facts that come with the captures.
#[test]
fn frames_of_the_bench_are_decoded_and_their_checksums_are_right() {
    if let Some(single) = decoded("lin_single_frame.csv", "enhanced") {
        assert_eq!(single.span("four.first"), (4369.0, 4369.0), "11 11");
        assert_eq!((single.tally.decoded, single.tally.lin.right_checksums), (1, 1));
    }
    if let Some(burst) = decoded("lin_burst.csv", "enhanced") {
        assert_eq!(burst.span("two.both"), (4386.0, 4386.0), "11 22");
        assert_eq!((burst.tally.decoded, burst.tally.lin.right_checksums), (10, 10));
        let times = &burst.times["two"];
        let gaps: Vec<f64> = times.windows(2).map(|pair| (pair[1] - pair[0]) * 1e3).collect();
        assert!(gaps.len() == 9 && gaps.iter().all(|gap| (gap - 3.94).abs() < 0.006), "{gaps:?} ms");
    }
    if let Some(stress) = decoded("lin_stress.csv", "enhanced") {
        let tally = &stress.tally;
        assert_eq!((tally.decoded, tally.unanswered, tally.faulty), (58, 8, 1));
        assert_eq!((tally.lin.right_checksums, tally.lin.other_checksums), (58, 0));
        let unanswered: Vec<_> = tally.lin.unanswered().into_iter().map(|(_, id, count)| (id, count)).collect();
        assert_eq!(unanswered, [(SeenId::Lin(3), 5), (SeenId::Lin(1), 3)]);
        assert_eq!(stress.of_signal("eight.last").len(), 31);
    }
    for (name, good, without_answer, damaged) in [("lin_malformed.csv", 4, 3, 3), ("lin_malformed2.csv", 66, 66, 65)] {
        let Some(malformed) = decoded(name, "enhanced") else { continue };
        let tally = &malformed.tally;
        assert_eq!((tally.decoded, tally.unanswered, tally.faulty), (good, without_answer, damaged), "{name}");
    }
}

/// The same frames under a description that is wrong about their checksum: the values are still there, and it is told.
#[test]
fn checksums_of_the_other_kind_are_told() {
    let Some(stress) = decoded("lin_stress.csv", "classic") else { return };
    let tally = &stress.tally;
    assert_eq!((tally.decoded, tally.faulty), (58, 1));
    assert_eq!((tally.lin.right_checksums, tally.lin.other_checksums), (0, 58));
    let counts: Vec<_> = tally.lin.other_kinds().into_iter().map(|(_, _, count)| count).collect();
    assert_eq!(counts, [31, 18, 9], "frames eight, six, four");
}
