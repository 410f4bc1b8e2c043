//! The principal type: the compiled description.

use wirelore_bits::Affine;
use wirelore_model::{
    Database, Frame, FrameId, Identifier, Network, NetworkId, NetworkKind, Scaling, SeenId, SignalId, Transport, Unit,
};

use crate::error::SessionError;
use crate::lin::{LinFrame, LinFrames};
use crate::lookup::{Lookup, Recognised};
use crate::plan::{Conversion, FramePlan, Planner};
use crate::reading::{FrameOutcome, Reading, Readings};
use crate::row;
use crate::selection::Selection;
use crate::session::{Carries, Ports, SerialForm};
use crate::units::Units;
use wirelore_transport::j1939_tp;

/// How a [`Decoder`] is to be made.
#[derive(Debug, Clone, Default)]
pub struct Setup {
    /// Which signals are wanted.
    pub selection: Selection,
    /// Which units are wanted.
    pub units: Units,
}

/// A description compiled for decoding: from identifiers to frames, and from payloads to readings.
///
/// Made once, then only read: it can be shared between threads.
#[derive(Debug, Clone)]
pub struct Decoder {
    plans: Box<[FramePlan]>,
    /// By frame: whether any signal of it is wanted.
    wanted: Box<[bool]>,
    /// By frame: whether that is all there is to ask, for its payloads give one row each. (Beside the plans because it is asked for with
    /// every frame of a log.)
    plain: Box<[bool]>,
    words: Box<[Box<str>]>,
    lookup: Lookup,
    lin: LinFrames,
    networks: Box<[NetworkEntry]>,
    /// By network: whether its frames carry something.
    carrying: Box<[bool]>,
    /// By frame.
    carried: Box<[Option<CarriedBy>]>,
    /// The unit of each signal of each frame, as shown.
    units: Box<[Box<[Option<Unit>]>]>,
}

/// What a session must know of a network.
#[derive(Debug, Clone)]
pub(crate) struct NetworkEntry {
    pub(crate) name: Box<str>,
    pub(crate) kind: NetworkKind,
    carries: Carries,
}

impl NetworkEntry {
    fn new(network: &Network, id: NetworkId, frames: &[Frame]) -> Self {
        let mut carries = Carries {
            serial: SerialForm::new(network.kind, network.telegram.as_ref()),
            most: network.kind == NetworkKind::Most,
            ..Carries::default()
        };
        let mut ports = Ports { most_bytes: LONGEST_UNSTATED, ..Ports::default() };
        let here = frames.iter().flat_map(|frame| frame.seen_on.iter().map(move |seen| (frame, seen)));
        for (frame, seen) in here.filter(|(_, seen)| seen.network == id) {
            match frame.carried {
                Some(Transport::J1939Tp) => carries.j1939_tp = true,
                Some(Transport::IsoTp | Transport::IsoTpExtended | Transport::IsoTpMixed) => carries.iso_tp = true,
                None => {}
            }
            ports.most_bytes = ports.most_bytes.max(frame.length.map_or(0, |length| length.max as usize));
            match seen.identifier {
                Identifier::Port { protocol, port } => ports.described.push((protocol, port)),
                Identifier::SomeIp { .. } => ports.services = true,
                _ => {}
            }
        }
        carries.ethernet = (network.kind == NetworkKind::Ethernet).then_some(ports);
        Self { name: network.label.name.as_str().into(), kind: network.kind, carries }
    }
}

/// The longest message on Ethernet that is put together where no description says how long one can be.
const LONGEST_UNSTATED: usize = 65_536;

/// How the messages of a frame are carried.
#[derive(Debug, Clone, Copy)]
pub(crate) struct CarriedBy {
    pub(crate) transport: Transport,
    /// No longer one is put together.
    pub(crate) most_bytes: u32,
}

impl NetworkEntry {
    /// Whether frames that show this can be on it.
    pub(crate) fn can_show(&self, seen: SeenId) -> bool {
        match seen {
            SeenId::Can { .. } => self.kind.is_can(),
            SeenId::Xl { .. } => self.kind == NetworkKind::CanXl,
            SeenId::Lin(_) => self.kind == NetworkKind::Lin,
            SeenId::FlexRay { .. } => self.kind == NetworkKind::FlexRay,
            SeenId::Telegram { .. } => matches!(self.kind, NetworkKind::Kline | NetworkKind::Uart),
            SeenId::Most { .. } => self.kind == NetworkKind::Most,
            SeenId::SomeIp { .. } | SeenId::Ports { .. } | SeenId::DoIp { .. } | SeenId::Packet { .. } => {
                self.kind == NetworkKind::Ethernet
            }
        }
    }
}

