//! What holds for any traffic of SAE J1939-21.

use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use wirelore_transport::j1939_tp::Outcome;

use crate::heard::{J1939, broadcast, connection, pattern};

#[derive(Debug, Clone, Copy)]
enum Damage {
    Drop,
    Duplicate,
    Swap,
}

/// Messages that no two packets of are alike, so that a wrong one cannot look like a right one.
fn messages(lengths: &[usize]) -> Vec<Vec<u8>> {
    let start = |index: usize| index * 40;
    lengths.iter().enumerate().map(|(index, &length)| pattern(start(index) + length)[start(index)..].to_vec()).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_is_cut_is_put_together(message in vec(any::<u8>(), 9..=1785), pgn in 0_u32..0x4_0000, at_once in 1_u8..) {
        let mut heard = J1939::default();
        heard.feed_all(&broadcast(7, pgn, &message));
        heard.feed_all(&connection(7, 8, pgn, at_once, &message));
        heard.finish();
        prop_assert_eq!(heard.bytes(), [message.as_slice(), &message]);
        prop_assert!(heard.messages.iter().all(|message| message.pgn == pgn));
        prop_assert_eq!(heard.kinds(), []);
    }

    #[test]
    fn conversations_do_not_meet(lengths in vec(9_usize..300, 2..6), at_once in 1_u8..9, order in vec(any::<usize>(), 0..200)) {
        let mut left: Vec<_> = (0..).zip(&lengths).map(|(source, &length)| {
            let message = pattern(length);
            let frames = if source % 2 == 0 { broadcast(source, 65226, &message) } else { connection(source, source - 1, 65226, at_once, &message) };
            frames.into_iter()
        }).collect();
        let mut heard = J1939::default();
        let rest = (0..lengths.len()).cycle().take(lengths.len() * 400);
        for turn in order.into_iter().chain(rest) {
            if let Some((id, payload)) = left[turn % lengths.len()].next() {
                heard.feed(id, &payload);
            }
        }
        heard.finish();
        heard.messages.sort_by_key(|message| message.source);
        let expected: Vec<_> = lengths.iter().map(|&length| pattern(length)).collect();
        prop_assert_eq!(heard.bytes(), expected);
        prop_assert_eq!(heard.kinds(), []);
    }

    /// One frame is lost, comes twice or changes places with the next one, of its own message or not: no message comes out that was not
    /// sent, and those that were not hit come through.
    #[test]
    fn damage_makes_no_wrong_message(
        lengths in vec(9_usize..200, 1..5),
        to_all in any::<bool>(),
        damage in select(vec![Damage::Drop, Damage::Duplicate, Damage::Swap]),
        at in any::<usize>(),
    ) {
        let sent = messages(&lengths);
        let mut frames = Vec::new();
        for (index, message) in sent.iter().enumerate() {
            let of_one = if to_all { broadcast(1, 65226, message) } else { connection(1, 2, 65226, 3, message) };
            frames.extend(of_one.into_iter().map(|frame| (index, frame)));
        }
        let at = at % frames.len();
        let mut hit = vec![frames[at].0];
        match damage {
            Damage::Drop => drop(frames.remove(at)),
            Damage::Duplicate => frames.insert(at, frames[at]),
            Damage::Swap if at + 1 < frames.len() => {
                hit.push(frames[at + 1].0);
                frames.swap(at, at + 1);
            }
            Damage::Swap => return Ok(()),
        }
        let mut heard = J1939::default();
        for (_, (id, payload)) in &frames {
            heard.feed(*id, payload);
        }
        heard.finish();
        prop_assert!(heard.bytes().iter().all(|message| sent.iter().any(|sent| sent == message)));
        let is_missing = |index: &usize| !heard.bytes().contains(&sent[*index].as_slice());
        for index in (0..sent.len()).filter(is_missing) {
            prop_assert!(hit.contains(&index), "message {} is lost", index);
            prop_assert!(!heard.faults.is_empty());
        }
        prop_assert!(heard.messages.len() <= sent.len());
    }

    #[test]
    fn any_frames_are_answered(frames in vec((any::<[bool; 3]>(), 0_u8..4, proptest::option::of(any::<i64>()), payloads()), 0..300)) {
        let mut heard = J1939::default();
        let mut count = 0;
        for ([is_control, to_all, is_other], address, time_ns, payload) in frames {
            let group = if is_other { 0x18FE_0000 } else if is_control { 0x18EC_0000 } else { 0x18EB_0000 };
            let destination = if to_all { 0xFF } else { 1 - address % 2 };
            let id = group | u32::from(destination) << 8 | u32::from(address);
            let outcome = heard.feed_at(time_ns, id, &payload);
            count += usize::from(outcome == Outcome::Finished);
            prop_assert_eq!(outcome == Outcome::NotMine, is_other);
            prop_assert!(heard.reassembler.held_bytes() <= (256 + 4) * 2 * 1785);
        }
        heard.finish();
        prop_assert_eq!(heard.messages.len(), count);
        prop_assert_eq!(heard.reassembler.held_bytes(), 0);
    }
}

/// Bytes that often look like the frames of a short message.
fn payloads() -> impl Strategy<Value = Vec<u8>> {
    let head = prop_oneof![1_u8..5, select(vec![16_u8, 17, 19, 32, 255]), any::<u8>()];
    let eight = (head, select(vec![(9_u8, 2_u8), (20, 3), (1, 1), (3, 1), (2, 2)]), 0_u8..5).prop_map(
        |(head, (size, packets), byte)| {
            // A size and its packets, or how many packets from which on.
            let second = if head == 17 { packets } else { 0 };
            vec![head, size, second, packets, byte, 0xCA, 0xFE, 0]
        },
    );
    prop_oneof![eight, vec(any::<u8>(), 0..10)]
}
