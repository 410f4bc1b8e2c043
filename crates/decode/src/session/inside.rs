//! Reads what a channel's frames carry as one network would, to find out whether the channel is that network.

use std::fmt;

use wirelore_log::Kind;
use wirelore_model::{NetworkId, SeenId};

use super::carry::{Carriers, Give};
use super::sample::Sample;
use crate::bind::Inside;
use crate::decoder::Decoder;

/// What a network reads out of the frames that were kept of a channel.
pub(super) fn look(decoder: &Decoder, sample: &Sample, channel: usize, network: NetworkId) -> Inside {
    let mut look = Look { decoder, inside: Inside::new(decoder, network) };
    let mut carriers = Carriers::default();
    let own = sample.frames().filter(|seen| usize::from(seen.channel.0) == channel && seen.kind == Kind::Data);
    for seen in own {
        carriers.take(decoder, network, &seen, &mut look);
    }
    carriers.finish(|_, _, finish| finish(&mut look));
    look.inside
}

struct Look<'d> {
    decoder: &'d Decoder,
    inside: Inside,
}

impl Give for Look<'_> {
    fn headed(&mut self, _time_ns: Option<i64>, id: SeenId, _header: Option<[u8; 8]>, bytes: &[u8]) {
        self.inside.message(self.decoder, id, bytes);
    }

    fn fault(&mut self, _id: SeenId, _what: &dyn fmt::Display) {
        self.inside.fault();
    }
}
