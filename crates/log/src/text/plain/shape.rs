//! Lines whose cells are as long as those of a line before: every place in them is known beforehand, so that no step waits for another,
//! and one look at the end tells whether all of it was so. And lines whose cells change their lengths, with the ends of all cells found at once.

use crate::frame::{CLASSIC_BYTES_MAX, FD_BYTES_MAX, PlaceInLog};
use crate::machine::{self, places_in_64};
use crate::receive::{Plain, PlainRun, Receive};
use crate::report::Report;

use super::cells::{Data, Names, Time};
use super::heads::{self, Heads};
use super::words::{Line, byte_at};
use super::{Order, PlainLines, Row, Run, classic};

/// What a line of another shape costs, in lines of this one: the processor has gone on in vain.
const MISS_COSTS: i32 = 12;
/// What a shape has to begin with, and the most that lines of it are worth later.
const CREDIT_AT_FIRST: i32 = 2 * MISS_COSTS;
const CREDIT_MOST: i32 = 64;
/// So many lines are read without asking for shapes where those change all the time.
const PAUSE: i32 = 256;

/// The shape that most lines have, as far as they were looked at.
#[derive(Debug, Clone, Default)]
pub(super) struct Shaped {
    shape: Option<Shape>,
    /// Below zero: so many lines are read before they are tried for their shape again.
    credit: i32,
    /// The line before had another one.
    has_missed: bool,
}

/// A line with its time, the name of its channel if lines have one, its identifier, and its data; all as long as before.
#[derive(Debug, Clone, Copy)]
struct Shape {
    places: Places,
    time: Time,
    data: Data,
}

/// Where the cells stand. In single bytes, so that no load has to be looked at: a line has room behind the last of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Places {
    time_end: u8,
    head: heads::Places,
    data: u8,
    data_end: u8,
    /// What stands there: a line feed, or the carriage return before it.
    ends_data: u8,
    line_end: u8,
}

impl Shape {
    /// The shape of a line that was just read.
    fn of(plain: &PlainLines, line: &Line, row: &Row) -> Option<Self> {
        if row.held > CLASSIC_BYTES_MAX {
            return None;
        }
        let line_end = row.line_bytes.checked_sub(1)?;
        let before = line_end.checked_sub(1)?;
        let data_end = if line.get(before) == Some(&b'\r') { before } else { line_end };
        let data = data_end.checked_sub(2 * row.held)?;
        let id_end = data.checked_sub(1)?;
        let id = line.get(..id_end)?.iter().rposition(|byte| *byte == plain.delimiter)? + 1;
        let time_end = plain.time.length();
        let place = |at: usize| u8::try_from(at).ok();
        let places = Places {
            time_end: place(time_end)?,
            head: heads::Places::new(place(time_end + 1)?, place(id)?, place(id_end)?)?,
            data: place(data)?,
            data_end: place(data_end)?,
            ends_data: *line.get(data_end)?,
            line_end: place(line_end)?,
        };
        Some(Self { places, time: plain.time, data: Data::of(2 * row.held) })
    }

    /// Lines up the next lines of a run, as long as they have this shape: how many, at most as many as there is room for. `SHORT` where the cells of
    /// their heads are.
    #[inline(always)]
    fn line_up<const SHORT: bool>(
        self,
        run: &mut Run<'_>,
        heads: &mut Heads,
        (delimiter, names): (u8, &Names),
        report: &mut Report,
    ) -> usize {
        let line_bytes = usize::from(self.places.line_end) + 1;
        let Run { data, stop, mut at, mut latest_ns, .. } = *run;
        let PlainRun { times_ns, channels, ids, payloads } = &mut *run.lined_up;
        let mut count = 0;
        while count < PlainRun::FRAMES && at < stop {
            machine::prefetch(data, at);
            let Some(line) = data.get(at..).and_then(<[u8]>::first_chunk) else { break };
            let Some(time_ns) = self.time(line, delimiter) else { break };
            let Some(head) = heads.at::<SHORT>(line, &self.places.head, delimiter, names) else { break };
            let Some(data) = self.data(line) else { break };
            if time_ns < latest_ns {
                report.went_backwards(PlaceInLog::Line(run.first_line + run.frames + count as u64));
            }
            latest_ns = time_ns;
            times_ns[count] = time_ns;
            channels[count] = head.channel;
            ids[count] = head.id;
            payloads[count] = data;
            count += 1;
            at += line_bytes;
        }
        (run.at, run.latest_ns) = (at, latest_ns);
        count
    }

