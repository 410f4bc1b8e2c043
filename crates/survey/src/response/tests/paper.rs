//! Published sets.

use wirelore_bits::can_frame::{Format, Shape};
use wirelore_model::{BitRate, Nanoseconds};

use super::*;

/// The three messages of Davis, Burns, Bril, Lukkien, Real-Time Systems 35 (2007), from memory: 125 kbit/s, 7 data bytes each, so that
/// a frame takes 125 bits, 1 ms; periods 2.5, 3.5 and 3.5 ms, deadlines 2.5, 3.25 and 3.25 ms.
fn three_messages() -> (Vec<Stream>, Ticks) {
    const RATE: BitRate = BitRate(125_000);
    let clock = Clock::of_rates([RATE]).expect("125 kbit/s fits nanoseconds");
    let bits = Shape { extended: false, format: Format::Data }.longest(7).expect("7 bytes can be sent");
    let length = clock.frame(bits, RATE, None).expect("a frame is short");
    assert_eq!(length, Ticks(1_000_000));
    let times = [(2_500_000, 2_500_000), (3_500_000, 3_250_000), (3_500_000, 3_250_000)];
    let streams = times.map(|(period, deadline)| Stream { length, ..stream(0, period, 0, deadline) });
    (streams.to_vec(), clock.bits(1, RATE).expect("a bit is short"))
}

/// The revised analysis finds 2.0, 3.0 and 3.5 ms; the one before it found 3.0 ms for the last message, which looks in time and is not.
#[test]
fn the_second_instance_of_the_last_message_is_late() {
    let (streams, bit) = three_messages();
    let found = responses(&streams, bit);
    let expected = [(2_000_000, 0), (3_000_000, 0), (3_500_000, 1)];
    for ((response, (worst, instance)), stream) in found.iter().zip(expected).zip(&streams) {
        assert_eq!((response.worst, response.instance), (Ok(Ticks(worst)), instance));
        assert_eq!(response.meets(stream.deadline), worst <= stream.deadline.0);
    }
    assert_ne!(found[2].worst, Ok(Ticks(3_000_000)), "the first instance alone, as before 2007");
    assert!(!found[2].meets(streams[2].deadline));
}

/// The formulas of the paper by hand: the second instance begins 6.0 ms after the first one of all was queued, behind one of its own
/// stream, three of the first and two of the second.
#[test]
fn and_these_are_the_reasons() {
    let (streams, bit) = three_messages();
    let found = delays(&streams, 2, bit).expect("there is a bound");
    let frames = |stream, frames: u64| Delay { stream, frames, time: Ticks(frames * 1_000_000) };
    assert_eq!(found.higher, [frames(0, 3), frames(1, 2)]);
    assert_eq!(found.blocking, None);
    assert_eq!((found.earlier, found.lead), (Ticks(1_000_000), Ticks(3_500_000)));

    let first = delays(&streams, 0, bit).expect("there is a bound");
    assert_eq!(first.blocking, Some(frames(1, 1)), "of two that are as long, the first");
}

/// A set of our own at 500 kbit/s with lengths by the paper's formula, worked out with exact fractions: bytes, period in ms, jitter in
/// units of 0.1 ms, worst response in units of 10 us.
#[test]
fn six_messages_with_jitter() {
    const RATE: BitRate = BitRate(500_000);
    let set =
        [(8, 10, 2, 74), (6, 20, 5, 127), (8, 10, 1, 114), (2, 50, 20, 319), (8, 100, 50, 638), (4, 1000, 100, 1138)];
    let clock = Clock::of_rates([RATE]).expect("500 kbit/s fits nanoseconds");
    let span = |nanoseconds| clock.span(Nanoseconds(nanoseconds)).expect("the times are short");
    let streams = set.map(|(bytes, period_ms, jitter, _)| {
        let bits = Shape { extended: false, format: Format::Data }.longest(bytes).expect("it can be sent");
        let period = span(period_ms * 1_000_000);
        let length = clock.frame(bits, RATE, None).expect("a frame is short");
        Stream { length, period, jitter: span(jitter * 100_000), deadline: period }
    });
    let found = responses(&streams, clock.bits(1, RATE).expect("a bit is short"));
    for (response, (.., expected)) in found.iter().zip(set) {
        let worst = response.worst.map(|worst| clock.nanoseconds(worst));
        assert_eq!(worst, Ok(Nanoseconds(expected * 10_000)));
        assert_eq!(response.instance, 0);
    }
}

/// CAN FD, by hand: a classic frame of 8 bytes waits for one of 64 bytes at 500 kbit/s and 2 Mbit/s that has just begun,
/// 33 bits of 2 us and 679 of 0.5 us.
#[test]
fn a_long_fast_frame_blocks_with_both_its_phases() {
    let (nominal, data) = (BitRate(500_000), BitRate(2_000_000));
    let clock = Clock::of_rates([nominal, data]).expect("they fit nanoseconds");
    let length = |format, bytes| {
        let bits = Shape { extended: false, format }.longest(bytes).expect("it can be sent");
        clock.frame(bits, nominal, Some(data)).expect("a frame is short")
    };
    let fast = length(Format::Fd { bit_rate_switch: true }, 64);
    assert_eq!(fast, Ticks(405_500));
    let streams =
        [length(Format::Data, 8), fast].map(|length| Stream { length, ..stream(0, 10_000_000, 0, 10_000_000) });
    let found = responses(&streams, clock.bits(1, nominal).expect("a bit is short"));
    assert_eq!((found[0].blocking, found[0].worst), (fast, Ok(Ticks(270_000 + 405_500))));
}
