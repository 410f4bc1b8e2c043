//! The picture of a payload: a row for each byte, a letter for each bit.

use std::fmt::Write;

use wirelore_bits::Field;
use wirelore_bits::e2e::Part;
use wirelore_model::{ByteSpan, Content, Frame, PageId, Protection, Signal, SignalId};

/// The longest payload that is drawn byte by byte: that of a CAN FD frame. In longer ones rows that are alike are folded.
const DRAWN_BYTES: u32 = 64;
/// Where the drawing of a longer payload ends at the latest, in bytes and in rows.
const LOOKED_AT_BYTES: u32 = 2048;
const DRAWN_ROWS: usize = 64;
/// Fewer rows that are alike are not folded.
const FOLDED_ROWS: usize = 4;

/// What one bit shows.
#[derive(Clone, PartialEq, Eq)]
enum Mark {
    Free,
    Unused,
    Unknown,
    /// A signal that stands outside the page which is drawn.
    Elsewhere,
    /// Signals that are there only on pages inside of what is drawn.
    OnPages,
    Signal {
        letter: String,
        most_significant: bool,
    },
}

/// What has a letter of its own: a signal, or what else stands in the header of a protection beside the count, which is the signal.
pub(crate) struct Span<'a> {
    pub(crate) signal: &'a Signal,
    pub(crate) part: Option<(Part, Field)>,
}

/// The spans of some signals, in the order of their letters.
pub(crate) fn spans<'a>(frame: &'a Frame, signals: &[SignalId]) -> Vec<Span<'a>> {
    let all = signals.iter().map(|id| &frame.signals[id.index()]);
    let spans = all.flat_map(|signal| {
        let parts = signal.protection().into_iter().flat_map(Protection::parts);
        let others = parts.filter(|(part, _)| *part != Part::Counter).map(Some);
        std::iter::once(None).chain(others).map(move |part| Span { signal, part })
    });
    spans.collect()
}

/// Draws the signals of a page; bits of signals that are there beside them show as taken.
pub(crate) fn picture(frame: &Frame, page: Option<PageId>, signals: &[SignalId]) -> String {
    let all = all_bytes(frame);
    let bytes = all.min(LOOKED_AT_BYTES);
    let mut marks = vec![Mark::Free; bytes as usize * 8];
    for field in &frame.unused {
        paint_field(&mut marks, field, |_| Mark::Unused);
    }
    for field in &frame.unknown {
        paint_field(&mut marks, field, |_| Mark::Unknown);
    }
    for (index, signal) in frame.signals.iter().enumerate() {
        if signals.contains(&SignalId(index as u32)) {
            continue;
        }
        if is_beside(frame, signal, page) {
            paint(&mut marks, bytes, signal, |_| Mark::Elsewhere);
        } else if is_inside(frame, signal, page) {
            paint(&mut marks, bytes, signal, |_| Mark::OnPages);
        }
    }
    let spans = spans(frame, signals);
    for (number, span) in spans.iter().enumerate() {
        let mark = |most_significant| Mark::Signal { letter: letter(number), most_significant };
        match &span.part {
            Some((_, field)) => paint_field(&mut marks, field, mark),
            None => paint_content(&mut marks, bytes, span.signal, mark),
        }
    }
    if frame.length.is_none() {
        // How long it is follows from what is described of it: behind that there is nothing to see.
        let described = marks.iter().rposition(|mark| !matches!(mark, Mark::Free)).map_or(0, |last| last / 8 + 1);
        marks.truncate(described * 8);
    }
    if marks.is_empty() {
        return String::new();
    }
    let hidden = all.saturating_sub(bytes) as usize;
    rows(&marks, hidden, spans.len())
}

/// The name of the n-th signal in the picture: a to z, then a1 to z1 and so on.
pub(crate) fn letter(number: usize) -> String {
    let letter = char::from(b'a' + (number % 26) as u8);
    match number / 26 {
        0 => letter.to_string(),
        round => format!("{letter}{round}"),
    }
}

fn all_bytes(frame: &Frame) -> u32 {
    let told = frame.length.map_or(0, |length| length.max);
    let needed = frame.signals.iter().map(shown_bytes).max().unwrap_or(0);
    told.max(needed)
}

/// The bytes that a signal is drawn in: a place that goes to the end shows with its first byte at least.
fn shown_bytes(signal: &Signal) -> u32 {
    match &signal.content {
        Content::Text { bytes, .. } | Content::Bytes { bytes, .. } => {
            bytes.last.unwrap_or(bytes.first).saturating_add(1)
        }
        Content::Number { .. } => signal.needed_bytes(),
    }
}

/// Whether a signal is always there when the page is: on none, or on a page around it.
fn is_beside(frame: &Frame, signal: &Signal, page: Option<PageId>) -> bool {
    let mut around = page;
    while let Some(id) = around {
        if signal.page == Some(id) {
            return true;
        }
        around = frame.pages[id.index()].parent;
    }
    signal.page.is_none()
}

