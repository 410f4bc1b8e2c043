//! What a description says is sent: a stream of frames for each frame on each network, its senders, its pace and its length.

use wirelore_model::{
    Database, EcuId, Frame, FrameId, Identifier, Nanoseconds, NetworkId, NetworkKind, Pace, Page, PageId, RouteId,
};

use super::parts::{Parts, parts_of};
use super::rank::Rank;

/// Frames of one kind on one network, sent again and again.
#[derive(Debug, Clone, PartialEq)]
pub struct Stream {
    /// The frame.
    pub frame: FrameId,
    /// The network.
    pub network: NetworkId,
    /// Which of [`Frame::seen_on`] it is.
    pub appearance: usize,
    /// A parameter group's source, where it is told.
    pub source: Option<u8>,
    /// The page that comes by a period of its own.
    pub page: Option<PageId>,
    /// Who sends it here: the gateway, for a frame that is passed on. Empty: not described.
    pub senders: Vec<EcuId>,
    /// The route that brings it here.
    pub via: Option<RouteId>,
    /// Its place in the arbitration; `None` on networks that are not CAN.
    pub rank: Option<Rank>,
    /// The payload bytes of one frame, the longest.
    pub bytes: u32,
    /// The description says how long it is; else it counts as long as its network allows.
    pub length_is_stated: bool,
    /// Into how many frames each message is cut.
    pub parts: u32,
    /// When it is sent.
    pub timing: Timing,
}

/// When the messages of a stream are sent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Timing {
    /// Messages per second ordinarily; 0 for those that only come on occasion.
    pub usual_per_s: f64,
    /// The time from one message to the next where they come fastest, in the long run.
    pub shortest: Nanoseconds,
    /// How far one may be off its time.
    pub jitter: Nanoseconds,
    /// What it is held against: the timeout, else the period.
    pub deadline: Nanoseconds,
    /// It also comes when a value changes, and nothing says how close two can be.
    pub is_open: bool,
}

impl Timing {
    /// Messages per second where they come fastest.
    #[must_use]
    pub fn most_per_s(&self) -> f64 {
        NS_PER_S / self.shortest.0 as f64
    }
}

/// A frame that is not counted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Uncounted {
    /// The frame.
    pub frame: FrameId,
    /// Why.
    pub why: WhyNot,
}

/// Why a frame is not counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum WhyNot {
    /// No period is described, nor how close two can be.
    NoPeriod,
    /// Nothing bounds its length.
    LengthOpen,
    /// It stands for a run of identifiers.
    ManyIdentifiers,
    /// Its length on the wire is not calculated (frames of CAN XL's own format).
    NotCalculated,
    /// No schedule of its LIN network has a slot for it.
    NoSlot,
}

/// What is sent on one network.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Traffic {
    /// What is counted, on CAN in order of priority, else in the order of the description.
    pub streams: Vec<Stream>,
    /// What is not.
    pub uncounted: Vec<Uncounted>,
}

pub(super) const NS_PER_S: f64 = 1e9;

/// What is sent on each network, in the order of the networks.
#[must_use]
pub fn traffic(database: &Database) -> Vec<Traffic> {
    let mut networks: Vec<Traffic> = database.networks.iter().map(|_| Traffic::default()).collect();
    for (frame, id) in database.frames.iter().zip((0..).map(FrameId)) {
        for appearance in 0..frame.seen_on.len() {
            let network = frame.seen_on[appearance].network;
            let to = &mut networks[network.index()];
            match streams_of(database, (frame, id), appearance) {
                Ok(streams) => to.streams.extend(streams),
                Err(why) => to.uncounted.push(Uncounted { frame: id, why }),
            }
        }
    }
    for network in &mut networks {
        // Streams without a rank keep their order.
        network.streams.sort_by_key(|stream| stream.rank);
    }
    networks
}

/// The streams of one frame on one network: one for each source of a parameter group, else one.
fn streams_of(database: &Database, (frame, id): (&Frame, FrameId), appearance: usize) -> Result<Vec<Stream>, WhyNot> {
    let seen = &frame.seen_on[appearance];
    let network = seen.network;
    match &seen.identifier {
        Identifier::Can { first, last, .. } if first != last => return Err(WhyNot::ManyIdentifiers),
        Identifier::Xl { .. } => return Err(WhyNot::NotCalculated),
        _ => {}
    }
    let kind = database.networks[network.index()].kind;
    let here = |own: Timing| match seen.via {
        Some(route) => passed_on(own, database.routes[route.index()].pace),
        None => Some(own),
    };
    let of_pages: Vec<_> = pages_in_turn(frame).into_iter().map(|(page, timing)| (Some(page), timing)).collect();
    let own = if of_pages.is_empty() {
        timing_of(frame).map(|timing| (None, timing)).into_iter().collect()
    } else {
        of_pages
    };
    let timings: Vec<(Option<PageId>, Timing)> =
        own.into_iter().filter_map(|(page, timing)| Some((page, here(timing)?))).collect();
    if timings.is_empty() {
        return Err(WhyNot::NoPeriod);
    }
    let (bytes, length_is_stated) = length_of(frame, &seen.identifier, kind)?;
    let Parts { count: parts, bytes, on_transport } = parts_of(frame.carried, kind, bytes);
    let senders = match seen.via {
        Some(route) => vec![database.routes[route.index()].gateway],
        None => frame.senders.clone(),
    };
    let stream = |source: Option<u8>, senders: Vec<EcuId>, (page, timing): (Option<PageId>, Timing)| Stream {
        frame: id,
        network,
        appearance,
        source,
        page,
        senders,
        via: seen.via,
        rank: Rank::of(&seen.identifier, source, on_transport),
        bytes,
        length_is_stated,
        parts,
        timing,
    };
    let sources = sources_of(database, frame, &seen.identifier, network);
    if sources.is_empty() {
        return Ok(timings.into_iter().map(|timing| stream(None, senders.clone(), timing)).collect());
    }
    let of_source = |&(source, ecu): &(u8, Option<EcuId>)| {
        let own = if seen.via.is_some() { senders.clone() } else { ecu.into_iter().collect() };
        timings.iter().map(move |timing| stream(Some(source), own.clone(), *timing)).collect::<Vec<_>>()
    };
    Ok(sources.iter().flat_map(of_source).collect())
}

