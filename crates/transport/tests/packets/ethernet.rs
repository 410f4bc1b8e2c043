//! Packets: built by etherparse, a general-purpose library, which is the second opinion; headers by RFC 791, 8200, 768, 9293 and
//! IEEE 802.1Q.

use etherparse::{
    EtherType, Ethernet2Header, IpFragOffset, IpNumber, Ipv6FragmentHeader, Ipv6Header, PacketBuilder, SlicedPacket,
    TransportSlice, VlanId, VlanPcp,
};
use proptest::prelude::*;
use wirelore_transport::ethernet::{Carried, PacketFault, VlanTag, read};
use wirelore_transport::tcp::Segment;

const FROM: [u8; 6] = [2, 0, 0, 0, 0, 1];
const TO: [u8; 6] = [2, 0, 0, 0, 0, 2];

fn udp4(payload: &[u8]) -> Vec<u8> {
    let mut packet = Vec::new();
    let builder = PacketBuilder::ethernet2(FROM, TO).ipv4([10, 0, 0, 1], [239, 0, 0, 9], 8).udp(30490, 30491);
    builder.write(&mut packet, payload).expect("it fits");
    packet
}

fn tcp6(payload: &[u8]) -> Vec<u8> {
    let mut packet = Vec::new();
    let (from, to) = ([0xFD; 16], [0xFE; 16]);
    let builder = PacketBuilder::ethernet2(FROM, TO).ipv6(from, to, 8).tcp(40000, 13400, 0xFFFF_FFF0, 1000);
    builder.ack(7).psh().fin().write(&mut packet, payload).expect("it fits");
    packet
}

#[test]
fn udp_over_ipv4_with_padding() {
    let mut packet = udp4(b"hello");
    packet.resize(60, 0);
    let read = read(&packet).expect("a packet");
    assert_eq!((read.source, read.destination, read.tags), (FROM, TO, [None; 2]));
    assert!(!read.header_checksum_wrong);
    let Carried::Udp { from, to, payload } = read.carried else { panic!("UDP") };
    assert_eq!((from.to_string(), to.to_string()), ("10.0.0.1:30490".to_owned(), "239.0.0.9:30491".to_owned()));
    assert_eq!(payload, b"hello");
}

#[test]
fn tcp_over_ipv6() {
    let packet = tcp6(b"hello");
    let Carried::Tcp(segment) = read(&packet).expect("a packet").carried else { panic!("TCP") };
    let wanted = Segment::between(
        "[fdfd:fdfd:fdfd:fdfd:fdfd:fdfd:fdfd:fdfd]:40000",
        "[fefe:fefe:fefe:fefe:fefe:fefe:fefe:fefe]:13400",
    );
    let wanted = wanted.expect("two addresses");
    let wanted =
        Segment { sequence: 0xFFFF_FFF0, acknowledged: Some(7), fin: true, payload: b"hello".as_slice(), ..wanted };
    assert_eq!(segment, wanted);
}

#[test]
fn flags_and_options_of_tcp() {
    let mut packet = Vec::new();
    let builder = PacketBuilder::ethernet2(FROM, TO).ipv4([10, 0, 0, 1], [10, 0, 0, 2], 8).tcp(1, 2, 3, 4);
    let options = [etherparse::TcpOptionElement::MaximumSegmentSize(1460), etherparse::TcpOptionElement::Noop];
    builder.syn().rst().options(&options).expect("they fit").write(&mut packet, b"x").expect("it fits");
    let Carried::Tcp(segment) = read(&packet).expect("a packet").carried else { panic!("TCP") };
    assert_eq!((segment.syn, segment.reset, segment.fin, segment.acknowledged), (true, true, false, None));
    assert_eq!(segment.payload, b"x");
}

#[test]
fn one_tag_and_two() {
    let id = |vlan| VlanId::try_new(vlan).expect("12 bits");
    let tag = |vlan, priority| Some(VlanTag { vlan, priority, drop_eligible: false });
    let mut packet = Vec::new();
    let builder = PacketBuilder::ethernet2(FROM, TO).single_vlan(id(5)).ipv4([10, 0, 0, 1], [10, 0, 0, 2], 8).udp(1, 2);
    builder.write(&mut packet, b"one").expect("it fits");
    packet[14] |= VlanPcp::try_new(6).expect("3 bits").value() << 5;
    let one = read(&packet).expect("a packet");
    assert_eq!(one.tags, [tag(5, 6), None]);
    assert!(matches!(one.carried, Carried::Udp { payload: b"one", .. }));

    let mut packet = Vec::new();
    let builder = PacketBuilder::ethernet2(FROM, TO).double_vlan(id(100), id(4095));
    builder.ipv4([10, 0, 0, 1], [10, 0, 0, 2], 8).udp(1, 2).write(&mut packet, b"two").expect("it fits");
    let two = read(&packet).expect("a packet");
    assert_eq!(two.tags, [tag(100, 0), tag(4095, 0)]);
    assert!(matches!(two.carried, Carried::Udp { payload: b"two", .. }));

    packet.splice(12..12, [0x81, 0, 0, 1]);
    assert_eq!(read(&packet), Err(PacketFault::TooManyTags));
}

