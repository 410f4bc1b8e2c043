//! IPv4 (RFC 791) and IPv6 (RFC 8200).

use std::net::{IpAddr, Ipv4Addr, Ipv6Addr};

use super::{Carried, PacketFault, ports};
use crate::fields::Fields;

const IPV4_HEADER_MIN: usize = 20;
const IPV6_HEADER: usize = 40;

/// Whether the checksum is wrong, and what is inside.
pub(super) fn v4(bytes: &[u8]) -> Result<(bool, Carried<'_>), PacketFault> {
    let held = bytes.len();
    let cut = PacketFault::IpHeaderCut { held };
    let first = *bytes.first().ok_or(cut)?;
    version(first, 4)?;
    let header = usize::from(first & 0x0F) * 4;
    if header < IPV4_HEADER_MIN {
        return Err(PacketFault::IpHeaderLength { told: header });
    }
    let mut fields = Fields(bytes.get(..header).ok_or(cut)?);
    let checksum_wrong = !sums_to_ones(fields.0);
    let (_, total) = (fields.u16().ok_or(cut)?, fields.u16().ok_or(cut)?);
    let (_, fragment) = (fields.u16().ok_or(cut)?, fields.u16().ok_or(cut)?);
    let (_, protocol, _) = (fields.u8().ok_or(cut)?, fields.u8().ok_or(cut)?, fields.u16().ok_or(cut)?);
    let from = IpAddr::V4(Ipv4Addr::from(fields.u32().ok_or(cut)?));
    let to = IpAddr::V4(Ipv4Addr::from(fields.u32().ok_or(cut)?));

    // The sending machine's recorder sees packets before its hardware cuts them; where they are too long for the field, it is 0
    // (common practice, no source).
    let told = if total == 0 { held } else { usize::from(total) };
    if told < header {
        return Err(PacketFault::IpLength { header, told });
    }
    // What lies behind the datagram is padding: an Ethernet packet has at least 60 bytes.
    let payload = bytes.get(header..told).ok_or(PacketFault::IpCut { told, held })?;
    let (byte_index, is_last) = (u32::from(fragment & 0x1FFF) * 8, fragment & 0x2000 == 0);
    let carried = if byte_index > 0 || !is_last {
        Carried::Fragment { from, to, protocol, byte_index, is_last, payload }
    } else {
        ports::read(protocol, from, to, payload)?
    };
    Ok((checksum_wrong, carried))
}

const HOP_BY_HOP: u8 = 0;
const ROUTING: u8 = 43;
const FRAGMENT: u8 = 44;
const AUTHENTICATION: u8 = 51;
const DESTINATION_OPTIONS: u8 = 60;

pub(super) fn v6(bytes: &[u8]) -> Result<Carried<'_>, PacketFault> {
    let held = bytes.len();
    let cut = PacketFault::IpHeaderCut { held };
    version(*bytes.first().ok_or(cut)?, 6)?;
    let mut fields = Fields(bytes);
    let (_, length) = (fields.u32().ok_or(cut)?, fields.u16().ok_or(cut)?);
    let (mut protocol, _) = (fields.u8().ok_or(cut)?, fields.u8().ok_or(cut)?);
    let from = IpAddr::V6(Ipv6Addr::from(fields.array::<16>().ok_or(cut)?));
    let to = IpAddr::V6(Ipv6Addr::from(fields.array::<16>().ok_or(cut)?));

    let told = IPV6_HEADER + usize::from(length);
    let mut rest = Fields(bytes.get(IPV6_HEADER..told).ok_or(PacketFault::IpCut { told, held })?);
    let cut = PacketFault::IpHeaderCut { held: told };
    loop {
        let extension = rest;
        match protocol {
            HOP_BY_HOP | ROUTING | DESTINATION_OPTIONS | AUTHENTICATION => {
                let (next, length) = (rest.u8().ok_or(cut)?, usize::from(rest.u8().ok_or(cut)?));
                // RFC 4302 counts in words of 4 bytes and leaves out two, RFC 8200 in 8 bytes and leaves out one.
                let length = if protocol == AUTHENTICATION { (length + 2) * 4 } else { (length + 1) * 8 };
                rest = extension;
                rest.bytes(length).ok_or(cut)?;
                protocol = next;
            }
            FRAGMENT => {
                let (next, _) = (rest.u8().ok_or(cut)?, rest.u8().ok_or(cut)?);
                let (place, _) = (rest.u16().ok_or(cut)?, rest.u32().ok_or(cut)?);
                let (byte_index, is_last) = (u32::from(place & 0xFFF8), place & 1 == 0);
                protocol = next;
                if byte_index > 0 || !is_last {
                    return Ok(Carried::Fragment { from, to, protocol, byte_index, is_last, payload: rest.0 });
                }
            }
            _ => return ports::read(protocol, from, to, rest.0),
        }
    }
}

fn version(first: u8, wanted: u8) -> Result<(), PacketFault> {
    let told = first >> 4;
    if told == wanted { Ok(()) } else { Err(PacketFault::IpVersion { told, wanted }) }
}

/// Whether the ones' complement sum over the header, checksum included, is all ones (RFC 1071).
fn sums_to_ones(header: &[u8]) -> bool {
    let words = header.chunks_exact(2).map(|word| u32::from(word[0]) << 8 | u32::from(word[1]));
    // At most 30 words: one carry, and perhaps another out of adding it.
    let sum: u32 = words.sum();
    let sum = (sum & 0xFFFF) + (sum >> 16);
    (sum & 0xFFFF) + (sum >> 16) == 0xFFFF
}
