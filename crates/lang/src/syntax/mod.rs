//! Tokens to the [`tree`], and a message for everything that cannot be read.
//!
//! The parser is made of nom combinators over the tokens that count (`leaf`). It never stops at a mistake: a broken clause is
//! skipped to the next one, a broken statement to its end, and what was read of it stays in the tree.

mod algebra;
mod basic;
mod block;
mod checksum;
mod clause;
mod cursor;
mod flexray;
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
mod most;
mod number;
mod packets;
mod place;
mod protection;
mod recover;
mod repeat;
mod report;
mod schedule;
mod signal;
mod states;
mod time;
mod timing;
pub mod tree;
mod unit;
mod usual;
mod wiring;

#[cfg(test)]
mod tests;

pub(crate) use leaf::Leaf;
pub use report::Script;

use crate::{Diagnostic, FileId, Rule, Site, Span};

/// Descriptions are written by people; a longer text is something else.
pub const LONGEST_TEXT: usize = 16 << 20;

/// Reads a text, for tests that look at trees without keeping texts for them.
#[cfg(test)]
pub(crate) fn parse(text: &str, file: FileId) -> (tree::File<'static>, Vec<Diagnostic>) {
    let script: &'static Script = Box::leak(Box::new(Script::new(text, file)));
    script.read()
}

fn too_large(length: usize, file: FileId) -> Diagnostic {
    let site = Site { file, span: Span::new(0, 0) };
    let message = format!("this file has {length} bytes; a description may have {LONGEST_TEXT} (16 MiB)");
    Diagnostic::new(Rule::FileTooLarge, site, message)
        .help("split it into several files and bring them together with `use \"...\"`")
}
