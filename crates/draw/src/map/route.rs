//! The ways of lines that do not simply drop from a network to a box: through the corridors between the columns of boxes, where no box
//! can be in the way, and through the alleys between the bands.

use super::bands::{Band, Placed};
use super::plan::Plan;
use super::scene::Scene;

/// Where the box of a unit stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Spot {
    pub(crate) band: usize,
    pub(crate) up: bool,
    pub(crate) placed: usize,
    pub(crate) row: usize,
    pub(crate) column: usize,
}

/// A vertical stretch in a corridor. Corridor `n` is left of column `n`; the last one is right of all.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Lane {
    pub(crate) corridor: usize,
    /// The first and last band that it passes.
    pub(crate) bands: (usize, usize),
    /// Which of the corridor's tracks it takes.
    pub(crate) slot: usize,
}

/// A side of a box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Side {
    Left,
    Right,
}

/// How a unit comes to a network that its box does not hang on.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Way {
    /// Straight from the free side of the box to the line of the next band; the number tells several of a box apart.
    Straight(usize),
    /// Out of a side of the box and along a lane.
    Lane { side: Side, lane: usize },
    /// Out of a side, along a lane to an alley, along the alley, along a second lane.
    Alley { side: Side, lane: usize, alley: usize, track: usize, second: usize },
    /// Out of a tall unit into an alley, then along a lane.
    Tall { alley: usize, track: usize, lane: usize },
}

/// A unit's way to a network.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Connection {
    pub(crate) unit: usize,
    pub(crate) net: usize,
    /// The band in which it meets the network.
    pub(crate) band: usize,
    pub(crate) way: Way,
}

/// All ways, and the room they need.
#[derive(Debug)]
pub(crate) struct Routes {
    /// For each unit with a box of ordinary size, where it stands.
    pub(crate) spots: Vec<Option<Spot>>,
    /// For each unit, its bands where it is tall.
    pub(crate) spans: Vec<Option<(usize, usize)>>,
    pub(crate) connections: Vec<Connection>,
    pub(crate) lanes: Vec<Lane>,
    /// For each network in several pieces, the lane that joins them.
    pub(crate) trunks: Vec<(usize, usize)>,
    /// For each network that hangs below a unit, the lane from there: network, lane.
    pub(crate) feeds: Vec<(usize, usize)>,
    /// How many tracks each alley has; alley `n` is above band `n`.
    pub(crate) alleys: Vec<usize>,
}

impl Routes {
    pub(crate) fn of(scene: &Scene, plan: &Plan, bands: &[Band], columns: usize) -> Self {
        let mut routes = Self {
            spots: spots(scene, bands),
            spans: spans(scene, plan, bands),
            connections: Vec::new(),
            lanes: Vec::new(),
            trunks: Vec::new(),
            feeds: Vec::new(),
            alleys: vec![0; bands.len() + 1],
        };
        routes.join_pieces(scene, plan, bands, columns);
        routes.feed(scene, plan, bands);
        for unit in 0..scene.units.len() {
            let mut straight = 0;
            for net in plan.further(scene, unit) {
                routes.connect(scene, plan, bands, columns, unit, net, &mut straight);
            }
        }
        routes.share_corridors();
        routes
    }

    /// Networks in several pieces go on at the right; branches begin at their star in every row.
    fn join_pieces(&mut self, scene: &Scene, plan: &Plan, bands: &[Band], columns: usize) {
        for net in plan.order.iter().filter(|net| scene.nets[**net].star.is_none()) {
            let of_net = |band: &Band| band.nets.first() == Some(net);
            let (first, last) = (bands.iter().position(of_net), bands.iter().rposition(of_net));
            if let (Some(first), Some(last)) = (first, last)
                && first < last
            {
                let lane = self.add_lane(columns, first, last);
                self.trunks.push((*net, lane));
            }
        }
    }

