//! Options: what entries refer to.

use std::net::{Ipv4Addr, Ipv6Addr, SocketAddr};

use super::SdFault;
use crate::fields::Fields;

/// One option.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SdOption<'a> {
    /// Whether a receiver that does not know it may leave it out.
    pub discardable: bool,
    /// What it tells.
    pub choice: Choice<'a>,
}

/// What an option tells.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Choice<'a> {
    /// Where somebody listens.
    Endpoint {
        /// What the address is for.
        role: EndpointRole,
        /// The address.
        address: SocketAddr,
        /// UDP or TCP.
        transport: Transport,
    },
    /// Texts, most of them `key=value`.
    Configuration {
        /// The texts in order.
        items: Vec<&'a [u8]>,
    },
    /// Which of several instances to prefer.
    LoadBalancing {
        /// Lower is preferred.
        priority: u16,
        /// Share among those of the same priority.
        weight: u16,
    },
    /// A type that the standard does not know.
    Other {
        /// Its type.
        kind: u8,
        /// What stands behind type and reserved byte.
        bytes: &'a [u8],
    },
}

/// What an address is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum EndpointRole {
    /// Messages of the service.
    Service,
    /// Events to many.
    Multicast,
    /// Service discovery itself.
    Discovery,
}

/// What runs over an address.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Transport {
    /// TCP.
    Tcp,
    /// UDP.
    Udp,
    /// Another IP protocol.
    Other(u8),
}

const CONFIGURATION: u8 = 0x01;
const LOAD_BALANCING: u8 = 0x02;
/// Types of addresses: role in the upper half, 4 or 6 in the lower.
const IPV4: u8 = 0x04;
const IPV6: u8 = 0x06;

const LOAD_BALANCING_BYTES: usize = 5;
const IPV4_BYTES: usize = 9;
const IPV6_BYTES: usize = 21;

/// `held`: bytes of the whole message.
pub(super) fn read_all(bytes: &[u8], held: usize) -> Result<Vec<SdOption<'_>>, SdFault> {
    let cut = SdFault::Cut { part: "options", held };
    let mut fields = Fields(bytes);
    let mut options = Vec::new();
    while !fields.0.is_empty() {
        // The length counts what stands behind the type.
        let told = usize::from(fields.u16().ok_or(cut)?);
        let kind = fields.u8().ok_or(cut)?;
        let content = fields.bytes(told).ok_or(cut)?;
        options.push(read(options.len(), kind, content)?);
    }
    Ok(options)
}

fn read(index: usize, kind: u8, content: &[u8]) -> Result<SdOption<'_>, SdFault> {
    let told = content.len();
    let wanted = match kind {
        LOAD_BALANCING => LOAD_BALANCING_BYTES,
        _ if role(kind, IPV4).is_some() => IPV4_BYTES,
        _ if role(kind, IPV6).is_some() => IPV6_BYTES,
        // The reserved byte, at least.
        _ => told.max(1),
    };
    let wrong_length = SdFault::OptionLength { index, kind, told, wanted };
    let (reserved, content) = content.split_first().ok_or(wrong_length)?;
    let choice = match kind {
        CONFIGURATION => Choice::Configuration { items: items(content).ok_or(SdFault::Configuration { index })? },
        _ if told != wanted => return Err(wrong_length),
        _ => typed(kind, content).ok_or(wrong_length)?,
    };
    Ok(SdOption { discardable: reserved & 0x80 != 0, choice })
}

/// `None` where `content` is too short.
fn typed(kind: u8, content: &[u8]) -> Option<Choice<'_>> {
    let mut fields = Fields(content);
    let (role, ip) = match (kind, role(kind, IPV4), role(kind, IPV6)) {
        (LOAD_BALANCING, ..) => {
            return Some(Choice::LoadBalancing { priority: fields.u16()?, weight: fields.u16()? });
        }
        (_, Some(role), _) => (role, Ipv4Addr::from(fields.u32()?).into()),
        (_, _, Some(role)) => (role, Ipv6Addr::from(fields.array::<16>()?).into()),
        _ => return Some(Choice::Other { kind, bytes: content }),
    };
    let (_, protocol, port) = (fields.u8()?, fields.u8()?, fields.u16()?);
    let transport = match protocol {
        6 => Transport::Tcp,
        17 => Transport::Udp,
        other => Transport::Other(other),
    };
    Some(Choice::Endpoint { role, address: SocketAddr::new(ip, port), transport })
}

/// What an address of this type and IP version is for; `None` where the type is another.
fn role(kind: u8, version: u8) -> Option<EndpointRole> {
    match kind.checked_sub(version)? {
        0x00 => Some(EndpointRole::Service),
        0x10 => Some(EndpointRole::Multicast),
        0x20 => Some(EndpointRole::Discovery),
        _ => None,
    }
}

/// Texts, each behind a byte with its length; a length of 0 ends them.
fn items(content: &[u8]) -> Option<Vec<&[u8]>> {
    let mut fields = Fields(content);
    let mut items = Vec::new();
    loop {
        match usize::from(fields.u8()?) {
            0 => return fields.0.is_empty().then_some(items),
            length => items.push(fields.bytes(length)?),
        }
    }
}

impl SdOption<'_> {
    pub(super) fn write(&self, out: &mut Vec<u8>) {
        let at = out.len();
        out.extend([0, 0, 0, u8::from(self.discardable) << 7]);
        out[at + 2] = match &self.choice {
            Choice::Endpoint { role, address, transport } => write_endpoint(*role, *address, *transport, out),
            Choice::Configuration { items } => {
                for item in items {
                    // A longer text cannot be told in one byte and is cut there.
                    let item = &item[..item.len().min(255)];
                    out.push(item.len() as u8);
                    out.extend(item);
                }
                out.push(0);
                CONFIGURATION
            }
            Choice::LoadBalancing { priority, weight } => {
                out.extend(priority.to_be_bytes());
                out.extend(weight.to_be_bytes());
                LOAD_BALANCING
            }
            Choice::Other { kind, bytes } => {
                out.extend(*bytes);
                *kind
            }
        };
        let length = (out.len() - at - 3) as u16;
        out[at..at + 2].copy_from_slice(&length.to_be_bytes());
    }
}

/// The type of the option.
fn write_endpoint(role: EndpointRole, address: SocketAddr, transport: Transport, out: &mut Vec<u8>) -> u8 {
    let version = match address {
        SocketAddr::V4(address) => {
            out.extend(address.ip().octets());
            IPV4
        }
        SocketAddr::V6(address) => {
            out.extend(address.ip().octets());
            IPV6
        }
    };
    let protocol = match transport {
        Transport::Tcp => 6,
        Transport::Udp => 17,
        Transport::Other(other) => other,
    };
    out.extend([0, protocol]);
    out.extend(address.port().to_be_bytes());
    let role = match role {
        EndpointRole::Service => 0x00,
        EndpointRole::Multicast => 0x10,
        EndpointRole::Discovery => 0x20,
    };
    role + version
}
