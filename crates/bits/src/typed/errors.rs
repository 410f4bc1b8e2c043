//! What can be wrong with a payload, and with a frame that is to become one.

use core::fmt;

/// A payload ends before everything that its frame must have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooShort {
    /// Bytes that are needed.
    pub needed_bytes: usize,
    /// Bytes that are there.
    pub found_bytes: usize,
}

impl fmt::Display for TooShort {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { needed_bytes, found_bytes } = self;
        write!(f, "the frame needs {needed_bytes} bytes and the payload has {found_bytes}")
    }
}

impl core::error::Error for TooShort {}

/// What a checksum or a protection says against a payload.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Damage {
    /// A checksum does not fit.
    Sum {
        /// The signal that holds it, by its name in the description.
        signal: &'static str,
        /// What the payload's bytes give.
        expected: u64,
        /// What the payload says.
        found: u64,
    },
    /// A protected message tells another length than it has.
    Length {
        /// What it tells, in bytes.
        told: u64,
        /// What it has.
        is: u64,
    },
    /// A protected message has the data id of another one.
    DataId {
        /// What it should have.
        expected: u32,
        /// What it has.
        found: u32,
    },
    /// A count that the protection's profile does not have.
    NotACount {
        /// The count.
        found: u32,
    },
    /// The payload ends before the bytes that are covered.
    TooShort,
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Sum { signal, expected, found } => {
                write!(f, "the checksum `{signal}` is {found:#X}, and the bytes give {expected:#X}")
            }
            Self::Length { told, is } => write!(f, "the message tells {told} bytes and has {is}"),
            Self::DataId { expected, found } => {
                write!(f, "the message has data id {found:#X}, and {expected:#X} was expected")
            }
            Self::NotACount { found } => write!(f, "the protection's profile has no count {found}"),
            Self::TooShort => f.write_str("the payload ends before the bytes that are covered"),
        }
    }
}

impl core::error::Error for Damage {}

/// Why a frame cannot become a payload.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotEncoded {
    /// A field is larger than its bits, by its signal's name in the description.
    DoesNotFit(&'static str),
    /// The signal says another number of bytes or elements than there are.
    OtherCount(&'static str),
    /// The selectors ask for another page than the one that is given.
    OtherPage,
    /// A field without a value has one with a value behind it that the payload reaches.
    Gap(&'static str),
    /// The room is too small.
    Room(TooShort),
    /// The protection cannot be written: the count is none of its profile's, or its length field has no room for the length.
    Protection,
}

impl fmt::Display for NotEncoded {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::DoesNotFit(signal) => write!(f, "the value of `{signal}` does not fit in its bits"),
            Self::OtherCount(signal) => write!(f, "`{signal}` says another number than there are"),
            Self::OtherPage => f.write_str("the selectors ask for another page than the one that is given"),
            Self::Gap(signal) => write!(f, "`{signal}` has no value, and the payload reaches beyond it"),
            Self::Room(short) => short.fmt(f),
            Self::Protection => f.write_str("the end-to-end protection cannot hold the count or the length"),
        }
    }
}

impl core::error::Error for NotEncoded {}

impl From<TooShort> for NotEncoded {
    fn from(short: TooShort) -> Self {
        Self::Room(short)
    }
}
