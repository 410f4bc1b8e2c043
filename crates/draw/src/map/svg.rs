//! A sheet written down as SVG.

mod explanations;
mod shapes;

use std::fmt::Write;

use super::Blank;
use super::picture::{Line, NetLabel, Point, Rect, Role, UnitBox, at};
use super::sheet::{Sheet, TITLE_FACE};
use super::strong::Part;
use super::style::{INK, PAPER, QUIET, colour, dashes, letter, strokes};
use super::words::{BADGE_WIDTH, BoxWords, FACTS_FACE, NET_FACE, NetWords, SMALL_FACE, UNIT_FACE};
use crate::elements::{self, words};
use crate::text::{Face, escaped};
use shapes::{arrow, box_shape, path_data};

/// How much of what is not listened to remains.
const PALE: &str = " opacity=\"0.22\"";

/// From one terminator in the wiring to the next.
const TERMINATOR_STEP: i32 = 15;

/// The sheet as a text of SVG.
pub(crate) fn svg(sheet: &Sheet) -> String {
    let mut text = String::new();
    elements::begin(&mut text, (sheet.width, sheet.height), &sheet.title.join(" "), shapes::DEFINITIONS);
    heading(&mut text, sheet);
    // Writing to a string cannot fail, here and below.
    let _ = writeln!(text, "<g transform=\"translate(0 {})\">", sheet.map_top);
    // Networks lie at the bottom, ways across them on top, so that a crossing does not look like a meeting.
    let (below, above): (Vec<&Line>, Vec<&Line>) =
        sheet.picture.lines.iter().partition(|line| matches!(line.role, Role::Rail | Role::Ring));
    below.into_iter().chain(above).for_each(|line| draw_line(&mut text, sheet, line));
    (0..sheet.scene.nets.len()).for_each(|net| draw_wiring(&mut text, sheet, net));
    sheet.picture.boxes.iter().for_each(|it| draw_box(&mut text, sheet, it));
    sheet.picture.labels.iter().for_each(|label| draw_label(&mut text, sheet, label));
    text.push_str("</g>\n");
    explanations::draw(&mut text, sheet);
    text.push_str("</svg>\n");
    text
}

fn heading(text: &mut String, sheet: &Sheet) {
    let mut y = super::place::MARGIN + 18;
    for line in &sheet.title {
        words(text, TITLE_FACE, "", (super::place::MARGIN, y), INK, line);
        y += 25;
    }
    words(text, Face::plain(12), "", (super::place::MARGIN, y - 5), QUIET, &sheet.subtitle);
}

fn is_strong_line(sheet: &Sheet, line: &Line) -> bool {
    let Some(strong) = &sheet.strong else { return true };
    let goes = |unit: usize| strong.directions(unit, line.net) != (false, false);
    match (line.role, line.unit) {
        (Role::Stub | Role::Link, Some(unit)) => goes(unit),
        _ => strong.nets[line.net],
    }
}

