//! A flat table gives the readings that the decoder gives, for every described frame, whatever the payload.

mod told;

use std::path::Path;

use told::{told, told_flat};
use wirelore_decode::{Decoder, Reading, lorec};
use wirelore_lang::{FileLoader, Level, check, check_text};
use wirelore_lorec::layout::{HEAD_BYTES, SECTIONS, Section};
use wirelore_lorec::{Lorec, LorecError};
use wirelore_model::{Database, FrameId, NetworkId, SignalId};

const STANDARDS: [&str; 6] = ["heavy_duty", "obd", "uds", "someip", "doip", "lin_diagnostics"];
/// Payloads of each frame and length.
const PAYLOADS: usize = 60;

/// Everything that the standards and the demo do not have.
const CORNERS: &str = include_str!("corners.lore");

fn descriptions() -> Vec<(String, Database)> {
    let of_text = |name: &str, text: &str| {
        let checked = check_text(name, text);
        let told: Vec<_> =
            checked.diagnostics.iter().filter(|it| it.level() == Level::Error).map(|it| &it.message).collect();
        (name.to_owned(), checked.database.unwrap_or_else(|| panic!("{name}: {told:?}")))
    };
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../schema/demo/kestrel.lore");
    let demo = check(&[&demo.to_string_lossy()], &FileLoader).database.expect("the demo has no mistakes");
    let mut all = vec![("kestrel".to_owned(), demo), of_text("corners", CORNERS)];
    all.extend(STANDARDS.iter().map(|name| of_text(name, &format!("use standard {name}\n"))));
    all
}

#[test]
fn the_same_readings_for_every_frame_and_length() {
    let (mut frames, mut readings, mut state) = (0, 0, 0x9E37_79B9_7F4A_7C15_u64);
    let mut byte = move || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        // Special values lie at the ends: they come often.
        match state >> 60 {
            0 => 0xFF,
            1 => 0,
            2 => (state >> 40 & 3) as u8,
            _ => (state >> 48) as u8,
        }
    };
    for (name, database) in descriptions() {
        let decoder = Decoder::new(&database).expect("it can be decoded");
        let table = lorec(&database).expect("it can be written");
        let table = Lorec::new(&table).expect("it was just written");
        assert_eq!(table.frames().count(), database.frames.len(), "{name}");
        for (frame, id) in table.frames().zip((0..).map(FrameId)) {
            assert_eq!(frame.name(), database[id].label.name);
            assert_eq!(frame.signals().count(), database[id].signals.len());
            let longest =
                database[id].signals.iter().map(|signal| signal.needed_bytes()).max().unwrap_or(0).min(80) + 2;
            frames += 1;
            for round in 0..PAYLOADS {
                let length = if round % 3 == 0 { round / 3 % (longest as usize + 1) } else { longest as usize };
                let payload: Vec<u8> = (0..length).map(|_| byte()).collect();
                let (mut ours, mut flat) = (Vec::new(), Vec::new());
                let outcome = decoder.decode(id, &payload, |signal: SignalId, reading: Reading<'_>| {
                    ours.push((signal.0, told(&reading)));
                });
                let other =
                    frame.decode(&payload, |signal, reading| flat.push((signal.position(), told_flat(&reading))));
                readings += flat.len();
                assert_eq!(ours, flat, "{name}: {} with {payload:02X?}", frame.name());
                let unmatched = outcome.unmatched.map(|it| (it.selector.0, it.bits));
                assert_eq!(
                    (outcome.readings, outcome.too_short, unmatched),
                    (other.readings, other.too_short, other.unmatched.map(|it| (it.selector, it.bits))),
                    "{name}: {} with {payload:02X?}",
                    frame.name()
                );
            }
        }
    }
    assert!(frames > 140 && readings > 50_000, "{frames} frames, {readings} readings");
}

#[test]
fn the_same_frames_are_found() {
    let mut found = 0;
    for (name, database) in descriptions() {
        let decoder = Decoder::new(&database).expect("it can be decoded");
        let table = lorec(&database).expect("it can be written");
        let table = Lorec::new(&table).expect("it was just written");
        let mut ids: Vec<(u32, bool)> = (0..0x800).map(|id| (id, false)).collect();
        let groups = database.frames.iter().flat_map(|frame| &frame.seen_on).filter_map(|seen| match seen.identifier {
            wirelore_model::Identifier::Pgn { pgn, .. } => Some(pgn),
            _ => None,
        });
        for pgn in groups {
            ids.extend([0, 0x0B, 0xF9, 0xFF].map(|source| (6 << 26 | pgn << 8 | source, true)));
            ids.extend([0, 0x21].map(|source| (3 << 26 | (pgn | 0xFF) << 8 | source, true)));
        }
        ids.extend((0x18DA_0000..0x18DC_0000).step_by(77).map(|id| (id, true)));
        ids.push((0x18FE_F1AA, true));
        for network in (0..database.networks.len() as u32).map(NetworkId) {
            let flat = table.network(&database[network].label.name).expect("it is described");
            for &(id, extended) in &ids {
                let ours = decoder.find(network, id, extended);
                assert_eq!(
                    ours.map(|frame| frame.0),
                    flat.find(id, extended).map(|frame| frame.position()),
                    "{name} {id:X}"
                );
                found += u32::from(ours.is_some());
            }
        }
    }
    assert!(found > 300, "{found}");
}

