//! Frames drawn for a terminal: which bit belongs to which signal, and what each signal means.
//!
//! Every signal has a letter, and every bit shows the letter of its signal; the most significant bit shows it as a capital. So a
//! reader sees at a glance where a value begins, which way it runs, and which bits nobody has claimed.

mod bits;
mod lin;
mod network;
mod words;

use std::fmt::Write;

use wirelore_model::{Appearance, Database, Element, Frame, Page, PageId, Signal, SignalId, appearance_text};

use crate::summary::counted;

pub(crate) use network::network;

/// The frame with all its signals.
pub(crate) fn frame(database: &Database, frame: &Frame) -> String {
    let mut text = words::frame_heading(database, frame);
    let pages = std::iter::once(None).chain((0..frame.pages.len() as u32).map(|page| Some(PageId(page))));
    for page in pages {
        let signals = signals_of(frame, page);
        if page.is_some_and(|page| signals.is_empty() || is_further_element(frame, page)) {
            continue;
        }
        text.push('\n');
        if let Some(page) = page {
            let _ = writeln!(text, "{}", when_text(database, frame, page));
        }
        text.push_str(&bits::picture(frame, page, &signals));
        text.push('\n');
        text.push_str(&legend(database, frame, &signals));
    }
    text
}

/// One signal alone, with everything that is known of it.
pub(crate) fn signal(database: &Database, frame: &Frame, id: SignalId) -> String {
    let signal = &frame.signals[id.index()];
    let mut text = format!("{}.{}", frame.label.name, words::title_of(&signal.label));
    text.push('\n');
    words::push_label(&mut text, &signal.label);
    let page = signal.page;
    if let Some(page) = page {
        let _ = writeln!(text, "  only {}", when_text(database, frame, page));
    }
    text.push('\n');
    text.push_str(&bits::picture(frame, page, &[id]));
    text.push('\n');
    for line in words::signal_details(database, frame, id) {
        let _ = writeln!(text, "  {line}");
    }
    for (number, span) in bits::spans(frame, &[id]).iter().enumerate() {
        if let Some((part, field)) = &span.part {
            let (letter, name, place) = (bits::letter(number), words::part_name(*part), words::field_text(field));
            let _ = writeln!(text, "  {letter}: its {name}, {place}");
        }
    }
    text
}

/// The frames of a description, one line each.
pub(crate) fn list(database: &Database) -> String {
    let rows: Vec<[String; 4]> =
        database.frames.iter().map(|frame| frame_row(database, frame, &frame.seen_on[0])).collect();
    columns(&rows, "")
}

/// Name, how it is recognised somewhere, how much is in it, what it is.
fn frame_row(database: &Database, frame: &Frame, seen: &Appearance) -> [String; 4] {
    let title = frame.label.title.clone().or_else(|| first_line(frame));
    let certainty = frame.label.certainty.as_ref().map(|certainty| certainty.grade.words().to_owned());
    [
        frame.label.name.clone(),
        appearance_text(database, seen),
        counted(frame.signals.len() as u64, "signal"),
        title.into_iter().chain(certainty).collect::<Vec<_>>().join("; "),
    ]
}

fn first_line(frame: &Frame) -> Option<String> {
    frame.label.note.as_ref().and_then(|note| note.lines().next()).map(str::to_owned)
}

/// The signals that stand directly on a page (or on none).
fn signals_of(frame: &Frame, page: Option<PageId>) -> Vec<SignalId> {
    let on_page = |signal: &Signal| signal.page == page;
    (0..frame.signals.len() as u32).map(SignalId).filter(|id| on_page(&frame.signals[id.index()])).collect()
}

