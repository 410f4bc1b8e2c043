//! What signals say, for those who list all of them: a log, a screen, a comparison.

use super::{Reading, Text};
use crate::TroubleCode;

/// What one signal says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Said<'a> {
    /// The value, or why there is none.
    pub value: SaidValue<'a>,
    /// The state word of the raw number.
    pub word: Option<&'static str>,
    /// The value lies outside its range.
    pub is_outside: bool,
}

/// A value of whatever type.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SaidValue<'a> {
    /// A raw number without a formula.
    Integer(i128),
    /// An engineering value.
    Number(f64),
    /// A diagnostic trouble code.
    Code(TroubleCode),
    /// Characters.
    Text(Text<'a>),
    /// Bytes as they are.
    Bytes(&'a [u8]),
    /// A raw value that says "no reading".
    NoReading,
    /// A raw value that says "sensor fault".
    Fault,
    /// Bits without any meaning.
    Undefined,
}

/// Which signal says it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Name {
    /// Its name in the description.
    pub signal: &'static str,
    /// The element of a repeated group that it is in, counted from 1.
    pub element: Option<usize>,
}

impl Name {
    /// A signal that is not repeated.
    #[must_use]
    pub const fn of(signal: &'static str) -> Self {
        Self { signal, element: None }
    }

    /// The same in an element, counted from 0.
    #[must_use]
    pub const fn in_element(self, index: usize) -> Self {
        Self { element: Some(index + 1), ..self }
    }
}

impl<'a> Said<'a> {
    /// Some bytes as they are.
    #[must_use]
    pub const fn bytes(bytes: &'a [u8]) -> Self {
        Self::plain(SaidValue::Bytes(bytes))
    }

    /// The same with the state word of the raw number.
    #[must_use]
    pub const fn word(self, word: Option<&'static str>) -> Self {
        Self { word, ..self }
    }

    /// The same, and whether the value lies outside its range.
    #[must_use]
    pub const fn outside(self, is_outside: bool) -> Self {
        Self { is_outside, ..self }
    }

    const fn plain(value: SaidValue<'a>) -> Self {
        Self { value, word: None, is_outside: false }
    }
}

/// Types whose values are said.
macro_rules! said {
    ($($type:ty: $value:ident => $said:expr;)*) => {$(
        impl<'a> From<$type> for Said<'a> {
            fn from($value: $type) -> Self {
                Self::plain($said)
            }
        }
    )*};
}

said! {
    bool: value => SaidValue::Integer(value.into());
    u8: value => SaidValue::Integer(value.into());
    u16: value => SaidValue::Integer(value.into());
    u32: value => SaidValue::Integer(value.into());
    u64: value => SaidValue::Integer(value.into());
    i8: value => SaidValue::Integer(value.into());
    i16: value => SaidValue::Integer(value.into());
    i32: value => SaidValue::Integer(value.into());
    i64: value => SaidValue::Integer(value.into());
    f64: value => SaidValue::Number(value);
    TroubleCode: value => SaidValue::Code(value);
    Text<'a>: value => SaidValue::Text(value);
}

impl<'a, T: Into<Said<'a>>> From<Reading<T>> for Said<'a> {
    fn from(reading: Reading<T>) -> Self {
        match reading {
            Reading::Value(value) => value.into(),
            Reading::NoReading => Self::plain(SaidValue::NoReading),
            Reading::Fault => Self::plain(SaidValue::Fault),
            Reading::Undefined => Self::plain(SaidValue::Undefined),
        }
    }
}
