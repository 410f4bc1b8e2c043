//! The table that is printed.

use std::fmt;

use crate::race::{Runner, Times};
use crate::spread::Spread;

/// What is to be reached, and what must not be missed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Goal {
    /// So many times the rival's time at most.
    AtMost { reach: f64, floor: f64 },
    /// So many times faster than the rival.
    Faster { reach: f64, floor: f64 },
    /// So many milliseconds of CPU time at most.
    Milliseconds { reach: f64, floor: f64 },
    /// The number is told.
    Stated,
}

impl Goal {
    fn verdict(self, value: f64) -> &'static str {
        let (reached, held) = match self {
            Self::AtMost { reach, floor } | Self::Milliseconds { reach, floor } => (value <= reach, value <= floor),
            Self::Faster { reach, floor } => (value >= reach, value >= floor),
            Self::Stated => return "stated",
        };
        match (reached, held) {
            (true, _) => "reached",
            (false, true) => "above the floor",
            (false, false) => "MISSED",
        }
    }
}

impl fmt::Display for Goal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::AtMost { reach, floor } => write!(f, "{reach} x ({floor})"),
            Self::Faster { reach, floor } => write!(f, "{reach} x faster ({floor})"),
            Self::Milliseconds { reach, floor } => write!(f, "{reach} ms ({floor})"),
            Self::Stated => f.write_str("stated"),
        }
    }
}

/// How much work one run is.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Work {
    /// What is counted: `frame`, `value`, ...
    pub(crate) item: &'static str,
    pub(crate) items: u64,
    /// Bytes that are read (or written, for outputs); 0: not told.
    pub(crate) bytes: u64,
}

/// One line.
#[derive(Debug)]
pub(crate) struct Row {
    measure: String,
    rival: String,
    goal: Goal,
    work: Work,
    ratio: Option<Spread>,
    ours: Spread,
    theirs: Option<Spread>,
    note: Option<String>,
}

impl Row {
    /// A contender against its rival in the same race.
    pub(crate) fn pair(
        work: Work,
        times: &Times,
        (measure, ours): (&str, Runner),
        (rival, theirs): (&str, Runner),
        goal: Goal,
    ) -> Self {
        let ratio = match goal {
            Goal::Faster { .. } => times.ratio(theirs, ours),
            _ => times.ratio(ours, theirs),
        };
        Self {
            measure: measure.to_owned(),
            rival: rival.to_owned(),
            goal,
            work,
            ratio: Some(ratio),
            ours: times.of(ours),
            theirs: Some(times.of(theirs)),
            note: None,
        }
    }

    /// A measurement that stands alone.
    pub(crate) fn alone(work: Work, measure: &str, ours: Spread) -> Self {
        Self {
            measure: measure.to_owned(),
            rival: "-".to_owned(),
            goal: Goal::Stated,
            work,
            ratio: None,
            ours,
            theirs: None,
            note: None,
        }
    }

    /// The same row with a sentence below the table.
    pub(crate) fn with_note(mut self, note: String) -> Self {
        self.note = Some(note);
        self
    }

    fn cells(&self) -> [String; 9] {
        let dash = || "-".to_owned();
        let value = match self.goal {
            Goal::Milliseconds { .. } => self.ours.median / 1e6,
            _ => self.ratio.map_or(f64::NAN, |ratio| ratio.median),
        };
        [
            self.measure.clone(),
            self.rival.clone(),
            self.ratio.map_or_else(dash, |ratio| {
                format!("{} ({}..{})", digits(ratio.median), digits(ratio.lower), digits(ratio.upper))
            }),
            self.goal.to_string(),
            self.goal.verdict(value).to_owned(),
            format!("{} a {}", time(self.ours.median / self.work.items as f64), self.work.item),
            self.gigabytes_per_second(Some(self.ours)),
            self.theirs.map_or_else(dash, |theirs| time(theirs.median / self.work.items as f64)),
            self.gigabytes_per_second(self.theirs),
        ]
    }

    fn gigabytes_per_second(&self, spread: Option<Spread>) -> String {
        match spread {
            Some(spread) if self.work.bytes > 0 => format!("{:.2}", self.work.bytes as f64 / spread.median),
            _ => "-".to_owned(),
        }
    }
}

/// All rows, in the order in which they were measured.
#[derive(Debug, Default)]
pub(crate) struct Table(Vec<Row>);

impl Table {
    pub(crate) fn extend(&mut self, rows: Vec<Row>) {
        self.0.extend(rows);
    }
}

impl fmt::Display for Table {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let heads =
            ["measure", "against", "ratio (quartiles)", "reach (floor)", "verdict", "ours", "GB/s", "rival", "GB/s"];
        let mut lines = vec![heads.map(str::to_owned), std::array::from_fn(|_| "---".to_owned())];
        lines.extend(self.0.iter().map(Row::cells));
        let widths: [usize; 9] = std::array::from_fn(|column| {
            lines.iter().map(|cells| cells[column].chars().count()).max().unwrap_or_default()
        });
        for cells in &lines {
            for (cell, width) in cells.iter().zip(widths) {
                write!(f, "| {cell:width$} ")?;
            }
            writeln!(f, "|")?;
        }
        writeln!(f)?;
        self.0
            .iter()
            .filter_map(|row| Some((row, row.note.as_ref()?)))
            .try_for_each(|(row, note)| writeln!(f, "- {}: {note}", row.measure))
    }
}

/// Three digits that count.
fn digits(value: f64) -> String {
    match value {
        _ if value >= 100.0 => format!("{value:.0}"),
        _ if value >= 10.0 => format!("{value:.1}"),
        _ => format!("{value:.2}"),
    }
}

fn time(time_ns: f64) -> String {
    match time_ns {
        _ if time_ns >= 1e6 => format!("{} ms", digits(time_ns / 1e6)),
        _ if time_ns >= 1.0 => format!("{} ns", digits(time_ns)),
        _ => format!("{time_ns:.3} ns"),
    }
}
