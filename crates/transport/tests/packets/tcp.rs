//! Streams: sequence numbers by RFC 9293.

use proptest::prelude::*;
use wirelore_transport::tcp::{End, Flow, Limits, Piece, Segment, Streams, Taken};

/// What a stream told, bytes gathered between the other events.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Told {
    Begun(bool),
    Bytes(Vec<u8>),
    Gap(u64),
    Ended(End),
}

#[derive(Debug)]
struct Net {
    streams: Streams<()>,
    told: Vec<(Flow, Told)>,
}

impl Net {
    fn new() -> Self {
        Self::with(Limits::default())
    }

    fn with(limits: Limits) -> Self {
        Self { streams: Streams::new(limits, ()), told: Vec::new() }
    }

    fn take(&mut self, segment: Segment<'_>) -> Taken {
        self.streams.feed(None, &segment, &mut gather(&mut self.told))
    }

    fn finish(mut self) -> Vec<Told> {
        self.streams.finish(&mut gather(&mut self.told));
        assert_eq!(self.streams.waiting_bytes(), 0);
        self.told.into_iter().map(|(_, told)| told).collect()
    }
}

fn gather(told: &mut Vec<(Flow, Told)>) -> impl FnMut(&Flow, &mut (), Piece<'_>) {
    |flow, (), piece| match piece {
        Piece::Begun { from_start } => told.push((*flow, Told::Begun(from_start))),
        Piece::Gap { bytes } => told.push((*flow, Told::Gap(bytes))),
        Piece::Ended(end) => told.push((*flow, Told::Ended(end))),
        Piece::Bytes { bytes, .. } => match told.last_mut() {
            Some((last, Told::Bytes(text))) if last == flow => text.extend_from_slice(bytes),
            _ => told.push((*flow, Told::Bytes(bytes.to_vec()))),
        },
    }
}

fn segment(sequence: u32, payload: &[u8]) -> Segment<'_> {
    Segment { sequence, payload, ..Segment::between("10.0.0.1:40000", "10.0.0.2:13400").expect("two addresses") }
}

fn answer(acknowledged: u32) -> Segment<'static> {
    let empty = Segment::between("10.0.0.2:13400", "10.0.0.1:40000").expect("two addresses");
    Segment { acknowledged: Some(acknowledged), ..empty }
}

fn syn(sequence: u32) -> Segment<'static> {
    Segment { syn: true, ..segment(sequence, b"") }
}

fn fin(sequence: u32) -> Segment<'static> {
    Segment { fin: true, ..segment(sequence, b"") }
}

fn bytes(text: &str) -> Told {
    Told::Bytes(text.as_bytes().to_vec())
}

#[test]
fn a_connection_from_syn_to_fin_across_the_wrap() {
    let mut net = Net::new();
    assert_eq!(net.take(syn(0xFFFF_FFFA)), Taken::Control);
    assert_eq!(net.take(segment(0xFFFF_FFFB, b"hello ")), Taken::Passed);
    assert_eq!(net.take(segment(1, b"wor")), Taken::Passed);
    assert_eq!(net.take(segment(4, b"ld")), Taken::Passed);
    assert_eq!(net.take(fin(6)), Taken::Control);
    assert_eq!(net.finish(), [Told::Begun(true), bytes("hello world"), Told::Ended(End::Closed)]);
}

#[test]
fn early_segments_wait_and_repeated_ones_are_dropped() {
    let mut net = Net::new();
    net.take(syn(99));
    assert_eq!(net.take(segment(104, b"efgh")), Taken::Waiting);
    assert_eq!(net.take(segment(106, b"ghij")), Taken::Waiting);
    assert_eq!(net.take(segment(105, b"fg")), Taken::Repeated);
    assert_eq!(net.take(syn(99)), Taken::Control);
    assert_eq!(net.take(segment(100, b"abcdef")), Taken::Passed);
    assert_eq!(net.take(segment(102, b"cdef")), Taken::Repeated);
    assert_eq!(net.take(segment(108, b"ijkl")), Taken::Passed);
    assert_eq!(net.take(segment(111, b"X")), Taken::Repeated, "a probe with the last byte again");
    assert_eq!(net.finish(), [Told::Begun(true), bytes("abcdefghijkl"), Told::Ended(End::LogEnd)]);
}

#[test]
fn a_gap_is_given_up_when_the_receiver_confirms_what_is_behind_it() {
    let mut net = Net::new();
    net.take(segment(100, b"abc"));
    net.take(segment(106, b"ghi"));
    net.take(answer(103));
    assert_eq!(net.told.len(), 2, "the receiver waits, too");
    net.take(answer(109));
    net.take(segment(109, b"jkl"));
    let wanted = [Told::Begun(false), bytes("abc"), Told::Gap(3), bytes("ghijkl"), Told::Ended(End::LogEnd)];
    assert_eq!(net.finish(), wanted);
}

