//! Twenty-five independent mistakes in one file: each gets one message, at its own line, and nothing else is complained about.
//!
//! `BLESS=1 cargo test -p wirelore-lang --test mistakes` writes the expected output anew; read the difference like a user would.

use std::path::Path;

use wirelore_lang::{check_text, render};

const TEXT: &str = include_str!("mistakes.lore");

/// The lines with a number behind them, in order.
fn numbered_lines() -> Vec<u32> {
    let mut lines = Vec::new();
    for (at, line) in TEXT.lines().enumerate() {
        if let Some((_, number)) = line.rsplit_once("  # ") {
            lines.push(at as u32 + 1);
            assert_eq!(number, lines.len().to_string(), "the mistakes are numbered in order");
        }
    }
    lines
}

#[test]
fn each_mistake_gets_one_message_at_its_place() {
    let checked = check_text("mistakes.lore", TEXT);
    let lines: Vec<_> = checked.diagnostics.iter().map(|message| checked.sources.line_column(message.site).0).collect();
    assert_eq!(numbered_lines().len(), 25);
    assert_eq!(lines, numbered_lines());
    assert!(checked.database.is_none());
}

#[test]
fn the_messages_read_as_they_should() {
    let checked = check_text("mistakes.lore", TEXT);
    let shown = render::text(&checked.sources, &checked.diagnostics, false);
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/mistakes.expected.txt");
    if std::env::var_os("BLESS").is_some() {
        std::fs::write(&path, &shown).unwrap();
    }
    let expected = std::fs::read_to_string(&path).unwrap_or_default();
    assert_eq!(shown, expected, "the output has changed; if it is better, write it anew with BLESS=1");
}
