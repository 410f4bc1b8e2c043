//! From trees to a description: every name looked up, every place calculated.
//!
//! It goes in steps that only look back: all items by kind ([`catalogue`]), their names ([`names`]), the map ([`networks`]), tables of
//! [`states`], each frame with what is between its braces ([`frame`], [`contents`]), the lines of the gateways ([`routes`]), where frames
//! are seen thereby ([`reach`]), and the [`schedules`]. What is broken is said once, and left out or completed so that nothing else seems wrong.

mod area;
mod array;
pub(crate) mod budget;
pub(crate) mod catalogue;
mod checksum;
pub(crate) mod contents;
mod curve;
mod elsewhere;
pub(crate) mod flat;
mod flatten;
mod formula;
pub(crate) mod frame;
mod label;
pub(crate) mod length;
pub(crate) mod lin;
pub(crate) mod load;
mod marks;
pub(crate) mod messages;
mod mixed_in;
pub(crate) mod names;
mod networks;
mod order;
mod packets;
mod pages;
mod place;
mod protection;
pub(crate) mod raw;
mod reach;
mod recognition;
mod repeat;
mod role;
pub(crate) mod routes;
mod row_ends;
pub(crate) mod schedules;
pub(crate) mod settings;
pub(crate) mod shelf;
mod signal;
mod signals;
mod slots;
mod standard;
mod standard_place;
pub(crate) mod states;
pub(crate) mod timing;
mod unit;
mod wiring;

use rustc_hash::FxHashSet;
use wirelore_model::{Description, Ecu, EcuId, NetworkId, StateTable};

use crate::syntax::tree;
use crate::{Diagnostic, FileId, Rule, Site};

use budget::Budget;
use catalogue::Catalogue;
use flat::Flat;
use frame::FrameOrigin;
use messages::{Messages, at};
use names::Names;
use routes::{Frames, Lines};
use schedules::ScheduleOrigin;
use signals::SignalTable;
use states::Fits;

/// One file and its tree.
#[derive(Debug)]
pub(crate) struct ParsedFile<'t> {
    pub(crate) file: FileId,
    pub(crate) tree: tree::File<'t>,
}

/// What everything looks things up in, and where messages go.
#[derive(Debug)]
pub(crate) struct Resolver<'a, 't> {
    pub(crate) catalogue: &'a Catalogue<'t>,
    pub(crate) names: &'a Names<'t>,
    pub(crate) tables: &'a [StateTable],
    pub(crate) messages: &'a mut Messages,
    pub(crate) budget: Budget,
    fits: Fits,
    /// The lists of the frame that is being read.
    flat: Flat<'t>,
    table: SignalTable<'t>,
    attached: FxHashSet<(EcuId, NetworkId)>,
    /// Which layouts and tables of states something refers to.
    pub(crate) used_layouts: Vec<bool>,
    pub(crate) used_states: Vec<bool>,
}

/// A description, and where its parts come from.
#[derive(Debug)]
pub(crate) struct Resolved<'t> {
    pub(crate) description: Description,
    pub(crate) frames: Vec<FrameOrigin<'t>>,
    pub(crate) lines: Lines<'t>,
    pub(crate) schedules: Vec<ScheduleOrigin<'t>>,
    pub(crate) used_layouts: Vec<bool>,
    pub(crate) used_states: Vec<bool>,
}

/// Reads everything that the files say.
pub(crate) fn resolve<'t>(catalogue: &Catalogue<'t>, messages: &mut Messages) -> Resolved<'t> {
    let names = Names::of(catalogue, messages);
    let mut description = Description { vehicle: networks::vehicle(catalogue, messages), ..Description::default() };
    description.networks = catalogue.networks.iter().map(|network| networks::network(network, messages)).collect();
    description.ecus = catalogue.ecus.iter().map(|ecu| networks::ecu(ecu, catalogue, &names, messages)).collect();
    let attached = attachments(&description.ecus);
    wiring::read(&mut description, catalogue, &names, &attached, messages);
    description.wires = catalogue.wires.iter().filter_map(|wire| networks::wire(wire, &names, messages)).collect();
    let tables: Vec<_> = catalogue.states.iter().map(|states| states::table(states, messages)).collect();
    let mut resolver = Resolver {
        catalogue,
        names: &names,
        tables: &tables,
        messages,
        budget: Budget::new(),
        fits: Fits::default(),
        flat: Flat::default(),
        table: SignalTable::default(),
        attached,
        used_layouts: vec![false; catalogue.layouts.len()],
        used_states: vec![false; catalogue.states.len()],
    };
    let (frames, origins): (Vec<_>, Vec<_>) =
        (0..catalogue.frames.len()).map(|index| frame::read(&mut resolver, index)).unzip();
    frame::read_unused_layouts(&mut resolver);
    let (routes, lines) = Lines::read(&mut resolver, Frames { frames: &frames, origins: &origins });
    description.frames = frames;
    slots::fill_periods(&mut description);
    description.routes = routes;
    reach::follow(&mut resolver, &mut description, &lines, &origins);
    let (read, schedules) = schedules::read(&mut resolver);
    description.schedules = read;
    let (used_layouts, used_states) = (resolver.used_layouts, resolver.used_states);
    description.states = tables;
    Resolved { description, frames: origins, lines, schedules, used_layouts, used_states }
}

fn attachments(ecus: &[Ecu]) -> FxHashSet<(EcuId, NetworkId)> {
    let of = |(ecu, id): (&Ecu, u32)| {
        ecu.on.iter().map(move |attachment| (EcuId(id), attachment.network)).collect::<Vec<_>>()
    };
    ecus.iter().zip(0..).flat_map(of).collect()
}

impl Resolver<'_, '_> {
    /// Whether a control unit is on a network.
    pub(crate) fn sits_on(&self, ecu: EcuId, network: NetworkId) -> bool {
        self.attached.contains(&(ecu, network))
    }

    /// The message about a control unit that would have to be on a network.
    pub(crate) fn not_on_network(&self, rule: Rule, site: Site, ecu: EcuId, network: NetworkId) -> Diagnostic {
        not_on_network(self.catalogue, rule, site, ecu, network)
    }
}

/// The message about a control unit that would have to be on a network.
pub(crate) fn not_on_network(
    catalogue: &Catalogue<'_>,
    rule: Rule,
    site: Site,
    ecu: EcuId,
    network: NetworkId,
) -> Diagnostic {
    let (ecu, network) = (&catalogue.ecus[ecu.index()], &catalogue.networks[network.index()]);
    let (name, network_name) = (&ecu.tree.head.name, &network.tree.head.name.value);
    let on: Vec<_> = ecu.tree.on.iter().map(|network| &*network.value).chain([&**network_name]).collect();
    Diagnostic::new(rule, site, format!("control unit `{}` is not on network `{network_name}`", name.value))
        .here(format!("would have to be on `{network_name}`"))
        .remark(at(ecu.file, name.span), "declared here")
        .help(format!("if it is on that network too, declare it so: `ecu {} on {}`", name.value, on.join(", ")))
}

#[cfg(test)]
mod tests;
