//! Every fault, with its numbers, and that good messages come through behind it. Rules and times: SAE J1939-21, from memory.

use wirelore_transport::j1939_tp::{AbortReason, Control, ControlKind, FaultKind, Outcome, Timer};

use crate::heard::{J1939, broadcast, connection, ms, pattern};

type Frame = (u32, [u8; 8]);

fn from_receiver(kind: ControlKind) -> Frame {
    (0x18EC_00F9, Control { pgn: 65242, kind }.to_bytes())
}

fn from_sender(kind: ControlKind) -> Frame {
    (0x18EC_F900, Control { pgn: 65242, kind }.to_bytes())
}

/// A connection of 39 bytes in 6 packets: request, clearance, packets, acknowledgement.
fn connected() -> Vec<Frame> {
    connection(0x00, 0xF9, 65242, 6, &pattern(39))
}

/// Feeds frames that go wrong in one way, and then a good broadcast and a good connection between the same addresses.
#[track_caller]
fn assert_fault(frames: &[Frame], kind: FaultKind) -> J1939 {
    let mut heard = J1939::default();
    heard.feed_all(frames);
    let before = heard.messages.len();
    let (all, to_one) = (pattern(50), pattern(60));
    heard.feed_all(&broadcast(0x00, 65226, &all));
    heard.feed_all(&connection(0x00, 0xF9, 65242, 4, &to_one));
    heard.finish();
    assert_eq!((heard.kinds(), &heard.bytes()[before..]), (vec![kind], [all.as_slice(), &to_one].as_slice()));
    heard
}

#[test]
fn a_lost_packet() {
    let mut frames = broadcast(0x00, 65226, &pattern(40));
    frames.remove(3);
    let heard = assert_fault(&frames, FaultKind::Lost { expected: 3, found: 4 });
    assert_eq!((heard.faults[0].frames, heard.faults[0].pgn, heard.faults[0].time_ns), (3, Some(65226), ms(4)));
    // In a connection the receiver could have asked again. It did not: it has the message, and the recording has not.
    let mut frames = connected();
    frames.remove(4);
    assert_fault(&frames, FaultKind::Lost { expected: 3, found: 4 });
    // The last one.
    let mut frames = connected();
    frames.remove(7);
    assert_fault(&frames, FaultKind::NotRecorded { missing: 6 });
    // A whole stretch, and the receiver clears the next.
    let mut frames = connection(0x00, 0xF9, 65242, 3, &pattern(39));
    frames.drain(3..5);
    assert_fault(&frames, FaultKind::NotRecorded { missing: 2 });
}

#[test]
fn a_repeated_packet() {
    let mut frames = broadcast(0x00, 65226, &pattern(40));
    frames.insert(3, frames[2]);
    assert_fault(&frames, FaultKind::Repeated { number: 2 });
    let mut frames = connected();
    frames.insert(4, frames[3]);
    frames.pop();
    assert_fault(&frames, FaultKind::Repeated { number: 2 });
    // Behind the last one: the message is whole and was told.
    let mut frames = connected();
    frames.insert(8, frames[7]);
    let heard = assert_fault(&frames, FaultKind::Repeated { number: 6 });
    assert_eq!((heard.messages.len(), heard.faults[0].frames), (3, 0));
}

#[test]
fn packets_that_changed_places() {
    let mut frames = broadcast(0x00, 65226, &pattern(40));
    frames.swap(3, 4);
    assert_fault(&frames, FaultKind::Lost { expected: 3, found: 4 });
    // In a connection the first one might have been lost and be asked for again; it is the second one that shows it.
    let mut frames = connected();
    frames.swap(4, 5);
    assert_fault(&frames, FaultKind::OutOfOrder { number: 3, latest: 4 });
}

#[test]
fn packets_without_a_message() {
    let mut heard = J1939::default();
    heard.feed_all(&broadcast(0x00, 65226, &pattern(9))[1..]);
    assert_eq!(heard.kinds(), [FaultKind::NothingBegun { number: 1 }, FaultKind::NothingBegun { number: 2 }]);
    assert_eq!((heard.faults[0].pgn, heard.faults[0].frames), (None, 0));
}

#[test]
fn packets_that_the_message_does_not_have() {
    for number in [0, 7, 255] {
        let mut frames = connected();
        frames.truncate(4);
        frames.push((0x18EB_F900, [number, 0, 0, 0, 0, 0, 0, 0]));
        assert_fault(&frames, FaultKind::PacketBeyond { number, packets: 6 });
    }
}

