//! One frame in, its eight values out, without allocation: what a program pays that embeds the decoder, or the flat table of a controller.
//! `cargo bench -p wirelore-tests --bench one_frame`.
//!
//! By hand: one load, then a shift, a mask and an exact division for each signal, all known to the compiler. All sides are compared first.

use std::hint::black_box;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use wirelore_decode::{Decoder, Reading, lorec};
use wirelore_lang::check_text;
use wirelore_lorec::{Lorec, Value};
use wirelore_model::{FrameId, NetworkId, SignalId};
use wirelore_tests::noise::Noise;

const TEXT: &str = "
network drive can 500 kbit/s
frame eight on drive id 0x1B4 {
    length 8
    signal a in bits 0.7..0.0 = raw * 0.05 km/h
    signal b in bits 1.7..1.0 = raw * 0.1 km/h
    signal c in bits 2.7..2.0 = raw * 0.25 km/h
    signal d in bits 3.7..3.0 = raw / 3 km/h
    signal e in bits 4.7..4.0 = raw * 0.4 km/h
    signal f in bits 5.7..5.0 = raw * 0.5 km/h
    signal g in bits 6.7..6.0 = raw / 256 km/h
    signal h in bits 7.7..7.0 = raw * 2 km/h
}
";

/// The values of one frame, by signal.
type Values = [f64; 8];

fn by_hand(payload: &[u8; 8], values: &mut Values) {
    let word = u64::from_le_bytes(*payload);
    let raw = |shift: u32| (word >> shift & 0xFF) as f64;
    let [a, b, c, d] = [raw(0) / 20.0, raw(8) / 10.0, raw(16) / 4.0, raw(24) / 3.0];
    *values = [a, b, c, d, raw(32) * 2.0 / 5.0, raw(40) / 2.0, raw(48) / 256.0, raw(56) * 2.0];
}

fn compare(criterion: &mut Criterion) {
    let database = check_text("eight.lore", TEXT).database.expect("no mistakes");
    let decoder = Decoder::new(&database).expect("it can be decoded");
    let table = lorec(&database).expect("it can be written");
    let table = Lorec::new(&table).expect("it was just written");
    let flat = table.frame("eight").expect("it is described");
    let by_decoder = |payload: &[u8; 8], values: &mut Values| {
        let frame = decoder.find(NetworkId(0), 0x1B4, false).unwrap_or(FrameId(0));
        decoder.decode(frame, payload, |signal: SignalId, reading: Reading<'_>| {
            if let (Some(value), Some(number)) = (values.get_mut(signal.index()), reading.value.number()) {
                *value = number;
            }
        });
    };
    let by_table = |payload: &[u8; 8], values: &mut Values| {
        let mut values = values.iter_mut();
        flat.decode(payload, |_, reading| {
            if let (Some(value), Value::Number(number)) = (values.next(), reading.value) {
                *value = number;
            }
        });
    };
    let mut noise = Noise::new(1);
    let payloads: Vec<[u8; 8]> = (0..1024).map(|_| noise.bits().to_le_bytes()).collect();
    for payload in &payloads {
        let [mut hand, mut decoded, mut read] = [[-1.0; 8]; 3];
        by_hand(payload, &mut hand);
        by_decoder(payload, &mut decoded);
        by_table(payload, &mut read);
        assert_eq!((decoded, read), (hand, hand), "all read the same");
    }
    let mut group = criterion.benchmark_group("a frame of eight signals");
    group.throughput(Throughput::Elements(payloads.len() as u64));
    let all = |read: &dyn Fn(&[u8; 8], &mut Values)| {
        let mut values = Values::default();
        for payload in &payloads {
            read(black_box(payload), &mut values);
            black_box(&values);
        }
    };
    group.bench_function("decoder, identifier and values", |bencher| bencher.iter(|| all(&by_decoder)));
    group.bench_function("flat table", |bencher| bencher.iter(|| all(&by_table)));
    group.bench_function("by hand", |bencher| bencher.iter(|| all(&by_hand)));
    group.finish();
}

criterion_group!(benches, compare);
criterion_main!(benches);
