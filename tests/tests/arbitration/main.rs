//! The worst-case analysis against a bus on which every frame is sent: no frame is ever later than calculated, and the worst is reached.
//!
//! The bus knows the rules of arbitration (ISO 11898-1) and nothing of the analysis; the analysis is that of Davis, Burns, Bril, Lukkien,
//! Real-Time Systems 35 (2007).

mod bus;
mod networks;

use wirelore_survey::response::{Stream, Ticks, responses};
use wirelore_tests::noise::Noise;

use bus::{Bus, Frames, Sent, Wanted};
use networks::{BIT, any_moments, network, worst_moment};

const NETWORKS: u64 = 4_000;
const RANDOM_RUNS: u64 = 4;

fn stream(length: u64, period: u64) -> Stream {
    Stream { length: Ticks(length), period: Ticks(period), jitter: Ticks(0), deadline: Ticks(period) }
}

/// Three streams by hand: B begins alone at 0, A and C are queued meanwhile; A's second frame comes 3 ticks after C has begun and is in
/// time for its first bit of 4 ticks.
#[test]
fn a_bus_by_hand() {
    let frames = |times: &'static [u64]| -> Frames<'static> {
        Box::new(times.iter().map(|&time| Wanted { event: time, queued: time }))
    };
    let streams = || [(10, frames(&[5, 23])), (10, frames(&[0])), (10, frames(&[7]))];
    let order = |joins: bool| -> Vec<(usize, u64)> {
        Bus::new(streams(), 4, |_| joins).map(|sent| (sent.stream, sent.start)).collect()
    };
    assert_eq!(order(true), [(1, 0), (0, 10), (0, 20), (2, 30)]);
    assert_eq!(order(false), [(1, 0), (0, 10), (2, 20), (0, 30)]);
}

/// The example of the paper (from memory; 125 kbit/s, frames of 125 bits, periods of 2.5, 3.5 and 3.5 ms): the bus shows that the last
/// message's first frame needs 3.0 ms and its second 3.5 ms.
#[test]
fn the_example_of_the_paper_on_the_bus() {
    // Two ticks to a bit of 8 us: the periods are 312.5 and 437.5 bits.
    let streams = [stream(250, 625), stream(250, 875), stream(250, 875)];
    let sent = worst_moment(&streams, 2);
    let last: Vec<u64> = sent.iter().filter(|sent| sent.stream == 2).map(Sent::response).take(2).collect();
    assert_eq!(last, [750, 875]);
}

/// What was seen of one network.
#[derive(Default)]
struct Seen {
    /// Streams with a bound.
    bounded: u64,
    /// Of these, how many were as late as calculated at the worst moment, and at random ones.
    reached: u64,
    reached_at_random: u64,
    /// Of these, how many are latest with a later frame than the first, which analyses before 2007 did not look at.
    late_later: u64,
    frames: u64,
}

/// The worst moment reaches the calculated response of every stream, to the tick (100 % of 15,857); random moments that of 2 % of
/// them. No frame of any run is later.
#[test]
fn no_frame_is_later_than_calculated_and_the_worst_is_reached() {
    let mut random = Noise::new(0xA5B1_7AA7);
    let mut seen = Seen::default();
    for _ in 0..NETWORKS {
        observe(&network(&mut random), &mut random, &mut seen);
    }
    let share = |count: u64| 100.0 * count as f64 / seen.bounded as f64;
    println!("{} frames, {} streams with a bound", seen.frames, seen.bounded);
    println!(
        "reached: {:.2} % at the worst moment, {:.2} % at random",
        share(seen.reached),
        share(seen.reached_at_random)
    );
    println!("latest with a later frame than the first: {:.2} %", share(seen.late_later));
    assert!(seen.bounded > 2 * NETWORKS, "most streams have a bound");
    assert_eq!(seen.reached, seen.bounded);
    assert!(share(seen.reached_at_random) > 1.0);
    assert!(share(seen.late_later) > 0.5);
}

fn observe(streams: &[Stream], random: &mut Noise, seen: &mut Seen) {
    let found = responses(streams, Ticks(BIT));
    let bound = |index: usize| found[index].worst.ok().map(|worst| worst.0);
    let mut latest_at_random = vec![0; streams.len()];
    for _ in 0..RANDOM_RUNS {
        for sent in any_moments(streams, random) {
            let latest = &mut latest_at_random[sent.stream];
            *latest = sent.response().max(*latest);
            seen.frames += 1;
        }
    }
    for (index, at_random) in latest_at_random.into_iter().enumerate() {
        let Some(bound) = bound(index) else { continue };
        let at_worst = worst_moment(streams, index);
        seen.frames += at_worst.len() as u64;
        let own = at_worst.iter().filter(|sent| sent.stream == index);
        let reached = own.map(Sent::response).max().unwrap_or(0);
        let latest = reached.max(at_random);
        assert!(latest <= bound, "stream {index} of {streams:?} needed {latest}, and {bound} was calculated");
        seen.bounded += 1;
        seen.reached += u64::from(reached == bound);
        seen.reached_at_random += u64::from(at_random == bound);
        seen.late_later += u64::from(found[index].instance > 0);
    }
    // What is seen of the others at somebody's worst moment is no later than their bounds either.
    for (target, _) in streams.iter().enumerate().filter(|&(target, _)| bound(target).is_some()) {
        for sent in worst_moment(streams, target) {
            let bound = bound(sent.stream).unwrap_or(u64::MAX);
            assert!(sent.response() <= bound, "{sent:?} at the worst moment of {target} of {streams:?}");
        }
    }
}
