//! What a second thread can save on this machine at most: the sum of a file's words by one thread and by two.

use std::thread;

use crate::clock::Meter;
use crate::race::Race;
use crate::recordings::sum_words;
use crate::stage::Stage;
use crate::table::{Goal, Row, Work};

pub(crate) fn rows(stage: &Stage) -> Vec<Row> {
    let recordings = stage.whole();
    let bytes: &[u8] = &recordings.pcapng.map;
    let (front, back) = bytes.split_at(bytes.len() / 16 * 8);
    let sum = sum_words(bytes);

    let mut race = Race::default();
    let one = race.enter("one thread", sum, || sum_words(bytes));
    let two = race.enter_with(Meter::Busier, "two threads", sum, || {
        thread::scope(|scope| {
            let other = scope.spawn(|| sum_words(back));
            sum_words(front).wrapping_add(other.join().expect("adding does not fail"))
        })
    });
    let times = race.run(stage.rounds);
    let work = Work { item: "frame", items: recordings.frames, bytes: bytes.len() as u64 };
    let measure = "two threads, sum of the file's bytes: CPU time of the busier";
    vec![Row::pair(work, &times, (measure, two), ("one thread", one), Goal::Stated)]
}
