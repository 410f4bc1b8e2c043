//! Signals: where they sit, what their bits mean, and which values are not readings.

use serde::{Deserialize, Serialize};
use wirelore_bits::e2e::Part;
use wirelore_bits::{Affine, Encoding, Field, NumberKind, Ratio};

use crate::{Label, PageId, Protection, RawSpan, Role, SignalId, StateWord, StatesId, Unit};

/// One signal of a frame.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Signal {
    /// Name, title and notes. An element of an array is named `cell[3]`.
    pub label: Label,
    /// The page it is on; `None`: always there.
    pub page: Option<PageId>,
    /// Where its bits are and how they are read.
    pub content: Content,
    /// From raw number to engineering value.
    pub scaling: Scaling,
    /// The unit of the engineering value.
    pub unit: Option<Unit>,
    /// Words for raw values.
    pub states: Option<States>,
    /// The engineering values that can occur; others are reported, never cut off. (Boxed: few signals have one, and it is large.)
    pub range: Option<Box<ValueRange>>,
    /// Raw values that say "no reading".
    pub absent: Vec<RawSpan>,
    /// Raw values that say "sensor fault".
    pub fault: Vec<RawSpan>,
    /// A duty beyond carrying a value.
    pub role: Role,
    /// How people write its value; for programs it stays a number.
    pub shown: Shown,
}

/// How people write a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shown {
    /// As a decimal number.
    #[default]
    Decimal,
    /// As all of its digits in hexadecimal: `0x01F4`. Only where the raw number, unsigned, is the value, and it has no unit.
    Hexadecimal,
}

/// The bits of a signal and how they are read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Content {
    /// A number of 1 to 64 bits.
    Number {
        /// Where the bits are.
        #[serde(with = "crate::packed::field")]
        field: Field,
        /// How they make a number.
        kind: NumberKind,
    },
    /// Characters.
    Text {
        /// Where the bytes are.
        bytes: ByteSpan,
        /// How the bytes make characters.
        charset: Charset,
        /// The signal whose raw number says how many of the bytes there are; `None`: all of them.
        size: Option<SignalId>,
    },
    /// Bytes that are shown as they are.
    Bytes {
        /// Where the bytes are.
        bytes: ByteSpan,
        /// The signal whose raw number says how many of the bytes there are; `None`: all of them.
        size: Option<SignalId>,
    },
}

/// A run of whole bytes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ByteSpan {
    /// The first byte, counted from 0.
    pub first: u32,
    /// The last byte, not before the first; `None`: to the end of the payload.
    pub last: Option<u32>,
}

/// Character sets of `text` signals.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Charset {
    /// ASCII (ISO 646); other bytes are replaced by U+FFFD.
    Ascii,
    /// ISO 8859-1.
    Latin1,
    /// UTF-8; bytes that are not are replaced by U+FFFD.
    Utf8,
}

/// The way from the raw number to the engineering value.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Scaling {
    /// The raw number is the value.
    Raw,
    /// `(raw * N + O) / D`, exactly.
    Affine(#[serde(with = "crate::packed::affine")] Affine),
    /// Straight lines between points.
    Curve(Curve),
    /// The raw number is a diagnostic trouble code, and its value the text of that: see [`TroubleCode`](crate::TroubleCode).
    TroubleCode,
}

/// A sensor curve: straight lines between points, nothing beyond its ends.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Curve {
    /// At least two points; raw numbers rise strictly.
    pub points: Vec<CurvePoint>,
}

/// A point of a curve.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CurvePoint {
    /// The raw number.
    pub raw: i64,
    /// The engineering value there.
    #[serde(with = "crate::packed::ratio")]
    pub value: Ratio,
}

/// The words for a signal's raw values.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum States {
    /// A table that has a name and may serve several signals.
    Table(StatesId),
    /// Words of this signal's own.
    Own(Vec<StateWord>),
}

/// A least and a greatest engineering value, both inside.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ValueRange {
    /// The least.
    #[serde(with = "crate::packed::ratio")]
    pub low: Ratio,
    /// The greatest, not below `low`.
    #[serde(with = "crate::packed::ratio")]
    pub high: Ratio,
}

impl Signal {
    /// The width of its bits and how they make a number; `None` for text and bytes.
    #[must_use]
    pub fn encoding(&self) -> Option<Encoding> {
        match &self.content {
            Content::Number { field, kind } => Encoding::new(*kind, field.width()).ok(),
            Content::Text { .. } | Content::Bytes { .. } => None,
        }
    }

    /// How many digits its value has in hexadecimal, where it is shown so.
    #[must_use]
    pub fn hexadecimal_digits(&self) -> Option<usize> {
        match (self.shown, &self.content) {
            (Shown::Hexadecimal, Content::Number { field, .. }) => Some(usize::from(field.width()).div_ceil(4)),
            _ => None,
        }
    }

    /// The signal that says how many of its bytes there are.
    #[must_use]
    pub fn size(&self) -> Option<SignalId> {
        match self.content {
            Content::Text { size, .. } | Content::Bytes { size, .. } => size,
            Content::Number { .. } => None,
        }
    }

    /// The protection that it stands for.
    #[must_use]
    pub fn protection(&self) -> Option<&Protection> {
        match &self.role {
            Role::Protection(protection) => Some(protection),
            Role::Value | Role::Counter(_) | Role::Checksum(_) => None,
        }
    }

    /// The bits that it takes beside those of its content: the other parts of a protection's header.
    pub fn more_fields(&self) -> impl Iterator<Item = Field> {
        let parts = self.protection().into_iter().flat_map(Protection::parts);
        parts.filter(|(part, _)| *part != Part::Counter).map(|(_, field)| field)
    }

    /// How many payload bytes must be there for this signal to have a value.
    #[must_use]
    pub fn needed_bytes(&self) -> u32 {
        match &self.content {
            Content::Number { field, .. } => field.needed_bytes(),
            // As far as its own place is known: there may be none of its bytes.
            Content::Text { bytes, size: Some(_), .. } | Content::Bytes { bytes, size: Some(_) } => bytes.first,
            // To the end of the payload, which may come directly in front of it.
            Content::Text { bytes, .. } | Content::Bytes { bytes, .. } => {
                bytes.last.map_or(bytes.first, |last| last.saturating_add(1))
            }
        }
    }

    /// How many bytes its place takes, with all in front of it; of what goes to the end, or is as long as another signal says, up to its first byte.
    #[must_use]
    pub fn occupied_bytes(&self) -> u32 {
        match &self.content {
            Content::Number { field, .. } => field.needed_bytes(),
            Content::Text { bytes, size, .. } | Content::Bytes { bytes, size } => {
                bytes.last.filter(|_| size.is_none()).unwrap_or(bytes.first).saturating_add(1)
            }
        }
    }
}
