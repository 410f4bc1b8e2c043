//! What stands below a map: the meaning of lines and boxes, the plain wires, the way of a frame, and what certainty rests on.

use wirelore_model::{Database, Grade, Label, NetworkKind, Pace, Passed, identifier_text};
use wirelore_survey::{Listening, Topic};

use super::scene::{Net, Scene, kind_word};
use super::strong::{Part, Strong};
use super::wiring::terminators;
use super::{Blank, MapOptions};
use crate::text::{Face, clean, isolated};

pub(crate) const ENTRY_FACE: Face = Face::plain(10);
pub(crate) const HEADING_FACE: Face = Face::bold(11);
/// Width of the samples before the words.
pub(crate) const SAMPLE_WIDTH: i32 = 58;
pub(crate) const ENTRY_LEADING: i32 = 13;
pub(crate) const HEADING_ROOM: i32 = 24;
/// Below each explanation.
const ENTRY_GAP: i32 = 6;
/// Lines of an explanation at most.
const MOST_LINES: usize = 12;

/// What an explanation shows beside its words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Sample {
    /// Nothing.
    None,
    /// The line of a kind of network.
    Line(NetworkKind, (bool, bool)),
    /// A box with a mark.
    Box(Look),
    /// A plain wire with its number.
    Wire(usize),
    /// A terminator on a line.
    Terminator,
}

/// Marks on boxes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Look {
    Gateway,
    Star,
    Optional,
    Guessed,
    Likely,
    Marked,
    Part(Part),
}

/// Explanations under one heading.
#[derive(Debug)]
pub(crate) struct Section {
    heading: &'static str,
    items: Vec<(Sample, String)>,
}

/// One explanation, broken into lines.
#[derive(Debug)]
pub(crate) struct Entry {
    pub(crate) heading: Option<&'static str>,
    pub(crate) sample: Sample,
    pub(crate) lines: Vec<String>,
}

impl Section {
    /// Its explanations in lines of so much room.
    pub(crate) fn entries(&self, width: i32) -> Vec<Entry> {
        let entry = |(index, (sample, text)): (usize, &(Sample, String))| {
            let room = if *sample == Sample::None { width } else { width - SAMPLE_WIDTH };
            let heading = (index == 0).then_some(self.heading);
            Entry { heading, sample: *sample, lines: ENTRY_FACE.wrap(text, room, MOST_LINES) }
        };
        self.items.iter().enumerate().map(entry).collect()
    }
}

impl Entry {
    pub(crate) fn height(&self) -> i32 {
        let heading = if self.heading.is_some() { HEADING_ROOM } else { 0 };
        heading + self.lines.len().max(1) as i32 * ENTRY_LEADING + ENTRY_GAP
    }
}

/// Everything that is to be said of a map.
pub(crate) fn sections(
    database: &Database,
    scene: &Scene,
    options: &MapOptions,
    strong: Option<&Strong>,
) -> Vec<Section> {
    let mut sections = Vec::new();
    sections.extend(options.listen.as_ref().map(|topic| Section {
        heading: if topic.signals.is_empty() { "The way of the frame" } else { "The way of the signal" },
        items: way_of(database, topic),
    }));
    sections.push(Section { heading: "Lines", items: kinds(scene) });
    sections.push(Section { heading: "Terminators", items: terminators(database, scene, options.blank) });
    sections.push(Section { heading: "Boxes", items: looks(scene, options, strong) });
    sections.push(Section { heading: "Plain wires", items: wires(scene, options.blank) });
    if options.certainty {
        sections.push(Section { heading: "How sure, and why", items: evidence(database, scene, options.blank) });
    }
    sections.retain(|section| !section.items.is_empty());
    sections
}

