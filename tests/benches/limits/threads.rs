//! What a second thread saves: the CPU time of the busier one, and, where the machine has a core to spare, elapsed time.

use std::cell::RefCell;

use crate::chunks::KeptChunks;
use crate::clock::Meter;
use crate::race::{Race, Runner};
use crate::stage::Stage;
use crate::table::{Goal, Row, Work};

pub(crate) fn rows(stage: &Stage) -> Vec<Row> {
    let recordings = stage.whole();
    let kept = RefCell::new(KeptChunks::new());
    let mut race = Race::default();
    let mut pairs = Vec::new();
    for (layout, recorded) in [("pcapng", &recordings.pcapng), ("text", &recordings.text)] {
        let path = &recorded.path;
        for (what, meter) in [("CPU time of the busier", Meter::Busier), ("elapsed", Meter::Elapsed)] {
            let goal = match meter {
                Meter::Busier => Goal::AtMost { reach: 0.55, floor: 0.65 },
                _ => Goal::Stated,
            };
            let mut used = |threads| {
                let job = stage.job(threads);
                race.enter_with(meter, "values used", recordings.value_sum, move || job.used(path))
            };
            let pair: [Runner; 2] = [1, 2].map(&mut used);
            pairs.push((format!("two threads, {layout} to all signals, used at once: {what}"), pair, goal));
            let kept = &kept;
            let mut keep = |threads| {
                let job = stage.job(threads);
                let run = move || job.keep(path, &mut kept.borrow_mut());
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
