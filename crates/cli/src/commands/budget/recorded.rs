//! What logs show of the load.

use std::io::IsTerminal;
use std::path::Path;

use wirelore_decode::Decoder;
use wirelore_draw::share_text;
use wirelore_model::{Database, seen_text};
use wirelore_survey::budget::measure::{Busiest, Meter, MeterTally, NetworkMeasure};

use super::described::{kind_word, rate_cell, senders};
use super::pages::{Page, Part};
use super::sheet::{Cell, Column, Sheet, figures, words};
use super::{Wanted, main_sheet, title};
use crate::args::BudgetArguments;
use crate::description::load;
use crate::failure::{Failure, Outcome};
use crate::logs;
use crate::progress::Progress;
use crate::summary::{counted, grouped};
use crate::tell::tell_line;

/// Counts the logs.
pub(super) fn run(
    arguments: &BudgetArguments,
    name: &str,
    logs: &[&str],
    limit: Option<f64>,
) -> Result<(Page, Outcome), Failure> {
    if let Some(missing) = logs.iter().find(|name| **name != "-" && !Path::new(name).exists()) {
        return Err(Failure::Usage(format!("there is no log {missing}")));
    }
    if logs.iter().filter(|name| **name == "-").count() > 1 {
        return Err(Failure::Usage("standard input can be read once only; give - once".to_owned()));
    }
    let options = logs::options(&arguments.reading)?;
    let database = load(name)?;
    let wanted = Wanted::new(&database, arguments.only.as_deref())?;
    let decoder = Decoder::new(&database)?;
    let bind = logs::bind_map(&arguments.reading)?;
    let mut meter = Meter::new(&database, &decoder, &bind)?;
    let wants_progress = !arguments.quiet && (arguments.output.is_some() || !std::io::stdout().is_terminal());
    for log in logs {
        let mut recording = logs::open(log, &options)?;
        let progress = Progress::new(recording.size(), wants_progress);
        meter.log(&mut recording, |recording| progress.at(recording.bytes_read()))?;
        drop(progress);
        logs::tell_report(log, recording.report());
    }
    tell_bindings(&meter);
    let (mut networks, tally) = meter.finish();
    networks.retain(|measure| wanted.has(&database, measure.network));
    tell_beyond(&database, &networks);
    let findings = findings(&database, &networks, limit);
    let is_clean = findings.is_empty();
    let page = Page {
        title: title(&database),
        parts: vec![
            Part::sheet("networks", networks_sheet(&database, &networks)),
            Part::lines("findings", findings),
            Part::lines("tally", tally_text(&tally)),
            Part::sheet("units", units(&database, &networks)).shown_if(arguments.control_units),
            Part::sheet("frames", identifiers(&database, &networks)).shown_if(arguments.frames),
        ],
        main: main_sheet(arguments),
    };
    Ok((page, if is_clean { Outcome::Clean } else { Outcome::SomethingToLookAt }))
}

fn tell_bindings(meter: &Meter<'_>) {
    for binding in meter.bindings().iter().filter(|binding| binding.reason.was_a_choice()) {
        tell_line(&binding.to_string());
    }
    for channel in meter.channels_never_seen() {
        tell_line(&format!("--bind names channel {channel}, which is in none of the logs"));
    }
}

/// Identifiers are listed up to a number; frames of others are in the sums of their network alone.
fn tell_beyond(database: &Database, networks: &[NetworkMeasure]) {
    for measure in networks.iter().filter(|measure| measure.beyond > 0) {
        tell_line(&format!(
            "{}: {} of identifiers beyond the first {} stand in no line of an identifier or a control unit",
            database.networks[measure.network.index()].label.name,
            counted(measure.beyond, "frame"),
            grouped(measure.identifiers.len() as u64)
        ));
    }
}

const NETWORKS: [Column; 10] = [
    words("network", "network"),
    words("kind", "kind"),
    words("rate", "rate"),
    figures("frames", "frames"),
    figures("frames/s", "frames_per_s"),
    figures("without stuff bits", "share_without_stuff_bits"),
    figures("load", "share"),
    figures("busiest second", "share_busiest_second"),
    figures("begins at", "busiest_second_at_ms"),
    figures("busiest 100 ms", "share_busiest_tenth"),
];

