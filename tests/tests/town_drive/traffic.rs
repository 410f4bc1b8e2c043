//! The traffic: nothing unknown, nothing damaged, periods as described, copies by the gateway, one frame at a time on each wire.

use crate::series::{Seen, drive};

#[test]
fn every_frame_is_described_and_every_check_is_right() {
    let tally = &drive().tally;
    assert!(tally.read > 7_000, "{} frames", tally.read);
    assert_eq!(tally.decoded, tally.read, "{tally:?}");
    assert_eq!(tally.unmatched_selectors, 0);
    let counters = &tally.counters;
    assert!(counters.right > 5_000);
    assert_eq!((counters.repeated, counters.jumped, counters.suspended, counters.outside_range), (0, 0, 0, 0));
    let checksums = &tally.checksums;
    assert!(checksums.right > 5_000);
    assert_eq!((checksums.wrong, checksums.too_short), (0, 0));
}

#[test]
fn nothing_lies_outside_its_range() {
    assert_eq!(drive().outside_range, Vec::<String>::new());
}

#[test]
fn it_takes_a_minute_on_both_networks() {
    for network in ["drive", "comfort"] {
        let of_network = || drive().frames.iter().filter(|seen| seen.network == network);
        let (first, last) =
            (of_network().next().map(|seen| seen.at_ns), of_network().next_back().map(|seen| seen.at_ns));
        assert!(first.is_some_and(|at_ns| at_ns < 200_000_000), "{network}");
        assert!(last.is_some_and(|at_ns| (59_500_000_000..60_010_000_000).contains(&at_ns)), "{network}");
    }
}

/// The shortest classic frame has 47 bits with the pause (ISO 11898-1).
#[test]
fn no_two_frames_are_on_one_wire_at_once() {
    for (network, bit_ns) in [("drive", 2_000), ("comfort", 8_000)] {
        let times: Vec<(u64, usize)> = drive()
            .frames
            .iter()
            .filter(|seen| seen.network == network)
            .map(|seen| (seen.at_ns, seen.payload.len()))
            .collect();
        for pair in times.windows(2) {
            let needed_ns = (47 + 8 * pair[1].1 as u64) * bit_ns;
            assert!(pair[1].0 >= pair[0].0 + needed_ns, "{network}: {pair:?}");
        }
    }
}

#[test]
fn periods_are_the_described_ones() {
    let fixed = [
        ("drive", "wheel_speeds", 20.0),
        ("drive", "brake_state", 100.0),
        ("drive", "vehicle_motion", 100.0),
        ("drive", "steering_wheel", 100.0),
        ("drive", "engine_state", 100.0),
        ("drive", "engine_temperatures", 1000.0),
        ("drive", "charging", 1000.0),
        ("drive", "gearbox_details", 500.0),
        ("drive", "engine_identity", 1000.0),
        ("comfort", "cluster_display", 500.0),
        ("comfort", "clock", 1000.0),
        ("comfort", "climate_state", 1000.0),
        ("comfort", "tyres", 2000.0),
    ];
    for (network, frame, period_ms) in fixed {
        let times: Vec<u64> = drive().frames_named(network, frame).map(|seen| seen.at_ns).collect();
        let gaps_ms: Vec<f64> = times.windows(2).map(|pair| (pair[1] - pair[0]) as f64 / 1e6).collect();
        let mean_ms = gaps_ms.iter().sum::<f64>() / gaps_ms.len() as f64;
        assert!((mean_ms - period_ms).abs() < 0.002 * period_ms, "{frame} every {mean_ms} ms");
        let off_ms = gaps_ms.iter().map(|gap| (gap - period_ms).abs()).fold(0.0, f64::max);
        assert!(off_ms > 0.01, "{frame} without any jitter is not from a vehicle");
        assert!(off_ms < 4.0, "{frame} is off by {off_ms} ms");
    }
}

/// Where the gateway passes a frame on, its bytes arrive unchanged, and soon.
#[test]
fn copies_follow_their_originals() {
    let routes = [
        ("drive", "engine_state", "comfort", 20),
        ("drive", "selector_lever", "comfort", 20),
        ("drive", "engine_temperatures", "comfort", 20),
        ("drive", "charging", "comfort", 20),
        ("comfort", "key_state", "drive", 10),
        ("comfort", "doors", "drive", 50),
    ];
    for (from, frame, to, within_ms) in routes {
        let originals: Vec<&Seen> = drive().frames_named(from, frame).collect();
        let mut copies = 0;
        for copy in drive().frames_named(to, frame) {
            let before = originals.partition_point(|original| original.at_ns <= copy.at_ns);
            let original = originals[before.checked_sub(1).expect("no copy comes before its original")];
            assert_eq!(original.payload, copy.payload, "{frame} at {} ns", copy.at_ns);
            assert!((1_000_000..within_ms * 1_000_000).contains(&(copy.at_ns - original.at_ns)), "{frame}");
            copies += 1;
        }
        assert!(copies >= 55, "{frame} was passed on {copies} times");
    }
}

#[test]
fn the_repacked_speed_is_the_brake_units() {
    let repacked = drive().row("comfort/dash_speed.speed");
    assert!(repacked.len() > 110);
    for point in repacked {
        let original = drive().value("drive/brake_state.vehicle_speed", point.at_s);
        assert_eq!(point.value, original, "at {} s", point.at_s);
    }
}
