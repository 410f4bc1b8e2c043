//! What the figures rest on and what follows from them, in sentences.

use wirelore_draw::share_text;
use wirelore_model::{Database, FrameId, Nanoseconds, NetworkId};
use wirelore_survey::budget::{
    Budget, Delayed, Lateness, NetworkLateness, NetworkLoad, Reasons, Remark, ScheduleUse, SlotsUse, WhyNot,
};

use super::described::{frame_name, why_not};
use super::sheet::time_text;
use super::{FULL, Wanted};
use crate::summary::counted;

/// How many of a list are named.
const NAMED: usize = 6;
/// How many of those that delay a frame are named.
const DELAYERS: usize = 4;

/// What is to be known of each network beside its line in the table.
pub(super) fn remarks(database: &Database, budget: &Budget, wanted: &Wanted) -> Vec<String> {
    if database.networks.is_empty() {
        return vec!["no network is described".to_owned()];
    }
    let mut lines = Vec::new();
    for (load, late) in budget.networks.iter().zip(&budget.lateness) {
        if !wanted.has(database, load.network) {
            continue;
        }
        let mut own: Vec<String> = load.remarks.iter().map(|it| remark(database, it)).collect();
        own.extend(schedule_texts(database, load));
        own.extend(load.slots.iter().map(slots_text));
        own.extend(uncounted(database, load));
        if let Some(Err(error)) = late {
            own.push(format!("how late frames can get is not calculated: {error}"));
        }
        let name = network_name(database, load.network);
        lines.extend(own.into_iter().map(|line| format!("{name}: {line}")));
    }
    lines
}

fn network_name(database: &Database, network: NetworkId) -> &str {
    &database.networks[network.index()].label.name
}

fn remark(database: &Database, remark: &Remark) -> String {
    let frames = |frames: &[FrameId]| listed(frames.iter().map(|id| database.frames[id.index()].label.name.clone()));
    match remark {
        Remark::NoRate => "no bit rate is described, so that nothing can be said of its load".to_owned(),
        Remark::NothingCounted => "nothing on it can be counted".to_owned(),
        Remark::LengthAssumed(ids) => format!("no length is described, the longest is counted: {}", frames(ids)),
        Remark::OnChangeOpen(ids) => {
            format!("only the period is counted, and these also come on change, however often: {}", frames(ids))
        }
        Remark::CutIntoFrames(ids) => {
            format!("cut into several frames, what the receivers answer is not counted: {}", frames(ids))
        }
        Remark::NoSchedule => "no schedule is described, the periods of the frames are counted".to_owned(),
        Remark::RoundOpen(schedule) => format!("schedule {schedule} has slots without a time"),
        Remark::NoSlots => "no static slots are described, so that nothing can be said of its load".to_owned(),
        Remark::UnknownRing => "only rings of 25 Mbit/s are calculated".to_owned(),
        Remark::OneLink => {
            "a link joins two units and has wires for each way; this is what one way takes that carries everything"
                .to_owned()
        }
        Remark::NoPauses => "the pauses between bytes are not counted".to_owned(),
    }
}

fn uncounted(database: &Database, load: &NetworkLoad) -> Vec<String> {
    let mut kinds: Vec<WhyNot> = load.uncounted.iter().map(|it| it.why).collect();
    kinds.sort_unstable();
    kinds.dedup();
    let text = |kind: WhyNot| {
        let own = load.uncounted.iter().filter(|it| it.why == kind);
        let names = own.map(|it| database.frames[it.frame.index()].label.name.clone());
        format!("not counted, {}: {}", why_not(kind), listed(names))
    };
    kinds.into_iter().map(text).collect()
}

/// `a, b, c and 12 more`
fn listed(names: impl Iterator<Item = String>) -> String {
    let names: Vec<String> = names.collect();
    let more = names.len().saturating_sub(NAMED);
    let shown = names[..names.len() - more].join(", ");
    if more > 0 { format!("{shown} and {more} more") } else { shown }
}

fn schedule_texts(database: &Database, load: &NetworkLoad) -> Vec<String> {
    let several = load.schedules.len() > 1;
    let text = |(at, schedule): (usize, &ScheduleUse)| {
        let name = &database.schedules[schedule.schedule].label.name;
        let round = schedule.round.map_or_else(String::new, |round| format!(" in {}", time(round)));
        let share = schedule.share.filter(|_| several).map_or_else(String::new, |share| {
            format!(", frames take {} to {}", share_text(share.least), share_text(share.most))
        });
        let is_shown = several && load.fullest_schedule == Some(at);
        let shown = if is_shown { ", the fullest, shown above" } else { "" };
        let mut text =
            format!("schedule {name}: {}{round}{share}{shown}", counted(schedule.slots.len() as u64, "slot"));
        let tight = schedule.slots.iter().filter(|slot| slot.share_of_slot().is_some_and(|share| share.most > 1.0));
        let tight: Vec<String> = tight.map(|slot| database.frames[slot.frame.index()].label.name.clone()).collect();
        if !tight.is_empty() {
            text.push_str(&format!("; slots too short for the longest frame: {}", listed(tight.into_iter())));
        }
        text
    };
    load.schedules.iter().enumerate().map(text).collect()
}