fn carried_by(frame: &Frame) -> Option<CarriedBy> {
    let transport = frame.carried?;
    let most_bytes = frame.length.map_or(transport.usual_most(), |length| length.max);
    Some(CarriedBy { transport, most_bytes })
}

impl Decoder {
    /// The decoder for every signal of a database, in the described units.
    ///
    /// # Errors
    /// [`SessionError::CurveTooFine`] where a sensor curve cannot be held exactly.
    pub fn new(database: &Database) -> Result<Self, SessionError> {
        Self::with(database, &Setup::default())
    }

    /// The decoder for some signals, or in other units.
    ///
    /// # Errors
    /// [`SessionError::CurveTooFine`] or [`SessionError::UnitTooFine`] where a formula cannot be held exactly.
    pub fn with(database: &Database, setup: &Setup) -> Result<Self, SessionError> {
        let mut planner = Planner::new(database);
        let plan = |(frame, id): (&Frame, u32)| {
            let id = FrameId(id);
            let wanted = |signal| setup.selection.wants(id, signal);
            let conversion = |signal: SignalId| {
                let unit = frame.signals[signal.index()].unit.as_ref();
                unit.map_or(Conversion::None, |unit| setup.units.conversion(unit))
            };
            planner.frame(frame, wanted, conversion).map_err(|fault| too_fine(frame, fault.signal, &setup.units))
        };
        let plans = database.frames.iter().zip(0..).map(plan).collect::<Result<Box<[FramePlan]>, _>>()?;
        let networks: Box<[NetworkEntry]> = (0..)
            .map(NetworkId)
            .zip(&database.networks)
            .map(|(id, network)| NetworkEntry::new(network, id, &database.frames))
            .collect();
        let shown = |frame: &Frame| {
            let units = frame.signals.iter().map(|signal| signal.unit.as_ref().map(|unit| setup.units.shown(unit)));
            units.collect()
        };
        Ok(Self {
            plain: plans.iter().map(|plan| !plan.steps.is_empty() && plan.rows.is_none()).collect(),
            wanted: plans.iter().map(|plan| !plan.steps.is_empty()).collect(),
            plans,
            words: planner.into_words(),
            lookup: Lookup::new(database),
            lin: LinFrames::new(database),
            carrying: networks.iter().map(|network| network.carries.anything()).collect(),
            networks,
            carried: database.frames.iter().map(carried_by).collect(),
            units: database.frames.iter().map(shown).collect(),
        })
    }

    /// The described frame with this identifier on this network; where several descriptions fit: an exact identifier, else a run of
    /// identifiers, else a parameter group (with sources, else with a priority, else any).
    #[inline]
    #[must_use]
    pub fn find(&self, network: NetworkId, id: u32, extended: bool) -> Option<FrameId> {
        self.lookup.find(network, id, extended).map(Recognised::frame)
    }

    /// The same for frames of any network: `payload` are the data bytes, by whose beginning some messages are told apart.
    #[inline]
    #[must_use]
    pub fn find_seen(&self, network: NetworkId, seen: SeenId, payload: &[u8]) -> Option<FrameId> {
        self.recognise(network, seen, payload).map(Recognised::frame)
    }

    #[inline(always)]
    pub(crate) fn recognise(&self, network: NetworkId, seen: SeenId, payload: &[u8]) -> Option<Recognised> {
        self.lookup.find_seen(network, seen, payload)
    }

    /// What is described of a LIN identifier.
    pub(crate) fn lin_frame(&self, network: NetworkId, id: u8) -> Option<&LinFrame> {
        self.lin.find(network, id)
    }

    /// An event-triggered LIN frame. (A text with plain identifiers does not say that they are of LIN.)
    #[cold]
    pub(crate) fn lin_event(&self, network: NetworkId, seen: SeenId) -> Option<&LinFrame> {
        let id = match seen {
            SeenId::Lin(id) => id,
            SeenId::Can { id, extended: false } => u8::try_from(id).ok()?,
            _ => return None,
        };
        self.lin.find(network, id).filter(|described| described.is_event())
    }

