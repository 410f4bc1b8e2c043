//! One line a moment: a column for every signal, the last value held, never past its frame's timeout.
//!
//! The lines stand at whole multiples of their distance from the first frame of the recording, so that two grids of one recording fit
//! together.

use std::collections::BTreeMap;
use std::io::{self, Write};

use wirelore_decode::{Decoder, Event, FrameOutcome, Reading, Sink};
use wirelore_lang::render::visible;
use wirelore_model::{Database, Frame, FrameId, NetworkId, SignalId};

use super::csv::quoted;
use super::held::Held;
use super::jsonl::{push_time, string};
use super::table::push_right;
use super::{CHUNK_BYTES, pass_on};
use crate::args::{TimeBase, ValueForm};
use crate::moment::Clock;
use crate::summary::counted;

/// The most lines that are written for one gap of a recording; beyond, the grid goes on where the recording does.
const LINES_IN_A_GAP: i64 = 1_000_000;
/// A time that falls back further than this is another beginning, not two channels that are a little out of step.
const FALLS_BACK_NS: i64 = 1_000_000_000;
/// The least width of a column of a table.
const COLUMN_WIDTH: usize = 8;

/// What a grid is to look like.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Layout {
    pub(crate) form: ValueForm,
    pub(crate) times: TimeBase,
    /// The distance of two lines; above 0.
    pub(crate) every_ns: i64,
}

/// Writes one line every so often.
pub(crate) struct GridSink<'w, W> {
    layout: Layout,
    columns: Vec<Column>,
    /// By frame: the networks it is seen on, each with the column of every signal.
    places: Vec<Vec<(NetworkId, Vec<Option<usize>>)>>,
    senders: BTreeMap<(NetworkId, FrameId), Senders>,
    first_ns: Option<i64>,
    next_ns: Option<i64>,
    last_ns: i64,
    remarks: Remarks,
    to: &'w mut W,
    lines: Vec<u8>,
}

struct Column {
    title: String,
    width: usize,
    timeout_ns: Option<i64>,
    held: Option<Held>,
}

/// Who sends a parameter group: the grid shows the first one heard.
#[derive(Default)]
struct Senders {
    shown: Option<u8>,
    left_out: Vec<u8>,
}

/// What the reader of the grid has to know.
#[derive(Default)]
struct Remarks {
    skipped_gaps: u64,
    beginnings: u64,
    without_time: u64,
}

impl<'w, W: Write> GridSink<'w, W> {
    /// A grid of the wanted signals.
    pub(crate) fn new(
        database: &Database,
        decoder: &Decoder,
        wanted: impl Fn(NetworkId, FrameId, SignalId) -> bool,
        layout: Layout,
        to: &'w mut W,
    ) -> Self {
        let mut columns = Columns::default();
        for (frame, id) in database.frames.iter().zip((0..).map(FrameId)) {
            columns.add_frame(database, decoder, (frame, id), &wanted);
        }
        let Columns { columns, places, .. } = columns;
        let mut grid = Self {
            layout,
            columns,
            places,
            senders: BTreeMap::new(),
            first_ns: None,
            next_ns: None,
            last_ns: i64::MIN,
            remarks: Remarks::default(),
            to,
            lines: Vec::new(),
        };
        grid.header();
        grid
    }

    fn header(&mut self) {
        let lines = &mut self.lines;
        match self.layout.form {
            ValueForm::Csv => {
                lines.extend_from_slice(b"time");
                for column in &self.columns {
                    lines.push(b',');
                    lines.extend_from_slice(quoted(&column.title).as_bytes());
                }
                lines.push(b'\n');
            }
            ValueForm::Table => {
                push_right(b"time", self.layout.times.width(), lines);
                for column in &self.columns {
                    lines.extend_from_slice(b"  ");
                    push_right(visible(&column.title).as_bytes(), column.width, lines);
                }
                lines.push(b'\n');
            }
            ValueForm::Jsonl => {}
        }
    }

    /// Writes the lines that are due before something new happens at the given time.
    fn catch_up(&mut self, now_ns: i64) {
        if now_ns < self.last_ns.saturating_sub(FALLS_BACK_NS) {
            self.begin_anew();
        }
        self.last_ns = now_ns;
        let every_ns = self.layout.every_ns;
        let first_ns = self.first_ns.unwrap_or(now_ns);
        let mut next_ns = self.next_ns.unwrap_or_else(|| {
            let steps = now_ns.saturating_sub(first_ns).div_euclid(every_ns);
            let before_ns = first_ns.saturating_add(steps.saturating_mul(every_ns));
            if before_ns < now_ns { before_ns.saturating_add(every_ns) } else { before_ns }
        });
        let lines_due = now_ns.saturating_sub(next_ns) / every_ns;
        if lines_due > LINES_IN_A_GAP {
            self.remarks.skipped_gaps += 1;
            self.line(next_ns);
            next_ns = next_ns.saturating_add(lines_due.saturating_mul(every_ns));
        }
        while next_ns < now_ns {
            self.line(next_ns);
            next_ns = next_ns.saturating_add(every_ns);
        }
        self.next_ns = Some(next_ns);
    }

    /// The time has fallen back: nothing of what was heard holds any more.
    fn begin_anew(&mut self) {
        if let Some(next_ns) = self.next_ns.take() {
            self.line(next_ns);
        }
        self.columns.iter_mut().for_each(|column| column.held = None);
        self.remarks.beginnings += 1;
    }

