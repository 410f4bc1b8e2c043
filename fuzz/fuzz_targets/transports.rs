//! Any frames: each transport answers each of them once, holds little, and has nothing left at the end.
#![no_main]

use libfuzzer_sys::fuzz_target;
use wirelore_transport::{iso_tp, j1939_tp, most};

/// The longest message that is put together here.
const MOST_BYTES: u32 = 300;

fuzz_target!(|input: &[u8]| {
    let Some((&way, mut input)) = input.split_first() else { return };
    let addressing = if way & 1 == 0 { iso_tp::Addressing::Normal } else { iso_tp::Addressing::Extended };
    let rules = iso_tp::Rules { addressing, most_bytes: MOST_BYTES, ..iso_tp::Rules::default() };
    let mut diagnostics = iso_tp::Reassembler::new();
    let mut groups = j1939_tp::Reassembler::default();
    let mut ring = most::Reassembler::new();
    let ring_rules = most::Rules { most_bytes: MOST_BYTES, ..most::Rules::default() };
    let mut whole = [0, 0, 0];
    let mut finished = [0, 0, 0];
    let mut time_ns = 0_i64;

    // A frame: how long after the one before, whose it is (each transport reads it), how many bytes.
    while let [wait, key, group, length, rest @ ..] = input {
        let (payload, behind) = rest.split_at(usize::from(length % 80).min(rest.len()));
        input = behind;
        time_ns = time_ns.wrapping_add(i64::from(*wait as i8) << 24);
        let time_ns = (*wait != 0x80).then_some(time_ns);

        let outcome = diagnostics.feed(&rules, time_ns, key, payload, &mut |event| {
            if let iso_tp::Event::Message(message) = event {
                assert!(!message.bytes.is_empty() && message.bytes.len() <= MOST_BYTES as usize);
                whole[0] += 1;
            }
        });
        finished[0] += u32::from(outcome == iso_tp::Outcome::Finished);
        if let iso_tp::Outcome::FlowControl(answer) = outcome {
            let conversation = iso_tp::Conversation { key, address: None };
            diagnostics.answered(conversation, time_ns, answer, &mut |_| {});
        }

        let format = if group & 1 == 0 { j1939_tp::CONTROL_GROUP } else { j1939_tp::DATA_GROUP };
        let destination = if group & 2 == 0 { j1939_tp::EVERYBODY } else { group >> 2 & 3 };
        let id = (format | u32::from(destination)) << 8 | u32::from(key & 3);
        let outcome = groups.feed(time_ns, id, payload, &mut |event| {
            if let j1939_tp::Event::Message(message) = event {
                assert!((9..=1785).contains(&message.bytes.len()));
                whole[1] += 1;
            }
        });
        assert_ne!(outcome, j1939_tp::Outcome::NotMine);
        finished[1] += u32::from(outcome == j1939_tp::Outcome::Finished);

        let outcome = ring.feed(&ring_rules, time_ns, key, group & 7, payload, &mut |event| {
            if let most::Event::Message(message) = event {
                assert!(message.bytes.len() <= MOST_BYTES as usize);
                whole[2] += 1;
            }
        });
        finished[2] += u32::from(outcome == most::Outcome::Finished);

        assert!(ring.held_bytes() <= (256 + 4) * 2 * MOST_BYTES as usize, "the ring holds too much");
        assert!(diagnostics.held_bytes() <= (256 + 4) * 2 * MOST_BYTES as usize, "diagnostics hold too much");
        assert!(groups.held_bytes() <= (256 + 4) * 2 * 1785, "groups hold too much");
    }
    diagnostics.finish(&mut |event| assert!(matches!(event, iso_tp::Event::Fault(_))));
    groups.finish(&mut |event| assert!(matches!(event, j1939_tp::Event::Fault(_))));
    ring.finish(&mut |event| assert!(matches!(event, most::Event::Fault(_))));
    assert_eq!(whole, finished, "a message was told with a frame that did not finish one");
    assert_eq!((diagnostics.held_bytes(), groups.held_bytes(), ring.held_bytes()), (0, 0, 0));
});
