//! What can be wrong with one line, record or block; made cheaply, put into words only for the places that are kept.

use std::fmt;

/// Text from a log, shown in a message: short, and with control bytes made visible.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Shown<'a>(pub(crate) &'a [u8]);

/// Bytes of a cell that a message repeats.
const SHOWN_BYTES: usize = 40;

impl fmt::Display for Shown<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let cut = &self.0[..self.0.len().min(SHOWN_BYTES)];
        let dots = if cut.len() < self.0.len() { "..." } else { "" };
        let text = String::from_utf8_lossy(cut);
        f.write_str("\"")?;
        for letter in text.chars() {
            if letter.is_control() {
                write!(f, "\\x{:02X}", u32::from(letter))?;
            } else {
                write!(f, "{letter}")?;
            }
        }
        write!(f, "{dots}\"")
    }
}

/// One flaw of a log.
#[derive(Debug, Clone, Copy, thiserror::Error)]
pub(crate) enum Flaw<'a> {
    // Records.
    #[error("the record has {has} bytes, and {what} has at least {least}; it is skipped")]
    RecordShort { what: &'static str, has: usize, least: usize },
    #[error("only {captured} of {original} bytes of the frame were recorded; raise the recorder's packet size limit")]
    FrameCut { captured: u32, original: u32 },
    #[error("{captured} bytes are recorded of a frame that is said to have {original}")]
    FrameGrown { captured: u32, original: u32 },
    #[error("the record says {told} data bytes and holds {held}")]
    DataMissing { told: usize, held: usize },
    #[error("the record says {0} data bytes, and a classic CAN frame has at most 8")]
    ClassicTooLong(usize),
    #[error("the record says {0} data bytes, which no CAN FD frame can have")]
    FdLength(usize),
    #[error("the record is a CAN FD frame with the remote flag, and CAN FD has no remote frames")]
    FdRemote,
    #[error(
        "the identifier word {0:08X} has bits above the 11 of a standard identifier and no flag for an extended one"
    )]
    IdentifierWord(u32),
    #[error("a CAN XL record of {0} bytes, and it needs 13 to 2060")]
    XlLength(usize),
    #[error("a CAN XL record says {told} data bytes and holds {held}")]
    XlDataMissing { told: usize, held: usize },
    #[error("the record is of revision {0} of the LIN layout, and only revision 1 is published")]
    LinRevision(u8),
    #[error("the record says message type {0}, and LIN has only frames (0) and events (3)")]
    LinMessage(u8),
    #[error("there are {0} data bytes, and a LIN frame has at most 8")]
    LinLength(usize),
    #[error("the record says type {0}, and FlexRay has only frames (1) and symbols (2)")]
    FlexRayRecord(u8),

    // Containers.
    #[error("{what}; {skipped} {} skipped up to {until}", if *skipped == 1 { "byte is" } else { "bytes are" })]
    Unreadable { what: Implausible, skipped: u64, until: &'static str },
    #[error("the packet belongs to interface {0}, which the log does not describe")]
    NoInterface(u32),
    #[error("the time stamp lies outside the years that can be told (1677 to 2262)")]
    TimeOutOfRange,
    #[error("a packet block has {0} bytes inside, too few for any packet")]
    PacketShort(usize),
    #[error("the block says {told} packet bytes and has room for {room}")]
    PacketLength { told: u32, room: usize },
    #[error("a description of an interface has {0} bytes, and it needs at least 8")]
    InterfaceShort(usize),
    #[error("a block of names has something else inside; it may have been a packet")]
    NotNames,
    #[error("more than {0} interfaces are described; this one is left out")]
    TooManyInterfaces(usize),
    #[error("a section of version {major}.{minor}, and only 1.x can be read; its packets are skipped")]
    SectionVersion { major: u16, minor: u16 },

    // Lines.
    #[error("the line is longer than {0} KiB; it is skipped")]
    LineTooLong(usize),
    #[error("the line holds NUL bytes; perhaps the recorder lost power before it closed the file")]
    Nul,
    #[error("a cell begins with a quote that never ends on this line")]
    OpenQuote,
    #[error("the line has {has} cells, and {what} is cell {wanted}")]
    CellMissing { what: &'static str, wanted: usize, has: usize },
    #[error(
        "the line has {has} fields and the header has {headings}; are the data bytes set apart by {delimiter}? then give \
         each its own heading, b0 to b7, and say --columns 'data=b0..b7:hex'"
    )]
    CellsTooMany { has: usize, headings: usize, delimiter: &'static str },
    #[error("{what} {cell} was rewritten by a spreadsheet; export the column as text")]
    Spreadsheet { what: &'static str, cell: Shown<'a> },
    #[error("{what} is empty")]
    CellEmpty { what: &'static str },
    #[error("{what} {cell} is not {wanted}")]
    Cell { what: &'static str, cell: Shown<'a>, wanted: &'static str },
    #[error("id {0} is larger than 29 bits can be (1FFFFFFF)")]
    IdTooLarge(Shown<'a>),
    #[error("id {0} is larger than 7FF, and the line says that it is not extended")]
    IdNotExtended(Shown<'a>),
    #[error("id {0} has no 0x in front, and the lines before it do")]
    IdWithoutPrefix(Shown<'a>),
    #[error("data {0} has an odd number of hex digits")]
    OddDigits(Shown<'a>),
    #[error("data {cell} has more than {most} bytes")]
    DataTooLong { cell: Shown<'a>, most: usize },
    #[error("there are {0} data bytes, which neither a CAN nor a CAN FD frame can have")]
    DataLength(usize),
    #[error("there are {0} data bytes, and a FlexRay frame has whole words of two, 254 at most")]
    FlexRayLength(usize),
    #[error("id {id} is not the one of the protected identifier {pid}")]
    IdNotProtected { id: Shown<'a>, pid: Shown<'a> },
    #[error("data byte {0} is empty, and later ones are not")]
    DataGap(usize),
    #[error("the line says {told} data bytes and holds {held}{hint}")]
    LengthDisagrees { told: u64, held: usize, hint: &'static str },
    #[error("a remote frame carries no data, and there are {0} bytes")]
    RemoteData(usize),
    #[error("the log itself marks the checksum as wrong ({0})")]
    MarkedWrong(Shown<'a>),
    #[error("more than {0} different channel names; is this column the channel?")]
    TooManyChannels(usize),
    #[error("the line does not fit the pattern: {wanted} was expected at character {at}")]
    Pattern { wanted: Shown<'a>, at: usize },
    #[error("the line does not fit the pattern: no {wanted} stands behind {{{field}}}, which begins at character {at}")]
    PatternBehind { wanted: Shown<'a>, field: &'static str, at: usize },
    #[error("the line does not fit the pattern: it goes on at character {at}, where the pattern ends")]
    PatternEnded { at: usize },
}

/// Why a place in a packet file cannot be a record or block.
#[derive(Debug, Clone, Copy, thiserror::Error)]
pub(crate) enum Implausible {
    #[error("a block says that it has {0} bytes, which no block can have")]
    BlockLength(u32),
    #[error("a block says at its start that it has {start} bytes, and {end} at its end")]
    BlockTrailer { start: u32, end: u32 },
    #[error("a block says that it has {told} bytes, and the log has {left} more")]
    BlockBeyondEnd { told: u32, left: usize },
    #[error("a section begins with the byte-order mark {0:08X}")]
    ByteOrderMark(u32),
    #[error("the log does not begin with a section")]
    NoSection,
    #[error("a record says that it has {captured} of {original} bytes, which no record can have")]
    RecordLength { captured: u32, original: u32 },
    #[error("a record says that it has {captured} bytes, and one of this link type has at most {most}")]
    RecordTooLong { captured: u32, most: u32 },
    #[error("a record says that it has {told} bytes, and the log has {left} more")]
    RecordBeyondEnd { told: u32, left: usize },
    #[error("a record says that it has {0} bytes, and no other record stands behind them")]
    Doubtful(u32),
    #[error("the fraction of a second {0} is a second or more")]
    Fraction(u32),
}

impl Implausible {
    /// Whether the piece would be whole if the log went on.
    pub(crate) fn is_beyond_end(self) -> bool {
        matches!(self, Self::BlockBeyondEnd { .. } | Self::RecordBeyondEnd { .. })
    }
}
