//! Any assignments to any frame: what is encoded decodes to what was given; and any payload: what was read from it can be given back.
#![no_main]

use libfuzzer_sys::fuzz_target;
use wirelore_bits::Ratio;
use wirelore_decode::{Encoded, Given, Note, Reading, Value, encode, parse_assignment};
use wirelore_fuzz::{DESCRIBED, Described};
use wirelore_model::{FrameId, SignalId};

fuzz_target!(|input: &[u8]| {
    let [way, frame, rest @ ..] = input else { return };
    let described = &DESCRIBED[usize::from(way >> 1) % DESCRIBED.len()];
    let frame = described.frame(*frame);
    match (way & 1, std::str::from_utf8(rest)) {
        (0, _) => give_back(described, frame, &rest[..rest.len().min(100)]),
        (_, Ok(lines)) => give(described, frame, lines),
        _ => {}
    }
});

/// A line for each assignment.
fn give(described: &Described, frame: FrameId, lines: &str) {
    let read = |line| parse_assignment(&described.database, frame, line).ok();
    let given: Vec<(String, Given)> = lines.lines().filter_map(read).collect();
    if let Ok(encoded) = encode(&described.database, frame, &given) {
        compare(described, frame, &given, &encoded);
    }
}

/// The bits of every number that is there.
fn give_back(described: &Described, frame: FrameId, payload: &[u8]) {
    let mut given = Vec::new();
    described.decoder.decode(frame, payload, |signal, reading| {
        let name = &described.database[frame][signal].label.name;
        if let (Some(bits), 1) = (reading.bits, described.database[frame].signals_named(name).count()) {
            given.push((name.clone(), Given::Raw(bits)));
        }
    });
    if let Ok(encoded) = encode(&described.database, frame, &given) {
        compare(described, frame, &given, &encoded);
    }
}

fn compare(described: &Described, frame: FrameId, given: &[(String, Given)], encoded: &Encoded) {
    let mut readings = Vec::new();
    let outcome = described.decoder.decode(frame, &encoded.payload, |signal: SignalId, reading| {
        readings.push((described.database[frame][signal].label.name.as_str(), said(&reading)));
    });
    assert!(!outcome.too_short, "{given:?} made {encoded:02X?}");
    for (name, given) in given {
        let rounded = encoded.notes.iter().any(|note| matches!(note, Note::Rounded { signal, .. } if signal == name));
        let here = || readings.iter().filter(|(other, _)| other == name);
        assert!(here().count() > 0, "{name} is not there in {encoded:02X?}");
        let agrees = here().any(|(_, said)| rounded || agrees(given, said));
        assert!(agrees, "{name} given as {given:?} is {:?} in {encoded:02X?}", here().collect::<Vec<_>>());
    }
}

/// What there is to compare of a reading.
#[derive(Debug)]
struct Said {
    bits: Option<u64>,
    word: Option<String>,
    is_absent: bool,
    is_fault: bool,
    number: Option<f64>,
    text: Option<String>,
    bytes: Option<Vec<u8>>,
}

fn said(reading: &Reading<'_>) -> Said {
    Said {
        bits: reading.bits,
        word: reading.word.map(str::to_owned),
        is_absent: reading.value == Value::NoReading,
        is_fault: reading.value == Value::SensorFault,
        number: reading.value.number(),
        text: if let Value::Text(text) = &reading.value { Some(text.to_string()) } else { None },
        bytes: if let Value::Bytes(bytes) = &reading.value { Some(bytes.to_vec()) } else { None },
    }
}

fn agrees(given: &Given, said: &Said) -> bool {
    match given {
        Given::Value { number, unit: None } => said.number == Some(Ratio::to_f64(number)),
        // A conversion of units is told of where it is not exact.
        Given::Value { .. } => said.number.is_some(),
        Given::Word(word) => said.word.as_ref() == Some(word),
        Given::Raw(bits) => said.bits == Some(*bits),
        Given::NoReading => said.is_absent,
        Given::SensorFault => said.is_fault,
        // NUL bytes at the end are padding.
        Given::Text(text) => said.text.as_deref() == Some(text.trim_end_matches('\0')),
        Given::Bytes(bytes) => said.bytes.as_ref().is_some_and(|said| said.starts_with(bytes)),
    }
}
