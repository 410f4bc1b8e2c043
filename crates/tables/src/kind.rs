//! Which type a signal's column has.

use arrow_schema::DataType;
use wirelore_bits::{Encoding, NumberKind};
use wirelore_decode::Decoder;
use wirelore_model::{Charset, Content, Database, FrameId, Meaning, Scaling, Signal, SignalId};

use crate::setup::Store;

/// The most bits of a signal whose values are all words: a dictionary has to stay small.
const WORDS_MOST_BITS: u8 = 16;

/// The largest whole number up to which every whole number is a double: 2^53.
const EXACT_LIMIT: i128 = 1 << 53;

/// What the cells of a column hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) enum Kind {
    /// The engineering value as a double.
    Double,
    /// The raw number: a signal without a formula that a double would round, or every signal where raw numbers are stored.
    Raw(Encoding, Number),
    /// The state word of the raw value, or the raw number's text.
    Words,
    /// Trouble codes as texts.
    Codes,
    /// Characters.
    Text,
    /// Bytes.
    Bytes,
}

/// The narrowest number that holds every raw value.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) enum Number {
    I8,
    I16,
    I32,
    I64,
    U8,
    U16,
    U32,
    U64,
    F32,
    F64,
}

impl Kind {
    /// The kind of a signal's column.
    pub(crate) fn of(
        database: &Database,
        decoder: &Decoder,
        (frame, id, signal): (FrameId, SignalId, &Signal),
        store: Store,
    ) -> Self {
        let encoding = match (&signal.content, signal.encoding()) {
            (Content::Text { charset: Charset::Ascii | Charset::Latin1 | Charset::Utf8, .. }, _) => return Self::Text,
            (Content::Bytes { .. }, _) | (Content::Number { .. }, None) => return Self::Bytes,
            (Content::Number { .. }, Some(encoding)) => encoding,
        };
        // A conversion of units is a formula, too.
        let is_plain = signal.scaling == Scaling::Raw && decoder.unit(frame, id) == signal.unit.as_ref();
        match store {
            Store::Values if signal.scaling == Scaling::TroubleCode => Self::Codes,
            Store::Raw => Self::Raw(encoding, Number::narrowest(encoding)),
            Store::Values if is_plain && is_words_only(database, signal, encoding) => Self::Words,
            Store::Values if is_plain && !fits_a_double(encoding) => Self::Raw(encoding, Number::widest(encoding)),
            Store::Values => Self::Double,
        }
    }

    /// The type in the schema.
    pub(crate) fn data_type(self) -> DataType {
        match self {
            Self::Double => DataType::Float64,
            Self::Raw(_, number) => number.data_type(),
            Self::Words | Self::Codes => dictionary_type(),
            Self::Text => DataType::Utf8,
            Self::Bytes => DataType::Binary,
        }
    }
}

/// Words of which few are different.
pub(crate) fn dictionary_type() -> DataType {
    DataType::Dictionary(Box::new(DataType::Int32), Box::new(DataType::Utf8))
}

impl Number {
    fn narrowest(encoding: Encoding) -> Self {
        let Some((low, high)) = encoding.integer_range() else {
            return if encoding.width() == 64 { Self::F64 } else { Self::F32 };
        };
        let fits = |least: i128, greatest: i128| least <= low && high <= greatest;
        if fits(0, u8::MAX.into()) {
            Self::U8
        } else if fits(i8::MIN.into(), i8::MAX.into()) {
            Self::I8
        } else if fits(0, u16::MAX.into()) {
            Self::U16
        } else if fits(i16::MIN.into(), i16::MAX.into()) {
            Self::I16
        } else if fits(0, u32::MAX.into()) {
            Self::U32
        } else if fits(i32::MIN.into(), i32::MAX.into()) {
            Self::I32
        } else {
            Self::widest(encoding)
        }
    }

    fn widest(encoding: Encoding) -> Self {
        match encoding.kind() {
            NumberKind::Unsigned | NumberKind::Bcd => Self::U64,
            NumberKind::Signed | NumberKind::SignMagnitude => Self::I64,
            NumberKind::Float => Self::F64,
        }
    }

    fn data_type(self) -> DataType {
        match self {
            Self::I8 => DataType::Int8,
            Self::I16 => DataType::Int16,
            Self::I32 => DataType::Int32,
            Self::I64 => DataType::Int64,
            Self::U8 => DataType::UInt8,
            Self::U16 => DataType::UInt16,
            Self::U32 => DataType::UInt32,
            Self::U64 => DataType::UInt64,
            Self::F32 => DataType::Float32,
            Self::F64 => DataType::Float64,
        }
    }
}

fn is_words_only(database: &Database, signal: &Signal, encoding: Encoding) -> bool {
    let mut words = database.words(signal).iter();
    signal.unit.is_none()
        // Two zeros may have two words.
        && !matches!(encoding.kind(), NumberKind::Float | NumberKind::SignMagnitude)
        && encoding.width() <= WORDS_MOST_BITS
        && words.any(|word| word.meaning == Meaning::Reading)
}

fn fits_a_double(encoding: Encoding) -> bool {
    encoding.integer_range().is_none_or(|(low, high)| -EXACT_LIMIT <= low && high <= EXACT_LIMIT)
}
