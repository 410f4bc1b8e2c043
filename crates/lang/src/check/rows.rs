//! Can a payload be told apart into rows?

use wirelore_model::{PageId, Role, SignalId};

use super::pages::Conditions;
use crate::resolve::Resolver;
use crate::resolve::contents::Contents;
use crate::{Diagnostic, Rule, Site};

/// A group that gives rows.
struct Group {
    page: usize,
    /// The payload byte at which its first element begins.
    from: u32,
    site: Site,
}

/// Tells what keeps a frame from giving rows; gives the signal that was found behind the beginning of a group.
pub(crate) fn check(
    contents: &Contents<'_>,
    conditions: &Conditions,
    resolver: &mut Resolver<'_, '_>,
) -> Option<SignalId> {
    let pages = contents.flat.pages.iter().enumerate();
    let groups: Vec<Group> =
        pages.filter_map(|(page, flat)| Some(Group { page, from: flat.rows?.from, site: flat.site })).collect();
    let first = groups.first()?;
    duties(contents, first, resolver);
    lengths(contents, resolver);
    if together(&groups, conditions, resolver) {
        return None;
    }
    let found: Vec<_> = groups.iter().filter_map(|group| behind(contents, group, conditions, resolver)).collect();
    found.first().copied()
}

/// What counts or checks a whole payload says nothing about one of its rows.
fn duties(contents: &Contents<'_>, group: &Group, resolver: &mut Resolver<'_, '_>) {
    let mut signals = contents.frame.signals.iter().zip(&contents.origins);
    let Some((signal, origin)) = signals.find(|(signal, _)| signal.role != Role::Value) else { return };
    let text = format!("`{}` belongs to the whole payload, and the frame gives several rows", signal.label.name);
    let message = Diagnostic::new(Rule::RowsImpossible, origin.site(), text)
        .here("a counter, a checksum or a protection")
        .remark(group.site, "gives a row for each of its elements");
    resolver.messages.push(message.help("describe it as a plain signal, or the group with `up to` and a number"));
}

/// What is said of how long elements are has to tell where the next one begins, and that behind what is there in any case.
fn lengths(contents: &Contents<'_>, resolver: &mut Resolver<'_, '_>) {
    let mut reaches = vec![0_u32; contents.frame.pages.len()];
    let signals = contents.frame.signals.iter().map(|signal| (signal.page, signal.occupied_bytes()));
    let areas = contents.areas.iter().map(|area| (area.page, area.needed_bytes()));
    for (page, reach) in signals.chain(areas) {
        let Some(page) = page else { continue };
        reaches[page.index()] = reaches[page.index()].max(reach);
    }
    for (page, flat) in contents.flat.pages.iter().enumerate() {
        let (Some(statement), Some(length)) = (flat.lengths.first(), contents.page_lengths[page]) else { continue };
        let scope = &contents.flat.scopes[flat.scope];
        if !scope.in_rows {
            continue;
        }
        let of_part = |bytes: u32| bytes.saturating_sub(scope.base);
        let from = if scope.via.is_some() { "in a layout, from the layout's" } else { "from the element's" };
        let site = scope.site(statement.span);
        let around = contents
            .frame
            .page_ids_around(flat.parent)
            .take_while(|page| contents.flat.pages[page.index()].rows.is_none());
        let group =
            contents.frame.page_ids_around(flat.parent).find(|page| contents.flat.pages[page.index()].rows.is_some());
        let before = around.chain(group).map(|page| reaches[page.index()]).max().unwrap_or(0);
        let message = if length.min != length.max || of_part(length.max) == 0 {
            Diagnostic::new(Rule::RowsImpossible, site, "the length of an element is one number above 0")
                .here("does not say where the next element begins")
                .help("write `length N` with the bytes of one element; give each length a page of its own where there are several")
        } else if before > length.max {
            let (before, stated) = (of_part(before), of_part(length.max));
            let text =
                format!("the element has {before} bytes before this page's own, and its length is said to be {stated}");
            Diagnostic::new(Rule::RowsImpossible, site, text)
                .here(format!("`length` counts {from} first byte"))
                .help(format!("write `length {before}`, or more"))
        } else {
            continue;
        };
        resolver.messages.push(match scope.via {
            Some(via) => message.remark(via, "put in here"),
            None => message,
        });
    }
}

/// Each group goes on to the end, so only one of them can be there: whether one was told that can be there with another.
fn together(groups: &[Group], conditions: &Conditions, resolver: &mut Resolver<'_, '_>) -> bool {
    for (at, second) in groups.iter().enumerate() {
        for first in groups.iter().take(at) {
            if !resolver.budget.compare() {
                return false;
            }
            if !conditions.exclude(first.page, second.page) {
                let message = "two groups that give rows can be there at the same time";
                let message = Diagnostic::new(Rule::RowsImpossible, second.site, message)
                    .here("goes on to the end of the payload")
                    .remark(first.site, "so does this one");
                resolver.messages.push(message.help("put them on pages that exclude each other"));
                return true;
            }
        }
    }
    false
}

/// What is not in the group has to be in front of it: behind its beginning is another element in every row.
fn behind(
    contents: &Contents<'_>,
    group: &Group,
    conditions: &Conditions,
    resolver: &mut Resolver<'_, '_>,
) -> Option<SignalId> {
    let mut together: Vec<Option<bool>> = vec![None; contents.frame.pages.len()];
    for (id, (signal, origin)) in (0..).map(SignalId).zip(contents.frame.signals.iter().zip(&contents.origins)) {
        if signal.occupied_bytes() <= group.from {
            continue;
        }
        let can_be_there = match signal.page {
            None => true,
            Some(page) => *together[page.index()].get_or_insert_with(|| {
                resolver.budget.compare()
                    && !is_inside(contents, page, group.page)
                    && !conditions.exclude(page.index(), group.page)
            }),
        };
        if can_be_there {
            let text = format!("signal `{}` lies behind the beginning of a group that gives rows", signal.label.name);
            let message = Diagnostic::new(Rule::RowsImpossible, origin.site(), text)
                .here("other elements stand there, too")
                .remark(group.site, "one element behind the other from its first byte on");
            resolver.messages.push(message.help("put it into the group, or in front of it"));
            return Some(id);
        }
    }
    None
}

fn is_inside(contents: &Contents<'_>, page: PageId, group: usize) -> bool {
    contents.frame.page_ids_around(Some(page)).any(|page| page.index() == group)
}
