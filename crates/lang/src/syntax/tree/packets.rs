//! What is said of messages on Ethernet and on single-wire networks.

use super::{Integer, Time};
use crate::Spanned;

/// What a message of SOME/IP is for, as its message type says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MessageSort {
    /// `request`
    Request,
    /// `request_no_return`
    RequestNoReturn,
    /// `notification`
    Notification,
    /// `response`
    Response,
    /// `error`
    Error,
}

impl MessageSort {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Request, Self::RequestNoReturn, Self::Notification, Self::Response, Self::Error];

    /// The word of the language.
    #[must_use]
    pub fn word(self) -> &'static str {
        wirelore_model::message_type_word(self.number()).unwrap_or_default()
    }

    /// The message type (AUTOSAR PRS SOME/IP Protocol).
    #[must_use]
    pub fn number(self) -> u8 {
        match self {
            Self::Request => 0x00,
            Self::RequestNoReturn => 0x01,
            Self::Notification => 0x02,
            Self::Response => 0x80,
            Self::Error => 0x81,
        }
    }
}

/// What a network line says of the messages of a `uart` network.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TelegramClauses {
    /// `source byte 0`
    pub source: Option<Integer>,
    /// `target byte 2`
    pub target: Option<Integer>,
    /// `size byte 1 counts from byte 2`
    pub size: Option<Spanned<SizeByte>>,
    /// `xor byte last`
    pub check: Option<Spanned<CheckByte>>,
    /// `gap 20 ms`
    pub gap: Option<Time>,
}

/// `size byte 1 counts from byte 2`
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SizeByte {
    /// The byte that says the size.
    pub byte: Integer,
    /// The first byte that it counts.
    pub counts_from: Integer,
}

/// What the last byte is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CheckByte {
    /// `xor byte last`
    Xor,
    /// `sum byte last`
    Sum,
}
