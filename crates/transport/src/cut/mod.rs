//! Messages that begin with a header which tells their length, cut out of a stream or a datagram.
//!
//! SOME/IP and DoIP are carried alike: several messages in one piece, one message over several pieces. [`Cutter`] is fed the pieces of
//! one stream and gives whole messages; what cannot be a message is stepped over byte by byte until a header stands there that is likely
//! to be one. [`Datagram`] does the same for the bytes of one UDP datagram, where nothing goes on in the next one.
//!
//! Each byte is told exactly once: in a message, as skipped, or as part of a message that never ended.

mod cutter;
mod datagram;

use std::fmt::Debug;

pub use cutter::Cutter;
pub use datagram::{Datagram, DatagramFault};

/// A kind of message whose header tells its length.
pub trait Framing: Debug + Clone {
    /// Why bytes cannot be a header.
    type Fault: Debug + Clone + Copy + PartialEq;

    /// Bytes of the header, all of them needed to tell the length.
    const HEADER_BYTES: usize;

    /// The length of the whole message, header included: at least [`HEADER_BYTES`](Self::HEADER_BYTES), at most `most_bytes`.
    ///
    /// # Errors
    /// The bytes are no header, or the message would be longer than `most_bytes`.
    fn length(header: &[u8], most_bytes: usize) -> Result<usize, Self::Fault>;

    /// Whether a header that [`length`](Self::length) accepts looks right in every other way, too: asked where it is not known that
    /// a message begins.
    fn is_likely(header: &[u8]) -> bool;
}

/// What came out of a stream.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Cut<'a, Fault> {
    /// A whole message, header included.
    Message {
        /// Its bytes.
        bytes: &'a [u8],
        /// Time of the piece that its first byte came in; of an earlier one where the header had to be searched for across pieces.
        first_ns: Option<i64>,
        /// Time of the piece that its last byte came in.
        last_ns: Option<i64>,
    },
    /// Bytes in which no message begins.
    Skipped {
        /// How many; 0 where bytes are missing and a message begins right behind them.
        bytes: u64,
        /// Why the search for a header began.
        why: Why<Fault>,
    },
    /// A message that does not end: the stream ended, or bytes of it are missing.
    Unfinished {
        /// How many of its bytes came.
        held: usize,
        /// How many it has; `None` when even its header is not whole.
        length: Option<usize>,
    },
}

/// Why a header has to be searched for.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum Why<Fault> {
    /// The recording begins in the middle of the stream.
    #[error("the recording begins in the middle of the stream")]
    Middle,
    /// Bytes of the stream are missing.
    #[error("{0} bytes of the stream are missing")]
    Gap(u64),
    /// A message never ended, and others stand in what would be its bytes: its length is wrong.
    #[error("a header announces {length} bytes, {held} follow, and other messages stand among them")]
    Swallowed {
        /// Bytes of the message, header included, as announced.
        length: usize,
        /// Bytes that came.
        held: usize,
    },
    /// Too many bytes of messages that have begun are held.
    #[error("too many messages are open at once")]
    Crowded,
    /// What should have been a header is none.
    #[error("{0}")]
    Fault(Fault),
}
