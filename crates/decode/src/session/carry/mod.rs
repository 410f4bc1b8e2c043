//! Messages that are longer than a frame: frames go in, in the order of the log, and messages come out.
//!
//! Each channel of the log has reassemblers of its own, and only where its network has described messages that need them. Frames of a
//! network without such messages never come here.

mod ethernet;
mod iso;
mod j1939;
mod most;
mod serial;

use std::fmt;

use wirelore_log::Channel;
use wirelore_model::{NetworkId, SeenId};

use super::sample::Seen;
use crate::decoder::Decoder;
use ethernet::Ethernet;
pub(crate) use ethernet::Ports;
use iso::IsoTp;
use j1939::J1939Tp;
use most::MostParts;
use serial::Serial;
pub(crate) use serial::SerialForm;

/// What the frames of a network carry.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Carries {
    /// Messages of ISO 15765-2.
    pub(crate) iso_tp: bool,
    /// Messages of SAE J1939-21.
    pub(crate) j1939_tp: bool,
    /// Messages of a single-wire network.
    pub(crate) serial: Option<SerialForm>,
    /// Messages of a MOST ring, some of them in parts.
    pub(crate) most: bool,
    /// Messages in Ethernet packets.
    pub(crate) ethernet: Option<Ports>,
}

impl Carries {
    pub(crate) fn anything(&self) -> bool {
        *self != Self::default()
    }
}

/// Takes what comes out.
pub(super) trait Give {
    /// A message, with the time when it was whole and what it is recognised by.
    fn message(&mut self, time_ns: Option<i64>, id: SeenId, bytes: &[u8]) {
        self.headed(time_ns, id, None, bytes);
    }

    /// The same with what stands in front of its bytes, where that is protected with them.
    fn headed(&mut self, time_ns: Option<i64>, id: SeenId, header: Option<[u8; 8]>, bytes: &[u8]);

    /// A message, or a part of one, that could not be used.
    fn fault(&mut self, id: SeenId, what: &dyn fmt::Display);
}

/// What became of a frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Taken {
    /// It carries a message or a part of one.
    Carrying,
    /// It is damaged, which was told.
    Damaged,
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
    serial: Option<Serial>,
    most: Option<MostParts>,
    ethernet: Option<Box<Ethernet>>,
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
            && j1939.take(decoder, network, seen, give) == Taken::Carrying
        {
            return Taken::Carrying;
        }
        match on {
            OnChannel { iso: Some(iso), .. } => iso.take(decoder, network, seen, give),
            OnChannel { serial: Some(serial), .. } => serial.take(seen, give),
            OnChannel { most: Some(most), .. } => most.take(seen, give),
            OnChannel { ethernet: Some(ethernet), .. } => ethernet.take(seen, give),
            _ => Taken::Plain,
        }
    }

    fn channel(&mut self, decoder: &Decoder, network: NetworkId, channel: Channel) -> &mut OnChannel {
        let index = usize::from(channel.0);
        if self.channels.len() <= index {
            self.channels.resize_with(index + 1, || None);
        }
        self.channels[index].get_or_insert_with(|| {
            let carries = decoder.carries(network);
            Box::new(OnChannel {
                network,
                iso: carries.iso_tp.then(IsoTp::default),
                j1939: carries.j1939_tp.then(J1939Tp::default),
                serial: carries.serial.map(Serial::new),
                most: carries.most.then(MostParts::default),
                ethernet: carries.ethernet.clone().map(|ports| Box::new(Ethernet::new(ports))),
            })
        })
    }

    /// The log ended: gives what is whole only now, tells the messages that are not, and begins anew.
    pub(super) fn finish(&mut self, mut each: impl FnMut(Channel, NetworkId, &mut dyn FnMut(&mut dyn Give))) {
        for (on, number) in std::mem::take(&mut self.channels).into_iter().zip(0..) {
            let Some(mut on) = on else { continue };
            each(Channel(number), on.network, &mut |give| on.finish(give));
        }
    }
}

impl OnChannel {
    fn finish(&mut self, give: &mut dyn Give) {
        let Self { network: _, iso, j1939, serial, most, ethernet } = self;
        if let Some(iso) = iso {
            iso.finish(give);
        }
        if let Some(j1939) = j1939 {
            j1939.finish(give);
        }
        if let Some(serial) = serial {
            serial.finish(give);
        }
        if let Some(most) = most {
            most.finish(give);
        }
        if let Some(ethernet) = ethernet {
            ethernet.finish(give);
        }
    }
}
