//! Messages for other programs: one JSON object on each line.

use serde::Serialize;

use crate::{Diagnostic, Site, Sources};

/// A message. Lines and columns count from 1, columns in characters; the end is behind the last character.
#[derive(Serialize)]
struct Message<'a> {
    rule: &'static str,
    level: &'static str,
    message: &'a str,
    #[serde(flatten)]
    place: Place<'a>,
    /// What to say at the place itself.
    here: &'a str,
    elsewhere: Vec<Remark<'a>>,
    help: &'a [String],
    fix: Option<Fix<'a>>,
}

#[derive(Serialize)]
struct Place<'a> {
    file: &'a str,
    line: u32,
    column: u32,
    end_line: u32,
    end_column: u32,
}

#[derive(Serialize)]
struct Remark<'a> {
    message: &'a str,
    #[serde(flatten)]
    place: Place<'a>,
}

/// Replace the place by the text.
#[derive(Serialize)]
struct Fix<'a> {
    text: &'a str,
    #[serde(flatten)]
    place: Place<'a>,
}

fn place(sources: &Sources, site: Site) -> Place<'_> {
    let (line, column) = sources.line_column(site);
    let (end_line, end_column) = sources.end_line_column(site);
    Place { file: sources.name(site.file), line, column, end_line, end_column }
}

/// All messages, one JSON object on each line.
///
/// The fields: `rule`, `level` (`error`, `warning`, `hint`), `message`, `file`, `line`, `column`, `end_line`, `end_column` (from 1,
/// columns in characters, the end behind the last one), `here` (what to say at the place; may be empty), `elsewhere` (a list of `message`
/// with a place), `help` (a list of sentences), `fix` (`text` to put in place of a place, or null).
#[must_use]
pub fn json_lines(sources: &Sources, messages: &[Diagnostic]) -> String {
    let mut out = String::new();
    for message in messages {
        let line = Message {
            rule: message.rule.name(),
            level: message.level().word(),
            message: &message.message,
            place: place(sources, message.site),
            here: &message.here,
            elsewhere: message
                .elsewhere
                .iter()
                .map(|remark| Remark { message: &remark.text, place: place(sources, remark.site) })
                .collect(),
            help: &message.help,
            fix: message.fix.as_ref().map(|fix| Fix { text: &fix.text, place: place(sources, fix.site) }),
        };
        // Strings and numbers only: there is nothing in it that JSON cannot hold.
        out.push_str(&serde_json::to_string(&line).unwrap_or_default());
        out.push('\n');
    }
    out
}
