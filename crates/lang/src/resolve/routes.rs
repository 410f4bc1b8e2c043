//! Gateways: what they pass on, line by line. Where frames come to be seen thereby is worked out next door.

use wirelore_model::{EcuId, Frame, FrameId, Nanoseconds, NetworkId, Pace, Passed, Route, SignalId};

use crate::syntax::tree::{self, Name};
use crate::{Diagnostic, FileId, Rule, Site, Span};

use super::contents::Contents;
use super::frame::{FrameOrigin, names_of};
use super::label::note;
use super::messages::{at, suggest};
use super::recognition::can_identifiers;
use super::{Resolver, timing};

/// Where a route comes from.
#[derive(Debug)]
pub(crate) struct RouteOrigin<'t> {
    pub(crate) file: FileId,
    pub(crate) tree: &'t tree::Route<'t>,
    /// The identifier that a frame gets on the other network: number and `extended`.
    pub(crate) new_id: Option<(u32, bool)>,
}

impl RouteOrigin<'_> {
    /// The place to point at when it is about what arrives on the other network.
    pub(crate) fn arrival(&self) -> Site {
        let span = match &self.tree.what {
            tree::Passed::Frame { new_id: Some((id, _)), .. } => id.span,
            tree::Passed::Frame { frame, .. } => frame.span,
            _ => self.tree.span,
        };
        at(self.file, span)
    }

    /// Its words `from A` and `to B`: the names of the two networks.
    pub(crate) fn networks(&self) -> (&Name<'_>, &Name<'_>) {
        match &self.tree.what {
            tree::Passed::Frame { from, to, .. }
            | tree::Passed::Ids { from, to, .. }
            | tree::Passed::All { from, to, .. }
            | tree::Passed::Signal { from, to, .. } => (from, to),
        }
    }
}

/// What the frames are, for the lines that name one.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Frames<'a, 't> {
    pub(crate) frames: &'a [Frame],
    pub(crate) origins: &'a [FrameOrigin<'t>],
}

/// The lines of all gateways.
#[derive(Debug, Default)]
pub(crate) struct Lines<'t> {
    /// One for each route of the description.
    pub(crate) origins: Vec<RouteOrigin<'t>>,
    /// A line is broken, and messages say so: what it would have brought where is not known.
    pub(crate) is_broken: bool,
}

impl<'t> Lines<'t> {
    /// Reads all lines; the broken ones are left out.
    pub(crate) fn read(resolver: &mut Resolver<'_, 't>, frames: Frames<'_, 't>) -> (Vec<Route>, Self) {
        let mut routes = Vec::new();
        let mut lines = Self::default();
        for gateway in &resolver.catalogue.gateways {
            let ecu = resolver.names.ecu(gateway.file, &gateway.tree.ecu, resolver.messages);
            for line in &gateway.tree.routes {
                let origin = RouteOrigin { file: gateway.file, tree: line, new_id: None };
                match route(resolver, frames, origin, ecu) {
                    Some((route, origin)) => {
                        routes.push(route);
                        lines.origins.push(origin);
                    }
                    None => lines.is_broken = true,
                }
            }
        }
        (routes, lines)
    }
}

fn route<'t>(
    resolver: &mut Resolver<'_, 't>,
    frames: Frames<'_, 't>,
    mut origin: RouteOrigin<'t>,
    gateway: Option<EcuId>,
) -> Option<(Route, RouteOrigin<'t>)> {
    let file = origin.file;
    let (from_name, to_name) = origin.networks();
    let from = resolver.names.network(file, from_name, resolver.messages);
    let to = resolver.names.network(file, to_name, resolver.messages);
    let what = passed(resolver, frames, &mut origin);
    let pace = pace(resolver, &origin);
    let within = origin.tree.within.map(|time| Nanoseconds(time.value));
    let route = Route {
        gateway: gateway?,
        what: what?,
        from: from?,
        to: to?,
        pace: pace?,
        within,
        note: note(&origin.tree.front),
    };
    let is_sound = check_ends(resolver, &route, &origin);
    is_sound.then_some((route, origin))
}

fn pace(resolver: &mut Resolver<'_, '_>, origin: &RouteOrigin<'_>) -> Option<Pace> {
    let Some(written) = &origin.tree.pace else { return Some(Pace::Each) };
    match written.value {
        tree::Pace::Every(time) => {
            timing::not_zero(&crate::Spanned::new(time, written.span), "period", origin.file, resolver.messages)
                .map(|time| Pace::Every(Nanoseconds(time)))
        }
        tree::Pace::Nth(0) => {
            let message =
                Diagnostic::new(Rule::EveryZero, at(origin.file, written.span), "there is no 0th frame to pass on")
                    .here("0");
            resolver.messages.push(message.help("write `every 10th` to pass on one frame of ten"));
            None
        }
        tree::Pace::Nth(1) => Some(Pace::Each),
        tree::Pace::Nth(count) => Some(Pace::Nth(count)),
    }
}

