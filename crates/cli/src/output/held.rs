//! The last thing that a column of a grid heard.

use wirelore_decode::{Reading, Value};
use wirelore_lang::render::visible;

use super::cell::{push_state, push_value};
use super::csv::quoted;
use super::jsonl::{push_json_value, push_string};

/// A number, or words: a state word, characters, or why there is no number.
#[derive(Default)]
pub(crate) struct Held {
    time_ns: i64,
    number: Option<Number>,
    words: Vec<u8>,
}

#[derive(Clone, Copy)]
enum Number {
    Integer(i128),
    Double(f64),
}

impl Held {
    /// Takes in a reading: the state word where there is one, else the number, else what is said in its place.
    pub(crate) fn hear(&mut self, time_ns: i64, reading: &Reading<'_>) {
        self.time_ns = time_ns;
        self.words.clear();
        self.number = match reading.value {
            Value::Integer(number) if reading.word.is_none() => Some(Number::Integer(number)),
            Value::Number(number) if reading.word.is_none() => Some(Number::Double(number)),
            _ => None,
        };
        match (self.number, reading.word) {
            (Some(_), _) => {}
            (None, Some(word)) => self.words.extend_from_slice(word.as_bytes()),
            (None, None) => {
                push_value(&reading.value, &mut self.words);
                if self.words.is_empty() {
                    push_state(reading, None, &mut self.words);
                }
            }
        }
    }

    /// How long ago that was, in nanoseconds.
    pub(crate) fn age_ns(&self, at_ns: i64) -> i64 {
        at_ns.saturating_sub(self.time_ns)
    }

    pub(crate) fn push_csv(&self, to: &mut Vec<u8>) {
        match self.value() {
            Some(value) => push_value(&value, to),
            None => to.extend_from_slice(quoted(&self.words()).as_bytes()),
        }
    }

    pub(crate) fn push_json(&self, to: &mut Vec<u8>) {
        match self.value() {
            Some(value) => push_json_value(&value, to),
            None => push_string(&self.words(), to),
        }
    }

    /// For a table, without control characters.
    pub(crate) fn for_people(&self) -> String {
        match self.value() {
            Some(value) => {
                let mut text = Vec::new();
                push_value(&value, &mut text);
                String::from_utf8_lossy(&text).into_owned()
            }
            None => visible(&self.words()).into_owned(),
        }
    }

    fn value(&self) -> Option<Value<'static>> {
        self.number.map(|number| match number {
            Number::Integer(number) => Value::Integer(number),
            Number::Double(number) => Value::Number(number),
        })
    }

    fn words(&self) -> std::borrow::Cow<'_, str> {
        String::from_utf8_lossy(&self.words)
    }
}
