//! A file as memory.
//!
//! Copying a log through `read` takes 5.4 ns for 48 bytes, or 8.0 where the file lies in small pages; mapping it and adding
//! up its words takes 3.0 or 6.6 (2026-11-25, a virtual Xeon, Linux 6.18). The blocks below rest on this:
//! - A mapped page may be touched only after the system was asked to fault it in ([`Map::fetch`]): a file that was cut
//!   or a disk that fails is then an error from that call, and no signal that ends the process. What remains is a file
//!   that another program cuts between that call and the touch: `cut` says what can be done about it.
//! - The bytes may change under the reader when another program writes into the log meanwhile. They are plain numbers,
//!   every length read from them is compared with a bound that is not, and a wrong frame is all that can come of it.

use std::fs::File;
use std::ops::Range;

use memmap2::Mmap;

/// A whole file as memory, as long as it was when it was opened.
#[derive(Debug)]
pub(crate) struct Map {
    map: Mmap,
}

impl Map {
    /// Maps the first `size_bytes` of the file; `None` where that cannot be done safely, or not at all.
    pub(crate) fn of(file: &File, size_bytes: u64) -> Option<Self> {
        let size_bytes = usize::try_from(size_bytes).ok().filter(|&size_bytes| size_bytes > 0)?;
        // SAFETY: the map is only read, and only behind `fetch`; the module head says what a change of the file can do.
        let map = unsafe { memmap2::MmapOptions::new().len(size_bytes).map(file) }.ok()?;
        let map = Self { map };
        map.fetch(0..1).then_some(map)
    }

    /// All bytes of the file. Only those of a fetched range may be touched.
    #[inline]
    pub(crate) fn bytes(&self) -> &[u8] {
        &self.map
    }

    /// Asks the system to bring a range into memory; false where it cannot, or where that cannot be asked.
    #[cfg(target_os = "linux")]
    pub(crate) fn fetch(&self, range: Range<usize>) -> bool {
        self.map.advise_range(memmap2::Advice::PopulateRead, range.start, range.len()).is_ok()
    }

    /// Without such a call a failing disk would end the process: files are not mapped here.
    #[cfg(not(target_os = "linux"))]
    pub(crate) fn fetch(&self, _range: Range<usize>) -> bool {
        false
    }

    /// Says that a range will not be read again soon, so that a long log does not fill the memory.
    pub(crate) fn release(&self, range: Range<usize>) {
        #[cfg(target_os = "linux")]
        // SAFETY: the map is shared with the file and never written: a page that is dropped comes back from the file.
        let _ =
            unsafe { self.map.unchecked_advise_range(memmap2::UncheckedAdvice::DontNeed, range.start, range.len()) };
        #[cfg(not(target_os = "linux"))]
        let _ = range;
    }
}
