//! How late each frame of CAN can get, and the way of those that gateways pass on.
//!
//! A frame that is passed on reaches its second network as late as it was on the first one, and a time in the gateway later. That is its
//! jitter there. Networks can pass frames to each other both ways, so that each depends on the other: they are calculated in turns,
//! beginning without any lateness, until nothing changes any more.

mod network;

use wirelore_model::{Database, FrameId, Nanoseconds, NetworkId, Pace, RouteId};

use super::networks::NetworkLoad;
use super::stream::Stream;
use crate::response::{ClockError, NoBound};
use network::Question;

/// How late the frames of one network can get.
#[derive(Debug, Clone, PartialEq)]
pub struct NetworkLateness {
    /// By stream, in the order of [`NetworkLoad::streams`].
    pub streams: Vec<Lateness>,
    /// Where some can miss their deadline: whether other identifiers would do, if that was found out.
    pub another_order: Option<bool>,
}

/// How late one stream can get.
#[derive(Debug, Clone, PartialEq)]
pub struct Lateness {
    /// The longest time from the event to the end of the frame. For a frame that a gateway passes on as it comes, the event is the one on
    /// its first network.
    pub worst: Result<Nanoseconds, NoBound>,
    /// How late it comes to this network, where a gateway passes it on.
    pub arrives: Option<Nanoseconds>,
    /// What it is held against.
    pub deadline: Nanoseconds,
    /// Who delays it, where it can miss its deadline.
    pub reasons: Option<Reasons>,
}

impl Lateness {
    /// Whether it can be too late. Without a bound it can.
    #[must_use]
    pub fn can_miss(&self) -> bool {
        self.worst.map_or(true, |worst| worst > self.deadline)
    }

    /// The time from its event to its end that it spends here.
    ///
    /// # Errors
    /// There is no bound.
    pub fn here(&self) -> Result<Nanoseconds, NoBound> {
        let before = self.arrives.unwrap_or(Nanoseconds(0));
        self.worst.map(|worst| Nanoseconds(worst.0.saturating_sub(before.0)))
    }
}

/// The parts of a worst response.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reasons {
    /// A frame of lower priority that has just begun.
    pub blocking: Option<Delayed>,
    /// Frames that go first, those that cost most in front.
    pub higher: Vec<Delayed>,
    /// Its own frames in front of it.
    pub earlier: Nanoseconds,
    /// How late it comes to its queue.
    pub late: Nanoseconds,
    /// The frame itself.
    pub length: Nanoseconds,
}

/// What one other stream costs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Delayed {
    /// Its place in [`NetworkLoad::streams`].
    pub stream: usize,
    /// How many frames of it.
    pub frames: u64,
    /// How long they take.
    pub time: Nanoseconds,
}

/// The way of a frame over a gateway.
#[derive(Debug, Clone, PartialEq)]
pub struct Path {
    /// The frame.
    pub frame: FrameId,
    /// A parameter group's source.
    pub source: Option<u8>,
    /// The route.
    pub route: RouteId,
    /// How long it takes on the first network; `None`: not calculated.
    pub before: Option<Nanoseconds>,
    /// How long it may wait for the gateway's own clock.
    pub clock: Option<Nanoseconds>,
    /// How long the gateway may take; `None`: not described.
    pub within: Option<Nanoseconds>,
    /// How long it takes on the second network; `None`: not calculated.
    pub behind: Option<Nanoseconds>,
}

impl Path {
    /// All of it; `None` where a part is not known. What the gateway takes counts as nothing where it is not described.
    #[must_use]
    pub fn total(&self) -> Option<Nanoseconds> {
        let parts = [self.before?, self.behind?, self.clock.unwrap_or_default(), self.within.unwrap_or_default()];
        Some(Nanoseconds(parts.iter().map(|part| part.0).fold(0, u64::saturating_add)))
    }
}

/// What was calculated for a whole vehicle.
pub(super) struct Found {
    /// By network; `None`: not CAN, or without a rate.
    pub(super) networks: Vec<Option<Result<NetworkLateness, ClockError>>>,
    pub(super) paths: Vec<Path>,
}

/// After so many turns it is given up: lateness that grows from turn to turn has no end.
const TURNS_MAX: usize = 64;

pub(super) fn of(database: &Database, loads: &[NetworkLoad]) -> Found {
    let questions: Vec<Option<Result<Question<'_>, ClockError>>> = database
        .networks
        .iter()
        .zip(loads)
        .map(|(network, load)| Question::new(network, load).filter(|_| !load.streams.is_empty()))
        .collect();
    let mut turns = Turns::new(database, loads, &questions);
    turns.run();
    let late = turns.late;
    let networks: Vec<_> =
        questions.iter().zip(&late).map(|(question, late)| Some(answer(question.as_ref()?, late))).collect();
    let paths = paths(database, loads, &networks);
    Found { networks, paths }
}

fn answer(
    question: &Result<Question<'_>, ClockError>,
    late: &[Option<Nanoseconds>],
) -> Result<NetworkLateness, ClockError> {
    let question = question.as_ref().map_err(|error| *error)?;
    let streams = question.lateness(late)?;
    let can_miss = streams.iter().any(Lateness::can_miss);
    Ok(NetworkLateness { streams, another_order: if can_miss { question.another_order(late) } else { None } })
}

