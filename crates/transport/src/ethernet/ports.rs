//! UDP (RFC 768) and the header of TCP (RFC 9293).

use std::net::{IpAddr, SocketAddr};

use super::{Carried, PacketFault};
use crate::fields::Fields;
use crate::tcp::{Flow, Segment};

const TCP: u8 = 6;
const UDP: u8 = 17;
const UDP_HEADER: usize = 8;
const TCP_HEADER_MIN: usize = 20;

/// What an IP datagram carries.
pub(super) fn read(protocol: u8, from: IpAddr, to: IpAddr, payload: &[u8]) -> Result<Carried<'_>, PacketFault> {
    let held = payload.len();
    match protocol {
        UDP => udp(from, to, payload).ok_or(PacketFault::PortsCut { protocol: "UDP", held })?,
        TCP => tcp(from, to, payload).ok_or(PacketFault::PortsCut { protocol: "TCP", held })?,
        _ => Ok(Carried::OtherOverIp { from, to, protocol, payload }),
    }
}

/// `None` where the header is cut.
fn udp(from: IpAddr, to: IpAddr, bytes: &[u8]) -> Option<Result<Carried<'_>, PacketFault>> {
    let mut fields = Fields(bytes);
    let (from, to) = (SocketAddr::new(from, fields.u16()?), SocketAddr::new(to, fields.u16()?));
    let (told, _) = (usize::from(fields.u16()?), fields.u16()?);
    Some(match bytes.get(UDP_HEADER..told) {
        Some(payload) => Ok(Carried::Udp { from, to, payload }),
        None => Err(PacketFault::UdpLength { told, held: bytes.len() }),
    })
}

/// `None` where the header is cut.
fn tcp(from: IpAddr, to: IpAddr, bytes: &[u8]) -> Option<Result<Carried<'_>, PacketFault>> {
    let mut fields = Fields(bytes);
    let flow = Flow { from: SocketAddr::new(from, fields.u16()?), to: SocketAddr::new(to, fields.u16()?) };
    let (sequence, acknowledged) = (fields.u32()?, fields.u32()?);
    let (offset, flags) = (fields.u8()?, fields.u8()?);
    // Window, checksum and urgent pointer.
    fields.bytes(6)?;
    let (told, held) = (usize::from(offset >> 4) * 4, bytes.len());
    Some(match bytes.get(told..) {
        Some(payload) if told >= TCP_HEADER_MIN => Ok(Carried::Tcp(Segment {
            flow,
            sequence,
            acknowledged: (flags & 0x10 != 0).then_some(acknowledged),
            syn: flags & 0x02 != 0,
            fin: flags & 0x01 != 0,
            reset: flags & 0x04 != 0,
            payload,
        })),
        _ => Err(PacketFault::TcpHeaderLength { told, held }),
    })
}
