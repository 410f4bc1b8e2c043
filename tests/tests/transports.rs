//! Real traffic of heavy vehicles, put together again. Skipped aloud where the recordings are not there.

use std::collections::BTreeMap;
use std::path::Path;

use wirelore_log::{Options, Recording};
use wirelore_tests::readings::shared_recording;
use wirelore_transport::j1939_tp::{ControlKind, Event, Fault, FaultKind, Outcome, Reassembler};

/// A message, kept: parameter group, source, destination, bytes.
type Kept = (u32, u8, u8, Vec<u8>);

/// What a recording's transport protocol carried.
#[derive(Default)]
struct Heard {
    messages: Vec<Kept>,
    faults: Vec<Fault>,
    /// Frames by what became of them.
    not_mine: u64,
    taken: u64,
    answers: Vec<ControlKind>,
    of_given_up: u64,
    unusable: u64,
    /// Everything on the two groups of the protocol, as it stands in the recording.
    raw: Vec<(u32, Vec<u8>)>,
    read: u64,
}

impl Heard {
    fn of(path: &Path) -> Self {
        let mut heard = Self::default();
        let mut reassembler = Reassembler::default();
        let mut recording = Recording::open(path, &Options::default()).expect("it can be opened");
        while let Some(frame) = recording.next().expect("it can be read") {
            heard.read += 1;
            if matches!(frame.id >> 16 & 0xFF, 0xEB | 0xEC) {
                heard.raw.push((frame.id, frame.payload.to_vec()));
            }
            let Self { messages, faults, .. } = &mut heard;
            let outcome = reassembler.feed(frame.time_ns, frame.id, frame.payload, &mut |event| match event {
                Event::Message(message) => {
                    let (source, destination) = (message.conversation.source, message.conversation.destination);
                    messages.push((message.pgn, source, destination, message.bytes.to_vec()));
                }
                Event::Fault(fault) => faults.push(fault),
            });
            match outcome {
                Outcome::NotMine => heard.not_mine += 1,
                Outcome::Finished | Outcome::Part => heard.taken += 1,
                Outcome::Answer(answer) => heard.answers.push(answer),
                Outcome::OfGivenUp => heard.of_given_up += 1,
                Outcome::Unusable => heard.unusable += 1,
            }
        }
        reassembler.finish(&mut |event| match event {
            Event::Message(_) => panic!("the end makes no message whole"),
            Event::Fault(fault) => heard.faults.push(fault),
        });
        let parts = heard.not_mine + heard.taken + heard.answers.len() as u64 + heard.of_given_up + heard.unusable;
        assert_eq!(parts, heard.read, "every frame is counted once");
        assert_eq!(heard.read - heard.not_mine, heard.raw.len() as u64);
        heard
    }

    /// How often a control byte stands in the raw frames.
    fn raw_controls(&self, control: u8) -> usize {
        self.raw.iter().filter(|(id, payload)| id >> 16 & 0xFF == 0xEC && payload[0] == control).count()
    }
}

/// A heavy truck on the road, 30 s: 44 broadcasts. The counts come with the recording.
#[test]
fn the_broadcasts_of_a_heavy_truck() {
    let Some(path) = shared_recording("heavy-truck-drive.csv") else { return };
    let heard = Heard::of(&path);
    let mut counts: BTreeMap<(u32, u8, usize), usize> = BTreeMap::new();
    for (pgn, source, destination, bytes) in &heard.messages {
        assert_eq!(*destination, 0xFF);
        *counts.entry((*pgn, *source, bytes.len())).or_default() += 1;
    }
    let known = |pgn, bytes| -> usize {
        counts.iter().filter(|((of, _, length), _)| (*of, *length) == (pgn, bytes)).map(|(_, count)| count).sum()
    };
    assert_eq!(heard.messages.len(), 44);
    assert_eq!(counts[&(65226, 0, 14)], 30);
    assert_eq!([known(65226, 10), known(65251, 34), known(65249, 19)], [2, 6, 6]);
    assert_eq!([counts[&(65226, 0x31, 10)], counts[&(65249, 0x29, 19)]], [2, 6]);
    assert_eq!(heard.read, 19_957);
    assert_eq!(heard.raw_controls(32), 44);
    assert_eq!(heard.faults, []);
}

/// A test bench: every broadcast that was announced is whole, with the bytes that stand in its frames, and the one connection that
/// was asked for ends as the raw frames say.
#[test]
fn the_connections_and_broadcasts_of_a_bench() {
    let Some(path) = shared_recording("heavy-truck-bench-transport.csv") else { return };
    let heard = Heard::of(&path);

    assert_eq!(heard.read, 3056);

    // Put together a second time, by the least that does it: the recording's broadcasts come one after another.
    let mut by_hand: Vec<Kept> = Vec::new();
    for (id, payload) in &heard.raw {
        let [source, destination, group, _] = id.to_le_bytes();
        match (group, destination, payload.as_slice()) {
            (0xEC, 0xFF, &[32, low, high, _, _, a, b, c]) => {
                let size = usize::from(low) + 256 * usize::from(high);
                let pgn = u32::from(a) + (u32::from(b) << 8) + (u32::from(c) << 16);
                by_hand.push((pgn, source, destination, Vec::with_capacity(size)));
            }
            (0xEB, 0xFF, [_, bytes @ ..]) => {
                let (_, _, _, so_far) = by_hand.last_mut().expect("an announcement stands before");
                let room = so_far.capacity() - so_far.len();
                so_far.extend(&bytes[..room.min(bytes.len())]);
            }
            _ => {}
        }
    }
    assert_eq!(heard.messages, by_hand);
    assert_eq!((heard.messages.len(), heard.raw_controls(32)), (15, 15));

    // One connection is asked for, with 4 packets; the answer asks for 12 from packet 5 on, and nothing follows. Nobody aborts.
    assert_eq!([16, 17, 19, 255].map(|control| heard.raw_controls(control)), [1, 1, 0, 0]);
    let kinds: Vec<_> = heard.faults.iter().map(|fault| (fault.kind, fault.pgn)).collect();
    assert_eq!(kinds, [(FaultKind::ClearedBeyond { next: 5, packets: 4 }, Some(0xFEE3))]);
    assert_eq!(heard.answers, []);
}
