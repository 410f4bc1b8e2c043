//! One row a moment: a column for every signal, the last value held, never past its frame's timeout.
//!
//! The rows stand at whole multiples of their distance from the first frame of the recording, so that two grids of one recording fit
//! together.

mod columns;
mod held;
mod table;

use std::collections::BTreeMap;
use std::io;

pub use columns::{GridColumn, GridColumns};
pub use table::GridTable;
use wirelore_decode::{Event, FrameOutcome, Reading, Sink, Source};
use wirelore_model::{FrameId, NetworkId, SignalId};

pub(crate) use held::Held;

/// The most rows that are made for one gap of a recording; beyond, the grid goes on where the recording does.
pub const ROWS_IN_A_GAP: i64 = 1_000_000;
/// A time that falls back further than this is another beginning, not two channels that are a little out of step.
const FALLS_BACK_NS: i64 = 1_000_000_000;

/// Takes the rows of a grid.
pub trait GridRows {
    /// One row: what `columns` hold at `at_ns` (as the recording counts; its first frame came at `first_ns`).
    ///
    /// # Errors
    /// Whatever keeps the receiver from taking more.
    fn row(&mut self, at_ns: i64, first_ns: Option<i64>, columns: &[GridColumn]) -> io::Result<()>;

    /// No row follows.
    ///
    /// # Errors
    /// Whatever keeps the receiver from writing what it still holds.
    fn finish(&mut self) -> io::Result<()>;
}

/// Makes a row every so often out of what is decoded.
#[derive(Debug)]
pub struct Grid<R> {
    every_ns: i64,
    columns: GridColumns,
    senders: BTreeMap<(NetworkId, FrameId), Senders>,
    first_ns: Option<i64>,
    next_ns: Option<i64>,
    last_ns: i64,
    remarks: GridRemarks,
    rows: R,
    failed: Option<io::Error>,
}

/// What the reader of a grid has to know.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct GridRemarks {
    /// Gaps of the recording of more than [`ROWS_IN_A_GAP`] rows, which are left out.
    pub skipped_gaps: u64,
    /// How often the time falls back, so that the grid begins anew.
    pub beginnings: u64,
    /// Frames without a time, which cannot stand in a grid.
    pub without_time: u64,
    /// Frames that came from several senders.
    pub several_senders: Vec<SeveralSenders>,
}

/// A parameter group or a run of identifiers on a network that several units send: the grid shows the first one heard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SeveralSenders {
    /// The frame.
    pub frame: FrameId,
    /// The sender that is shown.
    pub shown: Source,
    /// Those that are not, as they were heard; the first 255 of them.
    pub left_out: Vec<Source>,
    /// There were more than these.
    pub and_others: bool,
}

/// The most senders that are remembered as left out: all that a parameter group can have.
const LEFT_OUT_MOST: usize = 255;

/// Who sends a frame.
#[derive(Debug)]
struct Senders {
    shown: Source,
    left_out: Vec<Source>,
    and_others: bool,
}

impl Senders {
    fn leave_out(&mut self, source: Source) {
        if self.left_out.contains(&source) {
            return;
        }
        if self.left_out.len() < LEFT_OUT_MOST {
            self.left_out.push(source);
        } else {
            self.and_others = true;
        }
    }
}

impl<R: GridRows> Grid<R> {
    /// A grid with a row every `every_ns` nanoseconds (at least 1).
    pub fn new(columns: GridColumns, every_ns: i64, rows: R) -> Self {
        Self {
            every_ns: every_ns.max(1),
            columns,
            senders: BTreeMap::new(),
            first_ns: None,
            next_ns: None,
            last_ns: i64::MIN,
            remarks: GridRemarks::default(),
            rows,
            failed: None,
        }
    }

    /// Makes the last row and hands over what the reader of the grid has to know.
    ///
    /// # Errors
    /// What the receiver of the rows says.
    pub fn finish(mut self) -> io::Result<GridRemarks> {
        if let Some(next_ns) = self.next_ns {
            self.row(next_ns);
        }
        self.settle()?;
        self.rows.finish()?;
        let several = self.senders.into_iter().filter(|(_, senders)| !senders.left_out.is_empty());
        self.remarks.several_senders = several
            .map(|((_, frame), Senders { shown, left_out, and_others })| SeveralSenders {
                frame,
                shown,
                left_out,
                and_others,
            })
            .collect();
        Ok(self.remarks)
    }

    /// Makes the rows that are due before something new happens at the given time.
    fn catch_up(&mut self, now_ns: i64) {
        if now_ns < self.last_ns.saturating_sub(FALLS_BACK_NS) {
            self.begin_anew();
        }
        self.last_ns = now_ns;
        let every_ns = self.every_ns;
        let first_ns = self.first_ns.unwrap_or(now_ns);
        let mut next_ns = self.next_ns.unwrap_or_else(|| {
            let steps = now_ns.saturating_sub(first_ns).div_euclid(every_ns);
            let before_ns = first_ns.saturating_add(steps.saturating_mul(every_ns));
            if before_ns < now_ns { before_ns.saturating_add(every_ns) } else { before_ns }
        });
        let rows_due = now_ns.saturating_sub(next_ns) / every_ns;
        if rows_due > ROWS_IN_A_GAP {
            self.remarks.skipped_gaps += 1;
            self.row(next_ns);
            next_ns = next_ns.saturating_add(rows_due.saturating_mul(every_ns));
        }
        while next_ns < now_ns && self.failed.is_none() {
            self.row(next_ns);
            next_ns = next_ns.saturating_add(every_ns);
        }
        self.next_ns = Some(next_ns);
    }

    /// The time has fallen back: nothing of what was heard holds any more.
    fn begin_anew(&mut self) {
        if let Some(next_ns) = self.next_ns.take() {
            self.row(next_ns);
        }
        self.columns.columns.iter_mut().for_each(|column| column.held = None);
        self.remarks.beginnings += 1;
    }

    /// One row. A receiver that fails is told of at the end of the frame: until then nothing more goes to it.
    fn row(&mut self, at_ns: i64) {
        if self.failed.is_none() {
            self.failed = self.rows.row(at_ns, self.first_ns, &self.columns.columns).err();
        }
    }

    fn settle(&mut self) -> io::Result<()> {
        self.failed.take().map_or(Ok(()), Err)
    }

    /// Whether the grid shows this frame: of several senders only what the first one says.
    fn shows(&mut self, event: &Event<'_>) -> bool {
        let Some(source) = event.source else { return true };
        let first = || Senders { shown: source, left_out: Vec::new(), and_others: false };
        let senders = self.senders.entry((event.network, event.frame)).or_insert_with(first);
        let is_shown = senders.shown == source;
        if !is_shown {
            senders.leave_out(source);
        }
        is_shown
    }
}

impl<R: GridRows> Sink for Grid<R> {
    fn begin(&mut self, event: &Event<'_>) {
        self.first_ns = event.first_time_ns;
        match event.time_ns {
            Some(now_ns) => self.catch_up(now_ns),
            None => self.remarks.without_time += 1,
        }
    }

    fn reading(&mut self, event: &Event<'_>, signal: SignalId, reading: Reading<'_>) {
        let place = self.columns.place(event.network, event.frame, signal);
        let (Some(time_ns), Some(place)) = (event.time_ns, place) else { return };
        if self.shows(event) {
            self.columns.columns[place].held.get_or_insert_with(Held::new).hear(time_ns, &reading);
        }
    }

    fn end(&mut self, _event: &Event<'_>, _outcome: &FrameOutcome) -> io::Result<()> {
        self.settle()
    }
}
