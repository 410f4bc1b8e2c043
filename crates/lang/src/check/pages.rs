//! Do the pages of a switch keep apart, and which pages exclude each other?

use wirelore_bits::Encoding;
use wirelore_model::{Page, RawSpan, SignalId};

use crate::resolve::contents::Contents;
use crate::resolve::messages::Messages;
use crate::resolve::raw::comparable;
use crate::syntax::tree::{self, TestValue};
use crate::{Diagnostic, Rule, Site, Span};

/// After so many pairs in one frame the rest is not worth a look.
const MOST_TOLD: usize = 200;

/// Raw values: runs that do not touch, sorted. The first part tells patterns without a number from numbers.
type Runs = Vec<(bool, i128, i128)>;

/// The conditions of a frame's pages in a form that can be compared.
#[derive(Debug)]
pub(crate) struct Conditions(Vec<Condition>);

#[derive(Debug)]
struct Condition {
    parent: Option<usize>,
    switch: u32,
    tests: Vec<(SignalId, Runs)>,
    /// A part of the condition is broken: when the page is there is not known.
    is_unknown: bool,
    /// For an `otherwise` page: the values that the other pages of its switch take, where they all look at one selector.
    taken_by_others: Option<(SignalId, Runs)>,
}

impl Conditions {
    pub(crate) fn of(contents: &Contents<'_>) -> Self {
        let pages = &contents.frame.pages;
        let encoding =
            |signal: SignalId| contents.frame.signals.get(signal.index()).and_then(wirelore_model::Signal::encoding);
        let mut conditions: Vec<Condition> = pages.iter().map(|page| Condition::of(page, encoding)).collect();
        // The `otherwise` page of a switch stands behind its other pages, with only inner pages between them.
        let mut taken: Vec<Option<(SignalId, Runs)>> = Vec::new();
        for (condition, flat) in conditions.iter_mut().zip(&contents.flat.pages) {
            condition.is_unknown = flat.when.is_some_and(|when| when.tests.len() != condition.tests.len());
            let switch = condition.switch as usize;
            if taken.len() <= switch {
                taken.resize(switch + 1, None);
            }
            match (flat.when, condition.tests.as_slice()) {
                (None, _) => condition.taken_by_others = taken[switch].take(),
                (Some(_), [(selector, runs)]) => {
                    let (_, all) = taken[switch].get_or_insert_with(|| (*selector, Vec::new()));
                    all.extend(runs);
                }
                (Some(_), _) => {}
            }
        }
        for condition in &mut conditions {
            if let Some((_, runs)) = &mut condition.taken_by_others {
                *runs = merged(std::mem::take(runs));
            }
        }
        Self(conditions)
    }

    /// Whether two pages are never there at the same time, or nobody can tell.
    pub(crate) fn exclude(&self, one: usize, other: usize) -> bool {
        self.chain(one)
            .any(|first| self.chain(other).any(|second| !std::ptr::eq(first, second) && first.excludes(second)))
    }

    /// A page and the pages around it.
    fn chain(&self, page: usize) -> impl Iterator<Item = &Condition> {
        std::iter::successors(self.0.get(page), |condition| condition.parent.and_then(|parent| self.0.get(parent)))
    }
}

impl Condition {
    fn of(page: &Page, encoding: impl Fn(SignalId) -> Option<Encoding>) -> Self {
        let runs = |values: &[RawSpan], selector| {
            merged(values.iter().filter_map(|span| comparable(*span, encoding(selector))).collect())
        };
        Self {
            parent: page.parent.map(|parent| parent.index()),
            switch: page.switch,
            tests: page.tests.iter().map(|test| (test.selector, runs(&test.values, test.selector))).collect(),
            is_unknown: false,
            taken_by_others: None,
        }
    }

    fn excludes(&self, other: &Self) -> bool {
        let apart = |(selector, runs): &(SignalId, Runs)| {
            other.tests.iter().any(|(second, others)| selector == second && !meet(runs, others))
        };
        self.is_unknown
            || other.is_unknown
            || self.switch == other.switch
            || self.tests.iter().any(apart)
            || self.leaves_nothing_to(other)
            || other.leaves_nothing_to(self)
    }

    /// Whether this is an `otherwise` page and the other one only holds where one of this one's neighbours does.
    fn leaves_nothing_to(&self, other: &Self) -> bool {
        let Some((selector, taken)) = &self.taken_by_others else { return false };
        let inside = |run: &(bool, i128, i128)| {
            taken.iter().any(|outer| outer.0 == run.0 && outer.1 <= run.1 && run.2 <= outer.2)
        };
        other.tests.iter().any(|(second, runs)| selector == second && runs.iter().all(inside))
    }
}

fn merged(mut runs: Runs) -> Runs {
    runs.sort_unstable();
    let mut merged: Runs = Vec::with_capacity(runs.len());
    for run in runs {
        match merged.last_mut() {
            Some(last) if last.0 == run.0 && run.1 <= last.2.saturating_add(1) => last.2 = last.2.max(run.2),
            _ => merged.push(run),
        }
    }
    merged
}

/// Whether two sorted lists of runs have a value in common.
fn meet(one: &[(bool, i128, i128)], other: &[(bool, i128, i128)]) -> bool {
    let (mut one, mut other) = (one.iter().peekable(), other.iter().peekable());
    while let (Some(a), Some(b)) = (one.peek(), other.peek()) {
        if a.0 == b.0 && a.1 <= b.2 && b.1 <= a.2 {
            return true;
        }
        if (a.0, a.2) < (b.0, b.2) {
            one.next()
        } else {
            other.next()
        };
    }
    false
}

