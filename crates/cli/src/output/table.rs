//! A table for people: aligned columns, wide enough for every name of the description.

use unicode_width::UnicodeWidthStr;
use wirelore_decode::{Decoder, Event, Reading, Verdict};
use wirelore_model::{Database, FrameId, SignalId};

use super::cell::{push_state, push_value};
use super::long::{Form, SignalTexts, SourceNames, has_sources};
use crate::moment::Clock;

/// The least widths of the columns for times and values.
const TIME_WIDTH: usize = 12;
const VALUE_WIDTH: usize = 12;

/// Time, network, frame, signal, value, unit, state; a source where the description has parameter groups.
pub(crate) struct Table {
    frames: Vec<String>,
    networks: Vec<String>,
    texts: SignalTexts,
    sources: Option<SourceNames>,
    heading: String,
    cell: Vec<u8>,
}

impl Table {
    pub(crate) fn new(database: &Database, decoder: &Decoder) -> Self {
        let frames = || database.frames.iter().map(|frame| frame.label.name.as_str());
        let networks = || database.networks.iter().map(|network| network.label.name.as_str());
        let signals =
            || database.frames.iter().flat_map(|frame| &frame.signals).map(|signal| signal.label.name.as_str());
        let units = database.frames.iter().zip((0..).map(FrameId)).flat_map(|(frame, id)| {
            let signals = (0..frame.signals.len() as u32).map(SignalId);
            signals.filter_map(move |signal| decoder.unit(id, signal)).map(|unit| unit.as_str())
        });
        let (frame, network) = (widest("frame", frames()), widest("network", networks()));
        let (signal, unit) = (widest("signal", signals()), widest("unit", units));
        let sources = has_sources(database).then(|| SourceNames::new(database));
        let source_heading = if sources.is_some() { "  source " } else { "" };
        let heading = format!(
            "{:>TIME_WIDTH$}  {}  {}{source_heading}  {}  {:>VALUE_WIDTH$}  {}  state\n",
            "time",
            padded("network", network),
            padded("frame", frame),
            padded("signal", signal),
            "value",
            padded("unit", unit)
        );
        Self {
            frames: frames().map(|name| padded(name, frame)).collect(),
            networks: networks().map(|name| padded(name, network)).collect(),
            texts: SignalTexts::new(database, decoder, |name, shown| {
                [format!("  {}  ", padded(name, signal)), format!("  {}  ", padded(shown, unit))]
            }),
            sources,
            heading,
            cell: Vec::new(),
        }
    }
}

impl Form for Table {
    fn header(&self, to: &mut Vec<u8>) {
        to.extend_from_slice(self.heading.as_bytes());
    }

    fn shared(&self, clock: Clock, event: &Event<'_>, to: &mut Vec<u8>) {
        let mut time = Vec::new();
        clock.write(event.time_ns, event.first_time_ns, &mut time);
        push_right(&time, TIME_WIDTH, to);
        to.extend_from_slice(b"  ");
        to.extend_from_slice(self.networks[event.network.index()].as_bytes());
        to.extend_from_slice(b"  ");
        to.extend_from_slice(self.frames[event.frame.index()].as_bytes());
        if let Some(sources) = &self.sources {
            to.extend_from_slice(format!("  {:<7}", sources.of(event)).as_bytes());
        }
    }

    fn line(
        &mut self,
        shared: &[u8],
        frame: FrameId,
        signal: SignalId,
        reading: &Reading<'_>,
        verdict: Option<Verdict>,
        to: &mut Vec<u8>,
    ) {
        let (before, behind) = self.texts.around(frame, signal);
        to.extend_from_slice(shared);
        to.extend_from_slice(before);
        self.cell.clear();
        push_value(&reading.value, &mut self.cell);
        // What comes from a payload may hold control characters; a terminal gets none.
        let shown = String::from_utf8_lossy(&self.cell).replace(char::is_control, "\u{FFFD}");
        push_right(shown.as_bytes(), VALUE_WIDTH, to);
        to.extend_from_slice(behind);
        push_state(reading, verdict, to);
        to.truncate(to.trim_ascii_end().len());
        to.push(b'\n');
    }
}

fn widest<'a>(heading: &str, names: impl Iterator<Item = &'a str>) -> usize {
    names.map(UnicodeWidthStr::width).max().unwrap_or(0).max(heading.width())
}

/// A text with blanks behind it, as wide as asked for.
pub(crate) fn padded(text: &str, width: usize) -> String {
    format!("{text}{}", " ".repeat(width.saturating_sub(text.width())))
}

/// Appends a text with blanks before it.
pub(crate) fn push_right(text: &[u8], width: usize, to: &mut Vec<u8>) {
    let shown = std::str::from_utf8(text).map_or(text.len(), UnicodeWidthStr::width);
    to.extend(std::iter::repeat_n(b' ', width.saturating_sub(shown)));
    to.extend_from_slice(text);
}
