//! The view of one logged frame, and the words for where it stood in its log.

use std::fmt;

use wirelore_bits::payload_lengths;

use crate::medium::Medium;

/// The channel of a frame: an index into [`Recording::channels`](crate::Recording::channels).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Channel(pub u16);

/// What a log says of one of its channels.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChannelInfo {
    /// The interface name or the text of the channel column; empty when the log names none.
    pub name: String,
}

/// What kind of record a frame is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// A frame that carries data.
    Data,
    /// A remote frame: it asks for data and carries none.
    Remote,
    /// A message of the recording controller about an error it saw; no frame on the wire. The identifier holds the error's classes.
    Error,
    /// A header that nobody answered (LIN).
    Unanswered,
    /// A frame that was damaged on the wire: the recorder says so, or its check sequence; see [`Medium::faults`].
    Faulty,
    /// A frame that says that its sender has nothing to say (FlexRay null frame).
    Null,
    /// Something on the wire that is no frame: a wake-up, a network that falls asleep, a symbol. The identifier tells which: the code
    /// of a LIN event in the link-type registry (B0B00001 told to sleep, B0B00002 asleep after silence, B0B00004 a wake-up), or the
    /// length of a FlexRay symbol in bits.
    Signal,
}

/// One frame of a recording; the payload stays in the reader's buffer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Frame<'a> {
    /// Time in nanoseconds, since 1970 or since the start of the recording as the log has it; `None` when it tells none.
    pub time_ns: Option<i64>,
    /// The channel it was seen on.
    pub channel: Channel,
    /// The identifier without flags. CAN: 0..=0x7FF, or 0..=0x1FFF_FFFF when `extended`; other networks: see [`Medium`].
    pub id: u32,
    /// Whether the identifier has 29 bits.
    pub extended: bool,
    /// What kind of record it is.
    pub kind: Kind,
    /// Whether it is a CAN FD frame.
    pub fd: bool,
    /// Whether the data phase of a CAN FD frame was faster (the BRS bit).
    pub bit_rate_switch: bool,
    /// Whether the sender of a CAN FD frame was error passive (the ESI bit).
    pub error_state: bool,
    /// The data length code, 0..=15, when the log tells it.
    pub dlc: Option<u8>,
    /// What kind of network it is from, and what its header says beside the identifier.
    pub medium: Medium,
    /// The data bytes.
    pub payload: &'a [u8],
    /// Where the frame stands in the log.
    pub place: PlaceInLog,
}

impl<'a> Frame<'a> {
    /// A data frame with the given time, channel, identifier and bytes: CAN FD where the bytes are more than eight.
    ///
    /// The identifier counts as extended when it does not fit into 11 bits.
    #[must_use]
    pub fn data(time_ns: Option<i64>, channel: Channel, id: u32, payload: &'a [u8]) -> Self {
        Self {
            time_ns,
            channel,
            id,
            extended: id > STANDARD_ID_MAX,
            kind: Kind::Data,
            fd: payload.len() > CLASSIC_BYTES_MAX,
            bit_rate_switch: false,
            error_state: false,
            dlc: dlc_of_length(payload.len()),
            medium: Medium::Can,
            payload,
            place: PlaceInLog::Line(0),
        }
    }
}

/// Where something stands in a log.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlaceInLog {
    /// A line of a text, counted from 1.
    Line(u64),
    /// A block (pcapng) or a record (pcap).
    Block {
        /// Counted from 1.
        number: u64,
        /// Where it begins, in bytes from the start of the uncompressed log.
        offset: u64,
    },
}

impl PlaceInLog {
    /// The place, if it was counted from the line or block with this number on.
    pub(crate) fn behind(self, before: u64) -> Self {
        match self {
            Self::Line(number) => Self::Line(number + before),
            Self::Block { number, offset } => Self::Block { number: number + before, offset },
        }
    }
}

impl fmt::Display for PlaceInLog {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Line(number) => write!(f, "line {number}"),
            Self::Block { number, offset } => write!(f, "block {number} at byte {offset}"),
        }
    }
}

/// The largest 11-bit identifier.
pub(crate) const STANDARD_ID_MAX: u32 = 0x7FF;
/// The largest 29-bit identifier.
pub(crate) const EXTENDED_ID_MAX: u32 = 0x1FFF_FFFF;
/// The most data bytes of a classic frame.
pub(crate) const CLASSIC_BYTES_MAX: usize = 8;
/// The most data bytes of a CAN FD frame.
pub(crate) const FD_BYTES_MAX: usize = 64;
/// The most data bytes of a CAN XL frame.
pub(crate) const XL_BYTES_MAX: usize = 2048;

/// The CAN FD data length code (0..=15) that stands for `length_bytes`; `None` where no code does.
#[inline]
pub(crate) fn dlc_of_length(length_bytes: usize) -> Option<u8> {
    u8::try_from(length_bytes).ok().and_then(payload_lengths::can_fd_dlc)
}

/// A frame whose payload is still a range of its reader's buffer: what readers pass on inside the crate.
#[derive(Debug, Clone)]
pub(crate) struct Found {
    pub(crate) time_ns: Option<i64>,
    pub(crate) channel: Channel,
    pub(crate) id: u32,
    pub(crate) extended: bool,
    pub(crate) kind: Kind,
    pub(crate) fd: bool,
    pub(crate) bit_rate_switch: bool,
    pub(crate) error_state: bool,
    pub(crate) dlc: Option<u8>,
    pub(crate) medium: Medium,
    pub(crate) payload: std::ops::Range<usize>,
    pub(crate) place: PlaceInLog,
}

impl Found {
    /// The public view, with the payload lent out of `buffer`.
    pub(crate) fn lend<'a>(&self, buffer: &'a [u8]) -> Frame<'a> {
        Frame {
            time_ns: self.time_ns,
            channel: self.channel,
            id: self.id,
            extended: self.extended,
            kind: self.kind,
            fd: self.fd,
            bit_rate_switch: self.bit_rate_switch,
            error_state: self.error_state,
            dlc: self.dlc,
            medium: self.medium,
            payload: buffer.get(self.payload.clone()).unwrap_or_default(),
            place: self.place,
        }
    }
}
