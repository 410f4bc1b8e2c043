//! What can be wrong with a frame or a message.

use super::reassembler::Conversation;

/// Something that went wrong, and where.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fault<K> {
    /// The conversation.
    pub conversation: Conversation<K>,
    /// The time of the frame that showed it; of the last frame that was taken where the log ended.
    pub time_ns: Option<i64>,
    /// Frames that were taken for the message that is given up because of it, its first one among them. 0 where no message is
    /// given up.
    pub frames: u32,
    /// What it is.
    pub kind: FaultKind,
}

/// What went wrong. Positions count the frames of a message from 0, the first frame; so consecutive frame 1 has index 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
#[non_exhaustive]
pub enum FaultKind {
    /// No byte that says what the frame is.
    #[error("the frame has {found} bytes, and none says what it is")]
    FrameEmpty {
        /// Bytes of the frame.
        found: usize,
    },
    /// No frame of CAN or CAN FD is that long.
    #[error("the frame has {found} bytes, and a frame of CAN FD has at most 64")]
    FrameTooLong {
        /// Bytes of the frame.
        found: usize,
    },
    /// A type that the standard keeps for later.
    #[error("the frame is of type {number}, which ISO 15765-2 reserves")]
    TypeReserved {
        /// The type, 4 to 15.
        number: u8,
    },
    /// The length of a single frame is none that it can have.
    #[error("a single frame says {announced} bytes, and it can carry {least} to {most}")]
    SingleLength {
        /// The length it says.
        announced: usize,
        /// The least that a frame of this length carries.
        least: usize,
        /// The most that fits behind the length.
        most: usize,
    },
    /// A single frame longer than 8 bytes with its length where only short ones have it.
    #[error(
        "a single frame of {frame_bytes} bytes has its length in the first byte, and beyond 8 bytes it has a byte of its own"
    )]
    SingleWithoutEscape {
        /// Bytes of the frame.
        frame_bytes: usize,
    },
    /// A first frame that is not full.
    #[error("a first frame has {found} bytes, and it has at least 8")]
    FirstCut {
        /// Bytes of the frame.
        found: usize,
    },
    /// A first frame for a message that needs none.
    #[error("a first frame announces {announced} bytes, and up to {most} go into a single frame of its length")]
    FirstFitsSingle {
        /// The length it announces.
        announced: u32,
        /// What a single frame carries.
        most: usize,
    },
    /// A length of 32 bits that fits 12.
    #[error("a first frame announces {announced} bytes as a number of 32 bits, and up to 4095 are announced in 12")]
    FirstEscapeNeedless {
        /// The length it announces.
        announced: u32,
    },
    /// A message that is not put together because it is too long.
    #[error(
        "a first frame announces {announced} bytes, and messages of at most {most} are put together; raise the bound if it is right"
    )]
    TooLong {
        /// The length it announces.
        announced: u32,
        /// The bound, [`Rules::most_bytes`](super::Rules::most_bytes).
        most: u32,
    },
    /// Consecutive frames are missing.
    #[error(
        "frame {index} of the message has number {found}, and {expected} was due: frames were lost or changed places"
    )]
    Lost {
        /// The frame's index in the message, had nothing been lost.
        index: u32,
        /// The number that was due, 0 to 15.
        expected: u8,
        /// The number it has.
        found: u8,
    },
    /// The consecutive frame before came again.
    #[error("the consecutive frame with number {number} came twice where frame {index} of the message was due")]
    Repeated {
        /// The index of the frame that was due.
        index: u32,
        /// The number, 0 to 15.
        number: u8,
    },
    /// A consecutive frame, and nothing that it goes on with.
    #[error("a consecutive frame with number {number} came, and no message had begun")]
    NothingBegun {
        /// The number, 0 to 15.
        number: u8,
    },
    /// A consecutive frame of another length than the first frame.
    #[error("frame {index} of the message has {found} bytes, and {least} to {most} are right there")]
    ConsecutiveLength {
        /// The frame's index in the message.
        index: u32,
        /// Bytes of the frame.
        found: usize,
        /// The least it may have: the length of the first frame, less for the last one.
        least: usize,
        /// The length of the first frame.
        most: usize,
    },
    /// A new message began before this one was whole.
    #[error("another message began after {received} of {announced} bytes")]
    BrokenOff {
        /// Bytes that had come.
        received: u32,
        /// Bytes that were announced.
        announced: u32,
    },
    /// The next frame came too late, or something else came in its place.
    #[error("frame {index} of the message was not there after {} ms, and {} ms is the longest wait", waited_ns / 1_000_000, limit_ns / 1_000_000)]
    TimedOut {
        /// The index of the frame that was due.
        index: u32,
        /// Time since the frame before, in nanoseconds.
        waited_ns: i64,
        /// The longest time allowed.
        limit_ns: i64,
    },
    /// A flow control without all of its bytes.
    #[error("a flow control has {found} of its 3 bytes")]
    FlowControlCut {
        /// Bytes that are there, without the address.
        found: usize,
    },
    /// A flow control that says what the standard does not know.
    #[error("a flow control has status {status}, which ISO 15765-2 reserves")]
    FlowStatusReserved {
        /// The status, 3 to 15.
        status: u8,
    },
    /// The receiver cannot hold the message.
    #[error("the receiver answered that {announced} bytes are more than it can hold")]
    Overflow {
        /// Bytes that were announced.
        announced: u32,
    },
    /// Too many conversations at once.
    #[error(
        "more than {most} messages were under way at once, and this one was silent for longest, with {received} of {announced} bytes"
    )]
    PushedOut {
        /// The number that is kept.
        most: usize,
        /// Bytes that had come.
        received: u32,
        /// Bytes that were announced.
        announced: u32,
    },
    /// The log ended first.
    #[error("the log ends after {received} of {announced} bytes")]
    Unfinished {
        /// Bytes that had come.
        received: u32,
        /// Bytes that were announced.
        announced: u32,
    },
}
