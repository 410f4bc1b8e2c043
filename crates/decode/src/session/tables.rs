//! Column by column: frames are gathered by their description, and each description's frames are decoded some hundred at a time.
//!
//! With several threads a log is gathered in pieces side by side, and then the tables are decoded side by side: each table sees its rows
//! in the order of the log, whatever thread gathered them.

use std::convert::Infallible;

use wirelore_log::{Frame, Kind, Medium, Piece, PieceEnd, Plain, PlainRun, Receive, Recording};
use wirelore_model::SeenId;

use super::carry::Carriers;
use super::channels::Channels;
use super::gate::{Gate, Passed, Target};
use super::lanes::{Lanes, Way};
use super::sample::{Sample, Seen};
use super::tally::Tally;
use super::{Receiver, STRETCH_BYTES, Session, SessionError};
use crate::batch::{Context, Gathered, Gatherer, InstructionSet, Rows, TableSink, Tables, Workspace};
use crate::source::Source;
use crate::threads::share;

/// A table is decoded once it holds so many rows: fewer would not pay for the start of each signal's loop.
const LEAST_ROWS: usize = 256;
/// What one thread gathers at a time: enough that most of the tables of a usual log are decoded where the rows lie, and no more than stays in the
/// caches with all other pieces.
const PIECE_BYTES: usize = 2 << 20;
/// So many pieces for each thread between two times that all wait for each other. (With eight of half the size two threads take 5 to 10 %
/// longer, on a virtual EPYC.)
const PIECES_PER_THREAD: usize = 3;

/// What a session keeps for tables, used again and again.
#[derive(Debug, Default)]
pub(super) struct ForTables {
    /// Where identifiers lead, for the thread that reads alone.
    lanes: Lanes,
    /// One for each thread.
    workspaces: Vec<Workspace>,
    /// One for each piece that is read side by side.
    gatherings: Vec<Gathering>,
}

impl ForTables {
    /// What was learnt of channels and identifiers holds for one log only.
    fn end_log(&mut self) {
        self.lanes.clear();
        self.gatherings.iter_mut().for_each(|gathering| gathering.lanes.clear());
    }
}

/// What was gathered from one piece of a log.
#[derive(Debug)]
struct Gathering {
    gatherer: Gatherer,
    lanes: Lanes,
    tally: Tally,
    /// All frames, and those of them that had no straight way.
    frames: u64,
    careful: u64,
    /// A frame was met whose channel is not known yet: nothing of the piece counts.
    met_unknown: bool,
    end: Option<PieceEnd>,
}

