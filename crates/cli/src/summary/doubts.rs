//! Which of the values that were asked for rest on something that is not certain.

use wirelore_model::{Database, FrameId, Grade, SignalId};

use super::{NAMED, grouped};

/// A line with the marks and the first names, those that wait for a test first; empty where everything is certain.
pub(crate) fn doubts(database: &Database, is_wanted: impl Fn(FrameId, SignalId) -> bool) -> String {
    let mut parts = Vec::new();
    let mut named: Vec<String> = Vec::new();
    for grade in [Grade::Guessed, Grade::Likely] {
        let names = names_of(database, grade, &is_wanted);
        let mark = grade.mark().map_or_else(String::new, |mark| format!(" ({mark})"));
        if !names.is_empty() {
            parts.push(format!("{} {}{mark}", grouped(names.len() as u64), grade.words()));
        }
        named.extend(names);
    }
    if named.is_empty() {
        return String::new();
    }
    let rest = named.len().saturating_sub(NAMED);
    named.truncate(NAMED);
    if rest > 0 {
        named.push(format!("{} more", grouped(rest as u64)));
    }
    format!("signals that are not certain: {}: {}\n", parts.join(", "), named.join(", "))
}

/// The signals of a grade; those of one name on several pages once.
fn names_of(database: &Database, grade: Grade, is_wanted: &impl Fn(FrameId, SignalId) -> bool) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for (frame, id) in database.frames.iter().zip((0..).map(FrameId)) {
        for (signal, signal_id) in frame.signals.iter().zip((0..).map(SignalId)) {
            let is_of = || database.certainty(id, signal_id).is_some_and(|certainty| certainty.grade == grade);
            if is_wanted(id, signal_id) && is_of() {
                names.push(format!("{}.{}", frame.label.name, signal.label.name));
            }
        }
    }
    names.dedup();
    names
}
