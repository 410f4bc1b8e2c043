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

/// Numbers of eight bytes each in a line of the cache.
const LINE_WORDS: usize = 8;

/// Numbers of eight bytes.
pub(crate) trait Word: Copy + Default + 'static {}

impl Word for f64 {}
impl Word for i64 {}

/// A line of the cache.
#[derive(Debug, Clone, Copy, Default)]
#[repr(align(64))]
struct Line<T>([T; LINE_WORDS]);

/// Columns of numbers that are kept, in memory that is used again. Each begins with a line of the cache: one that was written in part would
/// have to be fetched first, and whatever is written behind it has to wait for that.
#[derive(Debug, Clone, Default)]
pub(crate) struct Words<T> {
    /// All that were there at any time; the first `used` of them are meant.
    lines: Vec<Line<T>>,
    used: usize,
    stores: Stores,
    /// Whether some of them may still be on their way.
    are_on_their_way: bool,
}

impl<T: Word> Words<T> {
    /// Forgets all and keeps the memory.
    pub(crate) fn clear(&mut self, stores: Stores) {
        (self.used, self.stores) = (0, stores);
    }

    /// Adds a column. Memory that is new is written as usual: fetching it takes longer than anything else.
    #[inline]
    pub(crate) fn push(&mut self, column: &[T]) {
        let (whole, rest) = column.as_chunks::<LINE_WORDS>();
        let mut last = [T::default(); LINE_WORDS];
        last[..rest.len()].copy_from_slice(rest);
        let last = if rest.is_empty() { &[][..] } else { &[last][..] };
        let (begin, end) = (self.used, self.used + whole.len() + last.len());
        match self.lines.get_mut(begin..end) {
            Some(place) => {
                let (place, last_place) = place.split_at_mut(whole.len());
                write(place, whole, self.stores);
                write(last_place, last, self.stores);
                self.are_on_their_way |= self.stores == Stores::Streaming;
            }
            None => {
                self.settle();
                self.lines.truncate(begin);
                self.lines.extend(whole.iter().chain(last).map(|line| Line(*line)));
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

    /// The columns, which are so long, one after the other.
    pub(crate) fn columns(&self, lengths: impl Iterator<Item = usize>) -> impl Iterator<Item = Vec<T>> {
        assert!(!self.are_on_their_way, "they have settled");
        let mut lines = self.lines[..self.used].iter();
        lengths.map(move |length| {
            let of_column = lines.by_ref().take(length.div_ceil(LINE_WORDS));
            of_column.flat_map(|line| line.0).take(length).collect()
        })
    }
}

fn write<T: Word>(to: &mut [Line<T>], from: &[[T; LINE_WORDS]], stores: Stores) {
    match stores {
        Stores::Ordinary => to.iter_mut().zip(from).for_each(|(to, from)| to.0 = *from),
        Stores::Streaming => stream(to, from),
    }
}

/// Writes lines past the caches; [`Words::settle`] is to follow.
#[cfg(target_arch = "x86_64")]
fn stream<T: Word>(to: &mut [Line<T>], from: &[[T; LINE_WORDS]]) {
    use std::arch::x86_64::{_mm_loadu_si128, _mm_stream_si128};
    const { assert!(size_of::<T>() == 8) };
    for (to, from) in to.iter_mut().zip(from) {
        for at in [0, 2, 4, 6] {
            // SAFETY: both places are inside of their lines, and that of `to` is aligned, as its line is.
            unsafe {
                let quarter = _mm_loadu_si128(from.as_ptr().add(at).cast());
                _mm_stream_si128(to.0.as_mut_ptr().add(at).cast(), quarter);
            }
        }
    }
}

#[cfg(not(target_arch = "x86_64"))]
fn stream<T: Word>(to: &mut [Line<T>], from: &[[T; LINE_WORDS]]) {
    write(to, from, Stores::Ordinary);
}
