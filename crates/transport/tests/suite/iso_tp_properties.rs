//! What holds for any traffic of ISO-TP.

use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use wirelore_transport::iso_tp::{Addressing, Layout, Outcome, Rules};

use crate::heard::{IsoTp, cut, pattern};

fn layouts() -> impl Strategy<Value = Layout> {
    let frame_bytes = select(vec![8, 12, 16, 20, 24, 32, 48, 64]);
    (proptest::option::of(any::<u8>()), frame_bytes, proptest::option::of(any::<u8>()))
        .prop_map(|(address, frame_bytes, padding)| Layout { address, frame_bytes, padding })
}

fn rules(layout: &Layout) -> Rules {
    let addressing = if layout.address.is_some() { Addressing::Extended } else { Addressing::Normal };
    Rules { addressing, most_bytes: 10_000, ..Rules::default() }
}

/// Messages of one conversation that no two frames of are alike, so that a wrong one cannot look like a right one.
fn messages(lengths: &[usize]) -> Vec<Vec<u8>> {
    let start = |index: usize| index * 40;
    lengths.iter().enumerate().map(|(index, &length)| pattern(start(index) + length)[start(index)..].to_vec()).collect()
}

#[derive(Debug, Clone, Copy)]
enum Damage {
    Drop,
    Duplicate,
    Swap,
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_is_cut_is_put_together(message in vec(any::<u8>(), 1..6000), layout in layouts()) {
        let mut heard = IsoTp::with(rules(&layout));
        heard.feed_all(5, &cut(&message, &layout));
        heard.finish();
        prop_assert_eq!(heard.bytes(), [message]);
        prop_assert_eq!(heard.kinds(), []);
    }

    #[test]
    fn conversations_do_not_meet(lengths in vec(1_usize..300, 2..6), layout in layouts(), order in vec(any::<usize>(), 0..400)) {
        let mut left: Vec<_> = lengths.iter().map(|&length| cut(&pattern(length), &layout).into_iter().peekable()).collect();
        let mut heard = IsoTp::with(rules(&layout));
        let rest = (0..lengths.len()).cycle().take(lengths.len() * 400);
        for turn in order.into_iter().chain(rest) {
            let key = turn % lengths.len();
            if let Some(frame) = left[key].next() {
                heard.feed(key as u32, &frame);
            }
        }
        heard.messages.sort();
        let expected: Vec<_> = lengths.iter().map(|&length| pattern(length)).collect();
        prop_assert_eq!(heard.bytes(), expected);
        prop_assert_eq!(heard.kinds(), []);
    }

    /// One frame is lost, comes twice or changes places with the next one of its message: no message comes out that was not sent, the
    /// others come through, and what is missing is told.
    #[test]
    fn damage_is_told(
        lengths in vec(1_usize..400, 1..5),
        layout in layouts(),
        damage in select(vec![Damage::Drop, Damage::Duplicate, Damage::Swap]),
        at in any::<(usize, usize)>(),
    ) {
        let sent = messages(&lengths);
        let mut frames: Vec<_> = sent.iter().map(|message| cut(message, &layout)).collect();
        let hit = at.0 % frames.len();
        let of_hit = &mut frames[hit];
        let index = at.1 % of_hit.len();
        let is_single = of_hit.len() == 1;
        match damage {
            Damage::Drop => drop(of_hit.remove(index)),
            Damage::Duplicate => of_hit.insert(index, of_hit[index].clone()),
            Damage::Swap if index + 1 < of_hit.len() => of_hit.swap(index, index + 1),
            Damage::Swap => return Ok(()),
        }
        let mut heard = IsoTp::with(rules(&layout));
        frames.iter().for_each(|frames| heard.feed_all(9, frames));
        heard.finish();
        for (index, message) in sent.iter().enumerate().filter(|(index, _)| *index != hit) {
            prop_assert!(heard.bytes().contains(&message.as_slice()), "message {} is lost", index);
        }
        prop_assert!(heard.bytes().iter().all(|message| sent.iter().any(|sent| sent == message)));
        // A single frame that is not in the recording or is there twice leaves no trace.
        prop_assert!(is_single || !heard.faults.is_empty());
    }

    /// Frames that change places between two messages can make a wrong one (numbers begin anew with each message), but not without a
    /// fault; and what comes later comes through.
    #[test]
    fn frames_of_two_messages_that_change_places_are_told(lengths in (9_usize..100, 9_usize..100)) {
        let sent = messages(&[lengths.0, lengths.1, 50]);
        let mut frames: Vec<_> = sent.iter().flat_map(|message| cut(message, &Layout::default())).collect();
        let border = cut(&sent[0], &Layout::default()).len();
        frames.swap(border - 1, border);
        let mut heard = IsoTp::default();
        heard.feed_all(9, &frames);
        prop_assert!(!heard.faults.is_empty());
        prop_assert_eq!(heard.bytes().pop(), Some(sent[2].as_slice()));
    }

    #[test]
    fn any_bytes_are_answered(
        frames in vec((0_u32..600, proptest::option::of(any::<i64>()), payloads()), 0..600),
        mixed in any::<bool>(),
        most_bytes in 0_u32..200,
    ) {
        let addressing = if mixed { Addressing::Mixed } else { Addressing::Normal };
        let mut heard = IsoTp::with(Rules { addressing, most_bytes, ..Rules::default() });
        let mut count = 0;
        for (key, time_ns, payload) in frames {
            match heard.feed_at(time_ns, key, &payload) {
                Outcome::Finished => count += 1,
                Outcome::FlowControl(answer) => heard.answered(time_ns, key, answer),
                Outcome::Part | Outcome::OfGivenUp | Outcome::Unusable => {}
            }
            // A buffer of a vector may be twice as large as what is in it.
            prop_assert!(heard.reassembler.held_bytes() <= (256 + 4) * 2 * (most_bytes as usize).max(64));
        }
        heard.finish();
        prop_assert_eq!(heard.messages.len(), count);
        prop_assert!(heard.bytes().iter().all(|message| message.len() <= (most_bytes as usize).max(62)));
        prop_assert_eq!(heard.reassembler.held_bytes(), 0);
    }
}

/// Bytes that often look like the frames of a message.
fn payloads() -> impl Strategy<Value = Vec<u8>> {
    let head = prop_oneof![any::<u8>(), 0x10_u8..0x13, 0x20_u8..0x24];
    (head, vec(prop_oneof![0_u8..20, any::<u8>()], 0..70)).prop_map(|(head, mut bytes)| {
        if let Some(first) = bytes.first_mut() {
            *first = head;
        }
        bytes
    })
}
