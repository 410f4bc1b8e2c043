//! Line ends, found in large steps; a line that never ends is stepped over with flat memory.

use crate::window::Window;

/// The longest line that is read.
pub(super) const LINE_BYTES_MAX: usize = 64 * 1024;

const BYTE_ORDER_MARK: &[u8] = b"\xEF\xBB\xBF";

/// Counts lines while it finds them.
#[derive(Debug, Clone, Default)]
pub(super) struct Lines {
    number: u64,
}

/// What was found at the reading position.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Step {
    /// A line: its bytes without the line end, and the bytes to consume with it. Both are equal for a last line without end.
    Line { line_bytes: usize, consumed_bytes: usize },
    /// A line longer than [`LINE_BYTES_MAX`]; it is consumed.
    TooLong,
    /// Nothing more.
    End,
}

impl Lines {
    /// The number of the line found last, counted from 1.
    pub(super) fn number(&self) -> u64 {
        self.number
    }

    /// Counts on from `number`.
    pub(super) fn count_from(&mut self, number: u64) {
        self.number = number;
    }

    /// Steps over the mark that some programs put in front of UTF-8.
    pub(super) fn skip_byte_order_mark(&self, window: &mut Window) {
        if window.have(BYTE_ORDER_MARK.len()) && window.data().starts_with(BYTE_ORDER_MARK) {
            window.consume(BYTE_ORDER_MARK.len());
        }
    }

    /// Finds the line at the reading position, which is not moved; empty lines before it are consumed.
    #[inline]
    pub(super) fn next(&mut self, window: &mut Window) -> Step {
        loop {
            match memchr::memchr(b'\n', window.data()) {
                Some(0) => self.consume_empty(window),
                Some(end) if end <= LINE_BYTES_MAX => {
                    self.number += 1;
                    let line_bytes = if window.data()[end - 1] == b'\r' { end - 1 } else { end };
                    return Step::Line { line_bytes, consumed_bytes: end + 1 };
                }
                Some(end) => {
                    self.number += 1;
                    window.consume(end + 1);
                    return Step::TooLong;
                }
                None if window.data().len() > LINE_BYTES_MAX => return self.skip_endless(window),
                None if window.more() => {}
                None => return self.last(window),
            }
        }
    }

    /// Consumes a run of empty lines without looking for line ends again.
    fn consume_empty(&mut self, window: &mut Window) {
        let run = window.data().iter().take_while(|&&byte| byte == b'\n').count();
        self.number += run as u64;
        window.consume(run);
    }

    #[cold]
    fn last(&mut self, window: &Window) -> Step {
        let line_bytes = window.data().len();
        if line_bytes == 0 {
            return Step::End;
        }
        self.number += 1;
        Step::Line { line_bytes, consumed_bytes: line_bytes }
    }

    #[cold]
    fn skip_endless(&mut self, window: &mut Window) -> Step {
        self.number += 1;
        loop {
            if let Some(end) = memchr::memchr(b'\n', window.data()) {
                window.consume(end + 1);
                return Step::TooLong;
            }
            window.consume(window.data().len());
            if !window.more() {
                return Step::TooLong;
            }
        }
    }
}
