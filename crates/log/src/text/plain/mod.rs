//! The fast way through plain lines, which nearly all lines of a delimited text are.
//!
//! A line is plain when it has just the cells of the header, none of them with quotes or blanks, and is a good data frame
//! with a time, of a channel that is known. Each line is tried as one before was ([`shape`]): digits in the same places, eight at
//! a time; else by the places where its cells end, else cell by cell. The first line that is anything else is left to the careful
//! way, which gives the same frames, learns new channels and also tells what is wrong.

mod cells;
mod extras;
mod heads;
mod shape;
mod words;

use crate::channels::Channels;
use crate::frame::{
    CLASSIC_BYTES_MAX, Channel, EXTENDED_ID_MAX, FD_BYTES_MAX, Frame, Kind, PlaceInLog, STANDARD_ID_MAX, dlc_of_length,
};
use crate::identifiers::Digits;
use crate::machine;
use crate::medium::Medium;
use crate::pass::Shared;
use crate::receive::{Plain, PlainRun, Receive};
use crate::window::Window;

use super::columns::Columns;
use super::headings::Role;
use super::row::{Forms, IdForm};
use super::time::TimeUnit;
use super::values::Base;
use super::{Layout, TextReader};

use cells::{Data, HexId, Names, Time};
use extras::Extras;
use heads::Heads;
use shape::Shaped;
use words::{LINE_ROOM, Line};

/// The plain lines of one text.
#[derive(Debug, Clone)]
pub(super) struct PlainLines {
    /// What each cell of a line is, and the byte that ends it.
    cells: Vec<(Meaning, u8)>,
    delimiter: u8,
    time_form: (TimeUnit, bool),
    order: Order,
    time: Time,
    hex_id: HexId,
    names: Names,
    data: Data,
    heads: Heads,
    shaped: Shaped,
}

/// The orders of cells that are written out in the code, for the compiler to see them whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Order {
    TimeIdData,
    TimeChannelIdData,
    Other,
}

impl Order {
    fn of(cells: &[(Meaning, u8)]) -> Self {
        match cells {
            [(Meaning::Time, _), (Meaning::HexId, _), (Meaning::Data, _)] => Self::TimeIdData,
            [(Meaning::Time, _), (Meaning::Channel, _), (Meaning::HexId, _), (Meaning::Data, _)] => {
                Self::TimeChannelIdData
            }
            _ => Self::Other,
        }
    }
}

/// What a cell is read as.
#[derive(Debug, Clone, Copy)]
enum Meaning {
    Time,
    Channel,
    HexId,
    PrefixedId,
    DecimalId,
    Data,
    /// Roles that are not as common.
    Other(Role),
    Nothing,
}

impl Meaning {
    fn of(role: Option<Role>, id: IdForm) -> Self {
        match (role, id) {
            (None, _) => Self::Nothing,
            (Some(Role::Time), _) => Self::Time,
            (Some(Role::Channel), _) => Self::Channel,
            (Some(Role::Id), IdForm::All(Base::Hex)) => Self::HexId,
            (Some(Role::Id), IdForm::All(Base::Decimal)) => Self::DecimalId,
            (Some(Role::Id), IdForm::Prefixed) => Self::PrefixedId,
            (Some(Role::Data), _) => Self::Data,
            (Some(other), _) => Self::Other(other),
        }
    }
}

/// What a plain line says. Where lines tell no channel there is only one, the first.
#[derive(Debug, Clone, Copy, Default)]
struct Row {
    time_ns: i64,
    channel: u16,
    id: u32,
    has_eight_digits: bool,
    held: usize,
    line_bytes: usize,
}

impl PlainLines {
    /// For a text with these columns; `None` where no line of it can be plain.
    pub(super) fn new(columns: &Columns, forms: Forms, delimiter: u8, decimal_comma: bool) -> Option<Self> {
        let has = |role| columns.of(role).is_some();
        if !has(Role::Time) || !has(Role::Id) || !has(Role::Data) || forms.data != Base::Hex {
            return None;
        }
        let meaning = |column| Meaning::of(columns.role_of(column), forms.id);
        let last = columns.headings().checked_sub(1)?;
        let end = |column| if column == last { b'\n' } else { delimiter };
        let cells: Vec<_> = (0..=last).map(|column| (meaning(column), end(column))).collect();
        let names_end = if columns.of(Role::Channel) == Some(last) { b'\n' } else { delimiter };
        Some(Self {
            order: Order::of(&cells),
            cells,
            delimiter,
            time_form: (forms.time, decimal_comma),
            time: Time::default(),
            hex_id: HexId::default(),
            names: Names::new(names_end),
            data: Data::default(),
            heads: Heads::new(),
            shaped: Shaped::default(),
        })
    }

