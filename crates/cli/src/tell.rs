//! What a person is told on standard error. Where nobody listens any more, nothing is lost: the work itself goes on.

use std::error::Error;
use std::io::{IsTerminal, Write, stderr};

use wirelore_lang::render::visible;

/// Writes a text to standard error as it is.
pub(crate) fn tell(text: &str) {
    // A closed standard error is nobody's loss.
    let _ = stderr().lock().write_all(text.as_bytes());
}

/// Writes a line to standard error. Names may come from a recording or a description: nothing in them acts on the terminal.
pub(crate) fn tell_line(line: &str) {
    tell(&format!("{}\n", visible_lines(line)));
}

/// A text whose lines hold nothing that acts on a terminal.
pub(crate) fn visible_lines(text: &str) -> String {
    text.split('\n').map(|line| visible(line).into_owned()).collect::<Vec<_>>().join("\n")
}

/// An error and what it goes back to, in one sentence.
pub(crate) fn with_causes(error: &dyn Error) -> String {
    let mut sentence = error.to_string();
    let mut cause = error.source();
    while let Some(reason) = cause {
        let text = reason.to_string();
        // Some errors repeat their cause already.
        if !sentence.contains(&text) {
            sentence.push_str(": ");
            sentence.push_str(&text);
        }
        cause = reason.source();
    }
    sentence
}

/// Whether colours help there: a terminal, and the user has not asked for none (`NO_COLOR`).
pub(crate) fn colour_wanted(stream: &impl IsTerminal) -> bool {
    stream.is_terminal() && std::env::var_os("NO_COLOR").is_none()
}
