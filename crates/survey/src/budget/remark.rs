//! What is to be known of a network's figures beside them.

use wirelore_model::FrameId;

/// Something that the figures of a network rest on, or leave out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Remark {
    /// Its bit rate is not described: nothing can be held against it.
    NoRate,
    /// Nothing that is described on it has a period.
    NothingCounted,
    /// These frames have no described length, and count as long as they can be.
    LengthAssumed(Vec<FrameId>),
    /// These also come when a value changes, as often as it does: only their period counts.
    OnChangeOpen(Vec<FrameId>),
    /// Messages of these are cut into several frames; what receivers answer meanwhile is not counted.
    CutIntoFrames(Vec<FrameId>),
    /// A LIN network without a schedule: it counts by the periods of its frames.
    NoSchedule,
    /// A schedule whose slots have no lengths.
    RoundOpen(String),
    /// FlexRay: the static slots are not described, so that nothing can be held against them.
    NoSlots,
    /// MOST: at this rate the room for control messages is not known here.
    UnknownRing,
    /// Ethernet: a link joins two units, and each sends on wires of its own. The figures are those of one link that carries everything.
    OneLink,
    /// Single-wire networks: pauses between bytes are not described, and not counted.
    NoPauses,
}