/// When a page is there, in words: `when page is 2`, `when page is 2 (in a row for each element from byte 1 on)`.
fn when_text(database: &Database, frame: &Frame, id: PageId) -> String {
    let rows = frame.rows_around(Some(id));
    let rows = rows.map(|from| format!("in a row for each element from byte {from} on"));
    match (conditions(database, frame, id), rows) {
        (conditions, None) => format!("when {}", conditions.join(" and ")),
        (conditions, Some(rows)) if conditions.is_empty() => rows,
        (conditions, Some(rows)) => format!("when {} ({rows})", conditions.join(" and ")),
    }
}

/// The conditions of a page, with those of the pages around it, from the outside in.
fn conditions(database: &Database, frame: &Frame, id: PageId) -> Vec<String> {
    let own = |page: &Page| {
        if let Some(element) = page.element {
            element_text(database, frame, page, element)
        } else if page.tests.is_empty() {
            format!("{} is none of the other values", selectors(frame, page))
        } else {
            page.tests.iter().map(|test| words::test_text(database, frame, test)).collect::<Vec<_>>().join(" and ")
        }
    };
    let around = frame.pages_around(Some(id)).filter(|page| page.rows_from.is_none());
    let mut conditions: Vec<String> = around.map(own).collect();
    conditions.reverse();
    conditions
}

/// Whether a page is, or lies in, an element of a repeated group behind the first one: that is like the first, further on.
fn is_further_element(frame: &Frame, page: PageId) -> bool {
    frame.pages_around(Some(page)).any(|page| page.element.is_some_and(|element| element.number > 1))
}

/// When an element is there: `element 1 of up to 15, which is there when the frame has at least 6 bytes`.
fn element_text(database: &Database, frame: &Frame, page: &Page, element: Element) -> String {
    let tests = page.tests.iter().map(|test| words::test_text(database, frame, test));
    let reach = (element.reaches > 0).then(|| format!("the frame has at least {} bytes", element.reaches));
    let conditions: Vec<String> = tests.chain(reach).collect();
    format!("{} (element {} of up to {})", conditions.join(" and "), element.number, element.most)
}

/// The selectors that decide about a page without values of its own.
fn selectors(frame: &Frame, page: &Page) -> String {
    let beside = frame.pages.iter().find(|other| other.switch == page.switch && !other.tests.is_empty());
    let tests = beside.map(|other| other.tests.as_slice()).unwrap_or_default();
    let names = tests.iter().map(|test| frame.signals[test.selector.index()].label.name.as_str());
    names.collect::<Vec<_>>().join(", ")
}

/// What each letter stands for.
fn legend(database: &Database, frame: &Frame, signals: &[SignalId]) -> String {
    let row = |(number, span): (usize, &bits::Span<'_>)| {
        let (letter, signal) = (bits::letter(number), span.signal);
        let name = &signal.label.name;
        match &span.part {
            Some((part, field)) => [
                letter,
                format!("{name}: {}", words::part_name(*part)),
                words::field_text(field),
                words::field_width_text(field),
                String::new(),
                String::new(),
            ],
            None => [
                letter,
                name.clone(),
                words::place_text(signal),
                words::width_text(signal),
                words::meaning_text(signal),
                words::short_remarks(database, frame, signal).join("; "),
            ],
        }
    };
    let rows: Vec<[String; 6]> = bits::spans(frame, signals).iter().enumerate().map(row).collect();
    columns(&rows, "  ")
}

/// Rows with aligned columns, two blanks apart, nothing at the line ends.
fn columns<const N: usize>(rows: &[[String; N]], indent: &str) -> String {
    use unicode_width::UnicodeWidthStr;
    let mut widths = [0; N];
    for row in rows {
        for (width, cell) in widths.iter_mut().zip(row) {
            *width = (*width).max(cell.width());
        }
    }
    let mut text = String::new();
    for row in rows {
        let mut line = indent.to_owned();
        for (width, cell) in widths.iter().zip(row).filter(|(width, _)| **width > 0) {
            line.push_str(cell);
            line.extend(std::iter::repeat_n(' ', width - cell.width() + 2));
        }
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text
}
