//! MOST control messages: recorded ones, parts put together, every fault.

use proptest::prelude::*;
use wirelore_transport::most::{ControlError, ControlMessage, Event, FaultKind, Outcome, Reassembler, Rules};

use crate::heard::ms;

/// Bytes; function block, instance, function, operation, part and number of data bytes.
type Recorded = ([u8; 17], u8, u8, u16, u8, u8, usize);

/// Messages of a real ring and how they were taken apart in print, from the page "How Most control messages work" at moderndaymods.com:
/// bytes; function block, instance, function, operation, part and number of data bytes.
const RECORDED: [Recorded; 4] = [
    (
        [0x31, 0x02, 0x20, 0x1C, 0x06, 0x02, 0x00, 0x00, 0x00, 0xBF, 0x68, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00],
        0x31,
        2,
        0x201,
        0xC,
        0,
        6,
    ),
    (
        [0x31, 0x02, 0x20, 0x2C, 0x02, 0x00, 0x06, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00],
        0x31,
        2,
        0x202,
        0xC,
        0,
        2,
    ),
    (
        [0x31, 0x02, 0x42, 0x0C, 0x1C, 0x00, 0x06, 0x00, 0x01, 0x52, 0x65, 0x73, 0x74, 0x6C, 0x65, 0x73, 0x73],
        0x31,
        2,
        0x420,
        0xC,
        1,
        12,
    ),
    (
        [0x31, 0x02, 0xC3, 0x4C, 0x2C, 0x02, 0x00, 0x01, 0x00, 0x01, 0x00, 0x01, 0x00, 0x00, 0x00, 0xDA, 0xC0],
        0x31,
        2,
        0xC34,
        0xC,
        2,
        12,
    ),
];

#[test]
fn recorded_messages_are_taken_apart() {
    for (bytes, block, instance, function, operation, part, length) in RECORDED {
        let message = ControlMessage::read(&bytes).expect("it is whole");
        let data = &bytes[5..5 + length];
        assert_eq!(message, ControlMessage { block, instance, function, operation, part, data });
    }
    assert_eq!(ControlMessage::read(&RECORDED[0].0[..16]), Err(ControlError::Cut { found: 16 }));
    let mut long = RECORDED[0].0;
    long[4] = 0x0D;
    assert_eq!(ControlMessage::read(&long), Err(ControlError::Length { announced: 13 }));
}

/// A listener with everything that it told: messages with their times and parts, faults with the parts that were given up.
#[derive(Default)]
struct Heard {
    rules: Rules,
    reassembler: Reassembler<u32>,
    messages: Vec<(u32, Vec<u8>, u32)>,
    faults: Vec<(u32, u32, FaultKind)>,
    time_ms: i64,
}

impl Heard {
    fn feed(&mut self, key: u32, part: u8, data: &[u8]) -> Outcome {
        self.time_ms += 1;
        let Self { rules, reassembler, messages, faults, time_ms } = self;
        reassembler.feed(rules, ms(*time_ms), key, part, data, &mut |event| match event {
            Event::Message(message) => messages.push((message.key, message.bytes.to_vec(), message.parts)),
            Event::Fault(fault) => faults.push((fault.key, fault.parts, fault.kind)),
        })
    }

    fn finish(&mut self) {
        let faults = &mut self.faults;
        self.reassembler.finish(&mut |event| match event {
            Event::Message(_) => panic!("no message is whole because the log ends"),
            Event::Fault(fault) => faults.push((fault.key, fault.parts, fault.kind)),
        });
    }

    fn kinds(&self) -> Vec<FaultKind> {
        self.faults.iter().map(|fault| fault.2).collect()
    }
}

/// A message in parts of 11 bytes: each with its kind and its number in front.
fn cut(message: &[u8]) -> Vec<(u8, Vec<u8>)> {
    let pieces: Vec<&[u8]> = message.chunks(11).collect();
    let last = pieces.len() - 1;
    let part = |index: usize| match index {
        0 => 1,
        _ if index == last => 3,
        _ => 2,
    };
    let numbered = pieces.iter().enumerate();
    numbered.map(|(index, piece)| (part(index), [&[index as u8], *piece].concat())).collect()
}

fn pattern(length: usize) -> Vec<u8> {
    (0..length).map(|index| (index * 7) as u8).collect()
}

/// The recorded title is the first part of a message: number 0, then the text. How it goes on is invented.
#[test]
fn a_title_in_three_parts() {
    let first = ControlMessage::read(&RECORDED[2].0).expect("it is whole");
    let mut heard = Heard::default();
    assert_eq!(heard.feed(1, first.part, first.data), Outcome::Part);
    assert_eq!(heard.feed(1, 2, &[1, b' ', b's', b'e', b'a']), Outcome::Part);
    assert_eq!(heard.feed(1, 3, &[2, 0]), Outcome::Finished);
    assert_eq!(heard.messages, [(1, b"\x06\x00\x01Restless sea\0".to_vec(), 3)]);
    assert_eq!(heard.faults, []);
}

#[test]
fn messages_of_several_functions_come_at_once() {
    let (one, other) = (cut(&pattern(100)), cut(&pattern(60)));
    let mut heard = Heard::default();
    for (index, (part, data)) in one.iter().enumerate() {
        heard.feed(1, *part, data);
        if let Some((part, data)) = other.get(index) {
            heard.feed(2, *part, data);
        }
        heard.feed(3, 0, &[index as u8]);
    }
    let long: Vec<_> = heard.messages.iter().filter(|message| message.0 != 3).collect();
    assert_eq!(long, [&(2, pattern(60), 6), &(1, pattern(100), 10)]);
    assert_eq!((heard.messages.len(), heard.faults.len()), (12, 0));
}

