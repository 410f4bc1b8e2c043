//! The sheet of paper: a map in the proportions that fill it best, a title above and explanations below.

use wirelore_model::Database;

use super::bands::{Sharing, bands};
use super::legend::{self, Entry};
use super::picture::{Picture, Rect};
use super::place::{MARGIN, place};
use super::plan::Plan;
use super::route::Routes;
use super::scene::Scene;
use super::strong::Strong;
use super::{Blank, MapOptions};
use crate::text::Face;

/// A4 lying on its side, in millimetres.
const PAPER: (i64, i64) = (297, 210);
/// No sheet is narrower than this, so that explanations can be read.
const LEAST_WIDTH: i32 = 720;
/// Columns of boxes that are tried.
const COLUMNS: std::ops::RangeInclusive<usize> = 2..=32;
/// How rows are shared, and how much larger than the best the sheet may become for it, in hundredths: fewer crossings are worth some room.
const SHARING: [(Sharing, i64); 3] = [
    (Sharing { quarters: 2, reached: 1 }, 100),
    (Sharing { quarters: 3, reached: 1 }, 100),
    (Sharing { quarters: 3, reached: usize::MAX }, 112),
];
/// How much dearer a sheet is on which a star takes several rows: only where there is no other.
const TORN: i64 = 100;
/// Width of a column of explanations, about, and the distance of two.
const PANEL_WIDTH: i32 = 300;
const PANEL_GAP: i32 = 28;
/// Above the explanations.
const PANEL_TOP: i32 = 8;

pub(crate) const TITLE_FACE: Face = Face::bold(20);
const TITLE_LEADING: i32 = 25;
const SUBTITLE_ROOM: i32 = 26;

/// A finished sheet.
#[derive(Debug)]
pub(crate) struct Sheet {
    pub(crate) scene: Scene,
    pub(crate) picture: Picture,
    pub(crate) title: Vec<String>,
    pub(crate) subtitle: String,
    /// How far down the map begins.
    pub(crate) map_top: i32,
    /// What stands below the map.
    pub(crate) panel: Vec<(Rect, Entry)>,
    pub(crate) width: i32,
    pub(crate) height: i32,
    /// For each network, its place in the alphabet; for each unit, its number.
    pub(crate) letters: Vec<usize>,
    pub(crate) numbers: Vec<usize>,
    pub(crate) strong: Option<Strong>,
    pub(crate) marked: Vec<bool>,
    pub(crate) blank: Blank,
    pub(crate) certainty: bool,
}

impl Sheet {
    pub(crate) fn of(database: &Database, options: &MapOptions) -> Self {
        let scene = Scene::of(database, options);
        let plan = Plan::of(&scene);
        let strong = options.listen.as_ref().map(|topic| Strong::of(database, &scene, topic));
        let sections = |blank| {
            let options = MapOptions { blank, ..options.clone() };
            legend::sections(database, &scene, &options, strong.as_ref())
        };
        // An exercise and its solution must not differ in anything but the words, so the longer words decide.
        let deciding = sections(if options.blank == Blank::Exercise { Blank::Solution } else { options.blank });
        let mut best: Option<(i64, Picture)> = None;
        for (columns, (sharing, price)) in COLUMNS.flat_map(|columns| SHARING.map(|sharing| (columns, sharing))) {
            let bands = bands(&scene, &plan, columns, sharing);
            let routes = Routes::of(&scene, &plan, &bands, columns);
            let picture = place(&scene, &plan, &bands, &routes, columns, options.blank != Blank::No);
            let width = picture.width.max(LEAST_WIDTH);
            let height = panel(&deciding, width, picture.height).1;
            // In two rows one branch of a star would look like two.
            let is_torn = bands.iter().any(|band| band.piece > 0 && scene.nets[band.nets[0]].star.is_some());
            let price = if is_torn { TORN * price } else { price };
            let size = (i64::from(width) * PAPER.1).max(i64::from(height) * PAPER.0) * price;
            if best.as_ref().is_none_or(|(smallest, _)| size < *smallest) {
                best = Some((size, picture));
            }
        }
        let (_, picture) = best.expect("some number of columns is tried");
        let width = picture.width.max(LEAST_WIDTH);
        let map_top = MARGIN + title(&scene, options, width).len() as i32 * TITLE_LEADING + SUBTITLE_ROOM;
        let (panel, bottom) = panel(&sections(options.blank), width, map_top + picture.height + PANEL_TOP);
        let height = bottom + MARGIN;
        let (letters, numbers) = (letters(&scene, &picture), numbers(&scene, &picture));
        let marked = scene.units.iter().map(|unit| unit.id.is_some_and(|id| options.marked.contains(&id))).collect();
        Self {
            title: title(&scene, options, width),
            subtitle: subtitle(&scene, options),
            scene,
            picture,
            map_top,
            panel,
            width,
            height,
            letters,
            numbers,
            strong,
            marked,
            blank: options.blank,
            certainty: options.certainty,
        }
    }
}

