//! What if: the description as it is, and as it would be, side by side.

use wirelore_lang::{Checked, FileLoader, Level, LoadError, Loaded, Loader, check, render};
use wirelore_model::{BitRate, Database, Description, FrameId, NetworkId};
use wirelore_survey::budget::what_if::{MoveNote, move_unit, set_rate};
use wirelore_survey::budget::{Budget, NetworkLoad, Spread};

use super::described::{frame_name, kind_word, rate_text};
use super::pages::{Page, Part};
use super::sheet::{Cell, Column, Sheet, figures, words};
use super::{Wanted, added, find_network, outcome, title};
use crate::args::BudgetArguments;
use crate::commands::budget::words as sentences;
use crate::description::{is_text, load};
use crate::failure::{Failure, Outcome};
use crate::tell::{colour_wanted, tell};

/// Whether anything is to be changed.
pub(super) fn is_asked_for(arguments: &BudgetArguments) -> bool {
    !(arguments.moves.is_empty() && arguments.rates.is_empty() && arguments.adds.is_empty())
}

/// Calculates both.
pub(super) fn run(arguments: &BudgetArguments, name: &str, limit: Option<f64>) -> Result<(Page, Outcome), Failure> {
    let before = load(name)?;
    let wanted = Wanted::new(&before, arguments.only.as_deref())?;
    let mut notes = Vec::new();
    let mut description = with_frames(arguments, name, &before)?;
    for text in &arguments.rates {
        let (network, rate, data_rate) = parse_rate(&before, text)?;
        set_rate(&mut description, network, rate, data_rate);
        notes.push(format!("{} at {}", before.networks[network.index()].label.name, rate_words(rate, data_rate)));
    }
    for text in &arguments.moves {
        notes.extend(apply_move(&before, &mut description, text)?);
    }
    let after = Database::new(description).map_err(|reason| {
        Failure::Usage(format!("with these changes the description does not hold together: {reason}"))
    })?;
    let (old, new) = (Budget::of(&before), Budget::of(&after));
    let page = Page {
        title: title(&before),
        parts: vec![
            Part::lines("changes", notes),
            Part::sheet("networks", networks((&before, &old), (&after, &new), &wanted)),
            Part::lines("findings", sentences::findings(&after, &new, limit, &wanted)),
            Part::sheet("frames", frames((&before, &old), (&after, &new), &wanted)).shown_if(arguments.frames),
        ],
        main: if arguments.frames { "frames" } else { "networks" },
    };
    Ok((page, outcome(&after, &new, limit, &wanted)))
}

/// The description with the frames of `--add`: they are read as a file beside it, so that everything that the check knows holds for them.
fn with_frames(arguments: &BudgetArguments, name: &str, before: &Database) -> Result<Description, Failure> {
    if arguments.adds.is_empty() {
        return Ok(before.clone().into_description());
    }
    if !is_text(name) {
        return Err(Failure::Usage(format!("--add needs the text of a description, and {name} is a stored one")));
    }
    let text = added::text(&arguments.adds, before)?;
    let Checked { sources, diagnostics, database } = check(&[name, ADDED], &WithAdded(text));
    let errors: Vec<_> = diagnostics.into_iter().filter(|it| it.level() == Level::Error).collect();
    if !errors.is_empty() {
        tell(&render::text(&sources, &errors, colour_wanted(&std::io::stderr())));
    }
    database.map(Database::into_description).ok_or(Failure::Told)
}

/// What messages call the text of the added frames.
const ADDED: &str = "--add";

/// Files, and the text of the added frames beside them.
struct WithAdded(String);

impl Loader for WithAdded {
    fn load(&self, path: &str, from: Option<&str>) -> Result<Loaded, LoadError> {
        match (path, from) {
            (ADDED, None) => Ok(Loaded { key: ADDED.to_owned(), name: ADDED.to_owned(), text: self.0.clone() }),
            _ => FileLoader.load(path, from),
        }
    }
}

