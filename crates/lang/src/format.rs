//! The one house layout of a description.
//!
//! It goes over the tokens, comments and all, and changes blanks and line ends only (and the commas that a line end in a list stands
//! for): what a text says is the same before and after, and a second run changes nothing.

mod columns;
mod grow;
mod piece;
mod print;
mod spacing;
mod spans;

#[cfg(test)]
mod tests;

use crate::lex::lex;
use crate::syntax::{LONGEST_TEXT, Script};
use crate::{Diagnostic, FileId, Level};

/// Lays a text out: 4 blanks for each block, columns in runs of signals, networks, control units and state words, at most one empty
/// line in a row, lines of up to 100 characters where commas allow it.
///
/// # Errors
/// The messages about the text, if it cannot be read: what is not understood is not moved around.
pub fn format(text: &str) -> Result<String, Vec<Diagnostic>> {
    let file = FileId(0);
    if text.len() > LONGEST_TEXT {
        return Err(Script::new(text, file).read().1);
    }
    let (tokens, wrong) = lex(text, file);
    let script = Script::of_tokens(text, &tokens, wrong, file);
    let (tree, messages) = script.read();
    if messages.iter().any(|message| message.level() == Level::Error) {
        return Err(messages);
    }
    let fixed = spans::Spans::of(&tree);
    let pieces = piece::pieces(&tokens, script.leaves());
    Ok(print::print(grow::grow(text, &pieces, &fixed)))
}
