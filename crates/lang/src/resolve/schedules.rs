//! Schedules: names looked up, times read. Whether the slots are long enough is for the rules.

use rustc_hash::FxHashMap;
use wirelore_model::{Nanoseconds, NetworkKind, Schedule, Slot, SlotContent};

use crate::syntax::tree;
use crate::{Diagnostic, FileId, Rule, Site};

use super::Resolver;
use super::label::label;
use super::messages::at;
use super::names::name_taken;
use super::timing::not_zero;

/// Where a schedule and its slots come from.
#[derive(Debug)]
pub(crate) struct ScheduleOrigin<'t> {
    pub(crate) file: FileId,
    pub(crate) tree: &'t tree::Schedule<'t>,
    /// One for each slot of the description.
    pub(crate) slots: Vec<&'t tree::Slot<'t>>,
}

/// Reads all schedules; those of unknown networks, or of networks that have none, are left out.
pub(crate) fn read<'t>(resolver: &mut Resolver<'_, 't>) -> (Vec<Schedule>, Vec<ScheduleOrigin<'t>>) {
    let mut taken: FxHashMap<&str, Site> = FxHashMap::default();
    let (mut schedules, mut origins) = (Vec::new(), Vec::new());
    for sourced in &resolver.catalogue.schedules {
        let (file, tree) = (sourced.file, sourced.tree);
        let name = at(file, tree.head.name.span);
        let first = *taken.entry(&tree.head.name.value).or_insert(name);
        if first != name {
            resolver.messages.push(name_taken("schedule", &tree.head.name.value, name, first));
        }
        let network = resolver.names.network(file, &tree.on, resolver.messages);
        let (slots, slot_origins): (Vec<_>, Vec<_>) =
            tree.slots.iter().filter_map(|written| Some((slot(resolver, file, written)?, written))).unzip();
        if tree.slots.is_empty() {
            let message = Diagnostic::new(Rule::MissingPart, name, "this schedule has no slot").here("nothing is sent");
            resolver.messages.push(message.help("write a slot on each line: `FRAME takes 10 ms`"));
        }
        let Some(network) = network else { continue };
        if let Some(kind) = resolver.catalogue.kind(network).filter(|kind| *kind != NetworkKind::Lin) {
            let text = format!("a `{}` network has no schedule", kind.keyword());
            let message = Diagnostic::new(Rule::ScheduleElsewhere, at(file, tree.on.span), text);
            resolver.messages.push(message.here("not LIN").help(
                "on LIN the commander asks for one frame after the other; elsewhere say of each frame when it is sent",
            ));
            continue;
        }
        let time_base = tree.time_base.and_then(|time| not_zero(&time, "time base", file, resolver.messages));
        schedules.push(Schedule {
            label: label(&tree.head, &sourced.item.front),
            network,
            time_base: time_base.map(Nanoseconds),
            jitter: tree.jitter.map(|time| Nanoseconds(time.value)),
            slots,
        });
        origins.push(ScheduleOrigin { file, tree, slots: slot_origins });
    }
    (schedules, origins)
}

/// Reads a slot; `None` where none of its frames is known.
fn slot(resolver: &mut Resolver<'_, '_>, file: FileId, written: &tree::Slot<'_>) -> Option<Slot> {
    let mut frames: Vec<_> =
        written.frames.iter().filter_map(|name| resolver.names.frame(file, name, resolver.messages)).collect();
    let mut time = |time: Option<tree::Time>, what| {
        time.and_then(|time| not_zero(&time, what, file, resolver.messages)).map(Nanoseconds)
    };
    let (takes, every) = (time(written.takes, "slot"), time(written.every, "period"));
    let content = match written.sporadic {
        Some(_) if frames.is_empty() => return None,
        Some(_) => SlotContent::Sporadic(frames),
        None => SlotContent::Frame(frames.pop()?),
    };
    Some(Slot { content, takes, every })
}
