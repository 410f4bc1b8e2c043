//! Any description with any payloads, and any bytes as a stored database: decoding answers, and what is stored loads back equal.
#![no_main]

use libfuzzer_sys::fuzz_target;
use wirelore_decode::Decoder;
use wirelore_lang::check_text;
use wirelore_model::{FrameId, store};

fuzz_target!(|input: (String, Vec<u8>)| {
    let (text, payload) = input;
    let _ = store::load(&payload);
    let Some(database) = check_text("input.lore", &text).database else { return };
    let stored = store::to_lorebin(&database);
    assert_eq!(store::load(&stored).ok().as_ref(), Some(&database), "stored and loaded, the database is another one");
    let Ok(decoder) = Decoder::new(&database) else { return };
    let payload = &payload[..payload.len().min(64)];
    for frame in 0..database.frames.len() as u32 {
        decoder.decode(FrameId(frame), payload, |_, _| {});
    }
});
