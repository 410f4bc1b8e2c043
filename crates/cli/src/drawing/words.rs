//! The words beside the pictures: places, formulas, special values, timing.

use std::fmt::Write;

use wirelore_bits::e2e::{DataId, Part};
use wirelore_bits::{ByteOrder, Field, NumberKind, Place, Ratio};
use wirelore_decode::reachable;
use wirelore_model::{
    ByteSpan, Certainty, Content, Database, EcuId, Frame, Label, LengthRange, MixedByte, Nanoseconds, Period,
    Protection, RawSpan, RawValue, Role, Scaling, Sending, Signal, SignalId, Test, appearance_text, formula_text,
    state_words_text,
};

use crate::number::hexadecimal;
use crate::summary::counted;

/// A name and its title.
pub(crate) fn title_of(label: &Label) -> String {
    match &label.title {
        Some(title) => format!("{}  \"{title}\"", label.name),
        None => label.name.clone(),
    }
}

/// Notes, other names and certainty, a line each.
pub(crate) fn push_label(text: &mut String, label: &Label) {
    for line in label.note.iter().flat_map(|note| note.lines()) {
        let _ = writeln!(text, "  {line}");
    }
    if let Some(called) = &label.called {
        let _ = writeln!(text, "  called \"{called}\" elsewhere");
    }
    if let Some(certainty) = &label.certainty {
        let _ = writeln!(text, "  {}", certainty.text());
    }
}

/// What is said of the frame before its picture.
pub(super) fn frame_heading(database: &Database, frame: &Frame) -> String {
    let mut text = title_of(&frame.label);
    text.push('\n');
    push_label(&mut text, &frame.label);
    let home = &frame.seen_on[0];
    let mut facts = vec![format!("on {}", appearance_text(database, home))];
    facts.extend(super::lin::facts(frame));
    facts.extend(frame.carried.map(|transport| format!("carried by {}", transport.words())));
    facts.extend(frame.length.map(length_text));
    facts.extend(sending_text(database, frame));
    let _ = writeln!(text, "  {}", facts.join(", "));
    for (verb, ecus) in [("sent by", &frame.senders), ("read by", &frame.readers)] {
        if !ecus.is_empty() {
            let _ = writeln!(text, "  {verb} {}", ecu_names(database, ecus));
        }
    }
    super::lin::push_lines(&mut text, database, frame);
    let network = &database.networks[home.network.index()].label;
    if let Some(certainty) = network.certainty.as_ref().filter(|certainty| certainty.grade.mark().is_some()) {
        let _ = writeln!(text, "  network {} is {}", network.name, certainty.text());
    }
    for passed in &frame.seen_on[1..] {
        let gateway = passed.via.map(|route| database.routes[route.index()].gateway);
        let gateway = gateway.map(|ecu| format!(" by {}", database.ecus[ecu.index()].label.name)).unwrap_or_default();
        let _ = writeln!(text, "  passed on{gateway} to {}", appearance_text(database, passed));
    }
    text
}

fn ecu_names(database: &Database, ecus: &[EcuId]) -> String {
    ecus.iter().map(|ecu| database.ecus[ecu.index()].label.name.as_str()).collect::<Vec<_>>().join(", ")
}

/// `8 bytes`, `2 to 8 bytes`.
pub(crate) fn length_text(length: LengthRange) -> String {
    match (length.min, length.max) {
        (1, 1) => "1 byte".to_owned(),
        (min, max) if min == max => format!("{min} bytes"),
        (min, max) => format!("{min} to {max} bytes"),
    }
}

/// When a frame is sent, in the order of the language.
pub(crate) fn sending_text(database: &Database, frame: &Frame) -> Vec<String> {
    let Sending { every, faster, on_change, on_request, apart_at_least, apart_at_most, jitter, timeout } =
        &frame.sending;
    let mut parts = Vec::new();
    if let Some(faster) = faster {
        parts.push(format!("every {} while {}", period_text(faster.every), test_text(database, frame, &faster.test)));
    }
    parts.extend(every.map(|period| {
        let otherwise = if faster.is_some() { "else " } else { "" };
        format!("{otherwise}every {}", period_text(period))
    }));
    parts.extend(on_change.then(|| "on change".to_owned()));
    parts.extend(on_request.then(|| "on request".to_owned()));
    match (apart_at_least, apart_at_most) {
        (Some(least), Some(most)) => parts.push(format!("{} to {} apart", time_text(*least), time_text(*most))),
        (Some(least), None) => parts.push(format!("at least {} apart", time_text(*least))),
        (None, Some(most)) => parts.push(format!("at most {} apart", time_text(*most))),
        (None, None) => {}
    }
    parts.extend(jitter.map(|time| format!("jitter {}", time_text(time))));
    parts.extend(timeout.map(|time| format!("lost after {}", time_text(time))));
    parts
}

fn period_text(period: Period) -> String {
    if period.shortest == period.longest {
        time_text(period.shortest)
    } else {
        format!("{} to {}", time_text(period.shortest), time_text(period.longest))
    }
}

