//! Checks of everything but frames: vehicle, networks, control units, wires, tables of state words, routes.

use super::flaw::{At, Checked, Flaw, InvalidDescription};
use super::{raw, wiring};
use crate::{
    Description, Ecu, FLEXRAY_CYCLES, FlexRayTiming, FrameId, Label, Network, NetworkId, NetworkKind, Pace, Passed,
    Route, Schedule, SignalId, Wire,
};

pub(crate) fn check_outline(description: &Description) -> Result<(), InvalidDescription> {
    if let Some(vehicle) = &description.vehicle {
        plain_name(&vehicle.label).at(|| format!("vehicle `{}`", vehicle.label.name))?;
    }
    for item in &description.networks {
        network(item).at(|| format!("network `{}`", item.label.name))?;
    }
    for (item, id) in description.networks.iter().zip((0..).map(NetworkId)) {
        wiring::check(description, item, id).at(|| format!("network `{}`", item.label.name))?;
    }
    for item in &description.ecus {
        ecu(description, item).at(|| format!("ecu `{}`", item.label.name))?;
    }
    for (index, item) in description.wires.iter().enumerate() {
        wire(description, item).at(|| format!("wire number {index} (counted from 0)"))?;
    }
    for table in &description.states {
        plain_name(&table.label)
            .and_then(|()| raw::words(&table.words, None))
            .at(|| format!("states `{}`", table.label.name))?;
    }
    Ok(())
}

pub(crate) fn check_routes(description: &Description) -> Result<(), InvalidDescription> {
    for (index, item) in description.routes.iter().enumerate() {
        route(description, item).at(|| format!("route number {index} (counted from 0)"))?;
    }
    Ok(())
}

pub(crate) fn check_schedules(description: &Description) -> Result<(), InvalidDescription> {
    for item in &description.schedules {
        schedule(description, item).at(|| format!("schedule `{}`", item.label.name))?;
    }
    Ok(())
}

fn schedule(description: &Description, schedule: &Schedule) -> Checked {
    plain_name(&schedule.label)?;
    refers("network", schedule.network.0, description.networks.len())?;
    let network = &description.networks[schedule.network.index()];
    if network.kind != NetworkKind::Lin {
        return Err(Flaw::NoSchedules { network: network.label.name.clone(), kind: network.kind.keyword() });
    }
    not_zero("time base", schedule.time_base.map_or(1, |time| time.0))?;
    if schedule.slots.is_empty() {
        return Err(Flaw::Missing { what: "slot" });
    }
    for slot in &schedule.slots {
        if slot.content.frames().is_empty() {
            return Err(Flaw::Missing { what: "frame in one of its slots" });
        }
        slot.content.frames().iter().try_for_each(|id| frame_exists(description, *id))?;
        not_zero("slot's length", slot.takes.map_or(1, |time| time.0))?;
        not_zero("slot's period", slot.every.map_or(1, |time| time.0))?;
    }
    Ok(())
}

fn network(network: &Network) -> Checked {
    plain_name(&network.label)?;
    for rate in [network.rate, network.data_rate].into_iter().flatten() {
        not_zero("bit rate", rate.0)?;
    }
    if network.telegram.is_some() && network.kind != NetworkKind::Uart {
        return Err(Flaw::NoTelegram);
    }
    if network.data_rate.is_some() && !matches!(network.kind, NetworkKind::CanFd | NetworkKind::CanXl) {
        return Err(Flaw::NoDataPhase);
    }
    match &network.flexray {
        Some(_) if network.kind != NetworkKind::FlexRay => Err(Flaw::NoSlots),
        Some(timing) => flexray(timing),
        None => Ok(()),
    }
}

/// The largest numbers of FlexRay 2.1A (from memory): 1023 static slots of 127 words, 2047 slots in all.
fn flexray(timing: &FlexRayTiming) -> Checked {
    not_zero("cycle", timing.cycle.map_or(1, |cycle| cycle.0))?;
    not_zero("number of cycles", timing.cycles.into())?;
    at_most("number of cycles", timing.cycles, FLEXRAY_CYCLES)?;
    if let Some(slots) = timing.static_slots {
        not_zero("number of static slots", slots.count.into())?;
        at_most("number of static slots", slots.count, 1023_u16)?;
        at_most("number of bytes in a static slot", slots.bytes, 254_u16)?;
        if !slots.bytes.is_multiple_of(2) {
            return Err(Flaw::OddBytes { bytes: slots.bytes });
        }
    }
    let Some(last) = timing.last_dynamic_slot else { return Ok(()) };
    at_most("last dynamic slot", last, 2047_u16)?;
    let is_behind = last > timing.static_slots.map_or(0, |slots| slots.count);
    if is_behind { Ok(()) } else { Err(Flaw::UpsideDown { what: "dynamic segment" }) }
}

/// The most nodes of a MOST ring (MOST Specification 3.0, from memory).
const RING_NODES_MAX: u8 = 64;

