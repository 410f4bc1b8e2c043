//! What becomes of a LIN frame: its own check bits first, then the frame that it is.

use std::mem::take;

use wirelore_bits::lin;
use wirelore_log::{Faults, Kind};
use wirelore_model::{FrameId, LinChecksum, NetworkId, SeenId};

use super::counts::Counts;
use super::gate::{Gate, Target};
use super::sample::Seen;
use super::tally::{FAULTS_MAX, Tally, flat};
use crate::lin::Judgement;
use crate::lookup::Recognised;

/// What LIN networks say beside the signals of their frames.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct LinTally {
    /// How many checksums of described frames fit, and are of the described kind.
    pub right_checksums: u64,
    /// How many fit, and are of the other kind: classic where enhanced is described, or the other way round. The frames were decoded.
    pub other_checksums: u64,
    /// How often the commander asked all to go to sleep.
    pub sleep_requests: u64,
    /// How many of the signals on the wire were wake-ups.
    pub wake_ups: u64,

    other_kinds: Counts<(NetworkId, FrameId), FAULTS_MAX>,
    unanswered: Counts<(NetworkId, SeenId), FAULTS_MAX>,
}

impl LinTally {
    /// The frames whose checksums are of the other kind than is described, each with its network and how many were, the most frequent
    /// first.
    #[must_use]
    pub fn other_kinds(&self) -> Vec<(NetworkId, FrameId, u64)> {
        flat(self.other_kinds.sorted())
    }

    /// The headers that nobody answered, each with its network and how often it was sent in vain, the most frequent first.
    #[must_use]
    pub fn unanswered(&self) -> Vec<(NetworkId, SeenId, u64)> {
        flat(self.unanswered.sorted())
    }

    pub(super) fn take_over(&mut self, other: &mut Self) {
        let Self { right_checksums, other_checksums, sleep_requests, wake_ups, other_kinds, unanswered } = other;
        self.right_checksums += take(right_checksums);
        self.other_checksums += take(other_checksums);
        self.sleep_requests += take(sleep_requests);
        self.wake_ups += take(wake_ups);
        self.other_kinds.take_over(other_kinds);
        self.unanswered.take_over(unanswered);
    }

    /// A header that nobody answered.
    pub(super) fn no_answer(&mut self, network: NetworkId, id: SeenId) {
        self.unanswered.add((network, id));
    }
}

/// Counts a signal on the wire, if it is one of LIN that is worth a count of its own.
pub(super) fn note_signal(seen: &Seen<'_>, tally: &mut LinTally) {
    tally.wake_ups += u64::from(seen.lin.is_wake_up);
}

impl Gate<'_> {
    /// A LIN frame with data. One whose parity or checksum is wrong was damaged on the wire, and nobody may rely on its values.
    #[inline(never)]
    pub(super) fn lin(&self, network: NetworkId, id: u8, seen: &Seen<'_>, tally: &mut Tally, target: &mut impl Target) {
        debug_assert_eq!(seen.kind, Kind::Data);
        let described = self.decoder.lin_frame(network, id);
        let checksum = described.map_or(LinChecksum::Enhanced, |described| described.checksum);
        let judgement = seen.lin.judge(id, seen.payload, checksum);
        let fault = match judgement {
            Judgement::WrongChecksum => Some(Faults::CHECKSUM),
            Judgement::WrongParity => Some(Faults::PARITY),
            Judgement::NoChecksum | Judgement::Right | Judgement::OtherKind => None,
        };
        if let Some(fault) = fault {
            tally.faulty += 1;
            tally.damaged_on_wire(network, seen.id, fault);
            return;
        }
        if id == lin::MASTER_REQUEST && seen.payload.first() == Some(&0) {
            tally.lin.sleep_requests += 1;
        }
        let Some(described) = described else {
            tally.unknown(network, seen.id);
            return;
        };
        match judgement {
            Judgement::Right => tally.lin.right_checksums += 1,
            Judgement::OtherKind => {
                tally.lin.other_checksums += 1;
                tally.lin.other_kinds.add((network, described.frame));
            }
            _ => {}
        }
        let found = Recognised::alone(described.frame);
        self.hand_on(network, seen, found, tally, target);
    }
}
