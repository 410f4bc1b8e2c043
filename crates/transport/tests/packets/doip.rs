//! DoIP messages: header and payload types of ISO 13400-2:2019, table 17; fields of the payloads and codes from memory of the standard.

use wirelore_transport::cut::{Cut, Why};
use wirelore_transport::doip::{
    DoIpFault, Message, PORT, Payload, Stream, diagnostic_nack_name, header_nack_name, payload_type_name,
    routing_activation_name,
};

use super::hex;

/// Put together from the layout of the header and of each payload.
fn messages() -> Vec<(&'static str, u8, Payload<'static>)> {
    let of_manufacturer = None;
    vec![
        ("02 FD 00 01 00 00 00 00", 2, Payload::IdentificationRequest),
        // Versions of 2010, 2012 and 2019, and the one for a vehicle whose version is not known yet.
        ("01 FE 00 01 00 00 00 00", 1, Payload::IdentificationRequest),
        ("03 FC 00 01 00 00 00 00", 3, Payload::IdentificationRequest),
        ("FF 00 00 01 00 00 00 00", 0xFF, Payload::IdentificationRequest),
        (
            "02 FD 00 05 00 00 00 07 0E 00 00 00 00 00 00",
            2,
            Payload::RoutingActivationRequest { source: 0x0E00, activation: 0, reserved: [0; 4], of_manufacturer },
        ),
        (
            "02 FD 00 06 00 00 00 09 0E 00 10 01 10 00 00 00 00",
            2,
            Payload::RoutingActivationResponse {
                tester: 0x0E00,
                entity: 0x1001,
                code: 0x10,
                reserved: [0; 4],
                of_manufacturer,
            },
        ),
        (
            "02 FD 80 01 00 00 00 07 0E 00 10 01 22 F1 90",
            2,
            Payload::Diagnostic { source: 0x0E00, target: 0x1001, user_data: &[0x22, 0xF1, 0x90] },
        ),
        (
            "02 FD 80 02 00 00 00 05 10 01 0E 00 00",
            2,
            Payload::DiagnosticAck { source: 0x1001, target: 0x0E00, code: 0, previous: &[] },
        ),
        (
            "03 FC 80 03 00 00 00 06 10 01 0E 00 03 22",
            3,
            Payload::DiagnosticNack { source: 0x1001, target: 0x0E00, code: 3, previous: &[0x22] },
        ),
        ("03 FC 00 00 00 00 00 01 02", 3, Payload::HeaderNack { code: 2 }),
        ("03 FC 00 02 00 00 00 06 01 02 03 04 05 06", 3, Payload::IdentificationRequestEid { eid: [1, 2, 3, 4, 5, 6] }),
        (
            "03 FC 00 03 00 00 00 11 4B 45 53 54 52 45 4C 30 31 32 33 34 35 36 37 38 39",
            3,
            Payload::IdentificationRequestVin { vin: *b"KESTREL0123456789" },
        ),
        (
            "03 FC 00 04 00 00 00 21 4B 45 53 54 52 45 4C 30 31 32 33 34 35 36 37 38 39 10 01 01 02 03 04 05 06 11 12 13 14 \
             15 16 00 10",
            3,
            Payload::Announcement {
                vin: *b"KESTREL0123456789",
                address: 0x1001,
                eid: [1, 2, 3, 4, 5, 6],
                gid: [0x11, 0x12, 0x13, 0x14, 0x15, 0x16],
                further_action: 0,
                synchronisation: Some(0x10),
            },
        ),
        ("03 FC 00 07 00 00 00 00", 3, Payload::AliveCheckRequest),
        ("03 FC 00 08 00 00 00 02 0E 00", 3, Payload::AliveCheckResponse { source: 0x0E00 }),
        ("03 FC 40 01 00 00 00 00", 3, Payload::EntityStatusRequest),
        (
            "03 FC 40 02 00 00 00 07 00 08 01 00 00 10 00",
            3,
            Payload::EntityStatusResponse { node: 0, sockets_max: 8, sockets_open: 1, bytes_max: Some(4096) },
        ),
        (
            "03 FC 40 02 00 00 00 03 01 08 01",
            3,
            Payload::EntityStatusResponse { node: 1, sockets_max: 8, sockets_open: 1, bytes_max: None },
        ),
        ("03 FC 40 03 00 00 00 00", 3, Payload::PowerModeRequest),
        ("03 FC 40 04 00 00 00 01 01", 3, Payload::PowerModeResponse { mode: 1 }),
        ("03 FC F0 00 00 00 00 02 AA BB", 3, Payload::Other { payload_type: 0xF000, bytes: &[0xAA, 0xBB] }),
    ]
}