pub(super) fn time_text(time: Nanoseconds) -> String {
    let ns = time.0;
    let units = [(1_000_000_000, "s"), (1_000_000, "ms"), (1_000, "us")];
    match units.iter().find(|(scale, _)| ns >= *scale && ns.is_multiple_of(*scale)) {
        Some((scale, unit)) => format!("{} {unit}", ns / scale),
        None => format!("{ns} ns"),
    }
}

/// `page is 2, 4..6`.
pub(super) fn test_text(database: &Database, frame: &Frame, test: &Test) -> String {
    let selector = &frame.signals[test.selector.index()];
    let words = database.words(selector);
    let values = test.values.iter().map(|span| {
        let word = words.iter().find(|word| word.values == *span).map(|word| word.word.clone());
        word.unwrap_or_else(|| span_text(*span))
    });
    format!("{} is {}", selector.label.name, values.collect::<Vec<_>>().join(", "))
}

/// Where a signal sits, as the language writes it.
pub(super) fn place_text(signal: &Signal) -> String {
    match &signal.content {
        Content::Number { field, .. } => field_text(field),
        Content::Text { bytes, .. } | Content::Bytes { bytes, .. } => byte_span_text(*bytes),
    }
}

pub(super) fn field_text(field: &Field) -> String {
    field.places().iter().map(one_place).collect::<Vec<_>>().join(" then ")
}

fn one_place(place: &Place) -> String {
    let (msb, lsb) = (place.msb(), place.lsb());
    if place.width() == 1 {
        return format!("bit {}.{}", msb.byte, msb.bit);
    }
    if msb.bit == 7 && lsb.bit == 0 {
        return if msb.byte == lsb.byte {
            format!("byte {}", msb.byte)
        } else {
            format!("bytes {}..{}", msb.byte, lsb.byte)
        };
    }
    format!("bits {}.{}..{}.{}", msb.byte, msb.bit, lsb.byte, lsb.bit)
}

fn byte_span_text(bytes: ByteSpan) -> String {
    match bytes.last {
        Some(last) if last == bytes.first => format!("byte {last}"),
        Some(last) => format!("bytes {}..{last}", bytes.first),
        None => format!("bytes {}..end", bytes.first),
    }
}

/// `13 bits Intel`: width and, where it matters, byte order.
pub(super) fn width_text(signal: &Signal) -> String {
    let Content::Number { field, kind } = &signal.content else {
        let what = if matches!(signal.content, Content::Text { .. }) { "text" } else { "bytes" };
        return if signal.size().is_some() { format!("{what} of varying length") } else { what.to_owned() };
    };
    let kind = match kind {
        NumberKind::Unsigned => "",
        NumberKind::Signed => " signed",
        NumberKind::SignMagnitude => " sign and magnitude",
        NumberKind::Float => " float",
        NumberKind::Bcd => " bcd",
    };
    field_width_text(field) + kind
}

pub(super) fn field_width_text(field: &Field) -> String {
    let mut text = counted(field.width().into(), "bit");
    let order = field.places().iter().find(|place| place.spans_bytes()).map(Place::order);
    match order {
        Some(ByteOrder::Intel) => text.push_str(" Intel"),
        Some(ByteOrder::Motorola) => text.push_str(" Motorola"),
        None => {}
    }
    text
}

/// Formula and unit.
pub(super) fn meaning_text(signal: &Signal) -> String {
    let formula = match &signal.scaling {
        Scaling::Raw => String::new(),
        Scaling::TroubleCode => return formula_text(&signal.scaling),
        scaling => format!("= {}", formula_text(scaling)),
    };
    let unit = signal.unit.as_ref().map(|unit| unit.as_str()).unwrap_or_default();
    match (formula.is_empty(), unit.is_empty()) {
        (true, false) => format!("= raw {unit}"),
        (false, false) => format!("{formula} {unit}"),
        _ => formula,
    }
}

/// The most words of a signal that stand in a legend.
const WORDS_IN_LEGEND: usize = 32;

/// The short remarks of the legend: what is not a reading, what has a word, which duty there is.
pub(super) fn short_remarks(database: &Database, frame: &Frame, signal: &Signal) -> Vec<String> {
    let words = database.words(signal).len();
    let certainty = signal.label.certainty.as_ref().map(Certainty::text);
    if words <= WORDS_IN_LEGEND {
        return remarks(database, frame, signal).into_iter().chain(certainty).collect();
    }
    let told = format!("{words} words, told where the signal is explained alone");
    [numbers(signal), vec![told]].concat().into_iter().chain(role_text(frame, &signal.role)).chain(certainty).collect()
}

fn remarks(database: &Database, frame: &Frame, signal: &Signal) -> Vec<String> {
    let mut remarks = numbers(signal);
    remarks.extend(Some(state_words_text(database, signal)).filter(|words| !words.is_empty()));
    remarks.extend(role_text(frame, &signal.role));
    remarks
}

