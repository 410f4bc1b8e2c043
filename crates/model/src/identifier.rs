//! How frames are recognised: what a description says, and what a recording shows.

use serde::{Deserialize, Serialize};
use wirelore_bits::lin::LinChecksum;
use wirelore_bits::typed::pgn_of;

use crate::{FrameId, NetworkKind};

/// How a frame is recognised.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Identifier {
    /// CAN and CAN FD: one identifier or an unbroken run of them.
    Can {
        /// The first identifier: 0..=0x7FF, or 0..=0x1FFF_FFFF if extended.
        first: u32,
        /// The last identifier, not below `first`.
        last: u32,
        /// 29 bits instead of 11.
        extended: bool,
    },
    /// An SAE J1939 parameter group, in 29-bit identifiers.
    Pgn {
        /// The parameter group number: 18 bits; its low byte is 0 where the group is sent to a destination (PF below 240).
        pgn: u32,
        /// The source addresses that count; empty: any.
        sources: Vec<u8>,
        /// The priority that counts, 0..=7; `None`: any.
        priority: Option<u8>,
    },
    /// A CAN XL frame, by what its receivers look at.
    Xl {
        /// The acceptance field.
        acceptance: u32,
        /// The priority that counts, 0..=0x7FF; `None`: any.
        priority: Option<u16>,
    },
    /// A LIN frame.
    Lin {
        /// 0..=63, without the parity bits.
        id: u8,
        /// The checksum that guards it; 60..=63 have the classic one.
        checksum: LinChecksum,
        /// An event-triggered frame: its answer is one of these frames, told by the protected identifier in its first byte.
        stands_for: Vec<FrameId>,
    },
    /// A FlexRay frame: a slot in some of the cycles.
    #[serde(rename = "flexray")]
    FlexRay {
        /// 1..=2047.
        slot: u16,
        /// The first cycle it is sent in, below `repetition`.
        first_cycle: u8,
        /// It is sent every so many cycles: 1, 2, 4, 5, 8, 10, 16, 20, 32, 40, 50 or 64.
        repetition: u8,
        /// Where it is sent.
        channels: FlexRayChannels,
    },
    /// A message of a single-wire network.
    Telegram {
        /// The address of the sender that counts; `None`: any.
        source: Option<u8>,
        /// The address of the receiver that counts; `None`: any.
        target: Option<u8>,
        /// The bytes its data begins with; may be empty.
        starts: Vec<u8>,
    },
    /// A MOST control message.
    Most {
        /// The function block (FBlockID).
        block: u8,
        /// The instance (InstID); `None`: any.
        instance: Option<u8>,
        /// The function (FktID), 12 bits.
        function: u16,
        /// The operation (OPType), 4 bits; `None`: any.
        operation: Option<u8>,
    },
    /// A SOME/IP message.
    SomeIp {
        /// The service.
        service: u16,
        /// The method, or the event (from 0x8000 on).
        method: u16,
        /// The message type that counts; `None`: any.
        message_type: Option<u8>,
    },
    /// Whatever goes to, or comes from, a port.
    Port {
        /// UDP or TCP.
        protocol: PortProtocol,
        /// The port.
        port: u16,
    },
    /// A DoIP message (ISO 13400-2).
    #[serde(rename = "doip")]
    DoIp {
        /// The payload type.
        payload_type: u16,
        /// The logical address of the sender that counts, in messages that carry diagnostics; `None`: any.
        source: Option<u16>,
        /// The logical address of the receiver that counts; `None`: any.
        target: Option<u16>,
    },
}

/// The channels of a FlexRay network.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FlexRayChannels {
    /// Channel A.
    A,
    /// Channel B.
    B,
    /// Both.
    Both,
}

/// What a port belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PortProtocol {
    /// Datagrams.
    Udp,
    /// Streams.
    Tcp,
}

/// What a recorded frame shows of itself to be recognised by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SeenId {
    /// CAN and CAN FD.
    Can {
        /// The identifier, without flags.
        id: u32,
        /// 29 bits instead of 11.
        extended: bool,
    },
    /// CAN XL.
    Xl {
        /// The acceptance field.
        acceptance: u32,
        /// The priority.
        priority: u16,
    },
    /// LIN: the identifier without parity.
    Lin(u8),
    /// FlexRay.
    FlexRay {
        /// The slot.
        slot: u16,
        /// The cycle.
        cycle: u8,
        /// Seen on channel B; else on channel A.
        on_b: bool,
    },
    /// A message of a single-wire network; what its header does not tell is `None`.
    Telegram {
        /// The sender.
        source: Option<u8>,
        /// The receiver.
        target: Option<u8>,
    },
    /// A MOST control message.
    Most {
        /// The function block.
        block: u8,
        /// The instance.
        instance: u8,
        /// The function.
        function: u16,
        /// The operation.
        operation: u8,
    },
    /// A SOME/IP message.
    SomeIp {
        /// The service.
        service: u16,
        /// The method or event.
        method: u16,
        /// The message type.
        message_type: u8,
    },
    /// A datagram, or a piece of a stream, that is nothing better known.
    Ports {
        /// UDP or TCP.
        protocol: PortProtocol,
        /// The sender's port.
        from: u16,
        /// The receiver's port.
        to: u16,
    },
    /// A DoIP message.
    DoIp {
        /// The payload type.
        payload_type: u16,
        /// The sender's logical address, where the message carries one.
        source: Option<u16>,
        /// The receiver's logical address.
        target: Option<u16>,
    },
    /// A packet that carries none of these.
    Packet {
        /// Its EtherType.
        ether_type: u16,
    },
}