#[test]
fn others_are_named_by_number() {
    let mut arp = [TO, FROM].concat();
    arp.extend([0x08, 0x06, 1, 2, 3]);
    assert_eq!(read(&arp).expect("a packet").carried, Carried::Other { ether_type: 0x0806, payload: &[1, 2, 3] });
    let mut length = [TO, FROM].concat();
    length.extend([0, 2, 0x42, 0x42, 0, 0]);
    assert_eq!(read(&length).expect("a packet").carried, Carried::Llc { payload: &[0x42, 0x42] });
    length[13] = 5;
    assert_eq!(read(&length), Err(PacketFault::LlcCut { told: 5, held: 4 }));

    let mut icmp = Vec::new();
    let builder = PacketBuilder::ethernet2(FROM, TO).ipv4([10, 0, 0, 1], [10, 0, 0, 2], 8).icmpv4_echo_request(1, 2);
    builder.write(&mut icmp, b"").expect("it fits");
    assert!(matches!(read(&icmp).expect("a packet").carried, Carried::OtherOverIp { protocol: 1, .. }));
}

#[test]
fn fragments_are_told() {
    let mut packet = udp4(&[7; 32]);
    packet[20] = 0x20; // more fragments
    let first = read(&packet).expect("a packet");
    assert!(first.header_checksum_wrong, "the checksum was made before");
    assert!(matches!(first.carried, Carried::Fragment { protocol: 17, byte_index: 0, is_last: false, .. }));
    packet[20..22].copy_from_slice(&[0, 185]);
    let last = read(&packet).expect("a packet").carried;
    let Carried::Fragment { byte_index: 1480, is_last: true, payload, .. } = last else { panic!("{last:?}") };
    assert_eq!(payload.len(), 40);
}

fn ipv6_with_fragment_header(offset: u16, more: bool) -> Vec<u8> {
    let payload = [0x12, 0x34, 0x56, 0x78, 0, 10, 0, 0, 0xAB, 0xCD];
    let mut packet = Ethernet2Header { source: FROM, destination: TO, ether_type: EtherType::IPV6 }.to_bytes().to_vec();
    let header = Ipv6Header {
        payload_length: 8 + 8 + payload.len() as u16,
        next_header: IpNumber::IPV6_DESTINATION_OPTIONS,
        hop_limit: 1,
        source: [1; 16],
        destination: [2; 16],
        ..Ipv6Header::default()
    };
    packet.extend(header.to_bytes());
    packet.extend([44, 0, 1, 4, 0, 0, 0, 0]); // destination options: padding; then a fragment header
    let offset = IpFragOffset::try_new(offset).expect("13 bits");
    packet.extend(Ipv6FragmentHeader::new(IpNumber::UDP, offset, more, 9).to_bytes());
    packet.extend(payload);
    packet
}

#[test]
fn extensions_of_ipv6() {
    let whole = ipv6_with_fragment_header(0, false);
    assert!(matches!(read(&whole).expect("a packet").carried, Carried::Udp { payload: &[0xAB, 0xCD], .. }));
    let part = ipv6_with_fragment_header(3, true);
    let part = read(&part).expect("a packet").carried;
    assert!(matches!(part, Carried::Fragment { protocol: 17, byte_index: 24, is_last: false, .. }), "{part:?}");
}

#[test]
fn a_wrong_ipv4_checksum_is_told_and_not_fatal() {
    let mut packet = udp4(b"hello");
    packet[24] ^= 1;
    let read = read(&packet).expect("a packet");
    assert!(read.header_checksum_wrong);
    assert!(matches!(read.carried, Carried::Udp { payload: b"hello", .. }));
}

/// A packet that the sending machine's hardware has yet to cut into segments: total length 0 (common practice, no source).
#[test]
fn an_ipv4_length_of_0_means_all_that_is_there() {
    let mut packet = Vec::new();
    let builder = PacketBuilder::ethernet2(FROM, TO).ipv4([10, 0, 0, 1], [10, 0, 0, 2], 8).tcp(40000, 13400, 7, 1000);
    builder.write(&mut packet, b"hello").expect("it fits");
    packet[16..18].fill(0);
    let Carried::Tcp(segment) = read(&packet).expect("a packet").carried else { panic!("TCP") };
    assert_eq!(segment.payload, b"hello");
    packet.truncate(30);
    assert_eq!(read(&packet), Err(PacketFault::IpHeaderCut { held: 16 }));
}

