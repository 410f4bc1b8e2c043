//! Where frames come to be seen: gateways pass on what another gateway may have passed to them.

use rustc_hash::{FxHashMap, FxHashSet};
use wirelore_bits::lin;
use wirelore_model::{
    Appearance, Description, Frame, FrameId, Identifier, NetworkId, NetworkKind, Passed, RouteId, Transport,
};

use crate::{Diagnostic, Rule};

use super::Resolver;
use super::frame::FrameOrigin;
use super::messages::at;
use super::recognition;
use super::routes::{Lines, brings_whatever_is_there};

/// The routes by where they begin.
struct Index {
    of_frame: FxHashMap<(NetworkId, FrameId), Vec<RouteId>>,
    of_all: FxHashMap<NetworkId, Vec<RouteId>>,
}

struct Reach<'a, 'b, 't> {
    description: &'a mut Description,
    lines: &'a Lines<'t>,
    index: Index,
    /// The routes that pass something on.
    used: Vec<bool>,
    known: FxHashSet<(FrameId, NetworkId, Identifier)>,
    resolver: &'a mut Resolver<'b, 't>,
}

/// Follows all routes until nothing new is seen anywhere; says which frames never come to where they are passed from.
pub(crate) fn follow<'t>(
    resolver: &mut Resolver<'_, 't>,
    description: &mut Description,
    lines: &Lines<'t>,
    origins: &[FrameOrigin<'t>],
) {
    let index = Index::of(description);
    let used = vec![false; lines.origins.len()];
    let mut reach = Reach { description, lines, index, used, known: FxHashSet::default(), resolver };
    for frame in 0..reach.description.frames.len() {
        reach.frame(FrameId(frame as u32));
    }
    let used = reach.used;
    for (index, origin) in lines.origins.iter().enumerate() {
        let Passed::Frame(frame) = description.routes[index].what else { continue };
        // A frame whose own network is unknown, or routes that are broken, have been told of: the rest would only follow from that.
        let is_told = lines.is_broken || description.frames[frame.index()].seen_on.is_empty();
        if used[index] || is_told {
            continue;
        }
        let (from, _) = origin.networks();
        let frame_origin = &origins[frame.index()];
        let text = format!(
            "frame `{}` is not seen on `{}`, so it cannot be passed on from there",
            frame_origin.tree.head.name.value, from.value
        );
        resolver.messages.push(
            Diagnostic::new(Rule::PassFromNowhere, at(origin.file, from.span), text)
                .here("never comes here")
                .remark(frame_origin.name(), "the frame")
                .help("pass it to this network first, or correct the name of the network"),
        );
    }
}

impl Index {
    fn of(description: &Description) -> Self {
        let mut index = Self { of_frame: FxHashMap::default(), of_all: FxHashMap::default() };
        for (route, id) in description.routes.iter().zip(0..) {
            match route.what {
                Passed::Frame(frame) => index.of_frame.entry((route.from, frame)).or_default().push(RouteId(id)),
                Passed::All { .. } | Passed::Identifiers { .. } => {
                    index.of_all.entry(route.from).or_default().push(RouteId(id))
                }
                Passed::Signal { .. } => {}
            }
        }
        index
    }
}

impl Reach<'_, '_, '_> {
    /// Follows one frame wherever it goes: each new appearance is looked at in turn.
    fn frame(&mut self, frame: FrameId) {
        let mut next = 0;
        while let Some(seen) = self.description.frames[frame.index()].seen_on.get(next) {
            let seen = seen.clone();
            self.known.insert((frame, seen.network, seen.identifier.clone()));
            next += 1;
            let own = self.index.of_frame.get(&(seen.network, frame)).cloned().unwrap_or_default();
            for route in own {
                self.pass_frame(frame, &seen, route);
            }
            for position in 0..self.index.of_all.get(&seen.network).map_or(0, Vec::len) {
                let route = self.index.of_all[&seen.network][position];
                self.pass_whatever(frame, &seen, route);
            }
        }
    }

    fn pass_frame(&mut self, frame: FrameId, seen: &Appearance, route: RouteId) {
        self.used[route.index()] = true;
        let to = self.description.routes[route.index()].to;
        let origin = &self.lines.origins[route.index()];
        let kind = self.kind(to);
        let told = &self.description.frames[frame.index()];
        let identifier = match origin.new_id {
            None => Some(seen.identifier.clone()),
            Some((first, extended)) => renumbered(&seen.identifier, first, extended, kind),
        };
        let Some(identifier) = identifier else {
            let text = "the run of identifiers would go beyond the largest one";
            let message = Diagnostic::new(Rule::IdTooLarge, origin.arrival(), text).here("the first of the run");
            self.resolver.messages.push(message);
            return;
        };
        let (length, longest) = (told.length.map_or(0, |length| length.max), longest(told, &identifier, kind));
        let message = if length > longest {
            let (_, to_name) = origin.networks();
            let text =
                format!("`{}` has {length} bytes, and `{}` carries at most {longest}", told.label.name, to_name.value);
            Diagnostic::new(Rule::FrameTooLong, at(origin.file, to_name.span), text)
                .here("too long to arrive here")
                .help("pass on a shorter frame, or copy its signals: `copy FRAME.SIGNAL from A to FRAME.SIGNAL on B`")
        } else if !identifier.belongs_on(kind) {
            let text = format!("a `{}` network does not have what the frame is recognised by", kind.keyword());
            Diagnostic::new(Rule::RecognitionDoesNotFit, origin.arrival(), text)
                .here("of another kind")
                .help("copy its signals into a frame of that network: `copy FRAME.SIGNAL from A to FRAME.SIGNAL on B`")
        } else if let Some(transport) = told.carried.filter(|transport| !transport.carries(&identifier)) {
            let text = format!("`{}` is carried by {}, and this is not", told.label.name, transport.words());
            Diagnostic::new(Rule::TransportDoesNotFit, origin.arrival(), text)
                .here("does not carry it")
                .help("pass it on under its own identifier, or copy its signals into a frame of that network")
        } else {
            self.add(frame, Appearance { network: to, identifier, via: Some(route) });
            return;
        };
        self.resolver.messages.push(message);
    }

    /// Passes a frame by a route that takes whatever it finds, unless the frame is there already.
    fn pass_whatever(&mut self, frame: FrameId, seen: &Appearance, route: RouteId) {
        let description = &self.description;
        let rule = &description.routes[route.index()];
        let told = &description.frames[frame.index()];
        let to = rule.to;
        if !brings_whatever_is_there(rule, seen.network) || told.seen_on.iter().any(|seen| seen.network == to) {
            return;
        }
        let length = told.length.map_or(0, |length| length.max);
        let kind = self.kind(to);
        let fits = |identifier: &Identifier| identifier.belongs_on(kind) && length <= longest(told, identifier, kind);
        let identifier = match &rule.what {
            Passed::All { except } if !except.contains(&frame) => Some(seen.identifier.clone()),
            Passed::Identifiers { first, last, extended } => common(&seen.identifier, *first, *last, *extended),
            _ => None,
        };
        if let Some(identifier) = identifier.filter(fits) {
            self.add(frame, Appearance { network: to, identifier, via: Some(route) });
        }
    }

    fn kind(&self, network: NetworkId) -> NetworkKind {
        self.description.networks[network.index()].kind
    }

    fn add(&mut self, frame: FrameId, appearance: Appearance) {
        if !self.known.insert((frame, appearance.network, appearance.identifier.clone())) {
            return;
        }
        if self.resolver.budget.pass() {
            self.description.frames[frame.index()].seen_on.push(appearance);
        } else if let Some(route) = appearance.via {
            let site = self.lines.origins[route.index()].arrival();
            let message =
                Diagnostic::new(Rule::ArrayTooLarge, site, "the gateways pass too many frames to too many networks");
            self.resolver.messages.push(message.help("no vehicle does that: look for a `pass all` too many"));
        }
    }
}

