//! What a session says of Ethernet packets whose bytes are missing, of another protocol, or of a length that does not fit.

mod common;

use common::{Rows, read};

const SERVICES: &str = "\
network back ethernet 100 Mbit/s
frame speed on back service 0x4A10 event 0x8001 {
    length 2
    signal value in bytes 0..1
}
";

/// A message of SOME/IP with two bytes: header by AUTOSAR PRS SOME/IP Protocol (from memory), notification.
fn speed(value: u8) -> Vec<u8> {
    vec![0x4A, 0x10, 0x80, 0x01, 0, 0, 0, 10, 0, 0, 0, value, 1, 1, 2, 0, 0, value]
}

/// A packet between two addresses: Ethernet, IPv4 (RFC 791; its checksum is not filled in), and what is given.
fn packet(protocol: u8, carried: &[u8]) -> Vec<u8> {
    let total = (20 + carried.len()) as u16;
    let mut packet = vec![2, 0, 0, 0, 0, 2, 2, 0, 0, 0, 0, 1, 8, 0, 0x45, 0];
    packet.extend(total.to_be_bytes());
    packet.extend([0, 1, 0, 0, 64, protocol, 0, 0, 10, 0, 0, 1, 10, 0, 0, 2]);
    packet.extend(carried);
    packet
}

/// RFC 768.
fn udp(payload: &[u8]) -> Vec<u8> {
    let length = (8 + payload.len()) as u16;
    packet(17, &[&[0x77, 0x1A, 0x77, 0x25], &length.to_be_bytes()[..], &[0, 0], payload].concat())
}

/// RFC 9293: the flag 2 opens, 16 acknowledges.
fn tcp(sequence: u32, flags: u8, payload: &[u8]) -> Vec<u8> {
    let header =
        [&[0xC3, 0x50, 0x77, 0x25], &sequence.to_be_bytes()[..], &[0, 0, 0, 0, 0x50, flags, 0xFF, 0xFF, 0, 0, 0, 0]];
    packet(6, &[&header.concat()[..], payload].concat())
}

/// A classic packet file of link type 1, a packet a second.
fn pcap(packets: &[Vec<u8>]) -> Vec<u8> {
    let mut file = vec![0xD4, 0xC3, 0xB2, 0xA1, 2, 0, 4, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 4, 0, 1, 0, 0, 0];
    for (packet, second) in packets.iter().zip(0_u32..) {
        let length = (packet.len() as u32).to_le_bytes();
        [second.to_le_bytes(), [0; 4], length, length].iter().for_each(|word| file.extend_from_slice(word));
        file.extend_from_slice(packet);
    }
    file
}

/// The values, and the faults in words.
fn told(packets: &[Vec<u8>]) -> (Vec<String>, Vec<String>) {
    let Rows { lines, tally } = read(SERVICES, pcap(packets));
    assert_eq!(tally.read, tally.sum_of_parts());
    let lines = lines.iter().map(|line| line.replace("000000000 ", " ").replace(" speed.value", "")).collect();
    (lines, tally.first_message_faults().iter().map(|fault| fault.what.clone()).collect())
}

#[test]
fn datagrams_whose_length_does_not_fit_are_told() {
    let short = speed(1)[..17].to_vec();
    let long = [speed(2), vec![0, 0]].concat();
    let mut wrong = speed(3);
    wrong[7] = 3;
    let (lines, faults) =
        told(&[udp(&short), udp(&long), udp(&wrong), udp(&speed(4)), udp(b"something else altogether")]);
    assert_eq!(lines, ["1 2", "3 4"]);
    let wanted = [
        "the header announces a message of 18 bytes, and the datagram holds 17 of them",
        "2 bytes are left in the datagram, and a header has 16",
        "the SOME/IP length field says 3, and it counts at least the 8 header bytes behind it; 18 bytes of the datagram are not read",
    ];
    assert_eq!(faults, wanted);
}

#[test]
fn a_segment_that_is_missing_between_messages_is_told() {
    let segments: Vec<_> = (0..6).filter(|at| *at != 3).map(|at| tcp(1 + 18 * at, 16, &speed(at as u8))).collect();
    let (lines, faults) = told(&[vec![tcp(0, 2, &[])], segments].concat());
    assert_eq!(lines, ["1 0", "2 1", "3 2", "4 4", "5 5"]);
    assert_eq!(faults, ["18 bytes of the stream are missing"]);
}

#[test]
fn what_a_wrong_length_swallows_comes_with_the_times_of_its_segments() {
    let segment = |at: u32| {
        let mut message = speed(at as u8);
        message[6] = if at == 1 { 0x20 } else { 0 };
        tcp(1 + 18 * at, 16, &message)
    };
    let (lines, faults) = told(&(0..5).map(segment).collect::<Vec<_>>());
    assert_eq!(lines, ["0 0", "2 2", "3 3", "4 4"]);
    let wanted = "18 bytes of a stream are no message: a header announces 8210 bytes, 72 follow, and other messages stand among them";
    assert_eq!(faults, [wanted]);
}

#[test]
fn a_stream_that_begins_otherwise_is_not_cut_into_messages() {
    let (lines, faults) = told(&[tcp(0, 2, &[]), tcp(1, 16, b"a protocol of its own"), tcp(22, 16, b" that goes on")]);
    assert_eq!((lines.len(), faults.len()), (0, 0), "{faults:?}");
}

/// A described port has what the description says, whatever its bytes look like: of its protocol alone, and at either end.
#[test]
fn described_ports_are_not_searched_for_messages_of_services() {
    let lines = |port: &str| {
        let description = format!("{SERVICES}frame raw on back {port} {{ signal first in byte 0 }}\n");
        let Rows { lines, tally } = read(&description, pcap(&[udp(&speed(1)), tcp(1, 16, &speed(2))]));
        assert_eq!((tally.without_description, tally.message_faults), (0, 0), "{port}");
        lines
    };
    let (by_service, by_port) =
        (["0 speed.value 1", "1000000000 speed.value 2"], ["0 raw.first 74", "1000000000 raw.first 74"]);
    assert_eq!(lines("udp port 0x7725"), [by_port[0], by_service[1]]);
    assert_eq!(lines("udp port 0x771A"), [by_port[0], by_service[1]]);
    assert_eq!(lines("tcp port 0x7725"), [by_service[0], by_port[1]]);
    assert_eq!(lines("tcp port 0xC350"), [by_service[0], by_port[1]]);
    assert_eq!(lines("udp port 5"), by_service);
}

/// A packet that ends inside its IP header carries nothing that could be read, and is counted as damaged.
#[test]
fn a_packet_that_is_cut_off_in_its_headers_is_damaged() {
    let cut = udp(&speed(1))[..24].to_vec();
    let Rows { lines, tally } = read(SERVICES, pcap(&[cut, udp(&speed(2))]));
    assert_eq!(lines, ["1000000000 speed.value 2"]);
    assert_eq!((tally.faulty, tally.carrying, tally.message_faults), (1, 1, 1));
}
