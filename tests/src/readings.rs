//! A whole recording decoded into memory, for checks that look at it from outside.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use wirelore_decode::{Decoder, Event, Options, Reading, Session, Sink, Tally, Value};
use wirelore_log::Recording;
use wirelore_model::{Database, SignalId};

/// A time in seconds, and a number.
pub type Point = (f64, f64);

/// What a recording says through a description.
#[derive(Debug, Default)]
pub struct Readings {
    /// By `frame.signal`: every number, in the order of the recording.
    pub numbers: BTreeMap<String, Vec<Point>>,
    /// By `frame.signal`: every text.
    pub texts: BTreeMap<String, Vec<String>>,
    /// By `frame.signal`: how many readings were no numbers.
    pub without_number: BTreeMap<String, u64>,
    /// By frame (of a parameter group `frame from 0x0B`, of a run of identifiers `frame from 0x7E8`): when it came, in seconds.
    pub times: BTreeMap<String, Vec<f64>>,
    /// How many numbers lay outside their stated range.
    pub outside_range: u64,
    /// What became of the frames.
    pub tally: Tally,
}

impl Readings {
    /// Decodes a recording.
    ///
    /// # Panics
    /// Where the recording or the description cannot be used: this is for checks.
    #[must_use]
    pub fn of(database: &Database, mut recording: Recording) -> Self {
        let decoder = Decoder::new(database).expect("the description can be decoded");
        let mut session = Session::new(&decoder, &Options::default()).expect("a session begins");
        let mut sink = Gather { database, readings: Self::default() };
        session.run(&mut recording, &mut sink).expect("the recording can be read");
        let mut readings = sink.readings;
        readings.tally = session.tally().clone();
        readings
    }

    /// The numbers of a signal.
    ///
    /// # Panics
    /// Where it has none.
    #[must_use]
    pub fn of_signal(&self, name: &str) -> &[Point] {
        self.numbers.get(name).unwrap_or_else(|| panic!("{name} has no number in this recording"))
    }

    /// The least and the greatest number of a signal.
    #[must_use]
    pub fn span(&self, name: &str) -> (f64, f64) {
        let values = self.of_signal(name).iter().map(|point| point.1);
        values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)))
    }
}

struct Gather<'d> {
    database: &'d Database,
    readings: Readings,
}

impl Gather<'_> {
    fn seconds(event: &Event<'_>) -> f64 {
        event.time_ns.map_or(f64::NAN, |time_ns| time_ns as f64 / 1e9)
    }
}

impl Sink for Gather<'_> {
    fn begin(&mut self, event: &Event<'_>) {
        let frame = &self.database.frames[event.frame.index()].label.name;
        let key = event.source.map_or_else(|| frame.clone(), |source| format!("{frame} from {source}"));
        self.readings.times.entry(key).or_default().push(Self::seconds(event));
    }

    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let frame = &self.database.frames[event.frame.index()];
        let name = format!("{}.{}", frame.label.name, frame.signals[signal.index()].label.name);
        self.readings.outside_range += u64::from(reading.outside_range);
        match reading.value {
            Value::Number(_) | Value::Integer(_) => {
                let number = reading.value.number().expect("these are numbers");
                self.readings.numbers.entry(name).or_default().push((Self::seconds(event), number));
            }
            other => {
                if let Value::Text(text) = other {
                    self.readings.texts.entry(name.clone()).or_default().push(text.into_owned());
                }
                *self.readings.without_number.entry(name).or_default() += 1;
            }
        }
    }
}

/// A recording that lies beside the checkout and is not part of the project; says so where it is not there.
#[must_use]
pub fn shared_recording(name: &str) -> Option<PathBuf> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../shared/data").join(name);
    if path.exists() {
        return Some(path);
    }
    eprintln!("skipped: the recording ../shared/data/{name} is not there");
    None
}
