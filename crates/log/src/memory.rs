//! A whole log as memory: a file that the system lends page by page, or bytes that a program has there anyway.

use std::ops::Range;

use crate::machine::Map;

/// The bytes of one log.
pub(crate) enum Memory {
    File(Map),
    Given(Box<dyn AsRef<[u8]> + Send + Sync>),
}

impl Memory {
    /// All bytes. Only those of a fetched range may be touched.
    #[inline]
    pub(crate) fn bytes(&self) -> &[u8] {
        match self {
            Self::File(map) => map.bytes(),
            Self::Given(bytes) => (**bytes).as_ref(),
        }
    }

    /// Asks for a range to be touched; false where the system cannot bring it.
    pub(crate) fn fetch(&self, range: Range<usize>) -> bool {
        match self {
            Self::File(map) => map.fetch(range),
            Self::Given(_) => true,
        }
    }

    /// Says that a range will not be read again soon.
    pub(crate) fn release(&self, range: Range<usize>) {
        if let Self::File(map) = self {
            map.release(range);
        }
    }
}