    /// Reads one line with its cells in one of the orders that are written out here, its data into `payload`; `None` where
    /// it is not plain.
    #[inline(never)]
    fn read_in_order(&mut self, line: &Line, channels: &Channels, payload: &mut [u8; FD_BYTES_MAX]) -> Option<Row> {
        let delimiter = self.delimiter;
        let (time_ns, mut at) = self.time.read(line, 0, delimiter, self.time_form)?;
        let mut channel = Channel(0);
        if self.order == Order::TimeChannelIdData {
            (channel, at) = self.names.read(line, at, channels)?;
        }
        let (id, has_eight_digits, at) = self.hex_id.read(line, at, delimiter)?;
        let (held, line_bytes) = self.data.read(line, at, b'\n', payload)?;
        Some(Row { time_ns, channel: channel.0, id, has_eight_digits, held, line_bytes })
    }

    /// Reads one line with its cells in any order.
    #[inline(never)]
    fn read_any(
        &mut self,
        line: &Line,
        channels: &Channels,
        payload: &mut [u8; FD_BYTES_MAX],
    ) -> Option<(Row, Extras)> {
        let mut extras = Extras::default();
        let mut row = Row::default();
        let mut at = 0;
        for &(meaning, end) in &self.cells {
            match meaning {
                Meaning::Time => (row.time_ns, at) = self.time.read(line, at, end, self.time_form)?,
                Meaning::Channel => {
                    let (channel, next) = self.names.read(line, at, channels)?;
                    (row.channel, at) = (channel.0, next);
                }
                Meaning::HexId => (row.id, row.has_eight_digits, at) = self.hex_id.read(line, at, end)?,
                Meaning::PrefixedId => (row.id, row.has_eight_digits, at) = self.hex_id.read_prefixed(line, at, end)?,
                Meaning::DecimalId => (row.id, row.has_eight_digits, at) = cells::decimal_id(line, at, end)?,
                Meaning::Data => (row.held, at) = self.data.read(line, at, end, payload)?,
                Meaning::Other(role) => at = extras.read(role, line, at, end)?,
                Meaning::Nothing => at = cells::skipped(line, at, end, self.delimiter)?,
            }
        }
        row.line_bytes = at;
        (line[0] != b'#').then_some((row, extras))
    }
}

impl Row {
    /// The frame of the line; `None` where the identifier is too large, or no frame has so many bytes.
    #[inline(always)]
    fn frame<'p>(&self, payload: &'p [u8; FD_BYTES_MAX], place: PlaceInLog) -> Option<Frame<'p>> {
        let Self { time_ns, held, id, .. } = *self;
        let payload = payload.get(..held)?;
        let extended = id > STANDARD_ID_MAX || self.has_eight_digits;
        let frame = classic(time_ns, (Channel(self.channel), id, extended), payload, place);
        let is_classic = held <= CLASSIC_BYTES_MAX;
        let dlc = if is_classic { frame.dlc } else { Some(dlc_of_length(held)?) };
        (id <= EXTENDED_ID_MAX).then_some(Frame { fd: !is_classic, dlc, ..frame })
    }
}

/// A data frame of classic CAN.
#[inline(always)]
fn classic(
    time_ns: i64,
    (channel, id, extended): (Channel, u32, bool),
    payload: &[u8],
    place: PlaceInLog,
) -> Frame<'_> {
    Frame {
        time_ns: Some(time_ns),
        channel,
        id,
        extended,
        kind: Kind::Data,
        fd: false,
        bit_rate_switch: false,
        error_state: false,
        dlc: Some(payload.len() as u8),
        medium: Medium::Can,
        payload,
        place,
    }
}