#[test]
fn wrong_lengths_have_kinds_of_their_own() {
    let with = |at: usize, byte: u8| {
        let mut packet = udp4(b"hello");
        packet[at] = byte;
        read(&packet).map(|_| ())
    };
    assert_eq!(with(14, 0x65), Err(PacketFault::IpVersion { told: 6, wanted: 4 }));
    assert_eq!(with(14, 0x44), Err(PacketFault::IpHeaderLength { told: 16 }));
    assert_eq!(with(17, 19), Err(PacketFault::IpLength { header: 20, told: 19 }));
    assert_eq!(with(17, 34), Err(PacketFault::IpCut { told: 34, held: 33 }));
    assert_eq!(with(17, 27), Err(PacketFault::PortsCut { protocol: "UDP", held: 7 }));
    assert_eq!(with(39, 14), Err(PacketFault::UdpLength { told: 14, held: 13 }));
    assert_eq!(with(39, 7), Err(PacketFault::UdpLength { told: 7, held: 13 }));
    let tcp = |byte: u8| {
        let mut packet = tcp6(b"hello");
        packet[54 + 12] = byte;
        read(&packet).map(|_| ())
    };
    assert_eq!(tcp(0x40), Err(PacketFault::TcpHeaderLength { told: 16, held: 25 }));
    assert_eq!(tcp(0x70), Err(PacketFault::TcpHeaderLength { told: 28, held: 25 }));
    let sentence = PacketFault::IpCut { told: 34, held: 33 }.to_string();
    assert_eq!(sentence, "the IP header tells 34 bytes, and 33 are there; was the packet cut by the recorder?");
}

#[test]
fn a_packet_cut_anywhere_is_a_fault() {
    for packet in [udp4(b"hello"), tcp6(b"hello")] {
        for length in 0..packet.len() {
            assert!(read(&packet[..length]).is_err(), "{length} of {} bytes", packet.len());
        }
    }
}

proptest! {
    /// Whatever is built, the same comes out; and where both readers take a damaged packet, they see the same in it.
    #[test]
    fn two_opinions_agree(
        payload in proptest::collection::vec(any::<u8>(), 0..200),
        ports in any::<(u16, u16)>(),
        flip in proptest::option::of((0usize..300, 0u8..8)),
    ) {
        let mut packet = Vec::new();
        let builder = PacketBuilder::ethernet2(FROM, TO).ipv4([10, 0, 0, 1], [10, 0, 0, 2], 8);
        builder.udp(ports.0, ports.1).write(&mut packet, &payload).expect("it fits");
        if let Some((at, bit)) = flip {
            let at = at % packet.len();
            packet[at] ^= 1 << bit;
        }
        let ours = read(&packet);
        if flip.is_none() {
            let Ok(Carried::Udp { from, to, payload: seen }) = ours.map(|packet| packet.carried) else { panic!("{ours:?}") };
            prop_assert_eq!((from.port(), to.port(), seen), (ports.0, ports.1, payload.as_slice()));
        }
        let theirs = SlicedPacket::from_ethernet(&packet);
        match (ours.map(|packet| packet.carried), theirs.map(|packet| packet.transport)) {
            (Ok(Carried::Udp { from, to, payload }), Ok(Some(TransportSlice::Udp(udp)))) => {
                prop_assert_eq!((from.port(), to.port()), (udp.source_port(), udp.destination_port()));
                prop_assert_eq!(payload, udp.payload());
            }
            (Ok(Carried::Tcp(segment)), Ok(Some(TransportSlice::Tcp(tcp)))) => {
                prop_assert_eq!((segment.sequence, segment.payload), (tcp.sequence_number(), tcp.payload()));
            }
            (Ok(Carried::Udp { .. } | Carried::Tcp(_)), theirs @ Ok(_)) => panic!("they see {theirs:?}"),
            (ours, Ok(Some(TransportSlice::Udp(_) | TransportSlice::Tcp(_)))) => panic!("we see {ours:?}"),
            _ => {}
        }
    }

    #[test]
    fn any_bytes_have_one_outcome(bytes in proptest::collection::vec(any::<u8>(), 0..120), ether_type in 0usize..4) {
        let mut packet = bytes;
        let ether_type: [u8; 2] = [[0x08, 0], [0x86, 0xDD], [0x81, 0], [0x88, 0xA8]][ether_type];
        if packet.len() > 14 {
            packet[12..14].copy_from_slice(&ether_type);
        }
        let _ = read(&packet);
    }
}
