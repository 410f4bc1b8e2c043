//! SOME/IP-TP.

use proptest::prelude::*;
use wirelore_transport::someip::tp::{Reassembler, Tp, TpFault, segments};
use wirelore_transport::someip::{Header, Message, MessageKind};

const HEADER: Header = Header {
    service: 0x1234,
    method: 0x8001,
    client: 0,
    session: 1,
    interface_version: 1,
    kind: MessageKind::Notification,
    segmented: false,
    return_code: 0,
};

#[derive(Debug, Clone, PartialEq, Eq)]
enum Told {
    Part,
    Repeated,
    OfGivenUp,
    Message(u16, Vec<u8>, u32, Option<i64>),
    Fault(u16, TpFault),
}

fn tell(told: &mut Vec<Told>) -> impl FnMut(Tp<'_>) {
    |tp| {
        told.push(match tp {
            Tp::Part => Told::Part,
            Tp::Repeated => Told::Repeated,
            Tp::OfGivenUp => Told::OfGivenUp,
            Tp::Message { header, payload, segments, first_ns } => {
                Told::Message(header.session, payload.to_vec(), segments, first_ns)
            }
            Tp::Fault { header, fault } => Told::Fault(header.session, fault),
        });
    }
}

fn cut(session: u16, payload: &[u8], segment_bytes: usize) -> Vec<Vec<u8>> {
    let mut cutter = segments(Header { session, ..HEADER }, payload, segment_bytes).expect("offsets suffice");
    let mut all = Vec::new();
    loop {
        let mut segment = Vec::new();
        if !cutter.write_next(&mut segment) {
            return all;
        }
        all.push(segment);
    }
}

fn feed(most_bytes: usize, messages: &[&Vec<u8>]) -> Vec<Told> {
    let mut told = Vec::new();
    let mut reassembler = Reassembler::new(most_bytes);
    for (index, message) in messages.iter().enumerate() {
        let message = Message::read(message).expect("a message");
        assert!(message.header.segmented);
        reassembler.feed((), Some(index as i64), &message, &mut tell(&mut told));
    }
    reassembler.finish(&mut tell(&mut told));
    told
}

/// The example of AUTOSAR PRS SOME/IP Protocol (from memory): 5880 bytes in segments of 1392.
#[test]
fn the_published_example() {
    let payload: Vec<u8> = (0..5880u32).map(|index| (index % 253) as u8).collect();
    let all = cut(1, &payload, 1392);
    let seen: Vec<_> = all
        .iter()
        .map(|segment| {
            let length = u32::from_be_bytes([segment[4], segment[5], segment[6], segment[7]]);
            let word = u32::from_be_bytes([segment[16], segment[17], segment[18], segment[19]]);
            (length, word >> 4, word & 1, word)
        })
        .collect();
    let wanted = [
        (1404, 0, 1, 0x0000_0001),
        (1404, 87, 1, 0x0000_0571),
        (1404, 174, 1, 0x0000_0AE1),
        (1404, 261, 1, 0x0000_1051),
        (324, 348, 0, 0x0000_15C0),
    ];
    assert_eq!(seen, wanted);
    assert!(all.iter().all(|segment| segment[14] == 0x22), "notification in segments");
    let told = feed(5880, &all.iter().collect::<Vec<_>>());
    assert_eq!(told[..4], [Told::Part, Told::Part, Told::Part, Told::Part]);
    assert_eq!(told[4..], [Told::Message(1, payload, 5, Some(0))]);
}

#[test]
fn a_lost_or_swapped_segment_gives_the_message_up_and_the_next_one_comes_through() {
    let (first, second) = (cut(1, &[1; 64], 16), cut(2, &[2; 32], 16));
    let told = feed(100, &[&first[0], &first[2], &first[1], &first[3], &second[0], &second[1]]);
    let fault = Told::Fault(1, TpFault::OutOfOrder { expected: 16, found: 32 });
    let whole = Told::Message(2, vec![2; 32], 2, Some(4));
    assert_eq!(told, [Told::Part, fault, Told::OfGivenUp, Told::OfGivenUp, Told::Part, whole]);
}

#[test]
fn the_same_segment_twice_is_told_as_repeated() {
    let first = cut(1, &[1; 48], 16);
    let second = cut(2, &[1; 48], 16);
    let [a, b, c] = &first[..] else { panic!("three segments") };
    let told = feed(100, &[a, a, b, b, c, c, &second[0], &second[1], &second[2]]);
    let whole = Told::Message(1, vec![1; 48], 3, Some(0));
    let next = Told::Message(2, vec![1; 48], 3, Some(6));
    let (part, repeated) = (Told::Part, Told::Repeated);
    let wanted = [&part, &repeated, &part, &repeated, &whole, &repeated, &part, &part, &next].map(Clone::clone);
    assert_eq!(told, wanted, "a mirror port gives every packet twice");

    // What ends the next message is no repetition of it where its first segment is lost.
    let told = feed(100, &[a, b, c, &second[2]]);
    assert_eq!(told[3], Told::Fault(2, TpFault::OutOfOrder { expected: 0, found: 32 }));
}

