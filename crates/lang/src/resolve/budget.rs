//! How much a short text may grow: arrays and layouts are written once and stand for many signals.

/// The most elements of one array.
pub(crate) const MOST_ELEMENTS: u32 = 4_096;

/// The most signals of one frame once arrays and layouts are spelled out.
pub(crate) const MOST_IN_FRAME: usize = 65_536;

/// The most pages of one frame.
pub(crate) const MOST_PAGES: usize = 4_096;

/// How deep layouts and pages may stand inside each other.
pub(crate) const DEEPEST: usize = 64;

/// The most statements that arrays and layouts may grow into, over a whole description.
const MOST_GENERATED: usize = 262_144;

/// The most networks that all frames together may be passed on to.
const MOST_PASSED: usize = 1_048_576;

/// The most pairs of pages that are compared, over a whole description.
const MOST_PAIRS: usize = 16_777_216;

/// What is left.
#[derive(Debug)]
pub(crate) struct Budget {
    generated: usize,
    passed: usize,
    pairs: usize,
}

impl Budget {
    pub(crate) fn new() -> Self {
        Self { generated: MOST_GENERATED, passed: MOST_PASSED, pairs: MOST_PAIRS }
    }

    /// Takes some generated statements out of the budget; `false` if there are not that many left.
    pub(crate) fn generate(&mut self, count: usize) -> bool {
        take(&mut self.generated, count)
    }

    /// Takes one more network that a frame is passed on to.
    pub(crate) fn pass(&mut self) -> bool {
        take(&mut self.passed, 1)
    }

    /// Takes one comparison of two pages.
    pub(crate) fn compare(&mut self) -> bool {
        take(&mut self.pairs, 1)
    }
}

fn take(left: &mut usize, count: usize) -> bool {
    match left.checked_sub(count) {
        Some(rest) => {
            *left = rest;
            true
        }
        None => {
            *left = 0;
            false
        }
    }
}
