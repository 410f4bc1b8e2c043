//! `wirelore explain`: a frame drawn bit by bit, a signal in full, a network in words, or the page of a message.

use std::path::Path;

use wirelore_lang::Rule;
use wirelore_model::{Database, Frame, FrameId, SignalId};

use crate::args::ExplainArguments;
use crate::atomic::write_whole;
use crate::description::load;
use crate::drawing;
use crate::failure::{Failure, Outcome};
use crate::tell::visible_lines;

/// Explains a rule, a frame, a signal or a network on standard output.
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
    let is_network = signal_name.is_none() && database.frame_named(frame_name).is_none();
    if let Some((network, _)) = database.network_named(frame_name).filter(|_| is_network) {
        return Ok(drawing::network(&database, network));
    }
    let frame = &database.frames[find_frame(&database, frame_name)?.index()];
    let Some(signal_name) = signal_name else {
        return Ok(drawing::frame(&database, frame));
    };
    let found = signals_of(frame, signal_name)?;
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

/// The signals of a name: several where pages have one each.
///
/// # Errors
/// [`Failure::Usage`] with the nearest name.
pub(crate) fn signals_of(frame: &Frame, name: &str) -> Result<Vec<SignalId>, Failure> {
    let found: Vec<SignalId> = frame.signals_named(name).map(|(id, _)| id).collect();
    if found.is_empty() {
        let near = nearest(name, frame.signals.iter().map(|signal| signal.label.name.as_str()));
        return Err(Failure::Usage(format!("frame \"{}\" has no signal \"{name}\"{near}", frame.label.name)));
    }
    Ok(found)
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
