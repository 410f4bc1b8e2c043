//! Coordinates: how wide each corridor and how high each band has to be, and where everything stands then.

use wirelore_model::NetworkKind;

use super::bands::{Band, Placed};
use super::lines;
use super::picture::{NetLabel, Picture, Rect, UnitBox};
use super::plan::Plan;
use super::route::{Connection, Routes, Side, Way};
use super::scene::{Net, Scene};
use super::words::{BOX_WIDTH, BoxWords, GUTTER_WIDTH, NetWords, TALL_WIDTH};

/// Around the whole map.
pub(crate) const MARGIN: i32 = 28;
/// Between a line and the boxes that hang on it.
const STUB: i32 = 18;
/// A corridor without lanes, and each lane in it.
const CORRIDOR: i32 = 18;
const LANE: i32 = 8;
/// An alley without tracks, and each track in it.
const ALLEY: i32 = 20;
const TRACK: i32 = 8;
/// Between the links of a bundle.
const LINK: i32 = 8;
/// Between the branches of a star.
const BRANCH: i32 = 14;
/// Between the rows of a block, where no name stands there; and around a name.
const PLAIN_GAP: i32 = 26;
const NAME_PAD: i32 = 12;
/// At least so much inside a ring.
const RING_GAP: i32 = 48;
/// How far above the boxes the line of a network inside a block runs.
pub(crate) const INNER_STUB: i32 = 12;
/// How far above the middle lines leave at the left, and below it at the right.
const EXIT_ASIDE: i32 = 3;
/// A row of a ring that holds no box.
const EMPTY_ROW: i32 = 30;
/// How far the bends of a ring stand inside the boxes.
pub(crate) const RING_INSET: i32 = 16;

/// Everything that the lines need to know.
pub(crate) struct Ground<'a> {
    pub(crate) scene: &'a Scene,
    pub(crate) plan: &'a Plan,
    pub(crate) bands: &'a [Band],
    pub(crate) routes: &'a Routes,
    /// Left edges of columns, and of corridors.
    pub(crate) columns: Vec<i32>,
    pub(crate) corridors: Vec<i32>,
    /// Right edge of the tall units, where there are any; left edge of the names.
    pub(crate) tall_right: Option<i32>,
    pub(crate) gutter: i32,
    pub(crate) levels: Vec<Level>,
    pub(crate) rects: Vec<Rect>,
    /// How high the box of each unit must be.
    heights: Vec<i32>,
}

/// The heights of a band.
#[derive(Debug, Default, Clone)]
pub(crate) struct Level {
    /// The top of the alley above it.
    pub(crate) alley: i32,
    /// The bottom of the boxes above the lines.
    up_bottom: i32,
    /// The lines, from top to bottom.
    pub(crate) tracks: Vec<Track>,
    /// The top of the boxes below the lines, and how high their first row is.
    down_top: i32,
    down_row: i32,
    pub(crate) bottom: i32,
}

/// One line of a band, or one link.
#[derive(Debug, Clone)]
pub(crate) struct Track {
    pub(crate) net: usize,
    pub(crate) end: End,
    pub(crate) y: i32,
}

/// Where a track leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum End {
    /// The whole network.
    Rail,
    /// A link to the box of a unit.
    Box(usize),
    /// A link to a lane that leads to a unit, by the number of the connection.
    Connection(usize),
    /// A branch of a star, by its number.
    Branch(usize),
}

impl End {
    /// Whether what leads to this unit belongs to it.
    pub(crate) fn leads_to(self, net: &Net, unit: usize) -> bool {
        match self {
            Self::Rail => true,
            Self::Box(own) => own == unit,
            Self::Connection(_) => false,
            Self::Branch(branch) => net.branch_of(unit) == Some(branch),
        }
    }
}

