//! One table for each frame of the description: gathered rows in, columns out.

use std::fmt;
use std::io;

use wirelore_model::{Database, Frame, FrameId, NetworkId};

use super::bitmap::Bitmap;
use super::block::{Block, Column};
use super::decode::{Source, count_codes, numbers};
use super::gather::Gatherer;
use super::instruction_sets::InstructionSet;
use super::packed::BLOCK_BYTES;
use super::plan::{ColumnPlan, Store, TablePlan};
use super::rows::{RowSlice, Rows};
use super::workspace::{RowVerdict, Window, Workspace};
use crate::checks::{Checks, Sender};
use crate::decoder::Decoder;
use crate::plan::{FramePlan, Group, Visit};
use crate::reading::{FrameOutcome, Unmatched};
use crate::room::longest_payload;
use crate::session::Tally;
use crate::threads::share;

/// Takes the columns of one table: for each block `block`, then each wanted signal once in the order of the description, then `end`.
pub trait TableSink: Send {
    /// A block begins.
    fn block(&mut self, block: &Block<'_>);

    /// One of its columns. It cannot fail: what goes wrong is told at the block's end.
    fn column(&mut self, column: &Column<'_>);

    /// The block ends.
    ///
    /// # Errors
    /// Whatever keeps the receiver from taking more; the session then stops with [`SessionError::Sink`](crate::SessionError::Sink).
    fn end(&mut self) -> io::Result<()> {
        Ok(())
    }
}

/// Makes the sink for a frame when its first rows come.
type Open<'d, S> = Box<dyn FnMut(FrameId) -> io::Result<S> + 'd>;

/// The tables of a session: one for each described frame that turns up.
///
/// The blocks of one table come in the order of the log; those of different tables come in any order, and from several threads.
pub struct Tables<'d, S> {
    plans: Box<[TablePlan]>,
    /// What waits for being decoded.
    gatherer: Gatherer,
    /// By frame.
    tables: Vec<Table<S>>,
    open: Open<'d, S>,
}

impl<S> fmt::Debug for Tables<'_, S> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Tables").field("plans", &self.plans).finish_non_exhaustive()
    }
}

impl<'d, S: TableSink> Tables<'d, S> {
    /// Tables for the frames of a decoder that was made from this database. `open` makes the sink for a frame when it turns up.
    pub fn new(
        database: &Database,
        decoder: &Decoder,
        store: Store,
        open: impl FnMut(FrameId) -> io::Result<S> + 'd,
    ) -> Self {
        let frames = (0..).map(FrameId).zip(&database.frames);
        let plan = |(id, frame): (FrameId, &Frame)| {
            Some(TablePlan::new(frame, decoder.plan(id)?, longest_payload(database, frame), store))
        };
        let plans: Box<[TablePlan]> = frames.filter_map(plan).collect();
        let gatherer = gatherer_of(&plans);
        let tables = plans.iter().map(|_| Table::default()).collect();
        Self { plans, gatherer, tables, open: Box::new(open) }
    }

    /// The sinks of the frames that turned up, in the order of the description.
    pub fn into_sinks(self) -> impl Iterator<Item = (FrameId, S)> {
        (0..).map(FrameId).zip(self.tables).filter_map(|(frame, table)| Some((frame, table.sink?)))
    }

    /// Where frames are gathered that are to be decoded next.
    pub(crate) fn gatherer(&mut self) -> &mut Gatherer {
        &mut self.gatherer
    }

    /// Takes over rows that were gathered elsewhere, each a run of the log in the log's order, and decodes every table that then holds at
    /// least so many rows, one or more.
    pub(crate) fn decode(
        &mut self,
        context: &Context<'_>,
        gathered: &[&[Rows]],
        least_rows: usize,
        workspaces: &mut [Workspace],
    ) -> io::Result<()> {
        let mut jobs = Vec::new();
        let tables = self.tables.iter_mut().zip(self.gatherer.rows_mut()).zip(&self.plans);
        for (frame, ((table, rows), plan)) in (0..).map(FrameId).zip(tables) {
            let others = gathered.iter().filter_map(|rows| rows.get(frame.index()));
            let more = others.clone().map(Rows::weight).sum::<usize>();
            if rows.weight() + more >= least_rows {
                if table.sink.is_none() {
                    table.sink = Some((self.open)(frame)?);
                }
                jobs.push((frame, table, rows, plan));
            } else if more > 0 {
                others.for_each(|others| rows.append(others));
            }
        }
        share(jobs, workspaces, |(frame, table, rows, plan), work| {
            for others in gathered.iter().filter_map(|rows| rows.get(frame.index())) {
                // Enough rows are decoded where they lie; a few wait for more.
                if rows.is_empty() && others.weight() >= least_rows {
                    table.decode(context, frame, (plan, others), work)?;
                    continue;
                }
                rows.append(others);
                if rows.weight() >= least_rows {
                    table.decode(context, frame, (plan, rows), work)?;
                    rows.clear();
                }
            }
            if rows.weight() >= least_rows {
                table.decode(context, frame, (plan, rows), work)?;
                rows.clear();
            }
            Ok(())
        })
    }

