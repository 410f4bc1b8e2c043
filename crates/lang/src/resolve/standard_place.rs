//! `use standard NAME on NETWORK`: what a standard describes, on a network of one's own.

use rustc_hash::FxHashMap;
use wirelore_model::NetworkKind;

use super::ParsedFile;
use super::messages::{Messages, at, suggest};
use crate::syntax::tree::{Item, ItemKind, Name};
use crate::{Diagnostic, FileId, Rule};

/// A standard that is to be on a network of one's own.
#[derive(Debug)]
pub(crate) struct Placed<'t> {
    /// The file with the `use` line.
    pub(crate) file: FileId,
    /// The standard, as that line has it.
    pub(crate) standard: Name<'t>,
    /// The network.
    pub(crate) on: Name<'t>,
    /// The place of the standard's file in the list.
    pub(crate) index: usize,
}

/// Takes the standards' own networks away, and puts their frames on the ones that are named. All files have been read. Where that cannot be,
/// the standard stays on its own network, so that one mistake gives one message.
pub(crate) fn put_on_networks<'t>(files: &mut [ParsedFile<'t>], placed: &[Placed<'t>], messages: &mut Messages) {
    let own: Vec<Option<(String, Option<NetworkKind>)>> =
        placed.iter().map(|place| files[place.index].tree.items.iter().find_map(network_of)).collect();
    let all = files.iter().flat_map(|file| &file.tree.items).filter_map(network_of);
    let mut kinds: FxHashMap<String, Option<NetworkKind>> = FxHashMap::default();
    let mut names: Vec<String> = Vec::new();
    for (name, kind) in all {
        names.push(name.clone());
        kinds.entry(name).or_insert(kind);
    }
    let mut done: FxHashMap<usize, &Name<'t>> = FxHashMap::default();
    for (place, own) in placed.iter().zip(own) {
        if let Some(first) = done.get(&place.index) {
            if first.value != place.on.value {
                messages.push(already_elsewhere(place, first));
            }
            continue;
        }
        match refused(place, own.as_ref(), &kinds, &names, messages) {
            Some(message) => messages.push(message),
            None => {
                done.insert(place.index, &place.on);
                let (name, _) = own.unwrap_or_default();
                move_frames(&mut files[place.index], &name, &place.on);
            }
        }
    }
}

fn network_of(item: &Item<'_>) -> Option<(String, Option<NetworkKind>)> {
    match &item.kind {
        ItemKind::Network(network) => {
            Some((network.head.name.value.to_string(), network.kind.as_ref().map(|kind| kind.value)))
        }
        _ => None,
    }
}

/// Why a standard cannot be on a network.
fn refused(
    place: &Placed<'_>,
    own: Option<&(String, Option<NetworkKind>)>,
    kinds: &FxHashMap<String, Option<NetworkKind>>,
    names: &[String],
    messages: &mut Messages,
) -> Option<Diagnostic> {
    let Placed { file, standard, on, .. } = place;
    let site = at(*file, on.span);
    let Some((_, own_kind)) = own else {
        let text = format!("`{}` brings no network, so there is nothing to put on `{}`", standard.value, on.value);
        let message = Diagnostic::new(Rule::ClauseDoesNotFit, site, text).here("has no use here");
        return Some(message.help(format!("write `use standard {}`, and use its layouts in frames", standard.value)));
    };
    let Some(kind) = kinds.get(&*on.value) else {
        let text = format!("there is no network called `{}`", on.value);
        let message = Diagnostic::new(Rule::UnknownNetwork, site, text).here("not declared anywhere");
        let meant = messages.nearest(&on.value, names.iter().map(String::as_str));
        return Some(suggest(message, &meant));
    };
    let (Some(kind), Some(own_kind)) = (*kind, *own_kind) else { return None };
    if kind == own_kind || (kind.is_can() && own_kind.is_can()) {
        return None;
    }
    let text = format!(
        "`{}` is for networks of the kind `{}`, and `{}` is of the kind `{}`",
        standard.value,
        own_kind.keyword(),
        on.value,
        kind.keyword()
    );
    Some(Diagnostic::new(Rule::RecognitionDoesNotFit, site, text).here("another kind of network"))
}

fn already_elsewhere(place: &Placed<'_>, first: &Name<'_>) -> Diagnostic {
    let text = format!("`{}` is on `{}` already, and a standard is on one network", place.standard.value, first.value);
    Diagnostic::new(Rule::RepeatedClause, at(place.file, place.on.span), text)
        .here("another network")
        .help("describe the second one with the layouts that the standard brings")
}

fn move_frames<'t>(file: &mut ParsedFile<'t>, own: &str, on: &Name<'t>) {
    file.tree.items.retain(|item| !matches!(item.kind, ItemKind::Network(_)));
    for item in &mut file.tree.items {
        if let ItemKind::Frame(frame) = &mut item.kind
            && let Some(network) = frame.on.as_mut().filter(|network| network.value == own)
        {
            network.value = on.value.clone();
        }
    }
}