fn ecu(description: &Description, ecu: &Ecu) -> Checked {
    plain_name(&ecu.label)?;
    let mut on: Vec<_> = ecu.on.iter().map(|attachment| attachment.network.0).collect();
    let mut leads: Vec<_> = ecu.leads.iter().map(|network| network.0).collect();
    for &network in on.iter().chain(&leads) {
        refers("network", network, description.networks.len())?;
    }
    for attachment in ecu.on.iter().filter(|attachment| attachment.ring_position.is_some()) {
        let network = &description.networks[attachment.network.index()];
        if network.kind != NetworkKind::Most {
            return Err(Flaw::NoRing { network: network.label.name.clone() });
        }
        at_most("ring position", attachment.ring_position.unwrap_or(0), RING_NODES_MAX - 1)?;
    }
    set("list of networks", &mut on)?;
    set("list of networks that it leads", &mut leads)
}

fn wire(description: &Description, wire: &Wire) -> Checked {
    if wire.to.is_empty() {
        return Err(Flaw::Missing { what: "unit at its other end" });
    }
    for unit in wire.to.iter().chain([&wire.from]) {
        refers("ecu", unit.0, description.ecus.len())?;
    }
    Ok(())
}

fn route(description: &Description, route: &Route) -> Checked {
    refers("ecu", route.gateway.0, description.ecus.len())?;
    refers("network", route.from.0, description.networks.len())?;
    refers("network", route.to.0, description.networks.len())?;
    match &route.what {
        Passed::Frame(id) => frame_exists(description, *id)?,
        Passed::Identifiers { first, last, extended } => identifiers(*first, *last, *extended)?,
        Passed::All { except } => except.iter().try_for_each(|id| frame_exists(description, *id))?,
        Passed::Signal { from_frame, from_signal, to_frame, to_signal } => {
            signal_exists(description, *from_frame, *from_signal)?;
            signal_exists(description, *to_frame, *to_signal)?;
        }
    }
    match route.pace {
        Pace::Each => Ok(()),
        Pace::Every(period) => not_zero("period", period.0),
        Pace::Nth(0 | 1) => Err(Flaw::Missing { what: "second frame in its thinning" }),
        Pace::Nth(_) => Ok(()),
    }
}

pub(super) fn frame_exists(description: &Description, id: FrameId) -> Checked {
    refers("frame", id.0, description.frames.len())
}

fn signal_exists(description: &Description, frame: FrameId, signal: SignalId) -> Checked {
    frame_exists(description, frame)?;
    refers("signal", signal.0, description.frames.get(frame.index()).map_or(0, |frame| frame.signals.len()))
}

/// A run of CAN identifiers (ISO 11898-1: 11 bits, extended 29 bits).
pub(super) fn identifiers(first: u32, last: u32, extended: bool) -> Checked {
    let most: u32 = if extended { 0x1FFF_FFFF } else { 0x7FF };
    at_most("identifier", last, most)?;
    if last < first { Err(Flaw::UpsideDown { what: "run of identifiers" }) } else { Ok(()) }
}

pub(super) fn refers(what: &'static str, index: u32, count: usize) -> Checked {
    if (index as usize) < count { Ok(()) } else { Err(Flaw::NoSuchItem { what, index, count }) }
}

pub(super) fn not_zero(what: &'static str, number: u64) -> Checked {
    if number == 0 { Err(Flaw::Zero { what }) } else { Ok(()) }
}

pub(super) fn at_most(what: &'static str, value: impl Into<u64>, most: impl Into<u64>) -> Checked {
    let (value, most) = (value.into(), most.into());
    if value > most { Err(Flaw::TooLarge { what, value, most }) } else { Ok(()) }
}

pub(super) fn set(what: &'static str, members: &mut [u32]) -> Checked {
    members.sort_unstable();
    if members.windows(2).any(|pair| pair[0] == pair[1]) { Err(Flaw::Twice { what }) } else { Ok(()) }
}

/// A name of letters, digits and `_`, in Unicode normal form C.
pub(super) fn plain_name(label: &Label) -> Checked {
    let name = label.name.as_str();
    if is_plain_ascii(name) {
        return Ok(());
    }
    if name.is_empty() || !name.chars().all(is_name_character) {
        return Err(Flaw::BadName { name: name.to_owned() });
    }
    normal(name)
}

/// A signal's name: a plain name, with `[3]` behind it or inside it where it belongs to an element of an array.
pub(super) fn signal_name(label: &Label) -> Checked {
    let name = label.name.as_str();
    if is_plain_ascii(name) {
        return Ok(());
    }
    let is_indexed = |piece: &str| match piece.split_once(']') {
        Some((index, rest)) => {
            !index.is_empty() && index.bytes().all(|c| c.is_ascii_digit()) && rest.chars().all(is_name_character)
        }
        None => false,
    };
    let mut pieces = name.split('[');
    let head = pieces.next().unwrap_or_default();
    if head.is_empty() || !head.chars().all(is_name_character) || !pieces.all(is_indexed) {
        return Err(Flaw::BadName { name: name.to_owned() });
    }
    normal(name)
}

/// Nearly every name; what makes checking 60,000 of them cheap.
fn is_plain_ascii(name: &str) -> bool {
    !name.is_empty() && name.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'_')
}

fn is_name_character(character: char) -> bool {
    character.is_alphanumeric() || character == '_'
}

fn normal(name: &str) -> Checked {
    if unicode_normalization::is_nfc(name) { Ok(()) } else { Err(Flaw::NameNotNormal { name: name.to_owned() }) }
}
