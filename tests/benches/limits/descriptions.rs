//! A large description to a checked database, against reading the file and checking that it is UTF-8.

use std::fs;

use wirelore_lang::check_text;
use wirelore_tests::workload::{Identifiers, Vehicle};

use crate::race::Race;
use crate::stage::Stage;
use crate::table::{Goal, Row, Work};

/// Described frames, of twelve signals each.
const FRAMES: u32 = 5_000;

pub(crate) fn rows(stage: &Stage) -> Vec<Row> {
    let vehicle = Vehicle::<12>::new(FRAMES, Identifiers::Standard);
    let text = vehicle.description();
    let path = stage.path("large.lore");
    fs::write(&path, &text).expect("the temporary folder can be written to");
    let signals = u64::from(FRAMES) * 12;

    let mut race = Race::default();
    let check = race.enter("check", signals, || {
        let database = check_text("large.lore", &text).database.expect("the workload has no mistakes");
        database.frames.iter().map(|frame| frame.signals.len() as u64).sum()
    });
    let read = race.enter("read", text.len() as u64, || {
        fs::read_to_string(&path).expect("the file was just written").len() as u64
    });
    let times = race.run(stage.rounds);
    let work = Work { item: "run", items: 1, bytes: text.len() as u64 };
    let megabytes = text.len() as f64 / 1e6;
    let measure = format!("check of {FRAMES} frames, {signals} signals, {megabytes:.1} MB");
    let goal = Goal::Milliseconds { reach: 12.0, floor: 30.0 };
    vec![Row::pair(work, &times, (&measure, check), ("reading the file, UTF-8 checked", read), goal)]
}
