//! The instructions that this machine has: found out once, used by loops that are compiled for each set of them.
//!
//! The one module of the crate with `unsafe` code. Two things need it. A loop compiled for instructions that a machine may not have
//! may be called only where somebody has looked. And stores that go past the caches are no ordinary writes.

#![allow(unsafe_code)]

use std::marker::PhantomData;
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

/// Numbers whose bytes are all part of their value.
///
/// # Safety
/// The type has no bytes that may be without a value (padding).
pub(crate) unsafe trait WholeBytes: Copy {}

macro_rules! whole_bytes {
    ($($number:ty),*) => {$(
        // SAFETY: numbers have no padding.
        unsafe impl WholeBytes for $number {}
    )*};
}

whole_bytes!(u8, u16, u32, u64, i8, i16, i32, i64, f64);

/// Copies of columns that will not be read again soon, past the caches: their place in memory need not be read before it is written.
///
/// Meant for memory that was written before: on pages fresh from the system it is slower than a plain copy. The columns stay borrowed
/// until [`past_caches`] ends, because the stores are in order with others only then.
#[derive(Debug)]
pub(crate) struct PastCaches<'to> {
    columns: PhantomData<&'to mut [u8]>,
}

/// Lets `copies` copy columns past the caches. Its end waits for the stores (about 0.2 us), so one call serves all columns of a block.
pub(crate) fn past_caches<'to, R>(copies: impl FnOnce(&mut PastCaches<'to>) -> R) -> R {
    // Dropped, and so waited for, when `copies` panics too; nobody else can hold one, and forget it.
    copies(&mut PastCaches { columns: PhantomData })
}

impl<'to> PastCaches<'to> {
    /// Copies one column.
    ///
    /// # Panics
    /// The columns are not of one length.
    pub(crate) fn copy<T: WholeBytes>(&mut self, from: &[T], to: &'to mut [T]) {
        assert_eq!(from.len(), to.len(), "columns of two lengths");
        #[cfg(all(target_arch = "x86_64", not(miri)))]
        stream(from, to);
        #[cfg(not(all(target_arch = "x86_64", not(miri))))]
        to.copy_from_slice(from);
    }
}

impl Drop for PastCaches<'_> {
    fn drop(&mut self) {
        // SAFETY: the instruction is part of every x86-64, and has no other condition.
        #[cfg(all(target_arch = "x86_64", not(miri)))]
        unsafe {
            std::arch::x86_64::_mm_sfence();
        }
    }
}

/// Whole cache lines with stores that bypass the caches, the ends with plain ones. A fence must follow before `to` is anybody else's.
#[cfg(all(target_arch = "x86_64", not(miri)))]
fn stream<T: WholeBytes>(from: &[T], to: &mut [T]) {
    use std::arch::x86_64::{__m128i, _mm_loadu_si128, _mm_stream_si128};
    const LINE: usize = 64;
    const PART: usize = size_of::<__m128i>();

    let byte_count = size_of_val(from);
    let (from, to) = (from.as_ptr().cast::<u8>(), to.as_mut_ptr().cast::<u8>());
    let head = to.align_offset(LINE).min(byte_count);
    let tail = head + (byte_count - head) / LINE * LINE;
    // SAFETY: both columns are `byte_count` bytes long, and they do not overlap since one is borrowed to be written. `WholeBytes` says that
    // all these bytes have values. Every access is below `byte_count`: `head` <= `tail` <= `byte_count`, and `tail - head` is a whole number
    // of lines. The stores that need an address of 16 bytes have it: `to + head` begins a line, or `head` is `byte_count` and there is no
    // line. `PastCaches`, which alone calls this, keeps `to` borrowed until its fence has put these stores in order with all later ones.
    unsafe {
        from.copy_to_nonoverlapping(to, head);
        for at in (head..tail).step_by(PART) {
            _mm_stream_si128(to.add(at).cast(), _mm_loadu_si128(from.add(at).cast()));
        }
        from.add(tail).copy_to_nonoverlapping(to.add(tail), byte_count - tail);
    }
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

    #[test]
    fn a_copy_past_the_caches_is_a_copy_and_touches_nothing_else() {
        fn check<T: WholeBytes + PartialEq + std::fmt::Debug>(number: impl Fn(usize) -> T, blank: T) {
            for length in (0..=300).chain([512, 4099]) {
                for (from_start, to_start) in [(0, 0), (1, 0), (0, 1), (3, 2), (7, 7)] {
                    let from: Vec<T> = (0..from_start + length).map(&number).collect();
                    let mut to = vec![blank; to_start + length + 9];
                    past_caches(|copies| copies.copy(&from[from_start..], &mut to[to_start..to_start + length]));
                    assert_eq!(to[to_start..to_start + length], from[from_start..]);
                    assert!(to[..to_start].iter().chain(&to[to_start + length..]).all(|left| *left == blank));
                }
            }
        }
        check(|at| at as f64 + 0.5, -1.0);
        check(|at| (at % 251) as u8, 255);
        check(|at| at as i32 - 5, i32::MIN);
    }
}
