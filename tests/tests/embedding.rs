//! What other programs rely on when they embed the decoder: no allocation for a frame, and data that threads share.

use std::path::Path;
use std::sync::Arc;
use std::thread;

use wirelore_decode::{Decoder, Event, Options, Reading, Session, lorec};
use wirelore_lang::{FileLoader, check};
use wirelore_log::Recording;
use wirelore_lorec::Lorec;
use wirelore_model::{Database, FrameId, SignalId};

fn demo(name: &str) -> String {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../schema/demo").join(name).to_string_lossy().into_owned()
}

fn kestrel() -> Database {
    check(&[&demo("kestrel.lore")], &FileLoader).database.expect("the demo has no mistakes")
}

#[test]
fn decoding_a_frame_allocates_nothing() {
    let database = kestrel();
    let decoder = Decoder::new(&database).expect("it can be decoded");
    let table = lorec(&database).expect("it can be written");
    let table = Lorec::new(&table).expect("it was just written");
    let payload = [0x5A; 64];
    let mut readings = 0;
    let measured = allocation_counter::measure(|| {
        for frame in 0..database.frames.len() as u32 {
            decoder.decode(FrameId(frame), &payload, |_: SignalId, _: Reading<'_>| readings += 1);
        }
        for frame in table.frames() {
            frame.decode(&payload, |_, _| readings += 1);
        }
    });
    assert!(readings > 500, "{readings}");
    assert_eq!(measured.count_total, 0);
}

/// What a recording says, in a form that can be compared.
fn fingerprint(database: &Database, decoder: &Decoder) -> (u64, u64) {
    let mut session = Session::new(decoder, &Options::default()).expect("nothing is asked for");
    let mut recording =
        Recording::open(demo("town-drive.pcapng").as_ref(), &Default::default()).expect("the demo is there");
    let (mut count, mut sum) = (0_u64, 0_u64);
    let mut take = |event: &Event<'_>, signal: SignalId, reading: Reading<'_>| {
        count += 1;
        let name = database[event.frame][signal].label.name.len() as u64;
        let value = reading.value.number().map_or(1, f64::to_bits);
        sum = sum.rotate_left(5) ^ value.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ name;
    };
    session.run(&mut recording, &mut take).expect("it can be read");
    (count, sum)
}

#[test]
fn two_hundred_decodes_at_a_time_say_the_same() {
    let database = Arc::new(kestrel());
    let decoder = Arc::new(Decoder::new(&database).expect("it can be decoded"));
    let expected = fingerprint(&database, &decoder);
    assert!(expected.0 > 20_000, "{expected:?}");
    let threads = (0..200).map(|_| {
        let (database, decoder) = (Arc::clone(&database), Arc::clone(&decoder));
        thread::spawn(move || fingerprint(&database, &decoder))
    });
    for thread in threads.collect::<Vec<_>>() {
        assert_eq!(thread.join().expect("nobody panics"), expected);
    }
}