#[test]
fn messages_of_all_types_are_read_and_written() {
    for (text, version, payload) in messages() {
        let bytes = hex(text);
        let message = Message { version, payload };
        assert_eq!(Message::read(&bytes), Ok(message), "{text}");
        let mut written = Vec::new();
        assert!(message.write(&mut written));
        assert_eq!(written, bytes);
    }
}

#[test]
fn numbers_have_names() {
    // ISO 13400-2:2019, table 17.
    let named = (0..=0xFFFF).filter(|payload_type| payload_type_name(*payload_type) != "unknown payload");
    let wanted = [0, 1, 2, 3, 4, 5, 6, 7, 8, 0x4001, 0x4002, 0x4003, 0x4004, 0x8001, 0x8002, 0x8003];
    assert_eq!(named.collect::<Vec<u16>>(), wanted);
    assert_eq!(payload_type_name(0x8001), "diagnostic message");
    // From memory of ISO 13400-2.
    assert_eq!(routing_activation_name(0x10), "activated");
    assert_eq!((header_nack_name(2), diagnostic_nack_name(3)), ("message too large", "unknown target address"));
    assert_eq!(PORT, 13400);
}

#[test]
fn lengths_that_cannot_be() {
    let read = |text| Message::read(&hex(text)).map(|_| ());
    let wrong = |payload_type, held, wanted| Err(DoIpFault::PayloadLength { payload_type, held, wanted });
    assert_eq!(read("02 FD 00 01 00 00 00 01 00"), wrong(1, 1, "none"));
    assert_eq!(read("02 FD 80 01 00 00 00 04 0E 00 10 01"), wrong(0x8001, 4, "at least 5"));
    assert_eq!(read("02 FD 00 05 00 00 00 09 0E 00 00 00 00 00 00 01 02"), wrong(5, 9, "7 or 11"));
    assert_eq!(read("02 FD 00 01 00 00 00 01"), Err(DoIpFault::LengthDisagrees { length: 9, held: 8 }));
    assert_eq!(read("02 FD 00 01 00 00 00"), Err(DoIpFault::HeaderCut { held: 7 }));
    let fault = DoIpFault::InverseVersion { version: 2, inverse: 0xFC };
    assert_eq!(read("02 FC 00 01 00 00 00 00"), Err(fault));
    assert_eq!(fault.to_string(), "the DoIP header says version 0x02 and inverse version 0xFC, which must be 0xFD");
    let long = DoIpFault::PayloadLength { payload_type: 1, held: 1, wanted: "none" };
    assert_eq!(long.to_string(), "a vehicle identification request has 1 bytes, and it needs none");
}

#[test]
fn a_stream_goes_on_behind_a_wrong_inverse_version() {
    let good = hex("02 FD 80 01 00 00 00 07 0E 00 10 01 22 F1 90");
    let mut bad = good.clone();
    bad[1] = 0;
    let mut told = Vec::new();
    let mut stream = Stream::new(4096);
    for piece in [good.clone(), bad, good.clone()].concat().chunks(4) {
        stream.bytes(None, piece, &mut |cut| {
            told.push(match cut {
                Cut::Message { bytes, .. } => Ok(bytes.to_vec()),
                Cut::Skipped { bytes, why } => Err((bytes, why)),
                Cut::Unfinished { .. } => panic!("all messages are whole"),
            });
        });
    }
    let fault = Why::Fault(DoIpFault::InverseVersion { version: 2, inverse: 0 });
    assert_eq!(told, [Ok(good.clone()), Err((15, fault)), Ok(good)]);
}
