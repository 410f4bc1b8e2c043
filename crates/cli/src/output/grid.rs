//! One line a moment: a column for every signal, the last value held, never past its frame's timeout.

use std::collections::BTreeMap;
use std::io::{self, Write};

use wirelore_decode::{Decoder, Event, FrameOutcome, Reading, Sink, Value};
use wirelore_model::{Database, Frame, FrameId, NetworkId, SignalId};

use super::cell::{push_state, push_value};
use super::csv::quoted;
use super::jsonl::{push_json_value, push_time, string};
use super::table::push_right;
use super::{CHUNK_BYTES, pass_on};
use crate::args::{TimeBase, ValueForm};
use crate::moment::Clock;

/// The most lines that are written for one gap of a recording; beyond, the grid goes on where the recording does.
const LINES_IN_A_GAP: i64 = 1_000_000;
/// Without a declared timeout a frame counts as missing after so many periods (common practice, no source).
const PERIODS_UNTIL_MISSING: u64 = 3;

/// Writes one line every so often.
pub(crate) struct GridSink<'w, W> {
    columns: Vec<Column>,
    /// By network and frame: the first of its columns; they follow each other in the order of the signals that are wanted.
    first_column: BTreeMap<(NetworkId, FrameId), Vec<(SignalId, usize)>>,
    /// The sender whose parameter groups the grid shows: the first one heard of each.
    senders: BTreeMap<(NetworkId, FrameId), Senders>,
    form: ValueForm,
    time_is_text: bool,
    clock: Clock,
    every_ns: i64,
    first_ns: Option<i64>,
    next_ns: Option<i64>,
    skipped_gaps: u64,
    to: &'w mut W,
    lines: Vec<u8>,
}

struct Column {
    title: String,
    width: usize,
    timeout_ns: Option<i64>,
    held: Option<Held>,
}

/// The last thing a column heard.
struct Held {
    time_ns: i64,
    plain: Vec<u8>,
    json: Vec<u8>,
}

#[derive(Default)]
struct Senders {
    shown: Option<u8>,
    left_out: Vec<u8>,
}

impl<'w, W: Write> GridSink<'w, W> {
    pub(crate) fn new(
        database: &Database,
        decoder: &Decoder,
        wanted: impl Fn(FrameId, SignalId) -> bool,
        (form, times, every_ns): (ValueForm, TimeBase, i64),
        to: &'w mut W,
    ) -> Self {
        let mut grid = Self {
            columns: Vec::new(),
            first_column: BTreeMap::new(),
            senders: BTreeMap::new(),
            form,
            time_is_text: times == TimeBase::Clock,
            clock: Clock::new(times),
            every_ns,
            first_ns: None,
            next_ns: None,
            skipped_gaps: 0,
            to,
            lines: Vec::new(),
        };
        for (frame, id) in database.frames.iter().zip((0..).map(FrameId)) {
            for appearance in &frame.seen_on {
                let network = &database.networks[appearance.network.index()].label.name;
                let suffix = if frame.seen_on.len() > 1 { format!(" on {network}") } else { String::new() };
                let signals = (0..frame.signals.len() as u32).map(SignalId).filter(|signal| wanted(id, *signal));
                let columns: Vec<(SignalId, usize)> = signals
                    .map(|signal| {
                        let unit =
                            decoder.unit(id, signal).map(|unit| format!(" [{}]", unit.as_str())).unwrap_or_default();
                        let name = &frame.signals[signal.index()].label.name;
                        let title = format!("{}.{name}{suffix}{unit}", frame.label.name);
                        (signal, grid.add_column(title, frame))
                    })
                    .collect();
                grid.first_column.insert((appearance.network, id), columns);
            }
        }
        grid.header();
        grid
    }

    fn add_column(&mut self, title: String, frame: &Frame) -> usize {
        let width = unicode_width::UnicodeWidthStr::width(title.as_str()).max(8);
        self.columns.push(Column { title, width, timeout_ns: timeout_ns(frame), held: None });
        self.columns.len() - 1
    }

    fn header(&mut self) {
        match self.form {
            ValueForm::Csv => {
                self.lines.extend_from_slice(b"time");
                for column in &self.columns {
                    self.lines.push(b',');
                    self.lines.extend_from_slice(quoted(&column.title).as_bytes());
                }
                self.lines.push(b'\n');
            }
            ValueForm::Table => {
                push_right(b"time", 12, &mut self.lines);
                for column in &self.columns {
                    self.lines.extend_from_slice(b"  ");
                    push_right(column.title.as_bytes(), column.width, &mut self.lines);
                }
                self.lines.push(b'\n');
            }
            ValueForm::Jsonl => {}
        }
    }

    /// Writes the lines that are due before something new happens at the given time.
    fn catch_up(&mut self, now_ns: i64) {
        let mut next_ns = *self.next_ns.get_or_insert(now_ns);
        if (now_ns.saturating_sub(next_ns)) / self.every_ns > LINES_IN_A_GAP {
            self.skipped_gaps += 1;
            next_ns += (now_ns.saturating_sub(next_ns)) / self.every_ns * self.every_ns;
        }
        while next_ns < now_ns {
            self.line(next_ns);
            next_ns = next_ns.saturating_add(self.every_ns);
        }
        self.next_ns = Some(next_ns);
    }

    fn line(&mut self, at_ns: i64) {
        match self.form {
            ValueForm::Jsonl => self.json_line(at_ns),
            ValueForm::Csv | ValueForm::Table => self.plain_line(at_ns),
        }
    }

