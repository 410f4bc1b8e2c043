//! What is declared and never used, and what is still a guess.

use rustc_hash::FxHashSet;
use wirelore_model::{EcuId, Grade, NetworkId};

use crate::resolve::Resolved;
use crate::resolve::catalogue::{Catalogue, Sourced};
use crate::resolve::messages::{Messages, at};
use crate::syntax::tree::{Head, Name};
use crate::{Diagnostic, FileId, Rule};

pub(crate) fn check(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    let mut states = Unused::new(Rule::StatesUnused, "no signal uses the states", messages);
    for (item, used) in catalogue.states.iter().zip(&resolved.used_states) {
        states.check(*used, &item.tree.head.name, item.file);
    }
    let mut layouts = Unused::new(Rule::LayoutUnused, "no frame uses the layout", messages);
    for (item, used) in catalogue.layouts.iter().zip(&resolved.used_layouts) {
        layouts.check(*used, &item.tree.head.name, item.file);
    }
    ecus(resolved, catalogue, messages);
    networks(resolved, catalogue, messages);
    guesses(catalogue, messages);
}

/// Goes through the items of one kind.
struct Unused<'m, 't> {
    rule: Rule,
    what: &'static str,
    messages: &'m mut Messages,
    names: FxHashSet<&'t str>,
}

impl<'m, 't> Unused<'m, 't> {
    fn new(rule: Rule, what: &'static str, messages: &'m mut Messages) -> Self {
        Self { rule, what, messages, names: FxHashSet::default() }
    }

    fn check(&mut self, used: bool, name: &'t Name<'t>, file: FileId) {
        // A second one with the same name has been told: whoever uses the name means one of them.
        if !self.names.insert(&name.value) || used {
            return;
        }
        let message = Diagnostic::new(self.rule, at(file, name.span), format!("{} `{}`", self.what, name.value));
        self.messages.push(message.here("declared and never used").help("use it, or take it out"));
    }
}

/// Control units that are on no network and that nothing names.
fn ecus(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    let description = &resolved.description;
    let mut named: FxHashSet<EcuId> = FxHashSet::default();
    for frame in &description.frames {
        named.extend(frame.senders.iter().chain(&frame.readers));
    }
    for wire in &description.wires {
        named.extend(wire.to.iter().chain([&wire.from]));
    }
    named.extend(description.routes.iter().map(|route| route.gateway));
    let mut unused = Unused::new(Rule::EcuUnused, "nothing refers to control unit", messages);
    for ((ecu, sourced), id) in description.ecus.iter().zip(&catalogue.ecus).zip(0..) {
        let is_used = named.contains(&EcuId(id))
            || !ecu.on.is_empty()
            || !sourced.tree.on.is_empty()
            || !sourced.tree.leads.is_empty();
        unused.check(is_used, &sourced.tree.head.name, sourced.file);
    }
}

/// Networks that nobody is on and that no frame is on.
fn networks(resolved: &Resolved<'_>, catalogue: &Catalogue<'_>, messages: &mut Messages) {
    let description = &resolved.description;
    let mut named: FxHashSet<NetworkId> = FxHashSet::default();
    named.extend(description.ecus.iter().flat_map(|ecu| &ecu.on).map(|attachment| attachment.network));
    named.extend(resolved.frames.iter().filter_map(|frame| frame.network));
    named.extend(description.schedules.iter().map(|schedule| schedule.network));
    named.extend(description.routes.iter().flat_map(|route| [route.from, route.to]));
    let mut unused = Unused::new(Rule::NetworkUnused, "no frame and no control unit is on network", messages);
    for (sourced, id) in catalogue.networks.iter().zip(0..) {
        let is_used = named.contains(&NetworkId(id));
        unused.check(is_used, &sourced.tree.head.name, sourced.file);
    }
}

fn guesses(catalogue: &Catalogue<'_>, messages: &mut Messages) {
    heads(&catalogue.vehicles, |head| head, messages);
    heads(&catalogue.networks, |network| &network.head, messages);
    heads(&catalogue.ecus, |ecu| &ecu.head, messages);
    heads(&catalogue.states, |states| &states.head, messages);
    heads(&catalogue.layouts, |layout| &layout.head, messages);
    heads(&catalogue.frames, |frame| &frame.head, messages);
    heads(&catalogue.schedules, |schedule| &schedule.head, messages);
}

fn heads<'t, T>(items: &[Sourced<'t, T>], head: impl Fn(&'t T) -> &'t Head<'t>, messages: &mut Messages) {
    items.iter().for_each(|item| guess(head(item.tree), item.file, messages));
}

/// Mentions one item that is still a guess.
pub(crate) fn guess(head: &Head, file: FileId, messages: &mut Messages) {
    let Some(certainty) = head.certainty.as_ref().filter(|certainty| certainty.value.grade == Grade::Guessed) else {
        return;
    };
    let text = format!("`{}` is still a guess", head.name.value);
    let message =
        Diagnostic::new(Rule::StillGuessed, at(file, certainty.span), text).here("waits for a test at the vehicle");
    messages.push(
        message.help(
            "when the value has followed something that was moved on purpose, write `confirmed` and what was seen",
        ),
    );
}
