//! What becomes of a frame: counted into the one part that it belongs to, and passed on where it is to be decoded.

use std::fmt;

use wirelore_log::{Channel, Faults, Kind, PlaceInLog};
use wirelore_model::{NetworkId, SeenId};

use super::carry::{Carriers, Give, Taken};
use super::lin;
use super::sample::Seen;
use super::tally::{MessageFault, Tally};
use crate::decoder::Decoder;
use crate::lin::LinWire;
use crate::lookup::Recognised;

/// Everything that decides about a frame, beside the network it is on.
#[derive(Debug, Clone)]
pub(super) struct Gate<'d> {
    pub(super) decoder: &'d Decoder,
    /// By network: whether it is wanted.
    pub(super) wanted: Box<[bool]>,
    pub(super) from_ns: Option<i64>,
    pub(super) until_ns: Option<i64>,
    /// The time of the first frame that has one.
    pub(super) first_time_ns: Option<i64>,
}

/// Takes the frames that are to be decoded.
pub(super) trait Target {
    /// A described frame.
    fn frame(&mut self, passed: &Passed<'_>, tally: &mut Tally);
}

/// A frame that passed the gate.
pub(super) struct Passed<'a> {
    pub(super) decoder: &'a Decoder,
    pub(super) seen: &'a Seen<'a>,
    pub(super) network: NetworkId,
    pub(super) found: Recognised,
    pub(super) first_time_ns: Option<i64>,
    /// Later frames of the same channel and identifier pass as well, whatever their time.
    pub(super) so_do_all: bool,
}

impl Gate<'_> {
    /// The first time there is, is the one that others count from.
    #[inline(always)]
    pub(super) fn note_time(&mut self, time_ns: Option<i64>) {
        if self.first_time_ns.is_none() {
            self.first_time_ns = time_ns;
        }
    }

    /// Puts one frame into its part of the tally, and passes it on where it is to be decoded. Its time has been noted.
    #[inline(always)]
    pub(super) fn frame(
        &self,
        network: Option<NetworkId>,
        seen: &Seen<'_>,
        carriers: &mut Carriers,
        tally: &mut Tally,
        target: &mut impl Target,
    ) {
        tally.read += 1;
        let Some(network) = self.of_interest(network, seen, tally) else {
            return;
        };
        if self.decoder.carries_anything_on(network)
            && self.carried(network, seen, carriers, tally, target) != Taken::Plain
        {
            return;
        }
        if !self.is_in_time(seen.time_ns) {
            tally.left_out_by_time += 1;
            return;
        }
        self.decode(network, seen, tally, target);
    }

    /// What a frame carries goes on, if it comes in time; the frame itself is counted here. Messages are put together also out of frames
    /// from outside the wanted time.
    #[inline(never)]
    fn carried(
        &self,
        network: NetworkId,
        seen: &Seen<'_>,
        carriers: &mut Carriers,
        tally: &mut Tally,
        target: &mut impl Target,
    ) -> Taken {
        let &Seen { channel, time_ns, place, .. } = seen;
        let mut give = Onward { gate: self, network, channel, time_ns, place: Some(place), tally, target };
        let taken = carriers.take(self.decoder, network, seen, &mut give);
        match taken {
            Taken::Plain => {}
            _ if !self.is_in_time(time_ns) => tally.left_out_by_time += 1,
            Taken::Carrying => tally.carrying += 1,
            Taken::Damaged => tally.faulty += 1,
        }
        taken
    }

    /// A frame or a message that is to be decoded, if it is described and wanted.
    #[inline(always)]
    fn decode(&self, network: NetworkId, seen: &Seen<'_>, tally: &mut Tally, target: &mut impl Target) {
        if let SeenId::Lin(id) = seen.id {
            return self.lin(network, id, seen, tally, target);
        }
        let Some(found) = self.decoder.recognise(network, seen.id, seen.payload) else {
            tally.unknown(network, seen.id);
            return;
        };
        self.hand_on(network, seen, found, tally, target);
    }

    /// A frame or a message that is described.
    #[inline(always)]
    pub(super) fn hand_on(
        &self,
        network: NetworkId,
        seen: &Seen<'_>,
        found: Recognised,
        tally: &mut Tally,
        target: &mut impl Target,
    ) {
        let Self { decoder, first_time_ns, from_ns, until_ns, .. } = *self;
        if !decoder.is_plain(found.frame()) {
            return self.with_care(network, seen, found, tally, target);
        }
        let so_do_all = first_time_ns.is_some() && from_ns.is_none() && until_ns.is_none();
        target.frame(&Passed { decoder, seen, network, found, first_time_ns, so_do_all }, tally);
    }

    /// A described frame that is not wanted as it is, or that may say several things: each of them is handed on as a frame of its own.
    #[inline(never)]
    fn with_care(
        &self,
        network: NetworkId,
        seen: &Seen<'_>,
        mut found: Recognised,
        tally: &mut Tally,
        target: &mut impl Target,
    ) {
        let Self { decoder, first_time_ns, .. } = *self;
        if !decoder.wants(found.frame()) {
            // An event-triggered frame has no signals of its own: they are those of the frame that answers.
            match decoder.lin_event(network, seen.id).map(|event| event.answer(seen.payload)) {
                Some(Some(answer)) if decoder.wants(answer) => found = Recognised::alone(answer),
                // A fault, or the answer of a control unit that is not described.
                Some(None) => {
                    tally.unknown(network, seen.id);
                    return;
                }
                Some(Some(_)) | None => {
                    tally.not_selected += 1;
                    return;
                }
            }
        }
        let mut rows = decoder.rows(found.frame(), seen.payload);
        let mut is_first = true;
        while let Some(payload) = rows.next_row() {
            if !std::mem::take(&mut is_first) {
                tally.read += 1;
                tally.further_rows += 1;
            }
            let seen = &Seen { payload, ..*seen };
            target.frame(&Passed { decoder, seen, network, found, first_time_ns, so_do_all: false }, tally);
        }
    }

    /// The network of a frame that may be decoded; all others are counted here.
    #[inline(always)]
    fn of_interest(&self, network: Option<NetworkId>, seen: &Seen<'_>, tally: &mut Tally) -> Option<NetworkId> {
        if seen.kind != Kind::Data {
            self.without_data(network, seen, tally);
            return None;
        }
        match network {
            Some(network) if self.is_wanted(network) => Some(network),
            _ if !self.is_in_time(seen.time_ns) => {
                tally.left_out_by_time += 1;
                None
            }
            Some(_) => {
                tally.left_out_by_network += 1;
                None
            }
            None => {
                tally.on_unbound_channel += 1;
                None
            }
        }
    }

    #[inline(always)]
    fn is_wanted(&self, network: NetworkId) -> bool {
        self.wanted.get(network.index()).copied().unwrap_or(false)
    }

    /// Counts what is no frame with data. On a channel that is no network it is still one of its kind.
    #[inline(never)]
    fn without_data(&self, network: Option<NetworkId>, seen: &Seen<'_>, tally: &mut Tally) {
        if !self.is_in_time(seen.time_ns) {
            tally.left_out_by_time += 1;
            return;
        }
        if network.is_some_and(|network| !self.is_wanted(network)) {
            tally.left_out_by_network += 1;
            return;
        }
        match seen.kind {
            Kind::Data => {}
            Kind::Remote => tally.remote(network, seen.id),
            Kind::Error => tally.error += 1,
            Kind::Unanswered => {
                tally.unanswered += 1;
                if let Some(network) = network {
                    tally.lin.no_answer(network, seen.id);
                }
            }
            Kind::Faulty => {
                tally.faulty += 1;
                if let Some(network) = network {
                    tally.damaged_on_wire(network, seen.id, seen.faults);
                }
            }
            Kind::Null => tally.null += 1,
            Kind::Signal => {
                tally.wire_signals += 1;
                lin::note_signal(seen, &mut tally.lin);
            }
        }
    }

    /// Whether a time lies in the wanted span; a frame without one does only where every time is wanted.
    #[inline(always)]
    fn is_in_time(&self, time_ns: Option<i64>) -> bool {
        if self.from_ns.is_none() && self.until_ns.is_none() {
            return true;
        }
        let (Some(time), Some(first)) = (time_ns, self.first_time_ns) else {
            return false;
        };
        let after = time.saturating_sub(first);
        self.from_ns.is_none_or(|from| from <= after) && self.until_ns.is_none_or(|until| after <= until)
    }
}

