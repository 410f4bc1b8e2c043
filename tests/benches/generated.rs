//! Is generated source as fast as constants written by hand? `cargo bench -p wirelore-tests --bench generated`.
//!
//! The four speeds of a frame of the demo van, out of payloads in the first cache, added up. By hand: one load, then a shift, a mask, a
//! comparison and an exact division for each. Both sides are compared first.

use std::hint::black_box;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use wirelore_bits::typed::Reading;
use wirelore_tests::noise::Noise;

#[rustfmt::skip]
#[path = "../generated/kestrel.rs"]
#[allow(dead_code, missing_docs, unreachable_pub, reason = "a file for firmware, of which this looks at one frame")]
mod kestrel;

fn generated(payloads: &[[u8; 8]]) -> f64 {
    let value = |reading: Reading<f64>| reading.value().unwrap_or(0.0);
    payloads.iter().fold(0.0, |sum, payload| match kestrel::WheelSpeeds::decode(payload) {
        Ok(frame) => {
            sum + value(frame.front_left())
                + value(frame.front_right())
                + value(frame.rear_left())
                + value(frame.rear_right())
        }
        Err(_) => sum,
    })
}

fn by_hand(payloads: &[[u8; 8]]) -> f64 {
    payloads.iter().fold(0.0, |sum, payload| {
        let word = u64::from_le_bytes(*payload);
        let value = |shift: u32| match word >> shift & 0x1FFF {
            0x1FFF => 0.0,
            raw => raw as f64 / 20.0,
        };
        sum + value(0) + value(13) + value(26) + value(39)
    })
}

fn compare(criterion: &mut Criterion) {
    let mut noise = Noise::new(1);
    let payloads: Vec<[u8; 8]> = (0..4096).map(|_| noise.bits().to_le_bytes()).collect();
    assert_eq!(generated(&payloads), by_hand(&payloads), "both read the same");
    let mut group = criterion.benchmark_group("four speeds");
    group.throughput(Throughput::Elements(4 * payloads.len() as u64));
    group.bench_function("generated", |bencher| bencher.iter(|| generated(black_box(&payloads))));
    group.bench_function("by hand", |bencher| bencher.iter(|| by_hand(black_box(&payloads))));
    group.finish();
}

criterion_group!(benches, compare);
criterion_main!(benches);
