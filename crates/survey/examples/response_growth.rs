//! How the time of the worst-case analysis grows with the number of streams: `cargo run --release -p wirelore-survey --example response_growth`.
//!
//! Frames of 8 bytes at 500 kbit/s; periods are multiplied until the network has the load that is asked for, as many streams as there
//! are. In the first table a few periods and jitters are shared by all, as in vehicles; in the second no two streams have the same.

use std::time::{Duration, Instant};

use wirelore_survey::response::{Stream, Ticks, order, responses};

const FRAME: Ticks = Ticks(270_000);
const BIT: Ticks = Ticks(2_000);
const ROUNDS: u32 = 3;

fn main() {
    for (title, periods) in [("shared periods", shared as fn(u64) -> u64), ("all periods different", different)] {
        println!("{title}");
        println!("{:>8} {:>6} {:>14} {:>14} {:>10}", "streams", "load", "responses, ms", "an order, ms", "bounds");
        for count in [100, 300, 1000, 5000] {
            for percent in [50, 80, 95] {
                let streams = network(count, percent, periods);
                let bounds = responses(&streams, BIT).iter().filter(|response| response.worst.is_ok()).count();
                let (all, assigned) = (best(|| responses(&streams, BIT)), best(|| order(&streams, BIT)));
                println!("{count:>8} {percent:>5}% {:>14.3} {:>14.3} {bounds:>10}", millis(all), millis(assigned));
            }
        }
    }
}

fn millis(time: Duration) -> f64 {
    time.as_secs_f64() * 1e3
}

fn best<T>(work: impl Fn() -> T) -> Duration {
    let times = (0..ROUNDS).map(|_| {
        let start = Instant::now();
        let kept = work();
        let time = start.elapsed();
        drop(kept);
        time
    });
    times.min().unwrap_or_default()
}

/// Periods in milliseconds as they are common in vehicles.
fn shared(index: u64) -> u64 {
    1000 * [10, 10, 20, 20, 20, 50, 100, 100, 100, 100, 200, 500, 1000, 1000][index as usize % 14]
}

/// From 10 ms to about 1 s, evenly over the magnitudes, no two the same.
fn different(index: u64) -> u64 {
    let scrambled = index.wrapping_mul(0x9E37_79B9_7F4A_7C15) >> 32;
    (10_000.0 * 100_f64.powf(scrambled as f64 / 2_f64.powi(32))) as u64 + index
}

fn network(count: u64, percent: u64, period_us: impl Fn(u64) -> u64) -> Vec<Stream> {
    let load: f64 = (0..count).map(|index| FRAME.0 as f64 / (1_000 * period_us(index)) as f64).sum();
    let stretch = load * 100.0 / percent as f64;
    let mut streams: Vec<Stream> = (0..count)
        .map(|index| {
            let period = Ticks((1_000.0 * stretch * period_us(index) as f64) as u64);
            Stream { length: FRAME, period, jitter: Ticks(period.0 / 20), deadline: period }
        })
        .collect();
    streams.sort_by_key(|stream| stream.period);
    streams
}