impl Session<'_> {
    /// Reads a recording to its end, into tables.
    ///
    /// # Errors
    /// As for [`Session::advance`].
    pub fn run_tables<S: TableSink>(
        &mut self,
        recording: &mut Recording,
        tables: &mut Tables<'_, S>,
    ) -> Result<(), SessionError> {
        let mut end = Ok(true);
        while matches!(end, Ok(true)) {
            end = self.step_tables(recording, tables);
        }
        // After a failure what was decoded before it counts as well.
        tables.settle(&mut self.tally);
        end.map(|_| ())
    }

    /// Reads a stretch of a recording into tables, some MiB for each thread; false at its end. Then the next recording may be given.
    ///
    /// # Errors
    /// As for [`Session::advance`].
    pub fn advance_tables<S: TableSink>(
        &mut self,
        recording: &mut Recording,
        tables: &mut Tables<'_, S>,
    ) -> Result<bool, SessionError> {
        let more = self.step_tables(recording, tables);
        tables.settle(&mut self.tally);
        more
    }

    /// The same, while what the tables count is still to be [settled](Tables::settle).
    fn step_tables<S: TableSink>(
        &mut self,
        recording: &mut Recording,
        tables: &mut Tables<'_, S>,
    ) -> Result<bool, SessionError> {
        self.for_tables.workspaces.resize_with(self.threads, Workspace::default);
        let joined = self.side_by_side(recording, tables);
        let more = joined > 0 || self.one_stretch(recording, tables.gatherer())?;
        let context = Context {
            decoder: self.gate.decoder,
            networks: &self.channels.networks(),
            first_time_ns: self.gate.first_time_ns,
            set: InstructionSet::best(),
        };
        let ForTables { workspaces, gatherings, .. } = &mut self.for_tables;
        let gathered: Vec<&[Rows]> =
            gatherings.iter().take(joined).map(|gathering| gathering.gatherer.rows()).collect();
        let least_rows = if more { LEAST_ROWS } else { 1 };
        tables.decode(&context, &gathered, least_rows, workspaces).map_err(SessionError::Sink)?;
        if !more {
            tables.settle(&mut self.tally);
            tables.end_log();
            self.for_tables.end_log();
            self.end_log(recording)?;
        }
        Ok(more)
    }

    /// Gathers a stretch of the log on this thread; false at its end.
    fn one_stretch(&mut self, recording: &mut Recording, gatherer: &mut Gatherer) -> Result<bool, SessionError> {
        let mut lanes = std::mem::take(&mut self.for_tables.lanes);
        let is_settled = self.is_settled();
        let Self { gate, channels, carriers, tally, .. } = self;
        let target = &mut Gather { gatherer, lanes: &mut lanes };
        let with_care =
            Receiver { gate, channels, carriers, tally, target, is_settled, waiting: Sample::default(), frames: 0 };
        let mut receiver = StretchReceiver { with_care, straight_on: 0 };
        let more = recording.stretch(STRETCH_BYTES, &mut receiver)?;
        let StretchReceiver { with_care: Receiver { waiting, frames, .. }, straight_on } = receiver;
        self.tally.read += straight_on;
        self.settle(recording, &waiting, frames + straight_on, more, target)?;
        target.gatherer.finish();
        self.for_tables.lanes = lanes;
        Ok(more)
    }

    /// Gathers some pieces of the log side by side, and tells how many of them hold. None do where there is one thread only, where the
    /// log cannot be cut, and as long as something about its channels or its first time is open.
    fn side_by_side<S: TableSink>(&mut self, recording: &mut Recording, tables: &Tables<'_, S>) -> usize {
        let is_settled = self.is_settled() && self.has_checked_told;
        // Messages are put together out of frames in their order.
        if self.gate.decoder.carries_anything() {
            return 0;
        }
        if self.threads < 2 || !is_settled || self.gate.first_time_ns.is_none() {
            return 0;
        }
        let ForTables { workspaces, gatherings, .. } = &mut self.for_tables;
        let most = self.threads * PIECES_PER_THREAD;
        let pieces = recording.pieces(most, PIECE_BYTES);
        if pieces.len() < 2 {
            return 0;
        }
        gatherings.resize_with(most, || Gathering::new(tables.another_gatherer()));
        let (gate, channels) = (&self.gate, &self.channels);
        let jobs = pieces.into_iter().zip(gatherings.iter_mut());
        let Ok(()) = share(jobs, workspaces, |(piece, gathering), _| -> Result<(), Infallible> {
            gathering.gather(piece, gate, channels);
            Ok(())
        });
        let mut joined = 0;
        for gathering in gatherings {
            let Some(end) = gathering.end.take().filter(|_| !gathering.met_unknown) else {
                break;
            };
            if !recording.join(end) {
                break;
            }
            self.tally.take_over(&mut gathering.tally);
            self.frames_in_log += gathering.frames;
            joined += 1;
        }
        joined
    }
}

impl Gathering {
    fn new(gatherer: Gatherer) -> Self {
        Self {
            gatherer,
            lanes: Lanes::default(),
            tally: Tally::default(),
            frames: 0,
            careful: 0,
            met_unknown: false,
            end: None,
        }
    }

    /// Reads a piece.
    fn gather(&mut self, piece: Piece, gate: &Gate<'_>, channels: &Channels) {
        self.gatherer.clear();
        self.tally = Tally::default();
        (self.frames, self.careful) = (0, 0);
        self.met_unknown = false;
        self.end = Some(piece.read(&mut PieceReceiver { gathering: self, gate, channels }));
        self.gatherer.finish();
        self.tally.read += self.frames - self.careful;
    }
}

/// Takes the frames of one stretch.
struct StretchReceiver<'a, 'd, 'g> {
    with_care: Receiver<'a, 'd, Gather<'g>>,
    straight_on: u64,
}

impl Receive for StretchReceiver<'_, '_, '_> {
    #[inline(always)]
    fn plain(&mut self, plain: Plain<'_>) -> bool {
        let Gather { gatherer, lanes } = &mut *self.with_care.target;
        let done = self.with_care.is_settled && at_once(lanes, gatherer, plain);
        self.straight_on += u64::from(done);
        done
    }

    fn takes_runs(&self) -> bool {
        self.with_care.is_settled
    }

    #[inline(always)]
    fn run(&mut self, run: &PlainRun) -> usize {
        // A reader asks once whether runs are taken; since then a channel may have turned up behind whose first frame all others wait.
        if !self.with_care.is_settled {
            return 0;
        }
        let Gather { gatherer, lanes } = &mut *self.with_care.target;
        let taken = all_at_once(lanes, gatherer, run);
        self.straight_on += taken as u64;
        taken
    }

    fn frame(&mut self, frame: &Frame<'_>) {
        let Gather { gatherer, lanes } = &mut *self.with_care.target;
        if self.with_care.is_settled && straight_on(lanes, gatherer, frame) {
            self.straight_on += 1;
        } else {
            self.with_care.frame(frame);
        }
    }
}

