//! Messages that are longer than a frame: frames go in, in the order of the log, and messages come out.
//!
//! Each channel of the log has reassemblers of its own, and only where its network has described messages that need them. Frames of a
//! network without such messages never come here.

mod iso;
mod j1939;

use std::fmt;

use wirelore_log::Channel;
use wirelore_model::{NetworkId, SeenId};

use super::sample::Seen;
use crate::decoder::Decoder;
use iso::IsoTp;
use j1939::J1939Tp;

/// What the frames of a network carry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Carries {
    /// Messages of ISO 15765-2.
    pub(crate) iso_tp: bool,
    /// Messages of SAE J1939-21.
    pub(crate) j1939_tp: bool,
}

impl Carries {
    pub(crate) fn anything(self) -> bool {
        self != Self::default()
    }
}

/// Takes what comes out.
pub(super) trait Give {
    /// A message, with what it is recognised by.
    fn message(&mut self, id: SeenId, bytes: &[u8]);

    /// A message, or a part of one, that could not be used.
    fn fault(&mut self, id: SeenId, what: &dyn fmt::Display);
}

/// What became of a frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Taken {
    /// It carries a message or a part of one.
    Carrying,
    /// It is a frame like others.
    Plain,
}

/// All channels of one log.
#[derive(Debug, Default)]
pub(super) struct Carriers {
    channels: Vec<Option<Box<OnChannel>>>,
}

/// What a channel's messages are put together by.
#[derive(Debug)]
struct OnChannel {
    network: NetworkId,
    iso: Option<IsoTp>,
    j1939: Option<J1939Tp>,
}

impl Carriers {
    /// Takes a frame of a network that carries something.
    pub(super) fn take(
        &mut self,
        decoder: &Decoder,
        network: NetworkId,
        seen: &Seen<'_>,
        give: &mut dyn Give,
    ) -> Taken {
        let on = self.channel(decoder, network, seen.channel);
        if let Some(j1939) = &mut on.j1939
            && j1939.take(seen, give) == Taken::Carrying
        {
            return Taken::Carrying;
        }
        match &mut on.iso {
            Some(iso) => iso.take(decoder, network, seen, give),
            None => Taken::Plain,
        }
    }

    fn channel(&mut self, decoder: &Decoder, network: NetworkId, channel: Channel) -> &mut OnChannel {
        let index = usize::from(channel.0);
        if self.channels.len() <= index {
            self.channels.resize_with(index + 1, || None);
        }
        self.channels[index].get_or_insert_with(|| {
            let carries = decoder.carries(network);
            let (iso, j1939) = (carries.iso_tp.then(IsoTp::default), carries.j1939_tp.then(J1939Tp::default));
            Box::new(OnChannel { network, iso, j1939 })
        })
    }

    /// The log ended: tells the messages that are not whole, each with its network and channel, and begins anew.
    pub(super) fn finish(&mut self, mut tell: impl FnMut(Channel, NetworkId, SeenId, String)) {
        for (on, number) in std::mem::take(&mut self.channels).into_iter().zip(0..) {
            let Some(mut on) = on else { continue };
            let OnChannel { network, iso, j1939 } = &mut *on;
            let mut last = Last(|id, what| tell(Channel(number), *network, id, what));
            if let Some(iso) = iso {
                iso.finish(&mut last);
            }
            if let Some(j1939) = j1939 {
                j1939.finish(&mut last);
            }
        }
    }
}

/// Takes what comes at the end of a log: no reassembler has a whole message left then.
struct Last<F>(F);

impl<F: FnMut(SeenId, String)> Give for Last<F> {
    fn message(&mut self, _: SeenId, _: &[u8]) {}

    fn fault(&mut self, id: SeenId, what: &dyn fmt::Display) {
        (self.0)(id, what.to_string());
    }
}
