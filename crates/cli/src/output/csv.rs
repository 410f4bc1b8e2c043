//! Comma-separated lines (RFC 4180): fields with a comma, a quote or a line end are quoted, quotes in them doubled.

use wirelore_decode::{Decoder, Event, Value};
use wirelore_model::{Database, FrameId, SignalId};

use super::cell::{push_state, push_value};
use super::long::{Form, Line};
use super::snippet::Snippet;
use super::texts::{Part, Texts};
use crate::moment::Clock;

/// `time,network,frame,signal,value,unit,state`, with a column `source` where some wanted frames tell who sent them.
pub(crate) struct Csv {
    texts: Texts,
}

impl Csv {
    pub(crate) fn new(database: &Database, decoder: &Decoder) -> Self {
        let texts = Texts::new(database, decoder, "\n", |part, name| match part {
            Part::Network | Part::Frame | Part::Source => format!(",{}", quoted(name)),
            Part::Signal | Part::Unit(_) => format!(",{},", quoted(name)),
        });
        Self { texts }
    }
}

impl Form for Csv {
    fn header(&self, to: &mut Vec<u8>) {
        let source = if self.texts.have_sources() { ",source" } else { "" };
        to.extend_from_slice(format!("time,network,frame{source},signal,value,unit,state\n").as_bytes());
    }

    fn shared(&self, clock: Clock, event: &Event<'_>, to: &mut Vec<u8>) {
        clock.write(event.time_ns, event.first_time_ns, to);
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
        match &reading.value {
            Value::Text(text) => to.extend_from_slice(quoted(text).as_bytes()),
            value => push_value(value, to),
        }
        to.extend_from_slice(around.behind.as_bytes());
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