fn slots_text(slots: &SlotsUse) -> String {
    let channels = slots.channels.iter().zip(["A", "B"]).map(|(channel, name)| {
        let fixed = match channel.static_share() {
            Some(share) => format!(
                "{} of its static slots in {} cycles ({} of {})",
                share_text(share),
                slots.cycles,
                channel.static_used,
                channel.static_all
            ),
            None => "static slots not described".to_owned(),
        };
        let dynamic = match (channel.dynamic_used, channel.dynamic_all) {
            (0, 0) => String::new(),
            (used, 0) => format!(", {used} dynamic in cycle {}", channel.fullest_cycle),
            (0, all) => format!(", none of {all} dynamic"),
            (used, all) => format!(", {used} of {all} dynamic in the fullest cycle, {}", channel.fullest_cycle),
        };
        format!("channel {name} uses {fixed}{dynamic}")
    });
    channels.collect::<Vec<_>>().join("; ")
}

fn time(Nanoseconds(time): Nanoseconds) -> String {
    time_text(time.into())
}

/// What is too full, what can be late, or that all is in time.
pub(super) fn findings(database: &Database, budget: &Budget, limit: Option<f64>, wanted: &Wanted) -> Vec<String> {
    let mut lines = over_limit(database, budget, limit.unwrap_or(FULL), wanted);
    let looked_at = budget.networks.iter().zip(&budget.lateness).filter(|(load, _)| wanted.has(database, load.network));
    let looked_at: Vec<_> = looked_at.filter_map(|(load, late)| Some((load, late.as_ref()?.as_ref().ok()?))).collect();
    let late: Vec<String> = looked_at.iter().flat_map(|(load, late)| misses(database, load, late)).collect();
    let frames: usize = looked_at.iter().map(|(_, late)| late.streams.len()).sum();
    if late.is_empty() && frames > 0 {
        lines.push(format!("{} on CAN: each is in time, even at worst", counted(frames as u64, "frame")));
    }
    lines.extend(late);
    lines
}

fn misses(database: &Database, load: &NetworkLoad, late: &NetworkLateness) -> Vec<String> {
    let network = network_name(database, load.network);
    let mut lines = Vec::new();
    let unbounded: Vec<usize> = (0..late.streams.len()).filter(|at| late.streams[*at].worst.is_err()).collect();
    for (at, found) in late.streams.iter().enumerate().filter(|(_, found)| found.can_miss()) {
        let name = frame_name(database, &load.streams[at]);
        if let Ok(worst) = found.worst {
            let deadline = time(found.deadline);
            lines.push(format!(
                "{name} on {network} can be too late: {} at worst, and its deadline is {deadline}",
                time(worst)
            ));
            lines.extend(
                found.reasons.as_ref().map(|reasons| format!("  {}", reasons_text(database, load, found, reasons))),
            );
        }
    }
    if let Some(first) = unbounded.first() {
        let name = frame_name(database, &load.streams[*first]);
        let error = late.streams[*first].worst.err().map_or_else(String::new, |error| error.to_string());
        let others = match unbounded.len() - 1 {
            0 => String::new(),
            others => format!(" and {} behind it", counted(others as u64, "frame")),
        };
        lines.push(format!("{name}{others} on {network} can wait for ever: {error}"));
    }
    if !lines.is_empty() {
        match late.another_order {
            Some(true) => lines
                .push(format!("  on {network} other identifiers would do: there is an order in which each is in time")),
            Some(false) => {
                lines.push(format!("  on {network} no other identifiers would do: it has to carry less, or be faster"))
            }
            None => {}
        }
    }
    lines
}

/// Who makes a frame late, the dearest first.
fn reasons_text(database: &Database, load: &NetworkLoad, found: &Lateness, reasons: &Reasons) -> String {
    let delayed = |delay: &Delayed| {
        format!("{} of {} ({})", delay.frames, frame_name(database, &load.streams[delay.stream]), time(delay.time))
    };
    let mut parts = Vec::new();
    if reasons.late.0 > 0 {
        let late = time(reasons.late);
        let is_passed_on = found.arrives.is_some();
        parts.push(if is_passed_on {
            format!("it comes {late} late from the gateway")
        } else {
            format!("jitter {late}")
        });
    }
    parts.extend(reasons.higher.iter().take(DELAYERS).map(delayed));
    if reasons.higher.len() > DELAYERS {
        let rest: u64 = reasons.higher[DELAYERS..].iter().map(|delay| delay.time.0).sum();
        let count = reasons.higher.len() - DELAYERS;
        parts.push(format!("{count} others that go first ({})", time(Nanoseconds(rest))));
    }
    if reasons.earlier.0 > 0 {
        parts.push(format!("earlier ones of its own ({})", time(reasons.earlier)));
    }
    if let Some(blocking) = &reasons.blocking {
        let name = frame_name(database, &load.streams[blocking.stream]);
        parts.push(format!("{name}, which has just begun ({})", time(blocking.time)));
    }
    parts.push(format!("itself {}", time(reasons.length)));
    parts.join(", ")
}

/// The networks on which more than the limit is sent at most.
fn over_limit(database: &Database, budget: &Budget, limit: f64, wanted: &Wanted) -> Vec<String> {
    let loads = budget.networks.iter().filter(|load| wanted.has(database, load.network) && load.exceeds(limit));
    let text = |load: &NetworkLoad| {
        let most = load.share.map_or(0.0, |share| share.most);
        let name = network_name(database, load.network);
        if limit < FULL && most <= FULL {
            format!("{name} is above the limit of {}: {} at most", share_text(limit), share_text(most))
        } else {
            format!("{name} cannot carry what is sent: {} at most", share_text(most))
        }
    };
    loads.map(text).collect()
}
