//! The lines of a layout: of each network, and from it to its units.

use super::bands::Placed;
use super::blocks::Sub;
use super::picture::{Line, Point, Rect, Role, at};
use super::place::{End, Ground, INNER_STUB, RING_INSET, Track};
use super::route::{Connection, Way};
use super::words::GUTTER_WIDTH;

/// Several lines that leave a box straight stand so far apart.
const BESIDE: i32 = 14;
/// The line to what hangs below a unit leaves it so far above its bottom; several stand so far apart.
const FEED: i32 = 9;
const FEED_APART: i32 = 6;

/// A line that no tall unit is on begins so far from the edge.
const APART: i32 = 4;

/// All lines.
pub(crate) fn lines(ground: &Ground<'_>) -> Vec<Line> {
    let mut lines = Vec::new();
    for (index, level) in ground.levels.iter().enumerate().take(ground.bands.len()) {
        for track in &level.tracks {
            match track.end {
                End::Rail | End::Branch(_) => rail(ground, index, track, &mut lines),
                End::Box(unit) => lines.push(link(ground, index, track, unit)),
                End::Connection(_) => {}
            }
        }
        for placed in ground.bands[index].placed() {
            for sub in &placed.block.subs {
                if ground.scene.nets[sub.net].is_ring() {
                    ring(ground, index, placed, sub, &mut lines);
                } else {
                    responders(ground, placed, sub, &mut lines);
                }
            }
        }
    }
    for (net, lane) in &ground.routes.trunks {
        let tracks = ground.levels.iter().flat_map(|level| &level.tracks).filter(|track| track.net == *net);
        let ys: Vec<i32> = tracks.map(|track| track.y).collect();
        if let (Some(first), Some(last)) = (ys.first(), ys.last()) {
            let x = ground.lane_x(*lane);
            lines.push(line(*net, Role::Rail, None, vec![at(x, *first), at(x, *last)], false));
        }
    }
    for (number, connection) in ground.routes.connections.iter().enumerate() {
        lines.push(connect(ground, number, connection));
    }
    lines
}

fn line(net: usize, role: Role, unit: Option<usize>, points: Vec<Point>, joins: bool) -> Line {
    Line { net, role, unit, points, joins }
}

/// Where the line of a network begins at the left.
fn beginning(ground: &Ground<'_>, index: usize, net: usize) -> i32 {
    let is_owned = ground.plan.owner[net].is_some()
        && (ground.bands[index].piece == 0 || ground.is_linked(net) || ground.is_starred(net));
    ground.tall_right.filter(|_| is_owned).unwrap_or(ground.gutter + APART)
}

/// A line that units hang on.
fn rail(ground: &Ground<'_>, index: usize, track: &Track, lines: &mut Vec<Line>) {
    let band = &ground.bands[index];
    let start = beginning(ground, index, track.net);
    let net = &ground.scene.nets[track.net];
    let mut end = start;
    let mut stubs = Vec::new();
    for (side, up) in [(&band.up, true), (&band.down, false)] {
        for placed in side.iter().filter(|placed| placed.net == track.net) {
            let Some((unit, _)) = placed.block.rows[0].first() else { continue };
            if !track.end.leads_to(net, *unit) {
                continue;
            }
            let rect = ground.rects[*unit];
            let x = rect.middle().x;
            end = end.max(x);
            let edge = if up { rect.bottom() } else { rect.y };
            stubs.push(line(track.net, Role::Stub, Some(*unit), vec![at(x, track.y), at(x, edge)], true));
        }
    }
    let reaches = |it: &&Connection| it.net == track.net && it.band == index && track.end.leads_to(net, it.unit);
    for connection in ground.routes.connections.iter().filter(reaches) {
        end = end.max(meeting_x(ground, connection));
    }
    for (_, lane) in ground.routes.trunks.iter().filter(|(net, _)| *net == track.net) {
        end = end.max(ground.lane_x(*lane));
    }
    if end == start {
        end = ground.gutter + GUTTER_WIDTH - 8;
    }
    if ground.scene.nets[track.net].id.is_some() {
        let owner = ground.plan.owner[track.net].filter(|_| Some(start) == ground.tall_right);
        lines.push(line(track.net, Role::Rail, owner, vec![at(end, track.y), at(start, track.y)], false));
        lines.extend(stubs);
    }
}