/// What is said of a signal's numbers.
fn numbers(signal: &Signal) -> Vec<String> {
    let mut remarks = Vec::new();
    remarks.extend(signal.hexadecimal_digits().map(|_| "shown in hex".to_owned()));
    let shown = |number: Ratio| shown_text(signal, number);
    remarks.extend(signal.range.as_ref().map(|range| format!("range {}..{}", shown(range.low), shown(range.high))));
    remarks.extend(signal.absent.iter().map(|span| format!("{} no reading", span_text(*span))));
    remarks.extend(signal.fault.iter().map(|span| format!("{} sensor fault", span_text(*span))));
    remarks
}

fn role_text(frame: &Frame, role: &Role) -> Option<String> {
    match role {
        Role::Value => None,
        Role::Counter(counter) => {
            let step = if counter.step == 1 { String::new() } else { format!(" in steps of {}", counter.step) };
            Some(format!("counts {} to {}{step}", counter.low, counter.high))
        }
        Role::Checksum(checksum) => {
            let over = checksum.over.iter().map(|span| byte_span_text(*span)).collect::<Vec<_>>().join(", ");
            let bytes =
                |bytes: &[MixedByte]| bytes.iter().map(|byte| mixed_text(frame, *byte)).collect::<Vec<_>>().join(", ");
            let mixed = [("first", &checksum.first), ("then", &checksum.then)].map(|(word, mixed)| {
                if mixed.is_empty() { String::new() } else { format!(", {word} {}", bytes(mixed)) }
            });
            Some(format!("{} over {over}{}", checksum.algorithm, mixed.concat()))
        }
        Role::Protection(protection) => Some(protection_text(protection)),
    }
}

fn mixed_text(frame: &Frame, byte: MixedByte) -> String {
    match byte {
        MixedByte::Byte(byte) => format!("0x{byte:02X}"),
        MixedByte::Identifier(index) => format!("identifier byte {index}"),
        MixedByte::Signal(id) => frame.signals[id.index()].label.name.clone(),
    }
}

/// `counts for e2e profile 1 both over bytes 0..end, data id 0x123`.
fn protection_text(protection: &Protection) -> String {
    let Protection { profile, data_id, over, most_rise, .. } = protection;
    let mode = profile.mode().map_or(String::new(), |mode| format!(" {mode}"));
    let data_id = match data_id {
        DataId::One(id) => format!("data id 0x{id:X}"),
        DataId::List(ids) => {
            let ids: Vec<String> = ids.iter().map(|id| format!("0x{id:02X}")).collect();
            format!("data ids {}", ids.join(", "))
        }
    };
    let rise = if *most_rise == 1 { String::new() } else { format!(", delta up to {most_rise}") };
    let number = profile.number();
    format!("counts for e2e profile {number}{mode} over {}, {data_id}{rise}", byte_span_text(*over))
}

/// What a part of a protection's header is.
pub(super) fn part_name(part: Part) -> &'static str {
    match part {
        Part::Sum => "checksum",
        Part::Counter => "count",
        Part::Length => "length",
        Part::DataId => "data id",
    }
}

/// Everything about one signal, line by line.
pub(super) fn signal_details(database: &Database, frame: &Frame, id: SignalId) -> Vec<String> {
    let signal = &frame.signals[id.index()];
    let mut lines = vec![format!("{}: {}", place_text(signal), width_text(signal))];
    let meaning = meaning_text(signal);
    if !meaning.is_empty() {
        lines.push(meaning);
    }
    let frame_id = database.frame_named(&frame.label.name).map(|(frame_id, _)| frame_id);
    let reach = frame_id.and_then(|frame_id| reachable(database, frame_id, id));
    let shown = |number: Ratio| shown_text(signal, number);
    lines.extend(reach.map(|(low, high)| format!("can say {} to {}{}", shown(low), shown(high), unit_suffix(signal))));
    lines.extend(remarks(database, frame, signal));
    // Its own word on it stands above.
    let around = frame_id.filter(|_| signal.label.certainty.is_none()).and_then(|it| database.certainty(it, id));
    lines.extend(around.map(|certainty| match &frame.label.certainty {
        Some(_) => format!("its frame is {}", certainty.text()),
        None => format!("its words are {}", certainty.text()),
    }));
    lines
}

/// A value as the signal is shown.
fn shown_text(signal: &Signal, value: Ratio) -> String {
    match signal.hexadecimal_digits() {
        Some(digits) if value.denominator() == 1 => hexadecimal(value.numerator(), digits),
        _ => value.to_string(),
    }
}

fn unit_suffix(signal: &Signal) -> String {
    signal.unit.as_ref().map(|unit| format!(" {}", unit.as_str())).unwrap_or_default()
}

fn span_text(span: RawSpan) -> String {
    if span.first == span.last {
        raw_text(span.first)
    } else {
        format!("{}..{}", raw_text(span.first), raw_text(span.last))
    }
}

fn raw_text(value: RawValue) -> String {
    match value {
        RawValue::Number(number) => number.to_string(),
        RawValue::Bits(bits) => format!("0x{bits:X}"),
    }
}
