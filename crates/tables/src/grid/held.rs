//! The last thing that a column of a grid heard.

use std::borrow::Cow;

use wirelore_decode::{Reading, Value};

/// A reading with memory of its own, used anew for each one that is heard.
#[derive(Debug)]
pub(crate) struct Held {
    time_ns: i64,
    value: Kept,
    text: String,
    bytes: Vec<u8>,
    has_word: bool,
    word: String,
    outside_range: bool,
    bits: Option<u64>,
}

#[derive(Debug)]
enum Kept {
    Value(Value<'static>),
    Text,
    Bytes,
}

impl Held {
    pub(crate) fn new() -> Self {
        Self {
            time_ns: 0,
            value: Kept::Value(Value::TooShort),
            text: String::new(),
            bytes: Vec::new(),
            has_word: false,
            word: String::new(),
            outside_range: false,
            bits: None,
        }
    }

    /// A reading kept, whenever that was.
    pub(crate) fn of(reading: &Reading<'_>) -> Self {
        let mut held = Self::new();
        held.hear(0, reading);
        held
    }

    /// Takes in a reading.
    pub(crate) fn hear(&mut self, time_ns: i64, reading: &Reading<'_>) {
        self.time_ns = time_ns;
        self.value = match &reading.value {
            Value::Integer(number) => Kept::Value(Value::Integer(*number)),
            Value::Number(number) => Kept::Value(Value::Number(*number)),
            Value::TroubleCode(code) => Kept::Value(Value::TroubleCode(*code)),
            Value::NoReading => Kept::Value(Value::NoReading),
            Value::SensorFault => Kept::Value(Value::SensorFault),
            Value::NotDigits => Kept::Value(Value::NotDigits),
            Value::BeyondCurve => Kept::Value(Value::BeyondCurve),
            Value::TooShort => Kept::Value(Value::TooShort),
            Value::Text(text) => {
                self.text.clear();
                self.text.push_str(text);
                Kept::Text
            }
            Value::Bytes(bytes) => {
                self.bytes.clear();
                self.bytes.extend_from_slice(bytes);
                Kept::Bytes
            }
        };
        self.has_word = reading.word.is_some();
        self.word.clear();
        self.word.push_str(reading.word.unwrap_or_default());
        self.outside_range = reading.outside_range;
        self.bits = reading.bits;
    }

    /// How long ago that was, in nanoseconds.
    pub(crate) fn age_ns(&self, at_ns: i64) -> i64 {
        at_ns.saturating_sub(self.time_ns)
    }

    /// The reading as it was heard.
    pub(crate) fn reading(&self) -> Reading<'_> {
        let value = match &self.value {
            Kept::Value(value) => value.clone(),
            Kept::Text => Value::Text(Cow::Borrowed(&self.text)),
            Kept::Bytes => Value::Bytes(&self.bytes),
        };
        let word = self.has_word.then_some(self.word.as_str());
        Reading { value, word, outside_range: self.outside_range, bits: self.bits }
    }
}
