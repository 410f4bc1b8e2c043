//! Networks, the control units on them, and the plain wires beside them.

use serde::{Deserialize, Serialize};

use crate::{ActiveStar, EcuId, FlexRayTiming, Label, NetworkId, Telegram, Terminator};

/// One network of the vehicle.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Network {
    /// Name, title and notes.
    pub label: Label,
    /// What kind of network it is.
    pub kind: NetworkKind,
    /// The bit rate; for CAN FD and CAN XL the nominal one (arbitration phase).
    pub rate: Option<BitRate>,
    /// CAN FD and CAN XL: the bit rate of the data phase.
    pub data_rate: Option<BitRate>,
    /// Single-wire networks with a header of their own: what their messages look like.
    pub telegram: Option<Telegram>,
    /// FlexRay: cycle and slots, where something is stated of them.
    pub flexray: Option<FlexRayTiming>,
    /// CAN and FlexRay: the resistors that end its wires.
    pub terminators: Vec<Terminator>,
    /// FlexRay: the active star that its branches meet in; `None` where it is a line, or where its branches are only joined.
    pub star: Option<ActiveStar>,
}

/// The kinds of network that a description can declare.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NetworkKind {
    /// Classic CAN (ISO 11898-1): payloads of 0 to 8 bytes.
    Can,
    /// CAN FD (ISO 11898-1:2015): payloads of up to 64 bytes.
    CanFd,
    /// CAN XL (ISO 11898-1:2024): payloads of up to 2048 bytes, beside the frames of CAN FD.
    CanXl,
    /// LIN (ISO 17987).
    Lin,
    /// The single wire of diagnostics, with the headers of ISO 9141-2 and ISO 14230-2.
    Kline,
    /// Single-wire networks with the bytes of a serial port and a header of their own.
    Uart,
    /// FlexRay (ISO 17458).
    #[serde(rename = "flexray")]
    FlexRay,
    /// A MOST ring.
    Most,
    /// Automotive Ethernet.
    Ethernet,
}

impl NetworkKind {
    /// All kinds, in the order of the language page.
    pub const ALL: [Self; 9] = [
        Self::Can,
        Self::CanFd,
        Self::CanXl,
        Self::Lin,
        Self::Kline,
        Self::Uart,
        Self::FlexRay,
        Self::Most,
        Self::Ethernet,
    ];

    /// The word of the language.
    #[must_use]
    pub fn keyword(self) -> &'static str {
        match self {
            Self::Can => "can",
            Self::CanFd => "can_fd",
            Self::CanXl => "can_xl",
            Self::Lin => "lin",
            Self::Kline => "kline",
            Self::Uart => "uart",
            Self::FlexRay => "flexray",
            Self::Most => "most",
            Self::Ethernet => "ethernet",
        }
    }

    /// The longest payload of one frame, or of one message, in bytes.
    #[must_use]
    pub fn longest_payload(self) -> u32 {
        match self {
            Self::Can | Self::Lin => 8,
            Self::CanFd => 64,
            Self::CanXl => 2048,
            // ISO 14230-2: the length byte.
            Self::Kline => 255,
            Self::Uart => 4096,
            // FlexRay 2.1A: 127 words.
            Self::FlexRay => 254,
            Self::Most => 65_535,
            // SOME/IP and DoIP: 32 bits of length.
            Self::Ethernet => u32::MAX,
        }
    }

    /// Whether its frames are those of CAN.
    #[must_use]
    pub fn is_can(self) -> bool {
        matches!(self, Self::Can | Self::CanFd | Self::CanXl)
    }
}

/// A rate in bits per second.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct BitRate(pub u64);

/// A length of time in nanoseconds.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Nanoseconds(pub u64);

/// An electronic control unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ecu {
    /// Name, title and notes.
    pub label: Label,
    /// The networks it sits on.
    pub on: Vec<Attachment>,
    /// The networks whose timing it leads (LIN commander, master of a ring).
    pub leads: Vec<NetworkId>,
    /// Not fitted in every vehicle: its silence is not a fault.
    pub optional: bool,
}

/// A control unit's place on one network.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Attachment {
    /// The network.
    pub network: NetworkId,
    /// The unit's address there (SAE J1939 source address).
    pub address: Option<u8>,
    /// Its place on a MOST ring, 0..=63: counted along the ring from the timing master, which has 0.
    pub ring_position: Option<u8>,
}

/// A discrete wire: what still does not run over a network.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wire {
    /// The unit that drives it.
    pub from: EcuId,
    /// The units that read it; never empty.
    pub to: Vec<EcuId>,
    /// What it carries.
    pub what: String,
    /// The text of the `##` lines in front of it.
    pub note: Option<String>,
}
