//! What needs `unsafe`: a file's bytes in memory without a copy, and stores that go past the caches.
//!
//! Rivals must be as fast as they can be: summing a file through `read` costs twice the sum itself. And so must what receives columns: memory
//! that is written and not read again need not be fetched first, which ordinary stores do.
#![allow(unsafe_code)]

use std::fs::File;
use std::ops::Deref;
use std::path::Path;
use std::sync::Arc;

use memmap2::Mmap;

/// A file's bytes.
#[derive(Debug, Clone)]
pub(crate) struct Mapped(Arc<Mmap>);

impl Mapped {
    pub(crate) fn open(path: &Path) -> Self {
        let file = File::open(path).expect("the workload's file was just written");
        // SAFETY: the file lies in a temporary folder of this process, which writes it once before and never again.
        Self(Arc::new(unsafe { Mmap::map(&file) }.expect("a regular file can be mapped")))
    }
}

impl Deref for Mapped {
    type Target = [u8];

    fn deref(&self) -> &[u8] {
        &self.0
    }
}

impl AsRef<[u8]> for Mapped {
    fn as_ref(&self) -> &[u8] {
        &self.0
    }
}

/// How columns are written into memory that was used before.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Stores {
    /// As any program writes.
    #[default]
    Ordinary,
    /// Past the caches, where the processor can do that.
    Streaming,
}

/// Doubles that are kept, in memory that is used again.
#[derive(Debug, Clone, Default)]
pub(crate) struct Values {
    /// All that were there at any time; the first `used` of them are meant.
    memory: Vec<f64>,
    used: usize,
    stores: Stores,
    /// Whether some of them may still be on their way.
    are_on_their_way: bool,
}

impl Values {
    /// Forgets all and keeps the memory.
    pub(crate) fn clear(&mut self, stores: Stores) {
        (self.used, self.stores) = (0, stores);
    }

    /// Adds some. Memory that is new is written as usual: fetching it takes longer than anything else.
    #[inline]
    pub(crate) fn extend(&mut self, values: &[f64]) {
        let end = self.used + values.len();
        match self.memory.get_mut(self.used..end) {
            Some(place) if self.stores == Stores::Streaming => {
                stream(place, values);
                self.are_on_their_way = true;
            }
            Some(place) => place.copy_from_slice(values),
            None => {
                self.memory.truncate(self.used);
                self.memory.extend_from_slice(values);
            }
        }
        self.used = end;
    }

    /// Waits for what is on its way: to be called by the thread that has added it, before anybody looks.
    #[inline]
    pub(crate) fn settle(&mut self) {
        #[cfg(target_arch = "x86_64")]
        if self.are_on_their_way {
            // SAFETY: every processor of this kind has the instruction.
            unsafe { std::arch::x86_64::_mm_sfence() };
        }
        self.are_on_their_way = false;
    }

    pub(crate) fn as_slice(&self) -> &[f64] {
        assert!(!self.are_on_their_way, "they have settled");
        &self.memory[..self.used]
    }
}

/// Writes doubles past the caches; [`Values::settle`] is to follow.
#[cfg(target_arch = "x86_64")]
#[inline]
fn stream(to: &mut [f64], from: &[f64]) {
    use std::arch::x86_64::{_mm_loadu_pd, _mm_stream_pd};

    const LINE_BYTES: usize = 64;
    // Whole lines of the cache go at once; the parts of lines before and behind go as usual.
    let before = to.as_ptr().align_offset(LINE_BYTES).min(to.len()).min(from.len());
    let ((first, to), (first_from, from)) = (to.split_at_mut(before), from.split_at(before));
    first.copy_from_slice(first_from);
    let ((lines, last), (lines_from, last_from)) = (to.as_chunks_mut::<8>(), from.as_chunks::<8>());
    for (line, from) in lines.iter_mut().zip(lines_from) {
        for at in [0, 2, 4, 6] {
            // SAFETY: both places are inside of their lines, and that of `line` is aligned, as the whole line is.
            unsafe { _mm_stream_pd(line.as_mut_ptr().add(at), _mm_loadu_pd(from.as_ptr().add(at))) };
        }
    }
    last.copy_from_slice(last_from);
}

#[cfg(not(target_arch = "x86_64"))]
fn stream(to: &mut [f64], from: &[f64]) {
    to.copy_from_slice(from);
}
