//! Any description with any payload: decoding answers, a flat table answers the same, and what is stored loads back equal.
#![no_main]

use libfuzzer_sys::fuzz_target;
use wirelore_fuzz::decode_all;
use wirelore_lang::check_text;
use wirelore_model::store;

// The text, a byte of zero, the payload.
fuzz_target!(|input: &[u8]| {
    let mut parts = input.splitn(2, |byte| *byte == 0);
    let (text, payload) = (parts.next().unwrap_or_default(), parts.next().unwrap_or_default());
    let Ok(text) = std::str::from_utf8(text) else { return };
    let Some(database) = check_text("input.lore", text).database else { return };
    let stored = store::to_lorebin(&database);
    assert_eq!(store::load(&stored).ok().as_ref(), Some(&database), "stored and loaded, the database is another one");
    decode_all(&database, &payload[..payload.len().min(64)]);
});
