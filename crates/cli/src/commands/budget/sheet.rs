//! Figures in rows and columns: aligned for people, as csv, or as JSON objects.

use serde_json::{Map, Value};
use unicode_width::UnicodeWidthStr;
use wirelore_draw::share_text;
use wirelore_model::Label;

use crate::output::csv::Fields;
use crate::output::table::padded;

/// One figure. People see it rounded and with its unit, programs as it is.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Cell {
    /// Words.
    Text(String),
    /// The name of something that is not certain, with its mark for people.
    Doubted(String, char),
    /// A whole number.
    Count(u64),
    /// So much a second.
    Rate(f64),
    /// A part of a whole: percent for people, 0.25 for programs.
    Share(f64),
    /// A time in nanoseconds: with a fitting unit for people, milliseconds for programs.
    Time(i128),
    /// There is none.
    Nothing,
}

impl Cell {
    pub(super) fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into())
    }

    /// The name of an item, or a text for it, with a mark for people where its author is not certain of it.
    pub(super) fn name(label: &Label, text: impl Into<String>) -> Self {
        match label.certainty.as_ref().and_then(|certainty| certainty.grade.mark()) {
            Some(mark) => Self::Doubted(text.into(), mark),
            None => Self::Text(text.into()),
        }
    }

    pub(super) fn share(share: Option<f64>) -> Self {
        share.map_or(Self::Nothing, Self::Share)
    }

    pub(super) fn time(time_ns: Option<u64>) -> Self {
        time_ns.map_or(Self::Nothing, |time| Self::Time(time.into()))
    }

    fn shown(&self) -> String {
        match self {
            Self::Text(text) => text.clone(),
            Self::Doubted(text, mark) => format!("{text} {mark}"),
            Self::Count(count) => crate::summary::grouped(*count),
            Self::Rate(rate) => rate_text(*rate),
            Self::Share(share) => share_text(*share),
            Self::Time(time) => time_text(*time),
            Self::Nothing => "-".to_owned(),
        }
    }

    fn plain(&self, fields: Fields) -> String {
        match self {
            Self::Text(text) | Self::Doubted(text, _) => fields.text(text),
            Self::Count(count) => count.to_string(),
            Self::Rate(number) | Self::Share(number) => number.to_string(),
            Self::Time(time) => milliseconds(*time).to_string(),
            Self::Nothing => String::new(),
        }
    }

    fn json(&self) -> Value {
        match self {
            Self::Text(text) | Self::Doubted(text, _) => text.clone().into(),
            Self::Count(count) => (*count).into(),
            Self::Rate(number) | Self::Share(number) => (*number).into(),
            Self::Time(time) => milliseconds(*time).into(),
            Self::Nothing => Value::Null,
        }
    }
}

fn milliseconds(time_ns: i128) -> f64 {
    time_ns as f64 / 1e6
}

/// Below this a figure has two digits behind the point.
const LITTLE: f64 = 0.995;

/// `12.5`, and `0.05` where one digit would say nothing.
pub(super) fn rate_text(rate: f64) -> String {
    if rate != 0.0 && rate.abs() < LITTLE { format!("{rate:.2}") } else { format!("{rate:.1}") }
}

/// `270 µs`, `3.5 ms`, `1.25 s`: four digits at most.
pub(super) fn time_text(time_ns: i128) -> String {
    let size = time_ns.unsigned_abs();
    let (scale, unit) = match size {
        0 => (1.0, "s"),
        1..1_000 => (1.0, "ns"),
        1_000..1_000_000 => (1e3, "µs"),
        1_000_000..1_000_000_000 => (1e6, "ms"),
        _ => (1e9, "s"),
    };
    let number = time_ns as f64 / scale;
    let decimals = match number.abs() {
        0.0..10.0 => 3,
        10.0..100.0 => 2,
        100.0..1000.0 => 1,
        _ => 0,
    };
    let text = format!("{number:.decimals$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    format!("{text} {unit}")
}

/// A column: what people and what programs call it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Column {
    pub(super) heading: &'static str,
    pub(super) key: &'static str,
    /// Words stand to the left, figures to the right.
    is_text: bool,
}

pub(super) const fn words(heading: &'static str, key: &'static str) -> Column {
    Column { heading, key, is_text: true }
}

pub(super) const fn figures(heading: &'static str, key: &'static str) -> Column {
    Column { heading, key, is_text: false }
}

