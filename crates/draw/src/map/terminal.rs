//! The map for a terminal: each network with its units, then the plain wires.

use std::fmt::Write;

use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};
use wirelore_model::{Database, Grade, NetworkKind};

use super::MapOptions;
use super::legend::{evidence, way_of};
use super::scene::{Net, Scene};
use super::strong::{Part, Strong};
use super::wiring::terminators;

/// No line is longer.
const COLUMNS: usize = 100;
/// Room for names, and for titles, at most.
const NAME_ROOM: usize = 24;
const TITLE_ROOM: usize = 34;

/// The whole map.
pub(crate) fn text(database: &Database, options: &MapOptions) -> String {
    let scene = Scene::of(database, options);
    let strong = options.listen.as_ref().map(|topic| Strong::of(database, &scene, topic));
    let mut text = format!("{}\n", shortened(&scene.title, COLUMNS));
    if scene.networks() == 0 && scene.units.is_empty() {
        text.push_str("The description has no networks and no control units yet.\n");
    }
    if let Some(topic) = &options.listen {
        text.push('\n');
        for (_, line) in way_of(database, topic) {
            push_wrapped(&mut text, "", "    ", &line);
        }
    }
    let room = |most: usize, all: Vec<&str>| all.iter().map(|it| it.width()).max().unwrap_or(0).min(most);
    let names = room(NAME_ROOM, scene.units.iter().map(|unit| unit.name.as_str()).collect());
    let titles = room(TITLE_ROOM, scene.units.iter().map(|unit| unit.title.as_str()).collect());
    for index in 0..scene.nets.len() {
        let net = &scene.nets[index];
        text.push('\n');
        push_network(&mut text, net, options);
        for (number, unit) in net.members.iter().enumerate() {
            let is_last = number + 1 == net.members.len();
            let it = &scene.units[*unit];
            let title = if it.title == it.name { "" } else { it.title.as_str() };
            let line = format!(
                "{} {}  {}  ",
                if is_last { "  └─" } else { "  ├─" },
                padded(&it.name, names),
                padded(title, titles)
            );
            let rest = format!("{}{}", if is_last { "    " } else { "  │ " }, " ".repeat(line.width() - 4));
            push_wrapped(&mut text, &line, &rest, &remarks(&scene, options, strong.as_ref(), index, *unit).join("; "));
        }
    }
    push_wires(&mut text, &scene);
    let terminators = terminators(database, &scene, options.blank);
    if !terminators.is_empty() {
        text.push_str("\nTerminators\n");
        terminators.iter().for_each(|(_, line)| push_wrapped(&mut text, "  ", "    ", line));
    }
    let evidence = if options.certainty { evidence(database, &scene, options.blank) } else { Vec::new() };
    if !evidence.is_empty() {
        text.push_str("\nHow sure, and why\n");
        evidence.iter().for_each(|(_, line)| push_wrapped(&mut text, "  ", "    ", line));
    }
    text
}

fn push_network(text: &mut String, net: &Net, options: &MapOptions) {
    let stroke = match net.kind {
        _ if net.id.is_none() => "",
        NetworkKind::Can | NetworkKind::CanXl => "━",
        NetworkKind::CanFd | NetworkKind::FlexRay | NetworkKind::Most => "═",
        _ => "─",
    };
    let mut facts = net.facts.clone();
    if let Some(grade) = shown_grade(net.grade, options) {
        facts.push_str(", ");
        facts.push_str(grade);
    }
    let name = if net.name == net.title || net.id.is_none() { String::new() } else { format!("{}  ", net.name) };
    let heading = format!("{name}{}", net.title);
    let heading = shortened(&heading, COLUMNS.saturating_sub(facts.width() + 8));
    let line = stroke.repeat(COLUMNS.saturating_sub(heading.width() + facts.width() + 6));
    let _ = writeln!(text, "{}", format!("{} {heading} {line} {facts}", stroke.repeat(2)).trim());
}

