//! Encoding and decoding undo each other, for descriptions and payloads at random.

use proptest::prelude::*;
use wirelore_bits::{Affine, BitPosition, ByteOrder, Encoding, Field, Number, NumberKind, Place, Ratio};
use wirelore_decode::{Decoder, Given, Note, Reading, Value, encode};
use wirelore_model::{
    Appearance, Content, Database, Description, Frame, FrameId, Identifier, Label, Network, NetworkId, NetworkKind,
    RawSpan, RawValue, Role, Scaling, Sending, Shown, Signal,
};

/// What a signal is made of, beside its place.
#[derive(Debug, Clone)]
struct Draft {
    width: u32,
    gap: u32,
    kind: u8,
    /// Factor and offset in units of 1e-3; no formula where the factor is 0.
    formula: (i32, i32),
    has_absent: bool,
}

fn draft() -> impl Strategy<Value = Draft> {
    let width = prop_oneof![4 => 1..=16_u32, 1 => 17..=64_u32, 1 => Just(32), 1 => Just(64)];
    (width, 0..4_u32, 0..6_u8, (-5000..5000_i32, -100_000..100_000_i32), any::<bool>())
        .prop_map(|(width, gap, kind, formula, has_absent)| Draft { width, gap, kind, formula, has_absent })
}

fn kind_of(draft: &Draft) -> NumberKind {
    match (draft.kind, draft.width) {
        (1 | 2, _) => NumberKind::Signed,
        (3, 2..) => NumberKind::SignMagnitude,
        (4, 16 | 32 | 64) => NumberKind::Float,
        (5, width) if width % 4 == 0 => NumberKind::Bcd,
        _ => NumberKind::Unsigned,
    }
}

/// Signals one after the other through a payload of 64 bytes.
fn database(drafts: &[Draft], order: ByteOrder) -> Database {
    let mut signals = Vec::new();
    let mut at = 0;
    for (index, draft) in drafts.iter().enumerate() {
        at += draft.gap;
        let place = match order {
            ByteOrder::Intel => Place::from_lsb(BitPosition::new(at / 8, (at % 8) as u8), draft.width, order),
            ByteOrder::Motorola => Place::from_msb(BitPosition::new(at / 8, 7 - (at % 8) as u8), draft.width, order),
        };
        at += draft.width;
        if at > 512 {
            break;
        }
        signals.push(signal(&format!("s{index}"), Field::from(place.expect("a place inside the payload")), draft));
    }
    let identifier = Identifier::Can { first: 1, last: 1, extended: false };
    let frame = Frame {
        label: Label::named("frame"),
        seen_on: vec![Appearance { network: NetworkId(0), identifier, via: None }],
        carried: None,
        length: None,
        senders: Vec::new(),
        readers: Vec::new(),
        sending: Sending::default(),
        optional: false,
        pages: Vec::new(),
        signals,
        unknown: Vec::new(),
        unused: Vec::new(),
    };
    let network = Network {
        label: Label::named("network"),
        kind: NetworkKind::CanFd,
        rate: None,
        data_rate: None,
        telegram: None,
        flexray: None,
        terminators: Vec::new(),
        star: None,
    };
    Database::new(Description { networks: vec![network], frames: vec![frame], ..Description::default() })
        .expect("a good description")
}

fn signal(name: &str, field: Field, draft: &Draft) -> Signal {
    let kind = kind_of(draft);
    let thousandths = |number: i32| Ratio::new(number.into(), 1000).expect("a fraction");
    let formula = Affine::new(thousandths(draft.formula.0), thousandths(draft.formula.1));
    let takes_patterns = matches!(kind, NumberKind::Unsigned | NumberKind::Signed);
    let all_set = RawSpan::single(RawValue::Bits(u64::MAX >> (64 - draft.width)));
    Signal {
        label: Label::named(name),
        page: None,
        content: Content::Number { field, kind },
        scaling: formula.map_or(Scaling::Raw, Scaling::Affine),
        unit: None,
        states: None,
        range: None,
        absent: if draft.has_absent && takes_patterns { vec![all_set] } else { Vec::new() },
        fault: Vec::new(),
        role: Role::Value,
        shown: Shown::Decimal,
    }
}

/// What must be given so that a reading comes out again: the exact value of its bits, not the rounded double.
fn given(signal: &Signal, reading: &Reading<'_>) -> Option<Given> {
    let encoding: Encoding = signal.encoding()?;
    let bits = reading.bits?;
    let value = |number| Some(Given::Value { number, unit: None });
    match (&reading.value, encoding.number(bits).ok()?, &signal.scaling) {
        (Value::NoReading, _, _) => Some(Given::NoReading),
        (_, Number::Integer(raw), Scaling::Affine(formula)) => value(formula.exact(raw)?),
        (_, Number::Integer(raw), _) => value(Ratio::whole(raw)),
        (_, Number::Float(_), _) => Some(Given::Raw(bits)),
    }
}

