//! JSON lines: one object a value, every key always there; what is missing is null.

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
            Part::Unit => format!(",\"unit\":{},\"state\":", or_null(name)),
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

/// Appends a text as a JSON string.
pub(crate) fn push_string(text: &str, to: &mut Vec<u8>) {
    // Writing to memory cannot fail, and every text is a JSON string.
    let _ = serde_json::to_writer(to, text);
}

/// A text as a JSON string.
pub(crate) fn string(text: &str) -> String {
    serde_json::Value::from(text).to_string()
}
