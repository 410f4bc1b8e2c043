//! What can be wrong with a part or a message.

/// Something that went wrong, and where.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fault<K> {
    /// The message's key.
    pub key: K,
    /// The time of the part that showed it; of the last part that was taken where the log ended.
    pub time_ns: Option<i64>,
    /// Parts that were taken for the message that is given up because of it. 0 where no message is given up.
    pub parts: u32,
    /// What it is.
    pub kind: FaultKind,
}

/// What went wrong. Parts of a message are counted from 0, as their own numbers count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
#[non_exhaustive]
pub enum FaultKind {
    /// A transfer that is neither a whole message nor a part.
    #[error("the transfer is of sort {number}, and 0 to 3 are messages and their parts")]
    PartUnknown {
        /// The sort (TelID).
        number: u8,
    },
    /// A part without its running number.
    #[error("a part has no bytes, and its first one is its number")]
    PartEmpty,
    /// Parts are missing.
    #[error(
        "a part has number {found}, and part {index} with number {expected} was due: parts were lost or changed places"
    )]
    Lost {
        /// The index of the part that was due.
        index: u32,
        /// The number that was due.
        expected: u8,
        /// The number it has.
        found: u8,
    },
    /// The part before came again.
    #[error("the part with number {number} came twice where part {index} of the message was due")]
    Repeated {
        /// The index of the part that was due.
        index: u32,
        /// The number.
        number: u8,
    },
    /// A first part whose number is not 0.
    #[error("a first part has number {found}, and first parts have 0")]
    FirstNumber {
        /// The number it has.
        found: u8,
    },
    /// A part, and nothing that it goes on with.
    #[error("a part with number {number} came, and no message had begun")]
    NothingBegun {
        /// The number.
        number: u8,
    },
    /// Another message began before this one was whole.
    #[error("another message began after {received} bytes")]
    BrokenOff {
        /// Bytes that had come.
        received: u32,
    },
    /// The message became too long.
    #[error("the message has more than {most} bytes; raise the bound if it is right")]
    TooLong {
        /// The bound, [`Rules::most_bytes`](super::Rules::most_bytes).
        most: u32,
    },
    /// The next part came too late.
    #[error("part {index} of the message was not there after {} ms, and {} ms is the longest wait", waited_ns / 1_000_000, limit_ns / 1_000_000)]
    TimedOut {
        /// The index of the part that was due.
        index: u32,
        /// Time since the part before, in nanoseconds.
        waited_ns: i64,
        /// The longest time allowed.
        limit_ns: i64,
    },
    /// Too many messages at once.
    #[error(
        "more than {most} messages were under way at once, and this one was silent for longest, with {received} bytes"
    )]
    PushedOut {
        /// The number that is kept.
        most: usize,
        /// Bytes that had come.
        received: u32,
    },
    /// The log ended first.
    #[error("the log ends after {received} bytes, before the last part")]
    Unfinished {
        /// Bytes that had come.
        received: u32,
    },
}
