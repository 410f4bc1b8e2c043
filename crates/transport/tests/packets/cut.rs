//! Messages out of streams that are cut anywhere, damaged anywhere, and seen from anywhere.

use proptest::prelude::*;
use wirelore_transport::cut::{Cut, Cutter, Framing, Why};
use wirelore_transport::doip::{DoIp, Message as DoIpMessage, Payload};
use wirelore_transport::someip::{Header, Message as SomeIpMessage, MessageKind, SomeIp};
use wirelore_transport::tcp::{End, Piece};

#[derive(Debug, Default, PartialEq)]
struct Seen {
    messages: Vec<Vec<u8>>,
    skipped: u64,
    unfinished: usize,
}

impl Seen {
    fn take<F>(&mut self, cut: Cut<'_, F>) {
        match cut {
            Cut::Message { bytes, .. } => self.messages.push(bytes.to_vec()),
            Cut::Skipped { bytes, .. } => self.skipped += bytes,
            Cut::Unfinished { held, .. } => self.unfinished += held,
        }
    }

    fn bytes(&self) -> usize {
        self.messages.iter().map(Vec::len).sum::<usize>() + self.skipped as usize + self.unfinished
    }
}

/// `sizes` are those of the pieces, used again and again.
fn cut<F: Framing>(stream: &[u8], sizes: &[usize], in_the_middle: bool) -> Seen {
    let mut seen = Seen::default();
    let mut cutter = Cutter::<F>::new(500);
    cutter.piece(Piece::Begun { from_start: !in_the_middle }, &mut |cut| seen.take(cut));
    let (mut rest, mut sizes) = (stream, sizes.iter().cycle());
    while !rest.is_empty() {
        let size = sizes.next().map_or(rest.len(), |size| (*size).min(rest.len()));
        let (bytes, behind) = rest.split_at(size);
        cutter.piece(Piece::Bytes { time_ns: None, bytes }, &mut |cut| seen.take(cut));
        rest = behind;
    }
    cutter.piece(Piece::Ended(End::LogEnd), &mut |cut| seen.take(cut));
    seen
}

fn someip(payloads: &[Vec<u8>]) -> Vec<Vec<u8>> {
    let of = |(index, payload): (usize, &Vec<u8>)| {
        let header = Header {
            service: 0x1111,
            method: 0x8001,
            client: 0,
            session: index as u16,
            interface_version: 1,
            kind: MessageKind::Notification,
            segmented: false,
            return_code: 0,
        };
        let mut bytes = Vec::new();
        assert!(SomeIpMessage { header, payload }.write(&mut bytes));
        bytes
    };
    payloads.iter().enumerate().map(of).collect()
}

fn doip(payloads: &[Vec<u8>]) -> Vec<Vec<u8>> {
    let of = |payload: &Vec<u8>| {
        let mut bytes = Vec::new();
        let payload = Payload::DiagnosticAck { source: 0x1001, target: 0x0E00, code: 0, previous: payload };
        assert!(DoIpMessage { version: 3, payload }.write(&mut bytes));
        bytes
    };
    payloads.iter().map(of).collect()
}

/// What holds for any stream of whole messages.
fn any_cut_gives_the_same<F: Framing>(sent: &[Vec<u8>], sizes: &[usize], hurt: (usize, u8), from: usize) {
    let mut stream = sent.concat();
    let seen = cut::<F>(&stream, sizes, false);
    assert_eq!((seen.messages.as_slice(), seen.skipped, seen.unfinished), (sent, 0, 0));

    // Seen from some byte on: no message is lost that is whole, and each byte is told once.
    let from = from % stream.len();
    let seen = cut::<F>(&stream[from..], sizes, true);
    assert_eq!(seen.bytes(), stream.len() - from);
    let mut whole = 0;
    let mut at = stream.len();
    for message in sent.iter().rev() {
        at -= message.len();
        whole += usize::from(at >= from);
    }
    assert!(seen.messages.ends_with(&sent[sent.len() - whole..]));

    // Damaged anywhere: cut in any way, the same comes out.
    let at = hurt.0 % stream.len();
    stream[at] ^= hurt.1;
    let at_once = cut::<F>(&stream, &[], false);
    assert_eq!(cut::<F>(&stream, sizes, false), at_once);
    assert_eq!(cut::<F>(&stream, &[1], false), at_once);
    assert_eq!(at_once.bytes(), stream.len());
}

proptest! {
    #[test]
    fn someip_messages_cut_at_any_borders(
        payloads in proptest::collection::vec(proptest::collection::vec(any::<u8>(), 0..60), 1..8),
        sizes in proptest::collection::vec(1usize..50, 1..8),
        hurt in any::<(usize, u8)>(),
        from in any::<usize>(),
    ) {
        any_cut_gives_the_same::<SomeIp>(&someip(&payloads), &sizes, hurt, from);
    }

    #[test]
    fn doip_messages_cut_at_any_borders(
        payloads in proptest::collection::vec(proptest::collection::vec(any::<u8>(), 0..60), 1..8),
        sizes in proptest::collection::vec(1usize..50, 1..8),
        hurt in any::<(usize, u8)>(),
        from in any::<usize>(),
    ) {
        any_cut_gives_the_same::<DoIp>(&doip(&payloads), &sizes, hurt, from);
    }

    #[test]
    fn any_bytes_are_told_once(
        bytes in proptest::collection::vec(prop_oneof![Just(0u8), Just(1), Just(2), Just(0xFD), any::<u8>()], 0..300),
        sizes in proptest::collection::vec(1usize..50, 1..8),
        in_the_middle in any::<bool>(),
    ) {
        prop_assert_eq!(cut::<SomeIp>(&bytes, &sizes, in_the_middle).bytes(), bytes.len());
        prop_assert_eq!(cut::<DoIp>(&bytes, &sizes, in_the_middle).bytes(), bytes.len());
        prop_assert_eq!(cut::<DoIp>(&bytes, &sizes, in_the_middle), cut::<DoIp>(&bytes, &[], in_the_middle));
    }
}