fn draw_line(text: &mut String, sheet: &Sheet, line: &Line) {
    let net = &sheet.scene.nets[line.net];
    let ink = colour(sheet.letters[line.net]);
    let is_strong = is_strong_line(sheet, line);
    let pale = if is_strong { "" } else { PALE };
    let kind = if line.role == Role::Stub || line.role == Role::Link { "stub" } else { "net" };
    let unit = line.unit.filter(|_| kind == "stub").map(|unit| format!(" data-u=\"{unit}\"")).unwrap_or_default();
    let _ = writeln!(text, "<g class=\"{kind}\"{unit} data-n=\"{}\"{pale} fill=\"none\">", line.net);
    let data = path_data(&line.points);
    let dash =
        dashes(net.grade, sheet.certainty).map(|dash| format!(" stroke-dasharray=\"{dash}\"")).unwrap_or_default();
    let is_network = kind == "net";
    if is_network {
        for (tenths, is_ink) in strokes(net.kind, net.channels) {
            let (stroke, dash) = if *is_ink { (ink, dash.as_str()) } else { (PAPER, "") };
            let _ = writeln!(
                text,
                "<path d=\"{data}\" stroke=\"{stroke}\" stroke-width=\"{}.{}\" stroke-linejoin=\"round\"{dash}/>",
                tenths / 10,
                tenths % 10
            );
        }
        shapes::rhythm(text, net.kind, &line.points, ink);
        if line.role == Role::Ring {
            let members = sheet.picture.boxes.iter().filter(|it| net.members.contains(&it.unit));
            shapes::chevrons(text, &line.points, &members.map(|it| it.rect).collect::<Vec<_>>(), ink);
        }
    } else {
        let _ = writeln!(text, "<path d=\"{data}\" stroke=\"{PAPER}\" stroke-width=\"6\"/>");
        let width = if sheet.strong.is_some() && is_strong { "3" } else { "2" };
        let _ = writeln!(
            text,
            "<path d=\"{data}\" stroke=\"{ink}\" stroke-width=\"{width}\" stroke-linejoin=\"round\"{dash}/>"
        );
        shapes::ends(text, line, ink);
    }
    if line.unit.is_some_and(|unit| net.terminators.contains(&unit)) {
        shapes::terminator(text, &line.points, ink);
    }
    if let (Some(strong), Some(unit), true) = (&sheet.strong, line.unit, is_strong) {
        let (inward, outward) = strong.directions(unit, line.net);
        if inward {
            arrow(text, &line.points, true, is_network, ink);
        }
        if outward {
            arrow(text, &line.points, false, is_network, ink);
        }
    }
    text.push_str("</g>\n");
}

/// The terminators in the wiring stand where the line begins: at which end of it each one is, the description does not say.
fn draw_wiring(text: &mut String, sheet: &Sheet, net: usize) {
    let count = sheet.scene.nets[net].in_wiring;
    let rail = sheet.picture.lines.iter().find(|line| line.net == net && line.role == Role::Rail);
    let Some(Point { x, y }) = rail.and_then(|line| line.points.last()).filter(|_| count > 0) else { return };
    let ink = colour(sheet.letters[net]);
    let _ = writeln!(text, "<g class=\"net\" data-n=\"{net}\" fill=\"none\">");
    for number in 1..=count as i32 {
        let from = x + TERMINATOR_STEP * number;
        shapes::terminator(text, &[at(from + TERMINATOR_STEP, *y), at(from, *y)], ink);
    }
    text.push_str("</g>\n");
}

/// The full words of an item, for whoever points at it.
fn tooltip(text: &mut String, sheet: &Sheet, title: &str, name: &str, more: &str) {
    if sheet.blank == Blank::Exercise {
        return;
    }
    let name = if name == title || name.is_empty() { String::new() } else { format!(" ({name})") };
    let more = if more.is_empty() { String::new() } else { format!(": {more}") };
    let _ = writeln!(text, "<title>{}</title>", escaped(&format!("{title}{name}{more}")));
}

fn draw_box(text: &mut String, sheet: &Sheet, it: &UnitBox) {
    let unit = &sheet.scene.units[it.unit];
    let part = sheet.strong.as_ref().and_then(|strong| strong.units[it.unit]);
    let pale = if sheet.strong.is_some() && part.is_none() { PALE } else { "" };
    let list = |items: &[usize]| items.iter().map(usize::to_string).collect::<Vec<_>>().join(" ");
    // What is pale must not show the lines below.
    let Rect { x, y, width, height } = it.rect;
    let _ =
        writeln!(text, "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" rx=\"5\" fill=\"{PAPER}\"/>");
    let _ = writeln!(text, "<g class=\"unit\" data-u=\"{}\" data-n=\"{}\"{pale}>", it.unit, list(&unit.on));
    let on: Vec<&str> =
        unit.on.iter().map(|net| sheet.scene.nets[*net].name.as_str()).filter(|it| !it.is_empty()).collect();
    tooltip(text, sheet, &unit.title, &unit.name, &on.join(", "));
    let dash = dashes(unit.grade, sheet.certainty);
    box_shape(text, it.rect, unit.is_gateway || it.tall, unit.is_optional, dash, sheet.marked[it.unit], part);
    if unit.is_star {
        shapes::star(text, at(x + 13, y + 13), if part == Some(Part::Sends) { PAPER } else { INK });
    }
    let is_dark = part == Some(Part::Sends) && !sheet.marked[it.unit];
    let (ink, quiet) = if is_dark { (PAPER, PAPER) } else { (INK, QUIET) };
    if sheet.marked[it.unit] {
        // Letters stay readable on the hatching.
        let _ = writeln!(
            text,
            "<g stroke=\"{PAPER}\" stroke-width=\"4\" stroke-linejoin=\"round\" paint-order=\"stroke\">"
        );
    }
    box_words(text, sheet, it, (ink, quiet));
    if sheet.marked[it.unit] {
        text.push_str("</g>\n");
    }
    text.push_str("</g>\n");
}

