//! The workload is what its head says.

use std::io::Cursor;

use wirelore_decode::Decoder;
use wirelore_lang::{Level, check_text};
use wirelore_log::{Options, Recording};
use wirelore_model::{FrameId, NetworkId};

use super::{Identifiers, START_NS, Vehicle};

#[test]
fn signals_are_as_promised() {
    let vehicle = Vehicle::<8>::new(120, Identifiers::Standard);
    let (mut wide, mut signed, mut motorola) = (0, 0, 0);
    for frame in &vehicle.frames {
        let used: u32 = frame.signals.iter().map(|signal| signal.width).sum();
        assert!((50..=64).contains(&used), "{frame:?}");
        let last = frame.signals[7];
        assert!(last.shift + last.width <= 64);
        for signal in frame.signals {
            assert!((1..=32).contains(&signal.width));
            wide += u32::from(signal.width > 4);
            signed += u32::from(signal.signed);
        }
        motorola += u32::from(frame.is_motorola());
    }
    assert_eq!(motorola, 60);
    assert!((0.28..0.39).contains(&(f64::from(signed) / f64::from(wide))), "{signed} of {wide}");
}

#[test]
fn descriptions_have_no_mistakes_and_no_warnings() {
    let texts = [
        Vehicle::<8>::new(120, Identifiers::Standard).description(),
        Vehicle::<8>::new(120, Identifiers::Extended).description(),
        Vehicle::<12>::new(600, Identifiers::Standard).description(),
    ];
    for text in texts {
        let checked = check_text("workload.lore", &text);
        let told: Vec<_> = checked.diagnostics.iter().filter(|told| told.level() != Level::Hint).collect();
        assert!(told.is_empty(), "{:?}", told[0]);
        assert!(checked.database.is_some());
    }
}

#[test]
fn both_recordings_hold_the_traffic() {
    let vehicle = Vehicle::<8>::new(120, Identifiers::Standard);
    let (mut pcapng, mut text) = (Vec::new(), Vec::new());
    vehicle.record(3_000, &mut pcapng, &mut text, |_| ()).expect("memory takes everything");
    for (bytes, start_ns) in [(pcapng, START_NS), (text, 0)] {
        let mut recording =
            Recording::from_reader(Box::new(Cursor::new(bytes)), "workload", &Options::default()).expect("it opens");
        for sent in vehicle.traffic().take(3_000) {
            let frame = recording.next().expect("it is whole").expect("all frames are there");
            assert_eq!(frame.time_ns, Some(start_ns + sent.time_ns));
            assert_eq!((frame.id, frame.extended), (sent.frame.id, sent.frame.extended));
            assert_eq!(frame.payload, sent.frame.payload(sent.word));
        }
        assert!(recording.next().expect("it is whole").is_none());
        assert!(recording.report().damage.is_empty());
    }
}

#[test]
fn values_agree_with_the_decoder() {
    let vehicle = Vehicle::<8>::new(120, Identifiers::Extended);
    let checked = check_text("workload.lore", &vehicle.description());
    let database = checked.database.expect("the workload has no mistakes");
    let decoder = Decoder::new(&database).expect("the workload can be decoded");
    for sent in vehicle.traffic().take(5_000) {
        let frame = decoder.find(NetworkId(sent.frame.network), sent.frame.id, true);
        assert_eq!(frame, Some(FrameId(sent.frame.number)));
        let mut seen = 0;
        decoder.decode(FrameId(sent.frame.number), &sent.frame.payload(sent.word), |signal, reading| {
            let expected = sent.frame.signals[signal.index()].value(sent.word);
            assert_eq!(reading.value.number().map(f64::to_bits), Some(expected.to_bits()));
            assert!(!reading.outside_range);
            seen += 1;
        });
        assert_eq!(seen, 8);
    }
}
