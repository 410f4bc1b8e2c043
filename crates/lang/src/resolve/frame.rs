//! Frames: where they are, how they are recognised, who sends and reads them.

use wirelore_bits::ByteOrder;
use wirelore_model::{Appearance, EcuId, Frame, Identifier, NetworkId, NetworkKind, Signal, Transport};

use crate::syntax::tree::{self, OrderWord, Recognition};
use crate::{Diagnostic, FileId, Rule, Site, Spanned};

use super::contents;
use super::flat::Body;
use super::label::label;
use super::length::Bounds;
use super::messages::at;
use super::settings::{Expectation, Settings};
use super::{Resolver, lin, recognition};

/// Where a frame and its parts come from.
#[derive(Debug)]
pub(crate) struct FrameOrigin<'t> {
    pub(crate) file: FileId,
    pub(crate) tree: &'t tree::Frame<'t>,
    /// Its own network, where that is known.
    pub(crate) network: Option<NetworkId>,
    /// The readers and where they are named.
    pub(crate) readers: Vec<(EcuId, Site)>,
    /// Names of signals that are declared, but broken.
    pub(crate) broken: Vec<String>,
}

impl FrameOrigin<'_> {
    /// The place of its name.
    pub(crate) fn name(&self) -> Site {
        at(self.file, self.tree.head.name.span)
    }

    /// The place where it is said how it is recognised.
    pub(crate) fn recognition(&self) -> Site {
        let span = self.tree.recognition.as_ref().map_or(self.tree.head.name.span, |recognition| recognition.span);
        at(self.file, span)
    }
}

/// Reads what carries the frame, and says where it cannot.
fn carried(
    resolver: &mut Resolver<'_, '_>,
    file: FileId,
    tree: &tree::Frame<'_>,
    identifier: Option<&Identifier>,
) -> Option<Transport> {
    let Spanned { value: transport, span } = tree.carried?;
    if identifier.is_some_and(|identifier| !transport.carries(identifier)) {
        let (text, help) = match transport {
            Transport::J1939Tp => (
                "only parameter groups are carried by j1939_tp",
                "recognise the frame by its parameter group: `pgn 65226`",
            ),
            _ => {
                ("only frames with CAN identifiers are carried by iso_tp", "parameter groups are `carried by j1939_tp`")
            }
        };
        let message = Diagnostic::new(Rule::TransportDoesNotFit, at(file, span), text).here("does not carry it");
        resolver.messages.push(message.help(help));
        return None;
    }
    Some(transport)
}

/// Reads one frame of the catalogue.
pub(crate) fn read<'t>(resolver: &mut Resolver<'_, 't>, index: usize) -> (Frame, FrameOrigin<'t>) {
    let sourced = &resolver.catalogue.frames[index];
    let (file, item, tree) = (sourced.file, sourced.item, sourced.tree);
    let network = tree.on.as_ref().and_then(|name| resolver.names.network(file, name, resolver.messages));
    let identifier = tree.recognition.as_ref().and_then(|written| recognition::read(resolver, file, written, network));
    let kind = network.and_then(|network| resolver.catalogue.kind(network));
    let identifier = identifier.map(|(plain, sources)| (lin::with_clauses(resolver, file, tree, plain, kind), sources));
    let settings = settings(resolver, file, tree, network);
    let body = Body { file, tree: &tree.body, settings };
    // A message may be longer than a frame of its network.
    let bounds = match tree.carried {
        Some(transport) => Bounds { kind: None, longest: Some(transport.value.longest_payload()) },
        None => Bounds { kind, longest: kind.map(NetworkKind::longest_payload) },
    };
    let contents = contents::read(resolver, body, bounds, None);
    let mut frame = contents.frame;
    frame.label = label(&tree.head, &item.front);
    frame.optional = tree.optional.is_some();
    frame.carried = carried(resolver, file, tree, identifier.as_ref().map(|(identifier, _)| identifier));
    let (identifier, sources) = identifier.unzip();
    if identifier.as_ref().is_some_and(lin::is_diagnostic) {
        frame.length.get_or_insert(lin::DIAGNOSTIC_LENGTH);
    }
    if let (Some(network), Some(identifier)) = (network, identifier) {
        frame.seen_on.push(Appearance { network, identifier, via: None });
    }
    frame.senders = senders(resolver, file, &contents.senders, network);
    if frame.senders.is_empty() {
        // The source of a parameter group is who sends it.
        frame.senders = unique(sources.unwrap_or_default());
    }
    let readers: Vec<_> = contents
        .readers
        .iter()
        .filter_map(|name| Some((resolver.names.ecu(file, name, resolver.messages)?, at(file, name.span))))
        .collect();
    frame.readers = unique(readers.iter().map(|(ecu, _)| *ecu).collect());
    resolver.flat = contents.flat;
    (frame, FrameOrigin { file, tree, network, readers, broken: contents.broken })
}

/// What holds in a frame before its own statements: its network's order, or its file's, or that of parameter groups.
fn settings(resolver: &Resolver<'_, '_>, file: FileId, tree: &tree::Frame, network: Option<NetworkId>) -> Settings {
    let mut settings = resolver.catalogue.settings[file.0 as usize];
    let of_network = network.and_then(|network| {
        let network = &resolver.catalogue.networks[network.index()];
        network.tree.order.map(|word| Expectation { word: word.value, site: Some(at(network.file, word.span)) })
    });
    settings.order = of_network.or(settings.order);
    let is_group = matches!(tree.recognition.as_ref().map(|written| &written.value), Some(Recognition::Pgn { .. }));
    if settings.order.is_none() && is_group {
        settings.order = Some(Expectation { word: OrderWord::Only(ByteOrder::Intel), site: None });
    }
    settings
}

fn senders(
    resolver: &mut Resolver<'_, '_>,
    file: FileId,
    names: &[&tree::Name],
    network: Option<NetworkId>,
) -> Vec<EcuId> {
    let mut senders = Vec::with_capacity(names.len());
    for name in names {
        let Some(ecu) = resolver.names.ecu(file, name, resolver.messages) else { continue };
        if let Some(network) = network
            && !resolver.sits_on(ecu, network)
        {
            let message = resolver.not_on_network(Rule::SenderNotOnNetwork, at(file, name.span), ecu, network);
            resolver.messages.push(message);
        }
        senders.push(ecu);
    }
    unique(senders)
}

fn unique(mut ecus: Vec<EcuId>) -> Vec<EcuId> {
    if ecus.len() > 1 {
        let mut seen = rustc_hash::FxHashSet::default();
        ecus.retain(|ecu| seen.insert(*ecu));
    }
    ecus
}

/// Reads layouts that no frame uses, so that their mistakes are told too. What they say goes nowhere.
pub(crate) fn read_unused_layouts(resolver: &mut Resolver<'_, '_>) {
    let used_by_frames = resolver.used_layouts.clone();
    for (index, used) in used_by_frames.into_iter().enumerate() {
        if used {
            continue;
        }
        let layout = &resolver.catalogue.layouts[index];
        let settings = resolver.catalogue.settings[layout.file.0 as usize];
        let body = Body { file: layout.file, tree: &layout.tree.body, settings };
        resolver.flat = contents::read(resolver, body, Bounds::default(), Some(index)).flat;
    }
}

/// The signals of a frame for people who look one up by name.
pub(crate) fn names_of(signals: &[Signal]) -> impl Iterator<Item = &str> {
    signals.iter().map(|signal| signal.label.name.as_str())
}
