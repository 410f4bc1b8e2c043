//! Schedules: is every slot long enough, on the beat, and on the network; do periods and slots go together?

use rustc_hash::{FxHashMap, FxHashSet};
use wirelore_bits::lin;
use wirelore_model::{Description, EcuId, Frame, FrameId, Identifier, Nanoseconds, Schedule, Slot, SlotContent};

use super::events;
use crate::resolve::Resolved;
use crate::resolve::messages::{Messages, at};
use crate::resolve::schedules::ScheduleOrigin;
use crate::resolve::timing::shown;
use crate::syntax::tree;
use crate::{Diagnostic, Rule, Site};

pub(crate) fn check(resolved: &Resolved<'_>, messages: &mut Messages) {
    if resolved.schedules.is_empty() {
        return;
    }
    let bytes = data_bytes(&resolved.description);
    for (schedule, origin) in resolved.description.schedules.iter().zip(&resolved.schedules) {
        let ecus = resolved.description.ecus.iter().zip((0..).map(EcuId));
        let leads = ecus.filter(|(ecu, _)| ecu.leads.contains(&schedule.network));
        let commanders: FxHashSet<EcuId> = leads.map(|(_, id)| id).collect();
        let mut checks = Checks { resolved, schedule, origin, bytes: &bytes, messages };
        for (slot, written) in schedule.slots.iter().zip(&origin.slots) {
            checks.on_network(slot, written);
            checks.long_enough(slot, written);
            checks.on_beat(slot, written);
            checks.sent_by_the_commander(slot, written, &commanders);
        }
        events::answers_with_slots(resolved, schedule, origin, checks.messages);
        match schedule.round() {
            Some(round) => checks.stated_periods(round),
            None => checks.room(),
        }
    }
    described_periods(resolved, messages);
}

/// The data bytes of each frame: as described, else as many as its signals need; those of the others where it stands for some. `None` where
/// that is not known, or more than a frame of LIN has.
fn data_bytes(description: &Description) -> Vec<Option<u32>> {
    let own = |frame: &Frame| {
        let by_signals = || frame.signals.iter().map(wirelore_model::Signal::needed_bytes).max();
        let bytes = frame.length.map(|length| length.max).or_else(by_signals)?;
        (bytes as usize <= lin::BYTES_MAX).then_some(bytes)
    };
    let own: Vec<Option<u32>> = description.frames.iter().map(own).collect();
    let in_a_slot =
        |(frame, own_bytes): (&Frame, &Option<u32>)| match frame.seen_on.first().map(|seen| &seen.identifier) {
            Some(Identifier::Lin { stands_for, .. }) if !stands_for.is_empty() => {
                stands_for.iter().filter_map(|other| own[other.index()]).max()
            }
            _ => *own_bytes,
        };
    description.frames.iter().zip(&own).map(in_a_slot).collect()
}

struct Checks<'a, 't> {
    resolved: &'a Resolved<'t>,
    schedule: &'a Schedule,
    origin: &'a ScheduleOrigin<'t>,
    /// The data bytes of each frame.
    bytes: &'a [Option<u32>],
    messages: &'a mut Messages,
}

impl Checks<'_, '_> {
    fn frame(&self, id: FrameId) -> &Frame {
        &self.resolved.description.frames[id.index()]
    }

    fn on_network(&mut self, slot: &Slot, written: &tree::Slot<'_>) {
        // Its frames stand in the order of their names; a name that is not known has none.
        let mut names = written.frames.iter();
        for &id in slot.content.frames() {
            let frame = self.frame(id);
            let name = names.find(|name| name.value == frame.label.name);
            let is_here = frame.seen_on.iter().any(|seen| seen.network == self.schedule.network);
            if is_here || frame.seen_on.is_empty() {
                continue;
            }
            let network = &self.origin.tree.on.value;
            let text = format!("`{}` is not on `{network}`", frame.label.name);
            let site = at(self.origin.file, name.map_or(written.span, |name| name.span));
            self.messages.push(
                Diagnostic::new(Rule::ScheduleElsewhere, site, text)
                    .here("on another network")
                    .remark(self.resolved.frames[id.index()].recognition(), "the frame")
                    .help("a schedule has slots for the frames of its own network"),
            );
        }
    }

