//! TCP: byte streams out of recorded segments.
//!
//! [`Streams`] is responsible for putting the segments of each direction of each connection in order: repeated ones are dropped, early
//! ones wait for those before them, and bytes that were never recorded are told as a [gap](Piece::Gap) with its size. It keeps a state of
//! the caller's beside each stream, so that whoever cuts messages out of it needs no second table.
//!
//! Checksums of segments are not looked at: a recording made on the sending machine has them before the network hardware fills them in.
//!
//! ```
//! use wirelore_transport::tcp::{Limits, Piece, Segment, Streams};
//!
//! let segment = |sequence, payload| Segment { sequence, payload, ..Segment::between("10.0.0.1:40000", "10.0.0.2:13400").unwrap() };
//! let mut streams = Streams::new(Limits::default(), Vec::new());
//! let mut gather = |_: &_, text: &mut Vec<u8>, piece: Piece<'_>| match piece {
//!     Piece::Bytes { bytes, .. } => text.extend_from_slice(bytes),
//!     Piece::Ended(_) => assert_eq!(text, b"one two three"),
//!     _ => {}
//! };
//! for segment in [segment(1, b"one "), segment(9, b"three"), segment(1, b"one "), segment(5, b"two ")] {
//!     streams.feed(None, &segment, &mut gather);
//! }
//! streams.finish(&mut gather);
//! ```

mod stream;
mod streams;

use std::net::{AddrParseError, SocketAddr};

pub use streams::{Limits, Streams};

/// One direction of a connection.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Flow {
    /// Who sends.
    pub from: SocketAddr,
    /// Who receives.
    pub to: SocketAddr,
}

impl Flow {
    /// The other direction.
    #[must_use]
    pub fn reversed(self) -> Self {
        Self { from: self.to, to: self.from }
    }
}

/// What a TCP header tells, and the bytes behind it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Segment<'a> {
    /// Who sends to whom.
    pub flow: Flow,
    /// Number of the first payload byte; of the SYN itself where there is one.
    pub sequence: u32,
    /// The byte that the sender expects next from the other side, where the ACK flag is set.
    pub acknowledged: Option<u32>,
    /// Opens a connection.
    pub syn: bool,
    /// The sender has nothing more to send behind this payload.
    pub fin: bool,
    /// Breaks the connection off.
    pub reset: bool,
    /// The bytes of the stream.
    pub payload: &'a [u8],
}

impl Segment<'_> {
    /// An empty segment between two addresses with ports, sequence number 0.
    ///
    /// # Errors
    /// One of the texts is no address with a port.
    pub fn between(from: &str, to: &str) -> Result<Self, AddrParseError> {
        let flow = Flow { from: from.parse()?, to: to.parse()? };
        Ok(Self { flow, sequence: 0, acknowledged: None, syn: false, fin: false, reset: false, payload: &[] })
    }
}

/// What becomes of a stream.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Piece<'a> {
    /// The stream begins.
    Begun {
        /// Whether its first byte is known; `false` when the recording begins in the middle.
        from_start: bool,
    },
    /// The next bytes.
    Bytes {
        /// Time of the segment that brought them.
        time_ns: Option<i64>,
        /// The bytes.
        bytes: &'a [u8],
    },
    /// Bytes are missing, and will not come.
    Gap {
        /// How many.
        bytes: u64,
    },
    /// Nothing more comes; the caller's state is dropped.
    Ended(End),
}

/// Why a stream ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum End {
    /// Its sender closed it.
    Closed,
    /// One side broke it off.
    Reset,
    /// Another connection between the same ports began.
    Replaced,
    /// There are more streams than the [limit](Limits::streams), and this one was among those silent for longest.
    Crowded,
    /// The recording ended.
    LogEnd,
}

/// What was done with a segment: each is counted as exactly one of these.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Taken {
    /// At least one byte of it was the next of its stream.
    Passed,
    /// It came early and waits for bytes before it.
    Waiting,
    /// All of its bytes had come before.
    Repeated,
    /// It carries no bytes: it opens, confirms, closes or breaks off.
    Control,
}
