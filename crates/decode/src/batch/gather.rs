//! Frames on their way into the rows of their tables.
//!
//! Frames come in any mix of descriptions, so each goes to another place in memory than the one before. As long as all these places lie
//! close together, the processor has them at hand: usual frames of eight bytes first go into a small front buffer for each table, and from
//! there to the table's rows in one run.

use wirelore_log::{Channel, PlainRun};

use super::rows::Rows;
use super::tag::{Gathered, Tag};
use crate::checks::Origin;

/// A usual row: the time and eight bytes.
type Row = [u8; 16];
/// What a table's front buffer holds.
const FRONT_ROWS: usize = 64;

/// The gathered frames of all tables.
#[derive(Debug)]
pub(crate) struct Gatherer {
    /// By frame of the description.
    rows: Vec<Rows>,
    /// By frame of the description.
    fronts: Vec<Front>,
    /// Their rows, one front buffer after the other.
    waiting: Vec<Row>,
    /// By frame of the description: whether its rows keep the origins of their frames.
    keeps_origins: Vec<bool>,
}

/// The front buffer of a table.
#[derive(Debug, Clone, Copy)]
struct Front {
    /// Where its next row goes among all that wait.
    next: usize,
    /// The channel that all of its rows are from, [`CLOSED`] where it takes none: rows that are not usual go straight to the table.
    channel: u32,
}

/// No channel.
const CLOSED: u32 = u32::MAX;

impl Gatherer {
    /// For tables whose rows are made like these; some of them keep origins.
    pub(crate) fn new(rows: Vec<Rows>, keeps_origins: Vec<bool>) -> Self {
        let fronts = (0..rows.len()).map(|table| Front { next: table * FRONT_ROWS, channel: CLOSED }).collect();
        let waiting = vec![[0; _]; rows.len() * FRONT_ROWS];
        Self { rows, fronts, waiting, keeps_origins }
    }

    /// Adds a row of eight bytes, given as a number that begins with the lowest byte, if it is what the table's front buffer takes.
    #[inline(always)]
    pub(crate) fn push_usual(&mut self, table: usize, channel: Channel, time_ns: i64, payload: u64) -> bool {
        match push(&mut self.fronts, &mut self.waiting, table, channel, time_ns, payload) {
            Pushed::Not => false,
            Pushed::WithRoom => true,
            Pushed::Last => {
                self.empty(table, FRONT_ROWS);
                true
            }
        }
    }

    /// The same for a run of frames, each for the table that `table` tells, up to the first that is not taken; how many were.
    #[inline(always)]
    pub(crate) fn push_run(&mut self, run: &PlainRun, table: impl Fn(Channel, u32) -> usize) -> usize {
        let mut taken = 0;
        loop {
            // Nothing in this loop calls anything, so that all it looks at stays in registers.
            let (fronts, waiting) = (&mut *self.fronts, &mut *self.waiting);
            let mut full = None;
            while taken < PlainRun::FRAMES {
                let channel = run.channels[taken];
                let table = table(channel, run.ids[taken]);
                let pushed = push(fronts, waiting, table, channel, run.times_ns[taken], run.payloads[taken]);
                if pushed == Pushed::Not {
                    break;
                }
                taken += 1;
                if pushed == Pushed::Last {
                    full = Some(table);
                    break;
                }
            }
            match full {
                Some(table) => self.empty(table, FRONT_ROWS),
                None => return taken,
            }
        }
    }

    /// Adds any row to a table; false where there is no such table.
    pub(crate) fn push(&mut self, table: usize, row: &Gathered<'_>) -> bool {
        self.empty_what_is_filled(table);
        let (Some(front), Some(rows)) = (self.fronts.get_mut(table), self.rows.get_mut(table)) else {
            return false;
        };
        rows.push(row);
        front.channel = rows.narrow_and_usual().map_or(CLOSED, |tag| tag.channel().0.into());
        true
    }

    /// Adds any row of a frame of this origin to a table that keeps it; false where the table does not.
    pub(crate) fn push_with_origin(&mut self, table: usize, row: &Gathered<'_>, origin: Origin) -> bool {
        let keeps_origins = self.keeps_origins.get(table).copied().unwrap_or(false);
        if let Some(rows) = self.rows.get_mut(table).filter(|_| keeps_origins) {
            rows.push_with_origin(row, origin);
        }
        keeps_origins
    }

    /// Moves what waits in a front buffer to the table's rows.
    #[inline(never)]
    fn empty(&mut self, table: usize, filled: usize) {
        let (Some(front), Some(rows)) = (self.fronts.get_mut(table), self.rows.get_mut(table)) else {
            return;
        };
        let begin = table * FRONT_ROWS;
        if let (Some(waiting), Ok(channel)) = (self.waiting.get(begin..begin + filled), u16::try_from(front.channel)) {
            rows.extend(waiting.as_flattened(), Tag::new(8, Channel(channel), None, true), &[]);
        }
        front.next = begin;
    }

