//! Datagrams in a recording of Ethernet.

/// A pcap file (link type 1) with a datagram a second, each with the port that it goes to and comes from.
pub(crate) fn datagrams(port: u16, payloads: &[Vec<u8>]) -> Vec<u8> {
    let mut file = vec![0xD4, 0xC3, 0xB2, 0xA1, 2, 0, 4, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0xFF, 0xFF, 0, 0, 1, 0, 0, 0];
    for (payload, second) in payloads.iter().zip(0_u32..) {
        let packet = packet(port, payload);
        let length = (packet.len() as u32).to_le_bytes();
        for word in [second.to_le_bytes(), [0; 4], length, length] {
            file.extend_from_slice(&word);
        }
        file.extend(packet);
    }
    file
}

/// Ethernet, IPv4 and UDP around a payload (RFC 894, 791, 768; checksums of 0, as where the hardware fills them in).
fn packet(port: u16, payload: &[u8]) -> Vec<u8> {
    let [udp_high, udp_low] = (payload.len() as u16 + 8).to_be_bytes();
    let [ip_high, ip_low] = (payload.len() as u16 + 28).to_be_bytes();
    let [port_high, port_low] = port.to_be_bytes();
    let mut packet = vec![2, 0, 0, 0, 0, 2, 2, 0, 0, 0, 0, 1, 0x08, 0x00];
    packet.extend([0x45, 0, ip_high, ip_low, 0, 0, 0x40, 0, 64, 17, 0, 0, 192, 168, 7, 1, 192, 168, 7, 2]);
    packet.extend([port_high, port_low, port_high, port_low, udp_high, udp_low, 0, 0]);
    packet.extend_from_slice(payload);
    packet
}

/// A SOME/IP message (AUTOSAR PRS SOME/IP Protocol, from memory): service and method, length, client and session, versions, type, return
/// code, payload.
pub(crate) fn someip(ids: u32, client: u16, session: u16, message_type: u8, payload: &[u8]) -> Vec<u8> {
    let mut message = ids.to_be_bytes().to_vec();
    message.extend((payload.len() as u32 + 8).to_be_bytes());
    message.extend(client.to_be_bytes());
    message.extend(session.to_be_bytes());
    message.extend([1, 1, message_type, 0]);
    message.extend_from_slice(payload);
    message
}
