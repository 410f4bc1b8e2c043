//! How the pages of a frame hang together.

use super::flaw::{Checked, Flaw};
use super::general::{at_most, not_zero, refers};
use crate::{Page, PageId, SignalId};

/// Where each page lies in the tree: a run of numbers that holds the runs of the pages inside it, so that one comparison tells whether a
/// page is around another. Number 0 and the run of everything belong to the frame itself.
pub(super) struct Tree {
    runs: Vec<Run>,
}

/// A page's own number and the one behind its last inner page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Run {
    pub(super) start: u32,
    pub(super) end: u32,
}

impl Tree {
    /// The tree of some pages. On failure also tells which page has the flaw.
    pub(super) fn of(pages: &[Page]) -> Result<Self, (usize, Flaw)> {
        for (index, page) in pages.iter().enumerate() {
            parent_before(index, page, pages.len()).map_err(|flaw| (index, flaw))?;
        }
        let mut sizes = vec![1_u32; pages.len()];
        for (index, page) in pages.iter().enumerate().rev() {
            if let Some(parent) = page.parent {
                sizes[parent.index()] += sizes[index];
            }
        }
        let mut runs: Vec<Run> = Vec::with_capacity(pages.len());
        // The next free number inside each page, and inside the frame.
        let mut free: Vec<u32> = Vec::with_capacity(pages.len());
        let mut free_in_frame = 1;
        for (page, size) in pages.iter().zip(sizes) {
            let next = page.parent.map_or(&mut free_in_frame, |parent| &mut free[parent.index()]);
            let run = Run { start: *next, end: *next + size };
            *next = run.end;
            runs.push(run);
            free.push(run.start + 1);
        }
        Ok(Self { runs })
    }

    /// The run of a page, or of the frame itself; the page has to exist.
    pub(super) fn run(&self, page: Option<PageId>) -> Run {
        page.map_or(Run { start: 0, end: u32::MAX }, |page| self.runs[page.index()])
    }

    /// Whether what is on `outer` is there whenever something on `inner` is.
    pub(super) fn sees(&self, inner: Option<PageId>, outer: Option<PageId>) -> bool {
        let (inner, outer) = (self.run(inner), self.run(outer));
        (outer.start..outer.end).contains(&inner.start)
    }
}

fn parent_before(index: usize, page: &Page, count: usize) -> Checked {
    let Some(parent) = page.parent else {
        return Ok(());
    };
    refers("page", parent.0, count)?;
    if parent.index() < index { Ok(()) } else { Err(Flaw::PageOrder { parent: parent.0 }) }
}

/// One switch, as far as its pages have been read.
struct Switch {
    parent: Option<PageId>,
    /// The selectors of its pages, sorted; `None` before the first page that has some.
    selectors: Option<Vec<SignalId>>,
    has_otherwise: bool,
    /// Its only page is an element of a repeated group, or a group that gives rows.
    is_alone: bool,
}

/// Checks that switches are numbered without gaps, that their pages stand beside each other and look at the same selectors, and that at
/// most one of them is the `otherwise` page. On failure also tells which page has the flaw.
pub(super) fn check_switches(pages: &[Page]) -> Result<(), (usize, Flaw)> {
    let mut switches: Vec<Switch> = Vec::new();
    for (index, page) in pages.iter().enumerate() {
        enter(&mut switches, page).map_err(|flaw| (index, flaw))?;
    }
    Ok(())
}

fn enter(switches: &mut Vec<Switch>, page: &Page) -> Checked {
    let wrong = |problem| Flaw::WrongSwitch { switch: page.switch, problem };
    let is_first = page.switch as usize == switches.len();
    if is_first {
        switches.push(Switch { parent: page.parent, selectors: None, has_otherwise: false, is_alone: false });
    }
    let Some(switch) = switches.get_mut(page.switch as usize) else {
        return Err(wrong("switches are numbered from 0 in the order of their first pages"));
    };
    if switch.parent != page.parent {
        return Err(wrong("the pages of a switch stand beside each other, on the same page around them"));
    }
    let has_own = page.element.is_some() || page.rows_from.is_some();
    if switch.is_alone || (has_own && !is_first) {
        return Err(wrong("an element of a repeated group, or a group that gives rows, has a switch of its own"));
    }
    if has_own {
        switch.is_alone = true;
        return Ok(());
    }
    if page.tests.is_empty() {
        let second = std::mem::replace(&mut switch.has_otherwise, true);
        return if second { Err(wrong("a switch has at most one page without a condition")) } else { Ok(()) };
    }
    let mut selectors: Vec<_> = page.tests.iter().map(|test| test.selector).collect();
    selectors.sort_unstable();
    selectors.dedup();
    match &switch.selectors {
        Some(known) if *known != selectors => Err(wrong("the pages of a switch look at the same selectors")),
        Some(_) => Ok(()),
        None => {
            switch.selectors = Some(selectors);
            Ok(())
        }
    }
}

/// The most payload bytes that there can be on each page: its own length, else that of the page around, else the frame's.
pub(super) fn limits(pages: &[Page], frame_limit: u32) -> Vec<u32> {
    let mut limits: Vec<u32> = Vec::with_capacity(pages.len());
    for page in pages {
        let around = page.parent.and_then(|parent| limits.get(parent.index()).copied()).unwrap_or(frame_limit);
        limits.push(page.length.map_or(around, |length| length.max));
    }
    limits
}

/// Checks that an element can be there in a payload of so many bytes.
pub(super) fn element(element: Option<crate::Element>, limit: u32) -> Checked {
    let Some(element) = element else { return Ok(()) };
    not_zero("number among the elements", element.number.into())?;
    at_most("number among the elements", element.number, element.most)?;
    super::frame::inside(element.reaches, limit)
}

/// A length that is in order and not above what the network can carry.
pub(super) fn length(length: Option<crate::LengthRange>, longest: u32) -> Checked {
    let Some(length) = length else { return Ok(()) };
    if length.max < length.min {
        return Err(Flaw::UpsideDown { what: "length" });
    }
    at_most("length in bytes", length.max, longest)
}