#[test]
fn announcements_that_cannot_be() {
    let announced = |size, packets| {
        let mut frames = broadcast(0x00, 65226, &pattern(40));
        frames[0].1 = Control { pgn: 65226, kind: ControlKind::Broadcast { size, packets } }.to_bytes();
        frames
    };
    for size in [0, 8, 1786, 65535] {
        assert_fault(&announced(size, 6), FaultKind::Size { size });
    }
    assert_fault(&announced(40, 7), FaultKind::PacketsDisagree { size: 40, packets: 7, needed: 6 });
    assert_fault(&announced(40, 5), FaultKind::PacketsDisagree { size: 40, packets: 5, needed: 6 });

    let mut heard = J1939::default();
    heard.feed_all(&[(
        0x18EC_FF00,
        from_sender(ControlKind::RequestToSend { size: 39, packets: 6, most_at_once: 6 }).1,
    )]);
    heard.feed_all(&[from_sender(ControlKind::Broadcast { size: 39, packets: 6 })]);
    assert_eq!(
        heard.kinds(),
        [FaultKind::Destination { destination: 255 }, FaultKind::Destination { destination: 0xF9 }]
    );
}

#[test]
fn control_messages_that_say_nothing() {
    let mut heard = J1939::default();
    assert_eq!(heard.feed(0x18EC_FF00, &[0x20, 9, 0]), Outcome::Unusable);
    heard.feed(0x18EC_FF00, &[0x21, 9, 0, 2, 0xFF, 0xCA, 0xFE, 0]);
    heard.feed(0x18EC_FF00, &[0x20, 9, 0, 2, 0xFF, 0xCA, 0xFE, 4]);
    let impossible = FaultKind::PgnImpossible { pgn: 0x4_FECA };
    assert_eq!(
        heard.kinds(),
        [FaultKind::FrameLength { found: 3 }, FaultKind::ControlReserved { number: 0x21 }, impossible]
    );
    // A packet that was cut ends its message; what comes behind it is passed over.
    let frames = broadcast(0x00, 65226, &pattern(30));
    let mut heard = J1939::default();
    heard.feed_all(&frames[..2]);
    assert_eq!(heard.feed(frames[2].0, &frames[2].1[..4]), Outcome::Unusable);
    assert_eq!(heard.feed(frames[3].0, &frames[3].1), Outcome::OfGivenUp);
    assert_eq!(heard.kinds(), [FaultKind::FrameLength { found: 4 }]);
}

#[test]
fn answers_without_a_connection() {
    let clear = ControlKind::ClearToSend { packets: 6, next: 1 };
    let mut heard = assert_fault(&[from_receiver(clear)], FaultKind::NothingToAnswer);
    assert_eq!((heard.faults[0].conversation.source, heard.faults[0].conversation.destination), (0x00, 0xF9));
    heard.feed_all(&[from_receiver(ControlKind::Acknowledge { size: 39, packets: 6 })]);
    // About another group than the one that is open.
    heard.feed_all(&connected()[..1]);
    let other = Control { pgn: 65243, kind: clear }.to_bytes();
    assert_eq!(heard.feed(0x18EC_00F9, &other), Outcome::Unusable);
    assert_eq!(heard.kinds(), [FaultKind::NothingToAnswer; 3]);
    assert_fault(
        &[from_receiver(ControlKind::Abort(AbortReason(1)))],
        FaultKind::NothingToAbort { reason: AbortReason(1) },
    );
}

/// As on a real bench: four packets are announced, and the answer asks for twelve from the fifth on.
#[test]
fn more_is_asked_for_than_there_is() {
    for next in [0, 7, 255] {
        let mut frames = connected();
        frames.truncate(1);
        frames.push(from_receiver(ControlKind::ClearToSend { packets: 12, next }));
        assert_fault(&frames, FaultKind::ClearedBeyond { next, packets: 6 });
    }
    // More packets than are left is no fault: what there is will come.
    let mut frames = connected();
    frames[1] = from_receiver(ControlKind::ClearToSend { packets: 255, next: 1 });
    let mut heard = J1939::default();
    heard.feed_all(&frames);
    assert_eq!((heard.bytes(), heard.kinds()), (vec![pattern(39).as_slice()], vec![]));
}

#[test]
fn an_acknowledgement_that_disagrees() {
    let mut frames = connected();
    frames.truncate(6);
    frames.push(from_receiver(ControlKind::Acknowledge { size: 40, packets: 6 }));
    assert_fault(&frames, FaultKind::AcknowledgeDisagrees { acknowledged: 40, announced: 39 });
}

