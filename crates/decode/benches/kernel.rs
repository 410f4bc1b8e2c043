//! What the exact loops cost, and what their parts buy: `cargo bench -p wirelore-decode --bench kernel`.
//!
//! One signal of 16 bits at 0.05 a step from -273.15, columns of 512 rows that stay in the first cache, on each set of instructions:
//!
//! | row | what it is |
//! | --- | --- |
//! | kernel | the plan made at run time, exact |
//! | kernel, one end / two ends | the same, with a plain run that ends above / above and below |
//! | constants | the same arithmetic with every parameter a constant of the program |
//! | plain | `raw * factor + offset` in doubles with parameters of run time: every second value is wrong |
//! | division | exact by a division, parameters of run time |
//! | raw | raw numbers of 16 bits |
//!
//! Elapsed time is what is shown, so a quiet machine is needed; every loop that claims to be exact is compared with the formula first.
//!
//! Measured 2026-11-25 on a Xeon with AVX-512 (2 virtual cores, busy), rustc 1.95, by a harness that takes the CPU time of the thread:
//! medians of 21 interleaved rounds over eight signals of 16 bits, in nanoseconds a value:
//!
//! | | kernel | one end | two ends | constants | plain | division | raw |
//! | --- | --- | --- | --- | --- | --- | --- | --- |
//! | baseline | 0.348 | 0.432 | 0.515 | 0.298 | 0.305 | 0.502 | 0.300 |
//! | AVX2 and FMA | 0.152 | 0.196 | 0.239 | 0.135 | 0.146 | 0.530 | 0.163 |
//! | AVX-512 | 0.104 | 0.144 | 0.158 | 0.093 | 0.097 | 0.542 | 0.101 |
//!
//! So the `unsafe` calls of the wider sets make the loop 2.3 and 3.3 times faster.
//!
//! The loops are no part of the crate's interface, so their sources are taken in as they are.

use std::hint::black_box;

use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use wirelore_bits::{Affine, Ratio};

use crate::instruction_sets::{InstructionSet, VectorLoop};
use crate::kernel::{Kernel, WordBits};

#[allow(dead_code, unused_imports, reason = "its tests and some of its parts are used elsewhere")]
#[path = "../src/batch/instruction_sets.rs"]
mod instruction_sets;
#[allow(dead_code, unused_imports, reason = "its tests and some of its parts are used elsewhere")]
#[path = "../src/batch/kernel/mod.rs"]
mod kernel;

const ROWS: usize = 512;
const SHIFT: u8 = 13;
const MASK: u64 = 0xFFFF;
/// 2^52, and its bits.
const ZERO: f64 = 4_503_599_627_370_496.0;
const ZERO_BITS: u64 = ZERO.to_bits();

/// 0.05 and -273.15 as the nearest doubles, which no decimal factor should become.
struct Plain<'a>((u8, u64, f64, f64), &'a [u64], &'a mut [f64]);

impl VectorLoop for Plain<'_> {
    type Output = ();

    #[inline(always)]
    fn run<const FUSED: bool>(self) {
        let Self((shift, mask, factor, offset), words, values) = self;
        for (word, value) in words.iter().zip(values) {
            let raw = f64::from_bits(*word >> (shift & 63) & mask | ZERO_BITS) - ZERO;
            *value = raw * factor + offset;
        }
    }
}

/// (raw - 5463) / 20.
struct Division<'a>((u8, u64, f64, f64), &'a [u64], &'a mut [f64]);

impl VectorLoop for Division<'_> {
    type Output = ();

    #[inline(always)]
    fn run<const FUSED: bool>(self) {
        let Self((shift, mask, addend, divisor), words, values) = self;
        for (word, value) in words.iter().zip(values) {
            let raw = f64::from_bits(*word >> (shift & 63) & mask | ZERO_BITS) - ZERO;
            *value = (raw + addend) / divisor;
        }
    }
}

/// What the kernel does, with constants.
struct Constants<'a>(&'a [u64], &'a mut [f64]);

impl VectorLoop for Constants<'_> {
    type Output = ();

    #[inline(always)]
    fn run<const FUSED: bool>(self) {
        // 1/20 as the nearest double and what that lacks; then with 37 bits, which leave room for whole numbers of 16.
        const FULL: (f64, f64) = (0.05, -0.05 / 18_014_398_509_481_984.0);
        const SHORT: (f64, f64) = (109_951_162_778.0 / TWO_POW_41, -0.4 / TWO_POW_41);
        const TWO_POW_41: f64 = 2_199_023_255_552.0;
        let (high, low) = if FUSED { FULL } else { SHORT };
        for (word, value) in self.0.iter().zip(self.1) {
            let whole = f64::from_bits(*word >> SHIFT & MASK | ZERO_BITS) - (ZERO + 5463.0);
            let rest = whole * low;
            *value = if FUSED { whole.mul_add(high, rest) } else { whole * high + rest };
        }
    }
}

fn values(c: &mut Criterion) {
    let mut state = 0x2545_F491_4F6C_DD1D_u64;
    let words: Vec<u64> = std::iter::repeat_with(|| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        state
    })
    .take(ROWS)
    .collect();
    let ratio = |text: &str| text.parse::<Ratio>().expect("a number");
    let affine = Affine::new(ratio("0.05"), ratio("-273.15")).expect("it fits");
    let bits = WordBits { shift: SHIFT, width: 16, signed: false };
    let kernel = |plain| Kernel::new(bits, Some(&affine), Some(plain)).expect("inside the word");
    let kernels = [
        ("kernel", kernel((0, 65535))),
        ("kernel, one end", kernel((0, 65000))),
        ("kernel, two ends", kernel((1, 65000))),
    ];
    let expected: Vec<f64> = words.iter().map(|word| affine.value(i128::from(word >> SHIFT & MASK))).collect();

    let mut group = c.benchmark_group("values");
    group.throughput(Throughput::Elements(ROWS as u64));
    let mut column = vec![0.0; ROWS];
    for set in InstructionSet::available() {
        let named = |name: &str| BenchmarkId::new(name, format!("{set:?}"));
        for (name, kernel) in &kernels {
            kernel.values(set, &words, &mut column);
            assert_eq!(column, expected, "{name}");
            group.bench_function(named(name), |b| {
                b.iter(|| kernel.values(set, black_box(&words), black_box(&mut column)))
            });
        }
        set.run(Constants(&words, &mut column));
        assert_eq!(column, expected, "constants");
        group.bench_function(named("constants"), |b| {
            b.iter(|| set.run(Constants(black_box(&words), black_box(&mut column))));
        });
        group.bench_function(named("plain"), |b| {
            let plan = black_box((SHIFT, MASK, 0.05, -273.15));
            b.iter(|| set.run(Plain(plan, black_box(&words), black_box(&mut column))));
        });
        let plan = black_box((SHIFT, MASK, -5463.0, 20.0));
        set.run(Division(plan, &words, &mut column));
        assert_eq!(column, expected, "division");
        group.bench_function(named("division"), |b| {
            b.iter(|| set.run(Division(plan, black_box(&words), black_box(&mut column))));
        });
        let mut raws = vec![0_u16; ROWS];
        group.bench_function(named("raw"), |b| {
            b.iter(|| kernels[0].1.raws(set, black_box(&words), black_box(&mut raws)));
        });
    }
    group.finish();
}

criterion_group!(benches, values);
criterion_main!(benches);