#[test]
fn a_new_message_in_the_middle_of_one() {
    let (first, second) = (cut(1, &[1; 48], 16), cut(2, &[2; 32], 16));
    let told = feed(100, &[&first[0], &first[1], &second[0], &second[1]]);
    let whole = Told::Message(2, vec![2; 32], 2, Some(2));
    assert_eq!(told, [Told::Part, Told::Part, Told::Fault(1, TpFault::Restarted { held: 32 }), Told::Part, whole]);

    // The same where nobody counts sessions.
    let (first, second) = (cut(0, &[1; 48], 16), cut(0, &[2; 32], 16));
    let told = feed(100, &[&first[0], &second[0], &second[1]]);
    let whole = Told::Message(0, vec![2; 32], 2, Some(1));
    assert_eq!(told, [Told::Part, Told::Fault(0, TpFault::Restarted { held: 16 }), Told::Part, whole]);
}

#[test]
fn bounds_and_lengths() {
    let long = cut(1, &[1; 64], 16);
    let told = feed(40, &long.iter().collect::<Vec<_>>());
    let fault = Told::Fault(1, TpFault::TooLong { held: 48, most_bytes: 40 });
    assert_eq!(told, [Told::Part, Told::Part, fault, Told::OfGivenUp]);

    assert_eq!(feed(40, &[&long[1]]), [Told::Fault(1, TpFault::OutOfOrder { expected: 0, found: 16 })]);
    assert_eq!(feed(40, &[&long[0]]), [Told::Part, Told::Fault(1, TpFault::Unfinished { held: 16 })]);
    let mut odd = long[0].clone();
    odd.pop();
    odd[7] -= 1;
    assert_eq!(feed(40, &[&odd]), [Told::Fault(1, TpFault::Length { held: 15 })]);
    odd.truncate(18);
    odd[7] = 10;
    assert_eq!(feed(40, &[&odd]), [Told::Fault(1, TpFault::WordCut { held: 2 })]);
}

#[test]
fn the_series_that_was_silent_for_longest_makes_room() {
    let first = cut(1, &[1; 48], 16);
    let message = Message::read(&first[0]).expect("a message");
    let (mut told, mut reassembler) = (Vec::new(), Reassembler::new(100));
    for client in 0..257 {
        reassembler.feed(client, None, &message, &mut tell(&mut told));
    }
    assert_eq!(told.iter().filter(|told| **told == Told::Part).count(), 257);
    assert_eq!(told[256], Told::Fault(1, TpFault::Unfinished { held: 16 }));
    reassembler.finish(&mut tell(&mut told));
    assert_eq!(told.len(), 2 * 257);
}

proptest! {
    /// Dropping, repeating or swapping segments never gives a message that was not sent, and the last one still comes through.
    #[test]
    fn no_wrong_message(
        lengths in proptest::collection::vec(0usize..100, 1..5),
        segment_bytes in 16usize..60,
        damage in proptest::collection::vec((any::<prop::sample::Index>(), 0u8..3), 0..4),
    ) {
        let sent: Vec<Vec<u8>> =
            lengths.iter().enumerate().map(|(number, length)| (0..*length).map(|at| (at * 3 + number * 31) as u8).collect()).collect();
        let mut wire: Vec<Vec<u8>> =
            sent.iter().enumerate().flat_map(|(number, payload)| cut(number as u16 + 1, payload, segment_bytes)).collect();
        for (at, what) in damage {
            let at = at.index(wire.len());
            match what {
                0 if wire.len() > 1 => drop(wire.remove(at)),
                1 => wire.insert(at, wire[at].clone()),
                _ if at > 0 => wire.swap(at - 1, at),
                _ => {}
            }
        }
        let last = cut(999, &[9; 50], segment_bytes);
        let all: Vec<_> = wire.iter().chain(&last).collect();
        let told = feed(1000, &all);
        for message in &told {
            if let Told::Message(session, payload, ..) = message {
                let wanted = if *session == 999 { &[9; 50][..] } else { &sent[usize::from(*session) - 1] };
                prop_assert_eq!(payload, wanted);
            }
        }
        prop_assert!(matches!(told.last(), Some(Told::Message(999, ..))));
    }
}
