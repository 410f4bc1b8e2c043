//! `wirelore explain`: a frame drawn bit by bit, a signal in full, or the page of a message.

use std::path::Path;

use wirelore_lang::Rule;
use wirelore_model::{Database, FrameId, SignalId};

use crate::args::ExplainArguments;
use crate::atomic::write_whole;
use crate::description::load;
use crate::drawing;
use crate::failure::{Failure, Outcome};
use crate::tell::visible_lines;

/// Explains a rule, a frame or a signal on standard output.
pub(crate) fn run(arguments: &ExplainArguments) -> Result<Outcome, Failure> {
    let text = match Rule::named(&arguments.subject) {
        Some(rule) if arguments.frame.is_none() => rule_text(rule),
        _ => from_description(arguments)?,
    };
    write_whole(None, visible_lines(&text).as_bytes())?;
    Ok(Outcome::Clean)
}

fn from_description(arguments: &ExplainArguments) -> Result<String, Failure> {
    let subject = &arguments.subject;
    if !Path::new(subject).exists() && !subject.contains(['.', '/']) {
        let near = nearest(subject, Rule::ALL.iter().map(|rule| rule.name()));
        return Err(Failure::Usage(format!("\"{subject}\" is neither a file nor the name of a message{near}")));
    }
    let database = load(subject)?;
    let Some(wanted) = &arguments.frame else {
        return Ok(drawing::list(&database));
    };
    let (frame_name, signal_name) = match wanted.split_once('.') {
        Some((frame, signal)) => (frame, Some(signal)),
        None => (wanted.as_str(), None),
    };
    let frame = &database.frames[find_frame(&database, frame_name)?.index()];
    let Some(signal_name) = signal_name else {
        return Ok(drawing::frame(&database, frame));
    };
    let found: Vec<SignalId> = (0..frame.signals.len() as u32)
        .map(SignalId)
        .filter(|id| frame.signals[id.index()].label.name == signal_name)
        .collect();
    if found.is_empty() {
        let near = nearest(signal_name, frame.signals.iter().map(|signal| signal.label.name.as_str()));
        return Err(Failure::Usage(format!("frame \"{frame_name}\" has no signal \"{signal_name}\"{near}")));
    }
    Ok(found.iter().map(|id| drawing::signal(&database, frame, *id)).collect::<Vec<_>>().join("\n"))
}

/// The frame of a name.
///
/// # Errors
/// [`Failure::Usage`] with the nearest name.
pub(crate) fn find_frame(database: &Database, name: &str) -> Result<FrameId, Failure> {
    database.frame_named(name).map(|(id, _)| id).ok_or_else(|| {
        let near = nearest(name, database.frames.iter().map(|frame| frame.label.name.as_str()));
        Failure::Usage(format!("the description has no frame \"{name}\"{near}"))
    })
}

/// `; did you mean "x"?`, or what else to do.
pub(crate) fn nearest<'a>(wanted: &str, names: impl Iterator<Item = &'a str>) -> String {
    match wirelore_model::nearest_name(wanted, names) {
        Some(name) => format!("; did you mean \"{name}\"?"),
        None => String::new(),
    }
}

fn rule_text(rule: Rule) -> String {
    let page = rule.page();
    format!(
        "{} ({})\n{}\n\n{}\n\nWrong:\n{}\nRight:\n{}",
        rule.name(),
        rule.level().word(),
        page.summary,
        page.body,
        indented(page.wrong),
        indented(page.right)
    )
}

fn indented(text: &str) -> String {
    text.lines().map(|line| if line.is_empty() { "\n".to_owned() } else { format!("    {line}\n") }).collect()
}
