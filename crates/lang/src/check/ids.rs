//! Can all frames of a network be told apart?

use rustc_hash::FxHashMap;
use wirelore_model::{Identifier, NetworkId, identifier_text};

use super::{addressed, meetings};
use crate::resolve::Resolved;
use crate::resolve::messages::Messages;
use crate::{Diagnostic, Rule, Site};

/// All priorities of SAE J1939.
const PRIORITIES: u32 = 8;

/// A frame on a network.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seen<'a> {
    pub(super) name: &'a str,
    pub(super) site: Site,
}

/// A run of identifiers.
#[derive(Debug, Clone, Copy)]
struct Run<'a> {
    extended: bool,
    first: u32,
    last: u32,
    seen: Seen<'a>,
}

/// A parameter group.
#[derive(Debug, Clone, Copy)]
struct Group<'a> {
    pgn: u32,
    sources: &'a [u8],
    priority: Option<u8>,
    seen: Seen<'a>,
}

/// What is recognised on one network.
#[derive(Default)]
struct OnNetwork<'a> {
    runs: Vec<Run<'a>>,
    groups: Vec<Group<'a>>,
    /// Where a narrower recognition goes before a wider one, only those that state as much cannot be told apart.
    exact: Vec<(&'a Identifier, Seen<'a>)>,
    /// What one frame on the wire can be together with another.
    meeting: Vec<(&'a Identifier, Seen<'a>)>,
}

pub(crate) fn check(resolved: &Resolved<'_>, messages: &mut Messages) {
    let description = &resolved.description;
    let mut networks: Vec<OnNetwork<'_>> = description.networks.iter().map(|_| OnNetwork::default()).collect();
    for (frame, origin) in description.frames.iter().zip(&resolved.frames) {
        for appearance in &frame.seen_on {
            let site = appearance
                .via
                .map_or_else(|| origin.recognition(), |route| resolved.lines.origins[route.index()].arrival());
            let seen = Seen { name: &frame.label.name, site };
            let on = &mut networks[appearance.network.index()];
            match &appearance.identifier {
                Identifier::Can { first, last, extended } => {
                    on.runs.push(Run { extended: *extended, first: *first, last: *last, seen })
                }
                Identifier::Pgn { pgn, sources, priority } => {
                    on.groups.push(Group { pgn: *pgn, sources, priority: *priority, seen })
                }
                Identifier::Lin { id, .. } => {
                    let id = u32::from(*id);
                    on.runs.push(Run { extended: false, first: id, last: id, seen })
                }
                Identifier::Telegram { .. }
                | Identifier::SomeIp { .. }
                | Identifier::Port { .. }
                | Identifier::DoIp { .. } => on.exact.push((&appearance.identifier, seen)),
                Identifier::FlexRay { .. } | Identifier::Most { .. } | Identifier::Xl { .. } => {
                    on.meeting.push((&appearance.identifier, seen))
                }
            }
        }
    }
    for (on, id) in networks.into_iter().zip(0..) {
        let network = &description.networks[NetworkId(id).index()].label.name;
        let runs = runs_apart(on.runs, network, messages);
        groups_apart(&on.groups, network, messages);
        runs_and_groups(&runs, &on.groups, network, messages);
        addressed::check(&equal_ones(&on.exact, network, messages), network, messages);
        meetings::check(&on.meeting, network, messages);
    }
}

/// Sorts the runs and tells which of them overlap. Returns those that do not, sorted.
fn runs_apart<'a>(mut runs: Vec<Run<'a>>, network: &str, messages: &mut Messages) -> Vec<Run<'a>> {
    runs.sort_by_key(|run| (run.extended, run.first, run.last, run.seen.site));
    let mut apart: Vec<Run<'a>> = Vec::with_capacity(runs.len());
    for run in runs {
        match apart.last_mut() {
            Some(widest) if widest.extended == run.extended && run.first <= widest.last => {
                say(run.seen, widest.seen, &format!("{:#X}", run.first), network, messages);
                if run.last > widest.last {
                    // What is left of it is still to be compared with the next ones.
                    let rest = Run { first: widest.last + 1, ..run };
                    apart.push(rest);
                }
            }
            _ => apart.push(run),
        }
    }
    apart
}

