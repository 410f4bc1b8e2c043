//! Elements of repeated groups that are alike, so that one type can say them all.

use wirelore_bits::Place;
use wirelore_model::{ByteSpan, Content, PageId, RawSpan, Role, Signal, SignalId};

use super::planner::Planner;

impl<'d> Planner<'d> {
    /// How many switches from the first one on are elements of one group that are alike, where the first begins, and how far they are apart.
    /// The first one stands for all of them then.
    pub(super) fn alike(&self, switches: &[Vec<PageId>]) -> Option<(usize, u32, u32)> {
        let first = *switches.first()?.first()?;
        let info = self.frame.pages[first.index()].element?;
        let count = info.most as usize;
        if info.number != 1 || count < 2 || switches.len() < count {
            return None;
        }
        let elements: Vec<Shape<'d>> =
            switches[..count].iter().map(|pages| self.shape(*pages.first()?)).collect::<Option<_>>()?;
        let base = elements[0].first_byte;
        let step = elements[1].first_byte.checked_sub(base).filter(|step| *step > 0)?;
        let is_whole = (0..).zip(&elements).all(|(at, element)| element.first_byte == base + at * step);
        let is_same = elements.iter().all(|element| element.is_like(&elements[0]));
        (is_whole && is_same).then_some((count, base, step))
    }

    /// What an element looks like from its first byte on; `None` where it looks at anything outside, or is not what one type can say.
    fn shape(&self, page: PageId) -> Option<Shape<'d>> {
        let mut pages = vec![page];
        let mut at = 0;
        while let Some(page) = pages.get(at).copied() {
            pages.extend(self.inside[page.index() + 1].iter().flatten());
            at += 1;
        }
        let element = self.frame.pages[page.index()].element?;
        let signals: Vec<(SignalId, &'d Signal)> = (0..)
            .map(SignalId)
            .zip(&self.frame.signals)
            .filter(|(_, signal)| signal.page.is_some_and(|page| pages.contains(&page)))
            .collect();
        let own = |id: SignalId| signals.iter().position(|(own, _)| *own == id);
        let mut tests = Vec::new();
        for page in pages.iter().skip(1).map(|page| &self.frame.pages[page.index()]) {
            if page.element.is_some() || page.length.is_some() {
                return None;
            }
            let parent = pages.iter().position(|id| Some(*id) == page.parent);
            let of_page = page.tests.iter().map(|test| Some((own(test.selector)?, &test.values)));
            tests.push((parent, of_page.collect::<Option<Vec<_>>>()?));
        }
        let first_byte =
            signals.iter().map(|(_, signal)| first_byte(signal)).collect::<Option<Vec<_>>>()?.into_iter().min()?;
        let plain = |signal: &Signal| matches!(signal.role, Role::Value) && signal.size().is_none();
        let reaches = element.reaches.saturating_sub(if element.reaches == 0 { 0 } else { first_byte });
        signals.iter().all(|(_, signal)| plain(signal)).then_some(Shape {
            first_byte,
            reaches,
            pages: signals.iter().map(|(_, signal)| pages.iter().position(|page| Some(*page) == signal.page)).collect(),
            tests,
            signals: signals.into_iter().map(|(_, signal)| signal).collect(),
        })
    }
}

/// The tests of a page inside an element: which page it is in, and what the element's own signals must be.
type PageTests<'d> = (Option<usize>, Vec<(usize, &'d Vec<RawSpan>)>);

/// An element of a repeated group.
struct Shape<'d> {
    first_byte: u32,
    reaches: u32,
    /// By signal: the place of its page among those of the element.
    pages: Vec<Option<usize>>,
    tests: Vec<PageTests<'d>>,
    signals: Vec<&'d Signal>,
}

impl Shape<'_> {
    fn is_like(&self, first: &Shape<'_>) -> bool {
        let moved = self.first_byte - first.first_byte.min(self.first_byte);
        let same_signals = self.signals.iter().zip(&first.signals).all(|(one, other)| {
            let bare = |name: &str| name.split('[').next().unwrap_or_default().to_owned();
            let contents = match (&one.content, &other.content) {
                (Content::Number { field, kind }, Content::Number { field: first, kind: first_kind }) => {
                    kind == first_kind && first.shifted(moved).as_ref() == Some(field)
                }
                (Content::Text { bytes, charset, .. }, Content::Text { bytes: first, charset: first_set, .. }) => {
                    charset == first_set && is_moved(*bytes, *first, moved)
                }
                (Content::Bytes { bytes, .. }, Content::Bytes { bytes: first, .. }) => is_moved(*bytes, *first, moved),
                _ => false,
            };
            contents
                && bare(&one.label.name) == bare(&other.label.name)
                && one.scaling == other.scaling
                && one.unit == other.unit
                && one.states == other.states
                && (&one.absent, &one.fault, &one.range) == (&other.absent, &other.fault, &other.range)
        });
        same_signals
            && self.signals.len() == first.signals.len()
            && self.reaches == first.reaches
            && self.pages == first.pages
            && self.tests == first.tests
    }
}

fn is_moved(bytes: ByteSpan, first: ByteSpan, by: u32) -> bool {
    bytes.first.checked_sub(by) == Some(first.first)
        && bytes.last.zip(first.last).is_some_and(|(one, other)| one.checked_sub(by) == Some(other))
}

/// The first payload byte that a signal is in; `None` for what runs to the end.
fn first_byte(signal: &Signal) -> Option<u32> {
    match &signal.content {
        Content::Number { field, .. } => field.places().iter().map(Place::first_byte).min(),
        Content::Text { bytes, .. } | Content::Bytes { bytes, .. } => bytes.last.map(|_| bytes.first),
    }
}