/// Takes the frames of one piece.
struct PieceReceiver<'a> {
    gathering: &'a mut Gathering,
    gate: &'a Gate<'a>,
    channels: &'a Channels,
}

impl Receive for PieceReceiver<'_> {
    #[inline(always)]
    fn plain(&mut self, plain: Plain<'_>) -> bool {
        let Gathering { gatherer, lanes, frames, .. } = &mut *self.gathering;
        let done = at_once(lanes, gatherer, plain);
        *frames += u64::from(done);
        done
    }

    fn takes_runs(&self) -> bool {
        true
    }

    #[inline(always)]
    fn run(&mut self, run: &PlainRun) -> usize {
        let Gathering { gatherer, lanes, frames, .. } = &mut *self.gathering;
        let taken = all_at_once(lanes, gatherer, run);
        *frames += taken as u64;
        taken
    }

    fn frame(&mut self, frame: &Frame<'_>) {
        let Gathering { gatherer, lanes, frames, .. } = &mut *self.gathering;
        *frames += 1;
        if !straight_on(lanes, gatherer, frame) {
            self.with_care(frame);
        }
    }
}

impl PieceReceiver<'_> {
    /// A frame that has no straight way.
    fn with_care(&mut self, frame: &Frame<'_>) {
        let Gathering { gatherer, lanes, tally, met_unknown, careful, .. } = &mut *self.gathering;
        *careful += 1;
        match self.channels.decided(frame.channel) {
            Some(network) => {
                // Nothing is put together where pieces are read side by side.
                let carriers = &mut Carriers::default();
                self.gate.frame(network, &Seen::from(frame), carriers, tally, &mut Gather { gatherer, lanes });
            }
            None => *met_unknown = true,
        }
    }
}

/// Gathers a frame whose identifier has a known way and that is as usual there.
#[inline(always)]
fn at_once(lanes: &Lanes, gatherer: &mut Gatherer, plain: Plain<'_>) -> bool {
    let Plain { time_ns, channel, id, extended, payload } = plain;
    let table = lanes.way(channel, id, extended).table_of_frame();
    payload.try_into().is_ok_and(|payload| gatherer.push_usual(table, channel, time_ns, u64::from_le_bytes(payload)))
}

/// The same for a run of frames, up to the first that cannot be gathered so; how many were.
#[inline(always)]
fn all_at_once(lanes: &Lanes, gatherer: &mut Gatherer, run: &PlainRun) -> usize {
    let ways = lanes.ways();
    gatherer.push_run(run, |channel, id| ways.way(channel, id).table_of_frame())
}

/// Gathers a frame whose identifier has a known way; false: it has none.
///
/// Such frames are counted together: they are data frames that are decoded.
fn straight_on(lanes: &Lanes, gatherer: &mut Gatherer, frame: &Frame<'_>) -> bool {
    let way = lanes.way(frame.channel, frame.id, frame.extended);
    frame.kind == Kind::Data
        && frame.medium == Medium::Can
        && gatherer.push(
            way.table(),
            &Gathered {
                time_ns: frame.time_ns,
                channel: frame.channel,
                // A run of identifiers has no straight way.
                source: way.is_group().then_some(Source::Address(frame.id as u8)),
                payload: frame.payload,
            },
        )
}

/// Gathers frames into the rows of their tables, and learns their ways.
struct Gather<'a> {
    gatherer: &'a mut Gatherer,
    lanes: &'a mut Lanes,
}

impl Target for Gather<'_> {
    fn frame(&mut self, passed: &Passed<'_>, _: &mut Tally) {
        let Passed { seen, found, .. } = passed;
        let row = Gathered {
            time_ns: seen.time_ns,
            channel: seen.channel,
            source: found.source(seen.id),
            payload: seen.payload,
        };
        let table = found.frame().index();
        // Such a frame has no straight way: none of them would bring its origin.
        if self.gatherer.push_with_origin(table, &row, seen.origin()) {
            return;
        }
        if self.gatherer.push(table, &row)
            && passed.so_do_all
            && let SeenId::Can { id, extended } = seen.id
            && passed.decoder.goes_straight(passed.network, found.frame(), id)
        {
            self.lanes.learn(seen.channel, id, extended, Way::to(table, found.is_group()));
        }
    }
}
