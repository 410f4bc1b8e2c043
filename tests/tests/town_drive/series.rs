//! The committed recordings, decoded once, as one row of values for each signal of each network.

use std::collections::HashMap;
use std::error::Error;
use std::io;
use std::sync::LazyLock;

use wirelore_decode::{Decoder, Event, FrameOutcome, Options, Reading, Session, Sink, Tally};
use wirelore_log::Recording;
use wirelore_model::{Database, SignalId};
use wirelore_tests::drive::{START_NS, demo_folder, kestrel};

/// One value of a signal.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Point {
    /// Seconds since the beginning of the recording.
    pub(crate) at_s: f64,
    /// The value; `None` where there is no reading.
    pub(crate) value: Option<f64>,
    /// Its state word.
    pub(crate) word: Option<String>,
}

/// One frame as it was recorded.
#[derive(Debug, Clone)]
pub(crate) struct Seen {
    pub(crate) at_ns: u64,
    pub(crate) network: String,
    pub(crate) frame: String,
    pub(crate) payload: Vec<u8>,
}

/// The decoded recording.
#[derive(Debug, Default)]
pub(crate) struct Drive {
    rows: HashMap<String, Vec<Point>>,
    pub(crate) frames: Vec<Seen>,
    /// Readings outside their described range.
    pub(crate) outside_range: Vec<String>,
    pub(crate) tally: Tally,
}

static DRIVE: LazyLock<Drive> = LazyLock::new(|| read(&["town-drive.pcapng"]).expect("the demo recording can be read"));
static OTHERS: LazyLock<Drive> = LazyLock::new(|| {
    let names = ["town-drive-others.pcapng", "town-drive-sound.csv", "town-drive-heater.csv"];
    read(&names).expect("the recordings of the other networks can be read")
});

/// The decoded recording of the two CAN networks.
pub(crate) fn drive() -> &'static Drive {
    &DRIVE
}

/// Those of the other networks, of the same minute.
pub(crate) fn others() -> &'static Drive {
    &OTHERS
}

impl Drive {
    /// All points of `network/frame.signal`.
    pub(crate) fn row(&self, name: &str) -> &[Point] {
        self.rows.get(name).unwrap_or_else(|| panic!("the recording has no {name}"))
    }

    /// The last value of a signal at a moment.
    pub(crate) fn value(&self, name: &str, at_s: f64) -> Option<f64> {
        self.last(name, at_s)?.value
    }

    /// The last state word of a signal at a moment.
    pub(crate) fn word(&self, name: &str, at_s: f64) -> Option<&str> {
        self.last(name, at_s)?.word.as_deref()
    }

    fn last(&self, name: &str, at_s: f64) -> Option<&Point> {
        let row = self.row(name);
        row[..row.partition_point(|point| point.at_s <= at_s)].last()
    }

    /// All frames of one name on one network.
    pub(crate) fn frames_named<'a>(&'a self, network: &'a str, frame: &'a str) -> impl Iterator<Item = &'a Seen> {
        self.frames.iter().filter(move |seen| seen.network == network && seen.frame == frame)
    }
}

struct Collector<'a> {
    database: &'a Database,
    drive: Drive,
}

impl Sink for Collector<'_> {
    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let (network, frame) =
            (&self.database.networks[event.network.index()], &self.database.frames[event.frame.index()]);
        let name = format!("{}/{}.{}", network.label.name, frame.label.name, frame.signals[signal.index()].label.name);
        let at_s = since_start_ns(event) as f64 / 1e9;
        if reading.outside_range {
            self.drive.outside_range.push(format!("{name} at {at_s} s: {:?}", reading.value));
        }
        let point = Point { at_s, value: reading.value.number(), word: reading.word.map(str::to_owned) };
        self.drive.rows.entry(name).or_default().push(point);
    }

    fn end(&mut self, event: &Event<'_>, _outcome: &FrameOutcome) -> io::Result<()> {
        self.drive.frames.push(Seen {
            at_ns: since_start_ns(event),
            network: self.database.networks[event.network.index()].label.name.clone(),
            frame: self.database.frames[event.frame.index()].label.name.clone(),
            payload: event.payload.to_vec(),
        });
        Ok(())
    }
}

fn since_start_ns(event: &Event<'_>) -> u64 {
    let time_ns = event.time_ns.expect("every frame of the recording has a time");
    (time_ns as u64).checked_sub(START_NS).expect("no frame comes before the beginning")
}

fn read(names: &[&str]) -> Result<Drive, Box<dyn Error>> {
    let database = kestrel()?;
    let decoder = Decoder::new(&database)?;
    let mut session = Session::new(&decoder, &Options::default())?;
    let mut collector = Collector { database: &database, drive: Drive::default() };
    for name in names {
        let mut recording = Recording::open(&demo_folder().join(name), &wirelore_log::Options::default())?;
        session.run(&mut recording, &mut collector)?;
    }
    let tally = session.tally().clone();
    Ok(Drive { tally, ..collector.drive })
}