/// Rows of cells under headings.
#[derive(Debug, Clone)]
pub(super) struct Sheet {
    columns: Vec<Column>,
    rows: Vec<Vec<Cell>>,
}

impl Sheet {
    pub(super) fn new(columns: &[Column]) -> Self {
        Self { columns: columns.to_vec(), rows: Vec::new() }
    }

    pub(super) fn push(&mut self, row: Vec<Cell>) {
        debug_assert_eq!(row.len(), self.columns.len());
        self.rows.push(row);
    }

    pub(super) fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// Whether something in it has this mark.
    pub(super) fn has_mark(&self, mark: char) -> bool {
        self.rows.iter().flatten().any(|cell| matches!(cell, Cell::Doubted(_, other) if *other == mark))
    }

    /// Aligned columns; one that is empty in every row is left out.
    pub(super) fn table(&self) -> String {
        let shown: Vec<Vec<String>> = self.rows.iter().map(|row| row.iter().map(Cell::shown).collect()).collect();
        let is_wanted = |at: &usize| self.rows.iter().any(|row| row[*at] != Cell::Nothing);
        let wanted: Vec<usize> = (0..self.columns.len()).filter(is_wanted).collect();
        let width = |at: usize| {
            let cells = shown.iter().map(|row| padded(&row[at], 0).width());
            cells.chain([self.columns[at].heading.width()]).max().unwrap_or_default()
        };
        let widths: Vec<usize> = wanted.iter().map(|at| width(*at)).collect();
        let mut text = String::new();
        let headings = self.columns.iter().map(|column| column.heading.to_owned()).collect();
        for row in std::iter::once(&headings).chain(&shown) {
            let mut line = String::new();
            for (at, width) in wanted.iter().zip(&widths) {
                let cell = padded(&row[*at], 0);
                let blanks = " ".repeat(width.saturating_sub(cell.width()));
                let parts = if self.columns[*at].is_text { [cell, blanks] } else { [blanks, cell] };
                line.push_str(if line.is_empty() { "" } else { "  " });
                line.extend(parts);
            }
            text.push_str(line.trim_end());
            text.push('\n');
        }
        text
    }

    /// RFC 4180, with a header line.
    pub(super) fn csv(&self, fields: Fields) -> String {
        let line = |cells: Vec<String>| format!("{}\n", cells.join(","));
        let header = line(self.columns.iter().map(|column| column.key.to_owned()).collect());
        let rows = self.rows.iter().map(|row| line(row.iter().map(|cell| cell.plain(fields)).collect()));
        std::iter::once(header).chain(rows).collect()
    }

    /// A list of objects.
    pub(super) fn json(&self) -> Value {
        let object = |row: &Vec<Cell>| {
            let pairs = self.columns.iter().zip(row).map(|(column, cell)| (column.key.to_owned(), cell.json()));
            Value::Object(pairs.collect::<Map<_, _>>())
        };
        Value::Array(self.rows.iter().map(object).collect())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_for_people() {
        for (time_ns, text) in [
            (0, "0 s"),
            (270_000, "270 µs"),
            (3_500_000, "3.5 ms"),
            (12_345_678, "12.35 ms"),
            (1_000_000_000, "1 s"),
            (-2_000_000, "-2 ms"),
            (999_999, "1000 µs"),
        ] {
            assert_eq!(time_text(time_ns), text);
        }
        assert_eq!(
            (share_text(0.657_12), share_text(0.0022), share_text(0.0)),
            ("65.7 %".to_owned(), "0.22 %".to_owned(), "0 %".to_owned())
        );
    }

    /// Wide and right-to-left characters count by the columns that they take.
    #[test]
    fn names_of_all_scripts_are_aligned() {
        let mut sheet = Sheet::new(&[words("frame", "frame"), figures("bytes", "bytes"), figures("none", "none")]);
        for name in ["a", "车速", "سرعة"] {
            sheet.push(vec![Cell::text(name), Cell::Count(8), Cell::Nothing]);
        }
        let table = sheet.table();
        let widths: Vec<usize> = table.lines().map(UnicodeWidthStr::width).collect();
        assert_eq!(widths, [12; 4], "{table}");
        assert_eq!(sheet.csv(Fields::Exact).lines().next(), Some("frame,bytes,none"));
    }
}
