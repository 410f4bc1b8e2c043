//! Lines of text: delimited with a header line, or by a pattern that the user writes.
//!
//! One line is one frame. [`lines`] finds line ends, [`cells`] cuts a delimited line, [`header`] knows what its columns are,
//! [`pattern`] matches a line against the user's pattern, and [`row`] turns the pieces of either into a frame.

mod cells;
mod column_map;
mod columns;
mod header;
mod headings;
mod lines;
mod networks;
mod others;
mod pattern;
mod plain;
mod proof;
mod row;
mod time;
mod values;

use crate::error::LogError;
use crate::flaw::Flaw;
use crate::frame::{Channel, FD_BYTES_MAX, Found, PlaceInLog};
use crate::options::Options;
use crate::pass::{Shared, Step};
use crate::receive::PlainRun;
use crate::window::Window;

pub use column_map::ColumnMap;
pub use pattern::LinePattern;

use cells::Cell;
use columns::Columns;
use headings::Role;
use lines::{LINE_BYTES_MAX, Lines};
use plain::PlainLines;
use row::{RowReader, TEXT_BYTES_MAX};

/// The reader of one text log.
#[derive(Debug, Clone)]
pub(crate) struct TextReader {
    layout: Layout,
    lines: Lines,
    row: RowReader,
    /// The fast way through lines that are like the one before, where the columns allow it.
    plain: Option<PlainLines>,
    /// The data of the line that was read last the fast way, and the careful way.
    plain_payload: [u8; FD_BYTES_MAX],
    /// Where plain lines are lined up.
    plain_lines: Box<PlainRun>,
    payload: Box<[u8; TEXT_BYTES_MAX]>,
    only_channel: Option<Channel>,
}

/// How a line is taken apart.
#[derive(Debug, Clone)]
enum Layout {
    Delimited { delimiter: u8, columns: Columns, cells: Vec<Cell> },
    Pattern(LinePattern),
}

impl TextReader {
    /// Reads the header line, or takes the pattern.
    pub(crate) fn start(
        window: &mut Window,
        shared: &mut Shared,
        name: &str,
        options: &Options,
    ) -> Result<Self, LogError> {
        let mut lines = Lines::default();
        lines.skip_byte_order_mark(window);
        let (layout, forms, decimal_comma, networks) = match &options.line {
            Some(pattern) => (Layout::Pattern(pattern.clone()), pattern.forms(), false, pattern.networks()),
            None => {
                let header = header::read(window, &mut lines, &options.columns.clone().unwrap_or_default(), name)?;
                header.remarks.into_iter().for_each(|sentence| shared.report.remark(sentence));
                let (delimiter, columns) = (header.delimiter, header.columns);
                let layout = Layout::Delimited { delimiter, columns, cells: Vec::new() };
                (layout, header.forms, delimiter != b',', header.networks)
            }
        };
        let plain = layout.plain(forms, decimal_comma);
        let plain = plain.filter(|_| networks.is_only_can());
        let row = RowReader::new(forms, decimal_comma, networks);
        let only_channel = if layout.has_channel() { None } else { shared.channels.add(b"") };
        let (plain_payload, payload) = ([0; FD_BYTES_MAX], Box::new([0; TEXT_BYTES_MAX]));
        let plain_lines = Box::new(PlainRun::new());
        Ok(Self { layout, lines, row, plain, plain_payload, plain_lines, payload, only_channel })
    }

    /// The bytes that payload ranges point into.
    #[inline]
    pub(crate) fn payload(&self) -> &[u8] {
        &self.payload[..]
    }

    /// The line being read, counted from 1.
    pub(crate) fn line(&self) -> u64 {
        self.lines.number()
    }

    /// Counts lines on from `line`.
    pub(crate) fn count_from(&mut self, line: u64) {
        self.lines.count_from(line);
    }

