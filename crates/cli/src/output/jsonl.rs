//! JSON lines: one object a value, every key always there; what is missing is null.

use wirelore_decode::{Decoder, Event, Value};
use wirelore_model::Database;

use super::cell::{push_hex, push_state, push_value};
use super::long::{Form, Line, SignalTexts, SourceNames, has_sources};
use crate::args::TimeBase;
use crate::moment::Clock;

/// `{"time":..,"network":..,"frame":..,"signal":..,"value":..,"unit":..,"state":..}`
pub(crate) struct Jsonl {
    frames: Vec<String>,
    networks: Vec<String>,
    texts: SignalTexts,
    sources: Option<SourceNames>,
    time_is_text: bool,
    state: Vec<u8>,
}

impl Jsonl {
    pub(crate) fn new(database: &Database, decoder: &Decoder, times: TimeBase) -> Self {
        let texts = SignalTexts::new(database, decoder, |name, unit| {
            let unit = if unit.is_empty() { "null".to_owned() } else { string(unit) };
            [format!(",\"signal\":{},\"value\":", string(name)), format!(",\"unit\":{unit},\"state\":")]
        });
        Self {
            frames: database.frames.iter().map(|frame| format!(",\"frame\":{}", string(&frame.label.name))).collect(),
            networks: database
                .networks
                .iter()
                .map(|network| format!(",\"network\":{}", string(&network.label.name)))
                .collect(),
            texts,
            sources: has_sources(database).then(|| SourceNames::new(database)),
            time_is_text: times == TimeBase::Clock,
            state: Vec::new(),
        }
    }
}

impl Form for Jsonl {
    fn header(&self, _to: &mut Vec<u8>) {}

    fn shared(&self, clock: Clock, event: &Event<'_>, to: &mut Vec<u8>) {
        to.extend_from_slice(b"{\"time\":");
        push_time(clock, (event.time_ns, event.first_time_ns), self.time_is_text, to);
        to.extend_from_slice(self.networks[event.network.index()].as_bytes());
        to.extend_from_slice(self.frames[event.frame.index()].as_bytes());
        if let Some(sources) = &self.sources {
            let source = sources.of(event);
            let source = if source.is_empty() { "null".to_owned() } else { string(source) };
            to.extend_from_slice(format!(",\"source\":{source}").as_bytes());
        }
    }

    fn line(&mut self, line: &Line<'_>, to: &mut Vec<u8>) {
        let Line { shared, reading, verdict, .. } = *line;
        let (before, behind) = self.texts.around(line.frame, line.signal);
        to.extend_from_slice(shared);
        to.extend_from_slice(before);
        push_json_value(&reading.value, to);
        to.extend_from_slice(behind);
        self.state.clear();
        push_state(reading, verdict, &mut self.state);
        if self.state.is_empty() {
            to.extend_from_slice(b"null");
        } else {
            to.extend_from_slice(string(&String::from_utf8_lossy(&self.state)).as_bytes());
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
        Value::Text(text) => to.extend_from_slice(string(text).as_bytes()),
        Value::Bytes(bytes) => {
            to.push(b'"');
            push_hex(bytes, to);
            to.push(b'"');
        }
        _ => to.extend_from_slice(b"null"),
    }
}

/// A text as a JSON string.
pub(crate) fn string(text: &str) -> String {
    serde_json::Value::from(text).to_string()
}
