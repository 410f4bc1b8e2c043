//! Which lines of a file a message shows.

use std::ops::Range;

use crate::{FileId, Site, Sources, Span};

/// Labels that are further apart than this, in bytes, are shown in excerpts of their own.
const TOGETHER: usize = 4096;
/// Lines longer than this, in bytes, are cut around the label.
const LONGEST_LINE: usize = 2048;
/// How much of a cut line is shown on each side of the label, in bytes.
const AROUND: usize = 60;

/// A stretch of a file with labels in it.
#[derive(Debug)]
pub(super) struct Window<'a> {
    pub(super) file: FileId,
    /// The stretch in the file.
    pub(super) range: Range<usize>,
    /// The first line is cut at its start, so that columns cannot be counted in it.
    pub(super) is_cut: bool,
    pub(super) labels: Vec<Label<'a>>,
}

/// Something to say at a place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Label<'a> {
    pub(super) site: Site,
    pub(super) text: &'a str,
    /// The place that the message is about.
    pub(super) is_primary: bool,
}

impl Window<'_> {
    /// A span of the file, as places in the window.
    pub(super) fn place(&self, span: Span) -> Range<usize> {
        let inside = |at: u32| (at as usize).clamp(self.range.start, self.range.end) - self.range.start;
        inside(span.start)..inside(span.end).max(inside(span.start))
    }
}

/// Gathers labels in windows: those of one file that are close together share one. The first label's window comes first.
pub(super) fn windows<'a>(sources: &Sources, labels: impl IntoIterator<Item = Label<'a>>) -> Vec<Window<'a>> {
    let mut windows: Vec<Window<'a>> = Vec::new();
    for label in labels {
        let (range, is_cut) = stretch(sources, label.site);
        let near = windows.iter_mut().find(|window| {
            window.file == label.site.file && !window.is_cut && !is_cut && distance(&window.range, &range) < TOGETHER
        });
        match near {
            Some(window) => {
                window.range = window.range.start.min(range.start)..window.range.end.max(range.end);
                window.labels.push(label);
            }
            None => windows.push(Window { file: label.site.file, range, is_cut, labels: vec![label] }),
        }
    }
    windows
}

fn distance(one: &Range<usize>, other: &Range<usize>) -> usize {
    one.start.saturating_sub(other.end).max(other.start.saturating_sub(one.end))
}

/// The lines of a site, or as much of an endless line as makes sense.
fn stretch(sources: &Sources, site: Site) -> (Range<usize>, bool) {
    let lines = sources.lines_of(site);
    if lines.len() <= LONGEST_LINE {
        return (lines, false);
    }
    let text = sources.text(site.file);
    let mut start = (site.span.start as usize).saturating_sub(AROUND).max(lines.start);
    let mut end = (site.span.end as usize).min(site.span.start as usize + AROUND).saturating_add(AROUND).min(lines.end);
    while !text.is_char_boundary(start) {
        start -= 1;
    }
    while !text.is_char_boundary(end) {
        end += 1;
    }
    let first_line_end = text[start..end].find('\n').map_or(end, |at| start + at);
    (start..if first_line_end > site.span.start as usize { first_line_end } else { end }, true)
}