    /// Moves behind the next line end; false where there is none before byte `until`.
    pub(crate) fn find_start(&self, window: &mut Window, until: u64) -> bool {
        while window.offset() < until {
            if let Some(end) = memchr::memchr(b'\n', window.data()) {
                window.consume(end + 1);
                return true;
            }
            window.consume(window.data().len());
            if !window.more() {
                break;
            }
        }
        false
    }

    /// Reads one line, with the empty ones before it.
    #[inline]
    pub(crate) fn step(&mut self, window: &mut Window, shared: &mut Shared) -> Step {
        let (line_bytes, consumed_bytes) = match self.lines.next(window) {
            lines::Step::Line { line_bytes, consumed_bytes } => (line_bytes, consumed_bytes),
            lines::Step::TooLong => {
                shared.report.damaged_at(self.place(), &Flaw::LineTooLong(LINE_BYTES_MAX / 1024));
                return Step::Nothing;
            }
            lines::Step::End => return Step::End,
        };
        if line_bytes == consumed_bytes && !self.is_last_line_whole(window, shared) {
            window.consume(consumed_bytes);
            return Step::Nothing;
        }
        let found = self.frame(&window.data()[..line_bytes], shared);
        window.consume(consumed_bytes);
        found.map_or(Step::Nothing, Step::Frame)
    }

    fn place(&self) -> PlaceInLog {
        PlaceInLog::Line(self.lines.number())
    }

    /// A last line without a line end is whole as far as anybody can tell, unless the file broke off in it.
    #[cold]
    fn is_last_line_whole(&self, window: &Window, shared: &mut Shared) -> bool {
        if window.broke_off().is_some() {
            shared.report.tail_lost(self.place(), "the line is cut".to_owned());
            return false;
        }
        shared.report.remark(format!("the last line, {}, has no line end; perhaps it is cut", self.lines.number()));
        true
    }

    /// The frame on one line; `None` for comments, blank lines, and what is damaged.
    #[inline]
    fn frame(&mut self, line: &[u8], shared: &mut Shared) -> Option<Found> {
        if line.is_empty() || self.layout.is_comment(line) {
            return None;
        }
        let place = self.place();
        let delimiter = self.layout.delimiter();
        let pieces = match &mut self.layout {
            Layout::Delimited { delimiter, columns, cells } => {
                columns.cut(line, *delimiter, cells).and_then(|()| columns.pieces(line, cells))
            }
            Layout::Pattern(pattern) => pattern.pieces(line),
        };
        let payload = &mut self.payload;
        match pieces.and_then(|pieces| self.row.frame(&pieces, self.only_channel, payload, shared)) {
            Ok(found) => Some(Found { place, ..found }),
            Err(_) if is_blank(line, delimiter) => None,
            Err(flaw) => {
                let nul = memchr::memchr(0, line).map(|_| Flaw::Nul);
                shared.report.damaged_at(place, &nul.unwrap_or(flaw));
                None
            }
        }
    }
}

impl Layout {
    /// Whether lines tell their channel.
    fn has_channel(&self) -> bool {
        match self {
            Self::Delimited { columns, .. } => columns.of(Role::Channel).is_some(),
            Self::Pattern(pattern) => pattern.has(Role::Channel),
        }
    }

    /// Whether the line says nothing because it begins with `#`.
    #[inline]
    fn is_comment(&self, line: &[u8]) -> bool {
        match self {
            _ if line.first() != Some(&b'#') => false,
            Self::Delimited { .. } => true,
            Self::Pattern(pattern) => !pattern.begins_with_number_sign(),
        }
    }

    /// The byte between cells; a blank for patterns.
    fn delimiter(&self) -> u8 {
        match self {
            Self::Delimited { delimiter, .. } => *delimiter,
            Self::Pattern(_) => b' ',
        }
    }
}

/// A line of blanks, or a row of empty cells as spreadsheets leave them, says nothing.
#[cold]
fn is_blank(line: &[u8], delimiter: u8) -> bool {
    line.iter().all(|&byte| byte == delimiter || matches!(byte, b' ' | b'\t' | b'\r'))
}