/// The table of the example on the front page of `wirelore-lorec`.
#[test]
fn the_example_is_what_is_written_now() {
    let text = "network drive can 500 kbit/s\n\
                frame wheel_speeds on drive id 0x1B4 { signal front_left in bits 1.4..0.0 = raw * 0.05 km/h }\n";
    let database = check_text("wheels.lore", text).database.expect("no mistakes");
    let now = lorec(&database).expect("it can be written");
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../lorec/tests/wheels.lorec");
    if std::env::var_os("BLESS").is_some() {
        std::fs::write(&path, &now).expect("it can be kept");
    }
    assert!(std::fs::read(&path).expect("it is kept") == now, "BLESS=1 writes it anew");
}

#[test]
fn damaged_tables_are_refused_and_never_panic() {
    let (_, database) = descriptions().swap_remove(1);
    let whole = lorec(&database).expect("it can be written");
    assert_eq!(Lorec::new(b"something else").err(), Some(LorecError::NoTable));
    for length in 0..whole.len() {
        assert!(Lorec::new(&whole[..length]).is_err(), "{length} bytes of it");
    }
    for at in 0..whole.len() {
        let mut damaged = whole.clone();
        damaged[at] ^= 1 << (at % 8);
        assert!(Lorec::new(&damaged).is_err(), "byte {at}");
        // Whoever makes the checksum right again leads to nonsense, and to nothing worse.
        let sum = crc32(&damaged[20..]);
        damaged[16..20].copy_from_slice(&sum.to_le_bytes());
        if let Ok(table) = Lorec::new(&damaged) {
            for frame in table.frames().take(100) {
                frame.decode(&[0x5A; 40], |signal, reading| {
                    let _ = (signal.name(), signal.unit(), format!("{reading:?}"));
                });
            }
            for network in table.networks().take(100) {
                let _ = (network.find(0x205, false), network.find(0x18FE_F100, true));
            }
        }
    }
}

/// The way through the pages ends, whatever a table says of how many switches a frame has and which comes next.
#[test]
fn a_table_that_leads_in_circles_comes_to_an_end() {
    let (_, database) = descriptions().swap_remove(1);
    let mut table = lorec(&database).expect("it can be written");
    let number = |table: &[u8], at: usize| u32::from_le_bytes(table[at..at + 4].try_into().expect("four bytes"));
    let records = |table: &[u8], section: Section| {
        let head = HEAD_BYTES - 8 * SECTIONS + 8 * section as usize;
        let (start, count) = (number(table, head) as usize, number(table, head + 4) as usize);
        (0..count).map(move |record| start + 4 * section.words() * record)
    };
    // Each frame has more switches than anybody could count, and each of them comes behind itself.
    for frame in records(&table, Section::Frames) {
        table[frame + 20..frame + 24].fill(0xFF);
    }
    for (switch, index) in records(&table, Section::Switches).zip(0_u32..) {
        table[switch + 16..switch + 20].copy_from_slice(&index.to_le_bytes());
    }
    let sum = crc32(&table[20..]);
    table[16..20].copy_from_slice(&sum.to_le_bytes());
    let table = Lorec::new(&table).expect("its checksum is right");
    for payload in [[4, 1, 0, 0], [9, 9, 9, 9]] {
        let mut readings = 0;
        let outcome = table.frame("paged").expect("it is described").decode(&payload, |_, _| readings += 1);
        assert_eq!(outcome.readings, readings);
        assert!(readings > 0);
    }
}

fn crc32(bytes: &[u8]) -> u32 {
    let step = |state: u32, byte: &u8| {
        (0..8).fold(
            state ^ u32::from(*byte),
            |state, _| if state & 1 == 1 { state >> 1 ^ 0xEDB8_8320 } else { state >> 1 },
        )
    };
    !bytes.iter().fold(u32::MAX, step)
}
