//! # wirelore-lang
//!
//! The lore language: [`check()`] turns the text of `.lore` files into a [`wirelore_model::Database`] and a list of messages that
//! lead to each mistake. It goes from text to tokens ([`mod@lex`]), to a tree ([`syntax`]), to a description with every name looked up
//! and every place calculated (`resolve`), and through the rules (`check/`, one file per family). It never stops at the first mistake,
//! never prints, and opens files only through the [`Loader`] it is given; [`open()`] takes them from the file system.
//!
//! ```
//! use wirelore_lang::{Rule, check_text};
//!
//! let text = "
//! network drive can 500 kbit/s
//! frame wheel_speeds on drive id 0x1B4 {
//!     length 8
//!     signal front_left  in bits 1.4..0.0 = raw * 0.05 km/h, absent 0x1FFF
//!     signal front_right in bits 3.1..1.4 = raw * 0.05 km/h, absent 0x1FFF
//! }
//! ";
//! let checked = check_text("wheels.lore", text);
//! assert!(checked.database.is_none(), "an error");
//! assert_eq!(checked.diagnostics[0].rule, Rule::SignalOverlap);
//! assert_eq!(checked.diagnostics[0].message, "`front_right` and `front_left` share bit 1.4");
//!
//! let checked = check_text("wheels.lore", &text.replace("3.1..1.4", "3.1..1.5"));
//! let database = checked.database.expect("no errors");
//! assert_eq!(database.frames[0].signals.len(), 2);
//! ```

mod check;
mod compiler;
mod diagnostic;
mod format;
pub mod lex;
mod open;
pub mod render;
mod resolve;
mod rules;
mod source;
mod span;
pub mod syntax;

pub use compiler::{Checked, check, check_text};
pub use diagnostic::{Diagnostic, Fix, Level, Remark};
pub use format::format;
pub use open::{OpenError, holds_stored, open};
pub use rules::{Page, Rule};
pub use source::{Contents, FileLoader, LoadError, Loaded, Loader, MemoryLoader, Sources, read_source};
pub use span::{FileId, Site, Span, Spanned};
