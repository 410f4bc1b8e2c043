//! Good traffic. All formats: SAE J1939-21, from memory; the examples' frames follow from them by hand.

use wirelore_transport::j1939_tp::{
    AbortReason, Control, ControlKind, Group, Outcome, SegmentError, broadcast as cut_broadcast,
    connection as cut_connection,
};

use crate::heard::{J1939, broadcast, connection, ms, pattern};

const IDENTIFICATION: &[u8] = b"ZZ9GP00R55B123456*";

/// Vehicle identification (parameter group 65260), 18 bytes, broadcast in three packets.
#[test]
fn the_broadcast_of_a_vehicle_identification() {
    let frames = [
        (0x18EC_FF00, [0x20, 0x12, 0x00, 0x03, 0xFF, 0xEC, 0xFE, 0x00]),
        (0x18EB_FF00, [0x01, 0x5A, 0x5A, 0x39, 0x47, 0x50, 0x30, 0x30]),
        (0x18EB_FF00, [0x02, 0x52, 0x35, 0x35, 0x42, 0x31, 0x32, 0x33]),
        (0x18EB_FF00, [0x03, 0x34, 0x35, 0x36, 0x2A, 0xFF, 0xFF, 0xFF]),
    ];
    assert_eq!(broadcast(0, 65260, IDENTIFICATION), frames);
    let mut heard = J1939::default();
    let outcomes = frames.map(|(id, payload)| heard.feed(id, &payload));
    assert_eq!(outcomes, [Outcome::Part, Outcome::Part, Outcome::Part, Outcome::Finished]);
    let message = &heard.messages[0];
    assert_eq!((message.pgn, message.source, message.destination), (65260, 0, 0xFF));
    assert_eq!(message.bytes, IDENTIFICATION);
    assert_eq!((message.first_ns, message.last_ns, message.frames), (ms(1), ms(4), 4));
    heard.finish();
    assert_eq!(heard.kinds(), []);
}

/// 39 bytes of parameter group 65242 from address 00 to F9: request, clearance, six packets, acknowledgement.
#[test]
fn a_connection() {
    let message = pattern(39);
    let frames = connection(0x00, 0xF9, 65242, 6, &message);
    assert_eq!(frames.len(), 9);
    assert_eq!(frames[0], (0x18EC_F900, [0x10, 0x27, 0x00, 0x06, 0xFF, 0xDA, 0xFE, 0x00]));
    assert_eq!(frames[1], (0x18EC_00F9, [0x11, 0x06, 0x01, 0xFF, 0xFF, 0xDA, 0xFE, 0x00]));
    assert!(frames[2..8].iter().all(|frame| frame.0 == 0x18EB_F900));
    assert_eq!(frames[8], (0x18EC_00F9, [0x13, 0x27, 0x00, 0x06, 0xFF, 0xDA, 0xFE, 0x00]));

    let mut heard = J1939::default();
    let outcomes: Vec<_> = frames.iter().map(|(id, payload)| heard.feed(*id, payload)).collect();
    let cleared = Outcome::Answer(ControlKind::ClearToSend { packets: 6, next: 1 });
    assert_eq!(outcomes[..3], [Outcome::Part, cleared, Outcome::Part]);
    let acknowledged = Outcome::Answer(ControlKind::Acknowledge { size: 39, packets: 6 });
    assert_eq!(outcomes[7..], [Outcome::Finished, acknowledged]);
    let told = &heard.messages[0];
    assert_eq!((told.pgn, told.source, told.destination, &told.bytes), (65242, 0x00, 0xF9, &message));
    assert_eq!((told.first_ns, told.last_ns, told.frames), (ms(1), ms(8), 7));
    heard.finish();
    assert_eq!(heard.kinds(), []);
}

/// The receiver lost packet 3 of 6 on its side, then asks for it again; so did the recording.
#[test]
fn a_packet_that_is_asked_for_again() {
    let message = pattern(39);
    let frames = connection(0x00, 0xF9, 65242, 6, &message);
    let clear = |packets, next| {
        let control = Control { pgn: 65242, kind: ControlKind::ClearToSend { packets, next } };
        (0x18EC_00F9, control.to_bytes())
    };
    // Only that packet; from there on; all of them.
    for (packets, next, again) in [(1, 3, 4..5), (4, 3, 4..8), (6, 1, 2..8)] {
        let mut heard = J1939::default();
        heard.feed_all(&frames[..4]);
        heard.feed_all(&frames[5..8]);
        assert_eq!(heard.messages, []);
        heard.feed_all(&[clear(packets, next)]);
        heard.feed_all(&frames[again]);
        assert_eq!(heard.bytes(), [message.as_slice()]);
        heard.feed_all(&frames[8..]);
        heard.finish();
        assert_eq!(heard.kinds(), [], "{packets} from {next}");
    }
    // The recording has everything, and the receiver asks nevertheless: one message, told once.
    let mut heard = J1939::default();
    heard.feed_all(&frames[..8]);
    heard.feed_all(&[clear(4, 3)]);
    heard.feed_all(&frames[4..9]);
    heard.finish();
    assert_eq!((heard.bytes(), heard.kinds()), (vec![message.as_slice()], vec![]));
}

