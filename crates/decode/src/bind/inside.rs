//! What one network would read out of a channel whose frames show nothing to be recognised by.

use rustc_hash::FxHashSet;
use wirelore_model::{FrameId, NetworkId, SeenId};

use super::evidence::Candidate;
use crate::decoder::Decoder;

/// The messages that one network reads out of a channel's frames.
#[derive(Debug, Clone)]
pub(crate) struct Inside {
    network: NetworkId,
    /// The frame that any message of the network is, if there is one.
    any: Option<FrameId>,
    seen: FxHashSet<SeenId>,
    described: FxHashSet<SeenId>,
    frames: FxHashSet<FrameId>,
    /// Messages of which nothing is known but that any message is described.
    of_any: u64,
    faults: u64,
}

/// A message of which nothing is known.
const ANY: SeenId = SeenId::Telegram { source: None, target: None };

impl Inside {
    pub(crate) fn new(decoder: &Decoder, network: NetworkId) -> Self {
        Self {
            network,
            any: decoder.find_seen(network, ANY, &[]),
            seen: FxHashSet::default(),
            described: FxHashSet::default(),
            frames: FxHashSet::default(),
            of_any: 0,
            faults: 0,
        }
    }

    /// A whole message.
    pub(crate) fn message(&mut self, decoder: &Decoder, id: SeenId, bytes: &[u8]) {
        self.seen.insert(id);
        match decoder.find_seen(self.network, id, bytes) {
            Some(frame) if self.any == Some(frame) => self.of_any += 1,
            Some(frame) => {
                self.described.insert(id);
                self.frames.insert(frame);
            }
            None => {}
        }
    }

    /// A message that is not in order as this network counts.
    pub(crate) fn fault(&mut self) {
        self.faults += 1;
    }

    pub(super) fn candidate<'a>(&self, decoder: &'a Decoder) -> Option<Candidate<'a>> {
        let Self { network, any, seen, described, frames, of_any, faults } = self;
        Some(Candidate {
            network: *network,
            name: &decoder.networks().get(network.index())?.name,
            seen: seen.len(),
            described: described.clone(),
            frames: frames.clone(),
            // What any message is can never be missing.
            frame_count: decoder.frame_count(*network) - usize::from(any.is_some()),
            takes_any: of_any > faults,
        })
    }
}
