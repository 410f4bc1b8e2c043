//! Boxes, ends of lines, arrows and dots.

use std::fmt::Write;

use wirelore_model::NetworkKind;

use crate::map::picture::{Line, Point, Rect, Role};
use crate::map::strong::Part;
use crate::map::style::{FILL, INK, PAPER, QUIET, TALL_FILL};

/// The hatching of marked boxes.
pub(super) const DEFINITIONS: &str = "<defs><pattern id=\"hatch\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\" \
     patternTransform=\"rotate(45)\"><rect width=\"7\" height=\"7\" fill=\"#ffffff\"/><rect width=\"2\" height=\"7\" \
     fill=\"#b9c2cc\"/></pattern></defs>\n";

/// Corners of boxes.
const CORNER: i32 = 5;
/// The folded corner of what is not always fitted.
const FOLD: i32 = 11;
/// The distance of two ticks or beads on a line.
const RHYTHM: usize = 22;

/// A terminator: how far from the end of its line, how long, how wide.
const TERMINATOR_OFF: i32 = 2;
const TERMINATOR_LENGTH: i32 = 10;
const TERMINATOR_WIDTH: i32 = 8;

/// The points of a line as a path.
pub(super) fn path_data(points: &[Point]) -> String {
    let mut data = String::new();
    for (number, point) in points.iter().enumerate() {
        let _ = write!(data, "{}{} {}", if number == 0 { "M" } else { "L" }, point.x, point.y);
    }
    if points.len() > 2 && points.first() == points.last() {
        data.push('Z');
    }
    data
}

/// A box with its marks.
pub(super) fn box_shape(
    text: &mut String,
    rect: Rect,
    is_gateway: bool,
    is_optional: bool,
    dash: Option<&str>,
    is_marked: bool,
    part: Option<Part>,
) {
    let Rect { x, y, width, height } = rect;
    let fill = match part {
        _ if is_marked => "url(#hatch)",
        Some(Part::Sends) => INK,
        _ if is_gateway => TALL_FILL,
        _ => FILL,
    };
    let stroke = if part.is_some() || is_marked { "2.6" } else { "1.3" };
    let dash = dash.map(|dash| format!(" stroke-dasharray=\"{dash}\"")).unwrap_or_default();
    let _ = writeln!(
        text,
        "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" rx=\"{CORNER}\" fill=\"{fill}\" stroke=\"{INK}\" \
         stroke-width=\"{stroke}\"{dash}/>"
    );
    if is_gateway {
        let _ = writeln!(
            text,
            "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"3\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"0.8\"/>",
            x + 3,
            y + 3,
            width - 6,
            height - 6
        );
    }
    if is_optional {
        let (right, fold) = (x + width, FOLD);
        let _ = writeln!(
            text,
            "<path d=\"M{} {y}L{right} {}L{right} {y}Z\" fill=\"{PAPER}\" stroke=\"{PAPER}\" stroke-width=\"3\"/>\
             <path d=\"M{} {y}L{} {}L{right} {}Z\" fill=\"#cfd7df\" stroke=\"{INK}\" stroke-width=\"1.1\" \
             stroke-linejoin=\"round\"/>",
            right - fold,
            y + fold,
            right - fold,
            right - fold,
            y + fold,
            y + fold
        );
    }
}

/// What tells where a line ends: a dot on the network it hangs on, squares at both ends of a link.
pub(super) fn ends(text: &mut String, line: &Line, ink: &str) {
    let (Some(first), Some(last)) = (line.points.first(), line.points.last()) else { return };
    let mut square = |point: &Point| {
        let _ = writeln!(
            text,
            "<rect x=\"{}\" y=\"{}\" width=\"6\" height=\"6\" fill=\"{ink}\"/>",
            point.x - 3,
            point.y - 3
        );
    };
    if line.role == Role::Link {
        square(first);
        square(last);
    } else if line.joins {
        let _ = writeln!(text, "<circle cx=\"{}\" cy=\"{}\" r=\"4\" fill=\"{ink}\"/>", first.x, first.y);
    }
}

/// Ticks on single wires of diagnosis, beads on other single wires: their lines would look like those of LIN.
pub(super) fn rhythm(text: &mut String, kind: NetworkKind, points: &[Point], ink: &str) {
    if !matches!(kind, NetworkKind::Kline | NetworkKind::Uart) {
        return;
    }
    for pair in points.windows(2) {
        let (low, high) = (pair[0].x.min(pair[1].x), pair[0].x.max(pair[1].x));
        for x in (low + RHYTHM as i32 / 2..high).step_by(RHYTHM).filter(|_| pair[0].y == pair[1].y) {
            let y = pair[0].y;
            let _ = if kind == NetworkKind::Kline {
                writeln!(text, "<path d=\"M{x} {}V{}\" stroke=\"{ink}\" stroke-width=\"1.6\"/>", y - 5, y + 5)
            } else {
                writeln!(
                    text,
                    "<circle cx=\"{x}\" cy=\"{y}\" r=\"3\" fill=\"{PAPER}\" stroke=\"{ink}\" stroke-width=\"1.4\"/>"
                )
            };
        }
    }
}