#[test]
fn a_gap_is_given_up_when_too_much_waits() {
    let mut net = Net::with(Limits { waiting_bytes: 8, ..Limits::default() });
    net.take(segment(100, b"abc"));
    for (sequence, text) in [(104, "efg"), (107, "hij"), (111, "l")] {
        net.take(segment(sequence, text.as_bytes()));
    }
    assert_eq!(net.told.len(), 2);
    net.take(segment(112, b"mn"));
    let wanted = [Told::Begun(false), bytes("abc"), Told::Gap(1), bytes("efghij")];
    assert_eq!(net.told.iter().map(|(_, told)| told.clone()).collect::<Vec<_>>(), wanted);
    assert_eq!(net.finish()[4..], [Told::Gap(1), bytes("lmn"), Told::Ended(End::LogEnd)]);
}

/// A sender that is not answered gives up after at least 100 seconds (RFC 9293, 3.8.3, R2): until then it may send once more.
#[test]
fn a_gap_is_given_up_when_its_sender_would_have_given_up() {
    let mut net = Net::new();
    let mut take = |time_s: i64, sequence: u32, payload: &'static [u8]| {
        net.streams.feed(Some(time_s * 1_000_000_000), &segment(sequence, payload), &mut gather(&mut net.told))
    };
    assert_eq!(take(0, 0, b"one "), Taken::Passed);
    assert_eq!(take(1, 8, b"three "), Taken::Waiting);
    assert_eq!(take(101, 14, b"four "), Taken::Waiting);
    assert_eq!(take(102, 19, b"five"), Taken::Passed);
    assert_eq!(net.told.last().map(|(_, told)| told), Some(&bytes("three four five")));
    assert_eq!(net.told[2].1, Told::Gap(4));
}

#[test]
fn a_segment_far_ahead_does_not_wait() {
    let mut net = Net::new();
    net.take(segment(100, b"abc"));
    net.take(segment(100_000_000, b"def"));
    let wanted = [Told::Begun(false), bytes("abc"), Told::Gap(99_999_897), bytes("def"), Told::Ended(End::LogEnd)];
    assert_eq!(net.finish(), wanted);
}

#[test]
fn a_segment_far_back_is_of_another_connection() {
    let mut net = Net::new();
    net.take(segment(100_000_000, b"abc"));
    net.take(segment(100, b"def"));
    let ended = |end| Told::Ended(end);
    let (old, new) = ([bytes("abc"), ended(End::Replaced)], [bytes("def"), ended(End::LogEnd)]);
    let begun = [Told::Begun(false)];
    assert_eq!(net.finish(), [begun.as_slice(), &old, &begun, &new].concat());
}

#[test]
fn a_new_syn_replaces_the_stream_and_a_reset_ends_both_directions() {
    let mut net = Net::new();
    net.take(segment(100, b"abc"));
    net.take(syn(5));
    net.take(segment(6, b"def"));
    net.take(Segment { sequence: 70, payload: b"answer", ..answer(9) });
    assert_eq!(net.take(Segment { reset: true, ..answer(9) }), Taken::Control);
    let (begun, syn) = (Told::Begun(false), Told::Begun(true));
    let (replaced, reset) = (Told::Ended(End::Replaced), Told::Ended(End::Reset));
    let wanted =
        [begun.clone(), bytes("abc"), replaced, syn, bytes("def"), begun, bytes("answer"), reset.clone(), reset];
    assert_eq!(net.finish(), wanted);
}

#[test]
fn what_is_repeated_after_the_end_begins_no_stream() {
    let mut net = Net::new();
    net.take(syn(99));
    net.take(Segment { fin: true, ..segment(100, b"abc") });
    assert_eq!(net.take(Segment { fin: true, ..segment(100, b"abc") }), Taken::Repeated);
    assert_eq!(net.take(segment(100, b"")), Taken::Control);
    assert_eq!(net.take(segment(900, b"new")), Taken::Passed);
    let ended = [Told::Ended(End::Closed), Told::Begun(false), bytes("new"), Told::Ended(End::LogEnd)];
    assert_eq!(net.finish(), [&[Told::Begun(true), bytes("abc")], ended.as_slice()].concat());
}

#[test]
fn a_fin_behind_a_gap_ends_the_stream_when_it_is_confirmed() {
    let mut net = Net::new();
    net.take(segment(100, b"abc"));
    assert_eq!(net.take(fin(110)), Taken::Control);
    net.take(answer(111));
    assert_eq!(net.finish(), [Told::Begun(false), bytes("abc"), Told::Gap(7), Told::Ended(End::Closed)]);
}