/// Whether a signal is on a page inside the given one.
fn is_inside(frame: &Frame, signal: &Signal, page: Option<PageId>) -> bool {
    let mut around = signal.page;
    while let Some(id) = around {
        around = frame.pages[id.index()].parent;
        if around == page {
            return true;
        }
    }
    false
}

fn paint(marks: &mut [Mark], bytes: u32, signal: &Signal, mark: impl Fn(bool) -> Mark) {
    signal.more_fields().for_each(|field| paint_field(marks, &field, &mark));
    paint_content(marks, bytes, signal, mark);
}

fn paint_content(marks: &mut [Mark], bytes: u32, signal: &Signal, mark: impl Fn(bool) -> Mark) {
    match &signal.content {
        Content::Number { field, .. } => paint_field(marks, field, mark),
        Content::Text { bytes: span, .. } | Content::Bytes { bytes: span, .. } => paint_span(marks, bytes, *span, mark),
    }
}

fn paint_field(marks: &mut [Mark], field: &Field, mark: impl Fn(bool) -> Mark) {
    let positions = field.places().iter().flat_map(|place| place.positions());
    for (number, position) in positions.enumerate() {
        if let Some(cell) = marks.get_mut(position.byte as usize * 8 + usize::from(7 - position.bit)) {
            *cell = mark(number == 0);
        }
    }
}

fn paint_span(marks: &mut [Mark], bytes: u32, span: ByteSpan, mark: impl Fn(bool) -> Mark) {
    // A place may reach much farther than is drawn.
    let drawn = bytes.saturating_sub(1);
    let last = span.last.map_or(drawn, |last| last.min(drawn));
    for byte in span.first..=last {
        for bit in 0..8 {
            if let Some(cell) = marks.get_mut(byte as usize * 8 + bit) {
                *cell = mark(byte == span.first && bit == 0);
            }
        }
    }
}

/// The rows of a drawing; `hidden` bytes more follow that were not looked at.
fn rows(marks: &[Mark], hidden: usize, signals: usize) -> String {
    let width = letter(signals.saturating_sub(1)).len();
    let mut text = String::from("  byte ");
    for bit in (0..8).rev() {
        let _ = write!(text, " {bit:<width$}");
    }
    text.truncate(text.trim_end().len());
    text.push('\n');
    let rows: Vec<&[Mark]> = marks.chunks(8).collect();
    let may_fold = rows.len() > DRAWN_BYTES as usize;
    let (mut byte, mut drawn) = (0, 0);
    while byte < rows.len() && drawn < DRAWN_ROWS {
        push_row(byte, rows[byte], width, &mut text);
        let alike = rows[byte..].iter().take_while(|row| **row == rows[byte]).count();
        byte += 1;
        drawn += 1;
        if may_fold && alike >= FOLDED_ROWS {
            text.push_str("     ...\n");
            byte += alike - 2;
        }
    }
    if byte < rows.len() || hidden > 0 {
        let _ = writeln!(text, "       (bytes {byte} to {} are not drawn)", rows.len() + hidden - 1);
    }
    text.push_str(&key(marks));
    text
}

fn push_row(byte: usize, bits: &[Mark], width: usize, text: &mut String) {
    let mut line = format!("  {byte:>4} ");
    for mark in bits {
        let cell = match mark {
            Mark::Free => "·".to_owned(),
            Mark::Unused => "-".to_owned(),
            Mark::Unknown => "?".to_owned(),
            Mark::Elsewhere => "+".to_owned(),
            Mark::OnPages => "/".to_owned(),
            Mark::Signal { letter, most_significant: true } => letter.to_uppercase(),
            Mark::Signal { letter, most_significant: false } => letter.clone(),
        };
        let _ = write!(line, " {cell:<width$}");
    }
    text.push_str(line.trim_end());
    text.push('\n');
}

/// The meaning of the marks that occur.
fn key(marks: &[Mark]) -> String {
    let occurs = |wanted: fn(&Mark) -> bool| marks.iter().any(wanted);
    let mut parts = Vec::new();
    if occurs(|mark| matches!(mark, Mark::Signal { .. })) {
        parts.push("capital: most significant bit");
    }
    if occurs(|mark| matches!(mark, Mark::Free)) {
        parts.push("· nothing described");
    }
    if occurs(|mark| matches!(mark, Mark::Unused)) {
        parts.push("- unused");
    }
    if occurs(|mark| matches!(mark, Mark::Unknown)) {
        parts.push("? not understood");
    }
    if occurs(|mark| matches!(mark, Mark::Elsewhere)) {
        parts.push("+ other signals");
    }
    if occurs(|mark| matches!(mark, Mark::OnPages)) {
        parts.push("/ on pages");
    }
    if parts.is_empty() { String::new() } else { format!("       ({})\n", parts.join(", ")) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_that_ends_far_away_is_drawn_as_far_as_there_is_room() {
        let mut marks = vec![Mark::Free; 16];
        paint_span(&mut marks, 2, ByteSpan { first: 1, last: Some(0xFFFF_FFFE) }, |_| Mark::Unknown);
        assert_eq!(marks.iter().filter(|mark| matches!(mark, Mark::Unknown)).count(), 8);
        assert!(matches!(marks[8], Mark::Unknown));
    }
}