/// The map for so many columns.
pub(crate) fn place(
    scene: &Scene,
    plan: &Plan,
    bands: &[Band],
    routes: &Routes,
    columns: usize,
    numbered: bool,
) -> Picture {
    let tall_right = (!plan.talls.is_empty()).then_some(MARGIN + TALL_WIDTH);
    let gutter = tall_right.map_or(MARGIN, |right| right + 12);
    let mut ground = Ground {
        scene,
        plan,
        bands,
        routes,
        columns: Vec::new(),
        corridors: Vec::new(),
        tall_right,
        gutter,
        levels: Vec::new(),
        rects: vec![Rect { x: 0, y: 0, width: 0, height: 0 }; scene.units.len()],
        heights: (0..scene.units.len()).map(|unit| BoxWords::of(scene, unit, numbered).height()).collect(),
    };
    ground.stake_columns(columns);
    let mut picture = Picture { width: ground.right_edge() + MARGIN, ..Picture::default() };
    let mut y = 0;
    for index in 0..bands.len() {
        let level = ground.stake_band(index, y, &mut picture.labels);
        y = level.bottom;
        ground.levels.push(level);
        ground.place_boxes(index, &mut picture.labels);
    }
    picture.height = y + ALLEY + TRACK * routes.alleys[bands.len()] as i32;
    ground.levels.push(Level { alley: y, ..Level::default() });
    ground.place_talls();
    let boxes = (0..scene.units.len()).filter(|unit| ground.rects[*unit].width > 0);
    picture.boxes = boxes.map(|unit| UnitBox { unit, rect: ground.rects[unit], tall: plan.is_tall(unit) }).collect();
    picture.lines = lines::lines(&ground);
    picture
}

