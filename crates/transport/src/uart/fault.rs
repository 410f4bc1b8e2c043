//! What can be wrong with the bytes of a message.

/// Why bytes are no message.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum UartFault {
    /// Bytes are missing.
    #[error("the message has {held} bytes and needs {wanted}")]
    TooShort {
        /// Bytes that are there.
        held: usize,
        /// Bytes that it has at least.
        wanted: usize,
    },
    /// Bytes are left over.
    #[error("{bytes} bytes stand behind the message")]
    Trailing {
        /// How many.
        bytes: usize,
    },
    /// The last byte is not what the others make.
    #[error("the check byte is {found:#04X}, and the bytes before it make {computed:#04X}")]
    CheckWrong {
        /// The byte found.
        found: u8,
        /// The byte that should be there.
        computed: u8,
    },
    /// The length byte says that there is no data, or less than the header itself.
    #[error("the length byte says {told}, and it says at least {least} where a message begins")]
    LengthTooSmall {
        /// What it says.
        told: u8,
        /// The smallest length that is possible.
        least: usize,
    },
    /// More bytes without a pause than any message has.
    #[error("more than {most} bytes follow each other without a pause, and no message is that long")]
    TooLong {
        /// Bytes of the longest message.
        most: usize,
    },
    /// Where messages are searched for, none begins like this.
    #[error("no message begins like this")]
    NoStart,
}
