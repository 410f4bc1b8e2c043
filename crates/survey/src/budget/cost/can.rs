//! Frames of CAN and CAN FD: bits at the nominal rate and at the data rate, and the time that both take.

use wirelore_bits::can_frame::{CanFrame, Format, Shape, WireBits};
use wirelore_log::{Frame, Kind};
use wirelore_model::{Network, NetworkKind};

use super::Spread;

/// The bits of a frame, without stuff bits and at the bound.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CanCost {
    /// Without stuff bits.
    pub least: WireBits,
    /// At most.
    pub most: WireBits,
}

/// A described frame. On a network of CAN FD all frames count as frames of CAN FD, and switch the rate where a data rate is described.
pub(crate) fn can_cost(network: &Network, extended: bool, bytes: u32) -> CanCost {
    let format = match network.kind {
        NetworkKind::Can => Format::Data,
        _ => Format::Fd { bit_rate_switch: network.data_rate.is_some() },
    };
    let shape = Shape { extended, format };
    let bytes = bytes.min(if network.kind == NetworkKind::Can { 8 } else { 64 });
    CanCost { least: shape.unstuffed(bytes).unwrap_or_default(), most: shape.longest(bytes).unwrap_or_default() }
}

impl CanCost {
    pub(super) fn bits(self) -> Spread {
        Spread::stuffed(self.least.total().into(), self.most.total().into())
    }

    pub(super) fn seconds(self, network: &Network) -> Option<Spread> {
        Some(Spread::stuffed(seconds(self.least, network)?, seconds(self.most, network)?))
    }
}

/// How long some bits take; `None` where a rate that it takes is not described.
pub(crate) fn seconds(bits: WireBits, network: &Network) -> Option<f64> {
    let nominal = f64::from(bits.nominal) / network.rate?.0 as f64;
    match bits.data {
        0 => Some(nominal),
        // Frames that switched on a network that describes one rate only count at that one.
        data => Some(nominal + f64::from(data) / network.data_rate.or(network.rate)?.0 as f64),
    }
}

/// The exact bits of a recorded frame, and those without its stuff bits; `None` if it is no frame of these formats or cannot have been
/// sent like this.
pub(crate) fn seen_cost(frame: &Frame<'_>) -> Option<(WireBits, WireBits)> {
    let format = match (frame.kind, frame.fd) {
        (Kind::Remote, _) => Format::Remote,
        (_, true) => Format::Fd { bit_rate_switch: frame.bit_rate_switch },
        (_, false) => Format::Data,
    };
    let shape = Shape { extended: frame.extended, format };
    let dlc = frame.dlc.filter(|_| !frame.fd);
    let known = CanFrame { identifier: frame.id, shape, error_state: frame.error_state, dlc, payload: frame.payload };
    let bytes = u32::try_from(frame.payload.len()).ok()?;
    Some((known.bits()?, shape.unstuffed(bytes)?))
}
