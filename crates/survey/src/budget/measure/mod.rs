//! How full each network was while it was recorded: the exact bits of every frame, stuff bits counted as they were needed.

mod channel;
mod rates;
mod spans;
mod windows;

use wirelore_decode::{BindMap, Binding, Decoder, SessionError, WholeLogs};
use wirelore_log::{Channel, Frame, Kind, Receive, Recording};
use wirelore_model::{Database, EcuId, FrameId, Identifier, NetworkId, SeenId};

use channel::{ChannelCount, IdCount};
use rates::Rates;
use spans::Spans;
use windows::Bits;
pub use windows::Busiest;

/// How much of a log is read at a time.
const STRETCH_BYTES: usize = 1 << 20;

/// Counts recordings, one after the other.
#[derive(Debug)]
pub struct Meter<'d> {
    database: &'d Database,
    decoder: &'d Decoder,
    logs: WholeLogs<'d>,
    /// The networks that a channel can be, with their rates.
    candidates: Vec<(NetworkId, Rates)>,
    networks: Vec<NetworkMeasure>,
    tally: MeterTally,
}

/// What became of the frames that were read: each is counted in one part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct MeterTally {
    /// All.
    pub read: u64,
    /// Counted on a network.
    pub counted: u64,
    /// On channels that are no network of the description.
    pub on_unbound_channels: u64,
    /// Their length on the wire is not known: FlexRay, CAN XL, or bytes that no frame of their kind can have.
    pub of_unknown_length: u64,
    /// Damaged on the wire: nobody knows how far they came.
    pub damaged: u64,
    /// Records of the recorder about errors, wake-ups and their like: no frames.
    pub no_frames: u64,
}

/// What was counted on one network.
#[derive(Debug, Clone, PartialEq)]
pub struct NetworkMeasure {
    /// The network.
    pub network: NetworkId,
    /// Frames.
    pub frames: u64,
    /// Their bits, with the pause behind each.
    pub bits: u64,
    /// The same without stuff bits.
    pub bare_bits: u64,
    /// Frames whose length on the wire is not known, and which are in none of these figures.
    pub of_unknown_length: u64,
    /// How long the logs with this network are together, in seconds, each from its first to its last frame. Where times are dates, what
    /// several logs recorded at the same time counts once.
    pub span_s: f64,
    /// The part of that time that frames took: with stuff bits, and without. `None` without a rate or without times.
    pub share: Option<(f64, f64)>,
    /// The busiest second, of all logs.
    pub busiest_second: Option<Busiest>,
    /// The busiest tenth of a second.
    pub busiest_tenth: Option<Busiest>,
    /// By identifier, in their order.
    pub identifiers: Vec<IdMeasure>,
    /// Frames of identifiers beyond those that are listed.
    pub beyond: u64,
    spans: Spans,
    busy_s: Option<(f64, f64)>,
}

/// What was counted of one identifier.
#[derive(Debug, Clone, PartialEq)]
pub struct IdMeasure {
    /// The identifier.
    pub seen: SeenId,
    /// What it is; `None`: not described.
    pub frame: Option<FrameId>,
    /// Who sends it, as far as that is described.
    pub senders: Vec<EcuId>,
    /// Frames.
    pub frames: u64,
    /// Their bits.
    pub bits: u64,
    /// The part of the time that they took.
    pub share: Option<f64>,
    busy_s: Option<f64>,
}

/// What was counted of one control unit.
#[derive(Debug, Clone, PartialEq)]
pub struct UnitMeasure {
    /// The unit, or all that may send these frames; empty: not described.
    pub ecus: Vec<EcuId>,
    /// Frames.
    pub frames: u64,
    /// The part of the time that they took.
    pub share: Option<f64>,
}

impl<'d> Meter<'d> {
    /// Makes ready for the first log.
    ///
    /// # Errors
    /// A binding that names no network of the description, or a description without any that could be recorded.
    pub fn new(database: &'d Database, decoder: &'d Decoder, bind: &BindMap) -> Result<Self, SessionError> {
        let networks = (0..).map(NetworkId).zip(&database.networks);
        let candidates = networks.filter_map(|(id, network)| Some((id, Rates::of(network)?))).collect();
        let logs = WholeLogs::new(decoder, bind)?;
        let networks = Vec::new();
        Ok(Self { database, decoder, logs, candidates, networks, tally: MeterTally::default() })
    }

