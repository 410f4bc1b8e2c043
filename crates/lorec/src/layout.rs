//! How a `.lorec` file is laid out, for its writer and its reader.
//!
//! Everything is made of 32-bit words, least significant byte first; numbers of 64 and 128 bits take two and four words, the lower ones
//! first. A file begins with its head:
//!
//! | bytes | what |
//! | --- | --- |
//! | 0..8 | [`MAGIC`] |
//! | 8..12 | [`VERSION`] |
//! | 12..16 | the length of the whole file in bytes |
//! | 16..20 | CRC-32/ISO-HDLC of everything behind these four bytes |
//! | 20.. | for each [`Section`], in order: where it begins (in bytes from the start), and how many records it has |
//!
//! A section is a row of records of [`Section::words`] words each; only [`Section::Text`] is counted in bytes. A text is named by two
//! words, its beginning in that section and its length in bytes; no text at all has the length 0. [`NONE`] stands where there is nothing.
//! What the words of a record are says the section.

use wirelore_bits::typed::Charset;
use wirelore_bits::{Crc, CrcParameters, NumberKind};

/// What a file begins with.
pub const MAGIC: [u8; 8] = *b"\xF1LOREC\r\n";
/// The version of this layout.
pub const VERSION: u32 = 1;
/// Nothing, where a word could name something.
pub const NONE: u32 = u32::MAX;
/// How many bytes stand in front of the sections.
pub const HEAD_BYTES: usize = 20 + 8 * SECTIONS;
/// How many sections there are.
pub const SECTIONS: usize = 15;
/// Set in the identifiers of [`Section::Runs`] that have 29 bits.
pub const EXTENDED: u32 = 1 << 31;

/// The kinds of numbers, by their number in [`content::NUMBER`].
pub const NUMBER_KINDS: [NumberKind; 5] =
    [NumberKind::Unsigned, NumberKind::Signed, NumberKind::SignMagnitude, NumberKind::Float, NumberKind::Bcd];

/// The character sets, by their number in [`content::TEXT`].
pub const CHARSETS: [Charset; 3] = [Charset::Ascii, Charset::Latin1, Charset::Utf8];

/// CRC-32/ISO-HDLC; its table lies in read-only memory.
static CRC: Crc = match Crc::new(CrcParameters {
    width: 32,
    poly: 0x04C1_1DB7,
    init: 0xFFFF_FFFF,
    refin: true,
    refout: true,
    xorout: 0xFFFF_FFFF,
}) {
    Ok(crc) => crc,
    Err(_) => panic!("the parameters are those of the catalogue"),
};

/// The checksum of a whole file: of everything behind the place where it stands.
#[must_use]
pub fn checksum(file: &[u8]) -> u32 {
    CRC.checksum(file.get(20..).unwrap_or_default()) as u32
}

/// The sections, in the order of the head.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Section {
    /// UTF-8, one text behind the other.
    Text,
    /// Name (2), runs of identifiers (first, count), parameter groups (first, count).
    Networks,
    /// First and last identifier, the frame. Of one network in rising order, those of 29 bits ([`EXTENDED`]) behind those of 11; none overlap.
    Runs,
    /// The parameter group, its priority or [`NONE`], the frame, and one bit for each of the 256 source addresses that count (8). Of one network in
    /// rising order of groups; the first one that takes an identifier holds.
    Groups,
    /// Name (2), pages (first, count), switches (first, count), signals (first, count). The first page is the part that is always there.
    Frames,
    /// Signals (first, count), how many bytes a payload needs for all of them, the least length that is stated or [`NONE`], the next switch or
    /// [`NONE`]. Pages and switches are named from the start of their sections.
    Pages,
    /// What kind ([`switch`]), rows (first, count), the page that holds where no row does or [`NONE`], the next switch or [`NONE`], and for an element
    /// the length from which on it is there.
    Switches,
    /// Tests (first, count), the page that holds where all of them pass.
    Rows,
    /// The signal that is looked at, spans (first, count): it passes where its raw value is in one of them.
    Tests,
    /// What kind ([`span`]), both ends (2 each).
    Spans,
    /// Name (2), unit (2), its position among the signals of the description, what kind ([`content`]), three words about its place, the signal that
    /// says its size or [`NONE`], what kind of scaling ([`scale`]), what is scaled with (first, count), classes (first, count).
    Signals,
    /// The positions of the most and the least significant bit of a piece, each 8 times the byte plus the bit.
    Pieces,
    /// N (4), O (4) and D (4) of a formula (raw * N + O) / D.
    Formulas,
    /// A point of a curve: its raw value (2), what follows it ([`mod@line`]), a double (2) or a formula and 0.
    Points,
    /// What runs of raw values are: the first value (2), what kind ([`class`]), a word (2), and for floating-point numbers the last value (2).
    /// Whole numbers count from the least one of their signal, in rising order, and a run reaches to the next one.
    Classes,
}