/// `drive=250k`, `camera=500k/5M`.
fn parse_rate(database: &Database, text: &str) -> Result<(NetworkId, BitRate, Option<BitRate>), Failure> {
    let wrong = || {
        Failure::Usage(format!(
            "cannot understand --rate \"{text}\"; write NETWORK=RATE, such as drive=250k or camera=500k/5M"
        ))
    };
    let (name, rates) = text.split_once('=').ok_or_else(wrong)?;
    let network = find_network(database, name.trim())?;
    let (rate, data) = match rates.split_once('/') {
        Some((rate, data)) if !data.trim_start().starts_with(['b', 's']) => (rate, Some(data)),
        _ => (rates, None),
    };
    let rate = bit_rate(rate).ok_or_else(wrong)?;
    let data = data.map(|data| bit_rate(data).ok_or_else(wrong)).transpose()?;
    let kind = database.networks[network.index()].kind;
    if data.is_some() && !matches!(kind, wirelore_model::NetworkKind::CanFd | wirelore_model::NetworkKind::CanXl) {
        return Err(Failure::Usage(format!("network {} is {} and has one rate", name.trim(), kind_word(kind))));
    }
    Ok((network, rate, data))
}

/// `500k`, `500 kbit/s`, `2M`, `250000`.
fn bit_rate(text: &str) -> Option<BitRate> {
    let text = text.trim().trim_end_matches("bit/s").trim();
    let (number, scale) = match text.strip_suffix(['k', 'M', 'G']) {
        Some(number) if text.ends_with('k') => (number, 1_000.0),
        Some(number) if text.ends_with('M') => (number, 1e6),
        Some(number) => (number, 1e9),
        None => (text, 1.0),
    };
    let rate = number.trim().replace('_', "").parse::<f64>().ok()? * scale;
    ((1.0..=1e12).contains(&rate) && rate.fract() == 0.0).then_some(BitRate(rate as u64))
}

fn rate_words(rate: BitRate, data_rate: Option<BitRate>) -> String {
    match data_rate {
        Some(data) => format!("{}, data {}", rate_text(rate), rate_text(data)),
        None => rate_text(rate),
    }
}

/// `radio=comfort`, with what it takes.
fn apply_move(before: &Database, description: &mut Description, text: &str) -> Result<Vec<String>, Failure> {
    let Some((unit, network)) = text.split_once('=').map(|(unit, network)| (unit.trim(), network.trim())) else {
        return Err(Failure::Usage(format!(
            "cannot understand --move \"{text}\"; write UNIT=NETWORK, such as radio=comfort"
        )));
    };
    let to = find_network(before, network)?;
    let (id, _) = before.ecu_named(unit).ok_or_else(|| {
        let near = wirelore_model::nearest_name(unit, before.ecus.iter().map(|ecu| ecu.label.name.as_str()));
        let near = near.map_or_else(String::new, |near| format!("; did you mean \"{near}\"?"));
        Failure::Usage(format!("the description has no control unit \"{unit}\"{near}"))
    })?;
    let notes = move_unit(description, id, to)
        .map_err(|reason| Failure::Usage(format!("cannot move {unit} to {network}: {reason}")))?;
    let mut lines = vec![format!("{unit} on {network}")];
    lines.extend(notes.iter().map(|note| note_text(description, note, network)));
    Ok(lines)
}

fn note_text(description: &Description, note: &MoveNote, network: &str) -> String {
    let frame = |id: FrameId| description.frames[id.index()].label.name.as_str();
    let unit = |id: wirelore_model::EcuId| description.ecus[id.index()].label.name.as_str();
    match *note {
        MoveNote::PassedOn { frame: id, gateway } => {
            format!("  {} passes {} on to {network}, where it is read now", unit(gateway), frame(id))
        }
        MoveNote::PassedBack { frame: id, gateway } => {
            format!("  {} passes {} back, as it is still read there", unit(gateway), frame(id))
        }
        MoveNote::NoGateway { frame: id } => {
            format!("  {} does not get to those who read it: no unit is on both networks", frame(id))
        }
        MoveNote::SharedStays { frame: id } => format!("  {} stays: others send it as well", frame(id)),
        MoveNote::SameIdentifier { frame: id, other } => {
            format!("  {} has the identifier of {} there: two units would send it at once", frame(id), frame(other))
        }
    }
}

