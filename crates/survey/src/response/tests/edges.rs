//! Sets at the edges, worked out by hand with the paper's formulas.

use super::*;

#[test]
fn no_stream_and_one_stream() {
    assert_eq!(responses(&[], Ticks(1)), []);
    let alone = responses(&[stream(270, 10_000, 40, 10_000)], Ticks(2));
    assert_eq!(alone, [Response { worst: Ok(Ticks(310)), instance: 0, blocking: Ticks(0) }]);
}

/// Two frames that leave no bit free for the third, and a third that still has a bound where they leave one.
#[test]
fn a_load_of_one_and_above_has_no_bound() {
    let full = [stream(10, 20, 0, 20), stream(10, 20, 0, 20), stream(10, 1000, 0, 1000)];
    assert_eq!(worst(&full, 1), [Ok(Ticks(20)), Err(NoBound::Overload), Err(NoBound::Overload)]);
    assert!(!responses(&full, Ticks(1))[1].meets(Ticks(u64::MAX)));

    let above = [stream(30, 20, 0, 20), stream(1, 1000, 0, 1000)];
    assert_eq!(worst(&above, 1), [Err(NoBound::Overload); 2]);
    assert_eq!(delays(&above, 1, Ticks(1)), Err(NoBound::Overload));
    assert_eq!(order(&above, Ticks(1)), Order::Impossible(vec![0, 1]));

    let thirds = [stream(1, 3, 0, 3), stream(2, 3, 0, 9)];
    assert_eq!(worst(&thirds, 1)[1], Err(NoBound::Overload));
    // 10/20 + 9/20 + 1/21: below 1, and no binary fraction.
    let below = [stream(10, 20, 0, 20), stream(9, 20, 0, 40), stream(1, 21, 0, 200)];
    assert_eq!(worst(&below, 1)[2], Ok(Ticks(20)));
}

#[test]
fn a_period_of_nothing_is_an_overload() {
    assert_eq!(worst(&[stream(10, 0, 0, 10), stream(10, 1000, 0, 10)], 1), [Err(NoBound::Overload); 2]);
}

/// Length 2, period 5, jitter 12: four frames can be queued at once. Below a stream of length 3 and period 10 the busy time is 18 and
/// the first frame the latest: 12 + 3 + 2.
#[test]
fn jitter_above_the_period() {
    assert_eq!(worst(&[stream(2, 5, 12, 20)], 1), [Ok(Ticks(14))]);
    let found = responses(&[stream(3, 10, 0, 10), stream(2, 5, 12, 20)], Ticks(1));
    assert_eq!((found[1].worst, found[1].instance), (Ok(Ticks(17)), 0));
    // The other way round it delays more than once: 3 frames at once, one more before they are through, then another before
    // those are: w = 2 ceil((w + 12 + 1) / 5) from 0: 6, 8, 10, 10.
    let found = responses(&[stream(2, 5, 12, 20), stream(3, 10, 0, 10)], Ticks(1));
    assert_eq!(found[1].worst, Ok(Ticks(13)));
}

/// The paper's example in bits of 10 us with a blocking frame of 20 below it: the second instance of the third stream begins at
/// 620 and ends at 720, 370 after its event. That is later than its period and in time all the same.
#[test]
fn deadlines_above_the_period() {
    let streams =
        [stream(100, 250, 0, 250), stream(100, 350, 0, 350), stream(100, 350, 0, 400), stream(20, 4000, 0, 4000)];
    let found = responses(&streams, Ticks(1));
    assert_eq!((found[2].worst, found[2].instance), (Ok(Ticks(370)), 1));
    assert!(found[2].meets(streams[2].deadline));
    assert!(found[2].meets(Ticks(370)) && !found[2].meets(Ticks(369)));
}

/// Whoever is queued in the first bit of an arbitration takes part in it: one more frame of period 100 goes first when the wait is 100
/// less the bit, and none when it is a tick less.
#[test]
fn a_bit_decides() {
    let waits =
        |length| worst(&[stream(10, 100, 0, 100), stream(5, 1000, 0, 1000), stream(length, 1000, 0, 1000)], 2)[1];
    assert_eq!(waits(88), Ok(Ticks(88 + 10 + 5)));
    assert_eq!(waits(89), Ok(Ticks(89 + 20 + 5)));
}

/// Times that do not fit are told, never wrapped.
#[test]
fn the_largest_numbers() {
    let far = stream(1 << 61, u64::MAX, 0, u64::MAX);
    assert_eq!(worst(&[far; 3], 1), [Ok(Ticks(1 << 62)), Err(NoBound::TooFar), Err(NoBound::TooFar)]);
    assert_eq!(worst(&[stream(1, u64::MAX, u64::MAX, 1); 2], u64::MAX), [Err(NoBound::TooFar); 2]);
    assert_eq!(worst(&[stream(u64::MAX, u64::MAX, 0, 0)], 1), [Err(NoBound::Overload)]);
    assert_eq!(worst(&[stream(u64::MAX - 1, u64::MAX, 0, 0); 1], 1), [Err(NoBound::TooFar)]);
    assert_eq!(order(&[stream(u64::MAX / 4, u64::MAX, 0, 0); 2], Ticks(1)), Order::Unknown);
    assert_eq!(delays(&[stream(1, u64::MAX, u64::MAX, 1)], 0, Ticks(1)), Err(NoBound::TooFar));
}
