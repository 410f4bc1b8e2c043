//! Comma-separated lines (RFC 4180): fields with a comma, a quote or a line end are quoted, quotes in them doubled.

use wirelore_decode::{Decoder, Event, Value};
use wirelore_model::Database;

use super::cell::{push_state, push_value};
use super::long::{Form, Line, SignalTexts, SourceNames, has_sources};
use crate::moment::Clock;

/// `time,network,frame,signal,value,unit,state`, with a column `source` where the description has parameter groups.
pub(crate) struct Csv {
    frames: Vec<String>,
    networks: Vec<String>,
    texts: SignalTexts,
    sources: Option<SourceNames>,
}

impl Csv {
    pub(crate) fn new(database: &Database, decoder: &Decoder) -> Self {
        let texts = SignalTexts::new(database, decoder, |name, unit| {
            [format!(",{},", quoted(name)), format!(",{},", quoted(unit))]
        });
        Self {
            frames: database.frames.iter().map(|frame| format!(",{}", quoted(&frame.label.name))).collect(),
            networks: database.networks.iter().map(|network| format!(",{}", quoted(&network.label.name))).collect(),
            texts,
            sources: has_sources(database).then(|| SourceNames::new(database)),
        }
    }
}

impl Form for Csv {
    fn header(&self, to: &mut Vec<u8>) {
        let source = if self.sources.is_some() { ",source" } else { "" };
        to.extend_from_slice(format!("time,network,frame{source},signal,value,unit,state\n").as_bytes());
    }

    fn shared(&self, clock: Clock, event: &Event<'_>, to: &mut Vec<u8>) {
        clock.write(event.time_ns, event.first_time_ns, to);
        to.extend_from_slice(self.networks[event.network.index()].as_bytes());
        to.extend_from_slice(self.frames[event.frame.index()].as_bytes());
        if let Some(sources) = &self.sources {
            to.push(b',');
            to.extend_from_slice(sources.of(event).as_bytes());
        }
    }

    fn line(&mut self, line: &Line<'_>, to: &mut Vec<u8>) {
        let Line { shared, reading, verdict, .. } = *line;
        let (before, behind) = self.texts.around(line.frame, line.signal);
        to.extend_from_slice(shared);
        to.extend_from_slice(before);
        match &reading.value {
            Value::Text(text) => to.extend_from_slice(quoted(text).as_bytes()),
            value => push_value(value, to),
        }
        to.extend_from_slice(behind);
        push_state(reading, verdict, to);
        to.push(b'\n');
    }
}

/// A field, in quotes where it needs them.
pub(crate) fn quoted(field: &str) -> String {
    if field.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", field.replace('"', "\"\""))
    } else {
        field.to_owned()
    }
}