impl Gate<'_> {
    /// What is whole only now, at the end of the log, goes on; what is not is told.
    pub(super) fn finish(&self, carriers: &mut Carriers, tally: &mut Tally, target: &mut impl Target) {
        carriers.finish(|channel, network, finish| {
            finish(&mut Onward { gate: self, network, channel, time_ns: None, place: None, tally, target });
        });
    }
}

/// Passes on what a frame carries.
struct Onward<'a, 'd, T> {
    gate: &'a Gate<'d>,
    network: NetworkId,
    channel: Channel,
    /// The time of the frame.
    time_ns: Option<i64>,
    /// Its place; `None` at the end of the log.
    place: Option<PlaceInLog>,
    tally: &'a mut Tally,
    target: &'a mut T,
}

impl<T: Target> Give for Onward<'_, '_, T> {
    fn headed(&mut self, time_ns: Option<i64>, id: SeenId, header: Option<[u8; 8]>, bytes: &[u8]) {
        if self.gate.is_in_time(time_ns) {
            self.tally.read += 1;
            self.tally.messages += 1;
            let place = self.place.unwrap_or(PlaceInLog::Line(0));
            let (channel, faults, lin) = (self.channel, Faults::NONE, LinWire::default());
            let message =
                Seen { time_ns, channel, id, kind: Kind::Data, place, faults, lin, part: None, header, payload: bytes };
            self.gate.decode(self.network, &message, self.tally, self.target);
        }
    }

    fn fault(&mut self, id: SeenId, what: &dyn fmt::Display) {
        if self.place.is_none() || self.gate.is_in_time(self.time_ns) {
            let (network, place) = (self.network, self.place);
            self.tally.message_fault(|| MessageFault { network, id, place, what: what.to_string() });
        }
    }
}
