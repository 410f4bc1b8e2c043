//! The instructions that this machine has: found out once, used by loops that are compiled for each set of them.
//!
//! The one module of the crate with `unsafe` code: a loop compiled for instructions that a machine may not have may be called only
//! where somebody has looked. What that buys is measured in `benches/kernel.rs`: loops 2.3 (AVX2) and 3.3 times (AVX-512) as fast.

#![allow(unsafe_code)]

use std::sync::OnceLock;

/// A set of instructions that this machine was found to have.
///
/// Only [`InstructionSet::BASELINE`], [`InstructionSet::best`] and [`InstructionSet::available`] make one: to hold it is to know that
/// the machine can run it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct InstructionSet(Kind);

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Baseline,
    #[cfg(target_arch = "x86_64")]
    Avx2,
    #[cfg(target_arch = "x86_64")]
    Avx512,
}

/// A loop that is worth compiling for each set of instructions.
///
/// `run` and all that it calls must be `#[inline(always)]`: code takes on the instructions of the function it is inlined into, and a call
/// that stays a call is compiled for the baseline. Loops over slices need no more than that, the compiler makes vectors of them.
pub(crate) trait VectorLoop {
    /// What the loop leaves behind.
    type Output;

    /// The loop; with `FUSED` a fused multiply-add is one instruction, without it a library call.
    fn run<const FUSED: bool>(self) -> Self::Output;
}

impl InstructionSet {
    /// What every machine has that the program was compiled for.
    pub(crate) const BASELINE: Self = Self(Kind::Baseline);

    /// The widest set of this machine.
    pub(crate) fn best() -> Self {
        static BEST: OnceLock<InstructionSet> = OnceLock::new();
        *BEST.get_or_init(|| Self::available().last().unwrap_or(Self::BASELINE))
    }

    /// All sets of this machine, the narrowest first.
    pub(crate) fn available() -> impl Iterator<Item = Self> {
        [Some(Self::BASELINE), avx2(), avx512()].into_iter().flatten()
    }

    /// Runs a loop as it was compiled for this set.
    #[inline]
    pub(crate) fn run<L: VectorLoop>(self, vector_loop: L) -> L::Output {
        match self.0 {
            Kind::Baseline => vector_loop.run::<false>(),
            // SAFETY: this kind is made by `avx2` alone, after it has found the two features that the function is compiled with.
            #[cfg(target_arch = "x86_64")]
            Kind::Avx2 => unsafe { run_avx2(vector_loop) },
            // SAFETY: this kind is made by `avx512` alone, after it has found the six features that the function is compiled with.
            #[cfg(target_arch = "x86_64")]
            Kind::Avx512 => unsafe { run_avx512(vector_loop) },
        }
    }
}

#[cfg(target_arch = "x86_64")]
fn avx2() -> Option<InstructionSet> {
    (is_x86_feature_detected!("avx2") && is_x86_feature_detected!("fma")).then_some(InstructionSet(Kind::Avx2))
}

#[cfg(target_arch = "x86_64")]
fn avx512() -> Option<InstructionSet> {
    let found = is_x86_feature_detected!("avx512f")
        && is_x86_feature_detected!("avx512dq")
        && is_x86_feature_detected!("avx512vl")
        && is_x86_feature_detected!("avx512bw")
        && is_x86_feature_detected!("avx2")
        && is_x86_feature_detected!("fma");
    found.then_some(InstructionSet(Kind::Avx512))
}

#[cfg(not(target_arch = "x86_64"))]
fn avx2() -> Option<InstructionSet> {
    None
}

#[cfg(not(target_arch = "x86_64"))]
fn avx512() -> Option<InstructionSet> {
    None
}

#[cfg(target_arch = "x86_64")]
#[target_feature(enable = "avx2,fma")]
fn run_avx2<L: VectorLoop>(vector_loop: L) -> L::Output {
    vector_loop.run::<true>()
}

#[cfg(target_arch = "x86_64")]
#[target_feature(enable = "avx512f,avx512dq,avx512vl,avx512bw,avx2,fma")]
fn run_avx512<L: VectorLoop>(vector_loop: L) -> L::Output {
    vector_loop.run::<true>()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_baseline_comes_first_and_the_best_last() {
        let sets: Vec<_> = InstructionSet::available().collect();
        assert_eq!(sets.first(), Some(&InstructionSet::BASELINE));
        assert_eq!(sets.last(), Some(&InstructionSet::best()));
    }

    #[test]
    fn every_set_runs_the_loop_it_is_given() {
        struct Sum<'a>(&'a [f64]);
        impl VectorLoop for Sum<'_> {
            type Output = f64;

            #[inline(always)]
            fn run<const FUSED: bool>(self) -> f64 {
                self.0.iter().sum()
            }
        }
        for set in InstructionSet::available() {
            assert_eq!(set.run(Sum(&[1.0, 2.0, 4.0, 8.0, 16.0])), 31.0, "{set:?}");
        }
    }
}