impl Section {
    /// All of them, in order.
    pub const ALL: [Self; SECTIONS] = [
        Self::Text,
        Self::Networks,
        Self::Runs,
        Self::Groups,
        Self::Frames,
        Self::Pages,
        Self::Switches,
        Self::Rows,
        Self::Tests,
        Self::Spans,
        Self::Signals,
        Self::Pieces,
        Self::Formulas,
        Self::Points,
        Self::Classes,
    ];

    /// How many words a record has; 0 for text.
    #[must_use]
    pub const fn words(self) -> usize {
        match self {
            Self::Text => 0,
            Self::Networks => 6,
            Self::Runs => 3,
            Self::Groups => 11,
            Self::Frames => 8,
            Self::Pages => 5,
            Self::Switches => 6,
            Self::Rows => 3,
            Self::Tests => 3,
            Self::Spans => 5,
            Self::Signals => 15,
            Self::Pieces => 2,
            Self::Formulas => 12,
            Self::Points => 5,
            Self::Classes => 7,
        }
    }
}

/// Kinds of switches.
pub mod switch {
    /// The first row of which all tests pass.
    pub const PAGES: u32 = 0;
    /// One element of a repeated group, which need not be there: it is where the payload is long enough and all tests of its row pass.
    pub const ELEMENT: u32 = 1;
}

/// Kinds of spans.
pub mod span {
    /// Whole numbers, counted from the least one of the signal.
    pub const NUMBERS: u32 = 0;
    /// Bits of a floating-point number.
    pub const BITS: u32 = 1;
    /// Floating-point numbers, as doubles.
    pub const FLOATS: u32 = 2;
}

/// Kinds of signals.
pub mod content {
    /// A number: pieces (first, count), the kind ([`NUMBER_KINDS`](super::NUMBER_KINDS)).
    pub const NUMBER: u32 = 0;
    /// Text: first byte, last byte or [`NONE`](super::NONE), the character set ([`CHARSETS`](super::CHARSETS)).
    pub const TEXT: u32 = 1;
    /// Bytes: first byte, last byte or [`NONE`](super::NONE), 0.
    pub const BYTES: u32 = 2;
}

/// Kinds of scaling.
pub mod scale {
    /// The raw number is the value.
    pub const RAW: u32 = 0;
    /// By one formula.
    pub const FORMULA: u32 = 1;
    /// By a curve: its points.
    pub const CURVE: u32 = 2;
    /// A trouble code.
    pub const TROUBLE_CODE: u32 = 3;
}

/// What follows a point of a curve.
pub mod line {
    /// One value up to the next point.
    pub const LEVEL: u32 = 0;
    /// A formula up to the next point.
    pub const SLOPE: u32 = 1;
    /// Nothing: the end.
    pub const END: u32 = 2;
}

/// What raw values are.
pub mod class {
    /// A reading.
    pub const READING: u32 = 0;
    /// No reading.
    pub const ABSENT: u32 = 1;
    /// Sensor fault.
    pub const FAULT: u32 = 2;
    /// Beyond the ends of the curve.
    pub const BEYOND_CURVE: u32 = 3;
    /// Added where the value is outside its range.
    pub const OUTSIDE: u32 = 1 << 8;
    /// Of floating-point numbers: the ends are bits.
    pub const BITS: u32 = 1 << 9;
    /// Of floating-point numbers: the ends are those of the range of values, and no class.
    pub const RANGE: u32 = 1 << 10;
}
