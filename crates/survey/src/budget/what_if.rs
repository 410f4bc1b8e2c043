//! What if: a description with a control unit on another network, or a network of another rate.
//!
//! A unit that moves takes its frames with it. Whoever still reads one of them on the old network needs a gateway that passes it back, and
//! what the unit reads from there has to be passed on to it: such routes are added, and told.

use thiserror::Error;
use wirelore_model::{
    Appearance, BitRate, Description, EcuId, FrameId, Identifier, Nanoseconds, NetworkId, Pace, Passed, Route, RouteId,
};

/// What had to be changed so that a unit could move, or what stands against it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MoveNote {
    /// The gateway passes this frame on to the new network, as the unit reads it.
    PassedOn {
        /// The frame.
        frame: FrameId,
        /// The gateway.
        gateway: EcuId,
    },
    /// The gateway passes this frame of the unit back to the old network, as somebody reads it there.
    PassedBack {
        /// The frame.
        frame: FrameId,
        /// The gateway.
        gateway: EcuId,
    },
    /// No unit is on both networks: this frame does not get to who reads it.
    NoGateway {
        /// The frame.
        frame: FrameId,
    },
    /// Others send this frame as well: it stays where it is.
    SharedStays {
        /// The frame.
        frame: FrameId,
    },
    /// Two frames have the same identifier on the new network.
    SameIdentifier {
        /// The frame that came.
        frame: FrameId,
        /// The one that was there.
        other: FrameId,
    },
}

/// Why a unit cannot move.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum MoveError {
    /// The target is no network of CAN.
    #[error("a unit can be moved from one network of CAN to another, and this one is none")]
    NotCan,
    /// It is there already.
    #[error("the unit is on that network already")]
    AlreadyThere,
    /// It is on no network of CAN.
    #[error("the unit is on no network of CAN")]
    OnNone,
    /// It is on several.
    #[error("the unit is on several networks of CAN, so that it is not clear from which one it would move")]
    OnSeveral,
}

/// Gives a network another rate.
pub fn set_rate(description: &mut Description, network: NetworkId, rate: BitRate, data_rate: Option<BitRate>) {
    let network = &mut description.networks[network.index()];
    network.rate = Some(rate);
    network.data_rate = data_rate.or(network.data_rate);
}

/// Moves a control unit to another network of CAN.
///
/// # Errors
/// It cannot move; the description is as it was.
pub fn move_unit(description: &mut Description, unit: EcuId, to: NetworkId) -> Result<Vec<MoveNote>, MoveError> {
    let is_can = |network: NetworkId| description.networks[network.index()].kind.is_can();
    if !is_can(to) {
        return Err(MoveError::NotCan);
    }
    let on = &description.ecus[unit.index()].on;
    if on.iter().any(|place| place.network == to) {
        return Err(MoveError::AlreadyThere);
    }
    let mut of_can = on.iter().map(|place| place.network).filter(|network| is_can(*network));
    let from = of_can.next().ok_or(MoveError::OnNone)?;
    if of_can.next().is_some() {
        return Err(MoveError::OnSeveral);
    }
    let mut step = Move { description, unit, from, to, notes: Vec::new() };
    step.run();
    Ok(step.notes)
}

/// One move.
struct Move<'a> {
    description: &'a mut Description,
    unit: EcuId,
    from: NetworkId,
    to: NetworkId,
    notes: Vec<MoveNote>,
}

