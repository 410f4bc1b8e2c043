//! Bands: the rows of the picture. A large network has one or several of its own, with boxes above and below its line; small ones share.

use wirelore_model::NetworkKind;

use super::blocks::Block;
use super::plan::Plan;
use super::scene::Scene;

/// A row of the picture: boxes, lines, boxes.
#[derive(Debug, Default)]
pub(crate) struct Band {
    /// Boxes above the lines.
    pub(crate) up: Vec<Placed>,
    /// Boxes below the lines.
    pub(crate) down: Vec<Placed>,
    /// The lines' networks: the first one is that of the leftmost boxes, and runs below the others.
    pub(crate) nets: Vec<usize>,
    /// Which piece of its network this is, where it takes several rows; counted from 0.
    pub(crate) piece: usize,
}

/// A block and where it stands.
#[derive(Debug)]
pub(crate) struct Placed {
    /// The network whose line it hangs on.
    pub(crate) net: usize,
    /// Its leftmost column.
    pub(crate) column: usize,
    /// What stands there.
    pub(crate) block: Block,
}

impl Band {
    /// All blocks, those above first.
    pub(crate) fn placed(&self) -> impl Iterator<Item = &Placed> {
        self.up.iter().chain(&self.down)
    }

    /// The links of a network of links that end in boxes of this band.
    pub(crate) fn links(&self, net: usize) -> impl Iterator<Item = &Placed> {
        self.placed().filter(move |placed| placed.net == net)
    }
}

/// How freely small networks share a row.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sharing {
    /// How much of a row a network may take and still share it, in quarters.
    pub(crate) quarters: usize,
    /// How many of those in a row may be reached by lines from elsewhere: these lines cross the others.
    pub(crate) reached: usize,
}

/// A network that waits for its place in a shared row.
struct Small {
    net: usize,
    blocks: Vec<Block>,
    width: usize,
    is_reached: bool,
}

/// Puts everything into rows of at most so many columns.
pub(crate) fn bands(scene: &Scene, plan: &Plan, columns: usize, sharing: Sharing) -> Vec<Band> {
    let mut bands: Vec<Band> = Vec::new();
    let mut open: Vec<Small> = Vec::new();
    for &net in &plan.order {
        let blocks = blocks_of(scene, plan, net, columns);
        let width: usize = blocks.iter().map(|block| block.columns).sum();
        let is_alone =
            plan.is_free_ring(scene, net) || width * 4 > columns * sharing.quarters || scene.nets[net].id.is_none();
        if is_alone {
            close(&mut open, &mut bands);
            push_own(scene, plan, net, blocks, columns, &mut bands);
            continue;
        }
        let small = Small { net, blocks, width: width.max(1), is_reached: is_reached(scene, plan, net) };
        let used: usize = open.iter().map(|other| other.width).sum();
        let reached = open.iter().filter(|other| other.is_reached).count() + usize::from(small.is_reached);
        let same_owner = open.iter().all(|other| plan.owner[other.net] == plan.owner[net]);
        if used + small.width > columns || reached > sharing.reached || !same_owner {
            close(&mut open, &mut bands);
        }
        open.push(small);
    }
    close(&mut open, &mut bands);
    bands
}

/// Makes a row of the networks that wait for it. Those that others reach into come last: their lines lie on top and can be drawn on.
fn close(open: &mut Vec<Small>, bands: &mut Vec<Band>) {
    if open.is_empty() {
        return;
    }
    let mut band = Band::default();
    let mut column = 0;
    open.sort_by_key(|small| small.is_reached);
    for small in open.drain(..) {
        band.nets.push(small.net);
        put(&mut band.down, small.net, small.blocks, column);
        column += small.width;
    }
    bands.push(band);
}

/// Whether units that hang elsewhere are on the network too.
fn is_reached(scene: &Scene, plan: &Plan, net: usize) -> bool {
    scene.nets[net].members.iter().any(|&unit| plan.further(scene, unit).any(|other| other == net))
}

