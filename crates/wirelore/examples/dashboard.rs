//! A dashboard of one line: the last value of some signals, renewed while frames come in on standard input.
//!
//! ```text
//! some-logger | cargo run --example dashboard -- van.lore vehicle_speed.speed engine_state.speed
//! cargo run --example dashboard -- schema/demo/kestrel.lore wheel_speeds.front_left < schema/demo/town-drive.pcapng
//! ```
//!
//! For the bench: never drive and read a screen.

use std::error::Error;
use std::io::{self, Write};

use wirelore::decode::{Decoder, Event, FrameOutcome, Options, Reading, Selection, Session, Setup, Sink};
use wirelore::log::Recording;
use wirelore::model::{Database, FrameId, SignalId};

/// The line is written anew when so much recorded time has passed.
const EVERY_NS: i64 = 200_000_000;

struct Dashboard<'a> {
    decoder: &'a Decoder,
    /// Which signal, its name, and what it said last.
    shown: Vec<(FrameId, SignalId, String, String)>,
    written_ns: Option<i64>,
}

impl<'a> Dashboard<'a> {
    fn new(database: &Database, decoder: &'a Decoder, selection: &Selection) -> Self {
        let frames = database.frames.iter().zip((0..).map(FrameId));
        let signals = frames.flat_map(|(frame, id)| (0..frame.signals.len() as u32).map(move |at| (id, SignalId(at))));
        let shown = signals
            .filter(|(frame, signal)| selection.wants(*frame, *signal))
            .map(|(frame, signal)| (frame, signal, database[frame][signal].label.name.clone(), "-".to_owned()));
        Self { decoder, shown: shown.collect(), written_ns: None }
    }

    fn line(&self) -> String {
        let parts = self.shown.iter().map(|(_, _, name, last)| format!("{name} {last}"));
        parts.collect::<Vec<_>>().join("   ")
    }
}

impl Sink for Dashboard<'_> {
    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let Some(shown) = self.shown.iter_mut().find(|it| (it.0, it.1) == (event.frame, signal)) else { return };
        let unit = self.decoder.unit(event.frame, signal).map_or("", |unit| unit.as_str());
        let state = reading.state(None).to_string();
        // Words come from the description and texts from the vehicle: neither may act on the terminal.
        let said = if state.is_empty() { format!("{} {unit}", reading.value) } else { state };
        shown.3 = said.chars().filter(|character| !character.is_control()).collect();
    }

    fn end(&mut self, event: &Event<'_>, _: &FrameOutcome) -> io::Result<()> {
        let is_due = match (event.time_ns, self.written_ns) {
            (Some(now), Some(before)) => now.saturating_sub(before) >= EVERY_NS,
            _ => true,
        };
        if is_due {
            self.written_ns = event.time_ns;
            let mut to = io::stdout().lock();
            write!(to, "\r{}  {}", event.seconds(), self.line())?;
            to.flush()?;
        }
        Ok(())
    }
}

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let database = wirelore::open(arguments.next().ok_or("give a description, and the signals to show")?)?;
    let patterns = arguments.collect::<Vec<_>>().join(",");
    let selection = if patterns.is_empty() { Selection::all() } else { Selection::matching(&database, &patterns)? };
    let decoder = Decoder::with(&database, &Setup { selection: selection.clone(), ..Setup::default() })?;
    let mut dashboard = Dashboard::new(&database, &decoder, &selection);
    let mut frames = Recording::from_reader(Box::new(io::stdin()), "standard input", &Default::default())?;
    Session::new(&decoder, &Options::default())?.run(&mut frames, &mut dashboard)?;
    println!("\r{}", dashboard.line());
    Ok(())
}
