//! Do all bits lie inside the payload?

use std::ops::Range;

use wirelore_model::{ByteSpan, Content, LengthRange, NetworkKind, PageId, Role, Signal};

use crate::resolve::contents::{Contents, SignalOrigin};
use crate::resolve::length::Bounds;
use crate::resolve::messages::Messages;
use crate::resolve::settings::Counting;
use crate::{Diagnostic, Rule, Site, Span};

/// How far a payload reaches on one page.
struct Limit {
    bytes: u32,
    /// Where its length is stated.
    stated: Option<Site>,
    /// The kind of network; `None` for a message that is carried in several of its frames.
    kind: Option<NetworkKind>,
    /// The byte at which the first element begins, in a group that gives rows.
    rows_from: Option<u32>,
}

pub(crate) fn check(contents: &Contents<'_>, bounds: Bounds, messages: &mut Messages) {
    for (signal, origin) in contents.frame.signals.iter().zip(&contents.origins) {
        let Some(limit) = limit(contents, signal.page, bounds) else { continue };
        let needed = needed_bytes(signal);
        if let Some(element) = origin.element.clone().filter(|element| needed > element.end) {
            messages.push(put_in(beyond_element(signal, needed, element, origin), origin));
        } else if needed > limit.bytes {
            let what = match &signal.role {
                Role::Protection(protection) => format!("the header of profile {}", protection.profile.number()),
                _ => format!("signal `{}`", signal.label.name),
            };
            let message = say(&what, needed, &limit, origin.counting, origin.site());
            messages.push(put_in(message, origin));
        } else {
            covered(signal, origin, &limit, messages);
        }
    }
    for area in &contents.areas {
        let needed = area.needed_bytes();
        let mut around = [area.page, None].into_iter().filter_map(|page| limit(contents, page, bounds));
        if let Some(limit) = around.find(|limit| needed > limit.bytes) {
            let what = if area.is_unused { "`unused`" } else { "`unknown`" };
            messages.push(say(what, needed, &limit, area.counting, area.site));
        }
    }
}

/// The bytes that a payload must have for a signal and what belongs to it; of a place that goes to the end, its first one: where that
/// cannot be there, nothing ever is.
fn needed_bytes(signal: &Signal) -> u32 {
    match (&signal.content, signal.protection()) {
        (Content::Text { bytes, size: None, .. } | Content::Bytes { bytes, size: None }, _) => {
            bytes.last.unwrap_or(bytes.first).saturating_add(1)
        }
        (_, Some(protection)) => protection.header_end(),
        (_, None) => signal.needed_bytes(),
    }
}

/// Checks the bytes that a checksum or a protection covers.
fn covered(signal: &Signal, origin: &SignalOrigin<'_>, limit: &Limit, messages: &mut Messages) {
    let extras = origin.tree.extras();
    let mut check = |what: &str, span: ByteSpan, written: Span| {
        let needed = span.last.unwrap_or(span.first).saturating_add(1);
        if needed > limit.bytes {
            let site = Site { file: origin.file, span: written };
            messages.push(put_in(say(what, needed, limit, origin.counting, site), origin));
        }
    };
    match (&signal.role, &extras.checksum, &extras.protection) {
        (Role::Checksum(checksum), Some(written), _) => {
            let what = format!("checksum `{}`", signal.label.name);
            checksum.over.iter().zip(&written.value.over).for_each(|(span, run)| check(&what, *span, run.span));
        }
        (Role::Protection(protection), _, Some(written)) => {
            let span = written.value.over.as_ref().map_or(written.span, |run| run.span);
            check("the protection", protection.over, span);
        }
        _ => {}
    }
}

fn limit(contents: &Contents<'_>, page: Option<PageId>, Bounds { kind, longest }: Bounds) -> Option<Limit> {
    // An element of a group that gives rows has to fit into what is around, too.
    let mut around = page;
    let length = loop {
        let length = contents.length_on(around);
        match around.filter(|_| length.is_none()) {
            Some(inner) => around = contents.frame.pages[inner.index()].parent,
            None => break length,
        }
    };
    let rows_from = contents.frame.rows_around(page);
    match length {
        Some(LengthRange { max, .. }) => Some(Limit { bytes: max, stated: stated_at(contents, page), kind, rows_from }),
        None => Some(Limit { bytes: longest?, stated: None, kind, rows_from }),
    }
}

/// Where the length that holds on a page is stated: there, on a page around it, or in the frame.
fn stated_at(contents: &Contents<'_>, mut page: Option<PageId>) -> Option<Site> {
    while let Some(current) = page {
        let flat = contents.flat.pages.get(current.index())?;
        if let Some(statement) = flat.lengths.first() {
            return Some(contents.flat.scopes.get(flat.scope)?.site(statement.span));
        }
        page = flat.parent;
    }
    let is_length =
        |item: &&&crate::syntax::tree::BodyItem| matches!(item.kind, crate::syntax::tree::BodyKind::Length(_));
    let statement = contents.flat.statements.iter().find(is_length)?;
    Some(contents.flat.scopes.first()?.site(statement.span))
}

fn say(what: &str, needed: u32, limit: &Limit, counting: Counting, site: Site) -> Diagnostic {
    let byte = counting.byte(needed - 1);
    let end = limit.bytes.checked_sub(1).map(|last| counting.byte(last));
    let rest = match (end, limit.stated, limit.kind) {
        (None, _, _) => "but the frame has no bytes (length 0)".to_owned(),
        (Some(end), Some(_), _) => format!("but the frame ends with byte {end} (length {})", limit.bytes),
        (Some(end), None, Some(kind)) => format!("but a `{}` frame ends with byte {end} at the latest", kind.keyword()),
        (Some(end), None, None) => format!("but no message of its transport goes beyond byte {end}"),
    };
    let in_element = limit.rows_from.and_then(|from| (needed - 1).checked_sub(from));
    let needs = match in_element {
        Some(own) => format!("byte {} of its element, byte {byte} of the payload", counting.byte(own)),
        None => format!("byte {byte}"),
    };
    let message = Diagnostic::new(Rule::OutsideFrame, site, format!("{what} needs {needs}, {rest}"))
        .here(format!("reaches byte {byte}"));
    match limit.stated {
        Some(stated) => message.remark(stated, "the length").help("correct the place or the length"),
        None => message.help("correct the place"),
    }
}

/// What sticks out of its element would lie in the next one.
fn beyond_element(signal: &Signal, needed: u32, element: Range<u32>, origin: &SignalOrigin<'_>) -> Diagnostic {
    let size = element.end - element.start;
    let byte = origin.counting.byte(needed - 1 - element.start);
    let bytes = if size == 1 { "byte" } else { "bytes" };
    let text = format!("signal `{}` needs byte {byte} of its element, which has {size} {bytes}", signal.label.name);
    Diagnostic::new(Rule::OutsideFrame, origin.site(), text)
        .here(format!("reaches byte {byte}"))
        .help("correct the place or the size of the element")
}

/// Adds the `use layout` that put a signal where it is.
fn put_in(message: Diagnostic, origin: &SignalOrigin<'_>) -> Diagnostic {
    match origin.via {
        Some(via) => message.remark(via, "put in here"),
        None => message,
    }
}
