//! What one frame costs on its network: bits, and the time that they take.

mod can;
mod ethernet;
mod most;
mod serial;

use wirelore_bits::lin;
use wirelore_model::{Identifier, Network, NetworkKind};

pub use can::CanCost;
pub(crate) use can::{can_cost, seen_cost};
pub(crate) use ethernet::packet_bits;
pub(crate) use most::MOST25;
pub(crate) use serial::BITS_PER_BYTE;

/// A figure at its least, as is to be expected, and at its most.
///
/// CAN: without stuff bits; nine tenths of the bound, as recorded frames are about 10 % shorter than it (Nolte, Hansson, Norström,
/// Punnekkat 2001), and never below the least; the bound. LIN: the nominal length, twice, and the 1.4 times that a frame may take. On
/// other networks what is not known makes no difference: the first two are equal.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Spread {
    /// At least.
    pub least: f64,
    /// As is to be expected.
    pub expected: f64,
    /// At most.
    pub most: f64,
}

/// Recorded frames of CAN are about 10 % shorter than the bound (Nolte, Hansson, Norström, Punnekkat 2001).
const EXPECTED_OF_MOST: f64 = 0.9;

impl Spread {
    /// What is to be expected, where that is a figure of its own: only of the stuff bits of CAN something is known in between.
    #[must_use]
    pub fn expected_on(self, kind: NetworkKind) -> Option<f64> {
        kind.is_can().then_some(self.expected)
    }

    /// Where nothing is known in between.
    #[must_use]
    pub fn between(least: f64, most: f64) -> Self {
        Self { least, expected: least, most }
    }

    /// Of frames with stuff bits.
    fn stuffed(least: f64, most: f64) -> Self {
        Self { least, expected: least.max(EXPECTED_OF_MOST * most), most }
    }

    /// So much a second: the first two at the usual rate, the last one at the highest.
    pub(super) fn at_rates(self, usual_per_s: f64, most_per_s: f64) -> Self {
        Self { least: self.least * usual_per_s, expected: self.expected * usual_per_s, most: self.most * most_per_s }
    }

    pub(super) fn add(&mut self, other: Self) {
        self.least += other.least;
        self.expected += other.expected;
        self.most += other.most;
    }
}

/// What one frame costs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cost {
    /// Bits on the wire, the pause behind the frame among them.
    pub bits: Spread,
    /// The part of a second that they take; `None` where the rate is not described.
    pub seconds: Option<Spread>,
}

impl Cost {
    fn at(bits: Spread, rate: Option<u64>) -> Self {
        let per = |rate: u64| {
            let time = |bits: f64| bits / rate as f64;
            Spread { least: time(bits.least), expected: time(bits.expected), most: time(bits.most) }
        };
        Self { bits, seconds: rate.map(per) }
    }
}

/// LIN allows a frame 1.4 times its nominal length (LIN 2.2A, section 2.3.2).
const LIN_MOST: f64 = 1.4;
/// What a frame of so many payload bytes costs; `None` where it is not calculated.
pub(super) fn cost(network: &Network, identifier: &Identifier, bytes: u32) -> Option<Cost> {
    let rate = network.rate.map(|rate| rate.0);
    match network.kind {
        NetworkKind::Can | NetworkKind::CanFd | NetworkKind::CanXl => {
            let extended = match identifier {
                Identifier::Can { extended, .. } => *extended,
                Identifier::Pgn { .. } => true,
                _ => return None,
            };
            let can = can_cost(network, extended, bytes);
            let seconds = can.seconds(network);
            Some(Cost { bits: can.bits(), seconds })
        }
        NetworkKind::Lin => {
            let nominal = f64::from(lin::nominal_bits(bytes));
            Some(Cost::at(Spread::between(nominal, LIN_MOST * nominal), rate))
        }
        NetworkKind::Kline | NetworkKind::Uart => Some(Cost::at(serial::bits(network, bytes), rate)),
        NetworkKind::Ethernet => ethernet::bits(identifier, bytes).map(|bits| Cost::at(bits, rate)),
        NetworkKind::Most => MOST25.is_ring(network).then(|| {
            let bits = MOST25.bits(bytes);
            let seconds = bits / MOST25.bits_per_s();
            Cost { bits: Spread::between(bits, bits), seconds: Some(Spread::between(seconds, seconds)) }
        }),
        NetworkKind::FlexRay => None,
    }
}
