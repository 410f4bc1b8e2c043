//! Ethernet packets: headers, padding, preamble and gap (IEEE 802.3; IPv4, UDP and TCP by RFC 791, 768 and 9293).

use wirelore_model::{Identifier, PortProtocol};

use super::Spread;

/// Preamble and start of frame, and the gap behind a frame.
const PREAMBLE_BYTES: u64 = 8;
const GAP_BYTES: u64 = 12;
/// Two addresses and a type; the check sequence.
const HEADER_BYTES: u64 = 14;
const CHECK_BYTES: u64 = 4;
/// Header, content and check sequence have at least so many (64 with a tag as well).
const FRAME_BYTES_MIN: u64 = 64;
/// The tag of a virtual network (IEEE 802.1Q).
const TAG_BYTES: u64 = 4;
/// The most content of a frame.
const CONTENT_BYTES_MAX: u64 = 1500;
const IP_BYTES: u64 = 20;
const UDP_BYTES: u64 = 8;
const TCP_BYTES: u64 = 20;
/// AUTOSAR PRS SOME/IP Protocol; ISO 13400-2.
const SERVICE_BYTES: u64 = 16;
const DOIP_BYTES: u64 = 8;

/// The bits of a packet as it was recorded, from its destination address on: most recorders leave the check sequence out.
pub(crate) fn packet_bits(recorded_bytes: u64) -> u64 {
    8 * (PREAMBLE_BYTES + (recorded_bytes + CHECK_BYTES).max(FRAME_BYTES_MIN) + GAP_BYTES)
}

/// The bits of a message, in as many packets as it needs: without tags at least, each with one at most. Services count as datagrams.
pub(super) fn bits(identifier: &Identifier, bytes: u32) -> Option<Spread> {
    let bytes = u64::from(bytes);
    let (message, headers) = match identifier {
        Identifier::SomeIp { .. } => (bytes + SERVICE_BYTES, UDP_BYTES),
        Identifier::DoIp { .. } => (bytes + DOIP_BYTES, TCP_BYTES),
        Identifier::Port { protocol: PortProtocol::Udp, .. } => (bytes, UDP_BYTES),
        Identifier::Port { protocol: PortProtocol::Tcp, .. } => (bytes, TCP_BYTES),
        _ => return None,
    };
    let room = CONTENT_BYTES_MAX - IP_BYTES - headers;
    let (whole, rest) = (message / room, message % room);
    let packet = |content: u64, tag: u64| packet_bits(HEADER_BYTES + tag + IP_BYTES + headers + content) as f64;
    let all = |tag: u64| {
        let last = if rest > 0 || whole == 0 { packet(rest, tag) } else { 0.0 };
        whole as f64 * packet(room, tag) + last
    };
    Some(Spread::between(all(0), all(TAG_BYTES)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IEEE 802.3: the smallest frame takes 8 + 64 + 12 bytes, which makes the known 148,810 a second at 100 Mbit/s; the largest without
    /// a tag 8 + 1518 + 12, which makes 8,127.
    #[test]
    fn the_smallest_and_the_largest_packet() {
        assert_eq!(packet_bits(60), 672);
        assert_eq!(packet_bits(14), 672, "padded");
        assert_eq!((100e6 / packet_bits(60) as f64).round(), 148_810.0);
        assert_eq!(packet_bits(1514), 8 * 1538);
        assert_eq!((100e6 / packet_bits(1514) as f64).round(), 8_127.0);
    }

    /// 10 bytes of an event: 16 + 8 + 20 + 14 bytes of headers and 4 of check sequence make 72.
    #[test]
    fn messages() {
        let event = Identifier::SomeIp { service: 0x4A10, method: 0x8001, message_type: None };
        assert_eq!(bits(&event, 10), Some(Spread::between(f64::from(8 * (8 + 72 + 12)), f64::from(8 * (8 + 76 + 12)))));
        let datagram = Identifier::Port { protocol: PortProtocol::Udp, port: 41_200 };
        // 1472 bytes fill a packet; one more needs another, the smallest.
        let of = |bytes| bits(&datagram, bytes).map(|bits| bits.least);
        assert_eq!((of(1472), of(1473)), (Some(12_304.0), Some(12_304.0 + 672.0)));
    }
}