    /// Hands on so many lines that were lined up.
    #[inline(always)]
    fn hand_on(self, run: &mut Run<'_>, count: usize, receive: &mut impl Receive) {
        let (held, has_eight_digits) = (self.data.digits() / 2, self.places.head.id_digits() == 8);
        let are_whole = run.takes_runs && held == CLASSIC_BYTES_MAX && count == PlainRun::FRAMES;
        let taken = if are_whole { receive.run(run.lined_up) } else { 0 };
        for at in taken..count {
            self.hand_on_alone(run, at, held, receive);
        }
        let ids = run.lined_up.ids.get(..count).unwrap_or_default();
        if has_eight_digits {
            ids.iter().for_each(|id| run.digits.weigh(id & !PlainRun::EXTENDED, true));
        } else {
            run.digits.weigh(0, false);
        }
        run.frames += count as u64;
    }

    #[inline(always)]
    fn hand_on_alone(self, run: &Run<'_>, at: usize, held: usize, receive: &mut impl Receive) {
        let PlainRun { times_ns, channels, ids, payloads } = &*run.lined_up;
        let (time_ns, channel, id) = (times_ns[at], channels[at], ids[at] & !PlainRun::EXTENDED);
        let extended = ids[at] & PlainRun::EXTENDED != 0;
        let payload = &payloads[at].to_le_bytes()[..held.min(CLASSIC_BYTES_MAX)];
        if !receive.plain(Plain { time_ns, channel, id, extended, payload }) {
            let place = PlaceInLog::Line(run.first_line + run.frames + at as u64);
            receive.frame(&classic(time_ns, (channel, id, extended), payload, place));
        }
    }

    /// The time of a line, if it is one of this shape up to there.
    #[inline(always)]
    fn time(&self, line: &Line, delimiter: u8) -> Option<i64> {
        let (time_ns, is_time) = self.time.at_start(line);
        (is_time & (byte_at(line, self.places.time_end) == delimiter)).then_some(time_ns)
    }

    /// The data of a line as a number that begins with the lowest byte, if it is one of this shape from there on.
    #[inline(always)]
    fn data(&self, line: &Line) -> Option<u64> {
        let places = &self.places;
        let differs = (byte_at(line, places.data_end) ^ places.ends_data) | (byte_at(line, places.line_end) ^ b'\n');
        let (data, is_data) = self.data.at(line, places.data);
        (is_data & (differs == 0)).then_some(data)
    }
}

impl Shaped {
    /// A line was read that has not the shape. Whether its own is to be looked at: at once where it was read cell by cell, for then the seconds
    /// of its time may be all that is new; else if the line before had another one as well.
    #[inline(always)]
    fn missed(&mut self, cell_by_cell: bool) -> bool {
        let pauses = self.credit < 0;
        if pauses {
            self.credit += 1;
            if self.credit < 0 {
                return false;
            }
        }
        if pauses || self.shape.is_none() {
            self.credit = CREDIT_AT_FIRST;
            return true;
        }
        self.credit -= MISS_COSTS;
        if self.credit <= 0 {
            self.credit = -PAUSE;
        }
        cell_by_cell || self.has_missed
    }

    #[inline(never)]
    fn learn(&mut self, shape: Shape) {
        if self.has_missed || self.shape.is_none_or(|own| own.places == shape.places) {
            self.shape = Some(shape);
        }
    }
}