/// The calculation in turns.
struct Turns<'a, 'q> {
    questions: &'q [Option<Result<Question<'a>, ClockError>>],
    /// By network and stream: where it comes from.
    origins: Vec<Vec<Option<Origin>>>,
    /// By network and stream: how late it comes there, where a gateway passes it on.
    late: Vec<Vec<Option<Nanoseconds>>>,
    /// By network and stream, of the last turn.
    worst: Vec<Vec<Option<Nanoseconds>>>,
}

impl<'a, 'q> Turns<'a, 'q> {
    fn new(
        database: &'a Database,
        loads: &'a [NetworkLoad],
        questions: &'q [Option<Result<Question<'a>, ClockError>>],
    ) -> Self {
        let none: Vec<Vec<Option<Nanoseconds>>> = loads.iter().map(|load| vec![None; load.streams.len()]).collect();
        let of_load =
            |load: &NetworkLoad| load.streams.iter().map(|load| Origin::of(database, loads, &load.stream)).collect();
        let origins = loads.iter().map(of_load).collect();
        Self { questions, origins, late: none.clone(), worst: none }
    }

    fn run(&mut self) {
        let mut stale: Vec<bool> = vec![true; self.late.len()];
        for _ in 0..TURNS_MAX {
            for (network, stale) in stale.iter_mut().enumerate() {
                if std::mem::take(stale) {
                    self.calculate(network);
                }
            }
            for (network, stale) in stale.iter_mut().enumerate() {
                *stale = self.pass_on(network);
            }
            if !stale.contains(&true) {
                return;
            }
        }
        // Without an end: whoever still changes counts as coming in its time, as one whose way is not known.
        for (late, _) in self.late.iter_mut().zip(stale).filter(|(_, stale)| *stale) {
            late.fill(None);
        }
    }

    fn calculate(&mut self, network: usize) {
        let Some(Ok(question)) = &self.questions[network] else { return };
        if let Ok(worst) = question.worst(&self.late[network]) {
            self.worst[network] = worst.into_iter().map(Result::ok).collect();
        }
    }

    /// Whether the frames that come to a network over gateways come later than was known.
    fn pass_on(&mut self, network: usize) -> bool {
        let mut changed = false;
        for (origin, late) in self.origins[network].iter().zip(&mut self.late[network]) {
            let Some(origin) = origin else { continue };
            let worst = self.worst[origin.network][origin.stream];
            let now = worst.map(|worst| Nanoseconds(worst.0.saturating_add(origin.within.0)));
            changed |= now != *late;
            *late = now;
        }
        changed
    }
}

/// Where a frame comes from that a gateway passes on as it arrives.
struct Origin {
    network: usize,
    /// Its place in the network's streams.
    stream: usize,
    /// The time in the gateway; none where none is described.
    within: Nanoseconds,
}

impl Origin {
    /// `None` for frames that no gateway passes on, and for those that it sends by its own clock.
    fn of(database: &Database, loads: &[NetworkLoad], stream: &Stream) -> Option<Self> {
        let route = &database.routes[stream.via?.index()];
        if matches!(route.pace, Pace::Every(_)) {
            return None;
        }
        let (network, stream) = stream_before(loads, stream, route.from)?;
        Some(Self { network, stream, within: route.within.unwrap_or_default() })
    }
}

fn stream_before(loads: &[NetworkLoad], stream: &Stream, from: NetworkId) -> Option<(usize, usize)> {
    let is_same =
        |other: &Stream| (other.frame, other.source, other.page) == (stream.frame, stream.source, stream.page);
    let streams = &loads.get(from.index())?.streams;
    let at = streams.iter().position(|load| is_same(&load.stream))?;
    Some((from.index(), at))
}

fn paths(
    database: &Database,
    loads: &[NetworkLoad],
    networks: &[Option<Result<NetworkLateness, ClockError>>],
) -> Vec<Path> {
    let here = |network: usize, at: usize| match &networks[network] {
        Some(Ok(found)) => found.streams[at].here().ok(),
        _ => None,
    };
    let whole = |network: usize, at: usize| match &networks[network] {
        Some(Ok(found)) => found.streams[at].worst.ok(),
        _ => None,
    };
    let mut paths = Vec::new();
    for (network, load) in loads.iter().enumerate() {
        for (at, load) in load.streams.iter().enumerate() {
            let Some(id) = load.stream.via else { continue };
            let route = &database.routes[id.index()];
            let before = stream_before(loads, &load.stream, route.from).and_then(|(from, at)| whole(from, at));
            paths.push(Path {
                frame: load.stream.frame,
                source: load.stream.source,
                route: id,
                before,
                clock: match route.pace {
                    Pace::Every(period) => Some(period),
                    Pace::Each | Pace::Nth(_) => None,
                },
                within: route.within,
                behind: here(network, at),
            });
        }
    }
    paths.sort_by_key(|path| path.route);
    paths
}