fn box_words(text: &mut String, sheet: &Sheet, it: &UnitBox, (ink, quiet): (&str, &str)) {
    let lines = BoxWords::of(&sheet.scene, it.unit, sheet.blank != Blank::No);
    let middle = it.rect.middle();
    let mut y = middle.y - (lines.height() - 12) / 2 - 3;
    if lines.numbered {
        y += BoxWords::title_leading();
        let number = sheet.numbers[it.unit].to_string();
        if sheet.blank == Blank::Exercise {
            words(text, UNIT_FACE, "", (it.rect.x + 8, it.rect.y + 16), ink, &number);
            return;
        }
        words(text, UNIT_FACE, "middle", (middle.x, y), ink, &number);
    }
    for line in &lines.title {
        y += BoxWords::title_leading();
        words(text, UNIT_FACE, "middle", (middle.x, y), ink, line);
    }
    for line in &lines.small {
        y += BoxWords::small_leading();
        words(text, SMALL_FACE, "middle", (middle.x, y), quiet, line);
    }
    if let Some(line) = &lines.wires {
        y += BoxWords::small_leading();
        let left = middle.x - (SMALL_FACE.width(line) + 20) / 2;
        shapes::wire(text, (left, y - 3), left + 16, quiet);
        words(text, SMALL_FACE, "", (left + 20, y), quiet, line);
    }
}

fn draw_label(text: &mut String, sheet: &Sheet, label: &NetLabel) {
    let net = &sheet.scene.nets[label.net];
    let is_strong = sheet.strong.as_ref().is_none_or(|strong| strong.nets[label.net]);
    let pale = if is_strong { "" } else { PALE };
    let _ = writeln!(text, "<g class=\"net\" data-n=\"{}\"{pale}>", label.net);
    tooltip(text, sheet, &net.title, &net.name, &net.facts);
    let Rect { x, y, width, .. } = label.rect;
    let under_line = label.line_y > y;
    let lines = if under_line { NetWords::of(net, width, label.continued) } else { NetWords::inner(net, width) };
    let is_exercise = sheet.blank == Blank::Exercise;
    let first = y + NetWords::leading() - 3;
    if net.id.is_some() {
        badge(text, (x + 8, first - 4), sheet.letters[label.net]);
    }
    let title = lines.title.iter().filter(|_| !is_exercise || net.id.is_none());
    for (number, line) in title.enumerate() {
        let x = if net.id.is_some() { x + BADGE_WIDTH } else { x };
        words(text, NET_FACE, "", (x, first + number as i32 * NetWords::leading()), INK, line);
    }
    let below = if under_line { label.line_y + 17 } else { first + lines.title.len() as i32 * NetWords::leading() - 1 };
    if !is_exercise && !lines.facts.is_empty() {
        words(text, FACTS_FACE, "", (if under_line { x } else { x + BADGE_WIDTH }, below), QUIET, &lines.facts);
    }
    text.push_str("</g>\n");
}

/// The letter of a network.
fn badge(text: &mut String, (x, y): (i32, i32), number: usize) {
    let _ = writeln!(text, "<circle cx=\"{x}\" cy=\"{y}\" r=\"8\" fill=\"{}\"/>", colour(number));
    let letter = letter(number);
    let size = if letter.len() > 1 { 8 } else { 10 };
    words(text, Face::bold(size), "middle", (x, y + 4), PAPER, &letter);
}
