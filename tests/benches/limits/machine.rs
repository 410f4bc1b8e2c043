//! What needs `unsafe`: a file's bytes in memory without a copy.
//!
//! Rivals must be as fast as they can be: summing a file through `read` costs twice the sum itself.
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
