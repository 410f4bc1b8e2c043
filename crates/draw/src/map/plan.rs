//! Who hangs where: which units stand across several networks, which networks hang below their commander, and in what order the
//! others come.

use wirelore_model::NetworkKind;

use super::scene::{Net, Scene};

/// A unit on so many networks is drawn across them, even if nothing is said of what it passes on.
const MEETING_POINT: usize = 3;

/// The decisions that do not depend on the size of the paper.
#[derive(Debug)]
pub(crate) struct Plan {
    /// Units that stand at the left across the lines of several networks, in the order of their groups.
    pub(crate) talls: Vec<usize>,
    /// The networks that have a line of their own, from top to bottom.
    pub(crate) order: Vec<usize>,
    /// For each network, the tall unit that its line starts from.
    pub(crate) owner: Vec<Option<usize>>,
    /// For each network, the unit below which it hangs.
    pub(crate) hung: Vec<Option<usize>>,
    /// For each unit, the network on which its box hangs; `None` for tall ones.
    pub(crate) home: Vec<Option<usize>>,
}

impl Plan {
    pub(crate) fn of(scene: &Scene) -> Self {
        let mut plan = Self {
            talls: Vec::new(),
            order: Vec::new(),
            owner: vec![None; scene.nets.len()],
            hung: vec![None; scene.nets.len()],
            home: vec![None; scene.units.len()],
        };
        plan.choose_talls(scene);
        plan.choose_hubs(scene);
        plan.hang(scene);
        plan.find_homes(scene);
        plan.put_in_order(scene);
        plan
    }

    pub(crate) fn is_tall(&self, unit: usize) -> bool {
        self.talls.contains(&unit)
    }

    /// The network is there as a ring that has rows of its own.
    pub(crate) fn is_free_ring(&self, scene: &Scene, net: usize) -> bool {
        scene.nets[net].is_ring() && self.hung[net].is_none()
    }

    /// The networks that a unit is on and that its box does not hang on; what hangs below it is not among them.
    pub(crate) fn further<'a>(&'a self, scene: &'a Scene, unit: usize) -> impl Iterator<Item = usize> + 'a {
        scene.units[unit].on.iter().copied().filter(move |&net| {
            self.home[unit] != Some(net) && self.hung[net] != Some(unit) && self.owner[net] != Some(unit)
        })
    }

    fn choose_talls(&mut self, scene: &Scene) {
        let lines = |unit: usize| scene.units[unit].on.iter().filter(|net| scene.nets[**net].id.is_some()).count();
        let mut candidates: Vec<usize> = (0..scene.units.len())
            .filter(|unit| lines(*unit) >= MEETING_POINT || (scene.units[*unit].is_gateway && lines(*unit) >= 2))
            .collect();
        candidates.sort_by_key(|unit| (!scene.units[*unit].is_gateway, std::cmp::Reverse(lines(*unit)), *unit));
        for unit in candidates {
            let is_free = |net: &usize| {
                self.owner[*net].is_none() && !scene.is_small_sub(*net, unit) && scene.may_own(unit, *net)
            };
            let free: Vec<usize> = scene.units[unit].on.iter().copied().filter(is_free).collect();
            if free.len() >= 2 {
                // What it leads comes with it.
                for net in scene.units[unit].on.iter().copied().filter(|net| scene.may_own(unit, *net)) {
                    self.owner[net].get_or_insert(unit);
                }
                self.talls.push(unit);
            }
        }
    }

    /// Links from point to point need a point where they start; branches start at their star.
    fn choose_hubs(&mut self, scene: &Scene) {
        for (index, net) in scene.nets.iter().enumerate() {
            if let Some(star) = net.star.filter(|_| self.owner[index].is_none()) {
                self.owner[index] = Some(star);
                if !self.is_tall(star) {
                    self.talls.push(star);
                }
                continue;
            }
            let is_linked = net.kind == NetworkKind::Ethernet && net.id.is_some() && net.members.len() >= 2;
            if !is_linked || self.owner[index].is_some() {
                continue;
            }
            let by_networks = |unit: &usize| (scene.units[*unit].on.len(), std::cmp::Reverse(*unit));
            let hub = net.leader.filter(|unit| !self.is_tall(*unit)).or_else(|| {
                let movable = net.members.iter().copied().filter(|unit| !self.is_tall(*unit));
                movable.max_by_key(by_networks)
            });
            if let Some(hub) = hub {
                self.owner[index] = Some(hub);
                self.talls.push(hub);
            }
        }
    }

