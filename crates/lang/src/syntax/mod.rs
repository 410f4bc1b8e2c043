//! Tokens to the [`tree`], and a message for everything that cannot be read.
//!
//! The parser is made of nom combinators over the tokens that count (`leaf`). It never stops at a mistake: a broken clause is
//! skipped to the next one, a broken statement to its end, and what was read of it stays in the tree.

mod basic;
mod block;
mod checksum;
mod clause;
mod cursor;
mod formula;
mod frame;
mod frame_body;
mod front;
mod gateway;
mod item;
mod leaf;
mod list;
mod map;
mod meant;
mod number;
mod place;
mod recover;
mod report;
mod signal;
mod states;
mod time;
mod timing;
pub mod tree;
mod unit;

#[cfg(test)]
mod tests;

pub(crate) use leaf::Leaf;

use crate::lex::{Token, each_token};
use crate::{Diagnostic, FileId, Rule, Site, Span};

/// Descriptions are written by people; a longer text is something else.
pub const LONGEST_TEXT: usize = 16 << 20;

/// Reads one file.
///
/// The tree holds everything that could be read; the messages are sorted by their place. Both are as long as they need to be and no
/// longer: a text of more than 16 MiB is refused, and after 500 messages there are no more.
#[must_use]
pub fn parse(text: &str, file: FileId) -> (tree::File, Vec<Diagnostic>) {
    if text.len() > LONGEST_TEXT {
        return (tree::File::default(), vec![too_large(text.len(), file)]);
    }
    let mut sieve = leaf::Sieve::new(text);
    let wrong = each_token(text, file, |token| sieve.take(token));
    parse_leaves(text, &sieve.into_leaves(), wrong, file)
}

/// The second half of [`parse`].
fn parse_leaves(text: &str, leaves: &[Leaf], wrong: Vec<Diagnostic>, file: FileId) -> (tree::File, Vec<Diagnostic>) {
    let context = report::Context::new(text, leaves, file, wrong);
    let tree = item::file(cursor::Cursor::start(&context));
    (tree, context.into_messages())
}

/// [`parse`] for those who have the tokens, and need to know which of them count.
pub(crate) fn parse_tokens(
    text: &str,
    tokens: &[Token],
    wrong: Vec<Diagnostic>,
    file: FileId,
) -> (tree::File, Vec<Leaf>, Vec<Diagnostic>) {
    let mut sieve = leaf::Sieve::new(text);
    tokens.iter().for_each(|&token| sieve.take(token));
    let leaves = sieve.into_leaves();
    let (tree, messages) = parse_leaves(text, &leaves, wrong, file);
    (tree, leaves, messages)
}

fn too_large(length: usize, file: FileId) -> Diagnostic {
    let site = Site { file, span: Span::new(0, 0) };
    let message = format!("this file has {length} bytes; a description may have {LONGEST_TEXT} (16 MiB)");
    Diagnostic::new(Rule::FileTooLarge, site, message)
        .help("split it into several files and bring them together with `use \"...\"`")
}
