//! What a message looks like.

use std::ops::Range;

use super::{Addressing, TelegramForm, UartFault, kline};

/// What the messages of a network look like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Form {
    /// The headers of ISO 14230-2 and ISO 9141-2; the format byte tells which.
    Kline,
    /// Given by parameters.
    Telegram(TelegramForm),
}

/// The parts of a message.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Parts {
    /// How a K-line message is addressed; `None` for other forms.
    pub addressing: Option<Addressing>,
    /// Who sends, where the message says.
    pub source: Option<u8>,
    /// Who is meant, where the message says.
    pub target: Option<u8>,
    /// Which bytes are the data.
    pub data: Range<usize>,
    /// The last byte.
    pub check: Check,
}

/// What the check byte says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Check {
    /// The form has none.
    Absent,
    /// It is what the others make.
    Right,
    /// It is not.
    Wrong {
        /// The byte found.
        found: u8,
        /// The byte that should be there.
        computed: u8,
    },
}

/// What the first bytes of a message tell of its length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Declared {
    /// It takes this many to know.
    Needs(usize),
    /// All of them, check byte included.
    Length(usize),
    /// Nothing: the pause behind it tells. It has at least so many.
    ByPause(usize),
}

/// The longest message of any form: a size byte counts 255 more behind byte 255.
pub(super) const MOST_BYTES: usize = 512;

impl Form {
    /// Takes one whole message apart. A wrong check byte is told in the parts.
    ///
    /// # Errors
    /// There are too few bytes, or more than the message declares, or it declares a length that none can have.
    pub fn read(&self, bytes: &[u8]) -> Result<Parts, UartFault> {
        let held = bytes.len();
        match self.declared(bytes)? {
            Declared::Needs(wanted) => Err(UartFault::TooShort { held, wanted }),
            Declared::Length(wanted) | Declared::ByPause(wanted) if held < wanted => {
                Err(UartFault::TooShort { held, wanted })
            }
            Declared::Length(length) if held > length => Err(UartFault::Trailing { bytes: held - length }),
            _ => Ok(match self {
                Self::Kline => kline::parts(bytes),
                Self::Telegram(form) => form.parts(bytes),
            }),
        }
    }

    pub(super) fn declared(&self, bytes: &[u8]) -> Result<Declared, UartFault> {
        match self {
            Self::Kline => kline::declared(bytes),
            Self::Telegram(form) => form.declared(bytes),
        }
    }

    /// Whether a message may begin like this where it is not known that one does: the rarer headers are left out there.
    pub(super) fn is_likely(&self, bytes: &[u8]) -> bool {
        match self {
            Self::Kline => kline::is_likely(bytes),
            Self::Telegram(_) => true,
        }
    }
}

impl Check {
    /// The check byte `found` behind bytes that make `computed`.
    pub(super) fn of(found: u8, computed: u64) -> Self {
        let computed = computed as u8;
        if found == computed { Self::Right } else { Self::Wrong { found, computed } }
    }
}