/// The direction of a ring, wherever it can be seen between its boxes.
pub(super) fn chevrons(text: &mut String, points: &[Point], boxes: &[Rect], ink: &str) {
    for pair in points.windows(2) {
        for (middle, (dx, dy)) in gaps(pair[0], pair[1], boxes) {
            let Point { x, y } = middle;
            // Wings across the direction, the tip in it.
            let wing = |side: i32| (x - 3 * dx - 4 * side * dy, y - 3 * dy - 4 * side * dx);
            let ((ax, ay), (bx, by)) = (wing(1), wing(-1));
            let _ = writeln!(
                text,
                "<path d=\"M{ax} {ay}L{} {}L{bx} {by}\" stroke=\"{ink}\" stroke-width=\"2\" stroke-linejoin=\"round\"/>",
                x + 3 * dx,
                y + 3 * dy
            );
        }
    }
}

/// The middles of the stretches of a straight line that no box covers, and its direction.
fn gaps(from: Point, to: Point, boxes: &[Rect]) -> Vec<(Point, (i32, i32))> {
    let direction = ((to.x - from.x).signum(), (to.y - from.y).signum());
    let is_level = from.y == to.y;
    let along = |point: Point| if is_level { point.x } else { point.y };
    let (low, high) = (along(from).min(along(to)), along(from).max(along(to)));
    let mut covered: Vec<(i32, i32)> = boxes
        .iter()
        .filter(|rect| {
            let (across, first, last) =
                if is_level { (from.y, rect.y, rect.bottom()) } else { (from.x, rect.x, rect.right()) };
            (first..=last).contains(&across)
        })
        .map(|rect| if is_level { (rect.x, rect.right()) } else { (rect.y, rect.bottom()) })
        .collect();
    covered.push((high, high));
    covered.sort_unstable();
    let (mut gaps, mut seen) = (Vec::new(), low);
    for (first, last) in covered {
        let first = first.clamp(low, high);
        if first - seen >= 12 {
            let middle = (first + seen) / 2;
            let point = if is_level { Point { x: middle, y: from.y } } else { Point { x: from.x, y: middle } };
            gaps.push((point, direction));
        }
        seen = seen.max(last);
    }
    gaps
}

/// An arrow at the end of a line: into the unit, or from it to the network.
pub(super) fn arrow(text: &mut String, points: &[Point], inward: bool, at_unit: bool, ink: &str) {
    let count = points.len();
    let (Some(last), Some(before)) = (points.last(), count.checked_sub(2).and_then(|at| points.get(at))) else {
        return;
    };
    let (out_x, out_y) = ((before.x - last.x).signum(), (before.y - last.y).signum());
    // Into the unit: the tip at its edge. From it: the tip at the network, or a little off the edge of a tall unit.
    let (tip, direction) = if inward {
        (Point { x: last.x + out_x, y: last.y + out_y }, (-out_x, -out_y))
    } else if at_unit {
        (Point { x: last.x + 26 * out_x, y: last.y + 26 * out_y }, (out_x, out_y))
    } else {
        let (first, second) = (points[0], points[1]);
        let towards = ((first.x - second.x).signum(), (first.y - second.y).signum());
        (Point { x: first.x - 3 * towards.0, y: first.y - 3 * towards.1 }, towards)
    };
    let wing = |side: i32| {
        (tip.x - 11 * direction.0 - 6 * side * direction.1, tip.y - 11 * direction.1 - 6 * side * direction.0)
    };
    let ((ax, ay), (bx, by)) = (wing(1), wing(-1));
    let _ = writeln!(
        text,
        "<path d=\"M{} {}L{ax} {ay}L{bx} {by}Z\" fill=\"{ink}\" stroke=\"{PAPER}\" stroke-width=\"1\"/>",
        tip.x, tip.y
    );
}

/// A resistor (the rectangle of IEC 60617) on the last piece of a line, just before it ends.
pub(super) fn terminator(text: &mut String, points: &[Point], ink: &str) {
    let [.., before, last] = points else { return };
    let (dx, dy) = ((before.x - last.x).signum(), (before.y - last.y).signum());
    let (from, to) = (TERMINATOR_OFF, TERMINATOR_OFF + TERMINATOR_LENGTH);
    let half = TERMINATOR_WIDTH / 2;
    let x = last.x + (dx * from).min(dx * to) - half * dy.abs();
    let y = last.y + (dy * from).min(dy * to) - half * dx.abs();
    let (width, height) =
        if dx == 0 { (TERMINATOR_WIDTH, TERMINATOR_LENGTH) } else { (TERMINATOR_LENGTH, TERMINATOR_WIDTH) };
    let _ = writeln!(
        text,
        "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" fill=\"{PAPER}\" stroke=\"{ink}\" stroke-width=\"2\"/>"
    );
}

/// The rays of an active star.
pub(super) fn star(text: &mut String, Point { x, y }: Point, ink: &str) {
    let rays = [(0, 7), (6, 4), (6, -4)].map(|(dx, dy)| format!("M{} {}L{} {}", x - dx, y - dy, x + dx, y + dy));
    let _ = writeln!(
        text,
        "<path d=\"{}\" stroke=\"{ink}\" stroke-width=\"2\" stroke-linecap=\"round\" fill=\"none\"/>",
        rays.concat()
    );
}

/// A piece of a plain wire.
pub(super) fn wire(text: &mut String, (x, y): (i32, i32), end: i32, ink: &str) {
    let ink = if ink == QUIET { INK } else { ink };
    let _ = writeln!(
        text,
        "<path d=\"M{x} {y}H{end}\" stroke=\"{ink}\" stroke-width=\"2\" stroke-dasharray=\"0.1 4\" stroke-linecap=\"round\" fill=\"none\"/>"
    );
}
