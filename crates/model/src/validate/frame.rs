//! Checks of frames: where they are seen, when they are sent, their pages. Their signals are checked next door.

use std::collections::HashSet;

use wirelore_bits::Encoding;
use wirelore_bits::lin::{self, LinChecksum};

use super::flaw::{At, Checked, Flaw, InvalidDescription};
use super::general::{at_most, frame_exists, identifiers, not_zero, plain_name, refers};
use super::pages::{self, Tree};
use super::{raw, rows, signal};
use crate::{
    Appearance, Description, FLEXRAY_REPETITIONS, Frame, FrameId, Identifier, Page, PageId, Passed, Period, Sending,
    Signal, SignalId, StatesId, Test,
};

/// The checks of a description's frames.
pub(crate) struct FrameChecks<'a> {
    /// Everything but the frames.
    description: &'a Description,
    fitting: FittingTables,
}

impl<'a> FrameChecks<'a> {
    pub(crate) fn of(description: &'a Description) -> Self {
        Self { description, fitting: FittingTables::default() }
    }

    /// Checks the frame that has, or will have, this place in the list.
    pub(crate) fn check(&mut self, frame: &Frame, id: FrameId) -> Result<(), InvalidDescription> {
        let name = || format!("frame `{}`", frame.label.name);
        let longest = head(self.description, frame, id).at(name)?;
        let page_name = |page: usize| format!("{}, page number {page} (counted from 0)", name());
        let tree = Tree::of(&frame.pages).map_err(|(page, flaw)| InvalidDescription::new(page_name(page), flaw))?;
        pages::check_switches(&frame.pages).map_err(|(page, flaw)| InvalidDescription::new(page_name(page), flaw))?;
        let context = FrameContext { description: self.description, frame, tree: &tree };
        for (index, page) in frame.pages.iter().enumerate() {
            context.page(page, longest).at(|| page_name(index))?;
        }
        context.sending(&frame.sending).at(name)?;
        let limit = frame.length.map_or(longest, |length| length.max);
        let limits = pages::limits(&frame.pages, limit);
        for (index, (page, limit)) in frame.pages.iter().zip(&limits).enumerate() {
            pages::element(page.element, *limit).at(|| page_name(index))?;
        }
        signal::check_all(&context, limit, &mut self.fitting)?;
        rows::check(frame, &limits).map_err(|(page, flaw)| InvalidDescription::new(page_name(page), flaw))?;
        let mut fields = frame.unknown.iter().chain(&frame.unused);
        fields
            .try_for_each(|field| inside(field.needed_bytes(), limit))
            .at(|| format!("{}, unknown or unused bits", name()))?;
        Ok(())
    }
}

/// Which tables of state words have been found to fit which numbers, so that a table is read once for each sort of signal.
pub(super) type FittingTables = HashSet<(StatesId, Encoding)>;

/// A frame with what is needed to judge its parts.
pub(super) struct FrameContext<'a> {
    pub(super) description: &'a Description,
    pub(super) frame: &'a Frame,
    pub(super) tree: &'a Tree,
}

/// Checks everything but pages, timing and signals; tells the longest payload that the frame's own network carries.
fn head(description: &Description, frame: &Frame, id: FrameId) -> Result<u32, Flaw> {
    plain_name(&frame.label)?;
    let mut longest = None;
    for appearance in &frame.seen_on {
        let carried = seen_on(description, appearance, id, longest.is_none())?;
        longest.get_or_insert(carried);
    }
    let longest = longest.ok_or(Flaw::Missing { what: "network that it is seen on" })?;
    pages::length(frame.length, longest)?;
    frame.senders.iter().chain(&frame.readers).try_for_each(|ecu| refers("ecu", ecu.0, description.ecus.len()))?;
    Ok(longest)
}

/// Checks one appearance; tells the longest payload that the network carries.
fn seen_on(description: &Description, appearance: &Appearance, frame: FrameId, is_own: bool) -> Result<u32, Flaw> {
    let networks = &description.networks;
    refers("network", appearance.network.0, networks.len())?;
    let network = &networks[appearance.network.index()];
    let wrong = |problem| Err(Flaw::WrongAppearance { network: network.label.name.clone(), problem });
    match (is_own, appearance.via) {
        (true, None) => {}
        (true, Some(_)) => {
            return wrong("through a route, and the first network is the one it is declared on");
        }
        (false, None) => return wrong("without a route that brings it there"),
        (false, Some(id)) => {
            refers("route", id.0, description.routes.len())?;
            let route = &description.routes[id.index()];
            if route.to != appearance.network {
                return wrong("through a route that leads to another network");
            }
            if matches!(route.what, Passed::Frame(passed) if passed != frame) {
                return wrong("through a route that passes another frame");
            }
        }
    }
    if !appearance.identifier.belongs_on(network.kind) {
        return Err(Flaw::WrongIdentifier { network: network.label.name.clone(), kind: network.kind.keyword() });
    }
    identifier(description, &appearance.identifier)?;
    match description.frames[frame.index()].carried {
        None => Ok(appearance.identifier.longest_payload(network.kind)),
        Some(transport) if transport.carries(&appearance.identifier) => Ok(transport.longest_payload()),
        Some(transport) => {
            Err(Flaw::WrongTransport { network: network.label.name.clone(), transport: transport.words() })
        }
    }
}