/// The addresses that send a parameter group, each with its control unit: those that are told, else those of its senders.
fn sources_of(
    database: &Database,
    frame: &Frame,
    identifier: &Identifier,
    network: NetworkId,
) -> Vec<(u8, Option<EcuId>)> {
    let Identifier::Pgn { sources, .. } = identifier else { return Vec::new() };
    let address_of = |ecu: EcuId| {
        let on = &database.ecus[ecu.index()].on;
        on.iter().find(|place| place.network == network).and_then(|place| place.address)
    };
    if sources.is_empty() {
        return frame.senders.iter().filter_map(|&ecu| Some((address_of(ecu)?, Some(ecu)))).collect();
    }
    let ecu_at = |address: u8| (0..database.ecus.len() as u32).map(EcuId).find(|&ecu| address_of(ecu) == Some(address));
    sources.iter().map(|&address| (address, ecu_at(address).or(single(&frame.senders)))).collect()
}

fn single(senders: &[EcuId]) -> Option<EcuId> {
    match senders {
        [only] => Some(*only),
        _ => None,
    }
}

/// The longest payload, and whether the description states it. CAN frames without a length count as long as they can be.
fn length_of(frame: &Frame, identifier: &Identifier, kind: NetworkKind) -> Result<(u32, bool), WhyNot> {
    // On a page in a group that gives rows, a length is that of a part of the payload.
    let is_whole = |page: &&Page| page.rows_from.is_none() && frame.rows_around(page.parent).is_none();
    let of_pages = frame.pages.iter().filter(is_whole).filter_map(|page| page.length);
    let stated = frame.length.into_iter().chain(of_pages).map(|length| length.max).max();
    match stated {
        Some(bytes) => Ok((bytes, true)),
        None if frame.carried.is_some() => Err(WhyNot::LengthOpen),
        None if kind.is_can() || kind == NetworkKind::Lin => Ok((identifier.longest_payload(kind), false)),
        None => Err(WhyNot::LengthOpen),
    }
}

/// When a frame is sent on its own network; `None` where nothing says how often.
fn timing_of(frame: &Frame) -> Option<Timing> {
    let sending = &frame.sending;
    let jitter = sending.jitter.unwrap_or(Nanoseconds(0));
    let periods = [sending.every, sending.faster.as_ref().map(|faster| faster.every)];
    let fastest = periods.into_iter().flatten().map(|period| period.shortest).min();
    // Without a least distance, what comes on change is not bounded by anything that is said.
    let on_occasion = sending.on_change || sending.on_request;
    let apart = sending.apart_at_least.filter(|_| on_occasion || fastest.is_none());
    let shortest = fastest.into_iter().chain(apart).min()?;
    Some(Timing {
        usual_per_s: sending.every.map_or(0.0, |period| NS_PER_S / period.shortest.0 as f64),
        shortest,
        jitter,
        deadline: sending.timeout.or(sending.every.map(|period| period.shortest)).unwrap_or(shortest),
        is_open: sending.on_change && sending.apart_at_least.is_none(),
    })
}

/// The pages that have a period of their own, in a frame that has none: each comes by its own clock.
fn pages_in_turn(frame: &Frame) -> Vec<(PageId, Timing)> {
    if frame.sending.every.is_some() {
        return Vec::new();
    }
    let pages = (0..).map(PageId).zip(&frame.pages);
    let timing = |(id, page): (PageId, &Page)| {
        let period = page.every?.shortest;
        let timing = Timing {
            usual_per_s: NS_PER_S / period.0 as f64,
            shortest: period,
            jitter: frame.sending.jitter.unwrap_or_default(),
            deadline: frame.sending.timeout.unwrap_or(period),
            is_open: false,
        };
        Some((id, timing))
    };
    pages.filter_map(timing).collect()
}

/// The timing on the network that a route leads to. How late a frame comes there is added by those who calculate it.
fn passed_on(own: Timing, pace: Pace) -> Option<Timing> {
    let deadline = |period: u64| Nanoseconds(own.deadline.0.max(period));
    match pace {
        Pace::Each => Some(own),
        Pace::Every(period) => Some(Timing {
            usual_per_s: NS_PER_S / period.0 as f64,
            shortest: period,
            jitter: Nanoseconds(0),
            deadline: deadline(period.0),
            is_open: false,
        }),
        Pace::Nth(n) => {
            let shortest = Nanoseconds(own.shortest.0.checked_mul(n.into())?);
            let usual_per_s = own.usual_per_s / f64::from(n);
            Some(Timing { usual_per_s, shortest, deadline: deadline(shortest.0), ..own })
        }
    }
}
