//! SOME/IP messages: layout and numbers of AUTOSAR PRS SOME/IP Protocol.

use wirelore_transport::cut::{Cut, DatagramFault, Why};
use wirelore_transport::someip::{
    Cookie, Datagram, Header, Message, MessageKind, SomeIpFault, Stream, return_code_name,
};

use super::hex;

/// Put together from the header's layout: service 0x1234, event 0x8001, session 5.
const NOTIFICATION: &str = "12 34 80 01 00 00 00 0C 00 00 00 05 01 01 02 00 DE AD BE EF";

const HEADER: Header = Header {
    service: 0x1234,
    method: 0x8001,
    client: 0,
    session: 5,
    interface_version: 1,
    kind: MessageKind::Notification,
    segmented: false,
    return_code: 0,
};

#[test]
fn a_notification_is_read_and_written() {
    let bytes = hex(NOTIFICATION);
    let message = Message { header: HEADER, payload: &[0xDE, 0xAD, 0xBE, 0xEF] };
    assert_eq!(Message::read(&bytes), Ok(message));
    let mut written = Vec::new();
    assert!(message.write(&mut written));
    assert_eq!(written, bytes);
}

/// Numbers and names from memory of AUTOSAR PRS SOME/IP Protocol, "message types" and "return codes".
#[test]
fn message_types_and_return_codes_have_names() {
    let kinds = [
        (0x00, "request", false),
        (0x01, "request no return", false),
        (0x02, "notification", false),
        (0x80, "response", false),
        (0x81, "error", false),
        (0x20, "request", true),
        (0x21, "request no return", true),
        (0x22, "notification", true),
        (0xA0, "response", true),
        (0xA1, "error", true),
        (0x47, "unknown message type", false),
    ];
    for (byte, name, segmented) in kinds {
        let (kind, is_segmented) = MessageKind::of_byte(byte);
        assert_eq!((kind.name(), is_segmented), (name, segmented), "{byte:02X}");
        let mut written = Vec::new();
        assert!(Message { header: Header { kind, segmented, ..HEADER }, payload: &[] }.write(&mut written));
        assert_eq!(written[14], byte);
    }
    let codes = [
        "ok",
        "not ok",
        "unknown service",
        "unknown method",
        "not ready",
        "not reachable",
        "timeout",
        "wrong protocol version",
        "wrong interface version",
        "malformed message",
        "wrong message type",
    ];
    for (code, name) in (0..).zip(codes) {
        assert_eq!(return_code_name(code), name, "{code:02X}");
    }
}

/// The two cookies as they stand in AUTOSAR PRS SOME/IP Protocol (from memory).
#[test]
fn magic_cookies() {
    let client = hex("FF FF 00 00 00 00 00 08 DE AD BE EF 01 01 01 00");
    let server = hex("FF FF 80 00 00 00 00 08 DE AD BE EF 01 01 02 00");
    assert_eq!(
        (Cookie::OfClient.bytes().to_vec(), Cookie::OfServer.bytes().to_vec()),
        (client.clone(), server.clone())
    );
    assert_eq!((Cookie::of(&client), Cookie::of(&server)), (Some(Cookie::OfClient), Some(Cookie::OfServer)));
    assert_eq!(Cookie::of(&hex(NOTIFICATION)), None);
    assert!(Message::read(&client).is_ok());
}

#[test]
fn several_messages_in_a_datagram() {
    let one = hex(NOTIFICATION);
    let mut datagram = [one.clone(), one.clone()].concat();
    let messages: Vec<_> = Datagram::new(&datagram).collect();
    assert_eq!(messages, [Ok(one.as_slice()), Ok(one.as_slice())]);
    datagram.extend(&one[..7]);
    let cut: Vec<_> = Datagram::new(&datagram).skip(2).collect();
    assert_eq!(cut, [Err(DatagramFault::HeaderCut { held: 7, header: 16 })]);
    let cut: Vec<_> = Datagram::new(&datagram[..39]).skip(1).collect();
    assert_eq!(cut, [Err(DatagramFault::Cut { length: 20, held: 19 })]);
    datagram[12] = 2;
    let fault = Datagram::new(&datagram).next();
    assert_eq!(fault, Some(Err(DatagramFault::Header { fault: SomeIpFault::ProtocolVersion(2), held: 47 })));
}

#[test]
fn lengths_that_cannot_be() {
    let mut bytes = hex(NOTIFICATION);
    bytes[7] = 7;
    assert_eq!(Message::read(&bytes), Err(SomeIpFault::LengthTooSmall { told: 7 }));
    bytes[7] = 13;
    assert_eq!(Message::read(&bytes), Err(SomeIpFault::LengthDisagrees { length: 21, held: 20 }));
    assert_eq!(Message::read(&bytes[..15]), Err(SomeIpFault::HeaderCut { held: 15 }));
    bytes[4..8].copy_from_slice(&[0xFF; 4]);
    assert_eq!(Message::read(&bytes), Err(SomeIpFault::LengthDisagrees { length: 0x1_0000_0007, held: 20 }));
}

#[test]
fn a_stream_goes_on_behind_damage() {
    let message = hex(NOTIFICATION);
    let mut huge = message.clone();
    huge[4..8].copy_from_slice(&[0xFF; 4]);
    let sent = [message.clone(), huge, vec![0xEE; 5], Cookie::OfServer.bytes().to_vec(), message.clone()].concat();
    let mut told = Vec::new();
    let mut stream = Stream::new(1000);
    stream.bytes(Some(1), &sent, &mut |cut| {
        told.push(match cut {
            Cut::Message { bytes, .. } => Ok(bytes.to_vec()),
            Cut::Skipped { bytes, why } => Err((bytes, why)),
            Cut::Unfinished { .. } => panic!("all messages are whole"),
        });
    });
    let fault = SomeIpFault::TooLong { length: 0x1_0000_0007, most_bytes: 1000 };
    let cookie = Cookie::OfServer.bytes().to_vec();
    assert_eq!(told, [Ok(message.clone()), Err((25, Why::Fault(fault))), Ok(cookie), Ok(message)]);
}