impl PlainLines {
    /// Hands out the frames of the lines that a run goes on with, as long as they have the shape that most have.
    #[inline(always)]
    pub(super) fn hand_out_shaped(&mut self, run: &mut Run<'_>, report: &mut Report, receive: &mut impl Receive) {
        if self.shaped.credit < 0 {
            return;
        }
        let Some(shape) = self.shaped.shape else { return };
        loop {
            let cells = (self.delimiter, &self.names);
            let count = match shape.places.head.are_short() {
                true => shape.line_up::<true>(run, &mut self.heads, cells, report),
                false => shape.line_up::<false>(run, &mut self.heads, cells, report),
            };
            if count == 0 {
                return;
            }
            self.shaped.has_missed = false;
            self.shaped.credit = CREDIT_MOST.min(self.shaped.credit + count as i32);
            shape.hand_on(run, count, receive);
            if count < PlainRun::FRAMES {
                return;
            }
        }
    }

    /// Notes that a line was read otherwise.
    #[inline(always)]
    pub(super) fn missed_shape(&mut self, line: &Line, row: &Row, cell_by_cell: bool) {
        let is_asked_for = self.shaped.missed(cell_by_cell);
        if is_asked_for || cell_by_cell {
            let shape = Shape::of(self, line, row);
            if let Some(shape) = shape.filter(|_| cell_by_cell) {
                self.heads.learn(line, &shape.places.head, row);
            }
            match shape {
                _ if !is_asked_for => {}
                Some(shape) => self.shaped.learn(shape),
                None if self.shaped.shape.is_none() => self.shaped.credit = -PAUSE,
                None => {}
            }
        }
        self.shaped.has_missed = true;
    }

    /// Reads one line with its cells in one of the orders that are written out here and a time as long as before, its data into `payload`;
    /// `None` where it is not such a line.
    ///
    /// Where lines have different lengths, the processor must not guess them: all ends are found at once, without a branch.
    #[inline(always)]
    pub(super) fn read_by_ends(&mut self, line: &Line, payload: &mut [u8; FD_BYTES_MAX]) -> Option<Row> {
        let first: &[u8; 64] = line.first_chunk()?;
        let ends = places_in_64(self.delimiter, first);
        let line_end = places_in_64(b'\n', first).trailing_zeros() as u8;
        let time_end = self.time.length() as u32;
        let behind_time = ends & u64::MAX.checked_shl(time_end)?;
        let name = time_end as u8 + 1;
        let (mut id, mut left) = (name, behind_time & behind_time.wrapping_sub(1));
        if self.order == Order::TimeChannelIdData {
            id = left.trailing_zeros() as u8 + 1;
            left &= left.wrapping_sub(1);
        }
        let id_end = left.trailing_zeros() as u8;
        if behind_time.trailing_zeros() != time_end || id_end >= line_end || line_end >= 64 {
            return None;
        }
        let (time_ns, is_time) = self.time.at_start(line);
        let places = heads::Places::new(name, id, id_end)?;
        let head = self.heads.at::<false>(line, &places, self.delimiter, &self.names)?;
        let has_return = byte_at(line, line_end - 1) == b'\r';
        let digits = usize::from((line_end - id_end - 1).saturating_sub(u8::from(has_return)));
        let (bytes, is_data) = Data::of(digits.min(16)).at(line, id_end + 1);
        let is_good = is_time & is_data & (digits % 2 == 0) & (digits <= 16);
        *payload.first_chunk_mut()? = bytes.to_le_bytes();
        let row = Row {
            time_ns,
            channel: head.channel.0,
            id: head.id & !PlainRun::EXTENDED,
            has_eight_digits: places.id_digits() == 8,
            held: digits / 2,
            line_bytes: usize::from(line_end) + 1,
        };
        is_good.then_some(row)
    }
}