    /// Hands the readings of one frame to `each`: signals that are always there first, then those of the pages that hold. Of a payload that
    /// gives several rows those of the first: see [`Decoder::rows`].
    #[inline]
    pub fn decode(&self, frame: FrameId, payload: &[u8], each: impl FnMut(SignalId, Reading<'_>)) -> FrameOutcome {
        self.decode_into(frame, payload, &mut Each(each))
    }

    /// The same for a receiver that also wants to know of every selector without a page for its value.
    #[inline]
    pub fn decode_into(&self, frame: FrameId, payload: &[u8], readings: &mut impl Readings) -> FrameOutcome {
        match self.plan(frame) {
            Some(plan) => row::decode(plan, &self.words, plan.first_row(payload), readings),
            None => FrameOutcome::default(),
        }
    }

    /// The same for a payload that gives one row.
    #[inline]
    pub(crate) fn decode_row(&self, frame: FrameId, payload: &[u8], readings: &mut impl Readings) -> FrameOutcome {
        match self.plan(frame) {
            Some(plan) => row::decode(plan, &self.words, payload, readings),
            None => FrameOutcome::default(),
        }
    }

    /// The unit that a signal's values are given in.
    #[must_use]
    pub fn unit(&self, frame: FrameId, signal: SignalId) -> Option<&Unit> {
        self.units.get(frame.index())?.get(signal.index())?.as_ref()
    }

    /// Whether any signal of a frame is wanted.
    #[inline]
    #[must_use]
    pub fn wants(&self, frame: FrameId) -> bool {
        self.wanted.get(frame.index()).copied().unwrap_or(false)
    }

    /// Whether a frame is wanted, and its payloads give one row each.
    #[inline]
    pub(crate) fn is_plain(&self, frame: FrameId) -> bool {
        self.plain.get(frame.index()).copied().unwrap_or(false)
    }

    #[inline]
    pub(crate) fn plan(&self, frame: FrameId) -> Option<&FramePlan> {
        self.plans.get(frame.index())
    }

    /// All state words, as the plans number them.
    pub(crate) fn words(&self) -> &[Box<str>] {
        &self.words
    }

    /// The exact formula from raw numbers to the values that are given, conversion of units included; `None` where the raw number is
    /// the value, where a sensor curve holds, and for signals that are not wanted.
    #[must_use]
    pub fn formula(&self, frame: FrameId, signal: SignalId) -> Option<&Affine> {
        let plan = self.plan(frame)?;
        let at = plan.steps.iter().position(|step| step.signal == signal)?;
        plan.details.get(at)?.formula()
    }

    /// What carries the messages of a frame.
    pub(crate) fn carried(&self, frame: FrameId) -> Option<CarriedBy> {
        *self.carried.get(frame.index())?
    }

    /// What the frames of a network carry.
    #[inline]
    pub(crate) fn carries(&self, network: NetworkId) -> &Carries {
        const NOTHING: &Carries =
            &Carries { iso_tp: false, j1939_tp: false, serial: None, most: false, ethernet: None };
        self.networks.get(network.index()).map_or(NOTHING, |network| &network.carries)
    }

    /// Whether the frames of a network carry something that has to be put together or taken out first.
    #[inline]
    pub(crate) fn carries_anything_on(&self, network: NetworkId) -> bool {
        self.carrying.get(network.index()).copied().unwrap_or(false)
    }

    /// Whether the frames with this identifier are decoded as they come: they carry nothing that has to be put together first.
    pub(crate) fn goes_straight(&self, network: NetworkId, frame: FrameId, id: u32) -> bool {
        let is_plain = self.carried(frame).is_none_or(|carried| carried.transport == Transport::J1939Tp);
        let is_part = self.carries(network).j1939_tp && j1939_tp::carries(id);
        is_plain && !is_part
    }

    /// Whether the order of frames decides what is decoded.
    pub(crate) fn carries_anything(&self) -> bool {
        self.carrying.contains(&true)
    }

    pub(crate) fn networks(&self) -> &[NetworkEntry] {
        &self.networks
    }

    /// The networks that a channel can be: those of CAN, and all others with described frames.
    pub(crate) fn bindable(&self) -> impl Iterator<Item = (NetworkId, &NetworkEntry)> + Clone {
        let all = (0..).map(NetworkId).zip(&self.networks);
        all.filter(|(id, network)| network.kind.is_can() || self.frame_count(*id) > 0)
    }

    /// How many frames are described on a network.
    pub(crate) fn frame_count(&self, network: NetworkId) -> usize {
        self.lookup.count(network)
    }
}

/// A closure as a receiver.
struct Each<F>(F);

impl<F: FnMut(SignalId, Reading<'_>)> Readings for Each<F> {
    #[inline(always)]
    fn reading(&mut self, signal: SignalId, reading: Reading<'_>) {
        (self.0)(signal, reading);
    }
}

fn too_fine(frame: &Frame, signal: SignalId, units: &Units) -> SessionError {
    let described = &frame.signals[signal.index()];
    let (frame, signal) = (frame.label.name.clone(), described.label.name.clone());
    match (&described.unit, &described.scaling) {
        (Some(from), Scaling::Raw | Scaling::Affine(_) | Scaling::TroubleCode) => {
            SessionError::UnitTooFine { frame, signal, from: from.to_string(), to: units.shown(from).to_string() }
        }
        _ => SessionError::CurveTooFine { frame, signal },
    }
}

#[cfg(test)]
mod tests;