    /// The longest that a slot's frames can take, with the number of bytes that makes it so; `None` where lengths or the rate are not known.
    fn needed(&self, slot: &Slot) -> Option<(u64, u32, FrameId)> {
        let description = &self.resolved.description;
        let rate = description.networks[self.schedule.network.index()].rate?;
        let longest = slot.content.frames().iter().filter_map(|&id| Some((self.bytes[id.index()]?, id))).max()?;
        let (bytes, id) = longest;
        let jitter = self.schedule.jitter.map_or(0, |jitter| jitter.0);
        Some((lin::longest_time_ns(bytes, rate.0)?.saturating_add(jitter), bytes, id))
    }

    fn long_enough(&mut self, slot: &Slot, written: &tree::Slot<'_>) {
        let (Some(takes), Some(time), Some((needed, bytes, id))) = (slot.takes, written.takes, self.needed(slot))
        else {
            return;
        };
        if takes.0 >= needed {
            return;
        }
        let frame = &self.frame(id).label.name;
        let text = format!("this slot takes {}, and `{frame}` can take {}", shown(takes.0), milliseconds(needed));
        let site = at(self.origin.file, time.span);
        let jitter = self.schedule.jitter.map_or_else(String::new, |time| format!(", and {} of jitter", shown(time.0)));
        let enough = shown(self.on_next_beat(needed));
        self.messages.push(
            Diagnostic::new(Rule::SlotTooShort, site, text)
                .here("too short")
                .help(format!(
                    "{bytes} data bytes take {} bits, and may take 1.4 times as long (LIN 2.2A, section 2.3.2){jitter}",
                    lin::nominal_bits(bytes)
                ))
                .help(format!("write `takes {enough}`"))
                .fix(site, enough),
        );
    }

    /// The next time that is a whole multiple of the time base, or of a millisecond where none is stated.
    fn on_next_beat(&self, time_ns: u64) -> u64 {
        const MILLISECOND: u64 = 1_000_000;
        let beat = self.schedule.time_base.map_or(MILLISECOND, |base| base.0);
        time_ns.div_ceil(beat).saturating_mul(beat)
    }

    fn on_beat(&mut self, slot: &Slot, written: &tree::Slot<'_>) {
        let (Some(takes), Some(time), Some(base)) = (slot.takes, written.takes, self.schedule.time_base) else {
            return;
        };
        let Some(base_at) = self.origin.tree.time_base.filter(|_| !takes.0.is_multiple_of(base.0)) else { return };
        let text = format!("{} is not a whole number of times {}", shown(takes.0), shown(base.0));
        let next = shown(self.on_next_beat(takes.0));
        let site = at(self.origin.file, time.span);
        self.messages.push(
            Diagnostic::new(Rule::SlotOffBeat, site, text)
                .here("the next slot would begin between two beats")
                .remark(at(self.origin.file, base_at.span), "the time base")
                .help(format!("write `takes {next}`, or correct the time base"))
                .fix(site, next),
        );
    }

    /// The frames of a sporadic slot are the commander's (LIN 2.2A, section 2.3.3.3, from memory).
    fn sent_by_the_commander(&mut self, slot: &Slot, written: &tree::Slot<'_>, commanders: &FxHashSet<EcuId>) {
        let SlotContent::Sporadic(frames) = &slot.content else { return };
        if commanders.is_empty() {
            return;
        }
        let mut names = written.frames.iter();
        for &id in frames {
            let frame = self.frame(id);
            let name = names.find(|name| name.value == frame.label.name);
            let Some(&sender) = frame.senders.first() else { continue };
            if frame.senders.iter().any(|sender| commanders.contains(sender)) {
                continue;
            }
            let sender = &self.resolved.description.ecus[sender.index()].label.name;
            let text = format!(
                "`{}` is sent by `{sender}`, which does not lead `{}`",
                frame.label.name, self.origin.tree.on.value
            );
            let site = at(self.origin.file, name.map_or(written.span, |name| name.span));
            self.messages.push(Diagnostic::new(Rule::SenderOutOfTurn, site, text).here("not the commander's").help(
                "in a sporadic slot the commander sends what is new with itself; give the frame a slot of its own",
            ));
        }
    }

