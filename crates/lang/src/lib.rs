//! # wirelore-lang
//!
//! The lore language: [`check`] turns the text of `.lore` files into a [`wirelore_model::Database`] and a list of messages that
//! lead to each mistake. It goes from text to tokens ([`mod@lex`]), to a tree ([`syntax`]), to a description with every name looked up
//! and every place calculated (`resolve`), and through the rules (`check/`, one file per family). It never stops at the first mistake,
//! never prints, and opens files only through the [`Loader`] it is given.

mod check;
mod compiler;
mod diagnostic;
mod format;
pub mod lex;
pub mod render;
mod resolve;
mod rules;
mod source;
mod span;
pub mod syntax;

pub use compiler::{Checked, check, check_text};
pub use diagnostic::{Diagnostic, Fix, Level, Remark};
pub use format::format;
pub use rules::{Page, Rule};
pub use source::{FileLoader, LoadError, Loaded, Loader, MemoryLoader, Sources};
pub use span::{FileId, Site, Span, Spanned};
