//! Any segments: no panic, memory within its bounds, and every segment counted once.

use std::collections::BTreeMap;

use proptest::prelude::*;
use wirelore_transport::cut::Cutter;
use wirelore_transport::someip::SomeIp;
use wirelore_transport::tcp::{Limits, Segment, Streams, Taken};

proptest! {
    #[test]
    fn any_segments(
        segments in proptest::collection::vec(
            (0u8..3, prop_oneof![0u32..2000, any::<u32>()], any::<[bool; 4]>(), 0usize..60, prop_oneof![0u32..2000, any::<u32>()]),
            0..300,
        )
    ) {
        let limits = Limits { streams: 3, waiting_bytes: 200, all_waiting_bytes: 300 };
        let mut streams = Streams::new(limits, Cutter::<SomeIp>::new(100));
        let mut counts: BTreeMap<Taken, usize> = BTreeMap::new();
        let payload = [1; 60];
        for (pair, sequence, [syn, fin, reset, ack], length, acknowledged) in &segments {
            let (from, to) = [("10.0.0.1:1", "10.0.0.2:2"), ("10.0.0.2:2", "10.0.0.1:1"), ("[::1]:7", "[::1]:7")][usize::from(*pair)];
            let empty = Segment::between(from, to).expect("two addresses");
            let acknowledged = ack.then_some(*acknowledged);
            let rare = |flag: bool| flag && length % 7 == 0;
            let (syn, fin, reset) = (rare(*syn), rare(*fin), rare(*reset));
            let segment = Segment { sequence: *sequence, acknowledged, syn, fin, reset, payload: &payload[..*length], ..empty };
            let taken = streams.feed(None, &segment, &mut |_, cutter, piece| cutter.piece(piece, &mut |_| {}));
            *counts.entry(taken).or_default() += 1;
            prop_assert!(streams.waiting_bytes() <= limits.all_waiting_bytes);
        }
        streams.finish(&mut |_, cutter, piece| cutter.piece(piece, &mut |_| {}));
        prop_assert_eq!(counts.values().sum::<usize>(), segments.len());
        prop_assert_eq!(streams.waiting_bytes(), 0);
    }
}
