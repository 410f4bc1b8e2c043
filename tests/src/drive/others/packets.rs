//! Packets of Ethernet, byte by byte: ARP, UDP and TCP over IPv4, with their checksums.

/// A unit on the backbone, or at its connector.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Host {
    pub(super) mac: [u8; 6],
    pub(super) ip: [u8; 4],
}

impl Host {
    /// Locally administered (IEEE 802), and of the addresses that are kept for documentation (RFC 5737).
    const fn numbered(number: u8) -> Self {
        Self { mac: [0x02, 0x4B, 0x33, 0x00, 0x00, number], ip: [192, 0, 2, number] }
    }
}

pub(super) const HUB: Host = Host::numbered(1);
pub(super) const TELEMATICS: Host = Host::numbered(20);
pub(super) const TESTER: Host = Host::numbered(99);

/// One end of a conversation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct End {
    pub(super) host: Host,
    pub(super) port: u16,
}

/// What a TCP header says beside the ports.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Control {
    pub(super) sequence: u32,
    pub(super) acknowledged: Option<u32>,
    pub(super) syn: bool,
    pub(super) fin: bool,
    /// The receiver is to hand on what it has.
    pub(super) push: bool,
}

/// The fewest bytes of a packet, check sequence left out (IEEE 802.3).
const PACKET_BYTES_MIN: usize = 60;
const ETHER_TYPE_IPV4: u16 = 0x0800;
const ETHER_TYPE_ARP: u16 = 0x0806;
const ETHER_TYPE_TAG: u16 = 0x8100;
const PROTOCOL_TCP: u8 = 6;
const PROTOCOL_UDP: u8 = 17;
const TIME_TO_LIVE: u8 = 64;
const WINDOW: u16 = 8192;

/// Asks everybody who has an address (RFC 826).
pub(super) fn arp_question(asking: Host, wanted: [u8; 4]) -> Vec<u8> {
    let mut packet = header([0xFF; 6], asking.mac, None, ETHER_TYPE_ARP);
    arp(&mut packet, 1, asking, Host { mac: [0; 6], ip: wanted });
    packet
}

/// The answer of the one who has it.
pub(super) fn arp_answer(answering: Host, asking: Host) -> Vec<u8> {
    let mut packet = header(asking.mac, answering.mac, None, ETHER_TYPE_ARP);
    arp(&mut packet, 2, answering, asking);
    packet
}

fn arp(packet: &mut Vec<u8>, operation: u16, from: Host, to: Host) {
    packet.extend([0, 1]); // Ethernet
    packet.extend(ETHER_TYPE_IPV4.to_be_bytes());
    packet.extend([6, 4]); // lengths of the addresses
    packet.extend(operation.to_be_bytes());
    for host in [from, to] {
        packet.extend(host.mac);
        packet.extend(host.ip);
    }
    pad(packet);
}

/// A datagram, perhaps on a virtual network.
pub(super) fn datagram(from: End, to: End, vlan: Option<u16>, number: u16, payload: &[u8]) -> Vec<u8> {
    let mut udp = Vec::new();
    udp.extend(from.port.to_be_bytes());
    udp.extend(to.port.to_be_bytes());
    udp.extend((8 + payload.len() as u16).to_be_bytes());
    udp.extend([0; 2]);
    udp.extend(payload);
    let sum = checksum(&udp, pseudo_header(from.host, to.host, PROTOCOL_UDP, udp.len()));
    // 0 would say that there is none (RFC 768).
    udp[6..8].copy_from_slice(&if sum == 0 { 0xFFFF } else { sum }.to_be_bytes());
    ip((from.host, to.host), vlan, PROTOCOL_UDP, number, &udp)
}

/// A segment.
pub(super) fn segment(from: End, to: End, control: &Control, number: u16, payload: &[u8]) -> Vec<u8> {
    let flag = |is_on: bool, bit: u8| if is_on { bit } else { 0 };
    let flags = flag(control.fin, 0x01)
        | flag(control.syn, 0x02)
        | flag(control.push, 0x08)
        | flag(control.acknowledged.is_some(), 0x10);
    let mut tcp = Vec::new();
    tcp.extend(from.port.to_be_bytes());
    tcp.extend(to.port.to_be_bytes());
    tcp.extend(control.sequence.to_be_bytes());
    tcp.extend(control.acknowledged.unwrap_or(0).to_be_bytes());
    tcp.extend([5 << 4, flags]); // five words of header
    tcp.extend(WINDOW.to_be_bytes());
    tcp.extend([0; 4]);
    tcp.extend(payload);
    let sum = checksum(&tcp, pseudo_header(from.host, to.host, PROTOCOL_TCP, tcp.len()));
    tcp[16..18].copy_from_slice(&sum.to_be_bytes());
    ip((from.host, to.host), None, PROTOCOL_TCP, number, &tcp)
}

fn ip((from, to): (Host, Host), vlan: Option<u16>, protocol: u8, number: u16, payload: &[u8]) -> Vec<u8> {
    let mut header_bytes = Vec::new();
    header_bytes.extend([0x45, 0]); // version 4, five words
    header_bytes.extend((20 + payload.len() as u16).to_be_bytes());
    header_bytes.extend(number.to_be_bytes());
    header_bytes.extend([0x40, 0, TIME_TO_LIVE, protocol, 0, 0]); // not to be cut into fragments
    header_bytes.extend(from.ip);
    header_bytes.extend(to.ip);
    let sum = checksum(&header_bytes, 0);
    header_bytes[10..12].copy_from_slice(&sum.to_be_bytes());
    let mut packet = header(to.mac, from.mac, vlan, ETHER_TYPE_IPV4);
    packet.extend(header_bytes);
    packet.extend(payload);
    pad(&mut packet);
    packet
}

fn header(to: [u8; 6], from: [u8; 6], vlan: Option<u16>, ether_type: u16) -> Vec<u8> {
    const PRIORITY: u16 = 3;
    let mut packet = [to, from].concat();
    if let Some(vlan) = vlan {
        packet.extend(ETHER_TYPE_TAG.to_be_bytes());
        packet.extend((PRIORITY << 13 | vlan).to_be_bytes());
    }
    packet.extend(ether_type.to_be_bytes());
    packet
}

fn pad(packet: &mut Vec<u8>) {
    packet.resize(packet.len().max(PACKET_BYTES_MIN), 0);
}

/// What UDP and TCP add up before their own bytes (RFC 768, RFC 9293).
fn pseudo_header(from: Host, to: Host, protocol: u8, bytes: usize) -> u32 {
    words(&from.ip) + words(&to.ip) + u32::from(protocol) + bytes as u32
}

fn words(bytes: &[u8]) -> u32 {
    bytes.chunks(2).map(|word| u32::from(word[0]) << 8 | u32::from(word.get(1).copied().unwrap_or(0))).sum()
}

/// The ones' complement of the ones' complement sum (RFC 1071).
fn checksum(bytes: &[u8], before: u32) -> u16 {
    let sum = before + words(bytes);
    let sum = (sum & 0xFFFF) + (sum >> 16);
    !((sum & 0xFFFF) + (sum >> 16)) as u16
}