/// The most bytes that a frame can have where it is recognised like this: a message goes over in the frames that carry it.
fn longest(frame: &Frame, identifier: &Identifier, kind: NetworkKind) -> u32 {
    frame.carried.map_or_else(|| identifier.longest_payload(kind), Transport::longest_payload)
}

/// A frame's identifier where a gateway gives it a new one; a run of them keeps its length. `None` beyond the largest identifier.
fn renumbered(identifier: &Identifier, first: u32, extended: bool, kind: NetworkKind) -> Option<Identifier> {
    if kind == NetworkKind::Lin {
        return u8::try_from(first).ok().filter(|id| *id <= lin::ID_MAX && !extended).map(recognition::lin);
    }
    let length = match identifier {
        Identifier::Can { first, last, .. } => last - first,
        _ => 0,
    };
    let most = if extended { 0x1FFF_FFFF } else { 0x7FF };
    let last = first.checked_add(length).filter(|last| *last <= most)?;
    Some(Identifier::Can { first, last, extended })
}

/// The identifiers of a frame that lie in a run.
fn common(identifier: &Identifier, first: u32, last: u32, extended: bool) -> Option<Identifier> {
    match identifier {
        Identifier::Can { first: own_first, last: own_last, extended: own } if *own == extended => {
            let (first, last) = (first.max(*own_first), last.min(*own_last));
            (first <= last).then_some(Identifier::Can { first, last, extended })
        }
        Identifier::Pgn { pgn, priority, .. } if extended => {
            let is_to_destination = (pgn >> 8) & 0xFF < 240;
            let rest: u32 = if is_to_destination { 0xFFFF } else { 0xFF };
            let mut priorities = match priority {
                Some(priority) => *priority..=*priority,
                None => 0..=7,
            };
            let touches = priorities.any(|priority| {
                let low = (u32::from(priority) << 26) | (pgn << 8);
                low <= last && first <= low | rest
            });
            touches.then(|| identifier.clone())
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn can(first: u32, last: u32) -> Identifier {
        Identifier::Can { first, last, extended: false }
    }

    #[test]
    fn runs_of_identifiers_meet() {
        assert_eq!(common(&can(0x7E0, 0x7EF), 0x7E8, 0x7FF, false), Some(can(0x7E8, 0x7EF)));
        assert_eq!(common(&can(0x100, 0x100), 0x7E8, 0x7FF, false), None);
        assert_eq!(common(&can(0x100, 0x100), 0, 0x7FF, true), None, "11 bits are not 29 bits");
        let group = Identifier::Pgn { pgn: 65265, sources: vec![], priority: None };
        assert_eq!(common(&group, 0x18FE_F100, 0x18FE_F1FF, true), Some(group.clone()));
        assert_eq!(common(&group, 0x18FE_F200, 0x18FE_F2FF, true), None);
    }

    #[test]
    fn a_run_keeps_its_length() {
        assert_eq!(renumbered(&can(0x10, 0x1F), 0x7F0, false, NetworkKind::Can), Some(can(0x7F0, 0x7FF)));
        assert_eq!(renumbered(&can(0x10, 0x1F), 0x7F1, false, NetworkKind::CanFd), None);
        assert_eq!(renumbered(&can(0x10, 0x10), 0x12, false, NetworkKind::Lin), Some(recognition::lin(0x12)));
        assert_eq!(renumbered(&can(0x10, 0x10), 0x40, false, NetworkKind::Lin), None, "LIN has 64 identifiers");
    }
}
