//! What a second thread saves: the CPU time of the busier one, and, where the machine has a core to spare, elapsed time. Beside it, what it saves
//! where there is nothing to share but the memory: adding up the words of the mapped file. And what two threads cost each other that have
//! nothing to do with each other: half of that is the least that a second thread can bring here.

use std::cell::RefCell;

use crate::chunks::KeptChunks;
use crate::clock::Meter;
use crate::columns_out::{Job, Log};
use crate::machine::Stores;
use crate::race::{Race, Runner};
use crate::recordings::sum_words;
use crate::stage::Stage;
use crate::table::{Goal, Row, Work};

pub(crate) fn rows(stage: &Stage) -> Vec<Row> {
    let recordings = stage.whole();
    let kept = RefCell::new(KeptChunks::new());
    let mut race = Race::default();
    let mut pairs = Vec::new();
    let map: &[u8] = &recordings.pcapng.map;
    let sum = sum_words(map);
    let mut add = |threads| race.enter_with(Meter::Busier, "words", sum, move || sum_shared(map, threads));
    let pair: [Runner; 2] = [1, 2].map(&mut add);
    pairs.push((
        "two threads, adding up the words of the mapped file: CPU time of the busier".into(),
        pair,
        Goal::Stated,
    ));
    let alone = Log::Memory(&recordings.pcapng.map);
    let mut side_by_side = |runs| {
        let job = stage.job(1);
        race.enter_with(Meter::Busier, "values used", recordings.value_sum, move || used_side_by_side(job, alone, runs))
    };
    let pair: [Runner; 2] = [1, 2].map(&mut side_by_side);
    pairs.push((
        "two threads, each with a pcapng of its own to all signals, used at once: CPU time of the busier".into(),
        pair,
        Goal::Stated,
    ));
    let logs = [("pcapng", &recordings.pcapng), ("text", &recordings.text)].map(|(layout, recorded)| {
        [(layout.to_owned(), Log::Memory(&recorded.map)), (format!("{layout} file"), Log::File(&recorded.path))]
    });
    for (layout, log) in logs.into_iter().flatten() {
        for (what, meter) in [("CPU time of the busier", Meter::Busier), ("elapsed", Meter::Elapsed)] {
            let goal = match meter {
                Meter::Busier => Goal::AtMost { reach: 0.55, floor: 0.65 },
                _ => Goal::Stated,
            };
            let mut used = |threads| {
                let job = stage.job(threads);
                race.enter_with(meter, "values used", recordings.value_sum, move || job.used(log))
            };
            let pair: [Runner; 2] = [1, 2].map(&mut used);
            pairs.push((format!("two threads, {layout} to all signals, used at once: {what}"), pair, goal));
            let kept = &kept;
            let mut keep = |threads| {
                let job = stage.job(threads);
                let run = move || job.keep(log, &mut kept.borrow_mut(), Stores::Streaming);
                race.enter_with(meter, "values kept", recordings.frames, run)
            };
            let pair: [Runner; 2] = [1, 2].map(&mut keep);
            pairs.push((format!("two threads, {layout} to all double columns kept: {what}"), pair, goal));
        }
    }
    let times = race.run(stage.rounds);
    let work = Work { item: "frame", items: recordings.frames, bytes: 0 };
    let row = |(measure, [one, two], goal): (String, [Runner; 2], Goal)| {
        Row::pair(work, &times, (&measure, two), ("one thread", one), goal)
    };
    pairs.into_iter().map(row).collect()
}

/// The words added up by so many threads, each its part.
fn sum_shared(bytes: &[u8], threads: usize) -> u64 {
    let part = bytes.len().div_ceil(threads).next_multiple_of(8);
    let (own, others) = bytes.split_at(part.min(bytes.len()));
    std::thread::scope(|scope| {
        let others: Vec<_> = others.chunks(part).map(|other| scope.spawn(|| sum_words(other))).collect();
        let own = sum_words(own);
        others.into_iter().fold(own, |sum, other| sum.wrapping_add(other.join().expect("sums do not panic")))
    })
}

/// All values of a recording used in so many threads at the same time, by each of them; what they add up to.
fn used_side_by_side(job: Job<'_>, log: Log<'_>, runs: usize) -> u64 {
    std::thread::scope(|scope| {
        let others: Vec<_> = (1..runs).map(|_| scope.spawn(move || job.used(log))).collect();
        let own = job.used(log);
        assert!(others.into_iter().all(|other| other.join().expect("a run does not panic") == own));
        own
    })
}
