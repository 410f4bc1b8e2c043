//! Messages for people: the source lines, what is wrong in them, and a way out.

use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{AnnotationKind, Group, Level as Shown, Origin, Patch, Renderer, Snippet};

use super::safe;
use super::window::{Label, Window, windows};
use crate::{Diagnostic, Fix, Level, Sources};

/// All messages with their source lines, and a last line that counts them; coloured for a terminal or plain.
#[must_use]
pub fn text(sources: &Sources, messages: &[Diagnostic], color: bool) -> String {
    let renderer = if color { Renderer::styled().hyperlink(false) } else { Renderer::plain() };
    let renderer = renderer.decor_style(DecorStyle::Unicode);
    let mut out = String::new();
    for message in messages {
        out.push_str(&one(&renderer, sources, message));
        out.push_str("\n\n");
    }
    out.push_str(&count(messages));
    out.push('\n');
    out
}

/// `2 errors, 1 warning, no hints`
fn count(messages: &[Diagnostic]) -> String {
    let of = |level: Level| {
        let word = level.word();
        match messages.iter().filter(|message| message.level() == level).count() {
            0 => format!("no {word}s"),
            1 => format!("1 {word}"),
            many => format!("{many} {word}s"),
        }
    };
    format!("{}, {}, {}", of(Level::Error), of(Level::Warning), of(Level::Hint))
}

fn one(renderer: &Renderer, sources: &Sources, message: &Diagnostic) -> String {
    let level = match message.level() {
        Level::Error => Shown::ERROR,
        Level::Warning => Shown::WARNING,
        Level::Hint => Shown::INFO,
    };
    let name = format!("{} {}", message.level().word(), message.rule.name());
    let mut main = Group::with_title(level.with_name(name).primary_title(safe::message(&message.message)));
    let here = Label { site: message.site, text: &message.here, is_primary: true };
    let elsewhere =
        message.elsewhere.iter().map(|remark| Label { site: remark.site, text: &remark.text, is_primary: false });
    for window in windows(sources, std::iter::once(here).chain(elsewhere)) {
        main = excerpt(main, sources, &window);
    }
    for help in &message.help {
        main = main.element(Shown::HELP.with_name("way out").message(safe::message(help)));
    }
    let mut report = vec![main];
    report.extend(message.fix.as_ref().and_then(|fix| patch(sources, fix)));
    renderer.render(&report)
}

/// Adds the lines of a window with their labels.
fn excerpt<'a>(group: Group<'a>, sources: &'a Sources, window: &Window<'a>) -> Group<'a> {
    let annotations = window.labels.iter().map(|label| {
        let kind = if label.is_primary { AnnotationKind::Primary } else { AnnotationKind::Context };
        let place = kind.span(window.place(label.site.span));
        if label.text.is_empty() { place } else { place.label(safe::message(label.text)) }
    });
    let name = safe::message(sources.name(window.file));
    let snippet = Snippet::source(shown(sources, window)).annotations(annotations);
    if window.is_cut {
        let (line, column) = window.labels.first().map_or((1, 1), |label| sources.line_column(label.site));
        let origin = Origin::path(name).line(line as usize).char_column(column as usize);
        return group.element(origin).element(snippet.line_start(line as usize));
    }
    group.element(snippet.line_start(first_line(sources, window)).path(name))
}

fn shown<'a>(sources: &'a Sources, window: &Window<'_>) -> std::borrow::Cow<'a, str> {
    safe::source(sources.text(window.file).get(window.range.clone()).unwrap_or_default())
}

/// The number of a window's first line.
fn first_line(sources: &Sources, window: &Window<'_>) -> usize {
    let start = window.range.start as u32;
    let site = crate::Site { file: window.file, span: crate::Span::new(start, start) };
    sources.line_column(site).0 as usize
}

/// The edit that would mend it, as lines before and after.
fn patch<'a>(sources: &'a Sources, fix: &'a Fix) -> Option<Group<'a>> {
    let label = Label { site: fix.site, text: "", is_primary: true };
    let window = windows(sources, [label]).into_iter().next().filter(|window| !window.is_cut)?;
    let patch = Patch::new(window.place(fix.site.span), safe::message(&fix.text));
    let snippet = Snippet::source(shown(sources, &window))
        .line_start(first_line(sources, &window))
        .path(safe::message(sources.name(window.file)));
    Some(
        Group::with_title(Shown::HELP.with_name("mended").secondary_title("it could read"))
            .element(snippet.patch(patch)),
    )
}
