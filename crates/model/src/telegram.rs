//! What the messages of single-wire networks look like.

use serde::{Deserialize, Serialize};

use crate::Nanoseconds;

/// The form of the messages of a `uart` network: which bytes around the data say what. Bytes count from 0; the data begins behind the
/// last byte that has a meaning here.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Telegram {
    /// The byte that says who sends.
    pub source_byte: Option<u8>,
    /// The byte that says who is meant.
    pub target_byte: Option<u8>,
    /// The byte that says how long the message is; without one, the pause behind it ends a message.
    pub size: Option<TelegramSize>,
    /// What the last byte is.
    pub check: Option<TelegramCheck>,
    /// The longest pause between two bytes of a message; `None`: that of ISO 14230-2.
    pub gap: Option<Nanoseconds>,
}

/// How a message says its size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TelegramSize {
    /// The byte that says it.
    pub byte: u8,
    /// The first byte that it counts; it counts all from there on.
    pub counts_from: u8,
}

/// A check byte over all bytes before it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TelegramCheck {
    /// Their exclusive or.
    Xor,
    /// Their sum, modulo 256.
    Sum,
}
