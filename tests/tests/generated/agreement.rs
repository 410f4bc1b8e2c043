//! Generated source and the decoder, on the same payloads: the same frames, the same readings, bit for bit.

use wirelore_bits::Extractor;
use wirelore_bits::typed::{Name, Said, SaidValue};
use wirelore_decode::{Decoder, Reading, Value};
use wirelore_model::{Content, Database, Frame, Identifier, NetworkId, PageId, RawValue, SeenId};

use crate::noise::Noise;

/// Takes what each signal says.
pub(crate) type Tell<'t> = &'t mut dyn FnMut(Name, Said<'_>);

/// What became of a payload.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Became {
    Decoded,
    TooShort,
    NotDescribed,
}

/// The generated source of one network.
pub(crate) struct Generated {
    pub(crate) network: &'static str,
    pub(crate) decode: fn(SeenId, &[u8], Tell<'_>) -> Became,
}

/// How much was compared.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Compared {
    pub(crate) frames: u64,
    pub(crate) readings: u64,
    pub(crate) too_short: u64,
}

/// A number from 0 up to, but not including, a bound.
fn below(chance: &mut Noise, bound: usize) -> usize {
    chance.below(bound as u64) as usize
}

/// One way in which a frame of a database is seen.
struct Case<'d> {
    generated: &'d Generated,
    network: NetworkId,
    identifier: &'d Identifier,
    frame: &'d Frame,
}

/// Compares `rounds` payloads of all frames that some networks show.
pub(crate) fn compare(database: &Database, networks: &[Generated], rounds: u64) -> Compared {
    let decoder = Decoder::new(database).expect("it can be decoded");
    let cases = cases(database, networks);
    let mut chance = Noise::new(rounds);
    let mut compared = Compared::default();
    let (mut payload, mut ours, mut theirs) = (Vec::new(), Vec::new(), Vec::new());
    for round in 0..rounds {
        let case = &cases[round as usize % cases.len()];
        fill(case.frame, &mut payload, &mut chance);
        let Some(seen) = seen(case.identifier, &mut chance) else { continue };
        ours.clear();
        let became = (case.generated.decode)(seen, &payload, &mut |name, said| ours.push(ours_text(name, &said)));
        let found = decoder.find_seen(case.network, seen, &payload);
        let Some(id) = found else {
            assert_eq!(became, Became::NotDescribed, "{seen:?} {payload:02X?}");
            continue;
        };
        let frame = &database.frames[id.index()];
        theirs.clear();
        let outcome = decoder.decode(id, &payload, |signal, reading| {
            theirs.extend(theirs_text(&frame.signals[signal.index()].label.name, &reading));
        });
        let place = || format!("{} {payload:02X?}", frame.label.name);
        compared.frames += 1;
        if outcome.too_short {
            compared.too_short += 1;
            assert_eq!(became, Became::TooShort, "{}", place());
            continue;
        }
        assert_eq!(became, Became::Decoded, "{}", place());
        compared.readings += ours.len() as u64;
        assert_eq!(ours, theirs, "{}", place());
    }
    compared
}

fn cases<'d>(database: &'d Database, networks: &'d [Generated]) -> Vec<Case<'d>> {
    let mut cases = Vec::new();
    for generated in networks {
        let (network, _) = database.network_named(generated.network).expect("the network is described");
        for frame in &database.frames {
            let here = frame.seen_on.iter().filter(|seen| seen.network == network);
            cases.extend(here.map(|seen| Case { generated, network, identifier: &seen.identifier, frame }));
        }
    }
    assert!(!cases.is_empty());
    cases
}

/// Something that is recognised so, mostly.
fn seen(identifier: &Identifier, chance: &mut Noise) -> Option<SeenId> {
    let any = |chance: &mut Noise| chance.bits();
    Some(match identifier {
        Identifier::Can { first, last, extended } => {
            SeenId::Can { id: first + below(chance, (last - first + 1) as usize) as u32, extended: *extended }
        }
        Identifier::Pgn { pgn, sources, priority } => {
            let at = below(chance, sources.len());
            let source = sources.get(at).copied().unwrap_or(any(chance) as u8);
            let priority = priority.unwrap_or(any(chance) as u8 & 7);
            let to = if pgn & 0xFF == 0 && pgn >> 8 & 0xFF < 240 { any(chance) as u32 & 0xFF } else { 0 };
            SeenId::Can { id: u32::from(priority) << 26 | (pgn | to) << 8 | u32::from(source), extended: true }
        }
        Identifier::Lin { id, stands_for, .. } => {
            // The decoder tells by the first byte what such an answer is; so does the source, one step earlier.
            if !stands_for.is_empty() {
                return None;
            }
            SeenId::Lin(*id)
        }
        Identifier::FlexRay { slot, first_cycle, .. } => {
            let cycle = if below(chance, 2) == 0 { *first_cycle } else { below(chance, 64) as u8 };
            SeenId::FlexRay { slot: *slot, cycle, on_b: below(chance, 2) == 0 }
        }
        Identifier::Xl { acceptance, priority } => {
            SeenId::Xl { acceptance: *acceptance, priority: priority.unwrap_or(any(chance) as u16 & 0x7FF) }
        }
        Identifier::Telegram { source, target, .. } => SeenId::Telegram { source: *source, target: *target },
        Identifier::Most { block, instance, function, operation } => SeenId::Most {
            block: *block,
            instance: instance.unwrap_or(any(chance) as u8),
            function: *function,
            operation: operation.unwrap_or(any(chance) as u8 & 15),
        },
        Identifier::SomeIp { service, method, message_type } => SeenId::SomeIp {
            service: *service,
            method: *method,
            message_type: message_type.unwrap_or(any(chance) as u8),
        },
        Identifier::Port { protocol, port } => {
            let (here, there) = (*port, any(chance) as u16);
            let (from, to) = if below(chance, 2) == 0 { (here, there) } else { (there, here) };
            SeenId::Ports { protocol: *protocol, from, to }
        }
        Identifier::DoIp { payload_type, source, target } => {
            SeenId::DoIp { payload_type: *payload_type, source: *source, target: *target }
        }
    })
}

