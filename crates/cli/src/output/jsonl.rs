//! JSON lines: one object a value, every key always there; what is missing is null. Only `certainty` stands nowhere but at signals that are
//! guessed or likely.

use wirelore_decode::{Decoder, Event, Value};
use wirelore_model::{Database, FrameId, SignalId};

use super::cell::{push_hex, push_state, push_value};
use super::long::{Form, Line};
use super::snippet::Snippet;
use super::texts::{Part, Texts};
use crate::args::TimeBase;
use crate::moment::Clock;

/// `{"time":..,"network":..,"frame":..,"signal":..,"value":..,"unit":..,"state":..}`
pub(crate) struct Jsonl {
    texts: Texts,
    time_is_text: bool,
    state: Vec<u8>,
}

impl Jsonl {
    pub(crate) fn new(database: &Database, decoder: &Decoder, times: TimeBase) -> Self {
        let or_null = |name: &str| if name.is_empty() { "null".to_owned() } else { string(name) };
        let texts = Texts::new(database, decoder, "null}\n", |part, name| match part {
            Part::Network => format!(",\"network\":{}", string(name)),
            Part::Frame => format!(",\"frame\":{}", string(name)),
            Part::Source => format!(",\"source\":{}", or_null(name)),
            Part::Signal => format!(",\"signal\":{},\"value\":", string(name)),
            Part::Unit(grade) => {
                let doubt = grade.filter(|grade| grade.mark().is_some());
                let doubt = doubt.map_or_else(String::new, |grade| format!(",\"certainty\":\"{}\"", grade.words()));
                format!(",\"unit\":{}{doubt},\"state\":", or_null(name))
            }
        });
        Self { texts, time_is_text: times == TimeBase::Clock, state: Vec::new() }
    }
}

impl Form for Jsonl {
    fn header(&self, _to: &mut Vec<u8>) {}

    fn shared(&self, clock: Clock, event: &Event<'_>, to: &mut Vec<u8>) {
        to.extend_from_slice(b"{\"time\":");
        push_time(clock, (event.time_ns, event.first_time_ns), self.time_is_text, to);
        self.texts.push_frame(event, to);
    }

    #[inline(always)]
    fn ready(&self, frame: FrameId, signal: SignalId) -> Option<&[Snippet; 2]> {
        self.texts.signal(frame, signal).ready.as_ref()
    }

    fn line(&mut self, line: &Line<'_>, to: &mut Vec<u8>) {
        let Line { shared, reading, verdict, .. } = *line;
        let around = self.texts.signal(line.frame, line.signal);
        to.extend_from_slice(shared);
        to.extend_from_slice(around.before.as_bytes());
        push_json_value(&reading.value, to);
        to.extend_from_slice(around.behind.as_bytes());
        self.state.clear();
        push_state(reading, verdict, &mut self.state);
        if self.state.is_empty() {
            to.extend_from_slice(b"null");
        } else {
            push_string(&String::from_utf8_lossy(&self.state), to);
        }
        to.extend_from_slice(b"}\n");
    }
}

/// Appends a time as a number, or as text where it is a date; null where the recording tells none.
pub(crate) fn push_time(
    clock: Clock,
    (time_ns, first_ns): (Option<i64>, Option<i64>),
    as_text: bool,
    to: &mut Vec<u8>,
) {
    if time_ns.is_none() {
        to.extend_from_slice(b"null");
    } else if as_text {
        to.push(b'"');
        clock.write(time_ns, first_ns, to);
        to.push(b'"');
    } else {
        clock.write(time_ns, first_ns, to);
    }
}

/// Appends a value: numbers as they are, words and bytes as text, null where there is none (JSON has no infinities).
pub(crate) fn push_json_value(value: &Value<'_>, to: &mut Vec<u8>) {
    match value {
        Value::Number(number) if !number.is_finite() => to.extend_from_slice(b"null"),
        Value::Integer(_) | Value::Number(_) => push_value(value, to),
        Value::TroubleCode(code) => push_string(code.as_str(), to),
        Value::Text(text) => push_string(text, to),
        Value::Bytes(bytes) => {
            to.push(b'"');
            push_hex(bytes, to);
            to.push(b'"');
        }
        _ => to.extend_from_slice(b"null"),
    }
}

/// Appends a text as a JSON string. Characters that act on a terminal or turn the order of others are written as their numbers.
pub(crate) fn push_string(text: &str, to: &mut Vec<u8>) {
    if !text.contains(is_hidden) {
        // Writing to memory cannot fail, and every text is a JSON string.
        let _ = serde_json::to_writer(to, text);
        return;
    }
    let quoted = serde_json::Value::from(text).to_string();
    for character in quoted.chars() {
        if is_hidden(character) {
            to.extend_from_slice(format!("\\u{:04x}", u32::from(character)).as_bytes());
        } else {
            to.extend_from_slice(character.encode_utf8(&mut [0; 4]).as_bytes());
        }
    }
}

/// DEL, the control characters of ISO/IEC 6429 behind it, and those that mark or change the direction of text (Unicode, annex 9).
fn is_hidden(character: char) -> bool {
    matches!(character, '\u{7F}'..='\u{9F}' | '\u{61C}' | '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}

/// A text as a JSON string.
pub(crate) fn string(text: &str) -> String {
    let mut quoted = Vec::new();
    push_string(text, &mut quoted);
    String::from_utf8(quoted).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_acts_on_a_terminal_is_written_as_its_number() {
        let text = "a\u{1B}\u{7}\u{9B}31m \u{202E}\u{2066}é\"";
        let quoted = string(text);
        assert_eq!(quoted, r#""a\u001b\u0007\u009b31m \u202e\u2066é\"""#);
        assert_eq!(serde_json::from_str::<String>(&quoted).expect("JSON"), text);
        assert_eq!(string("plain °C"), "\"plain °C\"");
    }
}
