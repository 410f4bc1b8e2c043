//! Recordings to frames, to values that are used at once, and to columns that are kept; against the least that reading can cost: adding up
//! the bytes of a pcapng recording, counting the lines of a text. All of them have the same memory before them, a mapped file; what it takes
//! to open and map one is stated beside.

use std::cell::RefCell;
use std::num::NonZero;
use std::process::Command;

use wirelore_decode::Decoder;
use wirelore_lang::check_text;
use wirelore_log::{Frame, Receive};
use wirelore_tests::workload::START_NS;

use crate::arguments::Fresh;
use crate::chunks::KeptChunks;
use crate::clock::{self, Meter};
use crate::columns_out::{Job, Log, open};
use crate::kept::Kept;
use crate::machine::{Mapped, Stores};
use crate::race::{Race, Runner};
use crate::spread::Spread;
use crate::stage::{Recorded, Stage, add_frame};
use crate::table::{Goal, Row, Work};

/// What is to be reached by frames, by values used, and by values kept.
struct Goals([(f64, f64); 3]);

pub(crate) fn pcapng(stage: &Stage) -> Vec<Row> {
    let goals = Goals([(1.1, 1.5), (2.0, 2.5), (2.5, 3.5)]);
    let rival = ("vector sum of the file (words)", sum_words as fn(&[u8]) -> u64);
    rows(stage, &stage.whole().pcapng, ("pcapng", START_NS), rival, &goals)
}

pub(crate) fn text(stage: &Stage) -> Vec<Row> {
    let goals = Goals([(2.3, 3.0), (3.3, 4.0), (4.0, 5.0)]);
    let rival = ("newlines counted with memchr", count_lines as fn(&[u8]) -> u64);
    rows(stage, &stage.whole().text, ("text", 0), rival, &goals)
}

fn rows(
    stage: &Stage,
    recorded: &Recorded,
    (layout, start_ns): (&str, i64),
    (rival, least): (&str, fn(&[u8]) -> u64),
    goals: &Goals,
) -> Vec<Row> {
    let recordings = stage.whole();
    let job = stage.job(1);
    let kept = RefCell::new(KeptChunks::new());
    let expected = Kept::expected(&stage.vehicle, recordings.frames, start_ns);
    // The second time is the first in memory that was used before.
    for stores in [Stores::Ordinary, Stores::Streaming] {
        job.keep(Log::Memory(&recorded.map), &mut kept.borrow_mut(), stores);
        kept.borrow().assert_same(&expected);
    }

    let kept = &kept;
    let mut race = Race::default();
    let sum = least(&recorded.map);
    let rival = (rival, race.enter(rival, sum, || least(&recorded.map)));
    let mapped = race.enter("through a fresh map", sum, || least(&Mapped::open(&recorded.path)));
    let [from_memory, from_file] = [Log::Memory(&recorded.map), Log::File(&recorded.path)].map(|log| {
        let keep = move |stores| job.keep(log, &mut kept.borrow_mut(), stores);
        [
            race.enter("frames", recorded.frame_sum, move || frames(log)),
            race.enter("values used", recordings.value_sum, move || job.used(log)),
            race.enter("values kept", recordings.frames, move || keep(Stores::Streaming)),
            race.enter("values kept by ordinary stores", recordings.frames, move || keep(Stores::Ordinary)),
        ]
    });
    let times = race.run(stage.rounds);

    let work = Work { item: "frame", items: recordings.frames, bytes: recorded.map.len() as u64 };
    let whats = [
        "to checked frames",
        "to all signals, used at once",
        "to all double columns kept, reused memory",
        "to all double columns kept, reused memory, ordinary stores",
    ];
    let goals = goals.0.map(|(reach, floor)| Goal::AtMost { reach, floor }).into_iter().chain([Goal::Stated]);
    let pair = |measure: &str, runner: Runner, goal| Row::pair(work, &times, (measure, runner), rival, goal);
    let of_memory = whats.iter().zip(from_memory).zip(goals);
    let mut rows: Vec<Row> =
        of_memory.map(|((what, runner), goal)| pair(&format!("{layout} {what}"), runner, goal)).collect();
    for (what, runner) in whats.iter().zip(from_file) {
        rows.push(pair(&format!("{layout} file, opened and mapped, {what}"), runner, Goal::Stated));
    }
    let measure = format!("{layout} file, opened and mapped, and the {}", rival.0);
    rows.push(pair(&measure, mapped, Goal::Stated));
    let first = first_runs(stage, recorded);
    let ratio = first.median / times.of(rival.1).median;
    rows.push(
        Row::alone(work, &format!("{layout} to all double columns kept, first run in a fresh process"), first)
            .with_note(format!("{ratio:.1} x the {}", rival.0)),
    );
    rows
}

/// The bytes as words of eight, added up: loads and one addition each, which compilers turn into vectors.
pub(crate) fn sum_words(bytes: &[u8]) -> u64 {
    let (words, rest) = bytes.as_chunks::<8>();
    let sum = words.iter().fold(0_u64, |sum, word| sum.wrapping_add(u64::from_le_bytes(*word)));
    rest.iter().fold(sum, |sum, byte| sum.wrapping_add(u64::from(*byte)))
}

fn count_lines(bytes: &[u8]) -> u64 {
    memchr::memchr_iter(b'\n', bytes).count() as u64
}

fn frames(log: Log<'_>) -> u64 {
    let mut recording = open(log);
    let mut added = Added(0);
    while recording.stretch(STRETCH_BYTES, &mut added).expect("the workload is whole") {}
    added.0
}

/// As much of a log as a session reads at a time.
const STRETCH_BYTES: usize = 256 * 1024;

/// Adds up all fields of all frames.
struct Added(u64);

impl Receive for Added {
    #[inline(always)]
    fn frame(&mut self, frame: &Frame<'_>) {
        add_frame(&mut self.0, frame.time_ns.unwrap_or_default(), frame.channel.0, frame.id, frame.payload);
    }
}

/// CPU time of keeping all columns, in nanoseconds, each time in a process that has touched no memory for them yet.
fn first_runs(stage: &Stage, recorded: &Recorded) -> Spread {
    let once = || -> f64 {
        let program = std::env::current_exe().expect("this program has a path");
        let paths = [&stage.description(), &recorded.path];
        let output = Command::new(program).arg("--fresh").args(paths).output().expect("this program starts");
        let text = String::from_utf8(output.stdout).expect("it prints a number");
        text.trim().parse().expect("it prints a number")
    };
    Spread::of((0..stage.rounds.min(5)).map(|_| once()))
}

/// What the child process does: prepares everything but the columns, and tells the nanoseconds of one run.
pub(crate) fn first_run(job: &Fresh) -> f64 {
    let text = std::fs::read_to_string(&job.description).expect("the description was just written");
    let database = check_text("workload.lore", &text).database.expect("the workload has no mistakes");
    let decoder = Decoder::new(&database).expect("the workload can be decoded");
    let columns = Job { database: &database, decoder: &decoder, threads: NonZero::<usize>::MIN };
    let begin = clock::Reading::now();
    let rows = columns.keep(Log::File(&job.recording), &mut KeptChunks::new(), Stores::Ordinary);
    let elapsed_ns = begin.elapsed_ns(Meter::Process);
    assert!(rows > 0, "the workload has frames");
    elapsed_ns
}