fn blocks_of(scene: &Scene, plan: &Plan, net: usize, columns: usize) -> Vec<Block> {
    if plan.is_free_ring(scene, net) {
        return vec![Block::ring(scene, plan, net, columns)];
    }
    let mut members: Vec<usize> =
        scene.nets[net].members.iter().copied().filter(|unit| plan.home[*unit] == Some(net)).collect();
    if scene.nets[net].star.is_some() {
        members.sort_by_key(|unit| scene.nets[net].branch_of(*unit));
    } else if scene.nets[net].kind != NetworkKind::Ethernet {
        members.sort_by_key(|unit| Some(*unit) != scene.nets[net].leader);
    }
    members.into_iter().map(|unit| Block::below(scene, plan, unit, columns)).collect()
}

/// A network with rows of its own: below its line as long as that is enough, else on both sides, else in several pieces.
fn push_own(scene: &Scene, plan: &Plan, net: usize, blocks: Vec<Block>, columns: usize, bands: &mut Vec<Band>) {
    let width: usize = blocks.iter().map(|block| block.columns).sum();
    if width <= columns {
        let mut band = Band { nets: vec![net], ..Band::default() };
        put(&mut band.down, net, blocks, 0);
        bands.push(band);
        return;
    }
    let pieces = width.div_ceil(2 * columns);
    let share = width.div_ceil(pieces);
    let mut rest: std::collections::VecDeque<Block> = sorted_by_reach(scene, plan, net, blocks).into();
    let mut piece = 0;
    while !rest.is_empty() {
        let mut band = Band { nets: vec![net], piece, ..Band::default() };
        let mut taken = take(&mut rest, share.min(2 * columns));
        // What has something below it stands below.
        let deep = taken.iter().filter(|block| block.rows.len() > 1).map(|block| block.columns).sum::<usize>();
        let total: usize = taken.iter().map(|block| block.columns).sum();
        let above = total.saturating_sub(deep.max(total / 2)).min(columns);
        let (mut up, mut down, mut overflow, mut used) = (Vec::new(), Vec::new(), Vec::new(), (0, 0));
        for block in taken.drain(..) {
            if block.rows.len() == 1 && used.0 < above {
                used.0 += 1;
                up.push(block);
            } else if used.1 + block.columns <= columns {
                used.1 += block.columns;
                down.push(block);
            } else if block.rows.len() == 1 && used.0 < columns {
                used.0 += 1;
                up.push(block);
            } else {
                overflow.push(block);
            }
        }
        overflow.into_iter().rev().for_each(|block| rest.push_front(block));
        put(&mut band.up, net, up, 0);
        put(&mut band.down, net, down, 0);
        bands.push(band);
        piece += 1;
    }
}

/// The first blocks of so many columns together; always one at least.
fn take(rest: &mut std::collections::VecDeque<Block>, columns: usize) -> Vec<Block> {
    let (mut taken, mut used) = (Vec::new(), 0);
    while let Some(block) = rest.pop_front_if(|block| used == 0 || used + block.columns <= columns) {
        used += block.columns;
        taken.push(block);
    }
    taken
}

/// Units that are on networks further up come first, those on networks further down last.
fn sorted_by_reach(scene: &Scene, plan: &Plan, net: usize, mut blocks: Vec<Block>) -> Vec<Block> {
    if scene.nets[net].star.is_some() {
        // What shares a branch stays together.
        return blocks;
    }
    let place = |net: usize| plan.order.iter().position(|other| *other == net);
    let own = place(net);
    let direction = |unit: usize| {
        let further = plan.further(scene, unit).filter_map(place);
        further.map(|other| if Some(other) > own { 1 } else { -1 }).sum::<i32>().signum()
    };
    let leader = scene.nets[net].leader;
    blocks.sort_by_key(|block| {
        let root = block.rows[0].first().map_or(usize::MAX, |(unit, _)| *unit);
        if Some(root) == leader { -2 } else { direction(root) }
    });
    blocks
}

fn put(side: &mut Vec<Placed>, net: usize, blocks: Vec<Block>, first_column: usize) {
    let mut column = first_column;
    for block in blocks {
        let columns = block.columns;
        side.push(Placed { net, column, block });
        column += columns;
    }
}
