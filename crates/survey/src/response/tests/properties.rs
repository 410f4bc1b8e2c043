//! What must hold for any set of streams.

use proptest::prelude::*;

use super::reference::plain;
use super::*;

fn any_stream() -> impl Strategy<Value = Stream> {
    (1..24_u64, 8..300_u64, 0..90_u64, 10..400_u64)
        .prop_map(|(length, period, jitter, deadline)| stream(length, period, jitter, deadline))
}

/// Periods that few streams share, and those that many do.
fn any_streams() -> impl Strategy<Value = Vec<Stream>> {
    let few = (1..24_u64, 1..6_u64, 0..2_u64)
        .prop_map(|(length, period, jitter)| stream(length, 40 * period, 30 * jitter, 90));
    prop::collection::vec(prop_oneof![any_stream(), few], 1..8)
}

/// Without a bound is later than any bound.
fn bounds(streams: &[Stream]) -> Vec<u64> {
    worst(streams, 1).into_iter().map(|worst| worst.map_or(u64::MAX, |worst| worst.0)).collect()
}

fn changed(streams: &[Stream], place: prop::sample::Index, change: impl Fn(&mut Stream)) -> Vec<Stream> {
    let mut streams = streams.to_vec();
    let place = place.index(streams.len());
    change(&mut streams[place]);
    streams
}

/// No response of the second set is earlier than that of the first.
fn none_is_earlier(first: &[Stream], second: &[Stream]) -> Result<(), TestCaseError> {
    for (before, after) in bounds(first).into_iter().zip(bounds(second)) {
        prop_assert!(after >= before, "{} became {}", before, after);
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, ..ProptestConfig::default() })]

    #[test]
    fn groups_and_short_cuts_change_nothing(streams in any_streams(), bit in 1..5_u64) {
        for (index, found) in responses(&streams, Ticks(bit)).into_iter().enumerate() {
            let expected = plain(&streams, index, bit);
            prop_assert_eq!(found.worst.ok().map(|worst| (worst.0, found.instance)), expected);
            prop_assert!(found.worst != Err(NoBound::TooFar));
        }
    }

    #[test]
    fn delays_add_up(streams in any_streams(), bit in 1..5_u64) {
        for (index, found) in responses(&streams, Ticks(bit)).into_iter().enumerate() {
            let reasons = delays(&streams, index, Ticks(bit));
            prop_assert_eq!(reasons.as_ref().map(|reasons| reasons.worst), found.worst.as_ref().copied());
            let Ok(Delays { worst, jitter, blocking, higher, earlier, lead, length }) = reasons else { continue };
            let others: u64 = higher.iter().chain(&blocking).map(|delay| delay.time.0).sum();
            prop_assert_eq!(jitter.0 + others + earlier.0 + length.0, worst.0 + lead.0);
            prop_assert_eq!(blocking.map_or(Ticks(0), |blocking| blocking.time), found.blocking);
            prop_assert!(worst.0 >= jitter.0 + found.blocking.0 + length.0);
        }
    }

    #[test]
    fn a_stream_more_makes_no_frame_earlier(
        streams in any_streams(), more in any_stream(), place in any::<prop::sample::Index>(),
    ) {
        let place = place.index(streams.len() + 1);
        let mut with_it = streams.clone();
        with_it.insert(place, more);
        let mut after = bounds(&with_it);
        after.remove(place);
        for (before, after) in bounds(&streams).into_iter().zip(after) {
            prop_assert!(after >= before, "{} became {}", before, after);
        }
    }

    #[test]
    fn longer_later_and_more_often_make_no_frame_earlier(
        streams in any_streams(), place in any::<prop::sample::Index>(), by in 1..40_u64,
    ) {
        none_is_earlier(&streams, &changed(&streams, place, |stream| stream.length.0 += by))?;
        none_is_earlier(&streams, &changed(&streams, place, |stream| stream.jitter.0 += by))?;
        none_is_earlier(&streams, &changed(&streams, place, |stream| stream.period.0 = (stream.period.0 - 1).max(8)))?;
    }

    #[test]
    fn a_finer_clock_tells_the_same(streams in any_streams(), finer in 2..1000_u64) {
        let fine: Vec<Stream> = streams
            .iter()
            .map(|s| stream(s.length.0 * finer, s.period.0 * finer, s.jitter.0 * finer, s.deadline.0 * finer))
            .collect();
        for (coarse, fine) in worst(&streams, 1).into_iter().zip(worst(&fine, finer)) {
            prop_assert_eq!(coarse.map(|worst| worst.0 * finer), fine.map(|worst| worst.0));
        }
    }
}