    fn line(&mut self, at_ns: i64) {
        let Self { layout, lines, .. } = self;
        let clock = Clock::new(layout.times);
        match layout.form {
            ValueForm::Csv => clock.write(Some(at_ns), self.first_ns, lines),
            ValueForm::Table => {
                let mut time = Vec::new();
                clock.write(Some(at_ns), self.first_ns, &mut time);
                push_right(&time, layout.times.width(), lines);
            }
            ValueForm::Jsonl => {
                lines.extend_from_slice(b"{\"time\":");
                push_time(clock, (Some(at_ns), self.first_ns), layout.times == TimeBase::Clock, lines);
            }
        }
        for column in &self.columns {
            column.write(at_ns, layout.form, lines);
        }
        lines.extend_from_slice(if layout.form == ValueForm::Jsonl { b"}\n" } else { b"\n" });
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
        let Remarks { skipped_gaps, beginnings, without_time } = self.remarks;
        if skipped_gaps > 0 {
            let gaps = counted(skipped_gaps, "gap");
            notes.push(format!("the grid leaves out {gaps} of more than {LINES_IN_A_GAP} lines each"));
        }
        if beginnings > 0 {
            notes.push(format!("the time falls back {}; the grid begins anew there", counted(beginnings, "time")));
        }
        if without_time > 0 {
            notes.push(format!("{} without a time cannot stand in the grid", counted(without_time, "frame")));
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

    fn column(&self, event: &Event<'_>, signal: SignalId) -> Option<usize> {
        let places = &self.places[event.frame.index()];
        let (_, columns) = places.iter().find(|(network, _)| *network == event.network)?;
        columns[signal.index()]
    }
}

impl<W: Write> Sink for GridSink<'_, W> {
    fn begin(&mut self, event: &Event<'_>) {
        self.first_ns = event.first_time_ns;
        match event.time_ns {
            Some(now_ns) => self.catch_up(now_ns),
            None => self.remarks.without_time += 1,
        }
    }

    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let (Some(time_ns), Some(column)) = (event.time_ns, self.column(event, signal)) else { return };
        if self.shows(event) {
            self.columns[column].held.get_or_insert_with(Held::default).hear(time_ns, &reading);
        }
    }

    fn end(&mut self, _event: &Event<'_>, _outcome: &FrameOutcome) -> io::Result<()> {
        pass_on(&mut self.lines, self.to, CHUNK_BYTES)
    }
}

/// The columns while they are being laid out.
#[derive(Default)]
struct Columns {
    columns: Vec<Column>,
    places: Vec<Vec<(NetworkId, Vec<Option<usize>>)>>,
    by_title: BTreeMap<String, usize>,
}

impl Columns {
    fn add_frame(
        &mut self,
        database: &Database,
        decoder: &Decoder,
        (frame, id): (&Frame, FrameId),
        wanted: &impl Fn(NetworkId, FrameId, SignalId) -> bool,
    ) {
        let mut places = Vec::new();
        for appearance in &frame.seen_on {
            let network = &database.networks[appearance.network.index()].label.name;
            let suffix = if frame.seen_on.len() > 1 { format!(" on {network}") } else { String::new() };
            let signals = (0..frame.signals.len() as u32).map(SignalId);
            let columns = signals.map(|signal| {
                let unit = decoder.unit(id, signal).map(|unit| format!(" [{}]", unit.as_str())).unwrap_or_default();
                let title = format!("{}.{}{suffix}{unit}", frame.label.name, frame.signals[signal.index()].label.name);
                wanted(appearance.network, id, signal).then(|| self.column(title, frame))
            });
            places.push((appearance.network, columns.collect()));
        }
        self.places.push(places);
    }

    /// Signals of one name and unit are one column: they stand on pages of which only one holds at a time.
    fn column(&mut self, title: String, frame: &Frame) -> usize {
        if let Some(known) = self.by_title.get(&title) {
            return *known;
        }
        let width = unicode_width::UnicodeWidthStr::width(title.as_str()).max(COLUMN_WIDTH);
        self.by_title.insert(title.clone(), self.columns.len());
        let timeout_ns = frame.sending.missing_after().map(|after| i64::try_from(after.0).unwrap_or(i64::MAX));
        self.columns.push(Column { title, width, timeout_ns, held: None });
        self.columns.len() - 1
    }
}

impl Column {
    /// Appends what the column holds at a time, unless it is too old.
    fn write(&self, at_ns: i64, form: ValueForm, to: &mut Vec<u8>) {
        let held =
            self.held.as_ref().filter(|held| self.timeout_ns.is_none_or(|timeout| held.age_ns(at_ns) <= timeout));
        match form {
            ValueForm::Csv => {
                to.push(b',');
                if let Some(held) = held {
                    held.push_csv(to);
                }
            }
            ValueForm::Table => {
                to.extend_from_slice(b"  ");
                let cell = held.map(Held::for_people).unwrap_or_default();
                push_right(cell.as_bytes(), self.width, to);
            }
            ValueForm::Jsonl => {
                to.extend_from_slice(format!(",{}:", string(&self.title)).as_bytes());
                match held {
                    Some(held) => held.push_json(to),
                    None => to.extend_from_slice(b"null"),
                }
            }
        }
    }
}
