//! Channels whose frames show nothing to be recognised by: what they carry tells which network they are.

use std::io;

use wirelore_decode::{Decoder, Event, Options, Reading, Session, Sink};
use wirelore_lang::check_text;
use wirelore_log::Recording;
use wirelore_model::SignalId;

/// What is decided about the only channel of a log.
fn decision(description: &str, log: &[u8]) -> Result<String, String> {
    let database = check_text("test.lore", description).database.expect("no mistakes");
    let decoder = Decoder::new(&database).expect("a decoder");
    let mut session = Session::new(&decoder, &Options::default()).expect("a session");
    let reader = Box::new(io::Cursor::new(log.to_owned()));
    let mut log = Recording::from_reader(reader, "test", &wirelore_log::Options::default()).expect("a log");
    session.run(&mut log, &mut Nobody).map_err(|error| error.to_string())?;
    assert_eq!(session.tally().read, session.tally().sum_of_parts());
    Ok(session.bindings().iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))
}

struct Nobody;

impl Sink for Nobody {
    fn reading(&mut self, _: &Event<'_>, _: SignalId, _: Reading<'_>) {}
}

const LINES: &str = "\
network one kline
network two kline
network seat uart 9600 bit/s, source byte 0, size byte 1 counts from byte 2, target byte 2, xor byte last
";

/// Requests and answers with the headers of ISO 14230-2 and ISO 9141-2, their sums calculated by hand; the last one is damaged.
const LOG: &str = "\
time,data
0,C2 33 F1 01 0C F3
0.03,84 F1 10 41 0C 1A F8 E4
0.06,68 6A F1 01 0C D0
0.09,48 6B 10 41 0C 1A F8 22
0.12,84 F1 10 41 0C 1A F8 E5
";

fn bound(frames: &str) -> Result<String, String> {
    decision(&format!("{LINES}{frames}"), LOG.as_bytes())
}

#[test]
fn messages_speak_for_the_network_that_describes_them() {
    let frames = "frame rpm on two from 0x10 to 0xF1 starts 0x41 0x0C { signal a in byte 2 }\n\
                  frame other on one from 0x10 to 0x22 { signal a in byte 0 }\n\
                  frame height on seat from 0x44 to 0x02 { signal a in byte 0 }\n";
    let told = "channel `0` is network `two`: 1 of the 4 kinds of message it carries is described there, 0 on `one`";
    assert_eq!(bound(frames).as_deref(), Ok(told));
}

#[test]
fn a_description_of_any_message_counts_only_where_nothing_else_does() {
    let any = "frame whatever on seat any message { signal a in byte 0 }\n";
    let rpm = "frame rpm on two from 0x10 to 0xF1 { signal a in byte 2 }\n";
    let told = "channel `0` is network `two`: 1 of the 4 kinds of message it carries is described there, 0 on `seat`";
    assert_eq!(bound(&format!("{any}{rpm}")).as_deref(), Ok(told));
    let other = "frame other on one from 0x10 to 0x22 { signal a in byte 0 }\n";
    let told = "channel `0` is left out: none of the 4 kinds of message it carries is described";
    assert_eq!(bound(&format!("{any}{other}")).as_deref(), Ok(told), "what the seat has is not of that form");
    let any = "frame whatever on two any message { signal a in byte 0 }\n";
    let told =
        "channel `0` is network `two`: what it carries has that network's form, and any message is described there";
    assert_eq!(bound(&format!("{any}{other}")).as_deref(), Ok(told));
    let both = any.replace("whatever on two", "what_else on one");
    let error = bound(&format!("{any}{both}")).expect_err("either");
    assert_eq!(
        error,
        "cannot tell which network channel `0` is: any message is described on `one` and `two`; this log names no channels; \
         say it with --bind '0=NETWORK' (networks: one, two)"
    );
}

/// Sums as in [`LOG`]: what is damaged more often than not does not have that network's form.
#[test]
fn a_description_of_any_message_counts_only_where_most_are_whole() {
    let frames = "frame whatever on two any message { signal a in byte 0 }\n\
                  frame other on one from 0x10 to 0x22 { signal a in byte 0 }\n";
    let (whole, damaged) = ("C2 33 F1 01 0C F3", "C2 33 F1 01 0C F4");
    let told = |messages: &[&str]| {
        let lines: String = messages.iter().enumerate().map(|(at, bytes)| format!("0.{at},{bytes}\n")).collect();
        decision(&format!("{LINES}{frames}"), format!("time,data\n{lines}").as_bytes())
    };
    let any =
        "channel `0` is network `two`: what it carries has that network's form, and any message is described there";
    let none = "channel `0` is left out: the only kind of message it carries is not described";
    assert_eq!(told(&[whole, damaged, whole]).as_deref(), Ok(any));
    assert_eq!(told(&[whole, damaged]).as_deref(), Ok(none));
    assert_eq!(told(&[damaged, whole, damaged]).as_deref(), Ok(none));
}

