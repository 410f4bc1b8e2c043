//! How far elements of groups that give rows reach beyond their signals.

use wirelore_model::{LengthRange, PageId};

use super::contents::Contents;
use super::length::Bounds;

/// What is known of one page.
#[derive(Debug, Clone, Copy, Default)]
struct Reach {
    /// It is a group that gives rows, or in one.
    in_rows: bool,
    /// The byte behind its signals.
    signals: u32,
    /// The byte behind what is there without a signal: bits that nobody knows or uses, and the rest of repeated elements.
    others: u32,
    /// The greatest of the latter on the pages around, where a length says so.
    around: u32,
    /// The most bytes that there can be.
    most: u32,
}

impl Contents<'_> {
    /// What is on a page without a signal belongs to its element, too. Where that reaches beyond the page's signals, the page gets a length
    /// of at least so many bytes: at least, for something else that is there may go further. Where a length is stated, it holds.
    pub(super) fn ends_of_rows(&mut self, bounds: Bounds) {
        if !self.frame.gives_rows() {
            return;
        }
        let mut reaches = self.reaches();
        for page in 0..reaches.len() {
            let parent = self.frame.pages[page].parent;
            let outer = parent.map(|parent| reaches[parent.index()]);
            let reach = &mut reaches[page];
            if self.frame.pages[page].rows_from.is_some() {
                let limit = self.length_on(parent).map(|length| length.max).or(bounds.longest);
                (reach.in_rows, reach.most) = (true, limit.unwrap_or(u32::MAX));
            } else if let Some(outer) = outer {
                (reach.in_rows, reach.around, reach.most) = (outer.in_rows, outer.around, outer.most);
            }
            if reach.in_rows && self.page_lengths[page].is_none() && reach.others > reach.signals.max(reach.around) {
                reach.around = reach.others;
                let length = LengthRange { min: reach.others, max: reach.most.max(reach.others) };
                self.frame.pages[page].length = Some(length);
            }
        }
    }

    /// How far what is on each page reaches.
    fn reaches(&self) -> Vec<Reach> {
        let mut reaches = vec![Reach::default(); self.frame.pages.len()];
        let mut at = |page: Option<PageId>, signals: u32, others: u32| {
            let Some(reach) = page.and_then(|page| reaches.get_mut(page.index())) else { return };
            reach.signals = reach.signals.max(signals);
            reach.others = reach.others.max(others);
        };
        self.frame.signals.iter().for_each(|signal| at(signal.page, signal.needed_bytes(), 0));
        self.areas.iter().for_each(|area| at(area.page, 0, area.needed_bytes()));
        let repeated = self.flat.scopes.iter().filter(|scope| scope.is_repeated());
        repeated.for_each(|scope| at(scope.page, 0, scope.element.map_or(0, |(_, end)| end)));
        reaches
    }
}
