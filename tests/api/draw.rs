// bars.rs

#[derive(Debug)]
pub struct LoadBars<'a> {}
impl<'a> LoadBars<'a> {
    pub fn new(
        database: &'a Database,
        budget: &Budget,
        wanted: impl Fn(usize) -> bool,
    ) -> Self {}
    pub fn svg(&self) -> String {}
    pub fn html(&self) -> String {}
}
pub fn share_text(share: f64) -> String {}

// lib.rs

pub use bars::{LoadBars, share_text};
pub use map::{Blank, MapOptions, VehicleMap, network_facts, terminator_texts};

// map/mod.rs

pub use scene::network_facts;
pub use wiring::terminator_texts;
#[derive(Debug, Clone, Default)]
pub struct MapOptions {
    pub networks: Vec<NetworkId>,
    pub listen: Option<Topic>,
    pub blank: Blank,
    pub marked: Vec<EcuId>,
    pub certainty: bool,
}
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Blank {
    No,
    Exercise,
    Solution,
}
#[derive(Debug)]
pub struct VehicleMap<'a> {}
impl<'a> VehicleMap<'a> {
    pub fn new(database: &'a Database, options: MapOptions) -> Self {}
    pub fn svg(&self) -> String {}
    pub fn html(&self) -> String {}
    pub fn text(&self) -> String {}
}

// map/scene.rs

pub fn network_facts(network: &Network) -> String {}

// map/wiring.rs

pub fn terminator_texts(database: &Database, network: NetworkId) -> Vec<String> {}
