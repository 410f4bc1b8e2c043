//! What stands below the map.

use std::fmt::Write;

use wirelore_model::NetworkKind;

use super::shapes::{box_shape, chevrons, path_data, rhythm, star, terminator, wire};
use crate::elements::words;
use crate::map::legend::{ENTRY_FACE, ENTRY_LEADING, Entry, HEADING_FACE, HEADING_ROOM, Look, SAMPLE_WIDTH, Sample};
use crate::map::picture::{Rect, at};
use crate::map::sheet::Sheet;
use crate::map::strong::Part;
use crate::map::style::{INK, PAPER, strokes};
use crate::text::Face;

/// Length of a sample.
const LONG: i32 = 44;

pub(super) fn draw(text: &mut String, sheet: &Sheet) {
    for (rect, entry) in &sheet.panel {
        let units = match entry.sample {
            Sample::Wire(number) => sheet.scene.wires.get(number),
            _ => None,
        };
        let group = units.map(|wire| {
            let all: Vec<String> =
                std::iter::once(wire.from).chain(wire.to.iter().copied()).map(|it| it.to_string()).collect();
            format!(" class=\"wire\" data-u=\"{}\"", all.join(" "))
        });
        let _ = writeln!(text, "<g{}>", group.unwrap_or_default());
        draw_entry(text, *rect, entry);
        text.push_str("</g>\n");
    }
}

fn draw_entry(text: &mut String, rect: Rect, entry: &Entry) {
    let mut y = rect.y;
    if let Some(heading) = entry.heading {
        words(text, HEADING_FACE, "", (rect.x, y + 15), INK, heading);
        y += HEADING_ROOM;
    }
    let middle = y + 6;
    match entry.sample {
        Sample::None => {}
        Sample::Line(kind, channels) => line_sample(text, kind, channels, (rect.x, middle)),
        Sample::Terminator => {
            let points = [at(rect.x, middle), at(rect.x + LONG, middle)];
            let _ = writeln!(
                text,
                "<path d=\"{}\" stroke=\"{INK}\" stroke-width=\"4\" fill=\"none\"/>",
                path_data(&points)
            );
            terminator(text, &[at(rect.x, middle), at(rect.x + 28, middle)], INK);
        }
        Sample::Box(look) => box_sample(text, look, (rect.x, middle)),
        Sample::Wire(number) => {
            if number != usize::MAX {
                words(text, Face::bold(10), "end", (rect.x + 16, y + 10), INK, &(number + 1).to_string());
            }
            let from = if number == usize::MAX { rect.x } else { rect.x + 22 };
            wire(text, (from, middle), rect.x + LONG, INK);
        }
    }
    let x = if entry.sample == Sample::None { rect.x } else { rect.x + SAMPLE_WIDTH };
    for line in &entry.lines {
        words(text, ENTRY_FACE, "", (x, y + 10), INK, line);
        y += ENTRY_LEADING;
    }
}

fn line_sample(text: &mut String, kind: NetworkKind, channels: (bool, bool), (x, y): (i32, i32)) {
    let points = [at(x, y), at(x + LONG, y)];
    text.push_str("<g fill=\"none\">\n");
    for (tenths, is_ink) in strokes(kind, channels) {
        let stroke = if *is_ink { INK } else { PAPER };
        let _ = writeln!(
            text,
            "<path d=\"{}\" stroke=\"{stroke}\" stroke-width=\"{}.{}\"/>",
            path_data(&points),
            tenths / 10,
            tenths % 10
        );
    }
    rhythm(text, kind, &points, INK);
    if kind == NetworkKind::Most {
        chevrons(text, &points, &[], INK);
    }
    if kind == NetworkKind::Ethernet {
        for end in points {
            let _ = writeln!(
                text,
                "<rect x=\"{}\" y=\"{}\" width=\"6\" height=\"6\" fill=\"{INK}\"/>",
                end.x - 3,
                end.y - 3
            );
        }
    }
    text.push_str("</g>\n");
}

fn box_sample(text: &mut String, look: Look, (x, y): (i32, i32)) {
    let rect = Rect { x: x + 2, y: y - 7, width: LONG - 4, height: 15 };
    let part = if let Look::Part(part) = look { Some(part) } else { None };
    let dash = match look {
        Look::Guessed => Some("4 4"),
        Look::Likely => Some("14 5"),
        _ => None,
    };
    let is_gateway = matches!(look, Look::Gateway | Look::Star) || part == Some(Part::PassesOn);
    box_shape(text, rect, is_gateway, look == Look::Optional, dash, look == Look::Marked, part);
    if look == Look::Star {
        star(text, rect.middle(), INK);
    }
}