/// Says which pages of a switch hold for the same values.
pub(crate) fn check(contents: &Contents<'_>, conditions: &Conditions, messages: &mut Messages) {
    for (page, flat) in contents.flat.pages.iter().enumerate() {
        if let Some(when) = flat.when {
            let file = contents.flat.scopes[flat.scope].file;
            let tests = when.tests.iter().zip(&contents.frame.pages[page].tests);
            tests.for_each(|(written, test)| value_twice(contents, written, test, file, messages));
        }
    }
    let switches = contents.frame.pages.iter().map(|page| page.switch as usize + 1).max().unwrap_or(0);
    let mut members: Vec<Vec<usize>> = vec![Vec::new(); switches];
    for (index, page) in contents.frame.pages.iter().enumerate() {
        let is_whole = contents.flat.pages[index].when.is_some_and(|when| when.tests.len() == page.tests.len());
        if is_whole {
            members[page.switch as usize].push(index);
        }
    }
    let mut told = 0;
    for members in members.iter().filter(|members| members.len() > 1) {
        pages_twice(contents, conditions, members, &mut told, messages);
    }
}

/// Says where one condition names a value twice.
fn value_twice(
    contents: &Contents<'_>,
    written: &tree::Test,
    test: &wirelore_model::Test,
    file: crate::FileId,
    messages: &mut Messages,
) {
    let encoding = contents.frame.signals.get(test.selector.index()).and_then(wirelore_model::Signal::encoding);
    let mut runs: Runs = test.values.iter().filter_map(|span| comparable(*span, encoding)).collect();
    runs.sort_unstable();
    if let Some(pair) = runs.windows(2).find(|pair| pair[0].0 == pair[1].0 && pair[1].1 <= pair[0].2) {
        let text = format!("this condition names {} twice", pair[1].1);
        let message = Diagnostic::new(Rule::PageTwice, Site { file, span: span_of(written) }, text);
        messages.push(message.here("the same value again").help("name each value once"));
    }
}

/// Goes through the pages of a switch by the values of the selector that tells most of them apart.
fn pages_twice(
    contents: &Contents<'_>,
    conditions: &Conditions,
    members: &[usize],
    told: &mut usize,
    messages: &mut Messages,
) {
    let tests = |page: usize| &conditions.0[page].tests;
    let distinct = |position: &usize| {
        let mut firsts: Vec<_> = members.iter().filter_map(|&page| tests(page).get(*position)?.1.first()).collect();
        firsts.sort_unstable();
        firsts.dedup();
        firsts.len()
    };
    let first_tests = tests(members[0]);
    let Some(best) = (0..first_tests.len()).max_by_key(distinct).map(|position| first_tests[position].0) else {
        return;
    };
    let runs_of_best =
        |page: usize| tests(page).iter().filter(|(selector, _)| *selector == best).flat_map(|(_, runs)| runs);
    let mut runs: Vec<_> = members.iter().flat_map(|&page| runs_of_best(page).map(move |&run| (run, page))).collect();
    runs.sort_unstable();
    let mut open: Vec<((bool, i128, i128), usize)> = Vec::new();
    for (run, page) in runs {
        open.retain(|(other, _)| other.0 == run.0 && other.2 >= run.1);
        for &(_, other) in &open {
            if other != page && *told < MOST_TOLD && !conditions.0[page].is_apart_from(&conditions.0[other]) {
                *told += 1;
                say(contents, page.max(other), page.min(other), run.1, messages);
            }
        }
        open.push((run, page));
    }
}

impl Condition {
    /// Whether two pages of one switch never hold both.
    fn is_apart_from(&self, other: &Self) -> bool {
        self.tests.iter().any(|(selector, runs)| {
            other.tests.iter().any(|(second, others)| selector == second && !meet(runs, others))
        })
    }
}

fn say(contents: &Contents<'_>, later: usize, earlier: usize, value: i128, messages: &mut Messages) {
    let site = |page: usize| {
        let flat = &contents.flat.pages[page];
        let span = flat
            .when
            .map_or(flat.site.span, |when| when.tests.iter().map(span_of).reduce(Span::to).unwrap_or(flat.site.span));
        Site { span, ..flat.site }
    };
    messages.push(
        Diagnostic::new(Rule::PageTwice, site(later), format!("two pages hold for the same values ({value})"))
            .here("this one never gets its turn")
            .remark(site(earlier), "this one comes first")
            .help("give each page its own values, or join the two"),
    );
}

fn span_of(test: &tree::Test) -> Span {
    let last = test.values.last().map_or(test.signal.span, |value| match value {
        TestValue::Raw(range) => range.span,
        TestValue::Word(word) => word.span,
    });
    test.signal.span.to(last)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn runs_are_joined_where_they_touch() {
        assert_eq!(
            merged(vec![(false, 5, 6), (false, 1, 2), (false, 3, 3), (true, 7, 7)]),
            [(false, 1, 3), (false, 5, 6), (true, 7, 7)]
        );
    }

    #[test]
    fn lists_of_runs_meet_or_not() {
        assert!(meet(&[(false, 1, 3), (false, 9, 9)], &[(false, 4, 8), (false, 9, 12)]));
        assert!(!meet(&[(false, 1, 3), (false, 9, 9)], &[(false, 4, 8), (false, 10, 12)]));
        assert!(!meet(&[(false, 1, 3)], &[(true, 1, 3)]), "a pattern without a number is no number");
    }
}