    /// LIN and its like hang below the unit that leads them, where that one is elsewhere too; of rings, one for each.
    fn hang(&mut self, scene: &Scene) {
        let mut has_ring = vec![false; scene.units.len()];
        for index in 0..scene.nets.len() {
            let net = &scene.nets[index];
            let Some(leader) = net.first() else { continue };
            let on = &scene.units[leader].on;
            let line = on.iter().any(|other| !scene.nets[*other].can_hang());
            let in_other_ring = on.iter().any(|other| *other != index && scene.nets[*other].is_ring());
            let meets_tall = net.is_ring() && net.members.iter().any(|unit| self.is_tall(*unit));
            let fits = net.can_hang() && line && !self.is_tall(leader) && !meets_tall && self.owner[index].is_none();
            let is_first_ring = !net.is_ring() || !std::mem::replace(&mut has_ring[leader], fits);
            if fits && !in_other_ring && is_first_ring {
                self.hung[index] = Some(leader);
            }
        }
    }

    fn find_homes(&mut self, scene: &Scene) {
        for (index, unit) in scene.units.iter().enumerate() {
            if self.is_tall(index) {
                continue;
            }
            let hung_below = |net: &&usize| self.hung[**net] == Some(index);
            let ring = unit.on.iter().find(|net| scene.nets[**net].is_ring() && !hung_below(net));
            let link = || unit.on.iter().find(|net| scene.nets[**net].kind == NetworkKind::Ethernet);
            let line = || unit.on.iter().find(|net| self.hung[**net].is_none() && !hung_below(net));
            self.home[index] = ring.or_else(link).or_else(line).or(unit.on.first()).copied();
        }
    }

    /// Groups of the tall units first; within them, networks that share units come close to each other.
    fn put_in_order(&mut self, scene: &Scene) {
        let with_lines = |net: &usize| self.hung[*net].is_none();
        let all: Vec<usize> = (0..scene.nets.len()).filter(with_lines).collect();
        for tall in &self.talls {
            let mut group: Vec<usize> = all.iter().copied().filter(|net| self.owner[*net] == Some(*tall)).collect();
            let mut last: Option<usize> = None;
            while !group.is_empty() {
                let closeness = |net: usize| last.map_or(0, |last| self.shared(scene, last, net));
                let best = (0..group.len()).max_by_key(|at| (closeness(group[*at]), std::cmp::Reverse(*at)));
                let net = group.remove(best.expect("the group is not empty"));
                self.order.push(net);
                last = Some(net);
            }
        }
        for net in all.into_iter().filter(|net| self.owner[*net].is_none()) {
            // Not into the middle of what has no tall unit in common with anything: behind its closest relative.
            let closest = (0..self.order.len()).map(|at| (self.shared(scene, self.order[at], net), at));
            let at =
                closest.filter(|(shared, _)| *shared > 0).max_by_key(|(shared, at)| (*shared, std::cmp::Reverse(*at)));
            match at {
                Some((_, at)) if scene.nets[net].id.is_some() => self.order.insert(at + 1, net),
                _ => self.order.push(net),
            }
        }
    }

    /// How many units of ordinary size are on both networks.
    fn shared(&self, scene: &Scene, one: usize, other: usize) -> usize {
        let both = scene.nets[one].members.iter().filter(|unit| scene.nets[other].members.contains(unit));
        both.filter(|unit| !self.is_tall(**unit)).count()
    }
}

impl Scene {
    /// Whether the line of a network may start from this unit where it is tall: branches start from nowhere but their star.
    fn may_own(&self, unit: usize, net: usize) -> bool {
        self.nets[net].star.is_none_or(|star| star == unit)
    }

    /// A single-wire network that this unit leads: no reason to stand across anything.
    fn is_small_sub(&self, net: usize, unit: usize) -> bool {
        let net = &self.nets[net];
        net.kind == NetworkKind::Lin && net.leader == Some(unit)
    }
}

impl Net {
    pub(crate) fn is_ring(&self) -> bool {
        self.kind == NetworkKind::Most && self.id.is_some()
    }

    /// Networks that are drawn below the unit that leads them.
    pub(crate) fn can_hang(&self) -> bool {
        use NetworkKind::{Kline, Lin, Most, Uart};
        self.id.is_some() && matches!(self.kind, Lin | Most | Uart | Kline)
    }

    /// The unit that leads it; of a ring, the first one.
    fn first(&self) -> Option<usize> {
        self.leader.or_else(|| self.members.first().copied().filter(|_| self.is_ring()))
    }
}
