//! Terminators: has a high-speed CAN network two of them?

use wirelore_model::NetworkKind;

use crate::resolve::Resolved;
use crate::resolve::catalogue::Catalogue;
use crate::resolve::messages::{Messages, at};
use crate::{Diagnostic, Rule};

/// The fault-tolerant two-wire networks of ISO 11898-3 run at up to 125 kbit/s, and every unit on them has a share of the termination.
const FASTEST_FAULT_TOLERANT: u64 = 125_000;
/// ISO 11898-2 (from memory): a resistor of 120 ohm at each end of the line.
const ENDS: usize = 2;
const OHMS: u64 = 120;

pub(crate) fn check(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    for (network, sourced) in resolved.description.networks.iter().zip(&catalogue.networks) {
        let is_high_speed = match network.kind {
            NetworkKind::Can => network.rate.is_some_and(|rate| rate.0 > FASTEST_FAULT_TOLERANT),
            NetworkKind::CanFd | NetworkKind::CanXl => true,
            _ => false,
        };
        let Some(written) = sourced.tree.wiring.terminators.as_ref().filter(|_| is_high_speed) else { continue };
        let count = written.value.len();
        if count == ENDS {
            continue;
        }
        let named = if count == 1 { "1 terminator".to_owned() } else { format!("{count} terminators") };
        let text = format!("`{}` has {named}, and a high-speed CAN network has two", network.label.name);
        let message = Diagnostic::new(Rule::TerminatorCount, at(sourced.file, written.span), text);
        // Common practice, no source: two of 120 ohm in parallel measure 60.
        messages.push(message.here("one at each end of the line").help(format!(
            "with the supply off, two of {OHMS} ohm measure {} between the wires, one {OHMS}, three {}",
            OHMS / 2,
            OHMS / 3
        )));
    }
}
