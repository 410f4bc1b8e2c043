//! MOST rings: is the order of the units round them complete?

use std::collections::BTreeMap;

use rustc_hash::FxHashSet;
use wirelore_model::{EcuId, NetworkId, NetworkKind};

use crate::resolve::Resolved;
use crate::resolve::catalogue::Catalogue;
use crate::resolve::messages::{Messages, at};
use crate::{Diagnostic, Rule, Site};

pub(crate) fn check(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    let description = &resolved.description;
    for ((ecu, sourced), id) in description.ecus.iter().zip(&catalogue.ecus).zip(0..) {
        let Some(written) = &sourced.tree.ring_position else { continue };
        // A network that is unknown, or of a kind that is, has been told. Those that a unit leads are among those that it is on.
        let names: FxHashSet<&str> =
            sourced.tree.on.iter().chain(&sourced.tree.leads).map(|name| &*name.value).collect();
        let all_known = names.len() == ecu.on.len();
        let kinds = ecu.on.iter().map(|attachment| catalogue.kind(attachment.network));
        let is_on_ring = kinds.clone().any(|kind| kind.is_none() || kind == Some(NetworkKind::Most));
        if is_on_ring || !all_known {
            continue;
        }
        let name = &description.ecus[EcuId(id).index()].label.name;
        let message = Diagnostic::new(
            Rule::RingPosition,
            at(sourced.file, written.span),
            format!("control unit `{name}` is on no ring"),
        );
        messages.push(message.here("a place on a MOST ring").help(format!("say which: `ecu {name} on RING`")));
    }
    for (network, id) in description.networks.iter().zip(0..) {
        if network.kind == NetworkKind::Most {
            ring(NetworkId(id), resolved, catalogue, messages);
        }
    }
}

/// A unit with a place on the ring.
struct Node<'a> {
    name: &'a str,
    site: Site,
    leads: bool,
}

fn ring(network: NetworkId, resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    let description = &resolved.description;
    let name = &description.networks[network.index()].label.name;
    let mut nodes: BTreeMap<u8, Node<'_>> = BTreeMap::new();
    for (ecu, sourced) in description.ecus.iter().zip(&catalogue.ecus) {
        let here = ecu.on.iter().find(|attachment| attachment.network == network);
        let (Some(position), Some(written)) =
            (here.and_then(|attachment| attachment.ring_position), &sourced.tree.ring_position)
        else {
            continue;
        };
        let site = at(sourced.file, written.span);
        let node = Node { name: &ecu.label.name, site, leads: ecu.leads.contains(&network) };
        if let Some(first) = nodes.get(&position) {
            let text = format!("ring position {position} of `{name}` is taken by `{}`", first.name);
            let message = Diagnostic::new(Rule::RingPosition, site, text).here("the same position again");
            messages.push(
                message
                    .remark(first.site, "the first one")
                    .help("units are counted along the ring, each with a place of its own"),
            );
            continue;
        }
        nodes.insert(position, node);
    }
    leader(&nodes, name, messages);
    gap(&nodes, name, messages);
}

/// The timing master has position 0 (MOST Specification 3.0, from memory).
fn leader(nodes: &BTreeMap<u8, Node<'_>>, network: &str, messages: &mut Messages) {
    let Some((position, node)) = nodes.iter().find(|(position, node)| node.leads && **position != 0) else { return };
    let text = format!("`{}` leads `{network}` and is said to have ring position {position}", node.name);
    let message = Diagnostic::new(Rule::RingPosition, node.site, text).here("the timing master has position 0");
    messages.push(message.help("positions are counted from the unit that leads the ring"));
}

fn gap(nodes: &BTreeMap<u8, Node<'_>>, network: &str, messages: &mut Messages) {
    let Some((expected, (position, node))) = (0..).zip(nodes).find(|(expected, (position, _))| expected != *position)
    else {
        return;
    };
    let text = match position - expected {
        1 => format!("nobody has ring position {expected} of `{network}`"),
        _ => format!("nobody has ring positions {expected} to {} of `{network}`", position - 1),
    };
    let message =
        Diagnostic::new(Rule::RingGap, node.site, text).here(format!("`{}` has position {position}", node.name));
    messages.push(message.help("a ring that is open somewhere is silent: find out which unit is there"));
}