    /// Reads a log to its end; `after_each` is called after each stretch of it.
    ///
    /// # Errors
    /// The log cannot be read on, or it is unclear which channel is which network.
    pub fn log(
        &mut self,
        recording: &mut Recording,
        mut after_each: impl FnMut(&Recording),
    ) -> Result<(), SessionError> {
        let mut count = LogCount { candidates: &self.candidates, channels: Vec::new(), first_ns: None, last_ns: None };
        loop {
            let more = recording.stretch(STRETCH_BYTES, &mut count)?;
            after_each(recording);
            if !more {
                break;
            }
        }
        let LogCount { channels, first_ns, last_ns, .. } = count;
        let span = first_ns.zip(last_ns);
        let seen: Vec<(Channel, Vec<SeenId>)> = (0..)
            .map(Channel)
            .zip(&channels)
            .filter_map(|(channel, count)| Some((channel, count.as_ref()?.identifiers())))
            .collect();
        let networks = self.logs.bind(recording, &seen)?;
        for (number, count) in channels.into_iter().enumerate() {
            let network = networks.get(number).copied().flatten();
            if let Some(count) = count {
                self.take(network, count, span);
            }
        }
        Ok(())
    }

    /// Adds what was counted on one channel of a log.
    fn take(&mut self, network: Option<NetworkId>, count: ChannelCount, span: Option<(i64, i64)>) {
        let fits = |network: &NetworkId| count.is_of(self.database.networks[network.index()].kind);
        let tally = &mut self.tally;
        tally.read += count.read;
        tally.no_frames += count.no_frames;
        tally.damaged += count.damaged;
        let Some(network) = network else {
            tally.on_unbound_channels += count.of_unknown_length + count.frames;
            return;
        };
        // Lines of a text with plain identifiers, counted as frames of CAN before it was clear that they are of LIN.
        let is_counted = fits(&network);
        let unknown = count.of_unknown_length + if is_counted { 0 } else { count.frames };
        tally.of_unknown_length += unknown;
        tally.counted += count.read - count.no_frames - count.damaged - unknown;
        let at = self.networks.iter().position(|measure| measure.network == network).unwrap_or_else(|| {
            self.networks.push(NetworkMeasure::new(network));
            self.networks.len() - 1
        });
        let measure = &mut self.networks[at];
        measure.of_unknown_length += unknown;
        measure.spans.add(span);
        if is_counted {
            let rates = self.candidates.iter().find(|(candidate, _)| *candidate == network).map(|(_, rates)| *rates);
            let span_ns = span.map_or(0, |(first, last)| last.saturating_sub(first));
            measure.add(count, rates, span_ns, |seen| self.decoder.find_seen(network, seen, &[]));
        }
    }

    /// What has been decided about channels so far.
    #[must_use]
    pub fn bindings(&self) -> &[Binding] {
        self.logs.bindings()
    }

    /// Channels that the binding names and that were in no log.
    pub fn channels_never_seen(&self) -> impl Iterator<Item = &str> {
        self.logs.channels_never_seen()
    }

    /// What was counted, by network in the order of the description; networks that were not recorded are not there.
    #[must_use]
    pub fn finish(mut self) -> (Vec<NetworkMeasure>, MeterTally) {
        self.networks.sort_by_key(|measure| measure.network);
        for measure in &mut self.networks {
            measure.finish(self.database);
        }
        (self.networks, self.tally)
    }
}

/// Counts the frames of one log.
struct LogCount<'a> {
    candidates: &'a [(NetworkId, Rates)],
    channels: Vec<Option<ChannelCount>>,
    first_ns: Option<i64>,
    last_ns: Option<i64>,
}

impl Receive for LogCount<'_> {
    fn frame(&mut self, frame: &Frame<'_>) {
        if let Some(time) = frame.time_ns {
            self.first_ns.get_or_insert(time);
            self.last_ns = Some(self.last_ns.map_or(time, |last| last.max(time)));
        }
        let number = usize::from(frame.channel.0);
        if self.channels.len() <= number {
            self.channels.resize_with(number + 1, || None);
        }
        let after_ns = frame.time_ns.zip(self.first_ns).map(|(time, first)| time.saturating_sub(first));
        let count = self.channels[number].get_or_insert_with(|| ChannelCount::new(frame.medium, self.candidates));
        count.read += 1;
        match frame.kind {
            Kind::Error | Kind::Signal => count.no_frames += 1,
            Kind::Faulty => count.damaged += 1,
            Kind::Data | Kind::Remote | Kind::Unanswered | Kind::Null => count.frame(frame, after_ns),
        }
    }
}

impl NetworkMeasure {
    fn new(network: NetworkId) -> Self {
        Self {
            network,
            frames: 0,
            bits: 0,
            bare_bits: 0,
            of_unknown_length: 0,
            span_s: 0.0,
            share: None,
            busiest_second: None,
            busiest_tenth: None,
            identifiers: Vec::new(),
            beyond: 0,
            spans: Spans::default(),
            busy_s: Some((0.0, 0.0)),
        }
    }