#[test]
fn aborts_by_either_side() {
    let reason = AbortReason(3);
    let abort = ControlKind::Abort(reason);
    for (frame, by_sender) in [(from_receiver(abort), false), (from_sender(abort), true)] {
        let mut frames = connected();
        frames.truncate(4);
        // Packets that were on their way already, and the other side's abort, are passed over.
        frames.extend([frame, connected()[4], from_receiver(abort)]);
        let heard = assert_fault(&frames, FaultKind::Aborted { reason, by_sender });
        assert_eq!((heard.faults[0].frames, heard.faults[0].pgn), (3, Some(65242)));
    }
    // Behind the last packet: the message was told.
    let mut frames = connected();
    frames[8] = from_receiver(abort);
    let heard = assert_fault(&frames, FaultKind::Aborted { reason, by_sender: false });
    assert_eq!(heard.faults[0].frames, 0);

    // The same group had been given up in the other direction.
    let mut heard = J1939::default();
    heard.feed_all(&connection(0xF9, 0x00, 65242, 5, &pattern(39))[..3]);
    heard.feed_all(&[from_receiver(abort)]);
    heard.feed_all(&connected()[..3]);
    heard.feed_all(&[from_receiver(abort)]);
    let wanted = [FaultKind::Aborted { reason, by_sender: true }, FaultKind::Aborted { reason, by_sender: false }];
    assert_eq!(heard.kinds(), wanted);

    let aborted = FaultKind::Aborted { reason, by_sender: false };
    assert_eq!(aborted.to_string(), "the receiver gave the connection up: it waited too long (3)");
    assert_eq!(AbortReason(100).to_string(), "a reserved reason (100)");
    assert_eq!(AbortReason(250).to_string(), "another reason (250)");
}

#[test]
fn a_message_in_the_middle_of_another() {
    let frames = broadcast(0x00, 65226, &pattern(40));
    let heard = assert_fault(&frames[..3], FaultKind::BrokenOff { received: 2, packets: 6 });
    assert_eq!(heard.faults[0].frames, 3);
    assert_fault(&connected()[..4], FaultKind::BrokenOff { received: 2, packets: 6 });
}

/// Each wait at its limit and a millisecond beyond: T1 750, T2 1250, T3 1250, T4 1050 ms.
#[test]
fn waits_that_are_too_long() {
    let to_all = broadcast(0x00, 65226, &pattern(40));
    let hold = from_receiver(ControlKind::ClearToSend { packets: 0, next: 0xFF });
    let connected = connected();
    let halves = connection(0x00, 0xF9, 65242, 3, &pattern(39));
    let cases: [(Timer, i64, &[Frame], Frame); 6] = [
        (Timer::T1, 750, &to_all[..3], to_all[3]),
        (Timer::T1, 750, &connected[..4], connected[4]),
        (Timer::T2, 1250, &connected[..2], connected[2]),
        (Timer::T3, 1250, &connected[..1], connected[1]),
        (Timer::T3, 1250, &halves[..5], halves[5]),
        (Timer::T4, 1050, &[connected[0], hold], connected[1]),
    ];
    for (timer, limit_ms, before, next) in cases {
        for waited_ms in [limit_ms, limit_ms + 1] {
            let mut heard = J1939::default();
            for frame in before {
                heard.feed_at(ms(0), frame.0, &frame.1);
            }
            heard.feed_at(ms(waited_ms), next.0, &next.1);
            let late = FaultKind::TimedOut { timer, waited_ns: waited_ms * 1_000_000, limit_ns: limit_ms * 1_000_000 };
            let expected = if waited_ms > limit_ms { vec![late] } else { vec![] };
            assert_eq!(heard.kinds(), expected, "{timer} {waited_ms}");
        }
    }
    // A time that goes back is no wait, and neither is none.
    let mut heard = J1939::default();
    for (time, frame) in [ms(9000), ms(5), None, ms(4), ms(100_000), ms(0), ms(1)].into_iter().zip(&to_all) {
        heard.feed_at(time, frame.0, &frame.1);
    }
    assert_eq!(heard.kinds().len(), 1, "only the hundred seconds are");
    let late = FaultKind::TimedOut { timer: Timer::T1, waited_ns: 751_000_000, limit_ns: 750_000_000 };
    assert_eq!(late.to_string(), "the message did not go on within T1, 750 ms: nothing came for 751 ms");
}

#[test]
fn too_many_conversations() {
    let mut heard = J1939::default();
    let sources = (0..=255_u8).flat_map(|source| [(source, 1), (source, 2)]).filter(|(source, to)| source != to);
    for (source, destination) in sources {
        heard.feed_all(&connection(source, destination, 65242, 6, &pattern(39))[..3]);
    }
    assert!(heard.reassembler.held_bytes() <= 260 * 2048);
    let count = 2 * 256 - 2 - 256;
    assert_eq!(heard.kinds(), vec![FaultKind::PushedOut { most: 256, received: 1, packets: 6 }; count]);
    heard.finish();
    assert_eq!(heard.kinds()[count..], vec![FaultKind::Unfinished { received: 1, packets: 6 }; 256]);
}
