//! A grid as lines: one line a moment, a column for every signal.

use std::borrow::Cow;
use std::io::{self, Write};

use unicode_width::UnicodeWidthStr;
use wirelore_decode::{Reading, Value};
use wirelore_lang::render::visible;
use wirelore_model::Database;
use wirelore_tables::{GridColumn, GridColumns, GridRemarks, GridRows, ROWS_IN_A_GAP};

use super::cell::{push_state, push_value};
use super::csv::Fields;
use super::jsonl::{push_json_value, push_string, push_time, string};
use super::table::push_right;
use super::{CHUNK_BYTES, LineForm, pass_on};
use crate::args::TimeBase;
use crate::moment::Clock;
use crate::summary::counted;

/// The least width of a column of a table.
const COLUMN_WIDTH: usize = 8;

/// Writes the rows of a grid as lines.
pub(crate) struct GridLines<'w, W> {
    form: LineForm,
    times: TimeBase,
    fields: Fields,
    /// For a table: how wide each column is.
    widths: Vec<usize>,
    to: &'w mut W,
    lines: Vec<u8>,
}

impl<'w, W: Write> GridLines<'w, W> {
    /// Lines for a grid of these columns, with their heading where the form has one.
    pub(crate) fn new(
        database: &Database,
        columns: &GridColumns,
        (form, fields): (LineForm, Fields),
        times: TimeBase,
        to: &'w mut W,
    ) -> Self {
        let marked: Vec<String> = columns.columns().iter().map(|column| marked_name(database, column)).collect();
        let widths = marked.iter().map(|name| name.width().max(COLUMN_WIDTH)).collect();
        let mut grid = Self { form, times, fields, widths, to, lines: Vec::new() };
        grid.heading(columns.columns(), &marked);
        grid
    }

    fn heading(&mut self, columns: &[GridColumn], marked: &[String]) {
        let lines = &mut self.lines;
        match self.form {
            LineForm::Csv => {
                lines.extend_from_slice(b"time");
                for column in columns {
                    lines.push(b',');
                    lines.extend_from_slice(self.fields.text(column.name()).as_bytes());
                }
                lines.push(b'\n');
            }
            LineForm::Table => {
                push_right(b"time", self.times.width(), lines);
                for (name, width) in marked.iter().zip(&self.widths) {
                    lines.extend_from_slice(b"  ");
                    push_right(name.as_bytes(), *width, lines);
                }
                lines.push(b'\n');
            }
            LineForm::Jsonl => {}
        }
    }

    fn time(&mut self, at_ns: i64, first_ns: Option<i64>) {
        let clock = Clock::new(self.times);
        match self.form {
            LineForm::Csv => clock.write(Some(at_ns), first_ns, &mut self.lines),
            LineForm::Table => {
                let mut time = Vec::new();
                clock.write(Some(at_ns), first_ns, &mut time);
                push_right(&time, self.times.width(), &mut self.lines);
            }
            LineForm::Jsonl => {
                self.lines.extend_from_slice(b"{\"time\":");
                push_time(clock, (Some(at_ns), first_ns), self.times == TimeBase::Clock, &mut self.lines);
            }
        }
    }
}

impl<W: Write> GridRows for GridLines<'_, W> {
    fn row(&mut self, at_ns: i64, first_ns: Option<i64>, columns: &[GridColumn]) -> io::Result<()> {
        self.time(at_ns, first_ns);
        let lines = &mut self.lines;
        for (column, width) in columns.iter().zip(&self.widths) {
            let reading = column.reading_at(at_ns);
            match self.form {
                LineForm::Csv => {
                    lines.push(b',');
                    reading.iter().for_each(|reading| push_csv(reading, self.fields, lines));
                }
                LineForm::Table => {
                    lines.extend_from_slice(b"  ");
                    let cell = reading.map(|reading| for_people(&reading)).unwrap_or_default();
                    push_right(cell.as_bytes(), *width, lines);
                }
                LineForm::Jsonl => {
                    lines.extend_from_slice(format!(",{}:", string(column.name())).as_bytes());
                    match reading {
                        Some(reading) => push_json(&reading, lines),
                        None => lines.extend_from_slice(b"null"),
                    }
                }
            }
        }
        lines.extend_from_slice(if self.form == LineForm::Jsonl { b"}\n" } else { b"\n" });
        pass_on(lines, self.to, CHUNK_BYTES)
    }

    fn finish(&mut self) -> io::Result<()> {
        pass_on(&mut self.lines, self.to, 0)
    }
}

/// What stands above a column for people, with a mark where it is not certain what it shows.
fn marked_name(database: &Database, column: &GridColumn) -> String {
    let (frame, signal) = column.signal();
    let mark = database.certainty(frame, signal).and_then(|certainty| certainty.grade.mark());
    format!("{}{}", visible(column.name()), mark.map_or_else(String::new, |mark| format!(" {mark}")))
}

/// The number of a reading, unless a word stands for it.
fn number<'r>(reading: &'r Reading<'_>) -> Option<&'r Value<'r>> {
    (reading.word.is_none() && matches!(reading.value, Value::Integer(_) | Value::Number(_))).then_some(&reading.value)
}

/// The state word where there is one, else what is said in the place of a number.
fn words<'r>(reading: &'r Reading<'_>) -> Cow<'r, str> {
    if let Some(word) = reading.word {
        return Cow::Borrowed(word);
    }
    let mut words = Vec::new();
    push_value(&reading.value, &mut words);
    if words.is_empty() {
        push_state(reading, None, &mut words);
    }
    Cow::Owned(String::from_utf8_lossy(&words).into_owned())
}

fn push_csv(reading: &Reading<'_>, fields: Fields, to: &mut Vec<u8>) {
    match number(reading) {
        Some(value) => push_value(value, to),
        None => to.extend_from_slice(fields.text(&words(reading)).as_bytes()),
    }
}

fn push_json(reading: &Reading<'_>, to: &mut Vec<u8>) {
    match number(reading) {
        Some(value) => push_json_value(value, to),
        None => push_string(&words(reading), to),
    }
}

/// For a table, without control characters.
fn for_people(reading: &Reading<'_>) -> String {
    match number(reading) {
        Some(value) => {
            let mut text = Vec::new();
            push_value(value, &mut text);
            String::from_utf8_lossy(&text).into_owned()
        }
        None => visible(&words(reading)).into_owned(),
    }
}

/// What the reader of a grid must know, a sentence each.
pub(crate) fn notes(remarks: &GridRemarks, database: &Database) -> Vec<String> {
    let mut notes = Vec::new();
    for group in &remarks.several_senders {
        let mut others: Vec<String> = group.left_out.iter().map(ToString::to_string).collect();
        if group.and_others {
            others.push("others".to_owned());
        }
        notes.push(format!(
            "frame {} came from several senders; the grid shows {} and leaves out {}",
            database.frames[group.frame.index()].label.name,
            group.shown,
            others.join(", ")
        ));
    }
    if remarks.skipped_gaps > 0 {
        let gaps = counted(remarks.skipped_gaps, "gap");
        notes.push(format!("the grid leaves out {gaps} of more than {ROWS_IN_A_GAP} lines each"));
    }
    if remarks.beginnings > 0 {
        notes.push(format!("the time falls back {}; the grid begins anew there", counted(remarks.beginnings, "time")));
    }
    if remarks.without_time > 0 {
        notes.push(format!("{} without a time cannot stand in the grid", counted(remarks.without_time, "frame")));
    }
    notes
}