    /// The same by who sends, as far as that is described: single units in their order, frames that several may send, and what nobody is
    /// known to send.
    #[must_use]
    pub fn units(&self) -> Vec<UnitMeasure> {
        let mut units: Vec<UnitMeasure> = Vec::new();
        for measure in &self.identifiers {
            let at = units.iter().position(|unit| unit.ecus == measure.senders).unwrap_or_else(|| {
                units.push(UnitMeasure { ecus: measure.senders.clone(), frames: 0, share: measure.share.map(|_| 0.0) });
                units.len() - 1
            });
            units[at].frames += measure.frames;
            units[at].share = units[at].share.zip(measure.share).map(|(sum, more)| sum + more);
        }
        units.sort_by_key(|unit| (unit.ecus.is_empty(), unit.ecus.len() > 1, unit.ecus.clone()));
        units
    }

    fn add(
        &mut self,
        count: ChannelCount,
        rates: Option<Rates>,
        span_ns: i64,
        find: impl Fn(SeenId) -> Option<FrameId>,
    ) {
        let (bits, bare_bits) = count.bits.totals();
        self.frames += count.frames;
        self.bits += bits;
        self.bare_bits += bare_bits;
        self.beyond += count.beyond.frames;
        self.busy_s = self.busy_s.zip(rates).map(|((all, bare), rates)| {
            let (more, bare_more) = rates.shares(count.bits, 1.0);
            (all + more, bare + bare_more)
        });
        for (seen, id_count) in count.sorted() {
            self.add_identifier(seen, id_count, rates, &find);
        }
        let [second, tenth] = count.windows.finish(self.network, span_ns);
        busier(&mut self.busiest_second, second);
        busier(&mut self.busiest_tenth, tenth);
    }

    fn add_identifier(
        &mut self,
        seen: SeenId,
        count: IdCount,
        rates: Option<Rates>,
        find: impl Fn(SeenId) -> Option<FrameId>,
    ) {
        let at = self.identifiers.binary_search_by_key(&seen, |known| known.seen).unwrap_or_else(|at| {
            let new = IdMeasure {
                seen,
                frame: find(seen),
                senders: Vec::new(),
                frames: 0,
                bits: 0,
                share: None,
                busy_s: Some(0.0),
            };
            self.identifiers.insert(at, new);
            at
        });
        let measure = &mut self.identifiers[at];
        measure.frames += count.frames;
        measure.bits += count.bits.totals().0;
        measure.busy_s = measure.busy_s.zip(rates).map(|(busy, rates)| busy + rates.shares(count.bits, 1.0).0);
    }

    fn finish(&mut self, database: &Database) {
        self.span_s = self.spans.seconds();
        let span_s = self.span_s;
        let has_span = span_s > 0.0;
        self.share = self.busy_s.filter(|_| has_span).map(|(all, bare)| (all / span_s, bare / span_s));
        for measure in &mut self.identifiers {
            measure.share = measure.busy_s.filter(|_| has_span).map(|busy| busy / span_s);
            measure.senders =
                measure.frame.map_or_else(Vec::new, |frame| senders(database, self.network, frame, measure.seen));
        }
    }
}

/// Who sends a frame on a network: the gateway of its route there, the unit with the address in a parameter group's identifier, else
/// those that are described.
fn senders(database: &Database, network: NetworkId, id: FrameId, seen: SeenId) -> Vec<EcuId> {
    let frame = &database.frames[id.index()];
    let appearance = frame.seen_on.iter().find(|it| it.network == network && it.identifier.matches(seen, &[]));
    if let Some(route) = appearance.and_then(|it| it.via) {
        return vec![database.routes[route.index()].gateway];
    }
    if let (Some(Identifier::Pgn { .. }), SeenId::Can { id, .. }) = (appearance.map(|it| &it.identifier), seen) {
        let address = Some(id as u8);
        let has_it = |ecu: &EcuId| {
            let on = &database.ecus[ecu.index()].on;
            on.iter().any(|place| place.network == network && place.address == address)
        };
        if let Some(ecu) = (0..database.ecus.len() as u32).map(EcuId).find(has_it) {
            return vec![ecu];
        }
    }
    frame.senders.clone()
}

fn busier(found: &mut Option<Busiest>, other: Option<Busiest>) {
    if let Some(other) = other
        && found.is_none_or(|busiest| other.share > busiest.share)
    {
        *found = Some(other);
    }
}
