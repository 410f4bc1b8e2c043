//! SOME/IP-TP: payloads that were sent in segments, after AUTOSAR PRS SOME/IP Protocol.
//!
//! [`Reassembler`] is fed the segmented messages of a network and gives whole payloads. Segments have to come in order: one that does not
//! gives the whole message up, as the standard has it, and its later segments are told as belonging to it. A message takes memory for
//! the bytes that came, at most what the caller allows.

mod reassembler;
mod segments;

pub use reassembler::{Reassembler, Tp, TpFault};
pub use segments::{Segments, segments};

/// The word before the payload of a segment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Word {
    /// Where in the whole payload the segment belongs.
    byte_index: u32,
    more: bool,
}

/// Offsets count in units of 16 bytes; all segments but the last are that or a multiple of it long.
const UNIT: usize = 16;
const WORD_BYTES: usize = 4;

impl Word {
    // The offset in units of 16 bytes takes the upper 28 bits, so that the word without its low bits is the offset in bytes.
    fn of_bits(bits: u32) -> Self {
        Self { byte_index: bits & 0xFFFF_FFF0, more: bits & 1 != 0 }
    }

    fn bits(self) -> u32 {
        self.byte_index & 0xFFFF_FFF0 | u32::from(self.more)
    }
}
