//! What needs `unsafe`: a file's bytes in memory without a copy, and loops compiled for the instruction sets of this machine.
//!
//! Rivals must be as fast as they can be: summing a file through `read` costs twice the sum itself, and loops for the baseline of x86-64 are
//! half as fast as for AVX2.
#![allow(unsafe_code)]

use std::fs::File;
use std::ops::Deref;
use std::path::Path;

use memmap2::Mmap;

/// A file's bytes.
#[derive(Debug)]
pub(crate) struct Mapped(Mmap);

impl Mapped {
    pub(crate) fn open(path: &Path) -> Self {
        let file = File::open(path).expect("the workload's file was just written");
        // SAFETY: the file lies in a temporary folder of this process, which writes it once before and never again.
        Self(unsafe { Mmap::map(&file) }.expect("a regular file can be mapped"))
    }
}

impl Deref for Mapped {
    type Target = [u8];

    fn deref(&self) -> &[u8] {
        &self.0
    }
}

/// A loop that can be compiled for several instruction sets; its methods are to be inlined.
pub(crate) trait Work {
    /// Does it. `FUSED`: multiplication with addition is one instruction.
    fn run<const FUSED: bool>(&mut self);
}

/// An instruction set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum InstructionSet {
    Baseline,
    #[cfg(target_arch = "x86_64")]
    Avx2,
    #[cfg(target_arch = "x86_64")]
    Avx512,
}

impl InstructionSet {
    /// Those of this machine.
    #[cfg(target_arch = "x86_64")]
    pub(crate) fn available() -> Vec<Self> {
        let mut sets = vec![Self::Baseline];
        if is_x86_feature_detected!("avx2") && is_x86_feature_detected!("fma") {
            sets.push(Self::Avx2);
            let wide = is_x86_feature_detected!("avx512f") && is_x86_feature_detected!("avx512dq");
            if wide && is_x86_feature_detected!("avx512vl") && is_x86_feature_detected!("avx512bw") {
                sets.push(Self::Avx512);
            }
        }
        sets
    }

    /// Those of this machine.
    #[cfg(not(target_arch = "x86_64"))]
    pub(crate) fn available() -> Vec<Self> {
        vec![Self::Baseline]
    }

    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Baseline => "baseline",
            #[cfg(target_arch = "x86_64")]
            Self::Avx2 => "AVX2",
            #[cfg(target_arch = "x86_64")]
            Self::Avx512 => "AVX-512",
        }
    }

    /// Runs a loop compiled for this set, which must be one of [`InstructionSet::available`].
    pub(crate) fn run(self, work: &mut impl Work) {
        debug_assert!(Self::available().contains(&self));
        match self {
            Self::Baseline => work.run::<false>(),
            // SAFETY: callers take sets from `available`, which asked the machine.
            #[cfg(target_arch = "x86_64")]
            Self::Avx2 => unsafe { run_avx2(work) },
            // SAFETY: the same.
            #[cfg(target_arch = "x86_64")]
            Self::Avx512 => unsafe { run_avx512(work) },
        }
    }
}

#[cfg(target_arch = "x86_64")]
#[target_feature(enable = "avx2,fma")]
fn run_avx2(work: &mut impl Work) {
    work.run::<true>();
}

#[cfg(target_arch = "x86_64")]
#[target_feature(enable = "avx2,fma,avx512f,avx512dq,avx512vl,avx512bw")]
fn run_avx512(work: &mut impl Work) {
    work.run::<true>();
}