#[test]
fn times_and_gaps() {
    let message = &doip(&[vec![1, 2, 3]])[0];
    let mut told = Vec::new();
    let mut cutter = Cutter::<DoIp>::new(500);
    let mut tell = |cut: Cut<'_, _>| {
        told.push(match cut {
            Cut::Message { first_ns, last_ns, .. } => format!("{first_ns:?} {last_ns:?}"),
            Cut::Skipped { bytes, why } => format!("{bytes} bytes are skipped: {why}"),
            Cut::Unfinished { held, length } => format!("{held} of {length:?}"),
        });
    };
    cutter.bytes(Some(1), &message[..3], &mut tell);
    cutter.bytes(Some(2), &message[3..], &mut tell);
    cutter.bytes(Some(3), &message[..12], &mut tell);
    cutter.lost(Why::Gap(10), &mut tell);
    cutter.bytes(Some(4), &message[5..], &mut tell);
    cutter.bytes(Some(5), message, &mut tell);
    cutter.bytes(Some(6), &message[..5], &mut tell);
    cutter.finish(&mut tell);
    let wanted = [
        "Some(1) Some(2)",
        "12 of Some(16)",
        "11 bytes are skipped: 10 bytes of the stream are missing",
        "Some(5) Some(5)",
        "5 of None",
    ];
    assert_eq!(told, wanted);
}

/// Ten messages, each in a piece of its own; what is not a message is told in words.
fn told_of(messages: &[Vec<u8>], mut between: impl FnMut(usize, &mut Cutter<DoIp>, &mut Vec<String>)) -> Vec<String> {
    let mut told = Vec::new();
    let mut cutter = Cutter::<DoIp>::new(50_000);
    for (index, message) in messages.iter().enumerate() {
        between(index, &mut cutter, &mut told);
        cutter.bytes(Some(index as i64), message, &mut in_words(&mut told));
    }
    cutter.finish(&mut in_words(&mut told));
    told
}

fn in_words<F: std::fmt::Display>(told: &mut Vec<String>) -> impl FnMut(Cut<'_, F>)
where
    Why<F>: std::fmt::Display,
{
    |cut| {
        told.push(match cut {
            Cut::Message { last_ns, .. } => format!("message at {}", last_ns.unwrap_or(-1)),
            Cut::Skipped { bytes, why } => format!("{bytes} skipped: {why}"),
            Cut::Unfinished { held, length } => format!("{held} of {length:?}"),
        });
    }
}

#[test]
fn messages_that_a_wrong_length_swallows_come_when_it_cannot_be_whole() {
    let mut messages = doip(&vec![vec![1, 2, 3]; 10]);
    messages[3][5..8].copy_from_slice(&[0, 0x70, 0]);
    let message = |at: i64| format!("message at {at}");
    let mut wanted: Vec<String> = (0..3).map(message).collect();
    wanted
        .push("16 skipped: a header announces 28680 bytes, 112 follow, and other messages stand among them".to_owned());
    wanted.extend((4..10).map(message));
    assert_eq!(told_of(&messages, |_, _, _| {}), wanted, "each with the time of its own piece");

    // The same where bytes are missing behind it, and the last of them is not whole.
    let last = messages[8].split_off(12);
    assert_eq!(last.len(), 4);
    let told = told_of(&messages, |index, cutter, told| {
        if index == 9 {
            cutter.lost(Why::Gap(4), &mut in_words(told));
        }
    });
    wanted.truncate(3);
    wanted
        .push("16 skipped: a header announces 28680 bytes, 92 follow, and other messages stand among them".to_owned());
    wanted.extend((4..8).map(message));
    wanted.push("12 of Some(16)".to_owned());
    wanted.push("0 skipped: 4 bytes of the stream are missing".to_owned());
    wanted.push(message(9));
    assert_eq!(told, wanted);
}

#[test]
fn a_message_that_is_cut_by_the_end_is_told_as_it_is() {
    let messages = doip(&[vec![7; 3], vec![7; 300]]);
    let mut cut = messages.clone();
    cut[1].truncate(200);
    assert_eq!(told_of(&cut, |_, _, _| {}), ["message at 0", "200 of Some(313)"]);
}

#[test]
fn missing_bytes_between_two_messages_are_told() {
    let messages = doip(&vec![vec![1, 2, 3]; 2]);
    let told = told_of(&messages, |index, cutter, told| {
        if index == 1 {
            cutter.lost(Why::Gap(16), &mut in_words(told));
        }
    });
    assert_eq!(told, ["message at 0", "0 skipped: 16 bytes of the stream are missing", "message at 1"]);
}
