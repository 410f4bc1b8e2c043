//! The hint to the processor to fetch ahead.

/// How far ahead of the reading position the processor is told to fetch: its own guesses end with a page. With 1280 bytes a block of 48
/// takes 0.7 ns longer, with 2048 or 4096 up to 0.3; without the hint half as long again.
const AHEAD_BYTES: usize = 3072;

/// Hints that the bytes some way behind `at` are about to be read.
#[inline(always)]
pub(crate) fn prefetch(bytes: &[u8], at: usize) {
    #[cfg(target_arch = "x86_64")]
    // SAFETY: a prefetch reads nothing as far as the program can tell, and any address may be given to it.
    unsafe {
        use std::arch::x86_64::{_MM_HINT_T0, _mm_prefetch};
        _mm_prefetch::<_MM_HINT_T0>(bytes.as_ptr().wrapping_add(at + AHEAD_BYTES).cast());
    }
    #[cfg(not(target_arch = "x86_64"))]
    let _ = (bytes, at, AHEAD_BYTES);
}