const NETWORKS: [Column; 8] = [
    words("network", "network"),
    words("rate", "rate"),
    figures("frames/s before", "frames_per_s_before"),
    figures("after", "frames_per_s_after"),
    figures("expected before", "share_expected_before"),
    figures("after", "share_expected_after"),
    figures("at most before", "share_most_before"),
    figures("after", "share_most_after"),
];

type Side<'a> = (&'a Database, &'a Budget);

fn networks((before, old): Side<'_>, (after, new): Side<'_>, wanted: &Wanted) -> Sheet {
    let mut sheet = Sheet::new(&NETWORKS);
    let share = |load: &NetworkLoad, figure: fn(&Spread) -> f64| Cell::share(load.share.as_ref().map(figure));
    for (old, new) in old.networks.iter().zip(&new.networks).filter(|(old, _)| wanted.has(before, old.network)) {
        let network = &after.networks[new.network.index()];
        sheet.push(vec![
            Cell::text(&network.label.name),
            network.rate.map_or(Cell::Nothing, |rate| Cell::Text(rate_words(rate, network.data_rate))),
            Cell::Rate(old.frames_per_s),
            Cell::Rate(new.frames_per_s),
            share(old, |share| share.expected),
            share(new, |share| share.expected),
            share(old, |share| share.most),
            share(new, |share| share.most),
        ]);
    }
    sheet
}

const FRAMES: [Column; 5] = [
    words("network", "network"),
    words("frame", "frame"),
    figures("longest before", "worst_before_ms"),
    figures("after", "worst_after_ms"),
    figures("deadline", "deadline_ms"),
];

/// Every frame of CAN that is there after the change, and what was there before.
fn frames((before, old): Side<'_>, (after, new): Side<'_>, wanted: &Wanted) -> Sheet {
    let mut sheet = Sheet::new(&FRAMES);
    let worst = |budget: &Budget, network: usize, at: usize| match &budget.lateness[network] {
        Some(Ok(found)) => match found.streams[at].worst {
            Ok(worst) => Cell::time(Some(worst.0)),
            Err(_) => Cell::text("no bound"),
        },
        _ => Cell::Nothing,
    };
    for (network, (was, load)) in old.networks.iter().zip(&new.networks).enumerate() {
        if !wanted.has(before, load.network) || new.lateness[network].is_none() {
            continue;
        }
        for (at, stream) in load.streams.iter().enumerate() {
            let key = |frame: FrameId, database: &Database| database.frames[frame.index()].label.name.clone();
            let same = was.streams.iter().position(|old| {
                let is_same = (old.stream.source, old.stream.page) == (stream.stream.source, stream.stream.page);
                is_same && key(old.stream.frame, before) == key(stream.stream.frame, after)
            });
            sheet.push(vec![
                Cell::text(&after.networks[network].label.name),
                Cell::text(frame_name(after, stream)),
                same.map_or(Cell::Nothing, |at| worst(old, network, at)),
                worst(new, network, at),
                Cell::time(Some(stream.stream.timing.deadline.0)),
            ]);
        }
    }
    sheet
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rates() {
        for (text, rate) in [
            ("500k", 500_000),
            ("500 kbit/s", 500_000),
            ("2M", 2_000_000),
            ("83_333", 83_333),
            ("1.5Mbit/s", 1_500_000),
        ] {
            assert_eq!(bit_rate(text), Some(BitRate(rate)), "{text}");
        }
        for text in ["", "k", "0", "-5k", "0.3", "fast", "inf"] {
            assert_eq!(bit_rate(text), None, "{text}");
        }
    }
}