#[test]
fn what_both_describe_is_asked_for() {
    let frames = "frame rpm on one from 0x10 to 0xF1 { signal a in byte 2 }\n\
                  frame answer on two from 0x10 to 0xF1 { signal a in byte 2 }\n\
                  frame height on seat from 0x44 to 0x02 { signal a in byte 0 }\n";
    let error = bound(frames).expect_err("either");
    assert_eq!(
        error,
        "cannot tell which network channel `0` is: of the 4 kinds of message it carries 1 is described on `one`, 1 on `two`, none on \
         `seat`; this log names no channels; say it with --bind '0=NETWORK' (networks: one, two, seat)"
    );
}

/// A packet of UDP over IPv4 (RFC 791, RFC 768; a UDP checksum of 0 is none) in a pcap record.
fn datagram(from: u16, to: u16, payload: &[u8]) -> Vec<u8> {
    let udp_bytes = 8 + payload.len() as u16;
    let mut ip = [0x45, 0, 0, 0, 0, 0, 0, 0, 64, 17, 0, 0, 10, 0, 0, 1, 10, 0, 0, 2];
    ip[2..4].copy_from_slice(&(20 + udp_bytes).to_be_bytes());
    let sum: u32 = ip.chunks(2).map(|word| u32::from(word[0]) << 8 | u32::from(word[1])).sum();
    let sum = !((sum & 0xFFFF) as u16).wrapping_add((sum >> 16) as u16);
    ip[10..12].copy_from_slice(&sum.to_be_bytes());
    let mut packet = vec![2, 0, 0, 0, 0, 1, 2, 0, 0, 0, 0, 2, 0x08, 0x00];
    packet.extend(ip);
    [from, to, udp_bytes, 0].iter().for_each(|word| packet.extend(word.to_be_bytes()));
    packet.extend(payload);
    let length = (packet.len() as u32).to_le_bytes();
    [&[1, 0, 0, 0, 0, 0, 0, 0], &length[..], &length, &packet].concat()
}

/// A pcap file of Ethernet (link type 1).
fn pcap(records: &[Vec<u8>]) -> Vec<u8> {
    let head = [0xA1B2_C3D4_u32, 0x0004_0002, 0, 0, 262_144, 1];
    head.iter().flat_map(|word| word.to_le_bytes()).chain(records.concat()).collect()
}

/// An event of service 4A10 (header of 16 bytes, AUTOSAR: length from behind itself, protocol and interface 1, type 2).
const EVENT: [u8; 20] = [0x4A, 0x10, 0x80, 0x01, 0, 0, 0, 12, 0, 0, 0, 1, 1, 1, 2, 0, 0x42, 0x48, 0, 0];

#[test]
fn services_and_ports_tell_ethernet_networks_apart() {
    let description = "network e1 ethernet 100 Mbit/s\nnetwork e2 ethernet 100 Mbit/s\n\
                       frame a on e1 service 0x4A10 event 0x8001 { signal v in bytes 0..3 float }\n\
                       frame b on e2 udp port 9999 { signal v in byte 0 }\n";
    let event = datagram(30_500, 30_501, &EVENT);
    assert_eq!(
        decision(description, &pcap(&[event.clone(), event.clone()])).as_deref(),
        Ok("channel `0` is network `e1`: the only kind of message it carries is described there, 0 on `e2`")
    );
    let port = datagram(40_000, 9999, &[7]);
    assert_eq!(
        decision(description, &pcap(std::slice::from_ref(&port))).as_deref(),
        Ok("channel `0` is network `e2`: the only kind of message it carries is described there, 0 on `e1`")
    );
    let error = decision(description, &pcap(&[event, port])).expect_err("both");
    assert!(
        error.starts_with("cannot tell which network channel `0` is: of the 2 kinds of message it carries"),
        "{error}"
    );
    let other = datagram(5, 6, &[1, 2, 3]);
    assert_eq!(
        decision(description, &pcap(&[other])).as_deref(),
        Ok("channel `0` is left out: the only kind of message it carries is not described")
    );
}
