//! How a log is to be read, where it does not say so itself.

use crate::text::{ColumnMap, LinePattern};

/// The layout of a log's content.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// The classic packet file with its 24-byte header.
    Pcap,
    /// The block-structured packet file.
    Pcapng,
    /// Lines of text.
    Text,
}

/// The byte order of the identifier word in link type 227.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum IdentifierOrder {
    /// Big-endian, as the public registry has it.
    #[default]
    AsPublished,
    /// The other way round, as some recordings hold it.
    Swapped,
}

/// How to read a log; the default leaves everything to what the log says of itself.
#[derive(Debug, Clone, Default)]
pub struct Options {
    /// Which column of a delimited text is what; columns left out are known by their headings.
    pub columns: Option<ColumnMap>,
    /// The pattern of each line; with it the text has no header line.
    pub line: Option<LinePattern>,
    /// The byte order of identifiers in packet files.
    pub identifiers: IdentifierOrder,
    /// The layout; `None` recognises it by the content, never by the file's name.
    pub format: Option<Format>,
}
