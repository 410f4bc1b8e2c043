//! What became of every frame, for the person, on standard error.

mod doubts;
mod wire;

use std::fmt::Write;
use std::time::Duration;

use wirelore_decode::{Session, Tally};
use wirelore_model::{Database, FrameId, NetworkId, seen_text};

pub(crate) use doubts::doubts;

/// How many of a kind are named before the rest is only counted.
pub(crate) const NAMED: usize = 6;

/// The summary after a run.
pub(crate) fn text(database: &Database, session: &Session<'_>, wall: Duration) -> String {
    let tally = session.tally();
    let frames = tally.read - tally.messages - tally.further_rows;
    let rate = frames as f64 / wall.as_secs_f64().max(1e-9);
    let mut text = format!(
        "{} read in {:.3} s ({} frames/s)\n",
        counted(frames, "frame"),
        wall.as_secs_f64(),
        grouped(rate.round() as u64)
    );
    if tally.messages > 0 {
        let _ = writeln!(text, "and {} put together from them", counted(tally.messages, "longer message"));
    }
    if tally.further_rows > 0 {
        let _ = writeln!(
            text,
            "and {} of frames and messages with several elements",
            counted(tally.further_rows, "further row")
        );
    }
    for (count, what, details) in parts(database, tally) {
        let _ = writeln!(text, "{:>14}  {what}{details}", grouped(count));
    }
    push_values(&mut text, database, tally);
    push_unmatched(&mut text, database, tally);
    push_message_faults(&mut text, database, tally);
    wire::push_lin(&mut text, database, tally);
    if tally.decoded == 0 && tally.without_description > 0 {
        text.push_str("none of the identifiers is described: is this the description of that vehicle?\n");
    }
    text
}