impl Identifier {
    /// Whether a frame that shows this, with these data bytes, is the one that is described.
    #[must_use]
    pub fn matches(&self, seen: SeenId, payload: &[u8]) -> bool {
        match (self, seen) {
            (Self::Can { first, last, extended: long }, SeenId::Can { id, extended }) => {
                *long == extended && (*first..=*last).contains(&id)
            }
            (Self::Pgn { pgn, sources, priority }, SeenId::Can { id, extended }) => {
                extended
                    && pgn_of(id) == *pgn
                    && (sources.is_empty() || sources.contains(&(id as u8)))
                    && priority.is_none_or(|p| u32::from(p) == id >> 26)
            }
            (Self::Xl { acceptance, priority }, SeenId::Xl { acceptance: seen, priority: seen_priority }) => {
                *acceptance == seen && priority.is_none_or(|priority| priority == seen_priority)
            }
            (Self::Lin { id, .. }, SeenId::Lin(seen)) => *id == seen,
            (
                Self::FlexRay { slot, first_cycle, repetition, channels },
                SeenId::FlexRay { slot: seen, cycle, on_b },
            ) => {
                let on_channel = match channels {
                    FlexRayChannels::A => !on_b,
                    FlexRayChannels::B => on_b,
                    FlexRayChannels::Both => true,
                };
                *slot == seen && on_channel && cycle.checked_rem(*repetition) == Some(*first_cycle)
            }
            (Self::Telegram { source, target, starts }, SeenId::Telegram { source: from, target: to }) => {
                fits(*source, from) && fits(*target, to) && payload.starts_with(starts)
            }
            (
                Self::Most { block, instance, function, operation },
                SeenId::Most {
                    block: seen,
                    instance: seen_instance,
                    function: seen_function,
                    operation: seen_operation,
                },
            ) => {
                *block == seen
                    && *function == seen_function
                    && instance.is_none_or(|instance| instance == seen_instance)
                    && operation.is_none_or(|operation| operation == seen_operation)
            }
            (
                Self::SomeIp { service, method, message_type },
                SeenId::SomeIp { service: seen, method: seen_method, message_type: seen_type },
            ) => *service == seen && *method == seen_method && message_type.is_none_or(|wanted| wanted == seen_type),
            (Self::Port { protocol, port }, SeenId::Ports { protocol: seen, from, to }) => {
                *protocol == seen && (*port == from || *port == to)
            }
            (
                Self::DoIp { payload_type, source, target },
                SeenId::DoIp { payload_type: seen, source: from, target: to },
            ) => *payload_type == seen && fits(*source, from) && fits(*target, to),
            _ => false,
        }
    }

    /// The longest payload of a frame that is recognised like this on a network of this kind, in bytes.
    #[must_use]
    pub fn longest_payload(&self, kind: NetworkKind) -> u32 {
        match self {
            // Only the frames of CAN XL itself are longer there.
            Self::Can { .. } | Self::Pgn { .. } if kind == NetworkKind::CanXl => NetworkKind::CanFd.longest_payload(),
            _ => kind.longest_payload(),
        }
    }

    /// Whether frames of a network of this kind can be recognised like this.
    #[must_use]
    pub fn belongs_on(&self, kind: NetworkKind) -> bool {
        match self {
            Self::Can { .. } => matches!(kind, NetworkKind::Can | NetworkKind::CanFd | NetworkKind::CanXl),
            Self::Pgn { .. } => matches!(kind, NetworkKind::Can | NetworkKind::CanFd | NetworkKind::CanXl),
            Self::Xl { .. } => kind == NetworkKind::CanXl,
            Self::Lin { .. } => kind == NetworkKind::Lin,
            Self::FlexRay { .. } => kind == NetworkKind::FlexRay,
            Self::Telegram { .. } => matches!(kind, NetworkKind::Kline | NetworkKind::Uart),
            Self::Most { .. } => kind == NetworkKind::Most,
            Self::SomeIp { .. } | Self::Port { .. } | Self::DoIp { .. } => kind == NetworkKind::Ethernet,
        }
    }
}

/// Whether something that counts only where it is stated is what was seen.
fn fits<T: PartialEq>(wanted: Option<T>, seen: Option<T>) -> bool {
    wanted.is_none() || wanted == seen
}
