//! The pages under `schema/`, taken apart for the tests.

use std::path::PathBuf;

/// A fenced block of a page.
#[derive(Debug, Clone)]
pub(crate) struct Block {
    /// What stands behind the opening fence.
    pub(crate) info: String,
    /// The lines between the fences.
    pub(crate) text: String,
    /// The line of the opening fence, counted from 1.
    pub(crate) line: usize,
}

/// Where a page lies.
pub(crate) fn path(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../schema").join(name)
}

/// The text of a page.
pub(crate) fn read(name: &str) -> String {
    let path = path(name);
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Whether the tests are to write what the program makes into the pages, in place of comparing.
pub(crate) fn is_blessing() -> bool {
    std::env::var_os("BLESS").is_some()
}

/// The fenced blocks of a page, in order.
pub(crate) fn blocks(page: &str) -> Vec<Block> {
    let mut found = Vec::new();
    let mut open: Option<Block> = None;
    for (index, line) in page.lines().enumerate() {
        match (line.strip_prefix("```"), open.take()) {
            (Some(_), Some(block)) => found.push(block),
            (Some(info), None) => open = Some(Block { info: info.to_owned(), text: String::new(), line: index + 1 }),
            (None, Some(mut block)) => {
                block.text.push_str(line);
                block.text.push('\n');
                open = Some(block);
            }
            (None, None) => {}
        }
    }
    assert!(open.is_none(), "the last fence of the page is not closed");
    found
}

/// A `lore part` block, put into a frame of 8 bytes.
pub(crate) fn wrapped(part: &str) -> String {
    format!("network n can 500 kbit/s\necu a on n\nframe f on n id 1 {{\nlength 8\n{part}}}\n")
}
