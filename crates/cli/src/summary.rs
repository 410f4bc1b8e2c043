//! What became of every frame, for the person, on standard error.

use std::fmt::Write;
use std::time::Duration;

use wirelore_decode::{Session, Tally};
use wirelore_model::Database;

/// How many of a kind are named before the rest is only counted.
const NAMED: usize = 6;

/// The summary after a run.
pub(crate) fn text(database: &Database, session: &Session<'_>, wall: Duration) -> String {
    let tally = session.tally();
    let rate = tally.read as f64 / wall.as_secs_f64().max(1e-9);
    let mut text = format!(
        "{} read in {:.3} s ({} frames/s)\n",
        counted(tally.read, "frame"),
        wall.as_secs_f64(),
        grouped(rate.round() as u64)
    );
    for (count, what, details) in parts(database, tally) {
        let _ = writeln!(text, "{:>14}  {what}{details}", grouped(count));
    }
    push_values(&mut text, tally);
    push_unmatched(&mut text, database, tally);
    text
}

/// The parts that every frame falls into; the ones that are always worth a line, and the others where there are some.
fn parts(database: &Database, tally: &Tally) -> Vec<(u64, &'static str, String)> {
    let none = String::new;
    let always = [
        (tally.decoded, "decoded", none()),
        (tally.without_description, "without a description", unknown(database, tally)),
        (tally.too_short, "too short for what is described; what fits was decoded", none()),
        (tally.damaged, "damaged", none()),
    ];
    let where_any = [
        (tally.not_selected, "without a selected signal", none()),
        (tally.remote, "remote frames", none()),
        (tally.error, "error records of the recorder", none()),
        (tally.xl, "CAN XL frames, which are not read", none()),
        (tally.on_unbound_channel, "on channels that are no network of the description", none()),
        (tally.left_out_by_network, "on networks that were not asked for", none()),
        (tally.left_out_by_time, "outside the time that was asked for", none()),
    ];
    always.into_iter().chain(where_any.into_iter().filter(|(count, ..)| *count > 0)).collect()
}

fn unknown(database: &Database, tally: &Tally) -> String {
    let unknown = tally.unknown_frames();
    let several = unknown.iter().any(|frame| frame.network != unknown[0].network);
    let mut named: Vec<String> = unknown
        .iter()
        .take(NAMED)
        .map(|frame| {
            let digits = if frame.extended { 8 } else { 3 };
            let network = &database.networks[frame.network.index()].label.name;
            let place = if several { format!(" on {network}") } else { String::new() };
            format!("0x{:0digits$X}{place} ({})", frame.id, times(frame.count))
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
        named.push(format!("{} more identifiers", grouped((unknown.len() - NAMED) as u64)));
    }
    if named.is_empty() { String::new() } else { format!(": {}", named.join(", ")) }
}

fn push_values(text: &mut String, tally: &Tally) {
    let _ = writeln!(text, "{}", counted(tally.readings, "value"));
    let counters = &tally.counters;
    let counts = counters.right + counters.repeated + counters.jumped + counters.outside_range;
    if counts > 0 {
        let _ = writeln!(
            text,
            "counters: {} right, {} repeated, {} jumped, {} not a count",
            grouped(counters.right),
            grouped(counters.repeated),
            grouped(counters.jumped),
            grouped(counters.outside_range)
        );
    }
    let sums = &tally.checksums;
    if sums.right + sums.wrong + sums.too_short > 0 {
        let _ = writeln!(
            text,
            "checksums: {} right, {} wrong, {} in frames too short",
            grouped(sums.right),
            grouped(sums.wrong),
            grouped(sums.too_short)
        );
    }
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
        let _ = writeln!(text, "no page for {} more selector values", grouped((values.len() - NAMED) as u64));
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
