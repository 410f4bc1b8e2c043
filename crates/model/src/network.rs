//! Networks, the control units on them, and the plain wires beside them.

use serde::{Deserialize, Serialize};

use crate::{EcuId, Label, NetworkId};

/// One network of the vehicle.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Network {
    /// Name, title and notes.
    pub label: Label,
    /// What kind of network it is.
    pub kind: NetworkKind,
    /// The bit rate; for CAN FD the nominal one (arbitration phase).
    pub rate: Option<BitRate>,
    /// CAN FD: the bit rate of the data phase.
    pub data_rate: Option<BitRate>,
}

/// The kinds of network that a description can declare.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NetworkKind {
    /// Classic CAN (ISO 11898-1): payloads of 0 to 8 bytes.
    Can,
    /// CAN FD (ISO 11898-1:2015): payloads of up to 64 bytes.
    CanFd,
    /// LIN (ISO 17987).
    Lin,
    /// Single-wire networks with a UART's bytes (ISO 9141-2, ISO 14230 and their like).
    Kline,
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
    pub const ALL: [Self; 7] =
        [Self::Can, Self::CanFd, Self::Lin, Self::Kline, Self::FlexRay, Self::Most, Self::Ethernet];

    /// The word of the language.
    #[must_use]
    pub fn keyword(self) -> &'static str {
        match self {
            Self::Can => "can",
            Self::CanFd => "can_fd",
            Self::Lin => "lin",
            Self::Kline => "kline",
            Self::FlexRay => "flexray",
            Self::Most => "most",
            Self::Ethernet => "ethernet",
        }
    }

    /// The longest payload of one frame in bytes, for the kinds whose frames can be described; `None` for the others.
    #[must_use]
    pub fn longest_payload(self) -> Option<u16> {
        match self {
            Self::Can => Some(8),
            Self::CanFd => Some(64),
            _ => None,
        }
    }
}

/// A rate in bits per second.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct BitRate(pub u64);

/// A length of time in nanoseconds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
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