    /// The periods that are stated in a schedule whose slots give others.
    fn stated_periods(&mut self, round: Nanoseconds) {
        let (schedule, origin) = (self.schedule, self.origin);
        // A sporadic slot sends a frame only when there is news.
        let frame_of = |slot: &Slot| match slot.content {
            SlotContent::Frame(id) => Some(id),
            SlotContent::Sporadic(_) => None,
        };
        let mut counts: FxHashMap<FrameId, u64> = FxHashMap::default();
        schedule.slots.iter().filter_map(frame_of).for_each(|id| *counts.entry(id).or_default() += 1);
        for (slot, written) in schedule.slots.iter().zip(&origin.slots) {
            let (Some(every), Some(time), Some(id)) = (slot.every, written.every, frame_of(slot)) else { continue };
            let count = counts[&id];
            if every.0.saturating_mul(count) == round.0 {
                continue;
            }
            let text = format!(
                "`{}` is said to come every {}, and the slots of this schedule give every {}",
                self.frame(id).label.name,
                shown(every.0),
                milliseconds(round.0 / count)
            );
            self.messages.push(
                Diagnostic::new(Rule::SchedulePeriod, at(origin.file, time.span), text)
                    .here(format!("a round takes {}", shown(round.0)))
                    .help("correct a slot, or leave the period out: it follows from the slots"),
            );
        }
    }

    /// Whether what comes with stated periods fits into the time there is, where no round is known.
    fn room(&mut self) {
        const ALL: u128 = 1_000_000_000;
        let mut used: u128 = 0;
        for slot in &self.schedule.slots {
            let length = slot.takes.map(|takes| takes.0).or_else(|| {
                let (needed, ..) = self.needed(slot)?;
                Some(self.schedule.time_base.map_or(needed, |_| self.on_next_beat(needed)))
            });
            let (Some(length), Some(every)) = (length, slot.every) else { return };
            used += u128::from(length) * ALL / u128::from(every.0.max(1));
        }
        if used <= ALL {
            return;
        }
        let text = format!("the slots of this schedule need {} % of the time", (used * 100).div_ceil(ALL));
        self.messages.push(
            Diagnostic::new(Rule::ScheduleTooFull, at(self.origin.file, self.origin.tree.head.name.span), text)
                .here("more than there is")
                .help("longer periods, shorter frames, or a part of the frames in another schedule"),
        );
    }
}

/// A frame's own period that none of the schedules with it gives.
fn described_periods(resolved: &Resolved<'_>, messages: &mut Messages) {
    let description = &resolved.description;
    // What each schedule says of each frame, by the frame: its round, how often it comes in it, and where that stands.
    let mut given: Vec<Vec<(Option<Nanoseconds>, u64, Site)>> = vec![Vec::new(); description.frames.len()];
    for (schedule, origin) in description.schedules.iter().zip(&resolved.schedules) {
        let round = schedule.round();
        for (slot, written) in schedule.slots.iter().zip(&origin.slots) {
            let SlotContent::Frame(id) = slot.content else { continue };
            let site = at(origin.file, written.frames.first().map_or(written.span, |name| name.span));
            let here = &mut given[id.index()];
            let in_this_one = here.last_mut().filter(|(_, _, first)| {
                first.file == origin.file
                    && origin.slots.first().is_some_and(|slot| slot.span.start <= first.span.start)
            });
            match (in_this_one, round.or(slot.every)) {
                (Some((_, count, _)), _) => *count += 1,
                (None, time) => here.push((time, 1, site)),
            }
        }
    }
    for (frame, given) in description.frames.iter().zip(&given) {
        let (Some(every), None, Some(first)) = (frame.sending.every, &frame.sending.faster, given.first()) else {
            continue;
        };
        let fits = |&(time, count, _): &(Option<Nanoseconds>, u64, Site)| {
            let within = |time: Nanoseconds| {
                every.shortest.0.saturating_mul(count) <= time.0 && time.0 <= every.longest.0.saturating_mul(count)
            };
            time.is_none_or(within)
        };
        let (Some(time), count, site) = *first else { continue };
        if given.iter().any(fits) {
            continue;
        }
        let text = format!(
            "`{}` is described with `every {}`, and this schedule sends it every {}",
            frame.label.name,
            shown(every.shortest.0),
            milliseconds(time.0 / count)
        );
        messages.push(
            Diagnostic::new(Rule::SchedulePeriod, site, text)
                .here("another period")
                .help("correct the frame's period or the slots; on LIN the schedule decides"),
        );
    }
}

/// A time in milliseconds, to the microsecond, rounded up.
fn milliseconds(time_ns: u64) -> String {
    let us = time_ns.div_ceil(1_000);
    let text = format!("{}.{:03}", us / 1_000, us % 1_000);
    format!("{} ms", text.trim_end_matches('0').trim_end_matches('.'))
}
