//! What is drawn strong where somebody asks who hears a frame.

use wirelore_model::Database;
use wirelore_survey::{Listening, Topic};

use super::scene::Scene;

/// What a unit does with the frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Part {
    Reads,
    PassesOn,
    Sends,
}

/// The part that each item of a scene has in the way of a frame.
#[derive(Debug)]
pub(crate) struct Strong {
    /// Of each unit.
    pub(crate) units: Vec<Option<Part>>,
    /// Whether the frame is on the network.
    pub(crate) nets: Vec<bool>,
    /// Arrows: unit, network, and whether the frame goes to the unit.
    pub(crate) arrows: Vec<(usize, usize, bool)>,
}

impl Strong {
    pub(crate) fn of(database: &Database, scene: &Scene, topic: &Topic) -> Self {
        let listening = Listening::to(database, topic.clone());
        let unit = |id| scene.units.iter().position(|unit| unit.id == Some(id));
        let net = |id| scene.nets.iter().position(|net| net.id == Some(id));
        let mut strong =
            Self { units: vec![None; scene.units.len()], nets: vec![false; scene.nets.len()], arrows: Vec::new() };
        for network in listening.networks().into_iter().filter_map(net) {
            strong.nets[network] = true;
        }
        let mut mark = |id, network: Option<wirelore_model::NetworkId>, part: Part, inward: bool| {
            let Some(unit) = unit(id) else { return };
            strong.units[unit] = strong.units[unit].max(Some(part));
            let arrow = network.and_then(net).map(|net| (unit, net, inward));
            strong.arrows.extend(arrow);
        };
        for sender in &listening.senders {
            mark(*sender, Some(listening.network), Part::Sends, false);
        }
        for hop in &listening.hops {
            mark(hop.gateway, Some(hop.from), Part::PassesOn, true);
            mark(hop.gateway, Some(hop.to), Part::PassesOn, false);
        }
        for (reader, network) in &listening.readers {
            mark(*reader, *network, Part::Reads, true);
        }
        strong.arrows.sort_unstable();
        strong.arrows.dedup();
        strong
    }

    /// The directions in which the frame goes between a unit and a network: to the unit, to the network.
    pub(crate) fn directions(&self, unit: usize, net: usize) -> (bool, bool) {
        (self.arrows.contains(&(unit, net, true)), self.arrows.contains(&(unit, net, false)))
    }
}
