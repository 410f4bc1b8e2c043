//! Stepping over a damaged place of a packet file.

use crate::flaw::{Flaw, Implausible};
use crate::frame::PlaceInLog;
use crate::report::Report;
use crate::window::Window;

/// Moves byte by byte from the damaged `place` at the reading position to the next where `is_likely_here` holds, and counts
/// what is skipped as one damage. Where nothing more is found behind a piece that reaches beyond the end, the log was cut.
#[cold]
pub(crate) fn next_likely(
    window: &mut Window,
    report: &mut Report,
    (place, what): (PlaceInLog, Implausible),
    head_bytes: usize,
    is_likely_here: impl Fn(&mut Window) -> bool,
) {
    let start = window.offset();
    window.consume(1);
    let mut until = "the end of the log";
    while window.have(head_bytes) {
        if is_likely_here(window) {
            until = "the next place that makes sense";
            break;
        }
        window.consume(1);
    }
    let found_nothing = !window.have(head_bytes);
    if found_nothing {
        window.consume(window.data().len());
    }
    if found_nothing && what.is_beyond_end() {
        report.tail_lost(place, what.to_string());
    } else {
        let skipped = window.offset() - start;
        report.damaged_at(place, &Flaw::Unreadable { what, skipped, until });
    }
}