    /// Forgets what counters said: another log begins.
    pub(crate) fn end_log(&mut self) {
        for table in &mut self.tables {
            table.checks = Checks::default();
        }
    }

    /// Adds what the tables counted to the tally of the session.
    pub(crate) fn settle(&mut self, tally: &mut Tally) {
        for table in &mut self.tables {
            if let Some(counted) = table.tally.as_mut().filter(|_| table.has_counted) {
                tally.take_over(counted);
                table.has_counted = false;
            }
        }
    }

    /// Another gatherer for the same tables, for another thread.
    pub(crate) fn another_gatherer(&self) -> Gatherer {
        gatherer_of(&self.plans)
    }
}

/// A gatherer for tables.
fn gatherer_of(plans: &[TablePlan]) -> Gatherer {
    let keeps_origins = plans.iter().map(|plan| plan.keeps_origins).collect();
    Gatherer::new(plans.iter().map(TablePlan::rows).collect(), keeps_origins)
}

/// What the decoding of every table has in common.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Context<'a> {
    pub(crate) decoder: &'a Decoder,
    /// By channel.
    pub(crate) networks: &'a [Option<NetworkId>],
    pub(crate) first_time_ns: Option<i64>,
    pub(crate) set: InstructionSet,
}

/// What a table keeps from block to block.
#[derive(Debug)]
struct Table<S> {
    checks: Checks,
    /// What was counted since the session's tally was told, if anything.
    tally: Option<Box<Tally>>,
    has_counted: bool,
    sink: Option<S>,
}

impl<S> Default for Table<S> {
    fn default() -> Self {
        Self { checks: Checks::default(), tally: None, has_counted: false, sink: None }
    }
}

impl<S: TableSink> Table<S> {
    /// Decodes all rows, block by block.
    fn decode(
        &mut self,
        context: &Context<'_>,
        frame: FrameId,
        (table, gathered): (&TablePlan, &Rows),
        work: &mut Workspace,
    ) -> io::Result<()> {
        let (Some(plan), Some(sink)) = (context.decoder.plan(frame), self.sink.as_mut()) else {
            return Ok(());
        };
        let tally = self.tally.get_or_insert_default();
        self.has_counted = true;
        let (mut first, count, mut laid_out) = (0, gathered.len(), std::mem::take(&mut work.laid_out));
        while first < count {
            let rows = gathered.block(first, &mut laid_out);
            first += rows.len();
            work.verdicts.clear();
            let mut job = Job { context, frame, plan, rows, tally, work };
            if !plan.checks.is_empty() {
                job.check(&mut self.checks);
            }
            job.count();
            job.columns(&table.columns, sink)?;
        }
        // A message may have been a giant.
        laid_out.clear();
        laid_out.shrink_to(BLOCK_BYTES);
        work.laid_out = laid_out;
        Ok(())
    }
}

/// One block under way.
struct Job<'a> {
    context: &'a Context<'a>,
    frame: FrameId,
    plan: &'a FramePlan,
    rows: RowSlice<'a>,
    tally: &'a mut Tally,
    work: &'a mut Workspace,
}