    /// What hangs below a unit is led there at its left; so are rings of many rows back to their beginning.
    fn feed(&mut self, scene: &Scene, plan: &Plan, bands: &[Band]) {
        for (index, band) in bands.iter().enumerate() {
            for placed in band.placed() {
                for sub in &placed.block.subs {
                    let is_needed =
                        if scene.nets[sub.net].is_ring() { sub.rows.len() > 2 } else { plan.hung[sub.net].is_some() };
                    if !is_needed {
                        continue;
                    }
                    let lane = self.add_lane(placed.column, index, index);
                    self.feeds.push((sub.net, lane));
                }
            }
        }
    }

    #[expect(clippy::too_many_arguments, reason = "the whole situation of one line")]
    fn connect(
        &mut self,
        scene: &Scene,
        plan: &Plan,
        bands: &[Band],
        columns: usize,
        unit: usize,
        net: usize,
        straight: &mut usize,
    ) {
        let from = self.spots[unit].map(|spot| spot.band).or(self.spans[unit].map(|(first, _)| first)).unwrap_or(0);
        let Some((band, corridors)) = self.target(scene, plan, bands, columns, net, from) else { return };
        let way = match self.spots[unit] {
            None => self.way_of_tall(unit, band, corridors.0),
            Some(spot) if self.can_go_straight(plan, bands, spot, band, net) => {
                *straight += 1;
                Way::Straight(*straight - 1)
            }
            Some(spot) => self.way_of_box(spot, band, corridors),
        };
        self.connections.push(Connection { unit, net, band, way });
    }

    /// The band in which a network is met, and the corridors from which it can be.
    fn target(
        &self,
        scene: &Scene,
        plan: &Plan,
        bands: &[Band],
        columns: usize,
        net: usize,
        from: usize,
    ) -> Option<(usize, (usize, usize))> {
        if let Some(leader) = plan.hung[net] {
            let spot = self.spots[leader]?;
            let column =
                bands[spot.band].down.get(spot.placed).filter(|_| !spot.up).map_or(spot.column, |it| it.column);
            return Some((spot.band, (column, column)));
        }
        let (band, there) = bands
            .iter()
            .enumerate()
            .filter(|(_, band)| band.nets.contains(&net))
            .min_by_key(|(at, _)| at.abs_diff(from))?;
        if plan.is_free_ring(scene, net) {
            let last = there.links(net).map(|placed| placed.column + placed.block.columns).max().unwrap_or(0);
            return Some((band, (0, last.saturating_sub(1))));
        }
        Some((band, (0, columns)))
    }

    fn can_go_straight(&self, plan: &Plan, bands: &[Band], spot: Spot, target: usize, net: usize) -> bool {
        if plan.hung[net].is_some() {
            return false;
        }
        let covers = |placed: &Placed| (placed.column..placed.column + placed.block.columns).contains(&spot.column);
        let own = if spot.up { &bands[spot.band].up } else { &bands[spot.band].down };
        let is_free_behind = spot.row + 1 == own[spot.placed].block.rows.len();
        let is_ring = bands[target].down.first().is_some_and(|placed| {
            placed.net == net && placed.block.subs.iter().any(|sub| sub.net == net && sub.rows.start == 0)
        });
        // A line from further up in the same row, to a box in the same column, would run along this one.
        let rank = |net: usize| bands[target].nets.iter().position(|other| *other == net);
        let meets = |placed: &Placed| placed.column == spot.column && rank(placed.net) > rank(net);
        let is_clear = !bands[target].up.iter().any(covers) && !bands[target].down.iter().any(meets);
        let down = !spot.up && target == spot.band + 1 && is_clear && !is_ring;
        let up = spot.up && target + 1 == spot.band && !bands[target].down.iter().any(covers) && !is_ring;
        is_free_behind && (down || up)
    }

