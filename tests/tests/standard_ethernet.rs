//! The descriptions `someip` and `doip` against what is published of service discovery and of ISO 13400-2. Messages are what stands behind
//! their headers (16 and 8 bytes), in diagnostic ones behind the two addresses as well.

use wirelore_model::SeenId;
use wirelore_tests::payloads::{Described, bytes};

/// Layout as the AUTOSAR rules of service discovery are quoted at blog.csdn.net (134310998, 103968710): service 1234, instance 1, version 1.0, for 3 s,
/// at 192.168.0.1, UDP port 30000. Its length field is 48: eight bytes of header and the forty below.
#[test]
fn a_service_is_offered() {
    let offer = "C0 00 00 00 00 00 00 10 01 00 00 10 12 34 00 01 01 00 00 03 00 00 00 00 \
                 00 00 00 0C 00 09 04 00 C0 A8 00 01 00 11 75 30";
    assert_eq!(bytes(offer).len() + 8, 48);
    let someip = Described::standard("someip");
    let said = someip.read("service_discovery", offer);
    assert_eq!(["reboot", "unicast", "entries"].map(|name| said.number(name)), [1.0, 1.0, 1.0]);
    assert_eq!(said.word("entry[1]"), "offer");
    let numbers = ["service[1]", "instance[1]", "major_version[1]", "minor_version[1]", "ttl[1]", "first_options[1]"];
    assert_eq!(numbers.map(|name| said.number(name)), [f64::from(0x1234), 1.0, 1.0, 0.0, 3.0, 1.0]);
    assert_eq!((said.word("option"), said.word("protocol"), said.number("port")), ("ipv4_endpoint", "udp", 30_000.0));
    assert_eq!([1, 2, 3, 4].map(|number| said.number(&format!("address[{number}]"))), [192.0, 168.0, 0.0, 1.0]);
    assert!(!said.has("entry[2]") && !said.too_short && said.without_page.is_none());
}

#[test]
fn an_eventgroup_is_subscribed_to_without_options() {
    // From memory of the AUTOSAR specification of service discovery: entry type 06, counter and eventgroup in its last four bytes.
    let subscribe = "C0 00 00 00 00 00 00 10 06 00 00 00 12 34 00 01 01 00 00 03 00 02 00 05 00 00 00 00";
    let said = Described::standard("someip").read("service_discovery", subscribe);
    assert_eq!(
        (said.word("entry[1]"), said.number("counter[1]"), said.number("eventgroup[1]")),
        ("subscribe", 2.0, 5.0)
    );
    assert_eq!((said.number("options_bytes"), said.has("option"), said.too_short), (0.0, false, false));
    assert!(said.without_page.is_none(), "a message without options lacks nothing");
}

#[test]
fn service_discovery_is_recognised() {
    let someip = Described::standard("someip");
    let (network, _) = someip.database.network_named("someip").expect("it brings a network");
    let decoder = wirelore_decode::Decoder::new(&someip.database).expect("a decoder");
    // Service FFFF, method 8100, message type 02 (AUTOSAR rules quoted at blog.csdn.net/134310998).
    let seen = SeenId::SomeIp { service: 0xFFFF, method: 0x8100, message_type: 2 };
    assert!(decoder.find_seen(network, seen, &[0; 12]).is_some());
}

/// The payload types of ISO 13400-2:2019, table 17, as the commented constants of a published source have them (docs.rs).
#[test]
fn all_payload_types_are_there() {
    let types = [
        (0x0000, "doip_header_refused"),
        (0x0001, "doip_identification_request"),
        (0x0002, "doip_identification_request_eid"),
        (0x0003, "doip_identification_request_vin"),
        (0x0004, "doip_announcement"),
        (0x0005, "doip_routing_activation_request"),
        (0x0006, "doip_routing_activation_response"),
        (0x0007, "doip_alive_check_request"),
        (0x0008, "doip_alive_check_response"),
        (0x4001, "doip_entity_status_request"),
        (0x4002, "doip_entity_status_response"),
        (0x4003, "doip_power_mode_request"),
        (0x4004, "doip_power_mode_response"),
        (0x8001, "doip_diagnostic_message"),
        (0x8002, "doip_diagnostic_taken"),
        (0x8003, "doip_diagnostic_refused"),
    ];
    let doip = Described::standard("doip");
    let (network, _) = doip.database.network_named("doip").expect("it brings a network");
    let decoder = wirelore_decode::Decoder::new(&doip.database).expect("a decoder");
    for (payload_type, name) in types {
        let addressed = payload_type > 0x8000;
        let (source, target) = if addressed { (Some(0x0E00), Some(0x1001)) } else { (None, None) };
        let found = decoder.find_seen(network, SeenId::DoIp { payload_type, source, target }, &[]);
        let found = found.map(|frame| doip.database.frames[frame.index()].label.name.as_str());
        assert_eq!(found, Some(name), "{payload_type:04X}");
    }
}

/// Fields in the order of ISO 13400-2, from memory.
#[test]
fn what_doip_says() {
    let doip = Described::standard("doip");
    let request = doip.read("doip_routing_activation_request", "0E 00 00 00 00 00 00");
    assert_eq!(
        (request.number("source"), request.word("activation"), request.too_short),
        (f64::from(0x0E00), "default", false)
    );
    let response = doip.read("doip_routing_activation_response", "0E 00 10 01 10 00 00 00 00");
    assert_eq!((response.number("tester"), response.number("entity")), (f64::from(0x0E00), f64::from(0x1001)));
    assert_eq!((response.word("activation"), response.too_short), ("activated", false));
    let question = doip.read("doip_diagnostic_message", "22 F1 90");
    assert_eq!((question.word("service"), question.word("identifier")), ("read_data", "vin"));
    let answer = doip.read("doip_diagnostic_message", "62 F1 90 5A 5A 39 47 50 30 30 52 35 35 42 31 32 33 34 35 36");
    assert_eq!(answer.shown("vin"), "ZZ9GP00R55B123456");
    assert_eq!(doip.read("doip_diagnostic_message", "7F 22 31").word("refusal"), "request_out_of_range");
    assert_eq!(doip.read("doip_diagnostic_taken", "00").word("acknowledgement"), "taken");
    assert_eq!(doip.read("doip_diagnostic_refused", "03").word("reason"), "unknown_target");
    assert_eq!(doip.read("doip_header_refused", "04").word("reason"), "wrong_length");
    assert_eq!(doip.read("doip_power_mode_response", "01").word("power_mode"), "ready");
    let vehicle = "5A 5A 39 47 50 30 30 52 35 35 42 31 32 33 34 35 36 10 01 02 03 04 05 06 07 08 09 0A 0B 0C 0D 10";
    let announced = doip.read("doip_announcement", vehicle);
    assert_eq!(
        (announced.shown("vin").as_str(), announced.number("address")),
        ("ZZ9GP00R55B123456", f64::from(0x1001))
    );
    assert_eq!(
        (announced.shown("eid").as_str(), announced.word("further_action")),
        ("02 03 04 05 06 07", "central_security")
    );
    assert!(!announced.too_short, "the last byte is not sent by all");
}
