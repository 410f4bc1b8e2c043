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
    fields: Fields,
}

impl Csv {
    pub(crate) fn new(database: &Database, decoder: &Decoder, fields: Fields) -> Self {
        let texts = Texts::new(database, decoder, "\n", |part, name| match part {
            Part::Network | Part::Frame | Part::Source => format!(",{}", fields.text(name)),
            Part::Signal | Part::Unit(_) => format!(",{},", fields.text(name)),
        });
        Self { texts, fields }
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
            Value::Text(text) => to.extend_from_slice(self.fields.text(text).as_bytes()),
            value => push_value(value, to),
        }
        to.extend_from_slice(around.behind.as_bytes());
        let state = to.len();
        push_state(reading, verdict, to);
        // Most states are one word.
        if to[state..].contains(&b',') {
            let quoted = quoted(&String::from_utf8_lossy(&to[state..]));
            to.truncate(state);
            to.extend_from_slice(quoted.as_bytes());
        }
        to.push(b'\n');
    }
}

/// How texts become fields.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Fields {
    /// They read back as they are.
    Exact,
    /// One that a spreadsheet would take for a formula has an apostrophe in front, which such programs take for the sign of a text. What is
    /// written as a number stays one.
    Guarded,
}

/// What makes a formula of a text at its beginning (OWASP, "CSV Injection", the wide signs among them; from memory).
const FORMULA_SIGNS: [char; 11] = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];

impl Fields {
    pub(crate) fn of(is_guarded: bool) -> Self {
        if is_guarded { Self::Guarded } else { Self::Exact }
    }

    /// The field of a text.
    pub(crate) fn text(self, text: &str) -> String {
        match self {
            Self::Guarded if text.starts_with(FORMULA_SIGNS) => quoted(&format!("'{text}")),
            _ => quoted(text),
        }
    }
}

/// A field, in quotes where it needs them.
fn quoted(field: &str) -> String {
    if field.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", field.replace('"', "\"\""))
    } else {
        field.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn formulas_are_guarded_where_that_is_asked_for() {
        for (text, exact, guarded) in [
            ("=1+1", "=1+1", "'=1+1"),
            ("-5", "-5", "'-5"),
            ("@a,b", "\"@a,b\"", "\"'@a,b\""),
            ("\tx", "\tx", "'\tx"),
            ("\r=x", "\"\r=x\"", "\"'\r=x\""),
            ("＝x", "＝x", "'＝x"),
            ("a=1", "a=1", "a=1"),
            ("", "", ""),
        ] {
            assert_eq!((Fields::Exact.text(text), Fields::Guarded.text(text)), (exact.to_owned(), guarded.to_owned()));
        }
    }
}
