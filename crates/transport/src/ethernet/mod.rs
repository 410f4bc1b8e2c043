//! Ethernet: what a recorded packet carries.
//!
//! [`read`] is responsible for taking one packet apart, from the destination address on, and for telling exactly one outcome for it: UDP,
//! TCP, a fragment, something that is [named by number](Carried::Other) and not read on, or a [`PacketFault`]. It copies nothing.
//!
//! Fragments of IP datagrams are told and not put together: SOME/IP cuts its long messages itself (SOME/IP-TP) so that none is needed, and
//! DoIP runs over TCP. Checksums of UDP and TCP are not looked at: a recording made on the sending machine has them before the network
//! hardware fills them in. The checksum of an IPv4 header is told where it is wrong, and the packet is read all the same.
//!
//! ```
//! use wirelore_transport::ethernet::{Carried, read};
//!
//! let mut packet = vec![0x02, 0, 0, 0, 0, 2, 0x02, 0, 0, 0, 0, 1]; // to and from these addresses
//! packet.extend([0x81, 0x00, 0x60, 0x05]); // VLAN 5, priority 3
//! packet.extend([0x08, 0x00, 0x45, 0, 0, 30, 0, 1, 0, 0, 64, 17, 0x66, 0xCC, 10, 0, 0, 1, 10, 0, 0, 2]); // IPv4
//! packet.extend([0x77, 0x1A, 0x77, 0x1B, 0, 10, 0, 0, 0xCA, 0xFE]); // UDP from port 30490 to port 30491
//! let packet = read(&packet)?;
//! assert_eq!(packet.tags[0].map(|tag| (tag.vlan, tag.priority)), Some((5, 3)));
//! assert!(!packet.header_checksum_wrong);
//! let Carried::Udp { from, payload, .. } = packet.carried else { panic!("UDP") };
//! assert_eq!((from.to_string().as_str(), payload), ("10.0.0.1:30490", [0xCA, 0xFE].as_slice()));
//! # Ok::<(), wirelore_transport::ethernet::PacketFault>(())
//! ```

mod fault;
mod ip;
mod ports;

use std::net::{IpAddr, SocketAddr};

pub use fault::PacketFault;

use crate::fields::Fields;
use crate::tcp::Segment;

/// One packet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Packet<'a> {
    /// The MAC address that it is sent to.
    pub destination: [u8; 6],
    /// The MAC address that it comes from.
    pub source: [u8; 6],
    /// VLAN tags, the outer one first.
    pub tags: [Option<VlanTag>; 2],
    /// Whether it has an IPv4 header whose checksum is wrong.
    pub header_checksum_wrong: bool,
    /// What is inside.
    pub carried: Carried<'a>,
}

/// A VLAN tag (IEEE 802.1Q).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct VlanTag {
    /// 0..=7.
    pub priority: u8,
    /// Whether it may be dropped first.
    pub drop_eligible: bool,
    /// The number of the virtual network, 0..=4095; 0 says priority alone.
    pub vlan: u16,
}

/// What a packet carries.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Carried<'a> {
    /// A UDP datagram.
    Udp {
        /// Who sends.
        from: SocketAddr,
        /// Who receives, perhaps a group.
        to: SocketAddr,
        /// Its bytes.
        payload: &'a [u8],
    },
    /// A TCP segment.
    Tcp(Segment<'a>),
    /// A part of an IP datagram that was sent in parts; not read on.
    Fragment {
        /// Who sends.
        from: IpAddr,
        /// Who receives.
        to: IpAddr,
        /// What the datagram carries: 17 is UDP.
        protocol: u8,
        /// Where in the datagram it belongs.
        byte_index: u32,
        /// Whether it is the last part.
        is_last: bool,
        /// Its bytes.
        payload: &'a [u8],
    },
    /// Another protocol over IP.
    OtherOverIp {
        /// Who sends.
        from: IpAddr,
        /// Who receives.
        to: IpAddr,
        /// Its number in the register of IP protocols: 1 is ICMP, 2 IGMP.
        protocol: u8,
        /// What follows the IP header.
        payload: &'a [u8],
    },
    /// Another protocol over Ethernet.
    Other {
        /// Its EtherType: 0x0806 is ARP, 0x22F0 AVTP, 0x88F7 PTP.
        ether_type: u16,
        /// What follows the EtherType, padding included.
        payload: &'a [u8],
    },
    /// An IEEE 802.3 frame with a length instead of an EtherType.
    Llc {
        /// The bytes that the length tells, an LLC header first.
        payload: &'a [u8],
    },
}

const ETHER_TYPE_IPV4: u16 = 0x0800;
const ETHER_TYPE_IPV6: u16 = 0x86DD;
/// IEEE 802.1Q tag, 802.1ad outer tag, and the number that outer tags had before that standard.
pub const ETHER_TYPES_OF_TAGS: [u16; 3] = [0x8100, 0x88A8, 0x9100];
/// Smaller numbers in the place of the EtherType are lengths (IEEE 802.3).
const ETHER_TYPE_MIN: u16 = 0x0600;

/// Takes a packet apart that begins with the destination address and ends before the frame check sequence.
///
/// # Errors
/// The packet is cut, or a length in it is wrong.
pub fn read(bytes: &[u8]) -> Result<Packet<'_>, PacketFault> {
    let mut fields = Fields(bytes);
    let cut = PacketFault::EthernetCut { held: bytes.len() };
    let destination = fields.array().ok_or(cut)?;
    let source = fields.array().ok_or(cut)?;
    let mut ether_type = fields.u16().ok_or(cut)?;
    let mut tags = [None; 2];
    let mut slots = tags.iter_mut();
    while ETHER_TYPES_OF_TAGS.contains(&ether_type) {
        let slot = slots.next().ok_or(PacketFault::TooManyTags)?;
        let (Some(control), Some(inner)) = (fields.u16(), fields.u16()) else {
            return Err(PacketFault::TagCut { held: bytes.len() });
        };
        let (priority, drop_eligible) = ((control >> 13) as u8, control & 0x1000 != 0);
        *slot = Some(VlanTag { priority, drop_eligible, vlan: control & 0x0FFF });
        ether_type = inner;
    }
    let (header_checksum_wrong, carried) = match ether_type {
        ETHER_TYPE_IPV4 => ip::v4(fields.0)?,
        ETHER_TYPE_IPV6 => (false, ip::v6(fields.0)?),
        0..ETHER_TYPE_MIN => (false, llc(usize::from(ether_type), fields)?),
        _ => (false, Carried::Other { ether_type, payload: fields.0 }),
    };
    Ok(Packet { destination, source, tags, header_checksum_wrong, carried })
}

fn llc(told: usize, mut fields: Fields<'_>) -> Result<Carried<'_>, PacketFault> {
    let held = fields.0.len();
    let payload = fields.bytes(told).ok_or(PacketFault::LlcCut { told, held })?;
    Ok(Carried::Llc { payload })
}
