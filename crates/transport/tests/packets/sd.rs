//! SOME/IP service discovery: layout of AUTOSAR PRS SOME/IP Service Discovery.

use proptest::prelude::*;
use wirelore_transport::someip::sd::{
    Choice, Discovery, EndpointRole, Entry, EntryKind, Group, Run, SdFault, SdOption, Transport,
};
use wirelore_transport::someip::{Header, Message, MessageKind};

use super::hex;

/// Put together from the rules of the standard: service 1234 instance 0001 version 1.0 for 3 s at 192.168.0.1, UDP port 30000.
const OFFER: &str = "FF FF 81 00 00 00 00 30 00 00 00 01 01 01 02 00 C0 00 00 00 00 00 00 10 01 00 00 10 12 34 00 01 01 00 00 03 \
                     00 00 00 00 00 00 00 0C 00 09 04 00 C0 A8 00 01 00 11 75 30";

fn offer() -> Discovery<'static> {
    let runs = [Run { first: 0, count: 1 }, Run::default()];
    let entry = Entry { kind: EntryKind::Offer { minor: 0 }, service: 0x1234, instance: 1, major: 1, ttl_s: 3, runs };
    let address = "192.168.0.1:30000".parse().expect("an address");
    let choice = Choice::Endpoint { role: EndpointRole::Service, address, transport: Transport::Udp };
    let options = vec![SdOption { discardable: false, choice }];
    Discovery { reboot: true, unicast: true, entries: vec![entry], options }
}

#[test]
fn an_offer_is_read_and_written() {
    let bytes = hex(OFFER);
    let message = Message::read(&bytes).expect("a message");
    assert!(Discovery::is_in(&message.header));
    assert_eq!(Discovery::read(message.payload), Ok(offer()));
    let mut payload = Vec::new();
    offer().write(&mut payload);
    let header = Header {
        service: 0xFFFF,
        method: 0x8100,
        client: 0,
        session: 1,
        interface_version: 1,
        kind: MessageKind::Notification,
        segmented: false,
        return_code: 0,
    };
    let mut written = Vec::new();
    assert!(Message { header, payload: &payload }.write(&mut written));
    assert_eq!(written, bytes);
}

/// Entry types and their stopping by a time to live of 0: from memory of AUTOSAR PRS SOME/IP Service Discovery.
#[test]
fn entries_have_names() {
    let kinds = [
        (0x00, 3, "find service"),
        (0x01, 3, "offer service"),
        (0x01, 0, "stop offer service"),
        (0x06, 3, "subscribe eventgroup"),
        (0x06, 0, "stop subscribe eventgroup"),
        (0x07, 3, "subscribe eventgroup ack"),
        (0x07, 0, "subscribe eventgroup nack"),
        (0x55, 0, "unknown entry type"),
    ];
    for (kind, ttl, name) in kinds {
        let mut payload = hex("40 00 00 00 00 00 00 10 06 00 00 00 12 34 00 01 01 00 00 03 00 05 00 07 00 00 00 00");
        (payload[8], payload[19]) = (kind, ttl);
        let discovery = Discovery::read(&payload).expect("a discovery");
        assert_eq!(discovery.entries[0].kind.name(), name);
        let mut written = Vec::new();
        discovery.write(&mut written);
        assert_eq!(written, payload);
        if let EntryKind::Subscribe(group) = discovery.entries[0].kind {
            assert_eq!(group, Group { eventgroup: 7, counter: 5 });
        }
    }
}