/// A payload, mostly as long as the frame is, with bytes that often are those of special values, and often with a page that holds.
fn fill(frame: &Frame, payload: &mut Vec<u8>, chance: &mut Noise) {
    let needed = frame.signals.iter().map(|signal| signal.needed_bytes() as usize).max().unwrap_or(0);
    let most = frame.length.map_or(needed, |length| length.max as usize).max(needed).min(needed + 40);
    let length = match below(chance, 8) {
        0 => below(chance, most + 3),
        1 => frame.length.map_or(needed, |length| length.min as usize),
        2 => needed,
        _ => most,
    };
    payload.clear();
    let sort = below(chance, 6);
    payload.extend((0..length).map(|_| match (sort, below(chance, 3)) {
        (0, _) | (1, 0) => 0xFF,
        (2, _) | (3, 0) => 0,
        (4, 0) => below(chance, 16) as u8,
        _ => chance.bits() as u8,
    }));
    if let Some(Identifier::Telegram { starts, .. }) = frame.seen_on.first().map(|seen| &seen.identifier) {
        payload.iter_mut().zip(starts).for_each(|(byte, start)| *byte = *start);
    }
    if !frame.pages.is_empty() {
        let page = PageId(below(chance, frame.pages.len()) as u32);
        open_page(frame, page, payload, chance);
    }
}

/// Sets the selectors so that a page is there.
fn open_page(frame: &Frame, page: PageId, payload: &mut [u8], chance: &mut Noise) {
    let Some(page) = frame.pages.get(page.index()) else { return };
    if let Some(parent) = page.parent {
        open_page(frame, parent, payload, chance);
    }
    for test in &page.tests {
        let selector = &frame.signals[test.selector.index()];
        let span = test.values[below(chance, test.values.len())];
        let end = if below(chance, 2) == 0 { span.first } else { span.last };
        let bits = match end {
            RawValue::Bits(bits) => bits,
            RawValue::Number(number) => number as u64 & 0xFFFF,
        };
        if let Content::Number { field, .. } = &selector.content {
            let _ = Extractor::new(field).insert(payload, bits);
        }
    }
}

fn line(name: &str, value: &str, word: Option<&str>, is_outside: bool) -> String {
    format!("{name} {value} {} {is_outside}", word.unwrap_or("-"))
}

fn number(value: f64) -> String {
    if value.is_nan() { "not a number".to_owned() } else { format!("{:016X}", value.to_bits()) }
}

fn ours_text(name: Name, said: &Said<'_>) -> String {
    let value = match said.value {
        SaidValue::Integer(value) => format!("integer {value}"),
        SaidValue::Number(value) => number(value),
        SaidValue::Code(code) => format!("code {code}"),
        SaidValue::Text(text) => format!("text {text}"),
        SaidValue::Bytes(bytes) => format!("bytes {bytes:02X?}"),
        SaidValue::NoReading => "absent".to_owned(),
        SaidValue::Fault => "fault".to_owned(),
        SaidValue::Undefined => "undefined".to_owned(),
    };
    let name = name.element.map_or(name.signal.to_owned(), |element| format!("{}[{element}]", name.signal));
    line(&name, &value, said.word, said.is_outside)
}

/// `None`: the payload ends before it, which may be so.
fn theirs_text(name: &str, reading: &Reading<'_>) -> Option<String> {
    let value = match &reading.value {
        Value::Integer(value) => format!("integer {value}"),
        Value::Number(value) => number(*value),
        Value::TroubleCode(code) => format!("code {code}"),
        Value::Text(text) => format!("text {text}"),
        Value::Bytes(bytes) => format!("bytes {bytes:02X?}"),
        Value::NoReading => "absent".to_owned(),
        Value::SensorFault => "fault".to_owned(),
        Value::NotDigits | Value::BeyondCurve => "undefined".to_owned(),
        Value::TooShort => return None,
    };
    Some(line(name, &value, reading.word, reading.outside_range))
}

/// Tells what a frame says, where there is one.
macro_rules! told {
    ($found:expr, $tell:expr) => {
        match $found {
            Ok(Some(frame)) => {
                frame.each($tell);
                $crate::agreement::Became::Decoded
            }
            Ok(None) => $crate::agreement::Became::NotDescribed,
            Err(_) => $crate::agreement::Became::TooShort,
        }
    };
}

/// A network: what is seen, and the function of its frames that takes it.
macro_rules! network {
    ($network:literal, $frames:ty, $($seen:pat => $function:ident($($argument:expr),*)),+) => {
        $crate::agreement::Generated {
            network: $network,
            decode: {
                fn decode(
                    seen: wirelore_model::SeenId,
                    payload: &[u8],
                    tell: $crate::agreement::Tell<'_>,
                ) -> $crate::agreement::Became {
                    match seen {
                        $($seen => $crate::agreement::told!(<$frames>::$function($($argument,)* payload), tell),)+
                        _ => $crate::agreement::Became::NotDescribed,
                    }
                }
                decode
            },
        }
    };
}

macro_rules! can {
    ($network:literal, $frames:ty) => {
        $crate::agreement::network!(
            $network,
            $frames,
            wirelore_model::SeenId::Can { id, extended } => decode(id, extended)
        )
    };
}

pub(crate) use {can, network, told};
