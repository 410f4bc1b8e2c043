//! Blocks: a unit, or a unit with everything that hangs below it, in cells of one size.

use super::plan::Plan;
use super::scene::Scene;

/// Units that hang on one line together.
#[derive(Debug, Clone)]
pub(crate) struct Block {
    /// The boxes: for each row, the units and their columns.
    pub(crate) rows: Vec<Vec<(usize, usize)>>,
    /// How many columns it takes.
    pub(crate) columns: usize,
    /// The networks inside it.
    pub(crate) subs: Vec<Sub>,
}

/// A network inside a block.
#[derive(Debug, Clone)]
pub(crate) struct Sub {
    /// Which one.
    pub(crate) net: usize,
    /// Its rows.
    pub(crate) rows: std::ops::Range<usize>,
}

/// Responders stand in as many columns as this at most.
const MOST_COLUMNS: usize = 4;

impl Block {
    /// The block of a unit that hangs on a line.
    pub(crate) fn below(scene: &Scene, plan: &Plan, root: usize, most_columns: usize) -> Self {
        let mut block = Self { rows: vec![vec![(root, 0)]], columns: 1, subs: Vec::new() };
        let hung = (0..scene.nets.len()).filter(|net| plan.hung[*net] == Some(root));
        let (rings, others): (Vec<usize>, Vec<usize>) = hung.partition(|net| scene.nets[*net].is_ring());
        for net in rings {
            block.rows.clear();
            block.add_ring(net, &at_home(scene, plan, net, Some(root)), most_columns);
        }
        for net in others {
            block.add_responders(net, &at_home(scene, plan, net, None), most_columns);
        }
        block
    }

    /// The block of a ring that hangs on nothing, or on a tall unit.
    pub(crate) fn ring(scene: &Scene, plan: &Plan, net: usize, most_columns: usize) -> Self {
        let mut block = Self { rows: Vec::new(), columns: 1, subs: Vec::new() };
        block.add_ring(net, &at_home(scene, plan, net, None), most_columns);
        block
    }

    /// A ring in rows that are run through to and fro, an even number of them, so that its end comes back to its beginning.
    fn add_ring(&mut self, net: usize, members: &[usize], most_columns: usize) {
        let pairs = members.len().div_ceil(2 * most_columns).max(1);
        let columns = members.len().div_ceil(2 * pairs).max(1);
        let first = self.rows.len();
        for row in 0..2 * pairs {
            let there = members.iter().skip(row * columns).take(columns).copied().enumerate();
            let column = |at: usize| if row % 2 == 0 { at } else { columns - 1 - at };
            self.rows.push(there.map(|(at, unit)| (unit, column(at))).collect());
        }
        self.columns = self.columns.max(columns);
        self.subs.push(Sub { net, rows: first..self.rows.len() });
    }

    fn add_responders(&mut self, net: usize, members: &[usize], most_columns: usize) {
        let wished = if members.len() <= 3 { members.len() } else { members.len().div_ceil(2).min(MOST_COLUMNS) };
        let columns = wished.clamp(1, most_columns);
        let first = self.rows.len();
        for row in members.chunks(columns) {
            self.rows.push(row.iter().copied().enumerate().map(|(column, unit)| (unit, column)).collect());
        }
        if members.is_empty() {
            self.rows.push(Vec::new());
        }
        self.columns = self.columns.max(columns);
        self.subs.push(Sub { net, rows: first..self.rows.len() });
    }
}

/// The units whose boxes belong to a network inside a block, in their order; the root of a ring among them.
fn at_home(scene: &Scene, plan: &Plan, net: usize, root: Option<usize>) -> Vec<usize> {
    let members = scene.nets[net].members.iter().copied();
    members.filter(|unit| plan.home[*unit] == Some(net) || Some(*unit) == root).collect()
}