/// A lost part is told once, what is left of its message is passed over, and the next message is whole.
#[test]
fn a_lost_part() {
    let parts = cut(&pattern(60));
    for lost in 0..parts.len() {
        let mut heard = Heard::default();
        for (index, (part, data)) in parts.iter().enumerate() {
            if index != lost {
                heard.feed(1, *part, data);
            }
        }
        parts.iter().for_each(|(part, data)| _ = heard.feed(1, *part, data));
        heard.finish();
        let (number, index) = (lost as u8, lost as u32);
        let told = match lost {
            0 => (1, 0, FaultKind::NothingBegun { number: 1 }),
            5 => (1, 5, FaultKind::BrokenOff { received: 55 }),
            _ => (1, index, FaultKind::Lost { index, expected: number, found: number + 1 }),
        };
        assert_eq!(heard.faults, [told], "part {lost}");
        assert_eq!(heard.messages, [(1, pattern(60), 6)], "part {lost}");
    }
}

#[test]
fn other_faults() {
    let parts = cut(&pattern(60));
    let mut heard = Heard { rules: Rules { most_bytes: 30, ..Rules::default() }, ..Heard::default() };
    let outcomes: Vec<_> = parts.iter().map(|(part, data)| heard.feed(1, *part, data)).collect();
    use Outcome::{OfGivenUp, Part, Unusable};
    assert_eq!(outcomes, [Part, Part, Unusable, OfGivenUp, OfGivenUp, OfGivenUp]);
    assert_eq!(heard.faults, [(1, 2, FaultKind::TooLong { most: 30 })]);

    let mut heard = Heard::default();
    heard.feed(1, 4, &[0, 1]);
    heard.feed(1, 2, &[]);
    heard.feed(1, 1, &[9, 1]);
    heard.feed(1, 1, &[0, 1]);
    heard.feed(1, 2, &[0, 1]);
    heard.feed(1, 2, &[1, 2]);
    heard.time_ms += 6000;
    heard.feed(1, 2, &[2, 3]);
    heard.feed(2, 1, &[0, 1]);
    heard.finish();
    let wanted = [
        FaultKind::PartUnknown { number: 4 },
        FaultKind::PartEmpty,
        FaultKind::FirstNumber { found: 9 },
        FaultKind::Repeated { index: 1, number: 0 },
        FaultKind::TimedOut { index: 2, waited_ns: 6_001_000_000, limit_ns: 5_000_000_000 },
        FaultKind::Unfinished { received: 1 },
    ];
    assert_eq!(heard.kinds(), wanted);
    assert_eq!(heard.messages, []);
}

/// What comes long after a message was given up is not of that message, and is told.
#[test]
fn a_part_long_after_a_message_was_given_up() {
    let mut heard = Heard::default();
    heard.feed(1, 2, &[1, 1]);
    assert_eq!(heard.feed(1, 2, &[2, 2]), Outcome::OfGivenUp);
    heard.time_ms += 6000;
    assert_eq!(heard.feed(1, 2, &[7, 1]), Outcome::Unusable);
    assert_eq!(heard.feed(1, 3, &[8, 1]), Outcome::OfGivenUp);
    heard.feed(1, 2, &[1, 1]);
    heard.time_ms += 6000;
    assert_eq!(heard.feed(1, 3, &[2, 1]), Outcome::Unusable);
    let numbers = [1, 7, 1, 2].map(|number| FaultKind::NothingBegun { number });
    assert_eq!(heard.kinds(), numbers);
}

#[test]
fn the_one_that_was_silent_for_longest_makes_room() {
    let mut heard = Heard::default();
    for key in 0..257 {
        heard.feed(key, 1, &[0, 1, 2]);
    }
    assert_eq!(heard.faults, [(0, 1, FaultKind::PushedOut { most: 256, received: 2 })]);
    heard.finish();
    assert_eq!((heard.faults.len(), heard.reassembler.held_bytes()), (257, 0));
}

proptest! {
    /// The number of a part has eight bits; a message of 65,535 bytes has nearly 6,000 parts.
    #[test]
    fn cut_and_put_together(length in 12..65_535_usize) {
        let message = pattern(length);
        let mut heard = Heard::default();
        cut(&message).iter().for_each(|(part, data)| _ = heard.feed(7, *part, data));
        prop_assert_eq!(heard.faults, []);
        prop_assert_eq!(heard.messages, [(7, message.clone(), length.div_ceil(11) as u32)]);
    }

    /// Whatever comes: one outcome for each transfer, little memory, nothing left at the end.
    #[test]
    fn any_transfers(transfers in prop::collection::vec((0..4_u32, 0..6_u8, prop::collection::vec(0..4_u8, 0..4)), 0..200)) {
        let mut heard = Heard { rules: Rules { most_bytes: 10, ..Rules::default() }, ..Heard::default() };
        let mut finished = 0;
        for (key, part, data) in &transfers {
            finished += usize::from(heard.feed(*key, *part, data) == Outcome::Finished);
            prop_assert!(heard.reassembler.held_bytes() <= 8 * 64);
        }
        heard.finish();
        prop_assert_eq!(finished, heard.messages.len());
        prop_assert_eq!(heard.reassembler.held_bytes(), 0);
    }
}