/// Types and lengths of options: from memory of AUTOSAR PRS SOME/IP Service Discovery.
#[test]
fn options_of_all_types() {
    let options = "00 09 14 00 E0 00 00 05 00 11 12 34 \
                   00 15 06 00 FD 00 00 00 00 00 00 00 00 00 00 00 00 00 00 01 00 06 34 68 \
                   00 15 26 00 FD 00 00 00 00 00 00 00 00 00 00 00 00 00 00 01 00 11 77 1A \
                   00 09 24 80 0A 00 00 01 00 63 77 1A \
                   00 0B 01 00 03 61 3D 31 04 62 3D 32 33 00 \
                   00 05 02 00 00 01 00 02 \
                   00 03 77 00 AA BB";
    let options = hex(options);
    let mut payload = hex("00 00 00 00 00 00 00 00 00 00 00 00");
    payload[11] = options.len() as u8;
    payload.extend(&options);
    let discovery = Discovery::read(&payload).expect("a discovery");
    let endpoint = |role, address: &str, transport| Choice::Endpoint {
        role,
        address: address.parse().expect("an address"),
        transport,
    };
    let wanted = [
        endpoint(EndpointRole::Multicast, "224.0.0.5:4660", Transport::Udp),
        endpoint(EndpointRole::Service, "[fd00::1]:13416", Transport::Tcp),
        endpoint(EndpointRole::Discovery, "[fd00::1]:30490", Transport::Udp),
        endpoint(EndpointRole::Discovery, "10.0.0.1:30490", Transport::Other(0x63)),
        Choice::Configuration { items: vec![b"a=1", b"b=23"] },
        Choice::LoadBalancing { priority: 1, weight: 2 },
        Choice::Other { kind: 0x77, bytes: &[0xAA, 0xBB] },
    ];
    assert_eq!(discovery.options.iter().map(|option| option.choice.clone()).collect::<Vec<_>>(), wanted);
    assert_eq!(discovery.options.iter().filter(|option| option.discardable).count(), 1);
    let mut written = Vec::new();
    discovery.write(&mut written);
    assert_eq!(written, payload);
}

#[test]
fn every_length_is_checked() {
    let payload = hex(OFFER)[16..].to_vec();
    let with = |at: usize, byte: u8| {
        let mut payload = payload.clone();
        payload[at] = byte;
        Discovery::read(&payload).map(|_| ())
    };
    assert_eq!(with(11, 0x20), Err(SdFault::OptionMissing { entry: 0, last: 1, options: 1 }));
    assert_eq!(with(7, 200), Err(SdFault::Cut { part: "entries", held: 40 }));
    assert_eq!(with(27, 13), Err(SdFault::Cut { part: "options", held: 40 }));
    assert_eq!(with(27, 11), Err(SdFault::Trailing(1)));
    assert_eq!(with(29, 8), Err(SdFault::OptionLength { index: 0, kind: 4, told: 8, wanted: 9 }));
    assert_eq!(with(30, 6), Err(SdFault::OptionLength { index: 0, kind: 6, told: 9, wanted: 21 }));
    assert_eq!(with(30, 1), Err(SdFault::Configuration { index: 0 }));
    for length in 0..payload.len() {
        assert!(Discovery::read(&payload[..length]).is_err());
    }
    let odd = hex("00 00 00 00 00 00 00 11 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00");
    assert_eq!(Discovery::read(&odd), Err(SdFault::EntriesLength { told: 17 }));
    let empty_option = hex("00 00 00 00 00 00 00 00 00 00 00 03 00 00 77");
    assert_eq!(Discovery::read(&empty_option), Err(SdFault::OptionLength { index: 0, kind: 0x77, told: 0, wanted: 1 }));
}

proptest! {
    /// What is read is written the same again, but for bits that the standard reserves.
    #[test]
    fn read_and_written_is_the_same(mut payload in Just(hex(OFFER)[16..].to_vec()), flips in proptest::collection::vec((0usize..40, any::<u8>()), 0..3)) {
        for (at, byte) in flips {
            payload[at] = byte;
        }
        if let Ok(discovery) = Discovery::read(&payload) {
            let mut written = Vec::new();
            discovery.write(&mut written);
            prop_assert_eq!(Discovery::read(&written), Ok(discovery));
            prop_assert_eq!(written.len(), payload.len());
        }
    }
}