fn networks_sheet(database: &Database, networks: &[NetworkMeasure]) -> Sheet {
    let mut sheet = Sheet::new(&NETWORKS);
    for measure in networks {
        let network = &database.networks[measure.network.index()];
        let bare = measure.share.filter(|_| network.kind.is_can()).map(|(_, bare)| bare);
        let is_counted = measure.frames > 0;
        let all = measure.frames + measure.of_unknown_length;
        let busiest = |found: Option<Busiest>| Cell::share(found.filter(|_| is_counted).map(|busiest| busiest.share));
        let begins = measure.busiest_second.map(|busiest| Cell::Time(busiest.from_ns.into()));
        sheet.push(vec![
            Cell::name(&network.label, &network.label.name),
            Cell::text(kind_word(network.kind)),
            rate_cell(network),
            Cell::Count(all),
            per_second(measure, all),
            Cell::share(bare.filter(|_| is_counted)),
            Cell::share(measure.share.map(|(all, _)| all).filter(|_| is_counted)),
            busiest(measure.busiest_second),
            begins.filter(|_| is_counted).unwrap_or(Cell::Nothing),
            busiest(measure.busiest_tenth),
        ]);
    }
    sheet
}

fn per_second(measure: &NetworkMeasure, frames: u64) -> Cell {
    if measure.span_s > 0.0 { Cell::Rate(frames as f64 / measure.span_s) } else { Cell::Nothing }
}

const UNITS: [Column; 5] = [
    words("network", "network"),
    words("control unit", "control_unit"),
    figures("frames", "frames"),
    figures("frames/s", "frames_per_s"),
    figures("load", "share"),
];

fn units(database: &Database, networks: &[NetworkMeasure]) -> Sheet {
    let mut sheet = Sheet::new(&UNITS);
    for measure in networks {
        for unit in measure.units() {
            sheet.push(vec![
                Cell::text(&database.networks[measure.network.index()].label.name),
                Cell::text(senders(database, &unit.ecus)),
                Cell::Count(unit.frames),
                per_second(measure, unit.frames),
                Cell::share(unit.share),
            ]);
        }
    }
    sheet
}

const IDENTIFIERS: [Column; 7] = [
    words("network", "network"),
    words("identifier", "identifier"),
    words("frame", "frame"),
    figures("frames", "frames"),
    figures("frames/s", "frames_per_s"),
    figures("bits", "bits"),
    figures("load", "share"),
];

fn identifiers(database: &Database, networks: &[NetworkMeasure]) -> Sheet {
    let mut sheet = Sheet::new(&IDENTIFIERS);
    for measure in networks {
        for id in &measure.identifiers {
            let frame = id.frame.map(|frame| &database.frames[frame.index()].label);
            let frame = frame.map(|label| Cell::name(label, &label.name));
            sheet.push(vec![
                Cell::text(&database.networks[measure.network.index()].label.name),
                Cell::text(seen_text(id.seen)),
                frame.unwrap_or(Cell::Nothing),
                Cell::Count(id.frames),
                per_second(measure, id.frames),
                Cell::Count(id.bits),
                Cell::share(id.share),
            ]);
        }
    }
    sheet
}

/// What is too much: above what is possible, or above the limit.
fn findings(database: &Database, networks: &[NetworkMeasure], limit: Option<f64>) -> Vec<String> {
    let mut lines = Vec::new();
    for measure in networks {
        let name = &database.networks[measure.network.index()].label.name;
        let mean = measure.share.map_or(0.0, |(all, _)| all);
        let busiest = measure.busiest_second.map_or(mean, |busiest| busiest.share.max(mean));
        if mean > 1.0 {
            lines.push(format!(
                "{name}: {} of the network is more than there is; is the rate that is described the one of this recording?",
                share_text(mean)
            ));
        } else if let Some(limit) = limit.filter(|limit| busiest > *limit) {
            lines.push(format!(
                "{name} is above the limit of {}: {} in its busiest second",
                share_text(limit),
                share_text(busiest)
            ));
        }
    }
    lines
}

/// What became of every frame.
fn tally_text(tally: &MeterTally) -> Vec<String> {
    let parts = [
        (tally.on_unbound_channels, "on channels that are no network of the description"),
        (tally.of_unknown_length, "whose length on the wire is not known"),
        (tally.damaged, "damaged on the wire"),
        (tally.no_frames, "that are no frames: records of errors, wake-ups"),
    ];
    let mut lines = vec![format!("{} read, {} counted", counted(tally.read, "frame"), counted(tally.counted, "frame"))];
    let others = parts.into_iter().filter(|(count, _)| *count > 0);
    lines.extend(others.map(|(count, what)| format!("  {} {what}", counted(count, "frame"))));
    lines
}
