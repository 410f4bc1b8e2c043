//! Whether all rows of a column are plain readings, at the least cost inside the loop.
//!
//! A row outside the plain run makes a subtraction borrow, which leaves a set top bit; the loop collects those bits of all rows in one
//! word. Comparisons would cost more: the baseline has none for 64 bits, and AVX2 has only signed ones. All numbers are "rising" ones
//! ([`Cut::rising`](super::loops::Cut::rising)) of at most 63 bits.

/// A look at one rising number.
pub(super) trait Look: Copy {
    /// A word with the top bit set if the number is outside the plain run.
    fn borrow(self, rising: u64) -> u64;
}

/// Every number is plain.
#[derive(Debug, Clone, Copy)]
pub(super) struct Nowhere;

/// The numbers above a last one are not plain; special values mostly stand at the top.
#[derive(Debug, Clone, Copy)]
pub(super) struct Above {
    pub(super) last: u64,
}

/// The numbers outside both ends are not plain.
#[derive(Debug, Clone, Copy)]
pub(super) struct Outside {
    pub(super) first: u64,
    pub(super) last: u64,
}

impl Look for Nowhere {
    #[inline(always)]
    fn borrow(self, _: u64) -> u64 {
        0
    }
}

impl Look for Above {
    #[inline(always)]
    fn borrow(self, rising: u64) -> u64 {
        self.last.wrapping_sub(rising)
    }
}

impl Look for Outside {
    #[inline(always)]
    fn borrow(self, rising: u64) -> u64 {
        rising.wrapping_sub(self.first) | self.last.wrapping_sub(rising)
    }
}

/// The plain run of a signal, and where to look for numbers that are not in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Plain {
    Everything,
    UpTo { last: u64 },
    Between { first: u64, last: u64 },
}

impl Plain {
    /// Whether a rising number of any width is in the run.
    #[inline(always)]
    pub(super) fn holds(self, rising: u64) -> bool {
        match self {
            Self::Everything => true,
            Self::UpTo { last } => rising <= last,
            Self::Between { first, last } => first <= rising && rising <= last,
        }
    }
}