fn identifier(description: &Description, identifier: &Identifier) -> Checked {
    match identifier {
        Identifier::Xl { priority, .. } => at_most("priority", priority.unwrap_or(0), 0x7FF_u16),
        Identifier::Lin { id, checksum, stands_for } => {
            at_most("identifier", *id, lin::ID_MAX)?;
            if *id >= lin::FIRST_CLASSIC_ID && *checksum == LinChecksum::Enhanced {
                return Err(Flaw::AlwaysClassic);
            }
            stands_for.iter().try_for_each(|frame| frame_exists(description, *frame))
        }
        Identifier::FlexRay { slot, first_cycle, repetition, .. } => {
            not_zero("slot", (*slot).into())?;
            at_most("slot", *slot, 2047_u16)?;
            if !FLEXRAY_REPETITIONS.contains(repetition) {
                return Err(Flaw::NoRepetition { every: *repetition });
            }
            at_most("first cycle", *first_cycle, repetition - 1)
        }
        Identifier::Most { function, operation, .. } => {
            at_most("function", *function, 0xFFF_u16)?;
            at_most("operation", operation.unwrap_or(0), 0xF_u8)
        }
        Identifier::Telegram { starts, .. } => at_most("number of leading bytes", starts.len() as u64, 64_u8),
        Identifier::SomeIp { .. } | Identifier::Port { .. } | Identifier::DoIp { .. } => Ok(()),
        Identifier::Can { first, last, extended } => identifiers(*first, *last, *extended),
        Identifier::Pgn { pgn, sources: _, priority } => {
            at_most("parameter group number", *pgn, 0x3_FFFF_u32)?;
            at_most("priority", priority.unwrap_or(0), 7_u8)?;
            let is_to_destination = (pgn >> 8) & 0xFF < 240;
            if is_to_destination && pgn & 0xFF != 0 { Err(Flaw::DestinationInPgn { pgn: *pgn }) } else { Ok(()) }
        }
    }
}

/// Whether a payload of at most `limit` bytes can have the first `needed` ones.
pub(super) fn inside(needed: u32, limit: u32) -> Checked {
    if needed <= limit {
        return Ok(());
    }
    Err(Flaw::OutsidePayload { byte: needed - 1, bytes: limit })
}

impl FrameContext<'_> {
    fn page(&self, page: &Page, longest: u32) -> Checked {
        page.tests.iter().try_for_each(|test| self.test(test, page.parent))?;
        page.every.map_or(Ok(()), period)?;
        pages::length(page.length, longest)
    }

    /// Checks a condition that is looked at where `seen_from` says: on a page, or in the frame itself.
    fn test(&self, test: &Test, seen_from: Option<PageId>) -> Checked {
        if test.values.is_empty() {
            return Err(Flaw::Missing { what: "value in its condition" });
        }
        let selector = self.seen(test.selector, seen_from)?;
        let no_number = || Flaw::SelectorNoNumber { selector: selector.label.name.clone() };
        let encoding = selector.encoding().ok_or_else(no_number)?;
        raw::spans(&test.values, encoding)
    }

    /// Checks a signal that says how many bytes another one has, seen from that one's page.
    pub(super) fn counts(&self, size: SignalId, seen_from: Option<PageId>) -> Checked {
        let counter = self.seen(size, seen_from)?;
        let is_whole = counter.encoding().is_some_and(|encoding| encoding.integer_range().is_some());
        if is_whole { Ok(()) } else { Err(Flaw::SelectorNoNumber { selector: counter.label.name.clone() }) }
    }

    /// A signal that is looked at from a page, or from the frame itself.
    fn seen(&self, id: SignalId, seen_from: Option<PageId>) -> Result<&Signal, Flaw> {
        refers("signal", id.0, self.frame.signals.len())?;
        let selector = &self.frame.signals[id.index()];
        if let Some(page) = selector.page {
            refers("page", page.0, self.frame.pages.len())?;
        }
        if !self.tree.sees(seen_from, selector.page) {
            return Err(Flaw::SelectorOutOfSight { selector: selector.label.name.clone() });
        }
        Ok(selector)
    }

    fn sending(&self, sending: &Sending) -> Checked {
        sending.every.map_or(Ok(()), period)?;
        if let Some(faster) = &sending.faster {
            period(faster.every)?;
            self.test(&faster.test, None)?;
        }
        not_zero("timeout", sending.timeout.map_or(1, |time| time.0))?;
        match (sending.apart_at_least, sending.apart_at_most) {
            (Some(least), Some(most)) if most < least => Err(Flaw::UpsideDown { what: "time between two of them" }),
            _ => Ok(()),
        }
    }
}

fn period(period: Period) -> Checked {
    not_zero("period", period.shortest.0)?;
    if period.longest < period.shortest { Err(Flaw::UpsideDown { what: "period" }) } else { Ok(()) }
}