fn kinds(scene: &Scene) -> Vec<(Sample, String)> {
    let there = |kind: &NetworkKind| scene.nets.iter().find(|net| net.id.is_some() && net.kind == *kind);
    let mut items: Vec<_> = NetworkKind::ALL
        .into_iter()
        .filter_map(|kind| {
            let net = there(&kind)?;
            let more = match kind {
                NetworkKind::FlexRay if net.channels == (true, true) => ": two channels",
                NetworkKind::FlexRay => ": one channel",
                NetworkKind::Most => ", in the direction of the light",
                NetworkKind::Ethernet => ": each line one link",
                NetworkKind::Lin => "; the line begins at the unit that leads it",
                _ => "",
            };
            Some((Sample::Line(kind, net.channels), format!("{}{more}", kind_word(kind))))
        })
        .collect();
    if scene.nets.iter().any(Net::has_terminators) {
        items.push((Sample::Terminator, "terminator: the resistor that ends the wires".to_owned()));
    }
    if !scene.wires.is_empty() {
        items.push((Sample::Wire(usize::MAX), "plain wire; boxes show the numbers of theirs".to_owned()));
    }
    items
}

fn looks(scene: &Scene, options: &MapOptions, strong: Option<&Strong>) -> Vec<(Sample, String)> {
    let mut items = Vec::new();
    let mut add = |is_there: bool, look: Look, words: &str| {
        if is_there {
            items.push((Sample::Box(look), words.to_owned()));
        }
    };
    let plays = |part| strong.is_some_and(|strong| strong.units.contains(&Some(part)));
    add(plays(Part::Sends), Look::Part(Part::Sends), "sends the frame");
    add(plays(Part::PassesOn), Look::Part(Part::PassesOn), "passes it on");
    add(plays(Part::Reads), Look::Part(Part::Reads), "reads it");
    add(scene.units.iter().any(|unit| unit.is_gateway), Look::Gateway, "gateway: passes frames or values on");
    add(scene.units.iter().any(|unit| unit.is_star), Look::Star, "active star: each line from it one branch");
    add(scene.units.iter().any(|unit| unit.is_optional), Look::Optional, "not fitted in every vehicle");
    let grades = || {
        let units = scene.units.iter().map(|unit| unit.grade);
        units.chain(scene.nets.iter().map(|net| net.grade)).flatten()
    };
    add(grades().any(|grade| grade == Grade::Guessed), Look::Guessed, "short dashes, of a line too: guessed");
    let likely = options.certainty && grades().any(|grade| grade == Grade::Likely);
    add(likely, Look::Likely, "long dashes, of a line too: likely");
    let marked: Vec<String> = scene
        .units
        .iter()
        .filter(|unit| unit.id.is_some_and(|id| options.marked.contains(&id)))
        .map(|unit| isolated(&unit.title))
        .collect();
    let words =
        if options.blank == Blank::Exercise { "marked".to_owned() } else { format!("marked: {}", marked.join(", ")) };
    add(!marked.is_empty(), Look::Marked, &words);
    items
}

fn wires(scene: &Scene, blank: Blank) -> Vec<(Sample, String)> {
    let name = |unit: &usize| isolated(&scene.units[*unit].title);
    let words = scene.wires.iter().enumerate().map(|(number, wire)| {
        let text = if blank == Blank::Exercise {
            "from where to where, and what for?".to_owned()
        } else {
            let to = wire.to.iter().map(name).collect::<Vec<_>>().join(", ");
            format!("{}: {} → {to}", isolated(&wire.what), name(&wire.from))
        };
        (Sample::Wire(number), text)
    });
    words.collect()
}

/// Who is sure of what, and why; what waits for a test first.
pub(crate) fn evidence(database: &Database, scene: &Scene, blank: Blank) -> Vec<(Sample, String)> {
    if blank == Blank::Exercise {
        return Vec::new();
    }
    let mut items = Vec::new();
    let mut add = |label: &Label| {
        if let Some(certainty) = &label.certainty {
            let why = certainty.evidence.as_ref().map(|words| format!(": {}", isolated(&clean(words))));
            let name = isolated(&clean(label.display()));
            items.push((certainty.grade, format!("{name}: {}{}", certainty.grade.words(), why.unwrap_or_default())));
        }
    };
    database.vehicle.iter().for_each(|vehicle| add(&vehicle.label));
    scene.nets.iter().filter_map(|net| net.id).for_each(|id| add(&database.networks[id.index()].label));
    scene.units.iter().filter_map(|unit| unit.id).for_each(|id| add(&database.ecus[id.index()].label));
    // What still waits for a test comes first.
    items.sort_by_key(|(grade, _)| match grade {
        Grade::Guessed => 0,
        Grade::Likely => 1,
        _ => 2,
    });
    items.into_iter().map(|(_, text)| (Sample::None, text)).collect()
}