#[test]
fn the_stream_that_was_silent_for_longest_makes_room() {
    let mut net = Net::with(Limits { streams: 2, ..Limits::default() });
    for port in [1, 2, 1, 3] {
        let from = format!("10.0.0.1:{port}");
        let begin = Segment::between(&from, "10.0.0.2:9").expect("two addresses");
        net.take(Segment { sequence: 5, payload: b"x", ..begin });
    }
    let crowded: Vec<_> = net.told.iter().filter(|(_, told)| *told == Told::Ended(End::Crowded)).collect();
    assert_eq!(crowded.len(), 1);
    assert_eq!(crowded[0].0.from.port(), 2);
}

#[test]
fn an_eighth_of_many_streams_makes_room_at_once() {
    let mut net = Net::with(Limits { streams: 16, ..Limits::default() });
    for port in 1..=17 {
        let begin = Segment::between(&format!("10.0.0.1:{port}"), "10.0.0.2:9").expect("two addresses");
        net.take(Segment { sequence: 5, payload: b"x", ..begin });
    }
    let crowded = net.told.iter().filter(|(_, told)| *told == Told::Ended(End::Crowded));
    assert_eq!(crowded.map(|(flow, _)| flow.from.port()).collect::<Vec<_>>(), [1, 2]);
}

#[test]
fn all_streams_together_are_bounded() {
    let limits = Limits { streams: 100, waiting_bytes: 1000, all_waiting_bytes: 1500 };
    let mut net = Net::with(limits);
    for port in 1..50 {
        let from = format!("10.0.0.1:{port}");
        let begin = Segment::between(&from, "10.0.0.2:9").expect("two addresses");
        net.take(Segment { sequence: 5, payload: b"x", ..begin });
        net.take(Segment { sequence: 7, payload: &[7; 900], ..begin });
        assert!(net.streams.waiting_bytes() <= limits.all_waiting_bytes);
    }
    let passed: usize = net.finish().iter().map(|told| if let Told::Bytes(text) = told { text.len() } else { 0 }).sum();
    assert_eq!(passed, 49 * 901);
}

proptest! {
    /// Segments that overlap, come in any order and come again give the stream that was sent.
    #[test]
    fn any_order_gives_the_same_stream(
        length in 1usize..2000,
        cuts in proptest::collection::vec((any::<prop::sample::Index>(), 1usize..300), 0..60),
        first in prop_oneof![Just(u32::MAX - 500), any::<u32>()],
        seed in any::<u64>(),
    ) {
        let sent: Vec<u8> = (0..length).map(|index| (index * 7 + index / 251) as u8).collect();
        let mut pieces: Vec<(usize, usize)> = (0..length).step_by(97).map(|at| (at, 97)).collect();
        pieces.extend(cuts.into_iter().map(|(at, size)| (at.index(length), size)));
        // A plain shuffle: the order is as good as any other.
        let mut state = seed | 1;
        for index in (1..pieces.len()).rev() {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            pieces.swap(index, (state >> 33) as usize % (index + 1));
        }
        let mut net = Net::new();
        net.take(syn(first));
        for (at, size) in pieces {
            let sequence = first.wrapping_add(1).wrapping_add(at as u32);
            net.take(segment(sequence, &sent[at..(at + size).min(length)]));
        }
        net.take(fin(first.wrapping_add(1).wrapping_add(length as u32)));
        prop_assert_eq!(net.finish(), [Told::Begun(true), Told::Bytes(sent), Told::Ended(End::Closed)]);
    }

    /// With segments lost, what is told and the gaps together are as long as what was sent, and each byte stands where it was.
    #[test]
    fn lost_segments_are_gaps(lost in proptest::collection::vec(any::<bool>(), 1..60), confirm in any::<bool>()) {
        let sent: Vec<u8> = (0..lost.len() * 10).map(|index| (index % 251) as u8).collect();
        let mut net = Net::new();
        net.take(syn(9));
        for (index, _) in lost.iter().enumerate().filter(|(_, lost)| !**lost) {
            let at = index * 10;
            net.take(segment(10 + at as u32, &sent[at..at + 10]));
            if confirm {
                net.take(answer(20 + at as u32));
            }
        }
        net.take(fin(10 + sent.len() as u32));
        net.take(answer(11 + sent.len() as u32));
        let mut at = 0;
        for told in net.finish() {
            match told {
                Told::Bytes(bytes) => {
                    prop_assert_eq!(&sent[at..at + bytes.len()], &bytes);
                    at += bytes.len();
                }
                Told::Gap(bytes) => at += bytes as usize,
                Told::Begun(from_start) => prop_assert!(from_start),
                Told::Ended(end) => prop_assert_eq!(end, End::Closed),
            }
        }
        prop_assert_eq!(at, sent.len());
    }
}