#[test]
fn a_receiver_holds_the_sender_up() {
    let frames = connection(0x00, 0xF9, 65242, 3, &pattern(39));
    let hold = Control { pgn: 65242, kind: ControlKind::ClearToSend { packets: 0, next: 0xFF } }.to_bytes();
    let mut heard = J1939::default();
    let (before, behind) = frames.split_at(5);
    for (time, frame) in (0..).step_by(100).zip(before) {
        heard.feed_at(ms(time), frame.0, &frame.1);
    }
    for time in (500..5000).step_by(500) {
        heard.feed_at(ms(time), 0x18EC_00F9, &hold);
    }
    for (time, frame) in (5000..).step_by(100).zip(behind) {
        heard.feed_at(ms(time), frame.0, &frame.1);
    }
    heard.finish();
    assert_eq!((heard.bytes(), heard.kinds()), (vec![pattern(39).as_slice()], vec![]));
}

/// Several sources at once, one of them with a broadcast and two connections.
#[test]
fn conversations_interleave() {
    let all = [
        broadcast(0x00, 65226, &pattern(14)),
        broadcast(0x31, 65226, &pattern(1785)),
        broadcast(0x29, 65249, &pattern(19)),
        connection(0x00, 0xF9, 65242, 2, &pattern(100)),
        connection(0x00, 0xFA, 65242, 255, &pattern(101)),
        connection(0xF9, 0x00, 65242, 7, &pattern(102)),
    ];
    let mut heard = J1939::default();
    for index in 0..all[1].len() {
        for (id, payload) in all.iter().filter_map(|frames| frames.get(index)) {
            heard.feed(*id, payload);
        }
    }
    heard.finish();
    assert_eq!(heard.kinds(), []);
    let told: Vec<_> =
        heard.messages.iter().map(|message| (message.source, message.destination, message.bytes.len())).collect();
    assert_eq!(
        told,
        [(0, 255, 14), (0x29, 255, 19), (0, 0xFA, 101), (0xF9, 0, 102), (0, 0xF9, 100), (0x31, 255, 1785)]
    );
    assert!(heard.messages.iter().all(|message| message.bytes == pattern(message.bytes.len())));
}

#[test]
fn other_groups_are_none_of_it() {
    let mut heard = J1939::default();
    for id in [0x0CF0_0400, 0x18EA_FFF9, 0x18EE_FF80, 0x19EC_FF00, 0x1AEB_FF00, 0x18FE_EC00] {
        assert_eq!(heard.feed(id, &[0x20, 0x12, 0, 3, 0xFF, 0xEC, 0xFE, 0]), Outcome::NotMine, "{id:08X}");
    }
    // The priority does not matter.
    assert_eq!(heard.feed(0x1CEC_FF00, &[0x20, 0x12, 0, 3, 0xFF, 0xEC, 0xFE, 0]), Outcome::Part);
}

#[test]
fn control_messages_come_back_as_they_were_written() {
    let kinds = [
        ControlKind::RequestToSend { size: 1785, packets: 255, most_at_once: 16 },
        ControlKind::ClearToSend { packets: 16, next: 17 },
        ControlKind::Acknowledge { size: 1785, packets: 255 },
        ControlKind::Broadcast { size: 9, packets: 2 },
        ControlKind::Abort(AbortReason(3)),
    ];
    for kind in kinds {
        let control = Control { pgn: 0x1_EF00, kind };
        assert_eq!(Control::read(&control.to_bytes()), Ok(control));
    }
    let abort = Control { pgn: 65242, kind: ControlKind::Abort(AbortReason(3)) };
    assert_eq!(abort.to_bytes(), [0xFF, 3, 0xFF, 0xFF, 0xFF, 0xDA, 0xFE, 0]);
}

#[test]
fn sizes_at_the_edges() {
    for size in [9, 14, 15, 1784, 1785] {
        let mut heard = J1939::default();
        heard.feed_all(&broadcast(5, 65226, &pattern(size)));
        heard.feed_all(&connection(5, 6, 65226, 1, &pattern(size)));
        assert_eq!((heard.bytes(), heard.kinds()), (vec![pattern(size).as_slice(); 2], vec![]));
    }
    let group = Group { pgn: 65226, source: 5, priority: 6 };
    let nothing = &mut |_, _| panic!("no frame can come");
    for size in [0, 8, 1786, 100_000] {
        assert_eq!(cut_broadcast(&group, &pattern(size), nothing), Err(SegmentError::Size(size)));
        assert_eq!(cut_connection(&group, 6, 1, &pattern(size), nothing), Err(SegmentError::Size(size)));
    }
    assert_eq!(cut_connection(&group, 255, 1, &pattern(9), nothing), Err(SegmentError::Destination));
    assert_eq!(cut_connection(&group, 6, 0, &pattern(9), nothing), Err(SegmentError::NothingCleared));
}
