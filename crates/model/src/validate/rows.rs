//! Groups that give rows.

use super::flaw::Flaw;
use super::general::at_most;
use crate::{Frame, Page, PageId, ROWS_FROM_MOST, RawSpan, RawValue, Role};

/// After so many pages that were compared in one frame the rest is not worth a look: nothing that anybody describes has as many.
const MOST_COMPARED: usize = 1_000_000;

/// Checks the groups that give rows: each stands in a payload of so many bytes, none in another group or beside one that is there with it,
/// nothing else stands behind its beginning, and the frame has nothing that counts or checks whole payloads. On failure also tells which page
/// has the flaw.
pub(super) fn check(frame: &Frame, limits: &[u32]) -> Result<(), (usize, Flaw)> {
    let wrong = |problem| Flaw::WrongRows { problem };
    let has_duty = frame.gives_rows() && frame.signals.iter().any(|signal| signal.role != Role::Value);
    let mut in_group: Vec<bool> = Vec::with_capacity(frame.pages.len());
    for (index, page) in frame.pages.iter().enumerate() {
        let is_inside = page.parent.is_some_and(|parent| in_group.get(parent.index()).copied().unwrap_or(false));
        in_group.push(is_inside || page.element.is_some() || page.rows_from.is_some());
        let Some(first) = page.rows_from else { continue };
        let limit = limits.get(index).copied().unwrap_or(u32::MAX);
        let checked = if is_inside {
            Err(wrong("it stands in another repeated group"))
        } else if page.element.is_some() || !page.tests.is_empty() {
            Err(wrong("it has a condition, and belongs on a page that has it"))
        } else if has_duty {
            Err(wrong("the frame has a counter, a checksum or a protection, which belong to the whole payload"))
        } else {
            at_most("number of bytes in front of its rows", first, ROWS_FROM_MOST)
                .and_then(|()| super::frame::inside(first, limit))
        };
        checked.map_err(|flaw| (index, flaw))?;
    }
    together(frame)
}

/// Checks that each group goes on to the end alone: no other group is there with it, and what is not in it stands in front of it.
fn together(frame: &Frame) -> Result<(), (usize, Flaw)> {
    let groups: Vec<(PageId, u32)> =
        (0..).map(PageId).zip(&frame.pages).filter_map(|(id, page)| Some((id, page.rows_from?))).collect();
    let wrong = |group: PageId, problem| Err((group.index(), Flaw::WrongRows { problem }));
    let mut left = MOST_COMPARED;
    for (number, &(group, _)) in groups.iter().enumerate() {
        if groups.iter().take(number).any(|&(other, _)| !exclude(frame, group, other, &mut left)) {
            return wrong(group, "another such group can be there at the same time");
        }
    }
    for &(group, from) in &groups {
        let mut known: Vec<Option<bool>> = vec![None; frame.pages.len()];
        for signal in frame.signals.iter().filter(|signal| signal.occupied_bytes() > from) {
            let can_be_there = match signal.page {
                None => true,
                Some(page) => *known[page.index()].get_or_insert_with(|| {
                    !frame.page_ids_around(Some(page)).any(|around| around == group)
                        && !exclude(frame, group, page, &mut left)
                }),
            };
            if can_be_there {
                return wrong(group, "a signal that is not in it lies behind its beginning");
            }
        }
    }
    Ok(())
}

/// Whether two pages are never there at the same time, so far as that can be told without much ado.
fn exclude(frame: &Frame, one: PageId, other: PageId, left: &mut usize) -> bool {
    for first in frame.page_ids_around(Some(one)) {
        for second in frame.page_ids_around(Some(other)).filter(|&second| second != first) {
            let Some(rest) = left.checked_sub(1) else { return true };
            *left = rest;
            let (first, second) = (&frame.pages[first.index()], &frame.pages[second.index()]);
            let are_apart = first.switch == second.switch
                || tests_apart(frame, first, second)
                || may_be_rest(frame, first, second)
                || may_be_rest(frame, second, first);
            if are_apart {
                return true;
            }
        }
    }
    false
}

/// Whether two pages look at one signal and have no value in common.
fn tests_apart(frame: &Frame, one: &Page, other: &Page) -> bool {
    one.tests.iter().any(|test| {
        let encoding = frame.signals[test.selector.index()].encoding();
        let run = |span: &RawSpan| match encoding.filter(|encoding| encoding.integer_range().is_some()) {
            Some(encoding) => span.numbers(encoding).map(|(first, last)| (false, first, last)),
            None => match (span.first, span.last) {
                (RawValue::Number(first), RawValue::Number(last)) => Some((false, first.into(), last.into())),
                (RawValue::Bits(first), RawValue::Bits(last)) => Some((true, first.into(), last.into())),
                _ => None,
            },
        };
        let meet = |one: &RawSpan, other: &RawSpan| match (run(one), run(other)) {
            (Some(one), Some(other)) => one.0 == other.0 && one.1 <= other.2 && other.1 <= one.2,
            _ => false,
        };
        let same = other.tests.iter().filter(|second| second.selector == test.selector);
        same.into_iter().any(|second| !test.values.iter().any(|one| second.values.iter().any(|other| meet(one, other))))
    })
}

/// Whether a page holds where others of its switch do not, and these look at what the second page looks at.
fn may_be_rest(frame: &Frame, rest: &Page, page: &Page) -> bool {
    let is_rest = rest.tests.is_empty() && rest.element.is_none() && rest.rows_from.is_none();
    is_rest && {
        let mut neighbours = frame.pages.iter().filter(|neighbour| neighbour.switch == rest.switch);
        let of_switch = neighbours.find(|neighbour| !neighbour.tests.is_empty());
        let looks_at = |selector| page.tests.iter().any(|test| test.selector == selector);
        of_switch.is_some_and(|neighbour| neighbour.tests.iter().any(|test| looks_at(test.selector)))
    }
}