/// What is said of a unit where it stands on a network.
fn remarks(scene: &Scene, options: &MapOptions, strong: Option<&Strong>, net: usize, unit: usize) -> Vec<String> {
    let it = &scene.units[unit];
    let mut remarks = Vec::new();
    if it.id.is_some_and(|id| options.marked.contains(&id)) {
        remarks.push("MARKED".to_owned());
    }
    let part = strong.and_then(|strong| strong.units[unit]);
    remarks.extend(part.map(|part| {
        let word = match part {
            Part::Sends => "SENDS",
            Part::PassesOn => "PASSES ON",
            Part::Reads => "READS",
        };
        word.to_owned()
    }));
    if scene.nets[net].leader == Some(unit) {
        remarks.push("leads this network".to_owned());
    }
    if it.is_gateway {
        remarks.push("gateway".to_owned());
    }
    remarks.extend(wiring_remarks(&scene.nets[net], unit));
    if it.is_optional {
        remarks.push("optional".to_owned());
    }
    remarks.extend(shown_grade(it.grade, options).map(str::to_owned));
    remarks.extend(it.facts.iter().cloned());
    let (led, others): (Vec<usize>, Vec<usize>) =
        it.on.iter().filter(|other| **other != net).partition(|other| scene.nets[**other].leader == Some(unit));
    for (words, nets) in [("leads", led), ("also on", others)] {
        let names = nets.into_iter().map(|net| scene.nets[net].name.as_str()).collect::<Vec<_>>().join(", ");
        if !names.is_empty() {
            remarks.push(format!("{words} {names}"));
        }
    }
    remarks
}

/// What a unit is to the wires of a network.
fn wiring_remarks(net: &Net, unit: usize) -> Vec<String> {
    let mut remarks = Vec::new();
    if net.terminators.contains(&unit) {
        remarks.push("terminator".to_owned());
    }
    if net.star == Some(unit) {
        remarks.push("active star of this network".to_owned());
    }
    let branch = net.branch_of(unit).filter(|branch| net.branches[*branch].len() > 1);
    remarks.extend(branch.map(|branch| format!("branch {}", branch + 1)));
    remarks
}

/// What is guessed shows always, the finer grades where somebody asks for them.
fn shown_grade(grade: Option<Grade>, options: &MapOptions) -> Option<&'static str> {
    grade.filter(|grade| options.certainty || *grade == Grade::Guessed).map(Grade::words)
}

fn push_wires(text: &mut String, scene: &Scene) {
    if scene.wires.is_empty() {
        return;
    }
    text.push_str("\nPlain wires\n");
    for (number, wire) in scene.wires.iter().enumerate() {
        let to = wire.to.iter().map(|unit| scene.units[*unit].name.as_str()).collect::<Vec<_>>().join(", ");
        let line = format!("{} ┈┈> {to}: {}", scene.units[wire.from].name, wire.what);
        push_wrapped(text, &format!("{:>4}  ", number + 1), "      ", &line);
    }
}

/// Adds a text in lines of so many columns as there are; the first begins with `first`, the others with `next`.
fn push_wrapped(text: &mut String, first: &str, next: &str, words: &str) {
    let mut line = first.to_owned();
    let mut is_begun = false;
    for word in words.split(' ').filter(|word| !word.is_empty()) {
        let blank = usize::from(is_begun);
        if is_begun && line.width() + blank + word.width() > COLUMNS {
            let _ = writeln!(text, "{}", line.trim_end());
            line = next.to_owned();
            is_begun = false;
        }
        if is_begun {
            line.push(' ');
        }
        let room = COLUMNS.saturating_sub(line.width()).max(1);
        line.push_str(&shortened(word, room));
        is_begun = true;
    }
    let _ = writeln!(text, "{}", line.trim_end());
}

fn padded(word: &str, room: usize) -> String {
    let word = shortened(word, room);
    let missing = room.saturating_sub(word.width());
    format!("{word}{}", " ".repeat(missing))
}

/// A text that takes at most so many columns.
fn shortened(text: &str, room: usize) -> String {
    if text.width() <= room {
        return text.to_owned();
    }
    let mut short = String::new();
    let mut width = 1;
    for letter in text.chars() {
        width += letter.width().unwrap_or(0);
        if width > room {
            break;
        }
        short.push(letter);
    }
    format!("{short}…")
}