/// The parts that every frame falls into; the ones that are always worth a line, and the others where there are some.
fn parts(database: &Database, tally: &Tally) -> Vec<(u64, &'static str, String)> {
    let none = String::new;
    let always = [
        (tally.decoded, "decoded", none()),
        (tally.without_description, "without a description", unknown(database, tally)),
        (tally.damaged, "damaged", none()),
    ];
    let where_any = [
        (tally.too_short, ["too short for what is described; what fits was decoded"; 2], none()),
        (tally.not_selected, ["without a selected signal"; 2], none()),
        (tally.carrying, ["carrying a longer message", "carrying longer messages"], none()),
        (tally.remote, ["remote frame", "remote frames"], wire::remote(database, tally)),
        (tally.error, ["error record of the recorder", "error records of the recorder"], none()),
        (
            tally.unanswered,
            ["header without an answer", "headers without an answer"],
            wire::unanswered(database, tally),
        ),
        (tally.faulty, ["damaged on the wire"; 2], wire::damaged(database, tally)),
        (tally.null, ["null frame", "null frames"], none()),
        (
            tally.wire_signals,
            ["wake-up or other signal that is no frame", "wake-ups and other signals that are no frames"],
            none(),
        ),
        (
            tally.on_unbound_channel,
            [
                "on a channel that is no network of the description",
                "on channels that are no network of the description",
            ],
            none(),
        ),
        (
            tally.left_out_by_network,
            ["on a network that was not asked for", "on networks that were not asked for"],
            none(),
        ),
        (tally.left_out_by_time, ["outside the time that was asked for"; 2], none()),
    ];
    let in_number = |(count, [one, many], details): (u64, [&'static str; 2], String)| {
        (count, if count == 1 { one } else { many }, details)
    };
    let where_any = where_any.into_iter().filter(|(count, ..)| *count > 0).map(in_number);
    always.into_iter().chain(where_any).collect()
}

fn unknown(database: &Database, tally: &Tally) -> String {
    let unknown = tally.unknown_frames();
    let several = unknown.iter().any(|frame| frame.network != unknown[0].network);
    let mut named: Vec<String> = unknown
        .iter()
        .take(NAMED)
        .map(|frame| {
            let network = &database.networks[frame.network.index()].label.name;
            let place = if several { format!(" on {network}") } else { String::new() };
            format!("{}{place} ({})", seen_text(frame.id), times(frame.count))
        })
        .collect();
    if tally.unknown_rest() > 0 {
        named.push(format!(
            "{} of identifiers beyond the first {}",
            counted(tally.unknown_rest(), "frame"),
            grouped(unknown.len() as u64)
        ));
    }
    if unknown.len() > NAMED {
        named.push(counted((unknown.len() - NAMED) as u64, "more identifier"));
    }
    if named.is_empty() { String::new() } else { format!(": {}", named.join(", ")) }
}

fn push_values(text: &mut String, database: &Database, tally: &Tally) {
    let kinds = [
        (tally.no_reading, "no reading"),
        (tally.sensor_fault, "sensor fault"),
        (tally.outside_range, "outside range"),
    ];
    let _ = write!(text, "{}", counted(tally.readings, "value"));
    for (count, kind) in kinds.into_iter().filter(|(count, _)| *count > 0) {
        let _ = write!(text, ", {} {kind}", grouped(count));
    }
    text.push('\n');
    let outside = tally.outside_ranges().into_iter().map(|(frame, signal, count)| {
        let frame = &database.frames[frame.index()];
        (format!("{}.{}", frame.label.name, frame.signals[signal.index()].label.name), count)
    });
    push_named(text, "outside range: ", outside.collect());
    push_checks(text, database, tally);
}

/// What counters and checksums say: totals, and the frames where something is wrong.
fn push_checks(text: &mut String, database: &Database, tally: &Tally) {
    let named = |faults: Vec<(NetworkId, FrameId, u64)>| {
        let name = |(network, frame, count): (NetworkId, FrameId, u64)| {
            let (network, frame) = (&database.networks[network.index()], &database.frames[frame.index()]);
            (format!("{} on {}", frame.label.name, network.label.name), count)
        };
        faults.into_iter().map(name).collect::<Vec<_>>()
    };
    let counters = &tally.counters;
    let wrong = counters.repeated + counters.jumped + counters.outside_range;
    if counters.right + wrong > 0 {
        let _ = write!(text, "counters: {} right", grouped(counters.right));
        let kinds =
            [(counters.repeated, "repeated"), (counters.jumped, "jumped"), (counters.outside_range, "not a count")];
        for (count, kind) in kinds.into_iter().filter(|(count, _)| *count > 0) {
            let _ = write!(text, ", {} {kind}", grouped(count));
        }
        text.push('\n');
        push_named(text, "  in ", named(tally.counter_faults()));
    }
    let sums = &tally.checksums;
    if sums.right + sums.wrong + sums.too_short > 0 {
        let _ = write!(text, "checksums: {} right, {} wrong", grouped(sums.right), grouped(sums.wrong));
        if sums.too_short > 0 {
            let _ = write!(text, ", {} in frames too short", grouped(sums.too_short));
        }
        text.push('\n');
        push_named(text, "  wrong in ", named(tally.wrong_checksums()));
    }
    push_protections(text, database, tally, named(tally.protection_faults()));
}

/// What end-to-end protections say: totals, the frames where something is wrong, and those that seem to be others.
fn push_protections(text: &mut String, database: &Database, tally: &Tally, faults: Vec<(String, u64)>) {
    let counts = &tally.protections;
    let kinds = [
        (counts.repeated, "repeated"),
        (counts.after_loss, "after a loss"),
        (counts.wrong_sequence, "wrong in sequence"),
        (counts.not_a_count, "not a count"),
        (counts.wrong_sum, "wrong"),
        (counts.wrong_data_id, "of another data id"),
        (counts.wrong_length, "of another length"),
        (counts.too_short, "cut off"),
    ];
    let right = counts.first + counts.right;
    if right + kinds.iter().map(|(count, _)| count).sum::<u64>() == 0 {
        return;
    }
    let _ = write!(text, "protections: {} right", grouped(right));
    for (count, kind) in kinds.into_iter().filter(|(count, _)| *count > 0) {
        let _ = write!(text, ", {} {kind}", grouped(count));
    }
    if counts.messages_lost > 0 {
        let _ = write!(text, "; {} lost", counted(counts.messages_lost, "message"));
    }
    text.push('\n');
    push_named(text, "  in ", faults);
    let name = |frame: FrameId| &database.frames[frame.index()].label.name;
    let belongings = tally.belongings().into_iter().map(|(_, frame, belongs, count)| {
        (format!("{} as data id 0x{:X} of {}", name(frame), belongs.data_id, name(belongs.frame)), count)
    });
    push_named(text, "  would be right: ", belongings.collect());
}

/// The most frequent names with their counts, and how many more there are.
fn push_named(text: &mut String, before: &str, names: Vec<(String, u64)>) {
    if names.is_empty() {
        return;
    }
    let mut parts: Vec<String> =
        names.iter().take(NAMED).map(|(name, count)| format!("{name} ({})", times(*count))).collect();
    if names.len() > NAMED {
        parts.push(format!("{} more", grouped((names.len() - NAMED) as u64)));
    }
    let _ = writeln!(text, "{before}{}", parts.join(", "));
}

fn push_unmatched(text: &mut String, database: &Database, tally: &Tally) {
    let values = tally.unmatched_values();
    for (frame, unmatched, count) in values.iter().take(NAMED) {
        let frame = &database.frames[frame.index()];
        let selector = &frame.signals[unmatched.selector.index()].label.name;
        let value = unmatched.number.map_or_else(|| format!("0x{:X}", unmatched.bits), |number| number.to_string());
        let _ = writeln!(text, "no page for {}.{selector} = {value} ({})", frame.label.name, counted(*count, "frame"));
    }
    if values.len() > NAMED {
        let more = counted((values.len() - NAMED) as u64, "more selector value");
        let _ = writeln!(text, "no page for {more}");
    }
    if tally.unmatched_rest() > 0 {
        let (frames, listed) = (counted(tally.unmatched_rest(), "frame"), grouped(values.len() as u64));
        let _ = writeln!(text, "no page in {frames} for selector values beyond the first {listed}");
    }
}

/// Longer messages that could not be used: how often, and the first ones with their place.
fn push_message_faults(text: &mut String, database: &Database, tally: &Tally) {
    let faults = tally.first_message_faults();
    if faults.is_empty() {
        return;
    }
    let count = tally.message_faults;
    let _ = writeln!(text, "{} that could not be put together:", counted(count, "longer message"));
    for fault in faults.iter().take(NAMED) {
        let network = &database.networks[fault.network.index()].label.name;
        let place = fault.place.map_or_else(|| "at the end".to_owned(), |place| place.to_string());
        let _ = writeln!(text, "  {place}: {} on {network}: {}", seen_text(fault.id), fault.what);
    }
    let shown = faults.len().min(NAMED) as u64;
    if count > shown {
        let _ = writeln!(text, "  and {} more", grouped(count - shown));
    }
}

/// `once`, `7,012 times`.
fn times(number: u64) -> String {
    if number == 1 { "once".to_owned() } else { format!("{} times", grouped(number)) }
}

/// `1 frame`, `7,012 frames`.
pub(crate) fn counted(number: u64, one: &str) -> String {
    format!("{} {one}{}", grouped(number), if number == 1 { "" } else { "s" })
}

/// A number with a comma after every three digits.
pub(crate) fn grouped(number: u64) -> String {
    let digits = number.to_string();
    let mut text = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}
