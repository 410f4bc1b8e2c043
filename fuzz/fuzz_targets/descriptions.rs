//! Any description: messages, source, pictures and figures can be made of it.
#![no_main]

use libfuzzer_sys::fuzz_target;
use wirelore_fuzz::make_all;
use wirelore_lang::{check_text, render};

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let checked = check_text("input.lore", text);
    let _ = render::text(&checked.sources, &checked.diagnostics, true);
    let _ = (
        render::json_lines(&checked.sources, &checked.diagnostics),
        render::sarif(&checked.sources, &checked.diagnostics),
    );
    if let Some(database) = checked.database {
        make_all(&database);
    }
});