/// A link from a tall unit to a box.
fn link(ground: &Ground<'_>, index: usize, track: &Track, unit: usize) -> Line {
    let rect = ground.rects[unit];
    let x = rect.middle().x;
    let edge = if rect.y > track.y { rect.y } else { rect.bottom() };
    let start = beginning(ground, index, track.net);
    line(track.net, Role::Link, Some(unit), vec![at(start, track.y), at(x, track.y), at(x, edge)], false)
}

/// The x at which a connection meets its network.
fn meeting_x(ground: &Ground<'_>, connection: &Connection) -> i32 {
    match connection.way {
        Way::Straight(number) => {
            let step = (number as i32 + 1) / 2 * if number % 2 == 0 { 1 } else { -1 };
            ground.rects[connection.unit].middle().x + BESIDE * step
        }
        Way::Lane { lane, .. } | Way::Tall { lane, .. } | Way::Alley { second: lane, .. } => ground.lane_x(lane),
    }
}

/// From a network to a unit whose box hangs elsewhere.
fn connect(ground: &Ground<'_>, number: usize, connection: &Connection) -> Line {
    let rect = ground.rects[connection.unit];
    let x = meeting_x(ground, connection);
    let tracks = &ground.levels[connection.band].tracks;
    let own = tracks.iter().find(|track| track.net == connection.net && track.end == End::Connection(number));
    let net = &ground.scene.nets[connection.net];
    let is_shared = |track: &&Track| track.net == connection.net && track.end.leads_to(net, connection.unit);
    let of_net = |track: &&Track| track.net == connection.net;
    let shared = tracks.iter().find(is_shared).or_else(|| tracks.iter().find(of_net));
    let (y, from) = match (own, shared) {
        (Some(track), _) => (track.y, Some(beginning(ground, connection.band, connection.net))),
        (None, Some(track)) => (track.y, None),
        (None, None) => inner_meeting(ground, connection.net, x),
    };
    let mut points: Vec<Point> = from.map(|from| at(from, y)).into_iter().collect();
    points.push(at(x, y));
    let exit = ground.exit_y(connection);
    let edge = |side| if side == super::route::Side::Left { rect.x } else { rect.right() };
    match connection.way {
        Way::Straight(_) => points.push(at(x, if rect.y > y { rect.y } else { rect.bottom() })),
        Way::Lane { side, .. } => points.extend([at(x, exit), at(edge(side), exit)]),
        Way::Alley { side, lane, alley, track, .. } => {
            let (alley, lane) = (ground.alley_y(alley, track), ground.lane_x(lane));
            points.extend([at(x, alley), at(lane, alley), at(lane, exit), at(edge(side), exit)]);
        }
        Way::Tall { alley, track, .. } => {
            let alley = ground.alley_y(alley, track);
            points.extend([at(x, alley), at(rect.right(), alley)]);
        }
    }
    let role = if own.is_some() { Role::Link } else { Role::Stub };
    line(connection.net, role, Some(connection.unit), points, own.is_none())
}

/// Where a network inside a block, or a ring, is met: its height, and where its own line has to begin.
fn inner_meeting(ground: &Ground<'_>, net: usize, x: i32) -> (i32, Option<i32>) {
    for (index, band) in ground.bands.iter().enumerate() {
        for placed in band.placed() {
            let Some(sub) = placed.block.subs.iter().find(|sub| sub.net == net) else { continue };
            if ground.scene.nets[net].is_ring() {
                let first = placed.block.rows[sub.rows.start].first();
                let beyond = first.map(|(unit, _)| ground.rects[*unit].x).filter(|left| x < *left);
                return (ring_y(ground, index, placed, sub.rows.start), beyond);
            }
            let boxes = rects(ground, placed, sub.rows.start);
            let y = boxes.first().map_or_else(|| below_leader(ground, net), |rect| rect.y - INNER_STUB);
            return (y, feed_of(ground, net).filter(|feed| x < *feed));
        }
    }
    (0, None)
}

