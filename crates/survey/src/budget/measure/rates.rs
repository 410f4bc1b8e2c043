//! From bits to shares: the rates of a network, and the bits of a recorded frame.

use wirelore_bits::lin;
use wirelore_log::{Frame, Kind, Medium};
use wirelore_model::{Network, NetworkKind};

use super::super::cost::{BITS_PER_BYTE, MOST25, packet_bits, seen_cost};
use super::windows::Bits;

/// Bits per second of both phases.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Rates {
    pub(super) nominal: f64,
    pub(super) data: f64,
}

impl Rates {
    /// The rates of a network, where they are described.
    pub(super) fn of(network: &Network) -> Option<Self> {
        let nominal = network.rate?.0 as f64;
        let data = network.data_rate.map_or(nominal, |rate| rate.0 as f64);
        match network.kind {
            NetworkKind::Most => MOST25.is_ring(network).then(|| {
                let bits_per_s = MOST25.bits_per_s();
                Self { nominal: bits_per_s, data: bits_per_s }
            }),
            _ => Some(Self { nominal, data }),
        }
    }

    /// Which part of so many seconds some bits take: with stuff bits, and without.
    pub(super) fn shares(self, bits: Bits, seconds: f64) -> (f64, f64) {
        let part = |nominal: u64, data: u64| (nominal as f64 / self.nominal + data as f64 / self.data) / seconds;
        (part(bits.nominal, bits.data), part(bits.bare_nominal, bits.bare_data))
    }
}

/// The bits that a recorded frame took; `None` where its length on the wire cannot be known.
pub(super) fn bits_of(frame: &Frame<'_>) -> Option<Bits> {
    let plain = |bits: u64| Bits { nominal: bits, bare_nominal: bits, ..Bits::default() };
    let length = frame.payload.len() as u64;
    match frame.medium {
        Medium::Can => {
            let (all, bare) = seen_cost(frame)?;
            Some(Bits {
                nominal: all.nominal.into(),
                data: all.data.into(),
                bare_nominal: bare.nominal.into(),
                bare_data: bare.data.into(),
            })
        }
        Medium::Lin(_) if frame.kind == Kind::Unanswered => Some(plain(u64::from(lin::HEADER_BITS))),
        Medium::Lin(_) => Some(plain(u64::from(lin::nominal_bits(length as u32)))),
        Medium::Serial => Some(plain(BITS_PER_BYTE * length)),
        Medium::Ethernet => Some(plain(packet_bits(length))),
        Medium::Most(_) => Some(plain(MOST25.bits(length as u32) as u64)),
        Medium::CanXl(_) | Medium::FlexRay(_) => None,
    }
}

/// The kinds of network that such a frame can be counted on.
pub(super) fn is_of(medium: Medium, kind: NetworkKind) -> bool {
    match medium {
        Medium::Can | Medium::CanXl(_) => kind.is_can(),
        Medium::Lin(_) => kind == NetworkKind::Lin,
        Medium::FlexRay(_) => kind == NetworkKind::FlexRay,
        Medium::Most(_) => kind == NetworkKind::Most,
        Medium::Serial => matches!(kind, NetworkKind::Kline | NetworkKind::Uart),
        Medium::Ethernet => kind == NetworkKind::Ethernet,
    }
}
