//! What can be wrong with a frame or a message.

use super::control::AbortReason;
use super::identifier::EVERYBODY;
use super::reassembler::Conversation;
use super::timers::Timer;

/// Something that went wrong, and where.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fault {
    /// The conversation; its source is who sends the message, not who sent the frame.
    pub conversation: Conversation,
    /// The parameter group of the message, where one is known.
    pub pgn: Option<u32>,
    /// The time of the frame that showed it; of the last frame that was taken where the log ended.
    pub time_ns: Option<i64>,
    /// Frames of the sender that were taken for the message that is given up because of it. 0 where no message is given up.
    pub frames: u32,
    /// What it is.
    pub kind: FaultKind,
}

/// What went wrong. Packets have the numbers that they carry, from 1 on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
#[non_exhaustive]
pub enum FaultKind {
    /// A frame that does not have 8 bytes.
    #[error("the frame has {found} bytes, and each of the transport protocol has 8")]
    FrameLength {
        /// Bytes of the frame.
        found: usize,
    },
    /// A control byte that the standard keeps for later.
    #[error("the control message is of kind {number}, which SAE J1939-21 reserves")]
    ControlReserved {
        /// The control byte.
        number: u8,
    },
    /// A parameter group number that does not fit 18 bits.
    #[error("the control message is about parameter group {pgn}, and the largest is 262143")]
    PgnImpossible {
        /// The number.
        pgn: u32,
    },
    /// A size that no message of this protocol has.
    #[error("the message is said to have {size} bytes, and it can have 9 to 1785")]
    Size {
        /// The size.
        size: u16,
    },
    /// Size and number of packets contradict each other.
    #[error("the message is said to have {size} bytes in {packets} packets, and they need {needed}")]
    PacketsDisagree {
        /// The size.
        size: u16,
        /// The packets it says.
        packets: u8,
        /// The packets that the size needs.
        needed: u8,
    },
    /// A broadcast to one address, or a connection with everybody.
    #[error("a {} cannot be announced to address {destination}", if *destination == EVERYBODY { "connection" } else { "broadcast" })]
    Destination {
        /// The address.
        destination: u8,
    },
    /// A packet, and no message that it belongs to.
    #[error("data packet {number} came, and no message had begun")]
    NothingBegun {
        /// The packet's number.
        number: u8,
    },
    /// An answer, and no connection that it belongs to.
    #[error("an answer came, and no connection was open that it belongs to")]
    NothingToAnswer,
    /// A connection was given up that was not open, as far as the recording tells.
    #[error("a connection was given up that was not open: {reason}")]
    NothingToAbort {
        /// The reason it gives.
        reason: AbortReason,
    },
    /// Packets are missing.
    #[error("data packet {found} came where {expected} was due: packets were lost or changed places")]
    Lost {
        /// The number that was due.
        expected: u8,
        /// The number that came.
        found: u8,
    },
    /// A packet came twice and was not asked for again.
    #[error("data packet {number} came twice, and nobody had asked for it again")]
    Repeated {
        /// The packet's number.
        number: u8,
    },
    /// A packet came after later ones and was not asked for again.
    #[error("data packet {number} came after packet {latest}, and nobody had asked for it again")]
    OutOfOrder {
        /// The packet's number.
        number: u8,
        /// The packet before it.
        latest: u8,
    },
    /// A packet with a number that the message does not have.
    #[error("data packet {number} came, and the message has packets 1 to {packets}")]
    PacketBeyond {
        /// The packet's number.
        number: u8,
        /// The packets of the message.
        packets: u8,
    },
    /// The receiver asks for packets that the message does not have.
    #[error("the receiver asks for packets from {next} on, and the message has packets 1 to {packets}")]
    ClearedBeyond {
        /// The first packet it asks for.
        next: u8,
        /// The packets of the message.
        packets: u8,
    },
    /// The receiver has a packet, and the recording has not.
    #[error("the receiver has packet {missing}, and it is not in the recording")]
    NotRecorded {
        /// The first packet that is missing.
        missing: u8,
    },
    /// The receiver acknowledges another size than was announced.
    #[error("the receiver acknowledges {acknowledged} bytes, and {announced} were announced")]
    AcknowledgeDisagrees {
        /// The size it acknowledges.
        acknowledged: u16,
        /// The size that was announced.
        announced: u16,
    },
    /// One side gave the connection up.
    #[error("the {} gave the connection up: {reason}", if *by_sender { "sender" } else { "receiver" })]
    Aborted {
        /// The reason it gives.
        reason: AbortReason,
        /// Whether it was the sender of the message.
        by_sender: bool,
    },
    /// A new message began before this one was whole.
    #[error("another message began after {received} of {packets} packets")]
    BrokenOff {
        /// Packets that had come.
        received: u8,
        /// The packets of the message.
        packets: u8,
    },
    /// The next frame came too late, or something else came in its place.
    #[error("the message did not go on within {timer}, {} ms: nothing came for {} ms", limit_ns / 1_000_000, waited_ns / 1_000_000)]
    TimedOut {
        /// Which wait was too long.
        timer: Timer,
        /// Time since the frame before, in nanoseconds.
        waited_ns: i64,
        /// The longest time allowed.
        limit_ns: i64,
    },
    /// Too many conversations at once.
    #[error(
        "more than {most} messages were under way at once, and this one was silent for longest, with {received} of {packets} packets"
    )]
    PushedOut {
        /// The number that is kept.
        most: usize,
        /// Packets that had come.
        received: u8,
        /// The packets of the message.
        packets: u8,
    },
    /// The log ended first.
    #[error("the log ends after {received} of {packets} packets")]
    Unfinished {
        /// Packets that had come.
        received: u8,
        /// The packets of the message.
        packets: u8,
    },
}
