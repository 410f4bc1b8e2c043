//! The principal type: a table that has been looked at once.

use core::fmt;

use crate::find::Network;
use crate::frame::Frame;
use crate::layout::{HEAD_BYTES, MAGIC, SECTIONS, Section, VERSION, checksum};

/// A description as a flat table.
///
/// Only a whole and undamaged table becomes one. Whatever it says, reading by it does not panic: what leads nowhere is not there.
#[derive(Debug, Clone, Copy)]
pub struct Lorec<'a> {
    bytes: &'a [u8],
}

/// Why some bytes are no table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LorecError {
    /// They do not begin like one.
    NoTable,
    /// The layout of another version.
    Version {
        /// The version.
        found: u32,
    },
    /// Another length than the table says.
    Length {
        /// How many bytes there are.
        found: usize,
        /// How many there should be.
        needed: u32,
    },
    /// A checksum that does not fit.
    Damaged {
        /// What the bytes make.
        found: u32,
        /// What the table says.
        stored: u32,
    },
    /// A section that does not lie inside.
    Section {
        /// Which one, from 0.
        number: usize,
    },
}

impl fmt::Display for LorecError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoTable => f.write_str("this does not begin like a .lorec table; compile one from the description"),
            Self::Version { found } => {
                write!(f, "this .lorec table has the layout {found}, and this program reads {VERSION}; compile it anew")
            }
            Self::Length { found, needed } => {
                write!(f, "this .lorec table has {found} bytes and says that it has {needed}; copy it whole")
            }
            Self::Damaged { found, stored } => write!(
                f,
                "this .lorec table is damaged: its bytes have the checksum {found:08X} and should have {stored:08X}; compile it anew"
            ),
            Self::Section { number } => {
                write!(f, "section {number} of this .lorec table does not lie inside it; compile it anew")
            }
        }
    }
}

impl core::error::Error for LorecError {}

impl<'a> Lorec<'a> {
    /// The table in these bytes. Looks at every byte once, for the checksum.
    ///
    /// # Errors
    /// They are none, or not a whole and undamaged one of this version.
    pub fn new(bytes: &'a [u8]) -> Result<Self, LorecError> {
        let table = Self { bytes };
        let head = |at| table.word(at).ok_or(LorecError::NoTable);
        if !bytes.starts_with(&MAGIC) {
            return Err(LorecError::NoTable);
        }
        let found = head(8)?;
        if found != VERSION {
            return Err(LorecError::Version { found });
        }
        let needed = head(12)?;
        if bytes.len() != needed as usize || bytes.len() < HEAD_BYTES {
            return Err(LorecError::Length { found: bytes.len(), needed });
        }
        let (found, stored) = (checksum(bytes), head(16)?);
        if found != stored {
            return Err(LorecError::Damaged { found, stored });
        }
        for (number, section) in Section::ALL.into_iter().enumerate() {
            let (start, count) = table.section(section).ok_or(LorecError::Section { number })?;
            let record_bytes = 4 * section.words().max(1);
            let bytes_in_all = if section == Section::Text { Some(count) } else { count.checked_mul(record_bytes) };
            let end = bytes_in_all.and_then(|inside| start.checked_add(inside));
            if start < HEAD_BYTES || end.is_none_or(|end| end > bytes.len()) {
                return Err(LorecError::Section { number });
            }
        }
        Ok(table)
    }

    /// The networks, in the order of the description.
    pub fn networks(&self) -> impl Iterator<Item = Network<'a>> + use<'a> {
        let table = *self;
        (0..table.count(Section::Networks)).filter_map(move |index| Network::at(table, index))
    }

    /// The network with this name.
    #[must_use]
    pub fn network(&self, name: &str) -> Option<Network<'a>> {
        self.networks().find(|network| network.name() == name)
    }

    /// The frames, in the order of the description.
    pub fn frames(&self) -> impl Iterator<Item = Frame<'a>> + use<'a> {
        let table = *self;
        (0..table.count(Section::Frames)).filter_map(move |index| Frame::at(table, index))
    }

    /// The frame with this name.
    #[must_use]
    pub fn frame(&self, name: &str) -> Option<Frame<'a>> {
        self.frames().find(|frame| frame.name() == name)
    }

    /// A record of a section; its number of words is that of the section.
    #[inline]
    pub(crate) fn record<const N: usize>(&self, section: Section, index: u32) -> Option<[u32; N]> {
        debug_assert_eq!(N, section.words());
        let (start, count) = self.section(section)?;
        let index = index as usize;
        if index >= count {
            return None;
        }
        let bytes = self.bytes.get(start + 4 * N * index..)?.get(..4 * N)?;
        let mut words = [0; N];
        for (word, bytes) in words.iter_mut().zip(bytes.chunks_exact(4)) {
            *word = u32::from_le_bytes(bytes.try_into().ok()?);
        }
        Some(words)
    }

    /// The text at a place of the section of texts.
    pub(crate) fn text(&self, start: u32, length: u32) -> &'a str {
        let text = || {
            let (section, count) = self.section(Section::Text)?;
            let texts = self.bytes.get(section..)?.get(..count)?;
            core::str::from_utf8(texts.get(start as usize..)?.get(..length as usize)?).ok()
        };
        text().unwrap_or_default()
    }

    /// How many records a section has.
    pub(crate) fn count(&self, section: Section) -> u32 {
        self.section(section).map_or(0, |(_, count)| count as u32)
    }

    /// Where a section begins, and how many records it has.
    #[inline]
    fn section(&self, section: Section) -> Option<(usize, usize)> {
        let at = HEAD_BYTES - 8 * SECTIONS + 8 * section as usize;
        Some((self.word(at)? as usize, self.word(at + 4)? as usize))
    }

    #[inline]
    fn word(&self, at: usize) -> Option<u32> {
        Some(u32::from_le_bytes(*self.bytes.get(at..)?.first_chunk()?))
    }
}
