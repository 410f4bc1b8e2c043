//! The measure: what lies on something else, what does not fit, what is beyond the edge.

use crate::map::Blank;
use crate::map::picture::{Line, Point, Rect, Role};
use crate::map::sheet::Sheet;
use crate::map::words::{BoxWords, FACTS_FACE, NET_FACE, NetWords, SMALL_FACE, UNIT_FACE};

fn inside(rect: Rect, by: i32) -> Rect {
    Rect { x: rect.x + by, y: rect.y + by, width: rect.width - 2 * by, height: rect.height - 2 * by }
}

fn overlap(one: Rect, other: Rect) -> bool {
    one.x < other.right() && other.x < one.right() && one.y < other.bottom() && other.y < one.bottom()
}

/// The straight pieces of a line, as thin rectangles.
fn pieces(line: &Line) -> impl Iterator<Item = Rect> {
    line.points.windows(2).map(|pair| {
        let [Point { x, y }, Point { x: to_x, y: to_y }] = [pair[0], pair[1]];
        assert!(x == to_x || y == to_y, "lines are upright or level: {pair:?}");
        Rect { x: x.min(to_x), y: y.min(to_y), width: (x - to_x).abs().max(1), height: (y - to_y).abs().max(1) }
    })
}

/// Everything that is wrong with a sheet.
pub(super) fn faults(sheet: &Sheet) -> Vec<String> {
    let mut faults = Vec::new();
    let picture = &sheet.picture;
    let name = |unit: usize| &sheet.scene.units[unit].name;
    for (number, one) in picture.boxes.iter().enumerate() {
        for other in &picture.boxes[..number] {
            if overlap(inside(one.rect, -3), other.rect) {
                faults.push(format!("{} lies on {}", name(one.unit), name(other.unit)));
            }
        }
        let words = BoxWords::of(&sheet.scene, one.unit, sheet.blank != Blank::No);
        let widths = words.title.iter().map(|line| UNIT_FACE.width(line));
        let small = words.small.iter().map(|line| SMALL_FACE.width(line));
        let wires = words.wires.iter().map(|line| SMALL_FACE.width(line) + 20);
        if widths.chain(small).chain(wires).any(|width| width > one.rect.width - 8) || words.height() > one.rect.height
        {
            faults.push(format!("the words of {} do not fit {:?}", name(one.unit), one.rect));
        }
    }
    for line in &picture.lines {
        for piece in pieces(line) {
            for it in &picture.boxes {
                let is_own = line.unit == Some(it.unit)
                    || (line.role == Role::Ring && sheet.scene.nets[line.net].members.contains(&it.unit));
                if !is_own && overlap(piece, it.rect) {
                    faults.push(format!("a {:?} of {} runs through {} {line:?}", line.role, line.net, name(it.unit)));
                }
            }
            for label in picture.labels.iter().filter(|label| label.net != line.net) {
                if overlap(piece, inside(label.rect, 1)) {
                    faults.push(format!(
                        "a {:?} of {} runs through the name of {}: {line:?} {:?}",
                        line.role, line.net, label.net, label.rect
                    ));
                }
            }
        }
    }
    for (number, label) in picture.labels.iter().enumerate() {
        for other in &picture.labels[..number] {
            if overlap(label.rect, other.rect) {
                faults.push(format!("the names of {} and {} meet: {label:?} {other:?}", label.net, other.net));
            }
        }
        for it in &picture.boxes {
            if overlap(label.rect, it.rect) {
                faults.push(format!("the name of {} lies on {}: {label:?} {:?}", label.net, name(it.unit), it.rect));
            }
        }
        let (net, width) = (&sheet.scene.nets[label.net], label.rect.width);
        let is_inner = label.line_y <= label.rect.y;
        let words = if is_inner { NetWords::inner(net, width) } else { NetWords::of(net, width, label.continued) };
        let fits = words.title.iter().all(|line| NET_FACE.width(line) <= label.rect.width - 22)
            && FACTS_FACE.width(&words.facts) <= label.rect.width
            && (!is_inner || words.height() <= label.rect.height);
        if !fits {
            faults.push(format!("the name of {} is too long", label.net));
        }
    }
    faults.extend(one_on_another(&picture.lines));
    faults.extend(beyond_the_edge(sheet));
    faults
}

/// Lines of different networks that run along each other: nobody could tell them apart.
fn one_on_another(lines: &[Line]) -> Vec<String> {
    let mut faults = Vec::new();
    for (number, one) in lines.iter().enumerate() {
        for other in lines[..number].iter().filter(|other| other.net != one.net) {
            for (piece, second) in pieces(one).flat_map(|piece| pieces(other).map(move |second| (piece, second))) {
                let along = |rect: Rect| rect.width.max(rect.height) > 4;
                let same_way = (piece.width > piece.height) == (second.width > second.height);
                if along(piece) && along(second) && same_way && overlap(piece, second) {
                    faults.push(format!("{} and {} run on one another: {one:?} {other:?}", one.net, other.net));
                }
            }
        }
    }
    faults
}

fn beyond_the_edge(sheet: &Sheet) -> Vec<String> {
    let picture = &sheet.picture;
    let boxes = picture.boxes.iter().map(|it| it.rect).chain(picture.labels.iter().map(|it| it.rect));
    let points = picture.lines.iter().flat_map(|line| &line.points);
    let all = boxes.chain(points.map(|point| Rect { x: point.x, y: point.y, width: 0, height: 0 }));
    let map =
        all.filter(|rect| rect.x < 8 || rect.right() > sheet.width - 8 || rect.y < 0 || rect.bottom() > picture.height);
    let panel = sheet.panel.iter().map(|(rect, _)| *rect);
    let below = panel.filter(|rect| {
        rect.right() > sheet.width || rect.bottom() > sheet.height || rect.y < sheet.map_top + picture.height
    });
    map.chain(below).map(|rect| format!("{rect:?} is beyond the edge")).collect()
}
