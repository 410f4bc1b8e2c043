//! Any payload of some descriptions by decoder and by flat table, and any bytes as a flat table.
#![no_main]

use libfuzzer_sys::fuzz_target;
use wirelore_fuzz::{DESCRIBED, compare_with_table};
use wirelore_lorec::Lorec;
use wirelore_lorec::layout::checksum;

fuzz_target!(|input: &[u8]| {
    let [which, rest @ ..] = input else { return };
    match (DESCRIBED.get(usize::from(*which)), rest) {
        (Some(described), [frame, payload @ ..]) => {
            let table = Lorec::new(&described.table).expect("it was just written");
            compare_with_table(&described.decoder, &table, described.frame(*frame), payload);
        }
        (None, bytes) => read_by(bytes),
        (Some(_), []) => {}
    }
});

/// Length and checksum are made right: else hardly any bytes would be read by.
fn read_by(bytes: &[u8]) {
    let _ = Lorec::new(bytes);
    let mut table = bytes.to_vec();
    let length = table.len() as u32;
    if let Some(place) = table.get_mut(12..16) {
        place.copy_from_slice(&length.to_le_bytes());
    }
    let sum = checksum(&table);
    if let Some(place) = table.get_mut(16..20) {
        place.copy_from_slice(&sum.to_le_bytes());
    }
    let Ok(table) = Lorec::new(&table) else { return };
    for frame in table.frames().take(20) {
        let named = frame.signals().take(100).map(|signal| (signal.name(), signal.unit(), signal.position()));
        let _ = (frame.name(), frame.position(), named.count());
        frame.decode(&[0x5A; 40], |signal, reading| {
            let _ = (signal.name(), format!("{reading:?}"));
        });
        frame.decode(&bytes[..bytes.len().min(8)], |_, _| {});
    }
    for network in table.networks().take(20) {
        let _ = (network.name(), network.find(0x205, false), network.find(0x18FE_F100, true));
    }
}