/// Checks a route's networks: two different ones, the gateway on both, of kinds that can carry what is passed.
fn check_ends(resolver: &mut Resolver<'_, '_>, route: &Route, origin: &RouteOrigin<'_>) -> bool {
    let (from_name, to_name) = origin.networks();
    let file = origin.file;
    if route.from == route.to && !matches!(route.what, Passed::Signal { .. }) {
        let text = format!("this passes from `{}` to the same network", from_name.value);
        let message = Diagnostic::new(Rule::PassToItself, at(file, to_name.span), text).here("the same again");
        resolver.messages.push(
            message
                .remark(at(file, from_name.span), "from here")
                .help("name the network on the other side of the gateway"),
        );
        return false;
    }
    let mut is_sound = true;
    for (network, name) in [(route.from, from_name), (route.to, to_name)] {
        let other_kind = resolver.catalogue.kind(network).filter(|kind| !kind.is_can());
        if let (Some(kind), Passed::Identifiers { .. }) = (other_kind, &route.what) {
            let text = format!("`{}` networks have no CAN identifiers", kind.keyword());
            let message = Diagnostic::new(Rule::RecognitionDoesNotFit, at(file, name.span), text);
            resolver.messages.push(message.here("none here").help("name the frames that are passed, or their signals"));
            is_sound = false;
        } else if !resolver.sits_on(route.gateway, network) {
            let message =
                resolver.not_on_network(Rule::PassWithoutGateway, at(file, name.span), route.gateway, network);
            resolver.messages.push(message.help("a gateway can only pass between networks that it is on"));
            is_sound = false;
        }
    }
    is_sound
}

fn passed(resolver: &mut Resolver<'_, '_>, frames: Frames<'_, '_>, origin: &mut RouteOrigin<'_>) -> Option<Passed> {
    let file = origin.file;
    match &origin.tree.what {
        tree::Passed::Frame { frame, new_id, .. } => {
            let id = resolver.names.frame(file, frame, resolver.messages)?;
            if let Some((number, extended)) = new_id {
                origin.new_id = Some(new_identifier(resolver, file, number, *extended)?);
            }
            Some(Passed::Frame(id))
        }
        tree::Passed::Ids { ids, extended, .. } => {
            let (first, last, extended) = can_identifiers(ids, *extended, file, resolver.messages)?;
            Some(Passed::Identifiers { first, last, extended })
        }
        tree::Passed::All { except, .. } => {
            let except: Vec<_> =
                except.iter().map(|name| resolver.names.frame(file, name, resolver.messages)).collect();
            Some(Passed::All { except: except.into_iter().collect::<Option<_>>()? })
        }
        tree::Passed::Signal { source, target, .. } => {
            let source = signal(resolver, frames, file, source);
            let target = signal(resolver, frames, file, target);
            let ((from_frame, from_signal), (to_frame, to_signal)) = (source?, target?);
            Some(Passed::Signal { from_frame, from_signal, to_frame, to_signal })
        }
    }
}

fn new_identifier(
    resolver: &mut Resolver<'_, '_>,
    file: FileId,
    number: &tree::Integer,
    extended: Option<Span>,
) -> Option<(u32, bool)> {
    let range = tree::RawRange { first: *number, last: *number, span: number.span };
    can_identifiers(&range, extended, file, resolver.messages).map(|(id, _, extended)| (id, extended))
}

/// A signal by its frame and its own name.
fn signal(
    resolver: &mut Resolver<'_, '_>,
    frames: Frames<'_, '_>,
    file: FileId,
    (frame, name): &(Name, Name),
) -> Option<(FrameId, SignalId)> {
    let id = resolver.names.frame(file, frame, resolver.messages)?;
    let (signals, origin) = (&frames.frames[id.index()].signals, &frames.origins[id.index()]);
    if let Some(found) = Contents::signal_named(signals, &origin.broken, &name.value) {
        return found.map(|signal| (id, signal));
    }
    let text = format!("frame `{}` has no signal called `{}`", frame.value, name.value);
    let message = Diagnostic::new(Rule::UnknownSignal, at(file, name.span), text)
        .here("not declared there")
        .remark(origin.name(), "the frame");
    let meant = resolver.messages.nearest(&name.value, names_of(signals));
    resolver.messages.push(suggest(message, &meant));
    None
}

/// Whether a route is one that names the networks only, so that it brings over whatever is there.
pub(crate) fn brings_whatever_is_there(route: &Route, network: NetworkId) -> bool {
    route.from == network && matches!(route.what, Passed::All { .. } | Passed::Identifiers { .. })
}