impl Move<'_> {
    fn run(&mut self) {
        for place in &mut self.description.ecus[self.unit.index()].on {
            if place.network == self.from {
                place.network = self.to;
            }
        }
        for frame in (0..self.description.frames.len() as u32).map(FrameId) {
            let found = &self.description.frames[frame.index()];
            if found.seen_on[0].network == self.from && found.senders.contains(&self.unit) {
                if found.senders.len() == 1 {
                    self.sent(frame);
                } else {
                    self.notes.push(MoveNote::SharedStays { frame });
                    self.read(frame);
                }
            } else if found.readers.contains(&self.unit) {
                self.read(frame);
            }
        }
    }

    /// A frame of the unit goes with it.
    fn sent(&mut self, id: FrameId) {
        let mut goes_back = self.has_reader_left(id);
        let (from, to) = (self.from, self.to);
        for at in 0..self.description.routes.len() {
            let route = &self.description.routes[at];
            if route.from != from || !is_about(&route.what, id) {
                continue;
            }
            if route.to == to || self.is_on(route.gateway, to) {
                self.description.routes[at].from = to;
            } else {
                // Its gateway reads the old network.
                goes_back = true;
            }
        }
        let frame = &mut self.description.frames[id.index()];
        let old = frame.seen_on[0].identifier.clone();
        // Where a gateway passed it on to the new network already, it keeps the identifier that it had there.
        let there = frame.seen_on.iter().position(|seen| seen.network == to);
        let identifier = there.map_or_else(|| old.clone(), |at| frame.seen_on.remove(at).identifier);
        frame.seen_on[0] = Appearance { network: to, identifier: identifier.clone(), via: None };
        // A route from the new network to itself passes nothing on; the frame is simply there.
        self.note_same(id, &identifier);
        if goes_back {
            self.pass(id, (to, from), old, |frame, gateway| MoveNote::PassedBack { frame, gateway });
        }
        self.drop_empty_routes();
    }

    /// A frame that the unit reads has to come to it.
    fn read(&mut self, id: FrameId) {
        let frame = &self.description.frames[id.index()];
        let is_there = frame.seen_on.iter().any(|seen| seen.network == self.to);
        let Some(old) = frame.seen_on.iter().find(|seen| seen.network == self.from) else { return };
        if !is_there {
            let identifier = old.identifier.clone();
            self.pass(id, (self.from, self.to), identifier, |frame, gateway| MoveNote::PassedOn { frame, gateway });
        }
    }

    /// Adds a route.
    fn pass(
        &mut self,
        frame: FrameId,
        (from, to): (NetworkId, NetworkId),
        identifier: Identifier,
        note: impl Fn(FrameId, EcuId) -> MoveNote,
    ) {
        let Some(gateway) = self.gateway() else {
            self.notes.push(MoveNote::NoGateway { frame });
            return;
        };
        let within = self.usual_time(gateway);
        let via = RouteId(self.description.routes.len() as u32);
        let what = Passed::Frame(frame);
        self.description.routes.push(Route { gateway, what, from, to, pace: Pace::Each, within, note: None });
        self.note_same_on(frame, to, &identifier);
        let seen = Appearance { network: to, identifier, via: Some(via) };
        self.description.frames[frame.index()].seen_on.push(seen);
        self.notes.push(note(frame, gateway));
    }

    /// A unit on both networks: one that passes something on already, else the first.
    fn gateway(&self) -> Option<EcuId> {
        let units = (0..self.description.ecus.len() as u32).map(EcuId);
        let both: Vec<EcuId> =
            units.filter(|ecu| *ecu != self.unit && self.is_on(*ecu, self.from) && self.is_on(*ecu, self.to)).collect();
        let passes = |ecu: &&EcuId| self.description.routes.iter().any(|route| route.gateway == **ecu);
        both.iter().find(passes).or(both.first()).copied()
    }

    /// The longest time that the gateway is said to take between networks of CAN.
    fn usual_time(&self, gateway: EcuId) -> Option<Nanoseconds> {
        let is_can = |network: NetworkId| self.description.networks[network.index()].kind.is_can();
        let own = self.description.routes.iter().filter(|route| route.gateway == gateway);
        own.filter(|route| is_can(route.from) && is_can(route.to)).filter_map(|route| route.within).max()
    }

    fn is_on(&self, ecu: EcuId, network: NetworkId) -> bool {
        self.description.ecus[ecu.index()].on.iter().any(|place| place.network == network)
    }

    /// Whether somebody who is not on the new network reads a frame of the unit.
    fn has_reader_left(&self, frame: FrameId) -> bool {
        let readers = &self.description.frames[frame.index()].readers;
        readers.iter().any(|ecu| self.is_on(*ecu, self.from) && !self.is_on(*ecu, self.to))
    }

    fn note_same(&mut self, frame: FrameId, identifier: &Identifier) {
        self.note_same_on(frame, self.to, identifier);
    }

    fn note_same_on(&mut self, frame: FrameId, network: NetworkId, identifier: &Identifier) {
        let is_same = |seen: &Appearance| seen.network == network && seen.identifier == *identifier;
        let others = (0..).map(FrameId).zip(&self.description.frames);
        let mut same = others.filter(|(id, other)| *id != frame && other.seen_on.iter().any(is_same));
        if let Some((other, _)) = same.next() {
            self.notes.push(MoveNote::SameIdentifier { frame, other });
        }
    }

    /// Routes that lead from the new network to itself are of no use any more.
    fn drop_empty_routes(&mut self) {
        let to = self.to;
        for at in (0..self.description.routes.len()).rev() {
            let route = &self.description.routes[at];
            if route.from == to && route.to == to {
                self.description.routes.remove(at);
                let behind = self.description.frames.iter_mut().flat_map(|frame| &mut frame.seen_on);
                for via in behind.filter_map(|seen| seen.via.as_mut()).filter(|via| via.index() > at) {
                    via.0 -= 1;
                }
            }
        }
    }
}

/// Whether a route passes on this very frame, or a signal of it.
fn is_about(what: &Passed, id: FrameId) -> bool {
    match what {
        Passed::Frame(frame) => *frame == id,
        Passed::Signal { from_frame, .. } => *from_frame == id,
        Passed::Identifiers { .. } | Passed::All { .. } => false,
    }
}
