//! LIN networks: who leads them, how long their diagnostic frames are. What event-triggered frames can stand for is looked at next door.

use rustc_hash::FxHashMap;
use wirelore_model::{Frame, Identifier, LengthRange, NetworkId, NetworkKind};

use super::events;
use crate::resolve::Resolved;
use crate::resolve::catalogue::Catalogue;
use crate::resolve::frame::FrameOrigin;
use crate::resolve::lin::{DIAGNOSTIC_LENGTH, is_diagnostic};
use crate::resolve::messages::{Messages, at};
use crate::{Diagnostic, Rule, Site};

pub(crate) fn check(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    commanders(resolved, catalogue, messages);
    for (frame, origin) in resolved.description.frames.iter().zip(&resolved.frames) {
        let Some(own) = frame.seen_on.first() else { continue };
        diagnostic_length(frame, &own.identifier, origin, messages);
        if let Identifier::Lin { checksum, stands_for, .. } = &own.identifier
            && !stands_for.is_empty()
        {
            events::check(resolved, (frame, origin), (own.network, *checksum), stands_for, messages);
        }
    }
}

/// A LIN network has one commander.
fn commanders(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    let is_lin = |network: NetworkId| catalogue.kind(network) == Some(NetworkKind::Lin);
    let mut first_of: FxHashMap<NetworkId, (&str, Site)> = FxHashMap::default();
    for (ecu, sourced) in resolved.description.ecus.iter().zip(&catalogue.ecus) {
        for &network in ecu.leads.iter().filter(|network| is_lin(**network)) {
            let name = &*catalogue.networks[network.index()].tree.head.name.value;
            let word = sourced.tree.leads.iter().find(|word| word.value == name);
            let site = at(sourced.file, word.map_or(sourced.tree.head.name.span, |word| word.span));
            let (first, first_site) = *first_of.entry(network).or_insert((&ecu.label.name, site));
            if first_site == site {
                continue;
            }
            let text = format!("`{name}` is led by two control units: `{first}` and `{}`", ecu.label.name);
            messages.push(
                Diagnostic::new(Rule::TwoCommanders, site, text)
                    .here("the second commander")
                    .remark(first_site, "the first one")
                    .help(format!(
                        "one unit alone sends the headers of a LIN network; for the others write `on {name}`"
                    )),
            );
        }
    }
    for (sourced, id) in catalogue.networks.iter().zip((0..).map(NetworkId)) {
        let is_used = || {
            resolved.frames.iter().any(|frame| frame.network == Some(id))
                || resolved.description.schedules.iter().any(|schedule| schedule.network == id)
        };
        if !is_lin(id) || first_of.contains_key(&id) || !is_used() {
            continue;
        }
        let name = &sourced.tree.head.name;
        let text = format!("nobody leads the LIN network `{}`", name.value);
        messages.push(
            Diagnostic::new(Rule::NoCommander, at(sourced.file, name.span), text)
                .here("who sends its headers?")
                .help(format!("say which control unit is its commander: `ecu NAME leads {}`", name.value)),
        );
    }
}

fn diagnostic_length(frame: &Frame, identifier: &Identifier, origin: &FrameOrigin<'_>, messages: &mut Messages) {
    let Some(length) = frame.length.filter(|length| is_diagnostic(identifier) && *length != DIAGNOSTIC_LENGTH) else {
        return;
    };
    let text = format!("`{}` is a frame of diagnostics and has 8 bytes, not {}", frame.label.name, in_words(length));
    messages.push(
        Diagnostic::new(Rule::DiagnosticLength, origin.recognition(), text)
            .here("0x3C and 0x3D are for diagnostics")
            .help("take the `length` out, or write `length 8`; bytes that say nothing are sent as FF"),
    );
}

pub(super) fn in_words(length: LengthRange) -> String {
    if length.min == length.max { length.max.to_string() } else { format!("{} to {}", length.min, length.max) }
}
