//! The part of the summary about the wire itself: frames that were asked for, that nobody answered, damaged ones, checksums and sleep of LIN.

use std::fmt::Write;

use wirelore_decode::Tally;
use wirelore_log::Faults;
use wirelore_model::{Database, Frame, Identifier, NetworkId, SeenId, seen_text};

use super::{NAMED, counted, grouped, push_named, times};

/// Who should have answered.
pub(super) fn unanswered(database: &Database, tally: &Tally) -> String {
    let headers = tally.lin.unanswered();
    let several = headers.iter().any(|header| header.0 != headers[0].0);
    let named = headers.iter().map(|&(network, id, count)| {
        let who = frame_of(database, network, id).map_or_else(String::new, |frame| {
            let senders: Vec<&str> =
                frame.senders.iter().map(|ecu| database.ecus[ecu.index()].label.name.as_str()).collect();
            match (is_event(frame), senders.is_empty()) {
                (true, _) => format!(" {}, event-triggered", frame.label.name),
                (false, true) => format!(" {}", frame.label.name),
                (false, false) => format!(" {} of {}", frame.label.name, senders.join(", ")),
            }
        });
        format!("{}{who}{} ({})", seen_text(id), on(database, network, several), times(count))
    });
    listed(named.collect())
}

/// What remote frames asked for.
pub(super) fn remote(database: &Database, tally: &Tally) -> String {
    let frames = tally.remote_frames();
    let several = frames.iter().any(|frame| frame.0 != frames[0].0);
    let named = frames.iter().map(|&(network, id, count)| {
        let name = frame_of(database, network, id).map_or_else(String::new, |frame| format!(" {}", frame.label.name));
        format!("{}{name}{} ({})", seen_text(id), on(database, network, several), times(count))
    });
    listed(named.collect())
}

/// Which frames were damaged, and how.
pub(super) fn damaged(database: &Database, tally: &Tally) -> String {
    let frames = tally.damaged_frames();
    let several = frames.iter().any(|frame| frame.0 != frames[0].0);
    let named = frames.iter().map(|&(network, id, faults, count)| {
        let name = frame_of(database, network, id).map_or_else(String::new, |frame| format!(" {}", frame.label.name));
        // A header of LIN that broke off before its identifier has none to show.
        let is_nameless = id == SeenId::Lin(0) && faults.contains(Faults::IDENTIFIER);
        let shown = if is_nameless { "no identifier".to_owned() } else { format!("{}{name}", seen_text(id)) };
        let others = faults.names().filter(|name| !is_nameless || *name != "identifier");
        let faults: String = others.map(|name| format!(", {name}")).collect();
        format!("{shown}{}{faults} ({})", on(database, network, several), times(count))
    });
    listed(named.collect())
}

/// Checksums of LIN, and its sleep.
pub(super) fn push_lin(text: &mut String, database: &Database, tally: &Tally) {
    let lin = &tally.lin;
    if lin.right_checksums + lin.other_checksums > 0 {
        let _ = write!(text, "LIN checksums: {} right", grouped(lin.right_checksums));
        if lin.other_checksums > 0 {
            let _ = write!(text, ", {} of the other kind", grouped(lin.other_checksums));
        }
        text.push('\n');
        let named = lin.other_kinds().into_iter().map(|(network, id, count)| {
            let frame = &database.frames[id.index()];
            let kind = frame.seen_on.iter().find_map(|seen| match &seen.identifier {
                Identifier::Lin { checksum, .. } if seen.network == network => Some(checksum.word()),
                _ => None,
            });
            let described = kind.map_or_else(String::new, |kind| format!(", described as {kind}"));
            (format!("{}{}{described}", frame.label.name, on(database, network, true)), count)
        });
        push_named(text, "  the other kind in ", named.collect());
    }
    let told: Vec<String> = [(lin.sleep_requests, "go-to-sleep request"), (lin.wake_ups, "wake-up")]
        .into_iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, what)| counted(count, what))
        .collect();
    if !told.is_empty() {
        let _ = writeln!(text, "LIN: {}", told.join(", "));
    }
}

/// ` on seat`, where there are several networks to be told apart.
fn on(database: &Database, network: NetworkId, several: bool) -> String {
    if several { format!(" on {}", database.networks[network.index()].label.name) } else { String::new() }
}

fn frame_of(database: &Database, network: NetworkId, id: SeenId) -> Option<&Frame> {
    let is_it =
        |frame: &&Frame| frame.seen_on.iter().any(|seen| seen.network == network && seen.identifier.matches(id, &[]));
    database.frames.iter().find(is_it)
}

fn is_event(frame: &Frame) -> bool {
    matches!(&frame.seen_on[0].identifier, Identifier::Lin { stands_for, .. } if !stands_for.is_empty())
}

fn listed(mut named: Vec<String>) -> String {
    if named.len() > NAMED {
        let more = named.len() - NAMED;
        named.truncate(NAMED);
        named.push(format!("{} more", grouped(more as u64)));
    }
    if named.is_empty() { String::new() } else { format!(": {}", named.join(", ")) }
}
