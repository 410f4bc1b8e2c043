//! What the texts say.

use wirelore_bits::{ByteOrder, Ratio};
use wirelore_model::{Charset, Grade, NetworkKind};

use super::super::tree::*;
use super::{frames, read, signal};
use crate::Span;

fn ratio(text: &str) -> Ratio {
    Ratio::from_decimal(text).unwrap()
}

fn values(ranges: &[RawRange]) -> Vec<(i128, i128)> {
    ranges.iter().map(|range| (range.first.value, range.last.value)).collect()
}

fn names<'t>(list: &'t [Name<'t>]) -> Vec<&'t str> {
    list.iter().map(|name| &*name.value).collect()
}

#[test]
fn the_map() {
    let file = read(
        "network a \"A\" can_fd 500 kbit/s, data 2 Mbit/s, order intel, called \"K1\"\n\
         ecu on \"Odd name\" on on, called, leads lin_1, address 0x0B, optional, measured \"at the plug\"\n\
         wire on -> x, y \"what\"\n",
    );
    let ItemKind::Network(network) = &file.items[0].kind else { panic!() };
    assert_eq!(network.kind.unwrap().value, NetworkKind::CanFd);
    assert_eq!((network.rate.unwrap().value, network.data_rate.unwrap().value), (500_000, 2_000_000));
    assert_eq!(network.order.unwrap().value, OrderWord::Only(ByteOrder::Intel));
    assert_eq!(network.head.called.as_ref().unwrap().value, "K1");
    let ItemKind::Ecu(ecu) = &file.items[1].kind else { panic!() };
    assert_eq!(ecu.head.name.value, "on");
    // A clause word with nothing that goes with it is a name like any other.
    assert_eq!(names(&ecu.on), ["on", "called"]);
    assert_eq!(names(&ecu.leads), ["lin_1"]);
    assert_eq!(ecu.address.unwrap().value, 11);
    assert!(ecu.optional.is_some());
    assert_eq!(
        ecu.head.certainty.as_ref().unwrap().value,
        Certainty { grade: Grade::Measured, evidence: Some("at the plug".into()) }
    );
    let ItemKind::Wire(wire) = &file.items[2].kind else { panic!() };
    assert_eq!(names(&wire.to), ["x", "y"]);
}

#[test]
fn rates_and_times_are_exact() {
    let rate = |text: &str| {
        let file = read(&format!("network n can {text}\n"));
        let ItemKind::Network(network) = &file.items[0].kind else { panic!() };
        network.rate.unwrap().value
    };
    assert_eq!(rate("33.3 kbit/s"), 33_300);
    assert_eq!(rate("9600 bit/s"), 9_600);
    assert_eq!(rate("83.333 kbit/s"), 83_333);
    let file = read(
        "frame f on d id 1 {\n every 0.5 ms, timeout 2 min, jitter 500us, at least 10 ms apart\n every 10..40 ms\n every 500 us..2 ms\n 20 ms..1 s apart\n}\n",
    );
    let BodyKind::Timing(first) = &frames(&file)[0].body.items[0].kind else { panic!() };
    let Timing::Every(period) = &first[0].value else { panic!() };
    assert_eq!(period.shortest.value, 500_000);
    assert!(matches!(&first[1].value, Timing::Timeout(time) if time.value == 120_000_000_000));
    assert!(matches!(&first[2].value, Timing::Jitter(time) if time.value == 500_000));
    assert!(matches!(&first[3].value, Timing::ApartAtLeast(time) if time.value == 10_000_000));
    let spans: Vec<_> = frames(&file)[0].body.items[1..]
        .iter()
        .map(|item| match &item.kind {
            BodyKind::Timing(timing) => match &timing[0].value {
                Timing::Every(period) => (period.shortest.value, period.longest.value),
                Timing::Apart(least, most) => (least.value, most.value),
                other => panic!("{other:?}"),
            },
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!(spans, [(10_000_000, 40_000_000), (500_000, 2_000_000), (20_000_000, 1_000_000_000)]);
}

#[test]
fn places_are_kept_as_written() {
    let Piece::Bits { msb, lsb } = signal("signal s in bits 1.10..0.0").place.unwrap().first.value else { panic!() };
    assert_eq!((msb.byte, msb.bit, lsb.byte, lsb.bit), (1, 10, 0, 0));
    let split = signal("signal s in bits 5.8..5.6 then bytes 4..3 motorola").place.unwrap();
    assert_eq!(split.others.len(), 1);
    assert_eq!(split.order.unwrap().value, ByteOrder::Motorola);
    let counted = signal("signal s in lsb 16 width 12 intel").place.unwrap();
    assert!(
        matches!(counted.first.value, Piece::Counted { anchor: Anchor::Lsb, at: FlatPosition::Flat(at), width, order: Some(ByteOrder::Intel) } if at.value == 16 && width.value == 12)
    );
    let dotted = signal("signal s in msb 4.1 width 3").place.unwrap();
    assert!(
        matches!(dotted.first.value, Piece::Counted { at: FlatPosition::Position(at), order: None, .. } if (at.byte, at.bit) == (4, 1))
    );
    assert!(matches!(
        signal("signal s in bytes 3..end text utf8").place.unwrap().first.value,
        Piece::Bytes { lsb: ByteIndex::Last(_), .. }
    ));
}

#[test]
fn the_head_of_a_signal() {
    let s = signal(
        "signal in[1..12] \"Cells\" in bytes 0..1 step 2 bytes signed = (raw - 125) * -9/5 °C, range -40.5..1e3",
    );
    assert_eq!(s.head.name.value, "in");
    let elements = s.extras().elements.unwrap();
    assert_eq!((elements.first.value, elements.last.value), (1, 12));
    assert_eq!(s.extras().step.unwrap().value, Step::Bytes(2));
    assert_eq!(s.kind.unwrap().value, Kind::Signed);
    assert_eq!(s.unit.as_ref().unwrap().value, UnitText::Symbol("°C".into()));
    let (low, high) = s.range.unwrap().value;
    assert_eq!((low, high), (ratio("-40.5"), ratio("1000")));
    let Some(Value::Formula(formula)) = &s.value else { panic!() };
    assert_eq!(formula.line, Ok(Line { factor: ratio("-1.8"), offset: ratio("225") }));
    assert!(!s.incomplete);
    assert_eq!(signal("signal s in bytes 0..3 text latin1").kind.unwrap().value, Kind::Text(Charset::Latin1));
    assert_eq!(signal("signal s in bytes 0..3 bytes").kind.unwrap().value, Kind::Bytes);
}

#[test]
fn algebra_becomes_a_line() {
    for (written, factor, offset) in [
        ("raw * 0.05", "0.05", "0"),
        ("raw / 256", "0.00390625", "0"),
        ("(raw - 125) * 0.8", "0.8", "-100"),
        ("raw * 9 / 5 + 32", "1.8", "32"),
        ("100 - raw", "-1", "100"),
        ("raw + raw", "2", "0"),
        ("5 - 3", "0", "2"),
    ] {
        let line = Line { factor: ratio(factor), offset: ratio(offset) };
        assert_eq!(formula(written).line, Ok(line), "{written}");
    }
    let Ok(thirds) = formula("3 * (raw / 7)").line else { panic!() };
    assert_eq!((thirds.factor.numerator(), thirds.factor.denominator()), (3, 7));
    assert!(formula("raw - raw").mentions_raw && !formula("5 - 3").mentions_raw);
}

#[test]
fn other_formulas_are_told_apart() {
    let trouble = |written: &str| {
        let place = |span: Span| &written[span.start as usize - BEFORE..span.end as usize - BEFORE];
        match formula(written).line {
            Ok(line) => panic!("{line:?}"),
            Err(Trouble::RawTimesRaw(span)) => format!("raw times raw: {}", place(span)),
            Err(Trouble::DividedByRaw(span)) => format!("divided by raw: {}", place(span)),
            Err(Trouble::DividedByZero(span)) => format!("divided by zero: {}", place(span)),
            Err(Trouble::TooLong(span)) => format!("too long: {}", place(span)),
        }
    };
    assert_eq!(trouble("raw * raw + 1"), "raw times raw: raw * raw");
    assert_eq!(trouble("2 * ((raw * raw) / 0)"), "raw times raw: (raw * raw)");
    assert_eq!(trouble("1 / (raw + 1)"), "divided by raw: (raw + 1)");
    assert_eq!(trouble("raw / 0"), "divided by zero: 0");
    assert_eq!(trouble("raw / (1 - 1) * raw"), "divided by zero: (1 - 1)");
    let long = "0.0000000000000000000000000000000001";
    assert_eq!(trouble(&format!("(raw * {long} * {long}) + 1")), format!("too long: (raw * {long} * {long})"));
}

/// The bytes in front of the formula that [`formula`] reads.
const BEFORE: usize = "frame f on d id 1 {\nsignal s in byte 0 = ".len();

fn formula(written: &str) -> Formula {
    match signal(&format!("signal s in byte 0 = {written}")).value {
        Some(Value::Formula(formula)) => formula,
        other => panic!("{other:?}"),
    }
}

#[test]
fn units_begin_where_the_formula_ends() {
    for (written, unit) in [
        ("raw * 0.1 1/min", UnitText::Symbol("1/min".into())),
        ("raw km/h", UnitText::Symbol("km/h".into())),
        ("raw N·m", UnitText::Symbol("N·m".into())),
        ("raw m/s²", UnitText::Symbol("m/s²".into())),
        ("raw/2 %", UnitText::Symbol("%".into())),
        ("raw \"a b\"", UnitText::Quoted("a b".into())),
        ("curve { 0: -40, 128: 21.5\n 255: 150 } °", UnitText::Symbol("°".into())),
        // Whatever its spelling, it is not a clause without an operand.
        ("raw range", UnitText::Symbol("range".into())),
    ] {
        assert_eq!(signal(&format!("signal s in byte 0 = {written}, absent 0xFF")).unit.unwrap().value, unit);
    }
    assert_eq!(signal("signal s in byte 0 = raw * 2, absent 1").unit, None);
}

#[test]
fn clauses_of_a_signal() {
    let s = signal(
        "signal s in byte 0, states { -1 back, 0x3..10 on \"On\" as fault, }, absent 0xFE, -2..3,\n fault 7, counter 0..14 step 2,\n \
         checksum crc8_sae_j1850 over bytes 0..6, 8..last starting 0xFF first bytes 1 0x2 then bytes 3, likely",
    );
    let Some(StatesClause::Own(words)) = s.extras().states.as_ref().map(|states| &states.value) else { panic!() };
    assert_eq!((words[0].values.first.value, &*words[0].word.value), (-1, "back"));
    assert_eq!(words[1].meaning.unwrap().value, SpecialWord::Fault);
    assert!(words[1].values.first.pattern && !words[1].values.last.pattern);
    assert_eq!(values(&s.extras().absent), [(0xFE, 0xFE), (-2, 3)]);
    assert_eq!(values(&s.extras().fault), [(7, 7)]);
    let counter = s.extras().counter.as_ref().unwrap().value;
    assert_eq!((counter.low.value, counter.high.value, counter.step.unwrap().value), (0, 14, 2));
    let checksum = &s.extras().checksum.as_ref().unwrap().value;
    assert_eq!(checksum.over.len(), 2);
    assert!(matches!(checksum.over[1].value, (ByteIndex::Number(_), ByteIndex::Last(_))));
    assert_eq!((checksum.first.len(), checksum.then.len()), (2, 1));
    assert_eq!(s.head.certainty.unwrap().value.grade, Grade::Likely);
}

#[test]
fn frames_are_recognised_by_id_or_group() {
    let file = read(
        "frame a on n id 0x7E8..0x7EF extended, optional\n\
         frame b \"B\" on n pgn 65265 from 0x0B, brakes, hub priority 6, from document \"Handbook\" {}\n",
    );
    let frames = frames(&file);
    assert!(
        matches!(&frames[0].recognition.as_ref().unwrap().value, Recognition::Id { ids, extended: Some(_) } if ids.last.value == 0x7EF)
    );
    assert!(frames[0].optional.is_some());
    let Recognition::Pgn { pgn, sources, priority } = &frames[1].recognition.as_ref().unwrap().value else { panic!() };
    assert_eq!((pgn.value, sources.len(), priority.unwrap().value), (65265, 3, 6));
    assert_eq!(frames[1].head.certainty.as_ref().unwrap().value.grade, Grade::Document);
}

#[test]
fn statements_of_a_frame() {
    let file = read(
        "frame f on n id 1 {\n\
         sent by a, every every 1 s or on change, timeout 3 s\n\
         sent by b, every 20 ms while request is 1, on, else every 200 ms\n\
         read by c, length\n\
         length 2..8\n\
         marks j1939\n order mixed\n counting from 1\n counting bits from the top\n\
         unknown bits 3.7..3.4\n unused byte last\n\
         use layout wheel at byte 4 prefix w_\n\
         when page is 1, 4..6, forward and x is 0x0C {\n length 4\n } otherwise { on request }\n}\n",
    );
    let body = &frames(&file)[0].body;
    let BodyKind::SentBy { ecus, timing } = &body.items[0].kind else { panic!() };
    assert_eq!(names(ecus), ["a", "every"]);
    assert_eq!(timing.len(), 3);
    let BodyKind::SentBy { ecus, timing } = &body.items[1].kind else { panic!() };
    assert_eq!(names(ecus), ["b"]);
    assert!(matches!(&timing[0].value, Timing::EveryWhile { test, .. } if test.values.len() == 2));
    assert!(matches!(&body.items[2].kind, BodyKind::ReadBy(readers) if names(readers) == ["c", "length"]));
    assert!(matches!(&body.items[3].kind, BodyKind::Length(range) if (range.first.value, range.last.value) == (2, 8)));
    assert!(
        matches!(&body.items[10].kind, BodyKind::UseLayout(used) if used.prefix.as_ref().is_some_and(|prefix| prefix.value == "w_"))
    );
    let BodyKind::When(when) = &body.items[11].kind else { panic!() };
    assert_eq!((when.tests.len(), when.tests[0].values.len(), when.body.items.len()), (2, 3, 1));
    assert!(matches!(&body.items[12].kind, BodyKind::Otherwise(body) if body.items.len() == 1));
}

#[test]
fn lines_of_a_gateway() {
    let file = read(
        "gateway g {\n## why\npass f from a to b as id 0x3A0 extended, every 100 ms, within 20 ms\n\
         pass id 0x700..0x7FF from a to b, every 10th\n pass all from a to b, except x, y\n copy f.s from a to g.t on b\n pass all from a to b\n}\n",
    );
    let ItemKind::Gateway(gateway) = &file.items[0].kind else { panic!() };
    let routes = &gateway.routes;
    assert_eq!(routes[0].front.note.as_ref().unwrap().value, "why");
    assert_eq!(routes[0].pace.unwrap().value, Pace::Every(100_000_000));
    assert_eq!(routes[0].within.unwrap().value, 20_000_000);
    assert!(matches!(&routes[0].what, Passed::Frame { new_id: Some((id, Some(_))), .. } if id.value == 0x3A0));
    assert_eq!(routes[1].pace.unwrap().value, Pace::Nth(10));
    assert!(matches!(&routes[2].what, Passed::All { except, .. } if names(except) == ["x", "y"]));
    assert!(matches!(&routes[3].what, Passed::Signal { target, .. } if target.1.value == "t"));
}

#[test]
fn notes_and_allow_lines_find_their_item() {
    let file = read(
        "allow name-style\n\nedition 1\n\n## One\n##  two\n# not this\nallow signal-overlap, order-odd-one-out\nallow still-guessed\nvehicle v\n## for nobody\nallow ecu-unused\n",
    );
    let names_of = |names: &[Name]| names.iter().map(|name| name.value.to_string()).collect::<Vec<_>>();
    assert!(matches!(&file.items[0].kind, ItemKind::AllowInFile(rules) if names_of(rules) == ["name-style"]));
    let vehicle = &file.items[2].front;
    assert_eq!(vehicle.note.as_ref().unwrap().value, "One\n two");
    assert_eq!(names_of(&vehicle.allow), ["signal-overlap", "order-odd-one-out", "still-guessed"]);
    assert!(matches!(&file.items[3].kind, ItemKind::AllowInFile(rules) if names_of(rules) == ["ecu-unused"]));
}

#[test]
fn statements_go_on_behind_commas_and_in_parentheses() {
    let file = read("frame f on n id 1 {\r\n signal a in byte 0 = (raw # raw\n - 40)\n * 2 °C\n signal b in byte 1,\n\n # inside\n absent 1\n}\n".replace("\n * 2", " * 2").as_str());
    let body = &frames(&file)[0].body;
    assert_eq!(body.items.len(), 2);
}

#[test]
fn names_are_normalised() {
    let file = read("vehicle fe\u{301}e \"\\u{41}\"\n");
    let ItemKind::Vehicle(head) = &file.items[0].kind else { panic!() };
    assert_eq!((&*head.name.value, &*head.title.as_ref().unwrap().value), ("f\u{e9}e", "A"));
}

#[test]
fn files_and_standards_are_used() {
    let file = read("use \"body/doors.lore\"\nuse standard heavy_duty\norder motorola\ncounting bits from the top\n");
    assert!(matches!(&file.items[0].kind, ItemKind::UseFile(path) if path.value == "body/doors.lore"));
    assert!(
        matches!(&file.items[1].kind, ItemKind::UseStandard { standard, on: None } if standard.value == "heavy_duty")
    );
    let file = read("use standard doip on backbone\n");
    assert!(matches!(&file.items[0].kind, ItemKind::UseStandard { on: Some(name), .. } if name.value == "backbone"));
}
