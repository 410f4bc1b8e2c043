//! The map: vehicle, networks, control units, wires.

use rustc_hash::FxHashSet;
use wirelore_model::{Attachment, BitRate, Ecu, Network, NetworkId, NetworkKind, Vehicle, Wire};

use crate::syntax::tree;
use crate::{FileId, Rule};

use super::catalogue::{Catalogue, Sourced};
use super::label::{label, note};
use super::messages::{Messages, at};
use super::names::{Names, name_taken};
use super::{elsewhere, packets, recognition, slots};

/// The vehicle; several files may name it, if they agree.
pub(crate) fn vehicle(catalogue: &Catalogue<'_>, messages: &mut Messages) -> Option<Vehicle> {
    let (first, others) = catalogue.vehicles.split_first()?;
    for other in others {
        if other.tree.name.value != first.tree.name.value {
            let site = at(other.file, other.tree.name.span);
            let message = crate::Diagnostic::new(
                Rule::NameTaken,
                site,
                format!("the vehicle is already called `{}`", first.tree.name.value),
            )
            .here("another name")
            .remark(at(first.file, first.tree.name.span), "the first one")
            .help("a description is about one vehicle: keep one name");
            messages.push(message);
        } else if other.file == first.file {
            let site = at(other.file, other.tree.name.span);
            messages.push(name_taken("vehicle", &other.tree.name.value, site, at(first.file, first.tree.name.span)));
        }
    }
    Some(Vehicle { label: label(first.tree, &first.item.front) })
}

pub(crate) fn network(sourced: &Sourced<'_, tree::Network<'_>>, messages: &mut Messages) -> Network {
    let tree = sourced.tree;
    Network {
        label: label(&tree.head, &sourced.item.front),
        // Where the kind could not be read, the one that allows most makes nothing else seem wrong.
        kind: tree.kind.map_or(NetworkKind::CanFd, |kind| kind.value),
        rate: tree.rate.map(|rate| BitRate(rate.value)),
        data_rate: tree.data_rate.map(|rate| BitRate(rate.value)),
        telegram: packets::telegram(sourced, messages),
        flexray: slots::timing(sourced, messages),
        // Which units are on it is not known yet.
        terminators: Vec::new(),
        star: None,
    }
}

pub(crate) fn ecu(
    sourced: &Sourced<'_, tree::Ecu<'_>>,
    catalogue: &Catalogue<'_>,
    names: &Names<'_>,
    messages: &mut Messages,
) -> Ecu {
    let (file, tree) = (sourced.file, sourced.tree);
    let address = tree.address.as_ref().and_then(|written| recognition::address(written, file, messages));
    let ring_position =
        tree.ring_position.as_ref().and_then(|written| elsewhere::ring_position(written, file, messages));
    let sits_on = networks(&tree.on, file, names, messages);
    let leads = networks(&tree.leads, file, names, messages);
    let mut seen = FxHashSet::default();
    let mut on = Vec::with_capacity(sits_on.len() + leads.len());
    for network in sits_on.into_iter().chain(leads.iter().copied()) {
        if seen.insert(network) {
            // Only frames of these kinds carry addresses of SAE J1939.
            let has_address = catalogue.kind(network).is_none_or(|kind| kind.is_can());
            let is_ring = catalogue.kind(network) == Some(NetworkKind::Most);
            on.push(Attachment {
                network,
                address: address.filter(|_| has_address),
                ring_position: ring_position.filter(|_| is_ring),
            });
        }
    }
    let mut seen = FxHashSet::default();
    let leads = leads.into_iter().filter(|network| seen.insert(*network)).collect();
    Ecu { label: label(&tree.head, &sourced.item.front), on, leads, optional: tree.optional.is_some() }
}

fn networks(written: &[tree::Name], file: FileId, names: &Names<'_>, messages: &mut Messages) -> Vec<NetworkId> {
    written.iter().filter_map(|name| names.network(file, name, messages)).collect()
}

/// Reads a wire; `None` where one of its ends is unknown.
pub(crate) fn wire(sourced: &Sourced<'_, tree::Wire<'_>>, names: &Names<'_>, messages: &mut Messages) -> Option<Wire> {
    let (file, tree) = (sourced.file, sourced.tree);
    let from = names.ecu(file, &tree.from, messages);
    let to: Vec<_> = tree.to.iter().filter_map(|name| names.ecu(file, name, messages)).collect();
    let what = tree.what.as_ref().map_or_else(String::new, |what| what.value.to_string());
    (!to.is_empty()).then_some(Wire { from: from?, to, what, note: note(&sourced.item.front) })
}
