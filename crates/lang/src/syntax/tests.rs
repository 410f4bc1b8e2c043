//! Tests of the parser.

mod good;
mod hostile;
mod meant;
mod recovery;
mod usual;

use super::parse;
use super::tree::{Body, BodyKind, File, Frame, ItemKind, Signal};
use crate::{Diagnostic, FileId, Rule};

/// Reads a text that has nothing wrong.
fn read(text: &str) -> File<'static> {
    let (file, messages) = parse(text, FileId(0));
    assert_eq!(messages, [], "{text}");
    file
}

/// The messages about a text: the line, the rule, and the characters.
fn told(text: &str) -> Vec<(usize, Rule, &str)> {
    let (_, messages) = parse(text, FileId(0));
    messages.iter().map(|message| (line(text, message), message.rule, &text[message.site.span.range()])).collect()
}

fn line(text: &str, message: &Diagnostic) -> usize {
    text[..message.site.span.start as usize].matches('\n').count() + 1
}

fn frames<'a, 't>(file: &'a File<'t>) -> Vec<&'a Frame<'t>> {
    file.items
        .iter()
        .filter_map(|item| if let ItemKind::Frame(frame) = &item.kind { Some(frame) } else { None })
        .collect()
}

fn signals<'a, 't>(body: &'a Body<'t>) -> Vec<&'a Signal<'t>> {
    body.items
        .iter()
        .filter_map(|item| if let BodyKind::Signal(index) = item.kind { Some(&body.signals[index]) } else { None })
        .collect()
}

/// The one signal of a frame around it.
fn signal(text: &str) -> Signal<'static> {
    let file = read(&format!("frame f on d id 1 {{\n{text}\n}}\n"));
    signals(&frames(&file)[0].body)[0].clone()
}