/// Tells which frames are recognised by the same. Returns the first of each.
fn equal_ones<'a>(
    exact: &[(&'a Identifier, Seen<'a>)],
    network: &str,
    messages: &mut Messages,
) -> Vec<(&'a Identifier, Seen<'a>)> {
    let mut taken: FxHashMap<&Identifier, Seen<'_>> = FxHashMap::default();
    let mut firsts = Vec::with_capacity(exact.len());
    for &(identifier, seen) in exact {
        match taken.get(identifier) {
            Some(&earlier) => say(seen, earlier, &identifier_text(identifier), network, messages),
            None => {
                taken.insert(identifier, seen);
                firsts.push((identifier, seen));
            }
        }
    }
    firsts
}

fn groups_apart(groups: &[Group<'_>], network: &str, messages: &mut Messages) {
    let mut by_pgn: FxHashMap<u32, Vec<usize>> = FxHashMap::default();
    for (index, group) in groups.iter().enumerate() {
        by_pgn.entry(group.pgn).or_default().push(index);
    }
    for (index, group) in groups.iter().enumerate() {
        let members = &by_pgn[&group.pgn];
        // Each number is dealt with once, where its first group stands.
        if members.len() > 1 && members[0] == index {
            senders_apart(groups, members, network, messages);
        }
    }
}

/// Groups of one number: no source and priority may belong to two of them.
fn senders_apart(groups: &[Group<'_>], members: &[usize], network: &str, messages: &mut Messages) {
    let mut owners: Vec<Option<usize>> = vec![None; (PRIORITIES * 256) as usize];
    for &index in members {
        let group = &groups[index];
        let mut told = None;
        for priority in priorities(group) {
            let row = &mut owners[(priority * 256) as usize..][..256];
            let mut claim = |source: usize| match row[source] {
                Some(owner) if owner != index => told = told.or(Some(owner)),
                _ => row[source] = Some(index),
            };
            if group.sources.is_empty() {
                (0..256).for_each(&mut claim);
            } else {
                group.sources.iter().for_each(|source| claim(usize::from(*source)));
            }
        }
        if let Some(owner) = told {
            say(group.seen, groups[owner].seen, &format!("parameter group {}", group.pgn), network, messages);
        }
    }
}

fn priorities(group: &Group<'_>) -> std::ops::Range<u32> {
    match group.priority {
        Some(priority) => u32::from(priority)..u32::from(priority) + 1,
        None => 0..PRIORITIES,
    }
}

/// Compares parameter groups with plain identifiers of 29 bits: `runs` are sorted and do not overlap.
fn runs_and_groups(runs: &[Run<'_>], groups: &[Group<'_>], network: &str, messages: &mut Messages) {
    let extended = &runs[runs.partition_point(|run| !run.extended)..];
    for group in groups {
        let is_to_destination = (group.pgn >> 8) & 0xFF < 240;
        let rest: u32 = if is_to_destination { 0xFFFF } else { 0xFF };
        let clash = priorities(group).find_map(|priority| {
            let low = (priority << 26) | (group.pgn << 8);
            let high = low | rest;
            let from = extended.partition_point(|run| run.last < low);
            extended[from..]
                .iter()
                .take_while(|run| run.first <= high)
                .find_map(|run| Some((run, first_of(group, run.first.max(low), run.last.min(high))?)))
        });
        if let Some((run, id)) = clash {
            say(group.seen, run.seen, &format!("{id:#X} (parameter group {})", group.pgn), network, messages);
        }
    }
}

/// The first of some identifiers that is from a source of the group: the source is the lowest byte.
fn first_of(group: &Group<'_>, first: u32, last: u32) -> Option<u32> {
    if group.sources.is_empty() {
        return Some(first);
    }
    let from = |source: &u8| {
        let id = (first & !0xFF) | u32::from(*source);
        if id < first { id + 0x100 } else { id }
    };
    group.sources.iter().map(from).filter(|id| *id <= last).min()
}

pub(super) fn say(one: Seen<'_>, other: Seen<'_>, what: &str, network: &str, messages: &mut Messages) {
    let (later, earlier) = if one.site < other.site { (other, one) } else { (one, other) };
    messages.push(
        Diagnostic::new(
            Rule::IdTaken,
            later.site,
            format!("{what} on `{network}` belongs to two frames: `{}` and `{}`", earlier.name, later.name),
        )
        .here(format!("`{}` cannot be told from `{}`", later.name, earlier.name))
        .remark(earlier.site, format!("`{}`", earlier.name))
        .help("correct one identifier; where one frame carries several meanings, describe them as pages with `when`"),
    );
}
