//! All items of all files, sorted by kind: the first step, before any name is looked up.

use wirelore_model::{NetworkId, NetworkKind};

use crate::syntax::tree::{self, Integer, Item, ItemKind};
use crate::{Diagnostic, FileId, Rule};

use super::ParsedFile;
use super::messages::{Messages, at};
use super::settings::{Expectation, Settings};

/// A part of the tree and where it comes from.
#[derive(Debug)]
pub(crate) struct Sourced<'t, T> {
    pub(crate) file: FileId,
    pub(crate) item: &'t Item<'t>,
    pub(crate) tree: &'t T,
}

/// The items of all files by kind, in the order of the files.
#[derive(Debug, Default)]
pub(crate) struct Catalogue<'t> {
    pub(crate) vehicles: Vec<Sourced<'t, tree::Head<'t>>>,
    pub(crate) networks: Vec<Sourced<'t, tree::Network<'t>>>,
    pub(crate) ecus: Vec<Sourced<'t, tree::Ecu<'t>>>,
    pub(crate) wires: Vec<Sourced<'t, tree::Wire<'t>>>,
    pub(crate) states: Vec<Sourced<'t, tree::States<'t>>>,
    pub(crate) layouts: Vec<Sourced<'t, tree::Layout<'t>>>,
    pub(crate) frames: Vec<Sourced<'t, tree::Frame<'t>>>,
    pub(crate) gateways: Vec<Sourced<'t, tree::Gateway<'t>>>,
    pub(crate) schedules: Vec<Sourced<'t, tree::Schedule<'t>>>,
    /// What each file states for all of its items, by the number of the file.
    pub(crate) settings: Vec<Settings>,
}

impl<'t> Catalogue<'t> {
    pub(crate) fn of(files: &'t [ParsedFile<'t>], messages: &mut Messages) -> Self {
        let mut catalogue = Self::default();
        for parsed in files {
            let index = parsed.file.0 as usize;
            if catalogue.settings.len() <= index {
                catalogue.settings.resize(index + 1, Settings::default());
            }
            for item in &parsed.tree.items {
                catalogue.enter(parsed.file, item, messages);
            }
        }
        catalogue
    }

    /// The kind of a network, where it could be read.
    pub(crate) fn kind(&self, network: NetworkId) -> Option<NetworkKind> {
        self.networks[network.index()].tree.kind.map(|kind| kind.value)
    }

    fn enter(&mut self, file: FileId, item: &'t Item<'t>, messages: &mut Messages) {
        macro_rules! sourced {
            ($list:ident, $tree:expr) => {
                self.$list.push(Sourced { file, item, tree: $tree })
            };
        }
        let settings = &mut self.settings[file.0 as usize];
        match &item.kind {
            ItemKind::Edition(edition) => check_edition(file, edition, messages),
            ItemKind::CountingFrom(first) => {
                check_counting(file, first, messages);
                settings.counting.from_one = first.value == 1;
            }
            ItemKind::CountingBitsFromTop => settings.counting.bits_from_top = true,
            ItemKind::Order(word) => {
                settings.order = Some(Expectation { word: word.value, site: Some(at(file, word.span)) })
            }
            ItemKind::Vehicle(head) => sourced!(vehicles, head),
            ItemKind::Network(network) => sourced!(networks, network),
            ItemKind::Ecu(ecu) => sourced!(ecus, ecu),
            ItemKind::Wire(wire) => sourced!(wires, wire),
            ItemKind::States(states) => sourced!(states, states),
            ItemKind::Layout(layout) => sourced!(layouts, layout),
            ItemKind::Frame(frame) => sourced!(frames, frame),
            ItemKind::Gateway(gateway) => sourced!(gateways, gateway),
            ItemKind::Schedule(schedule) => sourced!(schedules, schedule),
            ItemKind::AllowInFile(_) | ItemKind::UseFile(_) | ItemKind::UseStandard { .. } => {}
        }
    }
}

fn check_edition(file: FileId, edition: &Integer, messages: &mut Messages) {
    if edition.value == 1 {
        return;
    }
    let message = format!("edition {} of the language is not known here", edition.value);
    messages.push(
        Diagnostic::new(Rule::UnknownEdition, at(file, edition.span), message)
            .here("only edition 1 is")
            .help("write `edition 1`, or read the file with a newer version of this program"),
    );
}

/// Says so where positions are to be counted from neither 0 nor 1.
pub(crate) fn check_counting(file: FileId, first: &Integer, messages: &mut Messages) {
    if matches!(first.value, 0 | 1) {
        return;
    }
    let message = format!("bytes and bits cannot be counted from {}", first.value);
    messages.push(
        Diagnostic::new(Rule::CountingUnknown, at(file, first.span), message)
            .here("0 or 1 is possible")
            .help("write `counting from 1` where the document calls the first byte \"byte 1\", and nothing where it calls it \"byte 0\""),
    );
}
