//! A check for the bench: whether every answer follows its request in time. For the demo van: when the gearbox asks
//! for another torque, the engine says within 150 ms whether it grants that.
//!
//! ```text
//! cargo run --example answer_in_time -- schema/demo/kestrel.lore schema/demo/town-drive.pcapng
//! cargo run --example answer_in_time -- van.lore bench.pcapng request.wanted answer.given 150
//! ```
//!
//! Ends with 1 where an answer was late or did not come.

use std::error::Error;
use std::process::ExitCode;

use wirelore::decode::{Decoder, Event, Options, Reading, Selection, Session, Setup};
use wirelore::log::Recording;
use wirelore::model::{Database, FrameId, SignalId};

/// Follows requests: when the one signal leaves its rest (0), the other one must leave its own in time.
#[derive(Default)]
struct Check {
    within_ns: i64,
    /// Since when an answer is waited for.
    waits_since_ns: Option<i64>,
    asks: bool,
    answered: u32,
    slowest_ns: i64,
    faults: Vec<String>,
}

impl Check {
    fn request(&mut self, asks: bool, now_ns: i64) {
        self.look_at_the_clock(now_ns);
        if asks && !self.asks {
            self.waits_since_ns = Some(now_ns);
        }
        self.asks = asks;
    }

    fn answer(&mut self, answers: bool, now_ns: i64) {
        self.look_at_the_clock(now_ns);
        if let Some(since_ns) = self.waits_since_ns.take_if(|_| answers) {
            self.answered += 1;
            self.slowest_ns = self.slowest_ns.max(now_ns - since_ns);
        }
    }

    /// An answer that is waited for too long is a fault, once.
    fn look_at_the_clock(&mut self, now_ns: i64) {
        if let Some(since_ns) = self.waits_since_ns.take_if(|since_ns| now_ns - *since_ns > self.within_ns) {
            self.faults.push(format!("no answer in time to the request at {:.3} s", seconds(since_ns)));
        }
    }
}

fn seconds(time_ns: i64) -> f64 {
    time_ns as f64 / 1e9
}

/// The one signal that a pattern names.
fn signal(database: &Database, pattern: &str) -> Result<(FrameId, SignalId), Box<dyn Error>> {
    let (frame, signal) = pattern.split_once('.').ok_or_else(|| format!("\"{pattern}\" is not FRAME.SIGNAL"))?;
    let (id, frame) = database.frame_named(frame).ok_or_else(|| format!("there is no frame `{frame}`"))?;
    let (signal, _) =
        frame.signals_named(signal).next().ok_or_else(|| format!("there is no signal `{signal}` in it"))?;
    Ok((id, signal))
}

fn main() -> Result<ExitCode, Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let given = |at: usize, usual: &str| arguments.get(at).map_or(usual, String::as_str).to_owned();
    let database = wirelore::open(given(0, "schema/demo/kestrel.lore"))?;
    let mut recording = Recording::open(given(1, "schema/demo/town-drive.pcapng").as_ref(), &Default::default())?;
    let request = signal(&database, &given(2, "shift_request.intervention"))?;
    let answer = signal(&database, &given(3, "engine_torque.answer"))?;
    let within_ms: i64 = given(4, "150").parse()?;

    let setup = Setup { selection: Selection::of([request, answer]), ..Setup::default() };
    let decoder = Decoder::with(&database, &setup)?;
    let mut check = Check { within_ns: within_ms * 1_000_000, ..Check::default() };
    Session::new(&decoder, &Options::default())?.run(
        &mut recording,
        &mut |event: &Event<'_>, signal: SignalId, reading: Reading<'_>| {
            let (Some(value), Some(now_ns)) = (reading.value.number(), event.since_first_ns()) else { return };
            match (event.frame, signal) {
                it if it == request => check.request(value != 0.0, now_ns),
                it if it == answer => check.answer(value != 0.0, now_ns),
                _ => {}
            }
        },
    )?;
    println!("{} requests answered, the slowest after {:.1} ms", check.answered, check.slowest_ns as f64 / 1e6);
    for fault in &check.faults {
        println!("{fault}");
    }
    Ok(if check.faults.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}