impl Job<'_> {
    /// Counters, checksums and protections, frame by frame.
    fn check(&mut self, checks: &mut Checks) {
        for row in 0..self.rows.len() {
            let tag = self.rows.tag(row);
            let network = self.context.networks.get(usize::from(tag.channel().0)).copied().flatten();
            let network = network.unwrap_or(NetworkId(0));
            let sender = Sender { channel: tag.channel(), network, frame: self.frame, source: tag.address() };
            let (tally, verdicts) = (&mut *self.tally, &mut self.work.verdicts);
            checks.frame(
                self.context.decoder,
                sender,
                self.rows.origin(row),
                self.rows.payload(row),
                |signal, verdict| {
                    tally.verdict(network, self.frame, verdict);
                    verdicts.push(RowVerdict { row: row as u16, signal, verdict });
                },
            );
        }
    }

    /// Finds out which groups of signals each frame has, and counts the frames.
    fn count(&mut self) {
        let (plan, rows) = (self.plan, self.rows);
        if let (true, Some(tag)) = (plan.switches.is_empty() && !plan.has_sizes, rows.uniform()) {
            let mut frame = Walk::new(plan, (tag.length(), &[]), None);
            plan.walk(&[], &mut frame);
            self.tally.decoded(&frame.outcome(), rows.len() as u64);
            return;
        }
        let groups = if plan.switches.is_empty() { 0 } else { plan.groups.len() };
        self.work.rows_of.resize_with(groups, Vec::new);
        self.work.rows_of.iter_mut().for_each(Vec::clear);
        for row in 0..rows.len() {
            let payload = rows.payload(row);
            let held = (rows.tag(row).length(), payload);
            let mut frame = Walk::new(plan, held, Some((row as u16, &mut self.work.rows_of)));
            plan.walk(payload, &mut frame);
            self.tally.decoded(&frame.outcome(), 1);
            for told in frame.unmatched {
                self.tally.unmatched(self.frame, told);
            }
        }
    }

    /// Decodes every column and hands it over.
    fn columns(&mut self, columns: &[ColumnPlan], sink: &mut impl TableSink) -> io::Result<()> {
        let Workspace { times_ns, windows, picked, output, rows_of, verdicts, laid_out: _ } = &mut *self.work;
        let count = self.rows.len();
        windows.iter_mut().for_each(Window::forget);
        self.rows.times_ns(self.context.set, &mut times_ns[..]);
        let block = Block {
            frame: self.frame,
            plan: self.plan,
            words: self.context.decoder.words(),
            rows: self.rows,
            times_ns: &times_ns[..count],
            first_time_ns: self.context.first_time_ns,
            networks: self.context.networks,
            verdicts,
        };
        sink.block(&block);
        for (index, column) in columns.iter().enumerate() {
            let Some(detail) = self.plan.details.get(column.step) else {
                continue;
            };
            let with_pages = !self.plan.switches.is_empty();
            let rows = rows_of.get(column.group).filter(|rows| with_pages && rows.len() < count).map(Vec::as_slice);
            let present = rows.map(|rows| Bitmap::of(count, rows));
            let source = Source { block: &block, column, set: self.context.set, rows };
            let valid = match column.number {
                Some(number) => numbers(&source, number, (windows, picked), output, self.tally),
                None => {
                    count_codes(&source, self.tally);
                    None
                }
            };
            sink.column(&Column {
                index,
                signal: column.signal,
                block: &block,
                detail,
                numbers: column.number.map(|number| output.numbers(number, count)),
                valid: valid.as_ref(),
                present: present.as_ref(),
            });
        }
        sink.end()
    }
}

/// Walks through the groups of one frame: what is there, and how the decoding went.
struct Walk<'a> {
    plan: &'a FramePlan,
    length: u32,
    /// As far as it is described.
    payload: &'a [u8],
    is_cut_off: bool,
    /// The row, and where it is noted by group.
    noted: Option<(u16, &'a mut Vec<Vec<u16>>)>,
    least_bytes: Option<u32>,
    outcome: FrameOutcome,
    unmatched: Vec<Unmatched>,
}

impl<'a> Walk<'a> {
    fn new(
        plan: &'a FramePlan,
        (length, payload): (u32, &'a [u8]),
        noted: Option<(u16, &'a mut Vec<Vec<u16>>)>,
    ) -> Self {
        let (outcome, unmatched) = (FrameOutcome::default(), Vec::new());
        Self { plan, length, payload, is_cut_off: false, noted, least_bytes: None, outcome, unmatched }
    }

    fn outcome(&self) -> FrameOutcome {
        let too_short = self.least_bytes.map_or(self.outcome.too_short, |least| self.length < least);
        let too_short = too_short || self.is_cut_off;
        FrameOutcome { too_short, ..self.outcome }
    }
}

impl Visit for Walk<'_> {
    fn group(&mut self, group: &Group) {
        self.outcome.readings += group.steps.len() as u32;
        self.outcome.too_short |= self.length < group.needed_bytes;
        self.least_bytes = group.least_bytes.or(self.least_bytes);
        if self.plan.has_sizes {
            let details = self.plan.details.get(group.steps.clone()).unwrap_or_default();
            self.is_cut_off |= details.iter().any(|detail| detail.is_cut_off(self.payload));
        }
        if let Some((row, rows_of)) = &mut self.noted
            && let Some(rows) = rows_of.get_mut(group.number)
        {
            rows.push(*row);
        }
    }

    fn unmatched(&mut self, told: Unmatched) {
        self.unmatched.push(told);
    }
}