    fn empty_what_is_filled(&mut self, table: usize) {
        let filled = self.fronts.get(table).map_or(0, |front| front.next % FRONT_ROWS);
        if filled > 0 {
            self.empty(table, filled);
        }
    }

    /// Moves all that waits; then [`Gatherer::rows`] holds everything.
    pub(crate) fn finish(&mut self) {
        for table in 0..self.fronts.len() {
            self.empty_what_is_filled(table);
        }
    }

    /// Forgets all rows and keeps the room.
    pub(crate) fn clear(&mut self) {
        self.fronts.iter_mut().zip(0..).for_each(|(front, table)| front.next = table * FRONT_ROWS);
        self.rows.iter_mut().for_each(Rows::clear);
    }

    /// The rows of each table.
    pub(crate) fn rows(&self) -> &[Rows] {
        &self.rows
    }

    /// The rows of each table.
    pub(crate) fn rows_mut(&mut self) -> &mut [Rows] {
        &mut self.rows
    }
}

/// What became of a row.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Pushed {
    Not,
    WithRoom,
    /// It was the last that the front buffer holds.
    Last,
}

/// Puts a row into the front buffer of a table, if that takes such rows.
#[inline(always)]
fn push(
    fronts: &mut [Front],
    waiting: &mut [Row],
    table: usize,
    channel: Channel,
    time_ns: i64,
    payload: u64,
) -> Pushed {
    let Some(front) = fronts.get_mut(table).filter(|front| front.channel == u32::from(channel.0)) else {
        return Pushed::Not;
    };
    let Some(row) = waiting.get_mut(front.next) else {
        return Pushed::Not;
    };
    *row = (u128::from(time_ns.cast_unsigned()) | u128::from(payload) << 64).to_le_bytes();
    front.next += 1;
    if front.next % FRONT_ROWS == 0 { Pushed::Last } else { Pushed::WithRoom }
}

#[cfg(test)]
mod tests {
    use super::super::instruction_sets::InstructionSet;
    use super::*;

    #[test]
    fn rows_stay_in_their_order_whatever_way_they_take() {
        let empty = || vec![Rows::new(8, 8), Rows::new(8, 3), Rows::new(64, 64), Rows::to_the_end(8, 8)];
        let mut gatherer = Gatherer::new(empty(), vec![false; 4]);
        let mut plain = empty();
        let (mut state, mut usual) = (7_u64, 0);
        for number in 0..20_000_i64 {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            let draw = |shift: u32, below: u64| (state >> shift) % below;
            let table = draw(40, 4) as usize;
            let is_odd = draw(33, 300) == 0;
            let length = if is_odd { draw(20, 65) as usize } else { [8, 3, 64, 8][table] };
            let payload = [number as u8; 64];
            let row = Gathered {
                time_ns: (!is_odd || draw(25, 2) == 0).then_some(number),
                channel: Channel(u16::from(is_odd)),
                source: None,
                payload: &payload[..length],
            };
            let time = row.time_ns.filter(|_| row.source.is_none());
            let narrow = time.zip(row.payload.try_into().ok());
            let is_usual = narrow.is_some_and(|(time_ns, payload)| {
                gatherer.push_usual(table, row.channel, time_ns, u64::from_le_bytes(payload))
            });
            usual += u32::from(is_usual);
            assert!(is_usual || gatherer.push(table, &row));
            plain[table].push(&row);
            if draw(45, 400) == 0 {
                gatherer.finish();
                gatherer.rows_mut()[table].clear();
                plain[table].clear();
            }
        }
        assert!(usual > 1_000, "{usual}");
        gatherer.finish();
        for (gathered, plain) in gatherer.rows().iter().zip(&plain) {
            assert_eq!(gathered.len(), plain.len());
            let (mut first, mut laid_out) = (0, [Vec::new(), Vec::new()]);
            while first < plain.len() {
                let [one, other] = &mut laid_out;
                let (gathered, plain) = (gathered.block(first, one), plain.block(first, other));
                assert_eq!(gathered.len(), plain.len());
                for row in 0..plain.len() {
                    assert_eq!((gathered.tag(row), gathered.payload(row)), (plain.tag(row), plain.payload(row)));
                }
                let mut times = [vec![0; plain.len()], vec![0; plain.len()]];
                gathered.times_ns(InstructionSet::best(), &mut times[0]);
                plain.times_ns(InstructionSet::best(), &mut times[1]);
                assert_eq!(times[0], times[1]);
                first += plain.len();
            }
        }
        assert!(!gatherer.push(4, &Gathered { time_ns: None, channel: Channel(0), source: None, payload: &[] }));
    }
}