    fn plain_line(&mut self, at_ns: i64) {
        let table = self.form == ValueForm::Table;
        let mut time = Vec::new();
        self.clock.write(Some(at_ns), self.first_ns, &mut time);
        push_right(&time, if table { 12 } else { 0 }, &mut self.lines);
        for column in &self.columns {
            let cell = column.at(at_ns).map_or(&[][..], |held| &held.plain);
            if table {
                self.lines.extend_from_slice(b"  ");
                let shown = String::from_utf8_lossy(cell).replace(char::is_control, "\u{FFFD}");
                push_right(shown.as_bytes(), column.width, &mut self.lines);
            } else {
                self.lines.push(b',');
                self.lines.extend_from_slice(quoted(&String::from_utf8_lossy(cell)).as_bytes());
            }
        }
        self.lines.push(b'\n');
    }

    fn json_line(&mut self, at_ns: i64) {
        self.lines.extend_from_slice(b"{\"time\":");
        push_time(self.clock, (Some(at_ns), self.first_ns), self.time_is_text, &mut self.lines);
        for column in &self.columns {
            self.lines.extend_from_slice(format!(",{}:", string(&column.title)).as_bytes());
            self.lines.extend_from_slice(column.at(at_ns).map_or(b"null", |held| &held.json));
        }
        self.lines.extend_from_slice(b"}\n");
    }

    /// Writes the last line and what is still held back.
    ///
    /// # Errors
    /// What the receiver says.
    pub(crate) fn finish(&mut self) -> io::Result<()> {
        if let Some(next_ns) = self.next_ns {
            self.line(next_ns);
        }
        pass_on(&mut self.lines, self.to, 0)
    }

    /// What the reader of the grid must know, a sentence each.
    pub(crate) fn notes(&self, database: &Database) -> Vec<String> {
        let mut notes = Vec::new();
        for ((_, frame), senders) in self.senders.iter().filter(|(_, senders)| !senders.left_out.is_empty()) {
            let others: Vec<String> = senders.left_out.iter().map(|address| format!("0x{address:02X}")).collect();
            notes.push(format!(
                "frame {} came from several senders; the grid shows 0x{:02X} and leaves out {}",
                database.frames[frame.index()].label.name,
                senders.shown.unwrap_or_default(),
                others.join(", ")
            ));
        }
        if self.skipped_gaps > 0 {
            notes.push(format!(
                "the grid leaves out {} gaps of more than {LINES_IN_A_GAP} lines each",
                self.skipped_gaps
            ));
        }
        notes
    }

    /// Whether the grid shows this frame: of a parameter group only what its first sender says.
    fn shows(&mut self, event: &Event<'_>) -> bool {
        let Some(source) = event.source else { return true };
        let senders = self.senders.entry((event.network, event.frame)).or_default();
        if *senders.shown.get_or_insert(source) == source {
            return true;
        }
        if !senders.left_out.contains(&source) {
            senders.left_out.push(source);
        }
        false
    }
}

impl<W: Write> Sink for GridSink<'_, W> {
    fn begin(&mut self, event: &Event<'_>) {
        self.first_ns = event.first_time_ns;
        if let Some(now_ns) = event.time_ns {
            self.catch_up(now_ns);
        }
    }

    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let Some(time_ns) = event.time_ns else { return };
        if !self.shows(event) {
            return;
        }
        let columns = self.first_column.get(&(event.network, event.frame));
        let column = columns.and_then(|columns| columns.iter().find(|(held, _)| *held == signal));
        let Some(&(_, column)) = column else { return };
        let held =
            self.columns[column].held.get_or_insert_with(|| Held { time_ns, plain: Vec::new(), json: Vec::new() });
        held.hear(time_ns, &reading, self.form);
    }

    fn end(&mut self, _event: &Event<'_>, _outcome: &FrameOutcome) -> io::Result<()> {
        pass_on(&mut self.lines, self.to, CHUNK_BYTES)
    }
}

impl Column {
    /// What the column holds at a time, unless it is too old.
    fn at(&self, at_ns: i64) -> Option<&Held> {
        self.held
            .as_ref()
            .filter(|held| self.timeout_ns.is_none_or(|timeout| at_ns.saturating_sub(held.time_ns) <= timeout))
    }
}

impl Held {
    /// Takes in a reading: the word where there is one, else the number, else nothing.
    fn hear(&mut self, time_ns: i64, reading: &Reading<'_>, form: ValueForm) {
        self.time_ns = time_ns;
        self.plain.clear();
        self.json.clear();
        let is_word = reading.word.is_some() && !matches!(reading.value, Value::NoReading | Value::SensorFault);
        match form {
            ValueForm::Csv | ValueForm::Table if is_word => {
                self.plain.extend_from_slice(reading.word.unwrap_or("").as_bytes())
            }
            ValueForm::Csv => push_value(&reading.value, &mut self.plain),
            ValueForm::Table => {
                push_value(&reading.value, &mut self.plain);
                if self.plain.is_empty() {
                    push_state(reading, None, &mut self.plain);
                }
            }
            ValueForm::Jsonl if is_word => self.json.extend_from_slice(string(reading.word.unwrap_or("")).as_bytes()),
            ValueForm::Jsonl => push_json_value(&reading.value, &mut self.json),
        }
    }
}

/// After this long without a frame its values are no longer held; `None`: for ever.
fn timeout_ns(frame: &Frame) -> Option<i64> {
    let declared = frame.sending.timeout.map(|timeout| timeout.0);
    let periods = || frame.sending.every.map(|period| period.longest.0.saturating_mul(PERIODS_UNTIL_MISSING));
    declared.or_else(periods).map(|ns| i64::try_from(ns).unwrap_or(i64::MAX))
}
