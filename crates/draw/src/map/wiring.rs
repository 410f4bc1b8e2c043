//! What belongs to the wires of a network on a map: terminators, and the active star with its branches.

use wirelore_model::{Database, EcuId, Fitted, NetworkId};

use super::Blank;
use super::legend::Sample;
use super::scene::{Net, Scene, Unit};
use crate::text::{clean, isolated};

/// What an active star of its own is called.
const STAR: &str = "Active star";

/// Adds to a network what the description says of its wires; a star that is in no control unit gets a box of its own.
pub(super) fn add(
    database: &Database,
    id: NetworkId,
    (at, nets): (usize, &mut [Net]),
    (unit_at, units): (&[Option<usize>], &mut Vec<Unit>),
) {
    let network = &database.networks[id.index()];
    let shown = |unit: EcuId| unit_at[unit.index()];
    let net = &mut nets[at];
    net.terminators = network.terminators.iter().filter_map(|it| it.at.unit()).filter_map(shown).collect();
    net.in_wiring = network.terminators.iter().filter(|it| it.at.unit().is_none()).count();
    let Some(star) = &network.star else { return };
    let branches = network.branches(id, &database.ecus).into_iter();
    net.branches = branches.map(|branch| branch.into_iter().filter_map(shown).collect()).collect();
    let unit = match &star.at {
        Fitted::Unit(unit) => shown(*unit),
        Fitted::Wiring(place) => {
            net.members.push(units.len());
            units.push(own_star(at, clean(place)));
            Some(units.len() - 1)
        }
    };
    net.star = unit;
    if let Some(unit) = unit {
        units[unit].is_star = true;
    }
}

fn own_star(net: usize, place: String) -> Unit {
    Unit {
        id: None,
        name: STAR.to_owned(),
        title: STAR.to_owned(),
        on: vec![net],
        facts: vec![place],
        is_gateway: false,
        is_star: true,
        is_optional: false,
        grade: None,
        wires: Vec::new(),
    }
}

pub(super) fn hide_terminators(net: &mut Net) {
    net.terminators.clear();
    net.in_wiring = 0;
}

impl Net {
    /// Whether terminators of it are drawn.
    pub(super) fn has_terminators(&self) -> bool {
        self.in_wiring > 0 || !self.terminators.is_empty()
    }

    /// The branch that a unit is on.
    pub(super) fn branch_of(&self, unit: usize) -> Option<usize> {
        self.branches.iter().position(|branch| branch.contains(&unit))
    }
}

/// Where the terminators are that the drawing does not say all of: those in the wiring, and those with a resistance.
pub(super) fn terminators(database: &Database, scene: &Scene, blank: Blank) -> Vec<(Sample, String)> {
    if blank == Blank::Exercise {
        return Vec::new();
    }
    let mut items = Vec::new();
    for (net, id) in scene.nets.iter().filter(|net| net.has_terminators()).filter_map(|net| Some((net, net.id?))) {
        let all = &database.networks[id.index()].terminators;
        if all.iter().all(|it| it.at.unit().is_some() && it.ohms.is_none()) {
            continue;
        }
        items.push((Sample::None, format!("{}: {}", isolated(&net.title), terminator_texts(database, id).join(", "))));
    }
    items
}

/// The terminators of a network, each with its place and what it measures.
#[must_use]
pub fn terminator_texts(database: &Database, network: NetworkId) -> Vec<String> {
    let text = |it: &wirelore_model::Terminator| {
        let (place, wiring) = match &it.at {
            Fitted::Unit(unit) => (database.ecus[unit.index()].label.display(), None),
            Fitted::Wiring(place) => (place.as_str(), Some("in the wiring".to_owned())),
        };
        let remarks: Vec<String> = wiring.into_iter().chain(it.ohms.map(|ohms| format!("{ohms} Ω"))).collect();
        let remarks = if remarks.is_empty() { String::new() } else { format!(" ({})", remarks.join(", ")) };
        format!("{}{remarks}", isolated(&clean(place)))
    };
    database.networks[network.index()].terminators.iter().map(text).collect()
}