/// The way of a frame or a signal in sentences.
pub(crate) fn way_of(database: &Database, topic: &Topic) -> Vec<(Sample, String)> {
    let listening = &Listening::to(database, topic.clone());
    let ecu = |id: wirelore_model::EcuId| isolated(&clean(database.ecus[id.index()].label.display()));
    let network = |id: wirelore_model::NetworkId| clean(&database.networks[id.index()].label.name);
    let frame = &database.frames[topic.frame.index()];
    let signal = topic.signals.first().map(|id| &frame.signals[id.index()].label.name);
    let name = signal.map_or_else(|| frame.label.name.clone(), |signal| format!("{}.{signal}", frame.label.name));
    let certainty = match topic.signals.first() {
        Some(signal) => database.certainty(topic.frame, *signal),
        None => frame.label.certainty.as_ref(),
    };
    let doubt = certainty.filter(|certainty| certainty.grade.mark().is_some());
    let doubt = doubt.map_or_else(String::new, |certainty| format!("; {}", isolated(&clean(&certainty.text()))));
    let list = |names: Vec<String>| if names.is_empty() { "nobody that is named".to_owned() } else { names.join(", ") };
    let senders = list(listening.senders.iter().map(|id| ecu(*id)).collect());
    let recognised = identifier_text(&frame.seen_on[0].identifier);
    let mut lines =
        vec![format!("{} ({recognised}) on {}: sent by {senders}{doubt}", clean(&name), network(listening.network))];
    for hop in &listening.hops {
        let rule = &database.routes[hop.route.index()];
        let pace = match rule.pace {
            Pace::Each => String::new(),
            Pace::Every(period) => format!(", every {} ms", millis(period.0)),
            Pace::Nth(count) => format!(", one of {count}"),
        };
        let within = rule.within.map(|time| format!(", within {} ms", millis(time.0))).unwrap_or_default();
        let becomes = &database.frames[hop.becomes.index()];
        let what = match rule.what {
            Passed::Signal { from_signal, to_signal, .. } => {
                let value = &database.frames[hop.frame.index()].signals[from_signal.index()].label.name;
                let copy = &becomes.signals[to_signal.index()].label.name;
                format!("copies {} to {}.{}", clean(value), clean(&becomes.label.name), clean(copy))
            }
            _ => {
                let there = becomes.seen_on.iter().find(|seen| seen.via == Some(hop.route));
                format!("passes it on as {}", there.map_or_else(String::new, |seen| identifier_text(&seen.identifier)))
            }
        };
        lines.push(format!("{} {what}: {} → {}{pace}{within}", ecu(hop.gateway), network(hop.from), network(hop.to)));
    }
    let reader = |(id, on): &(wirelore_model::EcuId, Option<wirelore_model::NetworkId>)| {
        format!("{} ({})", ecu(*id), on.map_or_else(|| "on none of these networks".to_owned(), network))
    };
    lines.push(format!("Read by {}", list(listening.readers.iter().map(reader).collect())));
    lines.into_iter().map(|line| (Sample::None, line)).collect()
}

/// Nanoseconds as milliseconds, without needless digits.
fn millis(nanoseconds: u64) -> String {
    let fraction = format!("{:06}", nanoseconds % 1_000_000);
    let fraction = fraction.trim_end_matches('0');
    let point = if fraction.is_empty() { "" } else { "." };
    format!("{}{point}{fraction}", nanoseconds / 1_000_000)
}