fn rects(ground: &Ground<'_>, placed: &Placed, row: usize) -> Vec<Rect> {
    placed.block.rows[row].iter().map(|(unit, _)| ground.rects[*unit]).collect()
}

/// Where the line of a network that nobody answers on ends.
fn below_leader(ground: &Ground<'_>, net: usize) -> i32 {
    ground.plan.hung[net].map_or(0, |leader| ground.rects[leader].bottom() + INNER_STUB)
}

fn feed_of(ground: &Ground<'_>, net: usize) -> Option<i32> {
    ground.routes.feeds.iter().find(|(other, _)| *other == net).map(|(_, lane)| ground.lane_x(*lane))
}

/// A network below the unit that leads it.
fn responders(ground: &Ground<'_>, placed: &Placed, sub: &Sub, lines: &mut Vec<Line>) {
    let (Some(leader), Some(x)) = (ground.plan.hung[sub.net], feed_of(ground, sub.net)) else { return };
    let rect = ground.rects[leader];
    let earlier = placed.block.subs.iter().take_while(|other| other.net != sub.net);
    let above = earlier.filter(|other| !ground.scene.nets[other.net].is_ring()).count() as i32;
    let exit = rect.bottom() - FEED - FEED_APART * above;
    let mut last = exit;
    for row in sub.rows.clone() {
        let boxes = rects(ground, placed, row);
        let Some(y) = boxes.first().map(|rect| rect.y - INNER_STUB) else { continue };
        last = y;
        let end = boxes.iter().map(|rect| rect.middle().x).max().unwrap_or(x);
        lines.push(line(sub.net, Role::Rail, None, vec![at(x, y), at(end, y)], false));
        for ((unit, _), rect) in placed.block.rows[row].iter().zip(&boxes) {
            let middle = rect.middle().x;
            lines.push(line(sub.net, Role::Stub, Some(*unit), vec![at(middle, y), at(middle, rect.y)], true));
        }
    }
    if last == exit {
        // Nobody answers: the line ends below the name.
        last = below_leader(ground, sub.net);
    }
    lines.push(line(sub.net, Role::Rail, Some(leader), vec![at(x, last), at(x, exit), at(rect.x, exit)], false));
}

/// The height of a ring in one of its rows.
fn ring_y(ground: &Ground<'_>, index: usize, placed: &Placed, row: usize) -> i32 {
    match rects(ground, placed, row).first() {
        Some(rect) => rect.middle().y,
        None => ground.empty_row_middle(index, placed, row),
    }
}

/// A ring in the direction of the data, from the unit that leads it until it comes back.
fn ring(ground: &Ground<'_>, index: usize, placed: &Placed, sub: &Sub, lines: &mut Vec<Line>) {
    let columns = sub_columns(placed, sub);
    let left = ground.columns[placed.column] + RING_INSET;
    let right = ground.columns[placed.column + columns - 1] + super::words::BOX_WIDTH - RING_INSET;
    let owned = ground.tall_right.filter(|_| ground.plan.owner[sub.net].is_some());
    let back = owned.or_else(|| feed_of(ground, sub.net)).unwrap_or(left);
    let mut points = vec![at(owned.unwrap_or(left), ring_y(ground, index, placed, sub.rows.start))];
    for (number, row) in sub.rows.clone().enumerate() {
        let y = ring_y(ground, index, placed, row);
        let (from, to) = if number % 2 == 0 { (left, right) } else { (right, left) };
        if number > 0 {
            points.push(at(from, y));
        }
        points.push(at(to, y));
    }
    let last = points[points.len() - 1].y;
    points.push(at(back, last));
    if owned.is_none() {
        points.push(at(back, points[0].y));
        points.push(points[0]);
    }
    points.dedup();
    lines.push(line(sub.net, Role::Ring, None, points, false));
}

fn sub_columns(placed: &Placed, sub: &Sub) -> usize {
    let cells = placed.block.rows[sub.rows.clone()].iter().flatten();
    cells.map(|(_, column)| column + 1).max().unwrap_or(1)
}