fn title(scene: &Scene, options: &MapOptions, width: i32) -> Vec<String> {
    let text = match options.blank {
        Blank::No => scene.title.clone(),
        Blank::Exercise => format!("Exercise: {}", scene.title),
        Blank::Solution => format!("Solution: {}", scene.title),
    };
    TITLE_FACE.wrap(&text, width - 2 * MARGIN, 2)
}

fn subtitle(scene: &Scene, options: &MapOptions) -> String {
    if scene.networks() == 0 && scene.units.is_empty() {
        return "The description has no networks and no control units yet.".to_owned();
    }
    let counted = |count: usize, word: &str| format!("{count} {word}{}", if count == 1 { "" } else { "s" });
    let mut parts = vec![counted(scene.networks(), "network"), counted(scene.control_units(), "control unit")];
    if !scene.wires.is_empty() {
        parts.push(counted(scene.wires.len(), "plain wire"));
    }
    let mut text = parts.join(", ");
    if options.blank == Blank::Exercise {
        text.push_str(". Which control unit is each number, which network each letter?");
    } else if !options.networks.is_empty() {
        text.push_str(" (a part of the vehicle)");
    }
    text
}

/// The letters of networks, in the order in which their names are met from the top.
fn letters(scene: &Scene, picture: &Picture) -> Vec<usize> {
    let mut order: Vec<_> = picture.labels.iter().map(|label| (label.rect.y, label.rect.x, label.net)).collect();
    order.sort_unstable();
    let mut letters = vec![0; scene.nets.len()];
    let mut seen: Vec<usize> = Vec::new();
    for (_, _, net) in order {
        if scene.nets[net].id.is_some() && !seen.contains(&net) {
            letters[net] = seen.len();
            seen.push(net);
        }
    }
    letters
}

/// The numbers of units, counted from 1, row by row.
fn numbers(scene: &Scene, picture: &Picture) -> Vec<usize> {
    let mut order: Vec<_> = picture.boxes.iter().map(|it| (!it.tall, it.rect.y, it.rect.x, it.unit)).collect();
    order.sort_unstable();
    let mut numbers = vec![0; scene.units.len()];
    for (number, (_, _, _, unit)) in order.into_iter().enumerate() {
        numbers[unit] = number + 1;
    }
    numbers
}

/// Sets explanations in columns of about equal height below `top`; also where they end.
fn panel(sections: &[legend::Section], width: i32, top: i32) -> (Vec<(Rect, Entry)>, i32) {
    let room = width - 2 * MARGIN;
    let columns = ((room + PANEL_GAP) / (PANEL_WIDTH + PANEL_GAP)).max(1);
    let column_width = (room - (columns - 1) * PANEL_GAP) / columns;
    let entries: Vec<Entry> = sections.iter().flat_map(|section| section.entries(column_width)).collect();
    let total: i32 = entries.iter().map(Entry::height).sum();
    let tallest = entries.iter().map(Entry::height).max().unwrap_or(0);
    let mut limit = (total / columns).max(tallest);
    while columns_needed(&entries, limit) > columns {
        limit += 4;
    }
    let (mut placed, mut x, mut y, mut bottom) = (Vec::new(), MARGIN, top, top);
    for entry in entries {
        if y > top && y + entry.height() > top + limit {
            x += column_width + PANEL_GAP;
            y = top;
        }
        let rect = Rect { x, y, width: column_width, height: entry.height() };
        y += rect.height;
        bottom = bottom.max(y);
        placed.push((rect, entry));
    }
    (placed, bottom)
}

fn columns_needed(entries: &[Entry], limit: i32) -> i32 {
    let (mut columns, mut filled) = (1, 0);
    for entry in entries {
        if filled > 0 && filled + entry.height() > limit {
            columns += 1;
            filled = 0;
        }
        filled += entry.height();
    }
    columns
}
