//! A table for people: aligned columns, wide enough for every selected name. Numbers that are too long for their column are rounded
//! to it; the exact ones are in csv and JSON lines.

use unicode_width::UnicodeWidthStr;
use wirelore_decode::{Decoder, Event, Selection, Value};
use wirelore_lang::render::visible;
use wirelore_model::{Database, FrameId, Grade, SignalId};

use super::cell::{push_state, push_value};
use super::long::{Form, Line};
use super::snippet::Snippet;
use super::texts::{Part, Texts, source_width};
use crate::args::TimeBase;
use crate::moment::Clock;
use crate::number::{hexadecimal, push_rounded};

/// The width of the column for values: a double has up to 17 digits, a sign, a point and an exponent.
const VALUE_WIDTH: usize = 12;

/// Time, network, frame, signal, value, unit, state; a source where some wanted frames tell who sent them.
pub(crate) struct Table {
    texts: Texts,
    times: TimeBase,
    widths: Widths,
    cell: Vec<u8>,
}

impl Table {
    /// A table as wide as the selected signals need.
    pub(crate) fn new(database: &Database, decoder: &Decoder, selection: &Selection, times: TimeBase) -> Self {
        let mut widths = Widths::of_headings();
        for (frame, id) in database.frames.iter().zip((0..).map(FrameId)).filter(|(_, id)| decoder.wants(*id)) {
            widths.frame = widths.frame.max(frame.label.name.width());
            for appearance in &frame.seen_on {
                let name = &database.networks[appearance.network.index()].label.name;
                widths.network = widths.network.max(name.width());
            }
            let signals = frame.signals.iter().zip((0..).map(SignalId));
            for (signal, signal_id) in signals.filter(|(_, signal)| selection.wants(id, *signal)) {
                widths.signal = widths.signal.max(signal.label.name.width());
                widths.unit = widths.unit.max(decoder.unit(id, signal_id).map_or(0, |unit| unit.as_str().width()));
                let doubt = database.certainty(id, signal_id).and_then(|certainty| certainty.grade.mark());
                widths.mark = widths.mark.max(usize::from(doubt.is_some()));
            }
        }
        let longest = source_width(database, decoder);
        widths.source = if longest > 0 { longest.max("source".width()) } else { 0 };
        let texts = Texts::new(database, decoder, "\n", |part, name| match part {
            Part::Network => format!("  {}", padded(name, widths.network)),
            Part::Frame => format!("  {}", padded(name, widths.frame)),
            Part::Source => format!("  {}", padded(name, widths.source)),
            Part::Signal => format!("  {}  ", padded(name, widths.signal)),
            Part::Unit(grade) => {
                let mark = grade.and_then(Grade::mark).map(String::from).unwrap_or_default();
                format!(" {} {}  ", padded(&mark, widths.mark), padded(name, widths.unit))
            }
        });
        Self { texts, times, widths, cell: Vec::new() }
    }
}

/// The widths of the columns whose contents are known beforehand.
struct Widths {
    network: usize,
    frame: usize,
    source: usize,
    signal: usize,
    /// Behind the value: the mark of what is not certain; 0 where everything is.
    mark: usize,
    unit: usize,
}

impl Widths {
    fn of_headings() -> Self {
        let [network, frame, signal, unit] = ["network", "frame", "signal", "unit"].map(str::len);
        Self { network, frame, source: 0, signal, mark: 0, unit }
    }
}

impl Form for Table {
    fn header(&self, to: &mut Vec<u8>) {
        let Widths { network, frame, source, signal, mark, unit } = self.widths;
        let source = if source > 0 { format!("  {}", padded("source", source)) } else { String::new() };
        let heading = format!(
            "{:>time$}  {}  {}{source}  {}  {:>VALUE_WIDTH$} {:mark$} {}  state\n",
            "time",
            padded("network", network),
            padded("frame", frame),
            padded("signal", signal),
            "value",
            "",
            padded("unit", unit),
            time = self.times.width(),
        );
        to.extend_from_slice(heading.as_bytes());
    }

    fn shared(&self, clock: Clock, event: &Event<'_>, to: &mut Vec<u8>) {
        let mut time = Vec::new();
        clock.write(event.time_ns, event.first_time_ns, &mut time);
        push_right(&time, self.times.width(), to);
        self.texts.push_frame(event, to);
    }

    /// Every number of a table has to fit its column.
    fn ready(&self, _frame: FrameId, _signal: SignalId) -> Option<&[Snippet; 2]> {
        None
    }

    fn line(&mut self, line: &Line<'_>, to: &mut Vec<u8>) {
        let Line { shared, reading, verdict, .. } = *line;
        let around = self.texts.signal(line.frame, line.signal);
        to.extend_from_slice(shared);
        to.extend_from_slice(around.before.as_bytes());
        self.cell.clear();
        if let Value::Number(number) = reading.value {
            push_rounded(number, VALUE_WIDTH, &mut self.cell);
            // Digits are one column each and act on no terminal.
            to.extend(std::iter::repeat_n(b' ', VALUE_WIDTH.saturating_sub(self.cell.len())));
            to.extend_from_slice(&self.cell);
        } else if let (Value::Integer(number), Some(digits)) = (&reading.value, around.hexadecimal_digits) {
            push_right(hexadecimal(*number, digits).as_bytes(), VALUE_WIDTH, to);
        } else {
            push_value(&reading.value, &mut self.cell);
            push_right(visible(&String::from_utf8_lossy(&self.cell)).as_bytes(), VALUE_WIDTH, to);
        }
        to.extend_from_slice(around.behind.as_bytes());
        push_state(reading, verdict, to);
        to.truncate(to.trim_ascii_end().len());
        to.push(b'\n');
    }
}

/// A text with blanks behind it, as wide as asked for.
pub(crate) fn padded(text: &str, width: usize) -> String {
    let shown = visible(text);
    format!("{shown}{}", " ".repeat(width.saturating_sub(shown.width())))
}

/// Appends a text with blanks before it.
pub(crate) fn push_right(text: &[u8], width: usize, to: &mut Vec<u8>) {
    let shown = std::str::from_utf8(text).map_or(text.len(), UnicodeWidthStr::width);
    to.extend(std::iter::repeat_n(b' ', width.saturating_sub(shown)));
    to.extend_from_slice(text);
}
