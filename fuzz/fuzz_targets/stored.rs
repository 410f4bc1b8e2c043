//! Any bytes as a stored database, with the header of a whole and undamaged one or without: loading answers, and what loads can be stored, decoded
//! with, written and drawn like one that came from text.
#![no_main]

use std::sync::LazyLock;

use libfuzzer_sys::fuzz_target;
use wirelore_bits::Crc;
use wirelore_fuzz::{decode_all, make_all};
use wirelore_model::{Database, Description, store};

/// Mark and version.
static BEGINNING: LazyLock<Vec<u8>> = LazyLock::new(|| {
    let empty = Database::new(Description::default()).expect("nothing has no mistakes");
    store::to_lorebin(&empty)[..12].to_vec()
});

fn with_header(body: &[u8]) -> Vec<u8> {
    let mut file = BEGINNING.clone();
    file.extend((body.len() as u64).to_le_bytes());
    file.extend((Crc::ISO_HDLC.checksum(body) as u32).to_le_bytes());
    file.extend(body);
    file
}

fuzz_target!(|input: &[u8]| {
    let Some((&way, bytes)) = input.split_first() else { return };
    let loaded = if way & 1 == 0 { store::load(bytes) } else { store::load(&with_header(bytes)) };
    let Ok(database) = loaded else { return };
    for stored in [store::to_lorebin(&database), store::to_json(&database).into_bytes()] {
        assert_eq!(store::load(&stored).ok().as_ref(), Some(&database), "stored and loaded, it is another one");
    }
    decode_all(&database, &bytes[..bytes.len().min(64)]);
    make_all(&database);
});
