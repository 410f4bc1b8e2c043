//! What is particular to the frames of each kind of network.

pub use wirelore_bits::lin::LinChecksum;

use crate::faults::Faults;

/// The kind of network a frame was recorded on, with what its header says beside identifier and data.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Medium {
    /// Classic CAN and CAN FD (ISO 11898-1); also what a log does not say the kind of.
    #[default]
    Can,
    /// CAN XL (ISO 11898-1:2024). The identifier is the priority, 11 bits.
    CanXl(CanXl),
    /// LIN (ISO 17987). The identifier has 6 bits.
    Lin(Lin),
    /// FlexRay (ISO 17458). The identifier is the slot, 1..=2047.
    FlexRay(FlexRay),
    /// A MOST control message. The identifier holds function block (8 bits), instance (8), function (12) and operation (4).
    Most(Most),
    /// Bytes of a single-wire network: a whole message or a part of one. There is no identifier.
    Serial,
    /// An Ethernet frame from its destination address on, as it was recorded: most recorders leave the check sequence at its end out.
    /// There is no identifier.
    Ethernet,
}

impl Medium {
    /// What was wrong with the frame on the wire; none for networks whose faults no log tells.
    #[must_use]
    pub fn faults(&self) -> Faults {
        match self {
            Self::Lin(lin) => lin.faults,
            Self::FlexRay(flexray) => flexray.faults,
            Self::Can | Self::CanXl(_) | Self::Most(_) | Self::Serial | Self::Ethernet => Faults::NONE,
        }
    }
}

/// The header of a CAN XL frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct CanXl {
    /// What the data is (SDT).
    pub sdu_type: u8,
    /// The virtual network (VCID).
    pub virtual_network: u8,
    /// The acceptance field.
    pub acceptance: u32,
    /// Whether simple extended content is on (SEC).
    pub extended_content: bool,
    /// The remote request substitution bit (RRS).
    pub request_substitution: bool,
}

/// What a LIN log tells beside identifier and data.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Lin {
    /// The identifier as it was sent, with its two parity bits.
    pub protected_id: Option<u8>,
    /// The checksum as it was sent.
    pub checksum: Option<u8>,
    /// Which sum the recorder says it is.
    pub checksum_kind: Option<LinChecksum>,
    /// What was wrong on the wire.
    pub faults: Faults,
}

/// What the header of a FlexRay frame says beside the slot.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct FlexRay {
    /// The cycle it was sent in, 0..=63.
    pub cycle: u8,
    /// Seen on channel B; else on channel A.
    pub on_b: bool,
    /// The payload preamble indicator.
    pub preamble: bool,
    /// The sync frame indicator.
    pub sync: bool,
    /// The startup frame indicator.
    pub startup: bool,
    /// The header's own check sequence, 11 bits, as it was sent.
    pub header_crc: Option<u16>,
    /// What was wrong on the wire.
    pub faults: Faults,
}

/// How one recorded part stands in a longer MOST control message.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Most {
    /// 0 a whole message, 1 its first part, 2 one amid, 3 its last; `None` where the log holds whole messages.
    pub part: Option<u8>,
}
