//! What becomes of a frame: counted into the one part that it belongs to, and passed on where it is to be decoded.

use wirelore_log::Kind;
use wirelore_model::NetworkId;

use super::sample::Seen;
use super::tally::Tally;
use crate::decoder::Decoder;
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
        tally: &mut Tally,
        target: &mut impl Target,
    ) {
        tally.read += 1;
        let Some((network, found)) = self.pass(network, seen, tally) else {
            return;
        };
        let Self { decoder, first_time_ns, from_ns, until_ns, .. } = *self;
        let so_do_all = first_time_ns.is_some() && from_ns.is_none() && until_ns.is_none();
        target.frame(&Passed { decoder, seen, network, found, first_time_ns, so_do_all }, tally);
    }

    #[inline(always)]
    fn pass(&self, network: Option<NetworkId>, seen: &Seen<'_>, tally: &mut Tally) -> Option<(NetworkId, Recognised)> {
        if !self.is_in_time(seen.time_ns) {
            tally.left_out_by_time += 1;
            return None;
        }
        match seen.kind {
            Kind::Data => {}
            Kind::Remote => {
                tally.remote += 1;
                return None;
            }
            Kind::Error => {
                tally.error += 1;
                return None;
            }
            Kind::Unanswered => {
                tally.unanswered += 1;
                return None;
            }
            Kind::Faulty => {
                tally.faulty += 1;
                return None;
            }
            Kind::Null => {
                tally.null += 1;
                return None;
            }
            Kind::Signal => {
                tally.wire_signals += 1;
                return None;
            }
        }
        let Some(network) = network else {
            tally.on_unbound_channel += 1;
            return None;
        };
        if !self.wanted.get(network.index()).copied().unwrap_or(false) {
            tally.left_out_by_network += 1;
            return None;
        }
        let Some(found) = self.decoder.recognise(network, seen.id, seen.payload) else {
            tally.unknown(network, seen.id);
            return None;
        };
        if !self.decoder.wants(found.frame) {
            tally.not_selected += 1;
            return None;
        }
        Some((network, found))
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