/// A reading that can be kept and compared; not-a-numbers are the same.
fn kept(reading: &Reading<'_>) -> (String, Option<u64>) {
    (format!("{:?} {:?} {}", reading.value, reading.word, reading.outside_range), reading.bits)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn every_payload_is_encoded_back(drafts in prop::collection::vec(draft(), 1..20), intel in any::<bool>(), payload in prop::array::uniform32(any::<u8>()), tail in prop::array::uniform32(any::<u8>())) {
        let database = database(&drafts, if intel { ByteOrder::Intel } else { ByteOrder::Motorola });
        let decoder = Decoder::new(&database).expect("formulas that fit");
        let payload = [payload, tail].concat();
        let frame = &database.frames[0];
        let mut assignments = Vec::new();
        let mut before = Vec::new();
        decoder.decode(FrameId(0), &payload, |id, reading| {
            let signal = &frame.signals[id.index()];
            if let Some(given) = given(signal, &reading) {
                assignments.push((signal.label.name.clone(), given));
                before.push((id, kept(&reading)));
            }
        });
        let encoded = encode(&database, FrameId(0), &assignments).expect("every value came from bits");
        let rounded = encoded.notes.iter().any(|note| matches!(note, Note::Rounded { .. }));
        prop_assert!(!rounded, "{:?}", encoded.notes);
        let mut after = Vec::new();
        let outcome = decoder.decode(FrameId(0), &encoded.payload, |id, reading| after.push((id, kept(&reading))));
        prop_assert!(!outcome.too_short);
        for (id, (value, bits)) in before {
            let (_, (value_after, bits_after)) = after.iter().find(|(other, _)| *other == id).expect("it is decoded again");
            prop_assert_eq!(&value, value_after);
            let signal = &frame.signals[id.index()];
            // Of the two zeros of sign and size, the positive one is written.
            if !matches!(signal.content, Content::Number { kind: NumberKind::SignMagnitude, .. }) {
                prop_assert_eq!(&bits, bits_after);
            }
        }
    }

    #[test]
    fn any_value_is_met_within_half_a_step(draft in draft(), thousandths in -50_000_000..50_000_000_i64) {
        let database = database(std::slice::from_ref(&draft), ByteOrder::Intel);
        let signal = &database.frames[0].signals[0];
        let wanted = Ratio::new(thousandths.into(), 777).expect("a fraction");
        let Ok(encoded) = encode(&database, FrameId(0), &[("s0", Given::Value { number: wanted, unit: None })]) else {
            return Ok(());
        };
        let decoder = Decoder::new(&database).expect("formulas that fit");
        let mut got = None;
        decoder.decode(FrameId(0), &encoded.payload, |_, reading| got = reading.value.number());
        let got = got.expect("what was encoded is a reading");
        let step = match (&signal.scaling, signal.encoding().map(|encoding| encoding.kind())) {
            (_, Some(NumberKind::Float)) => return Ok(()),
            (Scaling::Affine(formula), _) => formula.factor().to_f64().abs(),
            _ => 1.0,
        };
        let miss = (got - wanted.to_f64()).abs();
        prop_assert!(miss <= step / 2.0 * (1.0 + 1e-9) + 1e-9, "{} for {}", got, wanted);
    }

    #[test]
    fn any_payload_of_any_length_is_decoded(drafts in prop::collection::vec(draft(), 1..20), intel in any::<bool>(), payload in prop::collection::vec(any::<u8>(), 0..80)) {
        let database = database(&drafts, if intel { ByteOrder::Intel } else { ByteOrder::Motorola });
        let decoder = Decoder::new(&database).expect("formulas that fit");
        let frame = &database.frames[0];
        let mut seen = 0;
        let outcome = decoder.decode(FrameId(0), &payload, |id, reading| {
            let fits = frame.signals[id.index()].needed_bytes() as usize <= payload.len();
            assert_eq!(fits, reading.value != Value::TooShort);
            seen += 1;
        });
        prop_assert_eq!(seen, frame.signals.len());
        let needed = frame.signals.iter().map(|signal| signal.needed_bytes() as usize).max().unwrap_or(0);
        prop_assert_eq!(outcome.too_short, payload.len() < needed);
    }
}