    fn way_of_box(&mut self, spot: Spot, target: usize, (first, last): (usize, usize)) -> Way {
        let (left, right) = (spot.column, spot.column + 1);
        let reach = (spot.band.min(target), spot.band.max(target));
        let used = |corridor: usize| self.lanes.iter().filter(|lane| lane.corridor == corridor).count();
        let may = |corridor: usize| (first..=last).contains(&corridor);
        if may(left) || may(right) {
            let to_right = may(right) && (!may(left) || used(right) < used(left));
            let lane = self.add_lane(if to_right { right } else { left }, reach.0, reach.1);
            return Way::Lane { side: if to_right { Side::Right } else { Side::Left }, lane };
        }
        let goal = if last < left { last } else { first };
        let side = if goal <= left { Side::Left } else { Side::Right };
        // Towards the goal; within one band, over it.
        let alley = if target > spot.band { spot.band + 1 } else { spot.band };
        let lane = self.add_lane(if side == Side::Left { left } else { right }, spot.band, spot.band);
        let second = self.add_lane(goal, alley.min(target), target.max(alley.saturating_sub(1)));
        let track = self.add_track(alley);
        Way::Alley { side, lane, alley, track, second }
    }

    fn way_of_tall(&mut self, unit: usize, target: usize, corridor: usize) -> Way {
        let (first, last) = self.spans[unit].unwrap_or((0, 0));
        // Over the band that is reached where it is beside the tall unit, else at the end that is nearer.
        let alley = if target > last { last } else { target.max(first) };
        let lane = self.add_lane(corridor, alley.min(target), alley.max(target));
        Way::Tall { alley, track: self.add_track(alley), lane }
    }

    fn add_lane(&mut self, corridor: usize, first: usize, last: usize) -> usize {
        self.lanes.push(Lane { corridor, bands: (first, last), slot: 0 });
        self.lanes.len() - 1
    }

    fn add_track(&mut self, alley: usize) -> usize {
        self.alleys[alley] += 1;
        self.alleys[alley] - 1
    }

    /// Gives each lane the first track of its corridor on which no other is in the way.
    fn share_corridors(&mut self) {
        for index in 0..self.lanes.len() {
            let lane = self.lanes[index];
            let meets = |other: &&Lane| {
                other.corridor == lane.corridor && other.bands.0 <= lane.bands.1 && lane.bands.0 <= other.bands.1
            };
            let taken: Vec<usize> = self.lanes[..index].iter().filter(meets).map(|other| other.slot).collect();
            self.lanes[index].slot = (0..).find(|slot| !taken.contains(slot)).unwrap_or(0);
        }
    }

    /// How many tracks a corridor needs.
    pub(crate) fn tracks_in(&self, corridor: usize) -> usize {
        self.lanes.iter().filter(|lane| lane.corridor == corridor).map(|lane| lane.slot + 1).max().unwrap_or(0)
    }
}

fn spots(scene: &Scene, bands: &[Band]) -> Vec<Option<Spot>> {
    let mut spots = vec![None; scene.units.len()];
    for (band_at, band) in bands.iter().enumerate() {
        for (side, up) in [(&band.up, true), (&band.down, false)] {
            for (placed_at, placed) in side.iter().enumerate() {
                for (row, cells) in placed.block.rows.iter().enumerate() {
                    for (unit, column) in cells {
                        let column = placed.column + column;
                        spots[*unit] = Some(Spot { band: band_at, up, placed: placed_at, row, column });
                    }
                }
            }
        }
    }
    spots
}

fn spans(scene: &Scene, plan: &Plan, bands: &[Band]) -> Vec<Option<(usize, usize)>> {
    let mut spans = vec![None; scene.units.len()];
    for tall in &plan.talls {
        let has = |band: &Band| band.nets.iter().any(|net| plan.owner[*net] == Some(*tall));
        if let (Some(first), Some(last)) = (bands.iter().position(has), bands.iter().rposition(has)) {
            spans[*tall] = Some((first, last));
        }
    }
    spans
}