impl Ground<'_> {
    fn stake_columns(&mut self, columns: usize) {
        let mut x = self.gutter + GUTTER_WIDTH;
        for corridor in 0..=columns {
            self.corridors.push(x);
            x += CORRIDOR + LANE * self.routes.tracks_in(corridor) as i32;
            self.columns.push(x);
            x += BOX_WIDTH;
        }
    }

    /// The right edge of what is used.
    fn right_edge(&self) -> i32 {
        let last = self.corridors.len() - 1;
        let used = self.bands.iter().flat_map(Band::placed).map(|placed| placed.column + placed.block.columns).max();
        let lanes = (0..=last).filter(|corridor| self.routes.tracks_in(*corridor) > 0).max();
        let boxes = self.columns[used.unwrap_or(0).max(1) - 1] + BOX_WIDTH;
        let lanes = lanes.map_or(0, |corridor| self.columns[corridor] - CORRIDOR / 2);
        boxes.max(lanes)
    }

    /// The x of a lane.
    pub(crate) fn lane_x(&self, lane: usize) -> i32 {
        let lane = self.routes.lanes[lane];
        self.corridors[lane.corridor] + (CORRIDOR + LANE) / 2 + LANE * lane.slot as i32
    }

    /// The y of a track in an alley.
    pub(crate) fn alley_y(&self, alley: usize, track: usize) -> i32 {
        self.levels[alley].alley + (ALLEY + TRACK) / 2 + TRACK * track as i32
    }

    /// The heights of a band whose alley begins at `top`, and the names of its networks.
    fn stake_band(&self, index: usize, top: i32, labels: &mut Vec<NetLabel>) -> Level {
        let band = &self.bands[index];
        let root_height = |side: &[Placed]| {
            let roots = side.iter().flat_map(|placed| placed.block.rows.first().into_iter().flatten());
            roots.map(|(unit, _)| self.heights[*unit]).max().unwrap_or(0)
        };
        let mut level = Level { alley: top, down_row: root_height(&band.down), ..Level::default() };
        let inner_top = top + ALLEY + TRACK * self.routes.alleys[index] as i32;
        let up = root_height(&band.up);
        level.up_bottom = inner_top + up;
        // The lines begin below the boxes, but their names may stand beside those.
        let mut y = inner_top;
        let mut lines_from = level.up_bottom + if up > 0 { STUB } else { 0 };
        for net in band.nets.iter().rev() {
            if self.plan.is_free_ring(self.scene, *net) {
                continue;
            }
            let words = NetWords::of(&self.scene.nets[*net], GUTTER_WIDTH - 16, band.piece > 0);
            y = (y + words.above()).max(lines_from);
            let first = y;
            for (at, end) in self.ends(index, *net).into_iter().enumerate() {
                y = first + if matches!(end, End::Branch(_)) { BRANCH } else { LINK } * at as i32;
                level.tracks.push(Track { net: *net, end, y });
            }
            labels.push(self.gutter_label(*net, &words, first, y, band.piece > 0));
            y += words.below();
            lines_from = y;
        }
        let last_line = level.tracks.last().map_or(inner_top - STUB, |track| track.y);
        level.down_top = last_line + STUB;
        let deepest = band.down.iter().map(|placed| self.depth(placed, level.down_row)).max().unwrap_or(0);
        level.bottom = y.max(level.down_top + deepest).max(self.least_bottom(index, top));
        level
    }

    /// The tracks that a network needs in a band, from top to bottom.
    fn ends(&self, index: usize, net: usize) -> Vec<End> {
        if self.is_starred(net) {
            return self.branch_ends(index, net);
        }
        if self.scene.nets[net].kind != NetworkKind::Ethernet || self.plan.owner[net].is_none() {
            return vec![End::Rail];
        }
        let band = &self.bands[index];
        let boxes = |side: &[Placed]| -> Vec<End> {
            let of_net = side.iter().filter(|placed| placed.net == net);
            of_net.filter_map(|placed| placed.block.rows.first()?.first()).map(|(unit, _)| End::Box(*unit)).collect()
        };
        let reaches = |(_, connection): &(usize, &Connection)| connection.net == net && connection.band == index;
        let lanes = self.routes.connections.iter().enumerate().filter(reaches).map(|(at, _)| End::Connection(at));
        // Near boxes have the tracks next to them, so that no link crosses another.
        let mut ends = boxes(&band.up);
        ends.extend(lanes);
        ends.extend(boxes(&band.down).into_iter().rev());
        if ends.is_empty() { vec![End::Rail] } else { ends }
    }

    /// The tracks of a star's branches. As with links, near boxes have the tracks next to them.
    fn branch_ends(&self, index: usize, net: usize) -> Vec<End> {
        let band = &self.bands[index];
        let branch_of = |unit: usize| self.scene.nets[net].branch_of(unit);
        let on_side = |side: &[Placed]| -> Vec<usize> {
            let of_net = side.iter().filter(|placed| placed.net == net);
            let units = of_net.filter_map(|placed| placed.block.rows.first()?.first());
            let mut branches: Vec<usize> = units.filter_map(|(unit, _)| branch_of(*unit)).collect();
            branches.dedup();
            branches
        };
        let (above, below) = (on_side(&band.up), on_side(&band.down));
        let reaches = |it: &&Connection| it.net == net && it.band == index;
        let lanes = self.routes.connections.iter().filter(reaches).filter_map(|it| branch_of(it.unit));
        let mut ends: Vec<usize> = Vec::new();
        let middle = lanes.filter(|branch| !below.contains(branch));
        let all = above.iter().copied().filter(|branch| !below.contains(branch)).chain(middle);
        for branch in all.chain(below.iter().rev().copied()) {
            if !ends.contains(&branch) {
                ends.push(branch);
            }
        }
        if ends.is_empty() { vec![End::Rail] } else { ends.into_iter().map(End::Branch).collect() }
    }

    fn gutter_label(&self, net: usize, words: &NetWords, first: i32, last: i32, continued: bool) -> NetLabel {
        let rect = Rect {
            x: self.gutter + 4,
            y: first - words.above(),
            width: GUTTER_WIDTH - 8,
            height: last - first + words.above() + words.below(),
        };
        NetLabel { net, rect, line_y: last, continued }
    }

    /// How deep a block reaches below the top of its first row.
    fn depth(&self, placed: &Placed, first_row: i32) -> i32 {
        let rows = placed.block.rows.len();
        self.row_top(placed, rows, first_row)
    }

    /// Where a row of a block begins below the top of the first one; behind the last row, where the block ends.
    fn row_top(&self, placed: &Placed, row: usize, first_row: i32) -> i32 {
        (0..row)
            .map(|at| {
                let height =
                    if at == 0 { first_row.max(self.row_height(placed, 0)) } else { self.row_height(placed, at) };
                height + if at + 1 < placed.block.rows.len() { self.gap(placed, at + 1) } else { 0 }
            })
            .sum()
    }

    fn row_height(&self, placed: &Placed, row: usize) -> i32 {
        let tallest = placed.block.rows[row].iter().map(|(unit, _)| self.heights[*unit]).max();
        tallest.unwrap_or(EMPTY_ROW)
    }

    /// A tall unit that ends in this band needs room for its own words.
    fn least_bottom(&self, index: usize, top: i32) -> i32 {
        let spans = self.routes.spans.iter().enumerate().filter_map(|(unit, span)| Some((unit, (*span)?)));
        let ends_here = spans.filter(|(_, (_, last))| *last == index);
        let bottom = |unit: usize, first: usize| {
            self.levels.get(first).map_or(top, |level| level.alley) + self.heights[unit] + ALLEY
        };
        ends_here.map(|(unit, (first, _))| bottom(unit, first)).max().unwrap_or(top)
    }

    /// The middle of a row of a ring that holds no box.
    pub(crate) fn empty_row_middle(&self, index: usize, placed: &Placed, row: usize) -> i32 {
        let height = if row == 0 { self.levels[index].down_row.max(EMPTY_ROW) } else { EMPTY_ROW };
        self.row_y(index, placed, row) + height / 2
    }

    /// Links go from point to point.
    pub(crate) fn is_linked(&self, net: usize) -> bool {
        self.scene.nets[net].kind == NetworkKind::Ethernet
    }

    /// Branches go out from a star that is drawn.
    pub(crate) fn is_starred(&self, net: usize) -> bool {
        self.scene.nets[net].star.is_some() && self.plan.owner[net] == self.scene.nets[net].star
    }

    fn place_boxes(&mut self, index: usize, labels: &mut Vec<NetLabel>) {
        let (bands, level) = (self.bands, self.levels[index].clone());
        for placed in &bands[index].up {
            for (unit, column) in placed.block.rows.iter().flatten() {
                let row = level.up_bottom - (level.alley + ALLEY + TRACK * self.routes.alleys[index] as i32);
                self.set(*unit, placed.column + column, level.up_bottom - row, row);
            }
        }
        for placed in &bands[index].down {
            for (row, cells) in placed.block.rows.iter().enumerate() {
                let top = level.down_top + self.row_top(placed, row, level.down_row);
                let own = self.row_height(placed, row);
                let height = if row == 0 { level.down_row.max(own) } else { own };
                for (unit, column) in cells {
                    self.set(*unit, placed.column + column, top, height);
                }
            }
            self.name_subs(index, placed, labels);
        }
    }

    fn set(&mut self, unit: usize, column: usize, y: i32, height: i32) {
        self.rects[unit] = Rect { x: self.columns[column], y, width: BOX_WIDTH, height };
    }

    /// The names of the networks inside a block stand in its first column; that of a free ring at the left.
    fn name_subs(&self, index: usize, placed: &Placed, labels: &mut Vec<NetLabel>) {
        for sub in &placed.block.subs {
            let is_ring = self.scene.nets[sub.net].is_ring();
            let below = if is_ring { sub.rows.start + 1 } else { sub.rows.start };
            let top = self.row_y(index, placed, below) - self.gap(placed, below);
            let left = self.columns[placed.column];
            let (rect, line_y) = if self.plan.is_free_ring(self.scene, sub.net) {
                let first = self.levels[index].down_row.max(EMPTY_ROW) / 2;
                let y = top - first + 8;
                let height = NetWords::inner(&self.scene.nets[sub.net], GUTTER_WIDTH - 8).height();
                (Rect { x: self.gutter + 4, y, width: GUTTER_WIDTH - 8, height }, y)
            } else {
                let (inset, width) = self.inner_room(placed, is_ring);
                let height = NetWords::inner(&self.scene.nets[sub.net], width).height();
                (Rect { x: left + inset, y: top + 4, width, height }, top + 4)
            };
            labels.push(NetLabel { net: sub.net, rect, line_y, continued: false });
        }
    }

    /// Where the name of a network inside a block begins, and how much room it has.
    fn inner_room(&self, placed: &Placed, is_ring: bool) -> (i32, i32) {
        let inset = if is_ring { RING_INSET + 10 } else { 0 };
        (inset, self.free_width(placed) - 2 * inset)
    }

    /// The room above a row of a block.
    fn gap(&self, placed: &Placed, row: usize) -> i32 {
        let Some(sub) = placed.block.subs.iter().find(|sub| sub.rows.contains(&row)) else { return PLAIN_GAP };
        let net = &self.scene.nets[sub.net];
        if row != sub.rows.start + usize::from(net.is_ring()) {
            return PLAIN_GAP;
        }
        if self.plan.is_free_ring(self.scene, sub.net) {
            return NetWords::inner(net, GUTTER_WIDTH - 8).height().max(RING_GAP);
        }
        let name = NetWords::inner(net, self.inner_room(placed, net.is_ring()).1).height() + NAME_PAD;
        if net.is_ring() { name.max(RING_GAP) } else { name + INNER_STUB }
    }

    /// The width of a block up to the first corridor in which lines run.
    fn free_width(&self, placed: &Placed) -> i32 {
        let inside = placed.column + 1..placed.column + placed.block.columns;
        let free = inside.take_while(|corridor| self.routes.tracks_in(*corridor) == 0).count();
        self.columns[placed.column + free] + BOX_WIDTH - self.columns[placed.column]
    }

    /// The top of a row of a block below a line.
    fn row_y(&self, index: usize, placed: &Placed, row: usize) -> i32 {
        let level = &self.levels[index];
        level.down_top + self.row_top(placed, row, level.down_row)
    }

    fn place_talls(&mut self) {
        for unit in &self.plan.talls {
            let Some((first, last)) = self.routes.spans[*unit] else { continue };
            let top = self.levels[first].alley + 8;
            let bottom = self.levels[last].bottom + 2;
            self.rects[*unit] = Rect { x: MARGIN, y: top, width: TALL_WIDTH, height: bottom - top };
        }
    }

    /// Where a connection leaves its box at a side: the exits share the side.
    pub(crate) fn exit_y(&self, connection: &Connection) -> i32 {
        let side_of = |way: &Way| match way {
            Way::Lane { side, .. } | Way::Alley { side, .. } => Some(*side),
            _ => None,
        };
        let same_side =
            |other: &&Connection| other.unit == connection.unit && side_of(&other.way) == side_of(&connection.way);
        let others: Vec<usize> = self.routes.connections.iter().filter(same_side).map(|other| other.net).collect();
        let own = others.iter().position(|net| *net == connection.net).unwrap_or(0);
        let rect = self.rects[connection.unit];
        // Neighbours that look at each other across a corridor do not meet in it.
        let aside = if side_of(&connection.way) == Some(Side::Left) { -EXIT_ASIDE } else { EXIT_ASIDE };
        rect.y + rect.height * (own as i32 + 1) / (others.len() as i32 + 1) + aside
    }
}