/// The bytes of the plain lines that one call may read, and how far it has come.
struct Run<'d> {
    data: &'d [u8],
    /// Lines that begin from here on are left.
    stop: usize,
    at: usize,
    first_line: u64,
    frames: u64,
    latest_ns: i64,
    digits: Digits,
    /// Where lines of one shape are lined up.
    lined_up: &'d mut PlainRun,
    /// Whether they go on together.
    takes_runs: bool,
}

impl TextReader {
    /// Hands out the frames of the plain lines at the reading position, of those that are fetched and begin before byte
    /// `until`.
    #[inline]
    pub(crate) fn run_plain(
        &mut self,
        window: &mut Window,
        shared: &mut Shared,
        until: u64,
        receive: &mut impl Receive,
    ) {
        match self.plain.as_ref().map(|plain| plain.order) {
            None => {}
            Some(Order::Other) => self.run_lines::<true>(window, shared, until, receive),
            Some(_) => self.run_lines::<false>(window, shared, until, receive),
        }
    }

    /// The loop over plain lines, compiled once for cells in any order and once for those that are written out.
    #[inline]
    fn run_lines<const ANY_ORDER: bool>(
        &mut self,
        window: &mut Window,
        shared: &mut Shared,
        until: u64,
        receive: &mut impl Receive,
    ) {
        let (Some(plain), Some(latest_ns)) = (&mut self.plain, shared.report.latest_time_ns()) else {
            return;
        };
        let (data, first_line) = (window.data(), self.lines.number() + 1);
        let stop = usize::try_from(until.saturating_sub(window.offset())).unwrap_or(usize::MAX);
        let mut run = Run {
            data,
            stop,
            at: 0,
            first_line,
            frames: 0,
            latest_ns,
            digits: Digits::default(),
            lined_up: &mut self.plain_lines,
            takes_runs: receive.takes_runs(),
        };
        loop {
            if !ANY_ORDER {
                plain.hand_out_shaped(&mut run, &mut shared.report, receive);
            }
            if run.at >= run.stop {
                break;
            }
            machine::prefetch(data, run.at);
            let Some(line) = data.get(run.at..).and_then(|rest| rest.first_chunk::<LINE_ROOM>()) else { break };
            let read = match ANY_ORDER {
                true => plain.read_any(line, &shared.channels, &mut self.plain_payload),
                false => {
                    let mut row = plain.read_by_ends(line, &mut self.plain_payload);
                    let cell_by_cell = row.is_none();
                    if cell_by_cell {
                        row = plain.read_in_order(line, &shared.channels, &mut self.plain_payload);
                    }
                    if let Some(row) = &row {
                        plain.missed_shape(line, row, cell_by_cell);
                    }
                    row.map(|row| (row, Extras::default()))
                }
            };
            let Some((row, extras)) = read else { break };
            let place = PlaceInLog::Line(first_line + run.frames);
            let plain_frame = row.frame(&self.plain_payload, place);
            let Some(frame) = (if ANY_ORDER { plain_frame.and_then(|it| extras.applied(it)) } else { plain_frame })
            else {
                break;
            };
            if row.time_ns < run.latest_ns {
                shared.report.went_backwards(place);
            }
            run.latest_ns = row.time_ns;
            if extras.extended.is_none() {
                run.digits.weigh(row.id, row.has_eight_digits);
            }
            let Frame { channel, id, extended, payload, .. } = frame;
            let plain_frame = Plain { time_ns: row.time_ns, channel, id, extended, payload };
            if frame.kind != Kind::Data || !receive.plain(plain_frame) {
                receive.frame(&frame);
            }
            run.frames += 1;
            run.at += row.line_bytes;
        }
        if run.frames > 0 {
            self.lines.count_from(first_line - 1 + run.frames);
            shared.report.timed_frames(run.frames, run.latest_ns);
            shared.report.join_digits(&run.digits);
            window.consume(run.at);
        }
    }
}

impl Layout {
    /// The plain lines of this layout, if there can be some.
    pub(super) fn plain(&self, forms: Forms, decimal_comma: bool) -> Option<PlainLines> {
        match self {
            Self::Delimited { delimiter, columns, .. } => PlainLines::new(columns, forms, *delimiter, decimal_comma),
            Self::Pattern(_) => None,
        }
    }
}
