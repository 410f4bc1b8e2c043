//! The gateway: what it passes on between the two recorded networks, as the routes of the description say.

use wirelore_model::{Database, FrameId, Identifier, NetworkId, Pace, Passed};

use super::DriveError;
use super::bus::Message;
use super::content::{Value, Values};
use super::encoder::Encoder;
use super::world::STEP_NS;
use crate::noise::Noise;

/// The time from the last bit of a frame to its copy being ready. At least one step, so that no copy lies in a bus's past.
const FASTEST_NS: u64 = STEP_NS + 200_000;
const SLOWEST_NS: u64 = 3_600_000;

/// What a route makes of a frame that it has heard.
#[derive(Debug)]
enum Made {
    /// The same bytes.
    Copy,
    /// Some of its signals in a frame of the gateway's own: pairs of names, there and here.
    Repacked { target: FrameId, signals: Vec<(String, String)> },
}

/// One route between the two networks.
#[derive(Debug)]
struct Way {
    source: FrameId,
    from: NetworkId,
    to: NetworkId,
    id: u16,
    made: Made,
    pace: Pace,
    heard: u64,
    due_ns: u64,
}

/// The gateway.
#[derive(Debug)]
pub(crate) struct Gateway {
    ways: Vec<Way>,
    noise: Noise,
}

impl Gateway {
    /// The gateway of a description, as far as it concerns these networks.
    pub(crate) fn new(database: &Database, networks: &[NetworkId], seed: u64) -> Self {
        let mut ways: Vec<Way> = Vec::new();
        for route in
            database.routes.iter().filter(|route| networks.contains(&route.from) && networks.contains(&route.to))
        {
            let (source, target) = match &route.what {
                Passed::Frame(frame) => (*frame, *frame),
                Passed::Signal { from_frame, from_signal, to_frame, to_signal } => {
                    let name = |frame: FrameId, signal: usize| {
                        database.frames[frame.index()].signals[signal].label.name.clone()
                    };
                    let pair = (name(*from_frame, from_signal.index()), name(*to_frame, to_signal.index()));
                    let known = ways.iter_mut().find_map(|way| match &mut way.made {
                        Made::Repacked { target, signals } if target == to_frame => Some(signals),
                        _ => None,
                    });
                    if let Some(signals) = known {
                        signals.push(pair);
                        continue;
                    }
                    let made = Made::Repacked { target: *to_frame, signals: vec![pair] };
                    ways.extend(Way::new(database, *from_frame, *to_frame, route, made));
                    continue;
                }
                Passed::Identifiers { .. } | Passed::All { .. } => continue,
            };
            ways.extend(Way::new(database, source, target, route, Made::Copy));
        }
        Self { ways, noise: Noise::new(seed) }
    }

    /// What it sends after it has heard a frame, and on which network.
    ///
    /// # Errors
    /// When a value does not fit where it is repacked.
    pub(crate) fn hear(
        &mut self,
        heard: &Message,
        on: NetworkId,
        encoder: &Encoder<'_>,
    ) -> Result<Vec<(NetworkId, Message)>, DriveError> {
        let mut sent = Vec::new();
        for way in self.ways.iter_mut().filter(|way| way.source == heard.frame && way.from == on) {
            if !way.is_due(heard.time_ns) {
                continue;
            }
            let (frame, payload) = match &way.made {
                Made::Copy => (heard.frame, heard.payload.clone()),
                Made::Repacked { target, signals } => {
                    (*target, encoder.payload(*target, &repacked(signals, &heard.values))?)
                }
            };
            let time_ns = heard.time_ns + FASTEST_NS + self.noise.up_to(SLOWEST_NS - FASTEST_NS);
            sent.push((way.to, Message { frame, id: way.id, payload, values: Values::new(), time_ns }));
        }
        Ok(sent)
    }
}

fn repacked<'a>(signals: &'a [(String, String)], values: &Values) -> Vec<(&'a str, Value)> {
    let value_of = |source: &str| values.iter().find(|(name, _)| *name == source).map(|(_, value)| *value);
    signals.iter().filter_map(|(source, target)| Some((target.as_str(), value_of(source)?))).collect()
}

impl Way {
    fn new(
        database: &Database,
        source: FrameId,
        target: FrameId,
        route: &wirelore_model::Route,
        made: Made,
    ) -> Option<Self> {
        let appearance = database.frames[target.index()].seen_on.iter().find(|seen| seen.network == route.to)?;
        let Identifier::Can { first, .. } = appearance.identifier else {
            return None;
        };
        let id = u16::try_from(first).ok()?;
        Some(Self { source, from: route.from, to: route.to, id, made, pace: route.pace, heard: 0, due_ns: 0 })
    }

    /// Whether what was heard at `time_ns` is passed on; a slow clock waits for the next fresh frame.
    fn is_due(&mut self, time_ns: u64) -> bool {
        self.heard += 1;
        match self.pace {
            Pace::Each => true,
            Pace::Nth(n) => self.heard.is_multiple_of(u64::from(n)),
            Pace::Every(period) => {
                let due = time_ns >= self.due_ns;
                if due {
                    self.due_ns = (self.due_ns + period.0).max(time_ns + period.0 / 2);
                }
                due
            }
        }
    }
}
