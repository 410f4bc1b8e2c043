//! Any text: the checker answers, and what the formatter lays out means the same and stays as it is.
#![no_main]

use libfuzzer_sys::fuzz_target;
use wirelore_lang::{check_text, format};

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let checked = check_text("input.lore", text);
    let Ok(once) = format(text) else { return };
    assert_eq!(format(&once).as_ref(), Ok(&once), "a second run of the formatter changes something");
    let again = check_text("input.lore", &once);
    assert_eq!(checked.database, again.database, "the formatter changed the meaning");
});
